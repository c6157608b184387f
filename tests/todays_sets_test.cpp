// todays_sets_test.cpp: sets give what the ground of their outlets needs, and no others run.
#include "hydro/watering/todays_sets.hpp"

#include "hydro/text/need_report.hpp"

#include <string>
#include <vector>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

/// Two beds and a tunnel, each a set, on lines of 4, 6 and 5 sprays.
Layout beds() {
  const Outlet spray{.flow = 1 * gpm, .at = 30 * psi};
  const auto line = [&](const std::string& name, int count) {
    return Line{.name = name,
                .pipe = {.inside_diameter = 1 * inch, .hazen_williams = 150},
                .outlet = spray,
                .count = count,
                .spacing = 10 * ft};
  };
  return Layout{Supply{.pressure = 40 * psi},
                {line("bed 1", 4), line("bed 2", 6), line("tunnel", 5)},
                {},
                {},
                {{"first bed", {"bed 1"}}, {"second bed", {"bed 2"}}, {"grafts", {"tunnel"}}}};
}

Block block_of(const std::string& name, const std::vector<std::string>& lines) {
  return {.name = name,
          .lines = lines,
          .crop_coefficient = 1.0,
          .root_depth = 18 * inch,
          .allowed_depletion = 0.4,
          .soil = {.kind = SoilKind::loam}};
}

WaterNeed need_of(const std::string& block, bool today, const Length& depth) {
  return {.block = block, .water_today = today, .net_depth = depth};
}

TEST(TodaysSets, GiveWhatTheirBlockNeeds) {
  Block flowers = block_of("flowers", {"bed 1", "bed 2"});
  flowers.area = 1000 * ft2;
  Block grafts = block_of("grafts", {"tunnel"});
  grafts.row_spacing = 6 * ft;
  const TodaysSets today =
      todays_sets(beds(),
                  {flowers, grafts},
                  {need_of("flowers", true, 0.8 * inch), need_of("grafts", false, 0.2 * inch)});
  ASSERT_EQ(today.to_water.size(), 2U);
  EXPECT_EQ(today.to_water[0].set, "first bed");
  EXPECT_EQ(today.to_water[0].need->depth, 0.8 * inch);
  EXPECT_NEAR(*today.to_water[0].ground.area / ft2, 400, 1e-9);  // 4 of 10 outlets
  EXPECT_NEAR(*today.to_water[1].ground.area / ft2, 600, 1e-9);
  EXPECT_THAT(today.to_water[1].ground.lines, ElementsAre("bed 2"));
  EXPECT_THAT(today.enough, ElementsAre("grafts"));
}

TEST(TodaysSets, NameWhatStandsInNoBlock) {
  Block flowers = block_of("flowers", {"bed 1"});
  flowers.row_spacing = 8 * ft;
  const TodaysSets today = todays_sets(beds(), {flowers}, {need_of("flowers", true, 0.5 * inch)});
  EXPECT_EQ(today.to_water[0].ground.row_spacing, 8 * ft);
  EXPECT_THAT(today.no_block, ElementsAre("second bed", "grafts"));
}

std::string refusal(const std::vector<Block>& blocks, const std::vector<WaterNeed>& needs) {
  try {
    static_cast<void>(todays_sets(beds(), blocks, needs));
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "(accepted)";
}

TEST(TodaysSets, RefuseWhatCannotBeTold) {
  const Block bare = block_of("flowers", {"bed 1"});
  EXPECT_THAT(refusal({bare}, {need_of("flowers", true, 1 * inch)}), HasSubstr("row_spacing"));
  EXPECT_THAT(refusal({bare}, {}), HasSubstr("none of block \"flowers\""));
  EXPECT_THAT(refusal({bare, block_of("herbs", {"bed 1"})}, {}), HasSubstr("\"herbs\""));
}

TEST(NeedReport, SaysWhoNeedsWater) {
  const Block flowers = block_of("flowers", {"bed 1"});
  WaterNeed need = need_of("flowers", true, 0.8 * inch);
  need.reason = WaterReason::today;
  const ReferenceEvapotranspiration weather{.rate = 5 * mm_per_day};
  EXPECT_THAT(need_report({flowers}, {need}, weather, UnitSystem::us),
              HasSubstr("flowers: water today, 0.80 in"));
  need.reason = WaterReason::enough;
  need.time_left = 60 * units::h;
  EXPECT_THAT(need_report({flowers}, {need}, weather, UnitSystem::si),
              HasSubstr("flowers: enough; 2 days left"));
}

}  // namespace
}  // namespace hydro
