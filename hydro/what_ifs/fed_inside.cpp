#include "hydro/what_ifs/fed_inside.hpp"

#include "hydro/what_ifs/laid.hpp"

#include <algorithm>
#include <utility>

namespace hydro {
namespace {

/// Of a row between two places, from the inlet on.
std::vector<PipeLength> pipes_between(const Line& row, const Length& from, const Length& to) {
  std::vector<PipeLength> all;
  for (const PipeLength& it : pipes_along(row)) {
    const Length first = std::max(it.from, from), last = std::min(it.to, to);
    if (last - first > same_place) all.push_back({it.pipe, first, last});
  }
  return all;
}

/// What of the row lies to one side of a place, with its own elevations; none if no outlet does.
class Part {
 public:
  Part(const Layout& layout, std::size_t index, std::string name, bool is_near)
      : layout_(layout), index_(index), row_(layout.lines()[index]), is_near_(is_near) {
    part_.name = std::move(name);
    part_.fed_by = row_.name;
    part_.riser = row_.riser;
    part_.outlet_loss_coefficient = row_.outlet_loss_coefficient;
    part_.connection_length = row_.connection_length;
  }

  std::optional<Line> fed_at(const Length& place) {
    const int count = row_.outlet_count();
    for (int i = 1; i <= count; ++i) add(is_near_ ? count + 1 - i : i, place);
    if (part_.outlets.empty()) return std::nullopt;
    const Length last = part_.outlets.back().place;
    if (!(last > Length{})) part_.length = same_place;
    lay_pipes(place, last);
    return part_;
  }

 private:
  void add(int number, const Length& place) {
    const Length at = row_.place_of(number);
    const bool is_before = at < place - same_place;
    if (is_before != is_near_) return;
    part_.outlets.push_back(
        {is_near_ ? place - at : std::max(Length{}, at - place), row_.kind_of(number)});
    part_.elevations.push_back(layout_.outlet_elevation(index_, number));
  }

  void lay_pipes(const Length& place, const Length& length) {
    std::vector<PipeLength> along = is_near_ ? pipes_between(row_, place - length, place)
                                             : pipes_between(row_, place, place + length);
    if (is_near_) std::ranges::reverse(along);
    part_.pipe = along.empty() ? row_.pipe_at(place) : along.back().pipe;
    for (std::size_t i = 0; i + 1 < along.size(); ++i)
      part_.reaches.push_back(
          {along[i].pipe, is_near_ ? place - along[i].from : along[i].to - place});
  }

  const Layout& layout_;
  std::size_t index_;
  const Line& row_;
  bool is_near_;
  Line part_;
};

/// Leads from where the row begins to the place.
Line feed(const Layout& layout,
          std::size_t index,
          const Length& place,
          const std::optional<Pipe>& feed_pipe) {
  const Line& row = layout.lines()[index];
  Line feed{.name = row.name, .fed_by = row.fed_by, .tap = row.tap, .tap_outlet = row.tap_outlet};
  feed.pipe = feed_pipe ? *feed_pipe : row.pipe_at(Length{});
  feed.length = feed_pipe ? std::max(place, same_place) : same_place;
  feed.ground_rise = layout.ground_elevation(index, place) - layout.inlet_elevation(index);
  feed.valve = row.valve;
  feed.check_valve = row.check_valve;
  feed.regulator = row.regulator;
  feed.loss_coefficient = row.loss_coefficient;
  return feed;
}

}  // namespace

std::string near_part(const std::string& name) {
  return name + ", near part";
}
std::string far_part(const std::string& name) {
  return name + ", far part";
}

void feed_inside(const Layout& layout,
                 std::size_t index,
                 const Length& place,
                 const std::optional<Pipe>& feed_pipe,
                 std::vector<Line>& lines) {
  const Line& row = layout.lines()[index];
  lines[index] = feed(layout, index, place, feed_pipe);
  if (auto part = Part(layout, index, near_part(row.name), true).fed_at(place))
    lines.push_back(std::move(*part));
  if (auto part = Part(layout, index, far_part(row.name), false).fed_at(place))
    lines.push_back(std::move(*part));
}

}  // namespace hydro
