// A head is knocked off: how much water escapes, and who falls short because of it?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  const Line row{
      .name = "row 1",
      .pipe = {.inside_diameter = 2.067 * inch, .hazen_williams = 140},
      .outlet = Outlet{.flow = 5 * gpm, .at = 45 * psi, .minimum = 35 * psi},
      .count = 12,
      .spacing = 40 * ft,
      .riser = {.height = 3 * ft, .inside_diameter = 0.824 * inch, .hazen_williams = 140}};
  const Layout whole{Supply{.pressure = 52 * psi}, {row}};
  const Layout broken = whole.with_fault(head_off("row 1", 8));

  const Comparison change = compare(solve(whole), solve(broken));
  std::printf("%.1f gal/min escape, and the other outlets miss %.1f gal/min.\n",
              change.escaping / gpm,
              change.missing / gpm);
  for (const BelowMinimum& outlet : change.newly_below_minimum)
    std::printf(
        "Outlet %d falls to %.1f psi and does not work.\n", outlet.outlet, outlet.pressure / psi);
}
