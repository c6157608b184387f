// series.hpp: many values of one quantity, one for each outlet of a line.
//
// What      Reads like an array of quantities; holds plain doubles in SI, so that others can take
//           them as they are (`si()`), without a copy.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/units.hpp"

#include <cstddef>
#include <iterator>
#include <span>
#include <utility>
#include <vector>

namespace hydro {

/// Like a vector of quantities that cannot be changed.
template <class Q>
class Series {
 public:
  Series() = default;
  explicit Series(std::vector<double> si_values) : values_(std::move(si_values)) {}

  std::size_t size() const { return values_.size(); }
  bool empty() const { return values_.empty(); }
  /// Element `index` from 0 on.
  Q operator[](std::size_t index) const { return Q::from_value(values_[index]); }
  /// @throws std::out_of_range
  Q at(std::size_t index) const { return Q::from_value(values_.at(index)); }
  Q front() const { return (*this)[0]; }
  Q back() const { return (*this)[size() - 1]; }

  /// Reads one value after another.
  class Iterator {
   public:
    using iterator_category = std::input_iterator_tag;
    using value_type = Q;
    using difference_type = std::ptrdiff_t;
    using pointer = void;
    using reference = Q;

    Iterator() = default;
    explicit Iterator(const double* place) : place_(place) {}
    Q operator*() const { return Q::from_value(*place_); }
    Iterator& operator++() {
      ++place_;
      return *this;
    }
    Iterator operator++(int) { return Iterator(place_++); }
    bool operator==(const Iterator&) const = default;

   private:
    const double* place_ = nullptr;
  };
  Iterator begin() const { return Iterator(values_.data()); }
  Iterator end() const { return Iterator(values_.data() + values_.size()); }

  /// The values in SI units.
  std::span<const double> si() const { return values_; }

 private:
  std::vector<double> values_;
};

}  // namespace hydro
