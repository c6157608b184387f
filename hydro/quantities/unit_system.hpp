// unit_system.hpp: the units in which people of a place read each quantity.
//
// What      US customary as American growers read it, or metric as others do; gallons are US.
// Source    The choice is ours.
// Threads   Constants.
#pragma once

#include "hydro/quantities/units.hpp"

namespace hydro {

enum class UnitSystem { us, si };

/// What reports print. A bucket is the one used with a stopwatch to measure an outlet.
struct UnitSet {
  Unit<Length> length;
  Unit<Length> bore;
  Unit<Pressure> pressure;
  Unit<Flow> flow;
  Unit<Flow> small_flow;  ///< for outlets under one `flow`
  Unit<Velocity> velocity;
  Unit<Temperature> temperature;
  Unit<Volume> volume;
  Unit<Power> power;
  double bucket;  ///< in units of volume
};

constexpr UnitSet unit_set(UnitSystem system) {
  if (system == UnitSystem::us) return {ft, inch, psi, gpm, gph, ft_per_s, degF, gallon, hp, 5};
  return {units::m, mm, kPa, lpm, lph, m_per_s, degC, litre, kW, 20};
}

}  // namespace hydro
