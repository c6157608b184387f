// lanes_marcher-inl.hpp: one run marched for a group of lanes, for the widths that Highway compiles.
// Not installed.
//
// What      As lanes.hpp says of a run: from its far end on, every law on the way is explicit.
// Source    Highway's guide to per-target headers for the guard.
#if defined(HYDRO_SOLVER_LANES_MARCHER_INL_HPP) == defined(HWY_TARGET_TOGGLE)
#ifdef HYDRO_SOLVER_LANES_MARCHER_INL_HPP
#undef HYDRO_SOLVER_LANES_MARCHER_INL_HPP
#else
#define HYDRO_SOLVER_LANES_MARCHER_INL_HPP
#endif

#include "hydro/solver/discharge.hpp"
#include "hydro/solver/lane_vectors-inl.hpp"
#include "hydro/solver/lanes_plan.hpp"
#include "hydro/solver/vector_power-inl.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

constexpr int most_passes = 24;

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

/// Marches one group of lanes along one run after another.
class Marcher {
 protected:
  HWY_ATTR Marcher(LanesWork& work, std::size_t from)
      : work_(work),
        plan_(*work.plan),
        tree_(*work.plan->tree),
        differences_(*work.differences),
        block_(*work.block),
        from_(from) {}

  /// What a polynomial says, and how that goes with what it is asked at.
  struct Said {
    Vectors value;
    Vectors slope;
  };

  /// A bit for each of this group's lanes that is not idle.
  std::uint32_t wanted_of(std::size_t count) const {
    return static_cast<std::uint32_t>((std::uint64_t{1} << std::min(count, from_ + group)) - 1) >>
           from_;
  }

  HWY_ATTR Vectors feeding(const Run& run) const {
    return run.fed_by == none ? load(work_.sources[index(run.source)].head, from_)
                              : load(work_.runs[index(run.fed_by)].end_head, from_);
  }

  /// Clenshaw's recurrence, and its derivative beside it.
  HWY_ATTR Said ask(const Interval& range, const Chebyshev& polynomial, const Vectors& at) {
    const D d;
    const Vectors place = place_in(range, at);
    Said said{all(0), all(0)};
    Vectors before = all(0), slope_before = all(0);
    for (std::size_t k = polynomial.size(); k-- > 1;) {
      const V term = hn::Set(d, polynomial[k]);
      HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) {
        const V twice = hn::Add(place[n], place[n]);
        const V slope = hn::MulAdd(
            twice, said.slope[n], hn::Sub(hn::Add(said.value[n], said.value[n]), slope_before[n]));
        const V value = hn::MulAdd(twice, said.value[n], hn::Sub(term, before[n]));
        slope_before[n] = said.slope[n];
        said.slope[n] = slope;
        before[n] = said.value[n];
        said.value[n] = value;
      }
    }
    const V term = hn::Set(d, polynomial.front());
    const V per_half = hn::Set(d, 1 / range.half());
    HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) {
      farthest_[n] = hn::Max(farthest_[n], hn::Abs(place[n]));
      said.slope[n] = hn::Mul(
          hn::MulAdd(place[n], said.slope[n], hn::Sub(said.value[n], slope_before[n])), per_half);
      said.value[n] = hn::MulAdd(place[n], said.value[n], hn::Sub(term, before[n]));
    }
    return said;
  }

  HWY_ATTR void answer_by_stand_in(std::size_t r) {
    const Run& run = tree_.runs[r];
    const StandIn& it = (*work_.stand_ins)[r];
    const Said said = ask(it.range, it.flow, feeding(run));
    draw(run, said.value, said.slope);
  }

  /// Where the head before a run's inlet is kept.
  Lane& fed(const Run& run) {
    return run.fed_by == none ? work_.sources[index(run.source)].head
                              : work_.runs[index(run.fed_by)].end_head;
  }

  HWY_ATTR void draw_at_end(std::size_t r, const Vectors& flow) {
    store(flow, work_.runs[r].end_flow, from_);
    store(all(0), work_.runs[r].end_slope, from_);
  }

  HWY_ATTR void begin_pass() {
    nearest_ = all(HUGE_VAL);
    flow_scale_ = all(0);
    farthest_ = all(0);
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
    const bool has_roots = !work_.roots.empty();
    const bool remembers = remembers_;
    std::size_t i = place;
    for (;; --i) {
      const Place& here = tree_.places[i];
      store(head, block_.head[i], from_);
      if (here.mouth != none) {
        const PlannedMouth& mouth = plan_.mouths[index(here.mouth)];
        const V c = hn::Set(d, mouth.coefficient);
        const V height = hn::Set(d, mouth.height);
        Vectors coefficient = all(mouth.coefficient);
        Vectors available;
        HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) available[n] =
            hn::Sub(head[n], height);
        if (outlets_differ) {
          const Vectors factor = load(differences_.outlet_factor[i], from_);
          HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) coefficient[n] =
              hn::Mul(factor[n], c);
        }
        if (has_roots && HWY_UNLIKELY(work_.root_at[i] != none)) {
          const RootInLanes& root = work_.roots[index(work_.root_at[i])];
          coefficient = load(root.coefficient, from_);
          const Vectors heights = load(root.height, from_);
          HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) available[n] =
              hn::Sub(head[n], heights[n]);
        }
        HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) {
          nearest[n] = hn::Min(nearest[n], hn::Abs(available[n]));
          const V root = hn::Sqrt(hn::Max(available[n], ramp));
          const V wet = hn::IfThenElseZero(hn::Gt(available[n], ramp), coefficient[n]);
          const V out = hn::Mul(wet, root);
          const V device = hn::IfThenElseZero(hn::Gt(available[n], ramp), available[n]);
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
      const Vectors power = remembers ? power_as_remembered(flow, i)
                                      : power_of_flow(flow, plan_.places_as_they_are[i]);
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
    Vectors power;
    for (std::size_t n = 0; n < side_by_side; ++n)
      power[n] = hn::MulSub(flow[n], hn::Set(d, like.per_flow), hn::Set(d, 1.0));
    if (HWY_LIKELY(power_by_series(power))) {
      HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) power[n] =
          hn::Mul(power[n], hn::Set(d, like.power));
      return power;
    }
    HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) power[n] =
        power_of(d, flow[n], slope_exponent);
    return power;
  }

  /// The same about that of an earlier pass, which is noted if there is none near.
  HWY_ATTR HWY_NOINLINE Vectors power_as_remembered(const Vectors& flow, std::size_t place) const {
    const D d;
    Remembered& like = work_.remembered[place - remembered_from_];
    const std::uint32_t own = std::uint32_t{1} << from_;
    Vectors power;
    if (HWY_LIKELY((like.is_known & own) != 0)) {
      const Vectors per_flow = load(like.per_flow, from_), noted = load(like.power, from_);
      HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) power[n] =
          hn::MulSub(flow[n], per_flow[n], hn::Set(d, 1.0));
      if (HWY_LIKELY(power_by_series(power))) {
        HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) power[n] =
            hn::Mul(power[n], noted[n]);
        return power;
      }
    }
    power = power_of_flow(flow, plan_.places_as_they_are[place]);
    Vectors per_flow;
    HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) per_flow[n] =
        hn::Div(hn::Set(d, 1.0), flow[n]);
    store(per_flow, like.per_flow, from_);
    store(power, like.power, from_);
    like.is_known |= own;
    return power;
  }

  /// (1 + u)^0.852 where u stood, if all lanes are near 1.
  static HWY_INLINE bool power_by_series(Vectors& u) {
    const D d;
    static constexpr BinomialSeries<15> series(slope_exponent);
    static constexpr BinomialSeries<10> short_series(slope_exponent);
    V farthest = hn::Zero(d);
    HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) farthest =
        hn::Max(farthest, hn::Abs(u[n]));
    if (HWY_LIKELY(hn::AllTrue(d, hn::Le(farthest, hn::Set(d, close_by))))) {
      HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) u[n] =
          polynomial(d, u[n], short_series.of);
      return true;
    }
    if (HWY_LIKELY(hn::AllTrue(d, hn::Le(farthest, hn::Set(d, nearby))))) {
      HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) u[n] =
          polynomial(d, u[n], series.of);
      return true;
    }
    return false;
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
    for (std::size_t i = index(work_.first_replaced[place]);
         i < differences_.replaced.size() && differences_.replaced[i].place == place;
         ++i) {
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
      power = remembers_ ? power_as_remembered(front.flow, place)
                         : power_of_flow(front.flow, plan_.places_as_they_are[place]);
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
  bool remembers_ = false;
  std::size_t remembered_from_ = 0;
  Vectors nearest_;
  Vectors flow_scale_;
  Vectors farthest_;  // place in the range of a stand-in that was asked, either way
};

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
