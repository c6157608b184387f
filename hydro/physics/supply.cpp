#include "hydro/physics/supply.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {
namespace {

/// Exactly one source; what belongs to a pump goes with a pump.
void examine_source(const Supply& supply, Examination& examination) {
  const int sources = int(supply.pressure.has_value()) + int(supply.pump.has_value()) +
                      int(supply.tank.has_value()) + int(supply.hydrant.has_value());
  if (sources == 0)
    examination.add("pressure",
                    "is not given, nor is a pump, a tank or a hydrant; the water comes from one");
  if (sources > 1)
    examination.add("pressure, pump, tank, hydrant",
                    "are given more than one at once; take one, the water comes from one source");
  const auto needs_pump = [&](bool given, const char* key) {
    if (given && !supply.pump) examination.add(key, "is given, but there is no pump");
  };
  needs_pump(supply.suction.has_value(), "suction");
  needs_pump(supply.second_pump.has_value(), "second_pump");
  if (supply.arrangement && !supply.second_pump)
    examination.add("arrangement", "is given, but there is no second_pump");
  if (supply.gauge && supply.gauge->after_filter.value_or(false) && !supply.filter)
    examination.add("gauge.after_filter", "is true, but there is no filter");
}

}  // namespace

std::vector<Problem> problems(const Supply& supply) {
  Examination examination;
  examine_source(supply, examination);
  examination.within("pressure", supply.pressure, Range<Pressure>{0, 10000, kPa});
  const auto include = [&](const char* part, const auto& it) {
    if (it) examination.include(part, problems(*it));
  };
  include("pump", supply.pump);
  include("second_pump", supply.second_pump);
  include("tank", supply.tank);
  include("hydrant", supply.hydrant);
  include("suction", supply.suction);
  include("filter", supply.filter);
  include("gauge", supply.gauge);
  examination.within("elevation", supply.elevation, Range<Length>{-10000, 10000, units::m});
  return examination.take();
}

}  // namespace hydro
