// findings.hpp: what is wrong with a solved layout, in sentences. Not installed.
#pragma once

#include "hydro/answers/check.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/outlet_kinds.hpp"
#include "hydro/text/page.hpp"

namespace hydro {

/// Outlets line by line, the worst first; then what is wrong with the pipes.
void write_findings(Page& page,
                    const Solution& solution,
                    const Check& check,
                    const OutletKinds& kinds,
                    const Figures& figures);

}  // namespace hydro
