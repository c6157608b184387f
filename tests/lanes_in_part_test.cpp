// lanes_in_part_test.cpp: what is solved in part, with polynomials for the rest, is what is solved as a
// whole.
#include "hydro/solver/lanes_in_part.hpp"

#include "hydro/hydro.hpp"
#include "hydro/solver/settle.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "random_layout.hpp"
#include "random_pumped.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

constexpr std::size_t some = 11;  // lanes: more than one vector of any machine

/// Heads and flows half as wide again as they are asked for here.
std::vector<LanesInPart::Asked> asked_of(const LanesPlan& plan) {
  std::vector<LanesInPart::Asked> asked;
  for (const RunAsItIs& run : plan.as_it_is) {
    const double head = 0.02 * plan.tree->head_span, flow = 0.5 * run.flow + 1e-9;
    asked.push_back({{run.feeding - head, run.feeding + head}, {run.flow - flow, run.flow + flow}});
  }
  return asked;
}

/// In each lane another outlet lets out more or less, all in some runs next to each other.
Differences random_breaks(const Tree& tree, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  std::vector<std::size_t> places;
  const std::size_t from = random() % tree.places.size();
  for (std::size_t k = 0; k < tree.places.size(); ++k) {
    const std::size_t i = (from + k) % tree.places.size();
    if (tree.places[i].mouth != none) places.push_back(i);
  }
  Differences differences;
  std::uniform_real_distribution<double> factor(0.2, 3);
  for (std::size_t lane = 0; lane < some && !places.empty(); ++lane) {
    const std::size_t place = places[lane % std::min<std::size_t>(places.size(), 6)];
    Mouth mouth = tree.mouths[index(tree.places[place].mouth)];
    const double times = factor(random);
    mouth.law.coefficient *= times;
    mouth.law.inverse_coefficient /= times;
    differences.replaced.push_back({place, lane, mouth});
  }
  std::ranges::sort(differences.replaced, {}, &Differences::Replaced::place);
  return differences;
}

// Both meet the residuals; what is between them is what 1e-12 of stand-ins and gaps amounts to.
TEST(LanesInPart, AreWhatTheyAreAsAWhole) {
  std::size_t scenarios = 0, met = 0, quiet = 0;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Layout layout = seed % 2 == 0 ? random_pumped(seed) : random_layout(seed);
    const Tree tree = make_tree(layout, properties(layout.water()));
    if (!Lanes::march_on(tree)) continue;
    const Settled settled = settle(tree, SolveOptions{}.newton_steps);
    ASSERT_TRUE(settled.met);
    const Lanes whole(tree, settled.sweeps);
    if (whole.plan().as_it_is.empty()) continue;
    const Differences breaks = random_breaks(tree, seed);
    if (breaks.replaced.empty()) continue;
    LaneBlock room;
    const LanesInPart parts(
        whole, asked_of(whole.plan()), [](const LanesInPart::Tried&) { return true; }, room);
    LanesInPart::Desk desk(parts);
    desk.solve(breaks, some);
    LaneBlock block;
    whole.solve(breaks, some, block);
    scenarios += some;
    const double span = 1e-9 * tree.head_span;
    for (std::size_t lane = 0; lane < some; ++lane) {
      if (((desk.met() >> lane) & 1) == 0 || ((block.met >> lane) & 1) == 0) continue;
      ++met;
      for (std::size_t s = 0; s < tree.sources.size(); ++s) {
        EXPECT_NEAR(desk.block().source_head[s][lane], block.source_head[s][lane], span);
        EXPECT_NEAR(desk.block().source_flow[s][lane],
                    block.source_flow[s][lane],
                    1e-9 * std::abs(block.source_flow[s][lane]) + 1e-15);
      }
      for (std::size_t r = 0; r < tree.runs.size(); ++r) {
        const hydro::Run& run = tree.runs[r];
        const double fed = run.fed_by == none
                               ? block.source_head[index(run.source)][lane]
                               : block.head[tree.runs[index(run.fed_by)].end - 1][lane];
        EXPECT_NEAR(desk.fed(r)[lane], fed, span) << "run " << r;
        quiet += desk.is_marched(r) ? 0 : 1;
      }
    }
  }
  // Most laws are smooth: else nothing was looked at.
  EXPECT_GT(met, scenarios / 2);
  EXPECT_GT(quiet, met);
}

}  // namespace
}  // namespace hydro
