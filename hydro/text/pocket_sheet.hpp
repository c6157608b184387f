// pocket_sheet.hpp: one short sheet for each watering set, to carry along the rows.
//
// What      What the gauge should read and at which speed, so that every outlet has its rated
//           pressure; the first, middle and last outlet of each row, with the time in which it
//           fills a bucket; and for each head that breaks off what the gauge falls to and which
//           heads stall (fall under the pressure at which they work) at unchanged speed.
// Accuracy  As in report.hpp. The middle outlet of n is (n + 1) / 2, rounded down. Where the breaks
//           would not fit, neighbours are taken together, "at most" before what they stall.
// Range     40 lines of 60 columns. The layout is taken as sound: its faults are left out. A break
//           is a riser sheared near its foot (fault.hpp). Heads without a minimum do not stall;
//           risers whose bore is not known, and lines with more than 60 outlets, are not broken. A
//           supply that cannot be set is taken as it is.
// Errors    NotSolved; InvalidInput for a set in which no outlet is open.
// Threads   Pure functions.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/unit_system.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// One for each set of the layout, in its order; of a layout without sets one for all lines.
/// @param units default those of the site
std::vector<std::string> pocket_sheets(const Layout& layout, std::optional<UnitSystem> units = {});

}  // namespace hydro
