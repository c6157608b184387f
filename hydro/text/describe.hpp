// describe.hpp: one thing that was found, in one sentence.
//
// Accuracy  As in report.hpp.
// Threads   Pure functions.
// Example   examples/24_cheapest_remedy.cpp
#pragma once

#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/remedies.hpp"

#include <string>

namespace hydro {

/// That a limit is passed, where and by how much: "outlet 14 of row 2 falls below its rated pressure,
/// by 2 %".
std::string describe(const Margin& margin);

/// What is done, what it buys and what keeps it from being a cure, in the units of the layout.
/// @param before how the layout stands without it
std::string describe(const Remedy& remedy, const Standing& before);

}  // namespace hydro
