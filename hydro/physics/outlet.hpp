// outlet.hpp: a kind of outlet, as its maker rates it: so much flow at such a pressure.
//
// What      Sprinklers, sprays and emitters let out a flow that rises with the pressure at the
//           device. An outlet is rated in one of three ways: by a flow at a pressure, by the bore of
//           its nozzle, or by points of a catalogue. One that compensates holds its flow between two
//           pressures.
// Formula   by a flow      q = flow (p / at)^exponent
//           by a nozzle    q = Cd A sqrt(2 p / rho)
//           by points      q = k p^x, k and x by least squares of ln q on ln p
//           compensating   q = flow from `low` to `high`; flow (p / low)^0.5 below,
//                          flow (p / high)^0.5 above
//           Exponents below 0.1 hold above the minimum; below it q falls with p^0.5.
//           q = 0 for p <= 0.
// Source    Power law of outlets as in D. Karmeli, Trans. ASAE 20 (1977) 1079-1085 (from memory)
//           and FAO Irrigation Manual, module 9 (2002); exponent 0.5 is Torricelli's law, whose
//           discharge coefficient is about 0.95 to 0.98 for a smooth nozzle (common practice). How a
//           compensating device behaves outside its range is an assumption of ours: it must fall to
//           0 with the pressure, and a membrane fully closed or torn is an orifice.
// Range     exponent 0 to 1.5; the rating's own range of pressures is the maker's.
// Accuracy  PointsFit::largest_misfit says how well a power law meets a catalogue.
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// The pressures between which a compensating outlet holds its flow.
struct Compensating {
  Pressure low = {};
  Pressure high = {};
  bool operator==(const Compensating&) const = default;
};

/// One line of a catalogue.
struct RatedPoint {
  Pressure pressure = {};
  Flow flow = {};
  bool operator==(const RatedPoint&) const = default;
};

/// A kind of outlet as it is described: one way of rating, and what it is judged by.
struct Outlet {
  std::string name = {};                             ///< for reports
  Flow flow = {};                                    ///< this flow ...
  Pressure at = {};                                  ///< ... at this pressure, with ...
  std::optional<double> exponent = {};               ///< ... this flow exponent [-], default 0.5
  std::optional<Pressure> rated = {};                ///< it is judged against this, default `at`
  std::optional<Pressure> minimum = {};              ///< it does not turn or form its pattern below
  std::optional<Pressure> maximum = {};              ///< it mists above
  std::optional<Compensating> compensating = {};     ///< beside `flow`; then `rated` is `low`
  std::optional<Length> nozzle = {};                 ///< instead of `flow`: its bore; needs `rated`
  std::optional<double> discharge_coefficient = {};  ///< Cd of the nozzle [-]
  std::vector<RatedPoint> points = {};     ///< instead of `flow`: two or more; needs `rated`
  std::optional<Length> body_bore = {};    ///< what is left when the nozzle is lost
  std::optional<Pressure> regulator = {};  ///< below it: holds the device at this pressure at most
  bool operator==(const Outlet&) const = default;

  Pressure rated_pressure() const { return rated.value_or(compensating ? compensating->low : at); }
};

/// Pressures are compared with limits to a millionth, so that rounding does not judge.
inline bool is_below(const Pressure& pressure, const Pressure& limit) {
  return pressure < limit * (1 - 1e-6);
}
inline bool is_above(const Pressure& pressure, const Pressure& limit) {
  return pressure > limit * (1 + 1e-6);
}

/// Flow at this pressure; 0 for a pressure of 0 or less. @param density of the water, for a nozzle
/// @throws InvalidInput for problems(outlet).
Flow discharge(const Outlet& outlet,
               const Pressure& pressure,
               const Density& density = 998.2 * kg_per_m3);

/// The power law that meets a catalogue's points best.
struct PointsFit {
  Flow flow = {};    ///< at ...
  Pressure at = {};  ///< ... the first point's pressure
  double exponent = 0;
  double largest_misfit = 0;  ///< of the catalogue's flow, over all points [-]
};
/// @throws InvalidInput for fewer than two points, or pressures that are all the same.
PointsFit fit_of(const std::vector<RatedPoint>& points);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Outlet& outlet);

}  // namespace hydro
