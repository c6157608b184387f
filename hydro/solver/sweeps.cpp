#include "hydro/solver/sweeps.hpp"

#include "hydro/solver/outlet_step.hpp"

#include <algorithm>
#include <cmath>

namespace hydro {
namespace {

constexpr double start_share = 0.85;  // of the head at rest: close where 20 % is lost

}  // namespace

Sweeps::Sweeps(const Tree& tree, double ramp)
    : tree_(&tree),
      ramp_(ramp),
      states_(tree.places.size()),
      far_ends_(tree.runs.size()),
      holds_(tree.has_regulators ? tree.reaches.size() : 0),
      sources_(tree.sources.size()),
      joint_flows_(tree.joints.size()) {
  for (std::size_t i = 0; i < sources_.size(); ++i) sources_[i].shut = !tree.sources[i].law;
  for (const Run& run : tree.runs)
    if (run.when_shut != none) sources_[index(run.when_shut)].shut = false;
  if (!tree.joints.empty()) {
    shut_.resize(tree.runs.size());
    as_stretch_.assign(tree.runs.size(), none);
    double capacity = 0;
    for (std::size_t r = 0; r < tree.runs.size(); ++r) {
      const Run& run = tree.runs[r];
      if (!run.two_way) continue;
      as_stretch_[r] = static_cast<std::int32_t>(two_way_.size());
      two_way_.push_back(r);
      for (std::size_t i = run.first; i < run.end; ++i)
        if (const double it = tree.reaches[index(tree.places[i].reach)].capacity; it < no_limit)
          capacity = std::max(capacity, it);
    }
    constexpr double least = 1e-12;
    const double usual_loss = capacity > 0 ? tree.head_span / capacity : 1;
    constexpr double far_too_much = 1e3;
    most_flow_ = capacity > 0 ? far_too_much * capacity : no_limit;
    least_loss_ = least * usual_loss;
    least_slope_ = least / usual_loss;
    constexpr double hardly_any_flow = 1e-7;
    least_flow_scale_ = hardly_any_flow * capacity;
  }
  start();
}

void Sweeps::restart(double ramp) {
  ramp_ = ramp;
  std::fill(states_.begin(), states_.end(), State{});
  std::fill(far_ends_.begin(), far_ends_.end(), FarEnd{});
  std::fill(joint_flows_.begin(), joint_flows_.end(), 0.0);
  for (SourceState& source : sources_) source = {.shut = source.shut};
  start();
}

void Sweeps::start() {
  const Tree& tree = *tree_;
  for (std::size_t i = 0; i < sources_.size(); ++i)
    if (tree.sources[i].law) sources_[i].head = tree.sources[i].law->head_at_rest();
  for (std::size_t r = 0; r < tree.runs.size(); ++r) {
    const Run& run = tree.runs[r];
    double elevation = run.elevation;
    if (const std::int32_t source = source_of(r); source != none && sources_[index(source)].shut)
      sources_[index(source)].head = run.head_at_rest - elevation;
    for (std::size_t i = run.first; i < run.end; ++i) {
      const Place& place = tree.places[i];
      const Reach& reach = tree.reaches[index(place.reach)];
      elevation += reach.ground_rise;
      states_[i].head = run.head_at_rest - elevation;
      if (place.mouth == none) continue;
      const Mouth& mouth = tree.mouths[index(place.mouth)];
      set_by_head(states_[i], mouth.law, ramp_, start_share * (states_[i].head - mouth.height));
      limit(mouth, ramp_, run.two_way ? no_limit : reach.capacity, states_[i]);
    }
  }
  for (std::size_t r = tree.runs.size(); r-- > 0;) {
    const Run& run = tree.runs[r];
    double flow = far_ends_[r].beyond.flow;
    for (std::size_t i = run.end; i-- > run.first;) {
      const double capacity = tree.reaches[index(tree.places[i].reach)].capacity;
      states_[i].flow = flow = std::min(flow + states_[i].outlet_flow, capacity);
    }
    const std::int32_t source = source_of(r);
    (source != none ? sources_[index(source)].flow : far_ends_[index(run.fed_by)].beyond.flow) +=
        flow;
  }
  for (SourceState& source : sources_)
    if (source.shut) source.flow = 0;
}

std::int32_t Sweeps::source_of(std::size_t r) const {
  const Run& run = tree_->runs[r];
  return is_shut(r) ? run.when_shut : run.fed_by == none ? run.source : none;
}

double Sweeps::head_before(std::size_t r) const {
  const Run& run = tree_->runs[r];
  return run.fed_by == none ? sources_[index(run.source)].head
                            : states_[tree_->runs[index(run.fed_by)].end - 1].head;
}

Imbalance Sweeps::gather() {
  Imbalance left{.flow_scale = least_flow_scale_, .head_scale = tree_->head_span};
  std::fill(far_ends_.begin(), far_ends_.end(), FarEnd{});
  for (SourceState& source : sources_) source.drawn = {};
  for (std::size_t i = 0; i < joint_flows_.size(); ++i) {
    far_ends_[index(tree_->joints[i].from)].beyond.flow += joint_flows_[i];
    far_ends_[index(tree_->joints[i].to)].beyond.flow -= joint_flows_[i];
  }
  for (std::size_t r = tree_->runs.size(); r-- > 0;) {
    const Run& run = tree_->runs[r];
    const std::int32_t source = source_of(r);
    const bool shut = is_shut(r);
    const double head_at_inlet = source != none
                                     ? sources_[index(source)].head
                                     : states_[tree_->runs[index(run.fed_by)].end - 1].head;
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
      if (reach.held < no_limit && holds(place, state, shut)) {
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
    Answer& feeder =
        source != none ? sources_[index(source)].drawn : far_ends_[index(run.fed_by)].beyond;
    feeder = {
        feeder.flow + beyond.flow, feeder.constant + beyond.constant, feeder.slope + beyond.slope};
  }
  for (std::size_t i = 0; i < sources_.size(); ++i) answer_of_source(i, left);
  measure_joints(left);
  return left;
}

/// A regulator holds when more pressure would come through than it is set to.
bool Sweeps::holds(const Place& place, const State& state, bool shut) {
  const double held = tree_->reaches[index(place.reach)].held;
  const bool it_does = !shut && state.head + state.energy_gap > held;
  holds_[index(place.reach)] = it_does;
  return it_does;
}

void Sweeps::answer_of_source(std::size_t which, Imbalance& left) {
  SourceState& source = sources_[which];
  const Answer& drawn = source.drawn;
  if (source.shut) {
    left.sum += drawn.flow;
    left.mass = std::max(left.mass, std::abs(drawn.flow));
    return;
  }
  const auto& supply = tree_->sources[which].law;
  if (!supply) return;
  if (supply->is_held()) {
    source.flow = drawn.flow;
    return;
  }
  const HeadAtFlow law = supply->at(source.flow);
  const double mass_gap = source.flow - drawn.flow;
  source.energy_gap = law.head - source.head;
  source.slope = -law.slope;
  source.answer = (drawn.constant - mass_gap + drawn.slope * source.energy_gap) /
                  (1 + drawn.slope * source.slope);
  left.sum += mass_gap + source.energy_gap;
  left.mass = std::max(left.mass, std::abs(mass_gap));
  left.energy = std::max(left.energy, std::abs(source.energy_gap));
  left.flow_scale = std::max(left.flow_scale, std::abs(source.flow));
}

/// Of one that is shut, the joints have said how much its head rises.
void Sweeps::correct_source(std::size_t which, double share) {
  SourceState& source = sources_[which];
  const auto& supply = tree_->sources[which].law;
  if (!source.shut) {
    source.rise = 0;
    if (!supply || supply->is_held()) return;
    source.rise = source.energy_gap - source.slope * source.answer;
    source.flow += share * source.answer;
    source.flow = joint_flows_.empty() ? std::max(0.0, source.flow)
                                       : std::clamp(source.flow, -most_flow_, most_flow_);
  }
  source.head += share * source.rise;
}

/// Of the head, by the tangent; but no further than what a regulator there is set to, even if it does
/// not hold yet: the tangent knows nothing of it, and would flood what lies beyond.
double Sweeps::rise_at(
    const Place& place, const State& state, double rise_before, double flow_rise, bool shut) const {
  const Reach& reach = tree_->reaches[index(place.reach)];
  if (is_held(reach, place)) return state.energy_gap;
  const double rise = rise_before + state.energy_gap - slope_of_reach(reach, state) * flow_rise;
  if (shut || !(reach.held < no_limit)) return rise;
  return std::min(rise, std::max(0.0, reach.held - state.head));
}

void Sweeps::correct() {
  if (!joint_flows_.empty()) correct_joints(1);
  for (std::size_t i = 0; i < sources_.size(); ++i) correct_source(i, 1);
  for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
    const Run& run = tree_->runs[r];
    const std::int32_t source = source_of(r);
    double head_rise =
        source != none ? sources_[index(source)].rise : far_ends_[index(run.fed_by)].rise;
    double at_rest = run.head_at_rest - run.elevation;
    for (std::size_t i = run.first; i < run.end; ++i) {
      const Place& place = tree_->places[i];
      const Reach& reach = tree_->reaches[index(place.reach)];
      State& state = states_[i];
      const double flow_rise = state.answer + state.answer_slope * head_rise;
      head_rise = rise_at(place, state, head_rise, flow_rise, is_shut(r));
      state.wall_slope = reach.friction.carry(state.wall_slope, flow_rise / state.flow);
      state.flow =
          std::clamp(state.flow + flow_rise, run.two_way ? -reach.capacity : 0.0, reach.capacity);
      state.head += head_rise;
      at_rest -= reach.ground_rise;
      if (place.mouth == none) continue;
      const Mouth& mouth = tree_->mouths[index(place.mouth)];
      advance(mouth, ramp_, tree_->head_span, head_rise, at_rest, state);
      limit(mouth, ramp_, run.two_way ? no_limit : reach.capacity, state);
    }
    far_ends_[r].rise = head_rise;
  }
}

void Sweeps::correct_in_part(double share) {
  if (!joint_flows_.empty()) correct_joints(share);
  for (std::size_t i = 0; i < sources_.size(); ++i) correct_source(i, share);
  for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
    const Run& run = tree_->runs[r];
    const std::int32_t source = source_of(r);
    double head_rise =
        source != none ? sources_[index(source)].rise : far_ends_[index(run.fed_by)].rise;
    for (std::size_t i = run.first; i < run.end; ++i) {
      const Place& place = tree_->places[i];
      const Reach& reach = tree_->reaches[index(place.reach)];
      State& state = states_[i];
      const double flow_rise = state.answer + state.answer_slope * head_rise;
      head_rise = rise_at(place, state, head_rise, flow_rise, is_shut(r));
      state.wall_slope = unknown_slope;
      state.flow = std::clamp(
          state.flow + share * flow_rise, run.two_way ? -reach.capacity : 0.0, reach.capacity);
      state.head += share * head_rise;
      if (place.mouth == none) continue;
      advance_in_part(tree_->mouths[index(place.mouth)], ramp_, share, head_rise, state);
    }
    far_ends_[r].rise = head_rise;
  }
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
