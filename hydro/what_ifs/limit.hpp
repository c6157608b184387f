// limit.hpp: the limits of a check by name, so that a question can say which must hold.
//
// What      One name for each list of findings in Check (check.hpp), spelt as there.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/answers/check.hpp"

#include <string_view>
#include <vector>

namespace hydro {

enum class Limit {
  below_rated,       ///< an outlet has less than its rated pressure
  below_minimum,     ///< an outlet does not work
  above_maximum,     ///< an outlet mists
  variations,        ///< a line, or all of one kind together, water too unevenly
  fast_water,        ///< water is too fast in a line
  below_atmosphere,  ///< the pressure in a line is below the atmosphere's
  over_rating,       ///< the pressure in a pipe is above its rating
  supply_limits      ///< a supply is asked more than it should do
};

/// Of the wanted ones, those that a layout breaks, in the order of the enumeration, each once.
std::vector<Limit> broken_limits(const Check& check, const std::vector<Limit>& wanted);

/// All of them, in the order of the enumeration.
std::vector<Limit> all_limits();

/// "outlets below rated".
std::string_view in_words(Limit limit);

}  // namespace hydro
