#include "ouzel_strips.hpp"

#include <string>
#include <utility>
#include <vector>

namespace hydro {
namespace {

Line main_line(const std::string& name, const std::string& fed_by, const Length& length, double k) {
  return {.name = name,
          .fed_by = fed_by,
          .pipe = {.inside_diameter = 3.231 * inch, .hazen_williams = 150},
          .length = length,
          .ground_rise = 3 * ft,
          .loss_coefficient = k};
}

Line row(const std::string& name, const Length& tap, const Length& ground_rise) {
  return {.name = name,
          .fed_by = "manifold",
          .tap = tap,
          .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
          .outlet = Outlet{.name = "turning head",
                           .flow = 0.704 * gpm,
                           .at = 1 * psi,
                           .rated = 25 * psi,
                           .minimum = 18 * psi,
                           .maximum = 50 * psi,
                           .body_bore = 0.30 * inch},
          .count = 10,
          .spacing = 36 * ft,
          .first_at = 18 * ft,
          .ground_rise = ground_rise,
          .riser = {.height = 4 * ft,
                    .inside_diameter = 0.81 * inch,
                    .hazen_williams = 150,
                    .loss_coefficient = 1},
          .loss_coefficient = 0.5,
          .outlet_loss_coefficient = 0.3};
}

}  // namespace

Supply ouzel_pump() {
  const auto head = [](double gallons) { return (150 - 0.0025 * gallons * gallons) * ft; };
  const auto needed = [](double gallons) { return (6 + 0.0009 * gallons * gallons) * ft; };
  return {.pump = Pump{.points = {{0 * gpm, head(0)}, {130 * gpm, head(130)}},
                       .curve_speed = 2600 * rpm,
                       .speed = 2210 * rpm,
                       .top_speed = 2600 * rpm,
                       .least_flow = 20 * gpm,
                       .most_flow = 130 * gpm,
                       .npsh_required = {{0 * gpm, needed(0)}, {130 * gpm, needed(130)}},
                       .efficiency = 0.60},
          .suction = Suction{.lift = 6 * ft,
                             .pipe = Pipe{.inside_diameter = 3.0 * inch, .hazen_williams = 140},
                             .length = 25 * ft,
                             .loss_coefficient = 3},
          .filter = Filter{.loss = 1.5 * psi, .at = 80 * gpm},
          .gauge = Gauge{.range = 100 * psi}};
}

Layout ouzel_strips(const Supply& supply) {
  std::vector<Line> lines{main_line("main to tee 1", "", 180 * ft, 2),
                          main_line("main to tee 2", "main to tee 1", 260 * ft, 1.5)};
  lines.push_back({.name = "strip valve",
                   .fed_by = "main to tee 2",
                   .pipe = {.inside_diameter = 1.5 * inch, .hazen_williams = 150},
                   .length = 3 * ft,
                   .loss_coefficient = 1.5});
  lines.push_back({.name = "manifold",
                   .fed_by = "strip valve",
                   .pipe = {.inside_diameter = 2.654 * inch, .hazen_williams = 150},
                   .length = 90 * ft});
  lines.push_back(row("row 1", 0 * ft, 0 * ft));
  lines.push_back(row("row 2", 30 * ft, 3 * ft));
  lines.push_back(row("row 3", 60 * ft, -1 * ft));
  lines.push_back(row("row 4", 90 * ft, 3 * ft));
  return Layout(supply,
                std::move(lines),
                {},
                {.altitude = 400 * ft},
                {{"rows 1 and 2", {"row 1", "row 2"}}, {"rows 3 and 4", {"row 3", "row 4"}}});
}

}  // namespace hydro
