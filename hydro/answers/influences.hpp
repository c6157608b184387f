// influences.hpp: from the multipliers of the equations to the inputs that stand in them. Not
// installed.
//
// What      Each input of a layout stands in a few equations; how far it moves them is a slope of one
//           law at the solution. Times the multipliers (solver/adjoint.hpp) that is what it does to a
//           figure.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/answers/sensitivity.hpp"
#include "hydro/solver/adjoint.hpp"
#include "hydro/solver/sweeps.hpp"
#include "hydro/solver/tree.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace hydro {

/// How a figure follows from the states: through the weights, and beside them from what is its own.
struct FigureInStates {
  Weights weights;
  std::size_t outlet_place = nowhere;  ///< of its outlet, if it has one, and what it rises by ...
  double by_flow = 0;         ///< ... for each m3/s that flows out there at the same line pressure
  double by_device_head = 0;  ///< ... for each metre at the device at the same line pressure
  double by_held_head = 0;    ///< ... for each metre that its own regulator holds, if it does
  std::size_t supply = nowhere;  ///< of its supply, 0 the first, and what it rises by ...
  double by_supply_head = 0;     ///< ... for each metre that it brings at the same flow
  double by_filter_loss = 0;     ///< ... for each metre that the filter takes at the same flow
};

/// One influence in SI units, by the share or by the metre.
struct PlainInfluence {
  Input input;
  std::string at;
  std::string kind;
  int number;
  double value;
};

/// How an outlet answers at the same pressure in its line.
struct OutletAnswer {
  double flow_slope = 0;   ///< of its flow with the head at the device [(m3/s) / m]
  double riser_slope = 0;  ///< of the riser's loss with the flow [m / (m3/s)]
  double passed_on = 1;    ///< of a metre of head in the line, to the device [-]
};
/// @param ramp of the sweeps
OutletAnswer answer_of(const Mouth& mouth, const State& state, double ramp);

/// Of all inputs that do anything, in no order that says something.
std::vector<PlainInfluence> influences(const Solution& solution,
                                       const Tree& tree,
                                       const Sweeps& sweeps,
                                       const FigureInStates& figure);

}  // namespace hydro
