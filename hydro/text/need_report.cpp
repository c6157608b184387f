#include "hydro/text/need_report.hpp"

#include "hydro/text/page.hpp"

#include <algorithm>
#include <cstddef>
#include <string_view>

#include <fmt/format.h>

namespace hydro {
namespace {

std::string_view estimate_in_words(WeatherEstimate estimate) {
  switch (estimate) {
    case WeatherEstimate::sea_level:
      return "no altitude was given: sea level";
    case WeatherEstimate::dew_point_of_minimum:
      return "no humidity was given: by the coldest of the day";
    case WeatherEstimate::radiation_of_temperatures:
      return "no sunshine was given: by the span of the temperatures";
    case WeatherEstimate::usual_wind:
      return "no wind was given: 2 m/s";
  }
  return "";
}

std::string_view method_in_words(EvapotranspirationMethod method) {
  switch (method) {
    case EvapotranspirationMethod::typed:
      return "as it was given";
    case EvapotranspirationMethod::penman_monteith:
      return "by Penman-Monteith, FAO-56";
    case EvapotranspirationMethod::hargreaves:
      return "by Hargreaves, from the temperatures alone";
  }
  return "";
}

class NeedReport {
 public:
  NeedReport(const ReferenceEvapotranspiration& weather, UnitSystem units)
      : weather_(weather), is_us_(units == UnitSystem::us) {}

  std::string write(const std::vector<Block>& blocks, const std::vector<WaterNeed>& needs) {
    page_.paragraph("", "What the ground needs today");
    page_.line();
    for (std::size_t i = 0; i < blocks.size(); ++i)
      page_.paragraph("* ", sentence(blocks[i], needs[i]));
    page_.line();
    table(blocks, needs);
    page_.paragraph("",
                    fmt::format("The weather asks short grass for {} a day, {}{}.",
                                depth(weather_.rate * day),
                                method_in_words(weather_.method),
                                estimates()));
    for (std::size_t i = 0; i < blocks.size(); ++i)
      if (needs[i].start_is_guessed)
        page_.paragraph("",
                        fmt::format("{}: how dry it was at first is not known; all that may be "
                                    "used up was taken as gone.",
                                    blocks[i].name));
    return page_.take();
  }

 private:
  static constexpr Time day = 24 * units::h;

  /// With its unit, to what soils are known to.
  std::string depth(const Length& value) const {
    return is_us_ ? fmt::format("{:.2f} in", value / inch) : fmt::format("{:.0f} mm", value / mm);
  }
  std::string amount(const Volume& value) const {
    return is_us_ ? fmt::format("{:.1f} gal", value / gallon)
                  : fmt::format("{:.1f} L", value / litre);
  }
  static Length may_be_used(const WaterNeed& need) { return need.today.readily_available_water; }

  std::string estimates() const {
    std::string all;
    for (const WeatherEstimate it : weather_.estimates)
      all += "; " + std::string(estimate_in_words(it));
    return all;
  }

  static std::string how_long(const WaterNeed& need) {
    if (!need.time_left) return "nothing is used today";
    const int days = static_cast<int>(*need.time_left / day);
    return (days < 1    ? std::string("less than a day")
            : days == 1 ? std::string("1 day")
                        : fmt::format("{} days", days)) +
           " left until it must be watered";
  }

  std::string sentence(const Block& block, const WaterNeed& need) const {
    const std::string each = need.volume_per_plant && need.water_today
                                 ? fmt::format(", {} to each plant", amount(*need.volume_per_plant))
                                 : "";
    switch (need.reason) {
      case WaterReason::enough:
        return fmt::format("{}: enough; {}.", block.name, how_long(need));
      case WaterReason::today:
        return fmt::format(
            "{}: water today, {} into the ground{}.", block.name, depth(need.net_depth), each);
      case WaterReason::used_up:
        return fmt::format("{}: short of water already, {} into the ground{}.",
                           block.name,
                           depth(need.net_depth),
                           each);
    }
    return "";
  }

  void table(const std::vector<Block>& blocks, const std::vector<WaterNeed>& needs) {
    std::size_t widest = std::string_view("block").size();
    for (const Block& block : blocks) widest = std::max(widest, block.name.size());
    page_.line(fmt::format("  {:<{}}  {:>9} {:>12} {:>11} {:>11}",
                           "block",
                           widest,
                           "used up",
                           "may be used",
                           "a day uses",
                           "to fill up"));
    for (std::size_t i = 0; i < blocks.size(); ++i) {
      const WaterNeed& need = needs[i];
      page_.line(fmt::format("  {:<{}}  {:>9} {:>12} {:>11} {:>11}",
                             blocks[i].name,
                             widest,
                             depth(need.depletion),
                             depth(may_be_used(need)),
                             depth(need.crop_evapotranspiration * day),
                             depth(need.net_depth)));
    }
    page_.line();
  }

  const ReferenceEvapotranspiration& weather_;
  bool is_us_;
  Page page_;
};

}  // namespace

std::string need_report(const std::vector<Block>& blocks,
                        const std::vector<WaterNeed>& needs,
                        const ReferenceEvapotranspiration& weather,
                        UnitSystem units) {
  return NeedReport(weather, units).write(blocks, needs);
}

}  // namespace hydro
