// value_counts.hpp: how many of many values lie where, in little memory. Not installed.
//
// What      Counts of values in intervals: each doubling of the value is cut into 512 of one width;
//           what is below a least value, 0 too, is together. As counts are whole numbers, it does not
//           matter in which order values come or counts are added up.
// Accuracy  A quantile is off by at most the width of an interval: 1/512 of the value, or the least
//           value.
// Range     Values that are finite. Memory: 2 KB for each doubling between the smallest and the
//           largest value.
#pragma once

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace hydro {

class ValueCounts {
 public:
  explicit ValueCounts(double least) : least_(least) {}

  void add(double value) {
    if (!(value >= least_)) {
      ++below_least_;
      return;
    }
    const std::int64_t interval = interval_of(value);
    reach(interval, interval + 1);
    ++counts_[static_cast<std::size_t>(interval - first_)];
  }

  /// All of them: their intervals are made room for once.
  void add(std::span<const double> values) {
    if (values.empty()) return;
    double lowest = values.front(), highest = values.front();
    for (const double value : values) {
      lowest = std::min(lowest, value);
      highest = std::max(highest, value);
    }
    if (!(lowest >= least_)) {
      for (const double value : values) add(value);
      return;
    }
    reach(interval_of(lowest), interval_of(highest) + 1);
    for (const double value : values)
      ++counts_[static_cast<std::size_t>(interval_of(value) - first_)];
  }

  void add(const ValueCounts& other) {
    below_least_ += other.below_least_;
    if (other.counts_.empty()) return;
    reach(other.first_, other.first_ + static_cast<std::int64_t>(other.counts_.size()));
    for (std::size_t i = 0; i < other.counts_.size(); ++i)
      counts_[static_cast<std::size_t>(other.first_ - first_) + i] += other.counts_[i];
  }

  /// So that this share of the values is below, straight between values as if those of one interval
  /// were spread evenly over it. At least one value was added.
  double quantile(double share) const {
    std::size_t all = below_least_;
    for (const std::uint32_t count : counts_) all += count;
    const double place = share * static_cast<double>(all - 1);
    const double before = std::floor(place);
    const double low = value_at(static_cast<std::size_t>(before));
    const double high = value_at(std::min(static_cast<std::size_t>(before) + 1, all - 1));
    return low + (place - before) * (high - low);
  }

 private:
  static constexpr int interval_bits = 9;
  static constexpr int shift = 52 - interval_bits;

  /// The leading bits of a double above 0 count intervals of one width between powers of 2.
  static std::int64_t interval_of(double value) {
    return std::bit_cast<std::int64_t>(value) >> shift;
  }
  static double start_of(std::int64_t interval) { return std::bit_cast<double>(interval << shift); }

  /// The value of this rank, from 0 on.
  double value_at(std::size_t rank) const {
    if (rank < below_least_) return 0;
    std::size_t before = below_least_;
    std::size_t i = 0;
    while (before + counts_[i] <= rank) before += counts_[i++];
    const std::int64_t interval = first_ + static_cast<std::int64_t>(i);
    const double share = (static_cast<double>(rank - before) + 0.5) / counts_[i];
    const double start = start_of(interval);
    return start + share * (start_of(interval + 1) - start);
  }

  void reach(std::int64_t first, std::int64_t end) {
    if (counts_.empty()) first_ = first;
    if (first < first_) {
      counts_.insert(counts_.begin(), static_cast<std::size_t>(first_ - first), 0);
      first_ = first;
    }
    const auto size = static_cast<std::size_t>(end - first_);
    if (size > counts_.size()) counts_.resize(size);
  }

  double least_;
  std::size_t below_least_ = 0;
  std::int64_t first_ = 0;  ///< interval
  std::vector<std::uint32_t> counts_;
};

}  // namespace hydro
