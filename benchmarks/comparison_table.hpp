// comparison_table.hpp: the runs of each case, as one table of medians with ratios.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <map>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

struct Case {
  std::string name;
  std::string ours;  ///< name of the case it is compared with
  double outlets;
};

/// Keeps the runs of each case and prints them as one table. Counters: steps, mass, energy, solved.
class ComparisonTable : public benchmark::BenchmarkReporter {
 public:
  std::vector<Case> cases;

  bool ReportContext(const Context& context) override {
    PrintBasicContext(&GetErrorStream(), context);
    return true;
  }
  void ReportRuns(const std::vector<Run>& runs) override {
    for (const Run& run : runs) {
      if (run.run_type != Run::RT_Iteration) continue;
      const std::string& name = run.run_name.function_name;
      Measured& measured = measured_[name];
      measured.counters = run.counters;
      const auto solved = run.counters.find("solved");
      if (solved != run.counters.end() && !(solved->second.value > 0)) measured.failed = true;
      // Of the processor: on a machine that others use as well, real time counts them too.
      measured.times.push_back(run.GetAdjustedCPUTime());
    }
  }
  bool any_failed() const {
    return std::any_of(
        measured_.begin(), measured_.end(), [](const auto& it) { return it.second.failed; });
  }
  void Finalize() override {
    const double unit = median("law pass") / 1000;
    std::printf("\nOne law pass: %.1f ns per outlet\n\n", unit);
    std::printf("%-24s %12s %12s %8s %10s %10s %8s\n",
                "cold solve",
                "ns/outlet",
                "law passes",
                "steps",
                "mass",
                "energy",
                "to ours");
    for (const Case& it : cases) {
      if (measured_[it.name].times.empty()) continue;
      benchmark::UserCounters& counters = measured_[it.name].counters;
      std::printf("%-24s %12.1f %12.2f %8.0f %10.1e %10.1e %8.1f%s\n",
                  it.name.c_str(),
                  median(it.name) / it.outlets,
                  median(it.name) / it.outlets / unit,
                  counters["steps"].value,
                  counters["mass"].value,
                  counters["energy"].value,
                  median(it.name) / median(it.ours),
                  measured_[it.name].failed ? "  NOT SOLVED" : "");
    }
  }

 protected:
  bool was_run(const std::string& name) const { return measured_.count(name) > 0; }
  bool failed(const std::string& name) { return measured_[name].failed; }
  double counter(const std::string& name, const std::string& which) {
    return measured_[name].counters[which].value;
  }
  double median(const std::string& name) {
    std::vector<double> times = measured_[name].times;
    if (times.empty()) return std::nan("");
    std::sort(times.begin(), times.end());
    return times[times.size() / 2];
  }

 private:
  struct Measured {
    std::vector<double> times;
    benchmark::UserCounters counters;
    bool failed = false;
  };

  std::map<std::string, Measured> measured_;
};

/// Runs what is registered, in random order and 15 times unless the caller says otherwise. Returns
/// the exit status.
inline int run_and_compare(int argc, char** argv, ComparisonTable& table) {
  // Defaults first: what the caller says comes later, and wins.
  std::array defaults{std::string("--benchmark_enable_random_interleaving=true"),
                      std::string("--benchmark_repetitions=15")};
  std::vector<char*> arguments{argv[0]};
  for (std::string& it : defaults) arguments.push_back(it.data());
  arguments.insert(arguments.end(), argv + 1, argv + argc);
  int argument_count = static_cast<int>(arguments.size());
  arguments.push_back(nullptr);
  benchmark::Initialize(&argument_count, arguments.data());
  if (benchmark::ReportUnrecognizedArguments(argument_count, arguments.data())) return 1;
  benchmark::RunSpecifiedBenchmarks(&table);
  benchmark::Shutdown();
  return table.any_failed() ? 1 : 0;
}
