// supply.hpp: what feeds the lines: a pressure held at the start of every line that nothing feeds.
//
// What      A held pressure is static (the gauge's reading where the water hardly moves). A real
//           pump would fall along its curve when more water leaves.
// Range     0 psi is a pond whose surface lies at `elevation`.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// The supply as it is described.
struct Supply {
  Pressure pressure = {};                ///< held, gauge
  std::optional<Length> elevation = {};  ///< of the place where it is held, default 0
  bool operator==(const Supply&) const = default;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Supply& supply);

}  // namespace hydro
