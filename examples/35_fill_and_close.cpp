// How long do a main and a row take to fill, and how slowly must a valve close? On PVC pipe by its standard.
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  const Outlet head{.flow = 3 * gpm, .at = 50 * psi};
  const Layout rows{
      Supply{.pressure = 70 * psi},
      {Line{.name = "main", .pipe = nominal_pipe("3 in", "PVC Class 125"), .length = 440 * ft},
       Line{.name = "row 1",
            .fed_by = "main",
            .pipe = nominal_pipe("1-1/2 in", "PVC Class 125"),
            .outlet = head,
            .count = 10,
            .spacing = 36 * ft}}};

  const Filling fill = filling(rows);
  std::printf("The lines hold %.0f gal. At %.1f gal/min they are full after %.0f min.\n",
              fill.volume / gallon,
              fill.flow / gpm,
              fill.time / units::min);

  std::printf("water stopped   adds psi   to psi   of rated   close in s, or longer\n");
  for (const LineSurge& it : surges(solve(rows)))
    std::printf("%-13s %10.0f %8.0f %10.0f %12.1f\n",
                it.line.c_str(),
                it.rise / psi,
                (it.steady + it.rise) / psi,
                *it.rating / psi,
                it.shortest_closing.value_or(Time{}) / units::s);
}
