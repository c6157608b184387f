// fault.hpp: what can go wrong with an outlet.
//
// What      A fault changes one outlet of a layout (Layout::with_fault). The defaults are
//           estimates; the values used are always printed.
// Formula   open riser   H(line) - z - h = friction over h at q + (1 + K) q^2 / (2 g A^2), and
//                        q = 0 if the left side is not above 0; h the height of what still
//                        stands, A its bore's area
//           clogged      q = (1 - share) x the outlet's flow at its pressure
//           worn         q = (1 + share) x the outlet's flow at its pressure
// Source    Open riser: Bernoulli's equation with the velocity head lost to the air; K about 0.5 to
//           2 for the branch of a tee (B. R. Munson et al., Fundamentals of Fluid Mechanics, table
//           8.2, from memory: threaded tee, branch flow 2.0; flanged 1.0). A riser usually fails at
//           the thread of its foot (common practice, no source), hence the stub of 0.5 ft.
// Errors    InvalidInput when the layout has no such line or outlet, when a bore is needed and not
//           known, or when the outlet already has a fault.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/line.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/unit_system.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace hydro {

/// The outlet is knocked off: its riser stands open at the top.
struct HeadOff {
  std::string line;
  int outlet;  ///< counts from 1, from the inlet on
  std::optional<double> loss_coefficient =
      {};  ///< K; default the riser's own where given, else 1.0
  bool operator==(const HeadOff&) const = default;
};

/// The riser is sheared off: a stub stands open.
struct RiserSheared {
  std::string line;
  int outlet;
  std::optional<Length> stub = {};  ///< default 0.5 ft, or the riser if that is shorter
  std::optional<double> loss_coefficient =
      {};  ///< K; default the riser's own where given, else 1.0
  bool operator==(const RiserSheared&) const = default;
};

/// Something in the nozzle: less flow at the same pressure.
struct Clogged {
  std::string line;
  int outlet;
  double share;  ///< of the flow that is lost, above 0 and below 1
  bool operator==(const Clogged&) const = default;
};

/// A worn nozzle: more flow at the same pressure.
struct Worn {
  std::string line;
  int outlet;
  double share;  ///< of the flow that is gained, above 0 to 10
  bool operator==(const Worn&) const = default;
};

/// Closed on purpose.
struct Capped {
  std::string line;
  int outlet;
  bool operator==(const Capped&) const = default;
};

using Fault = std::variant<HeadOff, RiserSheared, Clogged, Worn, Capped>;

HeadOff head_off(std::string line, int outlet, std::optional<double> loss_coefficient = {});
RiserSheared riser_sheared(std::string line,
                           int outlet,
                           std::optional<Length> stub = {},
                           std::optional<double> loss_coefficient = {});
Clogged clogged(std::string line, int outlet, double share);
Worn worn(std::string line, int outlet, double share);
Capped capped(std::string line, int outlet);

const std::string& line_of(const Fault& fault);
int outlet_of(const Fault& fault);

/// A riser standing open to the air.
struct OpenRiser {
  Length height;            ///< of its mouth above the line
  double loss_coefficient;  ///< K, without the velocity head that is lost at the mouth
};

/// The open riser that this fault leaves on this line; none for the others. Needs no bore.
std::optional<OpenRiser> open_riser(const Fault& fault, const Line& line);

/// One sentence, with the values used: `row 2, outlet 7: riser sheared, a stub of 0.5 ft left open
/// (...)`.
std::string describe(const Fault& fault, const Line& line, UnitSystem units);

/// What is wrong with the fault on this line; empty when nothing is.
std::vector<Problem> problems(const Fault& fault, const Line& line);

}  // namespace hydro
