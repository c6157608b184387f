// soil_water.hpp: the water in the roots' reach of a block, kept like an account: is it time to
// water, and how much.
//
// What      Field capacity is a full account. Depletion is what is missing [depth]; rain and
//           watering lower it, the crop raises it. It is time to water when today's use would bring
//           it past what the crop may use up without harm.
// Formula   total available water    TAW = available water x root depth x share wetted       (82)
//           readily available water  RAW = p TAW, p the allowed depletion                    (83)
//           at the start of a day    D = max(0, D - rain - watering); the rest percolates
//           in the day               D + Ks Kc ET0, at most TAW                          (85, 86)
//           Ks = (TAW - D) / (TAW - RAW), at most 1                                          (84)
//           A rain of less than 0.2 ET0 is gone at once and not counted (p. 170).
// Source    FAO Irrigation and Drainage Paper 56 (1998), chapter 8. Rain and watering come early in
//           the day and drain before the crop drinks, as in its example 38; its equation 88 lets
//           the crop drink first: by this library's way D is larger, by a day's use at most.
//           The share wetted in TAW: net depth of trickle irrigation, USDA National Engineering
//           Handbook, section 15, chapter 7 (from memory). Of the rain that share counts, too; what
//           falls between is left out, on the dry side. Ours.
// Range     Under cover no rain comes. No runoff, no rise from ground water. Deeper roots find their soil at field capacity.
//           p of the table is adjusted to each day's use (crop_coefficient.hpp), a typed one is
//           taken as it is. Where the depletion at the start is not known, all of the readily
//           available water is taken as used up: on the dry side, and of no matter after a good
//           rain.
// Accuracy  rain + watering + depletion at the end = use + percolation + what is not counted +
//           depletion at the start, to 1e-9 of the whole (soil_water_test.cpp).
// Errors    InvalidInput with every mistake of the block and of the days; a depletion of more than
//           the total available water.
// Threads   Pure functions.
// Example   examples/plan_day.cpp
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/watering/block.hpp"
#include "hydro/watering/crop_coefficient.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// What came and what the weather asked for on a day.
struct WaterDay {
  Velocity reference_evapotranspiration = {};
  Length rain = {};
  Length watering = {};                         ///< net, over the whole area
  std::optional<double> crop_coefficient = {};  ///< of that day, instead of the block's [-]
  std::optional<Length> root_depth = {};        ///< of that day, instead of the block's
  bool operator==(const WaterDay&) const = default;
};

/// Days of one weather: it rained `days` mornings ago and has been dry since. 0: this morning.
struct SinceRain {
  int days = 0;
  Length rain = {};  ///< measured
};
/// The days from that rain to yesterday, for water_need; the rain of this morning goes with today.
/// @throws InvalidInput
std::vector<WaterDay> days_since_rain(const SinceRain& since,
                                      const Velocity& reference_evapotranspiration);

/// A line of the account. Depths are over the whole area of the block.
struct SoilWaterDay {
  Length root_depth = {};
  Length total_available_water = {};
  Length readily_available_water = {};
  double allowed_depletion = 0;  ///< [-]
  Length depletion_before = {};  ///< at the end of the day before
  Length rain = {};
  Length rain_not_counted = {};  ///< too little, between what is wetted, or on a cover
  Length watering = {};
  Length percolation = {};              ///< lost below the roots
  Length depletion_at_start = {};       ///< after rain and watering
  double crop_coefficient = 0;          ///< Kc [-]
  double stress_coefficient = 1;        ///< Ks [-]
  Length crop_evapotranspiration = {};  ///< in the day, with stress
  Length depletion_at_end = {};
};

/// Why a block needs water today, or not.
enum class WaterReason {
  enough,  ///< today's use stays within what may be used up
  today,   ///< it would pass it today
  used_up  ///< nothing of it is left: the crop suffers
};

/// What a block needs.
struct WaterNeed {
  std::string block = {};
  std::vector<SoilWaterDay> days = {};  ///< the account, up to yesterday
  SoilWaterDay today = {};              ///< if nothing more comes
  /// The depletion at the start was assumed, and nothing has filled the account since.
  bool start_is_guessed = false;
  Length depletion = {};                  ///< now
  Velocity crop_evapotranspiration = {};  ///< without stress, today
  bool water_today = false;
  WaterReason reason = WaterReason::enough;
  /// Until all is used up that may be, at today's use: less than a day means today. None: nothing
  /// is used.
  std::optional<Time> time_left = {};
  Length net_depth = {};                        ///< fills the account
  std::optional<Length> gross_depth = {};       ///< with the losses; none: no efficiency is given
  std::optional<Volume> volume = {};            ///< gross where known, else net; none: no area
  std::optional<Volume> volume_per_plant = {};  ///< likewise; none: no area per plant
};

/// What is not part of the block.
struct SoilWaterOptions {
  std::optional<Length> depletion = {};  ///< before the first of the days, or of today
  Climate climate = {};                  ///< for coefficients of the table
};

/// @param past the days before today, the oldest first; may be empty
/// @param today what came this morning, and what the weather will ask for @throws InvalidInput
WaterNeed water_need(const Block& block,
                     const std::vector<WaterDay>& past,
                     const WaterDay& today,
                     const SoilWaterOptions& options = {});

/// The account since water last filled the block (days_since_filled), rain since then counted; else
/// since the rain; else of today alone. All days have the same weather. @throws InvalidInput
WaterNeed water_need_today(const Block& block,
                           const std::optional<SinceRain>& since_rain,
                           const Velocity& reference_evapotranspiration,
                           const Climate& climate = {});

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const WaterDay& day);

}  // namespace hydro
