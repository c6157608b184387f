// random_looped.hpp: layouts in which water can come two ways, from a seed: grown trees whose far
// ends join others, rows between two mains, ring mains, grids, ponds, lines fed from both ends.
#pragma once

#include "hydro/layout/layout.hpp"

#include <cstdint>

#include "random_layout.hpp"

namespace hydro {

/// What a random looped layout is drawn from.
struct LoopedMix {
  /// Its `farm` gives the supplies any source, and adds regulators, valves, sets and their faults.
  Mix parts = {.most_lines = 10, .most_outlets = 25, .farm = true};
  bool check_valves = true;
  bool regulators = true;  ///< of lines
};

/// Nine of ten have a loop, in the others a valve or a cut opens it. About a third are drawn alike:
/// rows, mains and supplies that are all the same, on the flat, in whose cross pipes nothing moves.
/// The same seed and mix give the same layout.
Layout random_looped(std::uint64_t seed, const LoopedMix& mix = {});

/// Ways round in which water can run: lines that join others and supplies beside the first, both
/// as far as there is water, none of them shut.
int loops_of(const Layout& layout);

}  // namespace hydro
