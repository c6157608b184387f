// stand_in.hpp: a smooth law, tried at many points, as a polynomial that is checked between them.
// Not installed.
//
// Formula   Chebyshev's polynomials through 16 of the 32 points; the other 16, between and at the
//           lower end, show how well it is met there. Trailing terms that say nothing are left out.
// Source    Trefethen, Approximation Theory and Approximation Practice, ch. 2 and 3: points of the
//           first kind, coefficients by the discrete cosine transform (from memory).
#pragma once

#include "hydro/solver/lanes.hpp"

#include <array>
#include <optional>
#include <vector>

namespace hydro {

/// For which something is to be known: of heads before the inlet of a run [m], or of flows [m3/s].
struct Interval {
  double least;
  double most;

  double middle() const { return (least + most) / 2; }
  double half() const { return (most - least) / 2; }
  /// -1 at the least, 1 at the most.
  double place_of(double value) const { return (value - middle()) / half(); }
  /// At points_to_try().
  Lane to_try() const;
};

/// Coefficients of Chebyshev's polynomials.
using Chebyshev = std::vector<double>;

/// The 32 points, one a lane, falling: those of even lanes are gone through, the others checked.
const Lane& points_to_try();

/// @param values at those points
/// @param tolerance of the largest of them, or of `scale` if that is more
/// @return nothing where it does not meet them all
std::optional<Chebyshev> through(const Lane& values, double tolerance, double scale = 0);

/// @param place -1 to 1
double value_at(const Chebyshev& polynomial, double place);

/// What a run and all beyond it draw, and the head at its far end, by the head before its inlet.
struct StandIn {
  Interval range{0, 0};
  Chebyshev flow = {};      ///< [m3/s]; empty: nothing stands in for this run
  Chebyshev end_head = {};  ///< [m]
};

/// What all the rest has for a run, by the flow that it draws.
struct Offer {
  Interval range{0, 0};
  Chebyshev head = {};         ///< before its inlet [m]; empty: not known
  Chebyshev feeder_flow = {};  ///< into its feeder, or out of its source [m3/s]
};

}  // namespace hydro
