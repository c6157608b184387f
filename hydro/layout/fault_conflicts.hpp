// fault_conflicts.hpp: faults that do not fit the lines, or one another. Not installed.
//
// What      One outlet takes one fault, one line one open end and one valve. Where a line is open to
//           the air no water is beyond, and no fault can act there.
// Threads   Pure function.
#pragma once

#include "hydro/layout/fault.hpp"
#include "hydro/layout/line.hpp"
#include "hydro/quantities/error.hpp"

#include <vector>

namespace hydro {

/// The place of a Problem is `fault N`, N from 1 on.
std::vector<Problem> problems_of_faults(const std::vector<Fault>& faults,
                                        const std::vector<Line>& lines);

}  // namespace hydro
