// The tables of chances: what they say of figures that are given, and that they fit on a screen.
#include "hydro/text/chances_report.hpp"

#include <algorithm>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "ouzel_strips.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::Each;
using testing::HasSubstr;
using testing::Not;

TroubleAtCount at(int more, int below_rated, int below_minimum, int of = 1000) {
  return {
      .more = more,
      .below_rated = {below_rated, of},
      .below_minimum = {below_minimum, of},
      .above_maximum = {0, of},
      .lowest_pressure = Spread<Pressure>{.quantiles = {(27.04 - more) * psi, 28 * psi, 30 * psi}},
      .seed = 7,
      .quantiles = {0.1, 0.5, 0.75}};
}

std::string report_of(const std::vector<TroubleAtCount>& found) {
  return trouble_report(ouzel_strips(),
                        "row 2",
                        found,
                        {.manufacturing_variation = 0.045,
                         .outlets = {{.outlet = "turning_head", .rating = 0.02}},
                         .elevation = 0.5 * ft},
                        UnitSystem::us);
}

Layout one_line_that_is_shut() {
  return {{.pressure = 40 * psi},
          {{.name = "row 1",
            .pipe = {.inside_diameter = 40 * mm, .hazen_williams = 150},
            .outlet = Outlet{.name = "spray", .flow = 1 * gpm, .at = 30 * psi},
            .count = 3,
            .spacing = 6 * units::m,
            .valve = Valve{.opening = ValveOpening::shut}}}};
}

std::size_t widest(const std::string& text) {
  std::istringstream lines(text);
  std::size_t width = 0;
  for (std::string line; std::getline(lines, line);) width = std::max(width, line.size());
  return width;
}

TEST(TroubleReport, SaysHowManyMoreAndHowLikely) {
  const std::string text = report_of(
      {at(0, 0, 0), at(1, 4, 0), at(2, 36, 0), at(3, 65, 0), at(4, 995, 2), at(5, 1000, 0)});
  EXPECT_THAT(
      text,
      HasSubstr("With up to 2 outlets more on row 2, in at least 19 of 20 cases every outlet "
                "has its\n  rated pressure.\n"));
  EXPECT_THAT(text, HasSubstr("With up to 5 outlets more on row 2, the most that were looked at"));
  EXPECT_THAT(text, HasSubstr("   0        27.0    28.0    30.0          none"));
  EXPECT_THAT(text, HasSubstr("   1        26.0    28.0    30.0          <1 %           none"));
  EXPECT_THAT(text, HasSubstr("   2        25.0    28.0    30.0           4 %           none"));
  EXPECT_THAT(text, HasSubstr("   4        23.0    28.0    30.0         >99 %           <1 %"));
  EXPECT_THAT(text, HasSubstr("   5        22.0    28.0    30.0           all           none"));
  EXPECT_LE(widest(text), 88);
}

TEST(TroubleReport, SaysWhenThereIsTroubleAlready) {
  EXPECT_THAT(
      report_of({at(0, 65, 0)}),
      AllOf(HasSubstr("With row 2 as it is, in more than 1 of 20 cases not every outlet has its "
                      "rated\n  pressure."),
            HasSubstr("With no outlet more on row 2, the most that were looked at")));
  EXPECT_THAT(
      report_of({at(0, 36, 0), at(1, 65, 65)}),
      HasSubstr("With no outlet more on row 2, in at least 19 of 20 cases every outlet has"));
}

// The bounds of Clopper and Pearson by their definition, sums of the binomial distribution for 0.05:
// of 1000, at most 36 come in 0.0212, at most 37 in 0.0307, at least 64 in 0.0284, at least 65 in
// 0.0207 of all; these are told apart at 0.025. Of none at all, 0.95^71 = 0.0262, 0.95^72 = 0.0249;
// of 2, 0.05^2 = 0.0025.
TEST(TroubleReport, SaysWhenCasesAreTooFewToTell) {
  const std::string tells_not =
      "With row 2 as it is, too few cases to tell whether in at least 19 of 20 every";
  const std::string well = "With no outlet more on row 2, the most that were looked at, in at";
  for (const auto& [times, of] : {std::pair(37, 1000), {64, 1000}, {0, 71}, {0, 2}, {1, 2}})
    EXPECT_THAT(report_of({at(0, times, times, of)}),
                AllOf(HasSubstr(tells_not), Not(HasSubstr(well))))
        << times << " of " << of;
  EXPECT_THAT(report_of({at(0, 0, 0, 72)}), AllOf(HasSubstr(well), Not(HasSubstr(tells_not))));
  EXPECT_THAT(report_of({at(0, 2, 2, 2)}), HasSubstr("With row 2 as it is, in more than 1 of 20"));
  EXPECT_THAT(report_of({at(0, 36, 36), at(1, 37, 37)}),
              HasSubstr("every outlet works; with 1,\n  too few cases to tell."));
}

TEST(TroubleReport, ListsWhatMayBeOff) {
  const std::string text = report_of({at(0, 0, 0)});
  EXPECT_THAT(text, HasSubstr("  - the flow of each outlet by itself: 4.5 %\n"));
  EXPECT_THAT(text, HasSubstr("  - the flow of all \"turning_head\", instead: 2 %\n"));
  EXPECT_THAT(text, HasSubstr("  - an elevation that was measured: 0.5 ft\n"));
  EXPECT_THAT(text, Not(HasSubstr("bore")));
  EXPECT_THAT(
      text,
      HasSubstr("1000 cases, drawn at random (seed 7). A chance is off by no more than 4 of"));
}

// 100 (1/sqrt(72) + 0.5/72) = 12.48; of 1000, above, 3.21.
TEST(TroubleReport, SaysWhichCasesWereDrawn) {
  EXPECT_THAT(report_of({at(0, 0, 0)}),
              HasSubstr("more        10 %    50 %    75 %   below rated"));
  EXPECT_THAT(report_of({at(0, 0, 0, 72)}),
              HasSubstr("\n72 cases, drawn at random (seed 7). A chance is off by no more than 13 "
                        "of 100, 19 times\nof 20."));
}

TEST(TroubleReport, RefusesWhatIsNotOfOneStudy) {
  EXPECT_THROW(trouble_report(ouzel_strips(), "row 9", {at(0, 0, 0)}, {}), InvalidInput);
  EXPECT_THROW(report_of({}), InvalidInput);
  TroubleAtCount other = at(1, 0, 0);
  other.seed = 8;
  EXPECT_THROW(report_of({at(0, 0, 0), other}), InvalidInput);
  EXPECT_THROW(report_of({at(0, 0, 0), at(1, 0, 0, 999)}), InvalidInput);
  other = at(1, 0, 0);
  other.quantiles = {0.5};
  EXPECT_THROW(report_of({at(0, 0, 0), other}), InvalidInput);
}

TEST(ChancesReport, HasARowForEachOutlet) {
  const Layout layout = ouzel_strips().watering({"rows 1 and 2"});
  const ChanceOptions options{.realisations = 200, .quantiles = {0.5}};
  const Uncertainty uncertainty{.pump_head = 0.05};
  const Chances found = chances(layout, uncertainty, options);
  const std::string text = chances_report(layout, found, uncertainty, UnitSystem::us);
  EXPECT_THAT(text, HasSubstr("\nrow 2\n"));
  EXPECT_THAT(text, HasSubstr("  - the head of a pump: 5 %"));
  EXPECT_THAT(text, HasSubstr("row 2: DU of flows "));
  EXPECT_THAT(text, HasSubstr("At least one outlet is below its rated pressure in "));
  std::size_t rows = 0;
  for (std::size_t place = text.find("\n       1  "); place != std::string::npos;
       place = text.find("\n       1  ", place + 1))
    ++rows;
  EXPECT_EQ(rows, 2);  // rows 3 and 4 are shut
  EXPECT_THAT(text, Not(HasSubstr("\nrow 3\n")));
  EXPECT_LE(widest(text), 88);
  const Chances still = chances(layout, {}, options);
  EXPECT_THAT(chances_report(layout, still, {}), HasSubstr("nothing: every case is the same"));
}

TEST(ChancesReport, SaysNothingOfOutletsThatAreNotJudged) {
  const Layout capped = ouzel_strips().watering({"rows 1 and 2"}).with_faults({Capped{"row 1", 2}});
  const ChanceOptions options{.realisations = 50, .quantiles = {0.5}};
  const std::string text = chances_report(capped, chances(capped, {}, options), {}, UnitSystem::us);
  std::istringstream lines(text.substr(text.find("\nrow 1\n")));
  std::string row;
  while (row.rfind("       2 ", 0) != 0 && std::getline(lines, row)) {
  }
  std::istringstream words(row);
  std::vector<std::string> entries;
  for (std::string word; words >> word;) entries.push_back(word);
  ASSERT_EQ(entries.size(), 5U) << row;  // outlet, pressure, rated, minimum, maximum
  EXPECT_THAT(std::vector(entries.begin() + 2, entries.end()), Each(std::string("-")));
}

TEST(ChancesReport, SaysThatNothingIsJudged) {
  const Layout shut = one_line_that_is_shut();
  const ChanceOptions options{.realisations = 50};
  const std::string text = chances_report(shut, chances(shut, {}, options), {});
  EXPECT_THAT(text, HasSubstr("* No outlet is judged: "));
  EXPECT_THAT(text, Not(HasSubstr("no case")));
  EXPECT_THAT(text, Not(HasSubstr("below rated")));
  const std::string more =
      trouble_report(shut, "row 1", chance_of_trouble(shut, "row 1", 1, {}, {}, options), {});
  EXPECT_THAT(more, HasSubstr("* No outlet is judged: "));
  EXPECT_THAT(more, HasSubstr("   1           -       -       -             -"));
}

TEST(ChancesReport, RefusesWhatWasFoundOfAnotherLayout) {
  const ChanceOptions options{.realisations = 2};
  const Chances found = chances(one_line_that_is_shut(), {}, options);
  EXPECT_THROW(chances_report(ouzel_strips(), found, {}), InvalidInput);
}

}  // namespace
}  // namespace hydro
