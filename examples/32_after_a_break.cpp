// A riser was sheared 40 min into a run, and the water was stopped 25 min later: what is still due?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");
  const Layout strips = farm.watering({"rows 1 and 2"});
  const InterruptedRun run{
      .planned = 105 * units::min, .broke = 40 * units::min, .stopped = 65 * units::min};
  const MissedWater missed = missed_water(solve(strips),
                                          solve(strips.with_fault(riser_sheared("row 2", 7))),
                                          run,
                                          solve(strips.with_fault(capped("row 2", 7))));

  std::printf("%.0f gal were pumped, %.0f gal of them lost.\n",
              missed.pumped / gallon,
              missed.lost / gallon);
  for (const MissedOnLine& line : missed.lines)
    std::printf("%s: %.0f min more on average, %.0f min for outlet %d.\n",
                line.line.c_str(),
                line.on_average / units::min,
                line.for_weakest / units::min,
                line.weakest);
  std::printf("Without the break it would have been %.0f min.\n",
              (run.planned - run.stopped) / units::min);
}
