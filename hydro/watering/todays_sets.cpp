#include "hydro/watering/todays_sets.hpp"

#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <cstddef>

namespace hydro {
namespace {

bool has(const std::vector<std::string>& names, const std::string& name) {
  return std::ranges::find(names, name) != names.end();
}

/// Lines with outlets that are open when only this set runs.
std::vector<std::string> opened_by(const Layout& layout, const WateringSet& set) {
  const Layout running = layout.without_faults().watering({set.name});
  std::vector<std::string> found;
  for (std::size_t l = 0; l < running.lines().size(); ++l)
    if (!running.is_shut(l) && running.lines()[l].outlet_count() > 0)
      found.push_back(running.lines()[l].name);
  return found;
}

int outlets_on(const Layout& layout, const std::vector<std::string>& lines) {
  int count = 0;
  for (const std::string& line : lines)
    count += layout.lines()[layout.index_of(line)].outlet_count();
  return count;
}

/// The block that a set waters; none: null.
const Block* block_of(const WateringSet& set,
                      const std::vector<std::string>& lines,
                      const std::vector<Block>& blocks) {
  const Block* found = nullptr;
  for (const Block& block : blocks) {
    if (std::ranges::none_of(lines, [&](const auto& line) { return has(block.lines, line); }))
      continue;
    if (found)
      throw InvalidInput("set",
                         in_quotes(set.name) + " waters block " + in_quotes(found->name) +
                             " and block " + in_quotes(block.name) +
                             ", must be lines of one block; make a set of each");
    found = &block;
  }
  return found;
}

const WaterNeed& need_of(const Block& block, const std::vector<WaterNeed>& needs) {
  const auto found = std::ranges::find(needs, block.name, &WaterNeed::block);
  if (found == needs.end())
    throw InvalidInput("needs", "have none of block " + in_quotes(block.name));
  return *found;
}

SetToWater to_water(const Layout& layout,
                    const WateringSet& set,
                    const std::vector<std::string>& lines,
                    const Block& block,
                    const WaterNeed& need) {
  SetToWater it{.set = set.name, .ground = {.lines = lines}};
  if (block.row_spacing) {
    it.need = WaterAmount{.depth = need.net_depth};
    it.ground.row_spacing = block.row_spacing;
    return it;
  }
  if (block.area) {
    const double share =
        static_cast<double>(outlets_on(layout, lines)) / outlets_on(layout, block.lines);
    it.need = WaterAmount{.depth = need.net_depth};
    it.ground.area = share * *block.area;
    return it;
  }
  throw InvalidInput("block " + in_quotes(block.name),
                     "has neither row_spacing nor area; one is needed to tell how long to water");
}

}  // namespace

TodaysSets todays_sets(const Layout& layout,
                       const std::vector<Block>& blocks,
                       const std::vector<WaterNeed>& needs) {
  TodaysSets today;
  for (const WateringSet& set : layout.sets()) {
    const std::vector<std::string> lines = opened_by(layout, set);
    const Block* const block = block_of(set, lines, blocks);
    if (!block) {
      today.no_block.push_back(set.name);
      continue;
    }
    const WaterNeed& need = need_of(*block, needs);
    if (need.water_today)
      today.to_water.push_back(to_water(layout, set, lines, *block, need));
    else
      today.enough.push_back(set.name);
  }
  return today;
}

}  // namespace hydro
