// How much pressure must the pump hold so that the last outlet up the slope has enough?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  const Line row{.name = "row 1",
                 .pipe = {.inside_diameter = 1.61 * inch, .hazen_williams = 150},
                 .outlet = Outlet{.flow = 2.5 * gpm, .at = 40 * psi},
                 .count = 16,
                 .spacing = 30 * ft,
                 .ground_rise = 12 * ft};
  const auto serves_all = [&](const Pressure& held) {
    return check(solve(Layout(Supply{.pressure = held}, {row}))).every_outlet_serves();
  };

  Pressure held = 40 * psi;
  while (!serves_all(held)) held += 1 * psi;
  std::printf("%.0f psi at the pump give every outlet its 40 psi.\n", held / psi);
}
