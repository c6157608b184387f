// A drum at the gate doses a mat through a small outlet: how long do 5 gallons take, the whole drum,
// and the 37 gallons that the mat needs?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  const Tank drum{.level = 0.60 * units::m, .area = 15 * gallon / (0.60 * units::m)};
  const Hole outlet{.diameter = 2.0 * mm, .discharge_coefficient = 0.62};

  std::printf("At first %.2f gal/h run out.\n", hydro::outflow(drum, outlet) / gph);
  for (const double gallons : {5, 10, 15})
    std::printf("%2.0f gal have run out after %3.0f min.\n",
                gallons,
                time_to_run_out(drum, outlet, gallons * gallon) / units::min);
  std::printf("After an hour the water stands %.2f m high.\n",
              level_after(drum, outlet, 1 * units::h) / units::m);

  const BucketFills fills = *bucket(drum, outlet, 37 * gallon).for_need;
  std::printf("37 gal take %d fills, %.0f gal out of the last, and run for %.1f h.\n",
              fills.fills(),
              fills.last / gallon,
              fills.time / units::h);
}
