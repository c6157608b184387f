// Reference evapotranspiration against the worked examples of FAO Irrigation and Drainage Paper 56
// (1998), read in a copy of the paper. They round on their way, some after two digits: where the
// final figure hangs on such a step, the check is to the digits that the paper calls the answer.
#include "hydro/watering/reference_evapotranspiration.hpp"

#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "accuracy.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

// Degrees and minutes; a latitude is printed to 0.01 degree, which is 0.02 MJ/m2/day at most.
Angle latitude(double degrees, double minutes) {
  return (degrees + minutes / 60) * degree;
}

/// @param on_its_way what rounding there may do beside that of the last digit
void expect_printed(double got, double printed, double half_digit, double on_its_way = 0) {
  EXPECT_NEAR(record(Accuracy::evapotranspiration, got, printed, half_digit),
              printed,
              half_digit + on_its_way);
}

TEST(ExtraterrestrialRadiation, Example8At20DegreesSouthOnThe3rdOfSeptember) {
  const Angle south_20 = -20 * degree;
  expect_printed(extraterrestrial_radiation(south_20, 246) / MJ_per_m2_day, 32.2, 0.05);
  expect_printed(daylight(south_20, 246) / units::h, 11.7, 0.05);  // example 9
}

TEST(ExtraterrestrialRadiation, AsInTheExamplesForRioBangkokUccleAndLyon) {
  struct Published {
    Angle latitude;
    int day;
    double radiation;
    double half_a_digit;
    double on_its_way = 0;
  };
  const std::vector<Published> published{
      {latitude(-22, -54), 135, 25.1, 0.05},          // example 10
      {latitude(13, 44), 105, 38.06, 0.005, 0.005},   // example 17, from latitude 13.73
      {latitude(50, 48), 187, 41.09, 0.005},          // example 18
      {latitude(45, 43), 196, 40.55, 0.005, 0.005}};  // example 20, from latitude 45.72
  for (const Published& p : published)
    expect_printed(extraterrestrial_radiation(p.latitude, p.day) / MJ_per_m2_day,
                   p.radiation,
                   p.half_a_digit,
                   p.on_its_way);
  expect_printed(daylight(latitude(-22, -54), 135) / units::h, 10.9, 0.05);
  expect_printed(daylight(latitude(13, 44), 105) / units::h, 12.31, 0.005);
  expect_printed(daylight(latitude(50, 48), 187) / units::h, 16.1, 0.05);
}

TEST(ExtraterrestrialRadiation, BeyondThePolarCirclesTheSunStaysUpOrDown) {
  EXPECT_EQ(daylight(80 * degree, 172) / units::h, 24);
  EXPECT_EQ(daylight(80 * degree, 355) / units::h, 0);
  EXPECT_EQ(extraterrestrial_radiation(80 * degree, 355) / MJ_per_m2_day, 0);
  EXPECT_GT(extraterrestrial_radiation(90 * degree, 172) / MJ_per_m2_day, 40);
}

TEST(ExtraterrestrialRadiation, WhatTheNorthHasOfADayTheSouthLacks) {
  for (const int day : {1, 60, 172, 300})
    EXPECT_NEAR(
        daylight(40 * degree, day) / units::h + daylight(-40 * degree, day) / units::h, 24, 1e-12);
}

TEST(WindAt2m, Example14) {
  // 3.2 m/s at 10 m: 2.4 m/s at 2 m; the factor in full: 4.87 / ln(678 - 5.42) = 0.748
  EXPECT_NEAR(wind_at_2_m(3.2 * m_per_s, 10 * units::m) / m_per_s, 2.4, 0.05);
  EXPECT_NEAR(wind_at_2_m(1 * m_per_s, 10 * units::m) / m_per_s, 0.748, 0.0005);
  EXPECT_NEAR(wind_at_2_m(1 * m_per_s, 2 * units::m) / m_per_s, 1, 0.0005);
}

Weather bangkok_april() {
  Weather weather;
  weather.latitude = latitude(13, 44);
  weather.day_of_year = 105;
  weather.altitude = 2 * units::m;
  weather.maximum_temperature = 34.8 * degC;
  weather.minimum_temperature = 25.6 * degC;
  weather.vapour_pressure = 2.85 * kPa;
  weather.wind = 2 * m_per_s;
  weather.sunshine = 8.5 * units::h;
  weather.heat_into_ground = 0.14 * (30.2 - 29.2) * MJ_per_m2_day;  // equation 44
  return weather;
}

TEST(PenmanMonteith, Example17MonthlyMeansOfBangkok) {
  // Printed 5.72. A figure of two decimals, reached by 0.685, 0.188 and 5.79 of three digits.
  expect_printed(penman_monteith(bangkok_april()).rate / mm_per_day, 5.72, 0.005, 0.005);
  EXPECT_THAT(penman_monteith(bangkok_april()).estimates, IsEmpty());
}

Weather uccle_july() {
  Weather weather;
  weather.latitude = latitude(50, 48);
  weather.day_of_year = 187;
  weather.altitude = 100 * units::m;
  weather.maximum_temperature = 21.5 * degC;
  weather.minimum_temperature = 12.3 * degC;
  weather.maximum_humidity = 0.84;
  weather.minimum_humidity = 0.63;
  weather.wind = 10.0 / 3.6 * m_per_s;
  weather.wind_height = 10 * units::m;
  weather.sunshine = 9.25 * units::h;
  return weather;
}

TEST(PenmanMonteith, Example18ADayInUccle) {
  expect_printed(penman_monteith(uccle_july()).rate / mm_per_day, 3.88, 0.005);
}

TEST(PenmanMonteith, TheOtherWaysOfHumidityOfTheSameAirGiveTheSame) {
  Weather bare = uccle_july();
  bare.maximum_humidity.reset();
  bare.minimum_humidity.reset();
  // e0(Tmin) 1.431, e0(Tmax) 2.564 kPa, ea 1.409 kPa of the example, each to half a digit
  Weather by_pressure = bare;
  by_pressure.vapour_pressure = 1.409 * kPa;
  Weather by_maximum = bare;
  by_maximum.maximum_humidity = 1.409 / 1.431;
  Weather by_mean = bare;
  by_mean.mean_humidity = 1.409 / 1.997;
  Weather by_dew_point = bare;
  const double logarithm = std::log(1.409 / 0.6108);  // equation 14 the other way round
  by_dew_point.dew_point = 237.3 * logarithm / (17.27 - logarithm) * degC;
  const double printed = penman_monteith(uccle_july()).rate / mm_per_day;
  // 0.0005 kPa of vapour is 0.0005 / 0.589 of the second term, 1.07 mm/day
  for (const Weather& weather : {by_pressure, by_maximum, by_mean, by_dew_point})
    EXPECT_NEAR(penman_monteith(weather).rate / mm_per_day, printed, 0.004);
}

TEST(PenmanMonteith, MeasuredRadiationTakesThePlaceOfSunshine) {
  Weather weather = uccle_july();
  weather.sunshine.reset();
  weather.solar_radiation = 22.07 * MJ_per_m2_day;  // Rs of example 18
  EXPECT_NEAR(penman_monteith(weather).rate / mm_per_day, 3.88, 0.005);
}

Weather lyon_july() {
  Weather weather;
  weather.latitude = latitude(45, 43);
  weather.day_of_year = 196;
  weather.altitude = 200 * units::m;
  weather.maximum_temperature = 26.6 * degC;
  weather.minimum_temperature = 14.8 * degC;
  return weather;
}

TEST(PenmanMonteith, Example20TemperaturesAlone) {
  const ReferenceEvapotranspiration lyon = penman_monteith(lyon_july());
  expect_printed(
      lyon.rate / mm_per_day, 4.56, 0.005, 0.01);  // reached by factors of two digits, 0.16, 0.63
  EXPECT_THAT(lyon.estimates,
              UnorderedElementsAre(WeatherEstimate::dew_point_of_minimum,
                                   WeatherEstimate::radiation_of_temperatures,
                                   WeatherEstimate::usual_wind));
  Weather wind = lyon_july();
  wind.wind = 1 * m_per_s;
  expect_printed(penman_monteith(wind).rate / mm_per_day, 4.2, 0.05);
  wind.wind = 3 * m_per_s;
  expect_printed(penman_monteith(wind).rate / mm_per_day, 4.8, 0.05);
}

// ---- what is kept within bounds

double rate(const Weather& weather) {
  return penman_monteith(weather).rate / mm_per_day;
}

TEST(PenmanMonteith, Examples15And16RadiationFromTheTemperatures) {
  // 22.3 MJ/m2/day inland at Lyon, 21.9 on the coast at Bangkok: as if they had been measured. Half
  // a digit of them is 0.05 x 0.77 x 0.408 x 0.7 mm/day.
  Weather lyon = lyon_july();
  lyon.solar_radiation = 22.3 * MJ_per_m2_day;
  EXPECT_NEAR(rate(lyon_july()), rate(lyon), 0.012);
  Weather bangkok = bangkok_april();
  bangkok.sunshine.reset();
  bangkok.coastal = true;
  Weather measured = bangkok;
  measured.solar_radiation = 21.9 * MJ_per_m2_day;
  EXPECT_NEAR(rate(bangkok), rate(measured), 0.012);
}

TEST(PenmanMonteith, RadiationFromTheTemperaturesIsAtMostThatOfAClearSky) {
  Weather desert = lyon_july();
  desert.altitude = 0 * units::m;
  desert.coastal = true;
  desert.minimum_temperature = 5 * degC;
  desert.maximum_temperature = 35 * degC;
  Weather measured = desert;
  measured.solar_radiation =
      0.75 * extraterrestrial_radiation(desert.latitude, desert.day_of_year);  // equation 36
  EXPECT_DOUBLE_EQ(rate(desert), rate(measured));
}

TEST(PenmanMonteith, LongWaveRadiationKnowsNoSkyClearerOrDarkerThanItsBounds) {
  // Outside of them only the short waves change: by 0.77 of the step, and 0.685 of that is drawn
  // (example 17, printed to three digits).
  const double above_air = extraterrestrial_radiation(latitude(13, 44), 105) / MJ_per_m2_day;
  const auto at = [&](double share) {
    Weather weather = bangkok_april();
    weather.sunshine.reset();
    weather.solar_radiation = share * above_air * MJ_per_m2_day;
    return rate(weather);
  };
  const double of_a_tenth = 0.408 * 0.685 * 0.77 * 0.1 * above_air;
  EXPECT_NEAR(at(0.95) - at(0.85), of_a_tenth, 0.001 * of_a_tenth);
  EXPECT_NEAR(at(0.22) - at(0.12), of_a_tenth, 0.001 * of_a_tenth);
}

TEST(PenmanMonteith, ACalmCountsAsABreath) {
  Weather calm = uccle_july();
  calm.wind_height.reset();
  calm.wind = 0 * m_per_s;
  Weather breath = calm;
  breath.wind = 0.5 * m_per_s;
  EXPECT_EQ(rate(calm), rate(breath));
}

TEST(PenmanMonteith, TheTwilightAddsNoSun) {
  Weather full = uccle_july();
  full.sunshine = daylight(full.latitude, full.day_of_year);
  Weather more = full;
  more.sunshine = *full.sunshine + 0.4 * units::h;
  EXPECT_EQ(rate(full), rate(more));
}

TEST(Hargreaves, Example20) {
  const ReferenceEvapotranspiration lyon = hargreaves(lyon_july());
  expect_printed(lyon.rate / mm_per_day, 5.0, 0.05);
  EXPECT_EQ(lyon.method, EvapotranspirationMethod::hargreaves);
}

TEST(ReferenceEvapotranspiration, TakesTheBestThatTheReadingsAllow) {
  EXPECT_EQ(reference_evapotranspiration(uccle_july()).method,
            EvapotranspirationMethod::penman_monteith);
  EXPECT_EQ(reference_evapotranspiration(lyon_july()).method, EvapotranspirationMethod::hargreaves);
  for (const auto& forget : std::vector<std::function<void(Weather&)>>{
           [](Weather& w) { w.wind.reset(), w.wind_height.reset(); },
           [](Weather& w) { w.sunshine.reset(); },
           [](Weather& w) { w.maximum_humidity.reset(), w.minimum_humidity.reset(); }}) {
    Weather weather = uccle_july();
    forget(weather);
    EXPECT_EQ(reference_evapotranspiration(weather).method, EvapotranspirationMethod::hargreaves);
  }
  Weather typed;
  typed.reference_evapotranspiration = 0.25 * inch_per_day;
  EXPECT_EQ(reference_evapotranspiration(typed).rate / inch_per_day, 0.25);
  EXPECT_EQ(reference_evapotranspiration(typed).method, EvapotranspirationMethod::typed);
}

TEST(ReferenceEvapotranspiration, IsNeverLessThanNothing) {
  Weather frost = lyon_july();
  frost.day_of_year = 5;
  frost.maximum_temperature = -20 * degC;
  frost.minimum_temperature = -25 * degC;
  EXPECT_EQ(hargreaves(frost).rate / mm_per_day, 0);
  EXPECT_GE(penman_monteith(frost).rate / mm_per_day, 0);
}

std::string refusal(const Weather& weather) {
  try {
    reference_evapotranspiration(weather);
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "(accepted)";
}

TEST(Weather, TellsEveryMistakeAtOnce) {
  Weather weather = uccle_july();
  weather.latitude = 508 * degree;
  weather.day_of_year = 0;
  weather.maximum_temperature = 10 * degC;
  weather.wind = -1 * m_per_s;
  weather.maximum_humidity = 84;
  const std::string message = refusal(weather);
  EXPECT_THAT(message, HasSubstr("latitude: is 508 deg, must be from -90 to 90 deg"));
  EXPECT_THAT(message, HasSubstr("day_of_year: is 0, must be from 1 to 366"));
  EXPECT_THAT(message,
              HasSubstr("maximum_temperature: is 10 degC, must be at least the "
                        "minimum_temperature, 12.3 degC"));
  EXPECT_THAT(message, HasSubstr("wind: is -1 m/s"));
  EXPECT_THAT(message, HasSubstr("maximum_humidity: is 84, must be from 0.01 to 1"));
}

TEST(Weather, RefusesMoreSunThanTheDayHas) {
  Weather weather = uccle_july();
  weather.sunshine = 17 * units::h;
  EXPECT_THAT(refusal(weather), HasSubstr("sunshine: is 17 h, must be from 0 to the daylight"));
  weather.sunshine.reset();
  weather.solar_radiation = 42 * MJ_per_m2_day;
  EXPECT_THAT(refusal(weather), HasSubstr("solar_radiation: is 42 MJ/m2/day"));
}

TEST(Weather, RefusesTwoWaysOfOneThing) {
  Weather weather = uccle_july();
  weather.dew_point = 12 * degC;
  EXPECT_THAT(refusal(weather), HasSubstr("dew_point, maximum_humidity: are given"));
  weather = uccle_july();
  weather.maximum_humidity.reset();
  EXPECT_THAT(refusal(weather), HasSubstr("minimum_humidity: is given without"));
  weather = uccle_july();
  weather.minimum_temperature = std::nan("") * degC;
  EXPECT_THAT(refusal(weather), HasSubstr("minimum_temperature: is nan"));
}

}  // namespace
}  // namespace hydro
