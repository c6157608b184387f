// The random numbers against the answers their makers published, against another's quantile, and
// against what normally distributed numbers must show.
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

#include <boost/math/distributions/normal.hpp>
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
  normal_variates(seed, stream, first, numbers);
  return numbers;
}

/// The word whose quantile is the first at or above that of p.
std::uint32_t word_at(double p) {
  return static_cast<std::uint32_t>(std::llround(p * 4294967296.0 - 0.5));
}

// Random123, tests/kat_vectors, the lines "philox4x32 10" (read in copies).
TEST(Mixing, GivesThePublishedAnswers) {
  constexpr std::uint32_t ones = 0xffffffff;
  EXPECT_THAT(mixed({0, 0, 0, 0}, {0, 0}),
              ElementsAre(0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8));
  EXPECT_THAT(mixed({ones, ones, ones, ones}, {ones, ones}),
              ElementsAre(0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd));
  EXPECT_THAT(mixed({0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0}),
              ElementsAre(0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1));
}

// Wichura's own test data, printed with AS 241 (read in copies): z of 0.25 and of 0.001; that of
// 1e-20 lies beyond 32 bits. The words nearest to these p are off by up to 2^-33, which moves z by
// that over the density.
TEST(Quantile, IsThatOfItsAuthor) {
  const auto moved_by = [](double z) {
    return std::ldexp(1, -33) / pdf(boost::math::normal(), z) + 1e-15;
  };
  constexpr double of_quarter = -0.6744897501960817;
  constexpr double of_thousandth = -3.090232306167814;
  EXPECT_NEAR(normal_quantile(word_at(0.25)), of_quarter, moved_by(of_quarter));
  EXPECT_NEAR(normal_quantile(word_at(0.001)), of_thousandth, moved_by(of_thousandth));
}

// Boost's quantile in long double. The approximation is off by 1e-16 (AS 241); some 15 roundings to
// 2^-53, of which some cancel, add less than 1e-15.
TEST(Quantile, IsAsAccurateAsItSays) {
  using boost::math::normal_distribution;
  const normal_distribution<long double> reference;
  double largest = 0;
  const auto look = [&](std::uint32_t word) {
    const long double p = (static_cast<long double>(word) + 0.5L) / 4294967296.0L;
    const long double z = p < 0.5L ? quantile(reference, p)
                                   : -quantile(reference, 1 - p);  // 1 - p has 33 bits: exact
    const auto error =
        static_cast<double>(std::abs(static_cast<long double>(normal_quantile(word)) - z));
    largest = std::max(largest, error / std::max(0.1, static_cast<double>(std::abs(z))));
  };
  for (std::uint64_t word = 0; word < 4294967296; word += 107'374)
    look(static_cast<std::uint32_t>(word));
  for (std::uint32_t word = 0; word < 1000; ++word) {
    look(word);
    look(~word);
    look(word_at(0.075) - 500 + word);
    look(word_at(0.925) - 500 + word);
  }
  EXPECT_LT(largest, 1e-15);
}

TEST(Quantile, RisesAndIsOdd) {
  double before = -10;
  for (std::uint64_t word = 0; word < 4294967296; word += 65'537) {
    const double z = normal_quantile(static_cast<std::uint32_t>(word));
    EXPECT_GT(z, before);
    before = z;
    EXPECT_EQ(normal_quantile(~static_cast<std::uint32_t>(word)), -z);
  }
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

// As it is defined: word r mod 4 of counter r / 4.
TEST(Variates, AreQuantilesOfTheirWords) {
  const std::uint64_t seed = 0x299f31d0a4093822;
  const std::uint64_t counter = 0x85a308d3243f6a88;
  const auto numbers = variates(seed, {0x13198a2e, 0x03707344}, counter % (1ULL << 62) * 4, 4);
  const auto words =
      mixed({0x243f6a88, 0x05a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0});
  for (std::size_t i = 0; i < 4; ++i) EXPECT_EQ(numbers[i], normal_quantile(words[i]));
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
