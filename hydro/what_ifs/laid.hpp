// laid.hpp: a layout with some of its lines laid in other pipe. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"

#include <vector>

namespace hydro {

/// The same supplies, sets that run and faults with these lines, examined once.
/// @throws InvalidInput
Layout with_lines(const Layout& layout, std::vector<Line> lines);

}  // namespace hydro
