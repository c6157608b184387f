// threads_test.cpp: many threads at once solve and ask of the same layouts and solutions, as headers
// allow where they say "const and pure", and find what one alone finds.

#include "hydro/answers/check.hpp"
#include "hydro/answers/sensitivity.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/diagnosis/next_reading.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/text/json.hpp"
#include "hydro/text/report.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

#include <cstdint>
#include <latch>
#include <string>
#include <thread>
#include <vector>

#include "random_looped.hpp"
#include "sample_layouts.hpp"
#include <gtest/gtest.h>

namespace hydro {
namespace {

constexpr int threads = 4;

/// What each of several threads finds that begin at once.
template <class Find>
auto found_at_once(const Find& find) {
  std::vector<decltype(find())> found(threads);
  std::latch begin(threads);
  std::vector<std::jthread> all;
  for (auto& it : found)
    all.emplace_back([&] {
      begin.arrive_and_wait();
      it = find();
    });
  all.clear();
  return found;
}

/// Trees, loops, a pump; no two share what Layouts share.
std::vector<Layout> layouts() {
  return {with_all_states(), pumped_farm(), random_looped(3), random_looped(8)};
}

// First of all tests here: the width of the vectors is chosen when they are first used.
TEST(ManyThreads, BreakEveryOutletAtOnce) {
  const Layout layout = sample_layout({sample_row("row", 20)});
  const auto find = [&] {
    return bits(break_every_outlet(layout, {head_off("", 0), BreakDetail::profiles}, {.threads = 2})
                    .pressure);
  };
  const auto all = found_at_once(find);
  for (const auto& found : all) EXPECT_EQ(found, find());
}

TEST(ManyThreads, SolveTheSameLayoutAtOnce) {
  for (const Layout& layout : layouts()) {
    const auto find = [&] { return to_json(solve(layout)); };
    const auto all = found_at_once(find);
    for (const auto& found : all) EXPECT_EQ(found, find());
  }
}

/// Layouts that differ in faults alone share what follows from the lines.
TEST(ManyThreads, SolveVariantsOfOneLayoutAtOnce) {
  const Layout farm = pumped_farm().watering({"low"});
  const auto find = [&] { return to_json(solve(farm.with_fault(head_off("row 1", 3)))); };
  const auto all = found_at_once(find);
  for (const auto& found : all) EXPECT_EQ(found, find());
}

TEST(ManyThreads, AskTheSameSolutionAtOnce) {
  const Solution solution = solve(pumped_farm().watering({"low"}));
  const auto find = [&] {
    return report(solution) +
           std::to_string(sensitivity(solution, PressureFigure{.at = "row 1", .outlet = 1}).value /
                          psi) +
           std::to_string(check(solution).below_rated.size()) +
           std::to_string(set_for_rated_if_possible(solution.layout()).pressure / psi);
  };
  const auto all = found_at_once(find);
  for (const auto& found : all) EXPECT_EQ(found, find());
}

TEST(ManyThreads, AskWhatToReadNextAtOnce) {
  const Layout farm = pumped_farm().watering({"low"});
  const auto find = [&] {
    std::vector<std::uint64_t> worth;
    for (const PossibleReading& it : next_reading(farm, {}, {}, {}, {.threads = 2}).readings)
      worth.push_back(bits(it.information));
    return worth;
  };
  const auto all = found_at_once(find);
  EXPECT_FALSE(all.front().empty());
  for (const auto& found : all) EXPECT_EQ(found, find());
}

}  // namespace
}  // namespace hydro
