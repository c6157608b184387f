// hard_cases.hpp: cases that stop solvers, each for any number of outlets: dry ends, open ends, bends
// in outlets' curves, small exponents, pipes far too narrow or far too wide, supplies that give next
// to nothing, flows that turn turbulent along the line.
//
// What      Each is a change of one lateral on the flat: 300 kPa, Hazen-Williams, outlets of exponent
//           0.5 rated 80 L/h at 250 kPa, a fifth of the head lost along it.
#pragma once

#include "hydro/layout/layout.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace hydro {

struct HardCase {
  std::string_view name;
  Layout (*layout)(int outlets);
};

/// @return all of them; each takes 20 outlets or more.
const std::vector<HardCase>& hard_cases();

/// Numbers of outlets at which they are tried.
inline constexpr std::array hard_counts{20, 100, 1000};

}  // namespace hydro
