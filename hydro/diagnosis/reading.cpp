#include "hydro/diagnosis/reading.hpp"

#include "hydro/diagnosis/places.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

enum class What { pressure, flow, speed };

struct PlaceWords {
  std::string_view words;
  What what;
  bool on_line = false;
  bool at_outlet = false;
};
/// In the order of the enumeration.
constexpr std::array place_words{PlaceWords{"supply gauge", What::pressure},
                                 PlaceWords{"after filter", What::pressure},
                                 PlaceWords{"line inlet", What::pressure, true},
                                 PlaceWords{"pipe", What::pressure, true, true},
                                 PlaceWords{"riser", What::pressure, true, true},
                                 PlaceWords{"jet", What::pressure, true, true},
                                 PlaceWords{"flush end", What::pressure, true},
                                 PlaceWords{"meter", What::flow},
                                 PlaceWords{"bucket", What::flow, true, true},
                                 PlaceWords{"engine", What::speed}};
static_assert(place_words.size() == static_cast<std::size_t>(ReadingPlace::engine) + 1);

const PlaceWords& words_for(ReadingPlace place) {
  return place_words.at(static_cast<std::size_t>(place));
}

constexpr std::array seen_words{"turning", "not turning", "dry", "plume", "wet spot"};
static_assert(seen_words.size() == static_cast<std::size_t>(Seen::wet_spot) + 1);

constexpr Range<Pressure> pressures{-100, 10'000, kPa};
constexpr Range<Pressure> pressure_errors{0, 1000, kPa, true};
constexpr Range<double> shares{0, 1, units::plain, true};

/// Line and outlet, where they are asked for, must be in the layout.
void examine_where(bool on_line,
                   bool at_outlet,
                   const std::string& name,
                   int outlet,
                   const Layout& layout,
                   Examination& examination) {
  if (!on_line) {
    if (!name.empty()) examination.add("line", "is given; this place is at the supply");
    return;
  }
  const auto line = std::ranges::find(layout.lines(), name, &Line::name);
  if (line == layout.lines().end()) {
    std::vector<std::string> names;
    for (const Line& it : layout.lines()) names.push_back(it.name);
    examination.add("line",
                    "is " + in_quotes(name) +
                        ", must be one of this layout: " + list_in_quotes(names, names.size()));
    return;
  }
  if (!at_outlet) {
    if (outlet != 0) examination.add("outlet", "is given; this place is not at an outlet");
    return;
  }
  if (line->outlet_count() == 0)
    examination.add("line", "is " + in_quotes(name) + ", which has no outlets");
  else
    examination.within("outlet", outlet, 1, line->outlet_count());
}

void examine_place(const Reading& reading, const Layout& layout, Examination& examination) {
  const PlaceWords& place = words_for(reading.place);
  examine_where(place.on_line, place.at_outlet, reading.line, reading.outlet, layout, examination);
  if (reading.place == ReadingPlace::line_inlet) {
    const auto line = std::ranges::find(layout.lines(), reading.line, &Line::name);
    if (line != layout.lines().end() &&
        layout.inlet_is_shut(static_cast<std::size_t>(line - layout.lines().begin())))
      examination.add("place",
                      "is the inlet of a line that is shut; read what feeds it at its own places");
  }
  if (reading.place == ReadingPlace::engine) {
    const Supply& supply = layout.supply();
    if (!supply.pump || !(supply.pump->speed || supply.pump->curve_speed))
      examination.add("place", "is the engine, but the first supply is no pump of known speed");
  }
  if (reading.place == ReadingPlace::jet) {
    const auto line = std::ranges::find(layout.lines(), reading.line, &Line::name);
    if (line != layout.lines().end() && reading.outlet >= 1 &&
        reading.outlet <= line->outlet_count() && !line->kind_of(reading.outlet).nozzle)
      examination.add(
          "place",
          "is a jet, but this outlet is not described by the bore of a nozzle; read its "
          "riser, or the pipe below");
  }
}

void examine_errors(const Reading& reading, Examination& examination) {
  examination.within("pressure_error", reading.pressure_error, pressure_errors);
  examination.within("flow_error", reading.flow_error, shares);
  examination.within("time_error", reading.time_error, Range<Time>{0, 3600, units::s, true});
  examination.within("speed_error", reading.speed_error, shares);
  examination.name("gauge", reading.gauge);
}

void examine_bucket(const Reading& reading, Examination& examination) {
  if (reading.volume.has_value() != reading.time.has_value())
    examination.add(reading.volume ? "time" : "volume",
                    "is missing; a bucket takes a volume and the time in which it was filled");
  if (reading.flow && (reading.volume || reading.time))
    examination.add("flow", "is given beside a volume and a time; give one or the other");
  examination.within("volume", reading.volume, Range<Volume>{0, 100, m3, true});
  examination.within("time", reading.time, Range<Time>{0, 86'400, units::s, true});
}

/// Exactly the figure that its place has.
void examine_figure(const Reading& reading, Examination& examination) {
  const What what = words_for(reading.place).what;
  const bool has_bucket = reading.volume || reading.time;
  const auto require = [&](bool given, bool wanted, const char* key) {
    if (given && !wanted)
      examination.add(
          key,
          "is given; this place (" + std::string(words_of(reading.place)) + ") does not show it");
    if (!given && wanted) examination.add(key, "is missing");
  };
  require(reading.pressure.has_value(), what == What::pressure, "pressure");
  require(reading.speed.has_value(), what == What::speed, "speed");
  require(reading.flow || (reading.place == ReadingPlace::bucket && has_bucket),
          what == What::flow,
          "flow");
  if (has_bucket && reading.place != ReadingPlace::bucket)
    examination.add(reading.volume ? "volume" : "time", "is given; this place is no bucket");
  examination.within("pressure", reading.pressure, pressures);
  examination.within("flow", reading.flow, Range<Flow>{0, 10, m3_per_s, true});
  examination.within("speed", reading.speed, Range<RotationalSpeed>{0, 60'000, rpm, true});
  if (reading.place == ReadingPlace::bucket) examine_bucket(reading, examination);
}

void examine_sight(const Sight& sight, const Layout& layout, Examination& examination) {
  examine_where(true, true, sight.line, sight.outlet, layout, examination);
  const auto line = std::ranges::find(layout.lines(), sight.line, &Line::name);
  if (sight.to_outlet && line != layout.lines().end())
    examination.within(
        "to_outlet", *sight.to_outlet, std::max(1, sight.outlet), line->outlet_count());
  examination.within("width", sight.width, pressure_errors);
  examination.within("doubt", sight.doubt, Range<double>{0, 0.5, units::plain, true});
}

void append(std::vector<Problem>& all, const std::string& place, std::vector<Problem> found) {
  for (Problem& problem : found) {
    problem.place = place;
    all.push_back(std::move(problem));
  }
}

bool is_same_place(const Reading& one, const Reading& other) {
  return one.place == other.place && one.line == other.line && one.outlet == other.outlet;
}

std::vector<Problem> contradictions(const std::vector<Reading>& readings) {
  constexpr double most = 4;  // standard errors of the difference
  std::vector<Problem> found;
  for (std::size_t i = 0; i < readings.size(); ++i)
    for (std::size_t j = i + 1; j < readings.size(); ++j) {
      if (!is_same_place(readings[i], readings[j])) continue;
      // Two gauges at one place may differ by their biases.
      if (gauge_of(readings[i]) != gauge_of(readings[j])) continue;
      const double error = std::hypot(own_error(readings[i]), own_error(readings[j]));
      const double apart = std::abs(figure_of(readings[i]) - figure_of(readings[j])) / error;
      if (apart <= most) continue;
      found.push_back({fmt::format("reading {}", j + 1),
                       std::string(words_of(readings[j].place)),
                       fmt::format("contradicts reading {} of the same place: they are {:.1f} "
                                   "standard errors apart, must be at most {:.0f}; strike one, or "
                                   "give them larger errors",
                                   i + 1,
                                   apart,
                                   most)});
    }
  return found;
}

}  // namespace

std::string_view words_of(ReadingPlace place) {
  return words_for(place).words;
}
bool is_pressure(ReadingPlace place) {
  return words_for(place).what == What::pressure;
}
bool is_flow(ReadingPlace place) {
  return words_for(place).what == What::flow;
}
bool is_on_line(ReadingPlace place) {
  return words_for(place).on_line;
}
bool is_at_outlet(ReadingPlace place) {
  return words_for(place).at_outlet;
}
std::string_view words_of(Seen seen) {
  return seen_words.at(static_cast<std::size_t>(seen));
}

Flow flow_read(const Reading& reading) {
  if (reading.flow) return *reading.flow;
  if (reading.volume && reading.time) return *reading.volume / *reading.time;
  throw InvalidInput("flow", "is missing; give it, or a volume and the time to fill it");
}

std::string gauge_of(const Reading& reading) {
  if (!is_pressure(reading.place)) return {};
  if (!reading.gauge.empty()) return reading.gauge;
  if (reading.place == ReadingPlace::supply_gauge || reading.place == ReadingPlace::after_filter)
    return std::string(words_of(reading.place));
  return "carried gauge";
}

std::vector<Problem> problems_of_place(const Reading& reading, const Layout& layout) {
  Examination examination;
  examine_place(reading, layout, examination);
  examine_errors(reading, examination);
  return examination.take();
}

std::vector<Problem> problems(const std::vector<Reading>& readings,
                              const std::vector<Sight>& sights,
                              const Layout& layout) {
  std::vector<Problem> found;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    Examination examination;
    examine_place(readings[i], layout, examination);
    examine_errors(readings[i], examination);
    examine_figure(readings[i], examination);
    append(found, fmt::format("reading {}", i + 1), examination.take());
  }
  for (std::size_t i = 0; i < sights.size(); ++i) {
    Examination examination;
    examine_sight(sights[i], layout, examination);
    append(found, fmt::format("sight {}", i + 1), examination.take());
  }
  return found.empty() ? contradictions(readings) : found;
}

std::vector<std::string> notes_on(const std::vector<Reading>& readings,
                                  const std::vector<Sight>& sights) {
  std::vector<std::string> notes;
  if (readings.empty() && sights.empty())
    notes.emplace_back("nothing was read or seen: the probabilities are the odds assumed before");
  if (readings.size() == 1 && sights.empty())
    notes.emplace_back("one reading alone: many faults of some size explain it equally well");
  const auto is_at_first = [&](const Reading& it) { return is_same_place(it, readings.front()); };
  if (readings.size() > 1 && std::ranges::all_of(readings, is_at_first))
    notes.emplace_back("all readings are of one place: they make it surer, but count as one");
  return notes;
}

}  // namespace hydro
