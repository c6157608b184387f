// Many scenarios at once against one at a time: on random trees with faults, dry ends, compensating
// outlets, pumps and regulators, each lane is what settle() finds for that lane's own tree.
#include "hydro/solver/lanes.hpp"

#include "hydro/hydro.hpp"
#include "hydro/solver/settle.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <optional>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "random_layout.hpp"
#include "random_pumped.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

constexpr std::size_t some = 9;  // lanes of a block that are looked at: more than one vector of any

/// Outlets and pipes that differ by some per cent, supplies by a metre or so, and now and then an
/// outlet that is closed or breaks.
Differences random_differences(const Tree& tree, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  std::normal_distribution<double> normal;
  const auto vary = [&](std::size_t count, double share) {
    std::vector<Lane> factors(count);
    for (Lane& lane : factors)
      for (double& factor : lane.at) factor = std::exp(share * normal(random));
    return factors;
  };
  Differences differences{.outlet_factor = vary(tree.places.size(), 0.05)};
  if (seed % 3 == 0) {
    differences.friction_factor = vary(tree.reaches.size(), 0.1);
    differences.fitting_factor = vary(tree.reaches.size(), 0.1);
    differences.riser_friction_factor = vary(tree.mouths.size(), 0.1);
    differences.riser_fitting_factor = vary(tree.mouths.size(), 0.1);
    for (const Source& source : tree.sources)
      for (std::size_t lane = 0; lane < lanes; ++lane)
        differences.supply.push_back(source.law->raised_by(normal(random)));
  }
  constexpr double broken = 1.0 / 50;
  std::uniform_real_distribution<double> chance;
  for (std::size_t i = 0; seed % 5 < 2 && i < tree.places.size(); ++i) {
    if (tree.places[i].mouth == none) continue;
    for (std::size_t lane = 0; lane < some; ++lane) {
      if (chance(random) > broken) continue;
      std::optional<Mouth> mouth;
      if (chance(random) > 0.3) {
        mouth = tree.mouths[index(tree.places[i].mouth)];
        mouth->law = OutletLaw{20 * mouth->law.flow(10) / std::sqrt(10.0), 0.5};
        mouth->height /= 2;
      }
      differences.replaced.push_back({i, lane, mouth});
    }
  }
  return differences;
}

/// As far as steps lead: settle() is content within the tolerance.
std::optional<Sweeps> settled(const Tree& tree, bool to_the_end) {
  Settled reached = settle(tree, 60);
  if (!reached.met) return std::nullopt;
  Sweeps sweeps = std::move(reached.sweeps);
  for (int step = 0; step < 3 && to_the_end; ++step) {
    Sweeps next = sweeps;
    const Imbalance before = next.gather();
    next.correct();
    const Imbalance after = next.gather();
    if (!after.within(Residuals::tolerance) ||
        after.outlet + after.energy + after.mass >= before.outlet + before.energy + before.mass)
      break;
    sweeps = std::move(next);
  }
  return sweeps;
}

/// Of the flow of an outlet with its pressure head.
double slope_of(const Tree& tree, std::size_t place, const State& state) {
  if (tree.places[place].mouth == none || !(state.outlet_head > 0)) return 0;
  const OutletLaw& law = tree.mouths[index(tree.places[place].mouth)].law;
  return law.exponent_at(state.outlet_head) * state.outlet_flow / state.outlet_head;
}

TEST(Lanes, AreWhatEachScenarioIsByItself) {
  constexpr std::uint64_t count = 10'000;
  std::size_t scenarios = 0, alone = 0, dry = 0, unlike = 0;
  double worst_head = 0, worst_flow = 0;
  std::array<int, 25> passes{};
  for (std::uint64_t seed = 1; seed <= count; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Layout layout = seed % 2 == 0 ? random_pumped(seed) : random_layout(seed);
    const Tree tree = make_tree(layout, properties(layout.water()));
    if (!Lanes::march_on(tree)) continue;
    const auto start = settled(tree, false);
    ASSERT_TRUE(start);
    const Lanes on_tree(tree, *start);
    const Differences differences = random_differences(tree, seed);
    LaneBlock block;
    on_tree.solve(differences, some, block);
    scenarios += some;
    alone += static_cast<std::size_t>(std::popcount(block.alone));
    ++passes[static_cast<std::size_t>(block.passes)];
    const std::size_t lane = seed % some;
    const Tree own = on_tree.tree_of(differences, lane);
    const bool is_alone = ((block.alone >> lane) & 1) == 1;
    const auto by_itself = settled(own, !is_alone);
    EXPECT_EQ(((block.met >> lane) & 1) == 1, by_itself.has_value());
    if (!by_itself) {
      ++unlike;
      continue;
    }
    double flow_scale = 0;
    for (const State& state : by_itself->states())
      flow_scale = std::max(flow_scale, std::abs(state.flow));
    for (std::size_t i = 0; i < own.places.size(); ++i) {
      const State& state = by_itself->states()[i];
      const double head_gap = std::abs(block.head[i][lane] - state.head);
      const double flow_gap = std::abs(block.outlet_flow[i][lane] - state.outlet_flow);
      if (is_alone) {
        EXPECT_EQ(block.head[i][lane], state.head) << "place " << i;
      }
      EXPECT_LE(std::abs(block.outlet_head[i][lane] - state.outlet_head), 1e-12 * own.head_span)
          << "place " << i;
      EXPECT_LE(head_gap, 1e-12 * own.head_span) << "place " << i;
      // Near its end an outlet of small exponent turns a breath of head into much flow.
      const double slope = slope_of(own, i, state);
      EXPECT_LE(flow_gap, 1e-12 * (flow_scale + slope * own.head_span)) << "place " << i;
      worst_head = std::max(worst_head, head_gap / own.head_span);
      if (flow_scale > 0) worst_flow = std::max(worst_flow, flow_gap / flow_scale);
      dry += own.places[i].mouth != none && state.outlet_flow == 0;
    }
  }
  std::printf("%zu scenarios, %zu left to settle() alone; %zu dry outlets; %zu without an answer\n",
              scenarios,
              alone,
              dry,
              unlike);
  std::printf("worst head %.1e, flow %.1e; passes", worst_head, worst_flow);
  for (std::size_t i = 0; i < passes.size(); ++i)
    if (passes[i] > 0) std::printf(" %zu: %d", i, passes[i]);
  std::printf("\n");
}

}  // namespace
}  // namespace hydro
