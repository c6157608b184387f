// settled_layout.hpp: a layout's tree and the states that settle() finds for it. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/water.hpp"
#include "hydro/solver/settle.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/solver/tree.hpp"

namespace hydro {

struct SettledLayout {
  explicit SettledLayout(const Layout& layout, const SolveOptions& options = {});
  // The states refer to the tree where it is.
  SettledLayout(const SettledLayout&) = delete;
  SettledLayout& operator=(const SettledLayout&) = delete;

  WaterProperties water;
  Tree tree;
  Settled settled;
};

/// @param settled of this layout @throws NotSolved
Solution solution_of(const Layout& layout, const SettledLayout& settled);

}  // namespace hydro
