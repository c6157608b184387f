// random_layout.hpp: layouts of any shape, from a seed, to test laws that must hold for all.
#pragma once

#include "hydro/layout/layout.hpp"

#include <cstdint>

namespace hydro {

/// What a random layout is drawn from.
struct Mix {
  int most_lines = 12;
  int most_outlets = 60;  ///< on one line
  double least_exponent = 0.1;
  double most_exponent = 1.5;
  double bent_outlets = 0.2;  ///< share that compensate or have an exponent below 0.1
  int most_faults = 3;
  bool darcy_weisbach = true;  ///< besides Hazen-Williams and constant factors
  double breadth =
      0.4;            ///< share of lines with reaches, uneven outlets, elevations, taps and so on
  bool farm = false;  ///< any supply, regulators, valves and sets, with their faults
  bool through_points =
      true;  ///< pumps' curves through three or more points, and efficiencies by points
};

/// Trees of lines with bores of 1 to 1,000 mm, hills of 60 m, outlets of 1 to 3,000 L/h, supplies
/// of 0 to 800 kPa: about two of three have dry outlets. The same seed and mix give the same
/// layout, and a farm the same lines as without its supply, regulators, valves and sets.
Layout random_layout(std::uint64_t seed, const Mix& mix = {});

}  // namespace hydro
