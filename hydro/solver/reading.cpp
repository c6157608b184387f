#include "hydro/solver/reading.hpp"

#include "hydro/physics/friction.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace hydro {

OutletState state_at(const Outlet& outlet, const Pressure& pressure) {
  if (!(pressure > Pressure{})) return OutletState::dry;
  if (outlet.minimum && is_below(pressure, *outlet.minimum)) return OutletState::below_minimum;
  if (outlet.maximum && is_above(pressure, *outlet.maximum)) return OutletState::above_maximum;
  return OutletState::works;
}

OutletReading with_fault(OutletReading read,
                         const Fault& fault,
                         const Line& line,
                         double weight_density) {
  if (std::holds_alternative<Capped>(fault)) {
    read.state = OutletState::closed;
    read.pressure = std::max(0.0, read.line_pressure - weight_density * si(line.riser.height));
  } else if (open_riser(fault, line)) {
    read.state = OutletState::broken;
    read.pressure = 0;
  } else if (open_body(fault, line)) {
    read.state = OutletState::broken;
  }
  return read;
}

ResultReader::ResultReader(const Layout& layout,
                           const WaterProperties& water,
                           const Tree& tree,
                           const Sweeps& sweeps)
    : layout_(layout),
      water_(water),
      tree_(tree),
      sweeps_(sweeps),
      states_(sweeps.states()),
      weight_density_(si(water.density) * gravity) {}

LineSolution ResultReader::line(std::size_t line_index) const {
  const Line& line = layout_.lines()[line_index];
  const LinePlaces& places = tree_.lines[line_index];
  const auto count = static_cast<std::size_t>(line.outlet_count());
  std::vector<double> distance(count), pressure(count), line_pressure(count), flow(count),
      velocity(count);
  const bool shut = layout_.is_shut(line_index);
  std::vector<OutletState> state(count, shut ? OutletState::closed : OutletState::dry);
  const double bore_area = si(area(line.pipe));
  for (std::size_t i = 0; i < count; ++i) {
    const int number = static_cast<int>(i) + 1;
    const Length place = line.place_of(number);
    distance[i] = si(place);
    if (i >= places.outlets) continue;
    const std::size_t at = tree_.place_of(places, i);
    if (at == nowhere) continue;
    const State& here = states_[at];
    const std::int32_t mouth = tree_.places[at].mouth;
    line_pressure[i] = weight_density_ * here.head;
    pressure[i] = weight_density_ * here.outlet_head;
    if (mouth != none)
      pressure[i] = std::min(
          pressure[i], weight_density_ * tree_.mouths[static_cast<std::size_t>(mouth)].law.held);
    flow[i] = here.outlet_flow;
    velocity[i] = here.flow / (line.reaches.empty() ? bore_area : si(area(line.pipe_at(place))));
    state[i] = state_at(layout_.outlet_at(line_index, number), Pressure::from_value(pressure[i]));
  }
  for (const Fault& fault : layout_.faults_on(line_index)) {
    const auto outlet = outlet_of(fault);
    if (!outlet || shut) continue;
    const auto i = static_cast<std::size_t>(*outlet - 1);
    const OutletReading read =
        with_fault({pressure[i], line_pressure[i], state[i]}, fault, line, weight_density_);
    pressure[i] = read.pressure;
    state[i] = read.state;
  }
  LineSolution solved{.name = line.name,
                      .distance = Series<Length>(std::move(distance)),
                      .pressure = Series<Pressure>(std::move(pressure)),
                      .line_pressure = Series<Pressure>(std::move(line_pressure)),
                      .flow = Series<Flow>(std::move(flow)),
                      .velocity = Series<Velocity>(std::move(velocity)),
                      .state = std::move(state),
                      .shut = shut,
                      .inlet_shut = layout_.inlet_is_shut(line_index)};
  if (places.last_run == none) return solved;
  if (places.first_run != none && !solved.inlet_shut) {
    const bool held_shut = sweeps_.is_shut(static_cast<std::size_t>(places.first_run));
    double inflow = held_shut ? 0 : states_[tree_.first_run(places).first].flow;
    if (tree_.first_run(places).one_way) inflow = std::max(0.0, inflow);
    solved.inflow = Flow::from_value(inflow);
    solved.inlet_velocity = Velocity::from_value(inflow / si(area(line.pipe_at(Length{}))));
    if (line.check_valve.value_or(false))
      solved.check_valve = held_shut ? CheckValveState::shut : CheckValveState::open;
  }
  if (places.first_run != none) solved.inlet_pressure = pressure_at(head_at_inlet(places));
  if (!layout_.open_end_of(line_index) || places.beyond_run != none)
    solved.end_pressure = pressure_at(states_[tree_.last_run(places).end - 1].head);
  solved.end_flow = end_flow(line_index);
  for (const OpenPlace& open : places.open) {
    const State& here = states_[open.place];
    const Fault& fault = layout_.faults_on(line_index)[open.fault];
    const auto* leak = std::get_if<Leak>(&fault);
    solved.openings.push_back({open.fault,
                               leak ? leak->place : open_end(fault, line).value(),
                               pressure_at(here.head),
                               Flow::from_value(here.outlet_flow)});
  }
  solved.pipes = pipes(line_index);
  solved.regulator = regulator(line_index);
  return solved;
}

Pressure ResultReader::pressure_at(double head) const {
  return Pressure::from_value(weight_density_ * head);
}

double ResultReader::head_at_inlet(const LinePlaces& places) const {
  if (places.first_run == none)
    return states_[tree_.runs[static_cast<std::size_t>(places.beyond_run)].first].head;
  return sweeps_.head_before(static_cast<std::size_t>(places.first_run));
}

Flow ResultReader::end_flow(std::size_t line_index) const {
  const std::int32_t last = tree_.lines[line_index].last_run;
  if (!layout_.joined_by(line_index)) return {};
  for (std::size_t i = 0; i < tree_.joints.size(); ++i)
    if (tree_.joints[i].from == last) return Flow::from_value(sweeps_.joint_flow(i));
  return {};
}

OperatingPoint ResultReader::supply(const Supply& supply, std::size_t number, bool met) const {
  const auto which = static_cast<std::size_t>(tree_.of_supplies[number]);
  const bool held_shut = sweeps_.source_is_shut(which);
  double flow = held_shut ? 0 : sweeps_.source_flow(which);
  if (!takes_water_in(supply)) flow = std::max(0.0, flow);
  if (constexpr double most = 1; !met && !(std::abs(flow) < most)) flow = 0;
  OperatingPoint point =
      operating_point(supply, Flow::from_value(flow), layout_.water(), layout_.site());
  point.held_shut = held_shut;
  if (held_shut) point.pressure = pressure_at(sweeps_.source_head(which));
  return point;
}

std::vector<ResultReader::Piece> ResultReader::pieces(std::size_t line_index) const {
  const Line& line = layout_.lines()[line_index];
  const LinePlaces& places = tree_.lines[line_index];
  if (places.last_run == none) return {};
  const auto open_end = layout_.open_end_of(line_index);
  const Length end = open_end && places.beyond_run == none ? *open_end : line.whole_length();
  const std::size_t last = tree_.last_run(places).end;
  std::vector<Piece> found;
  std::size_t first = places.start;
  Length from = places.first_run == none ? *open_end : Length{};
  for (std::size_t i = 0; i < places.ends_of_reaches.size(); ++i) {
    const PipeReach& reach = line.reaches[i];
    if (places.ends_of_reaches[i] == first) continue;
    found.push_back({reach.pipe, from, reach.to, first, places.ends_of_reaches[i]});
    from = reach.to;
    first = places.ends_of_reaches[i];
  }
  if (first < last) found.push_back({line.pipe_at(end), from, end, first, last});
  return found;
}

std::vector<PipeExtremes> ResultReader::pipes(std::size_t line_index) const {
  std::vector<PipeExtremes> found;
  const LinePlaces& places = tree_.lines[line_index];
  if (places.last_run == none) return found;
  double head = head_at_inlet(places);
  const bool begins_elsewhere =
      (layout_.lines()[line_index].regulator && !layout_.inlet_is_shut(line_index)) ||
      (places.first_run != none && sweeps_.is_shut(static_cast<std::size_t>(places.first_run)));
  if (begins_elsewhere) head = states_[places.start].head;
  for (const Piece& piece : pieces(line_index)) {
    double fastest = 0, lowest = head, highest = head;
    for (std::size_t place = piece.first; place < piece.end; ++place) {
      head = states_[place].head;
      fastest = std::max(fastest, std::abs(states_[place].flow));
      lowest = std::min(lowest, head);
      highest = std::max(highest, head);
    }
    found.push_back({piece.pipe.name,
                     piece.from,
                     piece.to,
                     Velocity::from_value(fastest / si(area(piece.pipe))),
                     pressure_at(lowest),
                     pressure_at(highest)});
  }
  return found;
}

std::optional<RegulatorSolution> ResultReader::regulator(std::size_t line_index) const {
  const LinePlaces& places = tree_.lines[line_index];
  if (places.first_run == none || layout_.inlet_is_shut(line_index) ||
      !layout_.lines()[line_index].regulator)
    return std::nullopt;
  const std::size_t first = tree_.first_run(places).first;
  const Reach& reach = tree_.reaches[static_cast<std::size_t>(tree_.places[first].reach)];
  if (!(reach.held < no_limit)) return RegulatorSolution{RegulatorState::stuck_open, {}, {}};
  const State& here = states_[first];
  if (sweeps_.is_shut(static_cast<std::size_t>(places.first_run)))
    return RegulatorSolution{RegulatorState::shut, pressure_at(here.head), {}};
  double slope = unknown_slope;
  const double passing = head_at_inlet(places) - reach.loss(here.flow, slope).head;
  const bool holds = passing > reach.held;
  return RegulatorSolution{holds ? RegulatorState::holding : RegulatorState::open,
                           pressure_at(here.head),
                           pressure_at(holds ? passing - here.head : 0)};
}

std::vector<std::string> ResultReader::notes(std::size_t line_index) const {
  std::vector<std::string> notes = notes_on_catalogues(line_index);
  if (auto note = note_on_slow_flow(line_index)) notes.push_back(std::move(*note));
  return notes;
}

std::vector<std::string> ResultReader::notes_on_catalogues(std::size_t line_index) const {
  const Line& line = layout_.lines()[line_index];
  std::vector<const Outlet*> kinds;
  const auto add = [&](const Outlet& kind) {
    const auto is_it = [&](const Outlet* known) { return *known == kind; };
    if (!kind.points.empty() && std::ranges::none_of(kinds, is_it)) kinds.push_back(&kind);
  };
  if (line.outlet) add(*line.outlet);
  for (const PlacedOutlet& placed : line.outlets) add(placed.outlet);
  for (const Fault& fault : layout_.faults_on(line_index))
    if (const auto* wrong = std::get_if<WrongOutlet>(&fault)) add(wrong->fitted);
  std::vector<std::string> notes;
  for (const Outlet* kind : kinds) {
    const PointsFit fit = fit_of(kind->points);
    notes.push_back(fmt::format(
        "line {}: its outlets' catalogue is met by the exponent {:.3f}, with a largest misfit of "
        "{:.1f} %",
        in_quotes(line.name),
        fit.exponent,
        100 * fit.largest_misfit));
  }
  return notes;
}

std::optional<std::string> ResultReader::note_on_slow_flow(std::size_t line_index) const {
  constexpr double turbulent_from = 4000;  // Reynolds number
  constexpr double much = 0.1;             // of the line's loss
  const std::vector<Piece> all = pieces(line_index);
  const auto is_empirical = [](const Piece& piece) {
    return piece.pipe.hazen_williams.has_value();
  };
  if (std::ranges::none_of(all, is_empirical)) return std::nullopt;
  double slow = 0;
  double whole = 0;
  for (const Piece& piece : all) {
    const double slow_below = turbulent_from / reynolds_number(piece.pipe, 1 * m3_per_s, water_);
    for (std::size_t place = piece.first; place < piece.end; ++place) {
      const State& here = states_[place];
      const Reach& reach = tree_.reaches[static_cast<std::size_t>(tree_.places[place].reach)];
      const double speed = std::abs(here.flow);
      const double loss = reach.length * reach.friction.per_metre(speed, here.wall_slope).head;
      whole += loss;
      if (piece.pipe.hazen_williams && speed < slow_below) slow += loss;
    }
  }
  if (!(slow > much * whole)) return std::nullopt;
  return fmt::format(
      "line {}: {:.0f} % of its friction loss arises below Reynolds number 4000, where "
      "Hazen-Williams is not validated; give the pipe a roughness to use Darcy-Weisbach",
      in_quotes(layout_.lines()[line_index].name),
      100 * slow / whole);
}

}  // namespace hydro
