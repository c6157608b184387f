// sets_together.hpp: which watering sets can run together on one supply.
//
// What      Every set alone, every two of them, and all at once: the speed or pressure that gives
//           every outlet its rated pressure, what the pump and the pipes do then, and whether any
//           limit is passed. A supply that cannot be set is taken as it is.
// Errors    InvalidInput when the layout has no sets, and as in set_gauge.hpp.
// Threads   Pure function.
#pragma once

#include "hydro/answers/pressure_budget.hpp"
#include "hydro/physics/supply_limit.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// What is wanted and accepted.
struct SetsTogetherOptions {
  double share = 1;                  ///< of its rated pressure at every outlet [-]
  Velocity velocity = 5 * ft_per_s;  ///< largest accepted in lines, not in risers
};

/// Sets that would run at once.
struct SetsTogether {
  std::vector<std::string> sets;
  bool reached;                          ///< every outlet has its share
  std::optional<RotationalSpeed> speed;  ///< that is needed; none: a held pressure
  Pressure pressure;                     ///< before the filter
  std::optional<Pressure> gauge_reading;
  Flow flow;
  WeakestOutlet weakest;
  std::string fastest_line;
  Velocity fastest;
  bool too_fast;
  std::vector<SupplyLimit> limits;  ///< that are passed

  /// Every outlet is served and no limit of the supply is passed. Fast water is a caution only: a
  /// short narrow valve has it without harm.
  bool can_run() const { return reached && limits.empty(); }
};

/// First each alone, then each two, in the layout's order; last all of them, if more than two.
std::vector<SetsTogether> sets_together(const Layout& layout,
                                        const SetsTogetherOptions& options = {});

}  // namespace hydro
