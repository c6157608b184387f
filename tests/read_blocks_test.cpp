// read_blocks_test.cpp: ground and weather out of a description file; every mistake at its place.
#include "hydro/text/read_blocks.hpp"

#include "hydro/text/read_layout.hpp"

#include <string>

#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

// The layout that the ground belongs to. The first line of what follows is the 25th.
const std::string bench = R"(name = "Ouzel Bench"
[site]
altitude = "400 ft"
[supply]
pressure = "34 psi"
[pipe.lateral]
inside_diameter = "1.754 in"
hazen_williams = 150
[outlet.head]
flow = "3.52 gpm"
at = "25 psi"
[[line]]
name = "row 1"
pipe = "lateral"
outlet = "head"
count = 10
spacing = "36 ft"
[[line]]
name = "row 2"
pipe = "lateral"
outlet = "head"
count = 10
spacing = "36 ft"

)";

const std::string ground = R"([weather]
date = 2026-07-06
latitude = "50.8 deg"
minimum_temperature = "12.3 degC"
maximum_temperature = "21.5 degC"
maximum_humidity = 0.84
minimum_humidity = 0.63
wind = "2.78 m/s"
wind_height = "10 m"
sunshine = "9.25 h"
days_since_rain = 4
rain = "0.5 in"

[block.strips]
lines = ["row 1", "row 2"]
crop = "potato"
region = "Europe"
planted = 2026-05-01
soil = { kind = "sandy loam", slope = 0.03 }
area = "0.5 acre"
efficiency = 0.75

[block.peonies]
lines = []
crop = "peony"
crop_coefficient = 0.9
root_depth = "18 in"
allowed_depletion = 0.4
soil = "loam"
share_wetted = 0.6
row_spacing = "3 ft"
plant_spacing = "30 in"
stages = { initial = 30, development = 30, middle = 60, late = 40 }
season_day = 60
)";

std::string refusal(const std::string& text) {
  try {
    read_blocks_text(bench + text);
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "(accepted)";
}

std::string with(std::string text, const std::string& old, const std::string& now) {
  const auto at = text.find(old);
  EXPECT_NE(at, std::string::npos) << old;
  return text.replace(at, old.size(), now);
}

TEST(ReadBlocks, ReadsGroundAndWeather) {
  const Blocks read = read_blocks_text(bench + ground);
  ASSERT_EQ(read.blocks.size(), 2U);
  const Block& peonies = read.blocks[0];
  const Block& strips = read.blocks[1];
  EXPECT_EQ(strips.name, "strips");
  EXPECT_THAT(strips.lines, ElementsAre("row 1", "row 2"));
  EXPECT_EQ(strips.crop, "potato");
  EXPECT_EQ(strips.region, "Europe");
  EXPECT_EQ(strips.season_day, 31 + 30 + 6);  // May and June, and the 6th of July
  EXPECT_EQ(strips.soil, (Soil{.kind = SoilKind::sandy_loam, .slope = 0.03}));
  EXPECT_EQ(strips.area, 0.5 * acre);
  EXPECT_EQ(strips.efficiency, 0.75);
  EXPECT_EQ(peonies.crop_coefficient, 0.9);
  EXPECT_EQ(peonies.root_depth, 18 * inch);
  EXPECT_EQ(peonies.soil, (Soil{.kind = SoilKind::loam}));
  EXPECT_EQ(peonies.share_wetted, 0.6);
  EXPECT_EQ(peonies.stages, (StageLengths{30, 30, 60, 40}));
  EXPECT_EQ(peonies.season_day, 60);
  EXPECT_NEAR(*area_per_plant(peonies) / ft2, 7.5, 1e-12);
  ASSERT_TRUE(read.weather);
  EXPECT_EQ(read.weather->day_of_year, 187);  // FAO-56, example 18
  EXPECT_EQ(read.weather->altitude, 400 * ft);
  EXPECT_EQ(read.weather->wind_height, 10 * units::m);
  ASSERT_TRUE(read.since_rain);
  EXPECT_EQ(read.since_rain->days, 4);
  EXPECT_EQ(read.since_rain->rain, 0.5 * inch);
}

TEST(ReadBlocks, TheLayoutOfTheFileIsReadAsIfTheyWereNotThere) {
  EXPECT_EQ(read_layout_text(bench + ground).lines(), read_layout_text(bench).lines());
  EXPECT_TRUE(read_blocks_text(bench).blocks.empty());
  EXPECT_FALSE(read_blocks_text(bench).weather);
}

TEST(ReadBlocks, WhatIsReadTellsWhatIsNeeded) {
  const Blocks read = read_blocks_text(bench + ground);
  const Velocity et0 = reference_evapotranspiration(*read.weather).rate;
  EXPECT_NEAR(et0 / mm_per_day, 3.88, 0.01);  // example 18, 22 m higher
  const WaterDay today{.reference_evapotranspiration = et0};
  for (const Block& block : read.blocks) {
    const WaterNeed need = water_need(block, days_since_rain(*read.since_rain, et0), today);
    EXPECT_EQ(need.days.size(), 4U);
    EXPECT_GT(need.net_depth / mm, 0);
  }
}

TEST(ReadBlocks, TellsEveryMistakeAtItsPlace) {
  std::string text = ground;
  text = with(text, "\"50.8 deg\"", "50.8");
  text = with(text, "\"21.5 degC\"", "\"11.5 degC\"");
  text = with(text, "sunshine = \"9.25 h\"", "sunshine = \"9.25 ft\"");
  text = with(text, "\"row 2\"]", "\"row 3\"]");
  text = with(text, "crop = \"potato\"", "crop = \"potatos\"");
  text = with(text, "\"sandy loam\"", "\"sandy\"");
  text = with(text, "allowed_depletion = 0.4", "allowed_depletion = 1.4");
  text = with(text, "area = \"0.5 acre\"", "aera = \"0.5 acre\"");
  const std::string message = refusal(text);
  EXPECT_THAT(message,
              AllOf(HasSubstr("text:27:12: weather: latitude: is the bare number 50.8; write a "
                              "text with the unit, like \"45.7 deg\""),
                    HasSubstr("text:29:23: weather: maximum_temperature: \"11.5 degC\" is 11.5 "
                              "degC, must be at least"),
                    HasSubstr("text:34:12: weather: sunshine: \"9.25 ft\": is a length; a time"),
                    HasSubstr("block \"strips\": lines: name \"row 3\", but there is no such line; "
                              "there are \"row 1\", \"row 2\""),
                    HasSubstr("block \"strips\": crop: is \"potatos\", which is not in the table; "
                              "near it are \"potato\""),
                    HasSubstr("block \"strips\": soil.kind: is \"sandy\"; accepted are \"sand\"")));
  EXPECT_THAT(message, HasSubstr("block \"strips\": \"aera\": is not a key known here"));
  EXPECT_THAT(message,
              HasSubstr("block \"peonies\": allowed_depletion: is 1.4, must be from 0.01 to 1"));
}

TEST(ReadBlocks, WhatCannotBeReadBringsNoFurtherMistakes) {
  const std::string message =
      refusal(with(with(ground, "maximum_temperature = \"21.5 degC\"", "maximum_temperature = 21"),
                   "date = 2026-07-06",
                   "date = \"6 July\""));
  EXPECT_THAT(message, HasSubstr("weather: maximum_temperature: is the bare number 21"));
  EXPECT_THAT(message, HasSubstr("weather: date: is the text \"6 July\"; write a date"));
  EXPECT_THAT(message, Not(HasSubstr("minimum_temperature")));
  EXPECT_THAT(message, Not(HasSubstr("sunshine")));
}

TEST(ReadBlocks, WeatherNeedsWhatHargreavesNeedsUnlessTheRateIsTyped) {
  EXPECT_THAT(refusal("[weather]\n"),
              AllOf(HasSubstr("weather: latitude: is not given"),
                    HasSubstr("weather: date: is not given"),
                    HasSubstr("weather: minimum_temperature: is not given"),
                    HasSubstr("weather: maximum_temperature: is not given")));
  const Blocks typed =
      read_blocks_text(bench + "[weather]\nreference_evapotranspiration = \"0.2 in/day\"\n");
  EXPECT_EQ(typed.weather->reference_evapotranspiration, 0.2 * inch_per_day);
}

TEST(ReadBlocks, DatesAndDays) {
  EXPECT_THAT(refusal(with(ground, "planted = 2026-05-01", "planted = 2026-07-07")),
              HasSubstr("planted: is after the date in [weather]"));
  EXPECT_THAT(refusal(with(ground, "planted = 2026-05-01", "planted = 2026-05-01\nseason_day = 5")),
              HasSubstr("season_day: is given, but so is planted"));
  EXPECT_THAT(refusal(with(ground, "date = 2026-07-06", "day_of_year = 187")),
              HasSubstr("planted: is given, but [weather] has no date"));
  EXPECT_THAT(refusal(with(ground, "date = 2026-07-06", "date = 2026-07-06\nday_of_year = 187")),
              HasSubstr("day_of_year: is given, but so is the date"));
  EXPECT_THAT(refusal(with(ground, "rain = \"0.5 in\"", "")),
              HasSubstr("days_since_rain: is given alone"));
}

TEST(ReadBlocks, ALineBelongsToOneBlock) {
  EXPECT_THAT(refusal(with(ground, "lines = []", "lines = [\"row 2\"]")),
              HasSubstr("block \"strips\": lines: name \"row 2\", which is named in block "
                        "\"peonies\" already"));
  EXPECT_THAT(refusal(with(ground, "lines = []\n", "")),
              HasSubstr("block \"peonies\": lines: is not given"));
  EXPECT_THAT(refusal("[block]\nstrips = 3\n"), HasSubstr("must be a table, [block.NAME]"));
}

}  // namespace
}  // namespace hydro
