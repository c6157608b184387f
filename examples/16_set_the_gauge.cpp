// To what is the engine set for each watering set, so that its weakest head has its rated pressure?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");

  std::printf("                 rpm  gauge psi  gal/min  weakest head\n");
  for (const WateringSet& set : farm.sets()) {
    const Setting setting = set_for_rated(farm.watering({set.name}));
    const OperatingPoint& supply = setting.solution.supply();
    const auto weakest = weakest_outlet(setting.solution);
    std::printf("%-14s  %4.0f  %9.1f  %7.1f  %s, %d: %.1f psi\n",
                set.name.c_str(),
                *setting.speed / rpm,
                *supply.gauge_reading / psi,
                supply.flow / gpm,
                weakest->line.c_str(),
                weakest->outlet,
                weakest->pressure / psi);
    if (supply.pumps[0].range == PumpRange::below_least_flow)
      std::printf("                too little for the pump alone, which asks for %.1f gal/min\n",
                  *supply.pumps[0].least_flow / gpm);
  }
}
