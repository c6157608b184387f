// solve_many.hpp: many random layouts, each solved once, and what is said of all of them.
#pragma once

#include "hydro/solver/solution.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// What a layout has, so that one sees what many of them are made of.
struct Trait {
  std::string_view name;
  bool (*has)(const Solution& solution);
};
extern const std::array<Trait, 15> traits;

/// What became of one layout.
struct Outcome {
  std::uint64_t seed = 0;  ///< any_layout() of it is the layout
  std::size_t kind = 0;    ///< of layout_kinds
  int outlets = 0;
  std::uint32_t traits = 0;  ///< one bit for each
  Residuals residuals = {};
  double seconds = 0;        ///< that solving took: the only figure that is not always the same
  std::string failure = {};  ///< not solved, a figure that is no number, any exception
  bool refused = false;      ///< what was drawn is no layout

  bool has(std::size_t trait) const { return ((traits >> trait) & 1U) == 1U; }
};

/// Solves those of the seeds from the first on; whatever the number of threads, in their order.
std::vector<Outcome> solve_many(std::uint64_t first_seed, std::size_t count, int threads);

}  // namespace hydro
