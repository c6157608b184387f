#include "hydro/diagnosis/evidence.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include <Eigen/Cholesky>
#include <boost/math/distributions/normal.hpp>

namespace hydro {
namespace {

constexpr double nothing = -std::numeric_limits<double>::infinity();
const double log_two_pi = std::log(2 * std::numbers::pi);

double normal_cdf(double x) {
  return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}
double normal_pdf(double x) {
  return std::exp(-0.5 * (x * x + log_two_pi));
}

/// ln(Phi(b) - Phi(a)), a < b.
double log_between(double a, double b) {
  if (a > 0) return log_between(-b, -a);
  const double upper = log_normal_cdf(b);
  return upper + std::log1p(-std::exp(log_normal_cdf(a) - upper));
}

/// q(t) = A + 2 B t + C t^2.
struct Square {
  double A, B, C;

  double at(double t) const { return A + t * (2 * B + t * C); }
  /// Where it is least, from 0 to 1.
  double lowest() const { return C > 0 ? std::clamp(-B / C, 0.0, 1.0) : B < 0 ? 1.0 : 0.0; }
  /// ln of the integral of exp(-q / 2).
  double log_integral() const {
    // Where it hardly bends the ends would cancel; exp of a straight line, to 1e-8.
    constexpr double hardly = 1e-8;
    if (!(C > hardly)) {
      const double fall = B + 0.5 * C;  // of q / 2
      return -0.5 * A +
             (std::abs(fall) < hardly ? -0.5 * fall : std::log(-std::expm1(-fall) / fall));
    }
    const double root = std::sqrt(C);
    const double centre = -B / C;
    return -0.5 * (A - B * B / C) + 0.5 * (log_two_pi - std::log(C)) +
           log_between(-centre * root, (1 - centre) * root);
  }
};

}  // namespace

double log_normal_cdf(double x) {
  constexpr double far = -10;  // beyond: the asymptotic series, to 1e-7 in the logarithm there
  if (x > far) return std::log(normal_cdf(x));
  const double s = 1 / (x * x);
  return -0.5 * (x * x + log_two_pi) - std::log(-x) +
         std::log1p(-s * (1 - s * (3 - s * (15 - s * 105))));
}

double log_sum(const std::vector<double>& logs) {
  double most = nothing;
  for (const double it : logs) most = std::max(most, it);
  if (!(most > nothing)) return nothing;
  double sum = 0;
  for (const double it : logs) sum += std::exp(it - most);
  return most + std::log(sum);
}

Evidence::Evidence(ErrorModel model) : model_(std::move(model)), readings_(model_.read.size()) {
  const Eigen::Index sights = model_.covariance.rows() - readings_;
  const Eigen::MatrixXd of_readings = model_.covariance.topLeftCorner(readings_, readings_);
  const Eigen::LLT<Eigen::MatrixXd> factors(of_readings);
  precision_ = factors.solve(Eigen::MatrixXd::Identity(readings_, readings_));
  const Eigen::MatrixXd crossed = model_.covariance.bottomLeftCorner(sights, readings_);
  gain_ = crossed * precision_;
  sighted_ = model_.covariance.bottomRightCorner(sights, sights) - gain_ * crossed.transpose();

  const Eigen::MatrixXd lower = factors.matrixL();
  const double log_factor =
      -lower.diagonal().array().log().sum() - 0.5 * static_cast<double>(readings_) * log_two_pi;
  // Any one may be a blunder; two are left out, and what is left is made whole.
  const auto count = static_cast<double>(readings_);
  const double whole = 1 - model_.blunder + count * model_.blunder;
  cases_.push_back({log_factor + std::log((1 - model_.blunder) / whole), 0, 0});
  constexpr double more = 99;  // times its variance: ten times its error
  for (Eigen::Index i = 0; i < readings_ && model_.blunder > 0; ++i) {
    const double k = more * model_.own_variance[i];
    const double grown = 1 + k * precision_(i, i);
    cases_.push_back(
        {log_factor + std::log(model_.blunder / whole) - 0.5 * std::log(grown), k / grown, i});
  }

  const boost::math::normal normal;
  const double all = cdf(normal, farthest_size) - cdf(normal, -farthest_size);
  for (std::size_t i = 0; i < size_steps; ++i) {
    const double step = 2 * farthest_size / static_cast<double>(size_steps);
    const double from = -farthest_size + step * static_cast<double>(i);
    log_of_step_.push_back(std::log((cdf(normal, from + step) - cdf(normal, from)) / all));
  }
}

double Evidence::misfit(const Eigen::VectorXd& predicted) const {
  const Eigen::VectorXd apart = left(predicted);
  return apart.dot(precision_ * apart);
}

double Evidence::distance(const Eigen::VectorXd& one, const Eigen::VectorXd& other) const {
  const Eigen::VectorXd apart = one.head(readings_) - other.head(readings_);
  return apart.dot(precision_ * apart);
}

Eigen::VectorXd Evidence::left(const Eigen::VectorXd& predicted) const {
  return model_.read - predicted.head(readings_);
}

Eigen::VectorXd Evidence::gain(const Eigen::VectorXd& covariances) const {
  return precision_ * covariances;
}

double Evidence::log_sights(const Eigen::VectorXd& predicted,
                            const std::vector<SightChance>& sights) const {
  if (sights.empty()) return 0;
  Eigen::VectorXd mean = predicted.tail(predicted.size() - readings_) +
                         gain_ * (model_.read - predicted.head(readings_));
  Eigen::MatrixXd covariance = sighted_;
  double log_chance = 0;
  for (std::size_t k = 0; k < sights.size(); ++k) {
    const SightChance& it = sights[k];
    const auto i = static_cast<Eigen::Index>(k);
    const double s = std::sqrt(it.width * it.width + std::max(0.0, covariance(i, i)));
    const double x = (mean[i] - it.threshold) / s;
    const double Z = it.a + it.b * normal_cdf(x);
    log_chance += std::log(Z);
    const double slope = it.b * normal_pdf(x) / s / Z;
    constexpr double no_slope = 1e-9;  // [1/deviation]: moves nothing
    if (!(std::abs(slope) * s > no_slope)) continue;
    const double bend = -x / s * slope - slope * slope;
    const Eigen::VectorXd column = covariance.col(i);
    mean += column * slope;
    covariance += bend * column * column.transpose();
  }
  return log_chance;
}

Weighed Evidence::weigh(const Eigen::MatrixXd& predicted,
                        const std::vector<SightChance>& sights) const {
  Weighed found;
  found.least_misfit = std::numeric_limits<double>::infinity();
  const Eigen::Index steps = std::max<Eigen::Index>(1, predicted.cols() - 1);
  std::vector<double> of_cases(cases_.size());
  for (Eigen::Index step = 0; step < steps; ++step) {
    const Eigen::VectorXd from = predicted.col(step);
    const Eigen::VectorXd on = predicted.cols() == 1
                                   ? Eigen::VectorXd::Zero(from.size())
                                   : Eigen::VectorXd(predicted.col(step + 1) - from);
    const Eigen::VectorXd left = model_.read - from.head(readings_);
    const Eigen::VectorXd turn = -on.head(readings_);
    const Eigen::VectorXd weighed_left = precision_ * left;
    const Eigen::VectorXd weighed_turn = precision_ * turn;
    const Square all{left.dot(weighed_left), left.dot(weighed_turn), turn.dot(weighed_turn)};
    for (std::size_t k = 0; k < cases_.size(); ++k) {
      const Case& it = cases_[k];
      Square square = all;
      if (it.raised > 0) {
        const double u = weighed_left[it.which];
        const double v = weighed_turn[it.which];
        square = {all.A - it.raised * u * u,
                  all.B - it.raised * u * v,
                  std::max(0.0, all.C - it.raised * v * v)};
      }
      of_cases[k] = it.log_weight + square.log_integral();
    }
    const double best = all.lowest();
    found.best.push_back(best);
    found.least_misfit = std::min(found.least_misfit, std::max(0.0, all.at(best)));
    const double prior = predicted.cols() == 1 ? 0 : log_of_step_[static_cast<std::size_t>(step)];
    found.log_shares.push_back(prior + log_sum(of_cases) + log_sights(from + best * on, sights));
  }
  found.log_evidence = log_sum(found.log_shares);
  for (double& it : found.log_shares) it -= found.log_evidence;
  return found;
}

}  // namespace hydro
