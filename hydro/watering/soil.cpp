#include "hydro/watering/soil.hpp"

#include "hydro/quantities/range.hpp"

#include <utility>

namespace hydro {
namespace {

struct Row {
  SoilKind kind;
  AvailableWater available_water;  // table 19
  double intake_mm_h;              // the low end of the basic rate
};
constexpr Row rows[] = {{SoilKind::sand, {0.05, 0.11}, 30},
                        {SoilKind::loamy_sand, {0.06, 0.12}, 20},
                        {SoilKind::sandy_loam, {0.11, 0.15}, 20},
                        {SoilKind::loam, {0.13, 0.18}, 10},
                        {SoilKind::silt_loam, {0.13, 0.19}, 10},
                        {SoilKind::silt, {0.16, 0.20}, 5},
                        {SoilKind::silty_clay_loam, {0.13, 0.18}, 5},
                        {SoilKind::silty_clay, {0.13, 0.19}, 1},
                        {SoilKind::clay, {0.12, 0.20}, 1}};

const Row& row_of(SoilKind kind) {
  for (const Row& row : rows)
    if (row.kind == kind) return row;
  throw InvalidInput("kind", "is none of the kinds of soil");
}

/// What a slope leaves of the rate.
double left_by(double slope) {
  return slope <= 0.05 ? 1 : slope <= 0.08 ? 0.8 : slope <= 0.12 ? 0.6 : slope <= 0.20 ? 0.4 : 0.25;
}

void examine(const Soil& soil) {
  if (auto found = problems(soil); !found.empty()) throw InvalidInput(std::move(found));
}

}  // namespace

AvailableWater available_water_range(SoilKind kind) {
  return row_of(kind).available_water;
}

double available_water(const Soil& soil) {
  examine(soil);
  if (soil.available_water) return *soil.available_water;
  if (!soil.kind)
    throw InvalidInput("available_water",
                       "is not given, nor is the kind of soil, of which it would be known");
  const AvailableWater range = available_water_range(*soil.kind);
  return (range.least + range.most) / 2;
}

Velocity intake_rate(const Soil& soil) {
  examine(soil);
  if (soil.intake_rate) return *soil.intake_rate;
  if (!soil.kind)
    throw InvalidInput("intake_rate",
                       "is not given, nor is the kind of soil, of which it would be known");
  return row_of(*soil.kind).intake_mm_h * left_by(soil.slope.value_or(0)) * mm_per_h;
}

std::vector<Problem> problems(const Soil& soil) {
  Examination examination;
  examination.within(
      "available_water", soil.available_water, Range<double>{0.01, 0.5, units::plain});
  examination.within("intake_rate", soil.intake_rate, Range<Velocity>{0.1, 1000, mm_per_h});
  examination.within("slope", soil.slope, Range<double>{0, 1, units::plain});
  return examination.take();
}

}  // namespace hydro
