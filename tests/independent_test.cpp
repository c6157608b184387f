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
      const double slope = it.low > 0 ? 0 : it.exponent * q / std::max(1e-12, model.head(it, v[k]));
      const double left = static_cast<double>(v.size()) * own_residual * model.scale();
      ASSERT_NEAR(q, model.flow(it, v[k]), agreement * largest_flow + slope * left)
          << "seed " << seed;
      broken += it.open_riser && q > 0;
      if (it.open_riser || it.number == 0) continue;
      const double P = line.pressure[i] / units::Pa / model.weight();
      worst_head = std::max(worst_head, std::abs(P - model.head(it, v[k])) / model.scale());
      ASSERT_NEAR(P, model.head(it, v[k]), agreement * model.scale()) << "seed " << seed;
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

}  // namespace
}  // namespace hydro
