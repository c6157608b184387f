// clock.hpp: times of the day and how long things take, in words. Not installed.
//
// Accuracy  To the nearest minute.
#pragma once

#include "hydro/quantities/units.hpp"

#include <string>

namespace hydro {

/// "06:05"; of the next day "01:05+1". @param since_midnight 0 or more
std::string clock(const Time& since_midnight);

/// "2 h 10 min", "45 min", "less than a minute".
std::string in_words(const Time& duration);

}  // namespace hydro
