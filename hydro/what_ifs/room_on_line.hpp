// room_on_line.hpp: how many more outlets a line can take, and what it is that ends it.
//
// What      Outlets are added one at a time (more_outlets.hpp) and the whole layout is solved with
//           each, its supply as it is: a pump falls as outlets are added, a held pressure does not.
//           The room is what fits before the first limit is passed (limits.hpp), on any line.
// Source    Ours; no step is skipped, since a limit need not come nearer evenly.
// Range     At most `most` are tried. Where a limit is passed as the layout is, there is no room.
// Errors    InvalidInput as in more_outlets.hpp and limits.hpp, for a `most` outside 1 to 100000, limits
//           of which none is judged, and a line to which no water comes; NotSolved at a count that is no more than one too
//           many; Stopped.
// Threads   Pure functions.
// Example   examples/21_room_on_a_line.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/more_outlets.hpp"
#include "hydro/what_ifs/work.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// Which outlets are added, what must be kept to, and how far it is tried.
struct RoomOptions {
  Limits limits = {};
  int most = 500;  ///< that are tried
  MoreOutlets more = {};
};

/// The whole layout with so many more.
struct RoomAtCount {
  int added = 0;
  std::string line = {};          ///< of the outlet with the smallest share of its rated pressure
  int outlet = 0;                 ///< its number; 0: none is judged
  Pressure pressure = {};         ///< there
  Pressure rated = {};            ///< its own
  Pressure supply_pressure = {};  ///< at the start of the lines of the first supply
  Flow inflow = {};               ///< out of all supplies together
  std::vector<Margin> margins = {};
  bool fits() const { return passed(margins).empty(); }
};

enum class RoomEnd {
  limit,     ///< one more passes a limit
  no_place,  ///< there is no place for one more
  most       ///< no more were tried
};

/// How many more outlets there is room for, and what stops the next.
struct Room {
  std::string line = {};
  int outlets = 0;                       ///< that fit
  RoomEnd end = RoomEnd::most;           ///< what ends it
  std::vector<RoomAtCount> counts = {};  ///< from 0 on; the last is too many if a limit ends it
  /// Limits that one more passes; if the layout passes some as it is, those. Else empty.
  std::vector<Margin> ended_by = {};
  std::vector<Limit> judged = {};  ///< the others were left out
  /// Whether a limit is passed with none added.
  bool fails_as_it_is() const { return outlets == 0 && counts.size() == 1 && !ended_by.empty(); }
};

/// Room on a line by its name. @throws InvalidInput, NotSolved, Stopped
Room room_on_line(const Layout& layout,
                  std::string_view line,
                  const RoomOptions& options = {},
                  const Work& work = {});

/// Room on a line that is all of another pipe.
struct RoomWithPipe {
  Pipe pipe = {};
  Room room = {};
};

/// With each of these in turn, in place of its pipe and reaches.
std::vector<RoomWithPipe> room_by_pipe(const Layout& layout,
                                       std::string_view line,
                                       const std::vector<Pipe>& pipes,
                                       const RoomOptions& options = {},
                                       const Work& work = {});

}  // namespace hydro
