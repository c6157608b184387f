#include "hydro/solver/discharge.hpp"
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
#include "hydro/solver/vector_power-inl.hpp"

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

using D = hn::ScalableTag<double>;
using V = hn::Vec<D>;
using Mask = hn::Mask<D>;

constexpr std::size_t width = HWY_MAX_BYTES / sizeof(double);
/// One vector waits for each result of its own; several together keep the machine busy.
constexpr std::size_t side_by_side = lanes / width < 4 ? lanes / width : 4;
constexpr std::size_t group = side_by_side * width;
static_assert(lanes % group == 0);

constexpr int most_passes = 24;

/// A group of lanes that are worked out side by side.
struct Vectors {
  V of[side_by_side];

  HWY_INLINE V& operator[](std::size_t n) { return of[n]; }
  HWY_INLINE const V& operator[](std::size_t n) const { return of[n]; }
};

HWY_INLINE Vectors load(const Lane& lane, std::size_t from) {
  const D d;
  Vectors it;
  for (std::size_t n = 0; n < side_by_side; ++n)
    it[n] = hn::Load(d, lane.at.data() + from + n * width);
  return it;
}

HWY_INLINE void store(const Vectors& it, Lane& lane, std::size_t from) {
  const D d;
  for (std::size_t n = 0; n < side_by_side; ++n)
    hn::Store(it[n], d, lane.at.data() + from + n * width);
}

HWY_INLINE Vectors all(double value) {
  const D d;
  Vectors it;
  for (std::size_t n = 0; n < side_by_side; ++n) it[n] = hn::Set(d, value);
  return it;
}

/// What the march carries from place to place.
struct Front {
  Vectors head;        // H
  Vectors flow;        // Q
  Vectors head_slope;  // dH/dx
  Vectors flow_slope;  // dQ/dx
  Vectors nearest;     // head of the outlet that was nearest to running dry, either way
};

struct Discharge {
  Vectors flow;
  Vectors slope;  // with the head in the line
  Vectors head;   // at the device
};

/// Marches one group of lanes.
class Marcher {
 public:
  HWY_ATTR Marcher(LanesWork& work, std::size_t from)
      : work_(work),
        plan_(*work.plan),
        tree_(*work.plan->tree),
        differences_(*work.differences),
        block_(*work.block),
        from_(from) {}

  HWY_ATTR void run(std::size_t count) {
    const std::uint32_t wanted =
        static_cast<std::uint32_t>((std::uint64_t{1} << std::min(count, from_ + group)) - 1) >>
        from_;
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

  HWY_ATTR Vectors feeding(const Run& run) const {
    return run.fed_by == none ? load(work_.sources[index(run.source)].head, from_)
                              : load(work_.runs[index(run.fed_by)].end_head, from_);
  }

  HWY_ATTR void answer_on_tangent(std::size_t r) {
    const D d;
    const Run& run = tree_.runs[r];
    if (run.fed_by != none && work_.is_quiet[index(run.fed_by)]) return;
    const RunAsItIs& it = plan_.as_it_is[r];
    const Vectors head = feeding(run);
    Vectors drawn;
    for (std::size_t n = 0; n < side_by_side; ++n)
      drawn[n] = hn::MulAdd(
          hn::Sub(head[n], hn::Set(d, it.feeding)), hn::Set(d, it.flow_share), hn::Set(d, it.flow));
    draw(run, drawn, all(it.flow_share));
  }

  /// Adds to what a run's feeder gives, and to how that goes with its head.
  HWY_ATTR void draw(const Run& run, const Vectors& flow, const Vectors& share) {
    Lane& drawn = run.fed_by == none ? work_.sources[index(run.source)].flow
                                     : work_.runs[index(run.fed_by)].end_flow;
    Lane& answer = run.fed_by == none ? work_.sources[index(run.source)].slope
                                      : work_.runs[index(run.fed_by)].end_slope;
    Vectors drawn_so_far = load(drawn, from_), answer_so_far = load(answer, from_);
    for (std::size_t n = 0; n < side_by_side; ++n) {
      drawn_so_far[n] = hn::Add(drawn_so_far[n], flow[n]);
      answer_so_far[n] = hn::Add(answer_so_far[n], share[n]);
    }
    store(drawn_so_far, drawn, from_);
    store(answer_so_far, answer, from_);
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
    draw_nothing();
    for (std::size_t r = tree_.runs.size(); r-- > 0;)
      is_passed(r) ? march(r) : answer_on_tangent(r);
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

  HWY_ATTR void march(std::size_t r) {
    const D d;
    const Run& run = tree_.runs[r];
    RunLanes& of_run = work_.runs[r];
    Front front{load(of_run.end_head, from_),
                load(of_run.end_flow, from_),
                all(1),
                load(of_run.end_slope, from_),
                nearest_};
    const std::int32_t first_reach = tree_.places[run.first].reach;
    const bool regulated = tree_.reaches[index(first_reach)].held < no_limit;
    const std::size_t behind_regulator = run.first + (regulated ? 1 : 0);
    for (std::size_t i = run.end; i-- > behind_regulator;) {
      if (is_plain(i)) {
        i = with_slopes_ ? march_plainly<true>(i, behind_regulator, front)
                         : march_plainly<false>(i, behind_regulator, front);
        continue;
      }
      take_mouth(i, front);
      store(front.head, block_.head[i], from_);
      pass_reach(i, front);
    }
    const Vectors fed = feeding(run);
    Vectors gap, felt = all(1);
    if (regulated) {
      const Vectors behind = front.head;
      const Vectors behind_slope = front.head_slope;
      pass_reach(run.first, front);
      const double held = tree_.reaches[index(first_reach)].held;
      for (std::size_t n = 0; n < side_by_side; ++n) {
        const V comes = hn::Sub(fed[n], hn::Sub(front.head[n], behind[n]));
        const V held_head = hn::Set(d, held);
        const Mask holds = hn::Gt(comes, held_head);
        gap[n] =
            hn::IfThenElse(holds, hn::Sub(held_head, behind[n]), hn::Sub(fed[n], front.head[n]));
        felt[n] = hn::IfThenZeroElse(holds, felt[n]);
        front.head_slope[n] = hn::IfThenElse(holds, behind_slope[n], front.head_slope[n]);
        hn::Store(behind[n], d, block_.head[run.first].at.data() + from_ + n * width);
      }
      store(all(0), block_.outlet_flow[run.first], from_);
      store(all(0), block_.outlet_head[run.first], from_);
    } else {
      for (std::size_t n = 0; n < side_by_side; ++n) gap[n] = hn::Sub(fed[n], front.head[n]);
    }
    nearest_ = front.nearest;
    store(gap, of_run.gap, from_);
    store(felt, of_run.felt, from_);
    if (with_slopes_) {
      store(front.head_slope, of_run.head_slope, from_);
      store(front.flow_slope, of_run.flow_slope, from_);
    } else {
      front.head_slope = load(of_run.head_slope, from_);
      front.flow_slope = load(of_run.flow_slope, from_);
    }

    store(front.flow, of_run.flow, from_);

    // What it will draw when its own gap is closed, and how that answers a rise of head.
    Vectors drawn, share;
    for (std::size_t n = 0; n < side_by_side; ++n) {
      const V conductance = hn::Div(front.flow_slope[n], front.head_slope[n]);
      flow_scale_[n] = hn::Max(flow_scale_[n], front.flow[n]);
      drawn[n] = hn::MulAdd(conductance, gap[n], front.flow[n]);
      share[n] = hn::Mul(conductance, felt[n]);
    }
    draw(run, drawn, share);
  }

  /// Most places of most layouts: without any riser loss, on a pipe of Hazen-Williams.
  bool is_plain(std::size_t place) const {
    return plan_.is_plain[place] && !is_replaced(work_, place);
  }

  /// From a plain place as far as they are plain; returns the last one. All that is carried stays in
  /// registers, which it would not beside calls.
  template <bool with_slopes>
  HWY_ATTR HWY_NOINLINE std::size_t march_plainly(std::size_t place,
                                                  std::size_t first,
                                                  Front& front) {
    const D d;
    Vectors head = front.head, flow = front.flow, head_slope = front.head_slope,
            flow_slope = front.flow_slope, nearest = front.nearest;
    const V ramp = hn::Set(d, plan_.ramp);
    const bool outlets_differ = !differences_.outlet_factor.empty();
    const bool friction_differs = !differences_.friction_factor.empty();
    const bool fitting_differs = !differences_.fitting_factor.empty();
    std::size_t i = place;
    for (;; --i) {
      const Place& here = tree_.places[i];
      store(head, block_.head[i], from_);
      if (here.mouth != none) {
        const PlannedMouth& mouth = plan_.mouths[index(here.mouth)];
        const V c = hn::Set(d, mouth.coefficient);
        const V height = hn::Set(d, mouth.height);
        Vectors coefficient = all(mouth.coefficient);
        if (outlets_differ) {
          const Vectors factor = load(differences_.outlet_factor[i], from_);
          HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) coefficient[n] =
              hn::Mul(factor[n], c);
        }
        HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) {
          const V available = hn::Sub(head[n], height);
          nearest[n] = hn::Min(nearest[n], hn::Abs(available));
          const V root = hn::Sqrt(hn::Max(available, ramp));
          const V wet = hn::IfThenElseZero(hn::Gt(available, ramp), coefficient[n]);
          const V out = hn::Mul(wet, root);
          const V device = hn::IfThenElseZero(hn::Gt(available, ramp), available);
          hn::Store(out, d, block_.outlet_flow[i].at.data() + from_ + n * width);
          hn::Store(device, d, block_.outlet_head[i].at.data() + from_ + n * width);
          flow[n] = hn::Add(flow[n], out);
          if constexpr (with_slopes) {
            const V slope = hn::Div(hn::Mul(hn::Set(d, 0.5), wet), root);
            flow_slope[n] = hn::MulAdd(slope, head_slope[n], flow_slope[n]);
          }
        }
      }
      const PlannedReach& reach = plan_.reaches[index(here.reach)];
      Vectors friction = all(reach.friction), fitting = all(reach.fitting);
      if (friction_differs) {
        const Vectors factor = load(differences_.friction_factor[index(here.reach)], from_);
        HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) friction[n] =
            hn::Mul(friction[n], factor[n]);
      }
      if (fitting_differs) {
        const Vectors factor = load(differences_.fitting_factor[index(here.reach)], from_);
        HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) fitting[n] =
            hn::Mul(fitting[n], factor[n]);
      }
      const Vectors power = power_of_flow(flow, plan_.places_as_they_are[i]);
      const V rise = hn::Set(d, reach.rise);
      HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) {
        const V wall = hn::Mul(friction[n], power[n]);
        const V bends = hn::Mul(fitting[n], flow[n]);
        head[n] = hn::Add(head[n], hn::MulAdd(hn::Add(wall, bends), flow[n], rise));
        if constexpr (with_slopes) {
          const V slope = hn::MulAdd(hn::Set(d, 1 + slope_exponent), wall, hn::Add(bends, bends));
          head_slope[n] = hn::MulAdd(slope, flow_slope[n], head_slope[n]);
        }
      }
      if (i == first || !is_plain(i - 1)) break;
    }
    front = {head, flow, head_slope, flow_slope, nearest};
    return i;
  }

  /// Q^0.852, by its series about the flow in the tree itself if all lanes are near that: at a third
  /// of the cost.
  static HWY_INLINE Vectors power_of_flow(const Vectors& flow, const PlaceAsItIs& like) {
    const D d;
    static constexpr BinomialSeries<15> series(slope_exponent);
    static constexpr BinomialSeries<10> short_series(slope_exponent);
    Vectors power;
    V farthest = hn::Zero(d);
    HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) {
      power[n] = hn::MulSub(flow[n], hn::Set(d, like.per_flow), hn::Set(d, 1.0));
      farthest = hn::Max(farthest, hn::Abs(power[n]));
    }
    if (HWY_LIKELY(hn::AllTrue(d, hn::Le(farthest, hn::Set(d, close_by))))) {
      HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) power[n] =
          hn::Mul(polynomial(d, power[n], short_series.of), hn::Set(d, like.power));
      return power;
    }
    if (HWY_LIKELY(hn::AllTrue(d, hn::Le(farthest, hn::Set(d, nearby))))) {
      HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) power[n] =
          hn::Mul(polynomial(d, power[n], series.of), hn::Set(d, like.power));
      return power;
    }
    HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) power[n] =
        power_of(d, flow[n], slope_exponent);
    return power;
  }

  /// Adds what leaves at a place, and its slope.
  HWY_ATTR void take_mouth(std::size_t place, Front& front) {
    const std::int32_t which = tree_.places[place].mouth;
    const bool replaced = is_replaced(work_, place);
    if (which == none && !replaced) {
      store(all(0), block_.outlet_flow[place], from_);
      store(all(0), block_.outlet_head[place], from_);
      return;
    }
    Discharge out;
    const MouthKind kind = which == none ? MouthKind::closed : plan_.mouths[index(which)].kind;
    switch (kind) {
      case MouthKind::root:
        out = by_root(place, plan_.mouths[index(which)], front);
        break;
      case MouthKind::root_on_riser:
        out = by_root_on_riser(place, plan_.mouths[index(which)], front);
        break;
      case MouthKind::power:
        out = by_power(place, plan_.mouths[index(which)], front);
        break;
      case MouthKind::closed:
        out = {all(0), all(0), all(0)};
        break;
      case MouthKind::each_by_itself:
        out = each_by_itself(place, which, front);
        break;
    }
    if (replaced) replace(place, front, out);
    for (std::size_t n = 0; n < side_by_side; ++n) {
      front.flow[n] = hn::Add(front.flow[n], out.flow[n]);
      front.flow_slope[n] = hn::MulAdd(out.slope[n], front.head_slope[n], front.flow_slope[n]);
    }
    store(out.flow, block_.outlet_flow[place], from_);
    store(out.head, block_.outlet_head[place], from_);
  }

  HWY_ATTR Vectors scaled(double value,
                          const std::vector<Lane>& factors,
                          std::int32_t which) const {
    if (factors.empty()) return all(value);
    const D d;
    Vectors it = load(factors[index(which)], from_);
    for (std::size_t n = 0; n < side_by_side; ++n) it[n] = hn::Mul(it[n], hn::Set(d, value));
    return it;
  }
  HWY_ATTR Vectors coefficients(std::size_t place, double coefficient) const {
    return scaled(coefficient, differences_.outlet_factor, static_cast<std::int32_t>(place));
  }

  HWY_ATTR Discharge by_root(std::size_t place, const PlannedMouth& mouth, Front& front) {
    const D d;
    const Vectors c = coefficients(place, mouth.coefficient);
    const V ramp = hn::Set(d, plan_.ramp);
    Discharge out;
    for (std::size_t n = 0; n < side_by_side; ++n) {
      const V available = hn::Sub(front.head[n], hn::Set(d, mouth.height));
      front.nearest[n] = hn::Min(front.nearest[n], hn::Abs(available));
      const Mask wet = hn::Gt(available, ramp);
      const V root = hn::Sqrt(hn::Max(available, ramp));
      out.head[n] = hn::IfThenElseZero(wet, available);
      out.flow[n] = hn::IfThenElseZero(wet, hn::Mul(c[n], root));
      out.slope[n] = hn::IfThenElseZero(wet, hn::Div(hn::Mul(hn::Set(d, 0.5), c[n]), root));
    }
    return out;
  }

  HWY_ATTR Discharge by_power(std::size_t place, const PlannedMouth& mouth, Front& front) {
    const D d;
    const Vectors c = coefficients(place, mouth.coefficient);
    const V ramp = hn::Set(d, plan_.ramp);
    Discharge out;
    for (std::size_t n = 0; n < side_by_side; ++n) {
      const V available = hn::Sub(front.head[n], hn::Set(d, mouth.height));
      front.nearest[n] = hn::Min(front.nearest[n], hn::Abs(available));
      const Mask wet = hn::Gt(available, ramp);
      const V head = hn::Max(available, ramp);
      out.head[n] = hn::IfThenElseZero(wet, available);
      out.flow[n] = hn::IfThenElseZero(wet, hn::Mul(c[n], power_of(d, head, mouth.exponent)));
      out.slope[n] = hn::Div(hn::Mul(hn::Set(d, mouth.exponent), out.flow[n]), head);
    }
    return out;
  }

  /// The head P at the device on P + riser(c sqrt(P)) = head there is: nearly straight in P.
  HWY_ATTR Discharge by_root_on_riser(std::size_t place, const PlannedMouth& mouth, Front& front) {
    const D d;
    constexpr int most_steps = 12;
    constexpr double straight =
        1e-8;  // share of the head over which the laws are, to the last place
    const Vectors c = coefficients(place, mouth.coefficient);
    const V ramp = hn::Set(d, plan_.ramp);
    const V half = hn::Set(d, 0.5);
    const std::int32_t which = tree_.places[place].mouth;
    const Vectors friction =
        scaled(mouth.riser_friction, differences_.riser_friction_factor, which);
    Vectors square = scaled(mouth.riser_wall_square, differences_.riser_friction_factor, which);
    const Vectors fitting = scaled(mouth.riser_fitting, differences_.riser_fitting_factor, which);
    Vectors available, P;
    const Vectors head_before = load(block_.head[place], from_),
                  device_before = load(block_.outlet_head[place], from_);
    for (std::size_t n = 0; n < side_by_side; ++n) {
      const V height = hn::Set(d, mouth.height);
      available[n] = hn::Sub(front.head[n], height);
      const V most = hn::Max(available[n], ramp);
      const V before = hn::Sub(head_before[n], height);
      const Mask known = hn::And(hn::Gt(before, ramp), hn::Gt(device_before[n], ramp));
      P[n] = hn::IfThenElse(known, hn::Mul(device_before[n], hn::Div(most, before)), most);
      square[n] = hn::Add(square[n], fitting[n]);
    }
    Discharge out;
    for (int step = 0; step < most_steps; ++step) {
      Mask any_far;
      for (std::size_t n = 0; n < side_by_side; ++n) {
        const V root = hn::Sqrt(P[n]);
        const V q = hn::Mul(c[n], root);
        const V along = hn::Div(hn::Mul(half, c[n]), root);  // dq/dP
        V loss = hn::Mul(square[n], q);
        V loss_slope = hn::Add(loss, loss);
        if (mouth.riser_friction > 0) {
          const V wall = hn::Mul(friction[n], power_of(d, q, slope_exponent));
          loss = hn::Add(loss, wall);
          loss_slope = hn::MulAdd(hn::Set(d, 1 + slope_exponent), wall, loss_slope);
        }
        const V most = hn::Max(available[n], ramp);
        const V steepness = hn::MulAdd(loss_slope, along, hn::Set(d, 1.0));
        const V gap = hn::Sub(most, hn::MulAdd(loss, q, P[n]));
        const V rise = hn::Div(gap, steepness);
        const Mask far = hn::Gt(hn::Abs(gap), hn::Mul(most, hn::Set(d, straight)));
        any_far = n == 0 ? far : hn::Or(any_far, far);
        out.slope[n] = hn::Div(along, steepness);
        out.flow[n] = hn::MulAdd(along, rise, q);
        P[n] = hn::Max(hn::Add(P[n], rise), hn::Mul(P[n], hn::Set(d, 0.05)));
      }
      if (hn::AllFalse(d, any_far)) break;
    }
    for (std::size_t n = 0; n < side_by_side; ++n) {
      const Mask wet = hn::Gt(available[n], ramp);
      front.nearest[n] =
          hn::Min(front.nearest[n], hn::IfThenElse(wet, P[n], hn::Abs(available[n])));
      out.head[n] = hn::IfThenElseZero(wet, P[n]);
      out.flow[n] = hn::IfThenElseZero(wet, out.flow[n]);
      out.slope[n] = hn::IfThenElseZero(wet, out.slope[n]);
    }
    return out;
  }

  HWY_ATTR Discharge each_by_itself(std::size_t place, std::int32_t which, Front& front) {
    const Mouth& mouth = tree_.mouths[index(which)];
    Lane head, flow, slope, device;
    store(front.head, head, from_);
    for (std::size_t lane = from_; lane < from_ + group; ++lane) {
      const double factor =
          differences_.outlet_factor.empty() ? 1 : differences_.outlet_factor[place][lane];
      const DischargeAtHead out =
          discharge(changed(mouth, differences_, index(which), lane), factor, head[lane]);
      flow[lane] = out.flow;
      slope[lane] = out.slope;
      device[lane] = out.outlet_head;
    }
    note_nearest(device, head, mouth.height, front);
    return {load(flow, from_), load(slope, from_), load(device, from_)};
  }

  HWY_ATTR void note_nearest(const Lane& device, const Lane& head, double height, Front& front) {
    const D d;
    const Vectors at_device = load(device, from_), in_line = load(head, from_);
    for (std::size_t n = 0; n < side_by_side; ++n) {
      const V available = hn::Abs(hn::Sub(in_line[n], hn::Set(d, height)));
      const Mask wet = hn::Gt(at_device[n], hn::Zero(d));
      front.nearest[n] = hn::Min(front.nearest[n], hn::IfThenElse(wet, at_device[n], available));
    }
  }

  HWY_ATTR void replace(std::size_t place, const Front& front, Discharge& out) {
    Lane head, flow, slope, device;
    store(front.head, head, from_);
    store(out.flow, flow, from_);
    store(out.slope, slope, from_);
    store(out.head, device, from_);
    for (std::size_t i = work_.first_replaced[place]; i < work_.first_replaced[place + 1]; ++i) {
      const Differences::Replaced& other = differences_.replaced[i];
      if (other.lane < from_ || other.lane >= from_ + group) continue;
      const DischargeAtHead it =
          other.mouth ? discharge(*other.mouth, 1, head[other.lane]) : DischargeAtHead{};
      flow[other.lane] = it.flow;
      slope[other.lane] = it.slope;
      device[other.lane] = it.outlet_head;
    }
    out = {load(flow, from_), load(slope, from_), load(device, from_)};
  }

  HWY_ATTR void pass_reach(std::size_t place, Front& front) {
    const D d;
    const std::int32_t which = tree_.places[place].reach;
    const PlannedReach& reach = plan_.reaches[index(which)];
    if (reach.kind == ReachKind::each_by_itself) return pass_reach_each(which, front);
    Vectors friction = all(reach.friction);
    Vectors fitting = all(reach.fitting);
    if (!differences_.friction_factor.empty()) {
      const Vectors factor = load(differences_.friction_factor[index(which)], from_);
      for (std::size_t n = 0; n < side_by_side; ++n) friction[n] = hn::Mul(friction[n], factor[n]);
    }
    if (!differences_.fitting_factor.empty()) {
      const Vectors factor = load(differences_.fitting_factor[index(which)], from_);
      for (std::size_t n = 0; n < side_by_side; ++n) fitting[n] = hn::Mul(fitting[n], factor[n]);
    }
    const V rise = hn::Set(d, reach.rise);
    Vectors power;
    if (reach.kind == ReachKind::hazen_williams)
      power = power_of_flow(front.flow, plan_.places_as_they_are[place]);
    for (std::size_t n = 0; n < side_by_side; ++n) {
      V per_flow, slope;
      if (reach.kind == ReachKind::hazen_williams) {
        const V wall = hn::Mul(friction[n], power[n]);
        const V bends = hn::Mul(fitting[n], front.flow[n]);
        per_flow = hn::Add(wall, bends);
        slope = hn::MulAdd(hn::Set(d, 1 + slope_exponent), wall, hn::Add(bends, bends));
      } else {
        per_flow = hn::Mul(hn::Add(friction[n], fitting[n]), front.flow[n]);
        slope = hn::Add(per_flow, per_flow);
      }
      front.head[n] = hn::Add(front.head[n], hn::MulAdd(per_flow, front.flow[n], rise));
      front.head_slope[n] = hn::MulAdd(slope, front.flow_slope[n], front.head_slope[n]);
    }
  }

  HWY_ATTR void pass_reach_each(std::int32_t which, Front& front) {
    const D d;
    const Reach& reach = tree_.reaches[index(which)];
    Lane flow, lost, slope;
    store(front.flow, flow, from_);
    for (std::size_t lane = from_; lane < from_ + group; ++lane) {
      const FrictionLaw& law = differences_.friction.empty()
                                   ? reach.friction
                                   : differences_.friction[index(which) * lanes + lane];
      const Loss wall = law.per_metre(flow[lane]);
      const double fitting =
          reach.fitting * (differences_.fitting_factor.empty()
                               ? 1
                               : differences_.fitting_factor[index(which)][lane]);
      lost[lane] = reach.length * wall.head + fitting * flow[lane] * flow[lane];
      slope[lane] = reach.length * wall.slope + 2 * fitting * flow[lane];
    }
    const Vectors head = load(lost, from_), rises = load(slope, from_);
    for (std::size_t n = 0; n < side_by_side; ++n) {
      front.head[n] = hn::Add(front.head[n], hn::Add(head[n], hn::Set(d, reach.ground_rise)));
      front.head_slope[n] = hn::MulAdd(rises[n], front.flow_slope[n], front.head_slope[n]);
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
    Lane largest_energy, largest_mass, flow_scale, nearest, sum_of_gaps;
    store(sum, sum_of_gaps, from_);
    store(energy, largest_energy, from_);
    store(mass, largest_mass, from_);
    store(nearest_, nearest, from_);
    for (std::size_t s = 0; s < work_.sources.size(); ++s) correct_source(s, largest_energy);
    store(flow_scale_, flow_scale, from_);
    std::uint32_t met = 0;
    bool all_near = true;
    for (std::size_t lane = 0; lane < group; ++lane) {
      const std::size_t at = from_ + lane;
      const double flow = flow_scale[at];
      block_.energy[at] = share_of(largest_energy[at], tree_.head_span);
      block_.mass[at] = share_of(largest_mass[at], flow);
      const bool it_is = std::isfinite(sum_of_gaps[at]) &&
                         largest_energy[at] <= aim * tree_.head_span &&
                         largest_mass[at] <= aim * flow && nearest[at] > plan_.ramp;
      if (it_is) met |= std::uint32_t{1} << lane;
      all_near = all_near && (((wanted >> lane) & 1) == 0 || block_.energy[at] < near);
    }
    with_slopes_ = !(all_near && with_slopes_);
    return met;
  }

  static double share_of(double part, double whole) { return part == 0 ? 0 : part / whole; }

  void correct_source(std::size_t which, Lane& largest_energy) {
    SourceLanes& source = work_.sources[which];
    for (std::size_t lane = from_; lane < from_ + group; ++lane) {
      const SupplyLaw& law = differences_.supply.empty()
                                 ? *tree_.sources[which].law
                                 : differences_.supply[which * lanes + lane];
      block_.source_head[which][lane] = source.head[lane];
      block_.source_flow[which][lane] = source.flow[lane];
      source.rise[lane] = 0;
      if (law.is_held()) continue;
      if (!(source.flow[lane] < most_flow)) {
        largest_energy[lane] = HUGE_VAL;
        continue;
      }
      const HeadAtFlow given = law.at(std::max(0.0, source.flow[lane]));
      const double gap = given.head - source.head[lane];
      source.rise[lane] = gap / (1 - given.slope * source.slope[lane]);
      largest_energy[lane] = std::max(largest_energy[lane], std::abs(gap));
    }
  }

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

  /// From this share of the head span one step or two lead to the aim, the second with the slopes of
  /// the first.
  static constexpr double near = 1e-4;
  static constexpr double most_by_bend = 0.1;  // share of a step
  static constexpr double aim = 1e-13;         // within the tolerance with some to spare
  static constexpr double most_flow = 1e6;  // no supply gives that: the lane has gone astray [m3/s]

  LanesWork& work_;
  const LanesPlan& plan_;
  const Tree& tree_;
  const Differences& differences_;
  LaneBlock& block_;
  std::size_t from_;
  bool with_slopes_ = true;
  bool only_loud_ = false;
  Vectors nearest_;
  Vectors flow_scale_;
};

HWY_ATTR void march_block(LanesWork& work, std::size_t count) {
  for (std::size_t from = 0; from < count; from += group) Marcher(work, from).run(count);
}

std::size_t width_of_target() {
  return width;
}

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace hydro {

HWY_EXPORT(march_block);
HWY_EXPORT(width_of_target);

void march(LanesWork& work, std::size_t count) {
  HWY_DYNAMIC_DISPATCH(march_block)(work, count);
}

std::size_t vector_width() {
  return HWY_DYNAMIC_DISPATCH(width_of_target)();
}

}  // namespace hydro
#endif
