// terminal_line.hpp: lines that can be laid another way without minding others. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/range.hpp"

#include <cstddef>

namespace hydro {

/// Adds what is wrong where no water comes to a line.
void require_water(const Layout& layout, std::size_t line, Examination& examination);

/// Likewise where a line has no outlets, has a fault, joins a line, or one begins on it or joins it.
void require_terminal(const Layout& layout, std::size_t line, Examination& examination);

}  // namespace hydro
