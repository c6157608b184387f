// Tanks running empty: through a hole against published results, through lines against the hole and the laws.
#include "hydro/answers/drain.hpp"

#include "hydro/solver/solve.hpp"

#include <cmath>
#include <cstddef>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "accuracy.hpp"
#include "sample_layouts.hpp"
#include <boost/math/quadrature/gauss.hpp>
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;

// Published times are for the g of their source: they go with 1 / sqrt(g).
double time_under(double source_gravity, const Time& time) {
  return time / units::s * std::sqrt(gravity / source_gravity);
}

Length hole_of_area(double square_metres) {
  return std::sqrt(square_metres * 4 / std::numbers::pi) * units::m;
}

struct PublishedHole {
  const char* source;
  Tank tank;
  Hole hole;
  Length to_level;
  double gravity;      // [m/s2]
  double time;         // [s]
  double printed;      // half of the last digit [s]
  double by_hand = 0;  // what rounding on the way may do [s]
};

// Georgia Institute of Technology, MATH 2413 research project "Torricelli's Law and Fluid Dynamics" (2002), pages
// "Analysis" and "Experimentation": v = 0.84 sqrt(g h), g = 386 in/s2, hence Cd = 0.84 / sqrt 2.
PublishedHole georgia(Length bore, Length hole, Length level, double time, double printed) {
  return {"Georgia Tech 2002",
          {.level = level, .diameter = bore},
          {.diameter = hole, .discharge_coefficient = 0.84 / std::sqrt(2.0)},
          {},
          386 * 0.0254,
          time,
          printed};
}

const std::vector<PublishedHole>& published_holes() {
  static const std::vector<PublishedHole> cases{
      georgia(2 * inch, 0.5 * inch, 55.25 * inch, 14.4126, 5e-5),
      georgia(2 * inch, 0.25 * inch, 58.6 * inch, 59.3726, 5e-5),
      georgia(1 * inch, 0.5 * inch, 57.4 * inch, 3.67259, 5e-6),
      georgia(1 * inch, 0.25 * inch, 55.7 * inch, 14.4712, 5e-5),
      // byjus.com, question on a cylindrical tank of 0.16 m (read as a web page)
      {"question page",
       {.level = 0.16 * units::m, .diameter = 0.16 * units::m},
       {.diameter = 10 * mm, .discharge_coefficient = 1},
       {},
       9.8,
       46.26,
       0.005},
      // engineeringprep.com, problem 435: roots rounded to 2.45 - 1.41 = 1.04, each by up to 0.005
      {"examination problem 435",
       {.level = 6 * ft, .diameter = 4 * ft},
       {.diameter = hole_of_area(5 * 0.0254 * 0.0254), .discharge_coefficient = 1},
       2 * ft,
       32.2 * 0.3048,
       93.9,
       0.05,
       93.9 * 0.01 / 1.04},
      // D. M. Himmelblau and J. B. Riggs, Basic Principles and Calculations in Chemical Engineering (2006), example
      // 32.2, as worked in public notes: 7.37e4 s, "20 h 28 min"
      {"Himmelblau 32.2",
       {.level = 10 * units::m, .area = 16 * m2},
       {.diameter = hole_of_area(5e-4), .discharge_coefficient = 0.62},
       {},
       9.81,
       7.37e4,
       0.005e4},
      {"Himmelblau 32.2, in minutes",
       {.level = 10 * units::m, .area = 16 * m2},
       {.diameter = hole_of_area(5e-4), .discharge_coefficient = 0.62},
       {},
       9.81,
       (20 * 60 + 28) * 60,
       30},
      // Exercise on a tank of 10 cm with a well-rounded hole of 1.2 mm and kinetic energy factor 1.10 (read as a web
      // page): "between 20 and 25 minutes"
      {"exercise with alpha 1.10",
       {.level = 15 * cm, .diameter = 10 * cm},
       {.diameter = 1.2 * mm, .discharge_coefficient = 1 / std::sqrt(1.10)},
       {},
       9.81,
       22.5 * 60,
       2.5 * 60}};
  return cases;
}

TEST(Hole, TakesThePublishedTimes) {
  for (const PublishedHole& test : published_holes())
    EXPECT_NEAR(record(Accuracy::draining,
                       time_under(test.gravity, time_to_fall(test.tank, test.hole, test.to_level)),
                       test.time,
                       test.printed),
                test.time,
                test.printed + test.by_hand)
        << test.source;
}

// The same project, page "Comparison": the four pipes ran empty in 13.3, 50.4, 3.8 and 13.1 s, by its own account up to
// 15.2 % of the computed time away.
TEST(Hole, IsAsNearToMeasuredTimesAsItsSourceSays) {
  const double measured[] = {13.3, 50.4, 3.8, 13.1};
  for (std::size_t i = 0; i < 4; ++i) {
    const PublishedHole& test = published_holes()[i];
    const double time = time_to_fall(test.tank, test.hole) / units::s;
    EXPECT_NEAR(measured[i], time, 0.1525 * time);
  }
}

// Outlet of the drum at the gate: 15 gal over 0.60 m, 2.0 mm, Cd 0.62. By hand:
// t = sqrt(2 x 0.60 / 9.80665) x 0.0946353 / (0.62 x 3.141593e-6) = 0.349808 x 48586.0 = 16995.8 s
const Tank drum{.level = 0.60 * units::m, .area = 15 * 3.785411784e-3 / 0.60 * m2};
const Hole drum_hole{.diameter = 2.0 * mm};

TEST(Hole, EmptiesTheDrumAtTheGateInFourHoursAndThreeQuarters) {
  EXPECT_NEAR(time_to_fall(drum, drum_hole) / units::s, 16995.8, 0.1);
  EXPECT_NEAR(outflow(drum, drum_hole) / lph, 24.05, 0.005);  // 1.947787e-6 m2 x 3.43046 m/s
  EXPECT_DOUBLE_EQ(time_to_run_out(drum, drum_hole, 15 * gallon) / units::s,
                   time_to_fall(drum, drum_hole) / units::s);
}

TEST(Hole, HasTheClosedFormsOfUprightWalls) {
  const Time whole = time_to_fall(drum, drum_hole);
  // A quarter of the level is left after half of the time, and 3/4 of the water has run out.
  EXPECT_NEAR(level_after(drum, drum_hole, 0.5 * whole) / units::m, 0.15, 1e-15);
  EXPECT_NEAR(time_to_fall(drum, drum_hole, 0.15 * units::m) / whole, 0.5, 1e-15);
  EXPECT_NEAR(time_to_run_out(drum, drum_hole, 11.25 * gallon) / whole, 0.5, 1e-14);
  EXPECT_EQ(level_after(drum, drum_hole, 2.0 * whole), 0 * units::m);
  EXPECT_DOUBLE_EQ(level_after(drum, drum_hole, 0 * units::s) / units::m, 0.6);
  EXPECT_EQ(time_to_fall(drum, drum_hole, drum.level), 0 * units::s);
  EXPECT_EQ(time_to_run_out({.level = 0 * units::m, .area = 1 * m2}, drum_hole, 0 * litre),
            0 * units::s);
  // A cup out of a pond: volume / outflow, to the share of the level that it takes.
  const Tank pond{.level = 2 * units::m, .area = 10000 * m2};
  EXPECT_NEAR(time_to_run_out(pond, drum_hole, 1 * litre) * outflow(pond, drum_hole) / (1 * litre),
              1,
              1e-7);
}

// What has run out is the integral of the outflow over time.
TEST(Hole, LosesWhatRunsOut) {
  for (const double share : {0.1, 0.5, 1.0}) {
    const double end = share * (time_to_fall(drum, drum_hole) / units::s);
    const auto outflow_at = [](double seconds) {
      const Tank tank{.level = level_after(drum, drum_hole, seconds * units::s)};
      return outflow(tank, drum_hole) / m3_per_s;
    };
    const double run_out =
        boost::math::quadrature::gauss<double, 15>::integrate(outflow_at, 0, end);
    const Length left = level_after(drum, drum_hole, end * units::s);
    const double dropped = (drum.level - left) / units::m * (*drum.surface() / m2);
    EXPECT_NEAR(run_out, dropped, 1e-9 * dropped);
  }
}

TEST(Hole, IsExamined) {
  const auto time = [](const Tank& tank, const Hole& hole, const Length& level) {
    return refusal([&] { time_to_fall(tank, hole, level); });
  };
  EXPECT_THAT(time(drum, {}, {}), HasSubstr("hole.diameter: is 0 mm, must be from 0.1"));
  EXPECT_THAT(time(drum, {2 * mm, 1.1}, {}), HasSubstr("hole.discharge_coefficient: is 1.1"));
  EXPECT_THAT(time(drum, drum_hole, 0.7 * units::m), HasSubstr("level: is 0.7 m, must be from 0 "));
  EXPECT_THAT(time({.level = 1 * units::m}, drum_hole, {}),
              HasSubstr("tank.diameter: is not given, nor is the area"));
  EXPECT_THAT(time({.level = -1 * units::m, .area = 1 * m2}, drum_hole, {}),
              HasSubstr("tank.level: is -1 m"));
  EXPECT_THAT(time({.level = 1 * units::m, .area = 1 * m2}, {1500 * mm}, {}),
              HasSubstr("hole.diameter: is 1500 mm, must be smaller than the tank"));
  EXPECT_THAT(refusal([] { level_after(drum, drum_hole, -1 * units::s); }),
              HasSubstr("time: is -1 s"));
  EXPECT_THAT(refusal([] { time_to_run_out(drum, drum_hole, 16 * gallon); }),
              HasSubstr("volume: is "));
  EXPECT_EQ(outflow({.level = 0 * units::m}, drum_hole), 0 * lph);
}

Line short_line(const Outlet& outlet) {
  return {.name = "hose",
          .pipe = {.inside_diameter = 10 * inch, .hazen_williams = 150},
          .outlet = outlet,
          .count = 1,
          .spacing = 0.01 * units::m};
}
const Outlet drum_nozzle{.rated = 5 * kPa, .nozzle = 2.0 * mm, .discharge_coefficient = 0.62};

// The loss in 1 cm of 10 in pipe is 1e-11 of the level.
TEST(Drain, OfANozzleWithoutALineIsTheHole) {
  const Layout layout(Supply{.tank = drum}, {short_line(drum_nozzle)});
  const Drain found = drain(layout, {.least_outflow = 0});
  EXPECT_EQ(found.end, DrainEnd::tank_empty);
  EXPECT_EQ(found.steps.size(), 11U);
  EXPECT_EQ(found.steps.back().level, 0 * units::m);
  const double whole = time_to_fall(drum, drum_hole) / units::s;
  for (const DrainStep& step : found.steps) {
    EXPECT_NEAR(
        step.time / units::s, time_to_fall(drum, drum_hole, step.level) / units::s, 1e-9 * whole);
    const Tank tank{.level = step.level};
    EXPECT_NEAR(step.outflow / lph, outflow(tank, drum_hole) / lph, 1e-9 * 24);
    EXPECT_NEAR(
        step.run_out / litre, 1000 * (0.6 - step.level / units::m) * (*drum.area / m2), 1e-9);
  }
}

// 5 kPa is 0.51078 m of this water (5000 / (998.2 x 9.80665)): below rated after the closed form's time.
TEST(Drain, TellsWhenTheFirstOutletFallsShort) {
  const Layout layout(Supply{.tank = drum}, {short_line(drum_nozzle)});
  const Drain found = drain(layout);
  ASSERT_EQ(found.first_falls.size(), 1U);  // no minimum, and the default ends it before it is dry
  EXPECT_EQ(found.first_falls[0].fall, FirstFall::below_rated);
  EXPECT_EQ(found.first_falls[0].line, "hose");
  EXPECT_EQ(found.first_falls[0].outlet, 1);
  const double density = properties(layout.water()).density / kg_per_m3;
  const Length level = 5000 * (1 - 1e-6) / (density * gravity) * units::m;
  EXPECT_NEAR(found.first_falls[0].level / units::m, level / units::m, 1e-8);
  EXPECT_NEAR(found.first_falls[0].time / units::s,
              time_to_fall(drum, drum_hole, level) / units::s,
              1e-3);  // the level's 1e-8 m
}

// Y. A. Cengel, J. M. Cimbala and R. H. Turner, Fundamentals of Thermal-Fluid Sciences, 5th edition, problem 14-100
// (solutions manual, read): a pool of 10 m, 2 m deep, 25 m of 5 cm plastic pipe, f = 0.022, g = 9.81: 88,480 s, 24.6 h,
// and 1.808 m/s at first. The exit's velocity head is in it, the entrance's loss is not.
TEST(Drain, OfAPoolThroughAPipeTakesThePublishedTime) {
  const Line hose{.name = "hose",
                  .pipe = {.inside_diameter = 5 * cm, .darcy_factor = 0.022},
                  .length = 25 * units::m};
  const Layout layout =
      Layout(Supply{.tank = Tank{.level = 2 * units::m, .diameter = 10 * units::m}}, {hose})
          .with_fault(end_open("hose"));
  const Drain found = drain(layout, {.least_outflow = 0});
  EXPECT_NEAR(record(Accuracy::draining, time_under(9.81, found.time()), 88480, 5), 88480, 5);
  EXPECT_NEAR(time_under(9.81, found.time()) / 3600, 24.6, 0.05);
  const double bore = std::numbers::pi / 4 * 0.05 * 0.05;
  EXPECT_NEAR(found.steps[0].outflow / m3_per_s / bore * std::sqrt(9.81 / gravity), 1.808, 5e-4);
  ASSERT_TRUE(found.lowest_mouth);
  EXPECT_EQ(found.lowest_mouth->line, "hose");
  EXPECT_EQ(found.lowest_mouth->outlet, std::nullopt);
}

/// Twelve emitters on a row that climbs from a hollow 4 m below a pond.
Layout climbing_row(const Length& level = 3 * units::m, const Area& area = 40 * m2) {
  const Line main{.name = "main",
                  .pipe = {.inside_diameter = 50 * mm, .hazen_williams = 150},
                  .length = 100 * units::m,
                  .ground_rise = -4 * units::m};
  const Line row{
      .name = "row 1",
      .fed_by = "main",
      .pipe = {.inside_diameter = 16 * mm, .hazen_williams = 150},
      .outlet = Outlet{.flow = 60 * lph, .at = 50 * kPa, .rated = 40 * kPa, .minimum = 20 * kPa},
      .count = 12,
      .spacing = 2 * units::m,
      .ground_rise = 6 * units::m,
      .riser = {.height = 0.2 * units::m}};
  return Layout(Supply{.tank = Tank{.level = level, .area = area}, .elevation = 4 * units::m},
                {main, row});
}

double solved_outflow(const Layout& layout, const Length& level) {
  Supply held{.elevation = layout.supply().elevation};
  held.pressure = pressure(level, properties(layout.water()).density);
  return solve(layout.with_supply(held)).inflow() / m3_per_s;
}

// Independent of the quadrature: Simpson's rule in the level, where no outlet falls dry.
TEST(Drain, FallsAsFastAsTheOutflowSays) {
  const Layout layout = climbing_row();
  const Drain found = drain(layout, {.to_level = 2.9 * units::m, .levels = 3});
  EXPECT_EQ(found.end, DrainEnd::level_reached);
  ASSERT_EQ(found.steps.size(), 3U);
  const double sum = 1 / solved_outflow(layout, 3 * units::m) +
                     4 / solved_outflow(layout, 2.95 * units::m) +
                     1 / solved_outflow(layout, 2.9 * units::m);
  const double time = 40 * 0.05 / 3 * sum;
  EXPECT_NEAR(found.time() / units::s, time, 2e-6 * time);  // 1/Q's fourth derivative x 0.05^4 / 90
  EXPECT_NEAR(found.steps[1].outflow / m3_per_s, solved_outflow(layout, 2.95 * units::m), 1e-15);
}

TEST(Drain, GoesOneWay) {
  const Drain found = drain(climbing_row(), {.levels = 40});
  ASSERT_EQ(found.steps.size(), 40U);
  for (std::size_t i = 1; i < found.steps.size(); ++i) {
    EXPECT_LT(found.steps[i].level, found.steps[i - 1].level);
    EXPECT_GT(found.steps[i].time, found.steps[i - 1].time);
    EXPECT_LT(found.steps[i].outflow, found.steps[i - 1].outflow);
    const double run_out = 40 * (3 - found.steps[i].level / units::m);
    EXPECT_NEAR(found.steps[i].run_out / m3, run_out, 1e-9 * run_out);
  }
  EXPECT_LE(found.time_error, 1e-6);
  EXPECT_LT(found.solves, 2000);
}

TEST(Drain, TakesHalfTheTimeFromHalfTheSurface) {
  const Drain whole = drain(climbing_row());
  const Drain half = drain(climbing_row(3 * units::m, 20 * m2));
  EXPECT_NEAR(half.time() / whole.time(), 0.5, 1e-12);
  EXPECT_EQ(half.solves, whole.solves);
}

TEST(Drain, IsTheSumOfItsParts) {
  const double whole = drain(climbing_row(), {.to_level = 0.5 * units::m}).time() / units::s;
  const double first = drain(climbing_row(), {.to_level = 2 * units::m}).time() / units::s;
  const double second =
      drain(climbing_row(2 * units::m), {.to_level = 0.5 * units::m}).time() / units::s;
  EXPECT_NEAR(first + second, whole, 2e-6 * whole);
}

// The ground at the twelve outlets is 0.5, 1.0 ... 6.0 m, the pond's outlet at 4 m: outlet 12 is lifted to 2.2 m above
// it, and dries first. All but the last few run below the pond's outlet, so the pond empties.
TEST(Drain, NamesTheOutletsThatFallFirst) {
  const Layout layout = climbing_row();
  const Drain found = drain(layout);
  EXPECT_EQ(found.end, DrainEnd::tank_empty);
  ASSERT_TRUE(found.lowest_mouth);
  EXPECT_EQ(found.lowest_mouth->outlet, 1);
  EXPECT_NEAR(found.lowest_mouth->level / units::m, 0.5 + 0.2 - 4, 1e-12);
  ASSERT_EQ(found.first_falls.size(), 3U);
  for (const OutletFall& fall : found.first_falls) EXPECT_EQ(fall.outlet, 12);
  EXPECT_EQ(found.first_falls[0].time,
            0 * units::s);  // 0.8 m over it is less than 40 kPa and 20 kPa
  EXPECT_EQ(found.first_falls[1].time, 0 * units::s);
  const OutletFall& dry = found.first_falls[2];
  EXPECT_EQ(dry.fall, FirstFall::dry);
  EXPECT_GT(dry.level, 2.2 * units::m);  // the others' flow takes its share
  for (const double beside : {-1e-6, 1e-6}) {
    Supply held{.elevation = layout.supply().elevation};
    held.pressure = pressure(dry.level + beside * units::m, properties(layout.water()).density);
    const Solution solution = solve(layout.with_supply(held));
    EXPECT_EQ(solution.lines()[1].state.back() == OutletState::dry, beside < 0);
  }
}

TEST(Drain, StopsWhereTheLowestOutletIsAboveTheTank) {
  Line row = climbing_row().lines()[1];
  row.fed_by = "";
  row.riser.inside_diameter = 15 * mm;
  row.riser.hazen_williams = 150;
  const Layout layout(Supply{.tank = Tank{.level = 3 * units::m, .area = 1 * m2}}, {row});
  const Drain found = drain(layout, {.least_outflow = 0});
  EXPECT_EQ(found.end, DrainEnd::outflow_ceases);
  ASSERT_TRUE(found.lowest_mouth);
  EXPECT_EQ(found.lowest_mouth->outlet, 1);
  EXPECT_NEAR(found.lowest_mouth->level / units::m, 0.7, 1e-12);
  EXPECT_NEAR(found.steps.back().level / units::m, 0.7, 1e-12);
  EXPECT_EQ(solved_outflow(layout, 0.7 * units::m), 0);
  EXPECT_GT(solved_outflow(layout, 0.7001 * units::m), 0);
  // By default it ends a little above, at a thousandth of the outflow at first.
  const Drain usual = drain(layout);
  EXPECT_NEAR(usual.steps.back().outflow / usual.steps.front().outflow, 1e-3, 1e-9);
  EXPECT_LT(usual.time(), found.time());
  // A sheared riser lowers the mouth to its stub.
  const Drain sheared = drain(layout.with_fault(riser_sheared("row 1", 1, 0.05 * units::m, 1.0)));
  EXPECT_NEAR(sheared.lowest_mouth->level / units::m, 0.55, 1e-12);
  // Capped, the next one is the lowest; a leak at the foot of the row lies lower than both.
  const Drain capped_first = drain(layout.with_fault(capped("row 1", 1)));
  EXPECT_EQ(capped_first.lowest_mouth->outlet, 2);
  const Drain leaking = drain(layout.with_fault(leak("row 1", 1 * units::m, 60 * lph, 50 * kPa)));
  EXPECT_EQ(leaking.lowest_mouth->outlet, std::nullopt);
  EXPECT_NEAR(leaking.lowest_mouth->level / units::m, 0.25, 1e-12);
}

TEST(Drain, OfATankThatStandsTooLowIsOverAtOnce) {
  Line row = climbing_row().lines()[1];
  row.fed_by = "";
  const Layout layout(Supply{.tank = Tank{.level = 0.6 * units::m, .area = 1 * m2}}, {row});
  const Drain found = drain(layout);
  EXPECT_EQ(found.end, DrainEnd::outflow_ceases);
  EXPECT_EQ(found.steps.size(), 1U);
  EXPECT_EQ(found.time(), 0 * units::s);
  EXPECT_EQ(found.steps[0].outflow, 0 * lph);
  EXPECT_EQ(found.first_falls.size(), 3U);
}

// Laminar at the end, the outflow goes with the level: the last of it takes for ever.
TEST(Drain, SaysWhenTheLastOfItTakesForEver) {
  Line tube = short_line(drum_nozzle);
  tube.pipe = {.inside_diameter = 4 * mm, .roughness = 0 * mm};
  tube.spacing = 20 * units::m;
  const Layout layout(Supply{.tank = drum}, {tube});
  try {
    drain(layout, {.least_outflow = 0});
    FAIL() << "was integrated";
  } catch (const NotDrained& error) {
    EXPECT_THAT(error.what(), HasSubstr("the last water runs ever slower: give to_level, or a "));
  }
  EXPECT_LE(drain(layout).time_error, 1e-6);
}

TEST(Drain, IsExamined) {
  const auto refused = [](const Layout& layout, const DrainOptions& options) {
    return refusal([&] { drain(layout, options); });
  };
  const Layout held(Supply{.pressure = 1 * bar}, {short_line(drum_nozzle)});
  EXPECT_THAT(refused(held, {}), HasSubstr("supply.tank: is not given; only a tank runs empty"));
  const Layout unknown(Supply{.tank = Tank{.level = 1 * units::m}}, {short_line(drum_nozzle)});
  EXPECT_THAT(refused(unknown, {}), HasSubstr("supply.tank.diameter: is not given, nor is"));
  const Layout layout = climbing_row();
  EXPECT_THAT(refused(layout, {.to_level = 4 * units::m}),
              HasSubstr("to_level: is 4 m, must be from 0 to 3 m"));
  EXPECT_THAT(refused(layout, {.least_outflow = 0.6}), HasSubstr("least_outflow: is 0.6"));
  EXPECT_THAT(refused(layout, {.levels = 1}), HasSubstr("levels: is 1, must be from 2 to 1000"));
  EXPECT_THAT(refused(layout, {.tolerance = 0}), HasSubstr("tolerance: is 0, must be from 1e-12"));
}

}  // namespace
}  // namespace hydro
