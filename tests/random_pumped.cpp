#include "random_pumped.hpp"

#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "random_parts.hpp"

namespace hydro {
namespace {

/// One that brings about this flow at this head.
Pump fitting_pump(Dice& dice, const Flow& flow, const Length& head) {
  const double at_rest = dice.between(1.1, 1.6);
  Pump pump{.points = {{Flow{}, at_rest * head}, {flow, head}, {1.5 * flow, 0.6 * head}},
            .curve_speed = 2600 * rpm};
  if (dice.chance(0.5)) pump.shape = CurveShape::quadratic;
  if (dice.chance(0.7)) pump.speed = dice.between(1800, 3000) * rpm;
  if (dice.chance(0.4)) pump.top_speed = dice.between(3000, 5000) * rpm;
  if (dice.chance(0.5)) {
    pump.least_flow = 0.2 * flow;
    pump.most_flow = 1.3 * flow;
    pump.efficiency = dice.between(0.4, 0.8);
    if (dice.chance(0.6)) {
      pump.power = Power::from_value(1.5 * 9800 * si(flow) * si(head) / *pump.efficiency);
      pump.droop = dice.between(0, 0.1);
    }
  }
  return pump;
}

Supply random_supply(Dice& dice, const Flow& flow, const Length& elevation) {
  const Length head = dice.between(15, 50) * units::m;
  Supply supply{.pump = fitting_pump(dice, flow, head), .elevation = elevation};
  if (dice.chance(0.4)) {
    supply.second_pump = dice.chance(0.3) ? *supply.pump : fitting_pump(dice, flow, head);
    supply.arrangement = dice.chance(0.5) ? PumpArrangement::parallel : PumpArrangement::series;
  }
  if (dice.chance(0.5)) {
    const double velocity = 1.5;  // m/s
    supply.suction =
        Suction{.lift = dice.between(-2, 5) * units::m,
                .pipe = Pipe{.inside_diameter = Length::from_value(
                                 std::max(0.002, std::sqrt(4 * si(flow) / (3.14159 * velocity)))),
                             .hazen_williams = 140},
                .length = 8 * units::m,
                .loss_coefficient = 3};
  }
  if (dice.chance(0.6)) supply.filter = Filter{dice.between(0, 40) * kPa, flow};
  if (dice.chance(0.7)) {
    supply.gauge = Gauge{.height = dice.between(-0.5, 3) * units::m};
    if (supply.filter && dice.chance(0.5)) supply.gauge->after_filter = true;
  }
  return supply;
}

std::vector<Fault> random_supply_faults(Dice& dice, const Supply& supply) {
  std::vector<Fault> faults;
  if (dice.chance(0.2)) faults.emplace_back(pump_worn(dice.between(0.05, 0.3)));
  if (dice.chance(0.2)) faults.emplace_back(engine_slow(dice.between(1500, 1800) * rpm));
  if (supply.second_pump && dice.chance(0.2)) faults.emplace_back(pump_worn(0.1, 2));
  if (supply.filter && dice.chance(0.3))
    faults.emplace_back(filter_dirty(supply.filter->loss + dice.between(1, 40) * kPa));
  return faults;
}

void regulate(Dice& dice, std::vector<Line>& lines) {
  for (Line& line : lines) {
    if (dice.chance(0.25)) line.regulator = dice.between(30, 300) * kPa;
    const bool is_plain = line.outlet && !line.outlet->compensating && line.outlet->exponent &&
                          *line.outlet->exponent >= 0.1;
    if (is_plain && dice.chance(0.2))
      line.outlet->regulator = dice.between(0.8, 2) * line.outlet->rated_pressure();
  }
}

std::vector<WateringSet> two_sets(Dice& dice, const std::vector<Line>& lines) {
  std::vector<WateringSet> sets;
  if (!dice.chance(0.5)) return sets;
  for (const char* name : {"morning", "evening"}) {
    WateringSet set{.name = name};
    for (const Line& line : lines)
      if (dice.chance(0.5)) set.lines.push_back(line.name);
    if (!set.lines.empty()) sets.push_back(std::move(set));
  }
  return sets;
}

}  // namespace

Layout random_pumped(std::uint64_t seed) {
  Dice dice(seed + 7'000'000);
  const Layout plain = random_layout(seed, {.most_lines = 6, .most_outlets = 20});
  std::vector<Line> lines = plain.lines();
  regulate(dice, lines);
  std::vector<WateringSet> sets = two_sets(dice, lines);
  Layout layout(Supply{.pressure = 300 * kPa, .elevation = plain.supply().elevation},
                std::move(lines),
                {},
                {},
                std::move(sets));
  layout = layout.with_possible_faults(plain.faults()).layout;
  if (!layout.sets().empty()) layout = layout.watering({layout.sets()[0].name});
  const Flow flow = std::max(solve(layout).inflow(), 10 * lph);
  layout = layout.with_supply(random_supply(dice, flow, *plain.supply().elevation));
  return layout.with_possible_faults(random_supply_faults(dice, layout.supply())).layout;
}

}  // namespace hydro
