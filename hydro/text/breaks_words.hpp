// breaks_words.hpp: what breaking every outlet in turn comes to, in sentences. Not installed.
#pragma once

#include "hydro/text/figures.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

#include <string>
#include <vector>

namespace hydro {

/// "riser sheared, stub open (0.5 ft high, bore 0.81 in, loss coefficient 1)"; where lines differ,
/// one for each kind of break, with the names of its lines.
std::vector<std::string> breaks_in_words(const Breaks& breaks, const Figures& figures);

/// What falls short already, whether the others go on working, which break is the worst, what the gauge shows.
std::vector<std::string> outcome_in_words(const Breaks& breaks, const Figures& figures);

/// Whether breaks can be seen at the gauge, or before the filter: not where that is held.
bool is_felt_at_the_gauge(const Breaks& breaks);

}  // namespace hydro
