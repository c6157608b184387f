// fault_conflicts.hpp: faults that do not fit the lines or the supply, or one another. Not installed.
//
// What      One outlet takes one fault; one line one open end, one valve and one regulator; one pump,
//           engine and filter one each. Where a line is open to the air no water is beyond, and no
//           fault can act there; where lines join, that is for the layout to say (water_ways.hpp).
// Threads   Pure function.
#pragma once

#include "hydro/layout/fault.hpp"
#include "hydro/layout/line.hpp"
#include "hydro/quantities/error.hpp"

#include <vector>

namespace hydro {

/// The place of a Problem is `fault N`, N from 1 on.
/// @param with_sets whether there are watering sets, which shut valves
std::vector<Problem> problems_of_faults(const std::vector<Fault>& faults,
                                        const Supply& supply,
                                        const std::vector<Supply>& further_supplies,
                                        const std::vector<Line>& lines,
                                        bool with_sets);

}  // namespace hydro
