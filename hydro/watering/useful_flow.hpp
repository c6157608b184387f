// useful_flow.hpp: what comes out of whole outlets, and what is lost. Not installed.
#pragma once

#include "hydro/solver/solution.hpp"

#include <cstddef>

namespace hydro {

/// Out of one outlet, by its index, where it is of use to a plant [m3/s].
inline double useful_flow(const LineSolution& line, std::size_t i) {
  return line.state[i] == OutletState::broken ? 0 : line.flow.si()[i];
}

/// Out of all whole outlets.
inline Flow useful_flow(const Solution& solution) {
  double flow = 0;
  for (const LineSolution& line : solution.lines())
    for (std::size_t i = 0; i < line.state.size(); ++i) flow += useful_flow(line, i);
  return Flow::from_value(flow);
}

/// Out of broken outlets, leaks and open ends.
inline Flow lost_flow(const Solution& solution) {
  double flow = 0;
  for (const LineSolution& line : solution.lines()) {
    for (std::size_t i = 0; i < line.state.size(); ++i)
      flow += line.flow.si()[i] - useful_flow(line, i);
    for (const Opening& opening : line.openings) flow += si(opening.flow);
  }
  return Flow::from_value(flow);
}

}  // namespace hydro
