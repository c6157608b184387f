#include "reference_solutions.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <utility>

#include "growers_layouts.hpp"
#include "hard_cases.hpp"

namespace hydro {
namespace {

std::size_t line_with_outlets(const Solution& solution) {
  std::size_t line = 0;
  while (solution.lines()[line].flow.empty()) ++line;
  return line;
}

std::array<std::size_t, 3> outlets_of(const LineSolution& line) {
  return {0, line.flow.size() / 2, line.flow.size() - 1};
}

double largest(std::span<const double> values) {
  double most = 0;
  for (const double value : values) most = std::max(most, std::abs(value));
  return most;
}

}  // namespace

std::vector<ReferenceLayout> reference_layouts() {
  constexpr int outlets = 20;
  constexpr std::uint64_t growers = 10;
  std::vector<ReferenceLayout> layouts;
  for (const HardCase& hard : hard_cases())
    layouts.push_back({std::string(hard.name), hard.layout(outlets)});
  for (std::uint64_t seed = 1; seed <= growers; ++seed)
    layouts.push_back({"as growers have them, seed " + std::to_string(seed), growers_layout(seed)});
  return layouts;
}

ReferenceFigures figures_of(const Solution& solution) {
  const LineSolution& line = solution.lines()[line_with_outlets(solution)];
  ReferenceFigures figures{.inflow = si(solution.inflow())};
  const std::array outlets = outlets_of(line);
  for (std::size_t i = 0; i < outlets.size(); ++i) {
    figures.line_pressures[i] = si(line.line_pressure[outlets[i]]);
    figures.flows[i] = si(line.flow[outlets[i]]);
  }
  return figures;
}

// 1e-12 of the scale of heads and of flows. Where an outlet is about to run dry a breath of head is
// much flow: what 1e-12 of the head makes of the flow, q x / P, comes on top.
ReferenceFigures tolerances_of(const Solution& solution) {
  constexpr double share = 1e-12;
  double head_scale = std::abs(si(solution.supply_pressure()));
  double flow_scale = std::abs(si(solution.inflow()));
  for (const LineSolution& line : solution.lines()) {
    head_scale = std::max(head_scale, largest(line.line_pressure.si()));
    flow_scale = std::max(flow_scale, largest(line.flow.si()));
  }
  ReferenceFigures tolerances{.inflow = share * flow_scale};
  tolerances.line_pressures.fill(share * head_scale);
  const auto felt = [&](const LineSolution& line, std::size_t outlet) {
    constexpr double most_exponent = 1.5;
    const double pressure = si(line.pressure[outlet]);
    return pressure > 0 ? most_exponent * si(line.flow[outlet]) / pressure * share * head_scale : 0;
  };
  for (const LineSolution& line : solution.lines())
    for (std::size_t i = 0; i < line.flow.size(); ++i) tolerances.inflow += felt(line, i);
  const LineSolution& line = solution.lines()[line_with_outlets(solution)];
  const std::array outlets = outlets_of(line);
  for (std::size_t i = 0; i < outlets.size(); ++i)
    tolerances.flows[i] = share * flow_scale + felt(line, outlets[i]);
  return tolerances;
}

}  // namespace hydro
