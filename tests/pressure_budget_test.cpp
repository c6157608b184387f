// Where the pressure goes: every stretch of the way on random layouts and by hand, and which outlet is
// the weakest.
#include "hydro/answers/pressure_budget.hpp"

#include "hydro/physics/friction.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include "random_looped.hpp"
#include "random_pumped.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using units::m;

/// Walks a budget; every entry must follow from the one before, and nothing may be gained by a loss.
void expect_to_add_up(const PressureBudget& budget, double scale) {
  double left = 0;
  for (const PressureBudgetEntry& entry : budget.entries) {
    SCOPED_TRACE(entry.part + " " + entry.line);
    left += si(entry.gain) - si(entry.rise) - si(entry.loss) - si(entry.regulator);
    EXPECT_NEAR(left, si(entry.left), 1e-12 * scale);
    EXPECT_GE(si(entry.loss), -1e-11 * scale);
    EXPECT_GE(si(entry.regulator), -1e-11 * scale);
  }
  EXPECT_NEAR(left, si(budget.left), 1e-12 * scale);
}

// Where lines join there is more than one way: the one that is told of never gains by friction, since
// it goes with the water. Water that is said to stand still (water_course.hpp) moves by up to 1e-9 of
// the largest flow.
TEST(PressureBudget, GoesWithTheWaterWhereLinesJoin) {
  int budgets = 0;
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    SCOPED_TRACE(seed);
    const Layout layout = random_looped(seed);
    const Solution solution = solve(layout);
    double scale = si(1 * kPa);
    for (const LineSolution& line : solution.lines())
      for (const Pressure& pressure : line.line_pressure)
        scale = std::max(scale, std::abs(si(pressure)));
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      for (int i = 1; i <= layout.lines()[l].outlet_count(); ++i) {
        if (!layout.outlet_has_water(l, i)) continue;
        const PressureBudget budget = pressure_budget(solution, layout.lines()[l].name, i);
        ++budgets;
        for (const PressureBudgetEntry& entry : budget.entries)
          EXPECT_GE(si(entry.loss), -1e-7 * scale)
              << entry.part << " " << entry.line << ", to " << budget.line << ", outlet " << i;
      }
  }
  EXPECT_GT(budgets, 3000);
}

TEST(PressureBudget, AddsUpOnRandomLayouts) {
  int budgets = 0, refused = 0;
  for (std::uint64_t seed = 0; seed < 300; ++seed) {
    SCOPED_TRACE(seed);
    const Layout layout = random_pumped(seed);
    const Solution solution = solve(layout);
    double heights = 0;  // the solver's heads are as good as the rise and fall of the ground
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      for (int i = 1; i <= layout.lines()[l].outlet_count(); ++i)
        heights = std::max(
            heights,
            std::abs(si(layout.outlet_elevation(l, i)) - si(*layout.supply().elevation)) + 10);
    const double scale = std::abs(si(solution.supply().source_pressure)) + 9790 * 10 * heights;
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      for (int i = 1; i <= layout.lines()[l].outlet_count(); ++i) {
        const std::string& name = layout.lines()[l].name;
        SCOPED_TRACE(name + ", outlet " + std::to_string(i));
        const auto end = layout.open_end_of(l);
        if (layout.is_cut_off(l) || (end && layout.lines()[l].place_of(i) > *end + same_place)) {
          EXPECT_THROW(pressure_budget(solution, name, i), InvalidInput);
          ++refused;
          continue;
        }
        const PressureBudget budget = pressure_budget(solution, name, i);
        expect_to_add_up(budget, scale);
        const auto at = static_cast<std::size_t>(i - 1);
        const LineSolution& line = solution.lines()[l];
        if (line.state[at] != OutletState::closed && !(line.flow[at] > Flow{})) {
          EXPECT_LE(si(budget.left), 0);
        } else if (line.state[at] != OutletState::closed) {
          EXPECT_EQ(budget.left, line.pressure[at]);
        }
        ++budgets;
      }
  }
  EXPECT_GT(budgets, 3000);
  EXPECT_GT(refused, 300);
}

// Two places that are told apart by less than a millimetre, or by rounding, are one; where the line is
// open there, what lies before it is still on the way.
TEST(PressureBudget, ReachesOutletsByAnOpenEnd) {
  const Outlet spray{.flow = 20 * lph, .at = 150 * kPa};
  const Pipe pipe{.inside_diameter = 20 * mm, .hazen_williams = 140};
  const auto row = [&](std::vector<Length> places, const Length& length) {
    Line line{.name = "row", .pipe = pipe, .length = length};
    for (const Length& place : places) line.outlets.push_back({place, spray});
    return line;
  };
  const Line spaced{.name = "row",
                    .pipe = pipe,
                    .outlet = spray,
                    .count = 3,
                    .spacing = 3.3 * m,
                    .length = 9.9 * m};
  ASSERT_NE(spaced.place_of(3), spaced.whole_length());
  const struct {
    Line line;
    Fault fault;
    int watered;
  } cases[] = {
      {spaced, end_open("row"), 3},
      {row({5 * m, 9.9995 * m}, 10 * m), end_open("row"), 2},
      {row({5 * m, 9.9985 * m, 9.9995 * m}, 10 * m), end_open("row"), 3},
      {row({5 * m, 9.9991 * m, 9.9999 * m, 10 * m}, 10 * m), end_open("row"), 4},
      {row({5 * m, 7 * m, 10 * m}, 10 * m), line_cut("row", 6.9995 * m), 2},
      {row({5 * m, 7 * m, 10 * m}, 10 * m), line_cut("row", 7.0005 * m), 2},
      {row({5 * m, 7 * m, 7.0008 * m, 10 * m}, 10 * m), line_cut("row", 6.9995 * m), 2},
  };
  for (const auto& it : cases) {
    const Layout layout = Layout({.pressure = 200 * kPa}, {it.line}).with_fault(it.fault);
    const Solution solution = solve(layout);
    for (int i = 1; i <= it.watered; ++i) {
      SCOPED_TRACE(::testing::Message() << (&it - cases) << ", outlet " << i);
      const PressureBudget budget = pressure_budget(solution, "row", i);
      expect_to_add_up(budget, si(200 * kPa));
      EXPECT_EQ(budget.entries.size(), 2u);
    }
    if (it.watered < it.line.outlet_count()) {
      EXPECT_THROW(pressure_budget(solution, "row", it.watered + 1), InvalidInput);
    }
  }
}

// Every figure from the pipes' and the fittings' own formulas at the flows that were solved, the
// heights from the layout as it is written.
TEST(PressureBudget, OfOuzelBenchByHand) {
  const Layout layout = ouzel_strips().watering({"rows 1 and 2"});
  const Solution at = solve(layout);
  const PressureBudget budget = pressure_budget(at, "row 2", 2);
  ASSERT_EQ(budget.entries.size(), 9u);
  const auto of = [&](const Length& height) { return pressure(height, at.water().density); };
  const auto lost = [&](const Pipe& pipe, const Length& length, double k, const Flow& flow) {
    return of(friction_loss(pipe, length, flow, at.water()) + fitting_loss(pipe, k, flow));
  };
  const Flow all = at.inflow();
  const LineSolution& row = at.line("row 2");
  const Flow beyond_first = row.inflow - row.flow[0];
  const Pipe main = layout.line("main to tee 1").pipe, lateral = layout.line("row 2").pipe;
  const Pipe suction = *layout.supply().suction->pipe;
  const double share = all / (80 * gpm);
  const struct {
    const char* part;
    const char* line;
    Pressure rise, loss;
  } expected[] = {
      {"suction", "", of(6 * ft), lost(suction, 25 * ft, 3, all)},
      {"pump", "", {}, {}},
      {"filter", "", {}, share * share * 1.5 * psi},
      {"line", "main to tee 1", of(3 * ft), lost(main, 180 * ft, 2, all)},
      {"line", "main to tee 2", of(3 * ft), lost(main, 260 * ft, 1.5, all)},
      {"line", "strip valve", {}, lost(layout.line("strip valve").pipe, 3 * ft, 1.5, all)},
      {"line", "manifold", {}, lost(layout.line("manifold").pipe, 30 * ft, 0, row.inflow)},
      {"line",
       "row 2",
       of(3 * 54.0 / 342.0 * ft),
       lost(lateral, 18 * ft, 0.8, row.inflow) + lost(lateral, 36 * ft, 0.3, beyond_first)},
      {"riser", "", of(4 * ft), lost(*layout.line("row 2").riser.pipe(), 4 * ft, 1, row.flow[1])}};
  for (std::size_t i = 0; i < 9; ++i) {
    SCOPED_TRACE(expected[i].part);
    const PressureBudgetEntry& entry = budget.entries[i];
    EXPECT_EQ(entry.part, expected[i].part);
    EXPECT_EQ(entry.line, expected[i].line);
    // 1e-12 of the head span, some 300 kPa, at each of the few places on the way
    EXPECT_NEAR(entry.rise / kPa, expected[i].rise / kPa, 1e-8);
    EXPECT_NEAR(entry.loss / kPa, expected[i].loss / kPa, 1e-8);
    EXPECT_EQ(entry.regulator, Pressure{});
  }
  const double turned = 2210.0 / 2600.0, gallons = all / gpm;
  const Length head = (150 * turned * turned - 0.0025 * gallons * gallons) * ft;
  EXPECT_NEAR(budget.entries[1].gain / kPa, of(head) / kPa, 1e-8);
  EXPECT_EQ(budget.left, row.pressure[1]);
  EXPECT_EQ(budget.rated, 25 * psi);
  expect_to_add_up(budget, 300e3);
}

/// One outlet 2 m above a wide level line under 100 kPa.
Layout one_riser(const Outlet& outlet, const Length& height = 2 * m) {
  return Layout(Supply{.pressure = 100 * kPa},
                {{.name = "row",
                  .pipe = {.inside_diameter = 5 * m, .hazen_williams = 150},
                  .outlet = outlet,
                  .count = 1,
                  .spacing = 1 * m,
                  .riser = {.height = height, .inside_diameter = 20 * mm, .hazen_williams = 150}}});
}
const Outlet spray{.flow = 500 * lph, .at = 50 * kPa, .body_bore = 4 * mm};

TEST(PressureBudget, TheOutletsOwnRegulator) {
  Outlet regulated = spray;
  regulated.regulator = 50 * kPa;
  const Solution at = solve(one_riser(regulated));
  const PressureBudgetEntry riser = pressure_budget(at, "row", 1).entries.back();
  const Pipe pipe = *at.layout().lines()[0].riser.pipe();
  const Pressure lost =
      pressure(friction_loss(pipe, 2 * m, 500 * lph, at.water()), at.water().density);
  EXPECT_NEAR(riser.loss / kPa, lost / kPa, 1e-9);
  EXPECT_NEAR(riser.regulator / kPa,
              (100 * kPa - pressure(2 * m, at.water().density) - lost - 50 * kPa) / kPa,
              1e-9);
  EXPECT_NEAR(riser.left / kPa, 50, 1e-9);
}

TEST(PressureBudget, WhatLacksAtADryOutlet) {
  const Solution at = solve(one_riser(spray, 12 * m));
  const PressureBudget budget = pressure_budget(at, "row", 1);
  EXPECT_NEAR(budget.left / kPa, (100 * kPa - pressure(12 * m, at.water().density)) / kPa, 1e-9);
  EXPECT_NEAR(budget.entries.back().loss / kPa, 0, 1e-9);
}

TEST(PressureBudget, OfABrokenRiserWhatStillStands) {
  const Solution at = solve(one_riser(spray).with_fault(riser_sheared("row", 1, 1 * m)));
  const PressureBudgetEntry riser = pressure_budget(at, "row", 1).entries.back();
  EXPECT_NEAR(riser.rise / kPa, pressure(1 * m, at.water().density) / kPa, 1e-9);
  EXPECT_NEAR(
      riser.loss / kPa, 100 - riser.rise / kPa, 1e-6);  // the 5 m bore takes next to nothing
}

/// The way that the water goes, not the one by which the lines are described: where it runs, nothing
/// is gained by a loss.
TEST(PressureBudget, FollowsTheWaterRoundARing) {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  Line cross{.name = "cross pipe",
             .fed_by = "row 1",
             .joins = "row 2",
             .pipe = rows.line("row 1").pipe,
             .length = 30 * ft};
  const Layout ring = rows.with_line(cross).with_fault(riser_sheared("row 2", 7));
  const Solution at = solve(ring);
  const auto lines_on_the_way = [&](const Solution& solution, const char* line, int outlet) {
    const PressureBudget budget = pressure_budget(solution, line, outlet);
    expect_to_add_up(budget, si(solution.supply().source_pressure));
    std::vector<std::string> names;
    for (const PressureBudgetEntry& entry : budget.entries)
      if (entry.part == "line" && !entry.line.starts_with("main")) names.push_back(entry.line);
    return names;
  };
  using testing::ElementsAre;
  EXPECT_THAT(lines_on_the_way(at, "row 2", 10),
              ElementsAre("strip valve", "manifold", "row 1", "cross pipe", "row 2"));
  EXPECT_THAT(lines_on_the_way(at, "row 2", 6), ElementsAre("strip valve", "manifold", "row 2"));
  cross.fed_by = "row 2";
  cross.joins = "row 1";
  EXPECT_THAT(lines_on_the_way(
                  solve(rows.with_line(cross).with_fault(riser_sheared("row 2", 7))), "row 2", 10),
              ElementsAre("strip valve", "manifold", "row 1", "cross pipe", "row 2"));
}

TEST(PressureBudget, BeginsAtTheSupplyThatGivesTheWater) {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  const Layout with_tank =
      rows.with_further_supplies(
              {{.tank = Tank{.level = 2 * m}, .elevation = 60 * m, .name = "hill tank"}})
          .with_line({.name = "hill pipe",
                      .fed_by = "hill tank",
                      .joins = "row 2",
                      .pipe = rows.line("row 2").pipe,
                      .length = 300 * ft});
  const Solution at = solve(with_tank);
  const PressureBudget budget = pressure_budget(at, "row 2", 10);
  expect_to_add_up(budget, 60 * 9.8e3);
  EXPECT_EQ(budget.entries[0].part, "source");
  EXPECT_EQ(budget.entries[0].line, "hill tank");
  EXPECT_EQ(budget.entries[1].line, "hill pipe");
  EXPECT_EQ(budget.entries[2].line, "row 2");
  EXPECT_EQ(pressure_budget(at, "row 1", 1).left, at.line("row 1").pressure[0]);
}

TEST(PressureBudget, RefusesWhereNoWaterComes) {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  const Solution at = solve(rows.with_fault(line_cut("row 2", 100 * ft)));
  EXPECT_THROW(pressure_budget(at, "row 3", 1), InvalidInput);
  EXPECT_THROW(pressure_budget(at, "row 2", 4), InvalidInput);  // at 126 ft
  EXPECT_NO_THROW(pressure_budget(at, "row 2", 3));             // at 90 ft
  for (const int outlet : {0, 11, -1})
    EXPECT_THROW(pressure_budget(at, "row 1", outlet), InvalidInput);
  EXPECT_THROW(pressure_budget(at, "row 9", 1), InvalidInput);
}

TEST(WeakestOutlet, TheSmallestShareOfItsRating) {
  Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  EXPECT_EQ(weakest_outlet(solve(rows))->line, "row 2");
  EXPECT_EQ(weakest_outlet(solve(rows))->outlet, 10);
  Line row = rows.line("row 1");
  row.outlet->rated = 45 * psi;
  rows = rows.with_line(row);
  EXPECT_EQ(weakest_outlet(solve(rows))->line, "row 1");
  EXPECT_EQ(weakest_outlet(solve(rows))->rated, 45 * psi);
}

TEST(WeakestOutlet, OfAlikeOnesTheFirstAndOfDryOnesTheDriest) {
  Line row{.name = "row",
           .pipe = {.inside_diameter = 1 * m, .hazen_williams = 150},
           .outlet = Outlet{.flow = 1 * lph, .at = 100 * kPa},
           .count = 4,
           .spacing = 1 * m,
           .elevations = {1 * m, 1 * m, 1 * m, 1 * m}};
  const auto weakest = [&](const Pressure& held) {
    return weakest_outlet(solve(Layout(Supply{.pressure = held}, {row})))->outlet;
  };
  EXPECT_EQ(weakest(0 * kPa), 1);  // all dry, all as high
  row.elevations = {1 * m, 30 * m, 40 * m, 20 * m};
  EXPECT_EQ(weakest(100 * kPa), 3);
}

TEST(WeakestOutlet, BrokenOnesAreNotJudged) {
  const Layout rows = ouzel_strips().watering({"rows 1 and 2"});
  EXPECT_EQ(weakest_outlet(solve(rows.with_fault(capped("row 2", 10))))->outlet, 9);
  EXPECT_NE(weakest_outlet(solve(rows.with_fault(head_off("row 2", 7))))->outlet, 7);
  const Solution broken = solve(one_riser(spray).with_fault(head_off("row", 1)));
  EXPECT_FALSE(weakest_outlet(broken));
  EXPECT_THROW(pressure_budget(broken), InvalidInput);
}

}  // namespace
}  // namespace hydro
