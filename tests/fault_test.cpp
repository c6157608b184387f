// What a fault does, against Bernoulli's equation written out, and its words.
#include "hydro/layout/fault.hpp"

#include "hydro/answers/comparison.hpp"
#include "hydro/physics/friction.hpp"
#include "hydro/solver/solve.hpp"

#include <cmath>
#include <numbers>

#include <gmock/gmock.h>

namespace hydro {
namespace {

using units::m;

const Riser riser{
    .height = 4 * ft, .inside_diameter = 0.81 * inch, .hazen_williams = 150, .loss_coefficient = 1};

Layout strip(const Riser& with = riser) {
  return Layout(Supply{.pressure = 40 * psi},
                {Line{.name = "row 1",
                      .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
                      .outlet = Outlet{.flow = 3.52 * gpm, .at = 25 * psi, .minimum = 18 * psi},
                      .count = 10,
                      .spacing = 36 * ft,
                      .riser = with}});
}

/// Head left at the mouth of an open riser after its own friction and K velocity heads: 1 velocity
/// head.
void expect_bernoulli(const Solution& solution, int outlet, const Length& height, double K) {
  const LineSolution& row = solution.line("row 1");
  const auto i = static_cast<std::size_t>(outlet - 1);
  const double H = si(head(row.line_pressure[i], solution.water().density));
  const double bore = si(riser.inside_diameter.value());
  const double speed = si(row.flow[i]) / (std::numbers::pi / 4 * bore * bore);
  const double friction =
      si(friction_loss(riser.pipe().value(), height, row.flow[i], solution.water()));
  EXPECT_NEAR(H - si(height), friction + (1 + K) * speed * speed / (2 * gravity), 1e-10);
  EXPECT_EQ(row.state[i], OutletState::broken);
  EXPECT_EQ(row.pressure[i], Pressure{});
}

TEST(HeadOff, LetsOutWhatTheOpenRiserPasses) {
  expect_bernoulli(solve(strip().with_fault(head_off("row 1", 7))), 7, riser.height, 1.0);
  expect_bernoulli(solve(strip().with_fault(head_off("row 1", 1, 0.5))), 1, riser.height, 0.5);
}

TEST(HeadOff, TakesTheTeesLossWhereTheRiserHasNone) {
  Riser lossless = riser;
  lossless.loss_coefficient.reset();
  expect_bernoulli(solve(strip(lossless).with_fault(head_off("row 1", 7))), 7, riser.height, 1.0);
}

TEST(RiserSheared, LetsOutWhatTheStubPasses) {
  expect_bernoulli(solve(strip().with_fault(riser_sheared("row 1", 7))), 7, 0.5 * ft, 1.0);
  expect_bernoulli(
      solve(strip().with_fault(riser_sheared("row 1", 7, 1 * ft, 2.0))), 7, 1 * ft, 2.0);
  Riser low = riser;
  low.height = 0.2 * ft;  // shorter than the default stub
  expect_bernoulli(solve(strip(low).with_fault(riser_sheared("row 1", 7))), 7, 0.2 * ft, 1.0);
}

TEST(Clogged, AndWornChangeTheFlowAtTheSamePressure) {
  for (const double share : {0.1, 0.6, 0.99}) {
    const LineSolution less = solve(strip().with_fault(clogged("row 1", 7, share))).line("row 1");
    const LineSolution more = solve(strip().with_fault(worn("row 1", 7, share))).line("row 1");
    const Outlet outlet = *strip().lines()[0].outlet;
    EXPECT_NEAR(less.flow[6] / discharge(outlet, less.pressure[6]), 1 - share, 1e-13);
    EXPECT_NEAR(more.flow[6] / discharge(outlet, more.pressure[6]), 1 + share, 1e-13);
  }
}

TEST(Capped, HoldsTheStaticPressure) {
  const Solution solution = solve(strip().with_fault(capped("row 1", 7)));
  const LineSolution& row = solution.line("row 1");
  EXPECT_EQ(row.flow[6], Flow{});
  EXPECT_EQ(row.state[6], OutletState::closed);
  EXPECT_NEAR(row.pressure[6] / kPa,
              (row.line_pressure[6] - pressure(riser.height, solution.water().density)) / kPa,
              1e-9);
}

TEST(Faults, MayBeSeveralAtOnce) {
  const Layout layout = strip()
                            .with_fault(head_off("row 1", 3))
                            .with_fault(capped("row 1", 9))
                            .with_fault(clogged("row 1", 1, 0.5));
  const LineSolution row = solve(layout).line("row 1");
  EXPECT_EQ(row.state[2], OutletState::broken);
  EXPECT_EQ(row.state[8], OutletState::closed);
  EXPECT_EQ(solve(layout.without_faults()).line("row 1").flow[0],
            solve(strip()).line("row 1").flow[0]);
}

TEST(Faults, SayThemselvesInOneSentence) {
  const Layout layout = strip();
  const Line& line = layout.lines()[0];
  EXPECT_EQ(describe(head_off("row 1", 7), line, UnitSystem::us),
            "row 1, outlet 7: head off, riser open at its top (4.0 ft high, bore 0.81 in, loss "
            "coefficient 1)");
  EXPECT_EQ(
      describe(riser_sheared("row 1", 7, {}, 1.5), line, UnitSystem::si),
      "row 1, outlet 7: riser sheared, stub open (0.2 m high, bore 20.6 mm, loss coefficient 1.5)");
  EXPECT_EQ(describe(clogged("row 1", 7, 0.6), line, UnitSystem::us),
            "row 1, outlet 7: clogged, 60 % of its flow lost");
  EXPECT_EQ(describe(worn("row 1", 7, 0.25), line, UnitSystem::us),
            "row 1, outlet 7: worn, 25 % more flow");
  EXPECT_EQ(describe(capped("row 1", 7), line, UnitSystem::us), "row 1, outlet 7: capped");
}

// The story that every grower knows: one head off, and the next ones on that row stop turning,
// while those near the inlet go on (common practice, no source; numbers of our own).
TEST(Comparison, TellsWhatTheBreakDoesToTheRest) {
  const Solution before = solve(strip());
  const Solution after = solve(strip().with_fault(riser_sheared("row 1", 7)));
  const Comparison change = compare(before, after);
  for (const BelowMinimum& outlet : change.newly_below_minimum) {
    EXPECT_EQ(outlet.line, "row 1");
    EXPECT_LT(outlet.pressure, 18 * psi);
    EXPECT_NE(outlet.outlet, 7) << "a broken outlet is judged nowhere";
  }
  EXPECT_FALSE(change.newly_below_minimum.empty());
  EXPECT_EQ(change.newly_below_minimum.back().outlet, 10);
  EXPECT_EQ(change.escaping, after.line("row 1").flow[6]);
  Flow others_before{}, others_after{};
  for (std::size_t i = 0; i < 10; ++i) {
    if (i == 6) continue;
    others_before += before.line("row 1").flow[i];
    others_after += after.line("row 1").flow[i];
  }
  EXPECT_NEAR(change.missing / gpm, (others_before - others_after) / gpm, 1e-10);
  ASSERT_EQ(change.lines.size(), 1u);
  for (std::size_t i = 0; i < 10; ++i) {
    EXPECT_EQ(change.lines[0].pressure[i],
              after.line("row 1").pressure[i] - before.line("row 1").pressure[i]);
    EXPECT_LT(change.lines[0].line_pressure[i], Pressure{});
    EXPECT_EQ(change.lines[0].flow[i], after.line("row 1").flow[i] - before.line("row 1").flow[i]);
  }
  EXPECT_EQ(change.inflow_after, after.inflow());
  EXPECT_EQ(change.supply_before, 40 * psi);
}

TEST(Comparison, RefusesTwoDifferentLayouts) {
  Line other = strip().lines()[0];
  other.count = 9;
  EXPECT_THROW(compare(solve(strip()), solve(Layout(Supply{.pressure = 40 * psi}, {other}))),
               InvalidInput);
}

}  // namespace
}  // namespace hydro
