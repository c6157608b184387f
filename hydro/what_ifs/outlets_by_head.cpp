#include "hydro/what_ifs/outlets_by_head.hpp"

#include "hydro/what_ifs/outlet_condition.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <set>
#include <utility>

#include <boost/math/tools/toms748_solve.hpp>

namespace hydro {
namespace {

double rated_head(const Outlet& kind, double weight_density) {
  return si(kind.rated_pressure()) / weight_density;
}

/// The head before the run at which an outlet's own is this; none where the law is not known.
/// @param heads of the outlet at points_to_try(), which fall; the bound is among them
std::optional<double> crossing(const Lane& heads, double bound, const Range& range) {
  const std::optional<Chebyshev> law = through(heads, stand_in_tolerance);
  if (!law) return {};
  const auto gap = [&](double place) { return value_at(*law, place) - bound; };
  if (!(gap(-1) < 0 && gap(1) > 0)) return {};
  std::uintmax_t most_steps = 100;
  const auto [below, above] = boost::math::tools::toms748_solve(
      gap, -1.0, 1.0, boost::math::tools::eps_tolerance<double>(50), most_steps);
  return range.middle() + range.half() * (below + above) / 2;
}

/// How many of a falling list are above this head, and whether one is too near to tell.
template <class Order>
double passed(
    const std::vector<double>& bounds, double head, Order order, double doubt, double& near) {
  const auto first =
      std::ranges::partition_point(bounds, [&](double bound) { return order(bound, head); });
  if ((first != bounds.end() && std::abs(*first - head) <= doubt) ||
      (first != bounds.begin() && std::abs(*(first - 1) - head) <= doubt))
    near = 1;
  return static_cast<double>(first - bounds.begin());
}

}  // namespace

OutletBounds::OutletBounds(const Outlet& kind,
                           OutletCondition was,
                           double held_head,
                           double weight_density)
    : below_rated(rated_head(kind, weight_density) * (1 - 1e-6)),
      out_of_work(kind.minimum ? si(*kind.minimum) / weight_density * (1 - 1e-6) : 0),
      above_maximum(kind.maximum ? si(*kind.maximum) / weight_density * (1 + 1e-6) : no_limit),
      per_rated(1 / rated_head(kind, weight_density)),
      held(held_head),
      was_below_rated(is_below_rated(was)),
      was_out_of_work(is_out_of_work(was)),
      was_dry(is_dry(was)),
      was_above_maximum(is_above_maximum(was)) {
  below_rated = std::max(below_rated, out_of_work);
}

Extremes extremes(const Lane& values) {
  // Several side by side, so that none waits for another.
  constexpr std::size_t abreast = 8;
  std::array<double, abreast> least, most;
  std::copy_n(values.at.begin(), abreast, least.begin());
  most = least;
  for (std::size_t from = abreast; from < lanes; from += abreast)
    for (std::size_t i = 0; i < abreast; ++i) {
      const double value = values[from + i];
      least[i] = value < least[i] ? value : least[i];
      most[i] = value > most[i] ? value : most[i];
    }
  return {*std::ranges::min_element(least), *std::ranges::max_element(most)};
}

bool OutletsByHead::learn(const std::vector<AtPlace>& outlets,
                          const std::vector<OutletBounds>& all_bounds,
                          const LanesInPart::Tried& tried) {
  range_ = tried.range;
  WeakestInLanes weakest;
  // None that is so at no head; of one that is so at all heads but was not before nothing is known.
  const auto note = [&](const Lane& heads, double bound, bool falls, std::vector<double>& list) {
    if (falls ? bound <= heads[lanes - 1] : bound >= heads[0]) return true;
    const std::optional<double> found = crossing(heads, bound, range_);
    if (found) list.push_back(*found);
    return found.has_value();
  };
  for (const AtPlace& it : outlets) {
    const OutletBounds& bounds = all_bounds[it.outlet];
    const Lane& heads = tried.block.outlet_head[it.place];
    for (std::size_t lane = 0; lane + 1 < lanes; ++lane)
      if (!(heads[lane] > heads[lane + 1])) return false;
    if (!(heads[lanes - 1] > 0)) return false;
    const auto can_be = [&](double bound) { return bound <= bounds.held; };
    if (!bounds.was_below_rated && can_be(bounds.below_rated) &&
        !note(heads, bounds.below_rated, true, falls_below_rated_))
      return false;
    if (!bounds.was_out_of_work && can_be(bounds.out_of_work) &&
        !note(heads, bounds.out_of_work, true, falls_out_of_work_))
      return false;
    if (!bounds.was_above_maximum && can_be(bounds.above_maximum) &&
        !note(heads, bounds.above_maximum, false, rises_above_maximum_))
      return false;
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const double at_device = std::min(heads[lane], bounds.held);
      weakest.meet(lane,
                   static_cast<double>(it.outlet),
                   at_device * bounds.per_rated,
                   tried.block.head[it.place][lane],
                   at_device);
    }
  }
  std::ranges::sort(falls_below_rated_, std::greater{});
  std::ranges::sort(falls_out_of_work_, std::greater{});
  std::ranges::sort(rises_above_maximum_);
  for (const auto* falls : {&falls_below_rated_, &falls_out_of_work_})
    if (!falls->empty()) highest_fall_ = std::max(highest_fall_, falls->front());
  if (!rises_above_maximum_.empty()) lowest_rise_ = rises_above_maximum_.front();
  least_share_ = weakest.share[lanes - 1];
  if (outlets.empty()) return true;

  constexpr std::size_t few = 4;
  const std::set<double> candidates(weakest.outlet.at.begin(), weakest.outlet.at.end());
  if (candidates.size() > few) return false;
  for (const double which : candidates) {
    const auto outlet = static_cast<std::size_t>(which);
    const std::size_t place = std::ranges::find(outlets, outlet, &AtPlace::outlet)->place;
    auto head = through(tried.block.head[place], stand_in_tolerance);
    auto outlet_head = through(tried.block.outlet_head[place], stand_in_tolerance);
    if (!head || !outlet_head) return false;
    const OutletBounds& bounds = all_bounds[outlet];
    weakest_.push_back(
        {outlet, std::move(*head), std::move(*outlet_head), bounds.per_rated, bounds.held});
  }
  return true;
}

void OutletsByHead::count(const Lane& fed,
                          std::size_t lanes_used,
                          double doubt,
                          BefallenInLanes& befallen) const {
  const Extremes heads = extremes(fed);
  const bool nothing_new = heads.least - doubt > highest_fall_ && heads.most + doubt < lowest_rise_;
  constexpr double roundings = 1e-9;  // by which a polynomial may miss a share
  if (nothing_new && least_share_ * (1 - roundings) > extremes(befallen.weakest.share).most) return;
  const auto look_up = [&](const std::vector<double>& bounds, auto order, Lane& counted) {
    // Mostly none is reached in any lane.
    if (bounds.empty() ||
        !(order(bounds.front(), heads.least - doubt) || order(bounds.front(), heads.most + doubt)))
      return;
    for (std::size_t lane = 0; lane < lanes_used; ++lane)
      counted[lane] += passed(bounds, fed[lane], order, doubt, befallen.is_doubtful[lane]);
  };
  look_up(falls_below_rated_, std::greater{}, befallen.below_rated);
  look_up(falls_out_of_work_, std::greater{}, befallen.out_of_work);
  look_up(rises_above_maximum_, std::less{}, befallen.above_maximum);
  for (const Candidate& it : weakest_) {
    // Its share rises with the head, so at the least head it is least.
    const double least_share =
        std::min(value_at(it.outlet_head, range_.place_of(heads.least)), it.held) * it.per_rated;
    if (least_share > extremes(befallen.weakest.share).most) continue;
    for (std::size_t lane = 0; lane < lanes_used; ++lane) {
      const double place = range_.place_of(fed[lane]);
      const double at_device = std::min(value_at(it.outlet_head, place), it.held);
      befallen.weakest.meet(lane,
                            static_cast<double>(it.outlet),
                            at_device * it.per_rated,
                            value_at(it.head, place),
                            at_device);
    }
  }
}

}  // namespace hydro
