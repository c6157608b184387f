// The sweeps, transposed (adjoint.hpp).
#include "hydro/solver/adjoint.hpp"

#include "hydro/solver/sweeps.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace hydro {

Multipliers Sweeps::transposed_on_trees(const Weights& weights) const {
  Multipliers found{weights.heads, weights.flows, weights.source_heads};
  std::vector<double> at_far_ends(tree_->runs.size());
  const auto slope_beyond = [&](std::size_t r, std::size_t i) {
    const double own = tree_->places[i].mouth != none ? states_[i].outlet_slope : 0;
    return own +
           (i + 1 < tree_->runs[r].end ? states_[i + 1].answer_slope : far_ends_[r].beyond.slope);
  };

  for (std::size_t r = tree_->runs.size(); r-- > 0;) {
    const Run& run = tree_->runs[r];
    double rise = at_far_ends[r];
    for (std::size_t i = run.end; i-- > run.first;) {
      const Place& place = tree_->places[i];
      const Reach& reach = tree_->reaches[index(place.reach)];
      found.heads[i] += rise;
      rise = 0;
      if (is_held(reach, place)) continue;
      found.drawn[i] -= slope_of_reach(reach, states_[i]) * found.heads[i];
      rise = found.heads[i] + states_[i].answer_slope * found.drawn[i];
    }
    const std::int32_t source = source_of(r);
    (source != none ? found.source_heads[index(source)] : at_far_ends[index(run.fed_by)]) += rise;
  }

  std::vector<double> drawn_at_sources(sources_.size());
  for (std::size_t i = 0; i < sources_.size(); ++i) {
    const SourceState& source = sources_[i];
    const auto& supply = tree_->sources[i].law;
    if (source.shut || !supply || supply->is_held()) continue;
    const double drawn =
        -source.slope * found.source_heads[i] / (1 + source.drawn.slope * source.slope);
    drawn_at_sources[i] = drawn;
    found.source_heads[i] += source.drawn.slope * drawn;
  }

  for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
    const Run& run = tree_->runs[r];
    const std::int32_t source = source_of(r);
    double drawn =
        source != none ? drawn_at_sources[index(source)] : at_far_ends[index(run.fed_by)];
    for (std::size_t i = run.first; i < run.end; ++i) {
      const Place& place = tree_->places[i];
      const Reach& reach = tree_->reaches[index(place.reach)];
      const double slope = slope_beyond(r, i);
      const double share =
          is_held(reach, place) ? 1 : 1 / (1 + slope * slope_of_reach(reach, states_[i]));
      found.drawn[i] = (found.drawn[i] + drawn) * share;
      found.heads[i] += slope * found.drawn[i];
      drawn = found.drawn[i];
    }
    at_far_ends[r] = drawn;
  }
  return found;
}

/// With up and down exchanged. @param more flow that every loss is taken at [m3/s]
Stretch Sweeps::stretch_transposed(std::size_t two_way, double more) const {
  Stretch stretch = stretch_of(two_way, false);
  std::swap(stretch.up, stretch.down);
  if (!(more > 0)) return stretch;
  const Run& run = tree_->runs[two_way_[two_way]];
  double both_ways = 1;
  for (std::size_t i = run.end; i-- > run.first;) {
    const Reach& reach = tree_->reaches[index(tree_->places[i].reach)];
    if (is_held(reach, tree_->places[i])) break;
    const double slope = slope_of_reach(reach, states_[i]);
    const double share = 1 - slope * states_[i].answer_slope;
    double wall_slope = unknown_slope;
    const double slope_then = reach.loss(std::abs(states_[i].flow) + more, wall_slope).slope;
    stretch.loss += (slope_then - slope) * share * both_ways;
    both_ways *= share * share;
  }
  return stretch;
}

Multipliers Sweeps::transposed(Weights weights) const {
  constexpr double hardly_any_flow = 1e-9;  // of the largest one
  constexpr double much = 0.01;             // of the largest multiplier
  Multipliers found = transposed_on_trees(weights);
  if (!joint_flows_.empty()) {
    double largest = least_flow_scale_;
    for (const State& state : states_) largest = std::max(largest, std::abs(state.flow));
    std::vector<Root> roots = roots_of_joints(false);
    for (std::size_t i = 0; i < roots.size(); ++i)
      if (roots[i].is_shut) roots[i].drawn = found.source_heads[i];
    const auto far_end = [&](std::int32_t run) { return tree_->runs[index(run)].end - 1; };
    std::vector<Closure> closures;
    for (const Joint& joint : tree_->joints)
      closures.push_back({as_stretch_[index(joint.from)],
                          as_stretch_[index(joint.to)],
                          found.drawn[far_end(joint.from)] - found.drawn[far_end(joint.to)]});
    const auto balanced = [&](double more) {
      std::vector<Stretch> stretches(two_way_.size());
      for (std::size_t i = 0; i < two_way_.size(); ++i) stretches[i] = stretch_transposed(i, more);
      return balance(stretches, roots, closures, 0);
    };
    const Balance multipliers = balanced(0);
    const Balance then = balanced(hardly_any_flow * largest);
    double most = 0, change = 0;
    for (std::size_t i = 0; i < closures.size(); ++i) {
      most = std::max(most, std::abs(multipliers.joint_rises[i]));
      change += std::abs(multipliers.joint_rises[i] - then.joint_rises[i]);
    }
    const bool has_slope = change <= much * most;
    for (std::size_t i = 0; i < closures.size(); ++i) {
      weights.heads[far_end(tree_->joints[i].from)] += multipliers.joint_rises[i];
      weights.heads[far_end(tree_->joints[i].to)] -= multipliers.joint_rises[i];
    }
    for (std::size_t r = 0; r < tree_->runs.size(); ++r) {
      const std::int32_t source = source_of(r);
      if (source != none && sources_[index(source)].shut)
        weights.flows[tree_->runs[r].first] += multipliers.source_rises[index(source)];
    }
    found = transposed_on_trees(weights);
    found.has_slope = has_slope;
  }
  for (std::size_t i = 0; i < sources_.size(); ++i)
    if (sources_[i].shut || !tree_->sources[i].law) found.source_heads[i] = 0;
  return found;
}

}  // namespace hydro
