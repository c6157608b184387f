// breaks_csv.hpp: every outlet broken in turn, one row each, for other programs.
//
// What      One row for each outlet of the layout, line by line, whether it was broken or not.
//           Quantities are numbers in SI; the unit is in the column's name. The form and its source
//           are those of csv.hpp.
// Errors    InvalidInput when a number is not finite.
// Threads   Pure function.
// Example   examples/check_line.cpp
//
// The columns:
//   line                  name of the line of the outlet that is broken
//   outlet                its number, from 1 on
//   outcome               solved, not_solved, skipped; after the last two all that follows but `why`
//                         is empty
//   why                   it was skipped or is not solved; empty where it is solved
//   escaping_m3_per_s     more than before the break
//   missing_m3_per_s      less than before, out of all outlets that are neither broken nor capped
//   inflow_m3_per_s       out of all supplies
//   supply_pressure_pa    of the first supply, at the start of the lines
//   gauge_reading_pa      of the first supply; without a gauge, before the filter
//   more_below_rated      other outlets that were not before
//   more_out_of_work      likewise: below their minimum, or dry
//   more_dry              likewise
//   more_above_maximum    likewise
//   weakest_line          where the share of the rated pressure is smallest, the broken one left out;
//   weakest_outlet        empty where there is none to judge
//   weakest_pressure_pa
//   weakest_share         of its rated pressure
// Where profiles are kept, a column follows for the pressure at each outlet of the layout, as
// `pressure_pa of row 2, outlet 7`. Columns may be added before those; those that are here stay.
#pragma once

#include "hydro/what_ifs/break_every_outlet.hpp"

#include <string>

namespace hydro {

/// @throws InvalidInput when a number is not finite.
std::string to_csv(const Breaks& breaks);

}  // namespace hydro
