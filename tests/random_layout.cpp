#include "random_layout.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "random_parts.hpp"

namespace hydro {
namespace {

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
  Supply supply{.pressure = (dice.chance(0.1) ? 0 : dice.log_between(1, 800)) * kPa,
                .elevation = dice.between(-500, 500) * units::m};
  std::vector<Fault> faults = random_faults(dice, mix, lines);
  broaden(dice, mix, supply, lines);
  for (const Fault& fault : broad_faults(dice, mix, lines)) faults.push_back(fault);
  if (!mix.farm) return Layout(supply, lines).with_possible_faults(faults).layout;

  give_source(dice, mix, supply);
  give_regulators_and_valves(dice, lines);
  Layout layout(supply, lines, {}, {}, random_sets(dice, lines));
  if (!layout.sets().empty() && dice.chance(0.8)) {
    std::vector<std::string> running{layout.sets().front().name};
    if (layout.sets().size() > 1 && dice.chance(0.3)) running.push_back(layout.sets()[1].name);
    layout = layout.watering(running);
  }
  for (const Fault& fault : farm_faults(dice, mix, lines)) faults.push_back(fault);
  return layout.with_possible_faults(faults).layout;
}

}  // namespace hydro
