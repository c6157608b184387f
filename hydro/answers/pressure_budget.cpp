#include "hydro/answers/pressure_budget.hpp"

#include "hydro/physics/friction.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

namespace hydro {
namespace {

bool is_judged(OutletState state) {
  return state != OutletState::closed && state != OutletState::broken;
}

/// Whether it stands before the place where its line is open to the air.
bool has_water(const Layout& layout, std::size_t line, int outlet) {
  const auto end = layout.open_end_of(line);
  return !end || layout.lines()[line].place_of(outlet) <= layout.lines()[line].merged(*end);
}

/// Follows the water from the source to one outlet.
class Way {
 public:
  Way(const Solution& solution, std::size_t line, int outlet)
      : solution_(solution), layout_(solution.layout()), outlet_(outlet) {
    for (std::optional<std::size_t> i = line; i; i = layout_.feeder_of(*i)) lines_.push_back(*i);
    std::ranges::reverse(lines_);
  }

  PressureBudget follow() {
    from_source();
    for (std::size_t i = 0; i < lines_.size(); ++i) along(i);
    up_the_riser();
    const Pressure at_device = left();
    return {solution_.lines()[lines_.back()].name,
            outlet_,
            std::move(entries_),
            at_device,
            layout_.outlet_at(lines_.back(), outlet_).rated_pressure()};
  }

 private:
  std::size_t index() const { return static_cast<std::size_t>(outlet_ - 1); }
  Pressure of_height(const Length& height) const {
    return pressure(height, solution_.water().density);
  }
  Pressure left() const { return entries_.empty() ? Pressure{} : entries_.back().left; }

  void from_source() {
    const Supply& supply = layout_.supply_as_it_is();
    const OperatingPoint& point = solution_.supply();
    if (supply.pump) {
      const Pressure lift = of_height(supply.suction ? supply.suction->lift : Length{});
      const Pressure loss = of_height(point.suction_loss);
      if (supply.suction)
        entries_.push_back(
            {.part = "suction", .line = {}, .rise = lift, .loss = loss, .left = -lift - loss});
      entries_.push_back({.part = "pump",
                          .line = {},
                          .gain = point.source_pressure - left(),
                          .left = point.source_pressure});
    } else {
      entries_.push_back({.part = "source",
                          .line = {},
                          .gain = point.source_pressure,
                          .left = point.source_pressure});
    }
    if (supply.filter)
      entries_.push_back(
          {.part = "filter", .line = {}, .loss = point.filter_loss, .left = point.pressure});
  }

  /// To where the next line begins, or to the outlet.
  void along(std::size_t i) {
    const LineSolution& line = solution_.lines()[lines_[i]];
    const bool last = i + 1 == lines_.size();
    const Pressure end =
        last ? line.line_pressure[index()] : solution_.lines()[lines_[i + 1]].inlet_pressure;
    const Length ground = last ? layout_.outlet_elevation(lines_[i], outlet_)
                               : layout_.inlet_elevation(lines_[i + 1]);
    const Pressure rise = of_height(ground - layout_.inlet_elevation(lines_[i]));
    const Pressure regulator = line.regulator ? line.regulator->drop : Pressure{};
    entries_.push_back({.part = "line",
                        .line = line.name,
                        .rise = rise,
                        .loss = line.inlet_pressure - rise - regulator - end,
                        .regulator = regulator,
                        .left = end});
  }

  void up_the_riser() {
    const LineSolution& line = solution_.lines()[lines_.back()];
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
    for (const Fault& fault : layout_.faults_on(lines_.back()))
      if (outlet_of(fault) == outlet_) return &fault;
    return nullptr;
  }

  /// Of what still stands of the riser.
  Length standing_height() const {
    const Line& line = layout_.lines()[lines_.back()];
    const auto open = fault() ? open_riser(*fault(), line) : std::nullopt;
    return open ? open->height : line.riser.height;
  }

  /// Whether the outlet's own regulator takes something.
  bool regulator_holds() const {
    const auto& regulator = layout_.outlet_at(lines_.back(), outlet_).regulator;
    const Pressure end = solution_.lines()[lines_.back()].pressure[index()];
    const bool is_there = !fault() || std::holds_alternative<Clogged>(*fault()) ||
                          std::holds_alternative<Worn>(*fault()) ||
                          std::holds_alternative<WrongOutlet>(*fault());
    return regulator && is_there && end >= *regulator * (1 - 1e-12);
  }

  Pressure riser_loss(const Flow& flow) const {
    const Riser& riser = layout_.lines()[lines_.back()].riser;
    const auto pipe = riser.pipe();
    if (!pipe) return {};
    return of_height(friction_loss(*pipe, riser.height, flow, solution_.water()) +
                     fitting_loss(*pipe, riser.loss_coefficient.value_or(0), flow));
  }

  const Solution& solution_;
  const Layout& layout_;
  int outlet_;
  std::vector<std::size_t> lines_;  // from the source on
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
  if (!has_water(solution.layout(), index, outlet))
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
