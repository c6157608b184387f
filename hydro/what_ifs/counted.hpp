// counted.hpp: what stepping up the outlets of a line has in common. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/room_on_line.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace hydro {

/// Solves a layout and judges it.
RoomAtCount at_count(const Layout& layout, int added, const Limits& limits);

/// @throws InvalidInput for a `most` out of its range, or a line without water
void require_room(const Layout& layout, std::string_view line, int most);

/// The layout with a line all of one pipe.
Layout with_pipe(const Layout& layout, std::string_view line, const Pipe& pipe);

}  // namespace hydro
