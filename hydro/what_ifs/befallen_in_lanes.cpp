#include "hydro/what_ifs/befallen_in_lanes.hpp"

#include "hydro/what_ifs/outlet_condition.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <span>

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "hydro/what_ifs/befallen_in_lanes.cpp"
#ifndef HWY_DISABLED_TARGETS
#define HWY_DISABLED_TARGETS (HWY_SVE | HWY_SVE2 | HWY_SVE_256 | HWY_SVE2_128 | HWY_RVV)
#endif
#include <hwy/foreach_target.h>
// After foreach_target.h.
#include "hydro/solver/lane_vectors-inl.hpp"

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

/// One vector of WeakestInLanes.
class WeakestInVector {
 public:
  HWY_ATTR WeakestInVector(WeakestInLanes& of, std::size_t from)
      : of_(of),
        from_(from),
        share_(hn::Load(d_, of.share.at.data() + from)),
        head_(hn::Load(d_, of.head.at.data() + from)),
        outlet_head_(hn::Load(d_, of.outlet_head.at.data() + from)),
        outlet_(hn::Load(d_, of.outlet.at.data() + from)) {}

  /// No number is weaker than none.
  HWY_ATTR bool may_be(V share) const { return !hn::AllFalse(d_, hn::Le(share, share_)); }

  HWY_ATTR void meet(std::size_t which, V share, V head, V at_device) {
    const V outlet = hn::Set(d_, static_cast<double>(which));
    const Mask is_first = hn::And(hn::Eq(head, head_), hn::Lt(outlet, outlet_));
    const Mask is_weaker =
        hn::Or(hn::Lt(share, share_),
               hn::And(hn::Eq(share, share_), hn::Or(hn::Lt(head, head_), is_first)));
    share_ = hn::IfThenElse(is_weaker, share, share_);
    head_ = hn::IfThenElse(is_weaker, head, head_);
    outlet_head_ = hn::IfThenElse(is_weaker, at_device, outlet_head_);
    outlet_ = hn::IfThenElse(is_weaker, outlet, outlet_);
  }

  HWY_ATTR void end() {
    hn::Store(share_, d_, of_.share.at.data() + from_);
    hn::Store(head_, d_, of_.head.at.data() + from_);
    hn::Store(outlet_head_, d_, of_.outlet_head.at.data() + from_);
    hn::Store(outlet_, d_, of_.outlet.at.data() + from_);
  }

 private:
  D d_;
  WeakestInLanes& of_;
  std::size_t from_;
  V share_, head_, outlet_head_, outlet_;
};

HWY_ATTR void count_vector(std::span<const OutletAtPlace> outlets,
                           std::span<const Differences::Replaced> broken,
                           const LaneBlock& block,
                           std::size_t from,
                           BefallenInLanes& befallen) {
  const D d;
  const V one = hn::Set(d, 1.0);
  const auto counted = [&](const Lane& lane)
                           HWY_ATTR { return hn::Load(d, lane.at.data() + from); };
  V below_rated = counted(befallen.below_rated), out_of_work = counted(befallen.out_of_work),
    dry = counted(befallen.dry), above_maximum = counted(befallen.above_maximum);
  WeakestInVector weakest(befallen.weakest, from);
  auto next = broken.rbegin();
  // From the far end on, where the weakest mostly is.
  for (std::size_t k = outlets.size(); k-- > 0;) {
    const OutletAtPlace& it = outlets[k];
    V P = hn::Min(hn::Load(d, block.outlet_head[it.place].at.data() + from),
                  hn::Set(d, it.bounds.held));
    while (next != broken.rend() && next->place > it.place) ++next;
    if (next != broken.rend() && next->place == it.place) {
      Lane own;
      hn::Store(P, d, own.at.data() + from);
      for (; next != broken.rend() && next->place == it.place; ++next)
        own[next->lane] = std::numeric_limits<double>::quiet_NaN();
      P = hn::Load(d, own.at.data() + from);
    }
    const auto add_if = [&](Mask is_so, V& count)
                            HWY_ATTR { count = hn::Add(count, hn::IfThenElseZero(is_so, one)); };
    add_if(hn::Lt(P, hn::Set(d, it.bounds.below_rated)), below_rated);
    add_if(hn::Lt(P, hn::Set(d, it.bounds.out_of_work)), out_of_work);
    add_if(hn::Lt(P, hn::Set(d, it.bounds.dry)), dry);
    add_if(hn::Gt(P, hn::Set(d, it.bounds.above_maximum)), above_maximum);
    const V share = hn::Mul(P, hn::Set(d, it.bounds.per_rated));
    if (weakest.may_be(share))
      weakest.meet(it.outlet, share, hn::Load(d, block.head[it.place].at.data() + from), P);
  }
  hn::Store(below_rated, d, befallen.below_rated.at.data() + from);
  hn::Store(out_of_work, d, befallen.out_of_work.at.data() + from);
  hn::Store(dry, d, befallen.dry.at.data() + from);
  hn::Store(above_maximum, d, befallen.above_maximum.at.data() + from);
  weakest.end();
}

HWY_ATTR void count_all(std::span<const OutletAtPlace> outlets,
                        std::span<const Differences::Replaced> broken,
                        const LaneBlock& block,
                        BefallenInLanes& befallen) {
  for (std::size_t from = 0; from < lanes; from += width)
    count_vector(outlets, broken, block, from, befallen);
}

HWY_ATTR void meet_all(const OutletByHead& outlet,
                       const Interval& range,
                       const Lane& fed,
                       WeakestInLanes& weakest) {
  const D d;
  for (std::size_t from = 0; from < lanes; from += group) {
    const Vectors place = place_in(range, load(fed, from));
    const Vectors unheld = value_at(outlet.outlet_head, place);
    Vectors head;
    bool is_known = false;
    for (std::size_t n = 0; n < side_by_side; ++n) {
      WeakestInVector so_far(weakest, from + n * width);
      const V P = hn::Min(unheld[n], hn::Set(d, outlet.held));
      const V share = hn::Mul(P, hn::Set(d, outlet.per_rated));
      if (!so_far.may_be(share)) continue;
      if (!is_known) head = value_at(outlet.head, place);
      is_known = true;
      so_far.meet(outlet.outlet, share, head[n], P);
      so_far.end();
    }
  }
}

HWY_ATTR bool all_between(
    const Lane& heads, double low, double high, const Lane& shares, double least_share) {
  const D d;
  for (std::size_t from = 0; from < lanes; from += width) {
    const V head = hn::Load(d, heads.at.data() + from),
            share = hn::Load(d, shares.at.data() + from);
    const Mask is_between = hn::And(hn::Gt(head, hn::Set(d, low)), hn::Lt(head, hn::Set(d, high)));
    if (!hn::AllTrue(d, hn::And(is_between, hn::Lt(share, hn::Set(d, least_share))))) return false;
  }
  return true;
}

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace hydro {

HWY_EXPORT(count_all);
HWY_EXPORT(meet_all);
HWY_EXPORT(all_between);

OutletBounds::OutletBounds(const Outlet& kind,
                           OutletCondition was,
                           double held_head,
                           double weight_density)
    : held(held_head) {
  constexpr double never_below = -no_limit, never_above = no_limit;
  constexpr double least_wet = std::numeric_limits<double>::min();
  const double rated = si(kind.rated_pressure()) / weight_density;
  const double works = kind.minimum ? si(*kind.minimum) / weight_density * (1 - 1e-6) : 0;
  below_rated = is_below_rated(was) ? never_below : std::max(rated * (1 - 1e-6), works);
  out_of_work = is_out_of_work(was) ? never_below : std::max(works, least_wet);
  dry = is_dry(was) ? never_below : least_wet;
  above_maximum = is_above_maximum(was) || !kind.maximum
                      ? never_above
                      : si(*kind.maximum) / weight_density * (1 + 1e-6);
  per_rated = 1 / rated;
}

void count_at_places(std::span<const OutletAtPlace> outlets,
                     std::span<const Differences::Replaced> broken,
                     const LaneBlock& block,
                     BefallenInLanes& befallen) {
  HWY_DYNAMIC_DISPATCH(count_all)(outlets, broken, block, befallen);
}

void meet_by_head(const OutletByHead& outlet,
                  const Interval& range,
                  const Lane& fed,
                  WeakestInLanes& weakest) {
  HWY_DYNAMIC_DISPATCH(meet_all)(outlet, range, fed, weakest);
}

bool are_between(
    const Lane& heads, double low, double high, const Lane& shares, double least_share) {
  return HWY_DYNAMIC_DISPATCH(all_between)(heads, low, high, shares, least_share);
}

}  // namespace hydro
#endif
