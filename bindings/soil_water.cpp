// soil_water.cpp: how much water a block of ground needs: weather, crop, soil, and the account of
// what the roots have.

#include "hydro/watering/soil_water.hpp"

#include "hydro/watering/block.hpp"
#include "hydro/watering/crop.hpp"
#include "hydro/watering/crop_coefficient.hpp"
#include "hydro/watering/reference_evapotranspiration.hpp"
#include "hydro/watering/soil.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

/// A July day in Uccle, FAO-56 example 18, for the examples in the texts.
const std::string july =
    ">>> july = Weather(latitude=50.8 * degree, day_of_year=187, altitude=100 * m,\n"
    "...                minimum_temperature=12.3 * degC, maximum_temperature=21.5 * degC,\n"
    "...                maximum_humidity=0.84, minimum_humidity=0.63, wind=2.78 * m_per_s,\n"
    "...                wind_height=10 * m, sunshine=9.25 * units.h)\n";

void bind_weather(py::module_& module) {
  Record<Weather>("Weather",
                  "The weather of a day, or of the mean day of a week or a month. Humidity is "
                  "given in one way or not at all: dew point, vapour pressure, the day's two "
                  "extremes (or the maximum alone), its mean.")
      .field("reference_evapotranspiration",
             &Weather::reference_evapotranspiration,
             "Typed in: needs nothing else.")
      .field("latitude", &Weather::latitude, "North is positive.")
      .field("day_of_year", &Weather::day_of_year, "1 is the first of January.")
      .field("altitude", &Weather::altitude, "Default sea level.")
      .field("minimum_temperature", &Weather::minimum_temperature, "Of the day.")
      .field("maximum_temperature", &Weather::maximum_temperature, "Of the day.")
      .field("dew_point", &Weather::dew_point, "A Temperature.")
      .field("vapour_pressure", &Weather::vapour_pressure, "Mean of the day.")
      .field("maximum_humidity", &Weather::maximum_humidity, "Relative, 0 to 1 [-].")
      .field("minimum_humidity", &Weather::minimum_humidity, "Relative, 0 to 1 [-].")
      .field("mean_humidity", &Weather::mean_humidity, "Relative, 0 to 1 [-].")
      .field("wind", &Weather::wind, "Mean of 24 hours.")
      .field("wind_height", &Weather::wind_height, "Of its measurement, default 2 m.")
      .field("sunshine", &Weather::sunshine, "Bright sunshine in the day.")
      .field("solar_radiation", &Weather::solar_radiation, "Mean of 24 hours; instead of sunshine.")
      .field("heat_into_ground",
             &Weather::heat_into_ground,
             "Default 0; matters in monthly means only.")
      .field("coastal", &Weather::coastal, "For radiation from temperatures.")
      .description(module);
  Record<ReferenceEvapotranspiration>("ReferenceEvapotranspiration",
                                      "A depth of water a day, and how it was had.")
      .field("rate", &ReferenceEvapotranspiration::rate, "ET0.")
      .field("method", &ReferenceEvapotranspiration::method, "How it was had.")
      .field("estimates",
             &ReferenceEvapotranspiration::estimates,
             "What stood in for readings that were not there.")
      .result(module);
}

void bind_evapotranspiration(py::module_& module) {
  def(module,
      "extraterrestrial_radiation",
      &extraterrestrial_radiation,
      {"latitude", "day_of_year"},
      "Radiation on a level plane above the air, mean of 24 hours, FAO-56 equation 21. latitude: "
      "-90 to 90 degrees. day_of_year: 1 to 366.\n\n"
      ">>> round(extraterrestrial_radiation(-20 * degree, 246).to(MJ_per_m2_day), 1)  # example 8\n"
      "32.2");
  def(module,
      "daylight",
      &daylight,
      {"latitude", "day_of_year"},
      "From sunrise to sunset, FAO-56 equation 34.\n\n"
      ">>> round(daylight(-20 * degree, 246).to(units.h), 1)  # example 9\n"
      "11.7");
  def(module,
      "wind_at_2_m",
      &wind_at_2_m,
      {"wind", "height"},
      "Over short grass, from a reading at another height, 0.2 to 100 m, FAO-56 equation 47.\n\n"
      ">>> round(wind_at_2_m(3.2 * m_per_s, 10 * m).to(m_per_s), 1)  # example 14\n"
      "2.4");
  def(module,
      "penman_monteith",
      &penman_monteith,
      {"weather"},
      ("What well-watered short grass gives to the air, FAO-56 equation 6; what is not given "
       "by estimates, which are named. InvalidInput for problems(weather).\n\n" +
       july +
       ">>> round(penman_monteith(july).rate.to(mm_per_day), 2)\n"
       "3.88")
          .c_str());
  def(module,
      "hargreaves",
      &hargreaves,
      {"weather"},
      "The same from the day's two temperatures, FAO-56 equation 52.\n\n"
      ">>> lyon = Weather(latitude=45.72 * degree, day_of_year=196,\n"
      "...                minimum_temperature=14.8 * degC, maximum_temperature=26.6 * degC)\n"
      ">>> round(hargreaves(lyon).rate.to(mm_per_day), 1)  # example 20\n"
      "5.0");
  def(module,
      "reference_evapotranspiration",
      &reference_evapotranspiration,
      {"weather"},
      ("Typed in if it is; penman_monteith if humidity, wind and sunshine or radiation are there; "
       "else hargreaves.\n\n" +
       july +
       ">>> reference_evapotranspiration(july).method\n"
       "EvapotranspirationMethod.penman_monteith")
          .c_str());
}

void bind_crop(py::module_& module) {
  auto stages =
      Record<StageLengths>("StageLengths",
                           "How many days each stage of a crop lasts, from planting, or from "
                           "leafing out.")
          .field("initial", &StageLengths::initial, "Days.")
          .field("development", &StageLengths::development, "Days.")
          .field("middle", &StageLengths::middle, "Days.")
          .field("late", &StageLengths::late, "Days.")
          .field("planted", &StageLengths::planted, "Month, of a row of the table.")
          .field("region", &StageLengths::region, "Of a row of the table.")
          .description(module);
  method(stages, "total", &StageLengths::total, {}, "Days from planting to the end.");
  Record<Crop>("Crop", "A crop, as the published tables describe it.")
      .field("name", &Crop::name, "As the table spells it.")
      .field("initial_coefficient", &Crop::initial_coefficient, "Kc [-].")
      .field("middle_coefficient", &Crop::middle_coefficient, "Kc [-].")
      .field("final_coefficient", &Crop::final_coefficient, "At the end of the late stage [-].")
      .field("height", &Crop::height, "At most.")
      .field("root_depth_from",
             &Crop::root_depth_from,
             "The smaller end of the range, which is for deciding when to water.")
      .field("root_depth_to", &Crop::root_depth_to, "The larger end.")
      .field("allowed_depletion",
             &Crop::allowed_depletion,
             "Share of the available water, where it loses 5 mm/day [-].")
      .field("stages", &Crop::stages, "By region; empty where table 11 has none.")
      .description(module);
  def(
      module,
      "crop",
      [](const std::string& name) { return crop(name); },
      {"name"},
      "A crop of FAO-56, tables 11, 12 and 22. InvalidInput when it is not there, with names near "
      "it: none stands in for another.\n\n"
      ">>> crop(\"potato\").middle_coefficient\n"
      "1.15");
  def(module,
      "crop_names",
      &crop_names,
      {},
      "All of the table, as they are spelt.\n\n"
      ">>> \"potato\" in crop_names()\n"
      "True");
  def(
      module,
      "stage_lengths",
      [](const Crop& crop, const std::string& region) { return stage_lengths(crop, region); },
      {"crop", {"region", py::str("")}},
      "The row of table 11 for a region, by its name or the beginning of it; none named: the only "
      "row. InvalidInput with the regions there are.\n\n"
      ">>> stage_lengths(crop(\"potato\"), \"Europe\").total()\n"
      "145");
}

void bind_crop_coefficient(py::module_& module) {
  Record<Climate>("Climate",
                  "What the tables of coefficients hang on: means of the stage, not of a day.")
      .field("wind", &Climate::wind, "At 2 m.")
      .field(
          "minimum_humidity", &Climate::minimum_humidity, "The day's least relative humidity [-].")
      .description(module);
  def(module,
      "climate_of",
      &climate_of,
      {"weather"},
      ("Wind at 2 m and least humidity of this weather; where they are not given, the wind is 2 "
       "m/s and the dew point the minimum temperature.\n\n" +
       july +
       ">>> climate_of(july).minimum_humidity\n"
       "0.63")
          .c_str());
  def(module,
      "adjusted_coefficient",
      &adjusted_coefficient,
      {"tabulated", "height", "climate"},
      "A coefficient of the table as it is in another climate, FAO-56 equations 62 and 65.\n\n"
      ">>> dry_and_windy = Climate(wind=4.6 * m_per_s, minimum_humidity=0.44)\n"
      ">>> round(adjusted_coefficient(1.2, 2 * m, dry_and_windy), 2)\n"
      "1.3");
  def(module,
      "crop_coefficient",
      &crop_coefficient,
      {"crop", "stages", "season_day", {"climate", py::cast(Climate{})}},
      "How much more, or less, a crop uses than short grass on a day of its season, FAO-56 "
      "equation 66. season_day: 1 to the length of the season.\n\n"
      ">>> potato = crop(\"potato\")\n"
      ">>> crop_coefficient(potato, stage_lengths(potato, \"Europe\"), 80)\n"
      "1.15");
  def(
      module,
      "allowed_depletion",
      [](double tabulated, const Velocity& use) { return allowed_depletion(tabulated, use); },
      {"tabulated", "crop_evapotranspiration"},
      "The share of the available water that may be used up without harm, where the crop loses "
      "this much a day. tabulated: for 5 mm/day [-].\n\n"
      ">>> round(allowed_depletion(0.35, 7 * mm_per_day), 2)\n"
      "0.27");
}

void bind_soil(py::module_& module) {
  Record<Soil>("Soil", "A soil as it is described: a kind, or what was measured, or both.")
      .field("kind", &Soil::kind, "By texture.")
      .field("available_water", &Soil::available_water, "Depth of water in a depth of soil [-].")
      .field("intake_rate", &Soil::intake_rate, "Where it lies; the slope does not change it.")
      .field("slope", &Soil::slope, "Rise over run [-], default level.")
      .description(module);
  Record<AvailableWater>("AvailableWater", "A published range of available water.")
      .field("least", &AvailableWater::least, "[-]")
      .field("most", &AvailableWater::most, "[-]")
      .result(module);
  def(module,
      "available_water_range",
      &available_water_range,
      {"kind"},
      "FAO-56 table 19, between field capacity and wilting point.\n\n"
      ">>> available_water_range(\"clay\").most\n"
      "0.2");
  def(module,
      "available_water",
      &available_water,
      {"soil"},
      "What was measured, or the middle of the range of its kind [-]. InvalidInput where neither "
      "is known.\n\n"
      ">>> available_water(Soil(kind=\"sand\"))\n"
      "0.08");
  def(module,
      "intake_rate",
      &intake_rate,
      {"soil"},
      "What was measured, or the low end for its kind, less for the slope. InvalidInput where "
      "neither is known.\n\n"
      ">>> intake_rate(Soil(kind=\"loam\"))\n"
      "10 * mm_per_h");
}

void bind_block(py::module_& module) {
  Record<Block>("Block",
                "A piece of ground that is watered alike: its lines, its crop and its soil. What "
                "is typed in takes the place of what the tables say of the crop.")
      .field("name", &Block::name, "Its own.")
      .field("lines", &Block::lines, "Of the layout, by their names.")
      .field(
          "crop", &Block::crop, "One of crop_names(); empty, or any other name, when all is typed.")
      .field("crop_coefficient", &Block::crop_coefficient, "Kc [-].")
      .field("stages", &Block::stages, "Days; or region.")
      .field("region", &Block::region, "A row of the table of stages.")
      .field("season_day", &Block::season_day, "Today, counted from planting or leafing out.")
      .field("root_depth", &Block::root_depth, "Where the crop draws water.")
      .field("allowed_depletion", &Block::allowed_depletion, "Share of the available water [-].")
      .field("under_cover",
             &Block::under_cover,
             "In a tunnel or glasshouse: the tables do not hold, no rain comes.")
      .field("days_since_filled",
             &Block::days_since_filled,
             "Mornings since water last filled its soil.")
      .field("soil", &Block::soil, "What it stands in.")
      .field(
          "share_wetted", &Block::share_wetted, "Of the ground that water reaches, default 1 [-].")
      .field("area", &Block::area, "Of the whole block.")
      .field("row_spacing",
             &Block::row_spacing,
             "With the plant spacing: the area of a plant; or area_per_plant.")
      .field("plant_spacing", &Block::plant_spacing, "In the row.")
      .field("area_per_plant", &Block::area_per_plant, "That area itself.")
      .field("efficiency", &Block::efficiency, "Share of the water applied that the roots get [-].")
      .description(module);
  def(module,
      "area_per_plant",
      &area_per_plant,
      {"block"},
      "By the two spacings or as it is given; None: not known.\n\n"
      ">>> round(area_per_plant(Block(row_spacing=3 * ft, plant_spacing=2 * ft)) / ft2, 9)\n"
      "6.0");
}

void bind_account(py::module_& module) {
  Record<WaterDay>("WaterDay", "What came and what the weather asked for on a day.")
      .field("reference_evapotranspiration", &WaterDay::reference_evapotranspiration, "ET0.")
      .field("rain", &WaterDay::rain, "Measured.")
      .field("watering", &WaterDay::watering, "Net, over the whole area.")
      .field("crop_coefficient",
             &WaterDay::crop_coefficient,
             "Of that day, instead of the block's [-].")
      .field("root_depth", &WaterDay::root_depth, "Of that day, instead of the block's.")
      .description(module);
  Record<SinceRain>("SinceRain",
                    "Days of one weather: it rained so many mornings ago and has been dry since.")
      .field("days", &SinceRain::days, "0: this morning.")
      .field("rain", &SinceRain::rain, "Measured.")
      .description(module);
  def(module,
      "days_since_rain",
      &days_since_rain,
      {"since", "reference_evapotranspiration"},
      "The days from that rain to yesterday, for water_need; the rain of this morning goes with "
      "today.\n\n"
      ">>> len(days_since_rain(SinceRain(days=4, rain=0.5 * inch), 4 * mm_per_day))\n"
      "4");
  Record<SoilWaterDay>("SoilWaterDay",
                       "A line of the account. Depths are over the whole area of the block.")
      .field("root_depth", &SoilWaterDay::root_depth, "On that day.")
      .field("total_available_water",
             &SoilWaterDay::total_available_water,
             "TAW: that the roots reach.")
      .field("readily_available_water",
             &SoilWaterDay::readily_available_water,
             "RAW: that may be used up without harm.")
      .field("allowed_depletion", &SoilWaterDay::allowed_depletion, "p [-].")
      .field("depletion_before", &SoilWaterDay::depletion_before, "At the end of the day before.")
      .field("rain", &SoilWaterDay::rain, "Measured.")
      .field("rain_not_counted",
             &SoilWaterDay::rain_not_counted,
             "Too little, or between what is wetted.")
      .field("watering", &SoilWaterDay::watering, "Net.")
      .field("percolation", &SoilWaterDay::percolation, "Lost below the roots.")
      .field("depletion_at_start", &SoilWaterDay::depletion_at_start, "After rain and watering.")
      .field("crop_coefficient", &SoilWaterDay::crop_coefficient, "Kc [-].")
      .field("stress_coefficient", &SoilWaterDay::stress_coefficient, "Ks [-].")
      .field("crop_evapotranspiration",
             &SoilWaterDay::crop_evapotranspiration,
             "In the day, with stress.")
      .field("depletion_at_end", &SoilWaterDay::depletion_at_end, "In the evening.")
      .result(module);
  Record<WaterNeed>("WaterNeed", "What a block needs.")
      .field("block", &WaterNeed::block, "Its name.")
      .field("days", &WaterNeed::days, "The account, up to yesterday.")
      .field("today", &WaterNeed::today, "If nothing more comes.")
      .field("start_is_guessed",
             &WaterNeed::start_is_guessed,
             "The depletion at the start was assumed, and nothing has filled the account since.")
      .field("depletion", &WaterNeed::depletion, "Now.")
      .field(
          "crop_evapotranspiration", &WaterNeed::crop_evapotranspiration, "Without stress, today.")
      .field("water_today", &WaterNeed::water_today, "Whether it is time.")
      .field("reason", &WaterNeed::reason, "Why, or why not.")
      .field("time_left",
             &WaterNeed::time_left,
             "Until all is used up that may be, at today's use: less than a day means today. "
             "None: nothing is used.")
      .field("net_depth", &WaterNeed::net_depth, "Fills the account.")
      .field(
          "gross_depth", &WaterNeed::gross_depth, "With the losses; None: no efficiency is given.")
      .field("volume", &WaterNeed::volume, "Gross where known, else net; None: no area.")
      .field("volume_per_plant", &WaterNeed::volume_per_plant, "Likewise; None: no area per plant.")
      .result(module);
  const SoilWaterOptions defaults;
  def(
      module,
      "water_need",
      [](const Block& block,
         const std::vector<WaterDay>& past,
         const WaterDay& today,
         const std::optional<Length>& depletion,
         const Climate& climate) {
        return water_need(block, past, today, {.depletion = depletion, .climate = climate});
      },
      {"block",
       "past",
       "today",
       may_be_left_out("depletion", Passing::by_name),
       {"climate", py::cast(defaults.climate), Passing::by_name}},
      "The water in the roots' reach, kept like an account: whether to water today and how much, "
      "FAO-56 chapter 8. past: the days before today, the oldest first; may be empty. today: what "
      "came this morning, and what the weather will ask for. depletion: before the first of the "
      "days, or of today; None: all that may be used up is. climate: for coefficients of the "
      "table. InvalidInput with every mistake of the block and of the days.\n\n"
      ">>> bed = Block(name=\"bed\", crop_coefficient=1.2, root_depth=0.8 * m, "
      "allowed_depletion=0.4,\n"
      "...             soil=Soil(available_water=0.2))\n"
      ">>> hot = WaterDay(reference_evapotranspiration=5 * mm_per_day)\n"
      ">>> need = water_need(bed, [hot] * 10, hot, depletion=55 * mm)  # example 37\n"
      ">>> round(need.days[-1].depletion_at_end.to(mm), 1), need.reason\n"
      "(104.5, WaterReason.used_up)");
  def(module,
      "water_need_today",
      &water_need_today,
      {"block",
       "since_rain",
       "reference_evapotranspiration",
       {"climate", py::cast(defaults.climate), Passing::by_name}},
      "The account since water last filled the block (days_since_filled), rain since then counted; "
      "else since the rain; else of today alone. All days have the same weather.\n\n"
      ">>> bed = Block(name=\"bed\", crop_coefficient=1.2, root_depth=0.8 * m, "
      "allowed_depletion=0.4,\n"
      "...             soil=Soil(available_water=0.2), days_since_filled=10)\n"
      ">>> need = water_need_today(bed, None, 5 * mm_per_day)\n"
      ">>> round(need.depletion.to(mm), 1), need.reason\n"
      "(60.0, WaterReason.today)");
}

}  // namespace

void bind_soil_water(py::module_& module) {
  bind_weather(module);
  bind_evapotranspiration(module);
  bind_crop(module);
  bind_crop_coefficient(module);
  bind_soil(module);
  bind_block(module);
  bind_account(module);
}

}  // namespace hydro::bindings
