// day_drawing.hpp: the watering day as bars over its hours, drawn as an SVG picture.
//
// What      A row for each set, in the order in which it was asked for: an outlined bar while its lines
//           fill, a filled one while it waters, with its length in words; at the end of the row
//           whether it has all, or what it still needs. Below them the supply, with its flow in each turn. Nothing hangs on
//           colour. Where the picture is shown in a browser, a bar that is pointed at tells its figures.
// Range     Of more than 40 sets the first 40 are drawn, and the rest are counted in words.
// Source    SVG 1.1, static, without scripts, styles or links.
// Errors    InvalidInput when a number is not finite.
// Threads   Pure function.
// Example   examples/plan_day.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/text/drawing.hpp"
#include "hydro/watering/day_plan.hpp"

#include <string>

namespace hydro {

/// What is not UTF-8 in a name is replaced by U+FFFD. @throws InvalidInput when a number is not
/// finite.
std::string to_svg_of_day(const Layout& layout,
                          const DayPlan& plan,
                          const DrawingOptions& options = {});

}  // namespace hydro
