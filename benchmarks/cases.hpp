// cases.hpp: the layouts that the benchmarks solve: Hazen-Williams, about 20 % of the supply's head
// lost along a lateral, outlets of exponent 0.5, flat ground.
#pragma once

#include "hydro/hydro.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace cases {

using namespace hydro;

inline constexpr double supply_kPa = 300;
inline constexpr double lost_share = 0.2;  // of the supply's head, by friction along one lateral

inline Outlet sprinkler() {
  return {.flow = 800 * lph, .at = 250 * kPa};
}

inline Riser riser_with_losses() {
  return {.height = 1 * units::m,
          .inside_diameter = 20 * mm,
          .hazen_williams = 150,
          .loss_coefficient = 1};
}

/// A bore that loses about `lost_share` of the supply's head over `count` outlets.
inline Length bore_for(int count, const Length& spacing) {
  const double flow = count * si(800 * lph);
  const double loss = lost_share * supply_kPa * 1000 / 9806.65;
  const double factor = 0.36;  // of a line with many outlets
  return Length::from_value(std::pow(
      factor * 10.67 * count * si(spacing) * std::pow(flow, 1.852) / (std::pow(150, 1.852) * loss),
      1 / 4.8704));
}

inline Line lateral(int count, bool with_riser) {
  const Length spacing =
      12.0 / std::max(1, count / 1000) * units::m;  // very long lines: closer outlets
  return {.name = "lateral",
          .pipe = {.inside_diameter = std::min(10.0 * units::m, bore_for(count, spacing)),
                   .hazen_williams = 150},
          .outlet = sprinkler(),
          .count = count,
          .spacing = spacing,
          .riser = with_riser ? riser_with_losses() : Riser{}};
}

inline Layout lateral_layout(int count, bool with_riser) {
  return Layout{Supply{.pressure = supply_kPa * kPa}, {lateral(count, with_riser)}};
}

inline constexpr int rows = 100;

/// A main of 100 lengths with a lateral of 100 outlets at the end of each, and so many pipes across
/// from the far end of a lateral to that of the next.
inline Layout tree_layout(bool with_riser, int cross_pipes = 0) {
  std::vector<Line> lines;
  for (int i = 0; i < rows; ++i) {
    const std::string number = std::to_string(i);
    lines.push_back({.name = "main " + number,
                     .fed_by = i == 0 ? "" : "main " + std::to_string(i - 1),
                     .pipe = {.inside_diameter = 1.2 * units::m, .hazen_williams = 140},
                     .length = 12 * units::m});
    lines.push_back(lateral(100, with_riser));
    lines.back().name = "row " + number;
    lines.back().fed_by = "main " + number;
  }
  const Pipe pipe = lines.back().pipe;
  for (int k = 0; k < cross_pipes; ++k) {
    const int row = (2 * k + 1) * (rows - 1) / (2 * cross_pipes);  // evenly, never one twice
    lines.push_back({.name = "across " + std::to_string(row),
                     .fed_by = "row " + std::to_string(row),
                     .joins = "row " + std::to_string(row + 1),
                     .pipe = pipe,
                     .length = 12 * units::m});
  }
  return Layout{Supply{.pressure = supply_kPa * kPa}, std::move(lines)};
}

}  // namespace cases
