#include "hydro/answers/sensitivity.hpp"

#include "hydro/answers/influences.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/settle.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <tuple>
#include <utility>

namespace hydro {
namespace {

constexpr double small_share = 0.01;
constexpr Length small_height = 0.1 * ft;

struct Words {
  Input input;
  std::string_view words;
  bool is_height = false;
};
/// In the order of the enumeration.
constexpr std::array words{Words{Input::inside_diameter, "pipe bore"},
                           Words{Input::hazen_williams, "pipe C"},
                           Words{Input::roughness, "pipe roughness"},
                           Words{Input::darcy_factor, "pipe friction factor"},
                           Words{Input::length, "pipe length"},
                           Words{Input::loss_coefficient, "loss at the inlet"},
                           Words{Input::outlet_loss_coefficient, "loss in the line at outlets"},
                           Words{Input::ground_rise, "rise of the ground", true},
                           Words{Input::regulator, "line regulator"},
                           Words{Input::leak, "leak"},
                           Words{Input::riser_height, "riser height", true},
                           Words{Input::riser_inside_diameter, "riser bore"},
                           Words{Input::riser_hazen_williams, "riser C"},
                           Words{Input::riser_roughness, "riser roughness"},
                           Words{Input::riser_darcy_factor, "riser friction factor"},
                           Words{Input::riser_loss_coefficient, "riser fittings"},
                           Words{Input::flow, "outlet flow at its pressure"},
                           Words{Input::exponent, "outlet exponent"},
                           Words{Input::outlet_regulator, "outlet regulator"},
                           Words{Input::ground, "ground at the outlet", true},
                           Words{Input::supply_pressure, "supply pressure"},
                           Words{Input::tank_level, "tank level", true},
                           Words{Input::hydrant_at_rest, "hydrant pressure at rest"},
                           Words{Input::hydrant_residual, "hydrant residual pressure"},
                           Words{Input::hydrant_flow, "hydrant flow"},
                           Words{Input::pump_head, "pump head"},
                           Words{Input::pump_speed, "pump speed"},
                           Words{Input::suction_lift, "suction lift", true},
                           Words{Input::suction_loss, "suction loss"},
                           Words{Input::filter_loss, "filter loss"}};
static_assert([] {
  for (std::size_t i = 0; i < words.size(); ++i)
    if (words[i].input != static_cast<Input>(i)) return false;
  return words.size() == static_cast<std::size_t>(Input::filter_loss) + 1;
}());

/// Strongest first. Names are moved once only: there may be many.
template <class Figure>
void sort(std::vector<Influence<Figure>>& influences) {
  std::vector<std::pair<double, std::size_t>> order;
  order.reserve(influences.size());
  for (const Influence<Figure>& it : influences)
    order.emplace_back(-std::abs(si(it.by_one_step())), order.size());
  std::ranges::sort(order);
  std::vector<Influence<Figure>> sorted;
  sorted.reserve(influences.size());
  for (const auto& [strength, which] : order) sorted.push_back(std::move(influences[which]));
  influences = std::move(sorted);
}

/// Adds up what `key` calls the same; it may change what it is given.
template <class Figure, class Key>
Sensitivity<Figure> summed(const Sensitivity<Figure>& whole, const Key& key) {
  std::map<std::tuple<Input, std::string, std::string>, Influence<Figure>> sums;
  for (Influence<Figure> it : whole.influences) {
    key(it);
    it.number = 0;
    const auto [sum, is_new] = sums.try_emplace({it.input, it.at, it.kind}, it);
    if (is_new) continue;
    sum->second.by_share += it.by_share;
    sum->second.by_height += it.by_height;
  }
  Sensitivity<Figure> result{whole.value, {}};
  for (auto& [names, sum] : sums) result.influences.push_back(std::move(sum));
  sort(result.influences);
  return result;
}

}  // namespace

bool is_height(Input input) {
  return words.at(static_cast<std::size_t>(input)).is_height;
}
std::string_view words_of(Input input) {
  return words.at(static_cast<std::size_t>(input)).words;
}

PressureFigure pressure_at(std::string line, int outlet) {
  return {PressureFigure::Kind::device, std::move(line), outlet};
}
PressureFigure line_pressure_at(std::string line, int outlet) {
  return {PressureFigure::Kind::line, std::move(line), outlet};
}
PressureFigure supply_pressure(std::string supply) {
  return {PressureFigure::Kind::supply, std::move(supply)};
}
PressureFigure gauge_reading(std::string supply) {
  return {PressureFigure::Kind::gauge, std::move(supply)};
}
FlowFigure flow_of(std::string line, int outlet) {
  return {FlowFigure::Kind::outlet, std::move(line), outlet};
}
FlowFigure inflow_of(std::string line) {
  return {FlowFigure::Kind::inflow, std::move(line)};
}
FlowFigure supply_flow(std::string supply) {
  return {FlowFigure::Kind::supply, std::move(supply)};
}
FlowFigure whole_inflow() {
  return {};
}

template <class Figure>
Figure Influence<Figure>::by_one_step() const {
  return by_share * small_share + by_height * small_height;
}

template <class Figure>
Sensitivity<Figure> Sensitivity<Figure>::by_line() const {
  return summed(*this, [](Influence<Figure>& it) { it.kind.clear(); });
}
template <class Figure>
Sensitivity<Figure> Sensitivity<Figure>::by_kind() const {
  return summed(*this, [](Influence<Figure>& it) {
    if (!it.kind.empty()) it.at.clear();
  });
}
template <class Figure>
Influence<Figure> Sensitivity<Figure>::of(Input input, std::string_view at, int number) const {
  Influence<Figure> sum{.input = input, .at = std::string(at), .number = number};
  for (const Influence<Figure>& it : influences) {
    if (it.input != input || it.at != at || (number != 0 && it.number != number)) continue;
    sum.kind = it.kind;
    sum.by_share += it.by_share;
    sum.by_height += it.by_height;
  }
  return sum;
}

struct Sensitivities::Data {
  explicit Data(Solution its_solution)
      : solution(std::move(its_solution)),
        tree(make_tree(solution.layout(), solution.water())),
        settled(settle(tree, std::max(SolveOptions{}.newton_steps, solution.residuals().steps))),
        weight_density(si(solution.water().density) * gravity) {
    if (!settled.met) throw NotSolved(solution);
  }

  template <class Figure>
  Sensitivity<Figure> of(const Figure& value, const FigureInStates& figure) const;
  FigureInStates blank() const {
    return {.weights = {std::vector<double>(tree.places.size()),
                        std::vector<double>(tree.places.size()),
                        std::vector<double>(tree.sources.size())}};
  }
  std::size_t line(const std::string& name) const { return solution.layout().index_of(name); }
  std::size_t supply(const std::string& name) const;
  /// Index of an outlet, from 0 on, that must be there.
  std::size_t outlet(std::size_t line, int number) const;
  /// Where water comes to it; nowhere: it does not.
  std::size_t place(std::size_t line, std::size_t outlet) const {
    const LinePlaces& places = tree.lines[line];
    return outlet < places.outlets ? tree.place_of(places, outlet) : nowhere;
  }
  std::size_t source(std::size_t supply) const { return index(tree.of_supplies[supply]); }
  const OperatingPoint& point(std::size_t supply) const {
    return supply == 0 ? solution.supply() : solution.further_supplies()[supply - 1];
  }

  void weigh_device(std::size_t line, std::size_t outlet, FigureInStates& figure) const;
  void weigh_inlet(std::size_t line, FigureInStates& figure) const;
  void weigh_end(std::size_t line, FigureInStates& figure) const;
  void weigh_outflow(std::size_t line, std::size_t outlet, FigureInStates& figure) const;
  void weigh_gauge(std::size_t supply, FigureInStates& figure) const;
  /// @param by_flow what the figure rises by for each m3/s
  void weigh_supply_flow(std::size_t supply, double by_flow, FigureInStates& figure) const;

  Solution solution;
  Tree tree;
  Settled settled;        // refers to the tree
  double weight_density;  // rho g [N/m3]
};

template <class Figure>
Sensitivity<Figure> Sensitivities::Data::of(const Figure& value,
                                            const FigureInStates& figure) const {
  using ByLength = typename Influence<Figure>::ByLength;
  Sensitivity<Figure> result{value, {}};
  for (PlainInfluence& it : influences(solution, tree, settled.sweeps, figure)) {
    Influence<Figure>& added = result.influences.emplace_back(
        Influence<Figure>{it.input, std::move(it.at), std::move(it.kind), it.number});
    if (is_height(it.input))
      added.by_height = ByLength::from_value(it.value);
    else
      added.by_share = Figure::from_value(it.value);
  }
  sort(result.influences);
  return result;
}

std::size_t Sensitivities::Data::supply(const std::string& name) const {
  if (name.empty()) return 0;
  const std::vector<Supply>& further = solution.layout().further_supplies();
  const auto found = std::ranges::find(further, name, &Supply::name);
  if (found == further.end())
    throw InvalidInput(
        "supply",
        in_quotes(name) +
            " is not in this layout; give the name of a further one, or none for the "
            "first");
  return static_cast<std::size_t>(found - further.begin()) + 1;
}

std::size_t Sensitivities::Data::outlet(std::size_t line, int number) const {
  const int count = solution.layout().lines()[line].outlet_count();
  if (count == 0)
    throw InvalidInput(
        "line", "is " + in_quotes(solution.layout().lines()[line].name) + ", which has no outlets");
  Examination examination;
  examination.within("outlet", number, 1, count);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return static_cast<std::size_t>(number - 1);
}

void Sensitivities::Data::weigh_device(std::size_t line,
                                       std::size_t outlet,
                                       FigureInStates& figure) const {
  const LineSolution& solved = solution.lines()[line];
  const std::size_t at = place(line, outlet);
  if (at == nowhere || !(solved.pressure[outlet] > Pressure{})) return;
  figure.outlet_place = at;
  const std::int32_t mouth = tree.places[at].mouth;
  const State& state = settled.sweeps.states()[at];
  if (mouth != none && state.outlet_head > tree.mouths[index(mouth)].law.held) {
    figure.by_held_head = weight_density;
    return;
  }
  figure.by_device_head = weight_density;
  figure.weights.heads[at] =
      weight_density *
      (mouth == none
           ? 1
           : answer_of(tree.mouths[index(mouth)], state, settled.sweeps.ramp()).passed_on);
}

void Sensitivities::Data::weigh_inlet(std::size_t line, FigureInStates& figure) const {
  const LinePlaces& places = tree.lines[line];
  if (places.first_run == none) return;
  const Run& run = tree.first_run(places);
  double& weight = run.fed_by == none ? figure.weights.source_heads[index(run.source)]
                                      : figure.weights.heads[tree.runs[index(run.fed_by)].end - 1];
  weight = weight_density;
}

void Sensitivities::Data::weigh_end(std::size_t line, FigureInStates& figure) const {
  const LinePlaces& places = tree.lines[line];
  const bool has_water = places.last_run != none &&
                         (!solution.layout().open_end_of(line) || places.beyond_run != none);
  if (has_water) figure.weights.heads[tree.last_run(places).end - 1] = weight_density;
}

void Sensitivities::Data::weigh_outflow(std::size_t line,
                                        std::size_t outlet,
                                        FigureInStates& figure) const {
  const std::size_t at = place(line, outlet);
  if (at == nowhere || tree.places[at].mouth == none) return;
  figure.outlet_place = at;
  figure.by_flow = 1;
  const OutletAnswer answer = answer_of(tree.mouths[index(tree.places[at].mouth)],
                                        settled.sweeps.states()[at],
                                        settled.sweeps.ramp());
  figure.weights.heads[at] = answer.flow_slope * answer.passed_on;
}

void Sensitivities::Data::weigh_supply_flow(std::size_t supply,
                                            double by_flow,
                                            FigureInStates& figure) const {
  const std::size_t its_source = source(supply);
  if (settled.sweeps.source_is_shut(its_source)) return;
  for (std::size_t r = 0; r < tree.runs.size(); ++r)
    if (settled.sweeps.source_of(r) == static_cast<std::int32_t>(its_source))
      figure.weights.flows[tree.runs[r].first] += by_flow;
}

/// Before the filter it reads what that takes more than what comes to the lines; behind a check valve
/// that is shut, what the supply brings without flow.
void Sensitivities::Data::weigh_gauge(std::size_t supply, FigureInStates& figure) const {
  figure.supply = supply;
  if (point(supply).held_shut) {
    figure.by_supply_head = weight_density;
    return;
  }
  figure.weights.source_heads[source(supply)] = weight_density;
  const Layout& layout = solution.layout();
  const Supply& described =
      supply == 0 ? layout.supply_as_it_is() : layout.further_supplies_as_they_are()[supply - 1];
  if (described.gauge->after_filter.value_or(false)) return;
  figure.by_filter_loss = weight_density;
  const double flow = si(point(supply).flow);
  if (flow != 0) weigh_supply_flow(supply, 2 * si(point(supply).filter_loss) / flow, figure);
}

Sensitivities::Sensitivities(Solution solution)
    : data_(std::make_shared<const Data>(std::move(solution))) {}

const Solution& Sensitivities::solution() const {
  return data_->solution;
}

Sensitivity<Pressure> Sensitivities::of(const PressureFigure& figure) const {
  FigureInStates in_states = data_->blank();
  const auto supply_head = [&](std::size_t supply) -> double& {
    return in_states.weights.source_heads[data_->source(supply)];
  };
  if (figure.kind == PressureFigure::Kind::supply) {
    const std::size_t supply = data_->supply(figure.at);
    supply_head(supply) = data_->weight_density;
    return data_->of(data_->point(supply).pressure, in_states);
  }
  if (figure.kind == PressureFigure::Kind::gauge) {
    const std::size_t supply = data_->supply(figure.at);
    const auto& reading = data_->point(supply).gauge_reading;
    if (!reading) throw InvalidInput("gauge", "is not given; this supply has none to read");
    data_->weigh_gauge(supply, in_states);
    return data_->of(*reading, in_states);
  }
  const std::size_t line = data_->line(figure.at);
  const LineSolution& solved = data_->solution.lines()[line];
  if (figure.kind == PressureFigure::Kind::inlet) {
    data_->weigh_inlet(line, in_states);
    return data_->of(solved.inlet_pressure, in_states);
  }
  if (figure.kind == PressureFigure::Kind::end) {
    data_->weigh_end(line, in_states);
    return data_->of(solved.end_pressure, in_states);
  }
  const std::size_t outlet = data_->outlet(line, figure.outlet);
  if (figure.kind == PressureFigure::Kind::device) {
    data_->weigh_device(line, outlet, in_states);
    return data_->of(solved.pressure[outlet], in_states);
  }
  if (const std::size_t at = data_->place(line, outlet); at != nowhere)
    in_states.weights.heads[at] = data_->weight_density;
  return data_->of(solved.line_pressure[outlet], in_states);
}

Sensitivity<Flow> Sensitivities::of(const FlowFigure& figure) const {
  FigureInStates in_states = data_->blank();
  if (figure.kind == FlowFigure::Kind::all) {
    for (std::size_t i = 0; i < data_->tree.of_supplies.size(); ++i)
      data_->weigh_supply_flow(i, 1, in_states);
    return data_->of(data_->solution.inflow(), in_states);
  }
  if (figure.kind == FlowFigure::Kind::supply) {
    const std::size_t supply = data_->supply(figure.at);
    data_->weigh_supply_flow(supply, 1, in_states);
    return data_->of(data_->point(supply).flow, in_states);
  }
  const std::size_t line = data_->line(figure.at);
  const LineSolution& solved = data_->solution.lines()[line];
  if (figure.kind == FlowFigure::Kind::inflow) {
    const LinePlaces& places = data_->tree.lines[line];
    if (solved.inflow != Flow{}) in_states.weights.flows[data_->tree.first_run(places).first] = 1;
    return data_->of(solved.inflow, in_states);
  }
  const std::size_t outlet = data_->outlet(line, figure.outlet);
  data_->weigh_outflow(line, outlet, in_states);
  return data_->of(solved.flow[outlet], in_states);
}

Sensitivity<Pressure> sensitivity(const Solution& solution, const PressureFigure& figure) {
  return Sensitivities(solution).of(figure);
}
Sensitivity<Flow> sensitivity(const Solution& solution, const FlowFigure& figure) {
  return Sensitivities(solution).of(figure);
}

template struct Influence<Pressure>;
template struct Influence<Flow>;
template struct Sensitivity<Pressure>;
template struct Sensitivity<Flow>;

}  // namespace hydro
