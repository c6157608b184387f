#include "hydro/solver/sweeps.hpp"

#include <algorithm>
#include <cmath>

namespace hydro {
namespace {

constexpr double start_share = 0.85;   // of the head at rest: close where 20 % is lost
constexpr double near_the_end = 1e-6;  // of the head span: steps this small are taken by flow
constexpr double hardly_any = 1e-13;   // of the head span: more wakes a dry outlet

std::size_t index(std::int32_t reference) {
  return static_cast<std::size_t>(reference);
}

bool is_dry(const State& state) {
  return state.outlet_flow <= 0;
}

void run_dry(State& state) {
  state.outlet_flow = 0;
  state.outlet_head = 0;
}

[[gnu::always_inline]] inline void set_by_head(State& state,
                                               const OutletLaw& law,
                                               double ramp,
                                               double head) {
  if (!(head > 0)) return run_dry(state);
  state.outlet_head = head;
  state.outlet_flow = head >= ramp ? law.flow(head) : law.flow(ramp) * (head / ramp);
}

[[gnu::always_inline]] inline void set_by_flow(State& state,
                                               const OutletLaw& law,
                                               double ramp,
                                               double flow) {
  if (!(flow > 0)) return run_dry(state);
  const double head = law.head(flow);
  state.outlet_flow = flow;
  state.outlet_head = head >= ramp ? head : ramp * (flow / law.flow(ramp));
}

/// Opens an outlet at a pressure that leaves its riser something of the available head.
[[gnu::cold]] void open_within(const Mouth& mouth, double ramp, double available, State& state) {
  set_by_head(state, mouth.law, ramp, available);
  state.riser_slope = unknown_slope;
  while (mouth.has_riser && state.outlet_flow > 0) {
    double slope = unknown_slope;
    if (state.outlet_head + mouth.riser.loss(state.outlet_flow, slope).head <= available) return;
    set_by_flow(state, mouth.law, ramp, 0.7 * state.outlet_flow);
  }
}

/// The exponent of the curve where the outlet is on it: 1 on the ramp.
double exponent_at(const OutletLaw& law, double ramp, const State& state) {
  return state.outlet_head > ramp ? law.exponent_at(state.outlet_head) : 1;
}

/// Leaves the outlet's gap o and slope g. The curve P = (q / c)^(1/x) has the slope P / (x q),
/// without a power.
void linearise(const Mouth& mouth, double ramp, State& state) {
  const double available = state.head - mouth.height;
  if (is_dry(state)) {
    state.outlet_gap = std::max(0.0, available);
    state.outlet_slope = 0;
    return;
  }
  const double stretch = exponent_at(mouth.law, ramp, state) * state.outlet_flow;
  Loss riser{0, 0};
  if (mouth.has_riser) riser = mouth.riser.loss(state.outlet_flow, state.riser_slope);
  state.outlet_gap = available - state.outlet_head - riser.head;
  state.outlet_slope = stretch / (state.outlet_head + stretch * riser.slope);
}

/// The same for an outlet whose curve has a bend where it turns nearly flat. The slope on one side
/// says nothing of the other, so no step goes over the bend: it ends there, where the slope is that
/// before it. On the flat stretch the head says all and the flow nothing.
[[gnu::noinline]] void advance_bent(const Mouth& mouth,
                                    double ramp,
                                    double head_span,
                                    double head_rise,
                                    double at_rest,
                                    State& state) {
  const OutletLaw& law = mouth.law;
  const double flow_rise = state.outlet_slope * (head_rise + state.outlet_gap);
  double pressure_rise = head_rise + state.outlet_gap;
  if (mouth.has_riser)
    pressure_rise -= flow_rise * (mouth.riser.length * state.riser_slope +
                                  2 * mouth.riser.fitting * state.outlet_flow);
  state.riser_slope = unknown_slope;
  const double bend = std::max(ramp, law.bend());
  const double most = at_rest - mouth.height;
  const double head = state.outlet_head + pressure_rise;
  if (state.outlet_head > bend)
    set_by_head(state, law, ramp, std::min(std::max(head, bend), most));
  else if (state.outlet_head == bend && pressure_rise > 0)
    set_by_head(state, law, ramp, std::min(head, most));
  else if (pressure_rise > near_the_end * head_span ||
           law.flow(bend) < state.outlet_flow + flow_rise)
    set_by_head(state, law, ramp, std::min({head, bend, most}));
  else
    set_by_flow(state, law, ramp, state.outlet_flow + flow_rise);
}

/// Moves the outlet along its curve: by head where its pressure rises, by flow where it falls. The
/// tangent overshoots in the other variable each time; near the end the flow is the one that is
/// known well. No outlet of a tree ever has more than its head at rest.
void advance(const Mouth& mouth,
             double ramp,
             double head_span,
             double head_rise,
             double at_rest,
             State& state) {
  if (is_dry(state)) {
    const double available = state.head - mouth.height;
    if (available > hardly_any * head_span)
      open_within(mouth, ramp, std::min(available, at_rest - mouth.height), state);
    return;
  }
  if (mouth.law.bent) return advance_bent(mouth, ramp, head_span, head_rise, at_rest, state);
  const double flow_before = state.outlet_flow;
  const double flow_rise = state.outlet_slope * (head_rise + state.outlet_gap);
  double share = flow_rise / flow_before;
  const double inverse_exponent = state.outlet_head >= ramp ? mouth.law.inverse_exponent : 1;
  const double pressure_rise = state.outlet_head * share * inverse_exponent;
  if (pressure_rise > near_the_end * head_span) {
    set_by_head(state,
                mouth.law,
                ramp,
                std::min(state.outlet_head + pressure_rise, at_rest - mouth.height));
    share = state.outlet_flow / flow_before - 1;
  } else {
    set_by_flow(state, mouth.law, ramp, flow_before + flow_rise);
  }
  if (mouth.has_riser) state.riser_slope = mouth.riser.friction.carry(state.riser_slope, share);
}

/// No outlet draws more than the pipe before it and its own riser can carry.
void limit(const Mouth& mouth, double ramp, double capacity, State& state) {
  const double most = std::min(capacity, mouth.riser.capacity);
  if (!(state.outlet_flow > most)) return;
  set_by_flow(state, mouth.law, ramp, most);
  state.riser_slope = unknown_slope;
}

}  // namespace

Sweeps::Sweeps(const Tree& tree, double ramp)
    : tree_(&tree),
      ramp_(ramp),
      states_(tree.places.size()),
      far_ends_(tree.runs.size()),
      holds_(tree.has_regulators ? tree.reaches.size() : 0),
      source_{.head = tree.supply.head_at_rest()} {
  for (const Run& run : tree.runs) {
    double elevation = run.elevation;
    for (std::size_t i = run.first; i < run.end; ++i) {
      const Place& place = tree.places[i];
      const Reach& reach = tree.reaches[index(place.reach)];
      elevation += reach.ground_rise;
      states_[i].head = tree.head_at_rest(run) - elevation;
      if (place.mouth == none) continue;
      const Mouth& mouth = tree.mouths[index(place.mouth)];
      set_by_head(states_[i], mouth.law, ramp_, start_share * (states_[i].head - mouth.height));
      limit(mouth, ramp_, reach.capacity, states_[i]);
    }
  }
  for (std::size_t r = tree.runs.size(); r-- > 0;) {
    const Run& run = tree.runs[r];
    double flow = far_ends_[r].beyond.flow;
    for (std::size_t i = run.end; i-- > run.first;) {
      const double capacity = tree.reaches[index(tree.places[i].reach)].capacity;
      states_[i].flow = flow = std::min(flow + states_[i].outlet_flow, capacity);
    }
    (run.fed_by == none ? source_.flow : far_ends_[index(run.fed_by)].beyond.flow) += flow;
  }
}

Imbalance Sweeps::gather() {
  Imbalance left{.head_scale = tree_->head_span};
  Answer drawn;
  std::fill(far_ends_.begin(), far_ends_.end(), FarEnd{});
  for (std::size_t r = tree_->runs.size(); r-- > 0;) {
    const Run& run = tree_->runs[r];
    const double head_at_inlet =
        run.fed_by == none ? source_.head : states_[tree_->runs[index(run.fed_by)].end - 1].head;
    Answer beyond = far_ends_[r].beyond;
    for (std::size_t i = run.end; i-- > run.first;) {
      const Place& place = tree_->places[i];
      State& state = states_[i];
      if (place.mouth != none) {
        linearise(tree_->mouths[index(place.mouth)], ramp_, state);
        left.outlet = std::max(left.outlet, std::abs(state.outlet_gap));
        beyond.flow += state.outlet_flow;
        beyond.constant += state.outlet_slope * state.outlet_gap;
        beyond.slope += state.outlet_slope;
      }
      const double mass_gap = state.flow - beyond.flow;
      const double head_before = i > run.first ? states_[i - 1].head : head_at_inlet;
      const Reach& reach = tree_->reaches[index(place.reach)];
      const Loss loss = reach.loss(state.flow, state.wall_slope);
      state.energy_gap = head_before - state.head - reach.ground_rise - loss.head;
      if (reach.held < no_limit && holds(place, state)) {
        state.energy_gap = reach.held - state.head;
        state.answer = beyond.constant - mass_gap + beyond.slope * state.energy_gap;
        state.answer_slope = 0;
      } else {
        const double share = 1 / (1 + beyond.slope * loss.slope);
        state.answer = (beyond.constant - mass_gap + beyond.slope * state.energy_gap) * share;
        state.answer_slope = beyond.slope * share;
      }
      beyond = {state.flow, state.answer, state.answer_slope};

      left.sum += mass_gap + state.energy_gap + state.outlet_gap;
      left.mass = std::max(left.mass, std::abs(mass_gap));
      left.energy = std::max(left.energy, std::abs(state.energy_gap));
      left.flow_scale = std::max(left.flow_scale, std::abs(state.flow));
    }
    Answer& feeder = run.fed_by == none ? drawn : far_ends_[index(run.fed_by)].beyond;
    feeder = {
        feeder.flow + beyond.flow, feeder.constant + beyond.constant, feeder.slope + beyond.slope};
  }
  answer_of_source(drawn, left);
  return left;
}

/// A regulator holds when more pressure would come through than it is set to.
bool Sweeps::holds(const Place& place, const State& state) {
  const double held = tree_->reaches[index(place.reach)].held;
  const bool it_does = state.head + state.energy_gap > held;
  holds_[index(place.reach)] = it_does;
  return it_does;
}

void Sweeps::answer_of_source(const Answer& drawn, Imbalance& left) {
  if (tree_->supply.is_held()) {
    source_.flow = drawn.flow;
    return;
  }
  const HeadAtFlow law = tree_->supply.at(source_.flow);
  const double mass_gap = source_.flow - drawn.flow;
  source_.energy_gap = law.head - source_.head;
  source_.slope = -law.slope;
  source_.answer = (drawn.constant - mass_gap + drawn.slope * source_.energy_gap) /
                   (1 + drawn.slope * source_.slope);
  left.sum += mass_gap + source_.energy_gap;
  left.mass = std::max(left.mass, std::abs(mass_gap));
  left.energy = std::max(left.energy, std::abs(source_.energy_gap));
  left.flow_scale = std::max(left.flow_scale, source_.flow);
}

/// Returns the rise of head at the start of the lines.
double Sweeps::correct_source() {
  if (tree_->supply.is_held()) return 0;
  const double rise = source_.energy_gap - source_.slope * source_.answer;
  source_.flow = std::max(0.0, source_.flow + source_.answer);
  source_.head += rise;
  return rise;
}

void Sweeps::correct() {
  const double source_rise = correct_source();
  for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
    const Run& run = tree_->runs[r];
    double head_rise = run.fed_by == none ? source_rise : far_ends_[index(run.fed_by)].rise;
    double at_rest = tree_->head_at_rest(run) - run.elevation;
    for (std::size_t i = run.first; i < run.end; ++i) {
      const Place& place = tree_->places[i];
      const Reach& reach = tree_->reaches[index(place.reach)];
      State& state = states_[i];
      const double flow_rise = state.answer + state.answer_slope * head_rise;
      const double reach_slope =
          reach.length * state.wall_slope + 2 * reach.fitting * std::abs(state.flow);
      if (reach.held < no_limit && holds_[index(place.reach)])
        head_rise = state.energy_gap;
      else
        head_rise += state.energy_gap - reach_slope * flow_rise;
      state.wall_slope = reach.friction.carry(state.wall_slope, flow_rise / state.flow);
      state.flow = std::clamp(state.flow + flow_rise, 0.0, reach.capacity);
      state.head += head_rise;
      at_rest -= reach.ground_rise;
      if (place.mouth == none) continue;
      const Mouth& mouth = tree_->mouths[index(place.mouth)];
      advance(mouth, ramp_, tree_->head_span, head_rise, at_rest, state);
      limit(mouth, ramp_, reach.capacity, state);
    }
    far_ends_[r].rise = head_rise;
  }
}

std::vector<double> Sweeps::device_rises() const {
  std::vector<double> rises(states_.size());
  std::vector<double> at_far_end(tree_->runs.size());
  for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
    const Run& run = tree_->runs[r];
    double rise = run.fed_by == none ? 1 : at_far_end[index(run.fed_by)];
    for (std::size_t i = run.first; i < run.end; ++i) {
      const Place& place = tree_->places[i];
      const Reach& reach = tree_->reaches[index(place.reach)];
      const State& state = states_[i];
      const double reach_slope =
          reach.length * state.wall_slope + 2 * reach.fitting * std::abs(state.flow);
      if (reach.held < no_limit && holds_[index(place.reach)])
        rise = 0;
      else
        rise *= 1 - reach_slope * state.answer_slope;
      rises[i] = rise;
      if (place.mouth == none || is_dry(state)) continue;
      const Mouth& mouth = tree_->mouths[index(place.mouth)];
      const double stretch = exponent_at(mouth.law, ramp_, state) * state.outlet_flow;
      if (stretch > 0) rises[i] = rise * state.outlet_slope * state.outlet_head / stretch;
      if (state.outlet_head > mouth.law.held) rises[i] = 0;
    }
    at_far_end[r] = rise;
  }
  return rises;
}

void Sweeps::set_ramp(double ramp) {
  // Above both ramps the curve is the same; and on a flat stretch a flow does not say which head.
  const double unchanged_from = std::max(ramp, ramp_);
  ramp_ = ramp;
  for (std::size_t i = 0; i < states_.size(); ++i) {
    const std::int32_t mouth = tree_->places[i].mouth;
    if (mouth != none && states_[i].outlet_head < unchanged_from)
      set_by_flow(states_[i], tree_->mouths[index(mouth)].law, ramp_, states_[i].outlet_flow);
  }
}

}  // namespace hydro
