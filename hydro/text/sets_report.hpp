// sets_report.hpp: which watering sets can run together, as a table a grower reads.
//
// What      Each set alone, every two of them, and all at once: the speed and the reading of the
//           gauge that give every outlet its rated pressure, the flow, the weakest outlet, the
//           fastest water, and whether it runs; where it does not, what stands in the way.
// Accuracy  As in report.hpp. Long names are cut.
// Errors    As in answers/sets_together.hpp.
// Threads   Pure functions.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/answers/sets_together.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/unit_system.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// @param together what sets_together() found of the layout
/// @param units default those of the site
std::string sets_report(const Layout& layout,
                        const std::vector<SetsTogether>& together,
                        std::optional<UnitSystem> units = {});

}  // namespace hydro
