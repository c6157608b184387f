#include "hydro/answers/water_path.hpp"

#include "hydro/answers/water_course.hpp"

#include <algorithm>
#include <functional>
#include <limits>
#include <optional>
#include <queue>
#include <stdexcept>
#include <utility>

namespace hydro {
namespace {

constexpr std::size_t nothing = std::numeric_limits<std::size_t>::max();

/// Dijkstra's method from the outlet back to a supply.
class Search {
 public:
  Search(const Solution& solution, std::size_t line, int outlet)
      : solution_(solution),
        layout_(solution.layout()),
        courses_(solution),
        first_(layout_.lines().size()),
        cut_(layout_.lines().size(), nothing) {
    std::vector<WaterCourse> all;
    for (std::size_t i = 0; i < layout_.lines().size(); ++i) {
      all.push_back(courses_.of(i));
      add_stops(i, all.back());
    }
    for (std::size_t i = 0; i <= layout_.further_supplies().size(); ++i) {
      at_supplies_.push_back(stops_.size());
      stops_.push_back({nothing, Length{}});
    }
    for (std::size_t i = 0; i < all.size(); ++i) add_ways(i, all[i]);
    const Length place = layout_.lines()[line].place_of(outlet);
    const auto cut = cut_place(line);
    target_ = stop_at(line, place, cut && place > *cut);
    elevation_of_target_ = layout_.outlet_elevation(line, outlet);
    at_target_ = solution.lines()[line].line_pressure[static_cast<std::size_t>(outlet - 1)];
  }

  WaterPath run() {
    using Entry = std::pair<long long, std::size_t>;
    std::vector<long long> cost(stops_.size(), std::numeric_limits<long long>::max());
    std::vector<const Way*> towards(stops_.size());  // the outlet
    std::optional<std::size_t> nearest;  // supply that was reached, though it gives nothing
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue;
    cost[target_] = 0;
    queue.emplace(0, target_);
    while (!queue.empty()) {
      const auto [so_far, here] = queue.top();
      queue.pop();
      if (so_far > cost[here]) continue;
      if (here >= at_supplies_.front()) {
        const std::size_t which = here - at_supplies_.front();
        if (gives(which)) return path_from(which, towards);
        if (!nearest || (is_held_shut(*nearest) && !is_held_shut(which))) nearest = which;
      }
      for (const Way& way : stops_[here].ways) {
        if (!(so_far + way.cost < cost[way.upstream])) continue;
        cost[way.upstream] = so_far + way.cost;
        towards[way.upstream] = &way;
        queue.emplace(cost[way.upstream], way.upstream);
      }
    }
    // Where all water stands still, a supply may seem to take in what rounding moves.
    if (nearest) return path_from(*nearest, towards);
    throw std::logic_error("no way of the water leads to the outlet");
  }

 private:
  /// From one stop back to another.
  struct Way {
    std::size_t downstream;
    std::size_t upstream;
    long long cost;
    Pressure pressure;   ///< where it leads from line to line, and ...
    Length elevation;    ///< ... how high that lies, as the one that ends there has it
    bool through_inlet;  ///< of the line that it comes from downstream
  };
  /// A place on a line, or where lines begin at a supply.
  struct Stop {
    std::size_t line;  ///< nothing: at a supply
    Length place;
    std::vector<Way> ways{};
  };

  /// With the water, through water that stands still, against the water.
  static long long cost_of(const Flow& downstream) {
    constexpr long long with = 1, still = 1'000, against = 1'000'000'000;
    return downstream > Flow{} ? with : downstream < Flow{} ? against : still;
  }

  /// Where a line is open to the air: at the outlet there, if there is one.
  std::optional<Length> cut_place(std::size_t line) const {
    const auto end = layout_.open_end_of(line);
    return end ? std::optional(layout_.lines()[line].merged(*end)) : std::nullopt;
  }

  /// Where the line is open to the air there are two, the near one first.
  void add_stops(std::size_t line, const WaterCourse& course) {
    first_[line] = stops_.size();
    stops_.push_back({line, Length{}});
    for (const WaterCourse::Stretch& stretch : course.stretches)
      stops_.push_back({line, stretch.end});
    if (const auto cut = cut_place(line)) {
      std::size_t near = stops_.size() - 1;
      while (near > first_[line] && stops_[near].place > *cut) --near;
      cut_[line] = near;
      const Stop beyond = stops_[near];
      stops_.insert(stops_.begin() + static_cast<std::ptrdiff_t>(near) + 1, beyond);
    }
  }

  /// The nearest one on that side of where the line is open to the air, if it is.
  std::size_t stop_at(std::size_t line, const Length& place, bool beyond_cut) const {
    std::size_t first = first_[line];
    std::size_t end = line + 1 < first_.size() ? first_[line + 1] : at_supplies_.front();
    if (cut_[line] != nothing) (beyond_cut ? first : end) = cut_[line] + 1;
    const auto apart = [&](std::size_t stop) {
      const Length it = stops_[stop].place - place;
      return it < Length{} ? -it : it;
    };
    std::size_t best = first;
    for (std::size_t i = first; i < end; ++i)
      if (apart(i) < apart(best)) best = i;
    return best;
  }
  /// Where another line meets this one: at its open place that is beyond it.
  std::size_t meeting_at(std::size_t line, const Length& place) const {
    const auto cut = cut_place(line);
    return stop_at(line, place, cut && place > *cut - same_place);
  }

  void connect(std::size_t downstream, std::size_t upstream, const Flow& flow) {
    stops_[downstream].ways.push_back({downstream, upstream, cost_of(flow), {}, {}, false});
    stops_[upstream].ways.push_back({upstream, downstream, cost_of(-flow), {}, {}, false});
  }

  bool lets_through(std::size_t line) const {
    const LineSolution& solved = solution_.lines()[line];
    return !solved.inlet_shut && solved.check_valve != CheckValveState::shut &&
           !(solved.regulator && solved.regulator->state == RegulatorState::shut);
  }

  void add_ways(std::size_t line, const WaterCourse& course) {
    std::size_t stop = first_[line];
    const auto pass_cut = [&] {
      if (stop == cut_[line]) ++stop;
    };
    pass_cut();
    for (const WaterCourse::Stretch& stretch : course.stretches) {
      connect(stop + 1, stop, stretch.flow);
      ++stop;
      pass_cut();
    }
    const LineSolution& solved = solution_.lines()[line];
    const Line& it = layout_.lines()[line];
    if (lets_through(line) && layout_.inlet_has_water(line)) {
      if (const auto feeder = layout_.feeder_of(line))
        meet(first_[line],
             meeting_at(*feeder, begins_at(it, layout_.lines()[*feeder])),
             course.inflow,
             solved.inlet_pressure,
             layout_.inlet_elevation(line),
             true);
      else
        meet(first_[line],
             at_supplies_[layout_.supply_of(line)],
             course.inflow,
             solved.inlet_pressure,
             layout_.inlet_elevation(line),
             true);
    }
    if (const auto joined = layout_.joined_by(line);
        joined && layout_.has_water(line, it.whole_length()))
      meet(stop,
           meeting_at(*joined, ends_at(it, layout_.lines()[*joined])),
           -courses_.or_still(solved.end_flow),
           solved.end_pressure,
           layout_.ground_elevation(line, it.whole_length()),
           false);
  }

  /// @param flow into the line that `own` is on
  void meet(std::size_t own,
            std::size_t other,
            const Flow& flow,
            const Pressure& pressure,
            const Length& elevation,
            bool at_inlet) {
    stops_[own].ways.push_back({own, other, cost_of(flow), pressure, elevation, at_inlet});
    stops_[other].ways.push_back({other, own, cost_of(-flow), pressure, elevation, false});
  }

  const OperatingPoint& supply(std::size_t which) const {
    return which == 0 ? solution_.supply() : solution_.further_supplies()[which - 1];
  }
  bool is_held_shut(std::size_t which) const { return supply(which).held_shut; }
  bool gives(std::size_t which) const {
    return !is_held_shut(which) && !(courses_.or_still(supply(which).flow) < Flow{});
  }

  WaterPath path_from(std::size_t supply, const std::vector<const Way*>& towards) const {
    WaterPath path{supply, {}};
    PathLeg leg{nothing, {}, {}, {}, {}, {}, false};
    for (std::size_t stop = at_supplies_[supply]; stop != target_;) {
      const Way& way = *towards[stop];
      const Stop& next = stops_[way.downstream];
      if (next.line != leg.line) {
        leg.to = stops_[stop].place;
        leg.at_end = way.pressure;
        leg.elevation_at_end = way.elevation;
        if (leg.line != nothing) path.legs.push_back(leg);
        leg = {next.line, next.place, next.place, way.pressure, {}, {}, way.through_inlet};
      }
      stop = way.downstream;
    }
    leg.to = stops_[target_].place;
    leg.at_end = at_target_;
    leg.elevation_at_end = elevation_of_target_;
    path.legs.push_back(leg);
    return path;
  }

  const Solution& solution_;
  const Layout& layout_;
  WaterCourses courses_;
  std::vector<std::size_t> first_;  // by line: its first stop; the others follow it
  std::vector<std::size_t> cut_;    // by line: the near stop where it is open, or nothing
  std::vector<Stop> stops_;
  std::vector<std::size_t> at_supplies_;
  std::size_t target_ = nothing;
  Pressure at_target_ = {};
  Length elevation_of_target_ = {};
};

}  // namespace

WaterPath water_path(const Solution& solution, std::size_t line, int outlet) {
  return Search(solution, line, outlet).run();
}

}  // namespace hydro
