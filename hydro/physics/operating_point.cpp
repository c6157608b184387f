#include "hydro/physics/operating_point.hpp"

#include "hydro/physics/supply_law.hpp"
#include "hydro/quantities/range.hpp"

#include <utility>

namespace hydro {
namespace {

PumpRange range_of(const PumpDuty& duty) {
  if (!duty.least_flow && !duty.most_flow) return PumpRange::unknown;
  if (duty.least_flow && duty.flow < *duty.least_flow) return PumpRange::below_least_flow;
  if (duty.most_flow && duty.flow > *duty.most_flow) return PumpRange::above_most_flow;
  return PumpRange::inside;
}

PumpDuty duty_of(const Pump& pump, const PumpAtFlow& now, double weight_density) {
  const PumpLaw law(pump, weight_density);
  PumpDuty duty{.flow = Flow::from_value(now.flow), .head = Length::from_value(now.head)};
  const double r = now.speed_ratio;
  if (pump.curve_speed) duty.speed = r * *pump.curve_speed;
  if (pump.least_flow) duty.least_flow = r * *pump.least_flow;
  if (pump.most_flow) duty.most_flow = r * *pump.most_flow;
  duty.range = range_of(duty);
  duty.water_power = Power::from_value(weight_density * now.flow * now.head);
  duty.efficiency = law.efficiency(now);
  if (duty.efficiency) duty.shaft_power = duty.water_power / *duty.efficiency;
  if (const auto required = law.npsh_required(now))
    duty.npsh_required = Length::from_value(*required);
  return duty;
}

}  // namespace

bool takes_water_in(const Supply& supply) {
  return supply.pressure || supply.tank;
}

OperatingPoint operating_point(const Supply& supply,
                               const Flow& flow,
                               const Water& water,
                               const Site& site) {
  Examination examination;
  examination.include("supply", problems(supply));
  examination.include("water", problems(water));
  examination.include("site", problems(site));
  constexpr double most = 1e9;
  examination.within("flow", flow, Range<Flow>{takes_water_in(supply) ? -most : 0, most, m3_per_h});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));

  const WaterProperties is = properties(water);
  const double weight_density = si(is.density) * gravity;
  const auto pressure_of = [&](double head) { return Pressure::from_value(weight_density * head); };
  const SupplyAtFlow now = SupplyLaw(supply, is).in_full(si(flow));

  OperatingPoint point{.flow = flow,
                       .pressure = pressure_of(now.lines.head),
                       .source_pressure = pressure_of(now.source),
                       .filter_loss = pressure_of(now.filter_loss),
                       .suction_loss = Length::from_value(now.suction_loss)};
  if (supply.gauge) {
    const bool after = supply.gauge->after_filter.value_or(false);
    point.gauge_reading = (after ? point.pressure : point.source_pressure) -
                          pressure(supply.gauge->height.value_or(Length{}), is.density);
  }
  if (!supply.pump) return point;
  const Length lift = supply.suction ? supply.suction->lift : Length{};
  point.npsh_available =
      head(atmospheric_pressure(site) - is.vapour_pressure, is.density) - lift - point.suction_loss;
  point.pumps.push_back(duty_of(*supply.pump, now.pump[0], weight_density));
  if (supply.second_pump)
    point.pumps.push_back(duty_of(*supply.second_pump, now.pump[1], weight_density));
  // The first of two in series feeds the second under pressure.
  if (supply.second_pump && supply.arrangement == PumpArrangement::series)
    point.pumps.back().npsh_required.reset();
  return point;
}

}  // namespace hydro
