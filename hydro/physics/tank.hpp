// tank.hpp: a tank, a drum or a pond that feeds by its own height.
//
// What      The supply's elevation is that of the tank's outlet; the water stands `level` above it.
//           With an area it can run empty (answers/drain.hpp).
// Formula   H = elevation + level
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// As it is described. A tank with upright walls has the same area at every level.
struct Tank {
  Length level = {};                    ///< of the water above the outlet
  std::optional<Length> diameter = {};  ///< of a round one, or ...
  std::optional<Area> area = {};        ///< ... of the water's surface
  bool operator==(const Tank&) const = default;

  /// None: not known.
  std::optional<Area> surface() const;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Tank& tank);

}  // namespace hydro
