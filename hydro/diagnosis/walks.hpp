// walks.hpp: sums the candidates up as a person would walk. Not installed.
#pragma once

#include "hydro/diagnosis/analysis.hpp"
#include "hydro/diagnosis/find_fault.hpp"

#include <vector>

namespace hydro {

/// Most probable first.
std::vector<WalkTo> walks(const Analysis& analysis);

}  // namespace hydro
