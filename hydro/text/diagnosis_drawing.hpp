// diagnosis_drawing.hpp: how likely the fault is at each place along the lines, drawn as an SVG
// picture.
//
// What      Each line that runs is drawn from its inlet on, to one scale, beneath the line that feeds
//           it, with its outlets in their places. Over an outlet stands a bar as high as it is likely
//           that the fault is there; at the inlet one for the valve and the regulator, at the far end
//           one for an end left open. At the right stands what the line has in all, in words. What
//           is at the supply is drawn in a row of its own. Under the line, an outlet that was looked at
//           has the mark of drawing.hpp for what was seen, and where something was read, a dial
//           tells it against what was expected of the layout as it should be. Where to walk first is framed
//           and said in words: nothing hangs on colour.
// Range     Of more than 24 lines with outlets, the 24 most likely are drawn, in their order.
// Source    SVG 1.1, static, without scripts, styles or links.
// Errors    InvalidInput when a number is not finite.
// Threads   Pure function.
// Example   examples/find_fault.cpp
#pragma once

#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/text/drawing.hpp"

#include <string>
#include <vector>

namespace hydro {

/// @param layout,readings,sights,found what find_fault() was asked and answered
std::string to_svg_of_diagnosis(const Layout& layout,
                                const std::vector<Reading>& readings,
                                const std::vector<Sight>& sights,
                                const FoundFaults& found,
                                const DrawingOptions& options = {});

}  // namespace hydro
