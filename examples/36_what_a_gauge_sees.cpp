// What can the gauge at the pump see at all, and what a gauge held to the last head of row 2?
#include "hydro/hydro.hpp"

#include <cstdio>
#include <map>
#include <string>
#include <utility>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout strips =
      read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml").watering({"rows 1 and 2"});
  const Reading at_pump{.place = ReadingPlace::supply_gauge};
  const Reading at_end{.place = ReadingPlace::riser, .line = "row 2", .outlet = 10};

  std::map<std::string, std::pair<int, int>> seen;
  std::map<std::string, int> all;
  for (const Detectable& it : detectable(strips, at_pump)) {
    ++all[std::string(words_of(it.candidate.kind))];
    seen[std::string(words_of(it.candidate.kind))].first += it.seen;
  }
  for (const Detectable& it : detectable(strips, at_end))
    seen[std::string(words_of(it.candidate.kind))].second += it.seen;

  std::printf("places at which a fault of middling size is seen\n");
  std::printf("                      of   at the pump   at the last head\n");
  for (const auto& [kind, count] : all)
    if (kind != words_of(CandidateKind::no_fault))
      std::printf(
          "%-20s %3d %13d %18d\n", kind.c_str(), count, seen[kind].first, seen[kind].second);
}
