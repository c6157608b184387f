// loop_report_test.cpp: where the water of a line comes from, in words, and what else reports, JSON
// and drawings say of lines that join others and of several supplies. The flows of most of them
// are written by hand, so that what is said can be told without a solver.
#include "hydro/answers/set_gauge.hpp"
#include "hydro/answers/sets_together.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/text/csv.hpp"
#include "hydro/text/drawing.hpp"
#include "hydro/text/json.hpp"
#include "hydro/text/pocket_sheet.hpp"
#include "hydro/text/report.hpp"
#include "hydro/text/sets_report.hpp"
#include "hydro/text/setting_report.hpp"
#include "hydro/text/supply_drawing.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <regex>
#include <string>
#include <utility>
#include <vector>

#include "one_decimal.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace hydro {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// What runs in a line, in gal/min.
struct Flows {
  double inflow = 0;
  std::vector<double> outlets = {};
  double end_flow = 0;
  std::optional<CheckValveState> check_valve = {};
  std::optional<RegulatorState> regulator = {};
  std::vector<Opening> openings = {};
};

LineSolution line_with(const Layout& layout, std::size_t index, const Flows& flows) {
  const Line& line = layout.lines()[index];
  const auto count = static_cast<std::size_t>(line.outlet_count());
  std::vector<double> distance(count), flow(count), velocity(count);
  double here = flows.inflow;
  for (std::size_t i = 0; i < count; ++i) {
    distance[i] = si(line.place_of(static_cast<int>(i) + 1));
    flow[i] = i < flows.outlets.size() ? si(flows.outlets[i] * gpm) : 0;
    velocity[i] = here / 10;
    here -= i < flows.outlets.size() ? flows.outlets[i] : 0;
  }
  const bool has_water = !layout.is_cut_off(index);
  const std::vector<double> pressure(count, has_water ? si(30 * psi) : 0);
  const OutletState state = layout.is_shut(index) ? OutletState::closed
                            : has_water           ? OutletState::works
                                                  : OutletState::dry;
  LineSolution solved{.name = line.name,
                      .distance = Series<Length>(distance),
                      .pressure = Series<Pressure>(pressure),
                      .line_pressure = Series<Pressure>(pressure),
                      .flow = Series<Flow>(flow),
                      .velocity = Series<Velocity>(velocity),
                      .state = std::vector<OutletState>(count, state),
                      .inflow = flows.inflow * gpm,
                      .end_flow = flows.end_flow * gpm,
                      .inlet_velocity = flows.inflow / 10 * m_per_s,
                      .inlet_pressure = 43 * psi,
                      .end_pressure = 43 * psi,
                      .openings = flows.openings,
                      .shut = layout.is_shut(index),
                      .inlet_shut = layout.inlet_is_shut(index),
                      .check_valve = flows.check_valve};
  if (flows.regulator) solved.regulator = RegulatorSolution{*flows.regulator, 40 * psi, 0 * psi};
  return solved;
}

OperatingPoint point(const Supply& supply, double flow) {
  OperatingPoint found{.flow = flow * gpm, .pressure = 43 * psi, .source_pressure = 43 * psi};
  if (supply.pump) found.pumps.push_back({.flow = flow * gpm, .head = 99 * ft});
  return found;
}

Solution solution_with(const Layout& layout,
                       const std::map<std::string, Flows>& flows,
                       double supply = 50,
                       const std::vector<double>& further = {}) {
  std::vector<LineSolution> lines;
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    const auto found = flows.find(layout.lines()[i].name);
    lines.push_back(line_with(layout, i, found == flows.end() ? Flows{} : found->second));
  }
  std::vector<OperatingPoint> points;
  for (std::size_t i = 0; i < further.size(); ++i)
    points.push_back(point(layout.further_supplies()[i], further[i]));
  return Solution(layout,
                  properties(layout.water()),
                  std::move(lines),
                  point(layout.supply(), supply),
                  Residuals{},
                  {},
                  std::move(points));
}

std::string unbroken(const std::string& text) {
  return std::regex_replace(text, std::regex("\\s+"), " ");
}

int count_of(const std::string& text, const std::string& part) {
  int number = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
    ++number;
  return number;
}

Line plain(const std::string& name, const std::string& fed_by, const std::string& joins = "") {
  return {.name = name,
          .fed_by = fed_by,
          .joins = joins,
          .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
          .length = 60 * ft};
}

Line row(const std::string& name, int count = 4) {
  Line line = sample_row(name, count);
  line.fed_by = "main";
  return line;
}

Layout layout_of(std::vector<Line> lines, std::vector<Supply> further = {}) {
  return Layout(Supply{.pressure = 43 * psi},
                std::move(lines),
                Water{},
                Site{.altitude = 0 * ft, .units = UnitSystem::us},
                {},
                std::move(further));
}

/// A main, two rows of four and a pipe between their far ends.
Layout ring() {
  return layout_of(
      {plain("main", ""), row("row 1"), row("row 2"), plain("cross pipe", "row 1", "row 2")});
}

const Supply hill{.tank = Tank{.level = 4 * ft}, .elevation = 70 * ft, .name = "hill tank"};

// ---- where the water comes from

TEST(LoopReport, SaysWhereTheWatersOfARowFedFromBothEndsMeet) {
  const std::string text =
      unbroken(report(solution_with(ring(),
                                    {{"main", {35}},
                                     {"row 1", {30, {3, 3, 3, 3}}},
                                     {"row 2", {5, {3, 14, 3, 3}}},
                                     {"cross pipe", {.inflow = 18, .end_flow = 18}}})));
  EXPECT_THAT(
      text,
      HasSubstr("Where the water comes from - row 2: fed from both ends: 5.0 gal/min at its "
                "inlet, 18.0 gal/min from cross pipe; the waters meet at outlet 2. - cross "
                "pipe: 18.0 gal/min runs through it from row 1 into row 2."));
  EXPECT_THAT(text, Not(HasSubstr("- row 1:")));  // it has but one way
}

TEST(LoopReport, SaysThatWatersMeetBetweenTwoOutlets) {
  EXPECT_THAT(unbroken(report(solution_with(ring(),
                                            {{"row 1", {18, {3, 3, 3, 3}}},
                                             {"row 2", {6, {3, 3, 3, 3}}},
                                             {"cross pipe", {.inflow = 6, .end_flow = 6}}}))),
              HasSubstr("6.0 gal/min at its inlet, 6.0 gal/min from cross pipe; the waters meet "
                        "between outlets 2 and 3."));
}

TEST(LoopReport, TellsOfWaterThatRunsAgainstTheWayALineIsDescribed) {
  const std::string text =
      unbroken(report(solution_with(ring(),
                                    {{"main", {35}},
                                     {"row 1", {5, {3, 3, 3, 3}}},
                                     {"row 2", {19, {3, 3, 3, 3}}},
                                     {"cross pipe", {.inflow = -7, .end_flow = -7}}})));
  EXPECT_THAT(
      text,
      AllOf(HasSubstr("row 1: fed from both ends: 5.0 gal/min at its inlet, 7.0 gal/min from "
                      "cross pipe; the waters meet at outlet 2."),
            HasSubstr("row 2: all its water comes in at its inlet: 19.0 gal/min; 7.0 "
                      "gal/min goes on into cross pipe."),
            HasSubstr("cross pipe: 7.0 gal/min runs through it from row 2 into row 1."),
            HasSubstr("cross pipe 7.0 2.3"),
            HasSubstr("out of its inlet"),
            Not(HasSubstr("-7.0")),
            Not(HasSubstr("-2.3"))));
}

TEST(LoopReport, TellsOfARowThatGivesWaterBack) {
  EXPECT_THAT(
      unbroken(report(solution_with(ring(),
                                    {{"row 1", {25, {3, 3, 3, 3}}},
                                     {"row 2", {-1, {3, 3, 3, 3}}},
                                     {"cross pipe", {.inflow = 13, .end_flow = 13}}}))),
      HasSubstr("row 2: the water runs from its far end to its inlet: 13.0 gal/min from cross "
                "pipe; 1.0 gal/min goes out of its inlet into main."));
}

TEST(LoopReport, SaysThatWaterStandsStill) {
  EXPECT_THAT(
      unbroken(report(solution_with(ring(),
                                    {{"row 1", {12, {3, 3, 3, 3}}},
                                     {"row 2", {12, {3, 3, 3, 3}}},
                                     {"cross pipe", {.inflow = 1e-15, .end_flow = 1e-15}}}))),
      AllOf(HasSubstr("- row 2: all its water comes in at its inlet: 12.0 gal/min."),
            HasSubstr("- cross pipe: no water runs in it.")));
}

/// Where nothing passes the inlet of row 2, why.
TEST(LoopReport, SaysWhyNothingPassesAnInlet) {
  struct Case {
    std::string why;
    Line row_2;
    Flows flows;
  };
  Line shut = row("row 2");
  shut.valve = Valve{.opening = ValveOpening::shut};
  Line checked = row("row 2");
  checked.check_valve = true;
  Line regulated = row("row 2");
  regulated.regulator = 25 * psi;
  const std::vector<double> outlets{3, 3, 3, 3};
  const Case cases[] = {{"its valve is shut", shut, {.outlets = outlets}},
                        {"the pressure beyond it holds its check valve shut",
                         checked,
                         {.outlets = outlets, .check_valve = CheckValveState::shut}},
                        {"the pressure beyond it holds its regulator shut",
                         regulated,
                         {.outlets = outlets, .regulator = RegulatorState::shut}}};
  for (const Case& test : cases) {
    const Solution solution = solution_with(ring().with_line(test.row_2),
                                            {{"row 1", {24, outlets}},
                                             {"row 2", test.flows},
                                             {"cross pipe", {.inflow = 12, .end_flow = 12}}});
    EXPECT_THAT(unbroken(report(solution)),
                HasSubstr("- row 2: " + test.why +
                          "; its water comes from its far end: 12.0 gal/min from cross pipe."));
  }
  const Layout stuck = ring().with_line(regulated).with_fault(regulator_stuck_shut("row 2"));
  EXPECT_THAT(unbroken(report(solution_with(stuck,
                                            {{"row 1", {24, outlets}},
                                             {"row 2", {.outlets = outlets}},
                                             {"cross pipe", {.inflow = 12, .end_flow = 12}}}))),
              HasSubstr("- row 2: its regulator is stuck shut; its water comes from its far end"));
}

TEST(LoopReport, SaysThatTheSetsThatRunLeaveAnInletShut) {
  const Layout rows =
      Layout(ring().supply(),
             ring().lines(),
             Water{},
             ring().site(),
             {{.name = "one", .lines = {"row 1"}}, {.name = "two", .lines = {"row 2"}}})
          .watering({"one"});
  EXPECT_THAT(unbroken(report(solution_with(rows,
                                            {{"row 1", {24, {3, 3, 3, 3}}},
                                             {"row 2", {.outlets = {3, 3, 3, 3}}},
                                             {"cross pipe", {.inflow = 12, .end_flow = 12}}}))),
              HasSubstr("- row 2: the sets that run leave its inlet shut; its water comes from its "
                        "far end: 12.0 gal/min from cross pipe."));
}

TEST(LoopReport, SaysWhichWatersMeetAtPlacesAlongALine) {
  Line middle = plain("middle", "hill tank", "main");
  middle.joins_at = 20 * ft;
  Line at_outlet = plain("short", "hill tank", "row 1");
  at_outlet.joins_outlet = 2;
  const Layout layout = layout_of({plain("main", ""), row("row 1"), middle, at_outlet}, {hill});
  const std::string text =
      unbroken(report(solution_with(layout,
                                    {{"main", {-4}},
                                     {"row 1", {2, {3, 3, 3, 3}}},
                                     {"middle", {.inflow = 6, .end_flow = 6}},
                                     {"short", {.inflow = 10, .end_flow = 10}}},
                                    -4,
                                    {16})));
  EXPECT_THAT(
      text,
      AllOf(
          HasSubstr("- main: its water comes from other lines: 6.0 gal/min from middle at 20.0 ft; "
                    "4.0 gal/min goes out of its inlet into the first supply."),
          HasSubstr("- row 1: fed at more than one place: 2.0 gal/min at its inlet, 10.0 gal/min "
                    "from short at outlet 2; the waters meet at outlet 1."),
          HasSubstr("- middle: 6.0 gal/min runs through it from hill tank into main."),
          HasSubstr("Supply: held at 43.0 psi, takes in 4.0 gal/min."),
          HasSubstr("Supply hill tank: a tank, its water 4.0 ft above its outlet, gives 16.0 "
                    "gal/min.")));
}

TEST(LoopReport, TellsSmallFlowsByTheHour) {
  EXPECT_THAT(unbroken(report(solution_with(ring(),
                                            {{"row 1", {0.18, {0.03, 0.03, 0.03, 0.03}}},
                                             {"row 2", {0.06, {0.03, 0.03, 0.03, 0.03}}},
                                             {"cross pipe", {.inflow = 0.06, .end_flow = 0.06}}},
                                            0.24))),
              HasSubstr("- cross pipe: 3.6 gal/h runs through it from row 1 into row 2."));
}

TEST(LoopReport, WatersThatRunTheSameWayDoNotMeet) {
  Line at_outlet = plain("short", "hill tank", "row 1");
  at_outlet.joins_outlet = 2;
  const Layout layout = layout_of({plain("main", ""), row("row 1"), at_outlet}, {hill});
  EXPECT_THAT(
      unbroken(report(solution_with(
          layout,
          {{"main", {5}}, {"row 1", {5, {3, 3, 3, 3}}}, {"short", {.inflow = 7, .end_flow = 7}}},
          5,
          {7}))),
      HasSubstr("- row 1: fed at more than one place: 5.0 gal/min at its inlet, 7.0 gal/min "
                "from short at outlet 2. -"));
}

/// Solved: as much pressure and as much pipe at both ends.
TEST(LoopReport, OfARowThatIsAlikeFromBothEndsTheWatersMeetInTheMiddle) {
  for (const int count : {5, 6}) {
    Line line = row("row 1", count);
    line.fed_by = "";
    Line end = plain("end pipe", "other end", "row 1");
    end.length = line.spacing;
    const Layout layout =
        layout_of({line, end}, {{.pressure = 43 * psi, .elevation = 0 * ft, .name = "other end"}});
    const Solution solution = solve(layout);
    const std::string each = one_decimal(solution.inflow() / gpm / 2) + " gal/min";
    const std::string where = count == 5 ? "at outlet 3" : "between outlets 3 and 4";
    EXPECT_THAT(unbroken(report(solution)),
                HasSubstr("- row 1: fed from both ends: " + each + " at its inlet, " + each +
                          " from end pipe; the waters meet " + where + "."));
  }
}

// ---- where none comes

TEST(LoopReport, SaysToWhichLinesNoWaterComesAndWhy) {
  Line cross = plain("cross pipe", "row 1", "row 2");
  cross.check_valve = true;  // the other way
  Line row_1 = row("row 1");
  row_1.regulator = 25 * psi;
  const Layout layout = layout_of({plain("main", ""), row_1, row("row 2"), cross});
  const Layout cut = layout.with_fault(regulator_stuck_shut("row 1"));
  ASSERT_TRUE(cut.is_cut_off(cut.index_of("row 1")));
  const std::string text = unbroken(report(solution_with(cut, {{"row 2", {12, {3, 3, 3, 3}}}})));
  EXPECT_THAT(
      text,
      AllOf(HasSubstr("* row 1: outlets 1 to 4 are cut off from the water."),
            HasSubstr("- row 1: no water comes to it: its regulator is stuck shut; cross pipe "
                      "lets none back through its inlet.")));
}

TEST(LoopReport, SaysOfALineCutInARingThatBothPartsLeak) {
  const Layout cut = ring().with_fault(line_cut("row 2", 80 * ft));
  const auto opening = [](double flow) { return Opening{0, 80 * ft, 0 * psi, flow * gpm}; };
  const std::string both = unbroken(report(solution_with(
      cut,
      {{"row 1", {22, {3, 3, 3, 3}}},
       {"row 2", {.inflow = 10, .outlets = {1, 1, 1, 1}, .openings = {opening(8), opening(8)}}},
       {"cross pipe", {.inflow = 10, .end_flow = 10}}})));
  EXPECT_THAT(
      both,
      AllOf(HasSubstr("* row 2: line cut at 80.0 ft, 8.0 gal/min escapes from the part before "
                      "it and 8.0 gal/min from the part beyond, to which other lines bring "
                      "it."),
            HasSubstr("- row 2: fed from both ends: 10.0 gal/min at its inlet, 10.0 gal/min "
                      "from cross pipe."),
            Not(HasSubstr("cut off"))));
  EXPECT_THAT(unbroken(report(solution_with(
                  cut, {{"row 2", {.inflow = 8, .openings = {opening(8), opening(0.04)}}}}))),
              HasSubstr("8.0 gal/min escapes from the part before it."));
  Line shut = row("row 2");
  shut.valve = Valve{.opening = ValveOpening::shut};
  const Layout beyond = ring().with_line(shut).with_fault(line_cut("row 2", 80 * ft));
  Solution solution = solution_with(beyond,
                                    {{"row 1", {22, {3, 3, 3, 3}}},
                                     {"row 2", {.outlets = {0, 0, 1, 1}, .openings = {opening(8)}}},
                                     {"cross pipe", {.inflow = 10, .end_flow = 10}}});
  std::vector<LineSolution> lines = solution.lines();
  lines[2].state[0] = lines[2].state[1] = OutletState::dry;
  solution = Solution(beyond, solution.water(), lines, solution.supply(), solution.residuals(), {});
  EXPECT_THAT(unbroken(report(solution)),
              AllOf(HasSubstr("* row 2: outlets 1, 2 are cut off from the water."),
                    HasSubstr("* row 2: line cut at 80.0 ft, 8.0 gal/min escapes from the part "
                              "beyond, to which other lines bring it; no water is before it.")));
}

TEST(LoopReport, OfATreeSaysNothingOfThat) {
  const Layout tree = layout_of({plain("main", ""), row("row 1"), row("row 2")});
  EXPECT_THAT(report(solution_with(tree, {{"main", {24}}, {"row 1", {12, {3, 3, 3, 3}}}})),
              Not(HasSubstr("Where the water comes from")));
}

// ---- several supplies

TEST(LoopReport, TellsWhatEachSupplyDoes) {
  const Supply creek{.pump = Pump{.points = {{0 * gpm, 120 * ft}, {60 * gpm, 90 * ft}}},
                     .name = "creek"};
  const Layout layout = layout_of({plain("main", ""),
                                   plain("hill pipe", "hill tank", "main"),
                                   plain("creek pipe", "creek", "main"),
                                   row("row 1")},
                                  {hill, creek});
  Solution solution = solution_with(
      layout, {{"main", {20}}, {"hill pipe", {.inflow = -3, .end_flow = -3}}}, 20, {-3, 0});
  std::vector<OperatingPoint> further = solution.further_supplies();
  further[1].held_shut = true;
  solution = Solution(layout,
                      solution.water(),
                      solution.lines(),
                      solution.supply(),
                      solution.residuals(),
                      {},
                      further);
  const std::string text = unbroken(report(solution));
  EXPECT_THAT(
      text,
      AllOf(
          HasSubstr("Supply: held at 43.0 psi, gives 20.0 gal/min."),
          HasSubstr("Supply hill tank: a tank, its water 4.0 ft above its outlet, takes in 3.0 "
                    "gal/min."),
          HasSubstr("Supply creek: a pump, gives nothing: the other supplies hold its check valve "
                    "shut, 43.0 psi at rest."),
          HasSubstr("- hill pipe: 3.0 gal/min runs through it from main into hill tank."),
          HasSubstr("- hill tank: where other supplies push water back into it, it takes that in"),
          HasSubstr("- creek: the pump has a check valve: no water runs back into it")));
}

TEST(LoopReport, TellsWhatWasAssumedOfEachPumpOnce) {
  const Pump pump{.points = {{0 * gpm, 120 * ft}, {60 * gpm, 90 * ft}}};
  const Layout layout =
      layout_of({plain("main", ""), plain("creek pipe", "creek", "main"), row("row 1")},
                {{.pump = pump, .name = "creek"}})
          .with_supply({.pump = pump});
  const std::string text = unbroken(report(solution_with(layout, {}, 20, {5})));
  for (const std::string assumed :
       {"the pump may run at any flow",
        "the pump does not cavitate",
        "the water stands at the pump's height and comes to it without loss",
        "the pump has a check valve"}) {
    EXPECT_EQ(count_of(text, "- " + assumed), 1) << assumed;
    EXPECT_EQ(count_of(text, "- creek: " + assumed), 1) << assumed;
  }
}

TEST(LoopReport, TellsAFlowThatRoundsToNothingAsNothing) {
  const Layout layout =
      layout_of({plain("main", ""), plain("hill pipe", "hill tank", "main"), row("row 1")}, {hill});
  EXPECT_THAT(unbroken(report(solution_with(layout, {}, -1e-9, {0.04}))),
              AllOf(HasSubstr("Supply: held at 43.0 psi, gives nothing."),
                    HasSubstr("above its outlet, gives nothing.")));
}

TEST(LoopReport, TellsHowFastWaterIsWhereOthersBringIt) {
  Solution solution = solution_with(
      ring(), {{"row 2", {0, {3, 3, 3, 3}}}, {"cross pipe", {.inflow = 12, .end_flow = 12}}});
  std::vector<LineSolution> lines = solution.lines();
  lines[2].pipes = {{"", 0 * ft, 90 * ft, 3.2 * ft_per_s, 30 * psi, 31 * psi}};
  solution = Solution(
      solution.layout(), solution.water(), lines, solution.supply(), solution.residuals(), {});
  EXPECT_THAT(unbroken(report(solution)),
              HasSubstr("row 2 0.0 0.0 43.0 43.0 farther on up to 3.2 ft/s cross pipe"));
}

TEST(LoopReport, TellsThatTheColumnPartsWhereAllIsDryAndWaterRuns) {
  const Layout layout =
      layout_of({plain("main", ""), plain("hill pipe", "hill tank", "main"), row("row 1")}, {hill});
  const auto told = [&](const Velocity& velocity) {
    Solution solution = solution_with(layout, {}, -3, {3});
    std::vector<LineSolution> lines = solution.lines();
    lines[0].pipes = {{"", 0 * ft, 60 * ft, velocity, -15 * psi, 3 * psi}};
    lines[2].pipes = {{"", 0 * ft, 144 * ft, 0 * ft_per_s, 0 * psi, 1 * psi}};
    for (OutletState& state : lines[2].state) state = OutletState::dry;
    return unbroken(report(Solution(layout,
                                    solution.water(),
                                    lines,
                                    solution.supply(),
                                    solution.residuals(),
                                    {},
                                    solution.further_supplies())));
  };
  EXPECT_THAT(told(2 * ft_per_s),
              AllOf(HasSubstr("Everything is dry"),
                    HasSubstr("* main: its lowest pressure is -15.0 psi, below the atmosphere's; "
                              "the water column parts there")));
  EXPECT_THAT(told(0 * ft_per_s),
              AllOf(HasSubstr("Everything is dry"), Not(HasSubstr("its lowest pressure"))));
}

TEST(LoopReport, ComparesWhatEachSupplyDoes) {
  const Layout layout =
      layout_of({plain("main", ""), plain("hill pipe", "hill tank", "main"), row("row 1")}, {hill});
  const std::string text =
      unbroken(report(solution_with(layout, {}, 20, {-3}), solution_with(layout, {}, 25, {4})));
  EXPECT_THAT(
      text,
      AllOf(HasSubstr("- The first supply gives 25.0 gal/min; before, it gave 20.0 gal/min."),
            HasSubstr("- hill tank gives 4.0 gal/min; before, it took in 3.0 gal/min.")));
}

TEST(LoopReport, TellsThatTheFirstSupplyTakesWaterIn) {
  Supply high = hill;
  high.elevation = 200 * ft;
  const Layout open =
      layout_of({plain("main", ""), plain("hill pipe", "hill tank", "main"), row("row 1")}, {high});
  const Layout layout(open.supply(),
                      open.lines(),
                      open.water(),
                      open.site(),
                      {{.name = "A", .lines = {"row 1"}}},
                      open.further_supplies());
  const std::string sets = sets_report(layout, sets_together(layout));
  EXPECT_THAT(sets, testing::ContainsRegex(" in [0-9.]+  "));
  EXPECT_THAT(sets, HasSubstr("the first supply takes in "));
  EXPECT_THAT(pocket_sheets(layout).at(0), HasSubstr(" psi, takes in "));
  const Setting setting{true, std::nullopt, 43 * psi, {}, solution_with(open, {}, -3, {9})};
  EXPECT_THAT(unbroken(setting_report(setting)), HasSubstr("and the supply takes in 3.0 gal/min"));
}

TEST(LoopReport, NamesTheSupplyWhoseLimitIsPassed) {
  const Supply creek{
      .pump = Pump{.points = {{0 * gpm, 120 * ft}, {60 * gpm, 90 * ft}}, .most_flow = 50 * gpm},
      .name = "creek"};
  const Layout layout =
      layout_of({plain("main", ""), plain("creek pipe", "creek", "main"), row("row 1")}, {creek});
  Solution solution = solution_with(layout, {}, 20, {55});
  std::vector<OperatingPoint> further = solution.further_supplies();
  further[0].pumps[0].range = PumpRange::above_most_flow;
  further[0].pumps[0].most_flow = 50 * gpm;
  solution = Solution(layout,
                      solution.water(),
                      solution.lines(),
                      solution.supply(),
                      solution.residuals(),
                      {},
                      further);
  EXPECT_THAT(
      unbroken(report(solution)),
      HasSubstr("* creek: the pump gives 55.0 gal/min, more than its largest usable flow of "
                "50.0 gal/min: run fewer lines at once."));
}

// ---- fittings

TEST(LoopReport, ListsCheckValvesAndRegulators) {
  Line checked = row("row 2");
  checked.check_valve = true;
  Line regulated = row("row 1");
  regulated.regulator = 25 * psi;
  const Layout layout = ring().with_line(checked).with_line(regulated);
  EXPECT_THAT(
      unbroken(report(solution_with(layout, {{"row 1", {.regulator = RegulatorState::shut}}}))),
      HasSubstr("Regulators row 1 SHUT by the pressure beyond it, 40.0 psi; it is set to 25 psi"));
  EXPECT_THAT(
      unbroken(report(solution_with(layout, {{"row 2", {.check_valve = CheckValveState::shut}}}))),
      HasSubstr("Check valves row 2 SHUT by the pressure beyond it"));
  EXPECT_THAT(
      unbroken(report(solution_with(layout, {{"row 2", {.check_valve = CheckValveState::open}}}))),
      HasSubstr("Check valves row 2 open"));
}

// ---- for programs

TEST(LoopJson, HasWhatJoinsAndWhatTheSuppliesDo) {
  Line middle = plain("middle", "hill tank", "row 1");
  middle.joins_outlet = 2;
  middle.check_valve = true;
  const Layout layout = layout_of({plain("main", ""), row("row 1"), middle}, {hill});
  const Solution solution = solution_with(
      layout,
      {{"row 1", {-4, {3, 3, 3, 3}}},
       {"middle", {.inflow = 6, .end_flow = 6, .check_valve = CheckValveState::open}}},
      20,
      {6});
  const json read = json::parse(to_json(solution));
  const json& line = read["lines"][2];
  EXPECT_EQ(line["fed_by"], "hill tank");
  EXPECT_EQ(line["joins"], "row 1");
  EXPECT_EQ(line["joins_at"].get<double>(), si(layout.line("row 1").place_of(2)));
  EXPECT_EQ(line["end_flow"].get<double>(), si(6 * gpm));
  EXPECT_EQ(line["check_valve"], "open");
  EXPECT_EQ(line["inlet_shut"], false);
  EXPECT_EQ(read["lines"][1]["joins"], "");
  EXPECT_TRUE(read["lines"][1]["joins_at"].is_null());
  EXPECT_TRUE(read["lines"][1]["check_valve"].is_null());
  EXPECT_EQ(read["lines"][1]["inflow"].get<double>(), si(-4 * gpm));
  ASSERT_EQ(read["further_supplies"].size(), 1u);
  const json& supply = read["further_supplies"][0];
  EXPECT_EQ(supply["name"], "hill tank");
  EXPECT_EQ(supply["source"], "tank");
  EXPECT_EQ(supply["held_shut"], false);
  EXPECT_EQ(supply["inflow"].get<double>(), si(6 * gpm));
  EXPECT_EQ(supply["elevation"].get<double>(), si(70 * ft));
  EXPECT_EQ(read["supply"]["name"], "");
  EXPECT_EQ(read["supply"]["inflow"].get<double>(), si(20 * gpm));
  EXPECT_EQ(read["check"]["further_supply_limits"], json::array({json::array()}));
}

TEST(LoopJson, SaysWhichSupplyAFaultIsOf) {
  Supply creek{
      .pressure = 40 * psi, .filter = Filter{.loss = 1 * psi, .at = 20 * gpm}, .name = "creek"};
  const Layout layout =
      layout_of({plain("main", ""), plain("creek pipe", "creek", "main")}, {creek})
          .with_fault(filter_dirty(5 * psi, "creek"));
  const json read = json::parse(to_json(solution_with(layout, {}, 20, {5})));
  EXPECT_EQ(read["faults"][0]["supply"], "creek");
  EXPECT_EQ(read["faults"][0]["line"], "");
}

TEST(LoopCsv, HasVelocitiesBelow0WhereWaterRunsTowardsTheInlet) {
  const std::string table = to_csv(solution_with(ring(), {{"row 2", {-1, {3, 3, 3, 3}}}}));
  EXPECT_THAT(table, HasSubstr(",-0.1,works\r\n"));
}

// ---- drawings

TEST(LoopDrawing, ShowsWhichWayTheWaterRunsAndWhereWatersMeet) {
  const std::string picture =
      to_svg(solution_with(ring(),
                           {{"main", {35}},
                            {"row 1", {30, {3, 3, 3, 3}}},
                            {"row 2", {5, {3, 14, 3, 3}}},
                            {"cross pipe", {.inflow = 18, .end_flow = 18}}}));
  EXPECT_EQ(count_of(picture, "class=\"meet\""), 2);
  EXPECT_EQ(count_of(picture, ">waters meet<"), 1);
  EXPECT_GE(count_of(picture, "class=\"outward\""), 1);
  EXPECT_GE(count_of(picture, "class=\"inward\""), 1);
  EXPECT_THAT(picture, HasSubstr("Fed from both ends: 5.0 gal/min"));
  EXPECT_THAT(picture, HasSubstr("cross pipe: 18.0 gal/min runs through it"));
}

TEST(LoopDrawing, OfATreeHasNoArrows) {
  const Layout tree = layout_of({plain("main", ""), row("row 1")});
  const std::string picture =
      to_svg(solution_with(tree, {{"main", {12}}, {"row 1", {12, {3, 3, 3, 3}}}}));
  EXPECT_EQ(count_of(picture, "class=\"outward\""), 0);
  EXPECT_EQ(count_of(picture, ">water<"), 0);
}

TEST(LoopDrawing, TellsWhatEachSupplyDoes) {
  const Layout layout =
      layout_of({plain("main", ""), plain("hill pipe", "hill tank", "main"), row("row 1")}, {hill});
  const std::string picture =
      to_svg(solution_with(layout, {}, 20, {-3}), solution_with(layout, {}, 25, {4}));
  EXPECT_THAT(picture, HasSubstr("Supply: 43.0 psi, gives 25.0 gal/min instead of 20.0 gal/min."));
  EXPECT_THAT(picture,
              HasSubstr("Supply hill tank: 43.0 psi, gives 4.0 gal/min instead of taking in 3.0 "
                        "gal/min."));
}

TEST(LoopDrawing, TellsOfAPumpThatIsHeldShut) {
  const Supply creek{.pump = Pump{.points = {{0 * gpm, 120 * ft}, {60 * gpm, 90 * ft}}},
                     .name = "creek"};
  const Layout layout =
      layout_of({plain("main", ""), plain("creek pipe", "creek", "main"), row("row 1")}, {creek});
  const Solution before = solution_with(layout, {}, 20, {5});
  std::vector<OperatingPoint> further = before.further_supplies();
  further[0].flow = 0 * gpm;
  further[0].pressure = 60 * psi;
  further[0].held_shut = true;
  const Solution held(
      layout, before.water(), before.lines(), before.supply(), before.residuals(), {}, further);
  const std::string told =
      "Supply creek: gives nothing: the other supplies hold its check valve shut, 43.0 psi at rest";
  const auto words = [](const std::string& picture) {
    return unbroken(std::regex_replace(picture, std::regex("<[^>]*>"), " "));
  };
  EXPECT_THAT(words(to_svg(held)), HasSubstr(told + "."));
  EXPECT_THAT(words(to_svg(before, held)), HasSubstr(told + "; before, it gave 5.0 gal/min."));
}

}  // namespace
}  // namespace hydro
