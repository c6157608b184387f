// need_report.hpp: which blocks need water today, and how much, as a grower reads it.
//
// What      The weather and what it asks for; of each block whether it is time, what of the water that
//           may be used up is gone, what the crop uses in a day, and what fills the account again:
//           as a depth, and for each plant where its ground is known. What was estimated or guessed
//           is said.
// Accuracy  Depths to 1 mm or 0.05 in: no soil is known better.
// Errors    None.
// Threads   Pure function.
// Example   examples/plan_day.cpp
#pragma once

#include "hydro/quantities/unit_system.hpp"
#include "hydro/watering/block.hpp"
#include "hydro/watering/reference_evapotranspiration.hpp"
#include "hydro/watering/soil_water.hpp"

#include <string>
#include <vector>

namespace hydro {

/// @param needs one for each of the blocks, in their order
std::string need_report(const std::vector<Block>& blocks,
                        const std::vector<WaterNeed>& needs,
                        const ReferenceEvapotranspiration& weather,
                        UnitSystem units);

}  // namespace hydro
