#include "hydro/text/breaks_words.hpp"

#include "hydro/text/words.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// "row 1, outlets 3 to 10; row 2, outlet 2"; of many lines the first ones.
std::string places_in_words(const std::vector<OutletNumber>& outlets) {
  constexpr int most_lines = 4;
  std::string text;
  int lines = 0;
  for (std::size_t i = 0; i < outlets.size(); ++lines) {
    if (lines == most_lines) return text + fmt::format("; {} more elsewhere", outlets.size() - i);
    const std::string& line = outlets[i].line;
    std::vector<int> numbers;
    for (; i < outlets.size() && outlets[i].line == line; ++i) numbers.push_back(outlets[i].outlet);
    text += fmt::format("{}{}, outlet{} {}",
                        lines > 0 ? "; " : "",
                        line,
                        numbers.size() > 1 ? "s" : "",
                        stretches(numbers));
  }
  return text;
}

/// "no other stops working" and so on, for one way of falling short.
std::string whether_others_fall(const Breaks& all, int spared, int Break::*more, const char* how) {
  const auto breaks = static_cast<int>(all.breaks.size());
  if (spared == breaks) return fmt::format("Wherever it happens, no other outlet {}s.", how);
  int least = all.outlets.empty() ? 0 : static_cast<int>(all.outlets.size());
  int most = 0;
  for (const Break& it : all.breaks) {
    if (it.*more > 0) least = std::min(least, it.*more);
    most = std::max(most, it.*more);
  }
  const std::string s = most == 1 ? "s" : "";
  const std::string others = span_in_words(least, most) + (most == 1 ? " other" : " others");
  if (spared == 0) return fmt::format("Wherever it happens, {} {}{}.", others, how, s);
  return fmt::format("At {} of the {} outlets it does no such harm; at the other {}, {} {}{}.",
                     spared,
                     breaks,
                     breaks - spared,
                     others,
                     how,
                     s);
}

}  // namespace

std::string span_in_words(int least, int most) {
  return least == most ? std::to_string(most) : fmt::format("{} to {}", least, most);
}

bool is_felt_at_the_gauge(const Breaks& breaks) {
  return !breaks.before.layout().supply().pressure.has_value();
}

std::vector<std::string> breaks_in_words(const Breaks& breaks, const Figures& figures) {
  std::vector<std::pair<std::string, std::vector<std::string>>> kinds;  // and their lines
  const std::string* last = nullptr;
  for (const Break& it : breaks.breaks) {
    if (last && *last == it.line) continue;
    last = &it.line;
    const Fault fault = at_outlet(breaks.fault, it.line, it.outlet);
    const std::string where = fmt::format("{}, outlet {}: ", it.line, it.outlet);
    std::string what =
        describe(fault, breaks.before.layout(), figures.system()).substr(where.size());
    const auto known = std::ranges::find(kinds, what, [](const auto& kind) { return kind.first; });
    if (known == kinds.end())
      kinds.push_back({std::move(what), {it.line}});
    else
      known->second.push_back(it.line);
  }
  if (kinds.empty()) return {kind_of(breaks.fault)};
  std::vector<std::string> sentences;
  for (const auto& [what, lines] : kinds)
    sentences.push_back(kinds.size() == 1 ? what
                                          : fmt::format("{}: {}", fmt::join(lines, ", "), what));
  return sentences;
}

std::vector<std::string> outcome_in_words(const Breaks& all, const Figures& figures) {
  if (all.breaks.empty()) return {"There is no outlet at which it can happen."};
  std::vector<std::string> sentences;
  const Layout& layout = all.before.layout();
  const bool some_stop = all.rest_works < static_cast<int>(all.breaks.size());
  bool can_stop = some_stop;
  for (std::size_t l = 0; l < layout.lines().size() && !can_stop; ++l)
    for (int outlet = 1; outlet <= layout.lines()[l].outlet_count() && !can_stop; ++outlet)
      can_stop = layout.outlet_at(l, outlet).minimum.has_value();
  if (can_stop)
    sentences.push_back(
        whether_others_fall(all, all.rest_works, &Break::more_out_of_work, "stop working"));
  if (!some_stop)
    sentences.push_back(whether_others_fall(
        all, all.rest_is_served, &Break::more_below_rated, "fall under the rated pressure"));
  const Break& worst = all.breaks.at(all.worst.value());
  if (worst.more_below_rated > 0) {
    const bool some_idle = worst.more_out_of_work > 0;
    const int others = some_idle ? worst.more_out_of_work : worst.more_below_rated;
    std::string harm = fmt::format("At its worst, at {}, outlet {}, {} other{} {}{} {}",
                                   worst.line,
                                   worst.outlet,
                                   others,
                                   others == 1 ? "" : "s",
                                   some_idle ? "stop" : "fall",
                                   others == 1 ? "s" : "",
                                   some_idle ? "working" : "under the rated pressure");
    if (!all.conditions.empty())
      harm += fmt::format(" ({})",
                          places_in_words(some_idle ? all.newly_out_of_work(*all.worst)
                                                    : all.newly_below_rated(*all.worst)));
    if (!figures.rounds_to_nothing(worst.escaping))
      harm += "; " + figures.flow_with_unit(worst.escaping) + " escapes";
    sentences.push_back(harm + ".");
  }
  const auto [least, most] = std::ranges::minmax(all.breaks, {}, &Break::gauge_reading);
  const OperatingPoint& supply = all.before.supply();
  if (is_felt_at_the_gauge(all))
    sentences.push_back(fmt::format(
        "{} {} as it is, and {}{} after it happened.",
        supply.gauge_reading ? "The gauge reads" : "The supply has",
        figures.pressure_with_unit(supply.gauge_reading.value_or(supply.source_pressure)),
        figures.pressure(least.gauge_reading) == figures.pressure(most.gauge_reading)
            ? ""
            : figures.pressure(least.gauge_reading) + " to ",
        figures.pressure_with_unit(most.gauge_reading)));
  else
    sentences.push_back(
        "The supply's pressure is held, and does not feel it; that of a real pump would fall.");
  return sentences;
}

}  // namespace hydro
