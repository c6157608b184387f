// crop_coefficient.hpp: how much more, or less, a crop uses than short grass, on a day of its
// season.
//
// What      crop evapotranspiration = crop coefficient x reference evapotranspiration. The
//           coefficient is flat in the initial and the middle stage and a straight line in the
//           other two.
// Formula   Kc mid, Kc end += (0.04 (u2 - 2) - 0.004 (RHmin - 45)) (h / 3)^0.3            (62, 65)
//           Kc on day i = Kc prev + (i - days before the stage) / length (Kc next - Kc prev)  (66)
//           p = p(table 22) + 0.04 (5 - ETc), 0.1 <= p <= 0.8
//           u2 wind at 2 m [m/s], RHmin [%], h height [m], ETc [mm/day]
// Source    FAO Irrigation and Drainage Paper 56 (1998), equations 62 to 66 and p. 162.
// Range     u2 is kept from 1 to 6 m/s, RHmin from 20 to 80 %, h from 0.1 to 10 m, as the paper
//           wants (p. 123); below 0.1 m nothing is adjusted. A final coefficient below 0.45 (a crop
//           that dries in the field) is not adjusted (p. 127).
// Errors    InvalidInput for a day outside of the season, climate or stages out of range.
// Threads   Pure functions.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/watering/crop.hpp"
#include "hydro/watering/reference_evapotranspiration.hpp"

#include <vector>

namespace hydro {

/// What the tables of coefficients hang on: means of the stage, not of a day.
struct Climate {
  Velocity wind = 2 * m_per_s;     ///< at 2 m
  double minimum_humidity = 0.45;  ///< the day's least relative humidity [-]
  bool operator==(const Climate&) const = default;
};

/// Wind at 2 m and least humidity of this weather; where they are not given, the wind is 2 m/s and
/// the dew point the minimum temperature (equations 63, 64). @throws InvalidInput
Climate climate_of(const Weather& weather);

/// A coefficient of the table as it is in another climate. Equations 62 and 65.
double adjusted_coefficient(double tabulated, const Length& height, const Climate& climate);

/// @param season_day 1 to the length of the season @throws InvalidInput
double crop_coefficient(const Crop& crop,
                        const StageLengths& stages,
                        int season_day,
                        const Climate& climate = {});

/// The share of the available water that may be used up without harm, where the crop loses this
/// much a day: less in hot weather. @param tabulated for 5 mm/day [-]
double allowed_depletion(double tabulated, const Velocity& crop_evapotranspiration);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Climate& climate);

}  // namespace hydro
