// limits.hpp: what a layout must keep to, and how much of each limit is left.
//
// What      The findings of a check (answers/check.hpp) as limits with a name: each can be chosen,
//           says where it is nearest, and what is left of it.
// Formula   left = (value - limit) / limit   where the value must not be below
//           left = (limit - value) / limit   where it must not be above
//           left = p / atmosphere's        of the lowest line pressure, which must not be below 0
//           left of a variation            by the flow rule; by the pressure rule where that alone is
//                                          broken
// Source    As in check.hpp and supply_limit.hpp.
// Range     A limit that is not given (a minimum, a pump's power) is not judged. Nor is the top speed of
//           an engine: no layout may run faster.
// Threads   Pure functions.
#pragma once

#include "hydro/answers/check.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// In the order in which they are told.
enum class Limit {
  rated,        ///< pressure of every outlet
  minimum,      ///< below which an outlet does not turn or form its pattern
  maximum,      ///< above which an outlet mists
  variation,    ///< of pressure or flow, on each line and on all together
  velocity,     ///< in lines
  pipe_rating,  ///< of pressure, derated by temperature
  atmosphere,   ///< below whose pressure no line should be
  power,        ///< of an engine
  least_flow,   ///< of a pump's usable range
  most_flow,    ///< of a pump's usable range
  suction,      ///< NPSH
  gauge_range   ///< the gauge reads no further
};

/// All of them.
std::vector<Limit> every_limit();

/// What is judged, and by what.
struct Limits {
  std::vector<Limit> judged = every_limit();
  std::vector<std::string> lines = {};  ///< whose outlets and pipes are judged; empty: all
  CheckOptions accepted = {};
};

/// How near a limit is, where it is nearest.
struct Margin {
  Limit limit = Limit::rated;
  std::string line = {};           ///< empty: of all lines together, or of a supply
  std::optional<int> outlet = {};  ///< from 1 on; none: not of one outlet
  std::string supply = {};         ///< name of a further one; empty: the first, or not of a supply
  double left = 0;                 ///< of the limit [-]; below 0 it is passed by so much
  bool passed = false;             ///< as a check finds it: rounding does not pass a limit
};

/// Of each limit that is judged and is there, in the order of the enumeration.
/// @throws InvalidInput for a line that is not there, and as check() does
std::vector<Margin> margins(const Solution& solution, const Limits& limits = {});
/// Those that are passed.
std::vector<Margin> passed(const std::vector<Margin>& margins);

}  // namespace hydro
