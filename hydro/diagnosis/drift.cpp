#include "hydro/diagnosis/drift.hpp"

#include "hydro/diagnosis/places.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <tuple>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// What was read at one place, day by day.
struct DayByDay {
  Reading place;
  std::vector<std::size_t> days;  // of the log
  std::vector<double> values;     // SI
  std::vector<double> errors;     // of each reading by itself
};

/// Two gauges at one place are two series: each has its own bias.
bool is_same(const Reading& one, const Reading& other) {
  return std::tie(one.place, one.line, one.outlet) ==
             std::tie(other.place, other.line, other.outlet) &&
         gauge_of(one) == gauge_of(other);
}

/// Readings of one place on one day count as their mean.
void add(std::vector<DayByDay>& all, std::size_t day, const Reading& reading) {
  auto series =
      std::ranges::find_if(all, [&](const DayByDay& it) { return is_same(it.place, reading); });
  if (series == all.end()) {
    Reading place = reading;
    place.pressure.reset();
    place.flow.reset();
    place.speed.reset();
    place.volume.reset();
    place.time.reset();
    series = all.insert(series, DayByDay{std::move(place), {}, {}, {}});
  }
  series->days.push_back(day);
  series->values.push_back(figure_of(reading));
  series->errors.push_back(own_error(reading));
}

void take_means(DayByDay& series) {
  DayByDay means{std::move(series.place), {}, {}, {}};
  for (std::size_t i = 0; i < series.days.size();) {
    std::size_t last = i;
    double sum = 0, error = 0;
    for (; last < series.days.size() && series.days[last] == series.days[i]; ++last) {
      sum += series.values[last];
      error = std::max(error, series.errors[last]);
    }
    const auto count = static_cast<double>(last - i);
    means.days.push_back(series.days[i]);
    means.values.push_back(sum / count);
    means.errors.push_back(error / std::sqrt(count));
    i = last;
  }
  series = std::move(means);
}

struct Normal {
  double mean = 0;
  double scatter = 0;
};

Normal normal_of(const DayByDay& series, std::size_t days) {
  const auto count = static_cast<double>(days);
  const auto end = series.values.begin() + static_cast<std::ptrdiff_t>(days);
  const double mean = std::accumulate(series.values.begin(), end, 0.0) / count;
  double squares = 0;
  for (auto value = series.values.begin(); value != end; ++value)
    squares += (*value - mean) * (*value - mean);
  const double error = *std::max_element(series.errors.begin(),
                                         series.errors.begin() + static_cast<std::ptrdiff_t>(days));
  return {mean, std::max(error, std::sqrt(squares / (count - 1)))};
}

void tell_trend(const DayByDay& series,
                const Normal& normal,
                const std::vector<DayOfReadings>& log,
                PlaceDrift& drift) {
  const auto count = static_cast<double>(series.days.size());
  double mean_day = 0, mean = 0;
  for (std::size_t i = 0; i < series.days.size(); ++i) {
    mean_day += log[series.days[i]].day / count;
    mean += series.values[i] / count;
  }
  double of_days = 0, of_both = 0;
  for (std::size_t i = 0; i < series.days.size(); ++i) {
    const double day = log[series.days[i]].day - mean_day;
    of_days += day * day;
    of_both += day * (series.values[i] - mean);
  }
  drift.trend = of_both / of_days / normal.scatter;
  drift.trend_error = 1 / std::sqrt(of_days);
}

void tell_figures(const DayByDay& series, const Normal& normal, PlaceDrift& drift) {
  const double last = series.values.back();
  if (is_pressure(series.place.place)) {
    drift.normal_pressure = Pressure::from_value(normal.mean);
    drift.pressure_scatter = Pressure::from_value(normal.scatter);
    drift.last_pressure = Pressure::from_value(last);
  } else if (is_flow(series.place.place)) {
    drift.normal_flow = Flow::from_value(normal.mean);
    drift.flow_scatter = Flow::from_value(normal.scatter);
    drift.last_flow = Flow::from_value(last);
  } else {
    drift.normal_speed = RotationalSpeed::from_value(normal.mean);
    drift.speed_scatter = RotationalSpeed::from_value(normal.scatter);
    drift.last_speed = RotationalSpeed::from_value(last);
  }
}

/// The first value at which one of the sums is above the level, and since when it was above 0.
void tell_alarm(const Sums& sums,
                double level,
                const std::vector<std::size_t>& days,
                PlaceDrift& drift) {
  for (std::size_t i = 0; i < days.size(); ++i) {
    drift.rises = sums.up[i] > level;
    if (!drift.rises && !(sums.down[i] > level)) continue;
    const std::vector<double>& sum = drift.rises ? sums.up : sums.down;
    std::size_t first = i;
    while (first > 0 && sum[first - 1] > 0) --first;
    drift.alarm = days[i];
    drift.since = days[first];
    return;
  }
}

PlaceDrift drift_of(const DayByDay& series,
                    const std::vector<DayOfReadings>& log,
                    const DriftOptions& options) {
  const auto normal_days = static_cast<std::size_t>(options.normal_days);
  const Normal normal = normal_of(series, normal_days);
  PlaceDrift drift{.place = series.place};
  tell_figures(series, normal, drift);
  tell_trend(series, normal, log, drift);
  const double scatter = normal.scatter * std::sqrt(1 + 1 / static_cast<double>(normal_days));
  std::vector<double> later;
  for (std::size_t i = normal_days; i < series.values.size(); ++i)
    later.push_back((series.values[i] - normal.mean) / scatter);
  const Sums sums = cumulative_sums(later, options.allowance);
  drift.last = later.back();
  drift.up = sums.up.back();
  drift.down = sums.down.back();
  tell_alarm(sums,
             options.alarm_level,
             {series.days.begin() + static_cast<std::ptrdiff_t>(normal_days), series.days.end()},
             drift);
  return drift;
}

std::string where(const Reading& place) {
  std::string text(words_of(place.place));
  if (!place.line.empty()) text += " of " + place.line;
  if (place.outlet > 0) text += fmt::format(", outlet {}", place.outlet);
  return text;
}

}  // namespace

Sums cumulative_sums(const std::vector<double>& values, double allowance) {
  Sums sums;
  double up = 0, down = 0;
  for (const double value : values) {
    up = std::max(0.0, up + value - allowance);
    down = std::max(0.0, down - value - allowance);
    sums.up.push_back(up);
    sums.down.push_back(down);
  }
  return sums;
}

std::vector<Problem> problems(const std::vector<DayOfReadings>& log,
                              const DriftOptions& options,
                              const Layout& layout) {
  Examination examination;
  examination.within("normal_days", options.normal_days, 2, 10'000);
  examination.within("allowance", options.allowance, Range<double>{0, 5, units::plain});
  examination.within("alarm_level", options.alarm_level, Range<double>{0, 100, units::plain, true});
  std::vector<Problem> found = examination.take();
  for (std::size_t i = 0; i < log.size(); ++i) {
    const std::string day = fmt::format("day {}", i + 1);
    for (Problem& problem : problems(log[i].readings, {}, layout)) {
      problem.place = day + ", " + problem.place;
      found.push_back(std::move(problem));
    }
    if (!std::isfinite(log[i].day))
      found.push_back({day, "day", fmt::format("is {}, must be a number", log[i].day)});
    else if (i > 0 && !(log[i].day > log[i - 1].day))
      found.push_back(
          {day,
           "day",
           fmt::format("is {}, must be after the one before, {}", log[i].day, log[i - 1].day)});
  }
  return found;
}

Drift find_drift(const Layout& layout,
                 const std::vector<DayOfReadings>& log,
                 const DriftOptions& options) {
  if (auto found = problems(log, options, layout); !found.empty())
    throw InvalidInput(std::move(found));
  std::vector<DayByDay> all;
  for (std::size_t i = 0; i < log.size(); ++i)
    for (const Reading& reading : log[i].readings) add(all, i, reading);
  Drift result;
  if (all.empty()) result.notes.emplace_back("nothing was read on any day");
  for (DayByDay& series : all) {
    take_means(series);
    const std::size_t needed = static_cast<std::size_t>(options.normal_days) + 1;
    if (series.days.size() < needed) {
      result.notes.push_back(
          fmt::format("{}: read on {} day{}; it takes {} to say what is normal and one more",
                      where(series.place),
                      series.days.size(),
                      series.days.size() == 1 ? "" : "s",
                      options.normal_days));
      continue;
    }
    result.places.push_back(drift_of(series, log, options));
  }
  std::ranges::stable_sort(result.places, {}, [](const PlaceDrift& it) {
    return it.since.value_or(std::numeric_limits<std::size_t>::max());
  });
  return result;
}

}  // namespace hydro
