// application.hpp: how fast water comes down on the ground, or to each plant.
//
// What      From the solved flows: depth of water in a time, by the ground that each outlet waters,
//           and flow to each plant; on average, for the weakest quarter, at the driest and at the
//           wettest outlet. Of one line, or of several that water one piece of ground.
// Formula   rate = q / a, with a = outlet spacing x row spacing, or the whole area shared evenly
//           among the outlets that stand on it; flow to a plant = q x outlets per plant
// Source    Conservation of volume: 96.25 gal/min on 1 ft2 is 1 in/h, 231/144 x 60. In a triangle
//           of sprinklers the row spacing is the height of the triangle. The weakest quarter is the
//           lowest quarter of uniformity.hpp.
// Range     What wind and the overlap of sprinklers do between the outlets is not in it: the water of
//           an outlet counts as spread evenly over its own ground. Broken and capped outlets water no
//           ground; dry ones count, with nothing. Without spacing or area there are flows only.
// Errors    InvalidInput for a line that is not in the layout, ground described twice, a row spacing
//           for outlets that stand unevenly, or when no outlet is open; NaN is outside every range.
// Threads   Pure functions.
// Example   application(solution, {.lines = {"row 1"}, .row_spacing = 30 * ft}).average
#pragma once

#include "hydro/answers/uniformity.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/series.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// The ground that some lines water, as it is described. Without the spacing or the area no depth is
/// known.
struct Ground {
  std::vector<std::string> lines = {};           ///< by name, one or more
  std::optional<Length> row_spacing = {};        ///< from line to line, or ...
  std::optional<Length> outlet_spacing = {};     ///< beside it; default that of each line
  std::optional<Area> area = {};                 ///< ... of all of it
  std::optional<double> outlets_per_plant = {};  ///< default: flows are told for each outlet [-]
  bool operator==(const Ground&) const = default;
};

/// Depths of water in a time.
struct ApplicationRates {
  Velocity average = {};
  Velocity low_quarter = {};  ///< of the quarter of the outlets that is weakest
  Velocity driest = {};
  Velocity wettest = {};
};

/// What comes down.
struct Application {
  std::vector<std::string> lines = {};
  Uniformity<Flow> flows = {};  ///< of the outlets; all 0 where no water comes to them
  Flow total = {};              ///< out of them
  std::optional<ApplicationRates> rates = {};  ///< none: no spacing and no area is known
  double distribution = 0;                     ///< DU of the rates, else of the flows [%]
  std::optional<double> outlets_per_plant = {};
  Series<Flow> flow = {};  ///< of each outlet that counts, line by line
  Series<Area> area = {};  ///< that each of them waters; empty where no rates are known

  /// The flow to a plant from outlets of this flow; from one outlet where none per plant are known.
  Flow to_plant(const Flow& outlet) const { return outlets_per_plant.value_or(1) * outlet; }
};

/// Of all lines of the ground together. @throws InvalidInput
Application application(const Solution& solution, const Ground& ground);

/// Of each line of the ground that has an open outlet; an area is shared by the number of outlets.
/// @throws InvalidInput
std::vector<Application> application_by_line(const Solution& solution, const Ground& ground);

/// The ground that each outlet of a line has to water; none: no spacing and no area is known.
/// @param line_name of one of its lines @throws InvalidInput when the layout has no such line
std::optional<Area> area_per_outlet(const Layout& layout,
                                    const Ground& ground,
                                    std::string_view line_name);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Ground& ground);

}  // namespace hydro
