// Which sets run together: order, agreement with set_for_rated, and a case for every limit that the
// verdict can name.
#include "hydro/answers/sets_together.hpp"

#include "hydro/answers/set_gauge.hpp"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;
using Names = std::vector<std::string>;

/// The rows as four sets of one.
Layout four_sets(const Supply& supply = ouzel_pump()) {
  const Layout rows = ouzel_strips();
  return Layout(supply,
                rows.lines(),
                rows.water(),
                rows.site(),
                {{"a", {"row 1"}}, {"b", {"row 2"}}, {"c", {"row 3"}}, {"d", {"row 4"}}});
}

TEST(SetsTogether, EachThenPairsThenAll) {
  Names found;
  for (const SetsTogether& it : sets_together(four_sets())) {
    std::string names;
    for (const std::string& name : it.sets) names += name;
    found.push_back(names);
  }
  EXPECT_THAT(found, ElementsAre("a", "b", "c", "d", "ab", "ac", "ad", "bc", "bd", "cd", "abcd"));
  EXPECT_THAT(sets_together(ouzel_strips()), SizeIs(3));  // of two sets the pair is all of them
}

TEST(SetsTogether, AreSetForTheRatedPressure) {
  const Layout layout = four_sets();
  for (const SetsTogether& it : sets_together(layout, {.share = 0.8})) {
    const Setting setting = set_for_rated(layout.watering(it.sets), 0.8);
    EXPECT_EQ(it.reached, setting.reached);
    EXPECT_EQ(it.speed, setting.speed);
    EXPECT_EQ(it.pressure, setting.pressure);
    EXPECT_EQ(it.gauge_reading, setting.solution.supply().gauge_reading);
    EXPECT_EQ(it.flow, setting.solution.inflow());
    EXPECT_EQ(it.limits, setting.limits);
    if (it.reached) {
      EXPECT_NEAR(it.weakest.pressure / it.weakest.rated, 0.8, 1e-8);
    }
    Velocity fastest{};
    for (const LineSolution& line : setting.solution.lines())
      for (const PipeExtremes& pipe : line.pipes)
        fastest = std::max(fastest, pipe.highest_velocity);
    EXPECT_EQ(it.fastest, fastest);
  }
}

TEST(SetsTogether, DoNotHangOnWhatRuns) {
  const std::vector<SetsTogether> all = sets_together(ouzel_strips());
  const std::vector<SetsTogether> same = sets_together(ouzel_strips().watering({"rows 1 and 2"}));
  for (std::size_t i = 0; i < all.size(); ++i) EXPECT_EQ(all[i].speed, same[i].speed);
}

SetsTogether alone(const std::function<void(Supply&)>& change, const Names& sets = {"a"}) {
  Supply supply = ouzel_pump();
  change(supply);
  for (const SetsTogether& it : sets_together(four_sets(supply), {.velocity = 7 * ft_per_s}))
    if (it.sets == sets) return it;  // one row alone runs at 6.4 ft/s in the 1.5 in of the valve
  throw std::logic_error("no such sets");
}

TEST(Verdict, CanRun) {
  const SetsTogether one = alone([](Supply&) {});
  EXPECT_TRUE(one.reached);
  EXPECT_FALSE(one.too_fast);
  EXPECT_THAT(one.limits, IsEmpty());
  EXPECT_TRUE(one.can_run());
}

TEST(Verdict, NamesTheLimitThatBinds) {
  const struct {
    SupplyLimit limit;
    std::function<void(Supply&)> change;
  } cases[] = {
      {SupplyLimit::top_speed,
       [](Supply& it) { it.pump->speed = it.pump->top_speed = 1500 * rpm; }},
      {SupplyLimit::power, [](Supply& it) { it.pump->power = 1 * hp; }},
      {SupplyLimit::least_flow, [](Supply& it) { it.pump->least_flow = 100 * gpm; }},
      {SupplyLimit::most_flow, [](Supply& it) { it.pump->most_flow = 25 * gpm; }},
      {SupplyLimit::suction, [](Supply& it) { it.suction->lift = 9.5 * units::m; }},
      {SupplyLimit::gauge_range, [](Supply& it) { it.gauge->range = 30 * psi; }},
  };
  for (const auto& [limit, change] : cases) {
    SCOPED_TRACE(static_cast<int>(limit));
    const SetsTogether it = alone(change);
    EXPECT_THAT(it.limits, Contains(limit));
    EXPECT_FALSE(it.can_run());
    EXPECT_EQ(it.reached, limit != SupplyLimit::top_speed);
  }
}

TEST(Verdict, WaterTooFast) {
  const SetsTogether pair = alone([](Supply&) {}, {"a", "b"});
  EXPECT_TRUE(pair.reached);
  EXPECT_TRUE(pair.too_fast);  // 70 gal/min through the 1.5 in of the strip valve: 12.7 ft/s
  EXPECT_EQ(pair.fastest_line, "strip valve");
  EXPECT_TRUE(pair.can_run());  // a caution only
  const auto all = sets_together(four_sets(), {.velocity = 20 * ft_per_s});
  EXPECT_FALSE(all[4].too_fast);
}

TEST(Verdict, ARegulatorPrevents) {
  Line row = four_sets().line("row 1");
  row.regulator = 20 * psi;
  const std::vector<SetsTogether> all = sets_together(four_sets().with_line(row));
  EXPECT_FALSE(all[0].reached);
  EXPECT_FALSE(all[0].can_run());
  EXPECT_THAT(all[0].limits, testing::Not(Contains(SupplyLimit::top_speed)));
  EXPECT_EQ(all[0].weakest.line, "row 1");
  EXPECT_TRUE(all[1].reached);
}

TEST(SetsTogether, NeedsSetsAndSense) {
  const Layout rows = ouzel_strips();
  EXPECT_THROW(sets_together(Layout(ouzel_pump(), rows.lines())), InvalidInput);
  EXPECT_THROW(sets_together(rows, {.velocity = 0 * m_per_s}), InvalidInput);
  EXPECT_THROW(sets_together(rows, {.share = 0}), InvalidInput);
}

}  // namespace
}  // namespace hydro
