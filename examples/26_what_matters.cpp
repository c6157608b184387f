// What matters for the last head of row 2? A little more of everything, by itself.
#include "hydro/hydro.hpp"

#include <cmath>
#include <cstdio>
#include <string>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");
  const Solution now = solve(farm.watering({"rows 1 and 2"}));
  const Sensitivity<Pressure> last = sensitivity(now, pressure_at("row 2", 10));

  std::printf(
      "Row 2, outlet 10: %.1f psi. Each by itself, going straight on from a small change:\n",
      last.value / psi);
  for (const Influence<Pressure>& it : last.by_line().influences) {
    const double change = 10.0 * it.by_one_step() / psi;
    if (std::abs(change) < 0.05) continue;
    std::printf("  %-4s of %-28s %-14s %+5.1f psi\n",
                is_height(it.input) ? "1 ft" : "10 %",
                std::string(words_of(it.input)).c_str(),
                it.at.c_str(),
                change);
  }
}
