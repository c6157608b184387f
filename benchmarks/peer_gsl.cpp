// Peer: GSL's hybridsj, Powell's hybrid method with a dense Jacobian.
//
// GSL is under the GNU General Public License. It is used here only, in a benchmark that is built
// for measuring and never installed; the library neither includes nor links it.
//
// How it was made strong
//   - The heads are the only unknowns, and the flows are added up from the far end: mass holds
//     exactly, the dense matrix has a quarter of the entries that flows and heads would need, and
//     no flow is recovered from differences of heads.
//   - Analytic Jacobian, from slopes that the same pass of the laws leaves. hybridsj asks for it
//     rarely and updates it by Broyden's formula in between.
//   - Stopped at our tolerance by the residuals that GSL holds, without a further evaluation.
//   - Memory is made once.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>
#include <vector>

#include "peers.hpp"
#include <gsl/gsl_errno.h>
#include <gsl/gsl_matrix.h>
#include <gsl/gsl_multiroots.h>
#include <gsl/gsl_vector.h>

namespace peers {
namespace {

struct Freed {
  void operator()(gsl_vector* vector) const { gsl_vector_free(vector); }
  void operator()(gsl_multiroot_fdfsolver* solver) const { gsl_multiroot_fdfsolver_free(solver); }
};

/// Unknowns from the inlet on: the heads.
class Gsl final : public Peer {
 public:
  explicit Gsl(const Lateral& line)
      : line_(line),
        flows_(line.count),
        loss_slopes_(line.count),
        outlet_slopes_(line.count),
        start_(gsl_vector_alloc(line.count)),
        solver_(gsl_multiroot_fdfsolver_alloc(gsl_multiroot_fdfsolver_hybridsj, line.count)) {
    gsl_set_error_handler_off();
  }

  int solve() override {
    gsl_vector_set_all(start_.get(), line_.start_head());
    gsl_multiroot_function_fdf system{gaps, slopes, gaps_and_slopes, line_.count, this};
    gsl_multiroot_fdfsolver_set(solver_.get(), &system, start_.get());
    for (int steps = 0; steps <= most_steps; ++steps) {
      const double* const gap = solver_->f->data;
      double worst = 0;
      for (std::size_t i = 0; i < line_.count; ++i) worst = std::max(worst, std::abs(gap[i]));
      if (worst <= tolerance * line_.supply_head) return steps;
      if (gsl_multiroot_fdfsolver_iterate(solver_.get()) != GSL_SUCCESS) return -1;
    }
    return -1;
  }

  Profile profile() const override {
    const double* const heads = solver_->x->data;
    Profile result{flows_, {heads, heads + line_.count}};
    double flow = 0;
    for (std::size_t i = line_.count; i-- > 0;)
      result.flow[i] = flow += outlet(line_.outlet_coefficient, heads[i]).value;
    return result;
  }

 private:
  /// GSL's own vectors are contiguous: their stride is 1.
  static int gaps(const gsl_vector* unknowns, void* data, gsl_vector* result) {
    auto& self = *static_cast<Gsl*>(data);
    const double* const head = unknowns->data;
    double flow = 0;
    for (std::size_t i = self.line_.count; i-- > 0;) {
      const Law out = outlet(self.line_.outlet_coefficient, head[i]);
      flow += out.value;
      const Law lost = loss(self.line_, flow);
      result->data[i] = (i > 0 ? head[i - 1] : self.line_.supply_head) - head[i] - lost.value;
      self.outlet_slopes_[i] = out.slope;
      self.loss_slopes_[i] = lost.slope;
    }
    return GSL_SUCCESS;
  }

  static void fill(const Gsl& self, gsl_matrix* jacobian) {
    const std::size_t count = self.line_.count;
    for (std::size_t i = 0; i < count; ++i) {
      double* const row = jacobian->data + i * jacobian->tda;
      std::fill(row, row + i, 0.0);
      for (std::size_t j = i; j < count; ++j)
        row[j] = -self.loss_slopes_[i] * self.outlet_slopes_[j];
      row[i] -= 1;
      if (i > 0) row[i - 1] = 1;
    }
  }

  static int slopes(const gsl_vector* unknowns, void* data, gsl_matrix* jacobian) {
    auto& self = *static_cast<Gsl*>(data);
    double flow = 0;
    for (std::size_t i = self.line_.count; i-- > 0;) {
      const Law out = outlet(self.line_.outlet_coefficient, unknowns->data[i]);
      flow += out.value;
      self.outlet_slopes_[i] = out.slope;
      self.loss_slopes_[i] = loss(self.line_, flow).slope;
    }
    fill(self, jacobian);
    return GSL_SUCCESS;
  }

  static int gaps_and_slopes(const gsl_vector* unknowns,
                             void* data,
                             gsl_vector* result,
                             gsl_matrix* jacobian) {
    gaps(unknowns, data, result);
    fill(*static_cast<Gsl*>(data), jacobian);
    return GSL_SUCCESS;
  }

  Lateral line_;
  std::vector<double> flows_;
  std::vector<double> loss_slopes_;
  std::vector<double> outlet_slopes_;
  std::unique_ptr<gsl_vector, Freed> start_;
  std::unique_ptr<gsl_multiroot_fdfsolver, Freed> solver_;
};

}  // namespace

std::unique_ptr<Peer> make_gsl(const Lateral& line) {
  return std::make_unique<Gsl>(line);
}

}  // namespace peers
