// cautions.hpp: what every report ends with. Not installed.
#pragma once

#include "hydro/text/page.hpp"

namespace hydro {

void write_cautions(Page& page);

}  // namespace hydro
