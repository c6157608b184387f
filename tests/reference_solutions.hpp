// reference_solutions.hpp: some fifty layouts whose figures are written down in
// reference/solutions.csv, to be found again by every compiler and on every machine.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/solver/solution.hpp"

#include <array>
#include <string>
#include <vector>

namespace hydro {

/// What is written down of a solution. Of the first line with outlets: its first, middle and last.
struct ReferenceFigures {
  double inflow = 0;                          ///< out of all supplies [m3/s]
  std::array<double, 3> line_pressures = {};  ///< in the pipe at those outlets [Pa]
  std::array<double, 3> flows = {};           ///< out of them [m3/s]
};

struct ReferenceLayout {
  std::string name;
  Layout layout;
};

/// The hard cases at 20 outlets, and layouts as growers have them.
std::vector<ReferenceLayout> reference_layouts();

ReferenceFigures figures_of(const Solution& solution);

/// How far another build's figures may lie from these.
ReferenceFigures tolerances_of(const Solution& solution);

}  // namespace hydro
