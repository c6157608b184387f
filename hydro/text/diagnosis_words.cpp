#include "hydro/text/diagnosis_words.hpp"

#include "hydro/text/diagnosis_report.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr double rounds_to_all = 0.995;
constexpr double rounds_to_nothing = 0.005;
/// Of a place's probability, from which on a kind of fault is worth a word.
constexpr double worth_a_word = 0.15;
/// Below it, the first place is not called the one.
constexpr double likely = 0.5;

/// In the order of the enumeration.
constexpr std::array kind_words{"nothing wrong",
                                "a head off",
                                "a riser sheared",
                                "a nozzle missing",
                                "a worn outlet",
                                "a clogged outlet",
                                "an outlet of another kind",
                                "a leak",
                                "the end open",
                                "the valve left open",
                                "the valve not fully open, or dirt in the inlet",
                                "a regulator stuck open",
                                "a regulator stuck shut",
                                "the filter dirty",
                                "the engine slow",
                                "the pump worn",
                                "the supply low",
                                "the gauge wrong"};
static_assert(kind_words.size() == static_cast<std::size_t>(CandidateKind::gauge_wrong) + 1);

std::string words_for(CandidateKind kind) {
  return kind_words.at(static_cast<std::size_t>(kind));
}

/// "row 2, outlet 7"; "row 2, outlets 6 to 9".
std::string place(const std::string& line, int first, int last) {
  return first == last ? fmt::format("{}, outlet {}", line, first)
                       : fmt::format("{}, outlets {} to {}", line, first, last);
}

bool is_of(const WalkTo& walk, const Candidate& candidate) {
  return walk_kind_of(candidate.kind) == walk.kind && candidate.line == walk.line;
}

std::string capital(std::string sentence) {
  if (!sentence.empty() && sentence[0] >= 'a' && sentence[0] <= 'z')
    sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
  return sentence;
}

}  // namespace

std::string chance(double probability) {
  if (!(probability >= rounds_to_nothing)) return "less than 1 in 100";
  if (probability >= rounds_to_all) return "more than 99 in 100";
  return fmt::format("{:.0f} in 100", 100 * probability);
}

std::string chance_in_percent(double probability) {
  if (!(probability >= rounds_to_nothing)) return "<1 %";
  if (probability >= rounds_to_all) return ">99 %";
  return fmt::format("{:.0f} %", 100 * probability);
}

std::string where(const Reading& reading) {
  const std::string outlet = fmt::format("{}, outlet {}", reading.line, reading.outlet);
  switch (reading.place) {
    case ReadingPlace::supply_gauge:
      return "the supply's gauge";
    case ReadingPlace::after_filter:
      return "the gauge after the filter";
    case ReadingPlace::line_inlet:
      return "the inlet of " + reading.line;
    case ReadingPlace::pipe:
      return "the pipe at " + outlet;
    case ReadingPlace::riser:
      return "the riser of " + outlet;
    case ReadingPlace::jet:
      return "the jet of " + outlet;
    case ReadingPlace::flush_end:
      return "the far end of " + reading.line;
    case ReadingPlace::meter:
      return "the meter";
    case ReadingPlace::bucket:
      return "the bucket at " + outlet;
    case ReadingPlace::engine:
      return "the engine's counter";
  }
  return "";
}

std::string figure(const std::optional<Pressure>& pressure,
                   const std::optional<Flow>& flow,
                   const std::optional<RotationalSpeed>& speed,
                   const Figures& figures) {
  if (pressure) return figures.pressure_with_unit(*pressure);
  if (flow) {
    const Unit<Flow>& unit = figures.flow_unit(*flow);
    return fmt::format("{:.1f} {}", *flow / unit, unit.symbol);
  }
  return speed ? figures.speed(*speed) : "";
}

std::string in_words(const Sight& sight) {
  return place(sight.line, sight.outlet, sight.to_outlet.value_or(sight.outlet)) + ": " +
         std::string(words_of(sight.seen));
}

std::string where(const WalkTo& walk) {
  if (walk.kind == WalkKind::nothing) return "nowhere";
  if (walk.kind == WalkKind::gauge) return "the gauge";
  if (walk.line.empty()) return "the supply";
  return walk.first ? place(walk.line, *walk.first, walk.last.value_or(*walk.first)) : walk.line;
}

std::string what(const WalkTo& walk, const FoundFaults& found) {
  std::vector<std::pair<double, CandidateKind>> kinds;
  for (const FoundFault& it : found.faults) {
    if (!is_of(walk, it.candidate)) continue;
    const auto known =
        std::ranges::find(kinds, it.candidate.kind, &std::pair<double, CandidateKind>::second);
    if (known == kinds.end())
      kinds.emplace_back(it.probability, it.candidate.kind);
    else
      known->first += it.probability;
  }
  std::ranges::stable_sort(kinds, std::ranges::greater{}, &std::pair<double, CandidateKind>::first);
  std::string text;
  for (std::size_t i = 0; i < std::min<std::size_t>(2, kinds.size()); ++i)
    if (i == 0 || kinds[i].first >= worth_a_word * walk.probability)
      text += (i == 0 ? "" : " or ") + words_for(kinds[i].second);
  return text;
}

std::string in_words(const Candidate& candidate) {
  std::string what = words_for(candidate.kind);
  if (!candidate.gauge.empty()) return fmt::format("{} ({})", what, candidate.gauge);
  if (candidate.line.empty()) return what;
  return candidate.outlet
             ? what + " at " + place(candidate.line, *candidate.outlet, *candidate.outlet)
             : what + " on " + candidate.line;
}

bool is_as_it_should_be(const FoundFaults& found) {
  constexpr double bare_mention = 3;
  const auto sound = std::ranges::find(found.faults,
                                       CandidateKind::no_fault,
                                       [](const FoundFault& it) { return it.candidate.kind; });
  if (sound == found.faults.end() || !found.explained || !(sound->probability > 0)) return false;
  const double most = sound->log_evidence + std::log(bare_mention);
  return std::ranges::all_of(found.faults,
                             [&](const FoundFault& it) { return it.log_evidence <= most; });
}

std::string headline(const FoundFaults& found) {
  if (!found.explained)
    return "No single fault explains these readings: one of them is wrong, or more than one thing "
           "is, or the description is.";
  if (found.walk.empty()) return "Nothing could be looked for.";
  if (is_as_it_should_be(found))
    return "These readings are as they should be: what else may be wrong, they cannot see.";
  const WalkTo& first = found.walk.front();
  const std::string how_sure = chance(first.probability);
  if (first.kind == WalkKind::nothing)
    return fmt::format("Nothing is wrong, as far as these readings tell: {}.", how_sure);
  std::string text = what(first, found);
  if (!first.line.empty()) text += " on " + first.line;
  if (first.first)
    text +=
        *first.first == first.last.value_or(0)
            ? fmt::format(", most likely outlet {}", *first.first)
            : fmt::format(", most likely outlets {} to {}", *first.first, first.last.value_or(0));
  text += ": " + how_sure + ".";
  if (first.probability >= likely) return capital(text);
  return "The readings do not single out one place yet. The likeliest is " + text;
}

}  // namespace hydro
