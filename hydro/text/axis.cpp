#include "hydro/text/axis.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr double rounding = 1e-9;

}  // namespace

double round_step(double wanted) {
  const double decade = std::pow(10, std::floor(std::log10(wanted)));
  for (const double nice : {1.0, 2.0, 5.0})
    if (nice * decade >= wanted * (1 - rounding)) return nice * decade;
  return 10 * decade;
}

Axis Axis::up_to(double highest, double from, double to) {
  const double step = round_step(highest / 5);
  return {step * std::ceil(highest / step - rounding), from, to};
}

std::vector<double> Axis::ticks() const {
  const double step = round_step(end_ / 10);
  std::vector<double> numbers;
  for (int i = 0; i * step <= end_ * (1 + rounding); ++i) numbers.push_back(i * step);
  return numbers;
}

std::string tick_label(double round_number) {
  return fmt::format("{:.10g}", round_number);
}

std::vector<Point> thinned(const std::vector<Point>& curve) {
  std::vector<Point> kept;
  for (std::size_t from = 0; from < curve.size();) {
    std::size_t to = from + 1;
    while (to < curve.size() && std::floor(curve[to].x) == std::floor(curve[from].x)) ++to;
    const auto lower = [&](std::size_t a, std::size_t b) { return curve[a].y < curve[b].y; };
    std::array<std::size_t, 4> chosen{from, from, from, to - 1};
    for (std::size_t i = from; i < to; ++i) {
      chosen[1] = std::min(chosen[1], i, lower);
      chosen[2] = std::max(chosen[2], i, lower);
    }
    std::sort(chosen.begin(), chosen.end());
    for (auto it = chosen.begin(), end = std::unique(chosen.begin(), chosen.end()); it != end; ++it)
      kept.push_back(curve[*it]);
    from = to;
  }
  return kept;
}

}  // namespace hydro
