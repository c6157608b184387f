// What compiles and what must not, and that every unit is exact.
#include "hydro/quantities/units.hpp"

#include <cmath>
#include <concepts>
#include <limits>
#include <random>

#include <gtest/gtest.h>

namespace hydro {
namespace {

using namespace units;

// Exact definitions: equal doubles, at compile time.
static_assert(1_ft == 0.3048_m && 12_in == 1_ft && 13_mm == 0.013_m && 1 * km == 1000_m);
static_assert(20_degC == 68_degF && 0_degC == 32_degF && (273.15 * K) == 0_degC);
static_assert(25.0_psi / psi == 25.0 && 1_bar == 100_kPa && (1 * kPa) == (1000 * Pa));
static_assert(1_lps == (60 * lpm) && 1_lps == 3600_lph && (1 * m3_per_s) == 1000_lps);
static_assert((1 * mH2O) == (9806.65 * Pa) && (1 * gpm) == (60 * gph));
static_assert((1 * units::min) == (60 * s) && (1 * h) == (3600 * s));

// Products have the dimension that physics gives them.
static_assert(std::same_as<decltype(1_lps / (1_m * 1_m)), Velocity>);
static_assert(std::same_as<decltype(1_lps * (1 * s)), Volume>);

template <class A, class B>
concept Addable = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
  a < b;
};

// What must not compile.
static_assert(Addable<Pressure, Pressure> && Comparable<Pressure, Pressure>);
static_assert(!Addable<Pressure, Length> && !Addable<Pressure, double> && !Addable<Flow, Volume>);
static_assert(!Comparable<Pressure, Length> && !Comparable<Pressure, double>);
static_assert(!std::convertible_to<double, Pressure> && !std::convertible_to<Pressure, double>);
static_assert(
    !std::convertible_to<Length, Pressure>);  // a head is not a pressure without a density

template <class Q>
void expect_round_trips(const Unit<Q>& unit) {
  std::mt19937_64 random(1);
  std::uniform_real_distribution<double> mantissa(1, 10);
  std::uniform_int_distribution<int> exponent(-6, 6);
  // One multiplication and one division each way: 4 roundings; near an offset, relative to the
  // offset.
  const double offset =
      std::abs(unit.before) + std::abs(unit.after * unit.denominator / unit.numerator);
  for (int i = 0; i < 10000; ++i) {
    const double number = mantissa(random) * std::pow(10, exponent(random));
    const double back = (number * unit) / unit;
    EXPECT_NEAR(back, number, 4 * std::numeric_limits<double>::epsilon() * (number + offset))
        << unit.symbol;
  }
}

TEST(Units, ReadBackWhatWasWritten) {
  for (const auto& unit : {m, km, cm, mm, ft, inch}) expect_round_trips(unit);
  for (const auto& unit : {psi, kPa, MPa, bar, Pa, mH2O, ftH2O, inHg}) expect_round_trips(unit);
  for (const auto& unit : {gpm, gph, lps, lpm, lph, m3_per_s, m3_per_h, ft3_per_s})
    expect_round_trips(unit);
  for (const auto& unit : {degC, degF, K}) expect_round_trips(unit);
  for (const auto& unit : {kg_per_m3, lb_per_ft3}) expect_round_trips(unit);
}

// NIST SP 811 (2008), appendix B.8, factors to seven digits (read from memory of the table; each
// follows from the exact definitions named in units.hpp).
TEST(Units, HaveThePublishedFactors) {
  EXPECT_NEAR((1 * psi) / Pa, 6894.757, 0.0005);
  EXPECT_NEAR((1 * gpm) / m3_per_s, 6.309020e-5, 0.5e-11);
  EXPECT_NEAR((1 * ft3_per_s) / m3_per_s, 2.831685e-2, 0.5e-8);
  EXPECT_NEAR((1 * inHg) / Pa, 3386.389, 0.0005);
  EXPECT_NEAR((1 * lb_per_ft3) / kg_per_m3, 16.01846, 0.5e-5);
  EXPECT_NEAR((1 * ftH2O) / Pa, 2989.067, 0.0005);
  EXPECT_NEAR((1 * ft3_per_s) / gpm, 448.831, 0.0005);
}

TEST(Units, TurnPressureIntoHeadAndBack) {
  const Density water = 1000 * kg_per_m3;
  EXPECT_DOUBLE_EQ(head(1 * mH2O, water) / m, 1.0);
  EXPECT_DOUBLE_EQ(pressure(2_m, water) / mH2O, 2.0);
}

}  // namespace
}  // namespace hydro
