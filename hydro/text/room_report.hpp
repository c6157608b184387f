// room_report.hpp: room on a line and the longest line, as a sentence and a table.
//
// What      What fits and what ends it, then a row for each count that was tried: the weakest outlet,
//           its pressure and share of its rated pressure, the flow, and the limit that is nearest
//           with what is left of it; and which limits were not judged.
// Range     Of many counts the first one and the last twelve.
// Accuracy  As in report.hpp.
// Threads   Pure functions.
// Example   examples/21_room_on_a_line.cpp
#pragma once

#include "hydro/quantities/unit_system.hpp"
#include "hydro/what_ifs/longest_line.hpp"
#include "hydro/what_ifs/room_on_line.hpp"

#include <string>

namespace hydro {

std::string room_report(const Room& room, UnitSystem units);
std::string longest_line_report(const LongestLine& longest, UnitSystem units);

}  // namespace hydro
