#include "hydro/answers/water_path.hpp"

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <utility>

namespace hydro {
namespace {

/// Where a line meets another or a supply, or where the way ends.
struct Stop {
  std::size_t line;
  Length place;
  Pressure pressure;
  Pressure above_datum;             ///< with the height of the ground
  std::vector<std::size_t> same{};  ///< stops of other lines that are this place too
};

/// Follows the water backwards, from the outlet to the first supply it comes to.
class Search {
 public:
  Search(const Solution& solution, std::size_t line, int outlet)
      : solution_(solution), layout_(solution.layout()), on_line_(layout_.lines().size()) {
    const LineSolution& solved = solution.lines()[line];
    const auto at = static_cast<std::size_t>(outlet - 1);
    start_ = add(line, solved.distance[at], solved.line_pressure[at]);
    for (const std::size_t i : layout_.outward_order()) add_ends(i);
    for (auto& stops : on_line_)
      std::ranges::stable_sort(stops, {}, [&](std::size_t i) { return stops_[i].place; });
  }

  WaterPath run() {
    std::vector<std::optional<std::size_t>> next(stops_.size());  // towards the outlet
    std::vector<std::size_t> reached{start_};
    next[start_] = start_;
    for (std::size_t i = 0; i < reached.size(); ++i) {
      const std::size_t here = reached[i];
      if (is_at_open_supply(here)) return path_from(here, next);
      const auto go = [&](std::size_t there) {
        if (next[there]) return;
        next[there] = here;
        reached.push_back(there);
      };
      for (const std::size_t there : stops_[here].same) go(there);
      for (const std::size_t there : neighbours(here))
        if (!(stops_[there].above_datum < stops_[here].above_datum - hardly_any())) go(there);
    }
    throw std::logic_error("no way of the water leads to the outlet");
  }

 private:
  Pressure hardly_any() const {
    constexpr double rounding = 1e-9;
    return std::max(rounding * pressure(1 * units::m, solution_.water().density),
                    rounding * solution_.supply_pressure());
  }

  std::size_t add(std::size_t line, const Length& place, const Pressure& here) {
    const Length height = layout_.ground_elevation(line, place);
    stops_.push_back({line, place, here, here + pressure(height, solution_.water().density)});
    on_line_[line].push_back(stops_.size() - 1);
    return stops_.size() - 1;
  }

  void add_same(std::size_t stop, std::size_t line, const Length& place) {
    const std::size_t other = add(line, place, stops_[stop].pressure);
    stops_[stop].same.push_back(other);
    stops_[other].same.push_back(stop);
  }

  bool is_held_shut(const LineSolution& line) const {
    return line.check_valve == CheckValveState::shut ||
           (line.regulator && line.regulator->state == RegulatorState::shut);
  }

  void add_ends(std::size_t i) {
    const LineSolution& solved = solution_.lines()[i];
    const Line& line = layout_.lines()[i];
    if (!solved.inlet_shut && !is_held_shut(solved)) {
      const std::size_t inlet = add(i, Length{}, solved.inlet_pressure);
      if (const auto feeder = layout_.feeder_of(i))
        add_same(inlet, *feeder, begins_at(line, layout_.lines()[*feeder]));
    }
    const auto joined = layout_.joined_by(i);
    const Length end = line.whole_length();
    if (joined && layout_.has_water(i, end))
      add_same(add(i, end, solved.end_pressure), *joined, ends_at(line, layout_.lines()[*joined]));
  }

  bool is_at_open_supply(std::size_t stop) const {
    const std::size_t line = stops_[stop].line;
    if (stops_[stop].place > Length{} || layout_.feeder_of(line)) return false;
    if (solution_.lines()[line].inlet_shut || is_held_shut(solution_.lines()[line])) return false;
    const std::size_t which = layout_.supply_of(line);
    const OperatingPoint& supply =
        which == 0 ? solution_.supply() : solution_.further_supplies()[which - 1];
    return !supply.held_shut && !(supply.flow < Flow{});
  }

  /// Before and after it on its line, if the line is not open to the air in between.
  std::vector<std::size_t> neighbours(std::size_t stop) const {
    const std::vector<std::size_t>& all = on_line_[stops_[stop].line];
    const auto at = std::ranges::find(all, stop);
    std::vector<std::size_t> found;
    const auto open_end = layout_.open_end_of(stops_[stop].line);
    const auto beyond = [&](std::size_t i) {
      return open_end && stops_[i].place > *open_end - same_place;
    };
    const auto consider = [&](std::size_t i) {
      if (beyond(i) == beyond(stop) || i == start_ || stop == start_) found.push_back(i);
    };
    if (at != all.begin()) consider(*std::prev(at));
    if (std::next(at) != all.end()) consider(*std::next(at));
    return found;
  }

  WaterPath path_from(std::size_t stop, const std::vector<std::optional<std::size_t>>& next) const {
    WaterPath path{layout_.supply_of(stops_[stop].line), {}};
    for (std::size_t here = stop; here != start_;) {
      const std::size_t there = next[here].value();
      const Stop& from = stops_[here];
      const Stop& to = stops_[there];
      if (from.line == to.line) {
        if (!path.legs.empty() && path.legs.back().line == from.line) {
          path.legs.back().to = to.place;
          path.legs.back().at_end = to.pressure;
        } else {
          path.legs.push_back({from.line, from.place, to.place, from.pressure, to.pressure});
        }
      }
      here = there;
    }
    return path;
  }

  const Solution& solution_;
  const Layout& layout_;
  std::vector<Stop> stops_;
  std::vector<std::vector<std::size_t>> on_line_;  // stops by place
  std::size_t start_;
};

}  // namespace

WaterPath water_path(const Solution& solution, std::size_t line, int outlet) {
  return Search(solution, line, outlet).run();
}

}  // namespace hydro
