// make_right.hpp: what to do now about the fault that was found, and what it is worth.
//
// What      The ways that there are: water on as it is; stop for a moment, cap the outlet and water on
//           without it; stop until it is mended; mend it at once. Of each: which outlets fall short
//           meanwhile, what escapes, and how long each line has to run on afterwards, when all is
//           mended, so that no outlet has had less water than without the fault.
// Formula   extra time of a line = run_time x the largest of (1 - q / q without the fault) over its
//           outlets, and not below 0; the faulty outlet itself is left out
//           escaping = flow of broken outlets, of open places and of lines that should be shut, less
//           that without the fault
// Source    Water is flow by time. Which way to choose is common practice, no source: what a hand
//           mends in minutes (a valve, an end, the throttle, a filter) is mended; else one waters on
//           where nothing escapes and no outlet stops working that did before; else the outlet is
//           capped where then none does; else one stops.
// Range     Steady flow; filling and draining of lines are left out.
// Errors    InvalidInput when run_time is out of its interval, or the layout cannot have the fault;
//           NotSolved.
// Threads   Pure function.
// Example   examples/find_fault.cpp
#pragma once

#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// What may be done when a fault is found.
enum class Deed {
  go_on,  ///< mend it afterwards
  cap,    ///< stop, cap the outlet, water on without it
  stop,   ///< until it is mended
  mend    ///< now
};

/// "cap the outlet and water on".
std::string_view words_of(Deed deed);

/// How long a line has to run on.
struct ExtraTime {
  std::string line = {};
  Time time = {};  ///< 0 or more
  int outlet = 0;  ///< the one that had least of its water, from 1 on; 0: none had less
};

/// One way to make it right, and what it is worth.
struct WayOn {
  Deed deed = Deed::go_on;
  std::vector<OutletNumber> below_rated = {};  ///< that are not without the fault
  std::vector<OutletNumber> out_of_work = {};  ///< below the minimum, or dry; likewise
  Flow escaping = {};                          ///< lost meanwhile
  std::vector<ExtraTime> extra = {};           ///< of each line with outlets that runs
};

/// All ways, in the order of Deed.
struct MakeRight {
  FoundFault found = {};
  Time run_time = {};
  std::vector<WayOn> ways = {};
  std::size_t best = 0;  ///< index of the one to choose
};

/// How long it waters.
struct MakeRightOptions {
  Time run_time = 1 * units::h;  ///< that the fault lasts, above 0
};

/// @param layout without the fault
/// @throws InvalidInput, NotSolved
MakeRight make_right(const Layout& layout,
                     const FoundFault& found,
                     const MakeRightOptions& options = {});

}  // namespace hydro
