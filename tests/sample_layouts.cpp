#include "sample_layouts.hpp"

#include "hydro/solver/solve.hpp"

#include <clocale>
#include <utility>

namespace hydro {
namespace {

struct Commas : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

}  // namespace

UnderCommas::UnderCommas()
    : kept_(std::locale::global(std::locale(std::locale::classic(), new Commas))) {
  std::setlocale(LC_NUMERIC, "de_DE.UTF-8");  // where there is one
}

UnderCommas::~UnderCommas() {
  std::setlocale(LC_NUMERIC, "C");
  std::locale::global(kept_);
}

Outlet turning_head() {
  return {.name = "turning head",
          .flow = 0.704 * gpm,
          .at = 1 * psi,
          .rated = 25 * psi,
          .minimum = 18 * psi,
          .maximum = 50 * psi};
}

Line sample_main() {
  return {.name = "main",
          .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
          .length = 5 * ft};
}

Line sample_row(const std::string& name, int count, const Length& ground_rise) {
  return {.name = name,
          .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
          .outlet = turning_head(),
          .count = count,
          .spacing = 36 * ft,
          .ground_rise = ground_rise,
          .riser = {.height = 4 * ft, .inside_diameter = 0.81 * inch, .hazen_williams = 150}};
}

Layout sample_layout(std::vector<Line> lines, const std::string& site, const Pressure& supply) {
  return Layout(Supply{supply},
                std::move(lines),
                Water{},
                Site{.name = site, .altitude = 0 * ft, .units = UnitSystem::us});
}

Layout with_all_states() {
  Line high = sample_row("high", 2);
  high.outlet->name = "mister";
  high.outlet->rated = 15 * psi;
  high.outlet->minimum = std::nullopt;
  high.outlet->maximum = 20 * psi;
  return sample_layout(
             {sample_main(), sample_row("level", 10), sample_row("up", 24, 80 * ft), high})
      .with_faults({head_off("level", 7),
                    riser_sheared("up", 2),
                    capped("level", 3),
                    clogged("level", 4, 0.5),
                    worn("level", 5, 0.25)});
}

Layout many_outlets(int count) {
  Line line = sample_row("long", count);
  line.spacing = 0.5 * ft;
  line.pipe.inside_diameter = 12 * inch;
  line.outlet = Outlet{.flow = 0.01 * gph, .at = 15 * psi};
  line.riser = {};
  return sample_layout({line});
}

Supply sample_pump() {
  const Pump pump{.points = {{0 * gpm, 150 * ft}, {130 * gpm, 107.75 * ft}},
                  .curve_speed = 2600 * rpm,
                  .speed = 2300 * rpm,
                  .top_speed = 2600 * rpm,
                  .least_flow = 20 * gpm,
                  .most_flow = 130 * gpm,
                  .npsh_required = {{0 * gpm, 6 * ft}, {100 * gpm, 15 * ft}},
                  .efficiency = 0.6,
                  .power = 10 * hp};
  return {.pump = pump,
          .suction = Suction{.lift = 6 * ft},
          .filter = Filter{.loss = 1.5 * psi, .at = 80 * gpm},
          .gauge = Gauge{.range = 100 * psi}};
}

Layout pumped_farm(const Supply& supply) {
  const Line main{.name = "main",
                  .pipe = {.inside_diameter = 3.231 * inch, .hazen_williams = 150},
                  .length = 440 * ft,
                  .ground_rise = 6 * ft};
  std::vector<Line> lines{main};
  for (const auto& [name, rise] : {std::pair{"row 1", 0},
                                   std::pair{"row 2", 3},
                                   std::pair{"row 3", -1},
                                   std::pair{"row 4", 3}}) {
    lines.push_back(sample_row(name, 10, rise * ft));
    lines.back().fed_by = "main";
  }
  return Layout(supply,
                std::move(lines),
                Water{},
                Site{.altitude = 400 * ft, .units = UnitSystem::us},
                {{.name = "low", .lines = {"row 1", "row 2"}},
                 {.name = "high", .lines = {"row 3", "row 4"}}});
}

Solution spoilt_solution(double pressure_pa) {
  const Solution good = solve(sample_layout({sample_row("row 1", 2)}));
  std::vector<LineSolution> lines = good.lines();
  lines[0].pressure = Series<Pressure>({pressure_pa, pressure_pa});
  return Solution(good.layout(), good.water(), lines, good.supply(), good.residuals(), {});
}

}  // namespace hydro
