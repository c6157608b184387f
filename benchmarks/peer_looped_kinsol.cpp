// Peer: KINSOL (SUNDIALS 6 or later), full Newton with KLU (SuiteSparse), for lines that join.
//
// How it was made strong
//   - Flow is an unknown, not recovered from differences of heads: a pipe across between nearly
//     equal heads hardly resists, and from heads alone it takes tens of steps.
//   - The unknowns are numbered in the order that is asked for, and KLU keeps it: with its own
//     orders it is slower.
//   - Analytic Jacobian. It is asked for where the residuals were evaluated last: their pass of the
//     laws leaves the slopes, and the Jacobian evaluates no law. Only the slopes are written into a
//     copy of the pattern, and KLU factorises anew without a new analysis.
//   - The Jacobian is renewed at the first and the third step: the second step is good enough with
//     the factors of the first, and three steps do. KINSetMaxSetupCalls of 1 and 3 are slower.
//   - No line search (KIN_NONE): the case does not need one.
//   - Residuals are scaled to the largest flow and to the supply's head, so that KINSOL's own test
//     is ours. Its test for small steps is put out of the way.
//   - Memory, matrix and solver are made once.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstring>
#include <memory>
#include <stdexcept>
#include <type_traits>
#include <utility>
#include <vector>

#include "looped_peers.hpp"
#include <kinsol/kinsol.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_config.h>
#include <sunlinsol/sunlinsol_klu.h>
#include <sunmatrix/sunmatrix_sparse.h>

namespace peers {
namespace {

static_assert(std::is_same_v<sunrealtype, double>);

constexpr int natural_order = 2;  // KLU's number for it

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

/// The Jacobian by columns. Row and column of a flow: its energy; of a head: the mass at its place.
struct Pattern {
  std::vector<sunindextype> starts;
  std::vector<sunindextype> rows;
  std::vector<double> values;
  std::vector<std::size_t> diagonal;  ///< by unknown: where its entry stands
};

Pattern pattern_of(const Looped& problem, const Order& order) {
  const std::size_t size = problem.pipes.size() + problem.places();
  std::vector<std::vector<std::pair<int, double>>> columns(size);
  const auto add = [&](int row, int column, double value) {
    columns[static_cast<std::size_t>(column)].emplace_back(row, value);
  };
  for (std::size_t p = 0; p < problem.pipes.size(); ++p) {
    const int flow = order.of_flows[p];
    add(flow, flow, 0);
    const auto meets = [&](int place, double sign) {
      const int head = order.of_heads[static_cast<std::size_t>(place)];
      add(head, flow, sign);
      add(flow, head, -sign);
    };
    meets(problem.pipes[p].to, 1);
    if (problem.pipes[p].from != the_supply) meets(problem.pipes[p].from, -1);
  }
  for (const int head : order.of_heads) add(head, head, 0);
  Pattern pattern;
  pattern.diagonal.resize(size);
  for (std::size_t column = 0; column < size; ++column) {
    std::sort(columns[column].begin(), columns[column].end());
    pattern.starts.push_back(static_cast<sunindextype>(pattern.rows.size()));
    for (const auto& [row, value] : columns[column]) {
      if (static_cast<std::size_t>(row) == column) pattern.diagonal[column] = pattern.rows.size();
      pattern.rows.push_back(row);
      pattern.values.push_back(value);
    }
  }
  pattern.starts.push_back(static_cast<sunindextype>(pattern.rows.size()));
  return pattern;
}

class Kinsol final : public Peer {
 public:
  Kinsol(const Looped& problem, Order order)
      : problem_(problem),
        order_(std::move(order)),
        pattern_(pattern_of(problem_, order_)),
        start_flows_(problem.start_flows()),
        size_(static_cast<sunindextype>(problem.pipes.size() + problem.places())),
        context_(make_context()),
        unknowns_(N_VNew_Serial(size_, context_)),
        unknown_scales_(N_VNew_Serial(size_, context_)),
        gap_scales_(N_VNew_Serial(size_, context_)),
        jacobian_(SUNSparseMatrix(
            size_, size_, static_cast<sunindextype>(pattern_.rows.size()), CSC_MAT, context_)),
        solver_(SUNLinSol_KLU(unknowns_, jacobian_, context_)),
        memory_(KINCreate(context_)) {
    const double per_flow = 1 / *std::max_element(start_flows_.begin(), start_flows_.end());
    double* const of_unknowns = N_VGetArrayPointer(unknown_scales_);
    double* const of_gaps = N_VGetArrayPointer(gap_scales_);
    for (const int flow : order_.of_flows) {
      of_unknowns[flow] = per_flow;
      of_gaps[flow] = 1 / problem_.supply_head;  // energy
    }
    for (const int head : order_.of_heads) {
      of_unknowns[head] = 1 / problem_.supply_head;
      of_gaps[head] = per_flow;  // mass
    }
    check(static_cast<int>(SUNLinSol_KLUSetOrdering(solver_, natural_order)));
    check(KINInit(memory_, gaps, unknowns_));
    check(KINSetUserData(memory_, this));
    check(KINSetLinearSolver(memory_, solver_, jacobian_));
    check(KINSetJacFn(memory_, slopes));
    check(KINSetMaxSetupCalls(memory_, 2));
    check(KINSetNumMaxIters(memory_, most_steps));
    check(KINSetFuncNormTol(memory_, tolerance));
    check(KINSetScaledStepTol(memory_, 1e-30));
    check(KINSetMaxNewtonStep(memory_, 1e6));
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
    double* const u = N_VGetArrayPointer(unknowns_);
    for (std::size_t p = 0; p < start_flows_.size(); ++p) u[order_.of_flows[p]] = start_flows_[p];
    for (const int head : order_.of_heads) u[head] = problem_.start_head();
    if (KINSol(memory_, unknowns_, KIN_NONE, unknown_scales_, gap_scales_) < 0) return -1;
    long steps = -1;
    KINGetNumNonlinSolvIters(memory_, &steps);
    return static_cast<int>(steps);
  }

  Profile profile() const override {
    const double* const u = N_VGetArrayPointer(unknowns_);
    Profile result;
    for (const int i : order_.of_flows) result.flow.push_back(u[i]);
    for (const int i : order_.of_heads) result.head.push_back(u[i]);
    return result;
  }

 private:
  static void check(int status) {
    if (status < 0) throw std::runtime_error("KINSOL: refused");
  }

  /// Gaps of energy and mass; leaves the slopes.
  static int gaps(N_Vector unknowns, N_Vector result, void* data) {
    auto& self = *static_cast<Kinsol*>(data);
    const double* const u = N_VGetArrayPointer(unknowns);
    double* const gap = N_VGetArrayPointer(result);
    const auto slope = [&](int unknown) -> double& {
      return self.pattern_.values[self.pattern_.diagonal[static_cast<std::size_t>(unknown)]];
    };
    for (std::size_t i = 0; i < self.problem_.places(); ++i) {
      const int unknown = self.order_.of_heads[i];
      const double head = std::max(u[unknown], 1e-9 * self.problem_.supply_head);
      const double flow = self.problem_.by_square_roots[i] * std::sqrt(head);
      gap[unknown] = -flow;
      slope(unknown) = -flow / (2 * head);
    }
    for (std::size_t p = 0; p < self.problem_.pipes.size(); ++p) {
      const LoopedPipe& pipe = self.problem_.pipes[p];
      const int unknown = self.order_.of_flows[p];
      const int to = self.order_.of_heads[static_cast<std::size_t>(pipe.to)];
      const double flow = u[unknown];
      const Law lost = loss(pipe, flow);
      double head_before = self.problem_.supply_head;
      gap[to] += flow;
      if (pipe.from != the_supply) {
        const int from = self.order_.of_heads[static_cast<std::size_t>(pipe.from)];
        gap[from] -= flow;
        head_before = u[from];
      }
      gap[unknown] = head_before - u[to] - lost.value;
      slope(unknown) = -std::max(lost.slope, least_slope_share * pipe.loss_coefficient);
    }
    return 0;
  }

  /// KINSOL has cleared the matrix, its pattern too.
  static int slopes(N_Vector, N_Vector, SUNMatrix jacobian, void* data, N_Vector, N_Vector) {
    const Pattern& pattern = static_cast<const Kinsol*>(data)->pattern_;
    std::memcpy(SM_INDEXPTRS_S(jacobian),
                pattern.starts.data(),
                pattern.starts.size() * sizeof(sunindextype));
    std::memcpy(
        SM_INDEXVALS_S(jacobian), pattern.rows.data(), pattern.rows.size() * sizeof(sunindextype));
    std::memcpy(SM_DATA_S(jacobian), pattern.values.data(), pattern.values.size() * sizeof(double));
    return 0;
  }

  Looped problem_;
  Order order_;
  Pattern pattern_;
  std::vector<double> start_flows_;
  sunindextype size_;
  SUNContext context_;
  N_Vector unknowns_;
  N_Vector unknown_scales_;
  N_Vector gap_scales_;
  SUNMatrix jacobian_;
  SUNLinearSolver solver_;
  void* memory_;
};

}  // namespace

std::unique_ptr<Peer> make_kinsol(const Looped& problem, const Order& order) {
  return std::make_unique<Kinsol>(problem, order);
}

}  // namespace peers
