// What a cold solve costs, in law passes of the same run.
//
// Unit      One law pass: for every outlet one power and one square root with their derivatives,
//           as a plain loop.
// Cases     Laterals of 20 to 100,000 outlets and a main with 100 laterals of 100 outlets:
//           Hazen-Williams, about 20 % of the supply's head lost, outlets of exponent 0.5, each with
//           and without a riser that has losses.
// Kernel    From the tree to residuals of 1e-12: the sweeps alone. Whole: solve(), from the layout
//           to the solution.
//
//   solve_benchmark --benchmark_repetitions=9 --benchmark_enable_random_interleaving=true

#include "hydro/hydro.hpp"
#include "hydro/solver/sweeps.hpp"
#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <cstdio>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "cases.hpp"
#include "law_pass.hpp"
#include <benchmark/benchmark.h>

namespace {

using namespace hydro;
using cases::lateral_layout;
using cases::tree_layout;

void kernel(benchmark::State& state, const Layout& layout) {
  const WaterProperties water = properties(layout.water());
  const Tree tree = make_tree(layout, water);
  int steps = 0;
  for (auto _ : state) {
    Sweeps sweeps(tree, 1e-13 * tree.head_span);
    Imbalance left = sweeps.gather();
    for (steps = 0; !left.within(1e-12) && steps < 60; ++steps) {
      sweeps.correct();
      left = sweeps.gather();
    }
    benchmark::DoNotOptimize(left);
    if (!left.within(1e-12)) state.SkipWithError("not solved");
  }
  state.counters["steps"] = steps;
  state.counters["bytes"] =
      static_cast<double>(tree.places.size() * (sizeof(Place) + sizeof(State)) +
                          tree.runs.size() * (sizeof(Run) + 4 * sizeof(double)) +
                          tree.reaches.size() * sizeof(Reach) +
                          tree.mouths.size() * sizeof(Mouth)) /
      layout.outlet_count();
}

void whole(benchmark::State& state, const Layout& layout) {
  for (auto _ : state) benchmark::DoNotOptimize(solve(layout));
}

/// Prints the usual table, and after it the times in law passes.
class LawPasses : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
      if (run.run_type != Run::RT_Iteration) continue;
      times_[run.run_name.function_name].push_back(run.GetAdjustedRealTime());
      counters_[run.run_name.function_name] = run.counters;
    }
  }
  void Finalize() override {
    ConsoleReporter::Finalize();
    if (times_["law pass"].empty()) return;  // filtered out
    std::printf("\n%-28s %8s %12s %8s %8s\n",
                "cold solve, per outlet",
                "ns",
                "law passes",
                "steps",
                "bytes");
    for (auto& [name, outlets] : cases) {
      if (times_[name].empty()) continue;
      const double each = median(times_[name]) / outlets;
      std::printf(
          "%-28s %8.1f %12.2f", name.c_str(), each, each / (median(times_["law pass"]) / 1000));
      if (counters_[name].count("steps") > 0)
        std::printf(" %8.0f %8.1f", counters_[name]["steps"].value, counters_[name]["bytes"].value);
      std::printf("\n");
    }
  }
  std::vector<std::pair<std::string, int>> cases;

 private:
  static double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
  }
  std::map<std::string, std::vector<double>> times_;
  std::map<std::string, benchmark::UserCounters> counters_;
};

}  // namespace

int main(int argc, char** argv) {
  LawPasses reporter;
  benchmark::RegisterBenchmark("law pass", law_pass)->Unit(benchmark::kNanosecond);
  const auto add = [&](const std::string& name, const Layout& layout) {
    benchmark::RegisterBenchmark(("kernel, " + name).c_str(), kernel, layout);
    benchmark::RegisterBenchmark(("whole, " + name).c_str(), whole, layout);
    reporter.cases.emplace_back("kernel, " + name, layout.outlet_count());
    reporter.cases.emplace_back("whole, " + name, layout.outlet_count());
  };
  for (const bool with_riser : {false, true}) {
    const std::string suffix = with_riser ? ", risers" : "";
    for (const int count : {20, 50, 100, 1000, 10000, 100000})
      add(std::to_string(count) + suffix, lateral_layout(count, with_riser));
    add("tree 10100" + suffix, tree_layout(with_riser));
  }
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks(&reporter);
  benchmark::Shutdown();
}
