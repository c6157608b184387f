// Expected information against published values and closed forms.

#include "hydro/diagnosis/information.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <random>
#include <vector>

#include <gtest/gtest.h>

namespace hydro {
namespace {

TEST(Information, OfTwoAlikeButForTheMeanIsThatOfABinaryChannel) {
  // One bit sent through normal noise: half a bit comes through at 0.187 dB for each bit, the limit
  // for codes of rate 1/2 (textbooks of channel coding; read in tables as 0.187 dB).
  constexpr double limit = 0.187, last_digit = 0.0005;
  const auto through = [](double decibels) {
    const double for_each_bit = std::pow(10, decibels / 10);
    const double deviation = std::sqrt(1 / (2 * 0.5 * for_each_bit));
    return information(
        std::vector<Expected>{{0.5, {{1, 1, deviation}}}, {0.5, {{1, -1, deviation}}}});
  };
  EXPECT_LT(through(limit - last_digit), 0.5);
  EXPECT_GT(through(limit + last_digit), 0.5);
}

TEST(Information, OfManyEvenlySpreadMeansIsThatOfANormalChannel) {
  // Means that are normal with deviation 3, errors of 1: half log2(1 + 9).
  std::vector<Expected> all;
  double sum = 0;
  for (double x = -6; x <= 6; x += 0.05) {
    all.push_back({std::exp(-0.5 * x * x), {{1, 3 * x, 1}}});
    sum += all.back().probability;
  }
  for (Expected& it : all) it.probability /= sum;
  EXPECT_NEAR(information(all), 0.5 * std::log2(10.0), 1e-6);
}

TEST(Information, OfMixturesIsThatOfSampling) {
  const std::vector<Expected> all{{0.5, {{0.7, 20, 1}, {0.3, 24, 2}}},
                                  {0.3, {{1, 22, 0.8}}},
                                  {0.2, {{0.5, 10, 1}, {0.5, 30, 1.5}}}};
  const auto density = [](const Expected& of, double y) {
    double sum = 0;
    for (const Part& part : of.parts) {
      const double x = (y - part.mean) / part.deviation;
      sum +=
          part.weight * std::exp(-0.5 * x * x) / (part.deviation * std::sqrt(2 * std::numbers::pi));
    }
    return sum;
  };
  std::mt19937_64 dice(5);
  constexpr int draws = 200'000;
  double sum = 0, squares = 0;
  for (int i = 0; i < draws; ++i) {
    std::discrete_distribution<std::size_t> which{0.5, 0.3, 0.2};
    const Expected& truth = all[which(dice)];
    std::vector<double> weights;
    for (const Part& part : truth.parts) weights.push_back(part.weight);
    const Part& part =
        truth.parts[std::discrete_distribution<std::size_t>(weights.begin(), weights.end())(dice)];
    const double y = std::normal_distribution<double>(part.mean, part.deviation)(dice);
    double together = 0;
    for (const Expected& it : all) together += it.probability * density(it, y);
    const double told = std::log2(density(truth, y) / together);
    sum += told;
    squares += told * told;
  }
  const double mean = sum / draws;
  const double error = std::sqrt((squares / draws - mean * mean) / draws);
  EXPECT_NEAR(information(all), mean, 4 * error);
}

TEST(Information, OfAFewOutcomesIsThatOfABinaryChannelThatErrs) {
  // Capacity of a channel that turns one bit in ten: 1 - h(0.1) = 0.531 (textbooks).
  EXPECT_NEAR(information({0.5, 0.5}, {{0.9, 0.1}, {0.1, 0.9}}), 0.531, 0.0005);
  EXPECT_EQ(information({0.5, 0.5}, {{0.3, 0.7}, {0.3, 0.7}}), 0);
}

TEST(Information, IsNeverMoreThanThereIsToKnow) {
  const std::vector<Expected> far{
      {0.5, {{1, 0, 1e-3}}}, {0.25, {{1, 50, 1}}}, {0.25, {{1, 90, 2}}}};
  EXPECT_NEAR(information(far), entropy({0.5, 0.25, 0.25}), 1e-3);
  EXPECT_NEAR(entropy({0.5, 0.25, 0.25}), 1.5, 1e-15);
}

}  // namespace
}  // namespace hydro
