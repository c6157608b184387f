// check.hpp: what a grower would find wrong on walking the lines of a solved layout.
//
// What      Every outlet against its rated, lowest and highest pressure; how evenly a line waters;
//           water too fast in a pipe; pressure below the atmosphere's, or above the pipe's rating;
//           a supply that brings no water, or is asked more than it should do (supply_limit.hpp).
// Formula   below rated          p < rated (1 - 1e-6); a dry outlet has p = 0
//           pressure variation   (largest - smallest) / average   over outlets of one kind that
//                                                                 let out water
//           flow variation       (largest - smallest) / largest   over the same outlets
//           column separates     p + atmospheric pressure < vapour pressure
//           over rating          p > rating x temperature_factor (nominal_pipe.hpp)
// Source    Variations of 20 % in pressure and 10 % in flow, 5 ft/s in lines: common practice, no
//           one source (several definitions circulate; the ones above are used here). With exponent
//           0.5 the two variations say nearly the same; with another, only the flow rule is
//           applied.
// Range     Broken and capped outlets are judged nowhere and left out of the variations. A pipe's
//           rating is compared with the steady pressure where the water runs: surge and a closed
//           valve can bring more.
// Threads   Pure function.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/physics/supply_limit.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <string>
#include <vector>

namespace hydro {

/// What is accepted.
struct CheckOptions {
  double pressure_variation = 0.20;  ///< largest accepted [-]
  double flow_variation = 0.10;      ///< largest accepted [-]
  Velocity velocity = 5 * ft_per_s;  ///< largest accepted in lines, not in risers
};

/// Dry ones are among them.
struct BelowRated {
  std::string line;
  int outlet;  ///< from 1 on
  Pressure pressure;
  Pressure rated;
};
/// Of outlets that have a minimum; dry ones are among them.
struct BelowMinimum {
  std::string line;
  int outlet;
  Pressure pressure;
  Pressure minimum;
};
/// Of outlets that have a maximum.
struct AboveMaximum {
  std::string line;
  int outlet;
  Pressure pressure;
  Pressure maximum;
};
/// The pressure in the line does not lift water to it.
struct DryOutlet {
  std::string line;
  int outlet;
  Pressure line_pressure;
};

/// How evenly outlets of one kind water, on one line or (line empty) on all lines together.
struct Variation {
  std::string line;
  std::string outlet_name;
  int outlets;      ///< that let out water
  double pressure;  ///< [-]
  double flow;      ///< [-]
  bool too_wide;    ///< beyond the options
};

/// The fastest water in a line, where it is too fast.
struct FastWater {
  std::string line;
  Velocity velocity;
};

/// The lowest pressure in a line, where it is below the atmosphere's.
struct BelowAtmosphere {
  std::string line;
  Pressure pressure;      ///< gauge
  bool column_separates;  ///< the water would boil: the answer does not hold there
};

/// The highest pressure in a pipe, where it is above the pipe's rating.
struct OverRating {
  std::string line;
  std::string pipe_name;
  Pressure pressure;
  Pressure rating;  ///< what is left of it at the water's temperature
};

/// All that is found.
struct Check {
  std::vector<BelowRated> below_rated;
  std::vector<BelowMinimum> below_minimum;
  std::vector<AboveMaximum> above_maximum;
  std::vector<DryOutlet> dry;
  std::vector<Variation> variations;  ///< all, also the good ones
  std::vector<FastWater> fast_water;
  std::vector<BelowAtmosphere> below_atmosphere;
  std::vector<OverRating> over_rating;
  std::vector<SupplyLimit> supply_limits;  ///< that are passed
  /// Of each further supply, in the order of the layout.
  std::vector<std::vector<SupplyLimit>> further_supply_limits;
  bool lifts_no_water = false;  ///< outlets are open, and the supply brings water to none of them
  bool all_is_shut = false;     ///< no outlet is open: a pump runs against shut valves

  /// No outlet is below its rated or lowest pressure, or above its highest.
  bool every_outlet_serves() const {
    return below_rated.empty() && below_minimum.empty() && above_maximum.empty();
  }
};

/// @throws InvalidInput for options that are not above 0.
Check check(const Solution& solution, const CheckOptions& options = {});

}  // namespace hydro
