#include "hydro/answers/hand_method.hpp"

#include "hydro/layout/line.hpp"
#include "hydro/quantities/range.hpp"

#include <cmath>
#include <utility>

namespace hydro {

double multiple_outlet_factor(int outlets, double flow_exponent, FirstOutlet first) {
  Examination examination;
  examination.within("outlets", outlets, 1, most_outlets);
  examination.within("flow_exponent", flow_exponent, Range<double>{1, 2, units::plain});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  if (outlets == 1) return 1;
  const double n = outlets;
  const double factor =
      1 / (flow_exponent + 1) + 1 / (2 * n) + std::sqrt(flow_exponent - 1) / (6 * n * n);
  return first == FirstOutlet::at_one_spacing ? factor : (2 * n * factor - 1) / (2 * n - 1);
}

}  // namespace hydro
