// plumbing.hpp: how the lines hang together, and which of them the sets open. Not installed.
//
// What      What follows from the lines and the sets alone: found once, and shared by all layouts that
//           differ in supply, faults or running sets only.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/line.hpp"
#include "hydro/layout/names.hpp"
#include "hydro/layout/watering_set.hpp"
#include "hydro/quantities/error.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// The feeder of each line; none: the supply.
using Feeders = std::vector<std::optional<std::size_t>>;

struct Plumbing {
  /// @param all lines without problems, nor problems_between them, nor problems_of_sets
  Plumbing(std::vector<Line> all, std::vector<WateringSet> its_sets);

  std::vector<Line> lines;
  std::vector<WateringSet> sets;
  IndexByName index;
  Feeders feeders;
  std::vector<std::size_t> outward_order;
  int outlet_count = 0;

  /// Where on its feeder a line begins.
  Length begins_at(std::size_t line) const;
  /// By line: whether the sets that run leave it shut (watering_set.hpp).
  /// @param left_open lines whose valves are open all the same; they open no valve of a feeder
  std::vector<bool> shut_while(const std::vector<std::string>& running,
                               const std::vector<std::size_t>& left_open) const;
};

/// What is wrong between the lines, each of them taken alone being examined elsewhere.
std::vector<Problem> problems_between(const std::vector<Line>& lines);

/// What is wrong with the sets of these lines. The place of a Problem is `set N`, N from 1 on.
std::vector<Problem> problems_of_sets(const std::vector<WateringSet>& sets,
                                      const std::vector<Line>& lines);

}  // namespace hydro
