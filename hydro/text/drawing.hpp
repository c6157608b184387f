// drawing.hpp: the pressure at every outlet along each line, drawn as an SVG picture.
//
// What      One panel for each line with outlets, over the distance from its inlet, with the rated,
//           the minimum and, where it is near, the maximum pressure of its outlets as labelled
//           lines. What an outlet does is told by the shape of its mark: a filled disc works, a
//           ring is below its rated pressure, a triangle that points down is below its minimum, one
//           that points up above its maximum, a diamond is dry, a square capped, a cross broken.
//           After a fault, the line is solid and what was before it is dashed. Nothing hangs on
//           colour: it may be printed in black and white. Where the picture is shown in a browser,
//           a mark that is pointed at tells its figures. Lines that are shut are named, not drawn. A
//           regulator is told in words, and where it stands at the line's own inlet and holds, as a
//           valve, two triangles tip to tip, at the pressure that it holds. Where water may come to
//           a line by more than one way, arrows over its plot run as the water does, and two filled
//           ones point at each other where waters meet; lines without outlets are told in words.
// Range     Of more than 50 outlets on a line, the worst of each stretch is marked and the curve
//           keeps its lowest and highest values, so that the picture stays legible and small
//           whatever their number. Of more than 24 lines, 24 are drawn, first of all those with an
//           outlet that does not serve, and the rest are counted in words.
// Source    SVG 1.1, static, without scripts, styles or links.
// Errors    InvalidInput when a number of the solution is not finite.
// Threads   Pure functions.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/quantities/unit_system.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>

namespace hydro {

/// How it is drawn.
struct DrawingOptions {
  std::optional<UnitSystem> units = {};  ///< default those of the site
};

/// One layout as it is. What is not UTF-8 in a name is replaced by U+FFFD.
/// @throws InvalidInput when a number is not finite.
std::string to_svg(const Solution& solution, const DrawingOptions& options = {});

/// The same layout without and with its faults.
/// @throws InvalidInput likewise, or when the two do not have the same lines and outlets.
std::string to_svg(const Solution& before,
                   const Solution& after,
                   const DrawingOptions& options = {});

}  // namespace hydro
