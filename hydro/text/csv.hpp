// csv.hpp: every outlet of a solved layout as one row of a table, for other programs.
//
// What      One row for each outlet, in the order of the lines and from the inlet on. Whatever the
//           units of the site, quantities are numbers in SI; the unit is in the column's name.
// Source    RFC 4180: comma, double quote where needed, lines that end in CR LF, a header.
// Accuracy  Numbers are the shortest decimals that read back to the same double, with a point
//           whatever the locale.
// Range     Names are written byte for byte. (A spreadsheet may take one that begins with = for a
//           formula.)
// Errors    InvalidInput when a number of the solution is not finite.
// Threads   Pure functions.
// Example   examples/check_line.cpp
//
// The columns:
//   line                 name of the line
//   outlet               its number, from 1 on
//   kind                 name of the outlet's kind
//   rated_pressure_pa    what it is judged by
//   rated_flow_m3_per_s  at that pressure, when it is whole
//   distance_m           from the line's inlet
//   pressure_pa          at the device, gauge
//   line_pressure_pa     in the pipe below it, gauge
//   flow_m3_per_s        out of the outlet
//   velocity_m_per_s     in the pipe on the inlet's side of the outlet; below 0 where the water runs
//                        towards the inlet
//   state                works, below_rated, below_minimum, above_maximum, dry, no_water (cut off),
//                        shut (its line is), capped, broken: the worst that is true of it
// Of two solutions, the last five are followed by the same five of the layout without its faults,
// as before_pressure_pa and so on. Columns may be added; those that are here stay.
#pragma once

#include "hydro/solver/solution.hpp"

#include <string>

namespace hydro {

/// One layout as it is. @throws InvalidInput when a number is not finite.
std::string to_csv(const Solution& solution);

/// The same layout without and with its faults. @throws InvalidInput likewise, or when the two do
/// not have the same lines and outlets.
std::string to_csv(const Solution& before, const Solution& after);

}  // namespace hydro
