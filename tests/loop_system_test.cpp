// The small system that joints leave (solver/loops.hpp), and layouts with so many joints that it is
// solved as a sparse one.
#include "hydro/physics/friction.hpp"
#include "hydro/solver/loops.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <random>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace hydro {
namespace {

struct System {
  std::vector<Stretch> stretches;
  std::vector<Root> roots;
  std::vector<Closure> closures;
};

System random_system(unsigned seed) {
  std::mt19937 numbers(seed);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution(low, high)(numbers);
  };
  const auto below = [&](std::size_t most) {
    return static_cast<std::int32_t>(
        std::uniform_int_distribution<std::size_t>(0, most - 1)(numbers));
  };
  System system;
  const std::size_t roots = 1 + static_cast<std::size_t>(below(4));
  for (std::size_t i = 0; i < roots; ++i) {
    const bool shut = i > 0 && below(2) == 0;
    system.roots.push_back({.is_shut = shut,
                            .resistance = shut ? 0 : between(0, 100),
                            .rise = shut ? 0 : between(-1, 1),
                            .drawn = shut ? between(-0.01, 0.01) : 0,
                            .slope = shut ? between(1e-4, 1e-3) : 0});
  }
  const std::size_t count = 5 + static_cast<std::size_t>(below(60));
  for (std::size_t i = 0; i < count; ++i) {
    const bool begins = i < roots || below(4) == 0;
    const double up = between(0.5, 1);
    system.stretches.push_back({.feeder = begins ? none : below(i),
                                .source = begins ? below(i < roots ? i + 1 : roots) : none,
                                .up = up,
                                .down = below(10) == 0 ? 0 : up,  // a regulator holds
                                .rise = between(-1, 1),
                                .loss = between(10, 1000)});
    if (i < roots) system.stretches.back().source = static_cast<std::int32_t>(i);
  }
  const std::size_t closures = 1 + static_cast<std::size_t>(below(count / 2));
  for (std::size_t i = 0; i < closures; ++i) {
    const std::int32_t from = below(count);
    const std::int32_t to = below(count);
    if (from != to) system.closures.push_back({from, to, between(-1, 1)});
  }
  return system;
}

// Doubles in systems whose entries differ by three powers of ten. Without a loss of their own two
// joints between the same stretches would leave it open which of them the water takes.
constexpr double rounding = 1e-9;
constexpr double least_loss = 1;

TEST(LoopSystem, IsTheSameDenseAndSparse) {
  for (unsigned seed = 1; seed <= 500; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const System it = random_system(seed);
    const Balance dense = balance_densely(it.stretches, it.roots, it.closures, least_loss);
    const Balance sparse = balance_sparsely(it.stretches, it.roots, it.closures, least_loss);
    const auto compare = [](const std::vector<double>& one, const std::vector<double>& other) {
      ASSERT_EQ(one.size(), other.size());
      double scale = 1;
      for (const double value : one) scale = std::max(scale, std::abs(value));
      for (std::size_t i = 0; i < one.size(); ++i)
        EXPECT_NEAR(one[i], other[i], rounding * scale) << i;
    };
    compare(dense.joint_rises, sparse.joint_rises);
    compare(dense.taken, sparse.taken);
    compare(dense.source_rises, sparse.source_rises);
    compare(dense.asked, sparse.asked);
  }
}

// Drip lines between a manifold and a flushing manifold: two pipes and a hundred rungs. The losses
// along the flushing manifold are worked out anew from the flows that come to it.
TEST(LoopSystem, AHundredRowsOnAFlushingManifold) {
  constexpr int rows = 100;
  const Length apart = 1.2 * units::m;
  const Pipe main{.inside_diameter = 50 * mm, .hazen_williams = 145};
  const Pipe tube{.inside_diameter = 16 * mm, .roughness = Length{}};
  const Outlet dripper{.flow = 2.0 * lph, .at = 100 * kPa};
  std::vector<Line> lines{{.name = "manifold", .pipe = main, .length = double(rows - 1) * apart},
                          {.name = "flushing manifold",
                           .fed_by = "row 1",
                           .pipe = main,
                           .length = double(rows - 1) * apart}};
  for (int i = 0; i < rows; ++i) {
    Line row{.name = "row " + std::to_string(i + 1),
             .fed_by = "manifold",
             .tap = double(i) * apart,
             .pipe = tube,
             .outlet = dripper,
             .count = 40 + i % 7,
             .spacing = 0.3 * units::m};
    if (i > 0) {
      row.joins = "flushing manifold";
      row.joins_at = double(i) * apart;
    }
    lines.push_back(row);
  }
  const Layout layout(Supply{.pressure = 150 * kPa}, lines);
  const Solution solution = solve(layout);
  EXPECT_TRUE(solution.residuals().are_met());

  Flow along = solution.line("flushing manifold").inflow;
  Pressure here = solution.line("flushing manifold").inlet_pressure;
  bool any_runs = false;
  for (int i = 1; i < rows; ++i) {
    const LineSolution& row = solution.line("row " + std::to_string(i + 1));
    const Length lost = friction_loss(main, apart, along, solution.water());
    here -= pressure(lost, solution.water().density);
    EXPECT_NEAR(here / kPa, row.end_pressure / kPa, 1e-9 * 150) << row.name;
    along += row.end_flow;
    any_runs = any_runs || std::abs(along / lph) > 1;
  }
  EXPECT_TRUE(any_runs);
  EXPECT_NEAR(along / lph, 0, 1e-9 * (solution.inflow() / lph));

  Flow out{};
  for (const LineSolution& line : solution.lines())
    for (const Flow& flow : line.flow) out += flow;
  EXPECT_NEAR(out / lph, solution.inflow() / lph, 1e-9 * (solution.inflow() / lph));
}

}  // namespace
}  // namespace hydro
