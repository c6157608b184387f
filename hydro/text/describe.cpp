#include "hydro/text/describe.hpp"

#include "hydro/quantities/unit_system.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/supply_words.hpp"

#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

std::string supply_of(const Margin& margin) {
  return margin.supply.empty() ? "the supply" : "supply " + margin.supply;
}

std::string outlet_of(const Margin& margin) {
  return fmt::format("outlet {} of {}", margin.outlet.value_or(0), margin.line);
}

std::string what_is_passed(const Margin& margin) {
  switch (margin.limit) {
    case Limit::rated:
      return outlet_of(margin) + " falls below its rated pressure";
    case Limit::minimum:
      return outlet_of(margin) + " falls below the pressure at which it works";
    case Limit::maximum:
      return outlet_of(margin) + " rises above its highest pressure";
    case Limit::variation:
      return margin.line.empty() ? "the outlets of all lines together water too unevenly"
                                 : "the outlets of " + margin.line + " water too unevenly";
    case Limit::velocity:
      return "the water in " + margin.line + " runs too fast";
    case Limit::pipe_rating:
      return "a pipe of " + margin.line + " bears more than its rating";
    case Limit::atmosphere:
      return "the pressure in " + margin.line + " falls below the atmosphere's";
    default:
      return supply_of(margin) + " passes " +
             in_words(std::vector{supply_limit(margin.limit).value()});
  }
}

std::string outlets(const Standing& before, const Standing& after) {
  if (after.below_rated == 0) return "no outlet is below rated";
  const std::string count =
      fmt::format("{} {}", after.below_rated, after.below_rated == 1 ? "outlet" : "outlets");
  if (after.below_rated == before.below_rated) return count + " stay below rated";
  return fmt::format("{} below rated instead of {}", count, before.below_rated);
}

std::string share(double before, double after) {
  if (percent(before) == percent(after))
    return ", the weakest stays at " + percent(after) + " of its rated pressure";
  return ", the weakest goes from " + percent(before) + " to " + percent(after) +
         " of its rated pressure";
}

template <class Q>
std::string figure(const Q& before, const Q& after, const Unit<Q>& unit) {
  const std::string was = fmt::format("{:.1f}", before / unit);
  const std::string is = fmt::format("{:.1f}", after / unit);
  return is + (is == was ? "" : " instead of " + was) + " " + unit.symbol;
}

}  // namespace

std::string describe(const Margin& margin) {
  const std::string past = percent_past(-margin.left);
  const std::string by = past.starts_with('<') ? "less than " + past.substr(1) : past;
  return what_is_passed(margin) + (margin.limit == Limit::atmosphere ? "" : ", by " + by);
}

std::string describe(const Remedy& remedy, const Standing& before) {
  const UnitSet units = unit_set(remedy.solution.layout().units());
  const Standing& after = remedy.after;
  std::string text = remedy.deed + ": " + outlets(before, after);
  if (after.lowest_share && before.lowest_share)
    text += share(*before.lowest_share, *after.lowest_share);
  text += "; " + figure(before.flow, after.flow, units.flow);
  if (after.shaft_power && before.shaft_power)
    text += ", " + figure(*before.shaft_power, *after.shaft_power, units.power) + " at the shaft";
  std::string but;
  for (const Margin& margin : remedy.passed)
    if (margin.limit != Limit::rated) but += (but.empty() ? "; but " : ", and ") + describe(margin);
  return text + but + ".";
}

}  // namespace hydro
