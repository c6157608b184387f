// block.hpp: a piece of ground that is watered alike: its lines, its crop and its soil.
//
// What      Joins the lines of a layout to what grows along them. Depths of water are over the
//           whole area of the block, wetted or not.
// Errors    problems() names each field that is out of its accepted interval, and what is missing.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/watering/crop.hpp"
#include "hydro/watering/soil.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// As it is described. What is typed in takes the place of what the tables say of the crop.
struct Block {
  std::string name = {};
  std::vector<std::string> lines = {};  ///< of the layout, by their names
  std::string crop = {};  ///< of crop.hpp; empty, or any other name, when all is typed
  std::optional<double> crop_coefficient = {};  ///< [-]
  std::optional<StageLengths> stages = {};      ///< days; or ...
  std::string region = {};                      ///< ... a row of the table of stages
  std::optional<int> season_day = {};           ///< today, counted from planting or leafing out
  std::optional<Length> root_depth = {};
  std::optional<double> allowed_depletion = {};  ///< share of the available water [-]
  bool under_cover = false;  ///< in a tunnel or glasshouse: the tables do not hold, no rain comes
  std::optional<int> days_since_filled = {};  ///< mornings since water last filled its soil
  Soil soil = {};
  std::optional<double> share_wetted = {};   ///< of the ground that water reaches, default 1 [-]
  std::optional<Area> area = {};             ///< of the whole block
  std::optional<Length> row_spacing = {};    ///< from line to line
  std::optional<Length> plant_spacing = {};  ///< with row_spacing the area of a plant; or ...
  std::optional<Area> area_per_plant = {};   ///< ... that area itself
  std::optional<double> efficiency = {};     ///< share of the water applied that the roots get [-]
  bool operator==(const Block&) const = default;
};

/// By the two spacings or as it is given; none: not known.
std::optional<Area> area_per_plant(const Block& block);

/// What is wrong with the fields; empty when nothing is. A crop that is not in the table must have
/// its coefficient, root depth and allowed depletion typed in, one under cover its coefficient.
std::vector<Problem> problems(const Block& block);

}  // namespace hydro
