#include "hydro/solver/lanes_plan.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "hydro/solver/lanes_march.cpp"
#ifndef HWY_DISABLED_TARGETS
#define HWY_DISABLED_TARGETS (HWY_SVE | HWY_SVE2 | HWY_SVE_256 | HWY_SVE2_128 | HWY_RVV)
#endif
#include <hwy/foreach_target.h>
// After foreach_target.h.
#include "hydro/solver/lanes_marcher-inl.hpp"

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

/// Marches one group of lanes along all runs of a tree.
class TreeMarcher : private Marcher {
 public:
  TreeMarcher(LanesWork& work, std::size_t from) : Marcher(work, from) {}

  HWY_ATTR void run(std::size_t count) {
    const std::uint32_t wanted = wanted_of(count);
    int passes = 0;
    if (!differences_.outlet_factor.empty() && !plan_.as_it_is.empty() && !tree_.has_regulators)
      begin_on_tangents();
    if (!work_.is_quiet.empty()) {
      only_loud_ = true;
      iterate(wanted, passes);
      only_loud_ = false;
      lead_quiet_ones();
    }
    const std::uint32_t met = iterate(wanted, passes);
    block_.met |= met << from_;
    block_.passes = std::max(block_.passes, passes);
  }

  /// With stand-ins for all that is quiet, or as on its tangent.
  HWY_ATTR void run_in_part(std::size_t count) {
    int passes = 0;
    only_loud_ = true;
    const std::uint32_t met = iterate(wanted_of(count), passes);
    if (!work_.stand_ins) lead_quiet_ones();
    block_.met |= met << from_;
    block_.passes = std::max(block_.passes, passes);
  }

  HWY_ATTR void run_twice(std::size_t count) {
    const std::uint32_t wanted = wanted_of(count);
    pass_inward();
    correct_outward(judge(wanted));
    with_slopes_ = true;
    pass_inward();
    block_.met |= (judge(wanted) & wanted) << from_;
  }

 private:
  /// Passes until the wanted lanes are answers, or enough are taken; returns those that are.
  HWY_ATTR std::uint32_t iterate(std::uint32_t wanted, int& passes) {
    std::uint32_t met = 0;
    with_slopes_ = true;
    for (int taken = 0; taken < most_passes && met != wanted; ++taken, ++passes) {
      pass_inward();
      met = judge(wanted) & wanted;
      if (met != wanted) correct_outward(met);
    }
    return met;
  }

  /// Whether this pass goes over a run. Where little is not as in the tree, the rest answers at first
  /// as on its tangent: what is far off then comes near at little cost.
  bool is_passed(std::size_t r) const { return !only_loud_ || !work_.is_quiet[r]; }

  /// Those that a quiet one feeds are in its answer.
  HWY_ATTR void answer_quietly(std::size_t r) {
    const std::int32_t feeder = tree_.runs[r].fed_by;
    if (feeder != none && work_.is_quiet[index(feeder)]) return;
    work_.stand_ins ? answer_by_stand_in(r) : answer_on_tangent(r);
  }

  HWY_ATTR void answer_on_tangent(std::size_t r) {
    const D d;
    const Run& run = tree_.runs[r];
    const RunAsItIs& it = plan_.as_it_is[r];
    const Vectors head = feeding(run);
    Vectors drawn;
    for (std::size_t n = 0; n < side_by_side; ++n)
      drawn[n] = hn::MulAdd(
          hn::Sub(head[n], hn::Set(d, it.feeding)), hn::Set(d, it.flow_share), hn::Set(d, it.flow));
    draw(run, drawn, all(it.flow_share));
  }

  /// To where the heads before their inlets lead them on their tangents.
  HWY_ATTR void lead_quiet_ones() {
    const D d;
    for (std::size_t r = 0; r < tree_.runs.size(); ++r) {
      if (!work_.is_quiet[r]) continue;
      const RunAsItIs& it = plan_.as_it_is[r];
      const Vectors head = feeding(tree_.runs[r]);
      Vectors end;
      for (std::size_t n = 0; n < side_by_side; ++n)
        end[n] = hn::MulAdd(hn::Sub(head[n], hn::Set(d, it.feeding)),
                            hn::Set(d, it.head_share),
                            hn::Set(d, it.end_head));
      store(end, work_.runs[r].end_head, from_);
    }
  }

  /// Takes the outlets' factors for what they do at first, and corrects for that.
  HWY_ATTR void begin_on_tangents() {
    const D d;
    draw_nothing();
    for (std::size_t r = tree_.runs.size(); r-- > 0;) {
      const Run& run = tree_.runs[r];
      const RunAsItIs& it = plan_.as_it_is[r];
      RunLanes& of_run = work_.runs[r];
      const Vectors fed = feeding(run), beyond = load(of_run.end_flow, from_);
      Vectors head, flow;
      for (std::size_t n = 0; n < side_by_side; ++n) {
        const V more = hn::Sub(beyond[n], hn::Set(d, it.flow_beyond));
        head[n] = hn::MulAdd(more, hn::Set(d, it.head_by_flow_beyond), hn::Set(d, it.feeding));
        flow[n] = hn::MulAdd(more, hn::Set(d, it.flow_by_flow_beyond), hn::Set(d, it.flow));
      }
      for (std::size_t i = run.first; i < run.end; ++i) {
        const Vectors factor = load(differences_.outlet_factor[i], from_);
        const V by_head = hn::Set(d, plan_.places_as_they_are[i].head_by_factor);
        const V by_flow = hn::Set(d, plan_.places_as_they_are[i].flow_by_factor);
        HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) {
          const V more = hn::Sub(factor[n], hn::Set(d, 1.0));
          head[n] = hn::MulAdd(more, by_head, head[n]);
          flow[n] = hn::MulAdd(more, by_flow, flow[n]);
        }
      }
      for (std::size_t n = 0; n < side_by_side; ++n) {
        head[n] = hn::Sub(fed[n], head[n]);
        flow[n] = hn::MulAdd(head[n], hn::Set(d, it.flow_share), flow[n]);
      }
      store(head, of_run.gap, from_);
      store(all(1), of_run.felt, from_);
      store(all(it.head_slope), of_run.head_slope, from_);
      draw(run, flow, all(it.flow_share));
    }
    Lane gap;
    for (std::size_t s = 0; s < work_.sources.size(); ++s) correct_source(s, gap);
    correct_outward(0);
    // Far off, tangents say nothing.
    constexpr double most = 0.25;
    for (std::size_t r = 0; r < tree_.runs.size(); ++r) {
      const V before = hn::Set(d, plan_.as_it_is[r].end_head);
      Vectors end = load(work_.runs[r].end_head, from_);
      for (std::size_t n = 0; n < side_by_side; ++n) {
        const V rise = hn::Abs(hn::Sub(end[n], before));
        end[n] = hn::IfThenElse(hn::Le(rise, hn::Mul(hn::Set(d, most), before)), end[n], before);
      }
      store(end, work_.runs[r].end_head, from_);
    }
  }

  HWY_ATTR void pass_inward() {
    nearest_ = all(HUGE_VAL);
    flow_scale_ = all(0);
    farthest_ = all(0);
    draw_nothing();
    for (std::size_t r = tree_.runs.size(); r-- > 0;) is_passed(r) ? march(r) : answer_quietly(r);
  }

  HWY_ATTR void draw_nothing() {
    for (RunLanes& run : work_.runs) {
      store(all(0), run.end_flow, from_);
      store(all(0), run.end_slope, from_);
    }
    for (SourceLanes& source : work_.sources) {
      store(all(0), source.flow, from_);
      store(all(0), source.slope, from_);
    }
  }

  /// Measures the gaps; leaves how the sources are corrected. Returns the lanes that are answers.
  HWY_ATTR std::uint32_t judge(std::uint32_t wanted) {
    Vectors energy = all(0), mass = all(0), sum = all(0);
    for (std::size_t r = 0; r < work_.runs.size(); ++r) {
      if (!is_passed(r)) continue;
      const RunLanes& run = work_.runs[r];
      const Vectors gap = load(run.gap, from_), head_slope = load(run.head_slope, from_),
                    flow_slope = load(run.flow_slope, from_);
      for (std::size_t n = 0; n < side_by_side; ++n) {
        const V share = hn::Div(gap[n], head_slope[n]);
        const V correction = hn::Mul(flow_slope[n], share);
        energy[n] = hn::Max(energy[n], hn::Abs(gap[n]));
        mass[n] = hn::Max(mass[n], hn::Abs(correction));
        sum[n] = hn::Add(sum[n], hn::Add(gap[n], correction));
      }
    }
    Lane largest_energy, largest_mass, flow_scale, nearest, farthest, sum_of_gaps;
    store(sum, sum_of_gaps, from_);
    store(energy, largest_energy, from_);
    store(mass, largest_mass, from_);
    store(nearest_, nearest, from_);
    store(farthest_, farthest, from_);
    for (std::size_t s = 0; s < work_.sources.size(); ++s) correct_source(s, largest_energy);
    store(flow_scale_, flow_scale, from_);
    std::uint32_t met = 0;
    bool all_near = true;
    for (std::size_t lane = 0; lane < group; ++lane) {
      const std::size_t at = from_ + lane;
      const double flow = flow_scale[at];
      block_.energy[at] = share_of(largest_energy[at], tree_.head_span);
      block_.mass[at] = share_of(largest_mass[at], flow);
      const bool it_is =
          std::isfinite(sum_of_gaps[at]) && largest_energy[at] <= aim * tree_.head_span &&
          largest_mass[at] <= aim * flow && nearest[at] > plan_.ramp && farthest[at] <= 1;
      if (it_is) met |= std::uint32_t{1} << lane;
      all_near = all_near && (((wanted >> lane) & 1) == 0 || block_.energy[at] < near);
    }
    with_slopes_ = !(all_near && with_slopes_);
    return met;
  }

  static double share_of(double part, double whole) { return part == 0 ? 0 : part / whole; }

  HWY_ATTR void correct_outward(std::uint32_t met) {
    const D d;
    Lane moving;
    for (std::size_t lane = 0; lane < group; ++lane)
      moving[from_ + lane] = (met >> lane) & 1 ? 0 : 1;
    const Vectors moves = load(moving, from_);
    for (SourceLanes& source : work_.sources) {
      const Vectors rise = load(source.rise, from_);
      Vectors head = load(source.head, from_), taken;
      for (std::size_t n = 0; n < side_by_side; ++n) {
        taken[n] = hn::Mul(rise[n], moves[n]);
        head[n] = hn::Add(head[n], taken[n]);
      }
      store(head, source.head, from_);
      store(taken, source.rise, from_);
    }
    const V most = hn::Set(d, most_by_bend);
    for (std::size_t r = 0; r < tree_.runs.size(); ++r) {
      if (!is_passed(r)) continue;
      const Run& run = tree_.runs[r];
      RunLanes& of_run = work_.runs[r];
      // The feeder's rise stands where its gap was.
      const Vectors fed = run.fed_by == none ? load(work_.sources[index(run.source)].rise, from_)
                                             : load(work_.runs[index(run.fed_by)].gap, from_);
      const Vectors gap = load(of_run.gap, from_), felt = load(of_run.felt, from_),
                    slope = load(of_run.head_slope, from_);
      // The head at the inlet is not quite straight in that at the end.
      const V bend = hn::Set(d, plan_.as_it_is.empty() ? 0 : plan_.as_it_is[r].bend);
      Vectors head = load(of_run.end_head, from_), rise;
      for (std::size_t n = 0; n < side_by_side; ++n) {
        rise[n] = hn::Mul(hn::Div(hn::MulAdd(felt[n], fed[n], gap[n]), slope[n]), moves[n]);
        const V along_bend = hn::Mul(rise[n], bend);
        rise[n] =
            hn::NegMulAdd(hn::Max(hn::Min(along_bend, most), hn::Neg(most)), rise[n], rise[n]);
        head[n] = hn::Add(head[n], rise[n]);
      }
      store(head, of_run.end_head, from_);
      store(rise, of_run.gap, from_);
    }
  }
};

HWY_ATTR void march_block(LanesWork& work, std::size_t count) {
  for (std::size_t from = 0; from < count; from += group) TreeMarcher(work, from).run(count);
}

HWY_ATTR void march_block_in_part(LanesWork& work, std::size_t count) {
  for (std::size_t from = 0; from < count; from += group)
    TreeMarcher(work, from).run_in_part(count);
}

HWY_ATTR void march_block_twice(LanesWork& work, std::size_t count) {
  for (std::size_t from = 0; from < count; from += group) TreeMarcher(work, from).run_twice(count);
}

std::size_t width_of_target() {
  return width;
}

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace hydro {

HWY_EXPORT(march_block);
HWY_EXPORT(march_block_in_part);
HWY_EXPORT(march_block_twice);
HWY_EXPORT(width_of_target);

void march(LanesWork& work, std::size_t count) {
  HWY_DYNAMIC_DISPATCH(march_block)(work, count);
}

void march_in_part(LanesWork& work, std::size_t count) {
  HWY_DYNAMIC_DISPATCH(march_block_in_part)(work, count);
}

void march_twice(LanesWork& work, std::size_t count) {
  HWY_DYNAMIC_DISPATCH(march_block_twice)(work, count);
}

std::size_t vector_width() {
  return HWY_DYNAMIC_DISPATCH(width_of_target)();
}

}  // namespace hydro
#endif
