// chance_of_trouble.hpp: the chance that outlets fall short, for each count of outlets more.
//
// What      The line gets one outlet more at a time (more_outlets.hpp), and for each count the chances
//           are found (chances.hpp). Beyond the far end, and of a kind that is there already, new
//           outlets leave all other draws as they are, so that counts are compared in the same
//           weather; between others, or of a new kind, they do not (uncertainty.hpp).
// Range     All outlets of the layout are judged, not those of the line alone.
// Errors    As in chances.hpp and more_outlets.hpp.
// Threads   As many as `work` says; the result is the same whatever their number.
// Example   examples/25_chance_of_trouble.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/what_ifs/chances.hpp"
#include "hydro/what_ifs/more_outlets.hpp"
#include "hydro/what_ifs/uncertainty.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace hydro {

/// With so many outlets more.
struct TroubleAtCount {
  int more = 0;
  Chance below_rated = {};  ///< at least one outlet is
  Chance below_minimum = {};
  Chance above_maximum = {};
  /// At the device, of the outlets that are judged; none: none is.
  std::optional<Spread<Pressure>> lowest_pressure = {};
  Spread<Flow> inflow = {};  ///< out of all supplies together
  std::uint64_t seed = 0;
  std::vector<double> quantiles = {};  ///< shares that quantiles were asked for, in their order
};

/// For none more, one more and so on up to `most`. @param most 0 to 1000
/// @throws InvalidInput, NotSolved, Stopped
std::vector<TroubleAtCount> chance_of_trouble(const Layout& layout,
                                              std::string_view line,
                                              int most,
                                              const Uncertainty& uncertainty,
                                              const MoreOutlets& more = {},
                                              const ChanceOptions& options = {},
                                              const Work& work = {});

}  // namespace hydro
