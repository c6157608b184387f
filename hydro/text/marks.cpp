#include "hydro/text/marks.hpp"

#include "hydro/text/doings.hpp"

namespace hydro {
namespace {

struct Shape {
  const char* outline;
  bool filled;
};

/// Every one differs from the others in outline or in filling.
Shape shape_of(Doing what) {
  constexpr const char* disc = "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z";
  switch (what) {
    case Doing::broken:
      return {"m-5 -5l10 10m0 -10l-10 10", false};
    case Doing::capped:
      return {"m-4 -4h8v8h-8z", false};
    case Doing::shut:
      return {"m-4 -4h8v8h-8zm0 0l8 8", false};
    case Doing::without_water:
      return {"m-5.5 0h11", false};
    case Doing::dry:
      return {"m0 -5.5l5.5 5.5l-5.5 5.5l-5.5 -5.5z", false};
    case Doing::below_minimum:
      return {"m-5 -4h10l-5 9z", false};
    case Doing::below_rated:
      return {disc, false};
    case Doing::above_maximum:
      return {"m0 -5l5 9h-10z", true};
    case Doing::serves:
      break;
  }
  return {disc, true};
}

}  // namespace

void draw_mark(Svg& svg, Doing what, const Point& at, std::string_view tip) {
  const Shape shape = shape_of(what);
  const bool is_bare = what == Doing::broken || what == Doing::without_water;
  const double width = is_bare ? 2.2 : 1.4;
  svg.shape(at, shape.outline, shape.filled ? hue : "#ffffff", {hue, width}, name_of(what), tip);
}

void draw_mark_before(Svg& svg, const Point& at) {
  svg.shape(at, "m-2 0h4", "none", {grey, 4}, "before", "");
}

void draw_regulator_mark(Svg& svg, const Point& at, std::string_view tip) {
  svg.shape(at, "m-7 -4.5l14 9v-9l-14 9z", "#ffffff", {hue, 1.4}, "regulator", tip);
}

}  // namespace hydro
