// What outlets missed after a break, against a simulation in steps of time and the balance of volumes; a
// bucket on its own.
#include "hydro/watering/missed_water.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/watering/bucket.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <numeric>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include "random_layout.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using units::m;

constexpr double balance = 1e-9;  // the issue's, of the volume pumped

Layout strips_1_and_2() {
  return ouzel_strips().watering({"rows 1 and 2"});
}
Layout sheared() {
  return strips_1_and_2().with_fault(riser_sheared("row 2", 7));
}

/// Volumes that one outlet has given, step by step, and when it has all it should.
struct Simulated {
  double has = 0;
  double due_at = -1;  // steps after it was started again
};

TEST(MissedWater, IsThatOfASimulationInSteps) {
  const Solution sound = solve(strips_1_and_2());
  const Solution broken = solve(sheared());
  const Solution capped_one = solve(strips_1_and_2().with_fault(capped("row 2", 7)));
  const InterruptedRun run{100 * units::min, 40 * units::min, 65 * units::min};
  const MissedWater found = missed_water(sound, broken, run, capped_one);
  ASSERT_THAT(found.lines, SizeIs(2));

  constexpr double step = 0.5;  // s
  for (std::size_t l = 0; l < sound.lines().size(); ++l) {
    const LineSolution& line = sound.lines()[l];
    const auto result = std::ranges::find(found.lines, line.name, &MissedOnLine::line);
    if (result == found.lines.end()) continue;
    double longest = 0;
    for (std::size_t i = 0; i < line.flow.size(); ++i) {
      Simulated it;
      double should = 0;
      for (int n = 0; n < 12000; ++n) should += line.flow.si()[i] * step;
      for (int n = 0; n < 65 * 120; ++n) {
        const bool is_broken = n >= 40 * 120;
        const LineSolution& now = is_broken ? broken.lines()[l] : line;
        if (now.state[i] != OutletState::broken) it.has += now.flow.si()[i] * step;
      }
      EXPECT_NEAR(result->missed.si()[i] / should, 1 - it.has / should, 1e-9) << line.name << i;
      const double flow = capped_one.lines()[l].flow.si()[i];
      if (!(flow > 0)) continue;
      for (int n = 0; it.has < should * (1 - 1e-9); ++n) {
        it.has += flow * step;
        it.due_at = (n + 1) * step;
      }
      longest = std::max(longest, it.due_at);
    }
    EXPECT_NEAR(result->for_weakest / units::s, longest, step) << line.name;
    EXPECT_GT(result->for_weakest, 35 * units::min) << line.name;
    EXPECT_LE(result->on_average, result->for_weakest) << line.name;
  }
  EXPECT_THAT(found.lines[0].out_of_service, IsEmpty());
  EXPECT_THAT(found.lines[1].out_of_service, ElementsAre(7));
  EXPECT_EQ(found.for_weakest, std::max(found.lines[0].for_weakest, found.lines[1].for_weakest));
}

TEST(MissedWater, AccountsForAllThatWasPumped) {
  const InterruptedRun run{100 * units::min, 40 * units::min, 65 * units::min};
  const Solution sound = solve(strips_1_and_2());
  std::vector<Fault> faults{riser_sheared("row 2", 7),
                            leak("manifold", 20 * ft, 8 * gpm, 30 * psi),
                            line_cut("row 1", 100 * ft),
                            end_open("row 1"),
                            capped("row 1", 3)};
  for (const Fault& fault : faults) {
    const MissedWater found = missed_water(sound, solve(strips_1_and_2().with_fault(fault)), run);
    EXPECT_NEAR((found.given + found.lost) / found.pumped, 1, balance) << kind_of(fault);
    if (kind_of(fault) == "capped") {
      EXPECT_EQ(found.lost, Volume{});
    } else {
      EXPECT_GT(found.lost, Volume{}) << kind_of(fault);
    }
    double missed = 0;
    for (const MissedOnLine& line : found.lines)
      missed = std::accumulate(line.missed.si().begin(), line.missed.si().end(), missed);
    EXPECT_NEAR((si(found.given) + missed) / (si(sound.inflow()) * 6000), 1, balance)
        << kind_of(fault);
  }
}

TEST(MissedWater, AccountsForRandomLayoutsToo) {
  for (unsigned seed = 0; seed < 60; ++seed) {
    const Layout layout = random_layout(seed);
    const Solution broken = solve(layout);
    const Solution sound = solve(layout.without_faults());
    const InterruptedRun run{3 * units::h, 1 * units::h, 5 * units::h};
    const MissedWater found = missed_water(sound, broken, run);
    const double scale = std::max(si(found.pumped), si(found.given + found.lost));
    EXPECT_NEAR(si(found.given + found.lost - found.pumped), 0, balance * scale) << seed;
  }
}

TEST(MissedWater, TellsDepthsWhereTheGroundIsKnown) {
  const Solution sound = solve(strips_1_and_2());
  const InterruptedRun run{100 * units::min, 40 * units::min, 65 * units::min};
  const MissedWater found = missed_water(
      sound, solve(sheared()), run, {}, {{.lines = {"row 1"}, .row_spacing = 30 * ft}});
  const double ground = 36 * 30 * 0.3048 * 0.3048;
  EXPECT_NEAR(
      found.lines[0].missed_depth.si()[0] * ground / found.lines[0].missed.si()[0], 1, 1e-12);
  EXPECT_TRUE(found.lines[1].missed_depth.empty());
}

TEST(MissedWater, IsNothingWithoutABreak) {
  const Solution sound = solve(strips_1_and_2());
  const MissedWater found =
      missed_water(sound, sound, {100 * units::min, 40 * units::min, 100 * units::min});
  EXPECT_EQ(found.for_weakest, Time{});
  for (const MissedOnLine& line : found.lines) {
    EXPECT_EQ(line.weakest, 0);
    EXPECT_EQ(line.missed_in_all, Volume{});
  }
}

TEST(MissedWater, RefusesWhatCannotBe) {
  const Solution sound = solve(strips_1_and_2());
  const auto refused = [&](const InterruptedRun& run) {
    return refusal([&] { missed_water(sound, sound, run); });
  };
  EXPECT_THAT(refused({}), HasSubstr("planned: is 0 h"));
  EXPECT_THAT(refused({1 * units::h, 40 * units::min, 30 * units::min}),
              HasSubstr("broke: is 40 min, later than stopped, 30 min"));
  EXPECT_THAT(refused({1 * units::h, std::nan("") * units::h, 1 * units::h}),
              HasSubstr("broke: is nan"));
  const Solution other = solve(Layout({.pressure = 30 * psi}, {sample_row("row", 4)}));
  EXPECT_THAT(refusal([&] {
                missed_water(sound, other, {1 * units::h, 0 * units::h, 1 * units::h});
              }),
              HasSubstr("broken: has other lines"));
}

// ---- a bucket

/// The drum at the gate of Ouzel Bench: 15 gal, 0.60 m of water, a 2.0 mm outlet.
const Tank drum{.level = 0.60 * m, .area = 15 * 3.785411784e-3 / 0.60 * m2};
constexpr Hole outlet{2.0 * mm};

TEST(Bucket, RunsEmptyAsASimulationInSteps) {
  const BucketRun found = bucket(drum, outlet, {}, 7);
  EXPECT_NEAR(found.holds / gallon, 15, 1e-12);
  const double a = 0.62 * std::numbers::pi / 4 * 0.002 * 0.002;
  const double surface = si(*drum.surface());
  double level = 0.60, time = 0, run_out = 0;
  std::size_t next = 1;
  // Steps of a second; the outflow at the middle of each, from Torricelli's law.
  while (level > 1e-6 && next + 1 < found.steps.size()) {
    const double first = a * std::sqrt(2 * gravity * level);
    const double middle = a * std::sqrt(2 * gravity * std::max(0.0, level - first / surface / 2));
    level -= middle / surface;
    run_out += middle;
    time += 1;
    if (time >= found.steps[next].time / units::s) {
      EXPECT_NEAR(run_out, si(found.steps[next].run_out), 1.1 * first) << next;
      ++next;
    }
  }
  EXPECT_EQ(found.steps.back().run_out, found.holds);
  EXPECT_EQ(found.steps.back().outflow, Flow{});
  EXPECT_EQ(found.steps.back().time, found.empty);
  // A falling head gives half of what the first outflow would.
  EXPECT_NEAR(si(found.at_first) * si(found.empty) / si(found.holds), 2, 1e-12);
}

TEST(Bucket, CountsFills) {
  const BucketRun two_and_a_half = bucket(drum, outlet, 37.5 * gallon);
  ASSERT_TRUE(two_and_a_half.for_need);
  EXPECT_EQ(two_and_a_half.for_need->whole, 2);
  EXPECT_EQ(two_and_a_half.for_need->fills(), 3);
  EXPECT_NEAR(two_and_a_half.for_need->last / gallon, 7.5, 1e-9);
  // The first half of a drum takes 1 - sqrt(1/2) of the time of the whole.
  EXPECT_NEAR(two_and_a_half.for_need->time / two_and_a_half.empty, 3 - std::sqrt(0.5), 1e-9);
  const BucketRun three = bucket(drum, outlet, 45 * gallon);
  EXPECT_EQ(three.for_need->fills(), 3);
  EXPECT_EQ(three.for_need->last, Volume{});
}

TEST(Bucket, RefusesWhatCannotBe) {
  EXPECT_THAT(refusal([] { bucket(drum, outlet, Volume{}); }), HasSubstr("need: is 0 L"));
  EXPECT_THAT(refusal([] { bucket(drum, outlet, {}, 1); }), HasSubstr("steps: is 1"));
  EXPECT_THAT(refusal([] { bucket({.level = 0.6 * m}, outlet); }), HasSubstr("diameter"));
  const Tank empty{.area = 1 * m2};
  EXPECT_THAT(refusal([&] { bucket(empty, outlet, 1 * litre); }), HasSubstr("tank.level"));
}

}  // namespace
}  // namespace hydro
