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

  std::printf("broken  gal/min escape  outlets out of work\n");
  for (const Break& it : break_every_outlet(whole, {riser_sheared("", 0)}).breaks)
    std::printf("%6d  %14.1f  %19d\n", it.outlet, it.escaping / gpm, it.more_out_of_work);
}
