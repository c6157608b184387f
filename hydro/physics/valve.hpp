// valve.hpp: the valve at the inlet of a line, by its kind and how far it is closed.
//
// What      Words for the loss coefficient, for those who do not know it.
// Formula   h = K V^2 / (2 g) on the velocity in the line's first pipe
// Source    B. R. Munson et al., Fundamentals of Fluid Mechanics, table 8.2 (from memory): globe,
//           fully open 10; angle 2; gate open 0.15, quarter closed 0.26, half closed 2.1, three
//           quarters closed 17; ball open 0.05, third closed 5.5, two thirds closed 210. The same
//           figures were read in tables of engineers' web pages, but 200 for the last.
// Range     Real valves differ by half and more; makers' figures go before these.
// Errors    problems() says which openings of a kind are known.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/quantities/error.hpp"

#include <optional>
#include <vector>

namespace hydro {

enum class ValveKind { gate, ball, globe, angle };

enum class ValveOpening {
  open,
  quarter_closed,
  third_closed,
  half_closed,
  two_thirds_closed,
  three_quarters_closed,
  shut
};

/// As it is described.
struct Valve {
  std::optional<ValveKind> kind = {};  ///< needed unless it is shut
  ValveOpening opening = ValveOpening::open;
  bool operator==(const Valve&) const = default;
};

/// K on the line's velocity head. @throws InvalidInput for problems(valve), or one that is shut.
double loss_coefficient(const Valve& valve);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Valve& valve);

}  // namespace hydro
