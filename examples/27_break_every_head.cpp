// Wherever a limb shears a riser of the strips: which others stop turning, and what does the gauge show?
#include "hydro/hydro.hpp"

#include <cstdio>
#include <string>

#include "progress.hpp"

using namespace hydro;

int main(int argc, char** argv) {
  const Layout strips =
      read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml").watering({"rows 1 and 2"});
  const Breaks all = break_every_outlet(strips, {riser_sheared("", 0)}, with_progress());

  std::printf("sheared  others that stop turning, row 1   row 2   psi at the gauge\n");
  for (std::size_t i = 0; i < all.breaks.size(); ++i) {
    const Break& it = all.breaks[i];
    int on_row_1 = 0;
    for (const OutletNumber& other : all.newly_out_of_work(i))
      on_row_1 += other.line == "row 1" ? 1 : 0;
    std::printf("%s, %2d  %31d  %6d  %17.1f\n",
                it.line.c_str(),
                it.outlet,
                on_row_1,
                it.more_out_of_work - on_row_1,
                it.gauge_reading / psi);
  }
  const Break& worst = all.breaks.at(all.worst.value());
  std::printf("The worst is %s, outlet %d: %d of the %zu others stop.\n",
              worst.line.c_str(),
              worst.outlet,
              worst.more_out_of_work,
              all.breaks.size() - 1);
}
