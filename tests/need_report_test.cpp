// What the ground needs, in words: each reason, each estimate of the weather, in both systems of units.
#include "hydro/text/need_report.hpp"

#include <string>
#include <utility>
#include <vector>

#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

constexpr Time day = 24 * units::h;

WaterNeed need(WaterReason reason, const Length& net_depth) {
  WaterNeed need;
  need.reason = reason;
  need.water_today = reason != WaterReason::enough;
  need.net_depth = need.depletion = net_depth;
  need.today.readily_available_water = 40 * mm;
  need.crop_evapotranspiration = 5 * mm / day;
  return need;
}

const ReferenceEvapotranspiration typed{.rate = 5.2 * mm / day};

std::string told(const WaterNeed& one, UnitSystem units = UnitSystem::si) {
  return need_report({Block{.name = "beans"}}, {one}, typed, units);
}

TEST(NeedReport, SaysWhetherABlockNeedsWater) {
  EXPECT_THAT(told(need(WaterReason::today, 38 * mm)),
              AllOf(HasSubstr("* beans: water today, 38 mm into the ground."),
                    HasSubstr("The weather asks short grass for 5 mm a day, as it was given.")));
  EXPECT_THAT(told(need(WaterReason::used_up, 45 * mm)),
              HasSubstr("* beans: short of water already, 45 mm into the ground."));
  EXPECT_THAT(told(need(WaterReason::today, 38.1 * mm), UnitSystem::us),
              HasSubstr("water today, 1.50 in into the ground."));
}

TEST(NeedReport, SaysHowLongWhatIsLeftWillDo) {
  WaterNeed enough = need(WaterReason::enough, 10 * mm);
  EXPECT_THAT(told(enough), HasSubstr("* beans: enough; nothing is used today."));
  const std::pair<double, const char*> cases[] = {
      {0.9, "less than a day left"}, {1.9, "1 day left"}, {6.2, "6 days left"}};
  for (const auto& [days, words] : cases) {
    enough.time_left = days * day;
    EXPECT_THAT(told(enough), HasSubstr(std::string("* beans: enough; ") + words + " until it"));
  }
}

TEST(NeedReport, SaysWhatEachPlantGetsOfWhatIsGiven) {
  WaterNeed tree = need(WaterReason::today, 38 * mm);
  tree.volume_per_plant = 152 * litre;
  EXPECT_THAT(told(tree), HasSubstr("into the ground, 152.0 L to each plant."));
  EXPECT_THAT(told(tree, UnitSystem::us), HasSubstr("40.2 gal to each plant."));
  tree.water_today = false;
  tree.reason = WaterReason::enough;
  EXPECT_THAT(told(tree), Not(HasSubstr("plant")));
}

TEST(NeedReport, SaysWhatWasEstimated) {
  const ReferenceEvapotranspiration weather{
      .rate = 5.2 * mm / day,
      .method = EvapotranspirationMethod::hargreaves,
      .estimates = {WeatherEstimate::sea_level,
                    WeatherEstimate::dew_point_of_minimum,
                    WeatherEstimate::radiation_of_temperatures,
                    WeatherEstimate::usual_wind}};
  WaterNeed guessed = need(WaterReason::today, 38 * mm);
  guessed.start_is_guessed = true;
  std::string told = need_report({Block{.name = "beans"}}, {guessed}, weather, UnitSystem::si);
  for (char& c : told)
    if (c == '\n') c = ' ';  // lines are broken where they are full
  for (const char* words : {"a day, by Hargreaves, from the temperatures alone; no altitude",
                            "no altitude was given: sea level; no humidity",
                            "no humidity was given: by the coldest of the day; no sunshine",
                            "no sunshine was given: by the span of the temperatures; no wind",
                            "no wind was given: 2 m/s.",
                            "beans: how dry it was at first is not known; all that may be used up"})
    EXPECT_THAT(told, HasSubstr(words));
}

}  // namespace
}  // namespace hydro
