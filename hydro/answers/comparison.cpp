#include "hydro/answers/comparison.hpp"

#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace hydro {
namespace {

/// Those of the later findings that are not among the earlier ones.
template <class Finding>
std::vector<Finding> new_ones(const std::vector<Finding>& before,
                              const std::vector<Finding>& after) {
  std::set<std::pair<std::string, int>> known;
  for (const Finding& finding : before) known.emplace(finding.line, finding.outlet);
  std::vector<Finding> fresh;
  std::copy_if(after.begin(), after.end(), std::back_inserter(fresh), [&](const Finding& finding) {
    return !known.contains({finding.line, finding.outlet});
  });
  return fresh;
}

template <class Q>
Series<Q> difference(const Series<Q>& before, const Series<Q>& after) {
  std::vector<double> changes(after.si().begin(), after.si().end());
  for (std::size_t i = 0; i < changes.size(); ++i) changes[i] -= before.si()[i];
  return Series<Q>(std::move(changes));
}

void require_same_outlets(const Solution& before, const Solution& after) {
  const auto same = [](const LineSolution& one, const LineSolution& other) {
    return one.name == other.name && one.pressure.size() == other.pressure.size();
  };
  if (!std::equal(before.lines().begin(),
                  before.lines().end(),
                  after.lines().begin(),
                  after.lines().end(),
                  same))
    throw InvalidInput("before, after",
                       "have different lines or outlets; compare one layout with itself");
}

}  // namespace

Comparison compare(const Solution& before, const Solution& after) {
  require_same_outlets(before, after);
  const Check was = check(before);
  const Check is = check(after);
  Comparison result{.lines = {},
                    .newly_below_rated = new_ones(was.below_rated, is.below_rated),
                    .newly_below_minimum = new_ones(was.below_minimum, is.below_minimum),
                    .newly_dry = new_ones(was.dry, is.dry),
                    .escaping = {},
                    .missing = {},
                    .inflow_before = before.inflow(),
                    .inflow_after = after.inflow(),
                    .supply_before = before.supply_pressure(),
                    .supply_after = after.supply_pressure()};
  for (std::size_t l = 0; l < after.lines().size(); ++l) {
    const LineSolution& line_before = before.lines()[l];
    const LineSolution& line_after = after.lines()[l];
    result.lines.push_back({line_after.name,
                            difference(line_before.pressure, line_after.pressure),
                            difference(line_before.line_pressure, line_after.line_pressure),
                            difference(line_before.flow, line_after.flow)});
    for (const Opening& opening : line_before.openings) result.escaping -= opening.flow;
    for (const Opening& opening : line_after.openings) result.escaping += opening.flow;
    for (std::size_t i = 0; i < line_after.state.size(); ++i) {
      if (line_before.state[i] == OutletState::broken) result.escaping -= line_before.flow[i];
      if (line_after.state[i] == OutletState::broken)
        result.escaping += line_after.flow[i];
      else if (line_after.state[i] != OutletState::closed)
        result.missing += line_before.flow[i] - line_after.flow[i];
    }
  }
  return result;
}

}  // namespace hydro
