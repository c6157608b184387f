// suction.hpp: the way of the water into the pump.
//
// What      The pump stands above the water (or below it, a negative lift) and draws through a pipe.
// Formula   H(pump inlet) = -lift - h(Q), h the pipe's friction and K V^2 / (2 g) (friction.hpp)
//           NPSH available = (p_air - p_vapour) / (rho g) - lift - h(Q)
// Source    Bernoulli's equation; net positive suction head as in ANSI/HI 14.6 and any textbook of
//           pumps, the velocity head at the inlet counted to the available side.
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values.
#pragma once

#include "hydro/physics/pipe.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// Lift, and with a pipe its losses.
struct Suction {
  Length lift = {};                             ///< pump above the water, -30 m to 10 m
  std::optional<Pipe> pipe = {};                ///< none: no loss
  std::optional<Length> length = {};            ///< of the pipe
  std::optional<double> loss_coefficient = {};  ///< K on its velocity head, default 0
  bool operator==(const Suction&) const = default;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Suction& suction);

}  // namespace hydro
