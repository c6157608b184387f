#include "hydro/watering/reference_evapotranspiration.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/watering/saturation.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

namespace hydro {
namespace {

// In the units of FAO-56: degC, kPa, m/s, MJ/m2/day, mm/day.
constexpr double mm_per_megajoule = 0.408;  // equation 20
constexpr double usual_wind = 2;            // p. 63 [m/s]
constexpr double least_wind = 0.5;          // p. 63 [m/s]
constexpr double inland = 0.16;             // equation 50
constexpr double coastal = 0.19;            // equation 50
constexpr double albedo = 0.23;             // of short grass, equation 38
constexpr Range<Angle> latitudes{-90, 90, degree};
constexpr Range<Temperature> air_temperatures{-50, 60, degC};

double year_angle(int day_of_year) {
  return 2 * std::numbers::pi / 365 * day_of_year;
}
double declination(int day_of_year) {  // equation 24 [rad]
  return 0.409 * std::sin(year_angle(day_of_year) - 1.39);
}
/// Equation 25 [rad]; 0 where the sun does not rise, pi where it does not set.
double sunset_angle(double latitude, int day_of_year) {
  return std::acos(std::clamp(-std::tan(latitude) * std::tan(declination(day_of_year)), -1.0, 1.0));
}

double radiation_above_air(double latitude, int day_of_year) {  // equation 21
  constexpr double solar_constant = 0.0820;                     // [MJ/m2/min]
  const double nearness = 1 + 0.033 * std::cos(year_angle(day_of_year));
  const double sun = declination(day_of_year);
  const double sunset = sunset_angle(latitude, day_of_year);
  return 24 * 60 / std::numbers::pi * solar_constant * nearness *
         (sunset * std::sin(latitude) * std::sin(sun) +
          std::cos(latitude) * std::cos(sun) * std::sin(sunset));
}
double daylight_hours(double latitude, int day_of_year) {  // equation 34
  return 24 / std::numbers::pi * sunset_angle(latitude, day_of_year);
}

double slope_of_saturation(double celsius) {  // equation 13
  return 4098 * saturation_pressure(celsius) / ((celsius + 237.3) * (celsius + 237.3));
}
double psychrometric_constant(double altitude_m) {  // equations 7 and 8
  return 0.665e-3 * 101.3 * std::pow((293 - 0.0065 * altitude_m) / 293, 5.26);
}
double to_2_m(double wind, double height_m) {  // equation 47
  return wind * 4.87 / std::log(67.8 * height_m - 5.42);
}

bool knows_humidity(const Weather& weather) {
  return weather.dew_point || weather.vapour_pressure || weather.maximum_humidity ||
         weather.mean_humidity;
}
bool knows_radiation(const Weather& weather) {
  return weather.sunshine || weather.solar_radiation;
}

/// One day in the paper's units, with what stands in for readings that are not there.
class Day {
 public:
  explicit Day(const Weather& weather)
      : weather_(weather),
        minimum_(weather.minimum_temperature / degC),
        maximum_(weather.maximum_temperature / degC),
        above_air_(radiation_above_air(si(weather.latitude), weather.day_of_year)) {}

  double hargreaves() const {
    return 0.0023 * (mean() + 17.8) * std::sqrt(maximum_ - minimum_) * mm_per_megajoule *
           above_air_;
  }

  double penman_monteith() {
    const double wind = std::max(least_wind, wind_at_2_m());
    const double slope = slope_of_saturation(mean());
    const double gamma = psychrometric_constant(altitude());
    const double vapour = vapour_pressure();
    const double heat =
        net_radiation(vapour) - weather_.heat_into_ground.value_or(Irradiance{}) / MJ_per_m2_day;
    const double deficit = saturation_of_day() - vapour;
    return (mm_per_megajoule * slope * heat + gamma * 900 / (mean() + 273) * wind * deficit) /
           (slope + gamma * (1 + 0.34 * wind));
  }

  std::vector<WeatherEstimate> take_estimates() { return std::move(estimates_); }

 private:
  double mean() const { return (minimum_ + maximum_) / 2; }
  double saturation_of_day() const {  // equation 12
    return (saturation_pressure(maximum_) + saturation_pressure(minimum_)) / 2;
  }
  double estimated(WeatherEstimate what, double value) {
    if (std::ranges::find(estimates_, what) == estimates_.end()) estimates_.push_back(what);
    return value;
  }

  double altitude() {
    return weather_.altitude ? *weather_.altitude / units::m
                             : estimated(WeatherEstimate::sea_level, 0);
  }
  double wind_at_2_m() {
    if (!weather_.wind) return estimated(WeatherEstimate::usual_wind, usual_wind);
    const double wind = *weather_.wind / m_per_s;
    return weather_.wind_height ? to_2_m(wind, *weather_.wind_height / units::m) : wind;
  }
  double vapour_pressure() {
    if (weather_.vapour_pressure) return *weather_.vapour_pressure / kPa;
    if (weather_.dew_point) return saturation_pressure(*weather_.dew_point / degC);  // equation 14
    if (weather_.maximum_humidity && weather_.minimum_humidity)                      // equation 17
      return (saturation_pressure(minimum_) * *weather_.maximum_humidity +
              saturation_pressure(maximum_) * *weather_.minimum_humidity) /
             2;
    if (weather_.maximum_humidity)  // equation 18
      return saturation_pressure(minimum_) * *weather_.maximum_humidity;
    if (weather_.mean_humidity) return saturation_of_day() * *weather_.mean_humidity;        // 19
    return estimated(WeatherEstimate::dew_point_of_minimum, saturation_pressure(minimum_));  // 48
  }
  double solar_radiation(double clear_sky) {
    if (weather_.solar_radiation) return *weather_.solar_radiation / MJ_per_m2_day;
    if (weather_.sunshine) {  // equation 35
      const double daylight = daylight_hours(si(weather_.latitude), weather_.day_of_year);
      const double sunny =
          daylight > 0 ? std::min(1.0, *weather_.sunshine / units::h / daylight) : 0;
      return (0.25 + 0.50 * sunny) * above_air_;
    }
    const double span = std::sqrt(maximum_ - minimum_);  // equation 50
    return estimated(
        WeatherEstimate::radiation_of_temperatures,
        std::min(clear_sky, (weather_.coastal ? coastal : inland) * span * above_air_));
  }
  double net_radiation(double vapour) {
    const double clear_sky = (0.75 + 2e-5 * altitude()) * above_air_;  // equation 37
    const double solar = solar_radiation(clear_sky);
    const double clearness = clear_sky > 0 ? std::clamp(solar / clear_sky, 0.3, 1.0) : 0.3;
    const auto emitted = [](double celsius) {
      const double kelvin = celsius + 273.16;
      return 4.903e-9 * kelvin * kelvin * kelvin * kelvin;
    };
    const double long_wave = (emitted(maximum_) + emitted(minimum_)) / 2 *
                             (0.34 - 0.14 * std::sqrt(vapour)) *
                             (1.35 * clearness - 0.35);  // equation 39
    return (1 - albedo) * solar - long_wave;
  }

  const Weather& weather_;
  double minimum_;
  double maximum_;
  double above_air_;
  std::vector<WeatherEstimate> estimates_;
};

/// The ways in which one thing was given, "dew_point, mean_humidity" with `and` for a sentence.
template <std::size_t n>
void examine_ways(Examination& examination, const std::pair<const char*, bool> (&ways)[n]) {
  std::string given;
  int count = 0;
  for (const auto& [key, is_given] : ways) {
    if (!is_given) continue;
    given += (given.empty() ? "" : ", ") + std::string(key);
    ++count;
  }
  if (count > 1) examination.add(given, "are given; take one of the ways");
}

void examine_sky(Examination& examination, const Weather& weather) {
  examine_ways(examination,
               {{"sunshine", weather.sunshine.has_value()},
                {"solar_radiation", weather.solar_radiation.has_value()}});
  const Time daylight_of_day = daylight(weather.latitude, weather.day_of_year);
  // Weather services count the light before sunrise and after sunset in.
  constexpr double twilight_h = 0.5;
  if (weather.sunshine &&
      !(*weather.sunshine / units::h >= 0 &&
        *weather.sunshine / units::h <= daylight_of_day / units::h + twilight_h))
    examination.add("sunshine",
                    "is " + to_message(*weather.sunshine, units::h) +
                        ", must be from 0 to the daylight of that day, " +
                        to_message(daylight_of_day, units::h));
  const Irradiance most = extraterrestrial_radiation(weather.latitude, weather.day_of_year);
  if (weather.solar_radiation &&
      !(si(*weather.solar_radiation) >= 0 && si(*weather.solar_radiation) <= si(most)))
    examination.add("solar_radiation",
                    "is " + to_message(*weather.solar_radiation, MJ_per_m2_day) +
                        ", must be from 0 to what there is above the air on that day, " +
                        to_message(most, MJ_per_m2_day));
}

void examine_humidity(Examination& examination, const Weather& weather) {
  constexpr Range<double> shares{0.01, 1, units::plain};
  examination.within("dew_point", weather.dew_point, air_temperatures);
  examination.within("vapour_pressure", weather.vapour_pressure, Range<Pressure>{0.001, 20, kPa});
  examination.within("maximum_humidity", weather.maximum_humidity, shares);
  examination.within("minimum_humidity", weather.minimum_humidity, shares);
  examination.within("mean_humidity", weather.mean_humidity, shares);
  examine_ways(examination,
               {{"dew_point", weather.dew_point.has_value()},
                {"vapour_pressure", weather.vapour_pressure.has_value()},
                {"maximum_humidity", weather.maximum_humidity.has_value()},
                {"mean_humidity", weather.mean_humidity.has_value()}});
  if (weather.minimum_humidity && !weather.maximum_humidity)
    examination.add("minimum_humidity", "is given without maximum_humidity");
  if (weather.minimum_humidity && weather.maximum_humidity &&
      !(*weather.minimum_humidity <= *weather.maximum_humidity))
    examination.add("minimum_humidity",
                    "is " + to_message(*weather.minimum_humidity, "") +
                        ", must be at most the maximum_humidity, " +
                        to_message(*weather.maximum_humidity, ""));
  if (!air_temperatures.contains(weather.maximum_temperature)) return;
  const double most = saturation_pressure(weather.maximum_temperature / degC);
  if (weather.dew_point && !(si(*weather.dew_point) <= si(weather.maximum_temperature)))
    examination.add("dew_point",
                    "is " + to_message(*weather.dew_point, degC) +
                        ", must be at most the maximum_temperature, " +
                        to_message(weather.maximum_temperature, degC));
  if (weather.vapour_pressure && !(*weather.vapour_pressure / kPa <= most))
    examination.add("vapour_pressure",
                    "is " + to_message(*weather.vapour_pressure, kPa) +
                        ", must be at most that of damp air at the maximum_temperature, " +
                        to_message(most, "kPa"));
}

void examine_place_and_day(Examination& examination, const Angle& latitude, int day_of_year) {
  examination.within("latitude", latitude, latitudes);
  examination.within("day_of_year", day_of_year, 1, 366);
}

void refuse_if_wrong(Examination examination) {
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

Day day_of(const Weather& weather) {
  Weather measured = weather;
  measured.reference_evapotranspiration.reset();
  if (auto found = problems(measured); !found.empty()) throw InvalidInput(std::move(found));
  return Day(weather);
}

Velocity at_least_nothing(double mm_a_day) {
  return std::max(0.0, mm_a_day) * mm_per_day;
}

}  // namespace

Irradiance extraterrestrial_radiation(const Angle& latitude, int day_of_year) {
  Examination examination;
  examine_place_and_day(examination, latitude, day_of_year);
  refuse_if_wrong(std::move(examination));
  return radiation_above_air(si(latitude), day_of_year) * MJ_per_m2_day;
}

Time daylight(const Angle& latitude, int day_of_year) {
  Examination examination;
  examine_place_and_day(examination, latitude, day_of_year);
  refuse_if_wrong(std::move(examination));
  return daylight_hours(si(latitude), day_of_year) * units::h;
}

Velocity wind_at_2_m(const Velocity& wind, const Length& height) {
  Examination examination;
  examination.within("wind", wind, Range<Velocity>{0, 60, m_per_s});
  examination.within("height", height, Range<Length>{0.2, 100, units::m});
  refuse_if_wrong(std::move(examination));
  return to_2_m(wind / m_per_s, height / units::m) * m_per_s;
}

ReferenceEvapotranspiration penman_monteith(const Weather& weather) {
  Day day = day_of(weather);
  const Velocity rate = at_least_nothing(day.penman_monteith());
  return {rate, EvapotranspirationMethod::penman_monteith, day.take_estimates()};
}

ReferenceEvapotranspiration hargreaves(const Weather& weather) {
  const Day day = day_of(weather);
  return {at_least_nothing(day.hargreaves()), EvapotranspirationMethod::hargreaves, {}};
}

ReferenceEvapotranspiration reference_evapotranspiration(const Weather& weather) {
  if (auto found = problems(weather); !found.empty()) throw InvalidInput(std::move(found));
  if (weather.reference_evapotranspiration)
    return {*weather.reference_evapotranspiration, EvapotranspirationMethod::typed, {}};
  const bool is_complete = knows_humidity(weather) && knows_radiation(weather) && weather.wind;
  return is_complete ? penman_monteith(weather) : hargreaves(weather);
}

std::vector<Problem> problems(const Weather& weather) {
  Examination examination;
  examination.within("reference_evapotranspiration",
                     weather.reference_evapotranspiration,
                     Range<Velocity>{0, 30, mm_per_day});
  if (weather.reference_evapotranspiration) return examination.take();
  examine_place_and_day(examination, weather.latitude, weather.day_of_year);
  examination.within("altitude", weather.altitude, Range<Length>{-500, 6000, units::m});
  examination.within("minimum_temperature", weather.minimum_temperature, air_temperatures);
  examination.within("maximum_temperature", weather.maximum_temperature, air_temperatures);
  if (!(si(weather.maximum_temperature) >= si(weather.minimum_temperature)))
    examination.add("maximum_temperature",
                    "is " + to_message(weather.maximum_temperature, degC) +
                        ", must be at least the minimum_temperature, " +
                        to_message(weather.minimum_temperature, degC));
  examination.within("wind", weather.wind, Range<Velocity>{0, 60, m_per_s});
  examination.within("wind_height", weather.wind_height, Range<Length>{0.2, 100, units::m});
  if (weather.wind_height && !weather.wind)
    examination.add("wind_height", "is given without a wind");
  examination.within(
      "heat_into_ground", weather.heat_into_ground, Range<Irradiance>{-10, 10, MJ_per_m2_day});
  examine_humidity(examination, weather);
  const bool knows_day = latitudes.contains(weather.latitude) && weather.day_of_year >= 1 &&
                         weather.day_of_year <= 366;
  if (knows_day)
    examine_sky(examination, weather);
  else
    examination.within("sunshine", weather.sunshine, Range<Time>{0, 24, units::h});
  return examination.take();
}

}  // namespace hydro
