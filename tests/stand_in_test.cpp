// stand_in_test.cpp: polynomials meet smooth laws between their points, and refuse others.
#include "hydro/solver/stand_in.hpp"

#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace hydro {
namespace {

Lane at_points(const std::function<double(double)>& law) {
  Lane values;
  for (std::size_t lane = 0; lane < lanes; ++lane) values[lane] = law(points_to_try()[lane]);
  return values;
}

struct Law {
  std::string name;
  std::function<double(double)> of;
};

TEST(StandIn, PointsFallFromNearlyOneToMinusOne) {
  const Lane& points = points_to_try();
  for (std::size_t lane = 1; lane < lanes; ++lane) EXPECT_LT(points[lane], points[lane - 1]);
  EXPECT_LT(points[0], 1);
  EXPECT_EQ(points[lanes - 1], -1);
}

// Laws whose 16th coefficient of Chebyshev is below 1e-12 of them.
TEST(StandIn, MeetsSmoothLawsEverywhere) {
  for (const Law& law : std::vector<Law>{{"constant", [](double) { return 7.0; }},
                                         {"straight", [](double x) { return 2 - 3 * x; }},
                                         {"exp", [](double x) { return std::exp(x); }},
                                         {"root", [](double x) { return std::sqrt(5 + x); }},
                                         {"power", [](double x) { return std::pow(4 + x, 1.852); }},
                                         {"part", [](double x) { return 1 / (6 + x); }}}) {
    const auto found = through(at_points(law.of), 1e-12);
    ASSERT_TRUE(found) << law.name;
    for (int k = -1000; k <= 1000; ++k) {
      const double x = k / 1000.0;
      EXPECT_NEAR(value_at(*found, x), law.of(x), 3e-12 * law.of(-1)) << law.name << " at " << x;
    }
  }
  EXPECT_EQ(through(at_points([](double) { return 7.0; }), 1e-12)->size(), 1u);
  EXPECT_EQ(through(at_points([](double x) { return 2 - 3 * x; }), 1e-12)->size(), 2u);
}

TEST(StandIn, RefusesWhatItDoesNotMeetBetweenItsPoints) {
  for (const Law& law :
       std::vector<Law>{{"bend", [](double x) { return std::max(0.0, x); }},
                        {"root at the end", [](double x) { return std::sqrt(1 + x); }},
                        {"step", [](double x) { return x < 0.3 ? 0.0 : 1.0; }},
                        {"wave", [](double x) { return std::cos(20 * x); }},
                        {"no number", [](double x) { return x < -0.9 ? std::nan("") : 1.0; }}})
    EXPECT_FALSE(through(at_points(law.of), 1e-12)) << law.name;
}

TEST(StandIn, ARangeIsGoneThroughFromTheMostToTheLeast) {
  const Interval range{20, 30};
  const Lane values = range.to_try();
  EXPECT_LT(values[0], 30);
  EXPECT_EQ(values[lanes - 1], 20);
  for (const double value : {20.0, 23.5, 30.0})
    EXPECT_DOUBLE_EQ(range.middle() + range.half() * range.place_of(value), value);
}

}  // namespace
}  // namespace hydro
