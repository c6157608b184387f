// Pumps, and supplies of all kinds: their laws, the figures at one flow, readings, bad input.
#include "hydro/physics/operating_point.hpp"
#include "hydro/physics/pump_law.hpp"
#include "hydro/physics/pump_readings.hpp"
#include "hydro/physics/supply_law.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;

/// Rounding of a chain of some tens of operations.
constexpr double arithmetic = 1e-13;

/// The invented pump of Ouzel Bench: 150 ft less 0.0025 ft per gpm^2 at 2,600 rpm.
Pump bench_pump() {
  return {.points = {{0 * gpm, 150 * ft}, {100 * gpm, 125 * ft}},
          .curve_speed = 2600 * rpm,
          .speed = 2210 * rpm,
          .top_speed = 2800 * rpm,
          .least_flow = 20 * gpm,
          .most_flow = 130 * gpm,
          .npsh_required = {{0 * gpm, 6 * ft}, {100 * gpm, 15 * ft}},
          .efficiency = 0.6};
}

Supply bench_supply() {
  return {.pump = bench_pump(),
          .suction = Suction{.lift = 6 * ft,
                             .pipe = Pipe{.inside_diameter = 3 * inch, .hazen_williams = 140},
                             .length = 25 * ft,
                             .loss_coefficient = 3},
          .filter = Filter{.loss = 1.5 * psi, .at = 80 * gpm},
          .gauge = Gauge{.range = 100 * psi}};
}

HeadAtFlow head_at(const Supply& supply, const Flow& flow) {
  return SupplyLaw(supply, properties({})).at(si(flow));
}

// ---- the curve ----------------------------------------------------------------------------------

TEST(PumpCurve, OfTwoPointsIsAParabola) {
  for (const double flow : {0.0, 30.0, 100.0, 200.0})
    EXPECT_NEAR(pump_head(bench_pump(), flow * gpm, 2600 * rpm) / ft,
                150 - 0.0025 * flow * flow,
                150 * arithmetic);
  EXPECT_EQ(fit_of(bench_pump()).largest_misfit / units::m, 0);
}

// Three and more points: through them, falling between them, and straight on outside.
TEST(PumpCurve, GoesThroughItsPoints) {
  for (const std::vector<PumpPoint>& points :
       {std::vector<PumpPoint>{
            {2 * lps, 40 * units::m}, {5 * lps, 39 * units::m}, {6 * lps, 20 * units::m}},
        std::vector<PumpPoint>{{0 * lps, 40 * units::m},
                               {1 * lps, 39.9 * units::m},
                               {4 * lps, 39.8 * units::m},
                               {5 * lps, 10 * units::m},
                               {9 * lps, 9 * units::m}}}) {
    const Pump pump{.points = points};
    for (const PumpPoint& point : points)
      EXPECT_NEAR(pump_head(pump, point.flow) / units::m, point.head / units::m, 40 * arithmetic);
    Length before = pump_head(pump, 0 * lps);
    for (double flow = 0.01; flow < 20; flow += 0.01) {
      const Length head = pump_head(pump, flow * lps);
      EXPECT_LT(head, before) << flow;
      before = head;
    }
    const std::size_t n = points.size();
    const double last = (points[n - 1].head - points[n - 2].head) / units::m /
                        ((points[n - 1].flow - points[n - 2].flow) / lps);
    EXPECT_NEAR(pump_head(pump, points[n - 1].flow + 3 * lps) / units::m,
                points[n - 1].head / units::m + 3 * last,
                100 * arithmetic);
  }
}

// Least squares by hand: Q^2 = 0, 1, 4 and H = 12, 10, 5 have the means 5/3 and 9; the sum of the
// products about them is -15, that of the squares 26/3.
TEST(PumpCurve, ByLeastSquaresTellsItsMisfit) {
  const Pump pump{
      .points = {{0 * lps, 12 * units::m}, {1 * lps, 10 * units::m}, {2 * lps, 5 * units::m}},
      .shape = CurveShape::quadratic};
  const double b = 15 / (26.0 / 3), a = 9 + b * 5 / 3;
  const PumpFit fit = fit_of(pump);
  EXPECT_NEAR(fit.head_at_rest / units::m, a, 12 * arithmetic);
  EXPECT_NEAR(fit.largest_misfit / units::m,
              std::max({std::abs(a - 12), std::abs(a - b - 10), std::abs(a - 4 * b - 5)}),
              12 * arithmetic);
  EXPECT_NEAR(pump_head(pump, 1 * lps) / units::m, a - b, 12 * arithmetic);
}

// Q ~ n, H ~ n^2: every point of the curve at one speed is one at another.
TEST(PumpCurve, FollowsTheAffinityLaws) {
  for (const double share : {0.3, 0.85, 1.2}) {
    EXPECT_NEAR(pump_head(bench_pump(), share * 70 * gpm, share * 2600 * rpm) / ft,
                share * share * (150 - 0.0025 * 70 * 70),
                150 * arithmetic);
    Supply supply = bench_supply();
    supply.pump->top_speed = {};
    const OperatingPoint whole = operating_point({.pump = bench_pump()}, 60 * gpm);
    supply = {.pump = bench_pump()};
    supply.pump->top_speed = {};
    supply.pump->speed = share * 2210 * rpm;
    const OperatingPoint slowed = operating_point(supply, share * 60 * gpm);
    EXPECT_NEAR(*slowed.pumps[0].npsh_required / *whole.pumps[0].npsh_required,
                share * share,
                10 * arithmetic);
    EXPECT_NEAR(*slowed.pumps[0].shaft_power / *whole.pumps[0].shaft_power,
                share * share * share,
                10 * arithmetic);
    EXPECT_NEAR(*slowed.pumps[0].least_flow / gpm, share * 20 * 0.85, 100 * arithmetic);
  }
}

// ---- supplies drawn at random: the head falls, and its slope is its derivative -------------------

class Random {
 public:
  explicit Random(unsigned seed) : engine_(seed) {}
  double between(double from, double to) {
    return std::uniform_real_distribution<double>(from, to)(engine_);
  }
  bool toss(double chance = 0.5) { return between(0, 1) < chance; }
  int whole(int from, int to) { return std::uniform_int_distribution<int>(from, to)(engine_); }

 private:
  std::mt19937 engine_;
};

Pump random_pump(Random& random) {
  Pump pump;
  const int count = random.whole(2, 7);
  double flow = random.toss() ? 0 : random.between(0.1, 3), head = random.between(5, 80);
  for (int i = 0; i < count; ++i) {
    pump.points.push_back({flow * lps, head * units::m});
    flow += random.between(0.2, 4);
    head *= random.between(0.6, 0.9999);
  }
  if (random.toss()) pump.shape = CurveShape::quadratic;
  if (random.toss()) {
    pump.curve_speed = 2000 * rpm;
    pump.speed = random.between(1000, 3000) * rpm;
  }
  if (random.toss(0.7)) {
    const Flow first = pump.points.front().flow, last = pump.points.back().flow;
    pump.least_flow = first + 0.1 * (last - first);
    pump.most_flow = first + 0.8 * (last - first);
    if (random.toss()) {
      pump.efficiency = random.between(0.3, 0.8);
    } else {
      pump.efficiencies = {{0.8 * *pump.least_flow, 0.3},
                           {0.5 * (*pump.least_flow + *pump.most_flow), random.between(0.3, 0.4)},
                           {1.1 * *pump.most_flow, random.between(0.25, 0.4)}};
    }
    pump.power = random.between(1, 10) * kW;
    if (random.toss(0.7)) pump.droop = random.between(0, 0.5);
    if (!problems(pump).empty()) pump.droop = {};
  }
  return pump;
}

Supply random_supply(Random& random) {
  Supply supply;
  switch (random.whole(0, 5)) {
    case 0:
      supply.pressure = random.between(0, 500) * kPa;
      break;
    case 1:
      supply.tank = Tank{.level = random.between(0, 5) * units::m};
      break;
    case 2:
      supply.hydrant =
          Hydrant{random.between(300, 500) * kPa, random.between(100, 290) * kPa, 5 * lps};
      break;
    default:
      supply.pump = random_pump(random);
      if (random.toss()) supply.second_pump = random.toss(0.2) ? *supply.pump : random_pump(random);
      if (supply.second_pump && random.toss()) supply.arrangement = PumpArrangement::series;
      supply.suction = Suction{.lift = random.between(-3, 5) * units::m};
      if (random.toss()) {
        supply.suction->pipe = Pipe{.inside_diameter = random.between(50, 100) * mm};
        (random.toss() ? supply.suction->pipe->hazen_williams.emplace(140)
                       : supply.suction->pipe->darcy_factor.emplace(0.02));
        supply.suction->length = random.between(0, 20) * units::m;
        supply.suction->loss_coefficient = random.between(0, 10);
      }
  }
  if (random.toss()) supply.filter = Filter{random.between(1, 50) * kPa, 5 * lps};
  return supply;
}

TEST(RandomSupplies, FallWithTheFlow) {
  int droops = 0;
  for (unsigned seed = 0; seed < 2000; ++seed) {
    Random random(seed);
    const Supply supply = random_supply(random);
    ASSERT_TRUE(problems(supply).empty()) << seed << ": " << problems(supply)[0].text();
    droops += supply.pump && supply.pump->droop;
    const SupplyLaw law(supply, properties({}));
    EXPECT_EQ(law.is_held(), !supply.pump && !supply.hydrant && !supply.filter) << seed;
    EXPECT_EQ(law.head_at_rest(), law.at(0).head) << seed;
    double before = law.head_at_rest();
    double slope_before = law.at(0).slope;
    constexpr double step = 5e-5;
    for (double flow = step; flow < 0.04; flow += step) {
      const HeadAtFlow now = law.at(flow);
      ASSERT_LE(now.slope, 0) << seed << " at " << flow;
      if (law.is_held()) {
        ASSERT_EQ(now.head, before) << seed;
      } else {
        ASSERT_LT(now.head, before) << seed << " at " << flow;
      }
      // No jump: what it fell by is what the slopes at both ends and between allow; 20 times the
      // steeper of the two covers a knee between them.
      ASSERT_GT(now.head, before + 20 * step * std::min({now.slope, slope_before, -1.0}))
          << seed << " at " << flow;
      before = now.head;
      slope_before = now.slope;
    }
  }
  EXPECT_GT(droops, 300);
}

// At a knee (an end of the usable range, a check valve, a point of the efficiency) the two sides
// differ; there the slope must be that of one of them.
TEST(RandomSupplies, HaveTheSlopeOfTheirHead) {
  int compared = 0, at_knees = 0;
  for (unsigned seed = 0; seed < 2000; ++seed) {
    Random random(seed);
    const SupplyLaw law(random_supply(random), properties({}));
    for (int i = 0; i < 20; ++i) {
      const double flow = random.between(1e-4, 0.03), h = 1e-7;
      const double here = law.at(flow).head, slope = law.at(flow).slope;
      const double left = (here - law.at(flow - h).head) / h;
      const double right = (law.at(flow + h).head - here) / h;
      const double central = (left + right) / 2;
      // Rounding of a head of some 100 m over h, and the curvature over h.
      const double rounding = 100 * 4e-16 * 10 / h, curvature = std::abs(right - left);
      EXPECT_NEAR(slope, central, rounding + curvature + 1e-6 * std::abs(slope)) << seed;
      ++compared;
      at_knees += curvature > 0.01 * std::abs(central) + 10 * rounding;
    }
  }
  EXPECT_LT(at_knees, compared / 100);
}

// Far beyond the end of the curve it falls below 0, so that a solver always finds a crossing.
TEST(RandomSupplies, FallBelowZero) {
  for (unsigned seed = 0; seed < 500; ++seed) {
    Random random(seed);
    const Supply supply{.pump = random_pump(random)};
    EXPECT_LT(head_at(supply, 100 * m3_per_s).head, 0) << seed;
  }
}

TEST(RandomSupplies, AgreeWithTheOperatingPointToTheLastBit) {
  for (unsigned seed = 0; seed < 500; ++seed) {
    Random random(seed);
    const Supply supply = random_supply(random);
    const WaterProperties water = properties({});
    const double flow = random.between(0, 0.02);
    const OperatingPoint point = operating_point(supply, Flow::from_value(flow));
    const double head = SupplyLaw(supply, water).at(flow).head;
    EXPECT_EQ(si(point.pressure), si(water.density) * gravity * head) << seed;
    EXPECT_NEAR(si(point.source_pressure - point.filter_loss), si(point.pressure), 1e-6) << seed;
    Flow sum{};
    for (const PumpDuty& duty : point.pumps) {
      sum += duty.flow;
      if (duty.shaft_power) {
        EXPECT_GE(*duty.shaft_power, duty.water_power) << seed;
      }
    }
    if (supply.second_pump && supply.arrangement != PumpArrangement::series) {
      EXPECT_NEAR(sum / lps, flow * m3_per_s / lps, 1e-12) << seed;
    }
  }
}

// ---- two pumps ----------------------------------------------------------------------------------

TEST(TwoPumps, OfOneKindShareTheFlow) {
  const Supply one{.pump = bench_pump()};
  Supply two{.pump = bench_pump(), .second_pump = bench_pump()};
  EXPECT_EQ(head_at(two, 120 * gpm).head, head_at(one, 60 * gpm).head);
  two.arrangement = PumpArrangement::series;
  EXPECT_NEAR(head_at(two, 60 * gpm).head, 2 * head_at(one, 60 * gpm).head, 100 * arithmetic);
}

// The weaker stands still behind its check valve until the head has come down to its own.
TEST(TwoPumps, TheWeakerWaitsBehindItsCheckValve) {
  const Pump strong{.points = {{0 * lps, 40 * units::m}, {5 * lps, 30 * units::m}}};
  const Pump weak{.points = {{0 * lps, 35 * units::m}, {5 * lps, 25 * units::m}}};
  for (const Supply& supply :
       {Supply{.pump = strong, .second_pump = weak}, Supply{.pump = weak, .second_pump = strong}}) {
    const std::size_t w = supply.pump == weak ? 0 : 1;
    EXPECT_NEAR(head_at(supply, 0 * lps).head, 40, 40 * arithmetic);
    const OperatingPoint early = operating_point(supply, 3 * lps);
    EXPECT_EQ(early.pumps[w].flow, 0 * lps);
    EXPECT_NEAR(early.pumps[w].head / units::m, 35, 40 * arithmetic);
    EXPECT_EQ(early.pumps[1 - w].flow, 3 * lps);
    // 40 - 0.4 Q1^2 = 35 - 0.4 Q2^2 = 30 at Q1 = 5, Q2 = sqrt(12.5) L/s
    const OperatingPoint late = operating_point(supply, (5 + std::sqrt(12.5)) * lps);
    EXPECT_NEAR(late.pumps[w].flow / lps, std::sqrt(12.5), 10 * arithmetic);
    EXPECT_NEAR(late.pumps[w].head / units::m, 30, 100 * arithmetic);
    EXPECT_NEAR(late.pumps[1 - w].head / units::m, 30, 100 * arithmetic);
  }
}

// ---- droop --------------------------------------------------------------------------------------

// n = speed (1 - droop P / power) is met by the figures that are reported.
TEST(Droop, TakesSpeedWithThePower) {
  Pump pump = bench_pump();
  pump.power = 6 * kW;
  pump.droop = 0.08;
  for (const double flow : {25.0, 60.0, 100.0}) {
    const OperatingPoint point = operating_point({.pump = pump}, flow * gpm);
    const PumpDuty& duty = point.pumps[0];
    EXPECT_NEAR(*duty.speed / rpm, 2210 * (1 - 0.08 * (*duty.shaft_power / *pump.power)), 1e-9);
    EXPECT_NEAR(
        duty.head / ft, pump_head(bench_pump(), flow * gpm, *duty.speed) / ft, 150 * arithmetic);
  }
  // Below the range the power of its edge counts, and no power is told.
  const auto speed_at = [&](double flow) {
    return *operating_point({.pump = pump}, flow * gpm).pumps[0].speed / rpm;
  };
  EXPECT_NEAR(speed_at(0), speed_at(10), 1e-9);
  EXPECT_FALSE(operating_point({.pump = pump}, 10 * gpm).pumps[0].shaft_power);
}

// ---- figures at one flow ------------------------------------------------------------------------

TEST(OperatingPoint, OfTheBenchByHand) {
  const Flow flow = 80 * gpm;
  const OperatingPoint point =
      operating_point(bench_supply(), flow, {.density = 1000 * kg_per_m3}, {.altitude = 400 * ft});
  const double r = 2210.0 / 2600;
  const double head_ft = r * r * 150 - 0.0025 * 80 * 80;
  const PumpDuty& duty = point.pumps.at(0);
  EXPECT_NEAR(duty.head / ft, head_ft, 150 * arithmetic);
  EXPECT_NEAR(*duty.speed / rpm, 2210, 1e-9);
  EXPECT_EQ(duty.range, PumpRange::inside);
  EXPECT_NEAR(*duty.efficiency, 0.6, arithmetic);
  EXPECT_NEAR(duty.water_power / kW,
              1000 * gravity * (flow / m3_per_s) * (duty.head / units::m) / 1000,
              10 * arithmetic);
  EXPECT_NEAR(*duty.shaft_power / kW, duty.water_power / kW / 0.6, 10 * arithmetic);
  EXPECT_NEAR(*duty.npsh_required / ft, r * r * 6 + 0.0009 * 80 * 80, 100 * arithmetic);
  EXPECT_NEAR(point.filter_loss / psi, 1.5, 10 * arithmetic);
  EXPECT_NEAR(point.source_pressure / kPa,
              gravity * (duty.head - 6 * ft - point.suction_loss) / units::m,
              1e-9);
  EXPECT_NEAR(*point.gauge_reading / kPa, point.source_pressure / kPa, 1e-9);
}

TEST(OperatingPoint, ReadsTheGaugeWhereItIs) {
  Supply supply = bench_supply();
  supply.gauge = Gauge{.height = 2 * ft, .after_filter = true};
  const WaterProperties water = properties({});
  const OperatingPoint point = operating_point(supply, 80 * gpm);
  EXPECT_NEAR(
      *point.gauge_reading / kPa, (point.pressure - pressure(2 * ft, water.density)) / kPa, 1e-9);
  supply.gauge = {};
  EXPECT_FALSE(operating_point(supply, 80 * gpm).gauge_reading);
}

TEST(OperatingPoint, KnowsNoEfficiencyOutsideTheUsableRange) {
  Supply supply{.pump = bench_pump()};
  const auto duty = [&](double flow) { return operating_point(supply, flow * gpm).pumps[0]; };
  const double r = 0.85;
  EXPECT_EQ(duty(r * 20 - 0.1).range, PumpRange::below_least_flow);
  EXPECT_FALSE(duty(r * 20 - 0.1).efficiency);
  EXPECT_EQ(duty(r * 20 + 0.1).range, PumpRange::inside);
  EXPECT_TRUE(duty(r * 20 + 0.1).shaft_power);
  EXPECT_EQ(duty(r * 130 + 0.1).range, PumpRange::above_most_flow);
  EXPECT_FALSE(duty(r * 130 + 0.1).shaft_power);
  supply.pump->most_flow = {};
  EXPECT_EQ(duty(200).range, PumpRange::inside);
  EXPECT_TRUE(duty(150).efficiency);
  supply.pump->least_flow = {};
  EXPECT_EQ(duty(80).range, PumpRange::unknown);
  EXPECT_FALSE(duty(80).efficiency);
  supply.pump->efficiency = {};
  supply.pump->efficiencies = {{40 * gpm, 0.5}, {80 * gpm, 0.7}};
  EXPECT_EQ(duty(r * 60).range, PumpRange::unknown);
  EXPECT_NEAR(duty(r * 60).efficiency.value(), 0.6, arithmetic);
  EXPECT_FALSE(duty(r * 81).efficiency);
  EXPECT_FALSE(duty(r * 39).efficiency);
}

TEST(OperatingPoint, TellsNoShaftPowerWhereTheWaterDrivesThePump) {
  Pump pump = bench_pump();
  pump.most_flow = {};
  const PumpDuty duty = operating_point({.pump = pump}, 300 * gpm).pumps[0];
  EXPECT_LT(duty.head, 0 * ft);
  EXPECT_LT(duty.water_power, 0 * kW);
  EXPECT_FALSE(duty.efficiency);
  EXPECT_FALSE(duty.shaft_power);
}

// A parabola through these two would ask for less than nothing at rest.
TEST(OperatingPoint, AsksForNoLessSuctionBelowTheFirstPointThanAtIt) {
  Pump pump = bench_pump();
  pump.speed = {};
  pump.npsh_required = {{50 * gpm, 1 * ft}, {100 * gpm, 10 * ft}};
  for (const double flow : {0.0, 20.0, 50.0})
    EXPECT_NEAR(*operating_point({.pump = pump}, flow * gpm).pumps[0].npsh_required / ft,
                1,
                100 * arithmetic)
        << flow;
}

TEST(OperatingPoint, OfATankAndAHydrant) {
  EXPECT_NEAR(operating_point({.tank = Tank{.level = 3 * units::m}}, 2 * lps).pressure / kPa,
              pressure(3 * units::m, properties({}).density) / kPa,
              1e-12);
  const Supply hydrant{.hydrant = Hydrant{400 * kPa, 300 * kPa, 10 * lps}};
  EXPECT_NEAR(operating_point(hydrant, 0 * lps).pressure / kPa, 400, 1e-9);
  EXPECT_NEAR(operating_point(hydrant, 10 * lps).pressure / kPa, 300, 1e-9);
  // The flow goes with the drop to the power 0.54.
  EXPECT_NEAR(operating_point(hydrant, std::pow(2, 0.54) * 10 * lps).pressure / kPa, 200, 1e-9);
}

// ---- readings -----------------------------------------------------------------------------------

PumpReading reading(double gauge_psi, double flow_gpm) {
  return {.gauge = gauge_psi * psi,
          .flow = flow_gpm * gpm,
          .gauge_uncertainty = 1 * psi,
          .flow_uncertainty = 0.03 * flow_gpm * gpm};
}

// What the gauge of a known supply shows gives its pump back.
TEST(PumpReadings, GiveThePumpBack) {
  Supply supply = bench_supply();
  for (const bool after_filter : {false, true}) {
    supply.gauge = Gauge{.height = 3 * ft, .range = 100 * psi, .after_filter = after_filter};
    std::vector<PumpReading> readings;
    for (const double flow : {90.0, 0.0, 40.0})
      readings.push_back(
          {.gauge = *operating_point(supply, flow * gpm).gauge_reading, .flow = flow * gpm});
    const PumpFromReadings found =
        pump_from_readings(readings, {supply.suction, supply.gauge, supply.filter, 2210 * rpm});
    EXPECT_NEAR(found.head_at_rest().head / ft, 0.85 * 0.85 * 150, 150 * arithmetic);
    EXPECT_NEAR(found.largest_misfit() / ft, 0, 150 * arithmetic);
    EXPECT_NEAR(
        found.head(70 * gpm).head / ft, pump_head(bench_pump(), 70 * gpm) / ft, 150 * arithmetic);
    supply.pump = found.pump();
    EXPECT_NEAR(
        *operating_point(supply, 40 * gpm).gauge_reading / psi, readings[2].gauge / psi, 1e-9);
    supply = bench_supply();
    EXPECT_NEAR(*found.readings()[0].gauge_uncertainty / psi, 3 / std::sqrt(3), 1e-12);
    EXPECT_NEAR(*found.readings()[1].flow_uncertainty / gpm, 0.03 * 40, 1e-12);
  }
}

TEST(PumpReadings, TakeABucketAndAWatch) {
  const Flow flow = (5 * gallon) / (20 * units::s);
  EXPECT_NEAR(flow / gpm, 15, 15 * arithmetic);
  const PumpFromReadings found = pump_from_readings({reading(50, 0), reading(40, flow / gpm)});
  EXPECT_EQ(found.pump().points.size(), 2U);
}

// Closed valve and one more, without suction: H(0) is the first reading alone, and at the second
// flow u^2 = u(p)^2 + (2 b q u(q))^2.
TEST(PumpReadings, CarryTheirUncertainty) {
  const PumpFromReadings found = pump_from_readings({reading(50, 0), reading(40, 60)});
  const double foot = head(1 * psi, properties({}).density) / ft;
  EXPECT_NEAR(found.head_at_rest().uncertainty / ft, foot, 10 * arithmetic);
  const double b = 10 * foot / (60.0 * 60);
  EXPECT_NEAR(
      found.head(60 * gpm).uncertainty / ft, std::hypot(foot, 2 * b * 60 * 1.8), 100 * arithmetic);
  EXPECT_GT(found.head(90 * gpm).uncertainty, found.head(60 * gpm).uncertainty);
}

// Against the curve made again with each reading moved by a little.
TEST(PumpReadings, PropagateToFirstOrder) {
  const PumpReadingPlace place{.suction = bench_supply().suction};
  const std::vector<PumpReading> readings{
      reading(52, 0), reading(49, 30), reading(44, 55), reading(35, 80)};
  for (const double flow : {0.0, 45.0, 100.0}) {
    const auto head_of = [&](const std::vector<PumpReading>& moved) {
      return pump_from_readings(moved, place).head(flow * gpm).head / ft;
    };
    double variance = 0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
      const double h = 1e-4;  // of the uncertainty: error of the difference below 1e-7 of it
      for (const bool by_gauge : {true, false}) {
        std::vector<PumpReading> more = readings, less = readings;
        if (by_gauge) {
          more[i].gauge += h * *more[i].gauge_uncertainty;
          less[i].gauge -= h * *less[i].gauge_uncertainty;
        } else {
          more[i].flow += h * *more[i].flow_uncertainty;
          less[i].flow -= h * *less[i].flow_uncertainty;
        }
        variance += std::pow((head_of(more) - head_of(less)) / (2 * h), 2);
      }
    }
    EXPECT_NEAR(pump_from_readings(readings, place).head(flow * gpm).uncertainty / ft,
                std::sqrt(variance),
                1e-6)
        << flow;
  }
}

TEST(PumpReadings, RefuseWhatMakesNoCurve) {
  const auto message = [](const std::vector<PumpReading>& readings,
                          const PumpReadingPlace& place = {}) -> std::string {
    try {
      pump_from_readings(readings, place);
    } catch (const InvalidInput& error) {
      return error.what();
    }
    return "";
  };
  EXPECT_THAT(message({reading(50, 0)}), HasSubstr("readings: are 1, must be two or more"));
  EXPECT_THAT(message({reading(40, 0), reading(40, 60)}),
              HasSubstr("readings, by flow.points, 2: head is"));
  EXPECT_THAT(message({reading(40, 60), reading(30, 60)}),
              HasSubstr("readings, by flow.points, 2: flow is"));
  EXPECT_THAT(message({{.gauge = 50 * psi}, reading(40, 60)}),
              HasSubstr("readings, 1: gauge_uncertainty: is not given"));
  EXPECT_THAT(message({reading(50, 0), reading(40, 60)}, {.gauge = Gauge{.after_filter = true}}),
              HasSubstr("there is no filter"));
  EXPECT_THAT(message({reading(std::numeric_limits<double>::quiet_NaN(), 0), reading(40, 60)}),
              HasSubstr("readings, 1: gauge: is nan"));
  EXPECT_THROW(pump_from_readings({reading(50, 0), reading(40, 60)}).head(-1 * gpm), InvalidInput);
}

// ---- bad input ----------------------------------------------------------------------------------

template <class Part>
std::string first_problem(const Part& part) {
  const std::vector<Problem> found = problems(part);
  return found.empty() ? "" : found[0].text();
}

TEST(BadPump, IsNamed) {
  struct Case {
    void (*spoil)(Pump&);
    const char* says;
  };
  const std::vector<Case> cases{
      {[](Pump& p) { p.points = {}; }, "points: are 0, must be two or more"},
      {[](Pump& p) { p.points.resize(1); }, "points: are 1, must be two or more"},
      {[](Pump& p) {
         p.points.push_back({120 * gpm, 130 * ft});
       },
       "points, 3: head is 39.624 m, must be below that of the point before, 38.1 m"},
      {[](Pump& p) { p.points[1].flow = 0 * gpm; }, "points, 2: flow is 0 L/s, must be above"},
      {[](Pump& p) { p.points[0].flow = -1 * lps; }, "points, 1: is -3.6 m3/h, must be from 0"},
      {[](Pump& p) { p.points[0].head = std::nan("") * ft; }, "points, 1: is nan m"},
      {[](Pump& p) { p.curve_speed = {}; }, "curve_speed: is not given; a speed needs"},
      {[](Pump& p) { p.speed = 0 * rpm; }, "speed: is 0 rpm, must be from 1"},
      {[](Pump& p) { p.speed = 2900 * rpm; }, "speed: is 2900 rpm, must be at most top_speed"},
      {[](Pump& p) {
         p.speed = {};
         p.top_speed = 2000 * rpm;
       },
       "speed: is 2600 rpm, the curve_speed, must be at most top_speed, 2000 rpm"},
      {[](Pump& p) { p.least_flow = 130 * gpm; }, "most_flow: is 8.2017"},
      {[](Pump& p) { p.most_flow = 250 * gpm; }, "where the curve's head is"},
      {[](Pump& p) { p.npsh_required[1].head = 5 * ft; }, "npsh_required, 2: head is 1.524 m"},
      {[](Pump& p) { p.npsh_required.resize(1); }, "npsh_required: are 1"},
      {[](Pump& p) { p.efficiency = 60; }, "efficiency: is 60, must be above 0 to 1"},
      {[](Pump& p) {
         p.efficiencies = {{10 * gpm, 0.5}, {50 * gpm, 0.6}};
       },
       "efficiency, efficiencies: are both given"},
      {[](Pump& p) {
         p.efficiency = {};
         p.efficiencies = {{1 * gpm, 0.05}, {10 * gpm, 0.1}};
       },
       "efficiencies: do not reach into the usable range"},
      {[](Pump& p) { p.power = 0 * kW; }, "power: is 0 kW, must be above 0"},
      {[](Pump& p) { p.droop = 0.6; }, "droop: is 0.6, must be from 0 to 0.5"},
      {[](Pump& p) { p.droop = 0.1; }, "droop: is given, but the power at the shaft is not known"},
      {[](Pump& p) {
         p.droop = 0.1;
         p.power = 5 * kW;
         p.most_flow = {};
       },
       "droop: is given, but the power at the shaft is not known"},
      {[](Pump& p) {
         p.droop = 0.1;
         p.power = 5 * kW;
         p.efficiency = {};
         p.efficiencies = {{20 * gpm, 0.1}, {40 * gpm, 0.3}};
       },
       "efficiencies, 2: rises faster than the flow"},
      {[](Pump& p) {
         p.droop = 0.1;
         p.power = 5 * kW;
         p.efficiency = {};
         p.efficiencies = {{30 * gpm, 0.5}, {100 * gpm, 0.2}};
       },
       "efficiencies, 2: falls so steeply"},
  };
  EXPECT_EQ(first_problem(bench_pump()), "");
  for (const Case& one : cases) {
    Pump pump = bench_pump();
    one.spoil(pump);
    EXPECT_THAT(first_problem(pump), HasSubstr(one.says));
    EXPECT_THAT(first_problem(Supply{.pump = pump}), testing::StartsWith("pump."));
  }
  EXPECT_THROW(fit_of({}), InvalidInput);
  EXPECT_THROW(pump_head(bench_pump(), -1 * lps), InvalidInput);
  EXPECT_THROW(pump_head({.points = bench_pump().points}, 1 * lps, 2000 * rpm), InvalidInput);
}

TEST(BadPartsOfASupply, AreNamed) {
  EXPECT_THAT(first_problem(Suction{.lift = 11 * units::m}), HasSubstr("lift: is 11 m"));
  EXPECT_THAT(first_problem(Suction{.length = 2 * units::m}), HasSubstr("pipe: is not given"));
  const Pipe pipe{.inside_diameter = 3 * inch, .hazen_williams = 140};
  EXPECT_THAT(first_problem(Suction{.pipe = pipe}), HasSubstr("length: is not given"));
  EXPECT_THAT(first_problem(Suction{.pipe = Pipe{}, .length = 1 * units::m}),
              HasSubstr("pipe.inside_diameter"));
  EXPECT_THAT(first_problem(Suction{.pipe = pipe, .length = 1 * units::m, .loss_coefficient = -1}),
              HasSubstr("loss_coefficient: is -1"));
  EXPECT_THAT(first_problem(Filter{.loss = -1 * kPa, .at = 1 * lps}), HasSubstr("loss: is -1 kPa"));
  EXPECT_THAT(first_problem(Filter{.loss = 1 * kPa}), HasSubstr("at: is 0 m3/h, must be above 0"));
  EXPECT_THAT(first_problem(Gauge{.range = 0 * psi}), HasSubstr("range: is 0 kPa"));
  EXPECT_THAT(first_problem(Gauge{.height = std::nan("") * ft}), HasSubstr("height: is nan m"));
  EXPECT_THROW(operating_point(bench_supply(), -1 * lps), InvalidInput);
  EXPECT_THROW(operating_point({}, 1 * lps), InvalidInput);
  EXPECT_THROW(operating_point(bench_supply(), 1 * lps, {.temperature = -5 * degC}), InvalidInput);
}

}  // namespace
}  // namespace hydro
