// doings.hpp: what the outlets of a line do, in one word each, for tables and legends. Not
// installed.
#pragma once

#include "hydro/solver/solution.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace hydro {

/// The good first, then from the worst on.
inline constexpr auto all_doings = [] {
  std::array<Doing, failings.size() + 1> all{Doing::serves};
  std::copy(failings.begin(), failings.end(), all.begin() + 1);
  return all;
}();

/// One for each outlet of the line, outlet 1 first.
std::vector<Doing> doings(const Solution& solution, std::size_t line_index);

/// For programs: "works", "below_rated".
std::string name_of(Doing what);
/// For people: "works", "below rated".
std::string label_of(Doing what);

}  // namespace hydro
