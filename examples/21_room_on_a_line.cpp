// How many more heads can row 1 have, with the engine at 2,350 rpm? And if its pressure did not fall?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");
  Supply faster = farm.supply();
  faster.pump->speed = 2350 * rpm;
  const Layout two_rows = farm.with_supply(faster).watering({"rows 1 and 2"});

  // How fast the water runs is left out.
  RoomOptions options{
      .limits = {.judged = {Limit::rated, Limit::variation, Limit::most_flow, Limit::suction}}};
  const Room beyond = room_on_line(two_rows, "row 1", options);

  options.more.where = AddedWhere::between;
  std::printf("Between its heads: %d more.\n", room_on_line(two_rows, "row 1", options).outlets);

  options.more.where = AddedWhere::beyond;
  const Pressure now = solve(two_rows).supply_pressure();
  const Layout held = two_rows.with_supply({.pressure = now});
  std::printf("Beyond its end, if the supply held its %.1f psi: %d more.\n\n",
              now / psi,
              room_on_line(held, "row 1", options).outlets);
  std::fputs(room_report(beyond, UnitSystem::us).c_str(), stdout);
}
