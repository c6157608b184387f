// The part of the sweeps that deals with joints (loops.hpp).
#include "hydro/solver/outlet_step.hpp"
#include "hydro/solver/sweeps.hpp"

#include <algorithm>
#include <cmath>

namespace hydro {

double Sweeps::gap_of(std::size_t which) const {
  const Joint& joint = tree_->joints[which];
  return states_[tree_->runs[index(joint.from)].end - 1].head -
         states_[tree_->runs[index(joint.to)].end - 1].head - joint.rise -
         joint_loss_ * joint_flows_[which];
}

void Sweeps::set_joint_loss(double share) {
  joint_loss_ = share * tree_->head_span / least_flow_scale_;
}

void Sweeps::measure_joints(Imbalance& left) const {
  for (std::size_t i = 0; i < tree_->joints.size(); ++i) {
    const double gap = gap_of(i);
    left.sum += gap;
    left.energy = std::max(left.energy, std::abs(gap));
  }
}

double Sweeps::energy_gaps_of_loops() const {
  double sum = 0;
  for (std::size_t i = 0; i < tree_->joints.size(); ++i) sum += std::abs(gap_of(i));
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
std::vector<Root> Sweeps::roots_of_joints(bool of_themselves) const {
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
  return roots;
}

/// @param rise_of_first of the head of the first source, beside that
Balance Sweeps::balance_joints(bool of_themselves, double rise_of_first) const {
  std::vector<Stretch> stretches(two_way_.size());
  for (std::size_t i = 0; i < two_way_.size(); ++i) stretches[i] = stretch_of(i, of_themselves);
  std::vector<Root> roots = roots_of_joints(of_themselves);
  if (!roots.front().is_shut) roots.front().rise += rise_of_first;
  std::vector<Closure> closures;
  for (std::size_t i = 0; i < tree_->joints.size(); ++i)
    closures.push_back({as_stretch_[index(tree_->joints[i].from)],
                        as_stretch_[index(tree_->joints[i].to)],
                        of_themselves ? gap_of(i) : 0});
  return balance(stretches, roots, closures, least_loss_ + joint_loss_);
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

}  // namespace hydro
