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

/// The head before the run at which an outlet's own is this; none where the law is not known.
/// @param heads of the outlet at points_to_try(), which fall; the bound is among them
std::optional<double> crossing(const Lane& heads, double bound, const Interval& range) {
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

bool OutletsByHead::learn(std::span<const OutletAtPlace> outlets, const LanesInPart::Tried& tried) {
  range_ = tried.range;
  WeakestInLanes weakest;
  // None that is so at no head; of one that is so at all heads but was not before nothing is known.
  const auto note = [&](const Lane& heads, double bound, bool falls, std::vector<double>& list) {
    if (falls ? bound <= heads[lanes - 1] : bound >= heads[0]) return true;
    const std::optional<double> found = crossing(heads, bound, range_);
    if (found) list.push_back(*found);
    return found.has_value();
  };
  for (const OutletAtPlace& it : outlets) {
    const OutletBounds& bounds = it.bounds;
    const Lane& heads = tried.block.outlet_head[it.place];
    for (std::size_t lane = 0; lane + 1 < lanes; ++lane)
      if (!(heads[lane] > heads[lane + 1])) return false;
    if (!(heads[lanes - 1] > 0)) return false;
    // Where its own regulator holds it lower, it was so before.
    if (bounds.below_rated <= bounds.held &&
        !note(heads, bounds.below_rated, true, falls_below_rated_))
      return false;
    if (bounds.out_of_work <= bounds.held &&
        !note(heads, bounds.out_of_work, true, falls_out_of_work_))
      return false;
    if (bounds.above_maximum <= bounds.held &&
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
    const OutletAtPlace& it =
        *std::ranges::find(outlets, static_cast<std::size_t>(which), &OutletAtPlace::outlet);
    auto head = through(tried.block.head[it.place], stand_in_tolerance);
    auto outlet_head = through(tried.block.outlet_head[it.place], stand_in_tolerance);
    if (!head || !outlet_head) return false;
    weakest_.push_back({it.outlet,
                        std::move(*head),
                        std::move(*outlet_head),
                        it.bounds.per_rated,
                        it.bounds.held});
  }
  return true;
}

void OutletsByHead::count(const Lane& fed,
                          std::size_t lanes_used,
                          double doubt,
                          BefallenInLanes& befallen) const {
  constexpr double roundings = 1e-9;  // by which a polynomial may miss a share
  if (are_between(fed,
                  highest_fall_ + doubt,
                  lowest_rise_ - doubt,
                  befallen.weakest.share,
                  least_share_ * (1 - roundings)))
    return;
  const auto look_up = [&](const std::vector<double>& bounds, auto order, Lane& counted) {
    if (bounds.empty()) return;
    for (std::size_t lane = 0; lane < lanes_used; ++lane)
      counted[lane] += passed(bounds, fed[lane], order, doubt, befallen.is_doubtful[lane]);
  };
  look_up(falls_below_rated_, std::greater{}, befallen.below_rated);
  look_up(falls_out_of_work_, std::greater{}, befallen.out_of_work);
  look_up(rises_above_maximum_, std::less{}, befallen.above_maximum);
  for (const OutletByHead& it : weakest_) meet_by_head(it, range_, fed, befallen.weakest);
}

}  // namespace hydro
