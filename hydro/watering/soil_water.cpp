#include "hydro/watering/soil_water.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr double day_s = 86400;

void refuse_if_any(std::vector<Problem> found) {
  if (!found.empty()) throw InvalidInput(std::move(found));
}

/// What the block tells of its crop and soil, typed in or from the tables.
class RootZone {
 public:
  RootZone(const Block& block, const Climate& climate)
      : block_(block),
        climate_(climate),
        holds_(available_water(block.soil) * block.share_wetted.value_or(1)) {
    if (needs_table(block)) crop_ = crop(block.crop);
    if (!block.crop_coefficient)
      stages_ = block.stages ? *block.stages : stage_lengths(crop_, block.region);
  }

  static bool needs_table(const Block& block) {
    return !block.crop_coefficient || !block.root_depth || !block.allowed_depletion;
  }

  double coefficient(const WaterDay& day, int days_ago) const {
    if (day.crop_coefficient) return *day.crop_coefficient;
    if (block_.crop_coefficient) return *block_.crop_coefficient;
    // Before planting the ground is as bare as on the first day.
    return crop_coefficient(
        crop_,
        stages_,
        days_ago > 0 ? std::max(1, *block_.season_day - days_ago) : *block_.season_day,
        climate_);
  }
  /// [m]
  double root_depth(const WaterDay& day) const {
    if (day.root_depth) return si(*day.root_depth);
    return si(block_.root_depth.value_or(crop_.root_depth_from));
  }
  double allowed_depletion_at(double use) const {
    if (block_.allowed_depletion) return *block_.allowed_depletion;
    return allowed_depletion(crop_.allowed_depletion, Velocity::from_value(use / day_s));
  }
  /// Total available water [m].
  double total(const WaterDay& day) const { return holds_ * root_depth(day); }
  double share_rained_on() const {
    return block_.under_cover ? 0 : block_.share_wetted.value_or(1);
  }

 private:
  const Block& block_;
  const Climate& climate_;
  double holds_;  // depth over the whole area in a depth of soil
  Crop crop_;
  StageLengths stages_;
};

/// One day of the account, in metres. @param before depletion at the end of the day before; none:
/// all that may be used up
SoilWaterDay account(const RootZone& zone,
                     const WaterDay& day,
                     int days_ago,
                     std::optional<double> before) {
  const double reference = si(day.reference_evapotranspiration) * day_s;
  const double coefficient = zone.coefficient(day, days_ago);
  const double unstressed = coefficient * reference;
  const double share = zone.allowed_depletion_at(unstressed);
  const double total = zone.total(day);
  const double readily = share * total;
  const double depletion_before = before.value_or(readily);

  constexpr double least_rain = 0.2;  // of the reference evapotranspiration
  const double rain = si(day.rain);
  const double counted = rain < least_rain * reference ? 0 : rain * zone.share_rained_on();
  const double excess = counted + si(day.watering) - depletion_before;
  const double start = std::max(0.0, -excess);
  const double left = std::max(0.0, total - start);
  const double stress = start > readily && readily < total ? left / (total - readily) : 1;
  const double use = std::min(stress * unstressed, left);

  const auto depth = [](double metres) { return Length::from_value(metres); };
  return {.root_depth = depth(zone.root_depth(day)),
          .total_available_water = depth(total),
          .readily_available_water = depth(readily),
          .allowed_depletion = share,
          .depletion_before = depth(depletion_before),
          .rain = day.rain,
          .rain_not_counted = depth(rain - counted),
          .watering = day.watering,
          .percolation = depth(std::max(0.0, excess)),
          .depletion_at_start = depth(start),
          .crop_coefficient = coefficient,
          .stress_coefficient = stress,
          .crop_evapotranspiration = depth(use),
          .depletion_at_end = depth(start + use)};
}

WaterReason reason_of(const SoilWaterDay& today, double unstressed) {
  const double depletion = si(today.depletion_at_start);
  const double readily = si(today.readily_available_water);
  if (!(depletion < readily)) return WaterReason::used_up;
  return depletion + unstressed > readily ? WaterReason::today : WaterReason::enough;
}

void examine_what_is_missing(Examination& examination, const Block& block) {
  const auto missing = [&](const char* key) {
    examination.add(key, "is not given, nor is the crop, of which the table would tell it");
  };
  if (block.crop.empty()) {
    if (!block.crop_coefficient && !block.under_cover) missing("crop_coefficient");
    if (!block.root_depth) missing("root_depth");
    if (!block.allowed_depletion) missing("allowed_depletion");
  } else if (!block.crop_coefficient && !block.season_day) {
    examination.add("season_day",
                    "is not given; count it from planting or leafing out, or give "
                    "crop_coefficient");
  }
  if (!block.soil.available_water && !block.soil.kind)
    examination.add("soil.kind", "is not given; give it, or soil.available_water");
}

void examine_roots(Examination& examination,
                   const RootZone& zone,
                   const std::vector<WaterDay>& days) {
  for (std::size_t i = 1; i < days.size(); ++i) {
    const Length before = Length::from_value(zone.root_depth(days[i - 1]));
    const Length now = Length::from_value(zone.root_depth(days[i]));
    if (!(now >= before))
      examination.add(fmt::format("days, {}.root_depth", i + 1),
                      "is " + to_message(now, units::m) +
                          ", must be at least that of the day before, " +
                          to_message(before, units::m));
  }
}

}  // namespace

std::vector<WaterDay> days_since_rain(const SinceRain& since,
                                      const Velocity& reference_evapotranspiration) {
  Examination examination;
  examination.within("days", since.days, 0, 366);
  const WaterDay dry{.reference_evapotranspiration = reference_evapotranspiration};
  WaterDay wet = dry;
  wet.rain = since.rain;
  std::vector<Problem> found = examination.take();
  for (Problem& problem : problems(wet)) found.push_back(std::move(problem));
  refuse_if_any(std::move(found));
  std::vector<WaterDay> days(static_cast<std::size_t>(since.days), dry);
  if (!days.empty()) days.front() = wet;
  return days;
}

WaterNeed water_need(const Block& block,
                     const std::vector<WaterDay>& past,
                     const WaterDay& today,
                     const SoilWaterOptions& options) {
  std::vector<WaterDay> days = past;
  days.push_back(today);
  Examination examination;
  for (const Problem& problem : problems(block)) examination.add(problem.key, problem.message);
  examine_what_is_missing(examination, block);
  for (std::size_t i = 0; i < days.size(); ++i)
    examination.include(i < past.size() ? fmt::format("days, {}", i + 1) : "today",
                        problems(days[i]));
  examination.include("climate", problems(options.climate));
  refuse_if_any(examination.take());

  const RootZone zone(block, options.climate);
  examine_roots(examination, zone, days);
  examination.within(
      "depletion", options.depletion, Range<Length>{0, 1000 * zone.total(days.front()), mm});
  refuse_if_any(examination.take());

  WaterNeed need{.block = block.name};
  std::optional<double> depletion;
  if (options.depletion) depletion = si(*options.depletion);
  for (std::size_t i = 0; i < days.size(); ++i) {
    need.days.push_back(
        account(zone, days[i], static_cast<int>(past.size()) - static_cast<int>(i), depletion));
    depletion = si(need.days.back().depletion_at_end);
  }
  const auto is_full = [](const SoilWaterDay& day) { return si(day.depletion_at_start) == 0; };
  need.start_is_guessed = !options.depletion && std::ranges::none_of(need.days, is_full);
  need.today = need.days.back();
  need.days.pop_back();

  const double unstressed = need.today.crop_coefficient * si(today.reference_evapotranspiration);
  need.depletion = need.today.depletion_at_start;
  need.crop_evapotranspiration = Velocity::from_value(unstressed);
  need.reason = reason_of(need.today, unstressed * day_s);
  need.water_today = need.reason != WaterReason::enough;
  if (unstressed > 0) {
    const Length left = need.today.readily_available_water - need.depletion;
    need.time_left = Time::from_value(std::max(0.0, si(left)) / unstressed);
  }
  need.net_depth = need.depletion;
  if (block.efficiency) need.gross_depth = need.net_depth / *block.efficiency;
  const Length applied = need.gross_depth.value_or(need.net_depth);
  if (block.area) need.volume = applied * *block.area;
  if (const auto area = area_per_plant(block)) need.volume_per_plant = applied * *area;
  return need;
}

WaterNeed water_need_today(const Block& block,
                           const std::optional<SinceRain>& since_rain,
                           const Velocity& reference_evapotranspiration,
                           const Climate& climate) {
  std::vector<WaterDay> past;
  WaterDay today{.reference_evapotranspiration = reference_evapotranspiration};
  if (since_rain) {
    past = days_since_rain(*since_rain, reference_evapotranspiration);
    if (past.empty()) today.rain = since_rain->rain;
  }
  SoilWaterOptions options{.climate = climate};
  if (block.days_since_filled) {
    Examination examination;
    for (const Problem& problem : problems(block)) examination.add(problem.key, problem.message);
    refuse_if_any(examination.take());
    options.depletion = Length{};
    const auto days = static_cast<std::size_t>(*block.days_since_filled);
    const WaterDay dry{.reference_evapotranspiration = reference_evapotranspiration};
    if (past.size() >= days)  // the rain came before, or on that morning
      past.assign(days, dry);
    else
      past.insert(past.begin(), days - past.size(), dry);
  }
  return water_need(block, past, today, options);
}

std::vector<Problem> problems(const WaterDay& day) {
  Examination examination;
  examination.within("reference_evapotranspiration",
                     day.reference_evapotranspiration,
                     Range<Velocity>{0, 30, mm_per_day});
  examination.within("rain", day.rain, Range<Length>{0, 2000, mm});
  examination.within("watering", day.watering, Range<Length>{0, 2000, mm});
  examination.within(
      "crop_coefficient", day.crop_coefficient, Range<double>{0.01, 2, units::plain});
  examination.within("root_depth", day.root_depth, Range<Length>{0.02, 5, units::m});
  return examination.take();
}

}  // namespace hydro
