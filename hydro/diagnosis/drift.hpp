// drift.hpp: from which day on a reading is no longer what it was.
//
// What      The same places read day after day. The first days say what is normal there; later ones
//           are held against it, each place by itself, by a sum of what is too much and one of what
//           is too little. A sum tells of a small change that lasts, which no single day shows, and
//           since when.
// Formula   z = (y - m) / (s sqrt(1 + 1 / n)), m the mean of the first n days, s the larger of their
//           standard deviation and of the reading's own error
//             up_i = max(0, up_(i-1) + z_i - k),    down_i = max(0, down_(i-1) - z_i - k)
//           alarm when one is above h; since the day after that sum was last 0.
//           trend: least squares of y on the day, all days; its error from s.
// Source    Tabular sums: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3; D. C. Montgomery,
//           Introduction to Statistical Quality Control, 6th ed. (2009), section 9.1: with k = 0.5 and
//           h = 5 a change of 1 s is found after 10.4 days on average, and a false alarm comes every
//           465 days at each place, if m and s are known (all from memory).
// Range     From a few first days m and s are rough, and false alarms more frequent. Days are taken as
//           independent. What moves all places alike on one day (the engine's speed) is in s.
// Errors    InvalidInput with all problems. A place with too few days is noted, and has no alarm.
// Threads   Pure function.
#pragma once

#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// The readings of one day.
struct DayOfReadings {
  double day = 0;         ///< counted from any day on; later ones rise
  std::string name = {};  ///< a date, as it is told; empty: "day 3"
  std::vector<Reading> readings = {};
  bool operator==(const DayOfReadings&) const = default;
};

/// When a change counts.
struct DriftOptions {
  int normal_days = 5;     ///< n, of the first: 2 or more
  double allowance = 0.5;  ///< k, half of the change that is looked for, 0 to 5
  double alarm_level = 5;  ///< h, above 0 to 100
  bool operator==(const DriftOptions&) const = default;
};

/// One place through all days. Of pressure, flow and speed one is given.
struct PlaceDrift {
  Reading place = {};  ///< without a figure
  std::optional<Pressure> normal_pressure = {};
  std::optional<Pressure> pressure_scatter = {};
  std::optional<Pressure> last_pressure = {};
  std::optional<Flow> normal_flow = {};
  std::optional<Flow> flow_scatter = {};
  std::optional<Flow> last_flow = {};
  std::optional<RotationalSpeed> normal_speed = {};
  std::optional<RotationalSpeed> speed_scatter = {};
  std::optional<RotationalSpeed> last_speed = {};
  double trend = 0;        ///< a day, in scatters
  double trend_error = 0;  ///< standard error of that
  double last = 0;         ///< z of the last day
  double up = 0;           ///< the sums after the last day
  double down = 0;
  bool rises = false;                     ///< which of them gave the alarm
  std::optional<std::size_t> alarm = {};  ///< day of the log on which it came; none: it did not
  std::optional<std::size_t> since = {};  ///< day of the log from which on it changed
};

/// All places that were read.
struct Drift {
  std::vector<PlaceDrift> places = {};  ///< those with an alarm first, the earliest change first
  std::vector<std::string> notes = {};
};

/// @param log earlier days, and today last
/// @throws InvalidInput
Drift find_drift(const Layout& layout,
                 const std::vector<DayOfReadings>& log,
                 const DriftOptions& options = {});

/// What is wrong with them; empty when nothing is. The place of a Problem is `day 2, reading 1`.
std::vector<Problem> problems(const std::vector<DayOfReadings>& log,
                              const DriftOptions& options,
                              const Layout& layout);

/// What a place's sums are after each of these values, in scatters from normal.
struct Sums {
  std::vector<double> up = {};
  std::vector<double> down = {};
};
Sums cumulative_sums(const std::vector<double>& values, double allowance);

}  // namespace hydro
