#include "hydro/solver/lanes_plan.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "hydro/solver/lanes_in_part_march.cpp"
#ifndef HWY_DISABLED_TARGETS
#define HWY_DISABLED_TARGETS (HWY_SVE | HWY_SVE2 | HWY_SVE_256 | HWY_SVE2_128 | HWY_RVV)
#endif
#include <hwy/foreach_target.h>
// After foreach_target.h.
#include "hydro/solver/lanes_marcher-inl.hpp"

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

/// Marches one group of lanes along one run, with polynomials for what it feeds and what feeds it.
class PartMarcher : private Marcher {
 public:
  PartMarcher(LanesWork& work, std::size_t from) : Marcher(work, from) {}

  HWY_ATTR void lead_all_quiet() {
    for (std::size_t r = 0; r < tree_.runs.size(); ++r)
      if (work_.is_quiet[r]) lead_by_stand_in(r);
  }

  HWY_ATTR bool run_alone(std::size_t r, std::span<const std::size_t> fed_runs) {
    RunLanes& of_run = work_.runs[r];
    return settle_end(of_run, [&](Vectors& gap, Vectors& slope) HWY_ATTR {
      draw_at_end(r, all(0));
      for (const std::size_t it : fed_runs) answer_by_stand_in(it);
      march(r);
      gap = load(of_run.gap, from_);
      slope = load(of_run.head_slope, from_);
    });
  }

  HWY_ATTR bool feeder_alone(std::size_t r,
                             const Lane& drawn,
                             std::span<const std::size_t> beside) {
    const std::int32_t feeder = tree_.runs[r].fed_by;
    if (feeder == none) return source_alone(index(tree_.runs[r].source), drawn, beside);
    return settle_end(work_.runs[index(feeder)], [&](Vectors& gap, Vectors& slope) HWY_ATTR {
      draw_at_end(index(feeder), load(drawn, from_));
      for (const std::size_t it : beside) answer_by_stand_in(it);
      pass_on_offer(index(feeder), gap, slope);
    });
  }

  HWY_ATTR void run_on_offer(std::size_t r,
                             std::span<const std::size_t> fed_runs,
                             std::size_t count,
                             SlopesAtFirst slopes) {
    const D d;
    RunLanes& of_run = work_.runs[r];
    const std::uint32_t wanted = wanted_of(count);
    const V bend = hn::Set(d, plan_.as_it_is[r].bend), most = hn::Set(d, most_by_bend);
    const V head_aim = hn::Set(d, aim * tree_.head_span), ramp = hn::Set(d, plan_.ramp);
    remembers_ = slopes == SlopesAtFirst::unknown;  // two passes are not worth it
    remembered_from_ = tree_.runs[r].first;
    std::uint32_t met = 0;
    int passes = 0;
    with_slopes_ = slopes == SlopesAtFirst::unknown;
    for (; passes < most_passes && met != wanted; ++passes) {
      begin_pass();
      draw_at_end(r, all(0));
      for (const std::size_t it : fed_runs) answer_by_stand_in(it);
      Vectors gap, slope;
      pass_on_offer(r, gap, slope);
      const Vectors flow = load(of_run.flow, from_), flow_slope = load(of_run.flow_slope, from_);
      Vectors head = load(of_run.end_head, from_);
      const bool is_close = all_within(gap, near);
      met = 0;
      for (std::size_t n = 0; n < side_by_side; ++n) {
        V rise = hn::Div(gap[n], slope[n]);
        const V missed = hn::Abs(hn::Mul(flow_slope[n], rise));
        const Mask is_met =
            hn::And(hn::And(hn::Le(hn::Abs(gap[n]), head_aim),
                            hn::Le(missed, hn::Mul(hn::Set(d, aim), flow[n]))),
                    hn::And(hn::Gt(nearest_[n], ramp), hn::Le(farthest_[n], hn::Set(d, 1.0))));
        std::uint8_t bits[8] = {};
        hn::StoreMaskBits(d, is_met, bits);
        met |= static_cast<std::uint32_t>(bits[0]) << (n * width);
        const V along_bend = hn::Mul(rise, bend);
        rise = hn::NegMulAdd(hn::Max(hn::Min(along_bend, most), hn::Neg(most)), rise, rise);
        head[n] = hn::IfThenElse(is_met, head[n], hn::Add(head[n], rise));
      }
      met &= wanted;
      with_slopes_ = !(is_close && (with_slopes_ || passes == 0));
      if (met != wanted) store(head, of_run.end_head, from_);
    }
    block_.met |= met << from_;
    block_.passes = std::max(block_.passes, passes);
  }

  HWY_ATTR void upstream_of(std::size_t r, std::span<const std::vector<std::size_t>> fed_by) {
    for (;;) {
      const Run& run = tree_.runs[r];
      const Offer& offer = (*work_.offers)[r];
      const Vectors drawn = load(work_.runs[r].flow, from_);
      const Vectors through = value_at(offer.feeder_flow, place_in(offer.range, drawn));
      if (run.fed_by == none) {
        const std::size_t s = index(run.source);
        store(through, block_.source_flow[s], from_);
        store(load(work_.sources[s].head, from_), block_.source_head[s], from_);
        return;
      }
      const std::size_t feeder = index(run.fed_by);
      store(through, work_.runs[feeder].flow, from_);
      const Offer& of_feeder = (*work_.offers)[feeder];
      const Vectors head = value_at(of_feeder.head, place_in(of_feeder.range, through));
      if (has_mouths(tree_.runs[feeder])) {
        draw_at_end(feeder, drawn);
        for (const std::size_t it : fed_by[feeder])
          if (it != r) answer_by_stand_in(it);
        march(feeder);
      }
      store(head, fed(tree_.runs[feeder]), from_);
      r = feeder;
    }
  }

 private:
  bool has_mouths(const Run& run) const {
    for (std::size_t i = run.first; i < run.end; ++i)
      if (tree_.places[i].mouth != none) return true;
    return false;
  }

  /// Newton's method for the head at the far end of a run, as near as rounding lets it: until the gap
  /// is far below the aim, or met twice. @param pass leaves the gap and its slope
  template <class Pass>
  HWY_ATTR bool settle_end(RunLanes& of_run, const Pass& pass) {
    bool met = false;
    for (int passes = 0; passes < most_passes; ++passes) {
      begin_pass();
      Vectors gap, slope;
      pass(gap, slope);
      const bool is_met = are_met(gap);
      if (met || (is_met && all_within(gap, aim / 10))) return is_met;
      met = is_met;
      with_slopes_ = !all_within(gap, near);
      Vectors head = load(of_run.end_head, from_);
      for (std::size_t n = 0; n < side_by_side; ++n)
        head[n] = hn::Add(head[n], hn::Div(gap[n], slope[n]));
      store(head, of_run.end_head, from_);
    }
    return false;
  }

  HWY_ATTR bool source_alone(std::size_t s,
                             const Lane& drawn,
                             std::span<const std::size_t> beside) {
    SourceLanes& source = work_.sources[s];
    bool met = false;
    for (int pass = 0; pass < most_passes; ++pass) {
      begin_pass();
      store(load(drawn, from_), source.flow, from_);
      store(all(0), source.slope, from_);
      for (const std::size_t it : beside) answer_by_stand_in(it);
      Lane gap = Lane::all(0);
      correct_source(s, gap);
      const bool is_met = are_met(load(gap, from_));
      if (met) return is_met;
      met = is_met;
      for (std::size_t lane = from_; lane < from_ + group; ++lane)
        source.head[lane] += source.rise[lane];
    }
    return false;
  }

  /// One pass over a run whose feeder gives what its offer says. Leaves the gap there, and how it goes
  /// with the head at the far end.
  HWY_ATTR void pass_on_offer(std::size_t r, Vectors& gap, Vectors& gap_slope) {
    RunLanes& of_run = work_.runs[r];
    store(all(0), fed(tree_.runs[r]), from_);
    march(r);
    const Offer& offer = (*work_.offers)[r];
    const Said has = ask(offer.range, offer.head, load(of_run.flow, from_));
    const Vectors needs = load(of_run.gap, from_), head_slope = load(of_run.head_slope, from_),
                  flow_slope = load(of_run.flow_slope, from_);
    for (std::size_t n = 0; n < side_by_side; ++n) {
      gap[n] = hn::Add(has.value[n], needs[n]);
      gap_slope[n] = hn::NegMulAdd(has.slope[n], flow_slope[n], head_slope[n]);
    }
    store(has.value, fed(tree_.runs[r]), from_);
  }

  /// @param share of the head span
  HWY_ATTR bool all_within(const Vectors& gap, double share) const {
    const D d;
    bool are = true;
    for (std::size_t n = 0; n < side_by_side; ++n)
      are = are && hn::AllTrue(d, hn::Le(hn::Abs(gap[n]), hn::Set(d, share * tree_.head_span)));
    return are;
  }

  /// Every gap, no outlet near running dry, and no stand-in asked beyond its range.
  HWY_ATTR bool are_met(const Vectors& gap) const {
    const D d;
    bool are = all_within(gap, aim);
    for (std::size_t n = 0; n < side_by_side; ++n) {
      const Mask is_wet = hn::Gt(nearest_[n], hn::Set(d, plan_.ramp));
      const Mask is_within = hn::Le(farthest_[n], hn::Set(d, 1.0));
      are = are && hn::AllTrue(d, hn::And(is_wet, is_within));
    }
    return are;
  }

  HWY_ATTR void lead_by_stand_in(std::size_t r) {
    const StandIn& it = (*work_.stand_ins)[r];
    if (it.end_head.empty()) return;
    store(value_at(it.end_head, place_in(it.range, feeding(tree_.runs[r]))),
          work_.runs[r].end_head,
          from_);
  }
};

HWY_ATTR bool march_run(LanesWork& work, std::size_t run, std::span<const std::size_t> fed) {
  for (std::size_t from = 0; from < lanes; from += group)
    if (!PartMarcher(work, from).run_alone(run, fed)) return false;
  return true;
}

HWY_ATTR bool march_feeder_of(LanesWork& work,
                              std::size_t run,
                              const Lane& drawn,
                              std::span<const std::size_t> beside) {
  for (std::size_t from = 0; from < lanes; from += group)
    if (!PartMarcher(work, from).feeder_alone(run, drawn, beside)) return false;
  return true;
}

HWY_ATTR void march_run_on_offer(LanesWork& work,
                                 std::size_t run,
                                 std::span<const std::size_t> fed,
                                 std::size_t count,
                                 SlopesAtFirst slopes) {
  for (std::size_t from = 0; from < count; from += group)
    PartMarcher(work, from).run_on_offer(run, fed, count, slopes);
}

HWY_ATTR void go_upstream_of(LanesWork& work,
                             std::size_t run,
                             std::span<const std::vector<std::size_t>> fed_by,
                             std::size_t count) {
  for (std::size_t from = 0; from < count; from += group)
    PartMarcher(work, from).upstream_of(run, fed_by);
}

HWY_ATTR void lead_block(LanesWork& work, std::size_t count) {
  for (std::size_t from = 0; from < count; from += group) PartMarcher(work, from).lead_all_quiet();
}

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace hydro {

HWY_EXPORT(march_run);
HWY_EXPORT(march_feeder_of);
HWY_EXPORT(march_run_on_offer);
HWY_EXPORT(go_upstream_of);
HWY_EXPORT(lead_block);

bool march_alone(LanesWork& work, std::size_t run, std::span<const std::size_t> fed) {
  return HWY_DYNAMIC_DISPATCH(march_run)(work, run, fed);
}

bool march_feeder(LanesWork& work,
                  std::size_t run,
                  const Lane& drawn,
                  std::span<const std::size_t> beside) {
  return HWY_DYNAMIC_DISPATCH(march_feeder_of)(work, run, drawn, beside);
}

void march_on_offer(LanesWork& work,
                    std::size_t run,
                    std::span<const std::size_t> fed,
                    std::size_t count,
                    SlopesAtFirst slopes) {
  HWY_DYNAMIC_DISPATCH(march_run_on_offer)(work, run, fed, count, slopes);
}

void go_upstream(LanesWork& work,
                 std::size_t run,
                 std::span<const std::vector<std::size_t>> fed_by,
                 std::size_t count) {
  HWY_DYNAMIC_DISPATCH(go_upstream_of)(work, run, fed_by, count);
}

void lead_quiet(LanesWork& work, std::size_t count) {
  HWY_DYNAMIC_DISPATCH(lead_block)(work, count);
}

}  // namespace hydro
#endif
