#include "hydro/solver/reading.hpp"

#include "hydro/physics/friction.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

OutletState state_at(const Outlet& outlet, const Pressure& pressure) {
  if (!(pressure > Pressure{})) return OutletState::dry;
  if (outlet.minimum && is_below(pressure, *outlet.minimum)) return OutletState::below_minimum;
  if (outlet.maximum && is_above(pressure, *outlet.maximum)) return OutletState::above_maximum;
  return OutletState::works;
}

}  // namespace

Reading::Reading(const Layout& layout,
                 const WaterProperties& water,
                 const Tree& tree,
                 const std::vector<State>& states)
    : layout_(layout),
      water_(water),
      tree_(tree),
      states_(states),
      weight_density_(si(water.density) * gravity) {}

LineSolution Reading::line(std::size_t line_index) const {
  const Line& line = layout_.lines()[line_index];
  const Run& run = tree_.runs[tree_.run_of_line[line_index]];
  const auto count = static_cast<std::size_t>(line.outlet_count());
  const double bore_area = si(area(line.pipe));
  std::vector<double> distance(count), pressure(count), line_pressure(count), flow(count),
      velocity(count);
  std::vector<OutletState> state(count, OutletState::works);
  for (std::size_t i = 0; i < count; ++i) {
    const State& here = states_[run.first + i];
    distance[i] = si(line.place_of(static_cast<int>(i) + 1));
    line_pressure[i] = weight_density_ * here.head;
    pressure[i] = weight_density_ * here.outlet_head;
    flow[i] = here.outlet_flow;
    velocity[i] = here.flow / bore_area;
    state[i] = state_at(*line.outlet, Pressure::from_value(pressure[i]));
  }
  for (const Fault& fault : layout_.faults_on(line_index)) {
    const auto i = static_cast<std::size_t>(outlet_of(fault) - 1);
    if (std::holds_alternative<Capped>(fault)) {
      state[i] = OutletState::closed;
      pressure[i] = std::max(0.0, line_pressure[i] - weight_density_ * si(line.riser.height));
    } else if (open_riser(fault, line)) {
      state[i] = OutletState::broken;
      pressure[i] = 0;
    }
  }
  const double head_at_inlet =
      run.fed_by == none ? tree_.supply_head
                         : states_[tree_.runs[static_cast<std::size_t>(run.fed_by)].end - 1].head;
  const double inflow = states_[run.first].flow;
  return {.name = line.name,
          .distance = Series<Length>(std::move(distance)),
          .pressure = Series<Pressure>(std::move(pressure)),
          .line_pressure = Series<Pressure>(std::move(line_pressure)),
          .flow = Series<Flow>(std::move(flow)),
          .velocity = Series<Velocity>(std::move(velocity)),
          .state = std::move(state),
          .inflow = Flow::from_value(inflow),
          .inlet_velocity = Velocity::from_value(inflow / bore_area),
          .inlet_pressure = Pressure::from_value(weight_density_ * head_at_inlet),
          .end_pressure = Pressure::from_value(weight_density_ * states_[run.end - 1].head)};
}

std::optional<std::string> Reading::note_on_catalogue(std::size_t line_index) const {
  const Line& line = layout_.lines()[line_index];
  if (!line.outlet || line.outlet->points.empty()) return std::nullopt;
  const PointsFit fit = fit_of(line.outlet->points);
  return fmt::format(
      "line {}: its outlets' catalogue is met by the exponent {:.3f}, with a largest misfit of "
      "{:.1f} %",
      in_quotes(line.name),
      fit.exponent,
      100 * fit.largest_misfit);
}

std::optional<std::string> Reading::note_on_slow_flow(std::size_t line_index) const {
  const Line& line = layout_.lines()[line_index];
  if (!line.pipe.hazen_williams) return std::nullopt;
  constexpr double turbulent_from = 4000;  // Reynolds number
  constexpr double much = 0.1;             // of the line's loss
  const double slow_below = turbulent_from / reynolds_number(line.pipe, 1 * m3_per_s, water_);
  const Run& run = tree_.runs[tree_.run_of_line[line_index]];
  double slow = 0;
  double whole = 0;
  for (std::size_t i = run.first; i < run.end; ++i) {
    const State& here = states_[i];
    const Reach& reach = tree_.reaches[static_cast<std::size_t>(tree_.places[i].reach)];
    const double loss = reach.length * reach.friction.per_metre(here.flow, here.wall_slope).head;
    whole += loss;
    if (here.flow < slow_below) slow += loss;
  }
  if (!(slow > much * whole)) return std::nullopt;
  return fmt::format(
      "line \"{}\": {:.0f} % of its friction loss arises below Reynolds number 4000, where "
      "Hazen-Williams is not validated; give the pipe a roughness to use Darcy-Weisbach",
      line.name,
      100 * slow / whole);
}

}  // namespace hydro
