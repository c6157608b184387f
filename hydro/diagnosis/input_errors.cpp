#include "hydro/diagnosis/input_errors.hpp"

#include "hydro/diagnosis/places.hpp"
#include "hydro/physics/valve.hpp"
#include "hydro/physics/water.hpp"

#include <string>
#include <type_traits>
#include <utility>
#include <variant>

namespace hydro {

InputErrors::InputErrors(Solution solution, const Uncertainty& uncertainty)
    : sensitivities_(std::move(solution)),
      inputs_(sensitivities_.solution().layout(), uncertainty) {
  list();
}

void InputErrors::list() {
  for (std::size_t i = 0; i < inputs_.inputs().size(); ++i) {
    const UncertainInput& input = inputs_.inputs()[i];
    const Column column{i, input.deviation};
    switch (input.kind) {
      case InputKind::outlet:
        list_outlet(input.at, input.number, column);
        break;
      case InputKind::rating:
        for (const auto& place : inputs_.outlets_of_kind()[input.at])
          list_outlet(place.line, place.number, column);
        break;
      case InputKind::inside_diameter:
      case InputKind::wall:
        for (const auto& place : inputs_.pipes_of_kind()[input.at])
          list_pipe(place, input.kind, column);
        break;
      case InputKind::loss_coefficient:
        list_losses(input.at, column);
        break;
      case InputKind::elevation:
        list_elevation(input, column);
        break;
      case InputKind::supply_pressure:
      case InputKind::pump_head:
        list_supply(input, i);
        break;
    }
  }
}

void InputErrors::list_outlet(std::size_t line, int number, const Column& column) {
  columns_[{Input::flow, inputs_.layout().lines()[line].name, number}].push_back(column);
}

void InputErrors::list_pipe(const UncertainInputs::PipePlace& place,
                            InputKind kind,
                            const Column& column) {
  const Line& line = inputs_.layout().lines()[place.line];
  const bool is_riser = place.part == UncertainInputs::PipePlace::riser;
  // Influences number the pipes of a line that has reaches from 1 on, its own last.
  const int number = is_riser || line.reaches.empty() ? 0
                     : place.part == UncertainInputs::PipePlace::reach
                         ? static_cast<int>(place.which) + 1
                         : static_cast<int>(line.reaches.size()) + 1;
  const auto add = [&](Input input) { columns_[{input, line.name, number}].push_back(column); };
  if (kind == InputKind::inside_diameter)
    return add(is_riser ? Input::riser_inside_diameter : Input::inside_diameter);
  // Only that which the wall is described by has an influence.
  add(is_riser ? Input::riser_hazen_williams : Input::hazen_williams);
  add(is_riser ? Input::riser_roughness : Input::roughness);
  add(is_riser ? Input::riser_darcy_factor : Input::darcy_factor);
}

void InputErrors::list_losses(std::size_t line_index, const Column& column) {
  const Line& line = inputs_.layout().lines()[line_index];
  const double own = line.loss_coefficient.value_or(0);
  const bool has_open_valve = line.valve && line.valve->opening != ValveOpening::shut;
  const double certain = has_open_valve ? loss_coefficient(*line.valve) : 0;
  if (own > 0)
    columns_[{Input::loss_coefficient, line.name, 0}].push_back(
        {column.which, column.share * own / (own + certain)});
  columns_[{Input::outlet_loss_coefficient, line.name, 0}].push_back(column);
  columns_[{Input::riser_loss_coefficient, line.name, 0}].push_back(column);
}

void InputErrors::list_elevation(const UncertainInput& input, const Column& column) {
  const Line& line = inputs_.layout().lines()[input.at];
  if (input.number > 0) return columns_[{Input::ground, line.name, input.number}].push_back(column);
  columns_[{Input::ground_rise, line.name, 0}].push_back(column);
  keep_listed(input.at, {}, column);
}

/// Where elevations are listed they stay, whatever the line rises by that feeds them.
void InputErrors::keep_listed(std::size_t feeder,
                              std::optional<double> share_of_rise,
                              const Column& column) {
  const Layout& layout = inputs_.layout();
  const Line& line = layout.lines()[feeder];
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    if (layout.feeder_of(i) != feeder) continue;
    const Line& fed = layout.lines()[i];
    const double rises = share_of_rise.value_or(begins_at(fed, line) / line.whole_length());
    if (fed.elevations.empty()) {
      keep_listed(i, rises, column);
      continue;
    }
    for (int number = 1; number <= fed.outlet_count(); ++number)
      columns_[{Input::ground, fed.name, number}].push_back({column.which, -rises * column.share});
  }
}

void InputErrors::list_supply(const UncertainInput& input, std::size_t which) {
  const Layout& layout = inputs_.layout();
  const Supply& supply = input.at == 0 ? layout.supply() : layout.further_supplies()[input.at - 1];
  const std::string name = input.at == 0 ? std::string() : supply.name;
  const auto add = [&](Input kind, double share, int number = 0) {
    columns_[{kind, name, number}].push_back({which, share});
  };
  if (input.kind == InputKind::pump_head)
    return add(Input::pump_head, input.deviation, input.number);
  const double density = si(properties(layout.water()).density);
  if (supply.pressure && *supply.pressure > Pressure{})
    add(Input::supply_pressure, input.deviation / si(*supply.pressure));
  if (supply.tank) add(Input::tank_level, input.deviation / (density * gravity));
  if (supply.hydrant) {
    add(Input::hydrant_at_rest, input.deviation / si(supply.hydrant->pressure_at_rest));
    if (supply.hydrant->residual_pressure > Pressure{})
      add(Input::hydrant_residual, input.deviation / si(supply.hydrant->residual_pressure));
  }
}

template <class Figure>
Eigen::VectorXd InputErrors::of(const Figure& figure) const {
  Eigen::VectorXd moved = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(count()));
  for (const auto& influence : sensitivities_.of(figure).influences) {
    const auto found = columns_.find({influence.input, influence.at, influence.number});
    if (found == columns_.end()) continue;
    const double slope =
        is_height(influence.input) ? influence.by_height.value() : influence.by_share.value();
    for (const Column& column : found->second)
      moved[static_cast<Eigen::Index>(column.which)] += slope * column.share;
  }
  return moved;
}

Eigen::VectorXd InputErrors::of(const Reading& reading) const {
  return std::visit(
      [&](const auto& figure) -> Eigen::VectorXd {
        if constexpr (std::is_same_v<std::decay_t<decltype(figure)>, std::monostate>)
          return Eigen::VectorXd::Zero(static_cast<Eigen::Index>(count()));
        else
          return of(figure);
      },
      figure_at(reading));
}

Eigen::VectorXd InputErrors::of_device(const std::string& line, int outlet) const {
  return of(pressure_at(line, outlet));
}

}  // namespace hydro
