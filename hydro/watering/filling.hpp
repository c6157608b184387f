// filling.hpp: how much water the lines hold, how long they take to fill, and what runs out again.
//
// What      Volume of the bores; time to fill them at a gentle flow; and, when all is shut off, the
//           water that runs out through the lowest outlets.
// Formula   volume = sum of area x length, risers with a bore included
//           gentle flow = fill velocity x bore of the pipes that begin at the supplies
//           run out = what lies in pipes higher than the lowest open mouth
// Source    Geometry. Filling at no more than 1 ft/s, with vents open where air gathers: common
//           practice, no source.
// Range     Beyond narrow pipes the front is faster than in the first ones. A dip between two rises
//           holds its water back, which is not followed: run_out is the most there can be.
// Errors    InvalidInput for a flow or velocity that is not above 0.
// Threads   Pure functions.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// What a line holds.
struct LineVolume {
  std::string line = {};
  Volume volume = {};
};

/// How fast the lines are filled.
struct FillOptions {
  std::optional<Flow> flow = {};  ///< default: the gentle one
  Velocity velocity = 1 * ft_per_s;
};

/// Filling the lines to which water comes, and the way back.
struct Filling {
  std::vector<LineVolume> lines = {};
  Volume volume = {};
  Flow gentle_flow = {};
  Flow flow = {};          ///< at which they are filled
  Time time = {};          ///< at that flow
  Velocity velocity = {};  ///< at that flow, in the pipes that begin at the supplies together
  Volume run_out = {};     ///< when all is shut off
};

/// Of the sets that run, or of all lines. @throws InvalidInput
Filling filling(const Layout& layout, const FillOptions& options = {});

/// What one line holds.
Volume volume_of(const Line& line);

}  // namespace hydro
