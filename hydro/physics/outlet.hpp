// outlet.hpp: a kind of outlet, as its maker rates it: so much flow at such a pressure.
//
// What      Sprinklers, sprays and emitters let out a flow that rises with the pressure at the
//           device.
// Formula   q = flow (p / at)^exponent for p > 0, and 0 otherwise
// Source    Power law of outlets as in D. Karmeli, Trans. ASAE 20 (1977) 1079-1085 (from memory)
//           and FAO Irrigation Manual, module 9 (2002); exponent 0.5 is Torricelli's law for a
//           plain nozzle.
// Range     exponent 0.1 to 1.5; the rating's own range of pressures is the maker's.
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

struct Outlet {
  std::string name = {};                 ///< for reports
  Flow flow = {};                        ///< this flow ...
  Pressure at = {};                      ///< ... at this pressure, with ...
  std::optional<double> exponent = {};   ///< ... this flow exponent [-], default 0.5
  std::optional<Pressure> rated = {};    ///< it is judged against this, default `at`
  std::optional<Pressure> minimum = {};  ///< it does not turn or form its pattern below
  std::optional<Pressure> maximum = {};  ///< it mists above
  bool operator==(const Outlet&) const = default;

  Pressure rated_pressure() const { return rated.value_or(at); }
};

/// Flow at this pressure; 0 for a pressure of 0 or less. @throws InvalidInput for problems(outlet).
Flow discharge(const Outlet& outlet, const Pressure& pressure);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Outlet& outlet);

}  // namespace hydro
