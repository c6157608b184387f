#include "hydro/solver/stand_in.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <boost/math/constants/constants.hpp>
#include <boost/math/special_functions/chebyshev.hpp>

namespace hydro {
namespace {

constexpr std::size_t terms = lanes / 2;

/// Of 32 parts of half a turn.
double cosine(std::size_t parts) {
  return std::cos(boost::math::double_constants::pi * static_cast<double>(parts) / lanes);
}

}  // namespace

const Lane& points_to_try() {
  static const Lane points = [] {
    Lane it;
    for (std::size_t lane = 0; lane < lanes; ++lane) it[lane] = cosine(lane + 1);
    return it;
  }();
  return points;
}

Lane Interval::to_try() const {
  Lane values;
  for (std::size_t lane = 0; lane < lanes; ++lane)
    values[lane] = middle() + half() * points_to_try()[lane];
  return values;
}

std::optional<Chebyshev> through(const Lane& values, double tolerance, double scale) {
  static const auto cosines = [] {
    std::array<std::array<double, terms>, terms> it{};
    for (std::size_t j = 0; j < terms; ++j)
      for (std::size_t k = 0; k < terms; ++k)
        it[j][k] = cosine(j * (2 * k + 1) % (2 * lanes)) * (j == 0 ? 1.0 : 2.0) / terms;
    return it;
  }();
  for (const double value : values.at) scale = std::max(scale, std::abs(value));
  Chebyshev found(terms);
  for (std::size_t j = 0; j < terms; ++j)
    for (std::size_t k = 0; k < terms; ++k) found[j] += cosines[j][k] * values[2 * k];
  const double nothing = tolerance / terms * scale;
  while (found.size() > 1 && std::abs(found.back()) <= nothing) found.pop_back();
  for (std::size_t lane = 1; lane < lanes; lane += 2)
    if (!(std::abs(value_at(found, points_to_try()[lane]) - values[lane]) <= tolerance * scale))
      return {};
  return found;
}

double value_at(const Chebyshev& polynomial, double place) {
  // The recurrence takes twice the first coefficient.
  return boost::math::chebyshev_clenshaw_recurrence(polynomial.data(), polynomial.size(), place) +
         polynomial.front() / 2;
}

}  // namespace hydro
