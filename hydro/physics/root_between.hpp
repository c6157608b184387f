// root_between.hpp: the root of a function between two places where it has opposite signs. Not
// installed.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <stdexcept>

#include <boost/math/tools/toms748_solve.hpp>

namespace hydro {

/// To a few units in the last place of the larger end: a root beside 0 has no last place to come to.
/// @param f at `from` and `to` of opposite signs, or 0
template <class Function>
double root_between(Function f, double from, double to) {
  const double least =
      4 * std::numeric_limits<double>::epsilon() * std::max(std::abs(from), std::abs(to));
  boost::math::tools::eps_tolerance<double> in_last_place;
  const auto is_near = [&](double low, double high) {
    return high - low <= least || in_last_place(low, high);
  };
  std::uintmax_t steps = 500;  // the method needs some 20, at worst three times those of bisection
  const auto [below, above] = boost::math::tools::toms748_solve(f, from, to, is_near, steps);
  if (!(steps < 500)) throw std::runtime_error("root_between: did not converge");
  return below + (above - below) / 2;
}

}  // namespace hydro
