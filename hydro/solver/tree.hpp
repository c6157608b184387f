// tree.hpp: a layout as the solver sees it: places one after another along runs of pipe.
// Not installed.
//
// What      A place is where water can leave a line, where its pipe changes or where it ends. A
//           reach is the length of pipe that arrives at a place, with its fittings. A run is a
//           chain of places, numbered outward, that branches only at its far end: a line is one
//           run, or several where others are tapped on it. Runs come after the run that feeds them.
// Units     SI doubles. The head at a place is the pressure head in the pipe [m]; the rise of the
//           ground belongs to the reach, so that nothing is lost to rounding far above the sea.
//           Elevations are above the supply's.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/friction_law.hpp"
#include "hydro/physics/outlet_law.hpp"
#include "hydro/physics/supply_law.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <utility>
#include <vector>

namespace hydro {

inline constexpr double no_limit = std::numeric_limits<double>::infinity();

/// A length of pipe with its fittings: h(Q) = length J(Q) + fitting Q |Q|.
struct Reach {
  FrictionLaw friction;
  double length = 0;
  double fitting = 0;
  double ground_rise = 0;      ///< along its length
  double capacity = no_limit;  ///< about the flow [m3/s] that would take all the head there is
  double held = no_limit;      ///< no more pressure head at its far end: a regulator is there [m]

  /// @param wall_slope of the loss per metre, if it is known; it is left evaluated
  Loss loss(double flow, double& wall_slope) const {
    const Loss wall = friction.per_metre(flow, wall_slope);
    wall_slope = wall.slope;
    const double speed = std::abs(flow);
    return {length * wall.head + fitting * flow * speed, length * wall.slope + 2 * fitting * speed};
  }
};

/// Where water leaves: an outlet on its riser, or something open to the air, whose velocity head is
/// a law with exponent 0.5.
struct Mouth {
  OutletLaw law;
  double height = 0;       ///< above the line
  bool has_riser = false;  ///< whether the riser takes any head
  Reach riser;
};

inline constexpr std::int32_t none = -1;

struct Place {
  std::int32_t reach;  ///< of Tree::reaches: the one that arrives here
  std::int32_t mouth;  ///< of Tree::mouths, or none
};

struct Run {
  std::int32_t fed_by;          ///< the run at whose far end this one begins, or none: the supply
  std::size_t first;            ///< place
  std::size_t end;              ///< one past its last place; a run is never empty
  double elevation;             ///< of the ground where it begins
  double regulated = no_limit;  ///< head above the supply that regulators before it leave [m]
};

/// A place where a leak or an open end is.
struct OpenPlace {
  std::size_t place;
  std::size_t fault;  ///< of Layout::faults_on(line)
};

/// Where a line's places are. They follow one another.
struct LinePlaces {
  std::int32_t first_run = none;  ///< none: no water comes to the line
  std::int32_t last_run = none;
  std::size_t outlets = 0;                     ///< those that water comes to
  std::vector<std::size_t> of_outlets{};       ///< where other places are between them; else empty
  std::vector<std::size_t> ends_of_reaches{};  ///< one past the last place of each first reach
  std::vector<OpenPlace> open{};
};

struct Tree {
  explicit Tree(SupplyLaw law) : supply(std::move(law)) {}

  SupplyLaw supply;
  double head_span =
      0;  ///< the residuals' scale: the supply's head at rest or all rise and fall [m]
  bool has_regulators = false;
  std::vector<Reach> reaches;
  std::vector<Mouth> mouths;
  std::vector<Place> places;
  std::vector<Run> runs;
  std::vector<LinePlaces> lines;  ///< in the order of the layout

  /// Head above the supply when nothing flows [m].
  double head_at_rest(const Run& run) const {
    return std::min(supply.head_at_rest(), run.regulated);
  }
  const Run& first_run(const LinePlaces& line) const {
    return runs[static_cast<std::size_t>(line.first_run)];
  }
  const Run& last_run(const LinePlaces& line) const {
    return runs[static_cast<std::size_t>(line.last_run)];
  }
  std::size_t place_of(const LinePlaces& line, std::size_t outlet_index) const {
    return line.of_outlets.empty() ? first_run(line).first + outlet_index
                                   : line.of_outlets[outlet_index];
  }
};

Tree make_tree(const Layout& layout, const WaterProperties& water);

}  // namespace hydro
