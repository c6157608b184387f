// detectable.hpp: which faults one gauge, meter or bucket can see at all.
//
// What      Before anything is read: what one reading would show of each candidate, against what it
//           shows without a fault.
// Formula   standard errors = |shown with - shown without| / deviation of the reading, its gauge's
//           bias and the uncertain inputs taken in (find_fault.hpp); seen from 2 on
// Range     The median size of each fault (candidate.hpp): smaller ones are seen less.
// Errors    As find_fault.hpp. A candidate that is not solved is left out.
// Threads   Pure function; shares candidates among work.threads, whose number changes nothing.
#pragma once

#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/what_ifs/work.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// What one gauge shows of one candidate.
struct Detectable {
  Candidate candidate = {};
  std::optional<Pressure> pressure_change = {};  ///< that it shows more, or ...
  std::optional<Flow> flow_change = {};          ///< ... of a flow
  std::optional<RotationalSpeed> speed_change = {};
  double standard_errors = 0;  ///< 0 or more
  bool seen = false;           ///< 2 or more
};

/// Of every candidate at its median size, in the order of candidates().
/// @param reading its place and errors; the figure does not count
/// @throws InvalidInput, NotSolved, Stopped
std::vector<Detectable> detectable(const Layout& layout,
                                   const Reading& reading,
                                   const FindFaultOptions& options = {},
                                   const Work& work = {});

}  // namespace hydro
