#include "hydro/what_ifs/inlet_position.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/fed_inside.hpp"
#include "hydro/what_ifs/in_order.hpp"
#include "hydro/what_ifs/laid.hpp"
#include "hydro/what_ifs/terminal_line.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <limits>
#include <string>
#include <utility>

namespace hydro {
namespace {

void require_on(const Line& row,
                const std::string& key,
                const Length& place,
                Examination& examination) {
  examination.within(key, place, Range<Length>{0, row.whole_length() / units::m, units::m});
}

void refuse_what_is_found(Examination& examination) {
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
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
    found_.variation = mean > 0 ? si(found_.highest - found_.lowest) / mean
                                : std::numeric_limits<double>::infinity();
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
  feed_inside(layout, index, at, feed_pipe, lines);
  return with_lines(layout, std::move(lines));
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
