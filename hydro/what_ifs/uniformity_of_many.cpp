#include "hydro/what_ifs/uniformity_of_many.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <span>

namespace hydro {
namespace {

/// Reorders them.
double mean_of_lowest_quarter(std::span<double> flows) {
  const double quarter = static_cast<double>(flows.size()) / 4;
  if (quarter <= 1) return std::ranges::min(flows);
  const auto edge = flows.begin() + static_cast<std::ptrdiff_t>(flows.size() / 4);
  std::ranges::nth_element(flows, edge);
  const double part = quarter - std::floor(quarter);
  return (std::accumulate(flows.begin(), edge, 0.0) + part * *edge) / quarter;
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
  constexpr std::size_t at_once = 8;  // realisations that share a line of the cache
  const std::size_t size = members.size();
  rows_.resize(at_once * size);
  lowest_quarter_.resize(block.count);
  for (std::size_t from = 0; from < block.count; from += at_once) {
    const std::size_t some = std::min(at_once, block.count - from);
    for (std::size_t j = 0; j < size; ++j) {
      const std::span<const double> flows = block.flows(members[j]).subspan(from, some);
      for (std::size_t k = 0; k < some; ++k) rows_[k * size + j] = flows[k];
    }
    for (std::size_t k = 0; k < some; ++k)
      lowest_quarter_[from + k] = mean_of_lowest_quarter(std::span(rows_).subspan(k * size, size));
  }
}

}  // namespace hydro
