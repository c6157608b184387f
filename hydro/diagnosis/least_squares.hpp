// least_squares.hpp: the inputs that make a sum of squares least, in plain numbers. Not installed.
//
// Formula   r the residuals in standard errors, J = dr/dx. A step d is least in
//             |r + J d|^2 + damping |D d|^2,  D_j the length of column j of J
//           It is taken when the sum falls; else the damping rises. It has settled when the step
//           without damping is small: |J d| <= settled max(1, |r|).
//           Covariance = (J^T J)^-1, where errors are 1.
// Source    D. W. Marquardt, J. Soc. Indust. Appl. Math. 11 (1963) 431-441 (from memory).
// Accuracy  Against certified values: least_squares_test.cpp.
// Threads   Pure function.
#pragma once

#include <functional>
#include <optional>

#include <Eigen/Core>

namespace hydro {

/// Residuals, and how each input moves them.
struct Linearised {
  Eigen::VectorXd residuals = {};
  Eigen::MatrixXd jacobian = {};
};

struct LeastSquares {
  Eigen::VectorXd inputs;
  Linearised there = {};
  int steps = 0;
  double last_step = 0;  ///< |J d|
  bool is_settled = false;
};

/// @param model none where it has no answer: a shorter step is tried
LeastSquares least_squares(
    const std::function<std::optional<Linearised>(const Eigen::VectorXd&)>& model,
    Eigen::VectorXd start,
    int most_steps,
    double settled);

/// Of inputs that all are determined.
Eigen::MatrixXd covariance_of(const Eigen::MatrixXd& jacobian);

}  // namespace hydro
