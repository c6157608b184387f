// What a supply that gives way costs: solving with a pump, setting its speed, and judging which sets
// run together.
//
// Units     Law passes as in solve_benchmark.cpp, per outlet, for a cold solve; a solve of the same
//           layout for an answer.
// Cases     The demo farm (examples/ouzel_bench.toml) with all of it open; its strips
//           (tests/ouzel_strips.hpp), of which one set of 20 heads runs; and 20 sets of 100 outlets,
//           every two of them together.
//
//   supply_benchmark --benchmark_repetitions=9 --benchmark_enable_random_interleaving=true

#include "hydro/answers/set_gauge.hpp"
#include "hydro/answers/sets_together.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/text/read_layout.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "law_pass.hpp"
#include "ouzel_strips.hpp"
#include <benchmark/benchmark.h>

namespace {

using namespace hydro;

constexpr std::size_t running_outlets = 20;  // of Ouzel Bench

Layout strips() {
  return ouzel_strips().watering({"rows 1 and 2"});
}

/// A main with 20 laterals of 100 outlets, each a set of its own, and a pump that feeds two.
Layout twenty_sets() {
  constexpr int count = 20;
  const Supply supply{.pump = Pump{.points = {{0 * gpm, 60 * units::m}, {800 * gpm, 20 * units::m}},
                                   .curve_speed = 2900 * rpm,
                                   .top_speed = 4000 * rpm},
                      .filter = Filter{.loss = 20 * kPa, .at = 600 * gpm},
                      .gauge = Gauge{}};
  std::vector<Line> lines;
  std::vector<WateringSet> sets;
  for (int i = 0; i < count; ++i) {
    const std::string number = std::to_string(i + 1);
    lines.push_back({.name = "main " + number,
                     .fed_by = i == 0 ? "" : "main " + std::to_string(i),
                     .pipe = {.inside_diameter = 200 * mm, .hazen_williams = 150},
                     .length = 12 * units::m,
                     .ground_rise = (i % 3 - 1) * 0.5 * units::m});
    lines.push_back({.name = "row " + number,
                     .fed_by = "main " + number,
                     .pipe = {.inside_diameter = 120 * mm, .hazen_williams = 150},
                     .outlet = Outlet{.flow = 800 * lph, .at = 250 * kPa},
                     .count = 100,
                     .spacing = 3 * units::m,
                     .ground_rise = (i % 5 - 2) * 1.0 * units::m});
    sets.push_back({"set " + number, {"row " + number}});
  }
  return Layout(supply, std::move(lines), {}, {}, std::move(sets));
}

/// An answer and the unit in which it is told, each by its name.
struct Ratio {
  std::string answer;
  std::string unit;
  double per;  ///< of the answer's time: outlets, or pairs
  double aim;
};

std::vector<Ratio> ratios{{"cold solve with a pump", "law pass", running_outlets / 1000.0, 20},
                          {"set_for_gauge", "cold solve with a pump", 1, 3},
                          {"set_for_weakest", "cold solve with a pump", 1, 0},
                          {"set_for_rated", "cold solve with a pump", 1, 0},
                          {"sets_together", "all pairs, solved", 1, 4},
                          {"sets_together", "all combinations, solved", 1, 4}};

class InSolves : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs)
      if (run.run_type == Run::RT_Iteration)
        times_[run.run_name.function_name].push_back(
            run.GetAdjustedCPUTime() / benchmark::GetTimeUnitMultiplier(run.time_unit));
  }
  void Finalize() override {
    ConsoleReporter::Finalize();
    std::printf("\n%-28s %10s  %-28s %6s\n", "", "times", "of", "aim");
    for (const Ratio& ratio : ratios)
      if (!times_[ratio.answer].empty() && !times_[ratio.unit].empty())
        std::printf("%-28s %10.2f  %-28s %6.0f\n",
                    ratio.answer.c_str(),
                    median(times_[ratio.answer]) / median(times_[ratio.unit]) / ratio.per,
                    ratio.unit.c_str(),
                    ratio.aim);
  }

 private:
  static double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
  }
  std::map<std::string, std::vector<double>> times_;
};

void solve_pairs(const Layout& layout, bool others_too) {
  std::vector<std::string> names;
  for (const WateringSet& set : layout.sets()) names.push_back(set.name);
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (others_too) benchmark::DoNotOptimize(solve(layout.watering({names[i]})));
    for (std::size_t k = i + 1; k < names.size(); ++k)
      benchmark::DoNotOptimize(solve(layout.watering({names[i], names[k]})));
  }
  if (others_too) benchmark::DoNotOptimize(solve(layout.watering(names)));
}

}  // namespace

int main(int argc, char** argv) {
  const auto add = [](const char* name, benchmark::TimeUnit unit, std::function<void()> run) {
    benchmark::RegisterBenchmark(name, [run = std::move(run)](benchmark::State& state) {
      for (auto _ : state) run();
    })->Unit(unit);
  };
  const Layout farm = strips();
  const Layout sets = twenty_sets();
  const Pressure reading = solve(farm).supply().gauge_reading.value();
  benchmark::RegisterBenchmark("law pass", law_pass)->Unit(benchmark::kNanosecond);
  const Layout demo = read_layout(HYDRO_EXAMPLES_DIR "/ouzel_bench.toml");
  ratios.push_back({"cold solve of the demo farm", "law pass", demo.outlet_count() / 1000.0, 20});
  add("cold solve of the demo farm", benchmark::kMicrosecond, [=] {
    benchmark::DoNotOptimize(solve(demo));
  });
  add("cold solve with a pump", benchmark::kMicrosecond, [=] {
    benchmark::DoNotOptimize(solve(farm));
  });
  add("set_for_gauge", benchmark::kMicrosecond, [=] {
    benchmark::DoNotOptimize(set_for_gauge(farm, 1.1 * reading));
  });
  add("set_for_weakest", benchmark::kMicrosecond, [=] {
    benchmark::DoNotOptimize(set_for_weakest(farm, 20 * psi));
  });
  add("set_for_rated", benchmark::kMicrosecond, [=] {
    benchmark::DoNotOptimize(set_for_rated(farm));
  });
  add("all pairs, solved", benchmark::kMillisecond, [=] { solve_pairs(sets, false); });
  add("all combinations, solved", benchmark::kMillisecond, [=] { solve_pairs(sets, true); });
  add("sets_together", benchmark::kMillisecond, [=] {
    benchmark::DoNotOptimize(sets_together(sets));
  });
  benchmark::Initialize(&argc, argv);
  InSolves reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  benchmark::Shutdown();
}
