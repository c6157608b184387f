// assumptions.hpp: what was not given and therefore assumed.
//
// What      One sentence for each default that the answer rests on, so that nothing is silently
//           filled in.
// Threads   Pure function.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/unit_system.hpp"

#include <string>
#include <vector>

namespace hydro {

/// In the order supply, site, water, lines, faults; the same assumption about many lines is said
/// once.
std::vector<std::string> assumptions(const Layout& layout, UnitSystem units);

}  // namespace hydro
