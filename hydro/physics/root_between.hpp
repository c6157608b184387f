// root_between.hpp: the root of a function between two places where it has opposite signs. Not
// installed.
#pragma once

#include <cstdint>
#include <stdexcept>

#include <boost/math/tools/toms748_solve.hpp>

namespace hydro {

/// To a few units in the last place. @param f at `from` and `to` of opposite signs, or 0
template <class Function>
double root_between(Function f, double from, double to) {
  std::uintmax_t steps = 500;  // the method needs some 20, at worst three times those of bisection
  const auto [below, above] = boost::math::tools::toms748_solve(
      f, from, to, boost::math::tools::eps_tolerance<double>(), steps);
  if (!(steps < 500)) throw std::runtime_error("root_between: did not converge");
  return below + (above - below) / 2;
}

}  // namespace hydro
