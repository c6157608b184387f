// day_report.hpp: the watering day as a page that a grower reads.
//
// What      Whether all sets get what they need, and what the day takes; the turns with their times,
//           the engine's speed and the gauge; how fast each set puts water down, on average and for
//           its weakest quarter; what stays with the roots, runs deep or is lost; what is left for
//           another day; filling and stopping.
// Accuracy  As in report.hpp; times to the minute.
// Errors    As in watering/day_plan.hpp.
// Threads   Pure function.
// Example   examples/plan_day.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/watering/day_plan.hpp"
#include "hydro/watering/surge.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// How it is told.
struct DayReportOptions {
  std::optional<UnitSystem> units = {};  ///< default those of the site
  std::vector<LineSurge> surges = {};    ///< of a turn, or of several: the worst are told
};

/// @param plan of the layout
std::string day_report(const Layout& layout,
                       const DayPlan& plan,
                       const DayReportOptions& options = {});

}  // namespace hydro
