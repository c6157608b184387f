// Peer: KINSOL (SUNDIALS 6 or later), full Newton with its banded direct solver.
//
// How it was made strong
//   - Flow is an unknown, not recovered from differences of heads: three steps, to rounding.
//   - Flow and head of a place stand next to each other: one diagonal on either side of the main.
//   - Analytic Jacobian, renewed at the first and the third step: the second step is good enough
//     with the factors of the first, and three steps do. KINSetMaxSetupCalls of 1, 3 and 10 are
//     slower; from an answer nearby 1 is best, with two steps.
//   - The Jacobian is asked for where the residuals were evaluated last: their pass of the laws
//     leaves the slopes, and the Jacobian evaluates no law.
//   - No line search (KIN_NONE): the base case does not need one.
//   - Residuals are scaled to inflow and supply's head, so that KINSOL's own test is ours and it
//     stops as early as we do. Its test for small steps is put out of the way.
//   - Memory, matrix and solver are made once.

#include <algorithm>
#include <cstddef>
#include <memory>
#include <span>
#include <stdexcept>
#include <type_traits>
#include <vector>

#include "peers.hpp"
#include <kinsol/kinsol.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_config.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>

namespace peers {
namespace {

static_assert(std::is_same_v<sunrealtype, double>);

SUNContext make_context() {
  SUNContext context = nullptr;
#if SUNDIALS_VERSION_MAJOR >= 7
  const auto failed = SUNContext_Create(SUN_COMM_NULL, &context);
#else
  const auto failed = SUNContext_Create(nullptr, &context);
#endif
  if (failed) throw std::runtime_error("KINSOL: no context");
  return context;
}

/// Unknowns from the inlet on: u[2 i] is the flow, u[2 i + 1] the head of place i.
class Kinsol final : public WarmPeer {
 public:
  explicit Kinsol(const Lateral& line)
      : line_(line),
        count_(static_cast<sunindextype>(line.count)),
        loss_slopes_(line.count),
        outlet_slopes_(line.count),
        start_(2 * line.count),
        equal_outlets_(line.equal_outlets()),
        coefficients_(equal_outlets_),
        context_(make_context()),
        unknowns_(N_VNew_Serial(2 * count_, context_)),
        unknown_scales_(N_VNew_Serial(2 * count_, context_)),
        gap_scales_(N_VNew_Serial(2 * count_, context_)),
        jacobian_(SUNBandMatrix(2 * count_, 1, 1, context_)),
        solver_(SUNLinSol_Band(unknowns_, jacobian_, context_)),
        memory_(KINCreate(context_)) {
    double flow = 0;
    for (std::size_t i = line.count; i-- > 0;) {
      start_[2 * i] = flow += line.start_outlet_flow();
      start_[2 * i + 1] = line.start_head();
    }
    const double per_inflow = 1 / (static_cast<double>(line.count) * line.start_outlet_flow());
    for (sunindextype i = 0; i < count_; ++i) {
      at(unknown_scales_, 2 * i) = per_inflow;
      at(unknown_scales_, 2 * i + 1) = 1 / line.supply_head;
      at(gap_scales_, 2 * i) = 1 / line.supply_head;  // energy
      at(gap_scales_, 2 * i + 1) = per_inflow;        // mass
    }
    check(KINInit(memory_, gaps, unknowns_));
    check(KINSetUserData(memory_, this));
    check(KINSetLinearSolver(memory_, solver_, jacobian_));
    check(KINSetJacFn(memory_, slopes));
    check(KINSetMaxSetupCalls(memory_, 2));
    check(KINSetNumMaxIters(memory_, most_steps));
    check(KINSetFuncNormTol(memory_, tolerance));
    check(KINSetScaledStepTol(memory_, 1e-30));
  }

  ~Kinsol() override {
    KINFree(&memory_);
    SUNLinSolFree(solver_);
    SUNMatDestroy(jacobian_);
    N_VDestroy(gap_scales_);
    N_VDestroy(unknown_scales_);
    N_VDestroy(unknowns_);
    SUNContext_Free(&context_);
  }

  int solve() override {
    std::copy(start_.begin(), start_.end(), N_VGetArrayPointer(unknowns_));
    if (KINSol(memory_, unknowns_, KIN_NONE, unknown_scales_, gap_scales_) < 0) return -1;
    long steps = -1;
    KINGetNumNonlinSolvIters(memory_, &steps);
    return static_cast<int>(steps);
  }

  void take(std::span<const double> outlet_coefficients) override {
    coefficients_ = outlet_coefficients;
  }

  void begin_at(const Profile& start) override {
    check(KINSetMaxSetupCalls(memory_, 1));
    for (std::size_t i = 0; i < line_.count; ++i) {
      start_[2 * i] = start.flow[i];
      start_[2 * i + 1] = start.head[i];
    }
  }

  Profile profile() const override {
    Profile result;
    for (sunindextype i = 0; i < count_; ++i) {
      result.flow.push_back(at(unknowns_, 2 * i));
      result.head.push_back(at(unknowns_, 2 * i + 1));
    }
    return result;
  }

 private:
  static double& at(N_Vector vector, sunindextype index) {
    return N_VGetArrayPointer(vector)[index];
  }
  static void check(int status) {
    if (status < 0) throw std::runtime_error("KINSOL: refused");
  }

  /// Gaps of energy and mass; leaves the slopes.
  static int gaps(N_Vector unknowns, N_Vector result, void* data) {
    auto& self = *static_cast<Kinsol*>(data);
    const double* const u = N_VGetArrayPointer(unknowns);
    double* const gap = N_VGetArrayPointer(result);
    double flow_beyond = 0;
    for (sunindextype i = self.count_; i-- > 0;) {
      const auto place = static_cast<std::size_t>(i);
      const double flow = u[2 * i];
      const double head = u[2 * i + 1];
      const double head_before = i > 0 ? u[2 * i - 1] : self.line_.supply_head;
      const Law lost = loss(self.line_, flow);
      const Law out = outlet(self.coefficients_[place], head);
      gap[2 * i] = head_before - head - lost.value;
      gap[2 * i + 1] = flow - flow_beyond - out.value;
      self.loss_slopes_[place] = lost.slope;
      self.outlet_slopes_[place] = out.slope;
      flow_beyond = flow;
    }
    return 0;
  }

  /// KINSOL has cleared the matrix: every entry is written.
  static int slopes(N_Vector, N_Vector, SUNMatrix jacobian, void* data, N_Vector, N_Vector) {
    const auto& self = *static_cast<const Kinsol*>(data);
    for (sunindextype i = 0; i < self.count_; ++i) {
      const auto place = static_cast<std::size_t>(i);
      double* const by_flow = SM_COLUMN_B(jacobian, 2 * i);  // [0]: the diagonal
      by_flow[0] = -self.loss_slopes_[place];
      by_flow[1] = 1;
      if (i > 0) by_flow[-1] = -1;
      double* const by_head = SM_COLUMN_B(jacobian, 2 * i + 1);
      by_head[-1] = -1;
      by_head[0] = -self.outlet_slopes_[place];
      if (i + 1 < self.count_) by_head[1] = 1;
    }
    return 0;
  }

  Lateral line_;
  sunindextype count_;
  std::vector<double> loss_slopes_;
  std::vector<double> outlet_slopes_;
  std::vector<double> start_;
  std::vector<double> equal_outlets_;
  std::span<const double> coefficients_;
  SUNContext context_;
  N_Vector unknowns_;
  N_Vector unknown_scales_;
  N_Vector gap_scales_;
  SUNMatrix jacobian_;
  SUNLinearSolver solver_;
  void* memory_;
};

}  // namespace

std::unique_ptr<WarmPeer> make_kinsol(const Lateral& line) {
  return std::make_unique<Kinsol>(line);
}

}  // namespace peers
