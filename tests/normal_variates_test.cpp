// The random numbers against the answers their makers published, against the formula by other
// functions, and against what normally distributed numbers must show.
//
// A tolerance of a moment is 5 of its standard errors: one test of 1,700,000 would fail by chance,
// but the numbers are always the same.
#include "hydro/what_ifs/normal_variates.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <boost/math/constants/constants.hpp>
#include <boost/math/statistics/univariate_statistics.hpp>
#include <gmock/gmock.h>
#include <hwy/targets.h>

namespace hydro {
namespace {

using testing::ElementsAre;
using testing::ElementsAreArray;

constexpr std::size_t many = 1'000'000;

std::vector<double> variates(std::uint64_t seed,
                             const Stream& stream,
                             std::uint64_t first,
                             std::size_t count) {
  std::vector<double> numbers(count);
  normal_variates(seed, stream, first, {}, numbers);
  return numbers;
}

// Random123, tests/kat_vectors, the lines "philox4x32 7" (read in copies).
TEST(Mixing, GivesThePublishedAnswers) {
  constexpr std::uint32_t ones = 0xffffffff;
  EXPECT_THAT(mixed({0, 0, 0, 0}, {0, 0}),
              ElementsAre(0x5f6fb709, 0x0d893f64, 0x4f121f81, 0x4f730a48));
  EXPECT_THAT(mixed({ones, ones, ones, ones}, {ones, ones}),
              ElementsAre(0x5207ddc2, 0x45165e59, 0x4d8ee751, 0x8c52f662));
  EXPECT_THAT(mixed({0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0}),
              ElementsAre(0x4dfccaba, 0x190a87f0, 0xc47362ba, 0xb6b5242a));
}

// The formula in long double. Roundings are of 2^-24: two of u, which move r^2 by 2^-23 and so r by
// 2^-24 / r, or by the root of 2^-23 where u is rounded to 1; and some ten of the sine, the
// logarithm and the products, with what is left of the series of the sine, 4e-7.
TEST(Pair, IsAsAccurateAsItSays) {
  double largest = 0;
  const auto look = [&](std::uint32_t word, std::uint32_t next) {
    constexpr long double pi = boost::math::constants::pi<long double>();
    const long double u = (static_cast<long double>(word / 2) + 0.5L) / 2147483648.0L;
    const long double r = std::sqrt(-2 * std::log(u));
    constexpr std::uint32_t quarter = 1U << 30;
    const auto rest = static_cast<long double>(next % quarter) / quarter;
    const long double a = pi / 2 * (next / quarter + (rest < 0.5L ? rest : rest - 1));
    const auto z = normal_pair(word, next);
    const auto error = static_cast<double>(
        std::max(std::abs(z[0] - r * std::cos(a)), std::abs(z[1] - r * std::sin(a))));
    const auto radius = static_cast<double>(r);
    largest = std::max(largest, error / (1e-6 * radius + std::min(1e-7 / radius, 4e-4)));
  };
  constexpr std::uint64_t end = 1ULL << 32;
  std::uint32_t next = 0;
  for (std::uint64_t word = 0; word < end; word += 10'007)
    look(static_cast<std::uint32_t>(word), next += 2'654'435'769);
  for (std::uint32_t word = 0; word < 10'000; ++word) {
    look(word, next += 2'654'435'769);
    look(~word, next += 2'654'435'769);
    for (const std::uint32_t quarter : {0U, 1U << 30, 2U << 30, 3U << 30})
      look(12'345'678, quarter - 5'000 + word);
  }
  EXPECT_LT(largest, 1);
}

// Words of the quarters differ in their first two bits alone.
TEST(Pair, TurnsByQuarters) {
  constexpr std::uint32_t quarter = 1U << 30;
  for (std::uint64_t word = 0; word < 1ULL << 32; word += 65'537 * 101) {
    const auto radius = static_cast<std::uint32_t>(word * 40'503);
    const auto angle = static_cast<std::uint32_t>(word);
    const auto [x, y] = normal_pair(radius, angle);
    EXPECT_THAT(normal_pair(radius, angle + quarter), ElementsAre(-y, x));
    EXPECT_THAT(normal_pair(radius, angle + 2 * quarter), ElementsAre(-x, -y));
  }
}

// r of the least and the greatest u.
TEST(Pair, ReachesFromSixDeviationsToNone) {
  EXPECT_NEAR(normal_pair(0, 0)[0], std::sqrt(64 * std::log(2)), 1e-5);
  EXPECT_EQ(normal_pair(0xffffffff, 0)[0], 0);
}

// Standard errors of the moments of N normal numbers: mean 1/sqrt(N), variance sqrt(2/N), skewness
// sqrt(6/N), kurtosis sqrt(24/N).
TEST(Variates, HaveTheMomentsOfTheNormalDistribution) {
  namespace statistics = boost::math::statistics;
  for (const Stream& stream : {Stream{0, 0}, Stream{7, 3}, Stream{12345, 0x10001}}) {
    const auto numbers = variates(1, stream, 0, many);
    const double error = 1 / std::sqrt(static_cast<double>(many));
    EXPECT_NEAR(statistics::mean(numbers), 0, 5 * error);
    EXPECT_NEAR(statistics::variance(numbers), 1, 5 * std::sqrt(2) * error);
    EXPECT_NEAR(statistics::skewness(numbers), 0, 5 * std::sqrt(6) * error);
    EXPECT_NEAR(statistics::kurtosis(numbers), 3, 5 * std::sqrt(24) * error);
  }
}

// Kolmogorov and Smirnov: sqrt(N) times the largest distance of the two distributions is above 2.23
// in one case of 10,000 (2 exp(-2 x^2), its first term).
TEST(Variates, AreDistributedNormally) {
  auto numbers = variates(2, {1, 1}, 0, many);
  std::ranges::sort(numbers);
  double distance = 0;
  for (std::size_t i = 0; i < many; ++i) {
    const double p = std::erfc(-numbers[i] / std::sqrt(2)) / 2;
    const double n = static_cast<double>(many);
    distance =
        std::max({distance, p - static_cast<double>(i) / n, static_cast<double>(i + 1) / n - p});
  }
  EXPECT_LT(std::sqrt(static_cast<double>(many)) * distance, 2.23);
}

// Of N, N q are expected beyond, with a deviation of sqrt(N q).
TEST(Variates, HaveTheTailsOfTheNormalDistribution) {
  constexpr std::size_t more = 8 * many;
  const auto numbers = variates(4, {2, 1}, 0, more);
  for (const double far : {-4.5, -4.0, -3.0, 3.0, 4.0, 4.5}) {
    const double expected = static_cast<double>(more) * std::erfc(std::abs(far) / std::sqrt(2)) / 2;
    const auto beyond = static_cast<double>(
        std::ranges::count_if(numbers, [&](double z) { return far < 0 ? z < far : z > far; }));
    EXPECT_NEAR(beyond, expected, 5 * std::sqrt(expected)) << far;
  }
}

TEST(Variates, DoNotGoTogether) {
  const auto correlation = [](const std::vector<double>& one, const std::vector<double>& other) {
    double sum = 0;
    for (std::size_t i = 0; i < one.size(); ++i) sum += one[i] * other[i];
    return sum / static_cast<double>(one.size());
  };
  const double five_errors = 5 / std::sqrt(static_cast<double>(many));
  const auto numbers = variates(1, {5, 0}, 0, many);
  EXPECT_NEAR(correlation(numbers, variates(1, {6, 0}, 0, many)), 0, five_errors);
  EXPECT_NEAR(correlation(numbers, variates(1, {5, 1}, 0, many)), 0, five_errors);
  EXPECT_NEAR(correlation(numbers, variates(2, {5, 0}, 0, many)), 0, five_errors);
  EXPECT_NEAR(correlation(numbers, variates(1ULL << 32, {5, 0}, 0, many)), 0, five_errors);
  EXPECT_NEAR(correlation(numbers, variates(1, {5, 0}, 1, many)), 0, five_errors);
  EXPECT_NEAR(correlation(numbers, variates(1, {5, 0}, 4, many)), 0, five_errors);
  // Of one radius; their squares less 1, of which each varies by sqrt(2), as well.
  auto others = variates(1, {5, 0}, 8, many);
  EXPECT_NEAR(correlation(numbers, others), 0, five_errors);
  auto squares = numbers;
  for (double& z : squares) z = z * z - 1;
  for (double& z : others) z = z * z - 1;
  EXPECT_NEAR(correlation(squares, others), 0, 2 * five_errors);
}

TEST(Variates, AreScaledAndHeld) {
  const auto numbers = variates(6, {3, 0}, 5, 1000);
  std::vector<double> scaled(numbers.size());
  normal_variates(6, {3, 0}, 5, {.mean = 3, .deviation = 0.25, .farthest = 1.5}, scaled);
  for (std::size_t i = 0; i < numbers.size(); ++i)
    EXPECT_EQ(scaled[i], 3 + 0.25 * std::clamp(numbers[i], -1.5, 1.5));
}

TEST(Variates, AreTheSameWhereverTheyBegin) {
  constexpr std::uint64_t far = (1ULL << 34) - 100;  // the counter's high word changes on the way
  for (const std::uint64_t start : {std::uint64_t{0}, far}) {
    const auto all = variates(9, {1, 2}, start, 300);
    for (std::size_t first = 0; first < 80; ++first)
      for (const std::size_t count : {0U, 1U, 3U, 64U, 65U, 200U}) {
        const auto begin = all.begin() + static_cast<std::ptrdiff_t>(first);
        EXPECT_THAT(variates(9, {1, 2}, start + first, count),
                    ElementsAreArray(begin, begin + static_cast<std::ptrdiff_t>(count)));
      }
  }
}

// As it is defined.
TEST(Variates, AreOfTheirWords) {
  const std::uint64_t seed = 0x299f31d0a4093822;
  const std::uint64_t counter = 0x05a308d3243f6a88;  // of a multiple of 8
  const auto numbers = variates(seed, {0x13198a2e, 0x03707344}, counter * 4, 32);
  for (std::uint32_t i = 0; i < 8; ++i) {
    const auto words =
        mixed({0x243f6a88 + i, 0x05a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0});
    const auto first = normal_pair(words[0], words[1]);
    const auto last = normal_pair(words[2], words[3]);
    EXPECT_EQ(numbers[i], first[0]);
    EXPECT_EQ(numbers[i + 8], first[1]);
    EXPECT_EQ(numbers[i + 16], last[0]);
    EXPECT_EQ(numbers[i + 24], last[1]);
  }
}

// On this machine: from the widest vectors it has down to one number at a time.
TEST(Variates, AreTheSameForEveryWidth) {
  const auto widest = variates(3, {4, 5}, 6, 10'001);
  for (std::int64_t targets = hwy::SupportedTargets(); targets != 0; targets &= targets - 1) {
    hwy::SetSupportedTargetsForTest(targets);
    EXPECT_EQ(variates(3, {4, 5}, 6, 10'001), widest) << targets;
  }
  hwy::SetSupportedTargetsForTest(0);
}

}  // namespace
}  // namespace hydro
