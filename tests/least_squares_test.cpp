// Nonlinear least squares against certified values.

#include "hydro/diagnosis/least_squares.hpp"

#include <cmath>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace hydro {
namespace {

struct Certified {
  std::string name;
  std::function<double(double, const Eigen::VectorXd&)> value;
  std::function<Eigen::Vector2d(double, const Eigen::VectorXd&)> slope;
  std::vector<double> x;
  std::vector<double> y;
  std::vector<Eigen::Vector2d> starts;
  Eigen::Vector2d inputs;
  Eigen::Vector2d deviations;
  double sum_of_squares;
};

/// NIST Statistical Reference Datasets, nonlinear regression: Misra1a (monomolecular adsorption; D.
/// Misra, 1978) and DanWood (energy radiated; C. Daniel and F. S. Wood, 1980), each from both of its
/// starts. Printed to 11 digits.
std::vector<Certified> certified() {
  return {{"Misra1a",
           [](double x, const Eigen::VectorXd& b) { return b[0] * (1 - std::exp(-b[1] * x)); },
           [](double x, const Eigen::VectorXd& b) -> Eigen::Vector2d {
             return {1 - std::exp(-b[1] * x), b[0] * x * std::exp(-b[1] * x)};
           },
           {77.6,
            114.9,
            141.1,
            190.8,
            239.9,
            289.0,
            332.8,
            378.4,
            434.8,
            477.3,
            536.8,
            593.1,
            689.1,
            760.0},
           {10.07,
            14.73,
            17.94,
            23.93,
            29.61,
            35.18,
            40.02,
            44.82,
            50.76,
            55.05,
            61.01,
            66.40,
            75.47,
            81.78},
           {{500, 0.0001}, {250, 0.0005}},
           {2.3894212918e+02, 5.5015643181e-04},
           {2.7070075241e+00, 7.2668688436e-06},
           1.2455138894e-01},
          {"DanWood",
           [](double x, const Eigen::VectorXd& b) { return b[0] * std::pow(x, b[1]); },
           [](double x, const Eigen::VectorXd& b) -> Eigen::Vector2d {
             return {std::pow(x, b[1]), b[0] * std::pow(x, b[1]) * std::log(x)};
           },
           {1.309, 1.471, 1.490, 1.565, 1.611, 1.680},
           {2.138, 3.421, 3.597, 4.340, 4.882, 5.660},
           {{1, 5}, {0.7, 4}},
           {7.6886226176e-01, 3.8604055871e+00},
           {1.8281973860e-02, 5.1726610913e-02},
           4.3173084083e-03}};
}

TEST(LeastSquares, MeetsCertifiedValues) {
  for (const Certified& it : certified())
    for (const Eigen::Vector2d& start : it.starts) {
      SCOPED_TRACE(it.name);
      const auto count = static_cast<Eigen::Index>(it.x.size());
      const double degrees = static_cast<double>(count - 2);
      const double error = std::sqrt(it.sum_of_squares / degrees);
      const auto found = least_squares(
          [&](const Eigen::VectorXd& b) -> std::optional<Linearised> {
            Linearised at{Eigen::VectorXd(count), Eigen::MatrixXd(count, 2)};
            for (Eigen::Index i = 0; i < count; ++i) {
              const auto row = static_cast<std::size_t>(i);
              at.residuals[i] = (it.value(it.x[row], b) - it.y[row]) / error;
              at.jacobian.row(i) = it.slope(it.x[row], b).transpose() / error;
            }
            return at;
          },
          start,
          100,
          1e-9);
      ASSERT_TRUE(found.is_settled);
      const Eigen::MatrixXd covariance = covariance_of(found.there.jacobian);
      // Half of the eleventh digit of what has a leading 1 at worst, and some rounding of the data's
      // slopes: the condition is 1e3 at most.
      constexpr double digits = 2e-10;
      EXPECT_NEAR(found.there.residuals.squaredNorm() / degrees, 1, digits);
      for (Eigen::Index j = 0; j < 2; ++j) {
        EXPECT_NEAR(found.inputs[j] / it.inputs[j], 1, digits);
        EXPECT_NEAR(std::sqrt(covariance(j, j)) / it.deviations[j], 1, digits);
      }
    }
}

TEST(LeastSquares, SaysWhenItDidNotSettle) {
  const auto model = [](const Eigen::VectorXd& x) -> std::optional<Linearised> {
    return Linearised{Eigen::VectorXd::Constant(1, std::exp(-x[0])),
                      Eigen::MatrixXd::Constant(1, 1, -std::exp(-x[0]))};
  };
  const LeastSquares found = least_squares(model, Eigen::VectorXd::Zero(1), 3, 1e-9);
  EXPECT_FALSE(found.is_settled);
  EXPECT_EQ(found.steps, 3);
  EXPECT_GT(found.last_step, 1e-9);
}

TEST(LeastSquares, TakesAShorterStepWhereTheModelHasNoAnswer) {
  // ln x = 0 from 3: the whole step goes to 3 - 3 ln 3 < 0.
  const auto model = [](const Eigen::VectorXd& x) -> std::optional<Linearised> {
    if (!(x[0] > 0)) return std::nullopt;
    return Linearised{Eigen::VectorXd::Constant(1, std::log(x[0])),
                      Eigen::MatrixXd::Constant(1, 1, 1 / x[0])};
  };
  const LeastSquares found = least_squares(model, Eigen::VectorXd::Constant(1, 3), 100, 1e-9);
  ASSERT_TRUE(found.is_settled);
  EXPECT_NEAR(found.inputs[0], 1, 1e-12);
}

}  // namespace
}  // namespace hydro
