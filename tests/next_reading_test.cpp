// What to read next: against brute force, and as a walker would have it; what a gauge can see.

#include "hydro/diagnosis/next_reading.hpp"

#include "hydro/diagnosis/detectable.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::HasSubstr;

Layout farm_watering() {
  return pumped_farm().watering({"low"});
}

Reading at_gauge(const Layout& truth) {
  return {.place = ReadingPlace::supply_gauge,
          .pressure = solve(truth).supply().gauge_reading.value()};
}
Reading in_pipe(const Layout& truth, const std::string& line, int outlet) {
  return {.place = ReadingPlace::pipe,
          .line = line,
          .outlet = outlet,
          .pressure = solve(truth).line(line).line_pressure[static_cast<std::size_t>(outlet - 1)]};
}

/// The entry for a reading at this place.
const PossibleReading& at(const NextReadings& next,
                          ReadingPlace place,
                          const std::string& line = {},
                          int outlet = 0) {
  const auto is_there = [&](const PossibleReading& it) {
    return it.reading && it.reading->place == place && it.reading->line == line &&
           it.reading->outlet == outlet;
  };
  return *std::ranges::find_if(next.readings, is_there);
}

TEST(NextReading, IsWorthWhatBruteForceSays) {
  // Two candidates, a valve left open or none, nothing read yet: Y is one of two normal distributions
  // with the same deviation, that of the gauge and its bias (all else certain).
  const Layout farm = farm_watering();
  NextReadingOptions options;
  FindFaultOptions& how = options.find_fault;
  how.uncertainty = Uncertainty{};
  how.model_error = 0;
  how.candidates.odds = {.no_fault = 3,
                         .head_off = 0,
                         .riser_sheared = 0,
                         .nozzle_missing = 0,
                         .worn = 0,
                         .clogged = 0,
                         .wrong_outlet = 0,
                         .leak = 0,
                         .end_open = 0,
                         .valve_left_open = 1,
                         .valve_part_closed = 0,
                         .regulator_stuck_open = 0,
                         .regulator_stuck_shut = 0,
                         .filter_dirty = 0,
                         .engine_slow = 0,
                         .pump_worn = 0,
                         .supply_low = 0,
                         .gauge_wrong = 0};
  const NextReadings next = next_reading(farm, {}, {}, options);
  const auto gauge = [](const Layout& layout) {
    return si(solve(layout).supply().gauge_reading.value());
  };
  const double s = std::hypot(si(1 * psi), si(how.gauge_bias));
  // Three candidates: none, row 3, row 4; odds 3 : 1 : 1.
  const std::vector<double> means{gauge(farm),
                                  gauge(farm.with_fault(valve_left_open("row 3"))),
                                  gauge(farm.with_fault(valve_left_open("row 4")))};
  const std::vector<double> weights{0.6, 0.2, 0.2};
  double bits = 0;
  constexpr int steps = 4000;
  const double from = means[1] - 12 * s, to = means[0] + 12 * s;
  for (int i = 0; i < steps; ++i) {
    const double y = from + (to - from) * i / steps;
    double all = 0;
    std::vector<double> densities;
    for (std::size_t c = 0; c < means.size(); ++c) {
      const double x = (y - means[c]) / s;
      densities.push_back(std::exp(-0.5 * x * x) / (s * std::sqrt(2 * std::numbers::pi)));
      all += weights[c] * densities[c];
    }
    for (std::size_t c = 0; c < means.size(); ++c)
      if (densities[c] > 0)
        bits += weights[c] * densities[c] * std::log2(densities[c] / all) * (to - from) / steps;
  }
  EXPECT_NEAR(at(next, ReadingPlace::supply_gauge).information, bits, 1e-6);
  // Whether water runs in row 3 at all is seen in row 3, and nothing else: one chance in five.
  EXPECT_NEAR(at(next, ReadingPlace::pipe, "row 3", 1).information,
              0.2 * std::log2(5) + 0.8 * std::log2(1 / 0.8),
              1e-6);
  EXPECT_NEAR(next.uncertainty_left, 0.6 * std::log2(1 / 0.6) + 0.4 * std::log2(5), 1e-12);
}

TEST(NextReading, AReadingOfWhatIsKnownTellsLittle) {
  const Layout farm = farm_watering();
  const Layout broken = farm.with_fault(riser_sheared("row 2", 7));
  const NextReadings next = next_reading(farm, {at_gauge(broken)});
  EXPECT_EQ(next.stop, WhyStop::go_on);
  // The same gauge again has its bias again.
  const double again = at(next, ReadingPlace::supply_gauge).information;
  const double far = at(next, ReadingPlace::pipe, "row 2", 10).information;
  EXPECT_LT(again, 0.2);
  EXPECT_GT(far, 5 * again);
  EXPECT_TRUE(
      std::ranges::is_sorted(next.readings, std::ranges::greater{}, &PossibleReading::worth));
}

TEST(NextReading, StopsWhenTheRowIsSure) {
  const Layout farm = farm_watering();
  const Layout broken = farm.with_fault(riser_sheared("row 2", 7));
  const std::vector<Reading> readings{
      at_gauge(broken), in_pipe(broken, "row 1", 10), in_pipe(broken, "row 2", 10)};
  EXPECT_EQ(next_reading(farm, readings).stop, WhyStop::sure_enough);
  NextReadingOptions dear;
  dear.sure_enough = 1;
  dear.bits_per_minute = 100;
  dear.can_look = false;
  EXPECT_EQ(next_reading(farm, readings, {}, dear).stop, WhyStop::nothing_to_learn);
}

TEST(NextReading, WalkingCosts) {
  const Layout farm = farm_watering();
  const NextReadings next = next_reading(farm, {at_gauge(farm)});
  // Main 440 ft, outlet 10 at 360 ft: there and back at 4 ft/s, and two minutes.
  EXPECT_NEAR(
      at(next, ReadingPlace::pipe, "row 1", 10).time / units::s, 2 * (440 + 360) / 4.0 + 120, 1e-9);
  EXPECT_NEAR(at(next, ReadingPlace::supply_gauge).time / units::s, 120, 1e-9);
}

TEST(NextReading, SaysWhenOnlyTheBucketCanTell) {
  // One clogged head of many moves no gauge.
  const Layout farm = farm_watering();
  NextReadingOptions options;
  options.can_look = false;
  options.find_fault.candidates.odds = {.no_fault = 0,
                                        .head_off = 0,
                                        .riser_sheared = 0,
                                        .nozzle_missing = 0,
                                        .worn = 0,
                                        .clogged = 1,
                                        .wrong_outlet = 0,
                                        .leak = 0,
                                        .end_open = 0,
                                        .valve_left_open = 0,
                                        .valve_part_closed = 0,
                                        .regulator_stuck_open = 0,
                                        .regulator_stuck_shut = 0,
                                        .filter_dirty = 0,
                                        .engine_slow = 0,
                                        .pump_worn = 0,
                                        .supply_low = 0,
                                        .gauge_wrong = 0};
  options.can_read = {ReadingPlace::supply_gauge,
                      ReadingPlace::after_filter,
                      ReadingPlace::pipe,
                      ReadingPlace::flush_end,
                      ReadingPlace::bucket};
  const NextReadings next = next_reading(farm, {}, {}, options);
  EXPECT_TRUE(next.use_the_bucket);
  EXPECT_EQ(next.readings.front().reading.value().place, ReadingPlace::bucket);
}

TEST(NextReading, RefusesBadOptions) {
  const auto says = [](auto change) {
    NextReadingOptions options;
    change(options);
    return refusal([&] { next_reading(farm_watering(), {}, {}, options); });
  };
  EXPECT_THAT(says([](NextReadingOptions& it) { it.bits_per_minute = -1; }),
              HasSubstr("bits_per_minute: is -1"));
  EXPECT_THAT(says([](NextReadingOptions& it) { it.walking_speed = 0 * ft_per_s; }),
              HasSubstr("walking_speed"));
  EXPECT_THAT(says([](NextReadingOptions& it) { it.time_to_read = -1 * units::s; }),
              HasSubstr("time_to_read: is -1 s"));
  EXPECT_THAT(says([](NextReadingOptions& it) { it.places = 0; }), HasSubstr("places: is 0"));
}

TEST(Detectable, IsTheChangeInErrorsOfTheGauge) {
  const Layout farm = farm_watering();
  FindFaultOptions options;
  options.uncertainty = Uncertainty{};
  options.model_error = 0;
  const std::vector<Detectable> table =
      detectable(farm, {.place = ReadingPlace::supply_gauge}, options);
  const auto of = [&](const std::string& what) {
    return *std::ranges::find_if(
        table, [&](const Detectable& it) { return describe(it.candidate) == what; });
  };
  const Pressure change =
      solve(farm.with_fault(riser_sheared("row 2", 7))).supply().gauge_reading.value() -
      solve(farm).supply().gauge_reading.value();
  const Detectable sheared = of("row 2, outlet 7: riser sheared");
  // Lanes solve to 1e-12 of the supply's head.
  EXPECT_NEAR(*sheared.pressure_change / psi, change / psi, 1e-9);
  EXPECT_NEAR(sheared.standard_errors, std::abs(change / psi) / std::sqrt(2.0), 1e-9);
  EXPECT_TRUE(sheared.seen);
  EXPECT_FALSE(of("row 2, outlet 7: clogged").seen);
  EXPECT_EQ(of("no fault").standard_errors, 0);
}

TEST(Detectable, RefusesAPlaceThatIsNotThere) {
  EXPECT_THAT(
      refusal([] { detectable(farm_watering(), {.place = ReadingPlace::pipe, .line = "row 8"}); }),
      HasSubstr("line: is \"row 8\""));
}

}  // namespace
}  // namespace hydro
