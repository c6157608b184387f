// adjoint.hpp: what one figure of the settled states owes to each of their equations.
// Not installed.
//
// What      A figure F that depends on the states may rise by any input of the layout. Whatever the
//           input is, it acts through the equations of single places: head that is gained or lost
//           on the way there, flow that is drawn beside. The multipliers say what F rises by for
//           each of them. They are found by the two sweeps of a Newton step, transposed, whatever
//           the number of inputs.
// Formula   With the letters of sweeps.hpp, s = 1 / (1 + B h'), and w the weights of F on a place's
//           dH and dQ:
//             outward-in   c = w(dH) + sum of r beyond,   d = w(dQ) - h' c,   r = c + b d
//             inward-out   d = d + u(before),             u = s d
//           Then u is what F rises by for each m3/s drawn at the place, and c + b d for each metre
//           gained in the reach. Beyond a regulator that holds h' = 0, r = 0 and u = d: only a flow
//           is felt through it. The supply is one more reach.
//           Where lines join, the flows through the joints rise so that all gaps stay shut: first
//           their own multipliers are found, from the transpose of the system of loops.hpp, which is
//           the same with each way up and down exchanged; they are weights on the heads at the joints.
// Source    Ours: the sweeps, differentiated backwards step by step.
// Threads   Plain values.
#pragma once

#include <vector>

namespace hydro {

/// How a figure rises with the states.
struct Weights {
  std::vector<double> heads;         ///< by place: with the head in the line [F/m]
  std::vector<double> flows;         ///< by place: with the flow that arrives [F/(m3/s)]
  std::vector<double> source_heads;  ///< by source: with the head at the start of its lines [F/m]
};

/// How a figure rises with what the equations leave.
struct Multipliers {
  /// By place: with head that is gained in the reach; where a regulator holds there, with the head
  /// that it holds [F/m].
  std::vector<double> heads;
  std::vector<double> drawn;         ///< by place: with flow that is drawn beside [F/(m3/s)]
  std::vector<double> source_heads;  ///< by source: with the head of its law; 0 where it is shut
  /// False where the figure hangs on water that stands still on all of a way round, or from supply
  /// to supply: what flows there goes with a root of what drives it.
  bool has_slope = true;
};

}  // namespace hydro
