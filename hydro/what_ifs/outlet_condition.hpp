// outlet_condition.hpp: the worst that is true of an outlet. Not installed.
#pragma once

#include "hydro/physics/outlet.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

namespace hydro {

inline bool is_out_of_work(OutletCondition condition) {
  return condition == OutletCondition::below_minimum || condition == OutletCondition::dry;
}
inline bool is_below_rated(OutletCondition condition) {
  return condition == OutletCondition::below_rated || is_out_of_work(condition);
}
inline bool is_dry(OutletCondition condition) {
  return condition == OutletCondition::dry;
}
inline bool is_above_maximum(OutletCondition condition) {
  return condition == OutletCondition::above_maximum;
}
/// Whether its pressure counts.
inline bool is_judged(OutletCondition condition) {
  return condition != OutletCondition::broken && condition != OutletCondition::closed;
}

inline OutletCondition condition_of(const Outlet& kind,
                                    OutletState state,
                                    const Pressure& pressure) {
  switch (state) {
    case OutletState::dry:
      return OutletCondition::dry;
    case OutletState::closed:
      return OutletCondition::closed;
    case OutletState::broken:
      return OutletCondition::broken;
    case OutletState::works:
    case OutletState::below_minimum:
    case OutletState::above_maximum:
      break;
  }
  if (kind.minimum && is_below(pressure, *kind.minimum)) return OutletCondition::below_minimum;
  if (is_below(pressure, kind.rated_pressure())) return OutletCondition::below_rated;
  if (kind.maximum && is_above(pressure, *kind.maximum)) return OutletCondition::above_maximum;
  return OutletCondition::works;
}

}  // namespace hydro
