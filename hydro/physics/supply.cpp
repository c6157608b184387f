#include "hydro/physics/supply.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {

std::vector<Problem> problems(const Supply& supply) {
  Examination examination;
  examination.within("pressure", supply.pressure, Range<Pressure>{0, 10000, kPa});
  examination.within("elevation", supply.elevation, Range<Length>{-10000, 10000, units::m});
  return examination.take();
}

}  // namespace hydro
