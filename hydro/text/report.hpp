// report.hpp: a solved layout told to the person who waters from it.
//
// What      First what is wrong, in sentences; then what the supply does, and tables to walk the
//           rows with: pressure, share of the rated flow, and the seconds in which an outlet fills a
//           bucket; where the pressure goes on its way to the weakest outlet; then what was assumed,
//           how well the equations are met, and the cautions.
// Accuracy  Nothing finer than 0.1 psi, 1 kPa or 0.1 gal/min is printed of a sprinkler: no gauge
//           reads it. Emitters under 1 gal/min (1 L/min) are told in gallons (litres) an hour.
// Range     Of a line with more than 60 outlets, the ends and the rows where something changes are
//           printed, up to 120.
// Threads   Pure functions.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/answers/throttle_up.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// How a report is written.
struct ReportOptions {
  std::optional<UnitSystem> units = {};       ///< default those of the site
  std::vector<SkippedFault> skipped = {};     ///< to be listed (Layout::with_possible_faults)
  std::optional<Throttling> throttling = {};  ///< told with what the faults do (throttle_up)
};

/// One layout as it is.
std::string report(const Solution& solution, const ReportOptions& options = {});

/// The same layout without and with its faults: tells what the faults do to the rest.
/// @throws InvalidInput when the two do not have the same lines and outlets.
std::string report(const Solution& before,
                   const Solution& after,
                   const ReportOptions& options = {});

}  // namespace hydro
