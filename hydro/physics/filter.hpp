// filter.hpp: a filter or strainer between the source and the lines.
//
// Formula   p = loss (Q / at)^2
// Source    Loss on the square of the flow: turbulent flow through openings; makers' charts of
//           screens follow it nearly (common practice, no source). A bed of sand or a cake of dirt
//           loses less than the square says at high flows.
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <vector>

namespace hydro {

/// As it is described: it takes this pressure at this flow.
struct Filter {
  Pressure loss = {};
  Flow at = {};
  bool operator==(const Filter&) const = default;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Filter& filter);

}  // namespace hydro
