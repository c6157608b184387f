// gauge.hpp: the pressure gauge at the supply.
//
// What      It reads the pressure at its own height, before the filter or after it.
// Formula   reading = p - rho g height
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// Where it sits and how far it reads.
struct Gauge {
  std::optional<Length> height = {};      ///< above the supply's elevation, default 0
  std::optional<Pressure> range = {};     ///< the end of its scale
  std::optional<bool> after_filter = {};  ///< default before it
  bool operator==(const Gauge&) const = default;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Gauge& gauge);

}  // namespace hydro
