// comparison.hpp: what a fault does to the rest: the same layout solved before and after.
//
// What      What changes at every outlet; the outlets that fall below their rated or lowest
//           pressure because of it; the water that escapes, the water that the other outlets miss,
//           and what the supply gives.
// Range     With a held pressure the supply does not feel the fault; a real pump would fall.
// Errors    InvalidInput when the two do not have the same lines and outlets.
// Threads   Pure function.
#pragma once

#include "hydro/answers/check.hpp"
#include "hydro/quantities/series.hpp"
#include "hydro/solver/solution.hpp"

#include <string>
#include <vector>

namespace hydro {

/// What changed at the outlets of one line, after less before; index 0 is outlet 1.
struct LineChange {
  std::string line;
  Series<Pressure> pressure;       ///< at the device
  Series<Pressure> line_pressure;  ///< in the pipe
  Series<Flow> flow;
};

/// What changed, line by line and in sum.
struct Comparison {
  std::vector<LineChange> lines;                  ///< in the order of the layout
  std::vector<BelowRated> newly_below_rated;      ///< pressures as they are after
  std::vector<BelowMinimum> newly_below_minimum;  ///< likewise
  std::vector<DryOutlet> newly_dry;               ///< likewise
  Flow escaping;  ///< more than before, out of broken outlets, leaks and open ends
  Flow missing;   ///< less than before, out of all outlets that are neither broken nor capped after
  Flow inflow_before;  ///< out of the supply
  Flow inflow_after;
  Pressure supply_before;
  Pressure supply_after;
};

/// What differs. @throws InvalidInput where the two do not have the same lines and outlets
Comparison compare(const Solution& before, const Solution& after);

}  // namespace hydro
