// The solver against an independent one: the same physics written anew (dense_model.cpp), solved by
// KINSOL of SUNDIALS (a general-purpose nonlinear solver) from a crude start. The answer of such a
// tree is unique, so two solvers that meet their equations must agree.

#include "hydro/hydro.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "dense_model.hpp"
#include "random_layout.hpp"
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
double solve_by_kinsol(const DenseModel& model, std::vector<double>& v) {
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
  KINSetNumMaxIters(kinsol, 400);
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
    std::vector<double> v(model.openings().size(), 0.7);
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
    v.assign(model.openings().size(), start);
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
    const double Q = model.total_flow(v.data());
    worst_flow = std::max(worst_flow, std::abs(solution.inflow() / m3_per_s - Q) / largest_flow);
    const double H = solution.supply_pressure() / units::Pa / model.weight();
    worst_supply = std::max(worst_supply, std::abs(H - model.supply_head(Q)) / model.scale());
    ASSERT_NEAR(H, model.supply_head(Q), agreement * model.scale()) << "seed " << seed;
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
  EXPECT_EQ(pumped, wanted);
  EXPECT_GE(seen.rarest(), 10);
}

}  // namespace
}  // namespace hydro
