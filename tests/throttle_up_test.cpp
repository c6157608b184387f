// What throttling up cures, on four rows of an invented farm (ouzel_strips.hpp).
//
// Common practice, no source: with the engine set so that all heads of a set turn, one head broken off
// leaves its neighbours on the row standing still while the other row turns; throttling up until the
// gauge reads right does not cure the row; mended, all turn again.
#include "hydro/answers/throttle_up.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/solver/solve.hpp"

#include <string>

#include "ouzel_strips.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::IsEmpty;

int standing_still(const Solution& solution, const std::string& line) {
  int count = 0;
  for (const OutletState state : solution.line(line).state)
    if (state == OutletState::below_minimum || state == OutletState::dry) ++count;
  return count;
}

/// The engine just so fast that every head has its rated pressure.
Layout running() {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  const Setting setting = set_for_rated(rows);
  EXPECT_TRUE(setting.reached);
  Supply supply = rows.supply();
  supply.pump->speed = setting.speed;
  return rows.with_supply(supply);
}

TEST(ThrottleUp, DoesNotCureARowWithABrokenHead) {
  for (const Fault& fault : {Fault(riser_sheared("row 2", 7)), Fault(head_off("row 2", 7))}) {
    SCOPED_TRACE(kind_of(fault));
    const Layout sound = running();
    const Throttling told = throttle_up(sound, {fault});
    EXPECT_THAT(check(told.sound).below_minimum, IsEmpty());
    // The break is felt at the gauge, the broken row's far heads stand still, the other row turns.
    EXPECT_LT(*told.broken.supply().gauge_reading, told.reading);
    EXPECT_GE(standing_still(told.broken, "row 2"), 4);
    EXPECT_EQ(standing_still(told.broken, "row 1"), 0);
    // Throttled up, the gauge is right again and the row is not.
    ASSERT_TRUE(told.throttled_up.reached);
    EXPECT_NEAR(*told.throttled_up.solution.supply().gauge_reading / kPa,
                told.reading / kPa,
                1e-9 * (told.reading / kPa));
    EXPECT_GT(*told.throttled_up.speed, *sound.supply().pump->speed);
    EXPECT_GE(standing_still(told.throttled_up.solution, "row 2"), 3);
    EXPECT_EQ(standing_still(told.throttled_up.solution, "row 1"), 0);
    EXPECT_FALSE(told.after_throttling_up.newly_below_minimum.empty());
    for (const BelowMinimum& outlet : told.after_throttling_up.newly_below_minimum)
      EXPECT_EQ(outlet.line, "row 2");
    // Mended, all turn again.
    EXPECT_THAT(check(solve(sound.with_fault(fault).without_faults())).below_minimum, IsEmpty());
  }
}

TEST(ThrottleUp, ComparesBothTimesWithTheSoundLayout) {
  const Throttling told = throttle_up(running(), {riser_sheared("row 2", 7)});
  EXPECT_EQ(told.at_unchanged_speed.inflow_before, told.sound.inflow());
  EXPECT_EQ(told.at_unchanged_speed.inflow_after, told.broken.inflow());
  EXPECT_EQ(told.after_throttling_up.inflow_before, told.sound.inflow());
  EXPECT_EQ(told.after_throttling_up.inflow_after, told.throttled_up.solution.inflow());
  EXPECT_GT(told.after_throttling_up.escaping, told.at_unchanged_speed.escaping);
}

TEST(ThrottleUp, StopsAtTopSpeed) {
  Supply supply = running().supply();
  supply.pump->top_speed = supply.pump->speed;
  const Throttling told = throttle_up(running().with_supply(supply), {riser_sheared("row 2", 7)});
  EXPECT_FALSE(told.throttled_up.reached);
  EXPECT_THAT(told.throttled_up.limits, testing::Contains(SupplyLimit::top_speed));
}

TEST(ThrottleUp, AHeldPressureIsNotThrottled) {
  for (const Pressure& held : {40 * psi, 0 * psi}) {  // 0: a pond above the rows
    const Layout rows =
        ouzel_strips(
            Supply{.pressure = held, .gauge = Gauge{.height = 5 * ft}, .elevation = 90 * ft})
            .watering({"rows 1 and 2"});
    const Throttling told = throttle_up(rows, {riser_sheared("row 2", 7)});
    EXPECT_TRUE(told.throttled_up.reached);
    EXPECT_FALSE(told.throttled_up.speed);
    EXPECT_EQ(told.throttled_up.pressure, held);
    EXPECT_EQ(told.throttled_up.solution.inflow(), told.broken.inflow());
    EXPECT_EQ(told.at_unchanged_speed.supply_after, told.at_unchanged_speed.supply_before);
  }
}

}  // namespace
}  // namespace hydro
