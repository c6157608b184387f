// Setting the engine or the held pressure: the wish is met, the answer is the one that solve() gives,
// the same speed comes out of plain bisection, and what cannot be reached says so.
#include "hydro/answers/set_gauge.hpp"

#include "hydro/answers/pressure_budget.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ouzel_strips.hpp"
#include "random_pumped.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using units::m;

constexpr std::uint64_t random_layouts = 300;

Pressure reading_of(const OperatingPoint& point) {
  return point.gauge_reading.value_or(point.source_pressure);
}

/// Of all outlets that should work, the smallest of pressure less what it should have [Pa].
double least_excess(const Solution& solution,
                    const std::function<Pressure(const Outlet&)>& wanted) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t l = 0; l < solution.lines().size(); ++l) {
    const LineSolution& line = solution.lines()[l];
    for (std::size_t i = 0; i < line.state.size(); ++i) {
      if (line.state[i] == OutletState::closed || line.state[i] == OutletState::broken) continue;
      const Outlet& kind = solution.layout().outlet_at(l, static_cast<int>(i) + 1);
      const Pressure above =
          line.state[i] == OutletState::dry
              ? std::min(Pressure{},
                         line.line_pressure[i] - pressure(solution.layout().lines()[l].riser.height,
                                                          solution.water().density))
              : line.pressure[i];
      least = std::min(least, si(above - wanted(kind)));
    }
  }
  return least;
}

bool has_outlets_to_judge(const Layout& layout) {
  return weakest_outlet(solve(layout)).has_value();
}

Layout without_faults_of_the_supply(const Layout& layout) {
  std::vector<Fault> kept = layout.faults();
  std::erase_if(kept, is_of_the_supply);
  return layout.without_faults().with_faults(kept);
}

/// The layout with all speeds changed alike, top speeds forgotten.
Layout turned(const Layout& layout, double ratio) {
  Supply supply = layout.supply_as_it_is();
  for (auto* pump : {&supply.pump, &supply.second_pump})
    if (*pump) {
      (*pump)->speed = ratio * (*pump)->speed.value_or(*(*pump)->curve_speed);
      (*pump)->top_speed.reset();
    }
  return without_faults_of_the_supply(layout).with_supply(supply);
}

double speed_ratio(const Layout& layout, const Setting& setting) {
  const Pump& pump = *layout.supply_as_it_is().pump;
  return *setting.speed / pump.speed.value_or(*pump.curve_speed);
}

/// Whether a pump turns as slowly as is accepted, 1 rpm.
bool turns_slowest(const Layout& layout, const Setting& setting) {
  const double ratio = speed_ratio(layout, setting);
  const Supply supply = layout.supply_as_it_is();
  for (const auto* pump : {&supply.pump, &supply.second_pump})
    if (*pump && ratio * (*pump)->speed.value_or(*(*pump)->curve_speed) < 1.001 * rpm) return true;
  return false;
}

bool top_speed_is_met(const Layout& layout, const Setting& setting) {
  const double ratio = speed_ratio(layout, setting);
  const Supply supply = layout.supply_as_it_is();
  // No pump is accepted that is faster than 100,000 rpm.
  bool met = std::abs(*setting.speed / (100000 * rpm) - 1) < 1e-9;
  for (const auto* pump : {&supply.pump, &supply.second_pump})
    if (*pump) {
      auto top = (*pump)->top_speed;
      for (const Fault& fault : layout.faults())
        if (const auto* slow = std::get_if<EngineSlow>(&fault))
          if ((slow->pump.value_or(1) == 2) == (pump == &supply.second_pump)) top = slow->speed;
      const auto speed = ratio * (*pump)->speed.value_or(*(*pump)->curve_speed);
      if (top) {
        EXPECT_LE(speed / *top, 1 + 1e-9);
        met = met || std::abs(speed / *top - 1) < 1e-9;
      }
    }
  return met;
}

/// Every outlet of two solutions has the same pressure, to 1e-8 of the largest.
void expect_same_pressures(const Solution& one, const Solution& other) {
  double scale = si(one.supply().source_pressure);
  for (const LineSolution& line : one.lines())
    for (const Pressure& pressure : line.line_pressure) scale = std::max(scale, si(pressure));
  for (std::size_t l = 0; l < one.lines().size(); ++l)
    for (std::size_t i = 0; i < one.lines()[l].pressure.size(); ++i)
      EXPECT_NEAR(si(one.lines()[l].pressure[i]), si(other.lines()[l].pressure[i]), 1e-8 * scale);
}

TEST(SetForGauge, TheReadingIsThere) {
  int reached = 0, stopped = 0;
  for (std::uint64_t seed = 0; seed < random_layouts; ++seed) {
    SCOPED_TRACE(seed);
    const Layout layout = random_pumped(seed);
    if (!has_outlets_to_judge(layout)) {
      EXPECT_THROW(set_for_gauge(layout, 200 * kPa), InvalidInput);
      continue;
    }
    const Pressure wish = (50 + 3.0 * static_cast<double>(seed % 100)) * kPa;
    const Setting setting = set_for_gauge(layout, wish);
    const double reading = si(reading_of(setting.solution.supply()));
    if (!setting.reached && turns_slowest(layout, setting)) {
      EXPECT_GT(reading, si(wish));
      continue;
    }
    if (!setting.reached) {
      ++stopped;
      EXPECT_LT(reading, si(wish));
      EXPECT_TRUE(top_speed_is_met(layout, setting));
      EXPECT_EQ(setting.limits.at(0), SupplyLimit::top_speed);
      continue;
    }
    ++reached;
    EXPECT_NEAR(reading, si(wish), 1e-9 * si(wish));
    EXPECT_EQ(setting.pressure, setting.solution.supply().source_pressure);
    EXPECT_THAT(setting.limits, testing::Not(Contains(SupplyLimit::top_speed)));
    const Pressure start = setting.solution.supply_pressure();
    if (start < Pressure{}) continue;
    expect_same_pressures(setting.solution,
                          solve(without_faults_of_the_supply(layout).with_supply(
                              {.pressure = start, .elevation = layout.supply().elevation})));
  }
  EXPECT_GT(reached, 150);
  EXPECT_GT(stopped, 10);
}

/// What no speed changes: the outlet lacks its water or its regulator keeps it down.
void expect_unreachable(const Layout& layout,
                        const std::function<Pressure(const Outlet&)>& wanted) {
  const Solution at_most = solve(without_faults_of_the_supply(layout).with_supply(
      {.pressure = 10000 * kPa, .elevation = layout.supply().elevation}));
  EXPECT_LT(least_excess(at_most, wanted), 0);
}

void expect_set_for(const Layout& layout,
                    const Setting& setting,
                    const std::function<Pressure(const Outlet&)>& wanted,
                    double scale,
                    int& reached,
                    int& prevented,
                    int& stopped) {
  const double excess = least_excess(setting.solution, wanted);
  if (setting.reached && setting.solution.supply_pressure() > 0.001 * kPa &&
      !turns_slowest(layout, setting)) {
    ++reached;
    EXPECT_NEAR(excess, 0, 1e-8 * scale);
  } else if (setting.reached) {
    EXPECT_GE(excess, -1e-8 * scale);
  } else if (!setting.limits.empty() && setting.limits[0] == SupplyLimit::top_speed &&
             top_speed_is_met(layout, setting)) {
    ++stopped;
    EXPECT_LT(excess, 0);
  } else {
    ++prevented;
    expect_unreachable(layout, wanted);
  }
}

TEST(SetForWeakest, ItHasWhatIsWanted) {
  int reached = 0, prevented = 0, stopped = 0;
  for (std::uint64_t seed = 0; seed < random_layouts; ++seed) {
    SCOPED_TRACE(seed);
    const Layout layout = random_pumped(seed);
    if (!has_outlets_to_judge(layout)) continue;
    const Pressure wish = (20 + static_cast<double>(seed % 100)) * kPa;
    const Setting setting = set_for_weakest(layout, wish);
    expect_set_for(
        layout,
        setting,
        [&](const Outlet&) { return wish; },
        si(wish),
        reached,
        prevented,
        stopped);
  }
  EXPECT_GT(reached, 80);
  EXPECT_GT(prevented, 10);
  EXPECT_GT(stopped, 10);
}

TEST(SetForRated, EveryOutletHasItsShare) {
  int reached = 0, prevented = 0, stopped = 0;
  for (std::uint64_t seed = 0; seed < random_layouts; ++seed) {
    SCOPED_TRACE(seed);
    const Layout layout = random_pumped(seed);
    if (!has_outlets_to_judge(layout)) continue;
    const double share = seed % 2 == 0 ? 1 : 0.3;
    const auto wanted = [&](const Outlet& kind) { return share * kind.rated_pressure(); };
    double scale = 0;
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      for (int i = 1; i <= layout.lines()[l].outlet_count(); ++i)
        scale = std::max(scale, si(wanted(layout.outlet_at(l, i))));
    expect_set_for(
        layout, set_for_rated(layout, share), wanted, scale, reached, prevented, stopped);
  }
  EXPECT_GT(reached, 50);
  EXPECT_GT(prevented, 10);
  EXPECT_GT(stopped, 10);
}

/// Plain bisection on solve() for the speed at which `excess` passes 0, between two ratios.
double bisected(const Layout& layout,
                double low,
                double high,
                const std::function<double(const Solution&)>& excess) {
  for (int step = 0; step < 45; ++step) {
    const double middle = low + (high - low) / 2;
    (excess(solve(turned(layout, middle))) < 0 ? low : high) = middle;
  }
  return low;
}

TEST(SetForGauge, BisectionFindsTheSameSpeed) {
  int compared = 0;
  for (std::uint64_t seed = 0; seed < 100; ++seed) {
    SCOPED_TRACE(seed);
    const Layout layout = random_pumped(seed);
    if (!has_outlets_to_judge(layout)) continue;
    const Pressure wish = (100 + static_cast<double>(seed)) * kPa;
    const Setting setting = set_for_gauge(layout, wish);
    if (!setting.reached) continue;
    const double ratio = speed_ratio(layout, setting);
    const double found = bisected(layout, 0.9 * ratio, 1.1 * ratio, [&](const Solution& at) {
      return si(reading_of(at.supply()) - wish);
    });
    EXPECT_NEAR(found / ratio, 1, 1e-9);
    ++compared;
  }
  EXPECT_GT(compared, 40);
}

TEST(SetForWeakest, BisectionFindsTheSameSpeed) {
  int compared = 0;
  for (std::uint64_t seed = 0; seed < 100; ++seed) {
    SCOPED_TRACE(seed);
    const Layout layout = random_pumped(seed);
    if (!has_outlets_to_judge(layout)) continue;
    const Pressure wish = (20 + static_cast<double>(seed)) * kPa;
    const Setting setting = set_for_weakest(layout, wish);
    if (!setting.reached || !(setting.solution.supply_pressure() > 0.001 * kPa)) continue;
    if (turns_slowest(layout, setting)) continue;
    const double ratio = speed_ratio(layout, setting);
    const double found = bisected(layout, 0.9 * ratio, 1.1 * ratio, [&](const Solution& at) {
      return least_excess(at, [&](const Outlet&) { return wish; });
    });
    EXPECT_NEAR(found / ratio, 1, 1e-8);  // as near as the weakest outlet's pressure is met
    ++compared;
  }
  EXPECT_GT(compared, 20);
}

// ---- by hand

/// One outlet on a pipe so wide that nothing is lost.
Layout one_outlet(const Supply& supply, const Outlet& outlet) {
  return Layout(supply,
                {{.name = "row",
                  .pipe = {.inside_diameter = 5 * m, .hazen_williams = 150},
                  .outlet = outlet,
                  .count = 1,
                  .spacing = 1 * m}},
                {.density = 998.2 * kg_per_m3});
}

// R. W. Fox and A. T. McDonald, Introduction to Fluid Mechanics, example 10.7 (from memory, see
// published_pumps_test.cpp): 300 gal/min at 21.9 ft and 1170 rpm becomes 449 gal/min at 49.0 ft and
// 1750 rpm. Half the last digit of the flow is 1.1e-3 of it and of the speed.
TEST(SetForGauge, AffinityOfAPublishedPump) {
  const Pump pump{.points = {{0 * gpm, 25 * ft}, {300 * gpm, 21.9 * ft}},
                  .curve_speed = 1170 * rpm};
  const Pressure there = pressure(49.0 * ft, 998.2 * kg_per_m3);
  const Layout layout = one_outlet(Supply{.pump = pump}, Outlet{.flow = 449 * gpm, .at = there});
  for (const Setting& setting : {set_for_gauge(layout, there), set_for_weakest(layout, there)}) {
    EXPECT_TRUE(setting.reached);
    EXPECT_NEAR(*setting.speed / rpm, 1750, 1750 * 1.1e-3);
    EXPECT_NEAR(setting.solution.inflow() / gpm, 449, 1e-6);
    EXPECT_THAT(setting.limits, IsEmpty());
  }
}

// With a square-root outlet and nothing else the system's curve is H ~ Q^2, so the flow goes with
// the speed and the pressure with its square, exactly.
TEST(SetForGauge, TwiceTheSpeedForFourTimesTheReading) {
  const Layout layout =
      one_outlet(Supply{.pump = Pump{.points = {{0 * gpm, 50 * ft}, {100 * gpm, 30 * ft}},
                                     .curve_speed = 1000 * rpm}},
                 Outlet{.flow = 50 * gpm, .at = 10 * psi});
  const Solution now = solve(layout);
  const Setting four = set_for_gauge(layout, 4.0 * now.supply().source_pressure);
  EXPECT_NEAR(*four.speed / rpm, 2000, 2000 * 1e-6);  // the pipe's loss over 1 m of 5 m bore
  EXPECT_NEAR(four.solution.inflow() / now.inflow(), 2, 2e-6);
}

TEST(SetForGauge, HeldPressureBeforeItsFilterAndUnderItsGauge) {
  const Supply held{.pressure = 100 * kPa,
                    .filter = Filter{20 * kPa, 100 * lph},
                    .gauge = Gauge{.height = 2 * m, .after_filter = true}};
  const Layout layout = one_outlet(held, Outlet{.flow = 100 * lph, .at = 200 * kPa});
  const Pressure height = pressure(2 * m, 998.2 * kg_per_m3);
  const Setting behind = set_for_gauge(layout, 200 * kPa - height);
  EXPECT_TRUE(behind.reached);
  EXPECT_FALSE(behind.speed);
  EXPECT_NEAR(behind.pressure / kPa, 220, 220e-9);
  EXPECT_NEAR(*behind.solution.supply().gauge_reading / kPa, (200 * kPa - height) / kPa, 1e-7);

  Supply before = held;
  before.gauge->after_filter = false;
  EXPECT_NEAR(set_for_gauge(layout.with_supply(before), 220 * kPa - height).solution.inflow() / lph,
              100,
              100e-9);
  EXPECT_NEAR(set_for_rated(layout).pressure / kPa, 220, 220e-8);
}

TEST(SetForGauge, AWornPumpMustTurnFaster) {
  const Layout layout = ouzel_strips().watering({"rows 1 and 2"});
  const Setting sound = set_for_gauge(layout, 45 * psi);
  const Setting worn = set_for_gauge(layout.with_fault(pump_worn(0.08)), 45 * psi);
  EXPECT_GT(*worn.speed, *sound.speed);
  expect_same_pressures(sound.solution, worn.solution);
}

// ---- what cannot be reached

TEST(Unreachable, TopSpeed) {
  const Layout layout = ouzel_strips().watering({"rows 1 and 2", "rows 3 and 4"});
  const Setting setting = set_for_rated(layout);
  EXPECT_FALSE(setting.reached);
  EXPECT_NEAR(*setting.speed / rpm, 2600, 1e-6);
  EXPECT_EQ(setting.limits.at(0), SupplyLimit::top_speed);
}

TEST(Unreachable, TheEngineIsSlow) {
  const Layout slow = ouzel_strips().watering({"rows 1 and 2"}).with_fault(engine_slow(1900 * rpm));
  const Setting setting = set_for_rated(slow);
  EXPECT_FALSE(setting.reached);
  EXPECT_NEAR(*setting.speed / rpm, 1900, 1e-6);
  EXPECT_THAT(setting.limits, ElementsAre(SupplyLimit::top_speed));
}

TEST(Unreachable, ARegulatorBelowTheRating) {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  Line row = rows.line("row 2");
  row.regulator = 20 * psi;
  const Setting setting = set_for_rated(rows.with_line(row));
  EXPECT_FALSE(setting.reached);
  EXPECT_NEAR(*setting.speed / rpm, 2210, 1e-6);  // as it is
  EXPECT_THAT(setting.limits, IsEmpty());
  EXPECT_TRUE(set_for_rated(rows.with_line(row).with_fault(regulator_stuck_open("row 2"))).reached);
}

TEST(Unreachable, NoWaterComes) {
  Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  EXPECT_FALSE(set_for_rated(rows.with_fault(line_cut("row 1", 100 * ft))).reached);
  EXPECT_FALSE(
      set_for_weakest(rows.with_fault(line_cut("main to tee 2", 10 * ft)), 5 * psi).reached);
  Line row = rows.line("row 2");
  row.regulator = 40 * psi;
  rows = rows.with_line(row);
  EXPECT_TRUE(set_for_rated(rows).reached);
  EXPECT_FALSE(set_for_rated(rows.with_fault(regulator_stuck_shut("row 2"))).reached);
  row.regulator.reset();
  row.outlet->regulator = 30 * psi;
  EXPECT_FALSE(
      set_for_rated(rows.with_line(row).with_fault(regulator_stuck_shut("row 2", 4))).reached);
}

TEST(Unreachable, AnyPressureThatIsAccepted) {
  const Layout far_up =
      one_outlet(Supply{.pressure = 100 * kPa, .filter = Filter{5000 * kPa, 100 * lph}},
                 Outlet{.flow = 100 * lph, .at = 100 * kPa});
  const Setting setting = set_for_weakest(far_up, 500 * kPa);  // the filter would take 25,000 kPa
  EXPECT_FALSE(setting.reached);
  EXPECT_EQ(setting.pressure, 10000 * kPa);
  EXPECT_TRUE(setting.solution.residuals().are_met());
}

TEST(Unreachable, BrokenOutletsAskForNothing) {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  const Setting capped_one = set_for_rated(rows.with_fault(capped("row 2", 10)));
  EXPECT_TRUE(capped_one.reached);
  EXPECT_TRUE(set_for_weakest(rows.with_fault(riser_sheared("row 2", 7)), 10 * psi).reached);
}

// ---- what is refused

std::string message_of(const std::function<void()>& call) {
  try {
    call();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "nothing was thrown";
}

TEST(Refused, WhatCannotBeSet) {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  const auto set = [&](const Supply& supply) {
    return message_of([&] { set_for_gauge(rows.with_supply(supply), 30 * psi); });
  };
  EXPECT_THAT(set({.tank = Tank{.level = 30 * m}}), HasSubstr("is a tank"));
  EXPECT_THAT(set({.hydrant = Hydrant{400 * kPa, 300 * kPa, 100 * gpm}}),
              HasSubstr("is a hydrant"));
  Supply pump = ouzel_pump();
  for (auto& speed : {&Pump::curve_speed, &Pump::speed, &Pump::top_speed})
    (*pump.pump.*speed).reset();
  EXPECT_THAT(set(pump), HasSubstr("curve_speed is not given"));
  Supply second = ouzel_pump();
  second.second_pump = pump.pump;
  EXPECT_THAT(set(second), HasSubstr("curve_speed is not given"));
}

TEST(Refused, NothingIsOpen) {
  const Layout rows = ouzel_strips();
  std::vector<Line> lines = rows.lines();
  for (Line& line : lines)
    if (line.outlet) line.valve = Valve{.opening = ValveOpening::shut};
  const Layout shut(ouzel_pump(), lines);
  EXPECT_THAT(message_of([&] { set_for_rated(shut); }), HasSubstr("has no open outlet that works"));
  EXPECT_THAT(message_of([&] { set_for_gauge(shut, 30 * psi); }),
              HasSubstr("has no open outlet that works"));
}

TEST(Refused, WishesOutOfRange) {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double bad : {nan, 0.0, -1.0, 5001.0}) {
    EXPECT_THAT(message_of([&] { set_for_gauge(rows, bad * kPa); }), HasSubstr("reading"));
    EXPECT_THAT(message_of([&] { set_for_weakest(rows, bad * kPa); }), HasSubstr("pressure"));
  }
  for (const double bad : {nan, 0.0, 5.1})
    EXPECT_THAT(message_of([&] { set_for_rated(rows, bad); }), HasSubstr("share"));
  Supply low = ouzel_pump();
  low.gauge->height = -50 * ft;
  EXPECT_THAT(message_of([&] { set_for_gauge(rows.with_supply(low), 10 * psi); }),
              HasSubstr("at the supply's elevation"));
}

}  // namespace
}  // namespace hydro
