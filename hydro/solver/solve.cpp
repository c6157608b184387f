#include "hydro/solver/solve.hpp"

#include "hydro/physics/operating_point.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/reading.hpp"
#include "hydro/solver/sweeps.hpp"
#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace hydro {
namespace {

constexpr double tolerance = Residuals::tolerance;
constexpr double last_ramp = 1e-13;  // of the head span: moves no outlet beyond the tolerance

double share_of(double part, double whole) {
  return part == 0 ? 0 : part / whole;
}

bool all_finite(const std::vector<State>& states) {
  return std::all_of(states.begin(), states.end(), [](const State& state) {
    return std::isfinite(state.flow) && std::isfinite(state.head) &&
           std::isfinite(state.outlet_flow) && std::isfinite(state.outlet_head);
  });
}

/// Newton steps until the imbalance is within the tolerance or `most` are taken; counts them.
Imbalance iterate(Sweeps& sweeps, int most, int& steps) {
  Imbalance left = sweeps.gather();
  for (int taken = 0; taken < most && std::isfinite(left.sum) && !left.within(tolerance);
       ++taken, ++steps) {
    sweeps.correct();
    left = sweeps.gather();
  }
  return left;
}

/// The last resort: starts from outlets whose curves are straight as far as there is any head, and
/// follows the answer while that ramp shrinks; more gently after a ramp on which the steps did not
/// settle.
Imbalance shrink_ramp(Sweeps& sweeps, const Tree& tree, int most_each, int& steps) {
  constexpr double fastest = 0.1;
  constexpr double gentlest = 0.95;
  double factor = fastest;
  double ramp = 2;  // of the head span: no head is higher anywhere
  sweeps = Sweeps(tree, ramp * tree.head_span);
  Imbalance left = iterate(sweeps, most_each, steps);
  while (left.within(tolerance) && ramp > last_ramp) {
    Sweeps next = sweeps;
    const double next_ramp = std::max(ramp * factor, last_ramp);
    next.set_ramp(next_ramp * tree.head_span);
    const Imbalance next_left = iterate(next, most_each, steps);
    if (next_left.within(tolerance)) {
      sweeps = std::move(next);
      ramp = next_ramp;
      factor = std::max(factor * factor, fastest);
      left = next_left;
    } else {
      factor = std::sqrt(factor);
      if (factor > gentlest) return next_left;
    }
  }
  return left;
}

}  // namespace

Solution solve(const Layout& layout, const SolveOptions& options) {
  Examination examination;
  examination.within("newton_steps", options.newton_steps, 0, 10000);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  const WaterProperties water = properties(layout.water());
  const Tree tree = make_tree(layout, water);
  Sweeps sweeps(tree, last_ramp * tree.head_span);
  Residuals residuals;
  Imbalance left = iterate(sweeps, options.newton_steps, residuals.steps);
  if (!left.within(tolerance)) {
    residuals.last_resort = true;
    left = shrink_ramp(sweeps, tree, options.newton_steps, residuals.steps);
  }
  const double beyond_numbers = std::isfinite(left.sum) ? 0 : HUGE_VAL;
  residuals.mass = std::max(beyond_numbers, share_of(left.mass, left.flow_scale));
  residuals.energy = std::max(beyond_numbers, share_of(left.energy, left.head_scale));
  residuals.outlet = std::max(beyond_numbers, share_of(left.outlet, left.head_scale));

  const Reading reading(layout, water, tree, sweeps);
  std::vector<LineSolution> lines;
  std::vector<std::string> notes;
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    lines.push_back(reading.line(i));
    std::ranges::move(reading.notes(i), std::back_inserter(notes));
  }
  OperatingPoint supply = operating_point(layout.supply_as_it_is(),
                                          Flow::from_value(std::max(0.0, sweeps.supply_flow())),
                                          layout.water(),
                                          layout.site());
  Solution solution(
      layout, water, std::move(lines), std::move(supply), residuals, std::move(notes));
  if (!left.within(tolerance) || !all_finite(sweeps.states())) throw NotSolved(std::move(solution));
  return solution;
}

}  // namespace hydro
