// How evenly does a row water, by bucket and stopwatch and by its design?
#include "hydro/hydro.hpp"

#include <cstdio>
#include <vector>

using namespace hydro;

namespace {

void print(const char* whose, const Uniformity<Flow>& flows) {
  std::printf("%-9s  %7.2f  %10.0f %%  %9.0f %%\n",
              whose,
              flows.mean / gpm,
              flows.christiansen,
              flows.distribution);
}

}  // namespace

int main() {
  std::vector<Flow> measured;
  for (const double seconds : {94, 95, 118, 97, 99, 98, 101, 153, 100, 102, 84, 103})
    measured.push_back(5 * gallon / (seconds * units::s));

  const Line row{.name = "row 1",
                 .pipe = {.inside_diameter = 1.61 * inch, .hazen_williams = 150},
                 .outlet = Outlet{.flow = 3 * gpm, .at = 40 * psi},
                 .count = 12,
                 .spacing = 40 * ft};
  const Solution design = solve(Layout(Supply{.pressure = 45 * psi}, {row}));

  std::printf("           gal/min  Christiansen  low quarter\n");
  print("measured", uniformity(measured));
  print("designed", uniformity_of_outlets(design).front().flows);
}
