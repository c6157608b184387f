// The solver against closed forms, and in the cases that stop solvers.
#include "hydro/solver/solve.hpp"

#include "hydro/physics/friction.hpp"

#include <cmath>
#include <numeric>
#include <string>
#include <vector>

#include "random_layout.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

using units::m;

Line plain_lateral(int count) {
  return {.name = "row",
          .pipe = {.inside_diameter = 44.5 * mm, .hazen_williams = 150},
          .outlet = Outlet{.flow = 800 * lph, .at = 250 * kPa},
          .count = count,
          .spacing = 12 * m};
}

void expect_solved(const Solution& solution) {
  EXPECT_LE(solution.residuals().mass, 1e-12);
  EXPECT_LE(solution.residuals().energy, 1e-12);
  EXPECT_LE(solution.residuals().outlet, 1e-12);
}

// Christiansen's multiple-outlet factor is, for equal outflows, exactly F = sum of i^m / N^(m+1), i
// = 1 .. N (J. E. Christiansen, Irrigation by Sprinkling, Bulletin 670, University of California,
// 1942). The line loses 1e-4 of its pressure and the outlets have exponent 0.1: their flows are
// equal to 1e-5, which moves F, about their m-th power, by 2e-5 at most. The solver's tolerance,
// 1e-12 of 102 m in each reach, is 1e-6 of 1e-2 m.
TEST(ManyOutlets, LoseWhatTheExactSumSays) {
  for (const double exponent : {1.852, 2.0})
    for (const int count : {1, 2, 3, 4, 5, 10, 20, 50, 100}) {
      Line line = plain_lateral(count);
      const double whole_flow = count * si(80 * lph);
      // A bore at which the whole flow would lose 1e-2 m over the line.
      const double length = count * 12.0;
      if (exponent == 2.0)
        line.pipe = {
            .inside_diameter = std::pow(8 * 0.02 * length * whole_flow * whole_flow /
                                            (std::numbers::pi * std::numbers::pi * gravity * 1e-2),
                                        0.2) *
                               m,
            .darcy_factor = 0.02};
      else
        line.pipe.inside_diameter =
            std::pow(10.67 * length * std::pow(whole_flow / 150, 1.852) / 1e-2, 1 / 4.8704) * m;
      line.outlet = Outlet{.flow = 80 * lph, .at = 1000 * kPa, .exponent = 0.1};
      const Solution solution = solve(Layout(Supply{.pressure = 1000 * kPa}, {line}));
      const WaterProperties& water = solution.water();
      double sum = 0;
      for (int i = 1; i <= count; ++i) sum += std::pow(i, exponent);
      const double lost = si(solution.supply_pressure() - solution.lines()[0].line_pressure.back());
      const double alone = si(
          pressure(friction_loss(line.pipe, length * m, solution.inflow(), water), water.density));
      EXPECT_NEAR(lost / alone, sum / std::pow(count, exponent + 1), 2e-5)
          << count << ", " << exponent;
    }
}

// H = P + k q^2 with q = c sqrt(P): P = H / (1 + k c^2).
TEST(OneOutlet, HasItsClosedForm) {
  const Pipe pipe{.inside_diameter = 25 * mm, .darcy_factor = 0.025};
  const Outlet outlet{.flow = 2000 * lph, .at = 200 * kPa};
  for (const double length : {0.1, 10.0, 1000.0, 100000.0}) {
    const Line line{.name = "row",
                    .pipe = pipe,
                    .outlet = outlet,
                    .count = 1,
                    .first_at = length * m,
                    .ground_rise = 5 * m,
                    .loss_coefficient = 3,
                    .outlet_loss_coefficient = 0.5};
    const Solution solution = solve(Layout(Supply{.pressure = 300 * kPa}, {line}));
    const double weight = si(solution.water().density) * gravity;
    const double bore_area = si(area(pipe));
    const double k = (0.025 * length / 0.025 + 3.5) / (2 * gravity * bore_area * bore_area);
    const double c = si(2000 * lph) / std::sqrt(200e3 / weight);
    const double exact = weight * (300e3 / weight - 5) / (1 + k * c * c);
    EXPECT_NEAR(si(solution.lines()[0].pressure[0]), exact, 1e-11 * 300e3) << length;
  }
}

// Laminar pipe and outlets of exponent 1 are linear: on a level line of N reaches of resistance R
// and outlets of conductance G the heads follow from the far end by P(i-1) = P(i) + R Q(i), Q(i-1)
// = Q(i) + G P(i-1).
TEST(LinearLine, IsSolvedAsTheRecurrenceSays) {
  const Outlet seep{.flow = 0.5 * lph, .at = 100 * kPa, .exponent = 1};
  const Line line{.name = "tape",
                  .pipe = {.inside_diameter = 16 * mm, .roughness = 0 * mm},
                  .outlet = seep,
                  .count = 60,
                  .spacing = 0.5 * m};
  const Solution solution = solve(Layout(Supply{.pressure = 80 * kPa}, {line}));
  const WaterProperties& water = solution.water();
  ASSERT_LT(reynolds_number(line.pipe, solution.inflow(), water), 2000);
  const double weight = si(water.density) * gravity;
  const double R =
      128 * si(water.kinematic_viscosity) * 0.5 / (std::numbers::pi * gravity * std::pow(0.016, 4));
  const double G = si(0.5 * lph) / (100e3 / weight);
  std::vector<double> P(60);
  double head = 1, flow = 0;
  for (std::size_t i = 60; i-- > 0;) {
    P[i] = head;
    flow += G * head;
    head += R * flow;
  }
  for (std::size_t i = 0; i < 60; ++i)
    EXPECT_NEAR(solution.lines()[0].pressure[i] / kPa, 80 * P[i] / head, 80e-11);
}

TEST(Solver, TakesOneToAHundredThousandOutlets) {
  for (const int count : {1, 2, 10, 1000, 100000}) {
    Line line = plain_lateral(count);
    line.pipe.inside_diameter = 44.5 * std::pow(count / 10.0, 0.5) * mm;
    const Solution solution = solve(Layout(Supply{.pressure = 300 * kPa}, {line}));
    expect_solved(solution);
    EXPECT_EQ(solution.lines()[0].flow.size(), static_cast<std::size_t>(count));
  }
}

TEST(Solver, TakesAHundredThousandOutletsOnAHoseMostOfThemDry) {
  Line line = plain_lateral(100000);
  line.ground_rise = 2000 * m;
  const Solution solution = solve(Layout(Supply{.pressure = 300 * kPa}, {line}));
  expect_solved(solution);
  EXPECT_EQ(solution.lines()[0].state.back(), OutletState::dry);
  EXPECT_EQ(solution.lines()[0].state.front(), OutletState::works);
}

// Twenty thousand lines, each at the end of the one before: no recursion to run out of.
TEST(Solver, TakesAChainOfManyLines) {
  std::vector<Line> lines;
  for (int i = 0; i < 20000; ++i)
    lines.push_back({.name = std::to_string(i),
                     .fed_by = i == 0 ? "" : std::to_string(i - 1),
                     .pipe = {.inside_diameter = 300 * mm, .hazen_williams = 140},
                     .outlet = Outlet{.flow = 1 * lph, .at = 100 * kPa},
                     .count = 1,
                     .spacing = 0.1 * m});
  expect_solved(solve(Layout(Supply{.pressure = 200 * kPa}, lines)));
}

// Every outlet capped: what is left is a plain pipe, here with water only to the line beyond.
TEST(CappedLine, IsAPlainPipe) {
  Line row = plain_lateral(10);
  Line beyond = plain_lateral(5);
  beyond.name = "beyond";
  beyond.fed_by = "row";
  Layout capped_row(Supply{.pressure = 300 * kPa}, {row, beyond});
  for (int outlet = 1; outlet <= 10; ++outlet)
    capped_row = capped_row.with_fault(capped("row", outlet));
  const Line main{.name = "row", .pipe = row.pipe, .length = row.whole_length()};
  const Solution one = solve(capped_row);
  const Solution other = solve(Layout(Supply{.pressure = 300 * kPa}, {main, beyond}));
  for (std::size_t i = 0; i < 5; ++i)
    EXPECT_NEAR(
        one.line("beyond").pressure[i] / kPa, other.line("beyond").pressure[i] / kPa, 300e-11);
}

TEST(Supply, AtRestLeavesEverythingDry) {
  const Solution solution = solve(Layout(Supply{.pressure = 0 * kPa}, {plain_lateral(10)}));
  expect_solved(solution);
  EXPECT_EQ(solution.inflow(), Flow{});
  for (const OutletState state : solution.lines()[0].state) EXPECT_EQ(state, OutletState::dry);
}

TEST(Supply, MayBeAPondAboveTheField) {
  Line line = plain_lateral(10);
  line.ground_rise = -40 * m;
  const Solution solution =
      solve(Layout(Supply{.pressure = 0 * psi, .elevation = 120 * m}, {line}));
  expect_solved(solution);
  const LineSolution& row = solution.lines()[0];
  EXPECT_GT(row.pressure[9], 50 * kPa);
  for (std::size_t i = 1; i < 10; ++i) EXPECT_GE(row.line_pressure[i], row.line_pressure[i - 1]);
}

TEST(Solver, ShowsADryTailUphill) {
  Line line = plain_lateral(20);
  line.ground_rise = 60 * m;  // more than the 300 kPa lift
  const Solution solution = solve(Layout(Supply{.pressure = 300 * kPa}, {line}));
  expect_solved(solution);
  const LineSolution& row = solution.lines()[0];
  EXPECT_EQ(row.state[0], OutletState::works);
  EXPECT_EQ(row.state[19], OutletState::dry);
  EXPECT_EQ(row.flow[19], Flow{});
  EXPECT_EQ(row.pressure[19], Pressure{});
  EXPECT_LT(row.line_pressure[19], Pressure{});
}

TEST(Solver, TakesAnOutletAtTheInletItself) {
  Line line = plain_lateral(3);
  line.first_at = 0 * m;
  const Solution solution = solve(Layout(Supply{.pressure = 200 * kPa}, {line}));
  expect_solved(solution);
  EXPECT_NEAR(solution.lines()[0].pressure[0] / kPa, 200, 200e-12);
}

TEST(Solver, ThrowsWhatItReachedWhenItDoesNotSettle) {
  const Layout layout(Supply{.pressure = 300 * kPa}, {plain_lateral(10)});
  try {
    solve(layout, {.newton_steps = 0});
    FAIL() << "nothing can be solved in no steps";
  } catch (const NotSolved& error) {
    EXPECT_EQ(error.unfinished().residuals().steps, 0);
    EXPECT_GT(error.unfinished().residuals().outlet, 1e-12);
    EXPECT_NE(std::string(error.what()).find("was not solved"), std::string::npos);
  }
}

// Seeds of the nastiest mix on which plain Newton steps do not settle within 60 (found by trying
// them).
TEST(LastResort, SolvesWhatNewtonLeaves) {
  int last_resorts = 0;
  for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
    const Solution solution = solve(random_layout(seed, {.most_exponent = 0.25}));
    expect_solved(solution);
    last_resorts += solution.residuals().last_resort;
  }
  EXPECT_GT(last_resorts, 0) << "the mix no longer reaches the last resort; make it nastier";
}

// A pipe sized for 800 L/h heads with outlets of 1 L/h: all its flow is slow.
TEST(Notes, SayWhereHazenWilliamsIsStretched) {
  Line line = plain_lateral(10);
  EXPECT_TRUE(solve(Layout(Supply{.pressure = 300 * kPa}, {line})).notes().empty());
  line.outlet = Outlet{.flow = 1 * lph, .at = 250 * kPa};
  const std::vector<std::string> notes =
      solve(Layout(Supply{.pressure = 300 * kPa}, {line})).notes();
  ASSERT_EQ(notes.size(), 1u);
  EXPECT_NE(notes[0].find("line \"row\": 100 %"), std::string::npos) << notes[0];
}

}  // namespace
}  // namespace hydro
