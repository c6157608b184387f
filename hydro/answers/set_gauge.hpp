// set_gauge.hpp: the engine speed, or the held pressure, that brings a wanted pressure.
//
// What      Wanted is a reading at the supply's gauge (without one: the pressure before the filter),
//           a pressure at the weakest outlet, or a share of its rated pressure at every outlet. The
//           answer is solved, with every limit of the supply that is passed there.
// Formula   The lines are solved with the pressure at their start held. That gives the flow; the
//           speed is where the pump's curve, by the affinity laws, passes through that flow and
//           pressure (pump.hpp). For the weakest outlet Newton's method finds the held pressure,
//           with the slope that the solved lines give.
// Source    Ours.
// Range     Two pumps keep the ratio of their speeds. Where the top speed would be passed, the
//           answer is that at top speed, and `reached` is false. Where water that runs to the pump
//           by itself brings more at any speed, the answer is that at 1 rpm.
// Errors    InvalidInput when the supply is a tank, a hydrant or a pump whose curve_speed is not
//           known, for a pressure out of range, or when no outlet is open; NotSolved.
// Threads   Pure functions.
#pragma once

#include "hydro/physics/supply_limit.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// Whether a supply can be set: a held pressure, or pumps whose curve_speed is known.
bool can_be_set(const Supply& supply);

/// How the supply is set, and what comes of it.
struct Setting {
  bool reached;                          ///< whether what was wanted is there
  std::optional<RotationalSpeed> speed;  ///< to which the engine is set; none: a held pressure
  Pressure pressure;                     ///< before the filter: that must be held
  std::vector<SupplyLimit> limits;       ///< that are passed
  Solution solution;                     ///< at that setting
};

/// For a reading at the gauge.
Setting set_for_gauge(const Layout& layout, const Pressure& reading);
/// For this pressure at the weakest outlet: that with the lowest pressure.
Setting set_for_weakest(const Layout& layout, const Pressure& pressure);
/// For at least this share [-] of its rated pressure at every outlet.
Setting set_for_rated(const Layout& layout, double share = 1);
/// Likewise; but a supply that cannot be set is taken as it is, `reached` saying whether it is
/// enough.
Setting set_for_rated_if_possible(const Layout& layout, double share = 1);

}  // namespace hydro
