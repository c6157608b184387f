// More outlets on a line: where they stand, and that all else stays where it was.
#include "hydro/what_ifs/more_outlets.hpp"

#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <variant>
#include <vector>

#include "random_layout.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::Pointwise;

/// Distances of the outlets of a line [ft].
std::vector<double> places_ft(const Line& line) {
  std::vector<double> places;
  for (int i = 1; i <= line.outlet_count(); ++i) places.push_back(line.place_of(i) / ft);
  return places;
}

MATCHER(IsNearly, "") {
  return std::abs(std::get<0>(arg) - std::get<1>(arg)) < 1e-9 * (1 + std::abs(std::get<1>(arg)));
}

Line three_at_ten_feet() {
  Line line = sample_row("row", 3);
  line.spacing = 10 * ft;
  return line;
}

TEST(MoreOutlets, BeyondTheLineGoesOnAsItWas) {
  const Layout ten = sample_layout({sample_row("row", 10, 3 * ft)});
  EXPECT_EQ(with_more_outlets(ten, "row", {}, 2),
            sample_layout({sample_row("row", 12, 3 * ft * (432. / 360))}));
  EXPECT_EQ(with_more_outlets(ten, "row", {}, 0), ten);
}

TEST(MoreOutlets, BeyondTheyMayBeOfAnotherKindAndSpacing) {
  Line row = three_at_ten_feet();
  row.ground_rise = 3 * ft;
  Outlet other = turning_head();
  other.name = "mister";
  const Layout more =
      with_more_outlets(sample_layout({row}), "row", {.outlet = other, .spacing = 4 * ft}, 2);
  const Line& now = more.line("row");
  EXPECT_THAT(places_ft(now), Pointwise(IsNearly(), {10., 20., 30., 34., 38.}));
  EXPECT_EQ(now.kind_of(3).name, "turning head");
  EXPECT_EQ(now.kind_of(4).name, "mister");
  EXPECT_NEAR(more.outlet_elevation(0, 5) / ft, 3.8, 1e-9);
}

TEST(MoreOutlets, APipeThatGoesOnIsUsedFirst) {
  Line row = three_at_ten_feet();
  row.length = 45 * ft;
  const Layout layout = sample_layout({row});
  EXPECT_EQ(with_more_outlets(layout, "row", {}, 1).line("row").whole_length(), 45 * ft);
  EXPECT_EQ(with_more_outlets(layout, "row", {}, 3).line("row").whole_length(), 60 * ft);
}

TEST(MoreOutlets, BeyondKnownGroundItStaysLevel) {
  Line row = three_at_ten_feet();
  row.ground_rise.reset();
  row.elevations = {1 * ft, 4 * ft, 2 * ft};
  const Layout more = with_more_outlets(sample_layout({row}), "row", {}, 2);
  EXPECT_EQ(more.outlet_elevation(0, 5), 2 * ft);
}

TEST(MoreOutlets, WhatHangsOnTheFarEndKeepsItsPlace) {
  Line branch = sample_row("branch", 2);
  branch.fed_by = "row";
  const Layout more = with_more_outlets(sample_layout({three_at_ten_feet(), branch}), "row", {}, 4);
  EXPECT_EQ(begins_at(more.line("branch"), more.line("row")), 30 * ft);
}

TEST(MoreOutlets, BetweenTheGapsFillFromTheFarEnd) {
  const Layout layout = sample_layout({three_at_ten_feet()});
  const auto places = [&](int count) {
    return places_ft(
        with_more_outlets(layout, "row", {.where = AddedWhere::between}, count).line("row"));
  };
  EXPECT_THAT(places(1), Pointwise(IsNearly(), {10., 20., 25., 30.}));
  EXPECT_THAT(places(2), Pointwise(IsNearly(), {10., 15., 20., 25., 30.}));
  EXPECT_THAT(places(3), Pointwise(IsNearly(), {10., 15., 20., 20 + 10. / 3, 20 + 20. / 3, 30.}));
}

TEST(MoreOutlets, BetweenTheGroundIsThatOfThePlace) {
  Line row = three_at_ten_feet();
  row.ground_rise.reset();
  row.elevations = {1 * ft, 4 * ft, 2 * ft};
  const Layout more =
      with_more_outlets(sample_layout({row}), "row", {.where = AddedWhere::between}, 2);
  std::vector<double> elevations_ft;
  for (int i = 1; i <= 5; ++i) elevations_ft.push_back(more.outlet_elevation(0, i) / ft);
  EXPECT_THAT(elevations_ft, Pointwise(IsNearly(), {1., 2.5, 4., 3., 2.}));
}

TEST(MoreOutlets, BetweenFaultsAndTapsGoWithTheirOutlets) {
  Line branch = sample_row("branch", 2);
  branch.fed_by = "row";
  branch.tap_outlet = 2;
  Line row = three_at_ten_feet();
  const std::vector<Fault> faults{
      head_off("row", 3), clogged("branch", 1, 0.5), line_cut("row", 29 * ft)};
  const Layout more = with_more_outlets(sample_layout({row, branch}).with_faults({faults[1]}),
                                        "row",
                                        {.where = AddedWhere::between},
                                        2);
  EXPECT_EQ(more.line("branch").tap_outlet, 3);
  const Layout broken = with_more_outlets(sample_layout({row, branch}).with_faults({faults[0]}),
                                          "row",
                                          {.where = AddedWhere::between},
                                          2);
  EXPECT_EQ(broken.faults(), std::vector<Fault>{head_off("row", 5)});
  EXPECT_EQ(more.faults(), std::vector<Fault>{faults[1]});
}

TEST(MoreOutlets, BetweenNoTwoStandNearerThanTheSpacing) {
  const Layout layout = sample_layout({three_at_ten_feet()});
  const MoreOutlets at_five{.where = AddedWhere::between, .spacing = 5 * ft};
  const MoreOutlets at_four{.where = AddedWhere::between, .spacing = 4 * ft};
  const MoreOutlets at_three{.where = AddedWhere::between, .spacing = 3 * ft};
  EXPECT_EQ(places_for_more(layout, "row", at_five), 2);
  EXPECT_EQ(places_for_more(layout, "row", at_four), 2);
  EXPECT_EQ(places_for_more(layout, "row", at_three), 4);
  EXPECT_EQ(places_for_more(layout, "row", {}), most_outlets);
  EXPECT_THAT(refusal([&] { with_more_outlets(layout, "row", at_four, 3); }),
              HasSubstr("is 3, but only 2 more have a place between the outlets of line \"row\""));
}

TEST(MoreOutlets, SaysWhatItCannotDo) {
  Line joined = three_at_ten_feet();
  joined.name = "ring";
  joined.joins = "row";
  Line one = sample_row("one", 1);
  one.spacing.reset();
  one.first_at = 5 * ft;
  const Layout layout = sample_layout({sample_main(), three_at_ten_feet(), joined, one});
  const auto refused = [&](const char* line, const MoreOutlets& more, int count) {
    return refusal([&] { with_more_outlets(layout, line, more, count); });
  };
  EXPECT_THAT(refused("main", {}, 1), HasSubstr("is \"main\", which has no outlets"));
  EXPECT_THAT(refused("ring", {}, 1), HasSubstr("joins line \"row\"; outlets can only be added"));
  EXPECT_THAT(refused("row", {}, -1), HasSubstr("count: is -1, must be from 0 to 1000000"));
  EXPECT_THAT(refused("row", {.spacing = 0 * ft}, 1), HasSubstr("spacing: is 0 km"));
  EXPECT_THAT(refused("one", {}, 1), HasSubstr("spacing: is not given, and line \"one\" has none"));
  EXPECT_THAT(refused("none", {}, 1), HasSubstr("is not in this layout"));
  EXPECT_EQ(refused("ring", {.where = AddedWhere::between}, 1), "");
}

bool is_open_at_end(const Layout& layout, std::size_t line) {
  return std::ranges::any_of(layout.faults_on(line), [](const Fault& fault) {
    return std::holds_alternative<EndOpen>(fault);
  });
}

// Capped outlets let out nothing and change nothing, wherever they stand: pipes, ground, faults, sets
// and what hangs on the line are as they were. Pressures within 1e-9 of 1,000 kPa: residuals are
// 1e-12 of the scale of heads, and add up along a line.
TEST(MoreOutlets, CappedOnesChangeNothing) {
  const Outlet marked{.name = "marked", .flow = 1 * lph, .at = 100 * kPa};
  int tried = 0;
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    const Layout layout = random_layout(seed, {.farm = true});
    const std::vector<Line>& lines = layout.lines();
    const std::size_t index = seed % lines.size();
    const Line& line = lines[index];
    const AddedWhere where = seed / 2 % 2 == 0 ? AddedWhere::beyond : AddedWhere::between;
    const bool loses_at_outlets = line.outlet_loss_coefficient.value_or(0) > 0 ||
                                  line.connection_length.value_or(0 * ft) > 0 * ft;
    if (line.outlet_count() < 2 || loses_at_outlets) continue;
    if (where == AddedWhere::beyond && is_open_at_end(layout, index)) continue;
    const MoreOutlets more{.where = where, .outlet = marked, .spacing = 50 * mm};
    const int count = std::min(3, places_for_more(layout, line.name, more));
    Layout now = with_more_outlets(layout, line.name, more, count);
    ASSERT_EQ(now.outlet_count(), layout.outlet_count() + count) << seed;
    ASSERT_EQ(now.running_sets(), layout.running_sets()) << seed;
    ASSERT_EQ(now.faults().size(), layout.faults().size()) << seed;
    std::vector<Fault> caps;
    for (int number = 1; number <= line.outlet_count() + count; ++number)
      if (now.line(line.name).kind_of(number) == marked) caps.push_back(capped(line.name, number));
    ASSERT_EQ(caps.size(), static_cast<std::size_t>(count)) << seed;
    now = now.with_possible_faults(caps).layout;
    const Solution before = solve(layout);
    const Solution after = solve(now);
    for (std::size_t l = 0; l < lines.size(); ++l) {
      int number = 1;
      for (int old = 1; old <= lines[l].outlet_count(); ++old, ++number) {
        while (now.lines()[l].kind_of(number) == marked) ++number;
        const auto at_old = static_cast<std::size_t>(old - 1);
        const auto at_new = static_cast<std::size_t>(number - 1);
        ASSERT_NEAR(
            now.outlet_elevation(l, number) / ft, layout.outlet_elevation(l, old) / ft, 1e-9);
        ASSERT_NEAR(
            after.lines()[l].pressure[at_new] / kPa, before.lines()[l].pressure[at_old] / kPa, 1e-6)
            << seed << ' ' << lines[l].name << ' ' << old;
      }
    }
    ++tried;
  }
  EXPECT_GT(tried, 200);
}

}  // namespace
}  // namespace hydro
