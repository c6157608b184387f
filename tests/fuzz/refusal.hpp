// refusal.hpp: that a refusal says what is wrong, whatever was given.
#pragma once

#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <cstdlib>
#include <string>

namespace hydro {

/// Does it; ends the process where it is refused without a word, or in words that would disturb a
/// terminal. All else that is thrown ends the process too.
template <class Do>
void unless_refused(Do&& it) {
  try {
    it();
  } catch (const InvalidInput& error) {
    if (error.problems().empty()) std::abort();
    for (const Problem& problem : error.problems())
      if (problem.message.empty() || std::ranges::any_of(problem.text(), is_control)) std::abort();
  }
}

}  // namespace hydro
