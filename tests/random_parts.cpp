#include "random_parts.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <utility>

namespace hydro {

void give_wall(Dice& dice, const Mix& mix, Pipe& pipe) {
  const double kind = dice.between(0, 1);
  if (kind < 0.5)
    pipe.hazen_williams = dice.between(80, 150);
  else if (kind < 0.85 && mix.darcy_weisbach)
    pipe.roughness = (dice.chance(0.5) ? 0 : dice.log_between(1e-5, 1e-2)) * pipe.inside_diameter;
  else
    pipe.darcy_factor = dice.between(0.01, 0.05);
}

namespace {

/// One that holds its flow, between two pressures or above its minimum.
Outlet bent_outlet(Dice& dice) {
  const Pressure low = dice.log_between(5, 200) * kPa;
  if (dice.chance(0.6))
    return {.flow = dice.log_between(1, 300) * lph,
            .compensating = Compensating{low, dice.log_between(1.2, 10) * low}};
  return {.flow = dice.log_between(1, 300) * lph,
          .at = 2.0 * low,
          .exponent = dice.chance(0.3) ? 0 : dice.between(0, 0.0999),
          .minimum = low};
}

}  // namespace

Outlet random_outlet(Dice& dice, const Mix& mix) {
  if (dice.chance(mix.bent_outlets)) return bent_outlet(dice);
  const double favourites[] = {0.5, 0.5, 0.5, mix.least_exponent, mix.most_exponent};
  return {.flow = dice.log_between(1, 3000) * lph,
          .at = dice.between(50, 400) * kPa,
          .exponent = dice.chance(0.6) ? favourites[dice.whole(0, 4)]
                                       : dice.between(mix.least_exponent, mix.most_exponent)};
}

Riser random_riser(Dice& dice) {
  Riser riser{.height = dice.between(0, 3) * units::m};
  if (dice.chance(0.3)) return riser;
  riser.inside_diameter = dice.log_between(5, 40) * mm;
  if (dice.chance(0.5))
    riser.hazen_williams = 150;
  else
    riser.darcy_factor = 0.025;
  riser.loss_coefficient = dice.between(0, 3);
  return riser;
}

Line random_line(Dice& dice, const Mix& mix, double scale, bool with_outlets) {
  Line line;
  line.pipe.inside_diameter = dice.log_between(10, 100) * scale * mm;
  give_wall(dice, mix, line.pipe);
  line.ground_rise = dice.between(-1, 1) * dice.log_between(0.1, 60) * units::m;
  if (dice.chance(0.3)) line.loss_coefficient = dice.between(0, 20);
  if (!with_outlets) {
    line.length = dice.log_between(1, 300) * units::m;
    return line;
  }
  line.outlet = random_outlet(dice, mix);
  line.count = static_cast<int>(dice.log_between(1, mix.most_outlets + 0.999));
  line.spacing = dice.log_between(0.2, 15) * units::m;
  if (dice.chance(0.3)) line.first_at = dice.between(0, 5) * units::m;
  if (dice.chance(0.2)) line.length = line.place_of(*line.count) + dice.between(0, 20) * units::m;
  if (dice.chance(0.3)) line.outlet_loss_coefficient = dice.between(0, 2);
  if (dice.chance(0.5)) line.riser = random_riser(dice);
  return line;
}

std::vector<Fault> random_faults(Dice& dice, const Mix& mix, const std::vector<Line>& lines) {
  std::vector<Fault> faults;
  std::set<std::pair<std::string, int>> taken;
  const int wanted = dice.whole(0, mix.most_faults);
  for (int i = 0; i < wanted; ++i) {
    const Line& line =
        lines[static_cast<std::size_t>(dice.whole(0, static_cast<int>(lines.size()) - 1))];
    if (!line.outlet) continue;
    const int outlet = dice.whole(1, *line.count);
    if (!taken.emplace(line.name, outlet).second) continue;
    const double kind = dice.between(0, 1);
    if (kind < 0.5 && line.riser.inside_diameter)
      faults.emplace_back(kind < 0.4 ? Fault(head_off(line.name, outlet))
                                     : Fault(riser_sheared(line.name, outlet)));
    else if (kind < 0.7)
      faults.emplace_back(clogged(line.name, outlet, dice.between(0.01, 0.99)));
    else if (kind < 0.85)
      faults.emplace_back(worn(line.name, outlet, dice.between(0.01, 2)));
    else
      faults.emplace_back(capped(line.name, outlet));
  }
  return faults;
}

Length some_place(Dice& dice, const Line& line) {
  if (line.outlet_count() > 0 && dice.chance(0.4)) {
    const Length place = line.place_of(dice.whole(1, line.outlet_count()));
    return std::clamp(place + (dice.chance(0.5) ? 0 : dice.between(-0.9, 0.9)) * mm,
                      Length{},
                      line.whole_length());
  }
  return dice.between(0, 1) * line.whole_length();
}

void place_unevenly(Dice& dice, const Mix& mix, Line& line) {
  const std::vector<Outlet> kinds{*line.outlet, random_outlet(dice, mix), random_outlet(dice, mix)};
  std::vector<PlacedOutlet> outlets;
  Length place = (dice.chance(0.2) ? 0 : dice.between(0.1, 5)) * units::m;
  for (int i = 0; i < *line.count; ++i) {
    outlets.push_back({place, kinds[static_cast<std::size_t>(dice.whole(0, 2))]});
    if (!dice.chance(0.1)) place += dice.log_between(0.1, 15) * units::m;
  }
  line.length = outlets.back().place + dice.between(0.01, 10) * units::m;
  line.outlets = std::move(outlets);
  line.outlet.reset();
  line.count.reset();
  line.spacing.reset();
  line.first_at.reset();
}

std::vector<Fault> broad_faults(Dice& dice, const Mix& mix, const std::vector<Line>& lines) {
  std::vector<Fault> faults;
  const int wanted = dice.whole(0, mix.most_faults);
  for (int i = 0; i < wanted && dice.chance(2 * mix.breadth); ++i) {
    const Line& line =
        lines[static_cast<std::size_t>(dice.whole(0, static_cast<int>(lines.size()) - 1))];
    const double kind = dice.between(0, 1);
    const int outlet = dice.whole(1, std::max(1, line.outlet_count()));
    if (kind < 0.3)
      faults.emplace_back(
          leak(line.name,
               some_place(dice, line),
               dice.log_between(1, 3000) * lph,
               dice.between(50, 400) * kPa,
               dice.chance(0.5) ? std::optional<double>() : dice.between(mix.least_exponent, 1.5)));
    else if (kind < 0.4)
      faults.emplace_back(line_cut(line.name, some_place(dice, line)));
    else if (kind < 0.5)
      faults.emplace_back(end_open(line.name));
    else if (kind < 0.65)
      faults.emplace_back(valve_part_closed(line.name, dice.log_between(0.1, 1000)));
    else if (kind < 0.8)
      faults.emplace_back(nozzle_missing(line.name, outlet, dice.log_between(2, 20) * mm));
    else
      faults.emplace_back(wrong_outlet(line.name, outlet, random_outlet(dice, mix)));
  }
  return faults;
}

namespace {

/// One that falls all the way. Its suction head, power and droop are of no catalogue.
Pump some_pump(Dice& dice, const Mix& mix) {
  const Flow most = dice.log_between(0.05, 50) * lps;
  const Length at_rest = dice.log_between(3, 150) * units::m;
  Pump pump;
  const int points = mix.through_points ? dice.whole(2, 6) : dice.chance(0.5) ? 2 : 4;
  double share = dice.chance(0.5) ? 0 : dice.between(0, 0.3), left = 1;
  for (int i = 0; i < points; ++i) {
    pump.points.push_back({share * most, left * at_rest});
    share += dice.between(0.05, 0.6);
    left *= 1 - dice.log_between(0.01, 0.6);
  }
  if (!mix.through_points || dice.chance(0.3)) pump.shape = CurveShape::quadratic;
  const Flow last = pump.points.back().flow;
  if (dice.chance(0.6)) {
    pump.curve_speed = dice.between(1400, 3500) * rpm;
    pump.speed = dice.between(0.3, 1.3) * *pump.curve_speed;
  }
  if (dice.chance(0.5)) {
    pump.least_flow = dice.between(0.1, 0.3) * last;
    pump.most_flow = dice.between(0.5, 1) * last;
    if (mix.through_points && dice.chance(0.5))
      pump.efficiencies = {{0.2 * last, dice.between(0.3, 0.5)},
                           {0.5 * last, dice.between(0.5, 0.8)},
                           {dice.between(0.7, 1) * last, dice.between(0.4, 0.8)}};
    else
      pump.efficiency = dice.between(0.3, 0.85);
    pump.power = dice.between(0.5, 3) * si(last) * si(at_rest) * 2e4 * units::W;
    if (dice.chance(0.6)) pump.droop = dice.between(0, 0.3);
  }
  if (dice.chance(0.3))
    pump.npsh_required = {{0 * lps, dice.between(1, 3) * units::m},
                          {last, dice.between(3, 8) * units::m}};
  return pump;
}

/// What was drawn may break the rules for a droop, or have its range where there is no head.
Pump random_pump(Dice& dice, const Mix& mix) {
  for (;;)
    if (Pump pump = some_pump(dice, mix); problems(pump).empty()) return pump;
}

}  // namespace

void give_source(Dice& dice, const Mix& mix, Supply& supply) {
  const double kind = dice.between(0, 1);
  if (kind < 0.1) return;
  supply.pressure.reset();
  if (kind < 0.2) {
    supply.tank = Tank{.level = dice.log_between(0.1, 40) * units::m};
  } else if (kind < 0.3) {
    const Pressure at_rest = dice.log_between(20, 800) * kPa;
    supply.hydrant =
        Hydrant{at_rest, dice.between(0.1, 0.98) * at_rest, dice.log_between(0.05, 50) * lps};
  } else {
    supply.pump = random_pump(dice, mix);
    if (dice.chance(0.3)) {
      supply.second_pump = dice.chance(0.4) ? *supply.pump : random_pump(dice, mix);
      if (dice.chance(0.7))
        supply.arrangement = dice.chance(0.5) ? PumpArrangement::parallel : PumpArrangement::series;
    }
    if (dice.chance(0.7)) supply.suction = Suction{.lift = dice.between(-3, 7) * units::m};
    if (supply.suction && dice.chance(0.7)) {
      supply.suction->pipe = Pipe{.inside_diameter = dice.log_between(25, 200) * mm};
      give_wall(dice, mix, *supply.suction->pipe);
      supply.suction->length = dice.between(1, 30) * units::m;
      supply.suction->loss_coefficient = dice.between(0, 10);
    }
  }
  if (dice.chance(0.4))
    supply.filter = Filter{dice.log_between(1, 50) * kPa, dice.log_between(0.05, 20) * lps};
  if (dice.chance(0.4))
    supply.gauge = Gauge{.height = dice.between(0, 1) * units::m,
                         .after_filter = supply.filter && dice.chance(0.5)};
}

void give_regulators_and_valves(Dice& dice, std::vector<Line>& lines) {
  using enum ValveOpening;
  constexpr ValveOpening gates[] = {open, quarter_closed, half_closed, three_quarters_closed};
  for (Line& line : lines) {
    if (dice.chance(0.3)) line.regulator = dice.log_between(2, 500) * kPa;
    if (line.outlet && dice.chance(0.2)) line.outlet->regulator = dice.log_between(2, 300) * kPa;
    for (PlacedOutlet& placed : line.outlets)
      if (dice.chance(0.1)) placed.outlet.regulator = dice.log_between(2, 300) * kPa;
    if (dice.chance(0.05))
      line.valve = Valve{.opening = shut};
    else if (dice.chance(0.2))
      line.valve = Valve{ValveKind::gate, gates[dice.whole(0, 3)]};
  }
}

std::vector<WateringSet> random_sets(Dice& dice, const std::vector<Line>& lines) {
  std::vector<WateringSet> sets;
  if (!dice.chance(0.6)) return sets;
  const int wanted = dice.whole(1, 4);
  for (int i = 0; i < wanted; ++i) {
    WateringSet set{.name = "set " + std::to_string(i)};
    const double share = dice.between(0, 1);
    for (const Line& line : lines)
      if (dice.chance(share)) set.lines.push_back(line.name);
    if (!set.lines.empty()) sets.push_back(std::move(set));
  }
  return sets;
}

std::vector<Fault> farm_faults(Dice& dice, const Mix& mix, const std::vector<Line>& lines) {
  std::vector<Fault> faults;
  const int wanted = dice.whole(0, mix.most_faults);
  for (int i = 0; i < wanted; ++i) {
    const Line& line =
        lines[static_cast<std::size_t>(dice.whole(0, static_cast<int>(lines.size()) - 1))];
    const int pump = dice.whole(1, 2);
    std::optional<int> outlet;
    if (line.outlet_count() > 0 && dice.chance(0.5)) outlet = dice.whole(1, line.outlet_count());
    const double kind = dice.between(0, 1);
    if (kind < 0.2)
      faults.emplace_back(regulator_stuck_open(line.name, outlet));
    else if (kind < 0.3)
      faults.emplace_back(regulator_stuck_shut(line.name, outlet));
    else if (kind < 0.5)
      faults.emplace_back(valve_left_open(line.name));
    else if (kind < 0.7)
      faults.emplace_back(pump_worn(dice.between(0.01, 0.9), pump));
    else if (kind < 0.85)
      faults.emplace_back(engine_slow(dice.between(300, 2500) * rpm, pump));
    else
      faults.emplace_back(filter_dirty(dice.log_between(1, 300) * kPa));
  }
  return faults;
}

}  // namespace hydro
