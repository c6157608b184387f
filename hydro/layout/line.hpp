// line.hpp: one line of pipe, with or without outlets, as it lies in the field.
//
// What      A line begins at the supply or at the far end of the line that feeds it. Its outlets
//           stand at even spacing and count from 1, from the inlet on. The ground rises evenly with
//           the distance.
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/physics/outlet.hpp"
#include "hydro/physics/pipe.hpp"
#include "hydro/physics/riser.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// The most outlets that one layout may have.
inline constexpr int most_outlets = 1'000'000;
/// The most lines that one layout may have.
inline constexpr std::size_t most_lines = 100'000;

struct Line {
  std::string name = {};
  std::string fed_by = {};  ///< the line at whose far end this one begins; empty: the supply
  Pipe pipe = {};
  std::optional<Outlet> outlet = {};    ///< none: a main or a manifold
  std::optional<int> count = {};        ///< of outlets, 1 to most_outlets
  std::optional<Length> spacing = {};   ///< from outlet to outlet
  std::optional<Length> first_at = {};  ///< from the inlet to the first outlet, default one spacing
  std::optional<Length> length = {};    ///< to the far end; default to the last outlet
  std::optional<Length> ground_rise = {};  ///< far end above near end, default 0; may be negative
  Riser riser = {};
  std::optional<double> loss_coefficient =
      {};  ///< K at the inlet, on this pipe's velocity head, default 0
  std::optional<double> outlet_loss_coefficient =
      {};  ///< K in the line at each outlet, on the velocity head arriving, default 0
  bool operator==(const Line&) const = default;

  int outlet_count() const { return count.value_or(0); }
  /// Distance of an outlet (from 1 on) from the inlet.
  Length place_of(int outlet_number) const;
  /// From the inlet to the far end.
  Length whole_length() const;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Line& line);

}  // namespace hydro
