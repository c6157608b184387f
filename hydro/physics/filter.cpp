#include "hydro/physics/filter.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {

std::vector<Problem> problems(const Filter& filter) {
  Examination examination;
  examination.within("loss", filter.loss, Range<Pressure>{0, 10000, kPa});
  examination.within("at", filter.at, Range<Flow>{0, 100000, m3_per_h, true});
  return examination.take();
}

}  // namespace hydro
