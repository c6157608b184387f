// Which riser does the most harm when it breaks? Every one is broken in turn.
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  const Line row{
      .name = "row",
      .pipe = {.inside_diameter = 2.067 * inch, .hazen_williams = 140},
      .outlet = Outlet{.flow = 5 * gpm, .at = 45 * psi, .minimum = 35 * psi},
      .count = 12,
      .spacing = 40 * ft,
      .riser = {.height = 3 * ft, .inside_diameter = 0.824 * inch, .hazen_williams = 140}};
  const Layout whole{Supply{.pressure = 52 * psi}, {row}};
  const Solution before = solve(whole);

  std::printf("broken  gal/min escape  outlets out of work\n");
  for (int outlet = 1; outlet <= whole.outlet_count(); ++outlet) {
    const Comparison change =
        compare(before, solve(whole.with_fault(riser_sheared("row", outlet))));
    std::printf(
        "%6d  %14.1f  %19zu\n", outlet, change.escaping / gpm, change.newly_below_minimum.size());
  }
}
