// finite.hpp: no file holds NaN or infinity, as the unfinished solution of NotSolved may. Not
// installed.
#pragma once

#include "hydro/quantities/error.hpp"

#include <cmath>
#include <string>

#include <fmt/format.h>

namespace hydro {

/// @param name gives what the number is called; it is asked only when the number is refused.
/// @throws InvalidInput
template <class Name>
void require_finite(double number, Name name) {
  if (!std::isfinite(number))
    throw InvalidInput(name(),
                       fmt::format("is {}, must be a finite number; was it solved?", number));
}

}  // namespace hydro
