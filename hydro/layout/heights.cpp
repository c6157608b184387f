#include "hydro/layout/heights.hpp"

#include "hydro/quantities/range.hpp"

#include <string>

#include <fmt/format.h>

namespace hydro {
namespace {

/// Of the place where a line joins another.
Length of_joined_place(const Plumbing& plumbing,
                       const std::vector<Height>& found,
                       std::size_t line) {
  const std::size_t joined = plumbing.joined[line].value();
  return ground_at(plumbing.lines[joined], found[joined], plumbing.ends_at(line));
}

}  // namespace

std::vector<Height> heights(const Plumbing& plumbing, const std::vector<Length>& supplies) {
  std::vector<Height> found(plumbing.lines.size());
  for (const std::size_t i : plumbing.order_of_heights) {
    const Line& line = plumbing.lines[i];
    Height& height = found[i];
    const auto feeder = plumbing.feeders[i];
    height.inlet = feeder
                       ? ground_at(plumbing.lines[*feeder], found[*feeder], plumbing.begins_at(i))
                       : supplies.at(plumbing.supplies[i]);
    if (line.ground_rise)
      height.rise = *line.ground_rise;
    else if (plumbing.joined[i])
      height.rise = of_joined_place(plumbing, found, i) - height.inlet;
    else if (!line.elevations.empty())
      height.rise = line.elevations.back() - height.inlet;
  }
  return found;
}

Length ground_at(const Line& line, const Height& height, const Length& place) {
  if (line.elevations.empty()) return height.inlet + height.rise * (place / line.whole_length());
  const auto elevation = [&](int outlet) {
    return line.elevations[static_cast<std::size_t>(outlet - 1)];
  };
  int beyond = 1;  // the first outlet farther than the place, or one past the last
  for (int most = line.outlet_count() + 1; beyond < most;) {
    const int middle = beyond + (most - beyond) / 2;
    if (line.place_of(middle) > place)
      most = middle;
    else
      beyond = middle + 1;
  }
  const bool past_the_last = beyond > line.outlet_count();
  if (past_the_last && line.joins.empty()) return line.elevations.back();
  const Length from = beyond == 1 ? Length{} : line.place_of(beyond - 1);
  const Length low = beyond == 1 ? height.inlet : elevation(beyond - 1);
  const Length to = past_the_last ? line.whole_length() : line.place_of(beyond);
  const Length high = past_the_last ? height.inlet + height.rise : elevation(beyond);
  return to > from ? low + (high - low) * ((place - from) / (to - from)) : low;
}

std::vector<Problem> problems_of_heights(const Plumbing& plumbing,
                                         const std::vector<Length>& supplies) {
  std::vector<Problem> all;
  if (!plumbing.any_joins) return all;
  const std::vector<Height> found = heights(plumbing, supplies);
  for (std::size_t i = 0; i < plumbing.lines.size(); ++i) {
    const Line& line = plumbing.lines[i];
    if (!plumbing.joined[i]) continue;
    const Length wanted = of_joined_place(plumbing, found, i);
    const Length is = ground_at(line, found[i], line.whole_length());
    if (wanted - is <= same_height && is - wanted <= same_height) continue;
    const bool one_by_one = !line.elevations.empty();
    all.push_back(
        {"line " + in_quotes(line.name),
         one_by_one ? "elevations" : "ground_rise",
         fmt::format("brings its far end to an elevation of {}, but line {}, which it joins, "
                     "lies at {} there{}",
                     to_message(is, units::m),
                     in_quotes(line.joins),
                     to_message(wanted, units::m),
                     one_by_one ? "" : "; leave it out to have it so")});
  }
  return all;
}

}  // namespace hydro
