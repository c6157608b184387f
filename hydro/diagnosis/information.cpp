#include "hydro/diagnosis/information.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>

namespace hydro {
namespace {

constexpr double reach = 7;  // deviations on either side
constexpr double steps_a_deviation = 4;
/// What is narrower for the steps that there can be is taken as so many steps wide.
constexpr double least_steps = 1.5;
constexpr double most_steps = 8000;

double log2_term(double x) {
  return x > 0 ? x * std::log2(x) : 0;
}

}  // namespace

double information(const std::vector<Expected>& candidates) {
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  double narrowest = low;
  for (const Expected& candidate : candidates)
    for (const Part& part : candidate.parts) {
      low = std::min(low, part.mean - reach * part.deviation);
      high = std::max(high, part.mean + reach * part.deviation);
      narrowest = std::min(narrowest, part.deviation);
    }
  if (!(high > low)) return 0;
  const double step = std::max(narrowest / steps_a_deviation, (high - low) / most_steps);
  low -= reach * least_steps * step;
  high += reach * least_steps * step;
  const auto index = [&](double y) { return static_cast<std::size_t>((y - low) / step); };
  std::vector<double> all(index(high) + 2);
  std::vector<double> one(all.size());
  double by_candidate = 0;
  for (const Expected& candidate : candidates) {
    std::size_t first = all.size(), end = 0;
    for (const Part& part : candidate.parts) {
      const double deviation = std::max(part.deviation, least_steps * step);
      const double width = reach * deviation;
      const std::size_t from = index(std::max(low, part.mean - width));
      const std::size_t to = std::min(all.size() - 1, index(part.mean + width) + 1);
      first = std::min(first, from);
      end = std::max(end, to + 1);
      const double factor = part.weight / (deviation * std::sqrt(2 * std::numbers::pi));
      for (std::size_t i = from; i <= to; ++i) {
        const double x = (low + step * static_cast<double>(i) - part.mean) / deviation;
        one[i] += factor * std::exp(-0.5 * x * x);
      }
    }
    for (std::size_t i = first; i < end; ++i) {
      by_candidate += candidate.probability * log2_term(one[i]);
      all[i] += candidate.probability * one[i];
      one[i] = 0;
    }
  }
  double together = 0;
  for (const double density : all) together += log2_term(density);
  return std::max(0.0, step * (by_candidate - together));
}

double information(const std::vector<double>& probabilities,
                   const std::vector<std::vector<double>>& chances) {
  std::vector<double> all(chances.empty() ? 0 : chances.front().size());
  double left = 0;
  for (std::size_t c = 0; c < probabilities.size(); ++c) {
    left += probabilities[c] * entropy(chances[c]);
    for (std::size_t i = 0; i < all.size(); ++i) all[i] += probabilities[c] * chances[c][i];
  }
  return std::max(0.0, entropy(all) - left);
}

double entropy(const std::vector<double>& probabilities) {
  double sum = 0;
  for (const double it : probabilities) sum -= log2_term(it);
  return sum;
}

}  // namespace hydro
