#include "hydro/text/course_words.hpp"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

Flow magnitude(const Flow& flow) {
  return flow < Flow{} ? -flow : flow;
}

bool is_same(const Length& one, const Length& other) {
  return one - other <= same_place && other - one <= same_place;
}

template <class Kind>
bool has_fault(const Layout& layout, std::size_t line) {
  return std::ranges::any_of(layout.faults_on(line), [](const Fault& fault) {
    return std::holds_alternative<Kind>(fault) && !outlet_of(fault);
  });
}

/// By which water comes to a line or leaves it.
struct Way {
  Flow flow;
  std::string other;  ///< what it comes from or goes to
  std::string told;
};

/// "its valve is shut"; empty where the line's own inlet lets water through.
std::string closed_in_words(const Layout& layout, std::size_t line) {
  if (has_fault<RegulatorStuckShut>(layout, line)) return "its regulator is stuck shut";
  if (has_fault<ValveLeftOpen>(layout, line)) return {};
  const std::optional<Valve>& valve = layout.lines()[line].valve;
  if (valve && valve->opening == ValveOpening::shut) return "its valve is shut";
  if (layout.running_sets().empty()) return {};
  bool named = false;
  for (const WateringSet& set : layout.sets()) {
    if (std::ranges::find(set.lines, layout.lines()[line].name) == set.lines.end()) continue;
    if (std::ranges::find(layout.running_sets(), set.name) != layout.running_sets().end())
      return {};
    named = true;
  }
  return named ? "the sets that run leave its inlet shut" : "";
}

}  // namespace

bool CourseWords::has_more_than_one_way(std::size_t line_index) const {
  const LineSolution& here = solved(line_index);
  if (!courses_.has_loops() || here.shut) return false;
  if (layout().is_cut_off(line_index) || layout().joined_by(line_index) ||
      !courses_.joining(line_index).empty() || here.inlet_shut ||
      courses_.or_still(here.inflow) < Flow{})
    return true;
  const bool is_held_shut = here.check_valve == CheckValveState::shut ||
                            (here.regulator && here.regulator->state == RegulatorState::shut);
  return is_held_shut || std::ranges::any_of(courses_.fed_by(line_index), [&](std::size_t child) {
           return courses_.or_still(solved(child).inflow) < Flow{};
         });
}

std::string CourseWords::of(std::size_t line_index) const {
  if (layout().is_cut_off(line_index))
    return "no water comes to it: " + why_no_water(line_index) + ".";
  const WaterCourse course = courses_.of(line_index);
  Flow largest = magnitude(course.inflow);
  for (const Neighbour& neighbour : course.neighbours)
    largest = std::max(largest, magnitude(neighbour.flow));
  const Unit<Flow>& unit = figures_.flow_unit(largest);
  const auto told = [&](const Flow& flow) {
    return fmt::format("{:.1f} {}", flow / unit, unit.symbol);
  };
  const Length far = layout().lines()[line_index].whole_length();
  const bool into_inlet = course.inflow > Flow{};
  const bool out_of_inlet = course.inflow < Flow{};
  std::vector<Way> sources;
  std::vector<Way> sinks;
  const bool from_others = std::ranges::any_of(
      course.neighbours, [](const Neighbour& neighbour) { return neighbour.flow > Flow{}; });
  if (into_inlet)
    sources.push_back({course.inflow,
                       fed_by(line_index),
                       told(course.inflow) + (from_others ? " at its inlet" : "")});
  bool only_at_far_end = true;
  for (const Neighbour& gain : course.neighbours) {
    const bool feeds_as_described = gain.by == Meets::inlet && gain.flow < Flow{};
    if (gain.flow == Flow{} || feeds_as_described) continue;
    const bool at_far_end = is_same(gain.place, far);
    const std::string other = name_of_other(line_index, gain.other);
    const std::string whose =
        at_far_end ? other : other + " " + place_in_words(line_index, gain.place);
    if (gain.flow > Flow{}) {
      only_at_far_end = only_at_far_end && at_far_end;
      sources.push_back({gain.flow, other, told(gain.flow) + " from " + whose});
    } else {
      sinks.push_back({-gain.flow, other, told(-gain.flow) + " goes on into " + whose});
    }
  }
  if (out_of_inlet)
    sinks.push_back({-course.inflow,
                     fed_by(line_index),
                     told(-course.inflow) + " goes out of its inlet into " + fed_by(line_index)});

  std::string text = why_nothing_passes(line_index);
  if (!text.empty()) text += "; ";
  if (sources.empty()) return text + "no water runs in it.";
  if (sources.size() == 1 && sinks.size() == 1 &&
      courses_.or_still(sources[0].flow - sinks[0].flow) == Flow{})
    return text + fmt::format("{} runs through it from {} into {}.",
                              told(sources[0].flow),
                              sources[0].other,
                              sinks[0].other);
  if (!into_inlet)
    text += !only_at_far_end ? "its water comes from other lines: "
            : out_of_inlet   ? "the water runs from its far end to its inlet: "
                             : "its water comes from its far end: ";
  else if (from_others)
    text += only_at_far_end ? "fed from both ends: " : "fed at more than one place: ";
  else
    text += "all its water comes in at its inlet: ";
  for (std::size_t i = 0; i < sources.size(); ++i) text += (i == 0 ? "" : ", ") + sources[i].told;
  for (const Way& sink : sinks) text += "; " + sink.told;
  return text + meetings(line_index, course) + ".";
}

std::string CourseWords::meetings(std::size_t line_index, const WaterCourse& course) const {
  const Line& line = layout().lines()[line_index];
  std::vector<std::string> places;
  for (const auto& meeting : course.meetings) {
    if (is_same(meeting.start, meeting.end)) {
      places.push_back(place_in_words(line_index, meeting.start));
      continue;
    }
    const auto first = line.outlet_near(meeting.start);
    const auto last = line.outlet_near(meeting.end);
    const Unit<Length>& unit = figures_.units().length;
    places.push_back(first && last ? fmt::format("between outlets {} and {}", *first, *last)
                                   : fmt::format("between {:.1f} and {:.1f} {}",
                                                 meeting.start / unit,
                                                 meeting.end / unit,
                                                 unit.symbol));
  }
  return places.empty() ? "" : fmt::format("; the waters meet {}", fmt::join(places, " and "));
}

std::string CourseWords::place_in_words(std::size_t line_index, const Length& place) const {
  const Line& line = layout().lines()[line_index];
  if (const auto outlet = line.outlet_near(place)) return fmt::format("at outlet {}", *outlet);
  if (is_same(place, line.whole_length())) return "at its far end";
  const Unit<Length>& unit = figures_.units().length;
  return fmt::format("at {:.1f} {}", place / unit, unit.symbol);
}

std::string CourseWords::name_of_other(std::size_t line_index, std::size_t other) const {
  return other == line_index ? "its own far end" : solved(other).name;
}

std::string CourseWords::fed_by(std::size_t line_index) const {
  const std::string& name = layout().lines()[line_index].fed_by;
  if (!name.empty()) return name;
  return layout().further_supplies().empty() ? "the supply" : "the first supply";
}

/// Where it has water all the same; empty: the inlet lets water through.
std::string CourseWords::why_nothing_passes(std::size_t line_index) const {
  const LineSolution& here = solved(line_index);
  if (std::string closed = closed_in_words(layout(), line_index); !closed.empty()) return closed;
  if (here.inlet_shut) return "no water comes to its inlet";
  if (here.check_valve == CheckValveState::shut)
    return "the pressure beyond it holds its check valve shut";
  if (here.regulator && here.regulator->state == RegulatorState::shut)
    return "the pressure beyond it holds its regulator shut";
  return {};
}

std::string CourseWords::why_no_water(std::size_t line_index) const {
  const Line& line = layout().lines()[line_index];
  std::vector<std::string> reasons;
  const std::string closed = closed_in_words(layout(), line_index);
  const auto feeder = layout().feeder_of(line_index);
  if (!closed.empty())
    reasons.push_back(closed);
  else if (feeder)
    reasons.push_back(layout().is_cut_off(*feeder)
                          ? fmt::format("{} has none", solved(*feeder).name)
                          : fmt::format("{} is open to the air before it", solved(*feeder).name));
  if (!line.joins.empty() && line.joins != line.name)
    reasons.push_back(fmt::format("{}, which it joins, has none there", line.joins));
  for (const std::size_t other : courses_.joining(line_index))
    if (other != line_index)
      reasons.push_back(fmt::format("{}, which joins it, has none", solved(other).name));
  for (const std::size_t child : courses_.fed_by(line_index))
    if (!layout().is_cut_off(child) && layout().joined_by(child))
      reasons.push_back(fmt::format("{} lets none back through its inlet", solved(child).name));
  return fmt::format("{}", fmt::join(reasons, "; "));
}

}  // namespace hydro
