#include "hydro/solver/settle.hpp"

#include "hydro/physics/root_between.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace hydro {
namespace {

constexpr double tolerance = Residuals::tolerance;
constexpr double last_ramp = 1e-13;  // of the head span: moves no outlet beyond the tolerance

double share_of(double part, double whole) {
  return part == 0 ? 0 : part / whole;
}

bool all_finite(const std::vector<State>& states) {
  return std::all_of(states.begin(), states.end(), [](const State& state) {
    return std::isfinite(state.flow) && std::isfinite(state.head) &&
           std::isfinite(state.outlet_flow) && std::isfinite(state.outlet_head);
  });
}

/// How long to step, and which gates turn meanwhile, before the steps have settled.
struct Effort {
  int most_steps;
  int turning = 0;  ///< in so many of them all gates do that are clearly the wrong way ...
  bool shuts_regulators = true;       ///< ... else only regulators that hold while water runs back
  bool shrinks_joint_losses = false;  ///< where nothing else settles
};

void turn_early(Sweeps& sweeps, Imbalance& left, const Effort& effort, int taken) {
  constexpr double clearly = 1e-6;
  const bool all = taken < effort.turning;
  if (!std::isfinite(left.sum) || !(all || effort.shuts_regulators)) return;
  const std::vector<Sweeps::Gate> wrong =
      all ? sweeps.wrong_gates(left, clearly) : sweeps.regulators_held_back(left, clearly);
  if (wrong.empty()) return;
  for (const Sweeps::Gate& gate : wrong) sweeps.turn(gate);
  left = sweeps.gather();
}

/// Newton steps until the imbalance is within the tolerance or enough are taken; counts them.
Imbalance iterate(Sweeps& sweeps, const Effort& effort, int& steps) {
  Imbalance left = sweeps.gather();
  for (int taken = 0;
       taken < effort.most_steps && std::isfinite(left.sum) && !left.within(tolerance);
       ++taken, ++steps) {
    sweeps.correct();
    left = sweeps.gather();
    turn_early(sweeps, left, effort, taken);
  }
  return left;
}

/// How far from the tolerance, all residuals measured alike.
double distance(const Imbalance& left, double flow_scale) {
  if (!std::isfinite(left.sum)) return HUGE_VAL;
  return std::max({share_of(left.mass, flow_scale),
                   share_of(left.energy, left.head_scale),
                   share_of(left.outlet, left.head_scale)});
}

/// Steps of which only so much is taken as makes the largest residual smaller: each lessens all of
/// them as long as it is small enough.
Imbalance iterate_in_part(Sweeps& sweeps, const Effort& effort, int& steps) {
  constexpr double least_share = 1.0 / 1024;
  constexpr double worth = 0.1;
  Imbalance left = sweeps.gather();
  for (int taken = 0;
       taken < effort.most_steps && std::isfinite(left.sum) && !left.within(tolerance);
       ++taken, ++steps) {
    const Sweeps before = sweeps;
    for (double share = 1;; share /= 2) {
      sweeps.correct_in_part(share);
      const Imbalance next = sweeps.gather();
      const double scale = std::max(left.flow_scale, next.flow_scale);
      if (distance(next, scale) <= (1 - worth * share) * distance(left, scale) ||
          share <= least_share) {
        left = next;
        turn_early(sweeps, left, effort, effort.turning);
        break;
      }
      sweeps = before;
    }
  }
  return left;
}

/// Follows the answer while what makes the equations easy shrinks, at first by `fastest`; more gently
/// after a size at which the steps did not settle.
/// @param set makes it so large @param step settles there
template <class Set, class Step>
Imbalance follow(Sweeps& sweeps, double from, double to, const Set& set, const Step& step) {
  constexpr double fastest = 0.1;
  constexpr double gentlest = 0.95;
  double factor = fastest;
  double size = from;
  set(sweeps, size);
  Imbalance left = step(sweeps);
  while (left.within(tolerance) && size > to) {
    Sweeps next = sweeps;
    const double next_size = std::max(size * factor, to);
    set(next, next_size);
    const Imbalance next_left = step(next);
    if (next_left.within(tolerance)) {
      sweeps = std::move(next);
      size = next_size;
      factor = std::max(factor * factor, fastest);
      left = next_left;
    } else {
      factor = std::sqrt(factor);
      if (factor > gentlest) return next_left;
    }
  }
  return left;
}

/// The last resort: starts from outlets whose curves are straight as far as there is any head.
Imbalance shrink_ramp(Sweeps& sweeps, const Tree& tree, const Effort& each, int& steps) {
  constexpr double above_all_heads = 2;  // of the head span
  const auto step = [&](Sweeps& on_ramp) {
    if (tree.joints.empty()) return iterate(on_ramp, each, steps);
    const Sweeps start = on_ramp;
    const Imbalance left = iterate(on_ramp, each, steps);
    if (left.within(tolerance)) return left;
    on_ramp = start;
    return iterate_in_part(on_ramp, each, steps);
  };
  const auto set = [&](Sweeps& on_ramp, double ramp) { on_ramp.set_ramp(ramp * tree.head_span); };
  sweeps.restart(above_all_heads * tree.head_span);
  return follow(sweeps, above_all_heads, last_ramp, set, step);
}

/// The last resort where lines join: starts from joints that lose so much that next to nothing passes
/// them, so that each tree is by itself. Water at rest has no slope of its own in a loop, and steps
/// may lead from rest to far too much and back for ever.
Imbalance shrink_joint_losses(Sweeps& sweeps, const Tree& tree, const Effort& each, int& steps) {
  constexpr double nothing_passes = 100;
  constexpr double nothing_is_lost = 1e-20;
  const auto step = [&](Sweeps& at_loss) {
    const Imbalance left = iterate(at_loss, each, steps);
    return left.within(tolerance) ? left : shrink_ramp(at_loss, tree, each, steps);
  };
  const auto set = [](Sweeps& at_loss, double loss) { at_loss.set_joint_loss(loss); };
  sweeps.restart(last_ramp * tree.head_span);
  follow(sweeps, nothing_passes, nothing_is_lost, set, step);
  sweeps.set_joint_loss(0);
  return iterate(sweeps, each, steps);
}

/// The last resort where a supply's head falls with the flow: on a curve that is hollow here and
/// bulges there, tangents may lead from rest to far too much and back for ever. The higher a head is
/// held, the more the lines draw and the less the supply gives, so the head has a bracket; that of
/// each supply by itself, where no lines join.
Imbalance bracket_the_supplies(Sweeps& sweeps, const Tree& tree, const Effort& each, int& steps) {
  constexpr double below_all_ground = 2.1;  // of the head span
  Tree held = tree;
  for (Source& source : held.sources) source.law = SupplyLaw(source.law->head_at_rest());
  for (std::size_t i = 0; i < tree.sources.size(); ++i) {
    const SupplyLaw& law = *tree.sources[i].law;
    if (law.is_held()) continue;
    const auto excess = [&](double head) {
      held.sources[i].law = SupplyLaw(head);
      sweeps = Sweeps(held, last_ramp * tree.head_span);
      if (!iterate(sweeps, each, steps).within(tolerance)) shrink_ramp(sweeps, held, each, steps);
      return head - law.at(std::max(0.0, sweeps.source_flow(i))).head;
    };
    const double rest = law.head_at_rest();
    excess(root_between(excess, rest - below_all_ground * tree.head_span, rest));
  }
  sweeps.set_supply(tree);
  sweeps.set_ramp(last_ramp * tree.head_span);  // where shrinking ended early it is too high
  return iterate(sweeps, each, steps);
}

/// One step more where the gaps left round a loop might add up to more than the tolerance.
void polish(Sweeps& sweeps, Imbalance& left, int& steps) {
  constexpr double well_within = 0.1;  // of the tolerance: readers add up rounded flows
  if (sweeps.energy_gaps_of_loops() <= well_within * tolerance * left.head_scale) return;
  Sweeps next = sweeps;
  next.correct();
  const Imbalance next_left = next.gather();
  if (!next_left.within(tolerance) ||
      !(next.energy_gaps_of_loops() < sweeps.energy_gaps_of_loops()))
    return;
  sweeps = std::move(next);
  left = next_left;
  ++steps;
}

/// Steps until the imbalance is within the tolerance, and the last resorts if it is not.
Imbalance settle_steps(Sweeps& sweeps,
                       const Tree& tree,
                       const Effort& effort,
                       Residuals& residuals) {
  constexpr int patience = 5;
  Imbalance left = iterate(sweeps, effort, residuals.steps);
  if (left.within(tolerance)) return left;
  residuals.last_resort = true;
  Effort each = effort;
  each.turning = 0;
  Effort longer = each;
  longer.most_steps *= patience;
  if (!tree.joints.empty()) {
    if (effort.turning > 0) sweeps.open_gates();
    sweeps.restart(last_ramp * tree.head_span);
    left = iterate_in_part(sweeps, longer, residuals.steps);
    if (left.within(tolerance)) return left;
  }
  left = shrink_ramp(sweeps, tree, each, residuals.steps);
  const bool any_falls = std::ranges::any_of(
      tree.sources, [](const Source& source) { return source.law && !source.law->is_held(); });
  if (!left.within(tolerance) && any_falls && tree.joints.empty())
    left = bracket_the_supplies(sweeps, tree, each, residuals.steps);
  // Along thousands of outlets that are all but dry steps get ahead slowly.
  if (!left.within(tolerance) && tree.joints.empty())
    left = shrink_ramp(sweeps, tree, longer, residuals.steps);
  if (!left.within(tolerance) && effort.shrinks_joint_losses)
    left = shrink_joint_losses(sweeps, tree, each, residuals.steps);
  return left;
}

/// Turns gates over that are the wrong way, and settles anew, until all are right: all of them as
/// long as they become fewer, else the first one alone, which leads to the end where each turn is
/// felt most by the gate itself (Murty's rule for complementarity problems).
Imbalance settle_gates(Sweeps& sweeps, const Tree& tree, Effort effort, Residuals& residuals) {
  constexpr double doubt = 10 * tolerance;
  constexpr int patience = 3;
  const std::size_t most_turns = 100 + 4 * (tree.runs.size() + tree.sources.size());
  Imbalance left = settle_steps(sweeps, tree, effort, residuals);
  effort.turning = 0;
  const bool each_may_shut = effort.shuts_regulators;
  std::size_t fewest = nowhere;
  int tries_left = patience;
  for (std::size_t turns = 0; left.within(tolerance); ++turns) {
    std::vector<Sweeps::Gate> wrong = sweeps.wrong_gates(left, doubt);
    if (wrong.empty()) wrong = sweeps.gates_of_cut_off_parts();
    if (wrong.empty()) break;
    if (turns == most_turns) {
      left.sum = HUGE_VAL;
      break;
    }
    if (wrong.size() < fewest) {
      fewest = wrong.size();
      tries_left = patience;
    } else {
      --tries_left;
    }
    if (tries_left >= 0)
      for (const Sweeps::Gate& gate : wrong) sweeps.turn(gate);
    else
      sweeps.turn(wrong.front());
    effort.shuts_regulators = each_may_shut && tries_left >= 0;
    left = settle_steps(sweeps, tree, effort, residuals);
  }
  return left;
}

}  // namespace

Settled settle(const Tree& tree, int newton_steps) {
  Sweeps sweeps(tree, last_ramp * tree.head_span);
  Residuals residuals;
  // How long gates turn early matters where regulators stand in loops; one of the first four has done
  // nearly always. The last turns none early: water that runs back for one step only shuts nothing.
  const std::array efforts{Effort{newton_steps, 20},
                           Effort{newton_steps, 0},
                           Effort{newton_steps, 5},
                           Effort{newton_steps, 60},
                           Effort{newton_steps, 0, false, true}};
  Imbalance left = settle_gates(sweeps, tree, efforts[0], residuals);
  for (std::size_t i = 1; i < efforts.size() && !left.within(tolerance); ++i) {
    const bool is_another = tree.has_gates || efforts[i].shrinks_joint_losses;
    if (tree.joints.empty() || !is_another) continue;
    sweeps = Sweeps(tree, last_ramp * tree.head_span);
    left = settle_gates(sweeps, tree, efforts[i], residuals);
  }
  if (left.within(tolerance) && !tree.joints.empty()) polish(sweeps, left, residuals.steps);
  const double beyond_numbers = std::isfinite(left.sum) ? 0 : HUGE_VAL;
  residuals.mass = std::max(beyond_numbers, share_of(left.mass, left.flow_scale));
  residuals.energy = std::max(beyond_numbers, share_of(left.energy, left.head_scale));
  residuals.outlet = std::max(beyond_numbers, share_of(left.outlet, left.head_scale));

  const bool met = left.within(tolerance) && all_finite(sweeps.states());
  return {std::move(sweeps), residuals, met};
}

}  // namespace hydro
