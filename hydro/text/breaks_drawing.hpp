// breaks_drawing.hpp: every outlet broken in turn, drawn as an SVG picture.
//
// What      A square of marks: a row for each outlet that is broken, a column for each outlet, and
//           in each place the shape of what that outlet then does: those of drawing.hpp, a small
//           disc for one that works. The first row is before any break. At the end of a row stand
//           how many others that break puts out of work, and what more escapes. Of more than 40 outlets
//           that have water, or where only counts are kept, instead a curve for each line: over the
//           outlet that is broken, how many others are put out of work (solid) and below their rated
//           pressure (dashed).
// Range     Of more than 24 lines, the curves of 24 are drawn, first of all those with the most others
//           out of work; the rest are counted in words.
// Source    SVG 1.1, static, without scripts, styles or links.
// Errors    InvalidInput when a number is not finite.
// Threads   Pure function.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/text/drawing.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

#include <string>

namespace hydro {

/// What is not UTF-8 in a name is replaced by U+FFFD. @throws InvalidInput when a number is not
/// finite.
std::string to_svg(const Breaks& breaks, const DrawingOptions& options = {});

}  // namespace hydro
