#include "hydro/solver/sweeps.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

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

/// The same by a share of the step, by flow where a flow says which head: where whole steps lead
/// astray.
void advance_in_part(
    const Mouth& mouth, double ramp, double share, double head_rise, State& state) {
  const OutletLaw& law = mouth.law;
  state.riser_slope = unknown_slope;
  if (is_dry(state)) {
    const double available = share * (state.head - mouth.height);
    if (available > 0) open_within(mouth, ramp, available, state);
    return;
  }
  const double rise = share * (head_rise + state.outlet_gap);
  const double flow = state.outlet_flow + state.outlet_slope * rise;
  const double bend = law.bent ? std::max(ramp, law.bend()) : no_limit;
  if (state.outlet_head > bend || (state.outlet_head == bend && rise > 0))
    set_by_head(state, law, ramp, std::max(bend, state.outlet_head + rise));
  else if (law.bent && !(flow < law.flow(bend)))
    set_by_head(state, law, ramp, bend);
  else
    set_by_flow(state, law, ramp, flow);
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
    constexpr double hardly_any_flow = 1e-9;
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

double Sweeps::gap_of(const Joint& joint) const {
  return states_[tree_->runs[index(joint.from)].end - 1].head -
         states_[tree_->runs[index(joint.to)].end - 1].head - joint.rise;
}

void Sweeps::measure_joints(Imbalance& left) const {
  for (const Joint& joint : tree_->joints) {
    const double gap = gap_of(joint);
    left.sum += gap;
    left.energy = std::max(left.energy, std::abs(gap));
  }
}

double Sweeps::energy_gaps_of_loops() const {
  double sum = 0;
  for (const Joint& joint : tree_->joints) sum += std::abs(gap_of(joint));
  for (const std::size_t r : two_way_)
    for (std::size_t i = tree_->runs[r].first; i < tree_->runs[r].end; ++i)
      sum += std::abs(states_[i].energy_gap);
  return sum;
}

Stretch Sweeps::stretch_of(std::size_t two_way, bool of_itself) const {
  const std::size_t r = two_way_[two_way];
  const Run& run = tree_->runs[r];
  const std::int32_t source = source_of(r);
  Stretch stretch{.feeder = source == none ? as_stretch_[index(run.fed_by)] : none,
                  .source = source};
  for (std::size_t i = run.end; i-- > run.first;) {
    const State& state = states_[i];
    const Place& place = tree_->places[i];
    const Reach& reach = tree_->reaches[index(place.reach)];
    if (is_held(reach, place)) {
      if (of_itself) stretch.rise += stretch.down * state.energy_gap;
      stretch.down = 0;
      continue;
    }
    const double slope = slope_of_reach(reach, state);
    const double share = 1 - slope * state.answer_slope;
    if (of_itself) stretch.rise += stretch.down * (state.energy_gap - slope * state.answer);
    stretch.loss += slope * share * stretch.up * stretch.down;
    stretch.up *= share;
    stretch.down *= share;
  }
  return stretch;
}

/// @param of_themselves whether with what the trees correct by themselves
/// @param rise_of_first of the head of the first source, beside that
Balance Sweeps::balance_joints(bool of_themselves, double rise_of_first) const {
  std::vector<Stretch> stretches(two_way_.size());
  for (std::size_t i = 0; i < two_way_.size(); ++i) stretches[i] = stretch_of(i, of_themselves);
  std::vector<Root> roots(sources_.size());
  for (std::size_t i = 0; i < sources_.size(); ++i) {
    const SourceState& source = sources_[i];
    Root& root = roots[i];
    root.is_shut = source.shut;
    root.slope = std::max(source.drawn.slope, least_slope_);
    if (source.shut) {
      if (of_themselves) root.drawn = source.drawn.flow + source.drawn.constant;
    } else if (tree_->sources[i].law && !tree_->sources[i].law->is_held()) {
      root.resistance = source.slope / (1 + source.drawn.slope * source.slope);
      if (of_themselves) root.rise = source.energy_gap - source.slope * source.answer;
    }
  }
  if (!roots.front().is_shut) roots.front().rise += rise_of_first;
  std::vector<Link> links;
  for (const Joint& joint : tree_->joints)
    links.push_back({as_stretch_[index(joint.from)],
                     as_stretch_[index(joint.to)],
                     of_themselves ? gap_of(joint) : 0});
  return balance(stretches, roots, links, least_loss_);
}

template <class Add>
void Sweeps::take_along(std::size_t two_way, double taken, const Add& add) const {
  const Run& run = tree_->runs[two_way_[two_way]];
  for (std::size_t i = run.end; i-- > run.first;) {
    const Place& place = tree_->places[i];
    const Reach& reach = tree_->reaches[index(place.reach)];
    if (!is_held(reach, place))
      taken *= 1 - slope_of_reach(reach, states_[i]) * states_[i].answer_slope;
    add(i, taken);
  }
}

void Sweeps::correct_joints(double share) {
  const Balance found = balance_joints(true, 0);
  for (std::size_t i = 0; i < joint_flows_.size(); ++i)
    joint_flows_[i] =
        std::clamp(joint_flows_[i] + share * found.joint_rises[i], -most_flow_, most_flow_);
  for (std::size_t i = 0; i < sources_.size(); ++i) {
    SourceState& source = sources_[i];
    if (source.shut)
      source.rise = found.source_rises[i];
    else
      source.answer += found.asked[i] / (1 + source.drawn.slope * source.slope);
  }
  for (std::size_t i = 0; i < two_way_.size(); ++i)
    take_along(i, found.taken[i], [&](std::size_t place, double taken) {
      states_[place].answer += taken;
    });
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
      if (is_held(reach, place))
        head_rise = state.energy_gap;
      else
        head_rise += state.energy_gap - slope_of_reach(reach, state) * flow_rise;
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
      if (is_held(reach, place))
        head_rise = state.energy_gap;
      else
        head_rise += state.energy_gap - slope_of_reach(reach, state) * flow_rise;
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

std::vector<Sweeps::Gate> Sweeps::wrong_gates(const Imbalance& scales, double doubt) const {
  std::vector<Gate> wrong;
  const double flow_doubt = doubt * scales.flow_scale;
  const double head_doubt = doubt * scales.head_scale;
  if (!tree_->has_gates) return wrong;
  for (std::size_t i = 0; i < sources_.size(); ++i) {
    const Source& source = tree_->sources[i];
    if (!source.law || source.takes_in) continue;
    const bool is_wrong = sources_[i].shut
                              ? sources_[i].head < source.law->head_at_rest() - head_doubt
                              : sources_[i].flow < -flow_doubt;
    if (is_wrong) wrong.push_back({true, i});
  }
  for (const std::size_t r : two_way_) {
    const Run& run = tree_->runs[r];
    if (run.when_shut == none) continue;
    const double held = tree_->reaches[index(tree_->places[run.first].reach)].held;
    const bool is_wrong =
        shut_[r] ? sources_[index(run.when_shut)].head < std::min(held, head_before(r)) - head_doubt
                 : states_[run.first].flow < -flow_doubt;
    if (is_wrong) wrong.push_back({false, r});
  }
  return wrong;
}

std::vector<Sweeps::Gate> Sweeps::regulators_held_back(const Imbalance& scales,
                                                       double doubt) const {
  std::vector<Gate> found;
  if (!tree_->has_gates || !tree_->has_regulators) return found;
  for (const std::size_t r : two_way_) {
    const Place& place = tree_->places[tree_->runs[r].first];
    if (tree_->runs[r].when_shut != none && !shut_[r] &&
        is_held(tree_->reaches[index(place.reach)], place) &&
        states_[tree_->runs[r].first].flow < -doubt * scales.flow_scale)
      found.push_back({false, r});
  }
  return found;
}

std::int32_t Sweeps::root_of(std::size_t run) const {
  for (;;) {
    if (const std::int32_t source = source_of(run); source != none) return source;
    run = index(tree_->runs[run].fed_by);
  }
}

std::vector<Sweeps::Gate> Sweeps::gates_of_cut_off_parts() const {
  std::vector<Gate> found;
  const auto is_supply = [&](std::size_t source) { return tree_->sources[source].law.has_value(); };
  const bool any_shut = tree_->has_gates && std::ranges::any_of(sources_, &SourceState::shut);
  if (!any_shut) return found;
  std::vector<std::size_t> parts(
      sources_.size());  // by source: another of the same part, or itself
  std::iota(parts.begin(), parts.end(), std::size_t{0});
  const auto part_of = [&](std::size_t source) {
    while (parts[source] != source) source = parts[source] = parts[parts[source]];
    return source;
  };
  for (const Joint& joint : tree_->joints)
    parts[part_of(index(root_of(index(joint.from))))] = part_of(index(root_of(index(joint.to))));
  std::vector<bool> has_supply(sources_.size());
  for (std::size_t i = 0; i < sources_.size(); ++i)
    if (is_supply(i) && !sources_[i].shut) has_supply[part_of(i)] = true;

  struct Best {
    double head = -no_limit;
    Gate gate{};
  };
  std::vector<Best> best(sources_.size());
  const auto consider = [&](std::size_t source, double head, const Gate& gate) {
    Best& here = best[part_of(source)];
    if (head > here.head) here = {head, gate};
  };
  for (std::size_t i = 0; i < sources_.size(); ++i)
    if (is_supply(i) && sources_[i].shut)
      consider(i, tree_->sources[i].elevation + tree_->sources[i].law->head_at_rest(), {true, i});
  for (const std::size_t r : two_way_) {
    const Run& run = tree_->runs[r];
    if (!shut_[r]) continue;
    const double held = tree_->reaches[index(tree_->places[run.first].reach)].held;
    consider(index(run.when_shut), run.elevation + std::min(held, head_before(r)), {false, r});
  }
  for (std::size_t i = 0; i < sources_.size(); ++i)
    if (part_of(i) == i && !has_supply[i] && best[i].head > -no_limit)
      found.push_back(best[i].gate);
  return found;
}

void Sweeps::turn(const Gate& gate) {
  if (gate.is_source) {
    sources_[gate.which].shut = !sources_[gate.which].shut;
    sources_[gate.which].flow = 0;
    return;
  }
  const Run& run = tree_->runs[gate.which];
  const State& first = states_[run.first];
  shut_[gate.which] = !shut_[gate.which];
  SourceState& beyond = sources_[index(run.when_shut)];
  beyond = {.shut = shut_[gate.which]};
  beyond.head = first.head + tree_->reaches[index(tree_->places[run.first].reach)].ground_rise;
}

void Sweeps::open_gates() {
  for (std::size_t i = 0; i < sources_.size(); ++i)
    if (tree_->sources[i].law && sources_[i].shut) turn({true, i});
  for (const std::size_t r : two_way_)
    if (shut_[r]) turn({false, r});
}

std::vector<double> Sweeps::device_rises() const {
  std::vector<double> answers(joint_flows_.empty() ? 0 : states_.size());
  std::vector<double> source_rises(sources_.size());
  source_rises.front() = 1;
  if (!joint_flows_.empty()) {
    const Balance found = balance_joints(false, 1);
    for (std::size_t i = 0; i < two_way_.size(); ++i)
      take_along(
          i, found.taken[i], [&](std::size_t place, double taken) { answers[place] += taken; });
    for (std::size_t i = 0; i < sources_.size(); ++i)
      if (sources_[i].shut)
        source_rises[i] = found.source_rises[i];
      else
        source_rises[i] -=
            found.asked[i] * sources_[i].slope / (1 + sources_[i].drawn.slope * sources_[i].slope);
  }
  std::vector<double> rises(states_.size());
  std::vector<double> at_far_end(tree_->runs.size());
  for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
    const Run& run = tree_->runs[r];
    const std::int32_t source = source_of(r);
    double rise = source != none ? source_rises[index(source)] : at_far_end[index(run.fed_by)];
    for (std::size_t i = run.first; i < run.end; ++i) {
      const Place& place = tree_->places[i];
      const Reach& reach = tree_->reaches[index(place.reach)];
      const State& state = states_[i];
      const double slope = slope_of_reach(reach, state);
      if (is_held(reach, place))
        rise = 0;
      else
        rise *= 1 - slope * state.answer_slope;
      if (!answers.empty() && !is_held(reach, place)) rise -= slope * answers[i];
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
