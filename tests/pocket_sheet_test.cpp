// pocket_sheet_test.cpp: short enough for a pocket, and true to what a solve says.
#include "hydro/text/pocket_sheet.hpp"

#include "hydro/answers/comparison.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <regex>
#include <set>
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

/// "2 to 4, 6, 10" as numbers; "all" of ten.
std::set<int> numbers_in(const std::string& text) {
  std::set<int> numbers;
  const std::regex stretch("([0-9]+)( to ([0-9]+))?");
  for (std::sregex_iterator it(text.begin(), text.end(), stretch), end; it != end; ++it) {
    const int first = std::stoi((*it)[1]);
    const int last = (*it)[3].matched ? std::stoi((*it)[3]) : first;
    for (int number = first; number <= last; ++number) numbers.insert(number);
  }
  if (text.find("all") != std::string::npos)
    for (int number = 1; number <= 10; ++number) numbers.insert(number);
  return numbers;
}

TEST(PocketSheet, ThereIsOneForEachSet) {
  const auto sheets = pocket_sheets(pumped_farm());
  ASSERT_THAT(sheets, SizeIs(2));
  EXPECT_THAT(sheets[0], AllOf(HasSubstr("row 1"), HasSubstr("row 2"), Not(HasSubstr("row 3"))));
  EXPECT_THAT(sheets[1], AllOf(HasSubstr("row 4"), Not(HasSubstr("row 2"))));
  EXPECT_THAT(pocket_sheets(sample_layout({sample_row("row 1", 3)})), SizeIs(1));
}

TEST(PocketSheet, FitsAPocket) {
  std::vector<Line> many{sample_main()};
  many.back().pipe.inside_diameter = 12 * inch;
  for (int i = 1; i <= 45; ++i) {
    many.push_back(sample_row("a row with a name that is long, number " + std::to_string(i), 3));
    many.back().fed_by = "main";
  }
  Line long_row = sample_row("long", 60);
  long_row.spacing = 12 * ft;
  for (const Layout& layout :
       {pumped_farm(), sample_layout(many, "Plover Flat"), sample_layout({long_row})})
    for (const std::string& sheet : pocket_sheets(layout)) {
      EXPECT_THAT(rows_of(sheet), SizeIs(testing::Le(40u))) << sheet;
      for (const std::string& row : rows_of(sheet)) EXPECT_LE(row.size(), 60u) << row;
      EXPECT_THAT(sheet, HasSubstr("Release the pressure before"));
    }
}

TEST(PocketSheet, TellsTheGaugeTheSpeedAndTheRows) {
  const Setting setting = set_for_rated(pumped_farm().watering({"low"}));
  const auto rows = rows_of(pocket_sheets(pumped_farm()).at(0));
  const std::regex heading("Gauge ([0-9.]+) psi at ([0-9]+) rpm, ([0-9.]+) gal/min");
  std::smatch found;
  ASSERT_TRUE(std::regex_match(rows.at(1), found, heading)) << rows.at(1);
  const OperatingPoint& supply = setting.solution.supply();
  EXPECT_NEAR(std::stod(found[1]), *supply.gauge_reading / psi, 0.051);  // half of the last digit
  EXPECT_NEAR(std::stod(found[2]), *setting.speed / rpm, 0.51);
  EXPECT_NEAR(std::stod(found[3]), supply.flow / gpm, 0.051);
  const LineSolution& line = setting.solution.line("row 2");
  const auto row =
      std::ranges::find_if(rows, [](const std::string& it) { return it.find("row 2 ") == 0; });
  ASSERT_NE(row, rows.end());
  std::istringstream cells(row->substr(6));
  for (const std::size_t i : {0u, 4u, 9u}) {
    double pressure = 0;
    cells >> pressure;
    EXPECT_NEAR(pressure, line.pressure[i] / psi, 0.051);
  }
  for (const std::size_t i : {0u, 4u, 9u}) {
    double seconds = 0;
    std::string unit;
    cells >> seconds >> unit;
    EXPECT_EQ(unit, "s");
    EXPECT_NEAR(seconds, 300 / (line.flow[i] / gpm), 0.51);  // 5 gal
  }
}

TEST(PocketSheet, SaysWhatStallsAtEachBreak) {
  const Solution sound = set_for_rated(pumped_farm().watering({"low"})).solution;
  const auto rows = rows_of(pocket_sheets(pumped_farm()).at(0));
  const std::regex pattern(
      "  (row [12]) heads? ([0-9, to]+): ([0-9., to]+), (none stalls|stall (.*))");
  int told = 0;
  for (const std::string& row : rows) {
    std::smatch found;
    if (!std::regex_match(row, found, pattern)) continue;
    const std::string line = found[1];
    const std::string other = line == "row 1" ? "row 2" : "row 1";
    for (const int outlet : numbers_in(found[2])) {
      ++told;
      const Solution broken = solve(sound.layout().with_fault(riser_sheared(line, outlet)));
      std::set<int> here;
      std::set<int> elsewhere;
      for (const BelowMinimum& it : compare(sound, broken).newly_below_minimum)
        (it.line == line ? here : elsewhere).insert(it.outlet);
      if (!here.empty()) here.insert(outlet);
      std::string stalled = found[5];
      std::string stalled_elsewhere;
      const std::size_t at = stalled.find(other);
      if (at != std::string::npos) {
        stalled_elsewhere = stalled.substr(at + other.size());
        stalled.resize(at);
      }
      EXPECT_EQ(numbers_in(stalled), here) << row;
      EXPECT_EQ(numbers_in(stalled_elsewhere), elsewhere) << row;
    }
  }
  EXPECT_EQ(told, 20) << "each head of two rows of ten";
}

TEST(PocketSheet, LeavesTheFaultsOut) {
  EXPECT_EQ(pocket_sheets(pumped_farm().with_fault(riser_sheared("row 2", 7))),
            pocket_sheets(pumped_farm()));
}

TEST(PocketSheet, SaysWhatStandsInTheWay) {
  Supply slow = sample_pump();
  slow.pump->speed = 1500 * rpm;
  slow.pump->top_speed = 1500 * rpm;
  EXPECT_THAT(pocket_sheets(pumped_farm(slow)).at(0),
              AllOf(HasSubstr("NOT ENOUGH for the rated pressure everywhere."),
                    HasSubstr("OUTSIDE A LIMIT: the engine's top speed.")));
}

TEST(PocketSheet, IsInTheUnitsThatAreAskedFor) {
  EXPECT_THAT(pocket_sheets(pumped_farm(), UnitSystem::si).at(0),
              AllOf(HasSubstr("kPa"), HasSubstr("20 L in"), Not(HasSubstr("psi"))));
}

}  // namespace
}  // namespace hydro
