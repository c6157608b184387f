// The same input gives the same bits: again, at the same time as others, on any number of threads;
// and between widths of the machine's vectors and between compilers the same to 1e-12.
//
// That the order of lines, sets and supplies changes no bit is shown in laws_test.cpp and
// loops_test.cpp; that the number of threads changes none, in chances_test.cpp,
// break_every_outlet_test.cpp and beside each of the other long answers; that scenarios in lanes are
// what each is by itself, in lanes_test.cpp.
#include "hydro/hydro.hpp"
#include "hydro/solver/lanes.hpp"
#include "hydro/solver/settle.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <fstream>
#include <functional>
#include <iomanip>
#include <map>
#include <random>
#include <sstream>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "any_layout.hpp"
#include "ouzel_strips.hpp"
#include "random_pumped.hpp"
#include "reference_solutions.hpp"
#include "sample_layouts.hpp"
#include "solve_many.hpp"
#include <gtest/gtest.h>
#include <hwy/targets.h>

namespace hydro {
namespace {

using Bits = std::vector<std::uint64_t>;

Bits all_bits(const Solution& solution) {
  Bits all;
  const auto add_series = [&](const auto& series) {
    const Bits more = bits(series);
    all.insert(all.end(), more.begin(), more.end());
  };
  const auto add = [&](const auto&... quantities) { (all.push_back(bits(si(quantities))), ...); };
  const auto add_supply = [&](const OperatingPoint& point) {
    add(point.flow, point.pressure, point.source_pressure, point.filter_loss);
  };
  add_supply(solution.supply());
  for (const OperatingPoint& further : solution.further_supplies()) add_supply(further);
  for (const LineSolution& line : solution.lines()) {
    add_series(line.pressure);
    add_series(line.line_pressure);
    add_series(line.flow);
    add_series(line.velocity);
    add(line.inflow, line.end_flow, line.inlet_pressure, line.end_pressure);
  }
  const Residuals& residuals = solution.residuals();
  for (const double figure : {residuals.mass, residuals.energy, residuals.outlet})
    all.push_back(bits(figure));
  all.push_back(static_cast<std::uint64_t>(residuals.steps));
  return all;
}

constexpr std::uint64_t layouts = 300;

std::vector<Layout> some_layouts() {
  std::vector<Layout> some;
  for (std::uint64_t seed = 1; seed <= layouts; ++seed) some.push_back(any_layout(seed).layout);
  return some;
}

std::vector<Bits> solved(const std::vector<Layout>& some) {
  std::vector<Bits> all;
  for (const Layout& layout : some) all.push_back(all_bits(solve(layout)));
  return all;
}

TEST(SameBits, OfTheSameLayoutAgain) {
  const std::vector<Layout> some = some_layouts();
  const std::vector<Bits> once = solved(some);
  EXPECT_EQ(solved(some), once);
  EXPECT_EQ(solved(some_layouts()), once) << "made anew";
}

/// All at once, each on a thread of its own.
void at_once(const std::vector<std::function<void()>>& works) {
  std::vector<std::thread> threads;
  for (const auto& work : works) threads.emplace_back(work);
  for (std::thread& thread : threads) thread.join();
}

// Layouts are shared by the threads, not copied: each begins elsewhere, so that at any time some
// solve the same one and some others.
TEST(SameBits, WhileOtherThreadsSolveTheSameAndOtherLayouts) {
  const std::vector<Layout> some = some_layouts();
  const std::vector<Bits> alone = solved(some);
  constexpr std::size_t threads = 6;
  std::vector<std::vector<Bits>> found(threads, std::vector<Bits>(some.size()));
  std::vector<std::function<void()>> works;
  for (std::size_t t = 0; t < threads; ++t)
    works.emplace_back([&some, &found, t] {
      const std::size_t first = t / 2 * some.size() / threads;
      for (std::size_t i = 0; i < some.size(); ++i) {
        const std::size_t which = (first + i) % some.size();
        found[t][which] = all_bits(solve(some[which]));
      }
    });
  at_once(works);
  for (std::size_t t = 0; t < threads; ++t) EXPECT_EQ(found[t], alone) << "thread " << t;
}

TEST(SameBits, OfManySolvedWhateverTheThreads) {
  constexpr std::size_t count = 400;
  const std::vector<Outcome> one = solve_many(1, count, 1);
  for (const int threads : {2, 4}) {
    const std::vector<Outcome> more = solve_many(1, count, threads);
    for (std::size_t i = 0; i < count; ++i) {
      SCOPED_TRACE("seed " + std::to_string(one[i].seed));
      EXPECT_EQ(more[i].seed, one[i].seed);
      EXPECT_EQ(more[i].kind, one[i].kind);
      EXPECT_EQ(more[i].traits, one[i].traits);
      EXPECT_EQ(more[i].outlets, one[i].outlets);
      EXPECT_EQ(more[i].residuals.steps, one[i].residuals.steps);
      EXPECT_EQ(bits(more[i].residuals.energy), bits(one[i].residuals.energy));
      EXPECT_EQ(more[i].failure, one[i].failure);
    }
  }
}

Bits chances_bits(int threads) {
  const Chances found = chances(ouzel_strips().watering({"rows 1 and 2"}),
                                {.manufacturing_variation = 0.05, .inside_diameter = 0.02},
                                {.realisations = 500},
                                {.threads = threads});
  Bits all{bits(si(found.inflow.mean)), bits(si(found.inflow.deviation))};
  for (const LineChances& line : found.lines) {
    const Bits mean = bits(line.pressure.mean), deviation = bits(line.pressure.deviation);
    all.insert(all.end(), mean.begin(), mean.end());
    all.insert(all.end(), deviation.begin(), deviation.end());
  }
  return all;
}

Bits breaks_bits(int threads) {
  const Breaks found = break_every_outlet(ouzel_strips().watering({"rows 1 and 2"}),
                                          {riser_sheared("", 0), BreakDetail::profiles},
                                          {.threads = threads});
  Bits all = bits(found.pressure);
  const Bits flow = bits(found.flow);
  all.insert(all.end(), flow.begin(), flow.end());
  return all;
}

// Each of these answers has threads of its own besides.
TEST(SameBits, OfLongAnswersWhileOthersAreWorkedOut) {
  const Bits of_chances = chances_bits(1), of_breaks = breaks_bits(1);
  ASSERT_FALSE(of_chances.empty());
  ASSERT_FALSE(of_breaks.empty());
  std::vector<Bits> chances_found(3), breaks_found(3);
  std::vector<std::function<void()>> works;
  for (std::size_t i = 0; i < 3; ++i) {
    const int threads = 1 << i;  // 1, 2, 4
    works.emplace_back([&chances_found, i, threads] { chances_found[i] = chances_bits(threads); });
    works.emplace_back([&breaks_found, i, threads] { breaks_found[i] = breaks_bits(threads); });
  }
  at_once(works);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(chances_found[i], of_chances) << (1 << i) << " threads";
    EXPECT_EQ(breaks_found[i], of_breaks) << (1 << i) << " threads";
  }
}

/// While it lives, the machine has vectors of this kind only.
class OnlyTarget {
 public:
  explicit OnlyTarget(std::int64_t target) { take(target); }
  OnlyTarget(const OnlyTarget&) = delete;
  OnlyTarget& operator=(const OnlyTarget&) = delete;
  ~OnlyTarget() { take(0); }

 private:
  static void take(std::int64_t target) {
    hwy::SetSupportedTargetsForTest(target);
    hwy::GetChosenTarget().Update(hwy::SupportedTargets());
  }
};

/// Outlets that differ by some per cent.
Differences uneven_outlets(const Tree& tree, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  Differences differences;
  differences.outlet_factor.resize(tree.places.size());
  for (Lane& lane : differences.outlet_factor)
    for (double& factor : lane.at)
      factor = 0.9 + 0.2 * std::ldexp(static_cast<double>(random() >> 11), -53);
  return differences;
}

TEST(AnyWidth, GivesTheSameScenariosToTheTolerance) {
  std::vector<std::int64_t> targets = hwy::SupportedAndGeneratedTargets();
  std::map<std::size_t, int> marched;
  for (std::uint64_t seed = 1; seed <= layouts; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Layout layout = random_pumped(seed);
    const Tree tree = make_tree(layout, properties(layout.water()));
    if (!Lanes::march_on(tree)) continue;
    const Settled own = settle(tree, 60);
    ASSERT_TRUE(own.met);
    const Lanes on_tree(tree, own.sweeps);
    const Differences differences = uneven_outlets(tree, seed);
    std::vector<LaneBlock> blocks(targets.size());
    for (std::size_t t = 0; t < targets.size(); ++t) {
      const OnlyTarget only(targets[t]);
      on_tree.solve(differences, lanes, blocks[t]);
    }
    for (std::size_t t = 1; t < targets.size(); ++t) {
      ++marched[t];
      EXPECT_EQ(blocks[t].met, blocks[0].met);
      for (std::size_t place = 0; place < tree.places.size(); ++place)
        for (std::size_t lane = 0; lane < lanes; ++lane)
          EXPECT_NEAR(
              blocks[t].head[place][lane], blocks[0].head[place][lane], 1e-12 * tree.head_span)
              << hwy::TargetName(targets[t]) << ", place " << place << ", lane " << lane;
    }
  }
  for (const auto& [target, count] : marched) EXPECT_GT(count, 100);
}

std::map<std::string, ReferenceFigures> written_down() {
  std::ifstream file(HYDRO_REFERENCE_DIR "/solutions.csv");
  std::map<std::string, ReferenceFigures> all;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with('#')) continue;
    std::istringstream fields(line);
    ReferenceFigures row;
    char comma = 0;
    fields >> row.inflow >> comma;
    for (double& figure : row.line_pressures) fields >> figure >> comma;
    for (double& figure : row.flows) fields >> figure >> comma;
    std::string name;
    std::getline(fields, name);
    all[name] = row;
  }
  return all;
}

// The file was written by one compiler, and is compared by each.
TEST(AnyCompiler, FindsTheSameFiguresToTheTolerance) {
  const std::map<std::string, ReferenceFigures> all = written_down();
  const std::vector<ReferenceLayout> ours = reference_layouts();
  EXPECT_EQ(all.size(), ours.size());
  for (const ReferenceLayout& it : ours) {
    SCOPED_TRACE(it.name);
    const auto found = all.find(it.name);
    ASSERT_NE(found, all.end()) << "not in the file: write it anew (many_layouts --reference)";
    const Solution solution = solve(it.layout);
    const ReferenceFigures is = figures_of(solution), tolerance = tolerances_of(solution);
    EXPECT_NEAR(is.inflow, found->second.inflow, tolerance.inflow);
    for (std::size_t i = 0; i < is.flows.size(); ++i) {
      EXPECT_NEAR(
          is.line_pressures[i], found->second.line_pressures[i], tolerance.line_pressures[i]);
      EXPECT_NEAR(is.flows[i], found->second.flows[i], tolerance.flows[i]);
    }
  }
}

}  // namespace
}  // namespace hydro
