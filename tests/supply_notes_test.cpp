// Where a supply works outside what is known of it, the answer comes with a note; what does not act
// is not told as if it did.

#include "hydro/answers/check.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/physics/pump_readings.hpp"
#include "hydro/solver/solve.hpp"

#include <limits>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;
using units::m;

Line row(const Length& ground_rise = {}) {
  return {.name = "row",
          .pipe = {.inside_diameter = 44 * mm, .hazen_williams = 150},
          .outlet = Outlet{.flow = 800 * lph, .at = 200 * kPa},
          .count = 10,
          .spacing = 10 * m,
          .ground_rise = ground_rise};
}

/// 40 m at rest, 25 m at this flow.
Pump pump_to(const Flow& last) {
  return {.points = {{0 * lpm, 40 * m}, {last, 25 * m}}, .curve_speed = 2900 * rpm};
}

std::vector<std::string> notes_of(const Supply& supply, const Length& ground_rise = {}) {
  return solve(Layout(supply, {row(ground_rise)})).notes();
}

TEST(SupplyNotes, APumpIsKnownAsFarAsItsCatalogueGoes) {
  EXPECT_THAT(notes_of({.pump = pump_to(300 * lpm)}), Not(Contains(HasSubstr("catalogue"))));
  EXPECT_THAT(notes_of({.pump = pump_to(50 * lpm)}), Contains(HasSubstr("catalogue")));
}

TEST(SupplyNotes, WaterMayDriveAPump) {
  EXPECT_THAT(notes_of({.pump = pump_to(20 * lpm)}, -60 * m), Contains(HasSubstr("drives")));
}

TEST(SupplyNotes, AHydrantIsKnownAsFarAsItsTestWent) {
  const auto tested_at = [](const Flow& flow) {
    return Supply{.hydrant = Hydrant{400 * kPa, 300 * kPa, flow}};
  };
  EXPECT_THAT(notes_of(tested_at(1000 * lpm)), Not(Contains(HasSubstr("tested"))));
  EXPECT_THAT(notes_of(tested_at(20 * lpm)), Contains(HasSubstr("tested")));
}

TEST(SupplyNotes, ATankAtItsOutletDrawsAir) {
  EXPECT_THAT(notes_of({.tank = Tank{.level = 1 * m}}, -5 * m), Not(Contains(HasSubstr("air"))));
  EXPECT_THAT(notes_of({.tank = Tank{.level = 0 * m}}, -5 * m), Contains(HasSubstr("air")));
}

TEST(Suction, OfTheSecondPumpInSeriesIsNotJudged) {
  Pump second = pump_to(300 * lpm);
  second.npsh_required = {{0 * lpm, 9 * m}, {300 * lpm, 12 * m}};
  const auto limits = [&](PumpArrangement arrangement) {
    return check(solve(Layout(Supply{.pump = pump_to(300 * lpm),
                                     .second_pump = second,
                                     .arrangement = arrangement,
                                     .suction = Suction{.lift = 5 * m}},
                              {row()})))
        .supply_limits;
  };
  EXPECT_THAT(limits(PumpArrangement::parallel), Contains(SupplyLimit::suction));
  EXPECT_THAT(limits(PumpArrangement::series), Not(Contains(SupplyLimit::suction)));
}

TEST(EngineSlow, IsNotFeltByAPumpThatRunsSlower) {
  const Layout sound(Supply{.pump = pump_to(300 * lpm)}, {row()});
  EXPECT_EQ(solve(sound.with_fault(engine_slow(3000 * rpm))).inflow(), solve(sound).inflow());
  EXPECT_LT(solve(sound.with_fault(engine_slow(2800 * rpm))).inflow(), solve(sound).inflow());
}

TEST(SetForRatedIfPossible, AcceptsNoShareThatIsNone) {
  const Layout layout(Supply{.tank = Tank{.level = 30 * m}}, {row()});
  for (const double share : {std::numeric_limits<double>::quiet_NaN(), -1.0, 0.0, 6.0})
    EXPECT_THROW(set_for_rated_if_possible(layout, share), InvalidInput) << share;
}

TEST(PumpFromReadings, RefusesWhatTheGaugeCannotShow) {
  EXPECT_THROW(pump_from_readings(
                   {{.gauge = 300 * kPa, .flow = 0 * lpm}, {.gauge = 50 * kPa, .flow = 100 * lpm}},
                   {.gauge = Gauge{.range = 200 * kPa}}),
               InvalidInput);
}

}  // namespace
}  // namespace hydro
