// reference_evapotranspiration.hpp: how much water well-watered short grass gives to the air in a
// day, from the weather.
//
// What      What the weather asks for, before any crop: ET0 [mm/day]. Typed in where somebody
//           publishes it; else by Penman-Monteith where humidity, wind and sunshine (or radiation)
//           are known; else by Hargreaves from the day's two temperatures. The same functions
//           serve for mean days of a week or a month. Plants under cover live in other weather.
// Formula   Penman-Monteith  ET0 = (0.408 D (Rn - G) + g 900 / (T + 273) u2 (es - ea)) /
//                                  (D + g (1 + 0.34 u2))                                  (6)
//           Hargreaves       ET0 = 0.0023 (T + 17.8) sqrt(Tmax - Tmin) 0.408 Ra           (52)
//           T mean of Tmax and Tmin [degC], D slope of the vapour pressure curve [kPa/degC] (13), g
//           psychrometric constant by altitude (7, 8), es, ea vapour pressures [kPa] (11 to 19), u2
//           wind at 2 m [m/s] (47), Ra radiation above the air (21 to 25), Rn net radiation (35 to
//           40), G heat into the ground [MJ/m2/day]
// Source    R. G. Allen, L. S. Pereira, D. Raes, M. Smith, Crop evapotranspiration, FAO Irrigation
//           and Drainage Paper 56 (1998), equations by its numbers. Rs/Rso is kept from 0.3 to 1
//           (upper limit: p. 52; lower: ASCE-EWRI standard of 2005, from memory).
// Range     Missing humidity is taken from the minimum temperature (48), missing radiation from the
//           two temperatures (50, inland 0.16), missing wind as 2 m/s (p. 63): each is named in the
//           result. Wind under 0.5 m/s counts as that (p. 63). Beyond 55 degrees the winter
//           radiation is of limited validity (p. 47). Hargreaves asks for too little in wind above
//           3 m/s and too much in humid air (p. 64). Below freezing 0 is the least.
// Accuracy  The worked examples 8, 9, 14, 15, 17, 18 and 20 to their printed digits
//           (reference_evapotranspiration_test.cpp).
// Errors    InvalidInput with every field out of its accepted interval, a maximum below its
//           minimum, humidity or radiation given in two ways, more sun than the day has.
// Threads   Pure functions.
// Example   examples/plan_day.cpp
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// The weather of a day, or of the mean day of a week or a month. Humidity is given in one way or
/// not at all: dew point, vapour pressure, the day's two extremes (or the maximum alone), its mean.
struct Weather {
  std::optional<Velocity> reference_evapotranspiration = {};  ///< typed in: needs nothing else
  Angle latitude = {};                                        ///< north is positive
  int day_of_year = 0;                                        ///< 1 is the first of January
  std::optional<Length> altitude = {};                        ///< default sea level
  Temperature minimum_temperature = {};
  Temperature maximum_temperature = {};
  std::optional<Temperature> dew_point = {};
  std::optional<Pressure> vapour_pressure = {};     ///< mean of the day
  std::optional<double> maximum_humidity = {};      ///< relative, 0 to 1 [-]
  std::optional<double> minimum_humidity = {};      ///< relative, 0 to 1 [-]
  std::optional<double> mean_humidity = {};         ///< relative, 0 to 1 [-]
  std::optional<Velocity> wind = {};                ///< mean of 24 hours
  std::optional<Length> wind_height = {};           ///< of its measurement, default 2 m
  std::optional<Time> sunshine = {};                ///< bright sunshine in the day
  std::optional<Irradiance> solar_radiation = {};   ///< mean of 24 hours; instead of sunshine
  std::optional<Irradiance> heat_into_ground = {};  ///< default 0; matters in monthly means only
  bool coastal = false;                             ///< for radiation from temperatures
  bool operator==(const Weather&) const = default;
};

/// How a reference evapotranspiration was had.
enum class EvapotranspirationMethod {
  typed,            ///< as it was given
  penman_monteith,  ///< FAO-56 equation 6
  hargreaves        ///< FAO-56 equation 52
};

/// What stood in for a reading that was not there.
enum class WeatherEstimate {
  sea_level,                  ///< no altitude
  dew_point_of_minimum,       ///< no humidity: the dew point is the minimum temperature
  radiation_of_temperatures,  ///< no sunshine: by the span of the temperatures
  usual_wind                  ///< no wind: 2 m/s
};

/// A depth of water a day, and how it was had.
struct ReferenceEvapotranspiration {
  Velocity rate = {};
  EvapotranspirationMethod method = EvapotranspirationMethod::typed;
  std::vector<WeatherEstimate> estimates = {};  ///< that the method used
};

/// Radiation on a level plane above the air, mean of 24 hours. FAO-56 equation 21.
/// @param latitude -90 to 90 deg @param day_of_year 1 to 366 @throws InvalidInput
Irradiance extraterrestrial_radiation(const Angle& latitude, int day_of_year);

/// From sunrise to sunset. FAO-56 equation 34. @throws InvalidInput
Time daylight(const Angle& latitude, int day_of_year);

/// Over short grass, from a reading at another height. FAO-56 equation 47.
/// @param height 0.2 to 100 m @throws InvalidInput
Velocity wind_at_2_m(const Velocity& wind, const Length& height);

/// By equation 6, what is not given by estimates. @throws InvalidInput
ReferenceEvapotranspiration penman_monteith(const Weather& weather);

/// By equation 52. @throws InvalidInput
ReferenceEvapotranspiration hargreaves(const Weather& weather);

/// Typed in if it is; Penman-Monteith if humidity, wind and sunshine or radiation are there; else
/// Hargreaves. @throws InvalidInput
ReferenceEvapotranspiration reference_evapotranspiration(const Weather& weather);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Weather& weather);

}  // namespace hydro
