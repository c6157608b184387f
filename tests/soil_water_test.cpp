// The account of the soil's water against the worked examples 36, 37 and 38 of FAO Irrigation and
// Drainage Paper 56 (1998), read in a copy of the paper, and against the sum of its own entries.
#include "hydro/watering/soil_water.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "accuracy.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

/// A block of which all is typed in.
Block block(double available_water,
            Length root_depth,
            double allowed_depletion,
            double coefficient) {
  return {.name = "bed",
          .crop_coefficient = coefficient,
          .root_depth = root_depth,
          .allowed_depletion = allowed_depletion,
          .soil = {.available_water = available_water}};
}

WaterDay dry(double reference_mm) {
  return {.reference_evapotranspiration = reference_mm * mm_per_day};
}

template <class F>
std::string refusal(F f) {
  try {
    f();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "(accepted)";
}

// ---- published

TEST(SoilWater, Example36AvailableWaterOfThreeCropsOnThreeSoils) {
  struct Published {
    double root_m, share, available, total, readily;
  };
  // Onion, tomato, maize; loamy sand, silt, silty clay. Whole mm are printed.
  const std::vector<Published> published{{0.4, 0.30, 0.09, 36, 11},
                                         {0.4, 0.30, 0.17, 68, 20},
                                         {0.4, 0.30, 0.12, 48, 14},
                                         {0.8, 0.40, 0.09, 72, 29},
                                         {0.8, 0.40, 0.17, 136, 54},
                                         {0.8, 0.40, 0.12, 96, 38},
                                         {1.2, 0.55, 0.09, 108, 59},
                                         {1.2, 0.55, 0.17, 204, 112},
                                         {1.2, 0.55, 0.12, 144, 79}};
  for (const Published& p : published) {
    const SoilWaterDay today =
        water_need(block(p.available, p.root_m * units::m, p.share, 1), {}, dry(5)).today;
    EXPECT_NEAR(today.total_available_water / mm, p.total, 1e-9);
    EXPECT_NEAR(today.readily_available_water / mm, p.readily, 0.5);
  }
}

TEST(SoilWater, Example37ATomatoUnderStress) {
  const Block tomato = block(0.32 - 0.12, 0.8 * units::m, 0.40, 1.2);
  const std::vector<WaterDay> days(10, dry(5));
  const WaterNeed need = water_need(tomato, days, dry(5), {.depletion = 55 * mm});
  const double stress[] = {1.00, 1.00, 0.97, 0.91, 0.85, 0.80, 0.75, 0.70, 0.66, 0.62};
  const double use[] = {6.0, 6.0, 5.8, 5.4, 5.1, 4.8, 4.5, 4.2, 3.9, 3.7};
  const double depletion[] = {61.0, 67.0, 72.8, 78.3, 83.4, 88.2, 92.6, 96.9, 100.8, 104.5};
  ASSERT_EQ(need.days.size(), 10U);
  for (std::size_t i = 0; i < 10; ++i) {
    SCOPED_TRACE(i + 1);
    const SoilWaterDay& day = need.days[i];
    const auto expect = [](double got, double printed, double half_digit, double halves = 0) {
      EXPECT_NEAR(
          record(Accuracy::crops_and_soil, got, printed, half_digit), printed, half_digit + halves);
    };
    expect(day.stress_coefficient, stress[i], 0.005);
    // 3.75 and 92.65 are halves, which the paper rounds down
    expect(day.crop_evapotranspiration / mm, use[i], 0.05, 0.001);
    expect(day.depletion_at_end / mm, depletion[i], 0.05, 0.001);
    EXPECT_EQ(day.percolation / mm, 0);
  }
  EXPECT_EQ(need.reason, WaterReason::used_up);
}

struct Example38Day {
  double reference, rain, watering, coefficient, use, percolation, start, end;
};
// Its columns 2, 6, 7, 11 to 14 and 5. Of day 1 and 10, the depletion after the watering.
const std::vector<Example38Day>& example_38() {
  static const std::vector<Example38Day> days{{4.5, 0, 40, 1.21, 5.5, 17, 0, 5},
                                              {5.0, 0, 0, 1.21, 6.1, 0, 5, 12},
                                              {3.9, 0, 0, 1.04, 4.0, 0, 12, 16},
                                              {4.2, 0, 0, 0.70, 2.9, 0, 16, 18},
                                              {4.8, 0, 0, 0.52, 2.5, 0, 18, 21},
                                              {2.7, 6, 0, 1.00, 2.7, 0, 15, 18},
                                              {5.8, 0, 0, 0.82, 4.7, 0, 18, 22},
                                              {5.1, 0, 0, 0.55, 2.8, 0, 22, 25},
                                              {4.7, 0, 0, 0.47, 2.2, 0, 25, 27},
                                              {5.2, 0, 27, 1.21, 6.3, 0, 0, 6}};
  return days;
}

std::vector<WaterDay> days_of_example_38() {
  std::vector<WaterDay> days;
  for (const Example38Day& day : example_38())
    days.push_back({.reference_evapotranspiration = day.reference * mm_per_day,
                    .rain = day.rain * mm,
                    .watering = day.watering * mm,
                    .crop_coefficient = day.coefficient,
                    .root_depth = (0.30 + 0.05 / 9 * static_cast<double>(days.size())) * units::m});
  return days;
}

TEST(SoilWater, Example38WhenToWaterAgain) {
  std::vector<WaterDay> days = days_of_example_38();
  const WaterDay day_10 = days.back();
  days.pop_back();
  const Block bean = block(0.23 - 0.10, 0.3 * units::m, 0.6, 1);
  WaterDay morning = day_10;
  morning.watering = {};
  const WaterNeed need = water_need(bean, days, morning);  // from all of the readily available used
  EXPECT_NEAR(need.days.front().depletion_before / mm, 23, 0.5);
  // Whole mm are printed, and coefficients to 0.01: half of that of 5 mm on each day before.
  for (std::size_t i = 0; i < days.size(); ++i) {
    SCOPED_TRACE(i + 1);
    const Example38Day& printed = example_38()[i];
    const double rounding = 0.5 + 0.005 * 5 * static_cast<double>(i + 1);
    EXPECT_NEAR(need.days[i].crop_evapotranspiration / mm, printed.use, 0.05 + 0.005 * 5);
    EXPECT_NEAR(need.days[i].percolation / mm, printed.percolation, rounding);
    EXPECT_NEAR(need.days[i].depletion_at_start / mm, printed.start, rounding);
    EXPECT_NEAR(need.days[i].depletion_at_end / mm, printed.end, rounding);
  }
  // "On day 10, another irrigation is required", of 27 mm, without percolation.
  EXPECT_EQ(need.reason, WaterReason::used_up);
  EXPECT_NEAR(need.net_depth / mm, 27, 0.75);
  morning.watering = need.net_depth;
  const WaterNeed after = water_need(bean, days, morning);
  EXPECT_EQ(after.today.percolation / mm, 0);
  EXPECT_NEAR(after.today.depletion_at_end / mm, 6, 0.5);
}

// ---- laws

TEST(SoilWater, NoDropIsMadeOrLost) {
  std::mt19937 random(20260706);
  const auto between = [&](double from, double to) {
    return std::uniform_real_distribution<double>(from, to)(random);
  };
  for (int trial = 0; trial < 2000; ++trial) {
    Block bed = block(between(0.03, 0.25), between(0.1, 1.5) * units::m, between(0.1, 1), 1);
    bed.share_wetted = between(0.2, 1);
    std::vector<WaterDay> days;
    double root = *bed.root_depth / units::m;
    for (int i = 0; i < 40; ++i) {
      root += trial % 2 == 0 ? between(0, 0.01) : 0;
      days.push_back({.reference_evapotranspiration = between(0, 12) * mm_per_day,
                      .rain = (between(0, 1) < 0.2 ? between(0, 60) : 0) * mm,
                      .watering = (between(0, 1) < 0.2 ? between(0, 60) : 0) * mm,
                      .crop_coefficient = between(0.1, 1.3),
                      .root_depth = root * units::m});
    }
    const WaterDay today = days.back();
    days.pop_back();
    WaterNeed need = water_need(bed, days, today);
    need.days.push_back(need.today);
    double in = 0;
    double out = 0;
    for (const SoilWaterDay& day : need.days) {
      in += (day.rain + day.watering) / mm;
      out += (day.rain_not_counted + day.percolation + day.crop_evapotranspiration) / mm;
      ASSERT_GE(day.depletion_at_end / mm, 0);
      ASSERT_LE(day.depletion_at_end / mm, day.total_available_water / mm * (1 + 1e-12));
      ASSERT_GE(day.crop_evapotranspiration / mm, 0);
      ASSERT_GE(day.percolation / mm, 0);
    }
    const double stored = (need.days.front().depletion_before - need.today.depletion_at_end) / mm;
    ASSERT_NEAR(in, out + stored, 1e-9 * (in + out)) << "trial " << trial;
  }
}

TEST(SoilWater, TheDayBeforeHandsItsDepletionOn) {
  const std::vector<WaterDay> days(5, dry(4));
  const WaterNeed need =
      water_need(block(0.15, 0.5 * units::m, 0.5, 1), days, dry(4), {.depletion = 10 * mm});
  for (std::size_t i = 1; i < need.days.size(); ++i)
    EXPECT_EQ(need.days[i].depletion_before, need.days[i - 1].depletion_at_end);
  EXPECT_EQ(need.today.depletion_before, need.days.back().depletion_at_end);
  EXPECT_NEAR(need.depletion / mm, 30, 1e-9);
}

// ---- what it says

TEST(WaterNeed, TellsWhetherToWaterTodayAndWhy) {
  // 75 mm in all, 37.5 readily available, 5 mm a day
  const Block bed = block(0.15, 0.5 * units::m, 0.5, 1);
  const auto at = [&](double depletion_mm) {
    return water_need(bed, {}, dry(5), {.depletion = depletion_mm * mm});
  };
  EXPECT_EQ(at(30).reason, WaterReason::enough);
  EXPECT_FALSE(at(30).water_today);
  EXPECT_NEAR(*at(30).time_left / units::day, 1.5, 1e-9);
  EXPECT_EQ(at(33).reason, WaterReason::today);
  EXPECT_TRUE(at(33).water_today);
  EXPECT_NEAR(*at(33).time_left / units::day, 0.9, 1e-9);
  EXPECT_EQ(at(38).reason, WaterReason::used_up);
  EXPECT_EQ(*at(38).time_left / units::day, 0);
  EXPECT_LT(at(38).today.stress_coefficient, 1);
  EXPECT_FALSE(water_need(bed, {}, dry(0), {.depletion = 30 * mm}).time_left);
}

TEST(WaterNeed, InDepthsAndVolumes) {
  Block bed = block(0.15, 0.5 * units::m, 0.5, 1);
  const SoilWaterOptions used{.depletion = 30 * mm};
  const WaterNeed bare = water_need(bed, {}, dry(5), used);
  EXPECT_FALSE(bare.gross_depth || bare.volume || bare.volume_per_plant);
  bed.efficiency = 0.75;
  bed.area = 1 * hectare;
  bed.row_spacing = 2 * units::m;
  bed.plant_spacing = 0.5 * units::m;
  const WaterNeed need = water_need(bed, {}, dry(5), used);
  EXPECT_DOUBLE_EQ(need.net_depth / mm, 30);
  EXPECT_DOUBLE_EQ(*need.gross_depth / mm, 40);
  EXPECT_DOUBLE_EQ(*need.volume / m3, 400);
  EXPECT_DOUBLE_EQ(*need.volume_per_plant / litre, 40);
  bed.row_spacing.reset();
  bed.plant_spacing.reset();
  bed.efficiency.reset();
  bed.area_per_plant = 2 * m2;
  EXPECT_DOUBLE_EQ(*water_need(bed, {}, dry(5), used).volume_per_plant / litre, 60);
}

TEST(WaterNeed, RainSinceWhenIsTheShortWayToTheDays) {
  const Block bed = block(0.15, 0.5 * units::m, 0.5, 1);
  const auto days = days_since_rain({.days = 3, .rain = 50 * mm}, 5 * mm_per_day);
  const WaterNeed need = water_need(bed, days, dry(5));
  ASSERT_EQ(need.days.size(), 3U);
  EXPECT_NEAR(need.days.front().percolation / mm, 50 - 37.5, 1e-9);
  EXPECT_NEAR(need.depletion / mm, 15, 1e-9);
  EXPECT_FALSE(need.start_is_guessed);  // the rain has filled it
  EXPECT_THAT(days_since_rain({.rain = 50 * mm}, 5 * mm_per_day), IsEmpty());
  WaterDay wet_morning = dry(5);
  wet_morning.rain = 20 * mm;
  EXPECT_NEAR(water_need(bed, {}, wet_morning).depletion / mm, 17.5, 1e-9);
  EXPECT_TRUE(water_need(bed, {}, wet_morning).start_is_guessed);
  EXPECT_FALSE(water_need(bed, {}, wet_morning, {.depletion = 30 * mm}).start_is_guessed);
}

TEST(WaterNeed, OfTodayCountsFromWhatLastFilledTheSoil) {
  Block bed = block(0.15, 1 * units::m, 0.5, 1);
  const Velocity use = 5 * mm_per_day;
  bed.days_since_filled = 4;
  const auto depletion = [&](const std::optional<SinceRain>& rain) {
    return water_need_today(bed, rain, use).depletion / mm;
  };
  EXPECT_NEAR(depletion({}), 4 * 5, 1e-9);
  EXPECT_NEAR(depletion(SinceRain{2, 8 * mm}), 4 * 5 - 8, 1e-9);
  EXPECT_NEAR(depletion(SinceRain{0, 8 * mm}), 4 * 5 - 8, 1e-9);
  EXPECT_NEAR(depletion(SinceRain{6, 8 * mm}), 4 * 5, 1e-9);   // before it was filled
  EXPECT_NEAR(depletion(SinceRain{2, 30 * mm}), 2 * 5, 1e-9);  // fills it once more
  EXPECT_FALSE(water_need_today(bed, {}, use).start_is_guessed);
  bed.under_cover = true;
  EXPECT_NEAR(depletion(SinceRain{2, 8 * mm}), 4 * 5, 1e-9);
  bed.days_since_filled.reset();
  EXPECT_TRUE(water_need_today(bed, SinceRain{2, 80 * mm}, use).start_is_guessed);
  bed.days_since_filled = -1;
  EXPECT_THAT(refusal([&] { depletion({}); }),
              HasSubstr("days_since_filled: is -1, must be from 0 to 366"));
}

TEST(WaterNeed, ASprinkleOfRainIsNotCounted) {
  const Block bed = block(0.15, 0.5 * units::m, 0.5, 1);
  WaterDay day = dry(5);
  day.rain = 0.9 * mm;  // below 0.2 ET0
  EXPECT_DOUBLE_EQ(water_need(bed, {day}, dry(5)).days[0].rain_not_counted / mm, 0.9);
  day.rain = 1.1 * mm;
  EXPECT_EQ(water_need(bed, {day}, dry(5)).days[0].rain_not_counted / mm, 0);
}

TEST(WaterNeed, WhereOnlyAShareIsWettedTheAccountIsSmaller) {
  Block row = block(0.15, 0.5 * units::m, 0.5, 1);
  row.share_wetted = 0.4;
  WaterDay day = dry(5);
  day.rain = 10 * mm;
  const WaterNeed need = water_need(row, {day}, dry(5), {.depletion = 10 * mm});
  EXPECT_NEAR(need.today.total_available_water / mm, 30, 1e-9);
  EXPECT_NEAR(need.days[0].rain_not_counted / mm, 6, 1e-9);
  EXPECT_NEAR(need.depletion / mm, 10 - 4 + 5, 1e-9);
}

TEST(WaterNeed, TakesCropAndSoilFromTheTables) {
  const Block hops{.name = "hop rows",
                   .crop = "hops",
                   .season_day = 100,
                   .soil = {.kind = SoilKind::loamy_sand}};
  const WaterNeed need = water_need(hops, {dry(6)}, dry(6));
  // Table 12: 1.05; table 22: 1.0 m, p 0.50 + 0.04 (5 - 6.3); table 19: 0.09
  EXPECT_EQ(need.today.crop_coefficient, 1.05);
  EXPECT_EQ(need.today.root_depth / units::m, 1.0);
  EXPECT_NEAR(need.today.total_available_water / mm, 90, 1e-9);
  EXPECT_NEAR(need.today.allowed_depletion, 0.448, 1e-12);
  EXPECT_NEAR(need.crop_evapotranspiration / mm_per_day, 6.3, 1e-9);
  Block young = hops;
  young.season_day = 2;
  EXPECT_EQ(water_need(young, std::vector<WaterDay>(5, dry(6)), dry(6)).days[0].crop_coefficient,
            0.3);
  Block growing = hops;  // 25 days at 0.3, then 40 to 1.05
  growing.season_day = 45;
  const WaterNeed later = water_need(growing, {dry(6), dry(6)}, dry(6));
  EXPECT_NEAR(later.days[0].crop_coefficient, 0.3 + 18.0 / 40 * 0.75, 1e-12);
  EXPECT_NEAR(later.today.crop_coefficient, 0.3 + 20.0 / 40 * 0.75, 1e-12);
  const SoilWaterOptions windy{.climate = {4 * m_per_s, 0.30}};
  EXPECT_NEAR(water_need(hops, {}, dry(6), windy).today.crop_coefficient,
              1.05 + 0.14 * std::pow(5.0 / 3, 0.3),
              1e-12);
}

// ---- refusals

TEST(WaterNeed, ACropThatIsNotInTheTableIsNeverReplacedByAnother) {
  Block peonies{.name = "peonies", .crop = "peony", .soil = {.kind = SoilKind::loam}};
  peonies.season_day = 60;
  peonies.root_depth = 0.5 * units::m;
  EXPECT_THAT(refusal([&] { water_need(peonies, {}, dry(5)); }),
              HasSubstr("crop: is \"peony\", which is not in the table"));
  peonies.crop_coefficient = 0.9;
  EXPECT_THAT(refusal([&] { water_need(peonies, {}, dry(5)); }), HasSubstr("allowed_depletion"));
  peonies.allowed_depletion = 0.4;
  EXPECT_EQ(water_need(peonies, {}, dry(5)).today.crop_coefficient, 0.9);
}

TEST(WaterNeed, UnderCoverTheCoefficientIsTypedIn) {
  Block tunnel{.name = "tunnel",
               .crop = "tomato",
               .region = "Mediterranean",
               .season_day = 80,
               .under_cover = true,
               .soil = {.kind = SoilKind::loam}};
  EXPECT_THAT(refusal([&] { water_need(tunnel, {}, dry(5)); }),
              HasSubstr("crop_coefficient: is not given; under_cover the table"));
  tunnel.crop_coefficient = 0.7;
  EXPECT_EQ(water_need(tunnel, {}, dry(5)).today.crop_coefficient, 0.7);
  EXPECT_NEAR(water_need(tunnel, {}, dry(5)).today.total_available_water / mm, 155 * 0.7, 1e-9);
}

TEST(WaterNeed, TellsEveryMistakeAtOnce) {
  Block bed = block(0.15, 0.5 * units::m, 1.2, 1);
  bed.efficiency = 75;
  bed.plant_spacing = 1 * units::m;
  bed.soil = {};
  WaterDay day = dry(5);
  day.rain = -1 * mm;
  const std::string message = refusal([&] { water_need(bed, {dry(5), day}, dry(50)); });
  EXPECT_THAT(message,
              AllOf(HasSubstr("allowed_depletion: is 1.2, must be from 0.01 to 1"),
                    HasSubstr("efficiency: is 75, must be from 0.1 to 1"),
                    HasSubstr("plant_spacing: is given without row_spacing"),
                    HasSubstr("soil.kind: is not given"),
                    HasSubstr("days, 2.rain: is -1 mm"),
                    HasSubstr("today.reference_evapotranspiration: is 50 mm/day")));
  EXPECT_THAT(message, Not(HasSubstr("days, 1")));
}

TEST(WaterNeed, RefusesADepletionOfMoreThanThereIs) {
  const Block bed = block(0.15, 0.5 * units::m, 0.5, 1);
  EXPECT_THAT(refusal([&] { water_need(bed, {}, dry(5), {.depletion = 80 * mm}); }),
              HasSubstr("depletion: is 80 mm, must be from 0 to 75 mm"));
  EXPECT_THAT(refusal([&] { water_need(bed, {}, dry(5), {.depletion = std::nan("") * mm}); }),
              HasSubstr("depletion: is nan"));
  WaterDay shallower = dry(5);
  shallower.root_depth = 0.4 * units::m;
  EXPECT_THAT(refusal([&] { water_need(bed, {dry(5)}, shallower); }),
              HasSubstr("root_depth: is 0.4 m, must be at least that of the day before, 0.5 m"));
  EXPECT_THAT(refusal([] { days_since_rain({.days = -1}, 5 * mm_per_day); }),
              HasSubstr("days: is -1, must be from 0 to 366"));
}

TEST(WaterNeed, WithoutACropAllMustBeTyped) {
  const Block bare{.name = "bed", .soil = {.kind = SoilKind::loam}};
  EXPECT_THAT(refusal([&] { water_need(bare, {}, dry(5)); }),
              AllOf(HasSubstr("crop_coefficient: is not given, nor is the crop"),
                    HasSubstr("root_depth: is not given, nor is the crop"),
                    HasSubstr("allowed_depletion: is not given, nor is the crop")));
  const Block undated{.name = "hops", .crop = "hops", .soil = {.kind = SoilKind::loam}};
  EXPECT_THAT(refusal([&] { water_need(undated, {}, dry(5)); }),
              HasSubstr("season_day: is not given"));
}

}  // namespace
}  // namespace hydro
