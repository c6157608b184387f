// What holds at scale: so many random layouts, each solved once, and the cases that stop solvers.
// Exit status: 0 all were solved, 1 some were not, 2 wrong options.

#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "any_layout.hpp"
#include "hard_cases.hpp"
#include "reference_solutions.hpp"
#include "solve_many.hpp"
#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace {

using namespace hydro;

bool is_failure(const Outcome& outcome) {
  return !outcome.failure.empty() && !outcome.refused;
}

double percent(std::size_t part, std::size_t whole) {
  return whole == 0 ? 0 : 100.0 * static_cast<double>(part) / static_cast<double>(whole);
}

template <class Is>
std::size_t count(const std::vector<Outcome>& outcomes, Is is) {
  return static_cast<std::size_t>(std::ranges::count_if(outcomes, is));
}

void print_kinds(const std::vector<Outcome>& outcomes) {
  fmt::print("\n{:32}{:>9}{:>10}{:>8}{:>13}{:>12}{:>10}\n",
             "drawn from",
             "layouts",
             "outlets",
             "dry",
             "last resort",
             "most steps",
             "failures");
  for (std::size_t k = 0; k < layout_kinds.size(); ++k) {
    std::size_t layouts = 0, outlets = 0, dry = 0, last_resorts = 0, failures = 0;
    int most_steps = 0;
    for (const Outcome& outcome : outcomes) {
      if (outcome.kind != k || outcome.refused) continue;
      ++layouts;
      outlets += static_cast<std::size_t>(outcome.outlets);
      dry += outcome.has(0);
      last_resorts += outcome.residuals.last_resort;
      most_steps = std::max(most_steps, outcome.residuals.steps);
      failures += is_failure(outcome);
    }
    fmt::print("{:32}{:9}{:10}{:6.0f} %{:13}{:12}{:10}\n",
               layout_kinds[k].name,
               layouts,
               outlets,
               percent(dry, layouts),
               last_resorts,
               most_steps,
               failures);
  }
}

void print_mix(const std::vector<Outcome>& outcomes) {
  fmt::print("\n{:40}share\n", "layouts with");
  for (std::size_t t = 0; t < traits.size(); ++t)
    fmt::print(
        "{:36}{:7.1f} %\n",
        traits[t].name,
        percent(count(outcomes, [&](const Outcome& it) { return it.has(t); }), outcomes.size()));
  constexpr std::array bounds{0, 1, 10, 100, 1000, 10'000};
  fmt::print("\n{:20}layouts\n", "outlets");
  for (std::size_t i = 0; i < bounds.size(); ++i) {
    const bool is_last = i + 1 == bounds.size();
    const auto is_here = [&](const Outcome& it) {
      return it.outlets >= bounds[i] && (is_last || it.outlets < bounds[i + 1]);
    };
    const std::string range = is_last  ? fmt::format("{} and more", bounds[i])
                              : i == 0 ? "none"
                                       : fmt::format("{} to {}", bounds[i], bounds[i + 1] - 1);
    fmt::print("{:16}{:11}\n", range, count(outcomes, is_here));
  }
}

void print_steps(const std::vector<Outcome>& outcomes) {
  constexpr std::array bounds{0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 15, 20, 30, 60, 200, 1000};
  fmt::print("\n{:20}layouts\n", "steps up to");
  int from = -1;
  const auto print = [&](const std::string& bound, int to) {
    const auto is_here = [&](const Outcome& it) {
      return it.residuals.steps > from && it.residuals.steps <= to;
    };
    const std::size_t here = count(outcomes, is_here);
    fmt::print("{:>16}{:11}{:10.4f} %\n", bound, here, percent(here, outcomes.size()));
    from = to;
  };
  for (const int bound : bounds) print(std::to_string(bound), bound);
  print("more", std::numeric_limits<int>::max());
  const std::size_t last_resorts =
      count(outcomes, [](const Outcome& it) { return it.residuals.last_resort; });
  fmt::print("last resort: {}, {:.3f} %\n", last_resorts, percent(last_resorts, outcomes.size()));
}

void print_worst(const std::vector<Outcome>& outcomes) {
  std::vector<Outcome> solved;
  std::ranges::copy_if(
      outcomes, std::back_inserter(solved), [](const Outcome& it) { return it.failure.empty(); });
  if (solved.empty()) return;
  const auto print = [&](std::string_view what, std::string_view format, auto figure) {
    const auto worst = std::ranges::max_element(solved, {}, figure);
    fmt::print("{:24}{:>12}   seed {} ({})\n",
               what,
               fmt::format(fmt::runtime(format), figure(*worst)),
               worst->seed,
               layout_kinds[worst->kind].name);
  };
  fmt::print("\nlargest, of those that were solved\n");
  print("residual of mass", "{:.2e}", [](const Outcome& it) { return it.residuals.mass; });
  print("residual of energy", "{:.2e}", [](const Outcome& it) { return it.residuals.energy; });
  print("residual of outlets", "{:.2e}", [](const Outcome& it) { return it.residuals.outlet; });
  print("number of steps", "{}", [](const Outcome& it) { return it.residuals.steps; });
  print("number of outlets", "{}", [](const Outcome& it) { return it.outlets; });
  print("time [s]", "{:.3f}", [](const Outcome& it) { return it.seconds; });
}

bool print_many(std::uint64_t seed, std::size_t wanted, int threads) {
  const auto begun = std::chrono::steady_clock::now();
  const std::vector<Outcome> outcomes = solve_many(seed, wanted, threads);
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begun;
  double solving = 0;
  for (const Outcome& outcome : outcomes) solving += outcome.seconds;
  const std::size_t failures = count(outcomes, is_failure);
  const std::size_t refused = count(outcomes, [](const Outcome& it) { return it.refused; });
  fmt::print("{} layouts, seeds {} to {}: {} not solved, {} drawn that are none\n",
             wanted,
             seed,
             seed + wanted - 1,
             failures,
             refused);
  for (const Outcome& outcome : outcomes)
    if (!outcome.failure.empty()) fmt::print("seed {}: {}\n", outcome.seed, outcome.failure);
  print_kinds(outcomes);
  print_mix(outcomes);
  print_steps(outcomes);
  print_worst(outcomes);
  fmt::print(
      "\n{:.0f} s in all; solving alone {:.0f} s, all threads together\n", taken.count(), solving);
  return failures == 0;
}

/// tests/reference/solutions.csv
void print_reference() {
  fmt::print(
      "# Found by one build of the library, to be found again by every other. Names of the "
      "layouts:\n"
      "# reference_solutions.cpp. Of the first line with outlets, its first, middle and last one.\n"
      "# inflow [m3/s], pressures in the pipe [Pa] (3), flows out of the outlets [m3/s] (3), "
      "layout\n");
  for (const ReferenceLayout& it : reference_layouts()) {
    const ReferenceFigures figures = figures_of(solve(it.layout));
    fmt::print("{:.17g},{:.17g},{:.17g},{}\n",
               figures.inflow,
               fmt::join(figures.line_pressures, ","),
               fmt::join(figures.flows, ","),
               it.name);
  }
}

bool print_hard_cases() {
  bool all_solved = true;
  fmt::print("Newton steps; ! the last resort was needed\n\n{:52}", "outlets");
  for (const int outlets : hard_counts) fmt::print("{:7}", outlets);
  fmt::print("\n");
  for (const HardCase& hard : hard_cases()) {
    fmt::print("{:52}", hard.name);
    for (const int outlets : hard_counts) {
      try {
        const Residuals residuals = solve(hard.layout(outlets)).residuals();
        fmt::print("{:6}{}", residuals.steps, residuals.last_resort ? '!' : ' ');
      } catch (const NotSolved&) {
        fmt::print(" FAILED");
        all_solved = false;
      }
    }
    fmt::print("\n");
  }
  return all_solved;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app("Many random layouts, each solved once.");
  std::uint64_t seed = 1;
  std::size_t layouts = 2000;
  int threads = 0;
  bool robustness = false, reference = false;
  app.add_option("--count", layouts, "how many")->capture_default_str();
  app.add_option("--seed", seed, "of the first; the others follow it")->capture_default_str();
  app.add_option("--threads", threads, "0: as many as the machine runs at once")
      ->capture_default_str();
  app.add_flag("--robustness", robustness, "the cases that stop solvers instead");
  app.add_flag("--reference", reference, "writes tests/reference/solutions.csv instead");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? 0 : 2;
  }
  if (reference) {
    print_reference();
    return 0;
  }
  return (robustness ? print_hard_cases() : print_many(seed, layouts, threads)) ? 0 : 1;
}
