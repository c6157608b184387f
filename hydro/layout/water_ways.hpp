// water_ways.hpp: which parts of the lines water can come to, whatever the pressures. Not installed.
//
// What      Water comes from the supplies through open inlets, and from a line to another that it joins,
//           either way; it goes back through an inlet unless a check valve or a regulator is there. A
//           line that is open to the air has a part before that place and one beyond it, between
//           which no water passes.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/plumbing.hpp"

#include <cstddef>
#include <unordered_map>
#include <vector>

namespace hydro {

/// Places by line.
using OpenEnds = std::unordered_map<std::size_t, Length>;

/// By line.
struct WaterWays {
  std::vector<bool> near;    ///< to its inlet, and on to where it is open to the air, if it is
  std::vector<bool> beyond;  ///< to the part beyond that place
  std::vector<bool> inlet;  ///< through its inlet: it is not closed, and its feeder has water there

  /// Whether to a place on a line; at the one where it is open, to the part beyond.
  bool reach(std::size_t line, const Length& place, const OpenEnds& open_ends) const;
};

/// @param closed by line: whether its inlet is; empty: none is
/// @param freely by line: whether water goes back through its inlet
WaterWays water_ways(const Plumbing& plumbing,
                     const std::vector<bool>& closed,
                     const std::vector<bool>& freely,
                     const OpenEnds& open_ends);

}  // namespace hydro
