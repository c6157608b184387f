// water_path.hpp: the way that water takes from a supply to an outlet. Not installed.
//
// What      Where lines join there is more than one. This one goes with the water wherever it can, on
//           through water that stands still where it must, and never through what is shut or parted.
// Threads   Pure function.
#pragma once

#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <cstddef>
#include <vector>

namespace hydro {

/// A stretch of one line, in the direction of the way.
struct PathLeg {
  std::size_t line;
  Length from;  ///< distance from the line's inlet
  Length to;
  Pressure at_start;  ///< in the pipe that the water comes out of
  Pressure at_end;    ///< where it goes on, or in the line at the outlet
  Length elevation_at_end;
  bool through_inlet;  ///< it comes in there
};

struct WaterPath {
  std::size_t supply;         ///< 0 the first, 1 on the further ones
  std::vector<PathLeg> legs;  ///< from the supply on
};

/// @param outlet from 1 on; one that water comes to
WaterPath water_path(const Solution& solution, std::size_t line, int outlet);

}  // namespace hydro
