// The part of the sweeps that deals with what lets water through one way only.
#include "hydro/solver/sweeps.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace hydro {

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
    const std::int32_t before = run.fed_by == none ? run.source : root_of(index(run.fed_by));
    // One with both sides in the part would bring it nothing.
    if (part_of(index(before)) == part_of(index(run.when_shut))) continue;
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

}  // namespace hydro
