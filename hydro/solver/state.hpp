// state.hpp: what is sought at every place. Not installed.
#pragma once

#include "hydro/physics/friction_law.hpp"

namespace hydro {

struct State {
  // What is sought.
  double flow = 0;         ///< arriving through the reach [m3/s]
  double head = 0;         ///< pressure head in the line [m]
  double outlet_flow = 0;  ///< on the outlet's curve ...
  double outlet_head = 0;  ///< ... with this pressure head at the device [m]; both 0: dry

  // What a sweep leaves for the next.
  double wall_slope = unknown_slope;   ///< of the friction per metre of the reach, at `flow`
  double riser_slope = unknown_slope;  ///< of the friction per metre of the riser, at `outlet_flow`
  double energy_gap = 0;               ///< e
  double answer = 0;                   ///< a
  double answer_slope = 0;             ///< b
  double outlet_gap = 0;               ///< o
  double outlet_slope = 0;             ///< g
};

}  // namespace hydro
