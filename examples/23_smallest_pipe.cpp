// Which pipe for the strips? The manifold in one size, the rows alike in one, two or three, from a price list.
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");
  const Layout strips = farm.watering({"rows 1 and 2"});
  const std::string kind = "PVC Class 160";
  const std::vector<PricedPipe> pipes{// invented prices, for 20 ft
                                      {nominal_pipe("1 in", kind), Price{7.20, 20 * ft}},
                                      {nominal_pipe("1-1/4 in", kind), Price{9.40, 20 * ft}},
                                      {nominal_pipe("1-1/2 in", kind), Price{11.80, 20 * ft}},
                                      {nominal_pipe("2 in", kind), Price{17.50, 20 * ft}},
                                      {nominal_pipe("2-1/2 in", kind), Price{25.60, 20 * ft}}};
  const std::vector<std::string> rows{"row 1", "row 2"};

  std::printf("both rows in           price  lowest psi\n");
  for (const PipeTried& row : try_pipes(strips, rows, pipes))
    std::printf("%-22s %5.0f  %10.1f%s\n",
                row.pipe.name.c_str(),
                *row.cost,
                *row.lowest_pressure / psi,
                row.passed.empty() ? "" : "  too little");

  for (int sizes = 1; sizes <= 3; ++sizes) {
    const SmallestPipe answer =
        smallest_pipe(strips, {{.lines = {"manifold"}}, {.lines = rows, .sizes = sizes}}, pipes);
    std::printf("\nmanifold in one size, rows in up to %d: %.0f (%zu of %zu ways tried)\n",
                sizes,
                *answer.cost,
                answer.tried,
                answer.ways);
    for (const LaidPipe& laid : answer.pipes)
      std::printf("  %-8s  %3.0f to %3.0f ft  %s\n",
                  laid.line.c_str(),
                  laid.start / ft,
                  laid.end / ft,
                  laid.pipe.name.c_str());
  }
}
