#include "hydro/solver/solve.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/solver/reading.hpp"
#include "hydro/solver/settled_layout.hpp"
#include "hydro/solver/supply_notes.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace hydro {
namespace {

int checked_steps(const SolveOptions& options) {
  Examination examination;
  examination.within("newton_steps", options.newton_steps, 0, 10000);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return options.newton_steps;
}

}  // namespace

SettledLayout::SettledLayout(const Layout& layout, const SolveOptions& options)
    : water(properties(layout.water())),
      tree(make_tree(layout, water)),
      settled(settle(tree, checked_steps(options))) {}

Solution solution_of(const Layout& layout, const SettledLayout& of) {
  const Settled& settled = of.settled;
  const ResultReader reading(layout, of.water, of.tree, settled.sweeps);
  std::vector<LineSolution> lines;
  lines.reserve(layout.lines().size());
  std::vector<std::string> notes;
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    lines.push_back(reading.line(i));
    std::ranges::move(reading.notes(i), std::back_inserter(notes));
  }
  std::vector<OperatingPoint> supplies;
  const std::vector<Supply>& further = layout.further_supplies_as_they_are();
  for (std::size_t i = 0; i <= further.size(); ++i) {
    const Supply& supply = i == 0 ? layout.supply_as_it_is() : further[i - 1];
    supplies.push_back(reading.supply(supply, i, settled.met));
    std::ranges::move(notes_on(supply, supplies.back()), std::back_inserter(notes));
  }
  OperatingPoint first = std::move(supplies.front());
  supplies.erase(supplies.begin());
  Solution solution(layout,
                    of.water,
                    std::move(lines),
                    std::move(first),
                    settled.residuals,
                    std::move(notes),
                    std::move(supplies));
  if (!settled.met) throw NotSolved(std::move(solution));
  return solution;
}

Solution solve(const Layout& layout, const SolveOptions& options) {
  return solution_of(layout, SettledLayout(layout, options));
}

}  // namespace hydro
