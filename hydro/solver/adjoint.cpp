// The sweeps, transposed (adjoint.hpp).
#include "hydro/solver/adjoint.hpp"

#include "hydro/solver/sweeps.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace hydro {

Sweeps::Slopes Sweeps::slopes(double more) const {
  Slopes found{std::vector<double>(states_.size()),
               std::vector<double>(states_.size()),
               std::vector<double>(sources_.size())};
  std::vector<double> beyond_far_ends(tree_->runs.size());
  for (std::size_t r = tree_->runs.size(); r-- > 0;) {
    const Run& run = tree_->runs[r];
    double answer = beyond_far_ends[r];
    for (std::size_t i = run.end; i-- > run.first;) {
      const Place& place = tree_->places[i];
      const Reach& reach = tree_->reaches[index(place.reach)];
      const State& state = states_[i];
      found.answer[i] = answer + (place.mouth != none ? state.outlet_slope : 0);
      if (is_held(reach, place)) {
        answer = 0;
        continue;
      }
      double wall_slope = more > 0 ? unknown_slope : state.wall_slope;
      found.loss[i] = reach.loss(std::abs(state.flow) + more, wall_slope).slope;
      answer = found.answer[i] / (1 + found.answer[i] * found.loss[i]);
    }
    const std::int32_t source = source_of(r);
    (source != none ? found.answer_at_source[index(source)] : beyond_far_ends[index(run.fed_by)]) +=
        answer;
  }
  return found;
}

Multipliers Sweeps::transposed_on_trees(const Weights& weights, const Slopes& slopes) const {
  Multipliers found{weights.heads, weights.flows, weights.source_heads};
  std::vector<double> at_far_ends(tree_->runs.size());
  for (std::size_t r = tree_->runs.size(); r-- > 0;) {
    const Run& run = tree_->runs[r];
    double rise = at_far_ends[r];
    for (std::size_t i = run.end; i-- > run.first;) {
      found.heads[i] += rise;
      found.drawn[i] -= slopes.loss[i] * found.heads[i];
      const double answer = slopes.answer[i] / (1 + slopes.answer[i] * slopes.loss[i]);
      rise = is_held(i) ? 0 : found.heads[i] + answer * found.drawn[i];
    }
    const std::int32_t source = source_of(r);
    (source != none ? found.source_heads[index(source)] : at_far_ends[index(run.fed_by)]) += rise;
  }

  std::vector<double> drawn_at_sources(sources_.size());
  for (std::size_t i = 0; i < sources_.size(); ++i) {
    const SourceState& source = sources_[i];
    const auto& supply = tree_->sources[i].law;
    if (source.shut || !supply || supply->is_held()) continue;
    const double answer = slopes.answer_at_source[i];
    drawn_at_sources[i] = -source.slope * found.source_heads[i] / (1 + answer * source.slope);
    found.source_heads[i] += answer * drawn_at_sources[i];
  }

  for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
    const Run& run = tree_->runs[r];
    const std::int32_t source = source_of(r);
    double drawn =
        source != none ? drawn_at_sources[index(source)] : at_far_ends[index(run.fed_by)];
    for (std::size_t i = run.first; i < run.end; ++i) {
      drawn = (found.drawn[i] + drawn) / (1 + slopes.answer[i] * slopes.loss[i]);
      found.drawn[i] = drawn;
      found.heads[i] += slopes.answer[i] * drawn;
    }
    at_far_ends[r] = drawn;
  }
  return found;
}

Balance Sweeps::transposed_joints(const Multipliers& on_trees, const Slopes& slopes) const {
  std::vector<Stretch> stretches;
  for (const std::size_t r : two_way_) {
    const Run& run = tree_->runs[r];
    const std::int32_t source = source_of(r);
    Stretch& stretch = stretches.emplace_back(
        Stretch{source == none ? as_stretch_[index(run.fed_by)] : none, source});
    double felt = 1;  // at the far end, of a rise of head; transposed, of what is drawn
    double asked = 1;
    for (std::size_t i = run.end; i-- > run.first;) {
      const double share = 1 / (1 + slopes.answer[i] * slopes.loss[i]);
      stretch.loss += slopes.loss[i] * share * felt * asked;
      asked *= share;
      felt *= is_held(i) ? 0 : share;
    }
    stretch.up = felt;
    stretch.down = asked;
  }
  std::vector<Root> roots = roots_of_joints(false);
  for (std::size_t i = 0; i < roots.size(); ++i)
    if (roots[i].is_shut) roots[i].drawn = on_trees.source_heads[i];
  std::vector<Closure> closures;
  for (const Joint& joint : tree_->joints)
    closures.push_back({as_stretch_[index(joint.from)],
                        as_stretch_[index(joint.to)],
                        on_trees.drawn[far_end(joint.from)] - on_trees.drawn[far_end(joint.to)]});
  return balance(stretches, roots, closures, least_loss_);
}

Multipliers Sweeps::transposed(Weights weights) const {
  const Slopes slopes_now = slopes(0);
  Multipliers found = transposed_on_trees(weights, slopes_now);
  if (!joint_flows_.empty()) {
    constexpr double hardly_any_flow = 1e-9;  // of the largest one
    constexpr double much = 0.01;             // of the largest multiplier
    double largest = least_flow_scale_;
    for (const State& state : states_) largest = std::max(largest, std::abs(state.flow));
    const Slopes slopes_then = slopes(hardly_any_flow * largest);
    const Balance now = transposed_joints(found, slopes_now);
    const Balance then = transposed_joints(transposed_on_trees(weights, slopes_then), slopes_then);
    double most = 0, change = 0;
    for (std::size_t i = 0; i < now.joint_rises.size(); ++i) {
      most = std::max({most, std::abs(now.joint_rises[i]), std::abs(then.joint_rises[i])});
      change += std::abs(now.joint_rises[i] - then.joint_rises[i]);
    }
    for (const double rise : now.source_rises) change += 0 * rise;  // not a number stays so
    for (std::size_t i = 0; i < now.joint_rises.size(); ++i) {
      weights.heads[far_end(tree_->joints[i].from)] += now.joint_rises[i];
      weights.heads[far_end(tree_->joints[i].to)] -= now.joint_rises[i];
    }
    for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
      const std::int32_t source = source_of(r);
      if (source != none && sources_[index(source)].shut)
        weights.flows[tree_->runs[r].first] += now.source_rises[index(source)];
    }
    found = transposed_on_trees(weights, slopes_now);
    found.has_slope = change <= much * most;
  }
  for (std::size_t i = 0; i < sources_.size(); ++i)
    if (sources_[i].shut || !tree_->sources[i].law) found.source_heads[i] = 0;
  return found;
}

}  // namespace hydro
