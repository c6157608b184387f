// The cases that stop solvers are solved, and in few steps: a small exponent, a dry end, a pipe far
// too narrow cost steps, not answers.
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "any_layout.hpp"
#include "hard_cases.hpp"
#include "random_looped.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

// What a step costs is about a microsecond for ten outlets; ten times the three steps of a line as
// it is designed is what a hard case may take.
constexpr int most_steps = 30;

/// Those of 1,000 outlets with the smallest exponent, whose flows hardly tell their heads.
bool may_take_longer(std::string_view name, int outlets) {
  return outlets == 1000 && (name == "exponent 0.1, uphill 150 %" ||
                             name == "exponent 0.1, pipe 10,000 times too narrow");
}

TEST(HardCases, AreSolvedInFewSteps) {
  for (const HardCase& hard : hard_cases())
    for (const int outlets : hard_counts) {
      SCOPED_TRACE(std::string(hard.name) + ", " + std::to_string(outlets) + " outlets");
      const Residuals residuals = solve(hard.layout(outlets)).residuals();
      EXPECT_TRUE(residuals.are_met());
      if (may_take_longer(hard.name, outlets)) continue;
      EXPECT_LE(residuals.steps, most_steps);
      EXPECT_FALSE(residuals.last_resort);
    }
}

// A supply that rises little by little takes every outlet, one after the other, from laminar flow
// through what lies between to turbulent: where a law jumped no solver would find the flow.
TEST(HardCases, FlowsTurnTurbulentAnywhereOnTheLine) {
  const auto hard = std::ranges::find(
      hard_cases(), "smooth pipe, turbulent to laminar, Re 6,000 to 0", &HardCase::name);
  ASSERT_NE(hard, hard_cases().end());
  for (const int outlets : {20, 100}) {
    const Layout layout = hard->layout(outlets);
    for (int kilopascals = 1; kilopascals <= 600; ++kilopascals) {
      SCOPED_TRACE(std::to_string(kilopascals) + " kPa");
      const Residuals residuals =
          solve(layout.with_supply(Supply{.pressure = kilopascals * kPa})).residuals();
      EXPECT_TRUE(residuals.are_met());
      EXPECT_LE(residuals.steps, most_steps);
    }
  }
}

// Layouts that were not solved once. A part without water was to be opened by a gate
// whose two sides both lay in it; regulators side by side, of which the one that ought to hold was shut
// because a flow ran back through it for one step; pumps alike whose water has no slope at rest.
// And one line of 9,269 outlets, all but dry, that took more steps than were given.
TEST(MendedLayouts, StaySolved) {
  for (const std::uint64_t seed : {317U, 74794U, 132850U, 390868U}) {
    SCOPED_TRACE("any layout, seed " + std::to_string(seed));
    EXPECT_TRUE(solve(any_layout(seed).layout).residuals().are_met());
  }
  for (const std::uint64_t seed : {44776U, 73282U, 103319U, 243997U, 369446U, 404074U, 601880U}) {
    SCOPED_TRACE("looped, seed " + std::to_string(seed));
    EXPECT_TRUE(solve(random_looped(seed)).residuals().are_met());
  }
}

// Steps in which a regulator was not holding yet lifted the heads beyond it far past its setting, and
// led back to where they came from for ever.
TEST(MendedLayouts, RegulatorsFloodNothingBeforeTheyHold) {
  LoopedMix low_exponents;
  low_exponents.parts.most_exponent = 0.25;
  for (const Layout& layout : {random_looped(523798), random_looped(491905, low_exponents)}) {
    const Residuals residuals = solve(layout).residuals();
    EXPECT_TRUE(residuals.are_met());
    EXPECT_LE(residuals.steps, most_steps);
    EXPECT_FALSE(residuals.last_resort);
  }
}

}  // namespace
}  // namespace hydro
