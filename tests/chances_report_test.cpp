// The tables of chances: what they say of figures that are given, and that they fit on a screen.
#include "hydro/text/chances_report.hpp"

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

TroubleAtCount at(int more, int below_rated, int below_minimum) {
  return {
      .more = more,
      .below_rated = {below_rated, 1000},
      .below_minimum = {below_minimum, 1000},
      .above_maximum = {0, 1000},
      .lowest_pressure = Spread<Pressure>{.quantiles = {(27.04 - more) * psi, 28 * psi, 30 * psi}}};
}

std::string report_of(const std::vector<TroubleAtCount>& found) {
  return trouble_report(ouzel_strips(),
                        "row 2",
                        found,
                        {.manufacturing_variation = 0.045,
                         .outlets = {{.outlet = "turning_head", .rating = 0.02}},
                         .elevation = 0.5 * ft},
                        {.realisations = 1000},
                        UnitSystem::us);
}

std::size_t widest(const std::string& text) {
  std::istringstream lines(text);
  std::size_t width = 0;
  for (std::string line; std::getline(lines, line);) width = std::max(width, line.size());
  return width;
}

TEST(TroubleReport, SaysHowManyMoreAndHowLikely) {
  const std::string text = report_of(
      {at(0, 0, 0), at(1, 4, 0), at(2, 50, 0), at(3, 51, 0), at(4, 995, 2), at(5, 1000, 0)});
  EXPECT_THAT(text,
              HasSubstr("With up to 2 outlets more on row 2, in at least 19 of 20 cases every"));
  EXPECT_THAT(text, HasSubstr("With up to 5 outlets more on row 2, the most that were looked at"));
  EXPECT_THAT(text, HasSubstr("   0        27.0    28.0    30.0          none"));
  EXPECT_THAT(text, HasSubstr("   1        26.0    28.0    30.0          <1 %           none"));
  EXPECT_THAT(text, HasSubstr("   2        25.0    28.0    30.0           5 %           none"));
  EXPECT_THAT(text, HasSubstr("   4        23.0    28.0    30.0         >99 %           <1 %"));
  EXPECT_THAT(text, HasSubstr("   5        22.0    28.0    30.0           all           none"));
  EXPECT_LE(widest(text), 88);
}

TEST(TroubleReport, SaysWhenThereIsTroubleAlready) {
  EXPECT_THAT(
      report_of({at(0, 51, 0)}),
      AllOf(HasSubstr("With row 2 as it is, in more than 1 of 20 cases not every outlet has its "
                      "rated\n  pressure."),
            HasSubstr("With no outlet more on row 2, the most that were looked at")));
  EXPECT_THAT(
      report_of({at(0, 50, 0), at(1, 51, 51)}),
      HasSubstr("With no outlet more on row 2, in at least 19 of 20 cases every outlet has"));
}

TEST(TroubleReport, ListsWhatMayBeOff) {
  const std::string text = report_of({at(0, 0, 0)});
  EXPECT_THAT(text, HasSubstr("  - the flow of each outlet by itself: 4.5 %\n"));
  EXPECT_THAT(text, HasSubstr("  - the flow of all \"turning_head\", instead: 2 %\n"));
  EXPECT_THAT(text, HasSubstr("  - an elevation that was measured: 0.5 ft\n"));
  EXPECT_THAT(text, Not(HasSubstr("bore")));
  EXPECT_THAT(text, HasSubstr("1000 cases, drawn at random (seed 1). Drawn anew, a chance may"));
}

TEST(TroubleReport, RefusesALineThatIsNotThere) {
  EXPECT_THROW(trouble_report(ouzel_strips(), "row 9", {}, {}), InvalidInput);
}

TEST(ChancesReport, HasARowForEachOutlet) {
  const Layout layout = ouzel_strips().watering({"rows 1 and 2"});
  const ChanceOptions options{.realisations = 200, .quantiles = {0.5}};
  const Uncertainty uncertainty{.pump_head = 0.05};
  const Chances found = chances(layout, uncertainty, options);
  const std::string text = chances_report(layout, found, uncertainty, options, UnitSystem::us);
  EXPECT_THAT(text, HasSubstr("\nrow 2\n"));
  EXPECT_THAT(text, HasSubstr("  - the head of a pump: 5 %"));
  EXPECT_THAT(text, HasSubstr("row 2: DU of flows "));
  EXPECT_THAT(text, HasSubstr("At least one outlet is below its rated pressure in "));
  std::size_t rows = 0;
  for (std::size_t place = text.find("\n       1  "); place != std::string::npos;
       place = text.find("\n       1  ", place + 1))
    ++rows;
  EXPECT_EQ(rows, 4);  // rows 3 and 4 are shut, and listed all the same
  EXPECT_LE(widest(text), 88);
  const Chances still = chances(layout, {}, options);
  EXPECT_THAT(chances_report(layout, still, {}, options),
              HasSubstr("nothing: every case is the same"));
}

}  // namespace
}  // namespace hydro
