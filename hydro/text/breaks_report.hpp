// breaks_report.hpp: every outlet broken in turn, as sentences and a table that a grower reads.
//
// What      First, whether the others go on working, which break is the worst, and what the gauge
//           shows of it. Then a row for each break: what more escapes, what the supply gives, what the
//           gauge reads, how many others fall short because of it, and the weakest of them. Last,
//           the outlets that were not broken, and why.
// Accuracy  As in report.hpp. Long names are cut.
// Threads   Pure function.
// Example   examples/27_break_every_head.cpp
#pragma once

#include "hydro/quantities/unit_system.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

#include <optional>
#include <string>

namespace hydro {

/// @param units default those of the site
std::string breaks_report(const Breaks& breaks, std::optional<UnitSystem> units = {});

}  // namespace hydro
