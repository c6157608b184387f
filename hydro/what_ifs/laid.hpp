// laid.hpp: lines laid otherwise, and what they are laid in. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/pipe.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// The same supplies, sets that run and faults with these lines, examined once.
/// @throws InvalidInput
Layout with_lines(const Layout& layout, std::vector<Line> lines);
/// Likewise, with these faults: the layout's own, numbered as the new lines are.
Layout with_lines(const Layout& layout, std::vector<Line> lines, const std::vector<Fault>& faults);

/// A line all of one pipe.
Line laid_in(Line line, const Pipe& pipe);

/// A length of a line that is of one pipe.
struct PipeLength {
  Pipe pipe;
  Length from;  ///< from the line's inlet
  Length to;
};

/// From the inlet to the far end.
std::vector<PipeLength> pipes_along(const Line& line);

/// From outlet to outlet: the wanted one, or that of the line, or of an uneven one that of its last two.
/// @throws InvalidInput where there is none
Length spacing_of(const Line& line, const std::optional<Length>& wanted);

}  // namespace hydro
