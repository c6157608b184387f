// outlet_law.hpp: outlets as the inner loop uses them: plain doubles in SI, pressure as head in m.
// Not installed. The formula and its source stand in outlet.hpp.
#pragma once

#include "hydro/physics/outlet.hpp"

#include <cmath>

namespace hydro {

/// q = coefficient P^exponent [m3/s, m], q and P >= 0. The inverses spare the inner loop its
/// divisions.
struct OutletLaw {
  double coefficient = 1;
  double exponent = 0.5;
  double inverse_coefficient = 1 / coefficient;
  double inverse_exponent = 1 / exponent;

  double flow(double head) const {
    return coefficient * (exponent == 0.5 ? std::sqrt(head) : std::pow(head, exponent));
  }
  double head(double flow) const {
    const double share = flow * inverse_coefficient;
    return exponent == 0.5 ? share * share : std::pow(share, inverse_exponent);
  }
};

/// @param weight_density rho g [N/m3]
inline OutletLaw outlet_law(const Outlet& outlet, double weight_density) {
  const double exponent = outlet.exponent.value_or(0.5);
  return {si(outlet.flow) / std::pow(si(outlet.at) / weight_density, exponent), exponent};
}

}  // namespace hydro
