// The day's plan: its times, its volumes and energies, and what a day too short leaves.
#include "hydro/watering/day_plan.hpp"

#include "hydro/answers/set_gauge.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/watering/filling.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using units::h;
using units::min;

constexpr double balance = 1e-9;

SetToWater for_time(const std::string& set, const Time& time) {
  return {.set = set, .time = time};
}
SetToWater for_depth(const std::string& set, const Length& depth) {
  return {.set = set, .need = WaterAmount{.depth = depth}, .ground = {.row_spacing = 30 * ft}};
}

/// The strips, fed by a held pressure that serves all four rows at once.
Layout strong() {
  return ouzel_strips({.pressure = 90 * psi});
}

TEST(DayPlan, PutsOneSetAfterTheOther) {
  const Layout farm = ouzel_strips();
  const DayPlan plan =
      day_plan(farm,
               {for_time("rows 1 and 2", 2 * h), for_time("rows 3 and 4", 90 * min)},
               {.together = false, .changeover = 10 * min});
  ASSERT_THAT(plan.turns, SizeIs(2));
  const Turn& first = plan.turns[0];
  const Turn& second = plan.turns[1];
  EXPECT_EQ(first.fill_from, 6 * h);
  EXPECT_NEAR((first.stop - first.start) / h, 2, 1e-12);
  EXPECT_NEAR((second.fill_from - first.stop) / min, 10, 1e-9);
  EXPECT_NEAR((second.stop - second.start) / h, 1.5, 1e-12);
  EXPECT_TRUE(plan.all_fits());
  // Every outlet at its rated pressure: the speed is that of set_gauge.
  const Setting setting = set_for_rated(farm.watering({"rows 1 and 2"}));
  EXPECT_EQ(first.speed, setting.speed);
  EXPECT_EQ(first.flow, setting.solution.inflow());
  // The mains stay full for the second turn: only rows 3 and 4 are to be filled, and the manifold further.
  const Filling rows = filling(farm.watering({"rows 3 and 4"}));
  double fresh = 0;
  for (const LineVolume& line : rows.lines)
    if (line.line == "row 3" || line.line == "row 4") fresh += si(line.volume);
  EXPECT_NEAR(si(second.fill), fresh, 1e-12);
  EXPECT_NEAR(first.fill / filling(farm.watering({"rows 1 and 2"})).volume, 1, 1e-12);
}

TEST(DayPlan, AccountsForWaterEnergyAndMoney) {
  const Layout sound = ouzel_strips();
  for (const Layout& farm : {sound, sound.with_fault(riser_sheared("row 2", 7)), strong()}) {
    const DayPlan plan =
        day_plan(farm,
                 {for_depth("rows 1 and 2", 12 * mm), for_depth("rows 3 and 4", 8 * mm)},
                 {.prices = {.of_volume = 0.2, .of_energy = 0.15, .of_pump_time = 3}});
    Volume pumped{}, sets{};
    Time pump_time{};
    for (const Turn& turn : plan.turns) {
      pumped += turn.pumped();
      pump_time += turn.stop - turn.fill_from;
      EXPECT_NEAR(
          (turn.let_out + turn.lost) / Volume(turn.flow * (turn.stop - turn.start)), 1, balance);
      EXPECT_EQ(turn.lost > Volume{},
                !farm.faults().empty() && turn.sets.front() == "rows 1 and 2");
    }
    for (const SetDay& set : plan.sets) sets += set.let_out;
    EXPECT_NEAR(plan.pumped / pumped, 1, balance);
    EXPECT_NEAR((plan.fill + plan.let_out + plan.lost) / plan.pumped, 1, balance);
    EXPECT_NEAR(sets / plan.let_out, 1, balance);
    EXPECT_NEAR(plan.pump_time / pump_time, 1, balance);
    if (farm.supply().pressure) {
      EXPECT_FALSE(plan.shaft_energy);  // the pump is not known
      EXPECT_FALSE(plan.cost);
      continue;
    }
    ASSERT_TRUE(plan.shaft_energy);
    EXPECT_NEAR(plan.water_energy / *plan.shaft_energy, 0.60, 1e-12);  // the pump's efficiency
    EXPECT_NEAR(
        *plan.cost,
        0.2 * (plan.pumped / m3) + 0.15 * (*plan.shaft_energy / kWh) + 3 * (plan.pump_time / h),
        1e-9);
  }
}

TEST(DayPlan, WaterEnergyIsRhoGHV) {
  const Layout farm = ouzel_strips();
  const DayPlan plan = day_plan(farm, {for_time("rows 1 and 2", 1 * h)});
  const Setting setting = set_for_rated(farm.watering({"rows 1 and 2"}));
  const double head = si(setting.solution.supply().pumps.at(0).head);
  EXPECT_NEAR(si(plan.water_energy),
              si(setting.solution.water().density) * gravity * head * si(plan.pumped),
              1e-9 * si(plan.water_energy));
}

TEST(DayPlan, WatersForTheNeed) {
  const Layout farm = ouzel_strips();
  const DayPlan plan = day_plan(farm, {for_depth("rows 1 and 2", 12 * mm)});
  const Setting setting = set_for_rated(farm.watering({"rows 1 and 2"}));
  const Application rows =
      application(setting.solution, {.lines = {"row 1", "row 2"}, .row_spacing = 30 * ft});
  EXPECT_NEAR(plan.sets[0].runs / run_time(rows, {.depth = 12 * mm}).does.time, 1, 1e-12);
  EXPECT_EQ(plan.sets[0].share, 1);
}

TEST(DayPlan, RunsTogetherWhatTheSupplyServes) {
  // Both run until the shorter one has its water; then the other goes on alone.
  const std::vector<SetToWater> sets{for_time("rows 1 and 2", 2 * h),
                                     for_time("rows 3 and 4", 1 * h)};
  const DayPlan plan = day_plan(strong(), sets);
  ASSERT_THAT(plan.turns, SizeIs(2));
  EXPECT_THAT(plan.turns[0].sets, ElementsAre("rows 1 and 2", "rows 3 and 4"));
  EXPECT_NEAR((plan.turns[0].stop - plan.turns[0].start) / h, 1, 1e-12);
  EXPECT_THAT(plan.turns[1].sets, ElementsAre("rows 1 and 2"));
  EXPECT_NEAR((plan.turns[1].stop - plan.turns[1].start) / h, 1, 1e-12);
  EXPECT_EQ(plan.turns[1].fill, Volume{});
  EXPECT_THAT(day_plan(strong(), sets, {.together = false}).turns, SizeIs(2));
  // The pump does not serve four rows at once.
  const DayPlan apart = day_plan(ouzel_strips(), sets);
  EXPECT_THAT(apart.turns, SizeIs(2));
  for (const Turn& turn : apart.turns) EXPECT_THAT(turn.sets, SizeIs(1));
  EXPECT_TRUE(apart.all_fits());
}

TEST(DayPlan, PutsApartWhatWouldMist) {
  // Sprinklers that want 50 psi, and sprays that mist above 30 psi.
  const Pipe pipe{.inside_diameter = 50 * mm, .hazen_williams = 150};
  const auto row = [&](const char* name, const Outlet& outlet) {
    return Line{.name = name, .pipe = pipe, .outlet = outlet, .count = 4, .spacing = 5 * ft};
  };
  const Outlet sprinkler{.flow = 3 * gpm, .at = 50 * psi};
  const Outlet spray{.flow = 1 * gpm, .at = 20 * psi, .maximum = 30 * psi};
  const Layout farm({.pressure = 60 * psi},
                    {row("strip", sprinkler), row("bed", spray)},
                    {},
                    {},
                    {{"strips", {"strip"}}, {"beds", {"bed"}}});
  const DayPlan plan = day_plan(farm, {for_time("strips", 1 * h), for_time("beds", 1 * h)});
  ASSERT_THAT(plan.turns, SizeIs(2));
  EXPECT_THAT(plan.turns[0].sets, ElementsAre("strips"));
  EXPECT_THAT(plan.turns[1].sets, ElementsAre("beds"));
  EXPECT_TRUE(plan.all_fits());
}

TEST(DayPlan, OfADepthGoesOnWhereItWasWhenOthersStop) {
  // A set's need is met in full though its flows change when the other one stops.
  const DayPlan plan =
      day_plan(strong(), {for_depth("rows 1 and 2", 20 * mm), for_depth("rows 3 and 4", 10 * mm)});
  EXPECT_TRUE(plan.all_fits());
  const double e = RunTimeOptions{}.effective_portion;
  const double ground = 20 * 36 * 30 * 0.3048 * 0.3048;
  // The weakest quarter has the depth, so on average it is a little more.
  EXPECT_GT(e * si(plan.sets[0].let_out) / ground, 0.020);
  EXPECT_LT(e * si(plan.sets[0].let_out) / ground, 0.020 * 1.1);
}

TEST(DayPlan, SaysWhatADayTooShortLeaves) {
  const DayPlan plan = day_plan(ouzel_strips(),
                                {for_time("rows 1 and 2", 2 * h), for_time("rows 3 and 4", 2 * h)},
                                {.earliest = 6 * h, .latest = 9 * h});
  EXPECT_FALSE(plan.all_fits());
  ASSERT_THAT(plan.turns, SizeIs(2));
  EXPECT_EQ(plan.turns.back().stop, 9 * h);
  EXPECT_FALSE(plan.sets[0].still_needs);
  ASSERT_TRUE(plan.sets[1].still_needs);
  EXPECT_EQ(plan.sets[1].why_left, WhyLeft::day_too_short);
  EXPECT_NEAR((plan.sets[1].runs + *plan.sets[1].still_needs) / h, 2, 1e-12);
  EXPECT_NEAR(plan.sets[1].share, plan.sets[1].runs / (2 * h), 1e-12);
  // Too short for the lines to fill.
  const DayPlan nothing = day_plan(
      ouzel_strips(), {for_time("rows 1 and 2", 2 * h)}, {.earliest = 6 * h, .latest = 6.01 * h});
  EXPECT_THAT(nothing.turns, IsEmpty());
  EXPECT_NEAR(*nothing.sets[0].still_needs / h, 2, 1e-12);
  EXPECT_EQ(nothing.pumped, Volume{});
}

TEST(DayPlan, SaysWhichSetsTheSupplyDoesNotServe) {
  Supply weak = ouzel_pump();
  weak.pump->top_speed = 1500 * rpm;
  weak.pump->speed = 1500 * rpm;
  const DayPlan plan = day_plan(ouzel_strips(weak),
                                {for_time("rows 1 and 2", 2 * h), for_time("rows 3 and 4", 2 * h)});
  EXPECT_THAT(plan.turns, IsEmpty());
  for (const SetDay& set : plan.sets) {
    EXPECT_EQ(set.why_left, WhyLeft::not_served);
    EXPECT_EQ(set.runs, Time{});
    EXPECT_NEAR(*set.still_needs / h, 2, 1e-12);
    EXPECT_THAT(set.limits, testing::Contains(SupplyLimit::top_speed));
  }
}

TEST(DayPlan, TellsBurstsThatTheSoilAsksFor) {
  const DayPlan plan = day_plan(ouzel_strips(),
                                {for_depth("rows 1 and 2", 20 * mm)},
                                {.soil = {.intake_rate = 3 * mm_per_h}});
  ASSERT_TRUE(plan.sets[0].run);
  EXPECT_GT(plan.sets[0].run->bursts.bursts, 1);
  EXPECT_FALSE(plan.sets[0].run->bursts.runs_off);
  EXPECT_TRUE(plan.sets[0].application->rates);
}

TEST(DayPlan, StopsWhenItIsTold) {
  const auto stopped = [] {
    day_plan(ouzel_strips(),
             {for_time("rows 1 and 2", 1 * h)},
             {},
             {.progress = [](std::size_t, std::size_t) { return false; }});
  };
  EXPECT_THROW(stopped(), Stopped);
}

TEST(DayPlan, RefusesWhatCannotBe) {
  const auto refused = [](const std::vector<SetToWater>& sets, const DayOptions& options = {}) {
    return refusal([&] { day_plan(ouzel_strips(), sets, options); });
  };
  const SetToWater fine = for_time("rows 1 and 2", 1 * h);
  EXPECT_THAT(refused({}), HasSubstr("sets: are none"));
  EXPECT_THAT(refused({for_time("rows 9", 1 * h)}), HasSubstr("\"rows 9\", no set of the layout"));
  EXPECT_THAT(refused({fine, fine}), HasSubstr("again"));
  EXPECT_THAT(refused({{.set = "rows 1 and 2"}}), HasSubstr("one of the two is needed"));
  EXPECT_THAT(refused({for_time("rows 1 and 2", -1 * h)}), HasSubstr("time: is -1 h"));
  EXPECT_THAT(refused({fine}, {.earliest = 9 * h, .latest = 8 * h}),
              HasSubstr("must be later than earliest"));
  EXPECT_THAT(refused({fine}, {.earliest = std::nan("") * h}), HasSubstr("earliest: is nan"));
  EXPECT_THAT(refused({fine}, {.prices = {.of_energy = -1}}), HasSubstr("prices.of_energy: is -1"));
  EXPECT_THAT(
      refused({{.set = "rows 1 and 2", .need = WaterAmount{.depth = 5 * mm}}}),
      HasSubstr("set \"rows 1 and 2\": depth: is needed, but neither the spacing nor the area"));
}

}  // namespace
}  // namespace hydro
