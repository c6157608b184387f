// laid.hpp: a layout with some of its lines laid otherwise. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"

#include <vector>

namespace hydro {

/// The same supplies, sets that run and faults with these lines, examined once.
/// @throws InvalidInput
Layout with_lines(const Layout& layout, std::vector<Line> lines);
/// Likewise, with these sets in the place of the layout's own.
Layout with_lines(const Layout& layout, std::vector<Line> lines, std::vector<WateringSet> sets);

}  // namespace hydro
