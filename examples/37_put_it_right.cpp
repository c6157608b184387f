// The riser of row 2, outlet 7 is sheared. Water on, cap it, stop, or mend it now? Of a run of two hours.
#include "hydro/hydro.hpp"

#include <cstdio>
#include <string>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout strips =
      read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml").watering({"rows 1 and 2"});
  const FoundFault found{
      .candidate = {.kind = CandidateKind::riser_sheared, .line = "row 2", .outlet = 7},
      .fault = riser_sheared("row 2", 7)};
  const MakeRight answer = make_right(strips, found, {.run_time = 2 * units::h});

  std::printf(
      "                             do not work  lost, gal  afterwards, min: row 1  row 2\n");
  for (const WayOn& way : answer.ways) {
    std::printf("%-28s %11zu %10.0f",
                std::string(words_of(way.deed)).c_str(),
                way.out_of_work.size(),
                way.escaping * answer.run_time / gallon);
    for (const ExtraTime& extra : way.extra)
      std::printf("%*.0f", extra.line == "row 1" ? 24 : 7, extra.time / units::min);
    std::printf("\n");
  }
  std::printf("Best: %s.\n", std::string(words_of(answer.ways.at(answer.best).deed)).c_str());
}
