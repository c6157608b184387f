#include "hydro/physics/suction.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {

std::vector<Problem> problems(const Suction& suction) {
  Examination examination;
  examination.within("lift", suction.lift, Range<Length>{-30, 10, units::m});
  if (suction.pipe) {
    examination.include("pipe", problems(*suction.pipe));
    if (!suction.length) examination.add("length", "is not given; a suction pipe needs it");
  } else if (suction.length || suction.loss_coefficient) {
    examination.add("pipe",
                    "is not given; length and loss_coefficient need the pipe they belong to");
  }
  examination.within("length", suction.length, Range<Length>{0, 10000, units::m});
  examination.within(
      "loss_coefficient", suction.loss_coefficient, Range<double>{0, 10000, units::plain});
  return examination.take();
}

}  // namespace hydro
