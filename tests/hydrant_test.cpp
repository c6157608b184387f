// A town main, by two readings at a hydrant.
#include "hydro/physics/hydrant.hpp"

#include <limits>
#include <string>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;

const Hydrant main_street{
    .pressure_at_rest = 80 * psi, .residual_pressure = 60 * psi, .flow = 1000 * gpm};

std::string first_problem(const Hydrant& hydrant) {
  const std::vector<Problem> found = problems(hydrant);
  return found.empty() ? "" : found[0].text();
}

TEST(Hydrant, ShowsItsTwoReadings) {
  EXPECT_EQ(hydrant_pressure(main_street, 0 * gpm), 80 * psi);
  EXPECT_NEAR(hydrant_pressure(main_street, 1000 * gpm) / psi, 60, 1e-12);
  EXPECT_NEAR(hydrant_flow(main_street, 60 * psi) / gpm, 1000, 1e-11);
  EXPECT_EQ(hydrant_flow(main_street, 80 * psi), 0 * gpm);
}

// NFPA 291, table of h^0.54 (from memory, two digits after the point). The flow at 20 psi is the tested one by
// (rest - 20)^0.54 / (rest - residual)^0.54; the printed digits bear half of the last one each.
TEST(Hydrant, GivesAtAnotherResidualWhatTheTableOfPowersSays) {
  struct Case {
    double rest, residual, power_of_twenty, power_of_tested;
  };
  for (const Case& test : {Case{80, 60, 9.12, 5.04},     // 60^0.54, 20^0.54
                           Case{70, 60, 8.27, 3.47},     // 50, 10
                           Case{120, 20, 12.02, 12.02},  // 100, 100
                           Case{22, 18, 1.45, 2.11}}) {  // 2, 4
    const Hydrant hydrant{.pressure_at_rest = test.rest * psi,
                          .residual_pressure = test.residual * psi,
                          .flow = 925 * gpm};
    const double expected = 925 * test.power_of_twenty / test.power_of_tested;
    const double printed = 0.005 / test.power_of_twenty + 0.005 / test.power_of_tested;
    EXPECT_NEAR(hydrant_flow(hydrant, 20 * psi) / gpm, expected, expected * printed);
  }
}

TEST(Hydrant, TurnsFlowIntoPressureAndBack) {
  for (const double gallons : {1.0, 500.0, 1000.0, 2000.0}) {
    const Pressure pressure = hydrant_pressure(main_street, gallons * gpm);
    EXPECT_NEAR(hydrant_flow(main_street, pressure) / gpm, gallons, 1e-9 * gallons);
  }
  // 0.54 is taken for 1/1.852: doubling the flow costs 2^(1/0.54) times the drop.
  EXPECT_NEAR(hydrant_pressure(main_street, 2000 * gpm) / psi, 80 - 20 * 3.60963, 1e-4);
  EXPECT_LT(hydrant_pressure(main_street, 3000 * gpm), 0 * psi);
}

TEST(Hydrant, IsExamined) {
  EXPECT_EQ(first_problem(main_street), "");
  Hydrant hydrant = main_street;
  hydrant.residual_pressure = 80 * psi;
  EXPECT_THAT(first_problem(hydrant), HasSubstr("must be below the pressure_at_rest, 551.58"));
  hydrant.residual_pressure = std::numeric_limits<double>::quiet_NaN() * psi;
  EXPECT_THAT(first_problem(hydrant), HasSubstr("residual_pressure: is "));
  hydrant = main_street;
  hydrant.flow = 0 * gpm;
  EXPECT_THAT(first_problem(hydrant), HasSubstr("flow: is 0 L/h, must be from 0.001"));
  hydrant = {};
  EXPECT_THAT(first_problem(hydrant), HasSubstr("pressure_at_rest: is 0 kPa, must be above 0"));
  EXPECT_THAT(refusal([] { hydrant_flow(main_street, 81 * psi); }), HasSubstr("pressure: is "));
  EXPECT_THAT(refusal([] { hydrant_flow(main_street, -1 * psi); }), HasSubstr("pressure: is "));
  EXPECT_THAT(refusal([] { hydrant_pressure(main_street, -1 * gpm); }), HasSubstr("flow: is "));
  EXPECT_THAT(refusal([] { hydrant_pressure({}, 1 * gpm); }), HasSubstr("pressure_at_rest"));
}

}  // namespace
}  // namespace hydro
