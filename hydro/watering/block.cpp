#include "hydro/watering/block.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {
namespace {

/// The tables are needed for what is not typed in.
void examine_crop(Examination& examination, const Block& block) {
  if (block.under_cover && !block.crop_coefficient)
    examination.add("crop_coefficient",
                    "is not given; under_cover the table, which is for open fields, does not hold");
  const bool all_is_typed = block.crop_coefficient && block.root_depth && block.allowed_depletion;
  if (block.crop.empty() || all_is_typed) return;
  try {
    const Crop found = crop(block.crop);
    if (!block.crop_coefficient && !block.stages) stage_lengths(found, block.region);
  } catch (const InvalidInput& error) {
    for (const Problem& problem : error.problems()) examination.add(problem.key, problem.message);
  }
}

}  // namespace

std::optional<Area> area_per_plant(const Block& block) {
  if (block.area_per_plant) return block.area_per_plant;
  if (block.row_spacing && block.plant_spacing) return *block.row_spacing * *block.plant_spacing;
  return std::nullopt;
}

std::vector<Problem> problems(const Block& block) {
  Examination examination;
  examination.name("name", block.name);
  examine_crop(examination, block);
  examination.within(
      "crop_coefficient", block.crop_coefficient, Range<double>{0.01, 2, units::plain});
  if (block.stages) {
    examination.include("stages", problems(*block.stages));
    if (!block.region.empty())
      examination.add("stages, region", "are both given; take one of the two ways");
  }
  if (block.season_day) examination.within("season_day", *block.season_day, 1, 2000);
  if (block.days_since_filled)
    examination.within("days_since_filled", *block.days_since_filled, 0, 366);
  examination.within("root_depth", block.root_depth, Range<Length>{0.02, 5, units::m});
  examination.within(
      "allowed_depletion", block.allowed_depletion, Range<double>{0.01, 1, units::plain});
  examination.include("soil", problems(block.soil));
  examination.within("share_wetted", block.share_wetted, Range<double>{0.01, 1, units::plain});
  examination.within("area", block.area, Range<Area>{0.01, 1e8, m2});
  examination.within("row_spacing", block.row_spacing, Range<Length>{0.01, 100, units::m});
  examination.within("plant_spacing", block.plant_spacing, Range<Length>{0.01, 100, units::m});
  examination.within("area_per_plant", block.area_per_plant, Range<Area>{0.0001, 10000, m2});
  if (block.area_per_plant && (block.row_spacing || block.plant_spacing))
    examination.add("area_per_plant, row_spacing, plant_spacing",
                    "are given; take the area or the two spacings");
  else if (block.plant_spacing && !block.row_spacing)
    examination.add("plant_spacing", "is given without row_spacing; an area needs both");
  examination.within("efficiency", block.efficiency, Range<double>{0.1, 1, units::plain});
  return examination.take();
}

}  // namespace hydro
