// heights.hpp: how high the two ends of every line lie. Not installed.
//
// What      A line begins as high as its supply, or as the place where it begins on its feeder. Its far
//           end rises by what it is said to, or to where it joins another line.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/plumbing.hpp"
#include "hydro/quantities/error.hpp"

#include <cstddef>
#include <vector>

namespace hydro {

/// Of the ground under one line. The datum is that of the supplies' elevations.
struct Height {
  Length inlet = {};
  Length rise =
      {};  ///< far end above the inlet; beyond the last of `elevations` it goes on to there
};

/// By line. @param supplies the elevation of each, the first one's first
std::vector<Height> heights(const Plumbing& plumbing, const std::vector<Length>& supplies);

/// Ground elevation at a distance from the inlet of a line.
Length ground_at(const Line& line, const Height& height, const Length& place);

/// Of lines that join others: where the two places do not lie equally high.
std::vector<Problem> problems_of_heights(const Plumbing& plumbing,
                                         const std::vector<Length>& supplies);

}  // namespace hydro
