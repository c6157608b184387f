// supply_limit.hpp: what a supply should not be asked to do, and is asked at an operating point.
//
// What      Limits of the pump, its engine, its suction and the gauge, each where it is known.
// Source    Least flow: what the impeller does not pass on warms the water in the casing, and the
//           bearings suffer; makers give the usable range. NPSH: ANSI/HI 9.6.1. Common practice.
// Range     A limit that is not given is not judged.
// Threads   Pure functions.
#pragma once

#include "hydro/physics/operating_point.hpp"
#include "hydro/physics/supply.hpp"

#include <vector>

namespace hydro {

enum class SupplyLimit {
  top_speed,   ///< the engine turns no faster
  power,       ///< the shaft takes more than the engine gives
  least_flow,  ///< below the pump's usable range: heating
  most_flow,   ///< above the pump's usable range
  suction,     ///< less NPSH is available than required: cavitation
  gauge_range  ///< the gauge reads no further
};

/// Those that are passed, in the order of the enumeration, each once.
std::vector<SupplyLimit> limits_passed(const Supply& supply, const OperatingPoint& point);

}  // namespace hydro
