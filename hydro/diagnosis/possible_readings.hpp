// possible_readings.hpp: all that could be read in a layout. Not installed.
#pragma once

#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/units.hpp"

#include <cstddef>
#include <vector>

namespace hydro {

/// Outlets of a line that are tried: all, or so many evenly spread, both ends among them.
std::vector<int> tried_outlets(const Line& line, int most);

/// Without figures. @param places empty: all of them
std::vector<Reading> possible_readings(const Layout& layout,
                                       const std::vector<ReadingPlace>& places,
                                       int most_of_a_line);

/// From the first supply along the pipes, to where it is read.
Length way_to(const Layout& layout, std::size_t line, const Length& place);
Length way_to(const Layout& layout, const Reading& reading);

}  // namespace hydro
