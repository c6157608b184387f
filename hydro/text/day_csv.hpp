// day_csv.hpp: the watering day as a table, for other programs.
//
// What      One row for each turn, in the order of the day. Whatever the units of the site,
//           quantities are numbers in SI; the unit is in the column's name. A cell is empty where
//           something is not known.
// Source    RFC 4180, as in csv.hpp.
// Accuracy  As in csv.hpp.
// Errors    InvalidInput when a number is not finite.
// Threads   Pure function.
// Example   examples/plan_day.cpp
//
// The columns:
//   turn                 from 1 on
//   sets                 that run, with "; " between them
//   fill_from_s          since midnight, like the next two
//   start_s              the lines are full
//   stop_s
//   speed_r_per_s        of the engine; empty: a held pressure, or it cannot be set
//   pressure_pa          before the filter
//   gauge_reading_pa
//   flow_m3_per_s        out of all supplies
//   fill_m3              into lines that were empty
//   let_out_m3           by whole outlets
//   lost_m3              through breaks, leaks and open ends
//   water_energy_j
//   shaft_energy_j
#pragma once

#include "hydro/watering/day_plan.hpp"

#include <string>

namespace hydro {

/// @throws InvalidInput when a number is not finite.
std::string to_csv(const DayPlan& plan);

}  // namespace hydro
