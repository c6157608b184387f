// fed_inside.hpp: a row that is fed at a place along it. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/pipe.hpp"
#include "hydro/quantities/units.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// Names of the two lines that carry the outlets of a row: before the place, and from it on.
std::string near_part(const std::string& row);
std::string far_part(const std::string& row);

/// Puts a feed to the place in the row's stead, under its name, and its parts after all lines. The row
/// must be terminal (terminal_line.hpp).
/// @param feed_pipe none: water comes to the place without loss, but that of 1 mm of the row's pipe
void feed_inside(const Layout& layout,
                 std::size_t index,
                 const Length& place,
                 const std::optional<Pipe>& feed_pipe,
                 std::vector<Line>& lines);

}  // namespace hydro
