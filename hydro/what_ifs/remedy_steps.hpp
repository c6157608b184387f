// remedy_steps.hpp: what could be done for a layout, as steps that are tried one after another. Not
// installed. What each kind does stands in remedies.hpp.
//
// Threads   A step may be taken from any thread.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/what_ifs/remedies.hpp"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// A layout changed, and solved.
struct RemedyStep {
  std::string deed;  ///< "Lay row 1 in 2 in PVC Class 160"
  Solution solution;
  std::optional<double> cost;  ///< money; none: a price is missing
};

/// Steps of one kind, the first being the least that can be done.
struct RemedyLadder {
  RemedyKind kind;
  std::vector<std::string> lines;
  std::size_t steps;
  std::function<RemedyStep(std::size_t)> step;
};

/// @param before the layout as it is; it must outlive what is returned, and so must the options
std::vector<RemedyLadder> ladders_of_remedies(const Solution& before, const RemedyOptions& options);

}  // namespace hydro
