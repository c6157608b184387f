#include "hydro/answers/pressure_budget.hpp"

#include "hydro/answers/water_path.hpp"
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

/// The way of the water from its source to one outlet.
class Way {
 public:
  Way(const Solution& solution, std::size_t line, int outlet)
      : solution_(solution),
        layout_(solution.layout()),
        line_(line),
        outlet_(outlet),
        path_(water_path(solution, line, outlet)),
        reached_(layout_.inlet_elevation(path_.legs.front().line)) {}

  PressureBudget follow() {
    from_source();
    for (const PathLeg& leg : path_.legs) along(leg);
    const Pressure at_outlet = up_the_riser();
    return {solution_.lines()[line_].name,
            outlet_,
            std::move(entries_),
            at_outlet,
            layout_.outlet_at(line_, outlet_).rated_pressure()};
  }

 private:
  std::size_t index() const { return static_cast<std::size_t>(outlet_ - 1); }
  Pressure of_height(const Length& height) const {
    return pressure(height, solution_.water().density);
  }
  Pressure left() const { return entries_.empty() ? Pressure{} : entries_.back().left; }

  void from_source() {
    const std::size_t which = path_.supply;
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

  void along(const PathLeg& leg) {
    const LineSolution& line = solution_.lines()[leg.line];
    const Pressure rise = of_height(leg.elevation_at_end - reached_);
    reached_ = leg.elevation_at_end;
    const bool is_regulated = leg.through_inlet && line.regulator;
    const Pressure regulator = is_regulated ? line.regulator->drop : Pressure{};
    entries_.push_back({.part = "line",
                        .line = line.name,
                        .rise = rise,
                        .loss = leg.at_start - rise - regulator - leg.at_end,
                        .regulator = regulator,
                        .left = leg.at_end});
  }

  /// @return what is left at the outlet
  Pressure up_the_riser() {
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
    const Pressure at_outlet = riser.left;
    if (riser.rise > Pressure{} || is_seen(left() - at_outlet))
      entries_.push_back(std::move(riser));
    return at_outlet;
  }

  /// Whether it is more than what the solution's residuals may leave.
  bool is_seen(const Pressure& difference) const {
    Pressure highest{};
    for (const PressureBudgetEntry& entry : entries_)
      highest = std::max({highest, entry.left, -entry.left, entry.rise, -entry.rise});
    const Pressure unseen = Residuals::tolerance * highest;
    return difference > unseen || difference < -unseen;
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
  WaterPath path_;
  Length reached_;  // elevation
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
