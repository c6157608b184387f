// A pump without papers: what is its curve, by the gauge with the valve closed and with twenty heads running?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main() {
  const PumpReading closed{.gauge = 44.3 * psi};
  // twenty heads that fill a bucket of 5 gal in 83 s, the mean of them all
  const PumpReading running{.gauge = 38.4 * psi, .flow = 20.0 * (5 * gallon / (83 * units::s))};
  const PumpReadingPlace place{
      .suction = Suction{.lift = 6 * ft,
                         .pipe = Pipe{.inside_diameter = 3.0 * inch, .hazen_williams = 140},
                         .length = 25 * ft,
                         .loss_coefficient = 3},
      .gauge = Gauge{.range = 100 * psi},
      .speed = 2210 * rpm};

  const PumpFromReadings found = pump_from_readings({closed, running}, place);
  std::printf("gal/min  head, ft\n");
  for (const double flow : {0, 20, 40, 60, 80, 100}) {
    const HeadEstimate estimate = found.head(flow * gpm);
    std::printf("%7.0f  %5.1f +- %.1f\n", flow, estimate.head / ft, estimate.uncertainty / ft);
  }
  std::printf("At 2600 rpm it would give %.0f ft at rest.\n",
              pump_head(found.pump(), Flow{}, 2600 * rpm) / ft);
}
