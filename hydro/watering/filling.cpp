#include "hydro/watering/filling.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <utility>
#include <variant>

namespace hydro {
namespace {

/// A stretch of one pipe from place to place, and the ground at its two ends [m].
struct Stretch {
  double length;
  double area;
  double from_height;
  double to_height;
};

/// Where a line's pipe or the slope of the ground changes, from the inlet to the far end [m].
std::vector<double> changes_along(const Line& line) {
  const double whole = si(line.whole_length());
  std::vector<double> places{0, whole};
  for (const PipeReach& reach : line.reaches) places.push_back(std::min(whole, si(reach.to)));
  if (!line.elevations.empty())
    for (int n = 1; n <= line.outlet_count(); ++n) places.push_back(si(line.place_of(n)));
  std::ranges::sort(places);
  return places;
}

double bore_area(const Line& line, double from, double to) {
  return si(area(line.pipe_at(Length::from_value((from + to) / 2))));
}

std::vector<Stretch> stretches_of(const Layout& layout, std::size_t index) {
  const Line& line = layout.lines()[index];
  const std::vector<double> places = changes_along(line);
  const auto height = [&](double place) {
    return si(layout.ground_elevation(index, Length::from_value(place)));
  };
  std::vector<Stretch> stretches;
  for (std::size_t i = 1; i < places.size(); ++i)
    if (places[i] > places[i - 1])
      stretches.push_back({places[i] - places[i - 1],
                           bore_area(line, places[i - 1], places[i]),
                           height(places[i - 1]),
                           height(places[i])});
  return stretches;
}

/// What of it lies higher than this [m3].
double volume_above(const Stretch& stretch, double height) {
  const auto [low, high] = std::minmax(stretch.from_height, stretch.to_height);
  if (height <= low) return stretch.area * stretch.length;
  if (height >= high) return 0;
  return stretch.area * stretch.length * (high - height) / (high - low);
}

/// How high the mouth of an outlet stands over its line as it is; none: it is capped.
std::optional<Length> mouth_above_line(const Layout& layout, std::size_t index, int outlet) {
  const Line& line = layout.lines()[index];
  for (const Fault& fault : layout.faults_on(index)) {
    if (outlet_of(fault) != outlet) continue;
    if (std::holds_alternative<Capped>(fault)) return std::nullopt;
    if (const auto open = open_riser(fault, line)) return open->height;
  }
  return line.riser.height;
}

/// The lowest mouth of an outlet to which water comes [m]; infinite where there is none.
double lowest_mouth(const Layout& layout) {
  double lowest = std::numeric_limits<double>::infinity();
  for (std::size_t index = 0; index < layout.lines().size(); ++index) {
    const Line& line = layout.lines()[index];
    for (int n = 1; n <= line.outlet_count(); ++n)
      if (const auto mouth = mouth_above_line(layout, index, n);
          mouth && layout.outlet_has_water(index, n))
        lowest = std::min(lowest, si(layout.outlet_elevation(index, n) + *mouth));
  }
  return lowest;
}

/// Of all pipes that begin at a supply and let water in [m2].
double first_bores(const Layout& layout) {
  double bores = 0;
  for (std::size_t index = 0; index < layout.lines().size(); ++index)
    if (!layout.feeder_of(index) && layout.inlet_has_water(index))
      bores += si(area(layout.lines()[index].pipe_at(Length{})));
  return bores;
}

}  // namespace

Volume volume_of(const Line& line) {
  const std::vector<double> places = changes_along(line);
  double volume = 0;
  for (std::size_t i = 1; i < places.size(); ++i)
    if (places[i] > places[i - 1])
      volume += bore_area(line, places[i - 1], places[i]) * (places[i] - places[i - 1]);
  if (const auto riser = line.riser.pipe())
    volume += line.outlet_count() * si(area(*riser)) * si(line.riser.height);
  return Volume::from_value(volume);
}

Filling filling(const Layout& layout, const FillOptions& options) {
  Examination examination;
  examination.within("flow", options.flow, Range<Flow>{0, 1e6, lpm, true});
  examination.within("velocity", options.velocity, Range<Velocity>{0, 10, m_per_s, true});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));

  Filling result;
  const double mouth = lowest_mouth(layout);
  for (std::size_t index = 0; index < layout.lines().size(); ++index) {
    if (layout.is_cut_off(index)) continue;
    const Line& line = layout.lines()[index];
    result.lines.push_back({line.name, volume_of(line)});
    result.volume += result.lines.back().volume;
    for (const Stretch& stretch : stretches_of(layout, index))
      result.run_out += Volume::from_value(volume_above(stretch, mouth));
  }
  const double bores = first_bores(layout);
  if (!(bores > 0)) throw InvalidInput("layout", "has no line that lets water in; nothing fills");
  result.gentle_flow = Flow::from_value(si(options.velocity) * bores);
  result.flow = options.flow.value_or(result.gentle_flow);
  result.time = Time::from_value(si(result.volume) / si(result.flow));
  result.velocity = Velocity::from_value(si(result.flow) / bores);
  return result;
}

}  // namespace hydro
