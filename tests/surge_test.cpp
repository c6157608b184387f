// Surges against published cases and a wave that is followed through the pipe, and what a layout's lines
// bear; filling and running out by geometry.
//
// A tolerance is half a unit of the last printed digit, or comes from the arithmetic.
#include "hydro/watering/surge.hpp"

#include "hydro/layout/layout.hpp"
#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/watering/filling.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "accuracy.hpp"
#include "ouzel_strips.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::SizeIs;
using units::m;

constexpr double arithmetic = 1e-12;
constexpr Density by_hand = 62.4 * lb_per_ft3;  // of textbooks in feet

void expect_printed(double got, double printed, double half_digit, double cut = 0) {
  EXPECT_NEAR(record(Accuracy::surge, got, printed, half_digit), printed, half_digit + cut);
}

/// As sources by hand reckon: with their K, and their speed in stiff pipe, which fit together roughly.
Velocity wave_by_hand(const PipeWall& wall, const Pressure& K, const Velocity& stiff) {
  return wave_speed(wall, Density::from_value(si(K) / (si(stiff) * si(stiff))), K);
}

// A. P. Moser, Buried Pipe Design, example 4.2: PVC DR 18, a wave of 1311 ft/s, 7 ft/s stopped, 122 psi more.
// The book has 0.43 psi for a foot of water.
TEST(Surge, OfPvcIsAsPublished) {
  const Density book = Density::from_value(si(0.43 * psi) / (gravity * 0.3048));
  const StoppedWater water{1000 * ft, 7 * ft_per_s, 1311 * ft_per_s, book};
  // 0.43 x 1311 x 7 / 32.2 = 122.55
  expect_printed(surge_rise(water) / psi, 122, 0.5, 0.5);
  EXPECT_NEAR((160 * psi + surge_rise(water)) / psi, 282, 1);
}

struct RatioRise {
  double dimension_ratio;
  double psi_at_one_foot_a_second;
};

// Rises in PVC at 1 ft/s by dimension ratio (outside diameter / wall), E 400,000 psi, as pipe handbooks table
// them (seen in a copy); 4660 ft/s, K 300,000 psi, as Moser has them.
TEST(Surge, OfOneFootASecondIsAsTabled) {
  for (const RatioRise& it :
       std::vector<RatioRise>{{41, 11.4}, {32.5, 12.8}, {25, 14.7}, {18, 17.4}}) {
    const PipeWall wall{(it.dimension_ratio - 2) * mm, 1 * mm, 400000 * psi};
    const Velocity wave = wave_by_hand(wall, 300000 * psi, 4660 * ft_per_s);
    expect_printed(surge_rise({100 * ft, 1 * ft_per_s, wave, by_hand}) / psi,
                   it.psi_at_one_foot_a_second,
                   0.05);
  }
}

// A lecture of New Mexico State University, chapter 8: 1.66 in of bore, 0.14 in of wall, E 400,000 psi: 63.2
// psi x 0.32 at 1 ft/s = 20.3 psi, where 63.2 psi is that of stiff pipe at 4,700 ft/s; K 294,000 psi.
TEST(Surge, OfThickPvcIsAsPublished) {
  const PipeWall wall{1.66 * inch, 0.14 * inch, 400000 * psi};
  const Velocity wave = wave_by_hand(wall, 294000 * psi, 4700 * ft_per_s);
  EXPECT_NEAR(wave / (4700 * ft_per_s), 0.32, 0.005);
  expect_printed(surge_rise({100 * ft, 1 * ft_per_s, wave, by_hand}) / psi, 20.3, 0.05);
}

// R. L. Daugherty and J. B. Franzini, Fluid Mechanics, example 13.4: 30 ft3/s in a pipe of 2 ft radius, 2,000
// ft long, 3,200 ft/s, 1.94 slug/ft3.
TEST(Surge, OfSlowAndPartialClosingIsAsPublished) {
  const Density book = 1.94 * 32.174 * lb_per_ft3;
  const auto rise = [&](double flow, const Length& length, const Time& closing) {
    const Velocity velocity = flow / (std::numbers::pi * 4) * ft_per_s;
    return surge_rise({length, velocity, 3200 * ft_per_s, book}, closing) / psi;
  };
  expect_printed(rise(30, 2000 * ft, Time{}), 102.9, 0.05);
  expect_printed(rise(30, 2000 * ft, 1.2 * units::s), 102.9, 0.05);  // within 2 L / a = 1.25 s
  expect_printed(rise(30, 2000 * ft, 4 * units::s), 32.2, 0.05);
  expect_printed(rise(20, 2000 * ft, Time{}), 68.6, 0.05);  // to 10 ft3/s
  expect_printed(rise(10, 2000 * ft, Time{}), 34.3, 0.05);
  expect_printed(rise(10, 300 * ft, 1 * units::s), 6.43, 0.005);  // 300 ft from the reservoir
}

// K. Subramanya, Theory and Applications of Fluid Mechanics, examples 14.15 and 14.20.
TEST(Surge, OfSteelIsAsPublished) {
  const Density book = 998 * kg_per_m3;
  const PipeWall steel{600 * mm, 12 * mm, 2.1e5 * MPa};
  const auto rise = [&](const Velocity& wave) {
    return surge_rise({1 * km, 2.1 * m_per_s, wave, book}) / MPa;
  };
  expect_printed(rise(wave_speed({}, book, 2100 * MPa)), 3.040, 0.0005);
  expect_printed(rise(wave_speed(steel, book, 2100 * MPa)), 2.482, 0.0005);

  const StoppedWater long_pipe{3500 * m, 0.8 * m_per_s, wave_speed({}, book, 2200 * MPa), book};
  expect_printed(surge_rise(long_pipe, 4 * units::s) / MPa, 1.185, 0.0005);
  EXPECT_NEAR(length_at_peak(long_pipe, 4 * units::s) / m, 530.6, 0.1);  // 530.55
  EXPECT_EQ(length_at_peak(long_pipe, 5 * units::s), Length{});
}

/// The highest rise at a valve that takes the velocity away evenly in `closing`, on a pipe without friction
/// from a reservoir: the wave is followed cell by cell, one cell a step.
double followed_rise(const StoppedWater& water, double closing, int cells) {
  const double rho_a = si(water.density) * si(water.wave_speed);
  const double step = si(water.length) / cells / si(water.wave_speed);
  const auto n = static_cast<std::size_t>(cells);
  std::vector<double> p(n + 1, 0), v(n + 1, si(water.velocity));
  double highest = 0;
  for (int i = 1; i * step < 2 * closing + 8 * cells * step; ++i) {
    std::vector<double> next_p(n + 1), next_v(n + 1);
    for (std::size_t k = 1; k < n; ++k) {
      const double outward = p[k - 1] + rho_a * v[k - 1];
      const double inward = p[k + 1] - rho_a * v[k + 1];
      next_p[k] = (outward + inward) / 2;
      next_v[k] = (outward - inward) / 2 / rho_a;
    }
    next_p[0] = 0;  // the reservoir
    next_v[0] = v[1] - p[1] / rho_a;
    next_v[n] = si(water.velocity) * std::max(0.0, 1 - i * step / closing);
    next_p[n] = p[n - 1] + rho_a * (v[n - 1] - next_v[n]);
    p = next_p;
    v = next_v;
    highest = std::max(highest, p[n]);
  }
  return highest;
}

TEST(Surge, IsThatOfAWaveFollowedThroughThePipe) {
  const StoppedWater water{240 * m, 1.5 * m_per_s, 400 * m_per_s, 1000 * kg_per_m3};
  EXPECT_NEAR(reflection_time(water) / units::s, 1.2, 1.2 * arithmetic);
  // Closings of a whole number of steps, so that the wave meets them exactly.
  for (const double closing : {0.3, 0.9, 1.2, 1.8, 3.0, 12.0})
    EXPECT_NEAR(
        followed_rise(water, closing, 40) / si(surge_rise(water, closing * units::s)), 1, 1e-9)
        << closing;
}

/// Like the one above, with a short narrow piece before the valve, `narrow` of the area; velocities are those
/// in the wide pipe. The wave runs alike in both.
double followed_rise_behind_narrow(
    const StoppedWater& water, double closing, int cells, int narrow_cells, double narrow) {
  const double rho_a = si(water.density) * si(water.wave_speed);
  const double step = si(water.length) / cells / si(water.wave_speed);
  const auto n = static_cast<std::size_t>(cells);
  const std::size_t junction = n - static_cast<std::size_t>(narrow_cells);
  const auto area = [&](std::size_t cell) { return cell < junction ? 1.0 : narrow; };
  // Flows are kept per cell end: q = v x area is the same on both sides of the junction.
  std::vector<double> p(n + 1, 0), q(n + 1, si(water.velocity));
  double highest = 0;
  for (int i = 1; i * step < 2 * closing + 8 * cells * step; ++i) {
    std::vector<double> next_p(n + 1), next_q(n + 1);
    for (std::size_t k = 1; k < n; ++k) {
      const double inner = rho_a / area(k - 1), outer = rho_a / area(k);
      const double outward = p[k - 1] + inner * q[k - 1];
      const double inward = p[k + 1] - outer * q[k + 1];
      next_q[k] = (outward - inward) / (inner + outer);
      next_p[k] = outward - inner * next_q[k];
    }
    next_p[0] = 0;
    next_q[0] = q[1] - p[1] / (rho_a / area(0));
    next_q[n] = si(water.velocity) * std::max(0.0, 1 - i * step / closing);
    next_p[n] = p[n - 1] + rho_a / area(n - 1) * (q[n - 1] - next_q[n]);
    p = next_p;
    q = next_q;
    highest = std::max(highest, p[n]);
  }
  return highest;
}

/// A main of plastic, 240 m long, with 1 m of valve of a quarter of its area at its end.
Layout behind_a_narrow_valve() {
  const Pipe wide{.name = "wide", .inside_diameter = 80 * mm, .hazen_williams = 150};
  const Pipe narrow{.name = "narrow", .inside_diameter = 40 * mm, .hazen_williams = 150};
  return Layout({.pressure = 300 * kPa},
                {Line{.name = "main", .pipe = wide, .length = 239 * m},
                 Line{.name = "valve",
                      .fed_by = "main",
                      .pipe = narrow,
                      .outlets = {{1 * m, Outlet{.flow = 300 * lpm, .at = 100 * kPa}}}}});
}

TEST(Surges, OfAShortNarrowValveAreThoseOfTheMainBehindIt) {
  const Solution solution = solve(behind_a_narrow_valve());
  const Velocity velocity = solution.line("main").inlet_velocity;
  for (const double closing : {0.1, 0.2, 0.4, 2.0}) {
    const LineSurge valve = surges(solution, {.closing = closing * units::s})[1];
    const StoppedWater all{240 * m, velocity, valve.wave_speed, solution.water().density};
    const double followed = followed_rise_behind_narrow(all, closing, 480, 2, 0.25);
    EXPECT_NEAR(si(valve.rise) / followed, 1, 0.10) << closing;
  }
  EXPECT_NEAR(surges(solution, {.closing = Time{}})[1].rise / surges(solution)[1].rise_at_once,
              1,
              arithmetic);
}

TEST(Surge, ShortestClosingBringsJustTheRise) {
  const StoppedWater water{240 * m, 1.5 * m_per_s, 400 * m_per_s, 1000 * kg_per_m3};
  const Time closing = shortest_closing(water, 200 * kPa);
  EXPECT_NEAR(surge_rise(water, closing) / kPa, 200, 200 * arithmetic);
  EXPECT_EQ(shortest_closing(water, 700 * kPa), Time{});
}

/// A main and a row of pipe by its standard.
Layout nominal_rows(const Temperature& temperature = 73 * degF) {
  const Pipe main = nominal_pipe("3 in", "PVC Class 160");
  const Pipe lateral = nominal_pipe("1-1/2 in", "PVC Class 160");
  const Outlet head{.flow = 3.5 * gpm, .at = 25 * psi};
  return Layout({.pressure = 43 * psi},
                {Line{.name = "main", .pipe = main, .length = 440 * ft},
                 Line{.name = "row",
                      .fed_by = "main",
                      .pipe = lateral,
                      .outlet = head,
                      .count = 10,
                      .spacing = 36 * ft}},
                {.temperature = temperature});
}

TEST(Surges, TakeWallsFromTheTables) {
  const Solution solution = solve(nominal_rows());
  const std::vector<LineSurge> found = surges(solution);
  ASSERT_THAT(found, SizeIs(2));
  const LineSurge& main = found[0];
  EXPECT_TRUE(main.wall_known);
  const NominalSize size = nominal_size("3 in", "PVC Class 160");
  const PipeWall wall{size.inside_diameter, size.minimum_wall, 400000 * psi};
  EXPECT_EQ(main.wave_speed, wave_speed(wall, solution.water().density));
  EXPECT_EQ(main.way, 440 * ft);
  EXPECT_NEAR(si(main.rise_at_once),
              si(solution.water().density) * si(main.wave_speed) * si(main.velocity),
              1e-9 * si(main.rise_at_once));
  EXPECT_EQ(main.rating, 160 * psi);
  EXPECT_EQ(main.shortest_closing, Time{});
  EXPECT_TRUE(main.is_safe());
  EXPECT_NEAR(found[1].way / ft, 440 + 360, 1e-9);
  EXPECT_NEAR(found[1].reflection / units::s,
              2 * (440 / (main.wave_speed / ft_per_s) + 360 / (found[1].wave_speed / ft_per_s)),
              1e-9);
}

TEST(Surges, CloseSlowlyWherePipeIsWarm) {
  // At 120 degF 40 % of 160 psi are left: 64 psi, of which 43 psi are there already.
  const Solution solution = solve(nominal_rows(120 * degF));
  const LineSurge main = surges(solution)[0];
  EXPECT_NEAR(*main.rating / psi, 64, 64 * arithmetic);
  EXPECT_FALSE(main.is_safe());
  ASSERT_TRUE(main.shortest_closing);
  EXPECT_GT(*main.shortest_closing, main.reflection);
  const LineSurge slow = surges(solution, {.closing = *main.shortest_closing})[0];
  EXPECT_NEAR((slow.steady + slow.rise) / *slow.rating, 1, arithmetic);
  EXPECT_NEAR(si(main.rise_at_once) * si(main.reflection) / si(*main.shortest_closing),
              si(slow.rise),
              1e-9 * si(slow.rise));
}

TEST(Surges, AreTheWorstWhereNoWallIsKnown) {
  const Solution solution = solve(ouzel_strips().watering({"rows 1 and 2"}));
  for (const LineSurge& it : surges(solution)) {
    EXPECT_FALSE(it.wall_known) << it.line;
    EXPECT_EQ(it.wave_speed, wave_speed({}, solution.water().density)) << it.line;
    EXPECT_FALSE(it.is_safe());
    EXPECT_FALSE(it.shortest_closing);
  }
  const SurgeOptions known{.walls = {{"", 3 * mm, 400000 * psi}}};
  for (const LineSurge& it : surges(solution, known)) {
    EXPECT_TRUE(it.wall_known) << it.line;
    EXPECT_LT(it.wave_speed, 0.6 * wave_speed({}, solution.water().density)) << it.line;
  }
}

TEST(Surges, RefuseWhatCannotBe) {
  const Solution solution = solve(nominal_rows());
  EXPECT_THAT(refusal([&] {
                surges(solution, {.walls = {{"hose", 3 * mm, {}}}});
              }),
              HasSubstr("\"hose\", and no line of such pipe has water"));
  EXPECT_THAT(refusal([&] {
                surges(solution, {.walls = {{"", {}, {}}}});
              }),
              HasSubstr("without thickness or modulus"));
  EXPECT_THAT(refusal([&] { surges(solution, {.closing = std::nan("") * units::s}); }),
              HasSubstr("closing: is nan"));
  EXPECT_THAT(refusal([] { modulus_of("hemp"); }), HasSubstr("\"hemp\""));
  const StoppedWater water{-1 * m, 1 * m_per_s, 400 * m_per_s, 1000 * kg_per_m3};
  EXPECT_THAT(refusal([&] { surge_rise(water); }), HasSubstr("length: is -0.001 km"));
}

// ---- filling

TEST(Filling, IsBoresTimesLengths) {
  // 440 ft of 3 in and 360 ft of 1-1/2 in Class 160: 0.0408 D^2 gal a foot, D in inches.
  const Filling found = filling(nominal_rows());
  const double inside[] = {nominal_size("3 in", "PVC Class 160").inside_diameter / inch,
                           nominal_size("1-1/2 in", "PVC Class 160").inside_diameter / inch};
  const double gallons_a_foot = std::numbers::pi / 4 * 12 / 231;
  ASSERT_THAT(found.lines, SizeIs(2));
  EXPECT_NEAR(found.lines[0].volume / gallon, gallons_a_foot * 440 * inside[0] * inside[0], 1e-9);
  EXPECT_NEAR(found.lines[1].volume / gallon, gallons_a_foot * 360 * inside[1] * inside[1], 1e-9);
  // At 1 ft/s the main alone is full after 440 s.
  EXPECT_NEAR(found.time / units::s * (found.lines[0].volume / found.volume), 440, 1e-9);
  const Filling twice = filling(nominal_rows(), {.flow = 2.0 * found.gentle_flow});
  EXPECT_NEAR(twice.velocity / ft_per_s, 2, 2 * arithmetic);
  EXPECT_NEAR(twice.time / found.time, 0.5, arithmetic);
}

TEST(Filling, CountsReachesAndRisersOfLinesThatHaveWater) {
  const Pipe wide{.name = "wide", .inside_diameter = 40 * mm, .hazen_williams = 150};
  const Pipe narrow{.name = "narrow", .inside_diameter = 20 * mm, .hazen_williams = 150};
  const Line row{.name = "row",
                 .pipe = narrow,
                 .reaches = {{wide, 30 * m}},
                 .outlet = Outlet{.flow = 1 * lpm, .at = 100 * kPa},
                 .count = 10,
                 .spacing = 10 * m,
                 .riser = {.height = 1 * m, .inside_diameter = 10 * mm, .hazen_williams = 150}};
  const double quarter_pi = std::numbers::pi / 4;
  EXPECT_NEAR(volume_of(row) / litre,
              quarter_pi * (0.16 * 300 / 10 * 10 / 10 * 10 + 0.04 * 700 + 0.01 * 100),
              1e-9);
  const Layout farm = ouzel_strips();
  EXPECT_THAT(filling(farm.watering({"rows 1 and 2"})).lines,
              SizeIs(filling(farm).lines.size() - 2));
}

TEST(Filling, RunsOutAsFarDownAsTheLowestMouth) {
  const Pipe pipe{.inside_diameter = 50 * mm, .hazen_williams = 150};
  const Outlet head{.flow = 1 * lpm, .at = 100 * kPa};
  const auto row = [&](const Length& rise, const Length& riser) {
    return Layout({.pressure = 300 * kPa},
                  {Line{.name = "row",
                        .pipe = pipe,
                        .outlet = head,
                        .count = 10,
                        .spacing = 10 * m,
                        .ground_rise = rise,
                        .riser = {.height = riser}}});
  };
  const double whole = std::numbers::pi / 4 * 0.05 * 0.05 * 100;
  EXPECT_EQ(filling(row(0 * m, 1 * m)).run_out, Volume{});  // the risers hold it back
  // Uphill, the first outlet at 10 m is lowest: what lies above it runs out.
  EXPECT_NEAR(si(filling(row(5 * m, 0 * m)).run_out), 0.9 * whole, 1e-12);
  EXPECT_NEAR(si(filling(row(5 * m, 1 * m)).run_out), 0.7 * whole, 1e-12);
  EXPECT_NEAR(si(filling(row(-5 * m, 0 * m)).run_out), whole, 1e-12);
  // Broken at its foot, or capped, the first one is another mouth or none.
  const Layout high = row(5 * m, 1 * m);
  const auto run_out = [](const Layout& layout) { return si(filling(layout).run_out); };
  EXPECT_NEAR(run_out(high.with_fault(capped("row", 1))), 0.6 * whole, 1e-12);
  Line with_bore = high.lines()[0];
  with_bore.riser = {.height = 1 * m, .inside_diameter = 20 * mm, .hazen_williams = 150};
  const Layout sheared =
      Layout({.pressure = 300 * kPa}, {with_bore}).with_fault(riser_sheared("row", 1, 0.5 * m));
  EXPECT_NEAR(run_out(sheared), 0.8 * whole, 1e-12);
}

TEST(Filling, RefusesWhatCannotBe) {
  const Layout farm = nominal_rows();
  EXPECT_THAT(refusal([&] { filling(farm, {.flow = Flow{}}); }), HasSubstr("flow: is 0 L/min"));
  EXPECT_THAT(refusal([&] { filling(farm, {.velocity = std::nan("") * m_per_s}); }),
              HasSubstr("velocity: is nan"));
}

}  // namespace
}  // namespace hydro
