// Does a second feed help? A riser of row 2 is sheared, without and with a cross pipe between the far ends of two rows.
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");
  const Layout alone = farm.watering({"rows 1 and 2"});
  const Layout ring = alone.with_line({.name = "cross pipe",
                                       .fed_by = "row 1",
                                       .joins = "row 2",
                                       .pipe = farm.line("row 1").pipe,
                                       .length = 30 * ft});
  const Fault break_it = riser_sheared("row 2", 7);
  const Solution one = solve(alone.with_fault(break_it));
  const Solution two = solve(ring.with_fault(break_it));

  std::printf("psi       row 1           row 2\n");
  std::printf("outlet  alone  ring     alone  ring\n");
  for (std::size_t i = 0; i < 10; ++i) {
    std::printf("%6zu", i + 1);
    for (const char* row : {"row 1", "row 2"})
      std::printf(
          "  %5.1f %5.1f   ", one.line(row).pressure[i] / psi, two.line(row).pressure[i] / psi);
    std::printf("\n");
  }
  const auto still = [](const Solution& it) { return check(it).below_minimum.size(); };
  std::printf("Heads that stand still: %zu alone, %zu in the ring;", still(one), still(two));
  std::printf(" before the break %zu and %zu.\n", still(solve(alone)), still(solve(ring)));
  std::printf("Through the cross pipe: %.1f gal/min towards row 2.\n",
              two.line("cross pipe").end_flow / gpm);
  std::printf("Out of the break: %.1f gal/min alone, %.1f in the ring.\n",
              one.line("row 2").flow[6] / gpm,
              two.line("row 2").flow[6] / gpm);
}
