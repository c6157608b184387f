// Lines that are more than a row of equal outlets on one pipe, against chains of plain lines that
// describe the same; and faults of lines against Bernoulli's equation written out.
#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/solver/solve.hpp"

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <gmock/gmock.h>

namespace hydro {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using units::m;

const Supply supply{.pressure = 300 * kPa, .elevation = 0 * m};
const Pipe narrow{.inside_diameter = 40 * mm, .hazen_williams = 150};
const Pipe wide{.inside_diameter = 60 * mm, .darcy_factor = 0.02};
const Outlet head{.name = "head", .flow = 800 * lph, .at = 250 * kPa};
const Outlet spray{.name = "spray", .flow = 300 * lph, .at = 150 * kPa, .exponent = 0.6};

Line row() {
  return {.name = "row",
          .pipe = narrow,
          .outlet = head,
          .count = 8,
          .spacing = 12 * m,
          .ground_rise = 4 * m,
          .loss_coefficient = 2,
          .outlet_loss_coefficient = 0.3};
}

/// The same line as a chain of lines of one outlet each: "1", "2", ... @param gaps, rises to each
std::vector<Line> chain(const std::vector<Length>& gaps,
                        const std::vector<Length>& rises,
                        const std::vector<Pipe>& pipes,
                        const std::vector<Outlet>& outlets) {
  std::vector<Line> lines;
  for (std::size_t i = 0; i < gaps.size(); ++i)
    lines.push_back({.name = std::to_string(i + 1),
                     .fed_by = i == 0 ? "" : std::to_string(i),
                     .pipe = pipes[i],
                     .outlet = outlets[i],
                     .count = 1,
                     .first_at = gaps[i],
                     .ground_rise = rises[i],
                     .outlet_loss_coefficient = 0.3});
  lines[0].loss_coefficient = 2;
  return lines;
}

// Every equation is met to 1e-12 of 31 m of head, and there are up to 16 along a path.
constexpr double agreement_kPa = 16e-12 * 310;

void expect_like_chain(const LineSolution& line,
                       const Solution& chain,
                       double tolerance_kPa = agreement_kPa) {
  ASSERT_EQ(line.pressure.size(), chain.lines().size());
  for (std::size_t i = 0; i < line.pressure.size(); ++i) {
    const LineSolution& one = chain.lines()[i];
    EXPECT_NEAR(line.pressure[i] / kPa, one.pressure[0] / kPa, tolerance_kPa);
    EXPECT_NEAR(line.flow[i] / lph, one.flow[0] / lph, 3 * tolerance_kPa);  // at most 3 L/h a kPa
    EXPECT_NEAR(line.velocity[i] / m_per_s, one.velocity[0] / m_per_s, 1e-9);
  }
}

TEST(Reaches, AreTheFirstLengthsOfALine) {
  Line line = row();
  line.reaches = {{wide, 36 * m}};
  std::vector<Pipe> pipes(8, narrow);
  pipes[0] = pipes[1] = pipes[2] = wide;
  const Solution solution = solve(Layout(supply, {line}));
  expect_like_chain(solution.line("row"),
                    solve(Layout(supply,
                                 chain(std::vector<Length>(8, 12 * m),
                                       std::vector<Length>(8, 0.5 * m),
                                       pipes,
                                       std::vector<Outlet>(8, head)))));
  const std::vector<PipeExtremes>& parts = solution.line("row").pipes;
  ASSERT_THAT(parts, SizeIs(2));
  EXPECT_EQ(parts[0].end, 36 * m);
  EXPECT_EQ(parts[0].highest_velocity, solution.line("row").inlet_velocity);
  EXPECT_EQ(parts[1].highest_velocity, solution.line("row").velocity[3]);
  EXPECT_EQ(parts[1].lowest_pressure, solution.line("row").line_pressure[7]);
}

TEST(Reaches, MayEndBetweenOutletsAndAtTheFarEnd) {
  Line line = row();
  line.reaches = {{wide, 20 * m}, {narrow, 30 * m}};
  line.pipe = wide;
  Line whole = row();
  whole.pipe = wide;
  whole.reaches = {{wide, 20 * m}, {wide, 96 * m}};
  const Solution one = solve(Layout(supply, {line}));
  EXPECT_THAT(one.line("row").pipes, SizeIs(3));
  // The same pipe in pieces is the same pipe.
  Line plain = row();
  plain.pipe = wide;
  const Solution in_pieces = solve(Layout(supply, {whole}));
  const Solution in_one = solve(Layout(supply, {plain}));
  for (std::size_t i = 0; i < 8; ++i)
    EXPECT_NEAR(in_pieces.line("row").pressure[i] / kPa,
                in_one.line("row").pressure[i] / kPa,
                agreement_kPa);
}

TEST(UnevenOutlets, StandWhereTheyArePut) {
  Line line{.name = "row",
            .pipe = narrow,
            .outlets = {{5 * m, head}, {9 * m, spray}, {9 * m, head}, {30 * m, spray}},
            .ground_rise = 3 * m,
            .loss_coefficient = 2,
            .outlet_loss_coefficient = 0.3};
  // A chain's line has some length: 1e-6 m, of a pipe that loses up to 0.1 kPa a metre.
  expect_like_chain(solve(Layout(supply, {line})).line("row"),
                    solve(Layout(supply,
                                 chain({5 * m, 4 * m, 1e-6 * m, 21 * m},
                                       {0.5 * m, 0.4 * m, 0 * m, 2.1 * m},
                                       std::vector<Pipe>(4, narrow),
                                       {head, spray, head, spray}))),
                    1e-7);
}

TEST(Elevations, ReplaceAnEvenRise) {
  Line line = row();
  line.ground_rise.reset();
  line.elevations = {1 * m, -2 * m, 5 * m, 5 * m, 0 * m, 1 * m, 1 * m, 9 * m};
  expect_like_chain(solve(Layout(supply, {line})).line("row"),
                    solve(Layout(supply,
                                 chain(std::vector<Length>(8, 12 * m),
                                       {1 * m, -3 * m, 7 * m, 0 * m, -5 * m, 1 * m, 0 * m, 8 * m},
                                       std::vector<Pipe>(8, narrow),
                                       std::vector<Outlet>(8, head)))));
  const Layout layout(supply, {line});
  EXPECT_NEAR(layout.ground_elevation(0, 6 * m) / m, 0.5, 1e-12);
  EXPECT_NEAR(layout.ground_elevation(0, 30 * m) / m, 1.5, 1e-12);
  EXPECT_EQ(layout.ground_elevation(0, 96 * m), 9 * m);
}

TEST(ConnectionLength, LosesLikePipeAndLeadsNowhere) {
  Line line = row();
  line.connection_length = 0.4 * m;
  Line longer = row();
  longer.spacing = 12.4 * m;
  const Solution one = solve(Layout(supply, {line}));
  const Solution other = solve(Layout(supply, {longer}));
  for (std::size_t i = 0; i < 8; ++i)
    EXPECT_NEAR(
        one.line("row").pressure[i] / kPa, other.line("row").pressure[i] / kPa, agreement_kPa);
  EXPECT_EQ(one.line("row").distance[7], 96 * m);
}

Line branch(const std::string& name) {
  return {.name = name,
          .pipe = narrow,
          .outlet = spray,
          .count = 3,
          .spacing = 6 * m,
          .ground_rise = 1 * m};
}

TEST(Taps, FeedLinesFromAlongAnother) {
  Line main{.name = "main", .pipe = wide, .length = 100 * m, .ground_rise = 5 * m};
  Line first = branch("first"), second = branch("second"), last = branch("last");
  first.fed_by = second.fed_by = last.fed_by = "main";
  first.tap = 30 * m;
  second.tap = 80 * m;
  const Layout tapped(supply, {last, second, main, first});

  Line a{.name = "a", .pipe = wide, .length = 30 * m, .ground_rise = 1.5 * m};
  Line b{.name = "b", .fed_by = "a", .pipe = wide, .length = 50 * m, .ground_rise = 2.5 * m};
  Line c{.name = "c", .fed_by = "b", .pipe = wide, .length = 20 * m, .ground_rise = 1 * m};
  first.tap.reset();
  second.tap.reset();
  first.fed_by = "a";
  second.fed_by = "b";
  last.fed_by = "c";
  const Solution one = solve(tapped);
  const Solution other = solve(Layout(supply, {a, b, c, first, second, last}));
  for (const char* name : {"first", "second", "last"})
    for (std::size_t i = 0; i < 3; ++i)
      EXPECT_NEAR(
          one.line(name).pressure[i] / kPa, other.line(name).pressure[i] / kPa, agreement_kPa)
          << name;
  EXPECT_NEAR(tapped.inlet_elevation(1) / m, 4, 1e-12);
  EXPECT_NEAR(one.line("main").end_pressure / kPa, other.line("c").end_pressure / kPa, 1e-8);
}

TEST(Taps, AtAnOutletAndWithinAMillimetreOfItAreOne) {
  Line side = branch("side");
  side.fed_by = "row";
  side.tap_outlet = 5;
  const Solution at_outlet = solve(Layout(supply, {row(), side}));
  for (const double off : {-0.9, 0.0, 0.9}) {
    side.tap_outlet.reset();
    side.tap = 60 * m + off * mm;
    const Solution near = solve(Layout(supply, {row(), side}));
    for (std::size_t i = 0; i < 3; ++i)
      EXPECT_EQ(near.line("side").pressure[i], at_outlet.line("side").pressure[i]) << off;
  }
  side.tap = 60 * m + 1.1 * mm;
  EXPECT_NE(solve(Layout(supply, {row(), side})).line("side").pressure[0],
            at_outlet.line("side").pressure[0]);
}

TEST(Taps, TakeTheirWaterOutOfTheLine) {
  Line side = branch("side");
  side.fed_by = "row";
  side.tap_outlet = 5;
  const Solution solution = solve(Layout(supply, {row(), side}));
  Flow sum = solution.line("side").inflow;
  for (const Flow flow : solution.line("row").flow) sum += flow;
  EXPECT_NEAR(solution.line("row").inflow / lph, sum / lph, 1e-7);
}

// ---- faults of lines

TEST(Leak, PassesWhatItsRatingSaysAtThePressureInTheLine) {
  const Layout layout(supply, {row()});
  for (const double exponent : {0.5, 1.2}) {
    const Solution solution =
        solve(layout.with_fault(leak("row", 50 * m, 20 * lpm, 200 * kPa, exponent)));
    const LineSolution& line = solution.line("row");
    ASSERT_THAT(line.openings, SizeIs(1));
    const Opening& hole = line.openings[0];
    EXPECT_EQ(hole.distance, 50 * m);
    EXPECT_NEAR(hole.flow / lpm, 20 * std::pow(hole.line_pressure / (200 * kPa), exponent), 1e-9);
    EXPECT_LT(hole.line_pressure, line.line_pressure[3]);
    EXPECT_EQ(compare(solve(layout), solution).escaping, hole.flow);
  }
  // Another outlet of the same rating there would do the same to the others.
  const Solution with_leak = solve(layout.with_fault(leak("row", 48 * m, 800 * lph, 250 * kPa)));
  Line twin{.name = "row",
            .pipe = narrow,
            .ground_rise = 4 * m,
            .loss_coefficient = 2,
            .outlet_loss_coefficient = 0.3};
  for (int i = 1; i <= 8; ++i) twin.outlets.push_back({12.0 * i * m, head});
  Line hole{.name = "hole",
            .fed_by = "row",
            .tap = 48 * m,
            .pipe = {.inside_diameter = 5 * m, .darcy_factor = 0.02},
            .outlet = head,
            .count = 1,
            .first_at = 1e-6 * m};
  const Solution with_twin = solve(Layout(supply, {twin, hole}));
  for (std::size_t i = 0; i < 8; ++i)
    EXPECT_NEAR(with_leak.line("row").pressure[i] / kPa,
                with_twin.line("row").pressure[i] / kPa,
                agreement_kPa);
}

/// Bernoulli from the supply to a jet: head - rise = (1 + K + f L / D) V^2 / 2g.
double jet_m3_per_s(const Solution& solution, const Length& length, double rise, double K) {
  const double area = std::numbers::pi / 4 * 0.06 * 0.06;
  const double H = 300e3 / (si(solution.water().density) * 9.80665) - rise;
  return area * std::sqrt(2 * 9.80665 * H / (1 + K + 0.02 * si(length) / 0.06));
}

TEST(LineCut, IsAJetAndAllBeyondIsDry) {
  Line main{.name = "main",
            .pipe = wide,
            .length = 100 * m,
            .ground_rise = 5 * m,
            .loss_coefficient = 1.5};
  Line side = branch("side"), next = branch("next");
  side.fed_by = "main";
  next.fed_by = "side";
  const Solution solution =
      solve(Layout(supply, {main, side, next}).with_fault(line_cut("main", 40 * m)));
  const LineSolution& line = solution.line("main");
  ASSERT_THAT(line.openings, SizeIs(1));
  EXPECT_NEAR(si(line.openings[0].flow), jet_m3_per_s(solution, 40 * m, 2, 1.5), 1e-12);
  EXPECT_EQ(line.inflow, line.openings[0].flow);
  EXPECT_EQ(line.end_pressure, Pressure{});
  for (const char* name : {"side", "next"}) {
    EXPECT_EQ(solution.line(name).inflow, Flow{});
    EXPECT_THAT(solution.line(name).state, testing::Each(OutletState::dry));
  }
  EXPECT_THAT(check(solution).dry, SizeIs(6));
}

TEST(LineCut, FeedsWhatStandsBeforeIt) {
  const Solution solution = solve(Layout(supply, {row()}).with_fault(line_cut("row", 36 * m)));
  const std::vector<OutletState>& state = solution.line("row").state;
  for (std::size_t i = 0; i < 8; ++i) EXPECT_EQ(state[i] == OutletState::dry, i > 2) << i;
  EXPECT_EQ(solution.line("row").flow[3], Flow{});
}

TEST(LineCut, LeavesALineThatBeginsAtThePlaceWithoutWater) {
  Line side = branch("side");
  side.fed_by = "row";
  side.tap_outlet = 3;
  const Layout layout(supply, {row(), side});
  EXPECT_TRUE(layout.with_fault(line_cut("row", 36 * m)).is_cut_off(1));
  EXPECT_FALSE(layout.with_fault(line_cut("row", 37 * m)).is_cut_off(1));
  EXPECT_GT(solve(layout.with_fault(line_cut("row", 37 * m))).line("side").inflow, Flow{});
}

TEST(EndOpen, IsAJetAtTheFarEnd) {
  const Line main{.name = "main", .pipe = wide, .length = 100 * m, .ground_rise = 5 * m};
  const Solution solution = solve(Layout(supply, {main}).with_fault(end_open("main")));
  EXPECT_NEAR(si(solution.inflow()), jet_m3_per_s(solution, 100 * m, 5, 0), 1e-12);
  const Solution with_outlets = solve(Layout(supply, {row()}).with_fault(end_open("row")));
  EXPECT_GT(with_outlets.line("row").openings.at(0).flow, Flow{});
  EXPECT_GT(with_outlets.line("row").flow[7], Flow{});
}

TEST(ValvePartClosed, AddsToTheLossAtTheInlet) {
  Line more = row();
  more.loss_coefficient = 2 + 40;
  const Solution fault = solve(Layout(supply, {row()}).with_fault(valve_part_closed("row", 40)));
  const Solution line = solve(Layout(supply, {more}));
  for (std::size_t i = 0; i < 8; ++i)
    EXPECT_EQ(fault.line("row").pressure[i], line.line("row").pressure[i]);
}

TEST(NozzleMissing, LetsOutWhatTheOpenBodyPasses) {
  Line line = row();
  line.outlet->body_bore = 9 * mm;
  line.riser = {.height = 1 * m};
  const Layout layout(supply, {line});
  for (const auto& [fault, bore_m, Cd] :
       {std::tuple(nozzle_missing("row", 4), 0.009, 0.85),
        std::tuple(nozzle_missing("row", 4, 7 * mm, 0.7), 0.007, 0.7)}) {
    const Solution solution = solve(layout.with_fault(fault));
    const LineSolution& solved = solution.line("row");
    const double area = std::numbers::pi / 4 * bore_m * bore_m;
    const double speed = std::sqrt(2 * si(solved.pressure[3]) / si(solution.water().density));
    EXPECT_NEAR(si(solved.flow[3]), Cd * area * speed, 1e-13);
    EXPECT_EQ(solved.state[3], OutletState::broken);
    EXPECT_EQ(compare(solve(layout), solution).escaping, solved.flow[3]);
  }
}

TEST(WrongOutlet, FlowsAndIsJudgedAsWhatItIs) {
  const Outlet large{.name = "large", .flow = 2000 * lph, .at = 290 * kPa};
  const Layout layout(supply, {row()});
  const Layout faulty = layout.with_fault(wrong_outlet("row", 2, large));
  const Solution solution = solve(faulty);
  const LineSolution& solved = solution.line("row");
  EXPECT_NEAR(solved.flow[1] / discharge(large, solved.pressure[1]), 1, 1e-12);
  EXPECT_EQ(faulty.outlet_at(0, 2), large);
  EXPECT_EQ(layout.outlet_at(0, 2), head);
  const Check found = check(solution);
  ASSERT_FALSE(found.below_rated.empty());
  EXPECT_EQ(found.below_rated[0].outlet, 2);
  EXPECT_EQ(found.below_rated[0].rated, 290 * kPa);
  EXPECT_THAT(found.variations, SizeIs(2));
}

// ---- contradictions

std::string refusal(const Layout& layout, const std::vector<Fault>& faults) {
  try {
    layout.with_faults(faults);
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "accepted";
}

TEST(Faults, ThatContradictOneAnotherAreRefused) {
  Line side = branch("side");
  side.fed_by = "row";
  const Layout layout(supply, {row(), side});
  const struct {
    std::vector<Fault> faults;
    std::string message;
  } cases[] = {
      {{capped("row", 2), worn("row", 2, 0.1)}, "fault 2: outlet: 2 of line \"row\" already has"},
      {{line_cut("row", 5 * m), line_cut("row", 9 * m)}, "fault 2: line: \"row\" already has"},
      {{valve_part_closed("row", 5), valve_part_closed("row", 9)}, "one valve takes one"},
      {{line_cut("row", 30 * m), clogged("row", 3, 0.5)},
       "fault 2: outlet: cannot act: by fault 1"},
      {{clogged("row", 3, 0.5), line_cut("row", 30 * m)},
       "fault 1: outlet: cannot act: by fault 2"},
      {{line_cut("row", 30 * m), leak("row", 40 * m, 1 * lpm, 1 * bar)}, "fault 2: line: cannot"},
      {{line_cut("row", 30 * m), valve_part_closed("side", 4)}, "fault 2: line: cannot act"},
      {{end_open("row")}, "fault 1: line: is \"row\", but line \"side\" begins at its far end"},
      {{line_cut("row", 97 * m)}, "fault 1: place: is 97 m, must be from 0 to 96 m"},
      {{leak("row", -1 * m, 1 * lpm, 1 * bar)}, "fault 1: place: is -1 m"},
      {{leak("row", 1 * m, 1 * lpm, 1 * bar, 2.5)}, "fault 1: exponent: is 2.5, must be from 0.1"},
      {{valve_part_closed("row", 0)}, "fault 1: loss_coefficient: is 0, must be above 0"},
      {{nozzle_missing("row", 1)}, "fault 1: bore: is not given, nor is the body_bore"},
      {{nozzle_missing("row", 9)}, "fault 1: outlet: is 9, must be from 1 to 8"},
      {{wrong_outlet("row", 1, Outlet{.flow = 1 * lpm})}, "fault 1: fitted.at: is 0 kPa"},
  };
  for (const auto& test : cases) EXPECT_THAT(refusal(layout, test.faults), HasSubstr(test.message));
  EXPECT_EQ(refusal(layout,
                    {line_cut("row", 36 * m),
                     clogged("row", 3, 0.5),
                     leak("row", 36 * m, 1 * lpm, 1 * bar),
                     leak("row", 36 * m, 2 * lpm, 1 * bar),
                     valve_part_closed("row", 3)}),
            "accepted");
}

TEST(Faults, ThatCannotBeAreSkippedAndListed) {
  const Layout layout = Layout(supply, {row()}).with_fault(capped("row", 1));
  const PossibleFaults possible = layout.with_possible_faults(
      {worn("row", 1, 0.1), head_off("row", 2), clogged("row", 3, 0.5), nozzle_missing("row", 4)});
  EXPECT_THAT(possible.layout.faults(),
              ElementsAre(Fault(capped("row", 1)), Fault(clogged("row", 3, 0.5))));
  ASSERT_THAT(possible.skipped, SizeIs(3));
  EXPECT_EQ(possible.skipped[0].fault, Fault(worn("row", 1, 0.1)));
  EXPECT_THAT(possible.skipped[0].problems.at(0).text(), HasSubstr("already has fault 1"));
  EXPECT_THAT(possible.skipped[1].problems.at(0).text(), HasSubstr("riser.inside_diameter"));
  EXPECT_THAT(possible.skipped[2].problems.at(0).text(), HasSubstr("bore: is not given"));
}

TEST(Faults, SayThemselvesInASentence) {
  const auto said = [](const Fault& fault) { return describe(fault, row(), UnitSystem::si); };
  EXPECT_EQ(said(nozzle_missing("row", 4, 7 * mm)),
            "row, outlet 4: nozzle missing, its body open (bore 7 mm, discharge coefficient 0.85)");
  EXPECT_EQ(said(wrong_outlet("row", 4, spray)), "row, outlet 4: wrong outlet, one of kind spray");
  EXPECT_EQ(said(leak("row", 50 * m, 20 * lpm, 200 * kPa)),
            "row: leak at 50.0 m (20 L/min at 200 kPa, exponent 0.5)");
  EXPECT_EQ(said(line_cut("row", 50 * m)), "row: cut at 50.0 m");
  EXPECT_EQ(said(end_open("row")), "row: far end open");
  EXPECT_EQ(said(valve_part_closed("row", 40)), "row: valve part closed, loss coefficient 40");
}

// ---- what is wrong with a line

TEST(BroadLines, AreRefusedWithWhatIsWrong) {
  const auto found = [](auto change, const std::string& fed_by = "") {
    Line line = row();
    line.name = "it";
    line.fed_by = fed_by;
    change(line);
    try {
      Layout(supply, {row(), line});
    } catch (const InvalidInput& error) {
      return std::string(error.what());
    }
    return std::string("accepted");
  };
  EXPECT_THAT(found([](Line& it) { it.tap = 3 * m; }),
              HasSubstr("tap: is given, but fed_by is not"));
  EXPECT_THAT(found([](Line& it) { it.tap = 97 * m; }, "row"),
              HasSubstr("tap: is 97 m, beyond the far end of line \"row\" at 96 m"));
  EXPECT_THAT(found([](Line& it) { it.tap_outlet = 9; }, "row"),
              HasSubstr("tap_outlet: is 9, but line \"row\" has 8 outlets"));
  EXPECT_THAT(found([](Line& it) { it.tap = 3 * m, it.tap_outlet = 1; }, "row"),
              HasSubstr("tap, tap_outlet: are both given"));
  EXPECT_THAT(found([](Line& it) {
                it.reaches = {{wide, 97 * m}};
              }),
              HasSubstr("reaches, 1.to: is 97 m, beyond the line's far end at 96 m"));
  EXPECT_THAT(found([](Line& it) {
                it.reaches = {{wide, 9 * m}, {wide, 9 * m}};
              }),
              HasSubstr("reaches, 2.to: is 9 m, must be beyond the 9 m where it begins"));
  EXPECT_THAT(found([](Line& it) {
                it.reaches = {{Pipe{}, 9 * m}};
              }),
              HasSubstr("reaches, 1.pipe.inside_diameter"));
  EXPECT_THAT(found([](Line& it) {
                it.outlets = {{9 * m, head}};
              }),
              HasSubstr("outlet: is given, but so is outlets"));
  EXPECT_THAT(found([](Line& it) { it.elevations = {1 * m}; }),
              HasSubstr("elevations, ground_rise: are both given"));
  EXPECT_THAT(found([](Line& it) { it.ground_rise.reset(), it.elevations = {1 * m}; }),
              HasSubstr("elevations: are 1, must be one for each of the 8 outlets"));
  EXPECT_THAT(found([](Line& it) { it.connection_length = -1 * m; }),
              HasSubstr("connection_length: is -1 m"));
  const auto placed = [&](std::vector<PlacedOutlet> outlets) {
    return found([&](Line& it) {
      it.outlet.reset(), it.count.reset(), it.spacing.reset();
      it.outlets = outlets;
    });
  };
  EXPECT_THAT(placed({{9 * m, head}, {8 * m, head}}),
              HasSubstr("outlets, 2.place: is 8 m, nearer than the 9 m of the one before"));
  EXPECT_THAT(placed({{0 * m, head}}), HasSubstr("length: is 0"));
  EXPECT_THAT(placed({{9 * m, Outlet{}}}), HasSubstr("outlets, 1.outlet.flow"));
  EXPECT_EQ(placed({{9 * m, head}, {9 * m, spray}}), "accepted");
}

TEST(PressureRating, IsWhatTheHeatLeavesOfIt) {
  Line line = row();
  line.pipe = nominal_pipe("1-1/2 in", "PVC SDR 26");
  const Supply strong{.pressure = 100 * psi};
  EXPECT_THAT(check(solve(Layout(strong, {line}))).over_rating, IsEmpty());
  // Half of the 160 psi is left at 110 degF (nominal_pipe_test.cpp).
  const Check hot = check(solve(Layout(strong, {line}, Water{.temperature = 110 * degF})));
  ASSERT_THAT(hot.over_rating, SizeIs(1));
  EXPECT_NEAR(hot.over_rating[0].rating / psi, 80, 1e-9);
  EXPECT_NEAR(hot.over_rating[0].pressure / psi, 100, 1e-9);
  line.pipe = narrow;
  line.pipe.pressure_rating = 250 * kPa;
  EXPECT_THAT(check(solve(Layout(supply, {line}))).over_rating, SizeIs(1));
}

}  // namespace
}  // namespace hydro
