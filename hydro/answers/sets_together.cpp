#include "hydro/answers/sets_together.hpp"

#include "hydro/answers/set_gauge.hpp"
#include "hydro/quantities/range.hpp"

#include <cstddef>
#include <utility>

namespace hydro {
namespace {

SetsTogether run_together(const Layout& layout,
                          std::vector<std::string> sets,
                          const SetsTogetherOptions& options) {
  Setting setting = set_for_rated_if_possible(layout.watering(sets), options.share);
  const OperatingPoint& supply = setting.solution.supply();
  SetsTogether together{.sets = std::move(sets),
                        .reached = setting.reached,
                        .speed = setting.speed,
                        .pressure = setting.pressure,
                        .gauge_reading = supply.gauge_reading,
                        .flow = supply.flow,
                        .weakest = weakest_outlet(setting.solution).value(),
                        .fastest_line = {},
                        .fastest = {},
                        .too_fast = false,
                        .limits = std::move(setting.limits)};
  for (const LineSolution& line : setting.solution.lines())
    for (const PipeExtremes& pipe : line.pipes)
      if (pipe.highest_velocity > together.fastest) {
        together.fastest = pipe.highest_velocity;
        together.fastest_line = line.name;
      }
  together.too_fast = together.fastest > options.velocity;
  return together;
}

/// Every set must bring water to some outlet, or nothing could be said of it.
void require_open_outlets(const Layout& layout) {
  Examination examination;
  for (const WateringSet& set : layout.sets()) {
    const Layout running = layout.watering({set.name});
    bool some = false;
    for (std::size_t i = 0; i < running.lines().size(); ++i)
      for (int n = 1; n <= running.lines()[i].outlet_count() && !some; ++n)
        some = running.outlet_has_water(i, n);
    if (!some) examination.add("sets", "has " + in_quotes(set.name) + ", which opens no outlet");
  }
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

}  // namespace

std::vector<SetsTogether> sets_together(const Layout& layout, const SetsTogetherOptions& options) {
  Examination examination;
  examination.within("velocity", options.velocity, Range<Velocity>{0, 100, m_per_s, true});
  if (layout.sets().empty()) examination.add("sets", "are none; a layout needs sets to be run");
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  require_open_outlets(layout);
  std::vector<std::string> names;
  names.reserve(layout.sets().size());
  for (const WateringSet& set : layout.sets()) names.push_back(set.name);
  std::vector<SetsTogether> all;
  all.reserve(names.size() * (names.size() + 1) / 2 + 1);  // alone, in pairs, all at once
  for (const std::string& one : names) all.push_back(run_together(layout, {one}, options));
  for (std::size_t i = 0; i < names.size(); ++i)
    for (std::size_t k = i + 1; k < names.size(); ++k)
      all.push_back(run_together(layout, {names[i], names[k]}, options));
  if (names.size() > 2) all.push_back(run_together(layout, names, options));
  return all;
}

}  // namespace hydro
