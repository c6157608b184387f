// fault.hpp: what can go wrong with an outlet, with a line or its valve, or with the supply.
//
// What      A fault changes one outlet, one line or the supply of a layout (Layout::with_fault). The
//           defaults are estimates; the values used are always printed.
// Formula   open riser     H(line) - z - h = friction over h at q + (1 + K) q^2 / (2 g A^2), and
//                          q = 0 if the left side is not above 0; h the height of what still
//                          stands, A its bore's area
//           no nozzle      q = Cd A sqrt(2 p / rho), A the area of the body's bore
//           clogged, worn  q = (1 - share), (1 + share) x the outlet's flow at its pressure
//           leak           q = flow (p / at)^exponent, p in the line
//           open end       H = z + q^2 / (2 g A^2); no water passes it
//           valve          K V^2 / (2 g) more at the line's inlet
//           pump worn      (1 - share) x its head at every flow
// Source    Open riser and open end: Bernoulli's equation with the velocity head lost to the air; K
//           about 0.5 to 2 for the branch of a tee (B. R. Munson et al., Fundamentals of Fluid
//           Mechanics, table 8.2, from memory: threaded tee, branch flow 2.0; flanged 1.0). A riser
//           usually fails at the thread of its foot (common practice, no source), hence the stub of
//           0.5 ft. A body without its nozzle is a short tube: Cd 0.8 to 0.85 (textbooks of
//           hydraulics, from memory), here 0.85. A hole in stiff pipe is an orifice, exponent 0.5;
//           cracks that open with the pressure have more.
// Errors    InvalidInput when the layout has no such line, outlet or place, when a bore is needed
//           and not known, when two faults contradict each other, or when one lies where another
//           lets no water through.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/line.hpp"
#include "hydro/physics/supply.hpp"
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

/// The nozzle is lost: the body's bore stands open.
struct NozzleMissing {
  std::string line;
  int outlet;
  std::optional<Length> bore = {};                   ///< default the outlet's body_bore
  std::optional<double> discharge_coefficient = {};  ///< Cd [-], default 0.85
  bool operator==(const NozzleMissing&) const = default;
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

/// An outlet of another kind stands there, and is judged by its own rating.
struct WrongOutlet {
  std::string line;
  int outlet;
  Outlet fitted;
  bool operator==(const WrongOutlet&) const = default;
};

/// Closed on purpose.
struct Capped {
  std::string line;
  int outlet;
  bool operator==(const Capped&) const = default;
};

/// A hole in the line.
struct Leak {
  std::string line;
  Length place;                         ///< from the line's inlet
  Flow flow;                            ///< this flow ...
  Pressure at;                          ///< ... at this pressure in the line, with ...
  std::optional<double> exponent = {};  ///< ... this exponent [-], 0.1 to 1.5, default 0.5
  static constexpr double default_exponent = 0.5;
  bool operator==(const Leak&) const = default;
};

/// The line is cut through. What stands up to the place is still fed; outlets beyond it and lines
/// that begin there or beyond are dry, unless water comes to that part another way: then it is open
/// to the air there too.
struct LineCut {
  std::string line;
  Length place;  ///< from the line's inlet
  bool operator==(const LineCut&) const = default;
};

/// The cap or flush valve at the far end is open.
struct EndOpen {
  std::string line;
  bool operator==(const EndOpen&) const = default;
};

/// The valve at the line's inlet is not fully open.
struct ValvePartClosed {
  std::string line;
  double loss_coefficient;  ///< K on the line's velocity head, beside the line's own
  bool operator==(const ValvePartClosed&) const = default;
};

/// The valve of a line that should be shut is open.
struct ValveLeftOpen {
  std::string line;
  bool operator==(const ValveLeftOpen&) const = default;
};

/// A regulator that no longer regulates: all pressure comes through.
struct RegulatorStuckOpen {
  std::string line;
  std::optional<int> outlet = {};  ///< the outlet's own; none: the line's
  bool operator==(const RegulatorStuckOpen&) const = default;
};

/// A regulator that lets nothing through.
struct RegulatorStuckShut {
  std::string line;
  std::optional<int> outlet = {};  ///< the outlet's own; none: the line's
  bool operator==(const RegulatorStuckShut&) const = default;
};

/// Worn impeller or rings: less head at every flow.
struct PumpWorn {
  double share;                  ///< of the head that is lost, above 0 and below 1
  std::optional<int> pump = {};  ///< 1 or 2, default 1
  std::string supply = {};       ///< name of a further one; empty: the first
  bool operator==(const PumpWorn&) const = default;
};

/// The engine does not reach its speed.
struct EngineSlow {
  RotationalSpeed speed;         ///< that it reaches; a pump that runs slower does not feel it
  std::optional<int> pump = {};  ///< 1 or 2, default 1
  std::string supply = {};       ///< name of a further one; empty: the first
  bool operator==(const EngineSlow&) const = default;
};

/// Dirt in the filter.
struct FilterDirty {
  Pressure loss;            ///< that it takes now, at the flow at which it is rated
  std::string supply = {};  ///< name of a further one; empty: the first
  bool operator==(const FilterDirty&) const = default;
};

using Fault = std::variant<HeadOff,
                           RiserSheared,
                           NozzleMissing,
                           Clogged,
                           Worn,
                           WrongOutlet,
                           Capped,
                           Leak,
                           LineCut,
                           EndOpen,
                           ValvePartClosed,
                           ValveLeftOpen,
                           RegulatorStuckOpen,
                           RegulatorStuckShut,
                           PumpWorn,
                           EngineSlow,
                           FilterDirty>;

HeadOff head_off(std::string line, int outlet, std::optional<double> loss_coefficient = {});
RiserSheared riser_sheared(std::string line,
                           int outlet,
                           std::optional<Length> stub = {},
                           std::optional<double> loss_coefficient = {});
NozzleMissing nozzle_missing(std::string line,
                             int outlet,
                             std::optional<Length> bore = {},
                             std::optional<double> discharge_coefficient = {});
Clogged clogged(std::string line, int outlet, double share);
Worn worn(std::string line, int outlet, double share);
WrongOutlet wrong_outlet(std::string line, int outlet, Outlet fitted);
Capped capped(std::string line, int outlet);
Leak leak(std::string line,
          const Length& place,
          const Flow& flow,
          const Pressure& at,
          std::optional<double> exponent = {});
LineCut line_cut(std::string line, const Length& place);
EndOpen end_open(std::string line);
ValvePartClosed valve_part_closed(std::string line, double loss_coefficient);
ValveLeftOpen valve_left_open(std::string line);
RegulatorStuckOpen regulator_stuck_open(std::string line, std::optional<int> outlet = {});
RegulatorStuckShut regulator_stuck_shut(std::string line, std::optional<int> outlet = {});
PumpWorn pump_worn(double share, std::optional<int> pump = {}, std::string supply = {});
EngineSlow engine_slow(const RotationalSpeed& speed,
                       std::optional<int> pump = {},
                       std::string supply = {});
FilterDirty filter_dirty(const Pressure& loss, std::string supply = {});

/// Empty: the fault is the supply's.
const std::string& line_of(const Fault& fault);
/// None: the fault is the line's or the supply's.
std::optional<int> outlet_of(const Fault& fault);
/// Whether it is of a pump, an engine or a filter.
bool is_of_the_supply(const Fault& fault);
/// Whether it is of the first one's.
bool is_of_first_supply(const Fault& fault);
/// Of a fault that is_of_the_supply, the name of the further supply; empty: the first one's.
const std::string& supply_of(const Fault& fault);
/// "riser sheared", as it is spelt in a file.
std::string kind_of(const Fault& fault);

/// A riser standing open to the air.
struct OpenRiser {
  Length height;            ///< of its mouth above the line
  double loss_coefficient;  ///< K, without the velocity head that is lost at the mouth
};

/// The open riser that this fault leaves on this line; none for the others. Needs no bore.
std::optional<OpenRiser> open_riser(const Fault& fault, const Line& line);

/// The body standing open without its nozzle.
struct OpenBody {
  std::optional<Length> bore;  ///< none: not known
  double discharge_coefficient;
};
/// The open body that this fault leaves on this line; none for the others.
std::optional<OpenBody> open_body(const Fault& fault, const Line& line);

/// Where the fault opens the line to the air, so that no water is beyond; none for the others.
std::optional<Length> open_end(const Fault& fault, const Line& line);

/// The supply with what its faults change; those of lines and of other supplies change nothing.
Supply with_faults(Supply supply, const std::vector<Fault>& faults);

/// One sentence, with the values used: `row 2, outlet 7: riser sheared, a stub of 0.5 ft left open
/// (...)`. A fault of the supply asks nothing of the line.
std::string describe(const Fault& fault, const Line& line, UnitSystem units);

/// What is wrong with the fault on this line; empty when nothing is.
std::vector<Problem> problems(const Fault& fault, const Line& line);

/// What is wrong with a fault of this supply; empty when nothing is.
std::vector<Problem> problems(const Fault& fault, const Supply& supply);

}  // namespace hydro
