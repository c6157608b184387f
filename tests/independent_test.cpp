// The solver against an independent one: the same physics written anew (dense_model.cpp), solved by
// KINSOL of SUNDIALS (a general-purpose nonlinear solver) from a crude start. The answer of such a
// layout is unique, so two solvers that meet their equations must agree.

#include "hydro/hydro.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "accuracy.hpp"
#include "dense_model.hpp"
#include "random_layout.hpp"
#include "random_looped.hpp"
#include <gtest/gtest.h>
#include <kinsol/kinsol.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

namespace hydro {
namespace {

int kinsol_residual(N_Vector v, N_Vector left, void* model) {
  static_cast<const DenseModel*>(model)->residual(NV_DATA_S(v), NV_DATA_S(left));
  return 0;
}

/// @return the largest residual reached.
double solve_by_kinsol(const DenseModel& model, std::vector<double>& v, long iterations = 400) {
  SUNContext context = nullptr;
#if SUNDIALS_VERSION_MAJOR >= 7
  SUNContext_Create(SUN_COMM_NULL, &context);
  SUNContext_ClearErrHandlers(context);
#else
  SUNContext_Create(nullptr, &context);
#endif
  const auto n = static_cast<sunindextype>(v.size());
  N_Vector unknown = N_VMake_Serial(n, v.data(), context);
  N_Vector ones = N_VNew_Serial(n, context);
  N_VConst(1.0, ones);
  SUNMatrix jacobian = SUNDenseMatrix(n, n, context);
  SUNLinearSolver linear = SUNLinSol_Dense(unknown, jacobian, context);
  void* kinsol = KINCreate(context);
  KINInit(kinsol, kinsol_residual, unknown);
  KINSetUserData(kinsol, const_cast<DenseModel*>(&model));
  KINSetLinearSolver(kinsol, linear, jacobian);
  KINSetMaxSetupCalls(kinsol, 1);
  KINSetNumMaxIters(kinsol, iterations);
  KINSetFuncNormTol(kinsol, 1e-14);
  KINSetScaledStepTol(kinsol, 1e-18);
  KINSetMaxNewtonStep(kinsol, 10 * std::sqrt(static_cast<double>(n)));
#if SUNDIALS_VERSION_MAJOR < 7
  KINSetErrFile(kinsol, nullptr);
#endif
  for (int round = 0; round < 3; ++round) KINSol(kinsol, unknown, KIN_LINESEARCH, ones, ones);
  std::vector<double> left(v.size());
  model.residual(v.data(), left.data());
  double largest = 0;
  for (const double it : left)
    largest = std::isfinite(it) ? std::max(largest, std::abs(it)) : INFINITY;
  KINFree(&kinsol);
  SUNLinSolFree(linear);
  SUNMatDestroy(jacobian);
  N_VDestroy(ones);
  N_VDestroy(unknown);
  SUNContext_Free(&context);
  return largest;
}

/// Whether all that random layouts are made of was among the layouts compared.
struct Seen {
  int reaches = 0, placed = 0, elevations = 0, connections = 0, taps = 0, outlet_taps = 0;
  int leaks = 0, open_ends = 0, valves = 0, missing = 0, wrong = 0, cut_off = 0;

  void add(const Layout& layout) {
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const Line& line = layout.lines()[l];
      reaches += !line.reaches.empty();
      placed += !line.outlets.empty();
      elevations += !line.elevations.empty();
      connections += line.connection_length.has_value();
      taps += line.tap.has_value();
      outlet_taps += line.tap_outlet.has_value();
      cut_off += layout.is_cut_off(l);
    }
    for (const Fault& fault : layout.faults()) {
      leaks += std::holds_alternative<Leak>(fault);
      open_ends += std::holds_alternative<LineCut>(fault) || std::holds_alternative<EndOpen>(fault);
      valves += std::holds_alternative<ValvePartClosed>(fault);
      missing += std::holds_alternative<NozzleMissing>(fault);
      wrong += std::holds_alternative<WrongOutlet>(fault);
    }
  }
  int rarest() const {
    return std::min({reaches,
                     placed,
                     elevations,
                     connections,
                     taps,
                     outlet_taps,
                     leaks,
                     open_ends,
                     valves,
                     missing,
                     wrong,
                     cut_off});
  }
};

void compare_random_trees(double breadth, int wanted) {
  constexpr double own_residual =
      1e-13;                          // of the scale: a peer that does not reach it proves nothing
  constexpr double agreement = 1e-9;  // of the scale in head, of the largest flow in flow
  int compared = 0, left_out = 0, dry = 0, broken = 0;
  double worst_head = 0, worst_flow = 0;
  Seen seen;
  for (std::uint64_t seed = 1; compared < wanted && seed < 4000; ++seed) {
    const Layout layout = random_layout(seed,
                                        {.most_lines = 10,
                                         .most_outlets = 30,
                                         .least_exponent = 0.2,
                                         .most_faults = 6,
                                         .darcy_weisbach = false,
                                         .breadth = breadth});
    const DenseModel model(layout);
    if (model.openings().empty()) continue;
    std::vector<double> v = model.start(0.7, 0);
    if (!(solve_by_kinsol(model, v) <= own_residual)) {
      ++left_out;
      continue;
    }
    ++compared;
    seen.add(layout);
    const Solution solution = solve(layout);
    double largest_flow = 1e-12;
    for (const LineSolution& line : solution.lines())
      largest_flow = std::max(largest_flow, line.inflow / m3_per_s);
    for (std::size_t k = 0; k < v.size(); ++k) {
      const DenseModel::Opening& it = model.openings()[k];
      const LineSolution& line = solution.lines()[it.line];
      const auto i = static_cast<std::size_t>(it.number - 1);
      const double q = it.number > 0 ? line.flow[i] / m3_per_s
                                     : line.openings.at(it.nth_on_line).flow / m3_per_s;
      worst_flow = std::max(worst_flow, std::abs(q - model.flow(it, v[k])) / largest_flow);
      // What the peer leaves of the head at all openings together moves a flow by its slope, which
      // is steep where a jet has little head.
      const double slope =
          it.is_held() ? 0 : it.exponent * q / std::max(1e-12, model.head(it, v[k]));
      const double left = static_cast<double>(v.size()) * own_residual * model.scale();
      ASSERT_NEAR(q, model.flow(it, v[k]), agreement * largest_flow + slope * left)
          << "seed " << seed;
      broken += it.open_riser && q > 0;
      if (it.open_riser || it.number == 0) continue;
      const double P = line.pressure[i] / units::Pa / model.weight();
      const double peer = model.device_head(it, v[k]);
      worst_head = std::max(worst_head, std::abs(P - peer) / model.scale());
      ASSERT_NEAR(P, peer, agreement * model.scale()) << "seed " << seed;
      dry += line.state[i] == OutletState::dry;
    }
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      EXPECT_TRUE(!layout.is_cut_off(l) || solution.lines()[l].inflow == Flow{}) << "seed " << seed;
  }
  std::printf(
      "compared %d trees, left out %d (%.1f %%) on which the peer did not reach %.0e; %d dry "
      "outlets, %d open risers, of each other kind of line and fault at least %d; worst difference "
      "in head %.1e, in flow %.1e\n",
      compared,
      left_out,
      100.0 * left_out / (compared + left_out),
      own_residual,
      dry,
      broken,
      seen.rarest(),
      worst_head,
      worst_flow);
  record_differences(Accuracy::tree_heads, compared, worst_head);
  record_differences(Accuracy::tree_flows, compared, worst_flow);
  EXPECT_EQ(compared, wanted);
  EXPECT_GT(dry, 100);
  EXPECT_GT(broken, 50);
  EXPECT_GE(seen.rarest(), breadth > 0 ? 10 : 0);
}

TEST(IndependentSolver, AgreesOn500PlainRandomTreesWithFaults) {
  compare_random_trees(0, 500);
}

TEST(IndependentSolver, AgreesOn500RandomTreesOfEveryKindOfLineOutletAndFault) {
  compare_random_trees(0.7, 500);
}

/// What pumped farms are made of, counted over those compared.
struct SeenOfFarms {
  int pumps = 0, droops = 0, parallel = 0, series = 0, suctions = 0, filters = 0, other_sources = 0;
  int holding = 0, open = 0, at_outlets = 0, sets = 0, shut = 0, faults_of_supply = 0, stuck = 0;
  int left_open = 0;

  void add(const Layout& layout, const Solution& solution) {
    const Supply& supply = layout.supply();
    pumps += supply.pump.has_value();
    droops += supply.pump && supply.pump->droop.value_or(0) > 0;
    const bool two = supply.second_pump.has_value();
    series += two && supply.arrangement == PumpArrangement::series;
    parallel += two && supply.arrangement != PumpArrangement::series;
    suctions += supply.suction && supply.suction->pipe;
    filters += supply.filter.has_value();
    other_sources += supply.tank || supply.hydrant;
    sets += !layout.running_sets().empty();
    for (const LineSolution& line : solution.lines()) {
      shut += line.shut;
      if (!line.regulator) continue;
      holding += line.regulator->state == RegulatorState::holding;
      open += line.regulator->state == RegulatorState::open;
    }
    for (const Line& line : layout.lines()) at_outlets += line.outlet && line.outlet->regulator;
    for (const Fault& fault : layout.faults()) {
      faults_of_supply += is_of_the_supply(fault);
      stuck += std::holds_alternative<RegulatorStuckOpen>(fault) ||
               std::holds_alternative<RegulatorStuckShut>(fault);
      left_open += std::holds_alternative<ValveLeftOpen>(fault);
    }
  }
  int rarest() const {
    return std::min({pumps,
                     droops,
                     parallel,
                     series,
                     suctions,
                     filters,
                     other_sources,
                     holding,
                     open,
                     at_outlets,
                     sets,
                     shut,
                     faults_of_supply,
                     stuck,
                     left_open});
  }
};

// A crude start may lie where a pump's parabola is far below the ground, so there are several.
bool solve_by_kinsol_from_anywhere(const DenseModel& model,
                                   double own_residual,
                                   std::vector<double>& v) {
  for (const double start : {0.7, 0.2, 0.05, 0.01, 0.002}) {
    v = model.start(start, start);
    if (solve_by_kinsol(model, v) <= own_residual) return true;
  }
  return false;
}

TEST(IndependentSolver, AgreesOn200RandomFarmsWithPumpsRegulatorsSetsAndFaults) {
  constexpr double own_residual = 1e-12;
  constexpr double agreement = 1e-9;
  constexpr int wanted = 200;
  int pumped = 0, compared = 0, left_out = 0, nothing_open = 0;
  double worst_head = 0, worst_flow = 0, worst_supply = 0;
  SeenOfFarms seen;
  for (std::uint64_t seed = 1; pumped < wanted && seed < 4000; ++seed) {
    const Layout layout = random_layout(seed,
                                        {.most_lines = 8,
                                         .most_outlets = 20,
                                         .least_exponent = 0.3,
                                         .bent_outlets = 0.1,
                                         .most_faults = 5,
                                         .darcy_weisbach = false,
                                         .breadth = 0.2,
                                         .farm = true,
                                         .through_points = false});
    const DenseModel model(layout);
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      ASSERT_EQ(model.has_water(l), !layout.is_cut_off(l)) << "seed " << seed;
    if (model.openings().empty()) {
      ++nothing_open;
      continue;
    }
    std::vector<double> v;
    if (!solve_by_kinsol_from_anywhere(model, own_residual, v)) {
      ++left_out;
      continue;
    }
    ++compared;
    pumped += layout.supply().pump.has_value();
    const Solution solution = solve(layout);
    seen.add(layout, solution);
    const double largest_flow = std::max(1e-12, solution.inflow() / m3_per_s);
    // What the peer leaves of the head at all openings moves flows and heads with it.
    const double left = static_cast<double>(v.size()) * own_residual * model.scale();
    const DenseModel::State state = model.state(v.data());
    const double Q = state.supply_flows.front(), peer_supply = state.supply_pressures.front();
    worst_flow = std::max(worst_flow, std::abs(solution.inflow() / m3_per_s - Q) / largest_flow);
    const double H = solution.supply_pressure() / units::Pa / model.weight();
    worst_supply = std::max(worst_supply, std::abs(H - peer_supply) / model.scale());
    ASSERT_NEAR(H, peer_supply, agreement * model.scale()) << "seed " << seed;
    for (std::size_t k = 0; k < v.size(); ++k) {
      const DenseModel::Opening& it = model.openings()[k];
      const LineSolution& line = solution.lines()[it.line];
      const auto i = static_cast<std::size_t>(it.number - 1);
      const double q = it.number > 0 ? line.flow[i] / m3_per_s
                                     : line.openings.at(it.nth_on_line).flow / m3_per_s;
      const double peer_flow = model.flow(it, v[k]);
      worst_flow = std::max(worst_flow, std::abs(q - peer_flow) / largest_flow);
      const double slope =
          it.is_held() ? 0 : it.exponent * q / std::max(1e-12, model.head(it, v[k]));
      ASSERT_NEAR(q, peer_flow, agreement * largest_flow + slope * left) << "seed " << seed;
      if (it.open_riser || it.number == 0) continue;
      const double P = line.pressure[i] / units::Pa / model.weight();
      const double peer = model.device_head(it, v[k]);
      worst_head = std::max(worst_head, std::abs(P - peer) / model.scale());
      ASSERT_NEAR(P, peer, agreement * model.scale()) << "seed " << seed << " line " << it.line;
    }
  }
  std::printf(
      "compared %d farms, %d of them pumped; left out %d on which the peer did not reach %.0e and "
      "%d where nothing is open; of each thing at least %d; worst difference in head %.1e, in the "
      "supply's head %.1e, in flow %.1e\n",
      compared,
      pumped,
      left_out,
      own_residual,
      nothing_open,
      seen.rarest(),
      worst_head,
      worst_supply,
      worst_flow);
  record_differences(Accuracy::tree_heads, compared, std::max(worst_head, worst_supply));
  record_differences(Accuracy::tree_flows, compared, worst_flow);
  EXPECT_EQ(pumped, wanted);
  EXPECT_GE(seen.rarest(), 10);
}

/// What looped layouts are made of, counted over those compared.
struct SeenOfLoops {
  int loops = 0, two_loops = 0, several_supplies = 0, taking_in = 0, held_shut = 0;
  int check_valves_open = 0, check_valves_shut = 0, holding = 0, regulators_shut = 0;
  int inlets_shut = 0, backwards = 0, cut_twice = 0, leaks = 0, cut_off = 0, still = 0, sets = 0;

  void add(const Layout& layout, const Solution& solution) {
    loops += loops_of(layout) > 0;
    two_loops += loops_of(layout) > 1;
    several_supplies += !layout.further_supplies().empty();
    sets += !layout.running_sets().empty();
    std::vector<OperatingPoint> supplies = solution.further_supplies();
    supplies.push_back(solution.supply());
    for (const OperatingPoint& supply : supplies) {
      taking_in += supply.flow < Flow{};
      held_shut += supply.held_shut;
    }
    for (const LineSolution& line : solution.lines()) {
      check_valves_open += line.check_valve == CheckValveState::open;
      check_valves_shut += line.check_valve == CheckValveState::shut;
      holding += line.regulator && line.regulator->state == RegulatorState::holding;
      regulators_shut += line.regulator && line.regulator->state == RegulatorState::shut;
      inlets_shut += line.inlet_shut && !line.pipes.empty();
      backwards += line.inflow < Flow{};
      cut_off += line.pipes.empty();
      for (std::size_t i = 1; i < line.openings.size(); ++i)
        cut_twice += line.openings[i].fault == line.openings[i - 1].fault;
    }
    for (const Fault& fault : layout.faults()) leaks += std::holds_alternative<Leak>(fault);
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      still += layout.joined_by(l) && !solution.lines()[l].pipes.empty() &&
               std::abs(si(solution.lines()[l].end_flow)) < 1e-9 * std::abs(si(solution.inflow()));
  }
  int rarest() const {
    return std::min({loops,
                     two_loops,
                     several_supplies,
                     taking_in,
                     held_shut,
                     check_valves_open,
                     check_valves_shut,
                     holding,
                     regulators_shut,
                     inlets_shut,
                     backwards,
                     cut_twice,
                     leaks,
                     cut_off,
                     still,
                     sets});
  }
};

/// From several starts: what may go round may go round either way.
bool solve_loops_by_kinsol(const DenseModel& model, double own_residual, std::vector<double>& v) {
  for (const double share : {0.7, 0.1, 0.01})
    for (const double round : {0.1, -0.03}) {
      v = model.start(share, round);
      if (solve_by_kinsol(model, v, 60) <= own_residual) return true;
    }
  return false;
}

double largest_flow(const Solution& solution) {
  double largest = 1e-12;
  for (const LineSolution& line : solution.lines())
    for (const Flow& flow : {line.inflow, line.end_flow})
      largest = std::max(largest, std::abs(si(flow)));
  return largest;
}

TEST(IndependentSolver, AgreesOn200RandomLoopedLayouts) {
  constexpr double own_residual = 1e-12;
  constexpr double agreement = 1e-9;
  constexpr int wanted = 200;
  int compared = 0, left_out = 0, nothing_runs = 0, well_known = 0, unfelt_ones = 0;
  double worst_head = 0, worst_flow = 0, worst_round = 0;
  SeenOfLoops seen;
  for (std::uint64_t seed = 1; compared < wanted && seed < 4000; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Layout layout = random_looped(seed,
                                        {.parts = {.most_lines = 6,
                                                   .most_outlets = 7,
                                                   .least_exponent = 0.3,
                                                   .bent_outlets = 0.1,
                                                   .most_faults = 5,
                                                   .breadth = 0.2,
                                                   .farm = true,
                                                   .through_points = false}});
    if (loops_of(layout) == 0) continue;
    const DenseModel model(layout);
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      ASSERT_EQ(model.has_water(l), !layout.is_cut_off(l)) << layout.lines()[l].name;
    if (model.unknowns() == 0) {
      ++nothing_runs;
      continue;
    }
    std::vector<double> v;
    if (!solve_loops_by_kinsol(model, own_residual, v)) {
      ++left_out;
      continue;
    }
    ++compared;
    const Solution solution = solve(layout);
    seen.add(layout, solution);
    const DenseModel::State peer = model.state(v.data());
    const double flow_scale = std::max(largest_flow(solution), 1e-6 * model.flow_scale());
    // What the peer leaves of the head at all openings moves flows and heads with it.
    const double left = static_cast<double>(v.size()) * own_residual * model.scale();
    const double unfelt = model.unfelt_flow(left);
    const auto expect_head = [&](double head, double peer_head) {
      worst_head = std::max(worst_head, std::abs(head - peer_head) / model.scale());
      EXPECT_NEAR(head, peer_head, agreement * model.scale());
    };
    for (std::size_t k = 0; k < model.openings().size(); ++k) {
      const DenseModel::Opening& it = model.openings()[k];
      const LineSolution& line = solution.lines()[it.line];
      const auto i = static_cast<std::size_t>(it.number - 1);
      const double q = si(it.number > 0 ? line.flow[i] : line.openings.at(it.nth_on_line).flow);
      const double peer_flow = model.flow(it, v[k]);
      const double slope = std::max(0.5, it.exponent) * std::max(q, peer_flow) /
                           std::max(left, model.head(it, v[k]));
      if (q == 0 && model.head(it, v[k]) <= left) continue;
      worst_flow = std::max(worst_flow, std::abs(q - peer_flow) / flow_scale);
      EXPECT_NEAR(q, peer_flow, agreement * flow_scale + slope * left)
          << line.name << ", outlet " << it.number;
      if (!it.open_riser && it.number > 0)
        expect_head(line.pressure[i] / units::Pa / model.weight(), model.device_head(it, v[k]));
    }
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const LineSolution& line = solution.lines()[l];
      SCOPED_TRACE(line.name);
      const auto expect_round = [&](double flow, double peer_flow) {
        const double apart = std::abs(flow - peer_flow) / flow_scale;
        (apart <= agreement ? well_known : unfelt_ones) += 1;
        if (apart <= agreement) worst_round = std::max(worst_round, apart);
        EXPECT_NEAR(flow, peer_flow, agreement * flow_scale + unfelt);
      };
      expect_round(si(line.inflow), peer.inflows[l]);
      expect_round(si(line.end_flow), peer.end_flows[l]);
      if (line.check_valve && peer.inlet_gaps[l] > agreement * model.scale()) {
        EXPECT_EQ(*line.check_valve, CheckValveState::shut);
      }
      const auto joined = layout.joined_by(l);
      if (!joined || line.pipes.empty()) continue;
      const double elevation = si(layout.ground_elevation(l, layout.lines()[l].whole_length()) -
                                  layout.supply().elevation.value_or(Length{}));
      expect_head(line.end_pressure / units::Pa / model.weight() + elevation, peer.joined_heads[l]);
    }
    std::vector<OperatingPoint> supplies = solution.further_supplies();
    supplies.insert(supplies.begin(), solution.supply());
    for (std::size_t s = 0; s < supplies.size(); ++s) {
      SCOPED_TRACE("supply " + std::to_string(s));
      EXPECT_NEAR(si(supplies[s].flow), peer.supply_flows[s], agreement * flow_scale + unfelt);
      expect_head(supplies[s].pressure / units::Pa / model.weight(), peer.supply_pressures[s]);
    }
    if (testing::Test::HasFailure()) break;
  }
  std::printf(
      "compared %d looped layouts, left out %d (%.1f %%) on which the peer did not reach %.0e and "
      "%d where nothing can run; of each thing at least %d; worst difference in head %.1e, in flow "
      "out of an opening %.1e, in %d flows along lines %.1e; %d others move no head\n",
      compared,
      left_out,
      100.0 * left_out / (compared + left_out),
      own_residual,
      nothing_runs,
      seen.rarest(),
      worst_head,
      worst_flow,
      well_known,
      worst_round,
      unfelt_ones);
  record_differences(Accuracy::loop_heads, compared, worst_head);
  record_differences(Accuracy::loop_flows, compared, std::max(worst_flow, worst_round));
  EXPECT_EQ(compared, wanted);
  EXPECT_GE(seen.rarest(), 8);
}

}  // namespace
}  // namespace hydro
