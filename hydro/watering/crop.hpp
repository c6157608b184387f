// crop.hpp: crops, as the published tables describe them.
//
// What      For each crop three crop coefficients, the height it reaches, how deep it roots, the
//           share of the soil's water it may use up, and how long its stages last in some regions.
//           A crop that is not in the table is typed in by whoever knows it; none stands in for
//           another. The table is for well-watered crops in open fields: under cover all is typed.
// Source    R. G. Allen and others, FAO Irrigation and Drainage Paper 56 (1998): tables 11 (lengths
//           of stages), 12 (coefficients, heights) and 22 (root depth, depletion), read row by row.
//           Of a printed range the middle is taken for coefficients and heights, both ends are kept
//           for root depth. A crop without a coefficient of its own has its group's.
// Range     Coefficients hold for RHmin 45 %, wind 2 m/s: crop_coefficient.hpp adjusts them. The
//           initial one is for usual wetting; under sprinklers every day or two it comes near 1.0
//           to 1.2 (table 12, note 1). Lengths are indicative: use your own (table 11, note *).
// Errors    InvalidInput for a name that is not in the table: names near ones, or all.
// Threads   Pure functions.
// Example   crop("potato").root_depth_from
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// How many days each stage of a crop lasts, from planting, or from leafing out.
struct StageLengths {
  int initial = 0;
  int development = 0;
  int middle = 0;
  int late = 0;
  std::string planted = {};  ///< month, of a row of the table
  std::string region = {};   ///< of a row of the table
  bool operator==(const StageLengths&) const = default;

  int total() const { return initial + development + middle + late; }
};

/// A crop of the table.
struct Crop {
  std::string name = {};
  double initial_coefficient = 0;  ///< [-]
  double middle_coefficient = 0;   ///< [-]
  double final_coefficient = 0;    ///< at the end of the late stage [-]
  Length height = {};              ///< at most
  Length root_depth_from = {};     ///< the range of the largest effective depth; the smaller
  Length root_depth_to = {};       ///< value is for deciding when to water (table 22, note 1)
  double allowed_depletion = 0;    ///< share of the available water, where it loses 5 mm/day [-]
  std::vector<StageLengths> stages = {};  ///< by region; empty where table 11 has none
};

/// @throws InvalidInput when it is not in the table
Crop crop(std::string_view name);

/// All of the table, as they are spelt.
std::vector<std::string> crop_names();

/// The row of table 11 for a region, by its name or the beginning of it; none named: the only row.
/// @throws InvalidInput naming the regions there are
StageLengths stage_lengths(const Crop& crop, std::string_view region = {});

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const StageLengths& stages);

}  // namespace hydro
