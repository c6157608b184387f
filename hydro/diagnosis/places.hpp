// places.hpp: what would be shown at a place, in SI, by any solution. Not installed.
#pragma once

#include "hydro/answers/sensitivity.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/solve_breaks.hpp"

#include <cstddef>
#include <variant>
#include <vector>

namespace hydro {

/// The figure that was read.
double figure_of(const Reading& reading);
/// Its own standard error. @param figure that it would be, where none was read
double own_error(const Reading& reading, double figure);
double own_error(const Reading& reading);

/// By line: how many outlets stand on the lines before it.
std::vector<std::size_t> outlets_before(const Layout& layout);

/// A reading's place, found in a layout.
struct Spot {
  ReadingPlace at;
  std::size_t line = 0;
  std::size_t outlet = 0;  ///< of all outlets, line by line
};
Spot spot_of(const Reading& reading, const Layout& layout);

/// What is shown there: of pressures nothing below 0.
double shown(const Spot& place, const SolvedBreak& solved);

/// Its derivatives are asked for by this; none: of an engine.
std::variant<std::monostate, PressureFigure, FlowFigure> figure_at(const Reading& reading);

/// The layout with a gauge at the first supply, if it has none.
Layout with_gauge(const Layout& layout);

}  // namespace hydro
