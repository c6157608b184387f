// discharge.hpp: what an outlet on its riser lets out at a head in the line. Not installed.
//
// Formula   The head P at the device on P + h(q(P)) = H - height, h the loss in the riser. The left
//           side rises and is nearly straight: Newton's steps, and halves of what is left between
//           where they lead out of it, as they may at a bend of the outlet's curve.
// Accuracy  To the last place of H, or not a number.
#pragma once

#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hydro {

struct DischargeAtHead {
  double flow = 0;         ///< [m3/s]
  double slope = 0;        ///< of the flow with the head in the line
  double outlet_head = 0;  ///< P; 0 where it is dry [m]
};

/// @param factor of the outlet's coefficient
inline DischargeAtHead discharge(const Mouth& mouth, double factor, double head) {
  const double available = head - mouth.height;
  if (!(available > 0)) return {};
  OutletLaw law = mouth.law;
  law.coefficient *= factor;
  law.inverse_coefficient /= factor;
  const auto along = [&](double P, double flow) { return law.exponent_at(P) * flow / P; };
  if (!mouth.has_riser) {
    const double flow = law.flow(available);
    return {flow, along(available, flow), available};
  }
  constexpr int most_steps = 100;
  constexpr double last_place = 2 * std::numeric_limits<double>::epsilon();
  constexpr double not_found = std::numeric_limits<double>::quiet_NaN();
  double low = 0, high = available, P = available;
  for (int step = 0;; ++step) {
    const double flow = law.flow(P);
    double wall_slope = unknown_slope;
    const Loss riser = mouth.riser.loss(flow, wall_slope);
    const double rises = along(P, flow);
    const double steepness = 1 + riser.slope * rises;
    const double gap = available - P - riser.head;
    if (std::abs(gap) <= last_place * available) return {flow, rises / steepness, P};
    if (step == most_steps) return {not_found, not_found, not_found};
    (gap > 0 ? low : high) = P;
    P += gap / steepness;
    if (!(P > low && P < high)) P = low + (high - low) / 2;
  }
}

}  // namespace hydro
