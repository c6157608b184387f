// Does a second feed help? Two rows alone and with a cross pipe between their far ends, whole and in trouble.
#include "hydro/hydro.hpp"

#include <cmath>
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

  std::printf("                          psi at the ends of   heads that   through the\n");
  std::printf("                         row 1      row 2      stand still  cross pipe, gal/min\n");
  const auto print = [](const char* what, const Layout& layout) {
    const Solution now = solve(layout);
    std::printf("%-22s", what);
    for (const char* row : {"row 1", "row 2"}) {
      const Series<Pressure>& pressure = now.line(row).pressure;
      std::printf("  %4.1f %4.1f", pressure.front() / psi, pressure.back() / psi);
    }
    std::printf("  %10zu", check(now).below_minimum.size());
    const LineSolution& last = now.lines().back();
    if (last.name == "cross pipe") std::printf("  %11.1f", std::abs(last.end_flow / gpm));
    std::printf("\n");
  };
  const Fault sheared = riser_sheared("row 2", 7);
  const Fault valve = valve_part_closed("row 2", 120);
  print("sound, alone", alone);
  print("  in a ring", ring);
  print("riser sheared, alone", alone.with_fault(sheared));
  print("  in a ring", ring.with_fault(sheared));
  print("valve half shut, alone", alone.with_fault(valve));
  print("  in a ring", ring.with_fault(valve));
}
