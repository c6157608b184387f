// riser.hpp: the upright pipe between a line and its outlet.
//
// What      A height alone lifts the water without loss. With a bore it is a real length of pipe
//           with its friction and a loss in its fittings, and its mouth is known if the outlet
//           breaks off.
// Formula   H(line) - z - height = P(outlet) + friction over the height + K V^2 / (2 g)
//           (friction.hpp)
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values.
#pragma once

#include "hydro/physics/pipe.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// How high it is and, with its bore and wall, what it takes from the water.
struct Riser {
  Length height = {};                          ///< of the outlet above the line
  std::optional<Length> inside_diameter = {};  ///< with exactly one of the three walls of Pipe
  std::optional<double> hazen_williams = {};
  std::optional<Length> roughness = {};
  std::optional<double> darcy_factor = {};
  std::optional<double> loss_coefficient = {};  ///< K on the riser's velocity head, default 0
  bool operator==(const Riser&) const = default;

  /// The riser as a pipe, where its bore is known.
  std::optional<Pipe> pipe() const;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Riser& riser);

}  // namespace hydro
