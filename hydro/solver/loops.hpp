// loops.hpp: the small system of equations that joints leave when the trees are eliminated.
// Not installed.
//
// What      On trees alone every correction follows from the heads of the sources (sweeps.hpp). A
//           joint adds one unknown, a flow x that leaves one run's far end and enters the other's,
//           and one equation: the heads at both are the same. An inlet that is shut adds its head,
//           and that nothing flows in. A flow taken from the far end of a run is felt only along the
//           way from there to its source, so only those runs are looked at: the stretches.
// Formula   With the share s = 1 / (1 + B h') of each place (sweeps.hpp), a stretch from its inlet to
//           its far end
//             is asked for   up x,  up = product of all s         where x is taken at its far end
//             rises by       down dH + rise - loss x,  down = up  where its inlet rises by dH
//           with rise what it corrects by itself, and loss = sum of h' s (product of the s beyond)^2.
//           Beyond a regulator that holds no rise is felt: down = 0.
//           A supply's head falls by r x, with r = h' / (1 + B h') of the supply.
// Source    Ours: block elimination; two-ports in a chain. Few joints leave a small dense system of
//           their flows, many a sparse one of the heads and flows at the ends of all stretches.
#pragma once

#include "hydro/solver/tree.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace hydro {

/// A two-way run as seen from its ends.
struct Stretch {
  std::int32_t feeder;  ///< stretch at whose far end it begins, or none; each comes after its own
  std::int32_t source;  ///< where it begins, if nothing feeds it
  double up = 1;
  double down = 1;
  double rise = 0;  ///< [m]
  double loss = 0;  ///< [m / (m3/s)]
};

/// A source as its tree feels it.
struct Root {
  bool is_shut = false;   ///< its head is sought, and nothing flows out
  double resistance = 0;  ///< r [m / (m3/s)]
  double rise = 0;        ///< that it makes by itself [m]
  double drawn = 0;  ///< of one that is shut: what flows, as corrected by the trees alone [m3/s]
  double slope = 0;  ///< of one that is shut: B [(m3/s) / m]
};

/// A joint between the far ends of two stretches.
struct Closure {
  std::int32_t from;
  std::int32_t to;
  double gap;  ///< of the heads: from less to [m]
};

/// What the joints correct.
struct Balance {
  std::vector<double> joint_rises;   ///< of the flow through each joint, from its one end on [m3/s]
  std::vector<double> taken;         ///< at the far end of each stretch [m3/s]
  std::vector<double> source_rises;  ///< of the head of sources that are shut; else 0 [m]
  std::vector<double> asked;         ///< of each source, beside what its tree asks for [m3/s]
};

/// @param least_loss [m / (m3/s)] of a joint, where all water stands still and nothing has a slope;
///   more of it is taken where that leaves the system singular to rounding
Balance balance(const std::vector<Stretch>& stretches,
                const std::vector<Root>& roots,
                const std::vector<Closure>& closures,
                double least_loss);

/// The two ways, each for any number of joints.
Balance balance_densely(const std::vector<Stretch>& stretches,
                        const std::vector<Root>& roots,
                        const std::vector<Closure>& closures,
                        double least_loss);
Balance balance_sparsely(const std::vector<Stretch>& stretches,
                         const std::vector<Root>& roots,
                         const std::vector<Closure>& closures,
                         double least_loss);

}  // namespace hydro
