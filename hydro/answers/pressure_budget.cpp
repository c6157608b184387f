#include "hydro/answers/pressure_budget.hpp"

#include "hydro/answers/water_course.hpp"
#include "hydro/physics/friction.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace hydro {
namespace {

bool is_judged(OutletState state) {
  return state != OutletState::closed && state != OutletState::broken;
}

/// What the water passes of one line on its way.
struct Passage {
  std::size_t line;
  Length from;
  Length to;
  Pressure at_start;   ///< in the pipe that it comes out of
  Pressure at_end;     ///< where it goes on, or in the line at the outlet
  bool through_inlet;  ///< it came in there
};

/// Goes against the water from one outlet to a supply.
class Upstream {
 public:
  Upstream(const Solution& solution, std::size_t line, int outlet)
      : solution_(solution), layout_(solution.layout()), courses_(solution) {
    const auto index = static_cast<std::size_t>(outlet - 1);
    Length place = layout_.lines()[line].place_of(outlet);
    Pressure here = solution.lines()[line].line_pressure[index];
    std::vector<bool> seen(layout_.lines().size(), false);
    for (std::optional<std::size_t> at = line; at;) {
      // Water that stands still is the same on every way: that of the description will do.
      const bool comes_round = seen[*at];
      seen[*at] = true;
      const Neighbour source = comes_round ? own_inlet(*at) : source_of(*at, place);
      passages_.push_back(
          {*at, source.place, place, source.pressure, here, source.other == no_other});
      here = source.pressure;
      if (source.other == no_other) {
        const auto feeder = layout_.feeder_of(*at);
        if (feeder) place = begins_at(layout_.lines()[*at], layout_.lines()[*feeder]);
        supply_ = layout_.supply_of(*at);
        at = feeder;
        continue;
      }
      const Line& other = layout_.lines()[source.other];
      place = source.by == Meets::inlet     ? Length{}
              : source.by == Meets::far_end ? other.whole_length()
                                            : ends_at(layout_.lines()[*at], other);
      at = source.other;
    }
    std::ranges::reverse(passages_);
  }

  /// From the supply on.
  const std::vector<Passage>& passages() const { return passages_; }
  /// 0 the first, 1 on the further ones.
  std::size_t supply() const { return supply_; }

 private:
  static constexpr std::size_t no_other = static_cast<std::size_t>(-1);

  /// Through which the feeder or a supply gives.
  Neighbour own_inlet(std::size_t line) const {
    const LineSolution& solved = solution_.lines()[line];
    return {no_other, Length{}, Meets::inlet, solved.inflow, solved.inlet_pressure};
  }

  /// By what the water comes to a place on a line, which it follows as far as it can.
  Neighbour source_of(std::size_t line, const Length& place) const {
    if (!courses_.has_loops()) return own_inlet(line);
    const WaterCourse course = courses_.of(line);
    bool outward = false;
    bool inward = false;
    Length from = place;
    Length to = place;
    for (auto stretch = course.stretches.rbegin(); stretch != course.stretches.rend(); ++stretch)
      if (stretch->start < place - same_place && stretch->end <= from + same_place) {
        if (!(stretch->flow > Flow{})) break;
        outward = true;
        from = stretch->start;
      }
    for (const WaterCourse::Stretch& stretch : course.stretches)
      if (stretch.end > place + same_place && stretch.start >= to - same_place) {
        if (!(stretch.flow < Flow{})) break;
        inward = true;
        to = stretch.end;
      }
    const auto brought = [&](const Length& where) {
      const Neighbour* best = nullptr;
      for (const Neighbour& it : course.neighbours)
        if (it.flow > Flow{} && it.place <= where + same_place && where <= it.place + same_place &&
            (!best || it.flow > best->flow))
          best = &it;
      return best;
    };
    const bool from_inlet = outward && from <= same_place;
    const Neighbour* found = from_inlet ? nullptr : brought(outward ? from : inward ? to : place);
    if (found) return *found;
    if (from_inlet || !is_held_shut(line)) return own_inlet(line);
    for (const Neighbour& it : course.neighbours)
      if (!layout_.is_cut_off(it.other)) return it;
    return own_inlet(line);
  }

  bool is_held_shut(std::size_t line) const {
    const LineSolution& solved = solution_.lines()[line];
    return solved.inlet_shut || solved.check_valve == CheckValveState::shut ||
           (solved.regulator && solved.regulator->state == RegulatorState::shut);
  }

  const Solution& solution_;
  const Layout& layout_;
  WaterCourses courses_;
  std::vector<Passage> passages_;
  std::size_t supply_ = 0;
};

/// The way of the water from its source to one outlet.
class Way {
 public:
  Way(const Solution& solution, std::size_t line, int outlet)
      : solution_(solution),
        layout_(solution.layout()),
        line_(line),
        outlet_(outlet),
        upstream_(solution, line, outlet) {}

  PressureBudget follow() {
    from_source();
    for (const Passage& passage : upstream_.passages()) along(passage);
    up_the_riser();
    const Pressure at_device = left();
    return {solution_.lines()[line_].name,
            outlet_,
            std::move(entries_),
            at_device,
            layout_.outlet_at(line_, outlet_).rated_pressure()};
  }

 private:
  std::size_t index() const { return static_cast<std::size_t>(outlet_ - 1); }
  Pressure of_height(const Length& height) const {
    return pressure(height, solution_.water().density);
  }
  Pressure left() const { return entries_.empty() ? Pressure{} : entries_.back().left; }

  void from_source() {
    const std::size_t which = upstream_.supply();
    const Supply& supply =
        which == 0 ? layout_.supply_as_it_is() : layout_.further_supplies_as_they_are()[which - 1];
    const OperatingPoint& point =
        which == 0 ? solution_.supply() : solution_.further_supplies()[which - 1];
    if (supply.pump) {
      const Pressure lift = of_height(supply.suction ? supply.suction->lift : Length{});
      const Pressure loss = of_height(point.suction_loss);
      if (supply.suction)
        entries_.push_back({.part = "suction",
                            .line = supply.name,
                            .rise = lift,
                            .loss = loss,
                            .left = -lift - loss});
      entries_.push_back({.part = "pump",
                          .line = supply.name,
                          .gain = point.source_pressure - left(),
                          .left = point.source_pressure});
    } else {
      entries_.push_back({.part = "source",
                          .line = supply.name,
                          .gain = point.source_pressure,
                          .left = point.source_pressure});
    }
    if (supply.filter)
      entries_.push_back({.part = "filter",
                          .line = supply.name,
                          .loss = point.filter_loss,
                          .left = point.pressure});
  }

  void along(const Passage& passage) {
    const LineSolution& line = solution_.lines()[passage.line];
    const bool is_last = &passage == &upstream_.passages().back();
    // Several outlets may stand at one place of a slope.
    const Length end = is_last ? layout_.outlet_elevation(line_, outlet_)
                               : layout_.ground_elevation(passage.line, passage.to);
    const Length start = passage.through_inlet
                             ? layout_.inlet_elevation(passage.line)
                             : layout_.ground_elevation(passage.line, passage.from);
    const Length ground = end - start;
    const Pressure rise = of_height(ground);
    const bool is_regulated = passage.through_inlet && line.regulator;
    const Pressure regulator = is_regulated ? line.regulator->drop : Pressure{};
    entries_.push_back({.part = "line",
                        .line = line.name,
                        .rise = rise,
                        .loss = passage.at_start - rise - regulator - passage.at_end,
                        .regulator = regulator,
                        .left = passage.at_end});
  }

  void up_the_riser() {
    const LineSolution& line = solution_.lines()[line_];
    const OutletState state = line.state[index()];
    PressureBudgetEntry riser{
        .part = "riser", .line = {}, .rise = of_height(standing_height()), .left = {}};
    const Pressure above = line.line_pressure[index()] - riser.rise;
    riser.left = line.pressure[index()];
    if (state == OutletState::closed) riser.left = above;  // water stands behind the cap
    const bool is_dry = state != OutletState::closed && !(line.flow[index()] > Flow{});
    if (is_dry) riser.left = std::min(above, Pressure{});
    if (is_dry)
      riser.regulator = above - riser.left;  // one that is stuck shut
    else if (regulator_holds())
      riser.regulator = above - riser_loss(line.flow[index()]) - riser.left;
    riser.loss = above - riser.regulator - riser.left;
    if (riser.rise > Pressure{} || left() != riser.left) entries_.push_back(std::move(riser));
  }

  const Fault* fault() const {
    for (const Fault& fault : layout_.faults_on(line_))
      if (outlet_of(fault) == outlet_) return &fault;
    return nullptr;
  }

  /// Of what still stands of the riser.
  Length standing_height() const {
    const Line& line = layout_.lines()[line_];
    const auto open = fault() ? open_riser(*fault(), line) : std::nullopt;
    return open ? open->height : line.riser.height;
  }

  /// Whether the outlet's own regulator takes something.
  bool regulator_holds() const {
    const auto& regulator = layout_.outlet_at(line_, outlet_).regulator;
    const Pressure end = solution_.lines()[line_].pressure[index()];
    const bool is_there = !fault() || std::holds_alternative<Clogged>(*fault()) ||
                          std::holds_alternative<Worn>(*fault()) ||
                          std::holds_alternative<WrongOutlet>(*fault());
    return regulator && is_there && end >= *regulator * (1 - 1e-12);
  }

  Pressure riser_loss(const Flow& flow) const {
    const Riser& riser = layout_.lines()[line_].riser;
    const auto pipe = riser.pipe();
    if (!pipe) return {};
    return of_height(friction_loss(*pipe, riser.height, flow, solution_.water()) +
                     fitting_loss(*pipe, riser.loss_coefficient.value_or(0), flow));
  }

  const Solution& solution_;
  const Layout& layout_;
  std::size_t line_;
  int outlet_;
  Upstream upstream_;
  std::vector<PressureBudgetEntry> entries_;
};

}  // namespace

std::optional<WeakestOutlet> weakest_outlet(const Solution& solution) {
  std::optional<WeakestOutlet> weakest;
  std::pair<double, Pressure> least;  // share of the rated pressure, pressure in the line
  for (std::size_t l = 0; l < solution.lines().size(); ++l) {
    const LineSolution& line = solution.lines()[l];
    for (std::size_t i = 0; i < line.pressure.size(); ++i) {
      if (!is_judged(line.state[i])) continue;
      const int number = static_cast<int>(i) + 1;
      const Pressure rated = solution.layout().outlet_at(l, number).rated_pressure();
      const std::pair<double, Pressure> here{line.pressure[i] / rated, line.line_pressure[i]};
      if (weakest && !(here < least)) continue;
      least = here;
      weakest = WeakestOutlet{line.name, number, line.pressure[i], rated};
    }
  }
  return weakest;
}

PressureBudget pressure_budget(const Solution& solution, const std::string& line, int outlet) {
  const std::size_t index = solution.layout().index_of(line);
  const LineSolution& solved = solution.lines()[index];
  Examination examination;
  examination.within("outlet", outlet, 1, static_cast<int>(solved.pressure.size()));
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  if (solution.layout().is_cut_off(index))
    throw InvalidInput("line", "is " + in_quotes(line) + ", to which no water comes");
  if (!solution.layout().outlet_has_water(index, outlet))
    throw InvalidInput("outlet",
                       "is " + std::to_string(outlet) + " of line " + in_quotes(line) +
                           ", which is open to the air before it; no water comes to it");
  return Way(solution, index, outlet).follow();
}

PressureBudget pressure_budget(const Solution& solution) {
  const auto weakest = weakest_outlet(solution);
  if (!weakest) throw InvalidInput("solution", "has no outlet to judge");
  return pressure_budget(solution, weakest->line, weakest->outlet);
}

}  // namespace hydro
