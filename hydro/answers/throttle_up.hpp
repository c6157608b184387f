// throttle_up.hpp: what a fault does at unchanged engine speed, and what more speed makes good.
//
// What      A break lowers the gauge; the usual answer is to throttle up until it reads as before.
//           Both are solved and compared with the sound layout, outlet by outlet.
// Range     With a held pressure the fault does not move the gauge and nothing is throttled.
// Errors    As in set_gauge.hpp; InvalidInput for a fault that does not fit the layout.
// Threads   Pure function.
#pragma once

#include "hydro/answers/comparison.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/layout/fault.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <vector>

namespace hydro {

/// Before, after, and after throttling up. What is newly below in the second comparison is what
/// throttling up does not cure.
struct Throttling {
  Pressure reading;  ///< of the gauge (or before the filter) when all was sound
  Solution sound;
  Solution broken;       ///< at unchanged speed
  Setting throttled_up;  ///< until the gauge reads as when all was sound
  Comparison at_unchanged_speed;
  Comparison after_throttling_up;
};

/// @param sound with the speed at which it runs
Throttling throttle_up(const Layout& sound, const std::vector<Fault>& faults);

}  // namespace hydro
