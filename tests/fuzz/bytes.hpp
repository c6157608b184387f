// bytes.hpp: values out of the bytes that a fuzzer gives. When they are used up all bytes are 0.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>

namespace hydro {

class Bytes {
 public:
  explicit Bytes(std::span<const std::uint8_t> given) : left_(given) {}

  bool are_used_up() const { return left_.empty(); }

  int byte() {
    if (left_.empty()) return 0;
    const int first = left_.front();
    left_ = left_.subspan(1);
    return first;
  }
  bool chance(double share) { return byte() >= 256 * (1 - share); }
  int whole(int low, int high) { return low + (byte() * 256 + byte()) % (high - low + 1); }
  /// Both ends are reached exactly.
  double between(double low, double high) { return low + (high - low) * share(); }
  double log_between(double low, double high) {
    return std::clamp(low * std::pow(high / low, share()), low, high);
  }
  template <class T, std::size_t n>
  T any_of(const std::array<T, n>& values) {
    return values[static_cast<std::size_t>(byte()) % n];
  }

 private:
  double share() { return (byte() * 256 + byte()) / 65535.0; }

  std::span<const std::uint8_t> left_;
};

}  // namespace hydro
