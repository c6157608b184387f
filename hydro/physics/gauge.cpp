#include "hydro/physics/gauge.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {

std::vector<Problem> problems(const Gauge& gauge) {
  Examination examination;
  examination.within("height", gauge.height, Range<Length>{-100, 100, units::m});
  examination.within("range", gauge.range, Range<Pressure>{0, 100000, kPa, true});
  return examination.take();
}

}  // namespace hydro
