// soil.hpp: how much water a soil holds for plants, and how fast it takes water in.
//
// What      Two properties by the kind of soil. Whoever has measured one gives it instead.
// Source    Available water: FAO Irrigation and Drainage Paper 56 (1998), table 19; the middle of
//           its range is taken.
//           Intake rate: FAO Irrigation Water Management, Training Manual 5, Irrigation Methods
//           (1988), annex 2, table 7, basic rates: sand 30 ("less than 30" is printed, taken as a
//           misprint of more), sandy loam 20 to 30, loam 10 to 20, clay loam 5 to 10, clay 1 to 5
//           mm/h (seen quoted). The lower end is taken, and OURS is where the other kinds belong:
//           loamy sand with sandy loam, silt loam with loam, silt and silty clay loam with clay
//           loam, silty clay with clay.
//           Slope: less by 0 % to 5 % of slope, by 20 % to 8 %, 40 % to 12 %, 60 % to 20 %, 75 %
//           beyond; from memory of sprinkler handbooks of the Soil Conservation Service.
// Range     A dry soil takes more in the first minutes, a sealed or compacted one less.
// Errors    InvalidInput for a kind and a value both missing, or out of range.
// Threads   Pure functions.
#pragma once

#include "hydro/physics/choices.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <array>
#include <optional>
#include <vector>

namespace hydro {

/// By texture, as table 19 lists them.
enum class SoilKind {
  sand,
  loamy_sand,
  sandy_loam,
  loam,
  silt_loam,
  silt,
  silty_clay_loam,
  silty_clay,
  clay
};
template <>
inline constexpr std::array choices<SoilKind>{
    Choice<SoilKind>{SoilKind::sand, "sand"},
    Choice<SoilKind>{SoilKind::loamy_sand, "loamy sand"},
    Choice<SoilKind>{SoilKind::sandy_loam, "sandy loam"},
    Choice<SoilKind>{SoilKind::loam, "loam"},
    Choice<SoilKind>{SoilKind::silt_loam, "silt loam"},
    Choice<SoilKind>{SoilKind::silt, "silt"},
    Choice<SoilKind>{SoilKind::silty_clay_loam, "silty clay loam"},
    Choice<SoilKind>{SoilKind::silty_clay, "silty clay"},
    Choice<SoilKind>{SoilKind::clay, "clay"}};

/// A soil as it is described: a kind, or what was measured, or both.
struct Soil {
  std::optional<SoilKind> kind = {};
  std::optional<double> available_water = {};  ///< depth of water in a depth of soil [-]
  std::optional<Velocity> intake_rate = {};    ///< where it lies; the slope does not change it
  std::optional<double> slope = {};            ///< rise over run [-], default level
  bool operator==(const Soil&) const = default;
};

/// A published range of available water [-].
struct AvailableWater {
  double least = 0;
  double most = 0;
};
/// Table 19, between field capacity and wilting point.
AvailableWater available_water_range(SoilKind kind);

/// What was measured, or the middle of the range of its kind [-]. @throws InvalidInput
double available_water(const Soil& soil);

/// What was measured, or the low end for its kind, less for the slope. @throws InvalidInput
Velocity intake_rate(const Soil& soil);

/// What is wrong with the fields; empty when nothing is. Neither property need be known.
std::vector<Problem> problems(const Soil& soil);

}  // namespace hydro
