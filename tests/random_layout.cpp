#include "random_layout.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace hydro {
namespace {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * std::ldexp(static_cast<double>(engine_() >> 11), -53);
  }
  double log_between(double low, double high) {
    return std::exp(between(std::log(low), std::log(high)));
  }
  int whole(int low, int high) { return std::min(high, static_cast<int>(between(low, high + 1))); }
  bool chance(double share) { return between(0, 1) < share; }

 private:
  std::mt19937_64 engine_;
};

void give_wall(Dice& dice, const Mix& mix, Pipe& pipe) {
  const double kind = dice.between(0, 1);
  if (kind < 0.5)
    pipe.hazen_williams = dice.between(80, 150);
  else if (kind < 0.85 && mix.darcy_weisbach)
    pipe.roughness = (dice.chance(0.5) ? 0 : dice.log_between(1e-5, 1e-2)) * pipe.inside_diameter;
  else
    pipe.darcy_factor = dice.between(0.01, 0.05);
}

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

/// An outlet's place exactly, nearly, or anywhere along the line.
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

/// What a plain line does not have. Draws after all else, so that plain layouts stay as they are.
void broaden(Dice& dice, const Mix& mix, const Supply& supply, std::vector<Line>& lines) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    Line& line = lines[i];
    if (!dice.chance(mix.breadth)) continue;
    if (line.outlet && dice.chance(0.4)) place_unevenly(dice, mix, line);
    if (line.outlet_count() > 0 && dice.chance(0.4)) {
      line.ground_rise.reset();
      for (int outlet = 0; outlet < line.outlet_count(); ++outlet)
        line.elevations.push_back(*supply.elevation + dice.between(-10, 10) * units::m);
    }
    if (line.outlet_count() > 0 && dice.chance(0.4))
      line.connection_length = dice.between(0, 1) * units::m;
    for (int reach = dice.whole(0, 3); reach > 0; --reach) {
      const Length to = some_place(dice, line);
      if (!(to > (line.reaches.empty() ? Length{} : line.reaches.back().to) + 1 * mm)) continue;
      Pipe pipe{.inside_diameter = dice.between(0.7, 2) * line.pipe.inside_diameter};
      give_wall(dice, mix, pipe);
      line.reaches.push_back({pipe, to});
    }
    if (i == 0 || !dice.chance(0.6)) continue;
    const Line& feeder = lines[static_cast<std::size_t>(dice.whole(0, static_cast<int>(i) - 1))];
    line.fed_by = feeder.name;
    if (feeder.outlet_count() > 0 && dice.chance(0.3))
      line.tap_outlet = dice.whole(1, feeder.outlet_count());
    else
      line.tap = some_place(dice, feeder);
  }
}

/// Faults that a plain layout does not have; those that do not fit are left out.
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

}  // namespace

Layout random_layout(std::uint64_t seed, const Mix& mix) {
  Dice dice(seed);
  const int count = static_cast<int>(dice.log_between(1, mix.most_lines + 0.999));
  const double scale = dice.log_between(0.1, 10);
  std::vector<Line> lines;
  for (int i = 0; i < count; ++i) {
    lines.push_back(random_line(dice, mix, scale, dice.chance(0.8) || i + 1 == count));
    lines.back().name = "line " + std::to_string(i);
    if (i > 0 && dice.chance(0.85))
      lines.back().fed_by = "line " + std::to_string(dice.whole(0, i - 1));
  }
  const Supply supply{.pressure = (dice.chance(0.1) ? 0 : dice.log_between(1, 800)) * kPa,
                      .elevation = dice.between(-500, 500) * units::m};
  std::vector<Fault> faults = random_faults(dice, mix, lines);
  broaden(dice, mix, supply, lines);
  for (const Fault& fault : broad_faults(dice, mix, lines)) faults.push_back(fault);
  return Layout(supply, lines).with_possible_faults(faults).layout;
}

}  // namespace hydro
