#include "hydro/what_ifs/laid.hpp"

#include <utility>

namespace hydro {

Layout with_lines(const Layout& layout, std::vector<Line> lines) {
  return with_lines(layout, std::move(lines), layout.sets());
}

Layout with_lines(const Layout& layout, std::vector<Line> lines, std::vector<WateringSet> sets) {
  Layout changed(layout.supply(),
                 std::move(lines),
                 layout.water(),
                 layout.site(),
                 std::move(sets),
                 layout.further_supplies());
  if (!layout.faults().empty()) changed = changed.with_faults(layout.faults());
  return layout.running_sets().empty() ? changed : changed.watering(layout.running_sets());
}

}  // namespace hydro
