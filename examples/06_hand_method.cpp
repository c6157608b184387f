// Christiansen's factor and the 3/4 rule by hand, beside the exact answer: where do they hold?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

const Outlet spray{.flow = 4 * gpm, .at = 40 * psi};
const Pipe wide{.inside_diameter = 2.445 * inch, .hazen_williams = 150};
const Pipe narrow{.inside_diameter = 1.59 * inch, .hazen_williams = 150};

Line row(const char* name, const char* feeder, const Pipe& pipe, const Length& rise = {}) {
  Line line{.name = name, .fed_by = feeder, .pipe = pipe, .outlet = spray, .count = 12};
  line.spacing = 30 * ft;
  line.ground_rise = rise;
  line.riser = {.inside_diameter = 1 * inch, .hazen_williams = 150};
  return line;
}

Pressure loss_by_hand(const Pipe& pipe, int count) {
  const Length alone = friction_loss(pipe, count * 30 * ft, count * 4 * gpm, properties({}));
  return multiple_outlet_factor(count, 1.852) * pressure(alone, properties({}).density);
}

void print(const char* what, Pressure loss, std::vector<Line> rows, std::vector<Fault> faults) {
  const Solution exact = solve(Layout(Supply{spray.at + 0.75 * loss}, rows).with_faults(faults));
  const Uniformity<Flow> flows = uniformity_of_outlets(exact).back().flows;
  const double least = discharge(spray, spray.at - 0.25 * loss) / gpm;
  std::printf("%-9s    4.00%7.2f%9.2f%7.2f\n", what, flows.mean / gpm, least, flows.least / gpm);
}

int main() {
  const Pressure loss = loss_by_hand(wide, 24);
  const Pressure two = loss - loss_by_hand(wide, 12) + loss_by_hand(narrow, 12);
  std::printf("gal/min   average  exact    least  exact\n");
  print("level", loss, {row("near", "", wide), row("far", "near", wide)}, {});
  print("two sizes", two, {row("near", "", wide), row("far", "near", narrow)}, {});
  print("hill", loss, {row("near", "", wide, 15 * ft), row("far", "near", wide, -15 * ft)}, {});
  print("break", loss, {row("near", "", wide), row("far", "near", wide)}, {head_off("near", 12)});
}
