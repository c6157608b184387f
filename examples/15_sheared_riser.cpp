// A riser is sheared, or a valve was left open: the gauge falls alike. What tells them apart, and does throttling up help?
#include "hydro/hydro.hpp"

#include <cstdio>

using namespace hydro;

namespace {

void print(const char* what, const Solution& now) {
  const auto row = [&](const char* name) {
    const Series<Pressure>& pressure = now.line(name).pressure;
    std::printf("  %4.1f %4.1f", pressure.front() / psi, pressure.back() / psi);
  };
  std::printf("%-24s %5.0f  %5.1f",
              what,
              *now.supply().pumps[0].speed / rpm,
              *now.supply().gauge_reading / psi);
  row("row 1");
  row("row 2");
  std::printf("  %5zu\n", check(now).below_minimum.size());
}

}  // namespace

int main(int argc, char** argv) {
  const Layout farm = read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml");
  const Layout sound = farm.watering({"rows 1 and 2"});
  const Throttling riser = throttle_up(sound, {riser_sheared("row 2", 7)});
  const Throttling valve = throttle_up(sound, {valve_left_open("row 3")});

  std::printf("                           rpm  gauge  row 1, psi  row 2, psi  heads\n");
  std::printf("                                  psi  first last  first last  that stand still\n");
  print("sound", riser.sound);
  print("riser sheared, row 2", riser.broken);
  print("  throttled up", riser.throttled_up.solution);
  print("row 3's valve left open", valve.broken);
  print("  throttled up", valve.throttled_up.solution);
}
