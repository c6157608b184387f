#include "hard_cases.hpp"

#include "hydro/quantities/units.hpp"
#include "hydro/solver/solve.hpp"

#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

namespace hydro {
namespace {

using units::m;

constexpr Pressure at_supply = 300 * kPa;
constexpr Flow rated_flow = 80 * lph;
const Length supply_head = 30.6 * m;  // of 300 kPa
constexpr double hazen_williams_flow = 1.852,
                 hazen_williams_bore = 4.8704;  // exponents of its loss

/// At which the outlets' flows lose a fifth of the supply's head.
Length bore_for(int outlets, const Length& spacing) {
  const double all_at_the_end =
      10.67 * outlets * si(spacing) * std::pow(outlets * si(rated_flow) / 150, hazen_williams_flow);
  const double share_on_the_way = 1 / (hazen_williams_flow + 1);  // of many even outlets
  return Length::from_value(std::pow(share_on_the_way * all_at_the_end / (0.2 * si(supply_head)),
                                     1 / hazen_williams_bore));
}

Line lateral(int outlets) {
  const Length spacing = 3 * m;
  return {.name = "row",
          .pipe = {.inside_diameter = bore_for(outlets, spacing), .hazen_williams = 150},
          .outlet = Outlet{.flow = rated_flow, .at = 250 * kPa},
          .count = outlets,
          .spacing = spacing};
}

Layout on_the_supply(Line line) {
  return Layout(Supply{.pressure = at_supply}, {std::move(line)});
}

Line uphill(Line line, double share_of_supply) {
  line.ground_rise = share_of_supply * supply_head;
  return line;
}

Line over_hills(Line line, double share_of_supply) {
  line.ground_rise.reset();
  for (int i = 1; i <= *line.count; ++i)
    line.elevations.push_back(share_of_supply * std::sin(6 * std::numbers::pi * i / *line.count) *
                              supply_head);
  return line;
}

Line with_exponent(Line line, double exponent) {
  line.outlet->exponent = exponent;
  if (exponent < 0.1) line.outlet->minimum = 100 * kPa;
  return line;
}

/// So many times the loss by friction.
Line narrowed(Line line, double times) {
  line.pipe.inside_diameter *= std::pow(times, -1 / hazen_williams_bore);
  return line;
}

Line compensating(Line line, const Pressure& low, const Pressure& high) {
  line.outlet = Outlet{.flow = rated_flow, .compensating = Compensating{low, high}};
  return line;
}

Layout with_large_outlet(int outlets, int outlet, double times) {
  return on_the_supply(lateral(outlets))
      .with_fault(wrong_outlet("row", outlet, {.flow = times * rated_flow, .at = 250 * kPa}));
}

/// The rise at which the last outlet is about to run dry.
Layout marginal_uphill(int outlets) {
  double low = 0, high = 1;
  for (int halving = 0; halving < 50; ++halving) {
    const double rise = (low + high) / 2;
    const Solution solution = solve(on_the_supply(uphill(lateral(outlets), rise)));
    (solution.lines()[0].flow.back() > Flow{} ? low : high) = rise;
  }
  return on_the_supply(uphill(lateral(outlets), low));
}

/// Smooth pipe along which the flow falls from this Reynolds number to none.
Line slowing(int outlets, double reynolds) {
  const Flow emitter = 1 * lph;
  const double whole = outlets * si(emitter);
  const double viscosity = 1e-6;  // m2/s, at 20 degC
  const double bore = 4 * whole / (std::numbers::pi * viscosity * reynolds);
  const double velocity = reynolds * viscosity / bore;
  const double factor = 0.04;  // of friction, about
  const double length =
      0.3 * si(supply_head) * 2.8 * bore * 2 * gravity / (factor * velocity * velocity);
  return {.name = "row",
          .pipe = {.inside_diameter = bore * m, .roughness = 0 * mm},
          .outlet = Outlet{.flow = emitter, .at = 250 * kPa},
          .count = outlets,
          .spacing = length / outlets * m};
}

Layout on_pump(int outlets, const Flow& flow, const Length& head) {
  return Layout(Supply{.pump = Pump{.points = {{0 * lph, 1.3 * head}, {flow, head}}}},
                {lateral(outlets)});
}

/// Both ends fed, the far one through a pipe as long as the spacing.
Layout fed_from_both_ends(int outlets, const Pressure& far_supply) {
  const Line row = lateral(outlets);
  const Line back{.name = "back",
                  .fed_by = "far supply",
                  .joins = "row",
                  .pipe = row.pipe,
                  .length = row.spacing};
  return Layout(Supply{.pressure = at_supply},
                {row, back},
                {},
                {},
                {},
                {Supply{.pressure = far_supply, .name = "far supply"}});
}

/// Two rows alike with a pipe across between their far ends, in which nothing moves.
Layout with_idle_cross_pipe(int outlets) {
  Line one = lateral(outlets), other = one;
  other.name = "other row";
  const Line across{.name = "across",
                    .fed_by = "row",
                    .joins = "other row",
                    .pipe = one.pipe,
                    .length = one.spacing};
  return Layout(Supply{.pressure = at_supply}, {one, other, across});
}

}  // namespace

const std::vector<HardCase>& hard_cases() {
  static const std::vector<HardCase> cases{
      {"as designed", [](int n) { return on_the_supply(lateral(n)); }},
      {"gentle hills, 1 % of the supply's head",
       [](int n) { return on_the_supply(over_hills(lateral(n), 0.01)); }},
      {"hills, 60 %", [](int n) { return on_the_supply(over_hills(lateral(n), 0.6)); }},
      {"hills, 150 %", [](int n) { return on_the_supply(over_hills(lateral(n), 1.5)); }},
      {"uphill 150 %, a third of it dry",
       [](int n) { return on_the_supply(uphill(lateral(n), 1.5)); }},
      {"uphill, last outlet at 0", marginal_uphill},
      {"uphill 10,000 %, all but the first dry",
       [](int n) { return on_the_supply(uphill(lateral(n), 100)); }},
      {"downhill 1,000 %", [](int n) { return on_the_supply(uphill(lateral(n), -10)); }},

      {"broken in the middle, 2 n times the flow",
       [](int n) { return with_large_outlet(n, n / 2, 2.0 * n); }},
      {"open at the end, 20 n times", [](int n) { return with_large_outlet(n, n, 20.0 * n); }},
      {"open at the first, 20 n times", [](int n) { return with_large_outlet(n, 1, 20.0 * n); }},
      {"end of the pipe open",
       [](int n) { return on_the_supply(lateral(n)).with_fault(end_open("row")); }},
      {"cut in the middle, uphill",
       [](int n) {
         const Line line = uphill(lateral(n), 1.5);
         return on_the_supply(line).with_fault(line_cut("row", 0.5 * line.whole_length()));
       }},
      {"inlet valve all but closed",
       [](int n) { return on_the_supply(lateral(n)).with_fault(valve_part_closed("row", 1e5)); }},

      {"compensating, bend inside the line",
       [](int n) { return on_the_supply(compensating(lateral(n), 255 * kPa, 400 * kPa)); }},
      {"compensating, torn at the inlet",
       [](int n) { return on_the_supply(compensating(lateral(n), 100 * kPa, 260 * kPa)); }},
      {"compensating, bends and dry end",
       [](int n) {
         return on_the_supply(uphill(compensating(lateral(n), 150 * kPa, 200 * kPa), 1.5));
       }},
      {"compensating, pipe 10,000 times too narrow",
       [](int n) {
         return on_the_supply(narrowed(compensating(lateral(n), 150 * kPa, 200 * kPa), 1e4));
       }},
      {"exponent 0, on the flat",
       [](int n) { return on_the_supply(with_exponent(lateral(n), 0)); }},
      {"exponent 0, uphill 150 %",
       [](int n) { return on_the_supply(uphill(with_exponent(lateral(n), 0), 1.5)); }},
      {"exponent 0.02, uphill 150 %",
       [](int n) { return on_the_supply(uphill(with_exponent(lateral(n), 0.02), 1.5)); }},
      {"exponent 0.1, on the flat",
       [](int n) { return on_the_supply(with_exponent(lateral(n), 0.1)); }},
      {"exponent 0.1, uphill 150 %",
       [](int n) { return on_the_supply(uphill(with_exponent(lateral(n), 0.1), 1.5)); }},
      {"exponent 0.1, pipe 10,000 times too narrow",
       [](int n) { return on_the_supply(narrowed(with_exponent(lateral(n), 0.1), 1e4)); }},
      {"exponent 1", [](int n) { return on_the_supply(with_exponent(lateral(n), 1)); }},
      {"exponent 1.5, uphill 150 %",
       [](int n) { return on_the_supply(uphill(with_exponent(lateral(n), 1.5), 1.5)); }},

      {"pipe 10,000 times too narrow",
       [](int n) { return on_the_supply(narrowed(lateral(n), 1e4)); }},
      {"pipe 10,000 times too narrow, uphill 150 %",
       [](int n) { return on_the_supply(uphill(narrowed(lateral(n), 1e4), 1.5)); }},
      {"pipe that loses 1e-9 of the head",
       [](int n) { return on_the_supply(narrowed(lateral(n), 1e-9 / 0.2)); }},
      {"supply of 1e-6 m",
       [](int n) { return Layout(Supply{.pressure = 9.8e-6 * kPa}, {lateral(n)}); }},
      {"supply of nothing",
       [](int n) { return Layout(Supply{.pressure = 0 * kPa}, {lateral(n)}); }},
      {"supply of nothing, hills 60 %",
       [](int n) { return Layout(Supply{.pressure = 0 * kPa}, {over_hills(lateral(n), 0.6)}); }},

      {"pump that gives a hundredth of the flow",
       [](int n) { return on_pump(n, 0.01 * n * rated_flow, supply_head); }},
      {"pump that gives a hundredth of the head",
       [](int n) { return on_pump(n, 1.0 * n * rated_flow, 0.01 * supply_head); }},
      {"hydrant that a hundredth of the flow takes down",
       [](int n) {
         return Layout(
             Supply{.hydrant = Hydrant{at_supply, 0.01 * at_supply, 0.01 * n * rated_flow}},
             {lateral(n)});
       }},
      {"regulator that is never reached",
       [](int n) {
         Line line = lateral(n);
         line.regulator = 2.0 * at_supply;
         return on_the_supply(line);
       }},
      {"regulator at the very pressure of the supply",
       [](int n) {
         Line line = lateral(n);
         line.regulator = at_supply;
         return on_the_supply(line);
       }},
      {"dirty filter that takes nearly all",
       [](int n) {
         return Layout(Supply{.pressure = at_supply,
                              .filter = Filter{0.99 * at_supply, 0.01 * n * rated_flow}},
                       {lateral(n)});
       }},

      {"smooth pipe, turbulent to laminar, Re 6,000 to 0",
       [](int n) { return on_the_supply(slowing(n, 6000)); }},
      {"smooth pipe, Re 4,000 to 0", [](int n) { return on_the_supply(slowing(n, 4000)); }},
      {"smooth pipe, Re 3,000 to 0, uphill 150 %",
       [](int n) { return on_the_supply(uphill(slowing(n, 3000), 1.5)); }},

      {"fed alike from both ends", [](int n) { return fed_from_both_ends(n, at_supply); }},
      {"fed from both ends, far supply starved",
       [](int n) { return fed_from_both_ends(n, 0.01 * at_supply); }},
      {"idle cross pipe between rows alike", with_idle_cross_pipe},
  };
  return cases;
}

}  // namespace hydro
