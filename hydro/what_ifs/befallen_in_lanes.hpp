// befallen_in_lanes.hpp: what befalls outlets that had not befallen them before, counted in all lanes
// at once. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/solver/lanes.hpp"
#include "hydro/solver/stand_in.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

#include <cstddef>
#include <span>

namespace hydro {

/// Heads at the device at which an outlet becomes what it was not before [m]; out of reach where it
/// was so.
struct OutletBounds {
  OutletBounds(const Outlet& kind, OutletCondition was, double held, double weight_density);

  double below_rated;    ///< below this
  double out_of_work;    ///< likewise
  double dry;            ///< likewise
  double above_maximum;  ///< above this
  double per_rated;      ///< 1 by the rated pressure [1/m]
  double held;           ///< by its own regulator
};

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

/// How many outlets something befalls, in each lane.
struct BefallenInLanes {
  Lane below_rated = Lane::all(0);  ///< those out of work are among them
  Lane out_of_work = Lane::all(0);
  Lane dry = Lane::all(0);
  Lane above_maximum = Lane::all(0);
  Lane is_doubtful = Lane::all(0);  ///< not 0: too near a bound to tell
  WeakestInLanes weakest = {};
};

struct OutletAtPlace {
  std::size_t outlet;  ///< of all outlets
  std::size_t place;
  OutletBounds bounds;
};

/// Adds what befalls outlets whose heads are in the block. @param outlets in the order of their
/// places, as are `broken`, which are left out in their lanes
void count_at_places(std::span<const OutletAtPlace> outlets,
                     std::span<const Differences::Replaced> broken,
                     const LaneBlock& block,
                     BefallenInLanes& befallen);

/// An outlet whose heads are known by the head before its run.
struct OutletByHead {
  std::size_t outlet;     ///< of all outlets
  Chebyshev head;         ///< in the line [m]
  Chebyshev outlet_head;  ///< without its own regulator [m]
  double per_rated;
  double held;
};

/// @param fed heads before the run [m] @param range for which the polynomials were made
void meet_by_head(const OutletByHead& outlet,
                  const Interval& range,
                  const Lane& fed,
                  WeakestInLanes& weakest);

/// Whether all heads are between these two, and all shares below that one.
bool are_between(
    const Lane& heads, double low, double high, const Lane& shares, double least_share);

}  // namespace hydro
