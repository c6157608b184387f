// doings.hpp: what the outlets of a line do, in one word each, for tables and legends. Not
// installed.
#pragma once

#include "hydro/solver/solution.hpp"
#include "hydro/text/words.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace hydro {

/// The good first, then from the worst on.
inline constexpr std::array all_doings{Doing::serves,
                                       Doing::broken,
                                       Doing::capped,
                                       Doing::without_water,
                                       Doing::dry,
                                       Doing::below_minimum,
                                       Doing::below_rated,
                                       Doing::above_maximum};

/// One for each outlet of the line, outlet 1 first.
std::vector<Doing> doings(const Solution& solution, std::size_t line_index);

/// For programs: "works", "below_rated".
std::string name_of(Doing what);
/// For people: "works", "below rated".
std::string label_of(Doing what);

}  // namespace hydro
