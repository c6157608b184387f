// The solver against an independent one: the same physics written anew as one dense system of
// outlet flows, solved by KINSOL of SUNDIALS (a general-purpose nonlinear solver) from a crude
// start. The answer of such a tree is unique, so two solvers that meet their equations must agree.
//
// Unknown of each outlet: v > 0 stands for a flow v q_max, or, where the flow is held, for a pressure head v^2 S;
// v < 0 for a lack of head -v S.
// Equation: head that arrives, from the supply along the pipes - ground - height - P(q) - riser(q)
// = 0 (or = v S).

#include "hydro/hydro.hpp"

#include <cmath>
#include <cstdio>
#include <numbers>
#include <string>
#include <vector>

#include "random_layout.hpp"
#include <gtest/gtest.h>
#include <kinsol/kinsol.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

namespace hydro {
namespace {

constexpr double g = 9.80665;

double pipe_loss(const Pipe& pipe, double length, double k, double flow) {
  const double D = pipe.inside_diameter / units::m;
  const double V = flow / (std::numbers::pi * D * D / 4);
  const double local = k * V * std::abs(V) / (2 * g);
  if (pipe.hazen_williams) {
    const double C = *pipe.hazen_williams;
    const double J =
        10.67 * std::pow(std::abs(flow), 1.852) / std::pow(C, 1.852) / std::pow(D, 4.8704);
    return std::copysign(length * J, flow) + local;
  }
  return *pipe.darcy_factor * length / D * V * std::abs(V) / (2 * g) + local;
}

/// One place where water can leave, as the test sees it.
struct Opening {
  std::size_t line;
  int number;
  double coefficient;  // q = coefficient P^exponent, P in m
  double exponent;
  double height;
  double largest_flow;
  double low;  // below it, and above `high`, q rises with the square root of P; both 0: nowhere
  double high;
  bool open_riser;
  double riser_length;
  double riser_k;
};

class DenseModel {
 public:
  explicit DenseModel(const Layout& layout)
      : layout_(layout),
        weight_(properties(layout.water()).density / kg_per_m3 * g),
        supply_head_(layout.supply().pressure / units::Pa / weight_),
        scale_(supply_head_ + 100) {
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      for (int i = 1; i <= layout.lines()[l].outlet_count(); ++i) add_opening(l, i);
  }

  const std::vector<Opening>& openings() const { return openings_; }
  double scale() const { return scale_; }
  double weight() const { return weight_; }

  double flow(const Opening& opening, double v) const {
    if (!(v > 0)) return 0;
    if (opening.low == 0) return v * opening.largest_flow;
    const double P = head(opening, v);
    const double held = std::clamp(P, opening.low, opening.high);
    return opening.coefficient * std::pow(held, opening.exponent) * std::sqrt(P / held);
  }
  double head(const Opening& opening, double v) const {
    if (opening.low > 0) return v > 0 ? v * v * scale_ : 0;
    return v > 0 ? std::pow(flow(opening, v) / opening.coefficient, 1 / opening.exponent) : 0;
  }

  /// Left over at each opening, in units of the scale.
  void residual(const double* v, double* left) const {
    const std::size_t lines = layout_.lines().size();
    std::vector<std::vector<double>> out(lines);  // by line and outlet
    for (std::size_t l = 0; l < lines; ++l)
      out[l].assign(static_cast<std::size_t>(layout_.lines()[l].outlet_count()), 0.0);
    for (std::size_t k = 0; k < openings_.size(); ++k)
      out[openings_[k].line][static_cast<std::size_t>(openings_[k].number - 1)] =
          flow(openings_[k], v[k]);

    // Flow into each line: its own outlets and all lines beyond. Lines are few; the sums are taken
    // anew for each.
    std::vector<double> inflow(lines, 0.0);
    for (std::size_t l = 0; l < lines; ++l) {
      double own = 0;
      for (const double q : out[l]) own += q;
      for (std::optional<std::size_t> up = l; up; up = feeder(*up)) inflow[*up] += own;
    }
    // Heads above the sea, line by line from the supply; a feeder may come after what it feeds.
    std::vector<std::vector<double>> heads(lines);
    std::vector<double> end_head(lines, std::nan(""));
    const double supply = supply_head_ + elevation();
    for (bool changed = true; changed;) {
      changed = false;
      for (std::size_t l = 0; l < lines; ++l) {
        if (!std::isnan(end_head[l])) continue;
        const auto up = feeder(l);
        if (up && std::isnan(end_head[*up])) continue;
        walk(l, up ? end_head[*up] : supply, inflow[l], out[l], heads[l], end_head[l]);
        changed = true;
      }
    }
    for (std::size_t k = 0; k < openings_.size(); ++k) {
      const Opening& it = openings_[k];
      const double H = heads[it.line][static_cast<std::size_t>(it.number - 1)];
      const double ground = layout_.outlet_elevation(it.line, it.number) / units::m;
      const double q = flow(it, v[k]);
      double riser = 0;
      if (const auto pipe = layout_.lines()[it.line].riser.pipe(); pipe && q > 0)
        riser = pipe_loss(*pipe, it.riser_length, it.riser_k, q);
      const double lack = v[k] < 0 ? v[k] * scale_ : 0;
      left[k] = (H - ground - it.height - head(it, v[k]) - riser - lack) / scale_;
    }
  }

 private:
  double elevation() const { return layout_.supply().elevation.value_or(Length{}) / units::m; }
  std::optional<std::size_t> feeder(std::size_t line) const {
    const std::string& name = layout_.lines()[line].fed_by;
    if (name.empty()) return std::nullopt;
    for (std::size_t i = 0; i < layout_.lines().size(); ++i)
      if (layout_.lines()[i].name == name) return i;
    return std::nullopt;
  }

  void walk(std::size_t l,
            double head_in,
            double flow_in,
            const std::vector<double>& out,
            std::vector<double>& heads,
            double& end) const {
    const Line& line = layout_.lines()[l];
    double at = 0, H = head_in, Q = flow_in;
    for (int i = 1; i <= line.outlet_count(); ++i) {
      const double here = line.place_of(i) / units::m;
      const double k = line.outlet_loss_coefficient.value_or(0) +
                       (i == 1 ? line.loss_coefficient.value_or(0) : 0);
      H -= pipe_loss(line.pipe, here - at, k, Q);
      heads.push_back(H);
      Q -= out[static_cast<std::size_t>(i - 1)];
      at = here;
    }
    const double k = line.outlet_count() == 0 ? line.loss_coefficient.value_or(0) : 0;
    end = H - pipe_loss(line.pipe, line.whole_length() / units::m - at, k, Q);
  }

  void add_opening(std::size_t l, int number) {
    const Line& line = layout_.lines()[l];
    const Fault* fault = nullptr;
    for (const Fault& it : layout_.faults())
      if (line_of(it) == line.name && outlet_of(it) == number) fault = &it;
    if (fault && std::holds_alternative<Capped>(*fault)) return;
    const Outlet& outlet = *line.outlet;
    Opening it{.line = l,
               .number = number,
               .coefficient = 0,
               .exponent = outlet.exponent.value_or(0.5),
               .height = line.riser.height / units::m,
               .largest_flow = 0,
               .low = 0,
               .high = INFINITY,
               .open_riser = false,
               .riser_length = line.riser.height / units::m,
               .riser_k = line.riser.loss_coefficient.value_or(0)};
    it.coefficient =
        outlet.flow / m3_per_s / std::pow(outlet.at / units::Pa / weight_, it.exponent);
    if (outlet.compensating) {
      it.exponent = 0;
      it.coefficient = outlet.flow / m3_per_s;
      it.low = outlet.compensating->low / units::Pa / weight_;
      it.high = outlet.compensating->high / units::Pa / weight_;
    } else if (it.exponent < 0.1) {
      it.low = outlet.minimum.value() / units::Pa / weight_;
    }
    if (fault) {
      if (const auto* clog = std::get_if<Clogged>(fault)) it.coefficient *= 1 - clog->share;
      if (const auto* wear = std::get_if<Worn>(fault)) it.coefficient *= 1 + wear->share;
      const bool off = std::holds_alternative<HeadOff>(*fault);
      if (off || std::holds_alternative<RiserSheared>(*fault)) {
        const double D = line.riser.inside_diameter.value() / units::m;
        const double A = std::numbers::pi * D * D / 4;
        // The random risers have a loss coefficient of their own, which is the break's default.
        it.coefficient = A * std::sqrt(2 * g / (1 + it.riser_k));
        it.exponent = 0.5;
        it.low = 0;
        it.riser_k = 0;
        it.open_riser = true;
        if (!off) it.height = it.riser_length = std::min(0.5 * 0.3048, it.riser_length);
      }
    }
    const double ground = layout_.outlet_elevation(l, number) / units::m - elevation();
    const double at_rest = std::max(1e-3, supply_head_ - ground - it.height);
    it.largest_flow = it.coefficient * std::pow(at_rest, it.exponent);
    openings_.push_back(it);
  }

  const Layout& layout_;
  double weight_;
  double supply_head_;
  double scale_;
  std::vector<Opening> openings_;
};

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

TEST(IndependentSolver, AgreesOn500RandomTreesWithFaults) {
  constexpr int wanted = 500;
  constexpr double own_residual =
      1e-11;                          // of the scale: a peer that does not reach it proves nothing
  constexpr double agreement = 1e-9;  // of the scale in head, of the largest flow in flow
  int compared = 0, left_out = 0, dry = 0, broken = 0;
  double worst_head = 0, worst_flow = 0;
  for (std::uint64_t seed = 1; compared < wanted && seed < 4000; ++seed) {
    const Layout layout = random_layout(seed,
                                        {.most_lines = 10,
                                         .most_outlets = 30,
                                         .least_exponent = 0.2,
                                         .most_faults = 6,
                                         .darcy_weisbach = false});
    const DenseModel model(layout);
    if (model.openings().empty()) continue;
    std::vector<double> v(model.openings().size(), 0.7);
    if (!(solve_by_kinsol(model, v) <= own_residual)) {
      ++left_out;
      continue;
    }
    ++compared;
    const Solution solution = solve(layout);
    double largest_flow = 1e-12;
    for (const LineSolution& line : solution.lines())
      largest_flow = std::max(largest_flow, line.inflow / m3_per_s);
    for (std::size_t k = 0; k < v.size(); ++k) {
      const Opening& it = model.openings()[k];
      const LineSolution& line = solution.lines()[it.line];
      const auto i = static_cast<std::size_t>(it.number - 1);
      const double q = line.flow[i] / m3_per_s;
      worst_flow = std::max(worst_flow, std::abs(q - model.flow(it, v[k])) / largest_flow);
      ASSERT_NEAR(q, model.flow(it, v[k]), agreement * largest_flow) << "seed " << seed;
      if (it.open_riser) {
        broken += q > 0;
        continue;
      }
      const double P = line.pressure[i] / units::Pa / model.weight();
      worst_head = std::max(worst_head, std::abs(P - model.head(it, v[k])) / model.scale());
      ASSERT_NEAR(P, model.head(it, v[k]), agreement * model.scale()) << "seed " << seed;
      dry += line.state[i] == OutletState::dry;
    }
  }
  std::printf(
      "compared %d trees, left out %d (%.1f %%) on which the peer did not reach %.0e; %d dry "
      "outlets, %d "
      "open risers; worst difference in head %.1e, in flow %.1e\n",
      compared,
      left_out,
      100.0 * left_out / (compared + left_out),
      own_residual,
      dry,
      broken,
      worst_head,
      worst_flow);
  EXPECT_EQ(compared, wanted);
  EXPECT_GT(dry, 100);
  EXPECT_GT(broken, 50);
}

}  // namespace
}  // namespace hydro
