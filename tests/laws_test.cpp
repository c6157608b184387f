// Laws of physics and of bookkeeping that hold for every layout, over random ones. A failure prints
// its seed.
#include "hydro/hydro.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
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

// From here on farms: any supply, regulators, valves, sets, and what can be wrong with them.

constexpr Mix farms{.farm = true};

// No state goes to and fro: a regulator holds or is open, an outlet is dry or runs, and each settles.
TEST_F(Random, TenThousandFarmsAreSolvedWithinTheTolerance) {
  int last_resorts = 0, most_steps = 0, holding = 0, open = 0, dry = 0, pumps = 0;
  for (std::uint64_t seed = 1; seed <= 10000 && !HasFailure(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Solution solution = solve(random_layout(seed, farms));
    const Residuals& residuals = solution.residuals();
    EXPECT_LE(residuals.mass, 1e-12);
    EXPECT_LE(residuals.energy, 1e-12);
    EXPECT_LE(residuals.outlet, 1e-12);
    last_resorts += residuals.last_resort;
    most_steps = std::max(most_steps, residuals.steps);
    pumps += !solution.supply().pumps.empty();
    for (const LineSolution& line : solution.lines()) {
      dry += static_cast<int>(std::ranges::count(line.state, OutletState::dry));
      holding += line.regulator && line.regulator->state == RegulatorState::holding;
      open += line.regulator && line.regulator->state == RegulatorState::open;
    }
  }
  std::printf(
      "10000 farms, %d with pumps: %d last resorts, at most %d steps; %d regulators hold, "
      "%d are open, %d outlets are dry\n",
      pumps,
      last_resorts,
      most_steps,
      holding,
      open,
      dry);
  EXPECT_GT(pumps, 5000);
  EXPECT_GT(holding, 1000);
  EXPECT_GT(open, 1000);
  EXPECT_GT(dry, 10000);
}

/// A pressure is good to this where changes of it are asked for: 1e-12 of the head's scale in each of
/// up to 200 equations along a path, and some.
double rounding_kPa(const Solution& solution) {
  return 1e-9 * head_scale_m(solution) * 9.81;
}

// What opens: a capped outlet, at fixed speeds of the engines.
TEST_F(Random, OpeningAnOutletRaisesNoPressureOfAFarmAndCappingItLowersNone) {
  const auto law = [](const Layout& layout) {
    const Solution open = solve(layout);
    const double rounding = rounding_kPa(open);
    for (const Line& line : layout.lines()) {
      if (line.outlet_count() == 0) continue;
      const int outlet = (line.outlet_count() + 1) / 2;
      const auto possible = layout.with_possible_faults({capped(line.name, outlet)});
      if (!possible.skipped.empty()) continue;
      const Solution closed = solve(possible.layout);
      EXPECT_LE(changes(closed, open).second, rounding);
      EXPECT_GE(changes(open, closed).first, -rounding);
      EXPECT_LE(open.supply_pressure() / kPa, closed.supply_pressure() / kPa + rounding);
    }
  };
  for_each_layout(law, farms);
}

TEST_F(Random, FarmsDoNotDependOnTheOrderOfTheirLinesAndSets) {
  const auto law = [](const Layout& layout) {
    std::vector<Line> lines = layout.lines();
    std::reverse(lines.begin(), lines.end());
    std::vector<WateringSet> sets = layout.sets();
    std::reverse(sets.begin(), sets.end());
    for (WateringSet& set : sets) std::reverse(set.lines.begin(), set.lines.end());
    std::vector<std::string> running = layout.running_sets();
    std::reverse(running.begin(), running.end());
    Layout reversed(layout.supply(), lines, layout.water(), layout.site(), sets);
    if (!running.empty()) reversed = reversed.watering(running);
    const Solution one = solve(layout);
    const Solution other = solve(reversed.with_faults(layout.faults()));
    EXPECT_EQ(one.inflow(), other.inflow());  // bit for bit
    EXPECT_EQ(one.supply_pressure(), other.supply_pressure());
    for (const LineSolution& line : one.lines()) {
      const LineSolution& same = other.line(line.name);
      EXPECT_TRUE(std::ranges::equal(line.flow.si(), same.flow.si()));
      EXPECT_TRUE(std::ranges::equal(line.line_pressure.si(), same.line_pressure.si()));
      EXPECT_EQ(line.shut, same.shut);
    }
  };
  for_each_layout(law, farms);
}

TEST_F(Random, PumpsTakeNoLessPowerThanTheyGiveAndFlowsOfAFarmAddUp) {
  int judged = 0;
  const auto law = [&](const Layout& layout) {
    const Solution solution = solve(layout);
    const OperatingPoint& supply = solution.supply();
    Flow drawn{};
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      if (layout.lines()[l].fed_by.empty()) drawn += solution.lines()[l].inflow;
    EXPECT_NEAR(si(drawn), si(supply.flow), 20e-12 * si(supply.flow));
    Flow pumped{};
    for (const PumpDuty& pump : supply.pumps) {
      pumped += pump.flow;
      // rho g Q H
      EXPECT_NEAR(si(pump.water_power),
                  si(solution.water().density) * 9.80665 * si(pump.flow) * si(pump.head),
                  1e-12 * std::abs(si(pump.water_power)));
      if (!pump.shaft_power) continue;
      ++judged;
      EXPECT_GE(*pump.shaft_power, pump.water_power);
    }
    const bool side_by_side =
        supply.pumps.size() == 2 && layout.supply().arrangement != PumpArrangement::series;
    if (supply.pumps.size() == 1 || side_by_side)
      EXPECT_NEAR(si(pumped), si(supply.flow), 1e-13 * si(supply.flow));
  };
  for_each_layout(law, farms);
  EXPECT_GT(judged, 50);
}

// Only where the pump lifts: far beyond the end of its curve, where water drives it, a faster one may
// be the greater hindrance.
TEST_F(Random, AFasterEngineLowersNoPressureOfAFarm) {
  int judged = 0;
  const auto law = [&](const Layout& layout) {
    if (!layout.supply().pump || !layout.supply().pump->curve_speed) return;
    const Layout sound = layout.without_faults();
    Supply faster = layout.supply();
    faster.pump->speed = 1.03 * faster.pump->speed.value_or(*faster.pump->curve_speed);
    const Solution slow = solve(sound);
    const Solution fast = solve(sound.with_supply(faster));
    const auto lifts = [](const PumpDuty& pump) { return pump.head >= Length{}; };
    if (!std::ranges::all_of(slow.supply().pumps, lifts)) return;
    ++judged;
    EXPECT_GE(changes(slow, fast).first, -rounding_kPa(fast));
    EXPECT_GE(fast.inflow() / lps, slow.inflow() / lps * (1 - 1e-9));
  };
  for_each_layout(law, farms);
  EXPECT_GT(judged, 200);
}

// What comes to the regulator, by the public laws: the feeder's pressure less the fittings before it.
TEST_F(Random, ARegulatorPassesTheLesserOfWhatComesAndWhatItIsSetTo) {
  int holding = 0, open = 0;
  const auto law = [&](const Layout& layout) {
    const Solution solution = solve(layout);
    const double rounding = rounding_kPa(solution);
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const Line& line = layout.lines()[l];
      const LineSolution& solved = solution.lines()[l];
      if (!solved.regulator || solved.regulator->state == RegulatorState::stuck_open) continue;
      double k = line.loss_coefficient.value_or(0);
      if (line.valve && line.valve->opening != ValveOpening::shut)
        k += loss_coefficient(*line.valve);
      for (const Fault& fault : layout.faults_on(l))
        if (const auto* valve = std::get_if<ValvePartClosed>(&fault)) k += valve->loss_coefficient;
      const double comes =
          solved.inlet_pressure / kPa - si(fitting_loss(line.pipe_at(Length{}), k, solved.inflow)) *
                                            si(solution.water().density) * 9.80665 / 1000;
      const double set = *line.regulator / kPa;
      EXPECT_LE(solved.regulator->pressure / kPa, set * (1 + 1e-12));
      EXPECT_NEAR(solved.regulator->pressure / kPa, std::min(comes, set), rounding);
      EXPECT_GE(solved.regulator->drop, Pressure{});
      EXPECT_NEAR(solved.regulator->drop / kPa, std::max(0.0, comes - set), rounding);
      (solved.regulator->state == RegulatorState::holding ? holding : open) += 1;
    }
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      for (int outlet = 1; outlet <= layout.lines()[l].outlet_count(); ++outlet) {
        const auto& regulator = layout.outlet_at(l, outlet).regulator;
        const auto i = static_cast<std::size_t>(outlet - 1);
        const auto is_at_it = [&](const Fault& fault) { return outlet_of(fault) == outlet; };
        if (regulator && std::ranges::none_of(layout.faults_on(l), is_at_it)) {
          EXPECT_LE(solution.lines()[l].pressure[i], *regulator * (1 + 1e-12));
        }
      }
  };
  for_each_layout(law, farms);
  EXPECT_GT(holding, 300);
  EXPECT_GT(open, 300);
}

/// Pressures and flows of the lines of `part` are those that they have in `whole`.
void expect_same_lines(const Solution& part, const Solution& whole) {
  const double rounding = rounding_kPa(whole);
  EXPECT_NEAR(part.supply_pressure() / kPa, whole.supply_pressure() / kPa, rounding);
  for (const LineSolution& line : part.lines())
    for (std::size_t i = 0; i < line.pressure.size(); ++i) {
      EXPECT_NEAR(line.pressure[i] / kPa, whole.line(line.name).pressure[i] / kPa, rounding);
      EXPECT_NEAR(
          line.line_pressure[i] / kPa, whole.line(line.name).line_pressure[i] / kPa, rounding);
    }
}

TEST_F(Random, ASetIsSolvedAsTheLayoutOfItsOpenLinesOnly) {
  int judged = 0;
  const auto law = [&](const Layout& layout) {
    std::vector<Line> open;
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      if (layout.is_shut(l)) continue;
      open.push_back(layout.lines()[l]);
      if (open.back().valve && open.back().valve->opening == ValveOpening::shut)
        open.back().valve.reset();  // left open
    }
    if (layout.running_sets().empty() || open.empty()) return;
    judged += open.size() < layout.lines().size();
    std::vector<Fault> faults = layout.faults();
    std::erase_if(faults, [&](const Fault& fault) {
      const auto is_its = [&](const Line& line) { return line.name == line_of(fault); };
      return std::holds_alternative<ValveLeftOpen>(fault) ||
             (!is_of_the_supply(fault) && std::ranges::none_of(open, is_its));
    });
    const Layout only(layout.supply(), open, layout.water(), layout.site());
    const Solution whole = solve(layout);
    expect_same_lines(solve(only.with_faults(faults)), whole);
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      if (layout.is_shut(l)) EXPECT_EQ(whole.lines()[l].inflow, Flow{});
    }
  };
  for_each_layout(law, farms);
  EXPECT_GT(judged, 200);
}

TEST_F(Random, AValveLeftOpenIsAsIfTheSetNamedItsLine) {
  int judged = 0;
  const auto law = [&](const Layout& layout) {
    if (layout.running_sets().empty()) return;
    const auto is_named = [&](const std::string& name) {
      return std::ranges::any_of(layout.sets(), [&](const WateringSet& set) {
        return std::ranges::find(set.lines, name) != set.lines.end();
      });
    };
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const auto feeder = layout.feeder_of(l);
      const Line& line = layout.lines()[l];
      const bool has_shut_valve = line.valve && line.valve->opening == ValveOpening::shut;
      if (!layout.is_shut(l) || (feeder && layout.is_shut(*feeder)) || !is_named(line.name) ||
          has_shut_valve)
        continue;
      std::vector<WateringSet> sets = layout.sets();
      for (WateringSet& set : sets)
        if (set.name == layout.running_sets().front()) set.lines.push_back(line.name);
      const Layout named =
          Layout(layout.supply(), layout.lines(), layout.water(), layout.site(), sets)
              .watering(layout.running_sets());
      const auto open = layout.with_possible_faults({valve_left_open(line.name)});
      if (!open.skipped.empty()) continue;
      ++judged;
      expect_same_lines(solve(open.layout), solve(named.with_faults(layout.faults())));
    }
  };
  for_each_layout(law, farms);
  EXPECT_GT(judged, 50);
}

/// All that goes with the flow, and with the head, of one pump.
Pump stretched(Pump pump, double flow_share, double head_share) {
  for (PumpPoint& point : pump.points) {
    point.flow *= flow_share;
    point.head *= head_share;
  }
  if (pump.least_flow) *pump.least_flow *= flow_share;
  if (pump.most_flow) *pump.most_flow *= flow_share;
  for (EfficiencyPoint& point : pump.efficiencies) point.flow *= flow_share;
  if (pump.power) *pump.power *= flow_share * head_share;
  return pump;
}

// Side by side each gives half the flow, one after the other half the head.
TEST_F(Random, TwoPumpsAlikeAreOneOfTwiceTheFlowOrTwiceTheHead) {
  int judged = 0;
  const auto law = [&](const Layout& layout) {
    if (!layout.supply().pump) return;
    ++judged;
    const Layout sound = layout.without_faults();
    for (const auto arrangement : {PumpArrangement::parallel, PumpArrangement::series}) {
      const bool parallel = arrangement == PumpArrangement::parallel;
      Supply two = layout.supply(), one = layout.supply();
      two.second_pump = two.pump;
      two.arrangement = arrangement;
      one.pump = stretched(*one.pump, parallel ? 2 : 1, parallel ? 1 : 2);
      one.second_pump.reset();
      one.arrangement.reset();
      const Solution of_two = solve(sound.with_supply(two));
      expect_same_lines(of_two, solve(sound.with_supply(one)));
      const Flow each = (parallel ? 0.5 : 1.0) * of_two.inflow();
      for (const PumpDuty& pump : of_two.supply().pumps)
        EXPECT_NEAR(si(pump.flow), si(each), 1e-12 * si(each));
    }
  };
  for_each_layout(law, farms);
  EXPECT_GT(judged, 500);
}

// Q ~ n, H ~ n^2: the curve moved by hand and run at its own speed.
TEST_F(Random, APumpAtASpeedIsOneWhoseCurveWasMovedThere) {
  int judged = 0;
  const auto law = [&](const Layout& layout) {
    const Supply& supply = layout.supply();
    if (!supply.pump || !supply.pump->speed || supply.second_pump) return;
    ++judged;
    Supply moved = supply;
    const double n = *supply.pump->speed / *supply.pump->curve_speed;
    moved.pump = stretched(*supply.pump, n, n * n);
    if (supply.pump->power) moved.pump->power = supply.pump->power;
    moved.pump->speed.reset();
    const Layout sound = layout.without_faults();
    expect_same_lines(solve(sound.with_supply(moved)), solve(sound));
  };
  for_each_layout(law, farms);
  EXPECT_GT(judged, 100);
}

TEST_F(Random, ATankIsTheHeldPressureOfItsLevel) {
  const auto law = [](const Layout& layout) {
    if (!layout.supply().tank) return;
    Supply held = layout.supply();
    held.pressure = pressure(held.tank->level, properties(layout.water()).density);
    held.tank.reset();
    expect_same_lines(solve(layout.with_supply(held)), solve(layout));
  };
  for_each_layout(law, farms);
}

}  // namespace
}  // namespace hydro
