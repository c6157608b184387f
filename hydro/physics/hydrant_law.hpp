// hydrant_law.hpp: a town main as the inner loop uses it: plain doubles in SI. Not installed.
// The formula and its source stand in hydrant.hpp.
#pragma once

#include "hydro/physics/pump_law.hpp"

#include <cmath>

namespace hydro {

/// Of the flow with the drop of pressure.
inline constexpr double hydrant_exponent = 0.54;

/// Two readings of a town main, as heads.
struct HydrantLaw {
  double at_rest;
  double drop;  ///< at `flow`
  double flow;

  HeadAtFlow at(double other_flow) const {
    constexpr double exponent = 1 / hydrant_exponent;
    const double share = other_flow / flow;
    return {at_rest - drop * std::pow(share, exponent),
            -drop * exponent * std::pow(share, exponent - 1) / flow};
  }
};

}  // namespace hydro
