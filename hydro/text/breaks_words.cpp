#include "hydro/text/breaks_words.hpp"

#include "hydro/text/words.hpp"

#include <algorithm>
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

/// One way in which the others may fall short.
struct Harm {
  int Break::*more;
  int spared;  ///< breaks that do no such harm
  const char* one;
  const char* many;

  std::string to(int others, const std::string& number) const {
    return fmt::format("{} other{} {}", number, others == 1 ? "" : "s", others == 1 ? one : many);
  }
};

Harm out_of_work(const Breaks& all) {
  return {&Break::more_out_of_work, all.rest_works, "stops working", "stop working"};
}
Harm below_rated(const Breaks& all) {
  return {&Break::more_below_rated,
          all.rest_is_served,
          "falls under the rated pressure",
          "fall under the rated pressure"};
}

std::string whether_others_fall(const Breaks& all, const Harm& harm) {
  const auto breaks = static_cast<int>(all.breaks.size());
  if (harm.spared == breaks) return "Wherever it happens, " + harm.to(1, "no") + ".";
  int least = static_cast<int>(all.outlets.size());
  int most = 0;
  for (const Break& it : all.breaks) {
    if (it.*harm.more > 0) least = std::min(least, it.*harm.more);
    most = std::max(most, it.*harm.more);
  }
  const std::string others =
      harm.to(most, least == most ? std::to_string(most) : fmt::format("{} to {}", least, most));
  if (harm.spared == 0) return "Wherever it happens, " + others + ".";
  return fmt::format("At {} of the {} outlets {}; at the other {}, {}.",
                     harm.spared,
                     breaks,
                     harm.to(1, "no"),
                     breaks - harm.spared,
                     others);
}

/// What falls short before it happens; empty when nothing does.
std::string what_falls_short_already(const Breaks& all) {
  const auto count = [&](OutletCondition condition) {
    return std::ranges::count(all.conditions_before, condition);
  };
  const auto idle = count(OutletCondition::below_minimum) + count(OutletCondition::dry);
  const auto below = count(OutletCondition::below_rated) + idle;
  if (below == 0) return "";
  const std::string many = fmt::format(
      "As it is, {} outlet{} under the rated pressure", below, below == 1 ? " is" : "s are");
  if (idle == 0) return many + ", but work" + (below == 1 ? "s." : ".");
  if (idle == below) return many + (below == 1 ? ", and does not work." : ", and do not work.");
  return many + fmt::format(", and {} of them do{} not work.", idle, idle == 1 ? "es" : "");
}

bool some_have_a_minimum(const Layout& layout) {
  for (std::size_t l = 0; l < layout.lines().size(); ++l)
    for (int outlet = 1; outlet <= layout.lines()[l].outlet_count() && !layout.is_shut(l); ++outlet)
      if (layout.outlet_at(l, outlet).minimum) return true;
  return false;
}

std::string what_is_the_worst(const Breaks& all, const Break& worst, const Figures& figures) {
  const bool some_stop = worst.more_out_of_work > 0;
  const int others = some_stop ? worst.more_out_of_work : worst.more_below_rated;
  std::string text = fmt::format(
      "At its worst, at {}, outlet {}, {}",
      worst.line,
      worst.outlet,
      (some_stop ? out_of_work(all) : below_rated(all)).to(others, std::to_string(others)));
  if (!all.conditions.empty())
    text += fmt::format(" ({})",
                        places_in_words(some_stop ? all.newly_out_of_work(*all.worst)
                                                  : all.newly_below_rated(*all.worst)));
  if (!figures.rounds_to_nothing(worst.escaping))
    text += fmt::format("; {} {}escapes",
                        figures.flow_with_unit(worst.escaping),
                        all.before.layout().faults().empty() ? "" : "more ");
  return text + ".";
}

std::string what_the_gauge_shows(const Breaks& all, const Figures& figures) {
  if (!is_felt_at_the_gauge(all))
    return "The supply's pressure is held, and does not feel it; that of a real pump would fall.";
  const OperatingPoint& supply = all.before.supply();
  const std::string before =
      figures.pressure_with_unit(supply.gauge_reading.value_or(supply.source_pressure));
  const auto [least, most] = std::ranges::minmax(all.breaks, {}, &Break::gauge_reading);
  const std::string from = figures.pressure(least.gauge_reading);
  const std::string to = figures.pressure_with_unit(most.gauge_reading);
  const char* who = supply.gauge_reading ? "The gauge reads" : "The supply has";
  const bool is_one = to.starts_with(from + ' ');
  if (is_one && to == before)
    return fmt::format("{} {}, and the same after it happened.", who, before);
  return fmt::format(
      "{} {}, and {} after it happened.", who, before, is_one ? to : from + " to " + to);
}

}  // namespace

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
      kinds.emplace_back(std::move(what), std::vector{it.line});
    else
      known->second.push_back(it.line);
  }
  if (kinds.empty()) return {kind_of(breaks.fault)};
  std::vector<std::string> sentences;
  sentences.reserve(kinds.size());
  for (const auto& [what, lines] : kinds)
    sentences.push_back(kinds.size() == 1 ? what
                                          : fmt::format("{}: {}", fmt::join(lines, ", "), what));
  return sentences;
}

std::vector<std::string> outcome_in_words(const Breaks& all, const Figures& figures) {
  if (all.breaks.empty()) return {"There is no outlet at which it can happen."};
  std::vector<std::string> sentences;
  if (std::string already = what_falls_short_already(all); !already.empty())
    sentences.push_back(std::move(already));
  const bool some_stop = all.rest_works < static_cast<int>(all.breaks.size());
  if (some_stop || some_have_a_minimum(all.before.layout()))
    sentences.push_back(whether_others_fall(all, out_of_work(all)));
  if (!some_stop) sentences.push_back(whether_others_fall(all, below_rated(all)));
  const Break& worst = all.breaks.at(all.worst.value());
  if (worst.more_out_of_work > 0 || worst.more_below_rated > 0)
    sentences.push_back(what_is_the_worst(all, worst, figures));
  sentences.push_back(what_the_gauge_shows(all, figures));
  return sentences;
}

}  // namespace hydro
