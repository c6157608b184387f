// file_limits.hpp: how much a description file may hold.
//
// What      Whoever reads files of strangers can be sure of what they cost: what is larger is refused
//           before memory or time is spent on it. The bounds are wide, and the caller may widen or
//           narrow them. Those of Layout (line.hpp) stand beside them: no file can hold more lines,
//           outlets or further supplies than a layout.
// Range     As each member says. With the bounds as they are, no file should take 1 GiB of memory to
//           read; the worst of 29 hostile ones took 650 MB (200,000 outlets placed one by one), and
//           the slowest 8 s.
// Accuracy  tests/file_limits_test.cpp tries every bound with a file at it and one beyond.
// Errors    problems() names each bound that is out of its accepted interval.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/error.hpp"

#include <vector>

namespace hydro {

/// The most that is accepted of each.
struct FileLimits {
  int bytes = 8 * 1024 * 1024;  ///< of the file, 1 to 2^30
  int values = 1'000'000;       ///< keys, tables and elements of lists, 1 to 100 million
  int nesting = 64;             ///< of lists and tables in one another, 1 to 200
  int text = 1'000;             ///< bytes of a name, quantity, number or other word, 1 to 2^30
  int mistakes = 100'000;       ///< collected before the file is given up, 1 to 100 million
  int definitions = 10'000;     ///< kinds of pipe, kinds of outlet and blocks, each
  int supplies = 1'000;         ///< further ones
  int lines = 100'000;
  int outlets = 1'000'000;  ///< of all lines
  int reaches = 1'000;      ///< of one line
  int points = 100;         ///< of one curve
  int sets = 10'000;
  int faults = 10'000;
  int readings = 1'000;  ///< and as many sights
  bool operator==(const FileLimits&) const = default;
};

/// What is wrong with the bounds; empty when nothing is. Where no interval is said, it is 0 to 100
/// million.
std::vector<Problem> problems(const FileLimits& limits);

}  // namespace hydro
