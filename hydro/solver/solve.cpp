#include "hydro/solver/solve.hpp"

#include "hydro/physics/operating_point.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/reading.hpp"
#include "hydro/solver/settle.hpp"
#include "hydro/solver/supply_notes.hpp"
#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace hydro {
Solution solve(const Layout& layout, const SolveOptions& options) {
  Examination examination;
  examination.within("newton_steps", options.newton_steps, 0, 10000);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  const WaterProperties water = properties(layout.water());
  const Tree tree = make_tree(layout, water);
  const Settled settled = settle(tree, options.newton_steps);
  const Reading reading(layout, water, tree, settled.sweeps);
  std::vector<LineSolution> lines;
  lines.reserve(layout.lines().size());
  std::vector<std::string> notes;
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    lines.push_back(reading.line(i));
    std::ranges::move(reading.notes(i), std::back_inserter(notes));
  }
  OperatingPoint supply =
      operating_point(layout.supply_as_it_is(),
                      Flow::from_value(std::max(0.0, settled.sweeps.supply_flow())),
                      layout.water(),
                      layout.site());
  std::ranges::move(notes_on(layout.supply_as_it_is(), supply), std::back_inserter(notes));
  Solution solution(
      layout, water, std::move(lines), std::move(supply), settled.residuals, std::move(notes));
  if (!settled.met) throw NotSolved(std::move(solution));
  return solution;
}

}  // namespace hydro
