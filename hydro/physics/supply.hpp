// supply.hpp: what feeds the lines: a held pressure, a pump, a tank, or a town main.
//
// What      Exactly one source, and what stands between it and the start of every line that nothing
//           feeds: the suction before a pump, a filter, a gauge. All stand at `elevation`.
// Formula   H(start of the lines) = source's head - filter's loss; a pump's is head - lift - suction
//           (pump.hpp, suction.hpp, filter.hpp)
// Range     A held pressure is static (a gauge's reading where the water hardly moves), and held
//           whatever flows; 0 is a pond whose surface lies at `elevation`. Velocity head is
//           neglected.
// Errors    problems() names each field that is out of its accepted interval; keys of parts are
//           read as `pump.speed`.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/physics/filter.hpp"
#include "hydro/physics/gauge.hpp"
#include "hydro/physics/hydrant.hpp"
#include "hydro/physics/pump.hpp"
#include "hydro/physics/suction.hpp"
#include "hydro/physics/tank.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// The supply as it is described.
struct Supply {
  std::optional<Pressure> pressure = {};            ///< held, gauge, before the filter; or ...
  std::optional<Pump> pump = {};                    ///< ... this, or ...
  std::optional<Tank> tank = {};                    ///< ... this, or ...
  std::optional<Hydrant> hydrant = {};              ///< ... this
  std::optional<Pump> second_pump = {};             ///< beside the first
  std::optional<PumpArrangement> arrangement = {};  ///< of the two, default parallel
  std::optional<Suction> suction = {};              ///< of the pumps, both together
  std::optional<Filter> filter = {};
  std::optional<Gauge> gauge = {};
  std::optional<Length> elevation = {};  ///< default 0
  std::string name = {};  ///< of a further one, by which lines begin there; the first has none
  bool operator==(const Supply&) const = default;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Supply& supply);

}  // namespace hydro
