#include "hydro/physics/operating_point.hpp"

namespace hydro {

OperatingPoint operating_point(const Supply& supply, const Flow& flow, const Water&, const Site&) {
  return {.flow = flow,
          .pressure = supply.pressure.value(),
          .source_pressure = supply.pressure.value()};
}

}  // namespace hydro
