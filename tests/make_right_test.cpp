// make_right_test.cpp: what is done about a fault, against water counted by hand.
#include "hydro/diagnosis/make_right.hpp"

#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <string>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

Layout farm() {
  return pumped_farm().watering({"low"});
}

FoundFault sheared(int outlet) {
  return {.candidate = {.kind = CandidateKind::riser_sheared, .line = "row 2", .outlet = outlet},
          .fault = riser_sheared("row 2", outlet)};
}

const WayOn& way(const MakeRight& all, Deed deed) {
  return *std::ranges::find(all.ways, deed, &WayOn::deed);
}

/// What the line gives in the run and in the time after it, against what it gives without a fault:
/// no outlet but the faulty one has had less, and one has had as much to the last bit of rounding.
void expect_made_up(const Solution& sound,
                    const Solution& meanwhile,
                    const ExtraTime& extra,
                    int faulty) {
  constexpr double run = 3600;  // [s]
  const LineSolution& before = sound.line(extra.line);
  const LineSolution& then = meanwhile.line(extra.line);
  double least = 1e9;
  for (std::size_t i = 0; i < before.state.size(); ++i) {
    if (extra.line == "row 2" && static_cast<int>(i) + 1 == faulty) continue;
    const double wanted = si(before.flow[i]) * run;
    const double had = si(then.flow[i]) * run + si(before.flow[i]) * si(extra.time);
    least = std::min(least, had / wanted);
  }
  EXPECT_NEAR(least, 1, 1e-12) << extra.line;
}

TEST(MakeRight, ExtraTimeMakesUpForWhatWasMissed) {
  const Solution sound = solve(farm());
  const MakeRight all = make_right(farm(), sheared(7));
  const Solution meanwhile = solve(farm().with_fault(riser_sheared("row 2", 7)));
  ASSERT_THAT(way(all, Deed::go_on).extra, SizeIs(2));
  for (const ExtraTime& extra : way(all, Deed::go_on).extra) {
    EXPECT_GT(extra.time, Time{});
    expect_made_up(sound, meanwhile, extra, 7);
  }
  // Beyond the break the row has least.
  EXPECT_EQ(way(all, Deed::go_on).extra[1].outlet, 10);
}

TEST(MakeRight, ACappedOutletLeavesMoreForTheOthers) {
  const MakeRight all = make_right(farm(), sheared(7));
  const WayOn& capped_one = way(all, Deed::cap);
  EXPECT_THAT(capped_one.out_of_work, IsEmpty());
  for (const ExtraTime& extra : capped_one.extra) EXPECT_EQ(extra.time, Time{}) << extra.line;
  EXPECT_EQ(capped_one.escaping, Flow{});
  EXPECT_EQ(all.ways.at(all.best).deed, Deed::cap);
}

TEST(MakeRight, WhatEscapesIsTheOpenRisers) {
  const Solution broken = solve(farm().with_fault(riser_sheared("row 2", 7)));
  const MakeRight all = make_right(farm(), sheared(7));
  EXPECT_EQ(way(all, Deed::go_on).escaping, broken.line("row 2").flow[6]);
}

TEST(MakeRight, AStandstillTakesTheWholeRunAgain) {
  const MakeRight all = make_right(farm(), sheared(7), {.run_time = 90 * units::min});
  ASSERT_THAT(way(all, Deed::stop).extra, SizeIs(2));
  for (const ExtraTime& extra : way(all, Deed::stop).extra) EXPECT_EQ(extra.time, 90 * units::min);
  for (const ExtraTime& extra : way(all, Deed::mend).extra) EXPECT_EQ(extra.time, Time{});
}

TEST(MakeRight, AValveLeftOpenIsShutAndItsWaterIsLost) {
  const FoundFault left_open{.candidate = {.kind = CandidateKind::valve_left_open, .line = "row 3"},
                             .fault = valve_left_open("row 3")};
  const Solution open = solve(farm().with_fault(valve_left_open("row 3")));
  const MakeRight all = make_right(farm(), left_open);
  EXPECT_NEAR(way(all, Deed::go_on).escaping / gpm, open.line("row 3").inflow / gpm, 1e-9);
  EXPECT_THAT(way(all, Deed::go_on).extra, SizeIs(2)) << "row 3 has nothing to make up for";
  EXPECT_EQ(all.ways.at(all.best).deed, Deed::mend);
  EXPECT_THAT(all.ways, SizeIs(3)) << "there is nothing to cap";
}

TEST(MakeRight, AWrongGaugeChangesNoWater) {
  const MakeRight all = make_right(
      farm(), {.candidate = {.kind = CandidateKind::gauge_wrong, .gauge = "supply gauge"}});
  ASSERT_THAT(all.ways, SizeIs(1));
  EXPECT_EQ(all.ways[0].deed, Deed::go_on);
  EXPECT_THAT(all.ways[0].below_rated, IsEmpty());
  EXPECT_EQ(all.ways[0].escaping, Flow{});
}

TEST(MakeRight, ALowSupplyIsTakenAsItIs) {
  const Layout held = sample_layout({sample_row("row 1", 3)});
  Supply low = held.supply();
  low.pressure = 20 * psi;
  const MakeRight all =
      make_right(held, {.candidate = {.kind = CandidateKind::supply_low}, .supply = low});
  // Outlets of exponent 0.5 on a row with little loss: flow falls as the root of the pressure.
  const double share =
      1 - solve(held.with_supply(low)).line("row 1").flow[2] / solve(held).line("row 1").flow[2];
  EXPECT_NEAR(way(all, Deed::go_on).extra[0].time / units::h, share, 1e-12);
  EXPECT_GT(share, 0.25);
}

TEST(MakeRight, ARunTimeOfNothingIsRefused) {
  EXPECT_THAT(refusal([] { make_right(farm(), sheared(7), {.run_time = Time{}}); }),
              HasSubstr("run_time: is 0"));
}

}  // namespace
}  // namespace hydro
