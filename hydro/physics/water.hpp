// water.hpp: density, viscosity and vapour pressure of clean liquid water.
//
// What      What a line needs to know of its water, from the temperature; whoever knows better
//           gives the density or the viscosity outright.
// Formula   rho [kg/m3] = (a0 + a1 t + ... + a5 t^5) / (1 + b t), t in degC, at one atmosphere
//           mu [uPa s]  = sum of a_i (T/300 K)^b_i, i = 1..4, at 0.1 MPa
//           ln(p/pc)    = (Tc/T)(a1 s + a2 s^1.5 + a3 s^3 + a4 s^3.5 + a5 s^4 + a6 s^7.5),
//                         s = 1 - T/Tc
// Source    Density: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97-105, equation 16 (0 to 150 degC).
//           Viscosity: IAPWS SR6-08(2011), supplementary release on liquid water at 0.1 MPa,
//           equation 4. Vapour pressure: IAPWS SR1-86(1992), saturation properties, equation 1.
// Range     0 to 100 degC; refused outside.
// Accuracy  largest difference from the IAPWS-95 and IAPWS 2008 formulations at 0.101325 MPa, 0 to
//           95 degC (water_test.cpp, tests/reference/water.csv): density 0.0014 %, viscosity
//           0.003 %, vapour pressure 0.008 %.
// Errors    InvalidInput outside the range.
// Threads   Pure functions.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// The water as it is described. Fields left out follow from the temperature (default 20 degC).
struct Water {
  std::optional<Temperature> temperature = {};
  std::optional<Density> density = {};
  std::optional<KinematicViscosity> kinematic_viscosity = {};
  bool operator==(const Water&) const = default;
};

/// The water as it is calculated with.
struct WaterProperties {
  Density density;
  KinematicViscosity kinematic_viscosity;
  Pressure vapour_pressure;  ///< absolute
};

/// @throws InvalidInput outside 0 to 100 degC.
Density density_of_water(const Temperature& temperature);
DynamicViscosity viscosity_of_water(const Temperature& temperature);
Pressure vapour_pressure_of_water(const Temperature& temperature);

/// @throws InvalidInput when problems(water) is not empty.
WaterProperties properties(const Water& water);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Water& water);

}  // namespace hydro
