#include "hydro/physics/site.hpp"

#include "hydro/quantities/range.hpp"

#include <cmath>

namespace hydro {

Pressure atmospheric_pressure(const Site& site) {
  if (auto found = problems(site); !found.empty()) throw InvalidInput(std::move(found));
  const double altitude_m = site.altitude.value_or(0 * units::m) / units::m;
  return 101325 * std::pow(1 - 0.0065 * altitude_m / 288.15, 5.25588) * units::Pa;
}

std::vector<Problem> problems(const Site& site) {
  Examination examination;
  examination.name("name", site.name);
  examination.within("altitude", site.altitude, Range<Length>{-500, 6000, units::m});
  return examination.take();
}

}  // namespace hydro
