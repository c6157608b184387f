// settle.hpp: sweeps until the equations are met, and the last resort if they are not. Not installed.
#pragma once

#include "hydro/solver/solution.hpp"
#include "hydro/solver/sweeps.hpp"
#include "hydro/solver/tree.hpp"

namespace hydro {

/// The states that were reached, and whether they are an answer.
struct Settled {
  Sweeps sweeps;
  Residuals residuals;
  bool met;
};

/// @param newton_steps at most; then the last resort, with as many for each of its ramps
Settled settle(const Tree& tree, int newton_steps);

}  // namespace hydro
