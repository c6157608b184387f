#include "hydro/solver/lanes.hpp"

#include "hydro/solver/discharge.hpp"
#include "hydro/solver/lanes_plan.hpp"
#include "hydro/solver/settle.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace hydro {
namespace {

constexpr double ramp_share = 1e-13;  // of the head span, as in settle.cpp
constexpr int newton_steps = 60;      // as in SolveOptions

PlannedReach planned(const Reach& reach) {
  const double wall = reach.length * reach.friction.coefficient();
  switch (reach.friction.kind()) {
    case FrictionLaw::Kind::hazen_williams:
      return {wall > 0 ? ReachKind::hazen_williams : ReachKind::square,
              wall,
              reach.fitting,
              reach.ground_rise};
    case FrictionLaw::Kind::constant_factor:
      return {ReachKind::square, wall, reach.fitting, reach.ground_rise};
    case FrictionLaw::Kind::darcy_weisbach:
      break;
  }
  return {reach.length > 0 ? ReachKind::each_by_itself : ReachKind::square,
          0,
          reach.fitting,
          reach.ground_rise};
}

PlannedMouth planned(const Mouth& mouth) {
  PlannedMouth it{.kind = MouthKind::each_by_itself,
                  .coefficient = mouth.law.coefficient,
                  .exponent = mouth.law.exponent,
                  .height = mouth.height};
  if (mouth.law.bent) return it;
  const bool is_root = mouth.law.exponent == 0.5;
  if (!mouth.has_riser) {
    it.kind = is_root ? MouthKind::root : MouthKind::power;
    return it;
  }
  const Reach& riser = mouth.riser;
  const double wall = riser.length * riser.friction.coefficient();
  it.riser_fitting = riser.fitting;
  switch (riser.friction.kind()) {
    case FrictionLaw::Kind::hazen_williams:
      it.riser_friction = wall;
      break;
    case FrictionLaw::Kind::constant_factor:
      it.riser_wall_square = wall;
      break;
    case FrictionLaw::Kind::darcy_weisbach:
      return it;
  }
  if (is_root) it.kind = MouthKind::root_on_riser;
  return it;
}

/// With the heads at rest of all runs; where lines join, those of the highest supply.
void change_supplies(Tree& tree, const std::vector<SupplyLaw>& laws, std::size_t lane) {
  double highest = -no_limit;
  for (std::size_t s = 0; s < tree.sources.size(); ++s) {
    Source& source = tree.sources[s];
    if (!source.law) continue;
    source.law = laws[s * lanes + lane];
    const double at_rest = source.elevation + source.law->head_at_rest();
    highest = std::max(highest, at_rest);
    tree.head_span = std::max(tree.head_span, std::abs(at_rest));
  }
  for (Run& run : tree.runs) {
    if (!tree.joints.empty()) {
      run.head_at_rest = highest;
      continue;
    }
    run.head_at_rest = run.fed_by == none
                           ? run.elevation + tree.sources[index(run.source)].law->head_at_rest()
                           : tree.runs[index(run.fed_by)].head_at_rest;
    const double held = tree.reaches[index(tree.places[run.first].reach)].held;
    run.head_at_rest = std::min(run.head_at_rest, run.elevation + held);
  }
}

void make_room(const Tree& tree, LaneBlock& block) {
  block.head.resize(tree.places.size());
  block.outlet_flow.resize(tree.places.size());
  block.outlet_head.resize(tree.places.size());
  block.source_flow.resize(tree.sources.size());
  block.source_head.resize(tree.sources.size());
  block.met = 0;
  block.passes = 0;
  block.alone = 0;
}

/// Beginning with the states of the tree itself.
LanesWork work_for(const LanesPlan& plan,
                   const Differences& differences,
                   std::size_t count,
                   LaneBlock& block) {
  const Tree& tree = *plan.tree;
  LanesWork work{.plan = &plan,
                 .differences = &differences,
                 .runs = std::vector<RunLanes>(tree.runs.size()),
                 .sources = std::vector<SourceLanes>(tree.sources.size()),
                 .block = &block};
  // Outlets on risers are sought from where they were.
  for (std::size_t i = 0; i < tree.places.size(); ++i) {
    const bool has_mouth = tree.places[i].mouth != none;
    if (plan.is_plain[i] && has_mouth) continue;
    if (!has_mouth) block.outlet_flow[i] = {};
    block.head[i] = Lane::all(plan.start[i].head);
    block.outlet_head[i] = Lane::all(plan.start[i].outlet_head);
  }
  for (std::size_t r = 0; r < tree.runs.size(); ++r)
    work.runs[r].end_head = Lane::all(plan.start[tree.runs[r].end - 1].head);
  for (std::size_t s = 0; s < tree.sources.size(); ++s) {
    work.sources[s].head = Lane::all(plan.start_source_head[s]);
    if (differences.supply.empty()) continue;
    for (std::size_t lane = 0; lane < count; ++lane)
      work.sources[s].head[lane] +=
          differences.supply[s * lanes + lane].head_at_rest() - tree.sources[s].law->head_at_rest();
  }
  return work;
}

void find_replaced(LanesWork& work) {
  const Tree& tree = *work.plan->tree;
  const Differences& differences = *work.differences;
  note_replaced(work);
  if (work.plan->as_it_is.empty() || !differences.only_replaced()) return;
  work.is_quiet.assign(tree.runs.size(), true);
  const auto is_at = [&](std::size_t i) {
    return work.root_at[i] != none || work.first_replaced[i] != none;
  };
  for (std::size_t r = tree.runs.size(); r-- > 0;) {
    const Run& run = tree.runs[r];
    for (std::size_t i = run.first; i < run.end; ++i)
      if (is_at(i)) work.is_quiet[r] = false;
    if (!work.is_quiet[r] && run.fed_by != none) work.is_quiet[index(run.fed_by)] = false;
  }
}

/// How head and flow at the inlet of a run go with what each outlet lets out and with the flow
/// beyond, its far head held: outward along the run, a change at a place is felt as it is at the
/// inlet.
void find_weights(LanesPlan& plan, const Run& run, RunAsItIs& of_run) {
  const Tree& tree = *plan.tree;
  double head_by_head = 1, head_by_flow = 0, flow_by_head = 0, flow_by_flow = 1;
  for (std::size_t i = run.first; i < run.end; ++i) {
    const Place& place = tree.places[i];
    const State& state = plan.start[i];
    double wall_slope = unknown_slope;
    const double loss_slope = tree.reaches[index(place.reach)].loss(state.flow, wall_slope).slope;
    head_by_flow += head_by_head * loss_slope;
    flow_by_flow += flow_by_head * loss_slope;
    if (place.mouth == none) continue;
    const DischargeAtHead out = discharge(tree.mouths[index(place.mouth)], 1, state.head);
    plan.places_as_they_are[i].head_by_factor = head_by_flow * out.flow;
    plan.places_as_they_are[i].flow_by_factor = flow_by_flow * out.flow;
    head_by_head += head_by_flow * out.slope;
    flow_by_head += flow_by_flow * out.slope;
  }
  of_run.head_by_flow_beyond = head_by_flow;
  of_run.flow_by_flow_beyond = flow_by_flow;
}

/// By a march over the tree itself.
void find_as_it_is(LanesPlan& plan, LaneBlock& block) {
  const Tree& tree = *plan.tree;
  for (std::size_t i = 0; i < tree.places.size(); ++i) {
    const double flow = plan.start[i].flow;
    if (flow > 0)
      plan.places_as_they_are[i] = {.per_flow = 1 / flow, .power = std::pow(flow, slope_exponent)};
  }
  // Lane 0 as it is, lane 1 with a little more head, for the bends.
  constexpr double little = 1e-3;
  Differences more_head;
  for (const Source& source : tree.sources)
    for (std::size_t lane = 0; lane < lanes; ++lane)
      more_head.supply.push_back(source.law->raised_by(lane == 1 ? little * tree.head_span : 0));
  make_room(tree, block);
  LanesWork work = work_for(plan, more_head, 2, block);
  march_twice(work, 2);
  if ((block.met & 1) == 0) return;
  const bool is_bend_known = block.energy[1] < little * little;
  for (std::size_t r = 0; r < tree.runs.size(); ++r) {
    const Run& run = tree.runs[r];
    const RunLanes& it = work.runs[r];
    const double head_share = it.felt[0] / it.head_slope[0];
    const double bend =
        (it.head_slope[1] / it.head_slope[0] - 1) / (it.end_head[1] - it.end_head[0]) / 2;
    plan.as_it_is.push_back({.feeding = run.fed_by == none
                                            ? work.sources[index(run.source)].head[0]
                                            : work.runs[index(run.fed_by)].end_head[0],
                             .end_head = it.end_head[0],
                             .flow = it.flow[0],
                             .flow_share = it.flow_slope[0] * head_share,
                             .head_share = head_share,
                             .head_slope = it.head_slope[0],
                             .flow_slope = it.flow_slope[0],
                             .bend = is_bend_known && std::isfinite(bend) ? bend : 0,
                             .flow_beyond = it.end_flow[0],
                             .head_by_flow_beyond = 0,
                             .flow_by_flow_beyond = 0});
    find_weights(plan, run, plan.as_it_is.back());
  }
}

}  // namespace

void note_replaced(LanesWork& work) {
  const LanesPlan& plan = *work.plan;
  const Differences& differences = *work.differences;
  const std::vector<Differences::Replaced>& all = differences.replaced;
  work.root_at.resize(plan.tree->places.size(), none);
  work.first_replaced.resize(plan.tree->places.size(), none);
  work.roots.clear();
  for (auto here = all.begin(), end = here; here != all.end(); here = end) {
    const std::size_t place = here->place;
    end = std::find_if(here, all.end(), [&](const auto& it) { return it.place != place; });
    const std::int32_t own = plan.tree->places[place].mouth;
    const bool are_roots = plan.is_plain[place] && own != none &&
                           std::all_of(here, end, [](const Differences::Replaced& it) {
                             return !it.mouth || planned(*it.mouth).kind == MouthKind::root;
                           });
    if (!are_roots) {
      work.first_replaced[place] = static_cast<std::int32_t>(here - all.begin());
      continue;
    }
    work.root_at[place] = static_cast<std::int32_t>(work.roots.size());
    const PlannedMouth& mouth = plan.mouths[index(own)];
    RootInLanes& root = work.roots.emplace_back();
    root = {Lane::all(mouth.coefficient), Lane::all(mouth.height)};
    if (!differences.outlet_factor.empty())
      for (std::size_t lane = 0; lane < lanes; ++lane)
        root.coefficient[lane] *= differences.outlet_factor[place][lane];
    for (; here != end; ++here) {
      // Where nothing is left, no head is enough.
      root.coefficient[here->lane] = here->mouth ? here->mouth->law.coefficient : 0;
      root.height[here->lane] = here->mouth ? here->mouth->height : no_limit;
    }
  }
}

struct Lanes::Plan {
  LanesPlan of_tree;
  bool marches;
};

Lanes::Lanes(const Tree& tree, const Sweeps& solved, LaneBlock* room) {
  LanesPlan plan{.tree = &tree, .ramp = ramp_share * tree.head_span, .start = solved.states()};
  for (const Reach& reach : tree.reaches) plan.reaches.push_back(planned(reach));
  for (const Mouth& mouth : tree.mouths) plan.mouths.push_back(planned(mouth));
  for (const Place& place : tree.places)
    plan.is_plain.push_back(
        plan.reaches[index(place.reach)].kind == ReachKind::hazen_williams &&
        (place.mouth == none || plan.mouths[index(place.mouth)].kind == MouthKind::root));
  for (std::size_t s = 0; s < tree.sources.size(); ++s) {
    plan.start_source_head.push_back(solved.source_head(s));
    plan.start_source_flow.push_back(solved.source_flow(s));
  }
  plan.places_as_they_are.resize(tree.places.size());
  LaneBlock own;
  if (march_on(tree)) find_as_it_is(plan, room ? *room : own);
  plan_ = std::make_unique<const Plan>(Plan{std::move(plan), march_on(tree)});
}

Lanes::~Lanes() = default;
Lanes::Lanes(Lanes&&) noexcept = default;

bool Lanes::march_on(const Tree& tree) {
  return tree.joints.empty() && !tree.runs.empty() &&
         std::ranges::all_of(tree.runs, [&](const Run& run) {
           return run.fed_by != none || tree.sources[index(run.source)].law;
         });
}

const LanesPlan& Lanes::plan() const {
  return plan_->of_tree;
}

std::size_t Lanes::width() {
  return vector_width();
}

void Lanes::solve(const Differences& differences, std::size_t count, LaneBlock& block) const {
  const LanesPlan& plan = plan_->of_tree;
  make_room(*plan.tree, block);
  if (plan_->marches) {
    LanesWork work = work_for(plan, differences, count, block);
    if (!differences.replaced.empty()) find_replaced(work);
    march(work, count);
  }
  for (std::size_t lane = 0; lane < count; ++lane)
    if (!((block.met >> lane) & 1)) settle_alone(differences, lane, block);
}

std::vector<Lane> Lanes::heads_before_runs(const Differences& differences,
                                           std::size_t count,
                                           LaneBlock& room) const {
  const LanesPlan& plan = plan_->of_tree;
  make_room(*plan.tree, room);
  LanesWork work = work_for(plan, differences, count, room);
  find_replaced(work);
  march_in_part(work, count);
  std::vector<Lane> found;
  for (const Run& run : plan.tree->runs)
    found.push_back(run.fed_by == none ? work.sources[index(run.source)].head
                                       : work.runs[index(run.fed_by)].end_head);
  return found;
}

Tree Lanes::tree_of(const Differences& differences, std::size_t lane) const {
  Tree tree = *plan_->of_tree.tree;
  for (std::size_t i = 0; i < tree.mouths.size(); ++i)
    tree.mouths[i] = changed(tree.mouths[i], differences, i, lane);
  const auto replace = [&](Place& place, std::optional<Mouth> mouth) {
    place.mouth = none;
    if (!mouth) return;
    place.mouth = static_cast<std::int32_t>(tree.mouths.size());
    tree.mouths.push_back(*mouth);
  };
  if (!differences.outlet_factor.empty())
    for (std::size_t i = 0; i < tree.places.size(); ++i) {
      if (tree.places[i].mouth == none) continue;
      Mouth mouth = tree.mouths[index(tree.places[i].mouth)];
      mouth.law.coefficient *= differences.outlet_factor[i][lane];
      mouth.law.inverse_coefficient /= differences.outlet_factor[i][lane];
      replace(tree.places[i], mouth);
    }
  for (std::size_t i = 0; i < tree.reaches.size(); ++i) {
    Reach& reach = tree.reaches[i];
    const bool is_darcy = reach.friction.kind() == FrictionLaw::Kind::darcy_weisbach;
    if (is_darcy && !differences.friction.empty())
      reach.friction = differences.friction[i * lanes + lane];
    if (!is_darcy && !differences.friction_factor.empty())
      reach.length *= differences.friction_factor[i][lane];
    if (!differences.fitting_factor.empty()) reach.fitting *= differences.fitting_factor[i][lane];
    reach.capacity = no_limit;
  }
  for (const auto& it : differences.replaced)
    if (it.lane == lane) replace(tree.places[it.place], it.mouth);
  if (!differences.supply.empty()) change_supplies(tree, differences.supply, lane);
  bound_capacities(tree);
  return tree;
}

void Lanes::settle_alone(const Differences& differences, std::size_t lane, LaneBlock& block) const {
  const Tree tree = tree_of(differences, lane);
  const Settled settled = settle(tree, newton_steps);
  const std::vector<State>& states = settled.sweeps.states();
  for (std::size_t i = 0; i < states.size(); ++i) {
    block.head[i][lane] = states[i].head;
    block.outlet_flow[i][lane] = states[i].outlet_flow;
    block.outlet_head[i][lane] = states[i].outlet_head;
  }
  for (std::size_t s = 0; s < tree.sources.size(); ++s) {
    block.source_flow[s][lane] = settled.sweeps.source_flow(s);
    block.source_head[s][lane] = settled.sweeps.source_head(s);
  }
  block.mass[lane] = settled.residuals.mass;
  block.energy[lane] = settled.residuals.energy;
  if (settled.met) block.met |= std::uint32_t{1} << lane;
  block.alone |= std::uint32_t{1} << lane;
}

}  // namespace hydro
