// priced_pipe.hpp: what pipe costs.
//
// What      Money is a plain number, in whatever currency the caller reckons, the same one
//           throughout. A price is for a length, as pipe is sold: 14.20 for 20 ft.
// Formula   cost = amount x length / per; no rounding to whole pieces
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/physics/pipe.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// So much money for such a length.
struct Price {
  double amount = 0;          ///< money, 0 to 1e9
  Length per = 1 * units::m;  ///< 1 mm to 10 km
  bool operator==(const Price&) const = default;
};

/// Money for this length.
double cost(const Price& price, const Length& length);

/// A pipe that can be had.
struct PricedPipe {
  Pipe pipe = {};
  std::optional<Price> price = {};
  bool operator==(const PricedPipe&) const = default;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const PricedPipe& pipe);

}  // namespace hydro
