// json.hpp: all that is known of a solved layout, for other programs.
//
// What      One object. Its members are named as the fields of the library; quantities are numbers
//           in SI: lengths and heads in m, pressures in Pa (gauge unless said), flows in m3/s,
//           velocities in m/s, powers in W, speeds of pumps in revolutions per second. Optional members that were not given are null.
// Source    RFC 8259, written by nlohmann/json.
// Accuracy  Numbers are decimals that read back to the same double, with a point whatever the
//           locale. Nothing is rounded.
// Range     What is not UTF-8 in a name is replaced by U+FFFD.
// Errors    InvalidInput when a number of the solution is not finite.
// Threads   Pure functions.
// Example   examples/check_line.cpp
//
// The members. The number in "format" rises when one of them changes its meaning or goes away;
// members may be added without. [] is a list; "of outlets" says that it has one entry for each
// outlet of the line, outlet 1 first.
//   format                 "hydro solution 1"
//   site                   name of the site
//   supply                 the first one: {name: ""; pressure: at the start of the lines; elevation;
//                          inflow: out of the supply, below 0 into it; held_shut: true where
//                          other supplies hold its check valve shut; source: "pressure" (held),
//                          "pump", "tank", "hydrant"; source_pressure: before the filter;
//                          gauge_reading, filter_loss, suction_loss, npsh_available;
//                          pumps[]: one or two, of a pump}
//     pumps[]              {flow, head, speed; range: "unknown", "below_least_flow", "inside",
//                          "above_most_flow"; least_flow, most_flow: at this speed; water_power,
//                          efficiency [-], shaft_power, npsh_required}
//   further_supplies[]     as supply, each with its name
//   sets[]                 {name; lines[]: names}
//   running_sets[]         names; none: no set was chosen
//   water                  {density [kg/m3], kinematic_viscosity [m2/s], vapour_pressure: absolute}
//   outlet_kinds[]         {name; rated, minimum, maximum: pressures; rated_flow: at the rated
//                          pressure}
//   lines[]                in the order of the layout:
//     name, fed_by         fed_by is "" where the first supply feeds it, the name of a further one
//                          where that does
//     joins, joins_at      the line that its far end meets, "" where it is closed; the distance
//                          along that line, or null
//     inflow, inlet_velocity, inlet_pressure, end_pressure
//                          inflow and velocity: through its inlet, below 0 where water runs out of it
//     end_flow             out of its far end into the line that it joins, below 0 into this one
//     shut                 true or false: on purpose, by valves or by the sets that run
//     inlet_shut           true or false: nothing passes its inlet, whatever the pressures
//     check_valve          "open", or "shut" by the pressure beyond it; null: it has none, or no
//                          water comes
//     regulator            {state: "holding", "open", "shut", "stuck_open"; pressure: beyond it;
//                          drop}, or null: it has none, or no water comes
//     pipes[]              {name; start, end: distances; highest_velocity, lowest_pressure,
//                          highest_pressure}: the line's first reaches and its pipe
//     openings[]           {kind of the fault; distance, line_pressure, flow that escapes}: leaks
//                          and open ends. A cut that water comes to from both sides has two, the
//                          one of the part before it, on the inlet's side, first
//     kind[]               of outlets: index into outlet_kinds, from 0 on
//     distance[]           of outlets: from the inlet
//     pressure[]           of outlets: at the device
//     line_pressure[]      of outlets: in the pipe below
//     flow[], velocity[]   of outlets: out of the outlet; in the pipe on the inlet's side of it,
//                          below 0 where the water runs towards the inlet
//     state[]              of outlets: "works", "below_rated", "below_minimum", "above_maximum",
//                          "dry", "no_water" (cut off), "shut" (its line is), "capped",
//                          "broken": the worst that is true of it
//   faults[]               {line: "" of a supply; supply: name of the further one that it is of,
//                          or ""; outlet; kind: as in description files; description: one sentence
//                          with the values used}
//   check                  what check() finds with its defaults:
//     every_outlet_serves  true or false
//     below_rated[]        {line, outlet, pressure, rated}
//     below_minimum[]      {line, outlet, pressure, minimum}
//     above_maximum[]      {line, outlet, pressure, maximum}
//     dry[]                {line, outlet, line_pressure}
//     variations[]         {line: "" for all lines; outlet_name; outlets: how many; pressure, flow:
//                          variations [-]; too_wide: true or false}
//     fast_water[]         {line, velocity}
//     below_atmosphere[]           {line, pressure; column_separates: true or false}
//     over_rating[]        {line, pipe_name, pressure, rating: at the water's temperature}
//     supply_limits[]      "top_speed", "power", "least_flow", "most_flow", "suction",
//                          "gauge_range": those that are passed
//     further_supply_limits[]   likewise, a list for each further supply
//     lifts_no_water, all_is_shut   true or false
//   pressure_budget        of the weakest outlet, or null: there is none that water comes
//                          to, or the equations are not met
//                          {line, outlet; left: at the device; rated;
//                          entries[]: {part: "suction", "pump", "source", "filter", "line", "riser";
//                          line: its name; gain, rise, loss, regulator, left: pressures}}
//   uniformity[]           of the flows, groups as in variations but with dry outlets: {line;
//                          outlet_name; outlets: how many; mean, least, low_quarter: flows;
//                          christiansen, distribution, statistical: CU, DU, Us [%], the last null
//                          of one outlet}
//   notes[]                sentences: where a law is used outside its validated range
//   assumptions[]          sentences, in the units of the site: what was not given
//   residuals              {mass, energy, outlet: shares of their scales [-]; steps; last_resort}
//   before                 the layout without its faults: all of the above but the format; null
//                          when one solution is written
//   comparison             what compare() finds, changes being after less before; null likewise:
//     lines[]              {line; pressure[], line_pressure[], flow[]: changes, of outlets}
//     newly_below_rated[], newly_below_minimum[], newly_dry[]    as under check
//     escaping, missing, inflow_before, inflow_after: out of all supplies together;
//     supply_before, supply_after: pressures of the first
#pragma once

#include "hydro/solver/solution.hpp"

#include <string>

namespace hydro {

/// One layout as it is. @throws InvalidInput when a number is not finite.
std::string to_json(const Solution& solution);

/// The same layout without and with its faults. @throws InvalidInput likewise, or when the two do
/// not have the same lines and outlets.
std::string to_json(const Solution& before, const Solution& after);

}  // namespace hydro
