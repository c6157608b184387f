// operating_point.hpp: what a supply does while a flow leaves it: pressures, pump, power, suction.
//
// What      A held pressure and a tank also take water in where other supplies push it: a flow below 0.
//           Pumps and hydrants have a check valve (common practice, no source).
// Formula   water power = rho g Q H; shaft power = water power / efficiency
//           NPSH available as in suction.hpp: at the pump's centre line, which stands at the
//           supply's elevation and `lift` above the water; it hangs on the speed only through the
//           flow, while the NPSH required goes with the square of the speed
// Source    Headers of the parts; power as in any textbook of hydraulic machines.
// Range     Efficiency and shaft power are given inside the pump's usable range only.
//           Beyond the end of its curve a pump's head may be below 0: then it takes power from the
//           water, and no shaft power is given. Of two pumps in parallel, one whose check valve is
//           held shut by the other turns without flow, at its head at rest.
// Errors    InvalidInput for problems(supply), of the water or the site, or a flow below 0.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/physics/site.hpp"
#include "hydro/physics/supply.hpp"
#include "hydro/physics/water.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// Where a flow lies in the usable range of a pump at its speed.
enum class PumpRange { unknown, below_least_flow, inside, above_most_flow };

/// What one pump does.
struct PumpDuty {
  Flow flow = {};
  Length head = {};
  std::optional<RotationalSpeed> speed = {};  ///< droop taken off; none: not known
  PumpRange range = PumpRange::unknown;
  std::optional<Flow> least_flow = {};  ///< at this speed
  std::optional<Flow> most_flow = {};   ///< at this speed
  Power water_power = {};
  std::optional<double> efficiency = {};     ///< inside the usable range only
  std::optional<Power> shaft_power = {};     ///< inside the usable range only
  std::optional<Length> npsh_required = {};  ///< at this flow and speed; not of a second in series
};

/// The whole supply at one flow.
struct OperatingPoint {
  Flow flow = {};
  Pressure pressure = {};         ///< at the start of the lines that it feeds
  Pressure source_pressure = {};  ///< before the filter: at the pump's outlet, the tank's, ...
  std::optional<Pressure> gauge_reading = {};  ///< none: there is no gauge
  Pressure filter_loss = {};
  Length suction_loss = {};                   ///< friction and fittings
  std::optional<Length> npsh_available = {};  ///< of a pump, of the first in series
  std::vector<PumpDuty> pumps = {};           ///< none, one or two
  bool held_shut = false;  ///< other supplies hold its check valve shut: `pressure` is theirs
};

/// Whether it takes water in where others push it.
bool takes_water_in(const Supply& supply);

/// @param flow that leaves the supply; 0 or more, unless it takes_water_in
OperatingPoint operating_point(const Supply& supply,
                               const Flow& flow,
                               const Water& water = {},
                               const Site& site = {});

}  // namespace hydro
