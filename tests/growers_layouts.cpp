#include "growers_layouts.hpp"

#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "random_parts.hpp"

namespace hydro {
namespace {

/// Low on a stake, or on a riser of 4 ft that is a pipe.
struct Device {
  Outlet outlet;
  Riser riser;
  Length spacing;
};

Device device(Dice& dice) {
  const Riser stake{.height = dice.between(0.5, 2) * ft};
  const Riser riser{.height = dice.between(2, 5) * ft,
                    .inside_diameter = 0.81 * inch,
                    .hazen_williams = 150,
                    .loss_coefficient = 1};
  switch (dice.whole(0, 2)) {
    case 0:
      return {{.name = "turning head",
               .flow = dice.between(2.5, 5) * gpm,
               .at = 25 * psi,
               .minimum = 18 * psi,
               .body_bore = 0.30 * inch},
              riser,
              36 * ft};
    case 1:
      return {{.name = "fixed spray",
               .flow = dice.between(1, 2) * gpm,
               .at = 30 * psi,
               .minimum = 20 * psi,
               .body_bore = 0.25 * inch},
              riser,
              20 * ft};
    default:
      return {{.name = "micro-spray",
               .flow = dice.between(0.2, 0.6) * gpm,
               .at = 20 * psi,
               .minimum = 12 * psi},
              stake,
              8 * ft};
  }
}

/// Of a bore in which this flow runs at 4 ft/s.
Pipe pipe_for(const std::string& name, const Flow& flow) {
  const double area = si(flow) / si(4 * ft_per_s);
  return {.name = name,
          .inside_diameter = Length::from_value(std::sqrt(4 * area / std::numbers::pi)),
          .hazen_williams = 150};
}

Line row(Dice& dice, const Device& device, const std::string& name, int count) {
  return {.name = name,
          .pipe = pipe_for("lateral", 1.0 * count * device.outlet.flow),
          .outlet = device.outlet,
          .count = count,
          .spacing = device.spacing,
          .ground_rise = dice.between(-3, 3) * ft,
          .riser = device.riser,
          .loss_coefficient = 0.5,
          .outlet_loss_coefficient = 0.3};
}

std::vector<Line> lateral(Dice& dice, const Device& device) {
  return {row(dice, device, "lateral", dice.whole(12, 24))};
}

std::vector<Line> rows(Dice& dice, const Device& device) {
  const int rows = dice.whole(3, 5);
  const int count = dice.whole(5, 10);
  const int shut = dice.chance(0.5) ? rows / 2 : 0;
  const Flow flow = 1.0 * (rows - shut) * count * device.outlet.flow;
  std::vector<Line> lines{{.name = "main",
                           .pipe = pipe_for("main", flow),
                           .length = dice.between(50, 300) * ft,
                           .ground_rise = dice.between(-2, 5) * ft,
                           .loss_coefficient = 2},
                          {.name = "manifold",
                           .fed_by = "main",
                           .pipe = pipe_for("main", flow),
                           .length = (rows - 1) * 30 * ft}};
  for (int i = 0; i < rows; ++i) {
    Line line = row(dice, device, "row " + std::to_string(i + 1), count);
    line.fed_by = "manifold";
    line.tap = i * 30 * ft;
    if (i >= rows - shut) line.valve = Valve{.opening = ValveOpening::shut};
    lines.push_back(std::move(line));
  }
  return lines;
}

/// At rest 1.3 times this head, at 1.5 times this flow two thirds of it.
Supply pump_for(const Flow& flow, const Length& head) {
  const Length fall = 0.3 * head;  // at this flow
  const auto point = [&](double share) {
    return PumpPoint{share * flow, 1.3 * head - share * share * fall};
  };
  return {.pump = Pump{.points = {point(0), point(1), point(1.5)},
                       .shape = CurveShape::quadratic,
                       .curve_speed = 2400 * rpm},
          .filter = Filter{.loss = 1.5 * psi, .at = flow}};
}

/// By how much the worst outlet is short of a fifth above its minimum.
Pressure shortfall(const Solution& solution) {
  Pressure worst{};
  for (std::size_t l = 0; l < solution.lines().size(); ++l) {
    const LineSolution& line = solution.lines()[l];
    if (line.shut) continue;
    for (const Pressure pressure : line.pressure)
      worst = std::max(worst, 1.2 * *solution.layout().lines()[l].kind_of(1).minimum - pressure);
  }
  return worst;
}

}  // namespace

Layout growers_layout(std::uint64_t seed) {
  Dice dice(seed);
  const Device kind = device(dice);
  const std::vector<Line> lines = dice.chance(0.4) ? lateral(dice, kind) : rows(dice, kind);
  Pressure pressure = 1.2 * kind.outlet.at;
  Solution solution = solve(Layout(Supply{.pressure = pressure}, lines));
  constexpr int tries = 20;  // more flow loses more, so that what is short once is so again
  for (int i = 0; i < tries && shortfall(solution) > Pressure{}; ++i) {
    pressure += shortfall(solution) + 1 * psi;
    solution = solve(Layout(Supply{.pressure = pressure}, lines));
  }
  if (dice.chance(0.4)) return solution.layout();
  const double weight_density = si(solution.water().density) * gravity;
  const Length head = Length::from_value(si(pressure + 1.5 * psi) / weight_density);
  return Layout(pump_for(solution.inflow(), head), lines);
}

Outlet larger_outlet(const Layout& layout) {
  for (std::size_t l = 0; l < layout.lines().size(); ++l) {
    if (layout.lines()[l].outlet_count() == 0 || layout.is_shut(l)) continue;
    Outlet outlet = layout.outlet_at(l, 1);
    outlet.name = "larger " + outlet.name;
    outlet.flow *= 1.4;
    return outlet;
  }
  return {};
}

}  // namespace hydro
