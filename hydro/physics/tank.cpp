#include "hydro/physics/tank.hpp"

#include "hydro/quantities/range.hpp"

#include <numbers>

namespace hydro {

std::optional<Area> Tank::surface() const {
  if (diameter) return std::numbers::pi / 4 * *diameter * *diameter;
  return area;
}

std::vector<Problem> problems(const Tank& tank) {
  Examination examination;
  examination.within("level", tank.level, Range<Length>{0, 1000, units::m});
  examination.within("diameter", tank.diameter, Range<Length>{0.01, 10000, units::m});
  examination.within("area", tank.area, Range<Area>{0.0001, 1e8, m2});
  if (tank.diameter && tank.area)
    examination.add("diameter, area", "are both given; take one of the two ways");
  return examination.take();
}

}  // namespace hydro
