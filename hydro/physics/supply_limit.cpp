#include "hydro/physics/supply_limit.hpp"

#include <algorithm>

namespace hydro {

std::vector<SupplyLimit> limits_passed(const Supply& supply, const OperatingPoint& point) {
  constexpr double rounding = 1e-9;
  std::vector<SupplyLimit> passed;
  const auto add = [&](SupplyLimit limit, bool is_passed) {
    if (is_passed) passed.push_back(limit);
  };
  for (std::size_t i = 0; i < point.pumps.size(); ++i) {
    const PumpDuty& duty = point.pumps[i];
    const Pump& pump = i == 0 ? *supply.pump : *supply.second_pump;
    add(SupplyLimit::top_speed,
        pump.top_speed && duty.speed && *duty.speed > *pump.top_speed * (1 + rounding));
    add(SupplyLimit::power,
        pump.power && duty.shaft_power && *duty.shaft_power > *pump.power * (1 + rounding));
    add(SupplyLimit::least_flow, duty.range == PumpRange::below_least_flow);
    add(SupplyLimit::most_flow, duty.range == PumpRange::above_most_flow);
    add(SupplyLimit::suction,
        duty.npsh_required && point.npsh_available && *point.npsh_available < *duty.npsh_required);
  }
  add(SupplyLimit::gauge_range,
      supply.gauge && supply.gauge->range && point.gauge_reading &&
          *point.gauge_reading > *supply.gauge->range);
  std::sort(passed.begin(), passed.end());
  passed.erase(std::unique(passed.begin(), passed.end()), passed.end());
  return passed;
}

}  // namespace hydro
