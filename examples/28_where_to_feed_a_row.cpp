// Where should a row on a slope be fed from, so that its weakest head has the most?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  std::printf(
      "20 heads on 720 ft, whose    from its inlet:   best fed from:\n"
      "far end lies                weakest, psi      place  weakest, psi\n"
      "(the pipe to that place is not reckoned)\n");
  for (const double rise_ft : {15., 5., 0., -5., -15., -30.}) {
    const Line row{.name = "row 1",
                   .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
                   .outlet = Outlet{.flow = 2.5 * gpm, .at = 25 * psi},
                   .count = 20,
                   .spacing = 36 * ft,
                   .ground_rise = rise_ft * ft};
    const InletPositions found =
        inlet_position(Layout{Supply{.pressure = 38 * psi}, {row}}, "row 1");
    std::printf("%12.0f ft %-11s  %12.1f    %4.0f ft  %12.1f\n",
                rise_ft < 0 ? -rise_ft : rise_ft,
                rise_ft < 0 ? "lower" : "higher",
                found.present.lowest / psi,
                found.best.place / ft,
                found.best.lowest / psi);
  }
}
