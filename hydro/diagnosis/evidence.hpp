// evidence.hpp: how well what is predicted explains what was read and seen, in plain numbers. Not
// installed.
//
// What      Readings and sighted pressures have one normal distribution about what is predicted. A
//           candidate whose size is not known has a prediction for every size: a path, taken as
//           straight between its steps.
// Formula   As in find_fault.hpp. Along a straight piece, t from 0 to 1, the misfit is
//             q(t) = A + 2 B t + C t^2
//           and the integral of exp(-q/2) is one of the normal distribution. A covariance with the
//           variance of one reading raised by k has for inverse, by Sherman and Morrison,
//             P - k P e e^T P / (1 + k e^T P e),  P = C^-1
//           A sight P(p) = a + b Phi((p - threshold) / width) of p normal with mean m, variance v:
//             Z = a + b Phi(x),  x = (m - threshold) / s,  s^2 = width^2 + v
//             the mean moves by cov (dlnZ/dm), the covariance by cov cov^T (d2lnZ/dm2)
// Accuracy  Against sums over fine grids (evidence_test.cpp): readings, and one sight, to rounding; sizes
//           within what the prior bends in a step; several sights within 15 % of their chance, even
//           where they go against what was expected.
// Threads   const functions may be called from many threads at once.
#pragma once

#include <cstddef>
#include <vector>

#include <Eigen/Core>

namespace hydro {

/// ln Phi(x), the normal distribution's; without underflow.
double log_normal_cdf(double x);
/// ln of the sum of exp of each; -infinity for none.
double log_sum(const std::vector<double>& logs);

/// The chance of what was seen, by the pressure there; b = 0: it does not hang on it.
struct SightChance {
  double a = 0;
  double b = 0;
  double threshold = 0;
  double width = 1;
};

/// What was read, and its errors.
struct ErrorModel {
  Eigen::VectorXd read;          ///< readings
  Eigen::MatrixXd covariance;    ///< of the readings, then of the pressures that sights hang on
  Eigen::VectorXd own_variance;  ///< of each reading by itself: that which a blunder raises
  double blunder = 0;            ///< probability
};

/// Steps between the least and the largest size.
inline constexpr std::size_t size_steps = 32;
/// Sizes are within so many deviations of the median.
inline constexpr double farthest_size = 2.5;

/// What the evidence says of one candidate.
struct Weighed {
  double log_evidence = 0;
  /// Of the evidence, by step; one for a candidate without size.
  std::vector<double> log_shares = {};
  std::vector<double> best = {};  ///< by step: where in it the misfit is least, 0 to 1
  double least_misfit = 0;        ///< square of it, over all sizes
};

class Evidence {
 public:
  explicit Evidence(ErrorModel model);

  /// @param predicted by size, size_steps + 1 columns, or one; readings first, then sighted pressures
  /// @param sights one for each sighted pressure
  Weighed weigh(const Eigen::MatrixXd& predicted, const std::vector<SightChance>& sights) const;

  /// (y - f)^T C^-1 (y - f) of the readings.
  double misfit(const Eigen::VectorXd& predicted) const;
  /// Of one reading, all errors taken together.
  double variance(Eigen::Index reading) const { return model_.covariance(reading, reading); }
  /// Of the difference of two predictions.
  double distance(const Eigen::VectorXd& one, const Eigen::VectorXd& other) const;
  /// ln of the chance of what was seen, once the readings are known.
  double log_sights(const Eigen::VectorXd& predicted, const std::vector<SightChance>& sights) const;

  /// What was read less what is predicted.
  Eigen::VectorXd left(const Eigen::VectorXd& predicted) const;
  /// Of a figure that hangs with the readings as these covariances say: what it moves by with what is
  /// left of each.
  Eigen::VectorXd gain(const Eigen::VectorXd& covariances) const;

 private:
  /// One reading a blunder, or none.
  struct Case {
    double log_weight;  ///< with the normal distribution's own factor
    double raised;      ///< k / (1 + k e^T P e)
    Eigen::Index which;
  };

  ErrorModel model_;
  Eigen::Index readings_;
  Eigen::MatrixXd precision_;        // of the readings
  Eigen::MatrixXd gain_;             // of sighted pressures by the readings
  Eigen::MatrixXd sighted_;          // covariance of sighted pressures, the readings known
  std::vector<Case> cases_;          // none first
  std::vector<double> log_of_step_;  // prior of each
};

}  // namespace hydro
