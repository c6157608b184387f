// pressure_budget.hpp: where the pressure goes on its way from the source to one outlet.
//
// What      The weakest outlet of a solution, and a list of what raises and what takes the pressure
//           on the way to an outlet: source, lift, suction, filter, each line in order, riser. Where
//           lines join it is the way of the water, against which it is found; where some comes in on
//           the way, that which stays in the line.
// Formula   left = source + sum of (gain - loss - rise of the ground); a loss is friction with
//           fittings, and what a regulator takes
// Source    The energy equation (solve.hpp), read along one way.
// Range     Velocity head is neglected. Of a broken riser, what still stands is climbed.
// Accuracy  The entries add up to what is left, and that is the outlet's pressure, within the
//           solution's residual (tests/pressure_budget_test.cpp).
// Errors    InvalidInput for a line or an outlet that is not there, or one that no water comes to.
// Threads   Pure functions.
#pragma once

#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// An outlet and how it stands to its rating.
struct WeakestOutlet {
  std::string line;
  int outlet;  ///< from 1 on
  Pressure pressure;
  Pressure rated;
};

/// The outlet with the smallest share of its rated pressure, of dry ones that with the least
/// pressure in its line; none: there is no outlet to judge (broken, capped and shut ones are not).
std::optional<WeakestOutlet> weakest_outlet(const Solution& solution);

/// One stretch of the way.
struct PressureBudgetEntry {
  std::string part;         ///< "source", "pump", "suction", "filter", "line" or "riser"
  std::string line;         ///< its name, where the part is one; or that of a further supply
  Pressure gain = {};       ///< by a pump, or given at the start
  Pressure rise = {};       ///< that the ground, the lift or the riser takes; negative downhill
  Pressure loss = {};       ///< by friction and fittings
  Pressure regulator = {};  ///< that a regulator takes
  Pressure left;            ///< at its end
};

/// From the source to the outlet.
struct PressureBudget {
  std::string line;
  int outlet;
  std::vector<PressureBudgetEntry> entries;
  Pressure left;   ///< at the device; below 0 at a dry one: what lacks to lift the water to it
  Pressure rated;  ///< of the device
};

PressureBudget pressure_budget(const Solution& solution, const std::string& line, int outlet);
/// Of the weakest outlet. @throws InvalidInput when there is none.
PressureBudget pressure_budget(const Solution& solution);

}  // namespace hydro
