// site.hpp: the place: its name, its altitude, and the units its people read.
//
// What      The altitude gives the air's pressure, below which a water column parts.
// Formula   p [Pa] = 101325 (1 - 0.0065 H / 288.15)^5.25588, H in m above the sea
// Source    ICAO Standard Atmosphere, Doc 7488 (= ISO 2533:1975), troposphere.
// Range     -500 m to 6,000 m; refused outside.
// Threads   Pure functions.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// The place as it is described.
struct Site {
  std::string name = {};
  std::optional<Length> altitude = {};   ///< default sea level
  std::optional<UnitSystem> units = {};  ///< in which reports are written, default SI
  bool operator==(const Site&) const = default;
};

/// Absolute pressure of the air in the standard atmosphere.
Pressure atmospheric_pressure(const Site& site);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Site& site);

}  // namespace hydro
