// Laws of physics and of bookkeeping that hold for every layout, over random ones. A failure prints
// its seed.
#include "hydro/hydro.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "random_layout.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

constexpr std::uint64_t some_seeds = 1500;

double head_scale_m(const Solution& solution) {
  // No smaller than Residuals' own scale would make it: the supply's head or all the rise and fall.
  double lowest = 0, highest = 0;
  for (std::size_t i = 0; i < solution.lines().size(); ++i) {
    const Layout& layout = solution.layout();
    const double near =
        si(layout.inlet_elevation(i) - layout.supply().elevation.value_or(Length{}));
    const double far = near + si(layout.lines()[i].ground_rise.value_or(Length{}));
    lowest = std::min({lowest, near, far});
    highest = std::max({highest, near, far});
    for (int outlet = 1; outlet <= layout.lines()[i].outlet_count(); ++outlet) {
      const double here =
          si(layout.outlet_elevation(i, outlet) - layout.supply().elevation.value_or(Length{}));
      lowest = std::min(lowest, here);
      highest = std::max(highest, here);
    }
  }
  return std::max(si(head(solution.supply_pressure(), solution.water().density)),
                  highest - lowest) +
         3;
}

double largest_flow(const Solution& solution) {
  double largest = 0;
  for (const LineSolution& line : solution.lines()) largest = std::max(largest, si(line.inflow));
  return largest;
}

Flow out_of(const LineSolution& line) {
  Flow sum{};
  for (const Flow flow : line.flow) sum += flow;
  for (const Opening& opening : line.openings) sum += opening.flow;
  return sum;
}

class Random : public testing::Test {
 protected:
  template <class Law>
  void for_each_layout(Law law, const Mix& mix = {}) {
    for (std::uint64_t seed = 1; seed <= some_seeds && !HasFailure(); ++seed) {
      SCOPED_TRACE("seed " + std::to_string(seed));
      law(random_layout(seed, mix));
    }
  }
};

TEST_F(Random, LayoutsAreSolvedWithinTheTolerance) {
  for_each_layout([](const Layout& layout) {
    const Residuals residuals = solve(layout).residuals();
    EXPECT_LE(residuals.mass, 1e-12);
    EXPECT_LE(residuals.energy, 1e-12);
    EXPECT_LE(residuals.outlet, 1e-12);
  });
}

// 1e-12 of the largest flow at each place, and a line has at most 80 of them.
TEST_F(Random, LayoutsKeepTheirWater) {
  for_each_layout([](const Layout& layout) {
    const Solution solution = solve(layout);
    const double tolerance = 80e-12 * largest_flow(solution);
    std::vector<double> beyond(layout.lines().size(), 0.0);
    for (std::size_t i = 0; i < layout.lines().size(); ++i)
      if (const auto feeder = layout.feeder_of(i))
        beyond[*feeder] += si(solution.lines()[i].inflow);
    for (std::size_t i = 0; i < layout.lines().size(); ++i)
      EXPECT_NEAR(
          si(solution.lines()[i].inflow - out_of(solution.lines()[i])), beyond[i], tolerance);
  });
}

// Recomputed from the printed flows by the public, typed laws.
TEST_F(Random, LayoutsLoseTheHeadThatTheirPipesTake) {
  const auto law = [](const Layout& layout) {
    const Solution solution = solve(layout);
    const WaterProperties& water = solution.water();
    const double tolerance = 1e-11 * head_scale_m(solution);
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const Line& line = layout.lines()[l];
      const LineSolution& solved = solution.lines()[l];
      Pressure before = solved.inlet_pressure;
      Length place{};
      Flow flow = solved.inflow;
      for (std::size_t i = 0; i < solved.pressure.size(); ++i) {
        const double k = line.outlet_loss_coefficient.value_or(0) +
                         (i == 0 ? line.loss_coefficient.value_or(0) : 0);
        const Length reach = solved.distance[i] - place;
        const Length rise = line.ground_rise.value_or(Length{}) * (reach / line.whole_length());
        const Length loss =
            friction_loss(line.pipe, reach, flow, water) + fitting_loss(line.pipe, k, flow);
        EXPECT_NEAR(
            si(head(before - solved.line_pressure[i], water.density)), si(loss + rise), tolerance);
        before = solved.line_pressure[i];
        place = solved.distance[i];
        flow -= solved.flow[i];
      }
    }
  };
  for_each_layout(law, {.breadth = 0});
}

TEST_F(Random, OutletsLieOnTheirCurvesAndRisersTakeTheirHead) {
  for_each_layout([](const Layout& layout) {
    const Solution solution = solve(layout);
    const WaterProperties& water = solution.water();
    const double tolerance = 1e-11 * head_scale_m(solution);
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const Line& line = layout.lines()[l];
      const LineSolution& solved = solution.lines()[l];
      std::vector<double> share(solved.pressure.size(), 1.0);
      for (const Fault& fault : layout.faults_on(l)) {
        const auto outlet = static_cast<std::size_t>(outlet_of(fault).value_or(1) - 1);
        if (const auto* clog = std::get_if<Clogged>(&fault)) share[outlet] = 1 - clog->share;
        if (const auto* wear = std::get_if<Worn>(&fault)) share[outlet] = 1 + wear->share;
      }
      for (std::size_t i = 0; i < solved.pressure.size(); ++i) {
        if (solved.state[i] == OutletState::broken || solved.state[i] == OutletState::closed)
          continue;
        const double available =
            si(head(solved.line_pressure[i], water.density) - line.riser.height);
        if (solved.state[i] == OutletState::dry) {
          EXPECT_LE(available, tolerance);
          EXPECT_EQ(solved.flow[i], Flow{});
          EXPECT_EQ(solved.pressure[i], Pressure{});
          continue;
        }
        double riser = 0;
        if (const auto pipe = line.riser.pipe())
          riser = si(friction_loss(*pipe, line.riser.height, solved.flow[i], water) +
                     fitting_loss(*pipe, line.riser.loss_coefficient.value_or(0), solved.flow[i]));
        EXPECT_NEAR(available - riser, si(head(solved.pressure[i], water.density)), tolerance);
        // On the curve within rounding, above the head (1e-13 of the scale) below which it is made
        // straight.
        if (si(head(solved.pressure[i], water.density)) > 1e-12 * head_scale_m(solution)) {
          const Outlet& kind = layout.outlet_at(l, static_cast<int>(i) + 1);
          EXPECT_NEAR(
              solved.flow[i] / (share[i] * discharge(kind, solved.pressure[i], water.density)),
              1,
              1e-13);
        }
      }
    }
  });
}

// More head at the supply: no outlet gets less. Rounding of the solution: 1e-10 of the largest
// flow.
TEST_F(Random, OutletsGetNoLessFromAHigherSupply) {
  for_each_layout([](const Layout& layout) {
    const Solution low = solve(layout);
    Supply supply = layout.supply();
    *supply.pressure += 20 * kPa;
    const Solution high = solve(
        Layout(supply, layout.lines(), layout.water(), layout.site()).with_faults(layout.faults()));
    for (std::size_t l = 0; l < low.lines().size(); ++l)
      for (std::size_t i = 0; i < low.lines()[l].flow.size(); ++i)
        EXPECT_GE(high.lines()[l].pressure[i] / kPa, low.lines()[l].pressure[i] / kPa - 1e-7);
  });
}

/// Least of all changes of pressure in the pipe, and the largest, at all outlets [kPa].
std::pair<double, double> changes(const Solution& before, const Solution& after) {
  double least = 0, most = 0;
  for (std::size_t l = 0; l < before.lines().size(); ++l)
    for (std::size_t i = 0; i < before.lines()[l].flow.size(); ++i) {
      const double change =
          (after.lines()[l].line_pressure[i] - before.lines()[l].line_pressure[i]) / kPa;
      least = std::min(least, change);
      most = std::max(most, change);
    }
  return {least, most};
}

TEST_F(Random, CappingAnOutletLowersNoPressureAndWearingItRaisesNone) {
  for_each_layout(
      [](const Layout& layout) {
        const Solution before = solve(layout);
        constexpr double rounding_kPa = 1e-7;
        for (const Line& line : layout.lines()) {
          if (line.outlet_count() == 0) continue;
          const int outlet = (line.outlet_count() + 1) / 2;
          EXPECT_GE(changes(before, solve(layout.with_fault(capped(line.name, outlet)))).first,
                    -rounding_kPa);
          EXPECT_LE(changes(before, solve(layout.with_fault(worn(line.name, outlet, 0.5)))).second,
                    rounding_kPa);
          break;
        }
      },
      {.most_faults = 0});
}

TEST_F(Random, LayoutsDoNotDependOnTheOrderOfTheirLines) {
  for_each_layout([](const Layout& layout) {
    std::vector<Line> lines = layout.lines();
    std::shuffle(lines.begin(), lines.end(), std::mt19937_64(7));
    const Solution one = solve(layout);
    const Solution other = solve(
        Layout(layout.supply(), lines, layout.water(), layout.site()).with_faults(layout.faults()));
    for (const LineSolution& line : one.lines()) {
      const LineSolution& same = other.line(line.name);
      for (std::size_t i = 0; i < line.flow.size(); ++i) {
        EXPECT_EQ(line.flow[i], same.flow[i]);  // bit for bit
        EXPECT_EQ(line.line_pressure[i], same.line_pressure[i]);
      }
    }
  });
}

/// Pressures of all outlets agree within a share of the head scale.
void expect_same(const Solution& one, const Solution& other, double share) {
  const double tolerance_kPa = share * head_scale_m(one) * 9.81;
  for (std::size_t l = 0; l < one.lines().size(); ++l)
    for (std::size_t i = 0; i < one.lines()[l].pressure.size(); ++i)
      EXPECT_NEAR(
          one.lines()[l].pressure[i] / kPa, other.lines()[l].pressure[i] / kPa, tolerance_kPa);
}

// A solution is good to 1e-12 in each of up to 200 equations along a path.
constexpr double along_a_path = 1e-9;

TEST_F(Random, LayoutsDoNotDependOnTheirHeightAboveTheSea) {
  for_each_layout([](const Layout& layout) {
    Supply supply = layout.supply();
    supply.elevation = supply.elevation.value_or(Length{}) + 3000 * units::m;
    std::vector<Line> lines = layout.lines();
    for (Line& line : lines)
      for (Length& elevation : line.elevations) elevation += 3000 * units::m;
    expect_same(
        solve(layout),
        solve(Layout(supply, lines, layout.water(), layout.site()).with_faults(layout.faults())),
        along_a_path);
  });
}

TEST_F(Random, MainsMayBeCutIntoTwoLines) {
  const auto law = [](const Layout& layout) {
    std::vector<Line> lines;
    for (const Line& line : layout.lines()) {
      lines.push_back(line);
      if (line.outlet) continue;
      Line& far = lines.back();
      Line near = far;
      near.name = far.name + ", near half";
      near.length = 0.3 * *far.length;
      near.ground_rise = 0.3 * far.ground_rise.value_or(Length{});
      far.fed_by = near.name;
      far.length = *far.length - *near.length;
      far.ground_rise = far.ground_rise.value_or(Length{}) - *near.ground_rise;
      far.loss_coefficient.reset();
      lines.push_back(near);
    }
    const Solution cut = solve(
        Layout(layout.supply(), lines, layout.water(), layout.site()).with_faults(layout.faults()));
    const Solution whole = solve(layout);
    for (const LineSolution& line : whole.lines())
      for (std::size_t i = 0; i < line.pressure.size(); ++i)
        EXPECT_NEAR(line.pressure[i] / kPa,
                    cut.line(line.name).pressure[i] / kPa,
                    along_a_path * head_scale_m(whole) * 9.81);
  };
  for_each_layout(law, {.breadth = 0});
}

/// The layout as a person would have typed it in other units, each number read back from a text.
template <class Q>
Q retyped(const Q& quantity, const Unit<Q>& unit) {
  return from_text<Q>(to_text(quantity, unit));
}
template <class Q>
std::optional<Q> retyped(const std::optional<Q>& quantity, const Unit<Q>& unit) {
  return quantity ? std::optional(retyped(*quantity, unit)) : std::nullopt;
}

TEST_F(Random, LayoutsDoNotDependOnTheUnitsTheyAreWrittenIn) {
  for_each_layout([](const Layout& layout) {
    std::vector<Line> lines = layout.lines();
    for (Line& line : lines) {
      line.pipe.inside_diameter = retyped(line.pipe.inside_diameter, inch);
      line.pipe.roughness = retyped(line.pipe.roughness, ft);
      line.length = retyped(line.length, ft);
      line.spacing = retyped(line.spacing, ft);
      line.first_at = retyped(line.first_at, inch);
      line.ground_rise = retyped(line.ground_rise, ft);
      line.riser.height = retyped(line.riser.height, ft);
      line.riser.inside_diameter = retyped(line.riser.inside_diameter, inch);
      if (!line.outlet) continue;
      line.outlet->flow = retyped(line.outlet->flow, gph);
      line.outlet->at = retyped(line.outlet->at, psi);
    }
    const Supply supply{.pressure = retyped(layout.supply().pressure, ftH2O),
                        .elevation = retyped(layout.supply().elevation, ft)};
    expect_same(
        solve(layout),
        solve(Layout(supply, lines, layout.water(), layout.site()).with_faults(layout.faults())),
        along_a_path);
  });
}

TEST_F(Random, LayoutsAreSolvedToTheSameBitsEachTime) {
  for_each_layout([](const Layout& layout) {
    const Solution one = solve(layout);
    const Solution other = solve(layout);
    for (std::size_t l = 0; l < one.lines().size(); ++l)
      EXPECT_TRUE(std::ranges::equal(one.lines()[l].flow.si(), other.lines()[l].flow.si()));
  });
}

}  // namespace
}  // namespace hydro
