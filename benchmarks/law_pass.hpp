// law_pass.hpp: the unit in which the benchmarks tell their times: for each outlet one power and one
// square root with their derivatives.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include <benchmark/benchmark.h>

/// Of 1,000 outlets.
inline void law_pass(benchmark::State& state) {
  constexpr std::size_t count = 1000;
  std::vector<double> flow(count), pressure(count);
  for (std::size_t i = 0; i < count; ++i) {  // values that a predictor cannot learn
    flow[i] = 1e-4 * static_cast<double>(i % 977 + 1);
    pressure[i] = 20 + 0.01 * static_cast<double>(i % 613);
  }
  for (auto _ : state) {
    double sum = 0;
    for (std::size_t i = 0; i < count; ++i) {
      const double friction = 1e5 * std::pow(flow[i], 0.852);
      const double outlet = 1e-4 * std::sqrt(pressure[i]);
      sum += friction * flow[i] + 1.852 * friction + outlet + outlet / (2 * pressure[i]);
    }
    benchmark::DoNotOptimize(sum);
  }
}
