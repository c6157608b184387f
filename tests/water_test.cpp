// The accuracy table of water.hpp, and its refusals.
#include "hydro/physics/water.hpp"

#include "hydro/physics/site.hpp"

#include <cmath>
#include <fstream>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include "accuracy.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

struct Row {
  double celsius, density, viscosity, vapour_pressure;
};

std::vector<Row> reference() {
  std::ifstream file(HYDRO_REFERENCE_DIR "/water.csv");
  std::vector<Row> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with('#')) continue;
    std::istringstream fields(line);
    Row row{};
    char comma = 0;
    fields >> row.celsius >> comma >> row.density >> comma >> row.viscosity >> comma >>
        row.vapour_pressure;
    rows.push_back(row);
  }
  return rows;
}

// Largest differences as water.hpp prints them.
TEST(Water, AgreesWithTheFormulationsOfIapws) {
  const std::vector<Row> rows = reference();
  ASSERT_EQ(rows.size(), 20u);
  for (const Row& row : rows) {
    const Temperature temperature = row.celsius * degC;
    const auto expect = [&](double got, double reference, double share) {
      EXPECT_NEAR(record(Accuracy::water, got, reference, 0), reference, share * reference)
          << row.celsius;
    };
    expect(density_of_water(temperature) / kg_per_m3, row.density, 0.0014e-2);
    expect(viscosity_of_water(temperature) / mPa_s, row.viscosity, 0.003e-2);
    expect(vapour_pressure_of_water(temperature) / kPa, row.vapour_pressure, 0.008e-2);
  }
}

TEST(Water, TakesWhatIsGivenAndDerivesTheRest) {
  const WaterProperties plain = properties({});
  EXPECT_EQ(plain.density, density_of_water(20 * degC));
  EXPECT_NEAR(
      plain.kinematic_viscosity / mm2_per_s, 1.0034, 0.00005);  // derived from the table above
  const WaterProperties given =
      properties({.density = 1000 * kg_per_m3, .kinematic_viscosity = 1.31 * mm2_per_s});
  EXPECT_EQ(given.density, 1000 * kg_per_m3);
  EXPECT_EQ(given.kinematic_viscosity, 1.31 * mm2_per_s);
}

TEST(Water, IsRefusedWhereItIsNotLiquid) {
  for (const double celsius :
       {-0.01, 100.01, std::nan(""), std::numeric_limits<double>::infinity()})
    EXPECT_THROW(density_of_water(celsius * degC), InvalidInput) << celsius;
  try {
    properties({.temperature = -5 * degC});
    FAIL();
  } catch (const InvalidInput& error) {
    EXPECT_THAT(error.what(),
                testing::HasSubstr("temperature: is -5 degC, must be from 0 to 100 degC"));
  }
}

// ICAO Standard Atmosphere, Doc 7488, table of pressures: 1,000 m 898.75 hPa, 2,000 m 794.95 hPa,
// 3,000 m 701.08 hPa (values from memory).
TEST(Atmosphere, FollowsTheStandard) {
  EXPECT_EQ(atmospheric_pressure({}), 101325 * units::Pa);
  EXPECT_NEAR(atmospheric_pressure({.altitude = 1000 * units::m}) / kPa, 89.875, 0.01);
  EXPECT_NEAR(atmospheric_pressure({.altitude = 2000 * units::m}) / kPa, 79.495, 0.01);
  EXPECT_NEAR(atmospheric_pressure({.altitude = 3000 * units::m}) / kPa, 70.108, 0.02);
  EXPECT_THROW(atmospheric_pressure({.altitude = 6001 * units::m}), InvalidInput);
}

}  // namespace
}  // namespace hydro
