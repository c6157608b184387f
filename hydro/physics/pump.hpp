// pump.hpp: a centrifugal pump by its catalogue: head, suction and efficiency against flow.
//
// What      Points of a catalogue, taken at one speed, make a curve of head against flow that falls
//           all the way. The pump may run at another speed. The engine that turns it is known by
//           its top speed, by the power it gives, and by the speed it loses under load.
// Formula   two points        H = a - b Q^2 through both
//           quadratic         H = a - b Q^2 by least squares of H on Q^2
//           through points    a cubic between each two, monotone, its slope at a point the weighted
//                             harmonic mean of the two secants, at the ends the secant; straight on
//                             with that slope before the first point and after the last
//           other speed n     Q ~ n, H ~ n^2, NPSH required ~ n^2, P ~ n^3 (affinity), the
//                             efficiency going with the flow
//           efficiency        straight between its points
//           NPSH required     as the head's curve, and below the first point as at it
//           droop             n = speed (1 - droop P / power); where P is not known, that of the
//                             nearest flow at which it is, and for the droop only
// Source    Affinity laws: any textbook of hydraulic machines, for example Y. A. Cengel and J. M.
//           Cimbala, Fluid Mechanics, section 14-2. That the suction head required goes with n^2 is
//           customary and good near the curve's speed only (ANSI/HI 9.6.1, from memory). Cubic:
//           F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246; F. N. Fritsch
//           and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304 (from memory).
// Range     Flow forward. Far beyond a curve of points, where the head is well below 0, the straight
//           continuation gives less at a higher speed. The usable range is from `least_flow` to `most_flow`; where one of them
//           is not given, that side is open, and without both the range is unknown. Efficiency and
//           shaft power are known inside the usable range and inside the points of `efficiencies`;
//           a single `efficiency` without any limit is held for no flow at all. All limits go with
//           the speed.
// Errors    problems() names each field that is out of its accepted interval, and a curve that does
//           not fall. With a droop the efficiency must not rise faster than the flow, nor fall so
//           steeply that the power rises faster than its cube: either way the head would not fall.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// One point of a pump's catalogue. The head is of the water pumped.
struct PumpPoint {
  Flow flow = {};
  Length head = {};
  bool operator==(const PumpPoint&) const = default;
};

/// One point of a pump's efficiency.
struct EfficiencyPoint {
  Flow flow = {};
  double efficiency = 0;  ///< water power over shaft power, above 0 to 1 [-]
  bool operator==(const EfficiencyPoint&) const = default;
};

/// How a curve goes between its points. Two points are always joined by the quadratic.
enum class CurveShape {
  through_points,  ///< through every point
  quadratic        ///< a - b Q^2, as near to all points as it comes
};

/// A pump and the engine that turns it, as they are described.
struct Pump {
  std::vector<PumpPoint> points = {};               ///< two or more, flow rising and head falling
  std::optional<CurveShape> shape = {};             ///< default through_points
  std::optional<RotationalSpeed> curve_speed = {};  ///< at which the points were taken
  std::optional<RotationalSpeed> speed = {};        ///< at which it runs, default curve_speed
  std::optional<RotationalSpeed> top_speed = {};    ///< of the engine
  std::optional<Flow> least_flow = {};              ///< usable, at curve_speed
  std::optional<Flow> most_flow = {};               ///< usable, at curve_speed
  std::vector<PumpPoint> npsh_required = {};        ///< at curve_speed: two or more, never falling
  std::optional<double> efficiency = {};            ///< in the whole usable range, or ...
  std::vector<EfficiencyPoint> efficiencies = {};   ///< ... by flow at curve_speed: two or more
  std::optional<Power> power = {};                  ///< the most that the engine gives to the shaft
  std::optional<double> droop = {};  ///< share of speed lost at that power, default 0
  bool operator==(const Pump&) const = default;
};

/// How two pumps stand to each other.
enum class PumpArrangement {
  parallel,  ///< side by side, each with a check valve: flows add
  series     ///< one after the other: heads add
};

/// How a curve meets its points.
struct PumpFit {
  Length head_at_rest;    ///< without flow, at curve_speed
  Length largest_misfit;  ///< of the points' heads; 0 where it goes through them
};
/// @throws InvalidInput for problems(pump).
PumpFit fit_of(const Pump& pump);

/// Head at a flow with the pump turning at its speed, or at this one; without droop.
/// @throws InvalidInput for problems(pump), or a speed without a curve_speed.
Length pump_head(const Pump& pump,
                 const Flow& flow,
                 const std::optional<RotationalSpeed>& speed = {});

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Pump& pump);

}  // namespace hydro
