// words.hpp: what outlets do, in words. Not installed.
#pragma once

#include "hydro/solver/solution.hpp"
#include "hydro/text/figures.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace hydro {

/// What an outlet does, from the worst on. Finer than OutletState: it knows the rated pressure, and
/// why an outlet is dry.
enum class Doing {
  broken,
  capped,
  shut,  ///< on purpose, with its line
  without_water,
  dry,
  below_minimum,
  below_rated,
  above_maximum,
  serves
};

inline constexpr std::array failings{Doing::broken,
                                     Doing::capped,
                                     Doing::shut,
                                     Doing::without_water,
                                     Doing::dry,
                                     Doing::below_minimum,
                                     Doing::below_rated,
                                     Doing::above_maximum};

/// @param outlet_index from 0 on
Doing doing(const Solution& solution, std::size_t line_index, std::size_t outlet_index);

/// "3 to 10, 12"; of very many stretches the first ones. @param numbers in order
std::string stretches(const std::vector<int>& numbers);

/// For a table: "DOES NOT WORK".
std::string in_words(Doing what);

/// For a finding: "row 2: outlets 3 to 10 are under the 18 psi below which they do not work (11.5 psi
/// at outlet 10)." @param outlets of this kind by number, from 1 on, in order
std::string in_a_sentence(Doing what,
                          const Outlet& kind,
                          const LineSolution& solved,
                          const std::vector<int>& outlets,
                          const Figures& figures);

/// For a table, what a fault makes of its outlet: "clogged"; empty where in_words says it all.
std::string in_a_word(const Fault& fault);

}  // namespace hydro
