// supply_drawing.hpp: what the supply gives against what the lines ask of it, drawn as an SVG
// picture.
//
// What      Pressure at the start of the lines over the flow. The thick curve is what the supply
//           gives there: a pump at its speed, less lift, suction and filter; a tank, a town main, a
//           held pressure. The thin one is what the lines ask for. Where they meet is what happens:
//           a filled disc. After a fault, what was before it is dashed, its meeting point a
//           ring, and an arrow leads from there to what is now. A bracket on the axis is the usable
//           range of a pump at its speed. Under the picture each point is told in words: flow,
//           pressures, the pump's own head, speed, power, NPSH and what is left of it. Nothing
//           hangs on colour.
// Formula   the lines' curve: the inflow with the pressure at their start held at 48 values, of what
//           the supply gives at rest (solve.hpp); the supply's: operating_point.hpp
// Range     Of several supplies the first is drawn, the others being as they are: they give or take
//           what they do at each pressure. What is below 0 is not drawn. The bracket is drawn for one pump; of two, the range of
//           each stands in words.
// Source    SVG 1.1, static, without scripts, styles or links.
// Errors    InvalidInput when a number of the solution is not finite.
// Threads   Pure functions.
#pragma once

#include "hydro/solver/solution.hpp"
#include "hydro/text/drawing.hpp"

#include <string>

namespace hydro {

/// The supply and the lines as they are.
/// @throws InvalidInput when a number is not finite.
std::string to_svg_of_supply(const Solution& solution, const DrawingOptions& options = {});

/// The same without and with faults, at another speed, or with other sets running.
/// @throws InvalidInput likewise.
std::string to_svg_of_supply(const Solution& before,
                             const Solution& after,
                             const DrawingOptions& options = {});

}  // namespace hydro
