// Which outlets of a row get less pressure than they are made for?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  const Pipe lateral{.inside_diameter = 1.754 * inch, .hazen_williams = 150};
  const Outlet spray{.flow = 1.2 * gpm, .at = 30 * psi, .minimum = 20 * psi};
  const Line row{.name = "row 1",
                 .pipe = lateral,
                 .outlet = spray,
                 .count = 24,
                 .spacing = 20 * ft,
                 .ground_rise = 6 * ft};

  const Solution solution = solve(Layout(Supply{.pressure = 34 * psi}, {row}));
  const Check found = check(solution);
  std::printf("The row takes %.1f gal/min.\n", solution.inflow() / gpm);
  for (const BelowRated& outlet : found.below_rated)
    std::printf("Outlet %d has %.1f of its %.0f psi.\n",
                outlet.outlet,
                outlet.pressure / psi,
                outlet.rated / psi);
}
