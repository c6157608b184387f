// stopping_words.hpp: what stopping the water suddenly would do, in words. Not installed.
#pragma once

#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"
#include "hydro/watering/surge.hpp"

#include <vector>

namespace hydro {

/// How to fill and to close, and the lines that a sudden stop would strain, the worst first.
void write_filling_and_stopping(Page& page,
                                const std::vector<LineSurge>& surges,
                                const Figures& figures);

}  // namespace hydro
