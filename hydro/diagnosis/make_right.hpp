// make_right.hpp: what to do now about the fault that was found, and what it is worth.
//
// What      Up to four ways: go on as it is; stop for a moment, cap the outlet and go on without it;
//           stop until it is mended; mend it at once. Of each: which outlets fall short meanwhile,
//           what escapes, and how long each line has to run on afterwards, when all is mended, so
//           that no outlet has had less water than without the fault.
// Formula   extra time of a line = run_time x largest of (1 - q / q without the fault) over its
//           outlets that let out water, and not below 0; the broken outlet itself is judged nowhere
//           what escapes = flow of the broken outlets and open places less what such outlets give
//           without the fault; of a valve left open, all that the line takes
// Source    Water is flow by time. What to choose is common practice, no source: go on where no outlet
//           stops working that did not before, and no outlet is broken; else cap it where that much
//           is so then; else stop.
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
  go_on,  ///< water as it is, mend it afterwards
  cap,    ///< stop, cap the outlet, go on without it
  stop,   ///< stop until it is mended; what ran short is made up for by a whole run
  mend    ///< put it right, then go on
};

/// "cap the riser and go on".
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
