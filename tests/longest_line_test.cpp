// The longest line: against a published table of lengths, a printed design, plain counting, and the
// shortest line that a pump will bear.
#include "hydro/what_ifs/longest_line.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

Layout on_held_pressure(const Line& line, const Pressure& held) {
  return Layout(Supply{.pressure = held}, {line});
}

struct LengthRow {
  double hole_in;
  double spacing_ft;
  std::vector<double> printed_ft;  // in 1, 1-1/4 and 1-1/2 in; 0: not readable
};

// Code of a Minnesota city (Ramsey, section 830, table I "Maximum allowable lateral lengths in feet
// from header pipe", read in the text of a scan, weblink.cityoframsey.com, document 16319): laterals
// with a closed end for pressure distribution. It names neither rule, C, bores nor head. Read out of
// it, as the state's later tables of the most holes say (published_branches_test.cpp): at most 10 %
// more from the first hole than from the last, schedule 40 bores, 2 ft of head at the last; C 150.
// Printed lengths are no whole numbers of spacings and ours are: one spacing either way. One of the
// 18 is not readable.
TEST(LongestLine, OfAPerforatedPipeIsThatOfATable) {
  const std::vector<LengthRow> table{{3. / 16, 2.5, {34, 52, 70}},
                                     {3. / 16, 3.0, {36, 0, 75}},
                                     {7. / 32, 2.5, {30, 45, 57}},
                                     {7. / 32, 3.0, {33, 51, 63}},
                                     {1. / 4, 2.5, {25, 38, 50}},
                                     {1. / 4, 3.0, {27, 42, 54}}};
  std::vector<Pipe> pipes;
  for (const double bore_in : {1.049, 1.380, 1.610})
    pipes.push_back({.inside_diameter = bore_in * inch, .hazen_williams = 150});
  constexpr double most = 1.10;
  const Pressure last = pressure(2 * ft, properties({}).density);
  const Limits even{.judged = {Limit::variation},
                    .accepted = {.pressure_variation = 10, .flow_variation = 1 - 1 / most}};
  for (const LengthRow& row : table) {
    const Line lateral{
        .name = "lateral",
        .pipe = pipes.front(),
        .outlet = Outlet{.rated = last, .nozzle = row.hole_in * inch, .discharge_coefficient = 0.6},
        .count = 1,
        .spacing = row.spacing_ft * ft};
    const std::vector<LongestWithPipe> found = longest_by_pipe(
        on_held_pressure(lateral, most * most * last), "lateral", pipes, {.limits = even});
    for (std::size_t i = 0; i < pipes.size(); ++i) {
      if (row.printed_ft[i] == 0) continue;
      EXPECT_NEAR(found[i].longest.length / ft, row.printed_ft[i], row.spacing_ft)
          << row.hole_in << " in every " << row.spacing_ft << " ft, pipe " << i;
    }
  }
}

/// Even outlets on a held pressure, counted with a check.
int counted(const Layout& layout, Line line, int most) {
  int fits = 0;
  for (int count = 1; count <= most; ++count) {
    line.count = count;
    const Check found = check(solve(layout.with_line(line)));
    const bool is_sound = found.every_outlet_serves() && found.fast_water.empty() &&
                          std::ranges::none_of(found.variations, &Variation::too_wide);
    if (!is_sound) break;
    fits = count;
  }
  return fits;
}

TEST(LongestLine, IsWhatACheckLeaves) {
  for (const double held_psi : {29., 33., 38., 45.})
    for (const double spacing_ft : {20., 36., 60.}) {
      Line row = sample_row("row", 7);
      row.spacing = spacing_ft * ft;
      const Layout layout = on_held_pressure(row, held_psi * psi);
      const LongestLine longest = longest_line(layout, "row");
      EXPECT_EQ(longest.outlets, counted(layout, row, 500)) << held_psi << ' ' << spacing_ft;
      EXPECT_NEAR(longest.length / ft, longest.outlets * spacing_ft, 1e-9);
      EXPECT_EQ(longest.end, RoomEnd::limit);
      EXPECT_EQ(longest_line(layout, "row", {.spacing = spacing_ft * ft}).outlets, longest.outlets);
    }
}

TEST(LongestLine, HasAnotherSpacingAndKind) {
  Line row = sample_row("row", 7);
  const Layout layout = on_held_pressure(row, 36 * psi);
  Outlet small = *row.outlet;
  small.flow = 0.35 * gpm;
  row.outlet = small;
  row.spacing = 18 * ft;
  row.first_at = 9 * ft;
  const LongestLine longest =
      longest_line(layout, "row", {.spacing = 18 * ft, .first_at = 9 * ft, .outlet = small});
  EXPECT_EQ(longest.outlets, counted(layout, row, 500));
  EXPECT_NEAR(longest.length / ft, 9 + 18 * (longest.outlets - 1), 1e-9);
}

TEST(LongestLine, OnASlopeGoesOnAsSteeply) {
  const Line row = sample_row("row", 10, 5 * ft);
  const Layout layout = on_held_pressure(row, 40 * psi);
  const Layout short_one = with_outlets(layout, "row", {}, 4);
  EXPECT_NEAR(short_one.outlet_elevation(0, 4) / ft, 2, 1e-9);
  const Layout long_one = with_outlets(layout, "row", {}, 20);
  EXPECT_NEAR(long_one.outlet_elevation(0, 20) / ft, 10, 1e-9);
}

TEST(LongestLine, OnKnownGroundFollowsIt) {
  Line row = sample_row("row", 3);
  row.ground_rise.reset();
  row.elevations = {4 * ft, 2 * ft, 6 * ft};
  const Layout layout = on_held_pressure(row, 40 * psi);
  const Layout closer = with_outlets(layout, "row", {.spacing = 18 * ft, .first_at = 18 * ft}, 7);
  const std::vector<double> expected_ft{2, 4, 3, 2, 4, 6, 6};
  for (int i = 1; i <= 7; ++i)
    EXPECT_NEAR(
        closer.outlet_elevation(0, i) / ft, expected_ft[static_cast<std::size_t>(i - 1)], 1e-9)
        << i;
}

TEST(LongestLine, EndsItsReachesWithIt) {
  Line row = sample_row("row", 10);
  const Pipe wide{.inside_diameter = 2 * inch, .hazen_williams = 150};
  const Pipe middle{.inside_diameter = 1.9 * inch, .hazen_williams = 150};
  row.reaches = {{wide, 90 * ft}, {middle, 200 * ft}};
  const Layout layout = on_held_pressure(row, 40 * psi);
  const auto reaches = [&](int count) {
    return with_outlets(layout, "row", {}, count).line("row").reaches;
  };
  EXPECT_EQ(reaches(2), (std::vector<PipeReach>{{wide, 72 * ft}}));
  EXPECT_EQ(reaches(4), (std::vector<PipeReach>{{wide, 90 * ft}, {middle, 144 * ft}}));
  EXPECT_EQ(reaches(12), row.reaches);
}

// A pump wants more than one head lets through: lines of two heads and fewer are too short.
TEST(LongestLine, MayAlsoBeTooShort) {
  Supply pump = sample_pump();
  pump.pump->least_flow = 10 * gpm;
  const Line row = sample_row("row", 5);
  const Layout layout(pump, {row}, {}, {.altitude = 400 * ft});
  const LongestLine longest =
      longest_line(layout,
                   "row",
                   {.limits = {.judged = {Limit::least_flow, Limit::most_flow, Limit::velocity}}});
  ASSERT_GT(longest.fewest, 1);
  const auto fits = [&](int count) {
    return longest.counts[static_cast<std::size_t>(count - 1)].fits();
  };
  for (int count = 1; count < longest.fewest; ++count) EXPECT_FALSE(fits(count)) << count;
  for (int count = longest.fewest; count <= longest.outlets; ++count) EXPECT_TRUE(fits(count));
  EXPECT_FALSE(fits(longest.outlets + 1));
  EXPECT_EQ(longest.ended_by.front().limit, Limit::velocity);
}

TEST(LongestLine, MayNotExist) {
  const LongestLine none =
      longest_line(on_held_pressure(sample_row("row", 5), 20 * psi), "row", {.most = 9});
  EXPECT_EQ(none.outlets, 0);
  EXPECT_EQ(none.fewest, 0);
  EXPECT_EQ(none.length, Length{});
  EXPECT_EQ(none.counts.size(), 9U);
  EXPECT_EQ(none.ended_by.front().limit, Limit::rated);
  const LongestLine all =
      longest_line(on_held_pressure(sample_row("row", 5), 40 * psi), "row", {.most = 3});
  EXPECT_EQ(all.outlets, 3);
  EXPECT_EQ(all.end, RoomEnd::most);
  EXPECT_THAT(all.ended_by, IsEmpty());
}

TEST(LongestLine, RefusesALineThatIsNotItsOwn) {
  Line branch = sample_row("branch", 2);
  branch.fed_by = "row";
  const Layout layout = sample_layout({sample_row("row", 4), branch, sample_main()});
  const auto refused = [&](const Layout& asked, const char* line) {
    return refusal([&] { longest_line(asked, line); });
  };
  EXPECT_THAT(refused(layout, "row"), HasSubstr("is \"row\", which feeds line \"branch\""));
  EXPECT_THAT(refused(layout, "main"), HasSubstr("is \"main\", which has no outlets"));
  EXPECT_THAT(refused(layout.with_fault(capped("branch", 1)), "branch"),
              HasSubstr("which has a fault"));
}

}  // namespace
}  // namespace hydro
