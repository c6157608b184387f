// outlets_by_head.hpp: what befalls the outlets of a run, by the head before its inlet. Not installed.
//
// What      Each outlet of a tree has less pressure when there is less head before its run. So there
//           is one head below which it falls short, and to count those that do is to look up a list.
//           Which outlet is the weakest is known where it is the same at all heads that were tried, or
//           one of a few.
// Formula   The head at which the polynomial of an outlet's pressure meets its bound, by TOMS 748.
#pragma once

#include "hydro/solver/lanes.hpp"
#include "hydro/solver/lanes_in_part.hpp"
#include "hydro/solver/stand_in.hpp"
#include "hydro/what_ifs/befallen_in_lanes.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace hydro {

/// Of one run.
class OutletsByHead {
 public:
  OutletsByHead() = default;

  /// @return whether all of them can be told: none is dry at a head that was tried, each has a
  ///   smooth pressure that rises with the head, and few of them are the weakest anywhere
  bool learn(std::span<const OutletAtPlace> outlets, const LanesInPart::Tried& tried);

  /// Whether there is nothing to count, whatever happens.
  bool is_empty() const { return weakest_.empty(); }

  /// Adds what befalls them. @param fed heads before the run's inlet, within those tried [m]
  /// @param doubt how near a bound nothing is told [m]
  void count(const Lane& fed,
             std::size_t lanes_used,
             double doubt,
             BefallenInLanes& befallen) const;

 private:
  Interval range_{0, 0};
  // Between these heads before the run nothing befalls any of them.
  double highest_fall_ = -no_limit;
  double lowest_rise_ = no_limit;
  double least_share_ = no_limit;          // of its rating that the weakest has, at the least head
  std::vector<double> falls_below_rated_;  // falling
  std::vector<double> falls_out_of_work_;  // falling
  std::vector<double> rises_above_maximum_;  // rising
  std::vector<OutletByHead> weakest_;
};

}  // namespace hydro
