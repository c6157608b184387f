#include "hydro/what_ifs/laid.hpp"

#include "hydro/quantities/error.hpp"

#include <utility>

namespace hydro {

Layout with_lines(const Layout& layout, std::vector<Line> lines) {
  return with_lines(layout, std::move(lines), layout.faults());
}

Layout with_lines(const Layout& layout, std::vector<Line> lines, const std::vector<Fault>& faults) {
  Layout changed(layout.supply(),
                 std::move(lines),
                 layout.water(),
                 layout.site(),
                 layout.sets(),
                 layout.further_supplies());
  if (!faults.empty()) changed = changed.with_faults(faults);
  return layout.running_sets().empty() ? changed : changed.watering(layout.running_sets());
}

Line laid_in(Line line, const Pipe& pipe) {
  line.pipe = pipe;
  line.reaches.clear();
  return line;
}

std::vector<PipeLength> pipes_along(const Line& line) {
  std::vector<PipeLength> all;
  Length from{};
  const auto add = [&](const Pipe& pipe, const Length& to) {
    if (to > from) all.push_back({pipe, from, to});
    from = to;
  };
  for (const PipeReach& reach : line.reaches) add(reach.pipe, reach.to);
  add(line.pipe, line.whole_length());
  return all;
}

Length spacing_of(const Line& line, const std::optional<Length>& wanted) {
  if (wanted) return *wanted;
  if (line.spacing) return *line.spacing;
  const int last = line.outlet_count();
  const Length apart = last > 1 ? line.place_of(last) - line.place_of(last - 1) : Length{};
  if (apart >= same_place) return apart;
  throw InvalidInput(
      "spacing",
      "is not given, and line " + in_quotes(line.name) + " has none between its last two outlets");
}

}  // namespace hydro
