// Cumulative sums against a published table, and what a log of days is told of.

#include "hydro/diagnosis/drift.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

TEST(CumulativeSums, AreThoseOfAPublishedTable) {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3 (from memory): target 325, k = 0.3175, h =
  // 4.1959; by hand: 3.325 - 0.3175 = 3.0075, + 2.25 - 0.3175 = 4.94 on sample 14, the first above h.
  const std::vector<double> samples{324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125,
                                    324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250,
                                    327.825, 328.500, 326.675, 327.775, 326.875, 328.350};
  std::vector<double> from_target;
  for (const double sample : samples) from_target.push_back(sample - 325);
  const Sums sums = cumulative_sums(from_target, 0.3175);
  // Sums of numbers of 6 digits.
  constexpr double rounding = 1e-9;
  EXPECT_NEAR(sums.up[4], 0.35 - 0.3175, rounding);
  EXPECT_NEAR(sums.up[11], 0, rounding);
  EXPECT_NEAR(sums.up[12], 3.0075, rounding);
  EXPECT_NEAR(sums.up[13], 4.94, rounding);
  // 0, 0.0075, 0.0075 + 0.275 - 0.3175 < 0, 0.65 - 0.3175.
  EXPECT_NEAR(sums.down[3], 0.3325, rounding);
  const auto first = std::ranges::find_if(sums.up, [](double sum) { return sum > 4.1959; });
  EXPECT_EQ(first - sums.up.begin(), 13);
}

TEST(CumulativeSums, AlarmAsOftenAsPublished) {
  // Average days to a false alarm on either side at k = 0.5: 168 at h = 4 and 465 at h = 5; until a
  // change of one scatter is found, 8.38 and 10.4 (D. C. Montgomery, from memory; D. M. Hawkins,
  // 1993, gives the same). Averages of 500 runs, each about as variable as it is long: 3 standard errors
  // are 14 %.
  struct Row {
    double shift, level, days;
  };
  for (const Row& row : {Row{0, 4, 168}, Row{0, 5, 465}, Row{1, 4, 8.38}, Row{1, 5, 10.4}}) {
    std::mt19937_64 random(20261127);
    std::normal_distribution<double> normal;
    constexpr int runs = 500;
    double days = 0;
    for (int run = 0; run < runs; ++run) {
      constexpr std::size_t longer_than_any = 8'192;
      std::vector<double> values(longer_than_any);
      for (double& value : values) value = normal(random) + row.shift;
      const Sums sums = cumulative_sums(values, 0.5);
      std::size_t day = 0;
      while (day < values.size() && !(std::max(sums.up[day], sums.down[day]) > row.level)) ++day;
      days += static_cast<double>(day + 1);
    }
    EXPECT_NEAR(days / runs / row.days, 1, 0.14) << row.shift << " at " << row.level;
  }
}

Reading gauge(double reading) {
  return {.place = ReadingPlace::supply_gauge, .pressure = reading * psi};
}
Reading bucket(int outlet, double gallons) {
  return {.place = ReadingPlace::bucket, .line = "row 1", .outlet = outlet, .flow = gallons * gpm};
}

/// The gauge as it was but for what comes and goes; the bucket 3 of its scatters less from day 9 on.
std::vector<DayOfReadings> log_with_a_change() {
  const std::vector<double> wander{0.3, -0.5, 0.2, -0.1, 0.1, 0.4, -0.3, 0.2, -0.4, 0.1, 0, -0.2};
  std::vector<DayOfReadings> log;
  for (std::size_t i = 0; i < wander.size(); ++i)
    log.push_back({.day = static_cast<double>(i),
                   .name = "day " + std::to_string(i + 1),
                   .readings = {gauge(50 + wander[i]),
                                bucket(3, (3.5 + 0.02 * wander[i]) * (i >= 8 ? 0.94 : 1))}});
  return log;
}

TEST(FindDrift, TellsWhichReadingAndSinceWhen) {
  const Drift drift = find_drift(ouzel_strips(), log_with_a_change());
  ASSERT_EQ(drift.places.size(), 2u);
  const PlaceDrift& bucket = drift.places.front();
  EXPECT_EQ(bucket.place.place, ReadingPlace::bucket);
  EXPECT_EQ(bucket.since, 8u);
  ASSERT_TRUE(bucket.alarm);
  // 3 / sqrt(1.2) - 0.5 a day: above 5 on the third.
  EXPECT_EQ(*bucket.alarm, 10u);
  EXPECT_FALSE(bucket.rises);
  EXPECT_LT(bucket.trend, 0);
  EXPECT_NEAR(*bucket.normal_flow / gpm, 3.5, 0.02);
  // 2 % of the largest is more than the wander.
  EXPECT_NEAR(*bucket.flow_scatter / gpm, 0.02 * 3.506, 1e-9);
  EXPECT_FALSE(drift.places.back().alarm);
  // The days' mean is 0 of 0.3, -0.5, 0.2, -0.1 and 0.1.
  EXPECT_NEAR(*drift.places.back().normal_pressure / psi, 50, 1e-9);
}

TEST(FindDrift, FindsATrend) {
  std::vector<DayOfReadings> log;
  for (int i = 0; i < 10; ++i) log.push_back({.day = 7.0 * i, .readings = {gauge(50 - 0.25 * i)}});
  const Drift drift = find_drift(ouzel_strips(), log);
  // 0.25 psi in 7 days at an error of 1 psi; sum of squares of the days 82.5 * 49.
  EXPECT_NEAR(drift.places.front().trend, -0.25 / 7, 1e-9);
  EXPECT_NEAR(drift.places.front().trend_error, 1 / std::sqrt(82.5 * 49), 1e-9);
}

TEST(FindDrift, SaysWhatTakesMoreDays) {
  auto log = log_with_a_change();
  log.back().readings.push_back(bucket(5, 3.5));
  const Drift drift = find_drift(ouzel_strips(), log);
  EXPECT_EQ(drift.places.size(), 2u);
  EXPECT_THAT(drift.notes,
              testing::ElementsAre("bucket of row 1, outlet 5: read on 1 day; it takes 5 to say "
                                   "what is normal and one more"));
}

TEST(FindDrift, NamesEveryMistake) {
  std::vector<DayOfReadings> log{{.day = 2, .readings = {gauge(50)}},
                                 {.day = 2, .readings = {bucket(11, 3)}},
                                 {.day = std::numeric_limits<double>::quiet_NaN()}};
  const auto found = problems(log, {.normal_days = 1, .allowance = -1}, ouzel_strips());
  std::vector<std::string> texts;
  for (const Problem& problem : found) texts.push_back(problem.text());
  EXPECT_THAT(texts,
              testing::UnorderedElementsAre(
                  testing::HasSubstr("normal_days: is 1, must be from 2"),
                  testing::HasSubstr("allowance: is -1, must be from 0 to 5"),
                  testing::HasSubstr("day 2: day: is 2, must be after the one before, 2"),
                  testing::HasSubstr("outlet: is 11, must be from 1 to 10"),
                  testing::HasSubstr("day 3: day: is nan, must be a number")));
  EXPECT_THROW(find_drift(ouzel_strips(), log), InvalidInput);
}

}  // namespace
}  // namespace hydro
