// sets_report_test.cpp: which sets run together, as a table that is read at the gate.
#include "hydro/text/sets_report.hpp"

#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::SizeIs;

std::vector<std::string> rows_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> rows;
  for (std::string row; std::getline(stream, row);) rows.push_back(row);
  return rows;
}

std::string told(const Layout& layout) {
  return sets_report(layout, sets_together(layout));
}

/// Twelve rows, each a set of its own.
Layout of_twelve_sets() {
  std::vector<Line> lines;
  std::vector<WateringSet> sets;
  for (int i = 1; i <= 12; ++i) {
    lines.push_back(sample_row("a row of a long name, " + std::to_string(i), 2));
    sets.push_back({"the set of a long name, " + std::to_string(i), {lines.back().name}});
  }
  return Layout(sample_pump(),
                std::move(lines),
                Water{},
                Site{.altitude = 0 * ft, .units = UnitSystem::us},
                std::move(sets));
}

TEST(SetsReport, HasTheNumbersOfTheAnswer) {
  const Layout layout = pumped_farm();
  const SetsTogether low = sets_together(layout).at(0);
  const auto rows = rows_of(told(layout));
  const auto row =
      std::ranges::find_if(rows, [](const std::string& it) { return it.find("  low ") == 0; });
  ASSERT_NE(row, rows.end());
  std::istringstream cells(*row);
  std::string name;
  double speed = 0;
  double gauge = 0;
  double flow = 0;
  int outlet = 0;
  cells >> name >> speed >> gauge >> flow >> outlet;
  EXPECT_NEAR(speed, low.speed.value() / rpm, 0.51);  // half of the last digit
  EXPECT_NEAR(gauge, low.gauge_reading.value() / psi, 0.051);
  EXPECT_NEAR(flow, low.flow / gpm, 0.051);
  EXPECT_EQ(outlet, low.weakest.outlet);
  EXPECT_THAT(*row, AllOf(HasSubstr(" 25.0  "), testing::EndsWith("  runs")));
}

TEST(SetsReport, SaysWhatStandsInTheWay) {
  Supply slow = sample_pump();
  slow.pump->speed = 1500 * rpm;
  slow.pump->top_speed = 1500 * rpm;
  const std::string text = told(pumped_farm(slow));
  EXPECT_THAT(text, HasSubstr("Of the 2 sets, none runs alone."));
  EXPECT_THAT(text, HasSubstr("      does not run: the engine's top speed\n"));
  EXPECT_THAT(told(pumped_farm()), HasSubstr("* Every set runs alone.\n"));
}

TEST(SetsReport, TakesASupplyThatCannotBeSetAsItIs) {
  EXPECT_THAT(told(pumped_farm({.tank = Tank{.level = 200 * ft}})),
              HasSubstr("* Every set runs alone."));
  EXPECT_THAT(
      told(pumped_farm({.tank = Tank{.level = 50 * ft}})),
      AllOf(HasSubstr("none runs alone."), HasSubstr("does not run: the pressure is not enough")));
}

TEST(SetsReport, OfTwelveSetsFitsAScreenAndHasEveryPair) {
  const Layout layout = of_twelve_sets();
  const auto rows = rows_of(told(layout));
  int pairs = 0;
  for (const std::string& row : rows) {
    EXPECT_LE(row.size(), 100u) << row;
    EXPECT_FALSE(row.ends_with(' ')) << row;
    pairs += row.find("  + ") == 0 ? 1 : 0;
  }
  EXPECT_EQ(pairs, 66);  // 12 x 11 / 2
  EXPECT_THAT(rows, SizeIs(testing::Lt(240u)));
}

TEST(SetsReport, RefusesASetThatOpensNoOutlet) {
  const Line main = sample_main();
  const Layout layout(Supply{40 * psi},
                      {main, sample_row("row 1", 2)},
                      {},
                      {},
                      {{.name = "rows", .lines = {"row 1"}}, {.name = "none", .lines = {"main"}}});
  EXPECT_THAT(refusal([&] { told(layout); }), HasSubstr("\"none\", which opens no outlet"));
}

}  // namespace
}  // namespace hydro
