// outlet_table.hpp: the outlets of a line as a table to walk the row with. Not installed.
#pragma once

#include "hydro/solver/solution.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/outlet_kinds.hpp"
#include "hydro/text/page.hpp"

#include <cstddef>

namespace hydro {

/// Nothing for a line without outlets. @param before may be null: there is only what is
void write_outlet_table(Page& page,
                        const Solution* before,
                        const Solution& after,
                        const OutletKinds& kinds,
                        const Figures& figures,
                        std::size_t line_index);

}  // namespace hydro
