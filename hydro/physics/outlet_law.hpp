// outlet_law.hpp: outlets as the inner loop uses them: plain doubles in SI, pressure as head in m.
// Not installed. The formulas and their sources stand in outlet.hpp.
#pragma once

#include "hydro/physics/outlet.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hydro {

/// q = coefficient P^exponent [m3/s, m] from `low` to `high`, and with the square root of P outside;
/// no more than at `held`. Rising, continuous, 0 at 0. The inverses spare the inner loop its
/// divisions.
struct OutletLaw {
  double coefficient = 1;
  double exponent = 0.5;
  double low = 0;
  double high = std::numeric_limits<double>::infinity();
  double held = std::numeric_limits<double>::infinity();  ///< by the outlet's own regulator
  double inverse_coefficient = 1 / coefficient;
  double inverse_exponent = 1 / exponent;
  bool bent = low > 0 || std::isfinite(high) || std::isfinite(held);  ///< whether it has bends

  double flow(double head) const {
    if (bent) return unheld_flow(std::min(head, held));
    return coefficient * (exponent == 0.5 ? std::sqrt(head) : std::pow(head, exponent));
  }
  /// Of a flow that a whole stretch of heads gives (exponent 0): the lowest of them.
  double head(double flow) const {
    if (bent) return std::min(unheld_head(flow), held);
    const double share = flow * inverse_coefficient;
    return exponent == 0.5 ? share * share : std::pow(share, inverse_exponent);
  }
  /// At a bend, that before it.
  double exponent_at(double head) const {
    if (!bent) return exponent;
    return head > held ? 0 : (head > low || low == 0) && head <= high ? exponent : 0.5;
  }
  /// Where it turns nearly flat; 0 if it does nowhere.
  double bend() const { return low > 0 ? std::min(low, held) : std::isfinite(held) ? held : 0; }

  /// As if there were no regulator.
  double unheld_flow(double head) const;
  double unheld_head(double flow) const;
};

/// @param weight_density rho g [N/m3]
OutletLaw outlet_law(const Outlet& outlet, double weight_density);

}  // namespace hydro
