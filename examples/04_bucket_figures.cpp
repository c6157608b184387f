// How long should a 5-gallon bucket take to fill at each outlet? One that takes longer is clogged,
// one that takes less is worn.
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  const Outlet sprinkler{
      .rated = 40 * psi, .nozzle = from_text<Length>("5/32 in"), .discharge_coefficient = 0.97};
  const Line row{.name = "row 1",
                 .pipe = {.inside_diameter = 1.38 * inch, .hazen_williams = 150},
                 .outlet = sprinkler,
                 .count = 8,
                 .spacing = 40 * ft,
                 .ground_rise = 8 * ft};
  const Solution solution = solve(Layout(Supply{.pressure = 48 * psi}, {row}));

  int outlet = 0;
  std::printf("outlet  gal/min  seconds for 5 gal\n");
  for (const Flow flow : solution.line("row 1").flow) {
    const Time full = 5 * gallon / flow;
    std::printf("%6d  %7.2f  %17.0f\n", ++outlet, flow / gpm, full / units::s);
  }
}
