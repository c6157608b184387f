// check_solution.hpp: what must be true of every layout, however odd: it is solved, and every figure
// of the solution is one, or it is not, and says so.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>

namespace hydro {

/// Solves a layout and ends the process with a message where the solution is none: a figure that is
/// not finite, an outlet that gives water back, residuals that are not met.
/// @returns none: NotSolved
std::optional<Solution> solved_soundly(const Layout& layout);

/// Writes everything that can be written of a solution; ends the process where a report is empty.
void write_everything(const Solution& solution);

}  // namespace hydro
