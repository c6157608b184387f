// inlet_position.hpp: where along a row to feed it from.
//
// What      Fed at a place along it, a row becomes two, one to either side, behind its valve and
//           fittings. Each place is solved in the whole layout, and the best one chosen: by the
//           highest lowest share of the rated pressure, or by the smallest variation of pressure,
//           (largest - smallest) / average, over the row's outlets.
// Formula   near part: outlets between the inlet end and the place, counted from the place back;
//           far part: those from the place on. Ground at every outlet as it is.
// Source    Ours: every place is solved, since on hilly ground there may be several best ones. On an even
//           slope the rule of handbooks is that the lowest pressures of the two parts be the same
//           (USDA NEH 623, chapter 7).
// Range     Water comes to the place from where the row begins now, without loss (but that of 1 mm of
//           its pipe); or through a feed pipe as long as the way there along the row. The ground
//           under that way is taken as even: a crest on it, where the pressure may fall below the
//           atmosphere's, is not seen.
// Errors    InvalidInput when the row has no outlets, feeds or joins a line, has a fault of its own or
//           no water, or when a place is not on it; NotSolved; Stopped.
// Threads   Pure functions.
// Example   examples/28_where_to_feed_a_row.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/pipe.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/what_ifs/work.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace hydro {

enum class InletGoal {
  highest_lowest_pressure,  ///< as a share of the rated pressure
  least_variation           ///< of pressure
};

/// What is best, and which places are tried.
struct InletPositionOptions {
  InletGoal goal = InletGoal::highest_lowest_pressure;
  /// From its present inlet on; default the inlet, every outlet, and half-way between two.
  std::vector<Length> places = {};
  std::optional<Pipe> feed_pipe = {};  ///< none: the way there takes no pressure but for the ground
};

/// A row fed at a place.
struct InletPosition {
  Length place = {};        ///< from the present inlet, along the row
  Pressure lowest = {};     ///< at an outlet of the row
  int lowest_outlet = 0;    ///< its number as it is now
  Pressure highest = {};    ///< at an outlet of the row
  double lowest_share = 0;  ///< of the rated pressure [-]
  double variation = 0;     ///< of pressure [-]; infinite where the whole row is dry
};

/// Every place that was tried, and the best.
struct InletPositions {
  InletPosition present = {};
  InletPosition best = {};              ///< of equal ones the nearest to the present inlet
  std::vector<InletPosition> all = {};  ///< in the order of their places
};

/// Every place solved, for a row by its name. @throws InvalidInput, NotSolved, Stopped
InletPositions inlet_position(const Layout& layout,
                              std::string_view line,
                              const InletPositionOptions& options = {},
                              const Work& work = {});

/// The layout with the row fed at a place: the line of its name leads there, lines `NAME, near part`
/// and `NAME, far part` carry its outlets; one of them is missing where it has none.
Layout with_inlet_at(const Layout& layout,
                     std::string_view line,
                     const Length& place,
                     const std::optional<Pipe>& feed_pipe = {});

}  // namespace hydro
