// supply_table.hpp: what feeds the lines, and where its pressure goes. Not installed.
#pragma once

#include "hydro/solver/solution.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"

namespace hydro {

/// Of each supply a sentence by its kind; then what the pumps do, the gauge and the filter.
/// @param before may be null: there is only what is
void write_supply(Page& page,
                  const Solution* before,
                  const Solution& after,
                  const Figures& figures);

/// The regulators at the inlets of lines; nothing if there are none that water comes to.
void write_regulators(Page& page, const Solution& solution, const Figures& figures);

/// The check valves at the inlets of lines; nothing if there are none that water comes to.
void write_check_valves(Page& page, const Solution& solution);

/// The pressure budget of the weakest outlet; nothing if no water comes to it.
void write_pressure_budget(Page& page, const Solution& solution, const Figures& figures);

}  // namespace hydro
