// Lines on a supply that gives way: pumps, regulators, valves and sets where they are hard, each
// against figures worked by hand or against the same thing said otherwise; and a fact of the trade.
#include "hydro/hydro.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <string>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::HasSubstr;

constexpr double solved = 1e-9;  // relative: 1e-12 of the scales, and some hundred of them in a row

// H = 50 m - 5 m (Q / (1 L/s))^2
Pump half_a_parabola() {
  return {.points = {{0 * lps, 50 * units::m}, {2 * lps, 30 * units::m}},
          .curve_speed = 2900 * rpm};
}

// Without friction to speak of: 1 L/s at 200 kPa each.
Line open_row(const std::string& name, int count, const Length& rise = 0 * units::m) {
  return {.name = name,
          .pipe = {.inside_diameter = 1 * units::m, .hazen_williams = 150},
          .outlet = Outlet{.flow = 1 * lps, .at = 200 * kPa},
          .count = count,
          .spacing = 1 * units::m,
          .ground_rise = rise};
}

double weight(const Solution& solution) {
  return si(solution.water().density) * 9.80665;
}

// 50 - 5 q^2 = q^2 200 kPa / (rho g), q in L/s; the metre of wide pipe takes 1e-8 of it.
TEST(SolvedSupply, OnePumpAndOneOutletMeetWhereBothParabolasCross) {
  const Solution solution = solve(Layout({.pump = half_a_parabola()}, {open_row("row", 1)}));
  const double outlet = 200e3 / weight(solution);
  const double q = std::sqrt(50 / (5 + outlet));
  EXPECT_NEAR(solution.inflow() / lps, q, 1e-6 * q);
  EXPECT_NEAR(solution.supply_pressure() / kPa, 200 * q * q, 1e-6 * 200 * q * q);
}

TEST(SolvedSupply, APumpThatCannotMeetTheLiftLeavesAllDry) {
  Line hill = open_row("hill", 3);
  hill.ground_rise.reset();
  hill.elevations = {60 * units::m, 60 * units::m, 60 * units::m};
  const Solution solution = solve(Layout({.pump = half_a_parabola()}, {hill}));
  EXPECT_EQ(solution.inflow(), Flow{});
  for (const OutletState state : solution.line("hill").state) EXPECT_EQ(state, OutletState::dry);
  EXPECT_DOUBLE_EQ(si(solution.supply().pumps.at(0).head), 50);
}

TEST(SolvedSupply, WithEverythingShutThePumpStandsAtItsHeadAtRest) {
  Line row = open_row("row", 2);
  row.valve = Valve{.opening = ValveOpening::shut};
  const Solution solution =
      solve(Layout({.pump = half_a_parabola(), .suction = Suction{.lift = 3 * units::m}}, {row}));
  EXPECT_EQ(solution.inflow(), Flow{});
  EXPECT_TRUE(solution.line("row").shut);
  EXPECT_NEAR(solution.supply_pressure() / units::Pa, 47 * weight(solution), 1e-9);
  const Layout capped_off =
      Layout({.pump = half_a_parabola()}, {open_row("row", 1)}).with_fault(capped("row", 1));
  EXPECT_EQ(solve(capped_off).inflow(), Flow{});
}

/// A regulated main of 10 m, and a regulated row at its end.
Layout two_regulators(const Pressure& first, const Pressure& second) {
  Line main{.name = "main",
            .pipe = {.inside_diameter = 1 * units::m, .hazen_williams = 150},
            .length = 10 * units::m,
            .regulator = first};
  Line row = open_row("row", 2);
  row.fed_by = "main";
  row.regulator = second;
  return Layout({.pressure = 400 * kPa}, {main, row});
}

TEST(SolvedSupply, OfTwoRegulatorsInSeriesTheLowerOneRules) {
  const Solution lower_last = solve(two_regulators(200 * kPa, 100 * kPa));
  EXPECT_EQ(lower_last.line("main").regulator->state, RegulatorState::holding);
  EXPECT_EQ(lower_last.line("row").regulator->state, RegulatorState::holding);
  EXPECT_NEAR(lower_last.line("row").pressure[0] / kPa, 100, 1e-4);
  EXPECT_NEAR(lower_last.line("main").regulator->drop / kPa, 200, 1e-9 * 400);
  EXPECT_NEAR(lower_last.line("row").regulator->drop / kPa, 100, 1e-4);

  const Solution lower_first = solve(two_regulators(100 * kPa, 200 * kPa));
  EXPECT_EQ(lower_first.line("main").regulator->state, RegulatorState::holding);
  EXPECT_EQ(lower_first.line("row").regulator->state, RegulatorState::open);
  EXPECT_EQ(lower_first.line("row").regulator->drop, Pressure{});
  EXPECT_NEAR(lower_first.line("row").pressure[0] / kPa, 100, 1e-4);
}

TEST(SolvedSupply, ARegulatorSetAboveWhatComesIsOpenAndAddsNothing) {
  const Solution open = solve(two_regulators(500 * kPa, 600 * kPa));
  EXPECT_EQ(open.line("main").regulator->state, RegulatorState::open);
  EXPECT_EQ(open.line("row").regulator->state, RegulatorState::open);
  EXPECT_NEAR(open.line("main").regulator->pressure / kPa, 400, solved * 400);
  EXPECT_NEAR(open.line("row").pressure[0] / kPa, 400, 1e-4);
}

TEST(SolvedSupply, AStuckRegulatorPassesAllOrNothing) {
  const Layout sound = two_regulators(200 * kPa, 100 * kPa);
  const Solution open = solve(sound.with_fault(regulator_stuck_open("row")));
  EXPECT_EQ(open.line("row").regulator->state, RegulatorState::stuck_open);
  EXPECT_NEAR(open.line("row").pressure[0] / kPa, 200, 1e-4);
  const Solution shut = solve(sound.with_fault(regulator_stuck_shut("row")));
  EXPECT_EQ(shut.inflow(), Flow{});
  EXPECT_EQ(shut.line("row").state[0], OutletState::dry);
}

/// Its outlets compensate from 100 kPa on, and regulators below them hold this.
Layout regulated_outlets(const Pressure& held) {
  Line row = open_row("row", 3);
  row.outlet = Outlet{.flow = 10 * lph,
                      .compensating = Compensating{100 * kPa, 300 * kPa},
                      .body_bore = 4 * mm,
                      .regulator = held};
  return Layout({.pressure = 250 * kPa}, {row});
}

// Below the range in which it holds its flow, an outlet's flow goes with the square root (outlet.hpp).
TEST(SolvedSupply, ARegulatorBelowAnOutletMayBeSetBelowItsRange) {
  const LineSolution row = solve(regulated_outlets(25 * kPa)).line("row");
  EXPECT_NEAR(row.pressure[1] / kPa, 25, 1e-12 * 25);
  EXPECT_NEAR(row.flow[1] / lph, 10 * std::sqrt(25.0 / 100), solved * 5);
}

// q = Cd A sqrt(2 p / rho) with Cd = 0.85 at the regulator's pressure, not at the line's.
TEST(SolvedSupply, ARegulatorStaysBelowABodyThatLostItsNozzle) {
  const Solution solution =
      solve(regulated_outlets(150 * kPa).with_fault(nozzle_missing("row", 2)));
  const double area = std::acos(-1.0) / 4 * 0.004 * 0.004;
  const double q = 0.85 * area * std::sqrt(2 * 150e3 / si(solution.water().density));
  EXPECT_NEAR(si(solution.line("row").flow[1]), q, solved * q);
}

// A step of the ground at the inlet lies behind the regulator, which counts from its own height.
TEST(SolvedSupply, ARegulatorCountsFromTheGroundOfItsLinesInlet) {
  Line row = open_row("row", 2);
  row.first_at = 0 * units::m;
  row.ground_rise.reset();
  row.elevations = {5 * units::m, 5 * units::m};
  row.regulator = 100 * kPa;
  const Solution solution = solve(Layout({.pressure = 300 * kPa}, {row}));
  const double left = 100 - 5 * weight(solution) / 1000;
  EXPECT_NEAR(solution.line("row").regulator->pressure / kPa, 100, solved * 100);
  EXPECT_NEAR(solution.line("row").pressure[0] / kPa, left, 1e-4);
}

// Q ~ n and H ~ n^2, and both outlets' flows ~ sqrt(H): without lift all goes with the speed.
TEST(SolvedSupply, ASlowEngineMovesAllByTheAffinityLaws) {
  const Layout sound({.pump = half_a_parabola()}, {open_row("row", 2)});
  const Solution fast = solve(sound);
  const Solution slow = solve(sound.with_fault(engine_slow(1450 * rpm)));
  EXPECT_NEAR(slow.inflow() / fast.inflow(), 0.5, 1e-6);  // the pipe's loss goes with n^1.852
  EXPECT_NEAR(slow.supply_pressure() / fast.supply_pressure(), 0.25, 1e-6);
  const Solution worn = solve(sound.with_fault(pump_worn(0.2)));
  EXPECT_NEAR(worn.supply_pressure() / kPa,
              0.8 * pump_head(half_a_parabola(), worn.inflow()) / units::m * weight(worn) / 1000,
              solved * 400);
}

TEST(SolvedSupply, ADirtyFilterTakesItsPressureOnTheSquareOfTheFlow) {
  const Layout clean({.pressure = 300 * kPa, .filter = Filter{10 * kPa, 1 * lps}},
                     {open_row("row", 1)});
  for (const double loss_kPa : {10.0, 100.0}) {
    const Solution solution =
        solve(loss_kPa > 10 ? clean.with_fault(filter_dirty(loss_kPa * kPa)) : clean);
    // 300 - loss q^2 = 200 q^2, q in L/s
    const double q = std::sqrt(300 / (200 + loss_kPa));
    EXPECT_NEAR(solution.inflow() / lps, q, 1e-6 * q);
    EXPECT_NEAR(solution.supply().filter_loss / kPa, loss_kPa * q * q, 1e-5 * loss_kPa);
  }
}

// What the pump gives beyond its last point goes down to 0 and below: all of it leaves by the break.
TEST(SolvedSupply, ABrokenMainDrivesThePumpFarBeyondItsCurve) {
  Line down{.name = "main",
            .pipe = {.inside_diameter = 100 * mm, .hazen_williams = 150},
            .length = 50 * units::m,
            .ground_rise = -10 * units::m};
  Pump pump = half_a_parabola();
  pump.least_flow = 0.5 * lps;
  pump.most_flow = 2 * lps;
  pump.efficiency = 0.6;
  const Solution solution = solve(Layout({.pump = pump}, {down}).with_fault(end_open("main")));
  const PumpDuty& duty = solution.supply().pumps.at(0);
  EXPECT_GT(duty.flow, 3 * lps);
  EXPECT_EQ(duty.range, PumpRange::above_most_flow);
  EXPECT_FALSE(duty.shaft_power);
  EXPECT_NEAR(si(duty.head), 50 - 5 * std::pow(duty.flow / lps, 2), solved * 50);
}

TEST(SolvedSupply, ANegativeSuctionHeadIsAFigureAndNoError) {
  const Supply high{
      .pump = half_a_parabola(),
      .suction = Suction{.lift = 8 * units::m,
                         .pipe = Pipe{.inside_diameter = 25 * mm, .hazen_williams = 140},
                         .length = 20 * units::m}};
  const Solution solution = solve(Layout(high, {open_row("row", 3)}));
  EXPECT_LT(solution.supply().npsh_available.value(), Length{});
}

TEST(SolvedSupply, NonsenseIsRefused) {
  Pump standing = half_a_parabola();
  standing.speed = 0 * rpm;
  EXPECT_THAT(refusal([&] { Layout({.pump = standing}, {open_row("row", 1)}); }),
              HasSubstr("supply: pump.speed: is 0 rpm, must be from 1 to 100000 rpm"));
  EXPECT_THAT(refusal([&] {
                Layout({.pump = half_a_parabola()}, {open_row("row", 1)}, {}, {}, {{"a", {"rwo"}}});
              }),
              HasSubstr("is \"rwo\", but there is no such line"));
  Pump rising = half_a_parabola();
  rising.points[1].head = 50 * units::m;
  EXPECT_THAT(refusal([&] { Layout({.pump = rising}, {open_row("row", 1)}); }),
              HasSubstr("must be below that of the point before"));
}

// Rows that no set names have no valve of their own: with their manifold they run or do not.
TEST(SolvedSupply, AManifoldsValveLeftOpenFeedsItsRows) {
  Line manifold{.name = "manifold",
                .pipe = {.inside_diameter = 1 * units::m, .hazen_williams = 150},
                .length = 1 * units::m};
  Line row = open_row("row", 2);
  row.fed_by = "manifold";
  const Layout layout = Layout({.pump = half_a_parabola()},
                               {manifold, row, open_row("other", 1)},
                               {},
                               {},
                               {{"one", {"other"}}, {"two", {"manifold"}}})
                            .watering({"one"});
  EXPECT_EQ(solve(layout).line("row").inflow, Flow{});
  const Solution left_open = solve(layout.with_fault(valve_left_open("manifold")));
  EXPECT_GT(left_open.line("row").inflow, left_open.line("other").inflow);
}

// The whole farm's two double strips (all invented). A set opens the valve of its two rows.
Layout ouzel_bench(const RotationalSpeed& speed) {
  Pump pump{.points = {{0 * gpm, 150 * ft}, {100 * gpm, 125 * ft}},  // 150 ft - 0.0025 ft/gpm2
            .curve_speed = 2600 * rpm,
            .speed = speed,
            .least_flow = 20 * gpm,
            .most_flow = 130 * gpm,
            .efficiency = 0.60};
  const Pipe c150_3in{.inside_diameter = 3.231 * inch, .hazen_williams = 150};
  const Supply supply{
      .pump = pump,
      .suction = Suction{.lift = 6 * ft,
                         .pipe = Pipe{.inside_diameter = 3.0 * inch, .hazen_williams = 140},
                         .length = 25 * ft,
                         .loss_coefficient = 3},
      .filter = Filter{1.5 * psi, 80 * gpm},
      .gauge = Gauge{.range = 100 * psi}};
  std::vector<Line> lines{{.name = "main to tee 1",
                           .pipe = c150_3in,
                           .length = 180 * ft,
                           .ground_rise = 3 * ft,
                           .loss_coefficient = 2},
                          {.name = "main to tee 2",
                           .fed_by = "main to tee 1",
                           .pipe = c150_3in,
                           .length = 260 * ft,
                           .ground_rise = 3 * ft,
                           .loss_coefficient = 1.5}};
  const double rises_ft[] = {0, 3, -1, 3};
  for (const int first : {1, 3}) {
    const std::string rows = std::to_string(first) + "+" + std::to_string(first + 1);
    lines.push_back({.name = "valve " + rows,
                     .fed_by = "main to tee 2",
                     .pipe = {.inside_diameter = 1.5 * inch, .hazen_williams = 150},
                     .length = 3 * ft,
                     .loss_coefficient = 1.5});
    lines.push_back({.name = "manifold " + rows,
                     .fed_by = "valve " + rows,
                     .pipe = {.inside_diameter = 2.654 * inch, .hazen_williams = 150},
                     .length = 30 * ft});
    for (const int row : {first, first + 1})
      lines.push_back({.name = "row " + std::to_string(row),
                       .fed_by = (row == first ? "valve " : "manifold ") + rows,
                       .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
                       .outlet = Outlet{.flow = 0.704 * gpm,
                                        .at = 1 * psi,
                                        .rated = 25 * psi,
                                        .minimum = 18 * psi,
                                        .maximum = 50 * psi},
                       .count = 10,
                       .spacing = 36 * ft,
                       .first_at = 18 * ft,
                       .ground_rise = rises_ft[row - 1] * ft,
                       .riser = {.height = 4 * ft,
                                 .inside_diameter = 0.81 * inch,
                                 .hazen_williams = 150,
                                 .loss_coefficient = 1},
                       .loss_coefficient = 0.5,
                       .outlet_loss_coefficient = 0.3});
  }
  return Layout(supply,
                lines,
                {},
                {.altitude = 400 * ft},
                {{"rows 1+2", {"valve 1+2"}}, {"rows 3+4", {"valve 3+4"}}})
      .watering({"rows 1+2"});
}

int turning(const Solution& solution, const std::string& row) {
  int heads = 0;
  for (const OutletState state : solution.line(row).state) heads += state == OutletState::works;
  return heads;
}

/// The speed at which `figure`, which rises with it, is as wanted, by halving [rpm].
template <class Figure>
double speed_for(Figure figure, double wanted) {
  double low = 1000, high = 3500;
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    (figure(middle) < wanted ? low : high) = middle;
  }
  return high;
}

// Common practice, no source: one head broken off leaves its neighbours standing still while the
// other row turns, and throttling up until the gauge reads right does not cure the row.
TEST(OuzelBench, ABrokenHeadIsNotCuredByThrottle) {
  const auto weakest_psi = [](double speed) {
    const Solution solution = solve(ouzel_bench(speed * rpm));
    double least = 1e9;
    for (const char* row : {"row 1", "row 2"})
      for (const Pressure pressure : solution.line(row).pressure)
        least = std::min(least, pressure / psi);
    return least;
  };
  const double speed = speed_for(weakest_psi, 25);  // rated; they turn from 18 psi on
  const Solution sound = solve(ouzel_bench(speed * rpm));
  EXPECT_EQ(turning(sound, "row 1"), 10);
  EXPECT_EQ(turning(sound, "row 2"), 10);
  EXPECT_EQ(sound.line("row 3").inflow, Flow{});

  const auto broken_at = [](double rpm_now) {
    return solve(ouzel_bench(rpm_now * rpm).with_fault(riser_sheared("row 2", 7)));
  };
  const auto neighbours_stand_still = [](const Solution& solution) {
    for (const std::size_t number : {6, 8, 9, 10})
      EXPECT_EQ(solution.line("row 2").state[number - 1], OutletState::below_minimum) << number;
  };
  const Solution broken = broken_at(speed);
  EXPECT_EQ(turning(broken, "row 1"), 10);
  neighbours_stand_still(broken);
  EXPECT_LT(*broken.supply().gauge_reading, *sound.supply().gauge_reading);

  const double gauge_psi = *sound.supply().gauge_reading / psi;
  const double throttled = speed_for(
      [&](double rpm_now) { return *broken_at(rpm_now).supply().gauge_reading / psi; }, gauge_psi);
  EXPECT_GT(throttled, speed);
  const Solution restored = broken_at(throttled);
  EXPECT_NEAR(*restored.supply().gauge_reading / psi, gauge_psi, 1e-6);
  neighbours_stand_still(restored);
  EXPECT_EQ(turning(restored, "row 1"), 10);

  const Solution mended = solve(restored.layout().without_faults());
  EXPECT_EQ(turning(mended, "row 1"), 10);
  EXPECT_EQ(turning(mended, "row 2"), 10);
  std::printf(
      "rows 1+2 at %.0f rpm, gauge %.1f psi; broken %.1f psi, %d of row 2 turn; at %.0f rpm "
      "%d turn\n",
      speed,
      gauge_psi,
      *broken.supply().gauge_reading / psi,
      turning(broken, "row 2"),
      throttled,
      turning(restored, "row 2"));
}

}  // namespace
}  // namespace hydro
