// Evidence against integration by brute force, and a published problem of correlated errors.

#include "hydro/diagnosis/evidence.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

#include <boost/math/distributions/normal.hpp>
#include <gtest/gtest.h>

namespace hydro {
namespace {

double normal_pdf(double x, double deviation = 1) {
  return std::exp(-0.5 * x * x / (deviation * deviation)) /
         (deviation * std::sqrt(2 * std::numbers::pi));
}
double normal_cdf(double x) {
  return cdf(boost::math::normal(), x);
}
/// Trapezoid rule: of a smooth function that is 0 at both ends it is exact to rounding.
double integral(double from, double to, int steps, const std::function<double(double)>& f) {
  const double h = (to - from) / steps;
  double sum = 0.5 * (f(from) + f(to));
  for (int i = 1; i < steps; ++i) sum += f(from + h * i);
  return sum * h;
}

TEST(LogNormalCdf, IsThatOfThirtyDigits) {
  // mpmath 1.x, log(ncdf(x)) with 30 digits.
  EXPECT_NEAR(log_normal_cdf(-8), -35.0134371599145, 1e-12);
  EXPECT_NEAR(log_normal_cdf(-12), -75.4106730015688, 1e-6);
  EXPECT_NEAR(log_normal_cdf(-20), -203.917155371097, 1e-8);
  EXPECT_NEAR(log_normal_cdf(-40), -804.608442013754, 1e-10);
  EXPECT_NEAR(log_normal_cdf(3), std::log(normal_cdf(3)), 1e-15);
}

// ---- Published: one quantity measured twice, with an error that both share ----

struct MeasuredTwice {
  Eigen::Vector2d read;
  Eigen::Matrix2d covariance;
  double estimate;
  double half_a_digit;
};

/// f = x for both, x from 0 to 4.
Eigen::MatrixXd both_alike() {
  Eigen::MatrixXd path(2, static_cast<Eigen::Index>(size_steps) + 1);
  for (Eigen::Index i = 0; i < path.cols(); ++i)
    path.col(i).setConstant(4.0 * static_cast<double>(i) / static_cast<double>(size_steps));
  return path;
}

TEST(Evidence, IsLeastSquaresOfCorrelatedErrors) {
  // T. Burr et al., Defense of the least squares solution to Peelle's pertinent puzzle, Algorithms 4
  // (2011) 28-39: 1.5 and 1.0, 10 % each and 20 % shared; 0.88 +- 0.22, in full 0.21828206.
  // D. Neudecker, R. Fruehwirth and H. Leeb, Nucl. Sci. Eng. 170 (2012) 54: 2.40 +- 0.12 and 2.00 +-
  // 0.10, a factor of 1.00 +- 0.15 shared; least squares with it taken of the data give 1.8857.
  const Eigen::Vector2d neudecker(2.40, 2.00);
  const std::vector<MeasuredTwice> table{
      {{1.5, 1.0}, Eigen::Matrix2d{{0.1125, 0.06}, {0.06, 0.05}}, 0.88, 0.005},
      {neudecker,
       Eigen::Matrix2d(Eigen::Vector2d(0.12 * 0.12, 0.10 * 0.10).asDiagonal()) +
           0.15 * 0.15 * neudecker * neudecker.transpose(),
       1.8857,
       0.00005}};
  for (const MeasuredTwice& it : table) {
    const Evidence evidence({it.read, it.covariance, it.covariance.diagonal(), 0});
    const Weighed weighed = evidence.weigh(both_alike(), {});
    double least = 1e9, best = 0;
    for (std::size_t i = 0; i < size_steps; ++i) {
      const double x =
          4.0 * (static_cast<double>(i) + weighed.best[i]) / static_cast<double>(size_steps);
      const double misfit = evidence.misfit(Eigen::Vector2d(x, x));
      if (misfit < least) best = x;
      least = std::min(least, misfit);
    }
    EXPECT_NEAR(best, it.estimate, it.half_a_digit);
    EXPECT_NEAR(weighed.least_misfit, least, 1e-12);
  }
  const MeasuredTwice& peelle = table.front();
  const Evidence evidence({peelle.read, peelle.covariance, peelle.covariance.diagonal(), 0});
  const double best = 15.0 / 17;
  const double error = 0.21828206;
  const auto misfit = [&](double x) { return evidence.misfit(Eigen::Vector2d(x, x)); };
  EXPECT_NEAR(misfit(best + error) - misfit(best), 1, 1e-7);
}

// ---- Brute force ----

/// Two readings of one gauge: own errors, a shared bias, one input that moves both.
struct TwoReadings {
  Eigen::Vector2d read{36.0, 21.0};
  Eigen::Vector2d own{1.0, 0.7};
  double bias = 1.2;
  Eigen::Vector2d moved{0.8, -0.5};
  double blunder = 0.1;

  Evidence evidence() const {
    const Eigen::Vector2d ones(1, 1);
    return Evidence({read,
                     Eigen::Matrix2d(own.cwiseAbs2().asDiagonal()) +
                         bias * bias * ones * ones.transpose() + moved * moved.transpose(),
                     own.cwiseAbs2(),
                     blunder});
  }

  /// p(read | f), the bias and the input integrated on a grid.
  double likelihood(const Eigen::Vector2d& f) const {
    constexpr double far = 8;
    constexpr int steps = 64;
    const double whole = 1 + blunder;  // (1 - e) + 2 e
    return integral(-far, far, steps, [&](double b) {
      return normal_pdf(b) * integral(-far, far, steps, [&](double x) {
               const Eigen::Vector2d left = read - f - bias * b * Eigen::Vector2d(1, 1) - x * moved;
               const double sound_0 = normal_pdf(left[0], own[0]);
               const double sound_1 = normal_pdf(left[1], own[1]);
               const double blunder_0 = normal_pdf(left[0], 10 * own[0]);
               const double blunder_1 = normal_pdf(left[1], 10 * own[1]);
               return normal_pdf(x) *
                      ((1 - blunder) * sound_0 * sound_1 +
                       blunder * (blunder_0 * sound_1 + sound_0 * blunder_1)) /
                      whole;
             });
    });
  }
};

TEST(Evidence, OfOnePredictionIsThatOfBruteForce) {
  const TwoReadings two;
  for (const Eigen::Vector2d& f :
       {Eigen::Vector2d(36, 21), Eigen::Vector2d(34, 22), Eigen::Vector2d(30, 30)}) {
    const Weighed weighed = two.evidence().weigh(f, {});
    EXPECT_NEAR(weighed.log_evidence, std::log(two.likelihood(f)), 1e-9);
  }
}

TEST(Evidence, OverSizesIsThatOfBruteForce) {
  const TwoReadings two;
  // Of a size: straight, so that steps add no error of their own, but for the prior within each.
  const Eigen::Vector2d at_median(37, 23), by_size(-1.5, -0.6);
  Eigen::MatrixXd path(2, static_cast<Eigen::Index>(size_steps) + 1);
  const double step = 2 * farthest_size / static_cast<double>(size_steps);
  for (Eigen::Index i = 0; i < path.cols(); ++i)
    path.col(i) = at_median + by_size * (-farthest_size + step * static_cast<double>(i));
  const double all = normal_cdf(farthest_size) - normal_cdf(-farthest_size);
  const double exact = integral(-farthest_size, farthest_size, 80, [&](double u) {
    return normal_pdf(u) / all * two.likelihood(at_median + by_size * u);
  });
  // The prior bends within a step: at most (farthest^2 - 1) step^2 / 24 of it.
  const double bend = (farthest_size * farthest_size - 1) * step * step / 24;
  EXPECT_NEAR(two.evidence().weigh(path, {}).log_evidence, std::log(exact), bend);
}

TEST(Evidence, OfVeryExactReadingsIsNotLostBetweenSteps) {
  // An error of 1/1000 of a step: the integral is the prior's density where the line is met, over the
  // slope.
  constexpr double error = 1e-4;
  const Eigen::VectorXd read = Eigen::VectorXd::Constant(1, 0.55);
  const Eigen::MatrixXd variance = Eigen::MatrixXd::Constant(1, 1, error * error);
  Eigen::MatrixXd path(1, static_cast<Eigen::Index>(size_steps) + 1);
  const double step = 2 * farthest_size / static_cast<double>(size_steps);
  for (Eigen::Index i = 0; i < path.cols(); ++i)
    path(0, i) = -farthest_size + step * static_cast<double>(i);
  const double all = normal_cdf(farthest_size) - normal_cdf(-farthest_size);
  const Weighed weighed = Evidence({read, variance, variance.diagonal(), 0}).weigh(path, {});
  // Within its step the prior is taken as even: it falls by u step / 2 from the middle to the end.
  EXPECT_NEAR(weighed.log_evidence, std::log(normal_pdf(0.55) / all), 0.55 * step / 2);
  EXPECT_NEAR(weighed.least_misfit, 0, 1e-9);
}

TEST(Evidence, OfExactReadingsOfWhichOneIsABlunder) {
  // Seven errors apart: one of the two is a blunder, and the size is where the other one says.
  constexpr double error = 0.01, blunder = 0.1, one = 0.55, other = 0.62;
  const Eigen::Vector2d read(one, other);
  const Eigen::Matrix2d covariance = Eigen::Matrix2d::Identity() * error * error;
  Eigen::MatrixXd path(2, static_cast<Eigen::Index>(size_steps) + 1);
  const double step = 2 * farthest_size / static_cast<double>(size_steps);
  for (Eigen::Index i = 0; i < path.cols(); ++i)
    path.col(i).setConstant(-farthest_size + step * static_cast<double>(i));
  const double all = normal_cdf(farthest_size) - normal_cdf(-farthest_size);
  const double sound = normal_pdf(other - one, std::hypot(error, error)) * normal_pdf(0.585);
  const double either = normal_pdf(other - one, std::hypot(error, 10 * error)) *
                        (normal_pdf(one) + normal_pdf(other));
  const double exact = ((1 - blunder) * sound + blunder * either) / (1 + blunder) / all;
  const Weighed weighed =
      Evidence({read, covariance, covariance.diagonal(), blunder}).weigh(path, {});
  EXPECT_NEAR(weighed.log_evidence, std::log(exact), other * step / 2);
}

// ---- Sights ----

/// One reading, and pressures beside it.
Evidence with_sights(const Eigen::MatrixXd& covariance, double read) {
  return Evidence({Eigen::VectorXd::Constant(1, read),
                   covariance,
                   Eigen::VectorXd::Constant(1, covariance(0, 0)),
                   0});
}

TEST(Sights, OneIsThatOfBruteForce) {
  Eigen::Matrix2d covariance{{2.0, 1.1}, {1.1, 1.5}};
  const Evidence evidence = with_sights(covariance, 30.5);
  const Eigen::Vector2d predicted(31.5, 18.4);
  // P(p | read), a normal distribution.
  const double mean = 18.4 + 1.1 / 2.0 * (30.5 - 31.5);
  const double deviation = std::sqrt(1.5 - 1.1 * 1.1 / 2.0);
  for (const SightChance& chance :
       {SightChance{0.02, 0.96, 18, 2}, SightChance{0.98, -0.96, 18, 0.5}}) {
    const double exact = integral(-8, 8, 2000, [&](double x) {
      const double p = mean + deviation * x;
      return normal_pdf(x) *
             (chance.a + chance.b * normal_cdf((p - chance.threshold) / chance.width));
    });
    EXPECT_NEAR(evidence.log_sights(predicted, {chance}), std::log(exact), 1e-10);
  }
}

TEST(Sights, ThatHangTogetherAreNearlyThoseOfBruteForce) {
  // Three heads of a row, all at their minimum: what one shows is nearly what all show.
  Eigen::Matrix4d covariance = Eigen::Matrix4d::Constant(4.0);
  covariance.diagonal() << 5.0, 4.3, 4.3, 4.3;
  const Evidence evidence = with_sights(covariance, 30);
  const SightChance turning{0.02, 0.96, 18, 1};
  const SightChance not_turning{0.98, -0.96, 18, 1};
  const std::vector<SightChance> all_turn{turning, turning, turning};
  struct Seen {
    Eigen::Vector4d predicted;
    std::vector<SightChance> sights;
  };
  for (const Seen& it : {Seen{{30, 18.2, 18.0, 17.7}, all_turn},
                         Seen{{30, 18.2, 18.0, 17.7}, {turning, turning, not_turning}},
                         Seen{{30, 18.2, 18.0, 17.7}, {not_turning, turning, not_turning}},
                         Seen{{30, 15.7, 15.5, 15.2}, all_turn},  // against what was expected
                         Seen{{30, 20.2, 20.0, 19.7}, {turning, not_turning, not_turning}}}) {
    // Given the reading, which is as predicted: 4 - 4 x 4 / 5 shared, 0.3 each by itself.
    const double shared = std::sqrt(4.0 - 16.0 / 5.0);
    const double exact = integral(-8, 8, 1000, [&](double x) {
      double all = normal_pdf(x);
      for (std::size_t i = 0; i < 3; ++i) {
        const double mean = it.predicted[static_cast<Eigen::Index>(i) + 1] + shared * x;
        const double s = std::sqrt(it.sights[i].width * it.sights[i].width + 0.3);
        all *= it.sights[i].a + it.sights[i].b * normal_cdf((mean - it.sights[i].threshold) / s);
      }
      return all;
    });
    // The stated accuracy of evidence.hpp: 15 % of the chance.
    EXPECT_NEAR(evidence.log_sights(it.predicted, it.sights), std::log(exact), 0.15);
    // Not so if each were taken by itself.
    double apart = 0;
    for (std::size_t i = 0; i < 3; ++i) {
      const double s = std::sqrt(1 + 0.3 + shared * shared);
      const double x = (it.predicted[static_cast<Eigen::Index>(i) + 1] - 18) / s;
      apart += std::log(it.sights[i].a + it.sights[i].b * normal_cdf(x));
    }
    EXPECT_GT(std::abs(apart - std::log(exact)), 0.05);
  }
}

TEST(Sights, WithoutReadingsStand) {
  const Evidence evidence(
      {Eigen::VectorXd(0), Eigen::MatrixXd::Constant(1, 1, 3.0), Eigen::VectorXd(0), 0});
  const Weighed weighed =
      evidence.weigh(Eigen::VectorXd::Constant(1, 20.0), {SightChance{0, 1, 18, 1}});
  EXPECT_NEAR(weighed.log_evidence, std::log(normal_cdf(2.0 / 2.0)), 1e-12);
}

}  // namespace
}  // namespace hydro
