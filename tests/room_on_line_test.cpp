// Room on a line: against counting by hand with a check after each outlet more, with held pressures
// and with pumps; what ends it; and that it shrinks as the supply does.
#include "hydro/what_ifs/room_on_line.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include "random_layout.hpp"
#include "random_pumped.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::Each;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;

/// Whether a check finds nothing at all.
bool is_sound(const Check& found) {
  bool supplies_are = found.supply_limits.empty();
  for (const auto& further : found.further_supply_limits)
    supplies_are = supplies_are && further.empty();
  return found.every_outlet_serves() && found.fast_water.empty() && found.over_rating.empty() &&
         found.below_atmosphere.empty() && supplies_are &&
         std::ranges::none_of(found.variations, &Variation::too_wide);
}

/// Counted with a check, the line described anew each time. None: it fails as it is.
std::optional<int> counted(const Layout& layout,
                           const std::string& name,
                           int most,
                           const CheckOptions& accepted = {}) {
  const Line& line = layout.line(name);
  for (int added = 0; added <= most; ++added) {
    Line longer = line;
    longer.count = *line.count + added;
    if (line.ground_rise)
      longer.ground_rise = *line.ground_rise * (longer.whole_length() / line.whole_length());
    if (!is_sound(check(solve(layout.with_line(longer)), accepted)))
      return added == 0 ? std::nullopt : std::optional(added - 1);
  }
  return most;
}

/// The narrow pipe of the strips' valve bears its 15 ft/s.
Limits fast_in_the_valve() {
  return {.accepted = {.velocity = 15 * ft_per_s}};
}

TEST(RoomOnLine, IsWhatACheckLeavesForLinesOnAHeldPressure) {
  for (const double held_psi : {29., 31., 33., 36., 40., 45.})
    for (const double rise_ft : {-6., 0., 3., 9.}) {
      const Layout layout = sample_layout({sample_row("row", 3, rise_ft * ft)}, "", held_psi * psi);
      const Room room = room_on_line(layout, "row");
      const auto by_hand = counted(layout, "row", 500);
      EXPECT_EQ(room.fails_as_it_is(), !by_hand) << held_psi << ' ' << rise_ft;
      EXPECT_EQ(room.outlets, by_hand.value_or(0)) << held_psi << ' ' << rise_ft;
    }
}

TEST(RoomOnLine, IsWhatACheckLeavesOnAPump) {
  int with_room = 0;
  for (const double speed_rpm : {1900., 2100., 2250., 2400., 2550.}) {
    Supply pump = sample_pump();
    pump.pump->speed = speed_rpm * rpm;
    const Layout farm = pumped_farm(pump).watering({"low"});
    for (const char* row : {"row 1", "row 2"}) {
      const CheckOptions accepted{.velocity = 8 * ft_per_s};
      const Room room = room_on_line(farm, row, {.limits = {.accepted = accepted}});
      const auto by_hand = counted(farm, row, 500, accepted);
      EXPECT_EQ(room.fails_as_it_is(), !by_hand) << speed_rpm << row;
      EXPECT_EQ(room.outlets, by_hand.value_or(0)) << speed_rpm << row;
      with_room += room.outlets > 0;
    }
  }
  EXPECT_GT(with_room, 2);
}

TEST(RoomOnLine, IsWhatACheckLeavesOnRandomFarms) {
  int asked = 0;
  int with_room = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    const Layout layout =
        seed % 2 == 0 ? random_pumped(seed) : random_layout(seed, {.most_lines = 3});
    const std::size_t index = seed % layout.lines().size();
    const Line& line = layout.lines()[index];
    const bool is_plain = line.outlet && line.elevations.empty() && line.joins.empty() &&
                          !line.length && layout.faults().empty() &&
                          std::ranges::none_of(layout.lines(), [&](const Line& other) {
                            return other.fed_by == line.name && !other.tap && !other.tap_outlet;
                          });
    if (!is_plain || layout.is_shut(index)) continue;
    // So loose that some have room.
    const Limits limits{.judged = {Limit::velocity, Limit::most_flow, Limit::suction}};
    const Room room = room_on_line(layout, line.name, {.limits = limits, .most = 20});
    int by_hand = 0;
    for (int added = 0; added <= 20; ++added) {
      Line longer = line;
      longer.count = *line.count + added;
      if (line.ground_rise)
        longer.ground_rise = *line.ground_rise * (longer.whole_length() / line.whole_length());
      const Check found = check(solve(layout.with_line(longer)));
      const auto has = [&](SupplyLimit limit) {
        return std::ranges::count(found.supply_limits, limit) > 0;
      };
      if (!found.fast_water.empty() || has(SupplyLimit::most_flow) || has(SupplyLimit::suction))
        break;
      by_hand = added;
    }
    EXPECT_EQ(room.outlets, by_hand) << seed;
    ++asked;
    with_room += room.outlets > 0;
  }
  EXPECT_GT(asked, 40);
  EXPECT_GT(with_room, 15);
}

TEST(RoomOnLine, SaysWhatEndsItAndWhere) {
  // The eleventh passes 5 ft/s, and nothing else.
  const Line row{.name = "row 1",
                 .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
                 .outlet = Outlet{.flow = 3.5 * gpm, .at = 25 * psi},
                 .count = 6,
                 .spacing = 36 * ft};
  const Room room = room_on_line(sample_layout({row}, "", 30 * psi), "row 1");
  EXPECT_EQ(room.outlets, 4);
  EXPECT_EQ(room.end, RoomEnd::limit);
  ASSERT_EQ(room.ended_by.size(), 1U);
  EXPECT_EQ(room.ended_by.front().limit, Limit::velocity);
  EXPECT_EQ(room.ended_by.front().line, "row 1");
  ASSERT_EQ(room.counts.size(), 6U);
  EXPECT_EQ(room.counts.front().added, 0);
  EXPECT_TRUE(room.counts[4].fits());
  EXPECT_FALSE(room.counts[5].fits());
  EXPECT_EQ(room.counts[5].outlet, 11);
  const Solution last =
      solve(with_more_outlets(sample_layout({row}, "", 30 * psi), "row 1", {}, 5));
  EXPECT_EQ(room.counts[5].pressure, last.line("row 1").pressure.back());
  EXPECT_EQ(room.counts[5].inflow, last.inflow());
  EXPECT_EQ(room.counts[5].rated, 25 * psi);
}

TEST(RoomOnLine, MayEndOnAnotherLine) {
  const Layout layout = pumped_farm();
  Line row = layout.line("row 1");
  row.ground_rise = -20 * ft;
  const Layout farm = layout.with_line(row).watering({"low"});
  const Room room =
      room_on_line(farm, "row 1", {.limits = {.judged = {Limit::rated, Limit::minimum}}});
  ASSERT_FALSE(room.ended_by.empty());
  EXPECT_EQ(room.ended_by.front().line, "row 2");
}

TEST(RoomOnLine, IsNoneWhereALimitIsPassedAlready) {
  const Room room = room_on_line(sample_layout({sample_row("row", 10)}, "", 26 * psi), "row");
  EXPECT_EQ(room.outlets, 0);
  EXPECT_TRUE(room.fails_as_it_is());
  EXPECT_EQ(room.ended_by.front().limit, Limit::rated);
  EXPECT_EQ(room.ended_by.front().outlet, 10);
  EXPECT_EQ(room.counts.size(), 1U);
}

TEST(RoomOnLine, MayHaveNoEndThatWasLookedFor) {
  const Layout layout = sample_layout({sample_row("row", 3)}, "", 40 * psi);
  const Room few = room_on_line(layout, "row", {.most = 2});
  EXPECT_EQ(few.outlets, 2);
  EXPECT_EQ(few.end, RoomEnd::most);
  EXPECT_THAT(few.ended_by, IsEmpty());
  const MoreOutlets between{.where = AddedWhere::between, .spacing = 18 * ft};
  const Room full = room_on_line(layout, "row", {.more = between});
  EXPECT_EQ(full.outlets, 2);
  EXPECT_EQ(full.end, RoomEnd::no_place);
}

// On level ground what is added between lies nearer than what is added beyond.
TEST(RoomOnLine, IsNoLessBetweenThanBeyond) {
  for (const double held_psi : {31., 33., 36., 40.}) {
    const Layout layout = sample_layout({sample_row("row", 5)}, "", held_psi * psi);
    const RoomOptions rated{.limits = {.judged = {Limit::rated}}};
    RoomOptions between = rated;
    between.more.where = AddedWhere::between;
    EXPECT_GE(room_on_line(layout, "row", between).outlets,
              room_on_line(layout, "row", rated).outlets)
        << held_psi;
  }
}

TEST(RoomOnLine, NeverGrowsAsAHeldPressureFalls) {
  const RoomOptions rated{.limits = {.judged = {Limit::rated}}};
  int before = 500;
  int different = 0;
  for (double held_psi = 60; held_psi >= 25; held_psi -= 0.5) {
    const Layout layout = sample_layout({sample_row("row", 1, 1 * ft)}, "", held_psi * psi);
    const int now = room_on_line(layout, "row", rated).outlets;
    EXPECT_LE(now, before) << held_psi;
    different += now < before;
    before = now;
  }
  EXPECT_GT(different, 8);
}

// A pump falls as outlets are added; a pressure held at what it gives now does not.
TEST(RoomOnLine, OnAPumpIsNoMoreThanOnItsPressureHeld) {
  Supply pump = ouzel_pump();
  pump.pump->speed = 2400 * rpm;
  const Layout pumped = ouzel_strips(pump).watering({"rows 1 and 2"});
  const Layout held = pumped.with_supply({.pressure = solve(pumped).supply_pressure()});
  const RoomOptions options{.limits = fast_in_the_valve()};
  for (const char* row : {"row 1", "row 2"})
    EXPECT_LE(room_on_line(pumped, row, options).outlets, room_on_line(held, row, options).outlets);
  const Room on_pump = room_on_line(pumped, "row 1", {.limits = options.limits, .most = 3});
  EXPECT_LT(on_pump.counts.back().supply_pressure, on_pump.counts.front().supply_pressure);
  EXPECT_GT(on_pump.counts.back().inflow, on_pump.counts.front().inflow);
}

TEST(RoomOnLine, ByPipeIsThatOfEachPipe) {
  Line mixed = sample_row("row", 4);
  mixed.reaches = {{{.inside_diameter = 3 * inch, .hazen_williams = 150}, 72 * ft}};
  const Layout layout = sample_layout({mixed}, "", 36 * psi);
  std::vector<Pipe> pipes;
  for (const char* size : {"1 in", "1-1/4 in", "1-1/2 in", "2 in"})
    pipes.push_back(nominal_pipe(size, "PVC Class 160"));
  const std::vector<RoomWithPipe> all = room_by_pipe(layout, "row", pipes);
  ASSERT_EQ(all.size(), pipes.size());
  int before = 0;
  for (std::size_t i = 0; i < pipes.size(); ++i) {
    EXPECT_EQ(all[i].pipe, pipes[i]);
    Line line = layout.line("row");
    line.pipe = pipes[i];
    line.reaches.clear();
    EXPECT_EQ(all[i].room.outlets, counted(layout.with_line(line), "row", 500).value_or(0));
    EXPECT_GE(all[i].room.outlets, before);
    before = all[i].room.outlets;
  }
  EXPECT_GT(before, 4);
}

TEST(RoomOnLine, IsTheSameForAnyNumberOfThreads) {
  const Layout layout = sample_layout({sample_row("row", 3)}, "", 36 * psi);
  const Room alone = room_on_line(layout, "row", {}, {.threads = 1});
  for (const int threads : {2, 3, 8}) {
    const Room together = room_on_line(layout, "row", {}, {.threads = threads});
    EXPECT_EQ(together.outlets, alone.outlets);
    ASSERT_EQ(together.counts.size(), alone.counts.size());
    for (std::size_t i = 0; i < alone.counts.size(); ++i)
      EXPECT_EQ(bits(si(together.counts[i].pressure)), bits(si(alone.counts[i].pressure)));
  }
}

// Work ahead may meet what would be an error at a count that is not come to: a line of 100 km.
TEST(RoomOnLine, WorkAheadFailsOnlyWhereItIsComeTo) {
  const Layout layout = sample_layout({sample_row("row", 1)}, "", 36 * psi);
  const auto told = [&](Limit limit, int threads) {
    return refusal([&] {
      const RoomOptions options{.limits = {.judged = {limit}}, .more = {.spacing = 40 * km}};
      EXPECT_EQ(room_on_line(layout, "row", options, {.threads = threads}).outlets, 0);
    });
  };
  EXPECT_EQ(told(Limit::rated, 1), "");
  EXPECT_EQ(told(Limit::rated, 8), "");
  EXPECT_THAT(told(Limit::gauge_range, 1),
              HasSubstr("is 120.0109728 km, must be from 0 to 100 km"));
  EXPECT_EQ(told(Limit::gauge_range, 1), told(Limit::gauge_range, 8));
}

TEST(RoomOnLine, TellsHowFarItIsAndStops) {
  const Layout layout = sample_layout({sample_row("row", 3)}, "", 40 * psi);
  std::size_t last = 0;
  const Room room = room_on_line(
      layout, "row", {.most = 5}, {.threads = 1, .progress = [&](std::size_t done, std::size_t of) {
                                     EXPECT_GT(done, last);
                                     EXPECT_EQ(of, 6U);
                                     last = done;
                                     return true;
                                   }});
  EXPECT_EQ(last, 6U);
  EXPECT_THROW(
      room_on_line(layout, "row", {}, {.progress = [](std::size_t, std::size_t) { return false; }}),
      Stopped);
}

// Each pipe is one part of it; where a part is long it can be stopped within it.
TEST(RoomOnLine, ByPipeTellsHowFarItIsAndStops) {
  const Layout layout = sample_layout({sample_row("row", 3)}, "", 40 * psi);
  const std::vector<Pipe> pipes{layout.line("row").pipe,
                                {.inside_diameter = 3 * inch, .hazen_williams = 150}};
  std::vector<std::size_t> told;
  room_by_pipe(layout,
               "row",
               pipes,
               {.most = 3},
               {.threads = 1, .progress = [&](std::size_t done, std::size_t of) {
                  EXPECT_EQ(of, 2U);
                  told.push_back(done);
                  return true;
                }});
  EXPECT_TRUE(std::ranges::is_sorted(told));
  EXPECT_GT(std::ranges::count(told, 0U), 1);
  EXPECT_EQ(told.back(), 2U);
  try {
    room_by_pipe(
        layout, "row", pipes, {}, {.progress = [](std::size_t, std::size_t) { return false; }});
    ADD_FAILURE() << "is not stopped";
  } catch (const Stopped& stopped) {
    EXPECT_EQ(stopped.done(), 0U);
    EXPECT_EQ(stopped.of(), 2U);
  }
}

TEST(RoomOnLine, RefusesWhatMakesNoSense) {
  const Layout farm = pumped_farm().watering({"low"});
  const auto refused = [&](const char* line, const RoomOptions& options) {
    return refusal([&] { room_on_line(farm, line, options); });
  };
  EXPECT_THAT(refused("row 3", {}), HasSubstr("is \"row 3\", to which no water comes"));
  EXPECT_THAT(refused("row 1", {.most = 0}), HasSubstr("most: is 0, must be from 1 to 100000"));
  EXPECT_THAT(refused("main", {}), HasSubstr("has no outlets"));
  EXPECT_THAT(refused("row 1", {.limits = {.judged = {}}}),
              HasSubstr("limits.judged: is empty; at least one limit must be chosen"));
  EXPECT_THAT(refused("row 1", {.limits = {.accepted = {.velocity = -1 * ft_per_s}}}),
              HasSubstr("velocity"));
}

}  // namespace
}  // namespace hydro
