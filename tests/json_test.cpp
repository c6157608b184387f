// json_test.cpp: what is written reads back, by nlohmann/json, as the solution bit for bit.
#include "hydro/text/json.hpp"

#include "hydro/answers/assumptions.hpp"
#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/answers/pressure_budget.hpp"
#include "hydro/answers/uniformity.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/solver/solve.hpp"

#include <limits>
#include <map>
#include <string>
#include <vector>

#include "random_layout.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace hydro {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

std::vector<std::uint64_t> bits_in(const json& numbers) {
  std::vector<std::uint64_t> patterns;
  for (const double number : numbers.get<std::vector<double>>()) patterns.push_back(bits(number));
  return patterns;
}

void expect_number(const json& read, double written) {
  EXPECT_EQ(bits(read.get<double>()), bits(written));
}

/// Everything but what is found and said of it.
void expect_is_solution(const json& read, const Solution& solution) {
  EXPECT_EQ(read["site"], solution.layout().site().name);
  expect_number(read["supply"]["pressure"], si(solution.supply_pressure()));
  expect_number(read["supply"]["inflow"], si(solution.inflow()));
  expect_number(read["water"]["density"], si(solution.water().density));
  expect_number(read["water"]["kinematic_viscosity"], si(solution.water().kinematic_viscosity));
  expect_number(read["water"]["vapour_pressure"], si(solution.water().vapour_pressure));
  ASSERT_THAT(read["lines"], SizeIs(solution.lines().size()));
  for (std::size_t l = 0; l < solution.lines().size(); ++l) {
    const json& line = read["lines"][l];
    const LineSolution& solved = solution.lines()[l];
    EXPECT_EQ(line["name"], solved.name);
    EXPECT_EQ(line["fed_by"], solution.layout().lines()[l].fed_by);
    expect_number(line["inflow"], si(solved.inflow));
    expect_number(line["inlet_velocity"], si(solved.inlet_velocity));
    expect_number(line["inlet_pressure"], si(solved.inlet_pressure));
    expect_number(line["end_pressure"], si(solved.end_pressure));
    EXPECT_EQ(bits_in(line["distance"]), bits(solved.distance));
    EXPECT_EQ(bits_in(line["pressure"]), bits(solved.pressure));
    EXPECT_EQ(bits_in(line["line_pressure"]), bits(solved.line_pressure));
    EXPECT_EQ(bits_in(line["flow"]), bits(solved.flow));
    EXPECT_EQ(bits_in(line["velocity"]), bits(solved.velocity));
    ASSERT_THAT(line["kind"], SizeIs(solved.state.size()));
    ASSERT_THAT(line["state"], SizeIs(solved.state.size()));
    for (std::size_t i = 0; i < solved.state.size(); ++i) {
      const Outlet& kind = solution.layout().outlet_at(l, static_cast<int>(i) + 1);
      const json& written = read["outlet_kinds"].at(line["kind"][i].get<std::size_t>());
      ASSERT_EQ(written["name"], kind.name);
      ASSERT_EQ(written["rated"], si(kind.rated_pressure()));
      ASSERT_EQ(written["rated_flow"],
                si(discharge(kind, kind.rated_pressure(), solution.water().density)));
    }
  }
  EXPECT_EQ(read["notes"], json(solution.notes()));
  EXPECT_EQ(read["residuals"],
            (json{{"mass", solution.residuals().mass},
                  {"energy", solution.residuals().energy},
                  {"outlet", solution.residuals().outlet},
                  {"steps", solution.residuals().steps},
                  {"last_resort", solution.residuals().last_resort}}));
}

TEST(Json, IsTheSolutionBitForBit) {
  const Solution solution = solve(with_all_states());
  const json read = json::parse(to_json(solution));
  EXPECT_EQ(read["format"], "hydro solution 1");
  expect_is_solution(read, solution);
  EXPECT_TRUE(read["supply"]["elevation"].is_null());
  EXPECT_EQ(read["assumptions"], json(assumptions(solution.layout(), UnitSystem::us)));
  EXPECT_TRUE(read["before"].is_null());
  EXPECT_TRUE(read["comparison"].is_null());
}

TEST(Json, IsAnySolutionBitForBit) {
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    SCOPED_TRACE(seed);
    const Solution solution = solve(random_layout(seed));
    expect_is_solution(json::parse(to_json(solution)), solution);
  }
}

/// A program that was written for one version must find in the next what it reads.
TEST(Json, HasTheMembersItAlwaysHad) {
  const json read = json::parse(to_json(solve(with_all_states())));
  const std::map<std::string, std::vector<std::string>> members{
      {"",
       {"format",
        "site",
        "supply",
        "water",
        "outlet_kinds",
        "lines",
        "faults",
        "check",
        "notes",
        "assumptions",
        "residuals",
        "before",
        "comparison"}},
      {"/supply", {"pressure", "elevation", "inflow"}},
      {"/water", {"density", "kinematic_viscosity", "vapour_pressure"}},
      {"/outlet_kinds/0", {"name", "rated", "minimum", "maximum", "rated_flow"}},
      {"/lines/0",
       {"name",
        "fed_by",
        "inflow",
        "inlet_velocity",
        "inlet_pressure",
        "end_pressure",
        "kind",
        "distance",
        "pressure",
        "line_pressure",
        "flow",
        "velocity",
        "state"}},
      {"/faults/0", {"line", "outlet", "kind", "description"}},
      {"/check",
       {"every_outlet_serves",
        "below_rated",
        "below_minimum",
        "above_maximum",
        "dry",
        "variations",
        "fast_water",
        "below_atmosphere",
        "over_rating"}},
      {"/uniformity/0",
       {"line",
        "outlet_name",
        "outlets",
        "mean",
        "least",
        "low_quarter",
        "christiansen",
        "distribution",
        "statistical"}},
      {"/residuals", {"mass", "energy", "outlet", "steps", "last_resort"}}};
  for (const auto& [place, names] : members)
    for (const std::string& name : names)
      EXPECT_TRUE(read.at(json::json_pointer(place)).contains(name)) << place << '/' << name;
}

TEST(Json, TellsWhatTheSupplyDoes) {
  const Solution solution = solve(pumped_farm().watering({"low"}));
  const OperatingPoint& point = solution.supply();
  const json read = json::parse(to_json(solution));
  const json& supply = read["supply"];
  EXPECT_EQ(supply["source"], "pump");
  expect_number(supply["source_pressure"], si(point.source_pressure));
  expect_number(supply["gauge_reading"], si(point.gauge_reading.value()));
  expect_number(supply["filter_loss"], si(point.filter_loss));
  expect_number(supply["suction_loss"], si(point.suction_loss));
  expect_number(supply["npsh_available"], si(point.npsh_available.value()));
  ASSERT_THAT(supply["pumps"], SizeIs(1));
  const json& pump = supply["pumps"][0];
  const PumpDuty& duty = point.pumps.at(0);
  EXPECT_EQ(pump["range"], "inside");
  expect_number(pump["flow"], si(duty.flow));
  expect_number(pump["head"], si(duty.head));
  expect_number(pump["speed"], 2300 / 60.0);
  expect_number(pump["least_flow"], si(duty.least_flow.value()));
  expect_number(pump["most_flow"], si(duty.most_flow.value()));
  expect_number(pump["water_power"], si(duty.water_power));
  expect_number(pump["efficiency"], 0.6);
  expect_number(pump["shaft_power"], si(duty.shaft_power.value()));
  expect_number(pump["npsh_required"], si(duty.npsh_required.value()));
  EXPECT_EQ(read["running_sets"], json::array({"low"}));
  EXPECT_EQ(read["sets"][1], (json{{"name", "high"}, {"lines", {"row 3", "row 4"}}}));
  EXPECT_EQ(read["lines"][1]["shut"], false);
  EXPECT_EQ(read["lines"][3]["shut"], true);
  EXPECT_EQ(read["lines"][3]["state"][0], "shut");
  EXPECT_TRUE(read["lines"][3]["regulator"].is_null());
}

TEST(Json, NamesEachSource) {
  const auto source_of = [](const Supply& supply) {
    return json::parse(to_json(solve(pumped_farm(supply))))["supply"];
  };
  EXPECT_EQ(source_of({.pressure = 40 * psi})["source"], "pressure");
  EXPECT_EQ(source_of({.tank = Tank{.level = 60 * ft}})["source"], "tank");
  EXPECT_EQ(source_of({.hydrant = Hydrant{60 * psi, 45 * psi, 100 * gpm}})["source"], "hydrant");
  EXPECT_EQ(source_of({.pressure = 40 * psi})["pumps"], json::array());
  EXPECT_TRUE(source_of({.pressure = 40 * psi})["gauge_reading"].is_null());
}

TEST(Json, TellsTheLimitsThatArePassed) {
  Supply supply = sample_pump();
  supply.pump->most_flow = 30 * gpm;
  supply.gauge->range = 5 * psi;
  const auto check_of = [](const Layout& layout) {
    return json::parse(to_json(solve(layout)))["check"];
  };
  const json passed = check_of(pumped_farm(supply).watering({"low"}));
  EXPECT_EQ(passed["supply_limits"], json::array({"most_flow", "gauge_range"}));
  EXPECT_EQ(passed["lifts_no_water"], false);
  EXPECT_EQ(passed["all_is_shut"], false);
  EXPECT_EQ(check_of(pumped_farm({.tank = Tank{.level = 1 * ft}}))["lifts_no_water"], true);
}

TEST(Json, TellsWhatARegulatorDoes) {
  Line row = sample_row("row 1", 3);
  row.regulator = 30 * psi;
  const Layout layout = sample_layout({row}, "", 50 * psi);
  const auto regulator_of = [](const Layout& one) {
    return json::parse(to_json(solve(one)))["lines"][0]["regulator"];
  };
  EXPECT_EQ(regulator_of(layout)["state"], "holding");
  expect_number(regulator_of(layout)["pressure"], si(solve(layout).lines()[0].regulator->pressure));
  expect_number(regulator_of(layout)["drop"], si(solve(layout).lines()[0].regulator->drop));
  EXPECT_EQ(regulator_of(sample_layout({row}, "", 20 * psi))["state"], "open");
  EXPECT_EQ(regulator_of(layout.with_fault(regulator_stuck_open("row 1")))["state"], "stuck_open");
  EXPECT_TRUE(regulator_of(layout.with_fault(regulator_stuck_shut("row 1"))).is_null());
}

TEST(Json, HasThePressureBudgetOfTheWeakestOutlet) {
  const Solution solution = solve(pumped_farm().watering({"low"}));
  const PressureBudget budget = pressure_budget(solution);
  const json read = json::parse(to_json(solution))["pressure_budget"];
  EXPECT_EQ(read["line"], budget.line);
  EXPECT_EQ(read["outlet"], budget.outlet);
  expect_number(read["left"], si(budget.left));
  expect_number(read["rated"], si(25 * psi));
  ASSERT_THAT(read["entries"], SizeIs(budget.entries.size()));
  for (std::size_t i = 0; i < budget.entries.size(); ++i) {
    const PressureBudgetEntry& entry = budget.entries[i];
    EXPECT_EQ(read["entries"][i],
              (json{{"part", entry.part},
                    {"line", entry.line},
                    {"gain", si(entry.gain)},
                    {"rise", si(entry.rise)},
                    {"loss", si(entry.loss)},
                    {"regulator", si(entry.regulator)},
                    {"left", si(entry.left)}}));
  }
  const Layout cut = sample_layout({sample_row("row 1", 2)}).with_fault(line_cut("row 1", 1 * ft));
  EXPECT_TRUE(json::parse(to_json(solve(cut)))["pressure_budget"].is_null());
}

TEST(Json, AFaultOfTheSupplyIsOfNoLine) {
  const Layout worn_pump = pumped_farm().with_fault(pump_worn(0.1));
  const json fault = json::parse(to_json(solve(worn_pump)))["faults"][0];
  EXPECT_EQ(fault["line"], "");
  EXPECT_TRUE(fault["outlet"].is_null());
  EXPECT_EQ(fault["kind"], "pump worn");
}

TEST(Json, HasEachKindOfOutletOnce) {
  Line other = sample_row("other", 3);
  other.outlet->minimum = std::nullopt;
  const Layout layout = sample_layout({sample_row("a", 2), other, sample_row("b", 1)});
  const json read = json::parse(to_json(solve(layout)));
  ASSERT_THAT(read["outlet_kinds"], SizeIs(2));
  EXPECT_EQ(read["outlet_kinds"][0]["minimum"], si(18 * psi));
  EXPECT_EQ(read["outlet_kinds"][0]["maximum"], si(50 * psi));
  EXPECT_TRUE(read["outlet_kinds"][1]["minimum"].is_null());
  EXPECT_EQ(read["lines"][0]["kind"], json({0, 0}));
  EXPECT_EQ(read["lines"][1]["kind"], json({1, 1, 1}));
  EXPECT_EQ(read["lines"][2]["kind"], json::array({0}));
}

TEST(Json, TellsEveryState) {
  const json lines = json::parse(to_json(solve(with_all_states())))["lines"];
  EXPECT_EQ(lines[1]["state"][2], "capped");
  EXPECT_EQ(lines[1]["state"][6], "broken");
  EXPECT_EQ(lines[2]["state"][23], "dry");
  EXPECT_EQ(lines[3]["state"][0], "above_maximum");
  const auto state_at = [](const Pressure& supply) {
    return json::parse(
        to_json(solve(sample_layout({sample_row("r", 1)}, "", supply))))["lines"][0]["state"][0];
  };
  EXPECT_EQ(state_at(35 * psi), "works");
  EXPECT_EQ(state_at(26 * psi), "below_rated");
  EXPECT_EQ(state_at(15 * psi), "below_minimum");
}

TEST(Json, HasEveryFinding) {
  const Solution solution = solve(with_all_states());
  const Check found = check(solution);
  const json read = json::parse(to_json(solution))["check"];
  EXPECT_EQ(read["every_outlet_serves"], false);
  ASSERT_THAT(read["below_rated"], SizeIs(found.below_rated.size()));
  for (std::size_t i = 0; i < found.below_rated.size(); ++i)
    EXPECT_EQ(read["below_rated"][i],
              (json{{"line", found.below_rated[i].line},
                    {"outlet", found.below_rated[i].outlet},
                    {"pressure", si(found.below_rated[i].pressure)},
                    {"rated", si(found.below_rated[i].rated)}}));
  ASSERT_THAT(read["below_minimum"], SizeIs(found.below_minimum.size()));
  EXPECT_EQ(read["below_minimum"][0]["minimum"], si(18 * psi));
  ASSERT_THAT(read["above_maximum"], SizeIs(found.above_maximum.size()));
  EXPECT_EQ(read["above_maximum"][0]["maximum"], si(20 * psi));
  ASSERT_THAT(read["dry"], SizeIs(found.dry.size()));
  EXPECT_EQ(read["dry"].back()["line_pressure"], si(found.dry.back().line_pressure));
  ASSERT_THAT(read["variations"], SizeIs(found.variations.size()));
  for (std::size_t i = 0; i < found.variations.size(); ++i)
    EXPECT_EQ(read["variations"][i],
              (json{{"line", found.variations[i].line},
                    {"outlet_name", found.variations[i].outlet_name},
                    {"outlets", found.variations[i].outlets},
                    {"pressure", found.variations[i].pressure},
                    {"flow", found.variations[i].flow},
                    {"too_wide", found.variations[i].too_wide}}));
  ASSERT_THAT(found.fast_water, Not(IsEmpty()));
  ASSERT_THAT(read["fast_water"], SizeIs(found.fast_water.size()));
  EXPECT_EQ(
      read["fast_water"][0],
      (json{{"line", found.fast_water[0].line}, {"velocity", si(found.fast_water[0].velocity)}}));
  ASSERT_THAT(found.below_atmosphere, Not(IsEmpty()));
  ASSERT_THAT(read["below_atmosphere"], SizeIs(found.below_atmosphere.size()));
  EXPECT_EQ(read["below_atmosphere"][0],
            (json{{"line", found.below_atmosphere[0].line},
                  {"pressure", si(found.below_atmosphere[0].pressure)},
                  {"column_separates", found.below_atmosphere[0].column_separates}}));
}

TEST(Json, TellsHowEvenlyOutletsWater) {
  const Solution solution = solve(with_all_states());
  const std::vector<OutletUniformity> measures = uniformity_of_outlets(solution);
  const json read = json::parse(to_json(solution))["uniformity"];
  ASSERT_THAT(measures, Not(IsEmpty()));
  ASSERT_THAT(read, SizeIs(measures.size()));
  for (std::size_t i = 0; i < measures.size(); ++i) {
    const Uniformity<Flow>& flows = measures[i].flows;
    EXPECT_EQ(read[i]["line"], measures[i].line);
    EXPECT_EQ(read[i]["outlet_name"], measures[i].outlet_name);
    EXPECT_EQ(read[i]["outlets"], flows.count);
    EXPECT_EQ(read[i]["mean"], si(flows.mean));
    EXPECT_EQ(read[i]["least"], si(flows.least));
    EXPECT_EQ(read[i]["low_quarter"], si(flows.low_quarter));
    EXPECT_EQ(read[i]["christiansen"], flows.christiansen);
    EXPECT_EQ(read[i]["distribution"], flows.distribution);
    EXPECT_EQ(read[i]["statistical"], flows.statistical ? json(*flows.statistical) : json(nullptr));
  }
}

TEST(Json, DescribesTheFaults) {
  const Layout layout = with_all_states();
  const json faults = json::parse(to_json(solve(layout)))["faults"];
  ASSERT_THAT(faults, SizeIs(5));
  const std::vector<std::string> kinds{"head off", "riser sheared", "capped", "clogged", "worn"};
  for (std::size_t i = 0; i < 5; ++i) {
    const Fault& fault = layout.faults()[i];
    EXPECT_EQ(faults[i],
              (json{{"line", line_of(fault)},
                    {"supply", ""},
                    {"outlet", outlet_of(fault).value()},
                    {"kind", kinds[i]},
                    {"description", describe(fault, layout, UnitSystem::us)}}));
  }
}

TEST(Json, ComparesBeforeAndAfter) {
  const Layout layout = with_all_states();
  const Solution before = solve(layout.without_faults());
  const Solution after = solve(layout);
  const Comparison change = compare(before, after);
  const json read = json::parse(to_json(before, after));
  EXPECT_EQ(read["format"], "hydro solution 1");
  expect_is_solution(read, after);
  expect_is_solution(read["before"], before);
  EXPECT_EQ(read["before"]["check"], json::parse(to_json(before))["check"]);
  const json& compared = read["comparison"];
  ASSERT_THAT(compared["lines"], SizeIs(change.lines.size()));
  for (std::size_t l = 0; l < change.lines.size(); ++l) {
    EXPECT_EQ(compared["lines"][l]["line"], change.lines[l].line);
    EXPECT_EQ(bits_in(compared["lines"][l]["pressure"]), bits(change.lines[l].pressure));
    EXPECT_EQ(bits_in(compared["lines"][l]["line_pressure"]), bits(change.lines[l].line_pressure));
    EXPECT_EQ(bits_in(compared["lines"][l]["flow"]), bits(change.lines[l].flow));
  }
  EXPECT_THAT(compared["newly_below_rated"], SizeIs(change.newly_below_rated.size()));
  EXPECT_THAT(compared["newly_below_minimum"], SizeIs(change.newly_below_minimum.size()));
  EXPECT_THAT(compared["newly_dry"], SizeIs(change.newly_dry.size()));
  expect_number(compared["escaping"], si(change.escaping));
  expect_number(compared["missing"], si(change.missing));
  expect_number(compared["inflow_before"], si(change.inflow_before));
  expect_number(compared["inflow_after"], si(change.inflow_after));
  expect_number(compared["supply_before"], si(change.supply_before));
  expect_number(compared["supply_after"], si(change.supply_after));
}

TEST(Json, RefusesTwoThatDoNotMatch) {
  EXPECT_THROW(to_json(solve(sample_layout({sample_row("a", 2)})),
                       solve(sample_layout({sample_row("a", 3)}))),
               InvalidInput);
}

TEST(Json, KeepsNamesWhateverTheyContain) {
  const std::string name = "\"a\", <b> & \\ Reihe f\xC3\xBCnf";
  const json read = json::parse(to_json(solve(sample_layout({sample_row(name, 1)}, name))));
  EXPECT_EQ(read["site"], name);
  EXPECT_EQ(read["lines"][0]["name"], name);
  const json mended = json::parse(to_json(solve(sample_layout({sample_row("not \xFF UTF-8", 1)}))));
  EXPECT_EQ(mended["lines"][0]["name"], "not \xEF\xBF\xBD UTF-8");
}

TEST(Json, TakesManyOutlets) {
  const Solution solution = solve(many_outlets(100'000));
  const json read = json::parse(to_json(solution));
  EXPECT_EQ(bits_in(read["lines"][0]["pressure"]), bits(solution.lines()[0].pressure));
  EXPECT_EQ(bits_in(read["lines"][0]["flow"]), bits(solution.lines()[0].flow));
}

TEST(Json, RefusesWhatIsNoNumber) {
  const Solution good = solve(sample_layout({sample_row("row 1", 2)}));
  for (const double wrong :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    const auto names_it = AllOf(HasSubstr("lines, 0, pressure, 0: is "), HasSubstr("finite"));
    EXPECT_THAT(refusal([&] { to_json(spoilt_solution(wrong)); }), names_it);
    EXPECT_THAT(refusal([&] { to_json(good, spoilt_solution(wrong)); }), names_it);
    EXPECT_THAT(refusal([&] { to_json(spoilt_solution(wrong), good); }), names_it);
    const Solution unsolved(
        good.layout(), good.water(), good.lines(), good.supply(), {.mass = wrong}, {});
    EXPECT_THAT(refusal([&] { to_json(unsolved); }), HasSubstr("residuals, mass: is "));
  }
}

TEST(Json, DoesNotHangOnTheLocale) {
  const Solution solution = solve(with_all_states());
  const std::string text = to_json(solution);
  const UnderCommas commas;
  EXPECT_EQ(to_json(solution), text);
}

}  // namespace
}  // namespace hydro
