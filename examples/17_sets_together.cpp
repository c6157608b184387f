// Which watering sets can run at once, and if not, why not?
#include "hydro/hydro.hpp"

#include <cstdio>
#include <string>

using namespace hydro;

namespace {

std::string verdict(const SetsTogether& it) {
  if (!it.reached) return "no: the engine has no more speed";
  if (it.too_fast) return "no: too fast in " + it.fastest_line;
  for (const SupplyLimit limit : it.limits)
    if (limit == SupplyLimit::least_flow) return "no: too little for the pump";
  return it.can_run() ? "yes" : "no: too much for the pump";
}

}  // namespace

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");

  std::printf("                                rpm  gal/min\n");
  // The strips' valve is 3 ft of narrow pipe: 15 ft/s is borne there.
  for (const SetsTogether& it : sets_together(farm, {.velocity = 15 * ft_per_s})) {
    std::string names = it.sets.size() > 2 ? "all" : it.sets.front();
    if (it.sets.size() == 2) names += " + " + it.sets.back();
    std::printf("%-29s  %4.0f  %7.1f  %s\n",
                names.c_str(),
                *it.speed / rpm,
                it.flow / gpm,
                verdict(it).c_str());
  }
}
