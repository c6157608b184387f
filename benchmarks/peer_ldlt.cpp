// Peer: Newton's method with a sparse LDLT factorisation (Eigen).
//
// A step solves the symmetric system of flows and heads
//
//   [ -h'  A^T ] [ dQ ]   [ -energy gaps ]
//   [  A    q' ] [ dH ] = [   mass gaps  ]
//
// with A the line's incidence matrix, -1 where a reach arrives and +1 where it begins. It is
// quasi-definite (-h' < 0, q' > 0), so that LDLT needs no pivoting in any order.
//
// How it was made strong
//   - Flow is an unknown, not recovered from differences of heads: three steps, to rounding.
//   - Numbered from the far end inward, head then flow: the matrix is tridiagonal, without fill. No
//     ordering is sought, and Eigen's own numbering is kept, so that nothing is permuted.
//   - The upper triangle is stored: with the natural order Eigen factorises it in place, uncopied.
//   - Analysed once. A step only writes the diagonal, for the rest is +1 and -1.
//   - Gaps and slopes in one pass of the laws, straight into the matrix and the right-hand side;
//     unknowns and corrections share its numbering.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

#include "peers.hpp"
#include <Eigen/Core>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

namespace peers {
namespace {

using Matrix = Eigen::SparseMatrix<double>;
using Index = Eigen::Index;

/// Unknowns from the far end inward: x[2 j] is the head, x[2 j + 1] the flow of the j-th place.
class Ldlt final : public WarmPeer {
 public:
  explicit Ldlt(const Lateral& line)
      : line_(line),
        count_(static_cast<Index>(line.count)),
        matrix_(2 * count_, 2 * count_),
        unknowns_(2 * count_),
        gaps_(2 * count_),
        rises_(2 * count_),
        start_(2 * count_),
        equal_outlets_(line.equal_outlets()),
        coefficients_(equal_outlets_) {
    double flow = 0;
    for (Index j = 0; j < count_; ++j) {
      start_[2 * j] = line_.start_head();
      start_[2 * j + 1] = flow += line_.start_outlet_flow();
    }
    matrix_.reserve(Eigen::VectorXi::Constant(2 * count_, 2));
    for (Index column = 0; column < 2 * count_; ++column) {
      const bool is_flow = column % 2 == 1;
      if (column > 0) matrix_.insert(column - 1, column) = is_flow ? -1 : 1;
      matrix_.insert(column, column) = is_flow ? -1 : 1;
    }
    matrix_.makeCompressed();
    factors_.analyzePattern(matrix_);
  }

  int solve() override {
    unknowns_ = start_;
    for (int steps = 0; steps <= most_steps; ++steps) {
      if (linearise()) return steps;
      factors_.factorize(matrix_);
      if (factors_.info() != Eigen::Success) return -1;
      rises_ = factors_.solve(gaps_);
      unknowns_ += rises_;
    }
    return -1;
  }

  void take(std::span<const double> outlet_coefficients) override {
    coefficients_ = outlet_coefficients;
  }

  void begin_at(const Profile& start) override {
    for (Index j = 0; j < count_; ++j) {
      start_[2 * j] = start.head[place(j)];
      start_[2 * j + 1] = start.flow[place(j)];
    }
  }

  Profile profile() const override {
    Profile result;
    for (Index j = count_; j-- > 0;) {
      result.head.push_back(unknowns_[2 * j]);
      result.flow.push_back(unknowns_[2 * j + 1]);
    }
    return result;
  }

 private:
  std::size_t place(Index j) const { return static_cast<std::size_t>(count_ - 1 - j); }

  /// Leaves gaps and slopes. Returns whether it is solved.
  bool linearise() {
    double* const values = matrix_.valuePtr();  // column k holds its diagonal at 2 k
    const double* const x = unknowns_.data();
    double* const gaps = gaps_.data();
    double worst_mass = 0;
    double worst_energy = 0;
    double flow_beyond = 0;
    for (Index j = 0; j < count_; ++j) {
      const double head = x[2 * j];
      const double flow = x[2 * j + 1];
      const double head_before = j + 1 < count_ ? x[2 * j + 2] : line_.supply_head;
      const Law out = outlet(coefficients_[place(j)], head);
      const Law lost = loss(line_, flow);
      const double mass = flow - flow_beyond - out.value;
      const double energy = head_before - head - lost.value;
      values[4 * j] = out.slope;
      values[4 * j + 2] = -lost.slope;
      gaps[2 * j] = mass;
      gaps[2 * j + 1] = -energy;
      worst_mass = std::max(worst_mass, std::abs(mass));
      worst_energy = std::max(worst_energy, std::abs(energy));
      flow_beyond = flow;
    }
    return worst_mass <= tolerance * flow_beyond && worst_energy <= tolerance * line_.supply_head;
  }

  Lateral line_;
  Index count_;
  Matrix matrix_;
  Eigen::VectorXd unknowns_;
  Eigen::VectorXd gaps_;
  Eigen::VectorXd rises_;
  Eigen::VectorXd start_;
  std::vector<double> equal_outlets_;
  std::span<const double> coefficients_;
  Eigen::SimplicialLDLT<Matrix, Eigen::Upper, Eigen::NaturalOrdering<int>> factors_;
};

}  // namespace

std::unique_ptr<WarmPeer> make_ldlt(const Lateral& line) {
  return std::make_unique<Ldlt>(line);
}

}  // namespace peers
