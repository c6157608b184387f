#include "hydro/what_ifs/inlet_position.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/in_order.hpp"
#include "hydro/what_ifs/relaid.hpp"
#include "hydro/what_ifs/terminal_line.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>
#include <utility>

namespace hydro {
namespace {

std::string near_part(const std::string& name) {
  return name + ", near part";
}
std::string far_part(const std::string& name) {
  return name + ", far part";
}

void require_on(const Line& row,
                const std::string& key,
                const Length& place,
                Examination& examination) {
  examination.within(key, place, Range<Length>{0, row.whole_length() / units::m, units::m});
}

void refuse_what_is_found(Examination& examination) {
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

/// A length of a row that is of one pipe.
struct Stretch {
  Length from;
  Length to;
  Pipe pipe;
};

/// Of a row between two places, from the inlet on.
std::vector<Stretch> stretches(const Line& row, const Length& from, const Length& to) {
  std::vector<Stretch> all;
  Length begin{};
  const auto add = [&](const Length& end, const Pipe& pipe) {
    const Length first = std::max(begin, from), last = std::min(end, to);
    if (last - first > same_place) all.push_back({first, last, pipe});
    begin = end;
  };
  for (const PipeReach& reach : row.reaches) add(reach.to, reach.pipe);
  add(std::max(begin, row.whole_length()), row.pipe);
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
    std::vector<Stretch> along =
        is_near_ ? stretches(row_, place - length, place) : stretches(row_, place, place + length);
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

/// Lowest, highest and mean over the outlets of a row that is fed at a place.
class Measuring {
 public:
  Measuring(const Solution& solution, const Line& row, const Length& place)
      : solution_(solution), row_(row) {
    found_.place = place;
    const int before = outlets_of(near_part(row.name));
    for (int number = 1; number <= row.outlet_count(); ++number) {
      const bool is_near = number <= before;
      add(number,
          is_near ? near_part(row.name) : far_part(row.name),
          static_cast<std::size_t>(is_near ? before - number : number - before - 1));
    }
    const double mean = si(sum_) / row.outlet_count();
    found_.variation = mean > 0 ? si(found_.highest - found_.lowest) / mean : 0;
  }

  const InletPosition& found() const { return found_; }

 private:
  int outlets_of(const std::string& part) const {
    for (const Line& line : solution_.layout().lines())
      if (line.name == part) return line.outlet_count();
    return 0;
  }

  void add(int number, const std::string& part, std::size_t index) {
    const Pressure pressure = solution_.line(part).pressure[index];
    const double share = pressure / row_.kind_of(number).rated_pressure();
    if (number == 1 || share < found_.lowest_share) found_.lowest_share = share;
    if (number == 1 || pressure < found_.lowest) {
      found_.lowest = pressure;
      found_.lowest_outlet = number;
    }
    found_.highest = number == 1 ? pressure : std::max(found_.highest, pressure);
    sum_ += pressure;
  }

  const Solution& solution_;
  const Line& row_;
  InletPosition found_;
  Pressure sum_{};
};

/// The inlet, every outlet, and half-way between two.
std::vector<Length> all_places(const Line& row) {
  std::vector<Length> places;
  const auto add = [&](const Length& place) {
    if (places.empty() || place > places.back() + same_place) places.push_back(place);
  };
  add(Length{});
  for (int number = 1; number <= row.outlet_count(); ++number) {
    const Length here = row.place_of(number);
    if (number > 1) add((row.place_of(number - 1) + here) / 2.0);
    add(here);
  }
  return places;
}

bool is_better(const InletPosition& one, const InletPosition& other, InletGoal goal) {
  constexpr double rounding = 1e-9;  // of solutions and of places that mirror each other
  return goal == InletGoal::least_variation ? one.variation < other.variation - rounding
                                            : one.lowest_share > other.lowest_share + rounding;
}

}  // namespace

Layout with_inlet_at(const Layout& layout,
                     std::string_view line,
                     const Length& place,
                     const std::optional<Pipe>& feed_pipe) {
  const std::size_t index = layout.index_of(line);
  const Line& row = layout.lines()[index];
  Examination examination;
  require_terminal(layout, index, examination);
  require_on(row, "place", place, examination);
  refuse_what_is_found(examination);
  const Length at = row.merged(place);
  std::vector<Line> lines = layout.lines();
  lines[index] = feed(layout, index, at, feed_pipe);
  if (auto part = Part(layout, index, near_part(row.name), true).fed_at(at))
    lines.push_back(std::move(*part));
  if (auto part = Part(layout, index, far_part(row.name), false).fed_at(at))
    lines.push_back(std::move(*part));
  return relaid(layout, std::move(lines), layout.faults());
}

InletPositions inlet_position(const Layout& layout,
                              std::string_view line,
                              const InletPositionOptions& options,
                              const Work& work) {
  const std::size_t index = layout.index_of(line);
  const Line& row = layout.lines()[index];
  Examination examination;
  require_terminal(layout, index, examination);
  require_water(layout, index, examination);
  for (const Length& place : options.places) require_on(row, "places", place, examination);
  refuse_what_is_found(examination);
  std::vector<Length> places = options.places.empty() ? all_places(row) : options.places;
  std::ranges::sort(places);

  const auto measured_at = [&](const Length& place) {
    const Solution solution = solve(with_inlet_at(layout, line, place, options.feed_pipe));
    return Measuring(solution, row, place).found();
  };
  InletPositions found;
  found.all = in_order(places.size(), work, [&](std::size_t i) { return measured_at(places[i]); });
  found.present = places.front() == Length{} ? found.all.front() : measured_at(Length{});
  found.best = found.all.front();
  for (const InletPosition& position : found.all)
    if (is_better(position, found.best, options.goal)) found.best = position;
  return found;
}

}  // namespace hydro
