// The strips fall short at 2,150 rpm. What could be done, what does it buy, and what does it cost?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");
  Supply slow = farm.supply();
  slow.pump->speed = 2150 * rpm;
  const Layout strips = farm.with_supply(slow).watering({"rows 1 and 2"});
  const std::string kind = "PVC Class 160";
  const RemedyOptions options{.pipes = {{nominal_pipe("1-1/2 in", kind), Price{11.80, 20 * ft}},
                                        {nominal_pipe("2 in", kind), Price{17.50, 20 * ft}},
                                        {nominal_pipe("3 in", kind), Price{36.00, 20 * ft}},
                                        {nominal_pipe("4 in", kind), Price{58.00, 20 * ft}}},
                              .outlet_price = 6.50,
                              .lost_outlet_price = 120,
                              .kilowatt_price = 400};  // all invented

  const Remedies found = remedies(strips, options);
  std::printf("%d outlets are below rated, the weakest has %.0f %% of it.\n",
              found.before.below_rated,
              100 * *found.before.lowest_share);
  constexpr int shown = 5;
  for (const bool cures : {true, false}) {
    std::printf("\n%s\n", cures ? "This cures:" : "This helps:");
    int count = 0;
    for (const Remedy& remedy : found.ranked)
      if (remedy.cures == cures && ++count <= shown)
        std::printf("%6.0f  %s\n", *remedy.cost, describe(remedy, found.before).c_str());
    if (count > shown) std::printf("        and %d more\n", count - shown);
  }
}
