// saturation.hpp: pressure of water vapour in air that holds no more. Not installed.
//
// Source    FAO Irrigation and Drainage Paper 56 (1998), equation 11.
#pragma once

#include <cmath>

namespace hydro {

/// [kPa] of air of so many degC
inline double saturation_pressure(double celsius) {
  return 0.6108 * std::exp(17.27 * celsius / (celsius + 237.3));
}

}  // namespace hydro
