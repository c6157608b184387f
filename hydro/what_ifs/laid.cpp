#include "hydro/what_ifs/laid.hpp"

#include <utility>

namespace hydro {

Layout with_lines(const Layout& layout, std::vector<Line> lines) {
  Layout changed(layout.supply(),
                 std::move(lines),
                 layout.water(),
                 layout.site(),
                 layout.sets(),
                 layout.further_supplies());
  if (!layout.faults().empty()) changed = changed.with_faults(layout.faults());
  return layout.running_sets().empty() ? changed : changed.watering(layout.running_sets());
}

}  // namespace hydro
