// losses.hpp: what a suction or a filter takes from the head, as the inner loop uses it. Not
// installed. The formulas and their sources stand in suction.hpp and filter.hpp.
#pragma once

#include "hydro/physics/filter.hpp"
#include "hydro/physics/friction_law.hpp"
#include "hydro/physics/suction.hpp"
#include "hydro/physics/water.hpp"

namespace hydro {

/// On the square of the flow, and along a pipe.
struct Losses {
  double per_square = 0;  ///< [s2/m5]
  double length = 0;      ///< [m] of ...
  FrictionLaw friction = {};

  Loss at(double flow) const {
    const double speed = std::abs(flow);
    Loss loss{per_square * flow * speed, 2 * per_square * speed};
    if (length > 0) {
      const Loss one_metre = friction.per_metre(flow);
      loss.head += length * one_metre.head;
      loss.slope += length * one_metre.slope;
    }
    return loss;
  }
};

inline Losses losses(const Suction& suction, const WaterProperties& water) {
  if (!suction.pipe) return {};
  return {
      fitting_coefficient(suction.loss_coefficient.value_or(0), si(suction.pipe->inside_diameter)),
      si(suction.length.value()),
      FrictionLaw(*suction.pipe, water)};
}

inline Losses losses(const Filter& filter, const WaterProperties& water) {
  return {si(filter.loss) / (si(water.density) * gravity) / (si(filter.at) * si(filter.at))};
}

}  // namespace hydro
