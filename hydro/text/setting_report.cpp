#include "hydro/text/setting_report.hpp"

#include "hydro/answers/pressure_budget.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/supply_words.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

/// "the gauge reads 38.0 psi"; without a gauge, the pressure before the filter.
std::string reads(const Solution& solution, const Figures& figures) {
  const OperatingPoint& supply = solution.supply();
  return supply.gauge_reading
             ? "the gauge reads " + figures.pressure_with_unit(*supply.gauge_reading)
             : "the supply's pressure is " + figures.pressure_with_unit(supply.source_pressure);
}

std::string how(const Setting& setting, const Figures& figures) {
  if (!setting.speed)
    return "a pressure of " + figures.pressure_with_unit(setting.pressure) + " held";
  std::string text = "the engine at " + figures.speed(*setting.speed);
  const auto& loaded = setting.solution.supply().pumps.front().speed;
  if (loaded && figures.speed(*loaded) != figures.speed(*setting.speed))
    text += " without load (" + figures.speed(*loaded) + " under it)";
  const std::optional<Pump>& second = setting.solution.layout().supply().second_pump;
  if (second && second->speed) text += ", the second pump's at " + figures.speed(*second->speed);
  return text;
}

/// "row 2, outlets 3 to 10; row 1, outlet 9".
template <class Found>
std::string by_line(const std::vector<Found>& outlets) {
  std::vector<std::string> lines;
  std::map<std::string, std::vector<int>> numbers;
  for (const Found& it : outlets) {
    if (!numbers.contains(it.line)) lines.push_back(it.line);
    numbers[it.line].push_back(it.outlet);
  }
  constexpr std::size_t most_lines = 8;
  std::string text;
  for (std::size_t i = 0; i < std::min(most_lines, lines.size()); ++i) {
    const std::vector<int>& on_line = numbers[lines[i]];
    text += fmt::format("{}{}, outlet{} {}",
                        i == 0 ? "" : "; ",
                        lines[i],
                        on_line.size() == 1 ? "" : "s",
                        stretches(on_line));
  }
  if (lines.size() > most_lines)
    text += fmt::format("; and on {} more lines", lines.size() - most_lines);
  return text;
}

template <class Found>
bool has(const std::vector<Found>& outlets, const Found& wanted) {
  return std::ranges::any_of(outlets, [&](const Found& it) {
    return it.line == wanted.line && it.outlet == wanted.outlet;
  });
}

/// What was under and is not any more; what is under still, or only now.
template <class Found>
std::string cured(const std::vector<Found>& broken,
                  const std::vector<Found>& throttled,
                  const char* what) {
  if (broken.empty() && throttled.empty())
    return fmt::format("No outlet falls below {}, throttled up or not.", what);
  const auto healed =
      std::ranges::count_if(broken, [&](const Found& outlet) { return !has(throttled, outlet); });
  const std::string text = fmt::format(
      "Throttling up cures {} of the {} that fell under {}", healed, broken.size(), what);
  return throttled.empty() ? text + "."
                           : fmt::format("{}; not cured: {}.", text, by_line(throttled));
}

}  // namespace

std::string setting_report(const Setting& setting, std::optional<UnitSystem> units) {
  const Solution& solution = setting.solution;
  const Figures figures(units.value_or(solution.layout().units()));
  Page page;
  std::string text = fmt::format("{}{}, {} and the supply {}",
                                 setting.reached ? "With " : "NOT REACHED. With ",
                                 how(setting, figures),
                                 reads(solution, figures),
                                 giving(solution.supply().flow, figures).in_words());
  if (const auto weakest = weakest_outlet(solution))
    text += fmt::format("; the weakest outlet, {} of {}, has {} (rated {})",
                        weakest->outlet,
                        weakest->line,
                        figures.pressure_with_unit(weakest->pressure),
                        figures.limit(weakest->rated));
  page.paragraph("", text + ".");
  const bool at_top =
      std::ranges::find(setting.limits, SupplyLimit::top_speed) != setting.limits.end();
  if (!setting.reached && !at_top)
    page.paragraph("",
                   "No setting brings what is wanted: a regulator, a cut or the lie of the land "
                   "keeps it from an outlet.");
  if (!setting.limits.empty())
    page.paragraph("",
                   (at_top ? "What stands in the way: " : "Passed at this setting: ") +
                       in_words(setting.limits) + ".");
  return page.take();
}

std::vector<std::string> throttling_sentences(const Throttling& throttling,
                                              std::optional<UnitSystem> units) {
  const Solution& sound = throttling.sound;
  const Figures figures(units.value_or(sound.layout().units()));
  const Setting& up = throttling.throttled_up;
  const Comparison& unchanged = throttling.at_unchanged_speed;
  const Comparison& after = throttling.after_throttling_up;
  const std::string before = figures.pressure_with_unit(throttling.reading);
  const std::string limits = in_words(up.limits);
  return {fmt::format("At unchanged speed {}; when all was sound it was {}.",
                      reads(throttling.broken, figures),
                      before),
          up.reached ? fmt::format("To bring that back takes {}{}.",
                                   how(up, figures),
                                   limits.empty() ? "" : ", which passes " + limits)
                     : fmt::format("It cannot be brought back: with {} {}{}.",
                                   how(up, figures),
                                   reads(up.solution, figures),
                                   limits.empty() ? "" : "; what stands in the way is " + limits),
          unchanged.newly_below_minimum.empty() && after.newly_below_minimum.empty()
              ? cured(unchanged.newly_below_rated, after.newly_below_rated, "their rated pressure")
              : cured(unchanged.newly_below_minimum,
                      after.newly_below_minimum,
                      "the pressure at which they work")};
}

}  // namespace hydro
