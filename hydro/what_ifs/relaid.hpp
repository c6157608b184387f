// relaid.hpp: a layout with other lines, and all else as it was. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"

#include <string>
#include <utility>
#include <vector>

namespace hydro {

/// @param faults that lie on it, numbered as the new lines are
inline Layout relaid(const Layout& layout,
                     std::vector<Line> lines,
                     const std::vector<Fault>& faults) {
  Layout changed(layout.supply(),
                 std::move(lines),
                 layout.water(),
                 layout.site(),
                 layout.sets(),
                 layout.further_supplies());
  if (!faults.empty()) changed = changed.with_faults(faults);
  return layout.running_sets().empty() ? changed : changed.watering(layout.running_sets());
}

}  // namespace hydro
