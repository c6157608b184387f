// Room on a line and the longest line as a person reads them.
#include "hydro/text/room_report.hpp"

#include "hydro/text/describe.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

Room room(const RoomOptions& options, const Pressure& held = 36 * psi) {
  return room_on_line(sample_layout({sample_row("row", 6)}, "", held), "row", options);
}

RoomAtCount count_of(const Room& room, int added) {
  return *std::ranges::find(room.counts, added, &RoomAtCount::added);
}

TEST(RoomReport, SaysWhatFitsAndWhatEndsIt) {
  const RoomOptions rated{.limits = {.judged = {Limit::rated}}};
  const Room found = room(rated);
  ASSERT_GT(found.outlets, 1);
  const std::string text = room_report(found, UnitSystem::us);
  EXPECT_THAT(text,
              StartsWith(std::to_string(found.outlets) +
                         " more outlets fit on row. With one more, outlet " +
                         std::to_string(6 + found.outlets + 1) + " of row falls below its rated"));
  EXPECT_THAT(text, HasSubstr("psi  of rated  gal/min  nearest limit"));
  EXPECT_THAT(text, HasSubstr("PASSED"));
  EXPECT_THAT(room_report(found, UnitSystem::si), AllOf(HasSubstr("kPa"), Not(HasSubstr("psi"))));
}

// 99.96 % of rated is below it, a limit that is passed is passed by more than nothing, and what is
// left is never less than nothing.
TEST(RoomReport, RoundsNoLimitAway) {
  Room room{.line = "row", .end = RoomEnd::limit, .counts = {{.line = "row", .outlet = 6}}};
  RoomAtCount& at = room.counts.front();
  at.pressure = 24.99 * psi;
  at.rated = 25 * psi;
  at.margins = {{.limit = Limit::rated, .line = "row", .outlet = 6, .left = -4e-4, .passed = true}};
  room.ended_by = at.margins;
  EXPECT_THAT(room_report(room, UnitSystem::us), HasSubstr(" 99 % "));
  EXPECT_THAT(room_report(room, UnitSystem::us), HasSubstr("rated pressure, <1 % PASSED"));
  at.pressure = 25 * (1 - 1e-7) * psi;
  at.margins.front().left = -1e-7;  // rounding does not pass a limit
  at.margins.front().passed = false;
  EXPECT_THAT(room_report(room, UnitSystem::us), HasSubstr(" 100 % "));
  EXPECT_THAT(room_report(room, UnitSystem::us), HasSubstr("rated pressure, 0 % left"));
  at.margins.front() = {.limit = Limit::atmosphere, .line = "row", .left = -5e-6};  // 0.5 Pa
  EXPECT_THAT(room_report(room, UnitSystem::us), HasSubstr("atmosphere, 0 % left"));
  at.margins.front() = {.limit = Limit::rated, .line = "row", .outlet = 6, .left = 0.0096};
  EXPECT_THAT(room_report(room, UnitSystem::us), HasSubstr("rated pressure, 0 % left"));
}

TEST(RoomReport, SaysWhatWasNotJudgedAndWarns) {
  const Room all = room({});
  EXPECT_THAT(room_report(all, UnitSystem::us),
              AllOf(Not(HasSubstr("Not judged")), HasSubstr("Cautions\n")));
  RoomOptions options;
  std::erase(options.limits.judged, Limit::velocity);
  std::erase(options.limits.judged, Limit::suction);
  EXPECT_THAT(room_report(room(options), UnitSystem::us),
              AllOf(HasSubstr("\nNot judged: velocity, suction.\n"), HasSubstr("Cautions\n")));
}

TEST(RoomReport, SaysWhenNothingWasInTheWay) {
  EXPECT_THAT(room_report(room({.most = 1}), UnitSystem::us),
              StartsWith("1 more outlet fits on row; no more were tried."));
  const MoreOutlets between{.where = AddedWhere::between, .spacing = 36 * ft};
  EXPECT_THAT(room_report(room({.more = between}), UnitSystem::us),
              StartsWith("No more outlets fit on row; there is no place for another."));
}

TEST(RoomReport, SaysWhatIsWrongAlready) {
  EXPECT_THAT(
      room_report(room({}, 20 * psi), UnitSystem::us),
      StartsWith("No more outlets fit on row. As it is, outlet 6 of row falls below its rated"));
}

TEST(RoomReport, ShowsTheFirstAndTheLastCounts) {
  const Room found = room({.limits = {.judged = {Limit::gauge_range}}, .most = 40});
  const std::string text = room_report(found, UnitSystem::us);
  EXPECT_THAT(text,
              AllOf(HasSubstr("\n      0  row, 6"),
                    HasSubstr("\n    ...\n"),
                    HasSubstr("\n     29  row"),
                    HasSubstr("\n     40  row"),
                    Not(HasSubstr("\n     28  row"))));
  EXPECT_EQ(count_of(found, 40).outlet, 46);
}

TEST(RoomReport, TellsTheLongestLine) {
  const Layout layout = sample_layout({sample_row("row", 6)}, "", 36 * psi);
  const LongestLine longest = longest_line(layout, "row", {.limits = {.judged = {Limit::rated}}});
  EXPECT_THAT(longest_line_report(longest, UnitSystem::us),
              StartsWith("row can have " + std::to_string(longest.outlets) + " outlets over " +
                         std::to_string(36 * longest.outlets) + ".0 ft. With one more, outlet"));
  const LongestLine none =
      longest_line(sample_layout({sample_row("row", 6)}, "", 20 * psi), "row", {.most = 2});
  EXPECT_THAT(
      longest_line_report(none, UnitSystem::us),
      StartsWith("row cannot be laid with up to 2 outlets. With the last of these, outlet"));
}

TEST(RoomReport, DescribesEveryLimit) {
  for (const Limit limit : every_limit()) {
    const std::string text =
        describe({.limit = limit, .line = "row 2", .outlet = 14, .left = -0.057, .passed = true});
    EXPECT_THAT(text, Not(StartsWith(","))) << static_cast<int>(limit);
    EXPECT_EQ(limit == Limit::atmosphere, text.find(", by 6 %") == std::string::npos) << text;
  }
  EXPECT_EQ(describe({.limit = Limit::most_flow, .supply = "pond", .left = -1e-5, .passed = true}),
            "supply pond passes the pump's largest usable flow, by less than 1 %");
  EXPECT_EQ(
      describe(
          {.limit = Limit::rated, .line = "row 2", .outlet = 14, .left = -0.02, .passed = true}),
      "outlet 14 of row 2 falls below its rated pressure, by 2 %");
}

}  // namespace
}  // namespace hydro
