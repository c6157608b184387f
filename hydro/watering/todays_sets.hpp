// todays_sets.hpp: which sets water the blocks that need it today, and how much each must give.
//
// What      Joins what the ground needs (soil_water.hpp) to what can be opened: each set of the layout
//           waters the block that its outlets stand in. Sets of blocks that have enough are named, and
//           those of no block.
// Formula   The depth that fills the account of the block, on the area of the set's outlets: row
//           spacing x outlet spacing, or a share of the block's area that is the set's share of the
//           block's outlets.
// Range     What is lost on the way comes on top of it later (run_time.hpp): needs are net.
// Errors    InvalidInput for a set whose outlets stand in two blocks, a block of which neither
//           area nor spacing is known, a block without its need.
// Threads   Pure function.
// Example   examples/plan_day.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/watering/block.hpp"
#include "hydro/watering/day_plan.hpp"
#include "hydro/watering/soil_water.hpp"

#include <string>
#include <vector>

namespace hydro {

/// The sets of a layout, by what its blocks need.
struct TodaysSets {
  std::vector<SetToWater> to_water = {};   ///< in the order of the layout
  std::vector<std::string> enough = {};    ///< of blocks that need no water today
  std::vector<std::string> no_block = {};  ///< whose outlets stand in no block
};

/// @param needs one for each of the blocks, in any order @throws InvalidInput
TodaysSets todays_sets(const Layout& layout,
                       const std::vector<Block>& blocks,
                       const std::vector<WaterNeed>& needs);

}  // namespace hydro
