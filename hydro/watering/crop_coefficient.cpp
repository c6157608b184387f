#include "hydro/watering/crop_coefficient.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/watering/saturation.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

double saturation(const Temperature& temperature) {
  return saturation_pressure(temperature / degC);
}

double least_humidity(const Weather& weather) {
  if (weather.minimum_humidity) return *weather.minimum_humidity;
  const double most = saturation(weather.maximum_temperature);
  if (weather.vapour_pressure) return std::min(1.0, *weather.vapour_pressure / kPa / most);
  return saturation(weather.dew_point.value_or(weather.minimum_temperature)) / most;
}

/// On a day of a stage that leads from one coefficient to another.
double on_the_way(double from, double to, int day, int length) {
  return std::lerp(from, to, static_cast<double>(day) / length);
}

}  // namespace

Climate climate_of(const Weather& weather) {
  Weather readings = weather;
  readings.reference_evapotranspiration.reset();
  if (auto found = problems(readings); !found.empty()) throw InvalidInput(std::move(found));
  Climate climate{.minimum_humidity = least_humidity(weather)};
  if (weather.wind)
    climate.wind = wind_at_2_m(*weather.wind, weather.wind_height.value_or(2 * units::m));
  return climate;
}

double adjusted_coefficient(double tabulated, const Length& height, const Climate& climate) {
  if (auto found = problems(climate); !found.empty()) throw InvalidInput(std::move(found));
  const double height_m = height / units::m;
  if (!(height_m >= 0.1)) return tabulated;
  const double wind = std::clamp(climate.wind / m_per_s, 1.0, 6.0);
  const double humidity = std::clamp(100 * climate.minimum_humidity, 20.0, 80.0);
  return tabulated + (0.04 * (wind - 2) - 0.004 * (humidity - 45)) *
                         std::pow(std::min(height_m, 10.0) / 3, 0.3);
}

double crop_coefficient(const Crop& crop,
                        const StageLengths& stages,
                        int season_day,
                        const Climate& climate) {
  if (auto found = problems(stages); !found.empty()) throw InvalidInput(std::move(found));
  if (!(season_day >= 1 && season_day <= stages.total()))
    throw InvalidInput(
        "season_day",
        fmt::format("is {}, must be from 1 to {}, the length of the season; outside of it give "
                    "crop_coefficient",
                    season_day,
                    stages.total()));
  constexpr double green = 0.45;  // a crop that dries in the field ends below it
  const double initial = crop.initial_coefficient;
  const double middle = adjusted_coefficient(crop.middle_coefficient, crop.height, climate);
  const double last = crop.final_coefficient < green
                          ? crop.final_coefficient
                          : adjusted_coefficient(crop.final_coefficient, crop.height, climate);
  int day = season_day;
  if (day <= stages.initial) return initial;
  day -= stages.initial;
  if (day <= stages.development) return on_the_way(initial, middle, day, stages.development);
  day -= stages.development;
  if (day <= stages.middle) return middle;
  return on_the_way(middle, last, day - stages.middle, stages.late);
}

double allowed_depletion(double tabulated, const Velocity& crop_evapotranspiration) {
  Examination examination;
  examination.within("tabulated", tabulated, Range<double>{0, 1, units::plain});
  examination.within(
      "crop_evapotranspiration", crop_evapotranspiration, Range<Velocity>{0, 50, mm_per_day});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return std::clamp(tabulated + 0.04 * (5 - crop_evapotranspiration / mm_per_day), 0.1, 0.8);
}

std::vector<Problem> problems(const Climate& climate) {
  Examination examination;
  examination.within("wind", climate.wind, Range<Velocity>{0, 60, m_per_s});
  examination.within(
      "minimum_humidity", climate.minimum_humidity, Range<double>{0, 1, units::plain});
  return examination.take();
}

}  // namespace hydro
