// Tanks, described.
#include "hydro/physics/tank.hpp"

#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;

std::string first_problem(const Tank& tank) {
  const std::vector<Problem> found = problems(tank);
  return found.empty() ? "" : found[0].text();
}

TEST(Tank, HasASurfaceByItsDiameterOrItsArea) {
  const Tank round{.level = 1 * units::m, .diameter = 2 * units::m};
  EXPECT_DOUBLE_EQ(round.surface().value() / m2, std::numbers::pi);
  const Tank square{.level = 1 * units::m, .area = 3 * m2};
  EXPECT_EQ(square.surface(), 3 * m2);
  const Tank unknown{.level = 1 * units::m};
  EXPECT_EQ(unknown.surface(), std::nullopt);
}

TEST(Tank, IsExamined) {
  EXPECT_EQ(first_problem({}), "");
  EXPECT_EQ(first_problem({.level = 1000 * units::m, .area = 1 * m2}), "");
  EXPECT_EQ(first_problem({.level = -0.1 * units::m}),
            "level: is -0.1 m, must be from 0 to 1000 m");
  EXPECT_THAT(first_problem({.level = std::numeric_limits<double>::quiet_NaN() * units::m}),
              HasSubstr("level: is "));
  EXPECT_THAT(first_problem({.level = 1001 * units::m}), HasSubstr("level"));
  EXPECT_THAT(first_problem({.level = 1 * units::m, .diameter = 0 * units::m}),
              HasSubstr("diameter: is 0 m, must be from 0.01 to 10000 m"));
  EXPECT_THAT(first_problem({.level = 1 * units::m, .area = -1 * m2}),
              HasSubstr("area: is -1 m2, must be from 0.0001 to "));
  EXPECT_EQ(first_problem({.level = 1 * units::m, .diameter = 1 * units::m, .area = 1 * m2}),
            "diameter, area: are both given; take one of the two ways");
}

}  // namespace
}  // namespace hydro
