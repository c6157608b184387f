// marks.hpp: a shape for each thing that an outlet does, so that a drawing says it without colour.
// Not installed.
#pragma once

#include "hydro/text/svg.hpp"
#include "hydro/text/words.hpp"

#include <string_view>

namespace hydro {

/// Half of how wide a mark is [px].
inline constexpr double mark_radius = 5;

/// @param tip what is shown when it is pointed at; may be empty
void draw_mark(Svg& svg, Doing what, const Point& at, std::string_view tip);
/// Where an outlet was before the fault.
void draw_mark_before(Svg& svg, const Point& at);
/// A valve, where a regulator holds.
void draw_regulator_mark(Svg& svg, const Point& at, std::string_view tip);

/// Solid: the pressure as it is. Dashed: as it was before the fault.
inline constexpr Stroke curve_stroke{hue, 1.6};
inline constexpr Stroke curve_stroke_before{grey, 1.2, "5 3"};

}  // namespace hydro
