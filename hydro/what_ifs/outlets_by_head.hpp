// outlets_by_head.hpp: what befalls the outlets of a run, by the head before its inlet. Not installed.
//
// What      Each outlet of a tree has less pressure when there is less head before its run. So there
//           is one head below which it falls short, and to count those that do is to look up a list.
//           Which outlet is the weakest is known where it is the same at all heads that were tried, or
//           one of a few.
// Formula   The head at which the polynomial of an outlet's pressure meets its bound, by TOMS 748.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/solver/lanes.hpp"
#include "hydro/solver/lanes_in_part.hpp"
#include "hydro/solver/stand_in.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

#include <cstddef>
#include <vector>

namespace hydro {

/// Heads at the device at which an outlet's condition changes, and what it was before [m].
struct OutletBounds {
  OutletBounds(const Outlet& kind, OutletCondition was, double held, double weight_density);

  double below_rated;    ///< below this it is
  double out_of_work;    ///< likewise
  double above_maximum;  ///< above this it is
  double per_rated;      ///< 1 by the rated pressure [1/m]
  double held;           ///< by its own regulator
  bool was_below_rated;
  bool was_out_of_work;
  bool was_dry;
  bool was_above_maximum;
};

/// Of all lanes.
struct Extremes {
  double least;
  double most;
};
Extremes extremes(const Lane& values);

/// The weakest outlet in each lane: by the share of its rating, then by the head in the line.
struct WeakestInLanes {
  Lane share = Lane::all(no_limit);
  Lane head = Lane::all(no_limit);    ///< [m]
  Lane outlet_head = Lane::all(0);    ///< at the device [m]
  Lane outlet = Lane::all(no_limit);  ///< a whole number; of equal ones the first

  void meet(std::size_t lane, double which, double its_share, double its_head, double at_device) {
    const bool is_weaker =
        its_share < share[lane] ||
        (its_share == share[lane] &&
         (its_head < head[lane] || (its_head == head[lane] && which < outlet[lane])));
    share[lane] = is_weaker ? its_share : share[lane];
    head[lane] = is_weaker ? its_head : head[lane];
    outlet_head[lane] = is_weaker ? at_device : outlet_head[lane];
    outlet[lane] = is_weaker ? which : outlet[lane];
  }
};

/// How many outlets something befalls that it had not befallen before, in each lane.
struct BefallenInLanes {
  Lane below_rated = Lane::all(0);  ///< those out of work are among them
  Lane out_of_work = Lane::all(0);
  Lane dry = Lane::all(0);
  Lane above_maximum = Lane::all(0);
  Lane is_doubtful = Lane::all(0);  ///< not 0: too near a bound to tell
  WeakestInLanes weakest = {};
};

/// Of one run.
class OutletsByHead {
 public:
  OutletsByHead() = default;

  /// An outlet and the place where it stands.
  struct AtPlace {
    std::size_t outlet;  ///< of all outlets
    std::size_t place;
  };
  /// @return whether all of them can be told: none is dry at a head that was tried, each has a
  ///   smooth pressure that rises with the head, and few of them are the weakest anywhere
  bool learn(const std::vector<AtPlace>& outlets,
             const std::vector<OutletBounds>& bounds,
             const LanesInPart::Tried& tried);

  /// Whether there is nothing to count, whatever happens.
  bool is_empty() const { return weakest_.empty(); }

  /// Adds what befalls them. @param fed heads before the run's inlet, within those tried [m]
  /// @param doubt how near a bound nothing is told [m]
  void count(const Lane& fed,
             std::size_t lanes_used,
             double doubt,
             BefallenInLanes& befallen) const;

 private:
  struct Candidate {
    std::size_t outlet;
    Chebyshev head;
    Chebyshev outlet_head;
    double per_rated;
    double held;
  };

  Range range_{0, 0};
  // Between these heads before the run nothing befalls any of them.
  double highest_fall_ = -no_limit;
  double lowest_rise_ = no_limit;
  double least_share_ = no_limit;  // of its rating that the weakest has, at the least head
  std::vector<double> falls_below_rated_;    // falling
  std::vector<double> falls_out_of_work_;    // falling
  std::vector<double> rises_above_maximum_;  // rising
  std::vector<Candidate> weakest_;
};

}  // namespace hydro
