// more_outlets.hpp: the layout with more outlets on one of its lines.
//
// What      Beyond its last outlet a line goes on by a spacing for each one more, in its own pipe, and
//           its ground goes on as evenly as before; from where the ground is known at every outlet
//           it stays level. Between its outlets they stand evenly in each gap: one in every gap
//           before there are two in any, those nearest the far end first, where they weigh most. What
//           stands there stays in its place; it has a new number.
// Range     Lines that begin at the far end or join it keep their places, and so do sets and faults;
//           but an end that is open stays the end. What hangs at an outlet keeps its outlet.
// Errors    InvalidInput when the line has no outlet, when its far end joins another and it should
//           go on, when there is no place left between, and as in layout.hpp.
// Threads   Pure functions.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/outlet.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string_view>

namespace hydro {

enum class AddedWhere {
  beyond,  ///< the last outlet: the line grows
  between  ///< the outlets: the line stays as long as it is
};

/// Which outlets are added, and where.
struct MoreOutlets {
  AddedWhere where = AddedWhere::beyond;
  std::optional<Outlet> outlet = {};  ///< default that of the last outlet before it
  /// Beyond: from outlet to outlet; default that of the line, of an uneven one that of its last two
  /// outlets. Between: the nearest that two may stand; default 1 mm.
  std::optional<Length> spacing = {};
};

/// @param count of those added, 0 to most_outlets
Layout with_more_outlets(const Layout& layout,
                         std::string_view line,
                         const MoreOutlets& more,
                         int count);

/// How many have a place between the outlets of a line; beyond the last one most_outlets.
int places_for_more(const Layout& layout, std::string_view line, const MoreOutlets& more);

}  // namespace hydro
