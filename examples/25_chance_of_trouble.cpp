// How likely is trouble on row 2 with each head more, when bores, nozzles and the gauge are not known
// exactly?
#include "hydro/hydro.hpp"

#include <cstdio>

#include "progress.hpp"

using namespace hydro;

int main(int argc, char** argv) {
  const Layout strips =
      read_layout(argc > 1 ? argv[1] : "examples/ouzel_strips.toml").without_faults();
  const Uncertainty guess{.manufacturing_variation = 0.04,
                          .rating = 0.02,
                          .inside_diameter = 0.01,
                          .wall = 0.05,
                          .loss_coefficient = 0.3,
                          .supply_pressure = 1 * psi,
                          .elevation = 0.5 * ft};
  const ChanceOptions options{.realisations = 4000};
  const auto found = chance_of_trouble(strips, "row 2", 6, guess, {}, options, with_progress());
  std::fputs(trouble_report(strips, "row 2", found, guess).c_str(), stdout);
}
