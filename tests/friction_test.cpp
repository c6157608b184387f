// Friction laws against 50-digit arithmetic, against each other's limits, and as laws of physics.
#include "hydro/physics/friction.hpp"

#include "hydro/physics/friction_law.hpp"

#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include <boost/multiprecision/cpp_dec_float.hpp>
#include <gmock/gmock.h>

namespace hydro {
namespace {

using Decimal = boost::multiprecision::cpp_dec_float_50;

/// Colebrook-White by Newton's method on x = 1/sqrt(f), in 50 digits.
Decimal colebrook_in_50_digits(double reynolds, double relative_roughness) {
  const Decimal rough = Decimal(relative_roughness) / Decimal("3.7");
  const Decimal smooth = Decimal("2.51") / Decimal(reynolds);
  const Decimal per_log = 2 / log(Decimal(10));
  Decimal x = 7;
  for (int i = 0; i < 15; ++i) {
    const Decimal inside = rough + smooth * x;
    x -= (x + per_log * log(inside)) / (1 + per_log * smooth / inside);
  }
  return 1 / (x * x);
}

// The bound of friction.hpp.
TEST(Colebrook, AgreesWith50DigitsTo4e15) {
  std::mt19937_64 random(1);
  std::uniform_real_distribution<double> exponent(std::log10(4e3), 8);
  std::uniform_real_distribution<double> roughness_exponent(-8, std::log10(0.05));
  for (int i = 0; i < 3000; ++i) {
    const double reynolds = std::pow(10, exponent(random));
    const double roughness = i % 4 == 0 ? 0 : std::pow(10, roughness_exponent(random));
    const Decimal exact = colebrook_in_50_digits(reynolds, roughness);
    const auto error =
        static_cast<double>(abs((Decimal(colebrook_white(reynolds, roughness)) - exact) / exact));
    EXPECT_LE(error, 4e-15) << "Re " << reynolds << ", k/D " << roughness;
  }
}

TEST(Colebrook, RefusesWhatIsOutOfRange) {
  EXPECT_THROW(colebrook_white(0, 0), InvalidInput);
  EXPECT_THROW(colebrook_white(-1, 0), InvalidInput);
  EXPECT_THROW(colebrook_white(1e5, 0.051), InvalidInput);
  EXPECT_THROW(colebrook_white(std::nan(""), 0), InvalidInput);
}

std::vector<Pipe> kinds_of_pipe() {
  return {{.inside_diameter = 44.55 * mm, .hazen_williams = 150},
          {.inside_diameter = 16 * mm, .roughness = 0 * mm},
          {.inside_diameter = 100 * mm, .roughness = 0.26 * mm},
          {.inside_diameter = 3 * inch, .roughness = 0.05 * (3 * inch)},
          {.inside_diameter = 2 * inch, .darcy_factor = 0.02}};
}

// Dense sweep over 14 decades of flow, so that no single point is missed.
TEST(FrictionLaws, AreOddStrictlyRisingAndHaveTheirOwnSlope) {
  const WaterProperties water = properties({});
  for (const Pipe& pipe : kinds_of_pipe()) {
    const FrictionLaw law(pipe, water);
    double before = 0;
    for (double flow = 1e-12; flow < 100; flow *= 1.002) {
      const Loss loss = law.per_metre(flow);
      ASSERT_GT(loss.head, before) << flow;
      ASSERT_EQ(law.per_metre(-flow).head, -loss.head);
      ASSERT_EQ(law.per_metre(-flow).slope, loss.slope);
      // Central difference: error about step^2, plus 1e-16 / step.
      const double step = 1e-5 * flow;
      const double difference =
          (law.per_metre(flow + step).head - law.per_metre(flow - step).head) / (2 * step);
      ASSERT_NEAR(loss.slope, difference, 1e-4 * loss.slope) << flow;
      before = loss.head;
    }
    EXPECT_EQ(law.per_metre(0).head, 0);
  }
}

// Value and slope are continuous at Re 2000 and 4000: from both sides, one part in 1e9 away.
TEST(DarcyWeisbach, JoinsLaminarAndTurbulentFlowSmoothly) {
  const WaterProperties water = properties({});
  for (const double roughness_mm : {0.0, 0.1, 1.0}) {
    const Pipe pipe{.inside_diameter = 50 * mm, .roughness = roughness_mm * mm};
    const FrictionLaw law(pipe, water);
    for (const double reynolds : {2000.0, 4000.0}) {
      const double flow = reynolds / reynolds_number(pipe, 1 * m3_per_s, water);
      const Loss below = law.per_metre(flow * (1 - 1e-9));
      const Loss above = law.per_metre(flow * (1 + 1e-9));
      EXPECT_NEAR(above.head / below.head, 1, 1e-8);
      EXPECT_NEAR(above.slope / below.slope, 1, 1e-7);
    }
  }
}

TEST(DarcyWeisbach, IsPoiseuillesLawWhereTheFlowIsLaminar) {
  const WaterProperties water = properties({});
  const Pipe pipe{.inside_diameter = 16 * mm, .roughness = 0 * mm};
  const Flow flow = 20 * lph;  // Re about 440
  // h = 128 nu L Q / (pi g D^4): Hagen-Poiseuille, exact.
  const double nu = water.kinematic_viscosity / m2_per_s;
  const double exact =
      128 * nu * 100 * si(flow) / (std::numbers::pi * gravity * std::pow(0.016, 4));
  EXPECT_NEAR(friction_loss(pipe, 100 * units::m, flow, water) / units::m, exact, 1e-13 * exact);
}

// friction.hpp states 0.25 % between the two forms of the law: V = 1.318 C R^0.63 S^0.54 in ft and
// s.
TEST(HazenWilliams, IsCloseToItsVelocityForm) {
  const WaterProperties water = properties({});
  for (double bore_mm = 10; bore_mm < 320; bore_mm *= 1.1)
    for (double speed = 0.3; speed < 3; speed *= 1.2) {
      const Pipe pipe{.inside_diameter = bore_mm * mm, .hazen_williams = 140};
      const Flow flow = speed * m_per_s * area(pipe);
      const double radius_ft = (bore_mm * mm) / ft / 4;
      const double slope = std::pow(
          (speed * m_per_s) / ft_per_s / (1.318 * 140 * std::pow(radius_ft, 0.63)), 1 / 0.54);
      const double loss = friction_loss(pipe, 1 * units::m, flow, water) / units::m;
      EXPECT_NEAR(loss / slope, 1, 0.0025) << bore_mm << " mm, " << speed << " m/s";
    }
}

// The series stands for the power: after many small changes each within 3 roundings a step of
// std::pow.
TEST(HazenWilliams, CarriesItsSlopeAsWellAsItEvaluatesIt) {
  const FrictionLaw law({.inside_diameter = 50 * mm, .hazen_williams = 150}, properties({}));
  for (const double share : {1e-12, -1e-7, 9e-5, -1.1e-4, 1e-3, -0.01, 0.031, -0.0312}) {
    double flow = 1e-3;
    double slope = law.per_metre(flow).slope;
    for (int step = 1; step <= 20; ++step) {
      slope = law.carry(slope, share);
      flow *= 1 + share;
      EXPECT_NEAR(slope / law.per_metre(flow).slope, 1, 6e-16 * step) << share;
    }
  }
  EXPECT_EQ(law.carry(1, 0.04), unknown_slope);
  EXPECT_EQ(law.carry(1, std::nan("")), unknown_slope);
  EXPECT_EQ(law.carry(1, -1), unknown_slope);
}

TEST(Fittings, TakeKTimesTheVelocityHead) {
  const Pipe pipe{.inside_diameter = 50 * mm, .hazen_williams = 150};
  const Flow flow = 3 * lps;
  const double speed = velocity(pipe, flow) / m_per_s;
  EXPECT_DOUBLE_EQ(fitting_loss(pipe, 2.5, flow) / units::m, 2.5 * speed * speed / (2 * gravity));
  EXPECT_EQ(fitting_loss(pipe, 2.5, Flow{} - flow), Length{} - fitting_loss(pipe, 2.5, flow));
}

TEST(Pipes, NeedExactlyOneWall) {
  const WaterProperties water = properties({});
  EXPECT_THROW(friction_loss({.inside_diameter = 50 * mm}, 1 * units::m, 1 * lps, water),
               InvalidInput);
  EXPECT_THROW(
      friction_loss({.inside_diameter = 50 * mm, .hazen_williams = 150, .darcy_factor = 0.02},
                    1 * units::m,
                    1 * lps,
                    water),
      InvalidInput);
}

}  // namespace
}  // namespace hydro
