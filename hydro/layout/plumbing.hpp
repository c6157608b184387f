// plumbing.hpp: how the lines hang together, and which of them the sets open. Not installed.
//
// What      What follows from the lines, the sets and the names of supplies alone: found once, and
//           shared by all layouts that differ in a supply, faults or running sets only.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/line.hpp"
#include "hydro/layout/names.hpp"
#include "hydro/layout/watering_set.hpp"
#include "hydro/physics/supply.hpp"
#include "hydro/quantities/error.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// By line: another, or none.
using Others = std::vector<std::optional<std::size_t>>;

struct Plumbing {
  /// @param all lines without problems, nor problems_between them, nor problems_of_sets
  Plumbing(std::vector<Line> all,
           std::vector<WateringSet> its_sets,
           const std::vector<Supply>& further_supplies);

  std::vector<Line> lines;
  std::vector<WateringSet> sets;
  IndexByName index;
  Others feeders;  ///< none: a supply
  Others joined;   ///< that the far end meets
  /// By line: the supply at the start of the lines that feed it; 0 the first, 1 on the further ones.
  std::vector<std::size_t> supplies;
  std::vector<std::vector<std::size_t>> fed;  ///< by line: those that begin on it, by name
  std::vector<std::vector<std::size_t>>
      joining;                                ///< by line: those whose far ends meet it, by name
  std::vector<std::size_t> outward_order;     ///< each after its feeder
  std::vector<std::size_t> order_of_heights;  ///< each after those that say how high it lies
  bool any_joins = false;
  int outlet_count = 0;

  /// Where on its feeder a line begins.
  Length begins_at(std::size_t line) const;
  /// Where on the line that it joins a line ends.
  Length ends_at(std::size_t line) const;
  /// By line: whether the sets that run leave its own valve shut (watering_set.hpp).
  /// @param left_open lines whose valves are open all the same; they open no valve of a feeder
  std::vector<bool> shut_while(const std::vector<std::string>& running,
                               const std::vector<std::size_t>& left_open) const;

 private:
  /// Lines that no set names and that join an open one, and those that no set names before them.
  void open_what_joins(const std::vector<bool>& named, std::vector<bool>& open) const;
};

/// What is wrong between the lines, each of them taken alone being examined elsewhere.
std::vector<Problem> problems_between(const std::vector<Line>& lines,
                                      const std::vector<Supply>& further_supplies);

/// What is wrong with the sets of these lines. The place of a Problem is `set N`, N from 1 on.
std::vector<Problem> problems_of_sets(const std::vector<WateringSet>& sets,
                                      const std::vector<Line>& lines);

}  // namespace hydro
