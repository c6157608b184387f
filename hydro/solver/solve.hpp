// solve.hpp: pressure and flow everywhere, from a layout.
//
// What      Steady flow of water in full pipes. Velocity head is neglected in lines and paid where
//           water leaves an open riser.
// Formula   mass     flow arriving = outlet's flow + flows going on        at every place
//           energy   H(before) - H(here) = h(Q)                            in every reach
//           outlet   H - z - height = P + riser's loss, q on its curve     at every outlet
//           joint    H(far end of a line) = H(where it joins another)      at every one
//           gate     Q >= 0, shut only if H(beyond) >= H(before)           check valves, in loops
//           H = z + p / (rho g), g = 9.80665 m/s2; h in friction.hpp, curves in outlet.hpp
// Source    Conservation of mass and of energy; the method is ours (solver/sweeps.hpp).
// Accuracy  The three residuals are at most 1e-12 of their scales (Residuals), or NotSolved is
//           thrown. Below 1e-13 of the head scale an outlet's curve is straight.
//           A gate's flow or head may have the wrong sign by 1e-11 of its scale.
// Errors    NotSolved. Anything wrong with the layout was refused when it was made.
// Threads   Pure function. The same build gives the same bits.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/solver/solution.hpp"

namespace hydro {

/// How long to try.
struct SolveOptions {
  int newton_steps = 60;  ///< at most; then the last resort, with as many for each of its ramps
};

/// @throws NotSolved, InvalidInput for options.newton_steps outside 0 to 10000
Solution solve(const Layout& layout, const SolveOptions& options = {});

}  // namespace hydro
