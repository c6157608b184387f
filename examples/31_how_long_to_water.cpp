// How long must two rows run for half an inch, and does the soil take it in?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");
  const Solution strips = set_for_rated(farm.watering({"rows 1 and 2"})).solution;
  const Application rows =
      application(strips, {.lines = {"row 1", "row 2"}, .row_spacing = 30 * ft});
  std::printf("Water comes down at %.2f in/h, at %.2f in/h from the weakest quarter.\n",
              rows.rates->average / inch_per_h,
              rows.rates->low_quarter / inch_per_h);

  const WaterAmount half_an_inch{.depth = 0.5 * inch};
  const RunTimeOptions clay{.effective_portion = 0.8, .intake_rate = 0.15 * inch_per_h};
  const RunTime run = run_time(rows, half_an_inch, clay);
  std::printf("Half an inch takes %.0f min; %.0f %% of it stays with the roots.\n",
              *run.for_low_quarter / units::min,
              100 * run.does.efficiency);

  std::printf("bursts   min each   min rest   h in all   in. standing\n");
  for (const Bursts& it : long_or_short(rows, half_an_inch, clay, 4))
    std::printf("%6d %10.0f %10.0f %10.1f %14.2f%s\n",
                it.bursts,
                it.each / units::min,
                it.rest / units::min,
                it.whole / units::h,
                it.standing / inch,
                it.runs_off ? "  runs off" : "");
}
