#include "hydro/diagnosis/least_squares.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/QR>

namespace hydro {
namespace {

/// By the residuals stacked on the damping's, so that J^T J, whose digits are half as good, is never
/// made.
Eigen::VectorXd step_of(const Linearised& at, double damping) {
  const Eigen::Index rows = at.jacobian.rows(), inputs = at.jacobian.cols();
  Eigen::VectorXd lengths = at.jacobian.colwise().norm();
  for (double& length : lengths)
    if (!(length > 0)) length = 1;
  Eigen::MatrixXd stacked = Eigen::MatrixXd::Zero(rows + inputs, inputs);
  stacked.topRows(rows) = at.jacobian * lengths.cwiseInverse().asDiagonal();
  stacked.bottomRows(inputs).diagonal().setConstant(std::sqrt(damping));
  Eigen::VectorXd right = Eigen::VectorXd::Zero(rows + inputs);
  right.head(rows) = -at.residuals;
  return stacked.colPivHouseholderQr().solve(right).cwiseQuotient(lengths);
}

bool is_finite(const Linearised& at) {
  return at.residuals.allFinite() && at.jacobian.allFinite();
}

}  // namespace

LeastSquares least_squares(
    const std::function<std::optional<Linearised>(const Eigen::VectorXd&)>& model,
    Eigen::VectorXd start,
    int most_steps,
    double settled) {
  constexpr double first_damping = 1e-3, least_damping = 1e-12, most_damping = 1e12;
  LeastSquares found{.inputs = std::move(start)};
  auto first = model(found.inputs);
  if (!first || !is_finite(*first)) return found;
  found.there = std::move(*first);
  double damping = first_damping;
  while (found.steps < most_steps && damping <= most_damping) {
    const Eigen::VectorXd whole = step_of(found.there, 0);
    found.last_step = (found.there.jacobian * whole).norm();
    const bool is_last = found.last_step <= settled * std::max(1.0, found.there.residuals.norm());
    const Eigen::VectorXd tried =
        found.inputs + (is_last || damping < least_damping ? whole : step_of(found.there, damping));
    ++found.steps;
    auto there = model(tried);
    const bool has_answer = there && is_finite(*there);
    // So near the least sum, rounding decides whether it falls.
    if (has_answer &&
        (is_last || there->residuals.squaredNorm() < found.there.residuals.squaredNorm())) {
      found.inputs = tried;
      found.there = std::move(*there);
      damping /= 10;
      found.is_settled = is_last;
    } else {
      damping = std::max(damping, least_damping) * 10;
    }
    if (found.is_settled) break;
  }
  return found;
}

Eigen::MatrixXd covariance_of(const Eigen::MatrixXd& jacobian) {
  const Eigen::Index inputs = jacobian.cols();
  const Eigen::MatrixXd r =
      jacobian.colPivHouseholderQr().matrixR().topRows(inputs).triangularView<Eigen::Upper>();
  const auto order = jacobian.colPivHouseholderQr().colsPermutation();
  const Eigen::MatrixXd inverse =
      r.triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(inputs, inputs));
  return order * (inverse * inverse.transpose()) * order.transpose();
}

}  // namespace hydro
