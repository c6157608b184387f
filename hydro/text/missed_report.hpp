// missed_report.hpp: what to make up after a break, as a page that a grower reads.
//
// What      How much longer each line must run, for its weakest outlet and on average; what was
//           pumped and what of it was lost; outlets that get no water any more.
// Accuracy  As in report.hpp; times to the minute, the weakest's rounded up.
// Errors    None of its own.
// Threads   Pure function.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/watering/missed_water.hpp"

#include <optional>
#include <string>

namespace hydro {

/// @param missed of the layout, in this run @param units default those of the site
std::string missed_report(const Layout& layout,
                          const MissedWater& missed,
                          const InterruptedRun& run,
                          std::optional<UnitSystem> units = {});

}  // namespace hydro
