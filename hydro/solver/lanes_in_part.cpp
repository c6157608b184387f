#include "hydro/solver/lanes_in_part.hpp"

#include <algorithm>
#include <utility>

namespace hydro {
namespace {

/// With nothing replaced, and no run marched.
LanesWork idle_work(const LanesPlan& plan,
                    const std::vector<StandIn>& stand_ins,
                    const std::vector<Offer>& offers,
                    LaneBlock& block) {
  const Tree& tree = *plan.tree;
  block.head.resize(tree.places.size());
  block.outlet_flow.resize(tree.places.size());
  block.outlet_head.resize(tree.places.size());
  block.source_flow.resize(tree.sources.size());
  block.source_head.resize(tree.sources.size());
  LanesWork work{.plan = &plan,
                 .differences = nullptr,
                 .runs = std::vector<RunLanes>(tree.runs.size()),
                 .sources = std::vector<SourceLanes>(tree.sources.size()),
                 .block = &block};
  std::size_t longest = 0;
  for (const Run& run : tree.runs) longest = std::max(longest, run.end - run.first);
  work.remembered.resize(longest);
  work.is_quiet.assign(tree.runs.size(), true);
  work.stand_ins = &stand_ins;
  work.offers = &offers;
  return work;
}

/// At the states of the tree itself.
void begin(LanesWork& work, std::size_t r) {
  const LanesPlan& plan = *work.plan;
  const Run& run = plan.tree->runs[r];
  work.runs[r].end_head = Lane::all(plan.start[run.end - 1].head);
  for (std::size_t i = run.first; i < run.end; ++i) {
    if (plan.is_plain[i] && !is_replaced(work, i)) continue;
    work.block->head[i] = Lane::all(plan.start[i].head);
    work.block->outlet_head[i] = Lane::all(plan.start[i].outlet_head);
  }
}

/// With the heads that are fed to a run, as far as its tangent and its bend tell.
void begin_on_tangent(LanesWork& work, std::size_t r) {
  const Run& run = work.plan->tree->runs[r];
  const RunAsItIs& as_it_is = work.plan->as_it_is[r];
  const Lane& fed = run.fed_by == none ? work.sources[index(run.source)].head
                                       : work.runs[index(run.fed_by)].end_head;
  for (std::size_t lane = 0; lane < lanes; ++lane) {
    const double rise = as_it_is.head_share * (fed[lane] - as_it_is.feeding);
    work.runs[r].end_head[lane] += rise * (1 - as_it_is.bend * rise);
  }
}

}  // namespace

LanesInPart::LanesInPart(const Lanes& whole,
                         const std::vector<Asked>& asked,
                         const Look& look,
                         LaneBlock& room)
    : plan_(whole.plan()),
      fed_by_(plan_.tree->runs.size()),
      fed_by_source_(plan_.tree->sources.size()),
      run_of_(plan_.tree->places.size()),
      stand_ins_(plan_.tree->runs.size()),
      offers_(plan_.tree->runs.size()) {
  const std::vector<Run>& runs = plan_.tree->runs;
  for (std::size_t r = 0; r < runs.size(); ++r) {
    const Run& run = runs[r];
    for (std::size_t i = run.first; i < run.end; ++i) run_of_[i] = r;
    (run.fed_by == none ? fed_by_source_[index(run.source)] : fed_by_[index(run.fed_by)])
        .push_back(r);
  }
  if (plan_.as_it_is.empty()) return;
  LanesWork work = idle_work(plan_, stand_ins_, offers_, room);
  const Differences none_at_all;
  work.differences = &none_at_all;
  for (std::size_t r = runs.size(); r-- > 0;) find_stand_in(r, work, asked[r].heads, look);
  for (std::size_t r = 0; r < runs.size(); ++r) find_offer(r, work, asked[r].flows);
}

bool LanesInPart::have_stand_ins(const std::vector<std::size_t>& runs) const {
  return std::ranges::none_of(runs, [&](std::size_t r) { return stand_ins_[r].flow.empty(); });
}

bool LanesInPart::is_regulated(std::size_t run) const {
  const Tree& tree = *plan_.tree;
  return tree.reaches[index(tree.places[tree.runs[run].first].reach)].held < no_limit;
}

std::vector<std::size_t> LanesInPart::beside(std::size_t run) const {
  const Run& it = plan_.tree->runs[run];
  std::vector<std::size_t> all =
      it.fed_by == none ? fed_by_source_[index(it.source)] : fed_by_[index(it.fed_by)];
  std::erase(all, run);
  return all;
}

void LanesInPart::find_stand_in(std::size_t r,
                                LanesWork& work,
                                const Interval& heads,
                                const Look& look) {
  if (!have_stand_ins(fed_by_[r])) return;
  const Run& run = plan_.tree->runs[r];
  (run.fed_by == none ? work.sources[index(run.source)].head
                      : work.runs[index(run.fed_by)].end_head) = heads.to_try();
  begin(work, r);
  begin_on_tangent(work, r);
  if (!march_alone(work, r, fed_by_[r])) return;
  auto flow = through(work.runs[r].flow, stand_in_tolerance);
  auto end_head = through(work.runs[r].end_head, stand_in_tolerance, plan_.tree->head_span);
  if (!flow || !end_head || !look({r, heads, *work.block})) return;
  if (fed_by_[r].empty()) end_head->clear();  // nobody asks
  stand_ins_[r] = {heads, std::move(*flow), std::move(*end_head)};
}

void LanesInPart::find_offer(std::size_t r, LanesWork& work, const Interval& flows) {
  const Tree& tree = *plan_.tree;
  const Run& run = tree.runs[r];
  const bool begins = run.fed_by == none;
  if (begins && tree.sources[index(run.source)].law->is_held()) {
    const double rest = plan_.start_source_flow[index(run.source)] - plan_.as_it_is[r].flow;
    offers_[r] = {
        flows, {plan_.start_source_head[index(run.source)]}, {rest + flows.middle(), flows.half()}};
    return;
  }
  const std::vector<std::size_t> others = beside(r);
  if (!have_stand_ins(others)) return;
  if (begins) {
    work.sources[index(run.source)].head = Lane::all(plan_.start_source_head[index(run.source)]);
  } else {
    const std::size_t feeder = index(run.fed_by);
    if (is_regulated(feeder) || offers_[feeder].head.empty()) return;
    begin(work, feeder);
  }
  if (!march_feeder(work, r, flows.to_try(), others)) return;
  const Lane& head =
      begins ? work.sources[index(run.source)].head : work.runs[index(run.fed_by)].end_head;
  const Lane& flow =
      begins ? work.sources[index(run.source)].flow : work.runs[index(run.fed_by)].flow;
  auto offered = through(head, stand_in_tolerance, tree.head_span);
  auto drawn = through(flow, stand_in_tolerance);
  if (offered && drawn) offers_[r] = {flows, std::move(*offered), std::move(*drawn)};
}

LanesInPart::Desk::Desk(const LanesInPart& of, LaneBlock room)
    : block_(std::move(room)),
      of_(of),
      work_(idle_work(of.plan_, of.stand_ins_, of.offers_, block_)) {}

void LanesInPart::Desk::solve(const Differences& differences,
                              std::size_t count,
                              const FarEnd* near) {
  work_.differences = &differences;
  note_replaced(work_);
  for (std::size_t s = 0; s < work_.sources.size(); ++s) {
    work_.sources[s].head = Lane::all(of_.plan_.start_source_head[s]);
    block_.source_head[s] = work_.sources[s].head;
    block_.source_flow[s] = Lane::all(of_.plan_.start_source_flow[s]);
  }
  block_.met = 0;
  block_.passes = 0;
  if (!solve_one_run(count, near)) solve_all_on_the_way(count);
  lead_quiet(work_, count);
  for (const auto& it : differences.replaced)
    work_.first_replaced[it.place] = work_.root_at[it.place] = none;
}

bool LanesInPart::Desk::solve_one_run(std::size_t count, const FarEnd* near) {
  const std::vector<Differences::Replaced>& replaced = work_.differences->replaced;
  const std::size_t r = of_.run_of_[replaced.front().place];
  const std::vector<Run>& runs = of_.plan_.tree->runs;
  if (of_.run_of_[replaced.back().place] != r || of_.offers_[r].head.empty() ||
      of_.is_regulated(r) || !of_.have_stand_ins(of_.fed_by_[r]))
    return false;
  work_.is_quiet.assign(runs.size(), true);
  work_.is_quiet[r] = false;
  for (std::int32_t f = runs[r].fed_by; f != none; f = runs[index(f)].fed_by)
    work_.is_quiet[index(f)] = false;
  // What nothing stands in for and yet is not on the way feels nothing of it.
  for (std::size_t q = 0; q < runs.size(); ++q)
    if (work_.is_quiet[q] && !of_.has_stand_in(q))
      work_.runs[q].end_head = Lane::all(of_.plan_.start[runs[q].end - 1].head);
  begin(work_, r);
  if (near) begin_near(r, *near, count);
  for (Remembered& it : work_.remembered) it.is_known = 0;
  march_on_offer(
      work_, r, of_.fed_by_[r], count, near ? SlopesAtFirst::known : SlopesAtFirst::unknown);
  go_upstream(work_, r, of_.fed_by_, count);
  return true;
}

/// Idle lanes as the tree has them.
void LanesInPart::Desk::begin_near(std::size_t r, const FarEnd& near, std::size_t count) {
  RunLanes& of_run = work_.runs[r];
  const RunAsItIs& as_it_is = of_.plan_.as_it_is[r];
  of_run.head_slope = Lane::all(as_it_is.head_slope);
  of_run.flow_slope = Lane::all(as_it_is.flow_slope);
  for (std::size_t lane = 0; lane < count; ++lane) {
    of_run.end_head[lane] = near.head[lane];
    of_run.head_slope[lane] = near.inlet_head_slope[lane];
    of_run.flow_slope[lane] = near.inlet_flow_slope[lane];
  }
}

LanesInPart::FarEnd LanesInPart::Desk::far_end(std::size_t run) const {
  const RunLanes& it = work_.runs[run];
  return {it.end_head, it.head_slope, it.flow_slope};
}

void LanesInPart::Desk::solve_all_on_the_way(std::size_t count) {
  const std::vector<Run>& runs = of_.plan_.tree->runs;
  for (std::size_t r = 0; r < runs.size(); ++r) work_.is_quiet[r] = !of_.stand_ins_[r].flow.empty();
  for (const auto& it : work_.differences->replaced) work_.is_quiet[of_.run_of_[it.place]] = false;
  for (std::size_t r = runs.size(); r-- > 0;) {
    if (work_.is_quiet[r]) continue;
    begin(work_, r);
    if (runs[r].fed_by != none) work_.is_quiet[index(runs[r].fed_by)] = false;
  }
  march_in_part(work_, count);
}

const Lane& LanesInPart::Desk::fed(std::size_t r) const {
  const Run& run = of_.plan_.tree->runs[r];
  return run.fed_by == none ? work_.sources[index(run.source)].head
                            : work_.runs[index(run.fed_by)].end_head;
}

}  // namespace hydro
