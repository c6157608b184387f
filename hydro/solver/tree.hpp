// tree.hpp: a layout as the solver sees it: places one after another along runs of pipe.
// Not installed.
//
// What      A place is where water can leave a line, where its pipe changes or where it ends. A
//           reach is the length of pipe that arrives at a place, with its fittings. A run is a
//           chain of places, numbered outward, that branches only at its far end: a line is one
//           run, or several where others begin on it or join it. Runs come after the run that feeds
//           them. A tree of runs grows from each source: a supply, or an inlet that is shut, whose
//           line has its water from elsewhere. Where a line joins another, the far ends of two runs
//           are one place: a joint. Each joint closes a loop, or brings two sources together.
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
#include <optional>
#include <vector>

namespace hydro {

inline constexpr double no_limit = std::numeric_limits<double>::infinity();
inline constexpr std::int32_t none = -1;
/// Of something that is referred to, and not none.
inline std::size_t index(std::int32_t reference) {
  return static_cast<std::size_t>(reference);
}
inline constexpr std::size_t nowhere = std::numeric_limits<std::size_t>::max();

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

struct Place {
  std::int32_t reach;  ///< of Tree::reaches: the one that arrives here
  std::int32_t mouth;  ///< of Tree::mouths, or none
};

struct Run {
  std::int32_t fed_by;   ///< the run at whose far end this one begins, or none: a source
  std::int32_t source;   ///< of Tree::sources: from which it begins, if nothing feeds it
  std::size_t first;     ///< place
  std::size_t end;       ///< one past its last place; a run is never empty
  double elevation;      ///< of the ground where it begins
  double head_at_rest;   ///< when nothing flows, above the first supply [m]
  bool one_way = false;  ///< no water runs back: a check valve or a regulator is at its inlet
  /// Whether a joint is beyond it: water may run in it either way.
  bool two_way = false;
  /// One that is two_way but one_way may shut. Then it begins from this source instead.
  std::int32_t when_shut = none;
};

/// Where trees begin.
struct Source {
  /// None: an inlet that nothing passes.
  std::optional<SupplyLaw> law;
  bool takes_in = false;  ///< whether water may run back into it
  double elevation = 0;   ///< above the first supply [m]
};

/// Two runs whose far ends are one place.
struct Joint {
  std::int32_t from;
  std::int32_t to;
  double rise;  ///< of the ground from the one to the other: what the layout leaves open [m]
};

/// A place where a leak or an open end is.
struct OpenPlace {
  std::size_t place;
  std::size_t fault;  ///< of Layout::faults_on(line)
};

/// Where a line's places are. They follow one another.
struct LinePlaces {
  std::int32_t first_run = none;   ///< at its inlet; none: no water comes there
  std::int32_t beyond_run = none;  ///< first one beyond the place where the line is open to the air
  std::int32_t last_run = none;    ///< none: no water comes to any part of it
  std::size_t start = 0;           ///< its first place
  std::size_t outlets = 0;         ///< as far as water comes; of those ...
  std::vector<std::size_t> of_outlets{};  ///< ... the places, or nowhere; empty: one after another
  std::vector<std::size_t> ends_of_reaches{};  ///< one past the last place of each first reach
  std::vector<OpenPlace> open{};
};

struct Tree {
  /// The first supply, the further ones by name, so that their order changes not even the rounding,
  /// then shut inlets.
  std::vector<Source> sources;
  std::vector<std::int32_t> of_supplies;  ///< their sources, in the order of the layout
  double head_span =
      0;  ///< the residuals' scale: the highest supply's head at rest or all rise and fall [m]
  bool has_regulators = false;
  bool has_gates = false;  ///< supplies and runs in loops that let water through one way only
  std::vector<Reach> reaches;
  std::vector<Mouth> mouths;
  std::vector<Place> places;
  std::vector<Run> runs;
  std::vector<Joint> joints;
  std::vector<LinePlaces> lines;  ///< in the order of the layout

  /// Of the first supply.
  const SupplyLaw& supply() const { return *sources.front().law; }
  const Run& first_run(const LinePlaces& line) const {
    return runs[static_cast<std::size_t>(line.first_run)];
  }
  const Run& last_run(const LinePlaces& line) const {
    return runs[static_cast<std::size_t>(line.last_run)];
  }
  std::size_t place_of(const LinePlaces& line, std::size_t outlet_index) const {
    return line.of_outlets.empty() ? line.start + outlet_index : line.of_outlets[outlet_index];
  }
};

Tree make_tree(const Layout& layout, const WaterProperties& water);

/// What water leaves by at an outlet with a fault that acts there, as make_tree() has it; none: the
/// fault closes it. The capacity of its riser is not found.
std::optional<Mouth> mouth_with(const Fault& fault, const Line& line, const WaterProperties& water);

/// Finds Reach::capacity of every reach and riser anew.
void bound_capacities(Tree& tree);

}  // namespace hydro
