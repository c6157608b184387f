// report_test.cpp: what a person reads first, in which words and units, and how much of it.
#include "hydro/text/report.hpp"

#include "hydro/answers/comparison.hpp"
#include "hydro/answers/pressure_budget.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/text/setting_report.hpp"

#include <algorithm>
#include <functional>
#include <regex>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "one_decimal.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::Each;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;
using testing::StartsWith;

const Site us_site{.altitude = 0 * ft, .units = UnitSystem::us};

Pipe lateral() {
  return {.name = "lateral", .inside_diameter = 1.754 * inch, .hazen_williams = 150};
}

Line row(int count, const Length& ground_rise = 0 * ft) {
  return {.name = "row 1",
          .pipe = lateral(),
          .outlet = turning_head(),
          .count = count,
          .spacing = 36 * ft,
          .ground_rise = ground_rise,
          .riser = {.height = 4 * ft, .inside_diameter = 0.81 * inch, .hazen_williams = 150}};
}

Layout one_row(const Pressure& supply, int count = 10, const Length& ground_rise = 0 * ft) {
  return Layout(Supply{supply}, {row(count, ground_rise)}, Water{}, us_site);
}

std::string told(const Layout& layout, const ReportOptions& options = {}) {
  return report(solve(layout), options);
}
/// Tells what the layout's faults do.
std::string told_with_faults(const Layout& layout, const ReportOptions& options = {}) {
  return report(solve(layout.without_faults()), solve(layout), options);
}

std::vector<std::string> rows_of(const std::string& text) {
  std::vector<std::string> rows;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    rows.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return rows;
}

/// The text as one line with single blanks, so that it does not matter where lines are broken.
std::string unbroken(const std::string& text) {
  return std::regex_replace(text, std::regex("\\s+"), " ");
}

std::vector<std::string> matches(const std::string& text, const std::string& pattern) {
  const std::regex wanted(pattern);
  std::vector<std::string> found;
  for (std::sregex_iterator it(text.begin(), text.end(), wanted), end; it != end; ++it)
    found.push_back(it->str());
  return found;
}

/// The rows of the table of outlets: they begin with the outlet's number.
std::vector<std::string> outlet_rows(const std::string& text) {
  std::vector<std::string> rows;
  for (const std::string& row : rows_of(text))
    if (std::regex_search(row, std::regex("^ +[0-9]+  "))) rows.push_back(row);
  return rows;
}

// ---- first things first

TEST(Report, BeginsWithWhatIsWrong) {
  const std::string text = told(one_row(26 * psi));
  EXPECT_THAT(unbroken(text), StartsWith("* row 1: outlets 1 to 10 are under the rated 25 psi ("));
}

TEST(Report, BeginsWithThatNothingIsWrong) {
  EXPECT_THAT(told(one_row(35 * psi)),
              StartsWith("* Every one of the 10 outlets has its rated pressure.\n"));
}

TEST(Report, TheNameOfTheSiteIsTheTitle) {
  Site named = us_site;
  named.name = "Plover Flat";
  const auto rows = rows_of(told(Layout(Supply{35 * psi}, {row(10)}, Water{}, named)));
  ASSERT_THAT(rows, SizeIs(testing::Gt(3u)));
  EXPECT_EQ(rows[0], "Plover Flat");
  EXPECT_EQ(rows[1], "");
  EXPECT_THAT(rows[2], StartsWith("* Every one"));
}

TEST(Report, TheWorstIsToldFirst) {
  const Layout layout =
      one_row(40 * psi, 10, 45 * ft)
          .with_faults({riser_sheared("row 1", 7, 0.5 * ft, 1), capped("row 1", 2)});
  const std::string text = unbroken(told_with_faults(layout));
  EXPECT_THAT(text, StartsWith("* row 1: outlet 7 is broken, "));
  EXPECT_LT(text.find("is broken"), text.find("* row 1: outlet 2 is capped."));
  EXPECT_LT(text.find("is capped"), text.find("are under the 18 psi below which they do not work"));
  EXPECT_LT(text.find("do not work"), text.find("under the rated 25 psi"));
}

TEST(Report, SpeaksOfOneOutletInTheSingular) {
  EXPECT_THAT(unbroken(told(one_row(60 * psi, 1))),
              AllOf(StartsWith("* row 1: outlet 1 is over the 50 psi above which it mists ("),
                    Not(HasSubstr("1 outlets"))));
  EXPECT_THAT(unbroken(told(one_row(15 * psi, 1))),
              StartsWith("* row 1: outlet 1 is under the 18 psi below which it does not work ("));
}

TEST(Report, OfALayoutWithoutOutletsSpeaksOfNone) {
  const Layout main_only(
      Supply{40 * psi}, {Line{.name = "main", .pipe = lateral(), .length = 90 * ft}}, {}, us_site);
  EXPECT_THAT(told(main_only), AllOf(Not(HasSubstr("0 outlets")), Not(IsEmpty())));
}

// ---- words

TEST(Report, HasAWordForEachState) {
  const auto words = [](const Layout& layout) {
    const std::string text = layout.faults().empty() ? told(layout) : told_with_faults(layout);
    std::vector<std::string> last;
    for (const std::string& row : outlet_rows(text))
      last.push_back(row.substr(row.rfind("   ") + 3));
    return last;
  };
  EXPECT_THAT(words(one_row(35 * psi, 2)), ElementsAre("works", "works"));
  EXPECT_THAT(words(one_row(26 * psi, 2)), ElementsAre("below rated", "below rated"));
  EXPECT_THAT(words(one_row(15 * psi, 2)), ElementsAre("DOES NOT WORK", "DOES NOT WORK"));
  EXPECT_THAT(words(one_row(70 * psi, 2)), ElementsAre("MISTS", "MISTS"));
  EXPECT_THAT(words(one_row(35 * psi, 2, 120 * ft)), ElementsAre("DOES NOT WORK", "DRY"));
  EXPECT_THAT(words(one_row(40 * psi, 5)
                        .with_faults({capped("row 1", 1),
                                      head_off("row 1", 5, 1),
                                      clogged("row 1", 3, 0.5),
                                      worn("row 1", 2, 0.1)})),
              ElementsAre(StartsWith("capped"),
                          HasSubstr("worn"),
                          HasSubstr("clogged"),
                          testing::AnyOf("works", "below rated", "DOES NOT WORK"),
                          "BROKEN, water escapes"));
}

TEST(Report, ADryOutletIsTold) {
  const std::string text = told(one_row(35 * psi, 2, 120 * ft));
  EXPECT_THAT(unbroken(text),
              HasSubstr("* row 1: outlet 2 is dry: the pressure does not lift water"));
  ASSERT_THAT(outlet_rows(text), SizeIs(2));
  EXPECT_THAT(outlet_rows(text)[1],
              AllOf(HasSubstr(" 0.0 "), HasSubstr(" 0 %"), HasSubstr(" never ")));
}

TEST(Report, ACappedOutletFillsNoBucketAndABrokenOneIsComparedWithNothing) {
  const std::string text = told_with_faults(
      one_row(40 * psi, 3).with_faults({capped("row 1", 1), head_off("row 1", 2, 1)}));
  ASSERT_THAT(outlet_rows(text), SizeIs(3));
  EXPECT_THAT(outlet_rows(text)[0], HasSubstr(" never "));
  EXPECT_THAT(outlet_rows(text)[1], AllOf(HasSubstr(" - "), Not(HasSubstr("%"))));
}

// ---- numbers

TEST(Report, NothingIsFinerThanATenthOfAPsi) {
  Line metric = row(4);
  metric.outlet->rated = 180 * kPa;
  metric.outlet->minimum = 123 * kPa;
  metric.outlet->maximum = 341 * kPa;
  for (const double supply : {10.0, 20.0, 26.0, 40.0, 70.0}) {
    const Layout in_psi = one_row(supply * psi);
    const Layout in_kpa(Supply{supply * psi}, {metric}, Water{}, us_site);
    for (const std::string& text :
         {told(in_psi), told(in_kpa), told_with_faults(in_psi.with_fault(head_off("row 1", 4)))}) {
      EXPECT_THAT(matches(unbroken(text), "[0-9]+\\.[0-9]{2,} psi"), IsEmpty());
      EXPECT_THAT(outlet_rows(text), Each(Not(testing::ContainsRegex("\\.[0-9][0-9]"))));
    }
  }
}

TEST(Report, NothingIsFinerThanAKilopascal) {
  for (const double supply : {10.0, 20.0, 26.0, 40.0, 70.0}) {
    const std::string text = told(one_row(supply * psi), {UnitSystem::si});
    EXPECT_THAT(matches(unbroken(text), "[0-9]+\\.[0-9]+ kPa"), IsEmpty());
    EXPECT_THAT(outlet_rows(text), Each(Not(testing::ContainsRegex("\\.[0-9][0-9]"))));
  }
}

TEST(Report, HasNoNumbersThatAreNone) {
  for (const double supply : {0.0, 0.5, 40.0, 1000.0})
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::si}) {
      const Layout layout = one_row(supply * psi, 3, 20 * ft).with_fault(capped("row 1", 2));
      EXPECT_THAT(matches(told_with_faults(layout, {units}), "\\b(nan|inf|infinity)\\b"),
                  IsEmpty());
    }
}

TEST(Report, IsInUSUnitsOrInMetricOnes) {
  const Layout layout = one_row(40 * psi, 4);
  const std::string us = told(layout);  // the units of the site
  EXPECT_THAT(
      us,
      AllOf(HasSubstr(" psi"), HasSubstr("gal/min"), HasSubstr("5 gal in"), HasSubstr("at ft")));
  EXPECT_THAT(
      us, AllOf(HasSubstr("Supply: held at 40.0 psi"), HasSubstr("rated 3.52 gal/min at 25 psi")));
  EXPECT_EQ(us, told(layout, {UnitSystem::us}));
  EXPECT_THAT(matches(us, "kPa|L/min|L/h|m/s| m\\b"), IsEmpty());

  const std::string metric = told(layout, {UnitSystem::si});
  EXPECT_THAT(
      metric,
      AllOf(HasSubstr(" kPa"), HasSubstr("L/min"), HasSubstr("20 L in"), HasSubstr("at m")));
  EXPECT_THAT(metric, HasSubstr("Supply: held at 276 kPa"));
  EXPECT_THAT(matches(metric, "psi|gal|\\bft\\b"), IsEmpty());

  const Layout without_units(Supply{40 * psi}, {row(4)});
  EXPECT_THAT(told(without_units), HasSubstr("kPa"));
}

TEST(Report, EmittersAreToldByTheHour) {
  Line drip = row(4);
  drip.outlet = Outlet{.name = "emitter", .flow = 0.5 * gph, .at = 20 * psi};
  const Layout layout(Supply{35 * psi}, {drip}, Water{}, us_site);
  EXPECT_THAT(told(layout), HasSubstr("rated 0.5 gal/h at 20 psi"));
  EXPECT_THAT(told(layout, {UnitSystem::si}), HasSubstr("rated 1.89 L/h"));
}

TEST(Report, TheNumbersAreThoseOfTheSolution) {
  const Solution solution = solve(one_row(40 * psi, 2));
  const std::vector<std::string> rows = outlet_rows(report(solution));
  ASSERT_THAT(rows, SizeIs(2));
  const LineSolution& line = solution.line("row 1");
  for (std::size_t i = 0; i < 2; ++i) {
    const std::vector<std::string> numbers =
        matches(rows[i], "[0-9.]+");  // number, ft, psi, %, gal/min, s
    ASSERT_THAT(numbers, SizeIs(6)) << rows[i];
    EXPECT_EQ(numbers[0], std::to_string(i + 1));
    EXPECT_NEAR(std::stod(numbers[1]), line.distance[i] / ft, 0.05);
    EXPECT_NEAR(std::stod(numbers[2]), line.pressure[i] / psi, 0.05);
    EXPECT_NEAR(std::stod(numbers[3]), 100 * (line.flow[i] / (3.52 * gpm)), 0.5);
    EXPECT_NEAR(std::stod(numbers[4]), line.flow[i] / gpm, 0.05);
    EXPECT_NEAR(std::stod(numbers[5]), 300 / (line.flow[i] / gpm), 0.5);  // 5 gal
  }
}

// ---- faults

TEST(Report, TellsWhatAFaultDoesToTheRest) {
  const Layout before = one_row(33 * psi);
  const Layout after = before.with_fault(riser_sheared("row 1", 7));
  const std::string text = unbroken(told_with_faults(after));
  EXPECT_THAT(
      text,
      HasSubstr("The fault row 1, outlet 7: riser sheared, stub open (0.5 ft high, bore 0.81 in"));
  EXPECT_THAT(text, HasSubstr("and what it does"));
  const Comparison change = compare(solve(before), solve(after));
  ASSERT_THAT(change.newly_below_rated, SizeIs(testing::Gt(1u)));
  ASSERT_THAT(change.newly_below_minimum, SizeIs(testing::Gt(1u)));
  EXPECT_THAT(text,
              HasSubstr(std::to_string(change.newly_below_rated.size()) +
                        " more are under the rated pressure, " +
                        std::to_string(change.newly_below_minimum.size()) +
                        " more are under the lowest at which they work"));
  EXPECT_THAT(text, HasSubstr("no more are dry"));
  EXPECT_THAT(text, HasSubstr("gal/min escapes; the other outlets get"));
  EXPECT_THAT(text, HasSubstr("Its pressure was taken as held; a real pump would fall"));
  EXPECT_THAT(text, HasSubstr(" before "));
  EXPECT_THAT(text, HasSubstr("row 1, outlet 7: the height of the break is an estimate"));
  EXPECT_THAT(text, HasSubstr("row 1, outlet 7: the loss coefficient of the break is an estimate"));
  EXPECT_THAT(told(before), Not(HasSubstr("The fault")));
}

TEST(Report, DoesNotBlameTheFaultForWhatFailedBefore) {
  const Layout weak = one_row(26 * psi);  // all ten are below rated without any fault
  EXPECT_THAT(unbroken(told_with_faults(weak.with_fault(capped("row 1", 10)))),
              HasSubstr("no more are under the rated pressure"));
}

TEST(Report, TellsOfEachOfSeveralFaults) {
  const std::string text = unbroken(told_with_faults(one_row(40 * psi).with_faults(
      {clogged("row 1", 1, 0.6), worn("row 1", 2, 0.25), capped("row 1", 3)})));
  EXPECT_THAT(text,
              AllOf(HasSubstr("row 1, outlet 1: clogged, 60 % of its flow lost."),
                    HasSubstr("row 1, outlet 2: worn, 25 % more flow."),
                    HasSubstr("row 1, outlet 3: capped.")));
}

TEST(Report, RefusesToCompareTwoLayouts) {
  EXPECT_THROW(report(solve(one_row(40 * psi, 3)), solve(one_row(40 * psi, 4))), InvalidInput);
}

// ---- the supply

/// The number in the column "now" of a row of the supply's table.
double in_supply_table(const std::string& text, const std::string& label) {
  for (const std::string& row : rows_of(text))
    if (row.find("  " + label) == 0) return std::stod(row.substr(44));
  ADD_FAILURE() << "no row " << label;
  return 0;
}

TEST(Report, TellsWhatThePumpDoes) {
  const Solution solution = solve(pumped_farm().watering({"low"}));
  const std::string text = report(solution);
  const OperatingPoint& point = solution.supply();
  const PumpDuty& duty = point.pumps.at(0);
  constexpr double printed = 0.051;  // half of the last digit
  EXPECT_THAT(unbroken(text), HasSubstr("Supply: a pump at 2300 rpm, gives "));
  EXPECT_NEAR(in_supply_table(text, "pump's flow, gal/min"), duty.flow / gpm, printed);
  EXPECT_NEAR(in_supply_table(text, "pump's head, ft"), duty.head / ft, printed);
  EXPECT_EQ(in_supply_table(text, "pump's speed, rpm"), 2300);
  EXPECT_NEAR(
      in_supply_table(text, "pump's power at the shaft, hp"), *duty.shaft_power / hp, printed);
  EXPECT_EQ(in_supply_table(text, "pump's efficiency, %"), 60);
  EXPECT_NEAR(
      in_supply_table(text, "net positive suction head, ft"), *point.npsh_available / ft, printed);
  EXPECT_NEAR(
      in_supply_table(text, "  that the pump needs, ft"), *duty.npsh_required / ft, printed);
  EXPECT_NEAR(in_supply_table(text, "  margin, ft"),
              (*point.npsh_available - *duty.npsh_required) / ft,
              2 * printed);  // of two printed figures
  EXPECT_NEAR(
      in_supply_table(text, "pressure at the gauge, psi"), *point.gauge_reading / psi, printed);
  EXPECT_NEAR(
      in_supply_table(text, "pressure lost in the filter, psi"), point.filter_loss / psi, printed);
  EXPECT_NEAR(in_supply_table(text, "pressure at the start of the lines, psi"),
              point.pressure / psi,
              printed);
  // 20 and 130 gal/min at 2600 rpm, by the affinity laws
  EXPECT_THAT(text, HasSubstr("   usable 17.7 to 115.0\n"));
}

TEST(Report, NamesTheOtherSources) {
  EXPECT_THAT(unbroken(told(pumped_farm({.tank = Tank{.level = 60 * ft}}))),
              HasSubstr("Supply: a tank, its water 60.0 ft above its outlet, gives "));
  EXPECT_THAT(
      unbroken(told(pumped_farm({.hydrant = Hydrant{60 * psi, 45 * psi, 100 * gpm}}))),
      HasSubstr("Supply: a hydrant (60 psi at rest, 45 psi while 100 gal/min run), gives "));
  Supply two = sample_pump();
  two.second_pump = two.pump;
  EXPECT_THAT(unbroken(told(pumped_farm(two))),
              AllOf(HasSubstr("Supply: two pumps in parallel, gives "),
                    HasSubstr("first pump's flow, gal/min"),
                    HasSubstr("second pump's flow, gal/min")));
}

TEST(Report, AHeldPressureIsThatBeforeTheFilter) {
  const Layout layout =
      pumped_farm({.pressure = 50 * psi, .filter = Filter{.loss = 3 * psi, .at = 80 * gpm}});
  EXPECT_THAT(told(layout), HasSubstr("Supply: held at 50.0 psi, "));
}

TEST(Report, SaysOfEachLimitThatItIsPassed) {
  struct Case {
    std::function<void(Supply&)> change;
    const char* sentence;
  };
  for (const Case& it : std::vector<Case>{
           {[](Supply& s) { s.pump->least_flow = 100 * gpm; },
            "less than its least usable flow of 88.5 gal/min: it heats the water; open another set "
            "or a bypass."},
           {[](Supply& s) { s.pump->most_flow = 40 * gpm; },
            "more than its largest usable flow of 35.4 gal/min"},
           {[](Supply& s) { s.suction->lift = 25 * ft; }, "The pump cavitates: it needs a net"},
           {[](Supply& s) { s.pump->power = 0.5 * hp; }, "more than the 0.5 hp that its engine"},
           {[](Supply& s) { s.gauge->range = 30 * psi; }, "but it ends at 30 psi."}}) {
    Supply supply = sample_pump();
    EXPECT_THAT(unbroken(told(pumped_farm(supply).watering({"low"}))), Not(HasSubstr(it.sentence)));
    it.change(supply);
    EXPECT_THAT(unbroken(told(pumped_farm(supply).watering({"low"}))), HasSubstr(it.sentence));
  }
}

TEST(Report, SaysOnceThatEverythingIsDry) {
  Supply weak = sample_pump();
  weak.pump->points = {{0 * gpm, 8 * ft}, {130 * gpm, 4 * ft}};
  // 8 ft (2300 / 2600)^2, by the affinity laws
  const std::string text = unbroken(told(pumped_farm(weak).watering({"low"})));
  EXPECT_THAT(text,
              AllOf(HasSubstr("* Everything is dry: the pump's head at rest, 6.3 ft, does not lift "
                              "water to any outlet."),
                    Not(HasSubstr("are dry")),
                    Not(HasSubstr("least usable flow"))));
  EXPECT_THAT(unbroken(told(pumped_farm({.tank = Tank{.level = 1 * ft}}))),
              HasSubstr("the tank's level, 1.0 ft, does not lift water"));
}

TEST(Report, SaysThatEverythingIsShut) {
  Line shut = sample_main();
  shut.valve = Valve{.opening = ValveOpening::shut};
  Line fed = row(3);
  fed.fed_by = "main";
  const std::string text = told(Layout(sample_pump(), {shut, fed}, {}, us_site));
  EXPECT_THAT(text, StartsWith("* Everything is shut: no outlet is open."));
  EXPECT_THAT(unbroken(text), HasSubstr("The pump runs against shut valves"));
  EXPECT_THAT(text, Not(HasSubstr("Along the pipes")));
}

TEST(Report, SaysHowTheGaugeMovesWhenSomethingBreaks) {
  const Layout sound = pumped_farm().watering({"low"});
  const Layout broken = sound.with_fault(riser_sheared("row 2", 7));
  const std::string text = unbroken(told_with_faults(broken));
  EXPECT_THAT(text,
              testing::ContainsRegex("its pressure fell from [0-9.]+ psi to [0-9.]+ psi, the gauge "
                                     "fell from [0-9.]+ psi to [0-9.]+ psi\\."));
  EXPECT_THAT(text, Not(HasSubstr("taken as held")));
  EXPECT_THAT(text, HasSubstr("now before"));
}

TEST(Report, SaysWhichValveWasLeftOpen) {
  const Layout layout = pumped_farm().watering({"low"}).with_fault(valve_left_open("row 3"));
  const std::string text = unbroken(told_with_faults(layout));
  EXPECT_THAT(text, HasSubstr("row 3, which should be shut, takes "));
  EXPECT_THAT(text, HasSubstr("row 3: 10 outlets"));
  EXPECT_THAT(text, HasSubstr("Shut: row 4."));
}

TEST(Report, NamesLinesThatAreShutInOneLine) {
  const std::string text = told(pumped_farm().watering({"low"}));
  EXPECT_THAT(text, StartsWith("Set that runs: low\n\n* Every one of the 20 open outlets "));
  EXPECT_THAT(text, HasSubstr("\nShut: row 3, row 4.\n"));
  EXPECT_THAT(matches(text, "row 3"), SizeIs(1));
  EXPECT_THAT(told(pumped_farm()), StartsWith("No set was chosen: "));
}

TEST(Report, TellsWhatARegulatorDoes) {
  Line held = row(3);
  held.regulator = 30 * psi;
  const auto at = [&](const Pressure& supply) {
    return Layout(Supply{supply}, {held}, Water{}, us_site);
  };
  const Pressure drop = solve(at(50 * psi)).lines()[0].regulator->drop;
  EXPECT_THAT(told(at(50 * psi)),
              HasSubstr("row 1  holds 30 psi, takes " + one_decimal(drop / psi) + " psi"));
  EXPECT_THAT(told(at(20 * psi)), HasSubstr("row 1  open: less comes than the 30 psi"));
  EXPECT_THAT(told_with_faults(at(50 * psi).with_fault(regulator_stuck_open("row 1"))),
              HasSubstr("row 1  STUCK OPEN, does not hold its 30 psi"));
  EXPECT_THAT(unbroken(told_with_faults(at(50 * psi).with_fault(regulator_stuck_shut("row 1")))),
              HasSubstr("row 1: outlets 1 to 3 are cut off from the water"));
}

TEST(Report, ThePressureBudgetAddsUp) {
  const Solution solution = solve(pumped_farm().watering({"low"}));
  const PressureBudget budget = pressure_budget(solution);
  const std::vector<std::string> rows = rows_of(report(solution));
  const auto title = std::ranges::find_if(
      rows, [](const std::string& row) { return row.find("Where the pressure goes") == 0; });
  auto row = std::ranges::find_if(title, rows.end(), [](const std::string& it) {
    return it.find("given") != std::string::npos;
  });
  ASSERT_NE(row, rows.end());
  constexpr double printed = 0.051;  // half of the last digit
  double left = 0;
  for (const PressureBudgetEntry& entry : budget.entries) {
    ++row;
    ASSERT_NE(row, rows.end());
    EXPECT_THAT(*row, HasSubstr(entry.line.empty() ? entry.part : entry.line));
    const auto column = [&](std::size_t i) {  // of 9, after a name of 18 and blanks
      const std::string cell = row->substr(18 + 11 * i, 11);
      return cell.find_first_not_of(' ') == std::string::npos ? 0 : std::stod(cell);
    };
    left += column(0) - column(1) - column(2) - column(3);
    EXPECT_NEAR(column(4), entry.left / psi, printed);
    EXPECT_NEAR(left, column(4), 4 * printed);
    left = column(4);
  }
  EXPECT_NEAR(left, budget.left / psi, printed);
}

TEST(Report, ListsWhatWasAssumedOfTheSupply) {
  Supply sparse = sample_pump();
  sparse.pump->speed.reset();
  sparse.pump->least_flow.reset();
  sparse.pump->most_flow.reset();
  sparse.pump->efficiency.reset();
  sparse.pump->top_speed.reset();
  sparse.pump->npsh_required.clear();
  sparse.suction.reset();
  Layout layout = pumped_farm(sparse);
  Line with_valve = layout.line("row 1");
  with_valve.valve = Valve{.kind = ValveKind::gate, .opening = ValveOpening::half_closed};
  const std::string text = unbroken(told(layout.with_line(with_valve)));
  for (const char* assumption :
       {"the pump turns at the speed of its curve",
        "the pump's engine keeps its speed under load (droop 0)",
        "its usable range is not known",
        "its top speed is not known",
        "the suction head that it needs is not known",
        "the water stands at the pump's height and comes to it without loss",
        "the gauge sits at the supply's height",
        "the gauge sits before the filter",
        // the table in valve.hpp
        "row 1: its gate valve, half closed, has a loss coefficient of 2.1, looked up"})
    EXPECT_THAT(text, HasSubstr(assumption));
}

// ---- setting the supply

TEST(SettingReport, SaysTheSpeedAndTheGauge) {
  const Layout layout = pumped_farm().watering({"low"});
  const Setting setting = set_for_gauge(layout, 38 * psi);
  const std::string text = unbroken(setting_report(setting));
  EXPECT_THAT(text,
              AllOf(StartsWith("With the engine at "),
                    HasSubstr(" rpm, the gauge reads 38.0 psi and the supply gives "),
                    HasSubstr("the weakest outlet, 10 of row 2, has ")));
  EXPECT_THAT(unbroken(setting_report(set_for_gauge(layout, 90 * psi))),
              AllOf(StartsWith("NOT REACHED. With the engine at 2600 rpm, "),
                    HasSubstr("What stands in the way: the engine's top speed.")));
  EXPECT_THAT(
      unbroken(setting_report(set_for_gauge(pumped_farm({.pressure = 20 * psi}), 40 * psi))),
      StartsWith("With a pressure of 40.0 psi held, the supply's pressure is 40.0 psi"));
}

TEST(ThrottlingSentences, SayWhatIsCuredAndWhatIsNot) {
  const Layout sound = pumped_farm().watering({"low"});
  const Throttling throttling = throttle_up(sound, {riser_sheared("row 2", 7)});
  const std::vector<std::string> sentences = throttling_sentences(throttling);
  ASSERT_THAT(sentences, SizeIs(3));
  EXPECT_THAT(sentences[0],
              testing::MatchesRegex("At unchanged speed the gauge reads [0-9.]+ psi; when all was "
                                    "sound it was [0-9.]+ psi\\."));
  EXPECT_THAT(sentences[1], StartsWith("To bring that back takes the engine at "));
  const std::size_t fell = throttling.at_unchanged_speed.newly_below_minimum.size();
  const std::size_t still = throttling.after_throttling_up.newly_below_minimum.size();
  ASSERT_GT(fell, still);
  ASSERT_GT(still, 0u);
  EXPECT_THAT(
      sentences[2],
      AllOf(StartsWith("Throttling up cures " + std::to_string(fell - still) + " of the " +
                       std::to_string(fell) + " that fell under the pressure at which they"),
            HasSubstr("; not cured: row 2, outlets ")));
  const std::string text =
      unbroken(report(throttling.sound, throttling.broken, {.throttling = throttling}));
  for (const std::string& sentence : sentences) EXPECT_THAT(text, HasSubstr("- " + sentence));
}

// ---- how much

TEST(Report, OfALongLineIsShort) {
  Line tape = row(100000);
  tape.spacing = 0.5 * inch;
  tape.outlet->flow = 0.001 * gph;
  const std::string text = told(Layout(Supply{40 * psi}, {tape}, Water{}, us_site));
  const auto rows = outlet_rows(text);
  EXPECT_THAT(rows, SizeIs(AllOf(testing::Ge(6u), testing::Le(60u))));
  EXPECT_THAT(rows.front(), StartsWith("       1 "));
  EXPECT_THAT(rows.back(), StartsWith("  100000 "));
  EXPECT_THAT(text, HasSubstr("..."));
  EXPECT_LT(text.size(), 10000u);
}

TEST(Report, OfALongLineShowsWhereSomethingChanges) {
  Line tape = row(1000);
  tape.spacing = 0.5 * inch;
  const Layout layout(Supply{40 * psi}, {tape}, Water{}, us_site);
  const auto rows = outlet_rows(told_with_faults(layout.with_fault(capped("row 1", 500))));
  EXPECT_THAT(rows, testing::Contains(AllOf(StartsWith("     500 "), HasSubstr("capped"))));
  EXPECT_THAT(rows, SizeIs(testing::Le(60u)));
}

TEST(Report, OfAShortLineShowsAll) {
  for (const int count : {1, 7, 60})
    EXPECT_THAT(outlet_rows(told(one_row(60 * psi, count))),
                SizeIs(static_cast<std::size_t>(count)));
}

TEST(Report, FitsAScreen) {
  constexpr std::size_t columns = 100;
  const Layout layout =
      one_row(33 * psi).with_faults({riser_sheared("row 1", 7), capped("row 1", 1)});
  const Layout farm = pumped_farm().watering({"low"}).with_fault(riser_sheared("row 2", 7));
  for (const std::string& text : {told_with_faults(layout), told_with_faults(farm)})
    for (const std::string& row : rows_of(text)) {
      EXPECT_LE(row.size(), columns) << row;
      EXPECT_FALSE(row.ends_with(' ')) << row;
    }
}

// ---- what it rests on

TEST(Report, ListsWhatWasAssumed) {
  Line sparse = row(4);
  sparse.ground_rise = std::nullopt;
  sparse.riser = {.height = 4 * ft};
  sparse.outlet->exponent = std::nullopt;
  sparse.outlet->rated = std::nullopt;
  sparse.outlet->minimum = std::nullopt;
  sparse.outlet->maximum = std::nullopt;
  const std::string text =
      unbroken(told(Layout(Supply{40 * psi}, {sparse}, Water{}, Site{.units = UnitSystem::us})));
  for (const char* assumption : {"Assumed, because it was not given",
                                 "the supply's elevation is 0",
                                 "the site lies at sea level",
                                 "the water has 68 degF",
                                 "row 1: the ground is level",
                                 "row 1: nothing is lost in fittings at the inlet",
                                 "row 1: the first outlet stands one spacing from the inlet",
                                 "row 1: nothing is lost in the line's fittings at the outlets",
                                 "row 1: the outlets' flow exponent is 0.5",
                                 "row 1: the outlets are judged by the pressure of their rating",
                                 "row 1: the risers lift the water without loss"})
    EXPECT_THAT(text, HasSubstr(assumption));
}

TEST(Report, ListsNoAssumptionWhenAllIsGiven) {
  Line full = row(4);
  full.first_at = 18 * ft;
  full.outlet->exponent = 0.5;
  full.loss_coefficient = 0.5;
  full.outlet_loss_coefficient = 0.3;
  full.riser.loss_coefficient = 1;
  const Layout layout(Supply{.pressure = 40 * psi, .elevation = 0 * ft},
                      {full},
                      Water{.temperature = 60 * degF},
                      us_site);
  EXPECT_THAT(told(layout), Not(HasSubstr("Assumed")));
  EXPECT_THAT(told_with_faults(layout.with_fault(riser_sheared("row 1", 1, 0.5 * ft, 1))),
              Not(HasSubstr("Assumed")));
}

TEST(Report, AlwaysHasTheCautions) {
  const Layout layout = one_row(40 * psi);
  for (const std::string& text :
       {unbroken(told(layout)),
        unbroken(told(layout, {UnitSystem::si})),
        unbroken(told_with_faults(layout.with_fault(capped("row 1", 1))))})
    for (const char* caution : {"estimate of steady flow, not a design certificate",
                                "verify it in the field",
                                "Local codes and licensed practice decide",
                                "release the pressure before touching an outlet or a riser",
                                "keep clear of the engine and its shafts",
                                "open and close valves slowly",
                                "backflow protection",
                                "no chemicals into the water without following the local rules"})
      EXPECT_THAT(text, HasSubstr(caution));
}

TEST(Report, SaysHowWellTheEquationsAreMet) {
  EXPECT_THAT(unbroken(told(one_row(40 * psi))),
              testing::ContainsRegex("Solved in [0-9]+ steps?.*mass .*energy .*outlets "));
}

TEST(Report, SaysFirstThatWhatWasNotSolvedIsNoAnswer) {
  const Layout layout = one_row(40 * psi);
  try {
    solve(layout, {.newton_steps = 0});
    FAIL() << "nothing can be solved in no steps";
  } catch (const NotSolved& error) {
    const Solution& unfinished = error.unfinished();
    for (const std::string& text : {report(unfinished),
                                    report(unfinished, solve(layout)),
                                    report(solve(layout), unfinished)}) {
      EXPECT_THAT(text, HasSubstr("NOT SOLVED: no figure below is an answer.\n\n* "));
      EXPECT_LT(text.find("NOT SOLVED"), text.find("outlet"));
    }
    EXPECT_THAT(report(unfinished), HasSubstr("NOT SOLVED in 0 steps"));
    EXPECT_THAT(told(layout), Not(HasSubstr("NOT SOLVED")));
  }
}

}  // namespace
}  // namespace hydro
