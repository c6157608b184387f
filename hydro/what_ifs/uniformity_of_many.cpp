#include "hydro/what_ifs/uniformity_of_many.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <span>
#include <utility>
#include <vector>

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "hydro/what_ifs/uniformity_of_many.cpp"
#ifndef HWY_DISABLED_TARGETS
#define HWY_DISABLED_TARGETS (HWY_SVE | HWY_SVE2 | HWY_SVE_256 | HWY_SVE2_128 | HWY_RVV)
#endif
#include <hwy/foreach_target.h>
// After foreach_target.h.
#include "hydro/solver/lane_vectors-inl.hpp"

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

/// Sums of the lowest `part` of the flows of rows side by side, a part of one flow for a part of 1:
/// a threshold below which just as many lie is sought between the least and the greatest, straight
/// and by halves in turn. Which flows lie below it, and so the sum, depends on no other row. Leaves
/// not a number where flows that are equal let no threshold be.
HWY_ATTR void sum_lowest(const double* HWY_RESTRICT rows,
                         std::size_t size,
                         double part,
                         double* HWY_RESTRICT sums) {
  constexpr int most_steps = 24;
  constexpr int straight_steps = 6;
  const D d;
  const V none = hn::Zero(d), one = hn::Set(d, 1.0);
  const V whole = hn::Set(d, std::floor(part));
  const auto row = [&](std::size_t j) HWY_ATTR { return hn::LoadU(d, rows + j * width); };
  V low = row(0), high = row(0);
  for (std::size_t j = 1; j < size; ++j) {
    low = hn::Min(low, row(j));
    high = hn::Max(high, row(j));
  }
  V below_low = none, below_high = hn::Set(d, static_cast<double>(size)), threshold = low;
  auto is_found = hn::Lt(one, none);
  for (int step = 0; step < most_steps && !hn::AllTrue(d, is_found); ++step) {
    const V share = step < straight_steps || step % 2 == 0
                        ? hn::Div(hn::Sub(hn::Add(whole, hn::Set(d, 0.5)), below_low),
                                  hn::Sub(below_high, below_low))
                        : hn::Set(d, 0.5);
    threshold =
        hn::IfThenElse(is_found, threshold, hn::Add(low, hn::Mul(hn::Sub(high, low), share)));
    V below = none;
    for (std::size_t j = 0; j < size; ++j)
      below = hn::Add(below, hn::IfThenElseZero(hn::Lt(row(j), threshold), one));
    const auto is_low = hn::Lt(below, whole), is_high = hn::Gt(below, whole);
    low = hn::IfThenElse(is_low, threshold, low);
    below_low = hn::IfThenElse(is_low, below, below_low);
    high = hn::IfThenElse(is_high, threshold, high);
    below_high = hn::IfThenElse(is_high, below, below_high);
    is_found = hn::Eq(below, whole);
  }
  V sum = none, next = hn::Set(d, std::numeric_limits<double>::max());
  for (std::size_t j = 0; j < size; ++j) {
    const V flow = row(j);
    const auto is_below = hn::Lt(flow, threshold);
    sum = hn::Add(sum, hn::IfThenElseZero(is_below, flow));
    next = hn::Min(next, hn::IfThenElse(is_below, next, flow));
  }
  sum = hn::Add(sum, hn::Mul(hn::Sub(hn::Set(d, part), whole), next));
  const V unknown = hn::Set(d, std::numeric_limits<double>::quiet_NaN());
  hn::StoreU(hn::IfThenElse(is_found, sum, unknown), d, sums);
}

std::size_t row_width() {
  return width;
}

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace hydro {

HWY_EXPORT(sum_lowest);
HWY_EXPORT(row_width);

namespace {

constexpr std::size_t most_rows = 8;  // side by side, in the widest vectors

double sum_of_lowest(std::vector<double> flows, double part) {
  const auto edge = flows.begin() + static_cast<std::ptrdiff_t>(part);
  std::nth_element(flows.begin(), edge, flows.end());
  const double rest = part - std::floor(part);
  return std::accumulate(flows.begin(), edge, 0.0) + (rest > 0 ? rest * *edge : 0);
}

}  // namespace

void UniformityOfMany::find(const SolvedBlock& block, const std::vector<std::size_t>& members) {
  const std::size_t count = block.count;
  const auto of_members = static_cast<double>(members.size());
  mean_.assign(count, 0);
  for (const std::size_t member : members) {
    const std::span<const double> flows = block.flows(member);
    for (std::size_t i = 0; i < count; ++i) mean_[i] += flows[i];
  }
  for (double& mean : mean_) mean /= of_members;
  christiansen.assign(count, 0);
  statistical.assign(count, 0);
  for (const std::size_t member : members) {
    const std::span<const double> flows = block.flows(member);
    for (std::size_t i = 0; i < count; ++i) {
      const double apart = flows[i] - mean_[i];
      christiansen[i] += std::abs(apart);
      statistical[i] += apart * apart;
    }
  }
  find_lowest_quarters(block, members);
  distribution.resize(count);
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  for (std::size_t i = 0; i < count; ++i) {
    const double mean = mean_[i] > 0 ? mean_[i] : nothing;
    christiansen[i] = 100 * (1 - christiansen[i] / (of_members * mean));
    distribution[i] = 100 * lowest_quarter_[i] / mean;
    statistical[i] = members.size() > 1
                         ? 100 * (1 - std::sqrt(statistical[i] / (of_members - 1)) / mean)
                         : nothing;
  }
}

void UniformityOfMany::find_lowest_quarters(const SolvedBlock& block,
                                            const std::vector<std::size_t>& members) {
  const std::size_t width = HWY_DYNAMIC_DISPATCH(row_width)();
  const std::size_t size = members.size();
  const double quarter = std::max(1.0, static_cast<double>(size) / 4);
  rows_.resize(width * size);
  double* const rows = rows_.data();
  lowest_quarter_.resize(block.count);
  for (std::size_t from = 0; from < block.count; from += width) {
    const std::size_t some = std::min(width, block.count - from);
    for (std::size_t j = 0; j < size; ++j) {
      const std::span<const double> flows = block.flows(members[j]).subspan(from, some);
      for (std::size_t k = 0; k < width; ++k) rows[j * width + k] = flows[k < some ? k : 0];
    }
    std::array<double, most_rows> sums;
    HWY_DYNAMIC_DISPATCH(sum_lowest)(rows, size, quarter, sums.data());
    for (std::size_t k = 0; k < some; ++k) {
      if (std::isnan(sums[k])) {
        std::vector<double> flows(size);
        for (std::size_t j = 0; j < size; ++j) flows[j] = rows[j * width + k];
        sums[k] = sum_of_lowest(std::move(flows), quarter);
      }
      lowest_quarter_[from + k] = sums[k] / quarter;
    }
  }
}

}  // namespace hydro
#endif
