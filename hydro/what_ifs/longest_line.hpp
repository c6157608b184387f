// longest_line.hpp: how long a line can be for a spacing, and how short it must not be.
//
// What      The line is laid anew with 1, 2, 3, ... outlets, one spacing apart, and the whole layout
//           is solved with each. The longest is the last before a limit is passed (limits.hpp), once
//           it is kept: a pump may want more flow than a short line takes, and outlets may mist
//           there.
// Source    Ours; no step is skipped.
// Range     Its ground rises as steeply as now, per length; from where it is known at every outlet it
//           is that, and then level. Reaches of other pipe end with the line.
// Errors    InvalidInput as in room_on_line.hpp, and for a line that feeds or joins another, or has a
//           fault of its own; NotSolved; Stopped.
// Threads   Pure functions.
// Example   examples/22_longest_line.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/room_on_line.hpp"
#include "hydro/what_ifs/work.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// What the line must keep to, and how far it is tried.
struct LongestLineOptions {
  Limits limits = {};
  int most = 500;                       ///< outlets that are tried
  std::optional<Length> spacing = {};   ///< default the line's, of an uneven one its last
  std::optional<Length> first_at = {};  ///< default the line's
  std::optional<Outlet> outlet = {};    ///< default the line's first
};

/// The longest line that keeps to the limits, and what stops a longer one.
struct LongestLine {
  std::string line = {};
  int outlets = 0;                       ///< 0: a limit is passed at every count tried
  Length length = {};                    ///< from the inlet to the last outlet
  int fewest = 0;                        ///< outlets at which no limit is passed
  RoomEnd end = RoomEnd::most;           ///< what ends it
  std::vector<RoomAtCount> counts = {};  ///< `added` counts all outlets here, from 1 on
  std::vector<Margin> ended_by = {};     ///< limits that one more passes, or the last one tried
  std::vector<Limit> judged = {};        ///< the others were left out
};

/// The line of a layout with so many outlets. @param count from 1 on
Layout with_outlets(const Layout& layout,
                    std::string_view line,
                    const LongestLineOptions& options,
                    int count);

/// The longest of a line by its name. @throws InvalidInput, NotSolved, Stopped
LongestLine longest_line(const Layout& layout,
                         std::string_view line,
                         const LongestLineOptions& options = {},
                         const Work& work = {});

/// Length of a line that is all of one pipe.
struct LongestWithPipe {
  Pipe pipe = {};
  LongestLine longest = {};
};

/// With each of these in turn, in place of its pipe and reaches.
std::vector<LongestWithPipe> longest_by_pipe(const Layout& layout,
                                             std::string_view line,
                                             const std::vector<Pipe>& pipes,
                                             const LongestLineOptions& options = {},
                                             const Work& work = {});

}  // namespace hydro
