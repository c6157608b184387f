#include "hydro/answers/influences.hpp"

#include "hydro/physics/hydrant_law.hpp"
#include "hydro/physics/pump_law.hpp"
#include "hydro/physics/supply_law.hpp"
#include "hydro/solver/outlet_step.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

namespace hydro {
namespace {

constexpr double fitting_power = -4;  // of the bore, in K V^2 / (2 g) at the same flow
constexpr double mouth_power = 2;     // of the bore, in what an open mouth lets out

struct WallInputs {
  Input bore, hazen_williams, roughness, darcy_factor;
};
constexpr WallInputs of_pipe{
    Input::inside_diameter, Input::hazen_williams, Input::roughness, Input::darcy_factor};
constexpr WallInputs of_riser{Input::riser_inside_diameter,
                              Input::riser_hazen_williams,
                              Input::riser_roughness,
                              Input::riser_darcy_factor};

Input wall_of(const Pipe& pipe, const WallInputs& inputs) {
  return pipe.hazen_williams ? inputs.hazen_williams
         : pipe.roughness    ? inputs.roughness
                             : inputs.darcy_factor;
}

/// Rises of a loss by a whole share of the bore and of the wall's coefficient [m].
struct LossRises {
  double bore = 0;
  double wall = 0;
  LossRises& add(const FrictionLaw& friction, double flow, double wall_loss, double fitting_loss) {
    const LossPowers powers = friction.powers(flow);
    bore += wall_loss * powers.bore + fitting_loss * fitting_power;
    wall += wall_loss * powers.wall;
    return *this;
  }
};

class Collector {
 public:
  Collector(const Solution& solution,
            const Tree& tree,
            const Sweeps& sweeps,
            const FigureInStates& figure)
      : layout_(solution.layout()),
        tree_(tree),
        sweeps_(sweeps),
        figure_(figure),
        weight_density_(si(solution.water().density) * gravity),
        water_(solution.water()),
        multipliers_(sweeps.transposed(figure.weights)) {
    if (!multipliers_.has_slope)
      throw InvalidInput("figure",
                         "hangs on water that stands still round a loop or between two supplies; a "
                         "flow there goes with a root of what drives it, and has no slope");
  }

  std::vector<PlainInfluence> all() {
    find_lifts();
    find_tied();
    for (std::size_t i = 0; i < layout_.lines().size(); ++i)
      if (tree_.lines[i].last_run != none) line(i);
    for (std::size_t i = 0; i < tree_.of_supplies.size(); ++i) supply(i);
    return std::move(found_);
  }

 private:
  void add(Input input,
           const std::string& at,
           double value,
           int number = 0,
           const std::string& kind = {}) {
    if (value != 0) found_.push_back({input, at, kind, number, value});
  }

  const Reach& reach_at(std::size_t place) const {
    return tree_.reaches[index(tree_.places[place].reach)];
  }
  const State& state(std::size_t place) const { return sweeps_.states()[place]; }
  /// Beyond a regulator that holds, nothing before it is felt.
  double by_head(std::size_t place) const {
    return sweeps_.is_held(place) ? 0 : multipliers_.heads[place];
  }

  /// What the figure rises by when an outlet would let out so much more at the same head at its
  /// device. More flow takes more of the head on its riser.
  double by_outflow(std::size_t place, const OutletAnswer& answer, double rise) const {
    const double flow_rise = rise * answer.passed_on;
    return by_answer(place, flow_rise, -answer.riser_slope * flow_rise);
  }
  /// ... and when so much more head is taken before its device.
  double by_riser_loss(std::size_t place, const OutletAnswer& answer, double rise) const {
    const double head_rise = -rise * answer.passed_on;
    return by_answer(place, answer.flow_slope * head_rise, head_rise);
  }
  double by_answer(std::size_t place, double flow_rise, double head_rise) const {
    double sum = multipliers_.drawn[place] * flow_rise;
    if (place == figure_.outlet_place)
      sum += figure_.by_flow * flow_rise + figure_.by_device_head * head_rise;
    return sum;
  }

  /// By place: what the figure rises by when the ground does, with all that meets there.
  void find_lifts() {
    lifts_.assign(tree_.places.size(), 0);
    std::vector<std::size_t> meets(tree_.places.size());
    std::iota(meets.begin(), meets.end(), std::size_t{0});
    const auto where = [&](std::size_t place) {
      while (meets[place] != place) place = meets[place];
      return place;
    };
    const auto far_end = [&](std::int32_t run) { return tree_.runs[index(run)].end - 1; };
    for (const Joint& joint : tree_.joints)
      meets[where(far_end(joint.from))] = where(far_end(joint.to));
    for (std::size_t r = 0; r < tree_.runs.size(); ++r) {
      const Run& run = tree_.runs[r];
      std::size_t before = sweeps_.source_of(r) == none ? where(far_end(run.fed_by)) : nowhere;
      for (std::size_t i = run.first; i < run.end; ++i) {
        if (before != nowhere) lifts_[before] += by_head(i);
        before = where(i);
        lifts_[before] -= by_head(i);
      }
    }
    for (std::size_t i = 0; i < meets.size(); ++i) lifts_[i] = lifts_[where(i)];
  }

  void line(std::size_t line_index) {
    const LinePlaces& places = tree_.lines[line_index];
    numbers_.assign(tree_.last_run(places).end - places.start, 0);
    for (std::size_t i = 0; i < places.outlets; ++i)
      if (const std::size_t place = tree_.place_of(places, i); place != nowhere)
        numbers_[place - places.start] = static_cast<int>(i) + 1;
    pipes_and_fittings(line_index);
    rise_of_ground(line_index);
    regulator(line_index);
    outlets(line_index);
  }

  void pipes_and_fittings(std::size_t line_index) {
    const Line& line = layout_.lines()[line_index];
    const LinePlaces& places = tree_.lines[line_index];
    const double outlet_k = line.outlet_loss_coefficient.value_or(0);
    double at_inlet = 0, at_outlets = 0;
    std::size_t from = places.start;
    for (std::size_t k = 0; k <= line.reaches.size(); ++k) {
      const bool is_first_reach = k < line.reaches.size();
      const Pipe& pipe = is_first_reach ? line.reaches[k].pipe : line.pipe;
      const double per_outlet = fitting_coefficient(outlet_k, si(pipe.inside_diameter));
      const std::size_t end = k < places.ends_of_reaches.size() ? places.ends_of_reaches[k]
                                                                : tree_.last_run(places).end;
      LossRises rises;
      double length = 0;
      for (std::size_t i = from; i < end; ++i) {
        const double by_loss = -by_head(i);
        if (by_loss == 0) continue;
        const Reach& reach = reach_at(i);
        const double Q = state(i).flow;
        const double square = Q * std::abs(Q);
        const double wall = reach.length * reach.friction.per_metre(Q, state(i).wall_slope).head;
        LossRises here;
        here.add(reach.friction, Q, wall, reach.fitting * square);
        rises.bore += by_loss * here.bore;
        rises.wall += by_loss * here.wall;
        length += by_loss * wall;
        const double there = number_at(line_index, i) > 0 ? per_outlet : 0;
        at_outlets += by_loss * there * square;
        if (i == places.start) at_inlet += by_loss * (reach.fitting - there) * square;
      }
      rises.bore += by_open_ends(line_index, pipe);
      const int number = line.reaches.empty() ? 0 : static_cast<int>(k) + 1;
      add(Input::inside_diameter, line.name, rises.bore, number, pipe.name);
      add(wall_of(pipe, of_pipe), line.name, rises.wall, number, pipe.name);
      add(Input::length, line.name, length, number, pipe.name);
      from = std::max(from, end);
    }
    // Rounding is no fitting.
    if (has_fitting_at_inlet(line_index)) add(Input::loss_coefficient, line.name, at_inlet);
    add(Input::outlet_loss_coefficient, line.name, at_outlets);
  }

  int number_at(std::size_t line_index, std::size_t place) const {
    return numbers_[place - tree_.lines[line_index].start];
  }

  bool has_fitting_at_inlet(std::size_t line_index) const {
    const Line& line = layout_.lines()[line_index];
    return line.loss_coefficient.value_or(0) > 0 || line.valve ||
           std::ranges::any_of(layout_.faults_on(line_index), [](const Fault& fault) {
             return std::holds_alternative<ValvePartClosed>(fault);
           });
  }

  /// Where the line ends in the air, its last bore is a mouth.
  double by_open_ends(std::size_t line_index, const Pipe& pipe) const {
    const Line& line = layout_.lines()[line_index];
    double sum = 0;
    for (const OpenPlace& open : tree_.lines[line_index].open) {
      const auto end = open_end(layout_.faults_on(line_index)[open.fault], line);
      if (end && &line.pipe_at(*end) == &pipe) sum += mouth_power * by_opening(open.place);
    }
    return sum;
  }
  /// By one whole share of what flows out of a hole or an open end.
  double by_opening(std::size_t place) const {
    const Mouth& mouth = tree_.mouths[index(tree_.places[place].mouth)];
    return by_outflow(
        place, answer_of(mouth, state(place), sweeps_.ramp()), state(place).outlet_flow);
  }

  /// By line: whether some of what hangs on it joins another line, so that not all of it can go up
  /// with its far end as it is.
  void find_tied() {
    tied_.assign(layout_.lines().size(), false);
    for (std::size_t i = 0; i < tied_.size(); ++i)
      if (const auto joined = layout_.joined_by(i))
        for (const std::size_t end : {i, *joined})
          for (std::optional<std::size_t> line = end; line && !tied_[*line];
               line = layout_.feeder_of(*line))
            tied_[*line] = true;
  }

  /// With all that hangs on the line.
  void rise_of_ground(std::size_t line_index) {
    const Line& line = layout_.lines()[line_index];
    const LinePlaces& places = tree_.lines[line_index];
    if (!line.elevations.empty() || tied_[line_index] || places.first_run == none) return;
    double sum = 0;
    for (std::size_t i = places.start; i < tree_.last_run(places).end; ++i) {
      const bool is_outlet = number_at(line_index, i) > 0;
      const double connection = is_outlet ? si(line.connection_length.value_or(Length{})) : 0;
      sum -= by_head(i) * (reach_at(i).length - connection);
    }
    add(Input::ground_rise, line.name, sum / si(line.whole_length()));
  }

  void regulator(std::size_t line_index) {
    const LinePlaces& places = tree_.lines[line_index];
    if (places.first_run == none) return;
    const std::size_t first = tree_.first_run(places).first;
    if (sweeps_.is_held(first))
      add(Input::regulator,
          layout_.lines()[line_index].name,
          multipliers_.heads[first] * reach_at(first).held);
  }

  void outlets(std::size_t line_index) {
    const Line& line = layout_.lines()[line_index];
    const LinePlaces& places = tree_.lines[line_index];
    const std::vector<Fault>& faults = layout_.faults_on(line_index);
    const auto riser = line.riser.pipe();
    OnRisers on_risers;
    std::size_t next = 0;
    for (std::size_t i = 0; i < places.outlets; ++i) {
      const int number = static_cast<int>(i) + 1;
      while (next < faults.size() && outlet_of(faults[next]).value_or(0) < number) ++next;
      const Fault* fault =
          next < faults.size() && outlet_of(faults[next]) == number ? &faults[next] : nullptr;
      if (const std::size_t place = tree_.place_of(places, i); place != nowhere)
        outlet(line_index, number, place, fault, on_risers);
    }
    add(Input::riser_height, line.name, on_risers.height);
    add(Input::riser_loss_coefficient, line.name, on_risers.fittings);
    if (riser) {
      add(Input::riser_inside_diameter, line.name, on_risers.bore);
      add(wall_of(*riser, of_riser), line.name, on_risers.wall);
    }
    double holes = 0;
    for (const OpenPlace& open : places.open)
      if (std::holds_alternative<Leak>(faults[open.fault])) holes += by_opening(open.place);
    add(Input::leak, line.name, holes);
  }

  /// Of all risers of a line together.
  struct OnRisers {
    double height = 0, bore = 0, wall = 0, fittings = 0;
  };

  void outlet(std::size_t line_index,
              int number,
              std::size_t place,
              const Fault* fault,
              OnRisers& on_risers) {
    const Line& line = layout_.lines()[line_index];
    const Outlet& kind = layout_.outlet_at(line_index, number);
    add(Input::ground, line.name, lifts_[place], number);
    const std::int32_t reference = tree_.places[place].mouth;
    if (reference == none) {  // capped: what stands in its riser
      if (place == figure_.outlet_place) on_risers.height -= figure_.by_device_head;
      return;
    }
    const State& here = state(place);
    if (!(here.outlet_flow > 0)) return;
    const Mouth& mouth = tree_.mouths[index(reference)];
    const OutletAnswer answer = answer_of(mouth, here, sweeps_.ramp());
    const double by_flow_share = by_outflow(place, answer, here.outlet_flow);
    const double by_loss = by_riser_loss(place, answer, 1);
    const bool is_open_riser = fault && open_riser(*fault, line);

    if (!is_open_riser) {
      add(Input::flow, line.name, by_flow_share, number, kind.name);
      own_regulator(line, kind, place, mouth, number);
      if (!(fault && open_body(*fault, line)))
        exponent(line, kind, mouth, here, by_flow_share, number);
    } else {
      on_risers.bore += mouth_power * by_flow_share;
      const double k = open_riser(*fault, line)->loss_coefficient;
      on_risers.fittings -= k / (2 * (1 + k)) * by_flow_share;
    }
    on_risers.height += by_loss;
    if (!mouth.has_riser) return;
    const double q = here.outlet_flow;
    const double per_metre = mouth.riser.friction.per_metre(q, here.riser_slope).head;
    const double fitting = mouth.riser.fitting * q * q;
    LossRises rises;
    rises.add(mouth.riser.friction, q, mouth.riser.length * per_metre, fitting);
    on_risers.height += by_loss * per_metre;
    on_risers.bore += by_loss * rises.bore;
    on_risers.wall += by_loss * rises.wall;
    on_risers.fittings += by_loss * fitting;
  }

  /// q = q_at (P / at)^x, in which P goes no higher than what its regulator holds, and no lower than
  /// where the curve is a square root.
  void exponent(const Line& line,
                const Outlet& kind,
                const Mouth& mouth,
                const State& here,
                double by_flow_share,
                int number) {
    if (kind.nozzle || !kind.points.empty() || kind.compensating) return;
    const double head = std::max(std::min(here.outlet_head, mouth.law.held), mouth.law.low);
    const double ratio = head * weight_density_ / si(kind.at);
    add(Input::exponent,
        line.name,
        by_flow_share * mouth.law.exponent * std::log(ratio),
        number,
        kind.name);
  }

  void own_regulator(
      const Line& line, const Outlet& kind, std::size_t place, const Mouth& mouth, int number) {
    const double held = mouth.law.held;
    if (!(state(place).outlet_head > held)) return;
    const double flow_rise = mouth.law.exponent_at(held) * state(place).outlet_flow;
    double value = multipliers_.drawn[place] * flow_rise;
    if (place == figure_.outlet_place)
      value += figure_.by_flow * flow_rise + figure_.by_held_head * held;
    add(Input::outlet_regulator, line.name, value, number, kind.name);
  }

  void supply(std::size_t which) {
    const auto source = static_cast<std::size_t>(tree_.of_supplies[which]);
    const Supply& supply =
        which == 0 ? layout_.supply_as_it_is() : layout_.further_supplies_as_they_are()[which - 1];
    const bool is_figures = which == figure_.supply;
    const double by_head =
        multipliers_.source_heads[source] + (is_figures ? figure_.by_supply_head : 0);
    const double flow = sweeps_.source_is_shut(source) ? 0 : sweeps_.source_flow(source);
    const SupplyAtFlow now = SupplyLaw(supply, water_).in_full(flow);
    const auto add_here = [&](Input input, double head_rise, int number = 0) {
      add(input, supply.name, by_head * head_rise, number);
    };
    if (supply.pressure) add_here(Input::supply_pressure, si(*supply.pressure) / weight_density_);
    if (supply.tank) add_here(Input::tank_level, 1);
    if (supply.hydrant) hydrant(*supply.hydrant, std::max(0.0, flow), add_here);
    if (supply.pump) pumps(supply, now, add_here);
    if (supply.suction) {
      add_here(Input::suction_lift, -1);
      add_here(Input::suction_loss, -now.suction_loss);
    }
    const double beside = is_figures ? figure_.by_filter_loss : 0;
    add(Input::filter_loss, supply.name, (beside - by_head) * now.filter_loss);
  }

  template <class Add>
  void hydrant(const Hydrant& hydrant, double flow, const Add& add_here) const {
    const double at_rest = si(hydrant.pressure_at_rest) / weight_density_;
    const double residual = si(hydrant.residual_pressure) / weight_density_;
    const HydrantLaw law{at_rest, at_rest - residual, si(hydrant.flow)};
    const HeadAtFlow now = law.at(flow);
    const double drop_share = (at_rest - now.head) / law.drop;
    add_here(Input::hydrant_at_rest, at_rest * (1 - drop_share));
    add_here(Input::hydrant_residual, residual * drop_share);
    add_here(Input::hydrant_flow, -now.slope * flow);
  }

  /// What each pump's head counts in that of both. Side by side they have one head, and each counts
  /// as far as the other one is steep; one whose check valve is shut counts nothing.
  static std::array<double, 2> parts_of_pumps(const Supply& supply, const SupplyAtFlow& now) {
    if (now.pumps < 2 || supply.arrangement == PumpArrangement::series) return {1, 1};
    if (*supply.pump == *supply.second_pump) return {0.5, 0.5};
    const auto& [first, second] = now.pump;
    if (first.flow > 0 && second.flow > 0) {
      const double steep = first.slope + second.slope;
      return {second.slope / steep, first.slope / steep};
    }
    const bool first_works = first.flow > 0 || (!(second.flow > 0) && first.head > second.head);
    return first_works ? std::array<double, 2>{1, 0} : std::array<double, 2>{0, 1};
  }

  template <class Add>
  void pumps(const Supply& supply, const SupplyAtFlow& now, const Add& add_here) const {
    const std::array<double, 2> parts = parts_of_pumps(supply, now);
    for (std::size_t i = 0; i < now.pumps; ++i) {
      const Pump& pump = i == 0 ? *supply.pump : *supply.second_pump;
      const PumpShares shares = PumpLaw(pump, weight_density_).shares(now.pump[i]);
      const int number = static_cast<int>(i) + 1;
      add_here(Input::pump_head, parts[i] * shares.head, number);
      add_here(Input::pump_speed, parts[i] * shares.speed, number);
    }
  }

  const Layout& layout_;
  const Tree& tree_;
  const Sweeps& sweeps_;
  const FigureInStates& figure_;
  double weight_density_;  // rho g [N/m3]
  const WaterProperties& water_;
  Multipliers multipliers_;
  std::vector<double> lifts_;  // by place
  std::vector<bool> tied_;     // by line
  std::vector<int> numbers_;   // of the outlets at the places of one line; 0: none
  std::vector<PlainInfluence> found_;
};

}  // namespace

OutletAnswer answer_of(const Mouth& mouth, const State& state, double ramp) {
  OutletAnswer answer;
  if (!(state.outlet_flow > 0)) return answer;
  answer.flow_slope = exponent_at(mouth.law, ramp, state) * state.outlet_flow / state.outlet_head;
  double wall_slope = state.riser_slope;
  if (mouth.has_riser) answer.riser_slope = mouth.riser.loss(state.outlet_flow, wall_slope).slope;
  answer.passed_on = 1 / (1 + answer.flow_slope * answer.riser_slope);
  return answer;
}

std::vector<PlainInfluence> influences(const Solution& solution,
                                       const Tree& tree,
                                       const Sweeps& sweeps,
                                       const FigureInStates& figure) {
  return Collector(solution, tree, sweeps, figure).all();
}

}  // namespace hydro
