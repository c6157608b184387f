// Christiansen's factor and the 3/4 rule by hand, beside the exact answer: where do they hold?
#include "hydro/hydro.hpp"

#include <cmath>
#include <cstdio>

using namespace hydro;

const Outlet spray{.flow = 4 * gpm, .at = 40 * psi};
const Pipe wide{.inside_diameter = 2.445 * inch, .hazen_williams = 150};
const Pipe narrow{.inside_diameter = 1.59 * inch, .hazen_williams = 150};
const Line row{.name = "row",
               .pipe = wide,
               .outlet = spray,
               .count = 24,
               .spacing = 30 * ft,
               .riser = {.inside_diameter = 1 * inch, .hazen_williams = 150}};

Pressure loss_by_hand(const Pipe& pipe, int count) {
  const Length alone = friction_loss(pipe, count * 30 * ft, count * 4 * gpm, properties({}));
  return multiple_outlet_factor(count, 1.852) * pressure(alone, properties({}).density);
}

void print(const char* what,
           const Pressure& loss,
           const Line& line,
           const std::vector<Fault>& faults = {}) {
  const Supply supply{.pressure = spray.at + 0.75 * loss, .elevation = 0 * ft};
  const Solution exact = solve(Layout(supply, {line}).with_faults(faults));
  const Uniformity<Flow> flows = uniformity_of_outlets(exact).back().flows;
  const double least = discharge(spray, spray.at - 0.25 * loss) / gpm;
  std::printf("%-9s    4.00%7.2f%9.2f%7.2f\n", what, flows.mean / gpm, least, flows.least / gpm);
}

int main() {
  const Pressure loss = loss_by_hand(wide, 24);
  Line two_sizes = row, hill = row;
  two_sizes.reaches = {{wide, 360 * ft}};
  two_sizes.pipe = narrow;
  for (int i = 1; i <= 24; ++i) hill.elevations.push_back((15 - std::abs(1.25 * i - 15)) * ft);
  std::printf("gal/min   average  exact    least  exact\n");
  print("level", loss, row);
  print("two sizes", loss - loss_by_hand(wide, 12) + loss_by_hand(narrow, 12), two_sizes);
  print("hill", loss, hill);
  print("break", loss, row, {head_off("row", 12)});
}
