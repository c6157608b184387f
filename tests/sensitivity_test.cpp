// Sensitivities: central differences of whole solutions on random layouts of every kind, a small model
// of its own in complex numbers, and laws that must hold exactly.
#include "hydro/answers/sensitivity.hpp"

#include "hydro/physics/friction_law.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <cstdint>
#include <functional>
#include <numbers>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "changed_input.hpp"
#include "random_layout.hpp"
#include "random_looped.hpp"
#include "random_pumped.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using units::m;

// ---- Against central differences of solve() ----

using AnyFigure = std::variant<PressureFigure, FlowFigure>;

/// As the solution has it, in SI units.
double read(const Solution& solution, const AnyFigure& figure) {
  if (const auto* it = std::get_if<PressureFigure>(&figure)) {
    const OperatingPoint& point =
        it->at.empty() ? solution.supply() : solution.further_supplies().front();
    const auto i = static_cast<std::size_t>(it->outlet - 1);
    switch (it->kind) {
      case PressureFigure::Kind::device:
        return si(solution.line(it->at).pressure[i]);
      case PressureFigure::Kind::line:
        return si(solution.line(it->at).line_pressure[i]);
      case PressureFigure::Kind::supply:
        return si(point.pressure);
      case PressureFigure::Kind::gauge:
        return si(point.gauge_reading.value());
    }
  }
  const auto& it = std::get<FlowFigure>(figure);
  if (it.kind == FlowFigure::Kind::all) return si(solution.inflow());
  if (it.kind == FlowFigure::Kind::supply) return si(solution.supply().flow);
  if (it.kind == FlowFigure::Kind::inflow) return si(solution.line(it.at).inflow);
  return si(solution.line(it.at).flow[static_cast<std::size_t>(it.outlet - 1)]);
}

/// One influence in SI units, by the share or by the metre; and the figure itself.
struct Plain {
  std::vector<NamedInput> inputs;
  std::function<double(const NamedInput&)> of;
  double value;
};
Plain plain(const Sensitivities& sensitivities, const AnyFigure& figure) {
  return std::visit(
      [&](const auto& it) {
        const auto found = sensitivities.of(it);
        Plain result;
        for (const auto& influence : found.influences)
          result.inputs.push_back({influence.input, influence.at, influence.number});
        result.of = [found](const NamedInput& named) {
          const auto influence = found.of(named.input, named.at, named.number);
          return is_height(named.input) ? influence.by_height.value() : si(influence.by_share);
        };
        result.value = si(found.value);
        return result;
      },
      figure);
}

std::vector<AnyFigure> some_figures(const Layout& layout, std::mt19937_64& dice) {
  std::vector<AnyFigure> figures{supply_pressure(), whole_inflow(), supply_flow()};
  if (layout.supply().gauge) figures.push_back(gauge_reading());
  const Line* line = &layout.lines()[dice() % layout.lines().size()];
  figures.push_back(inflow_of(line->name));
  for (std::size_t i = 0; i < layout.lines().size() && line->outlet_count() == 0; ++i)
    line = &layout.lines()[i];
  if (const int count = line->outlet_count(); count > 0) {
    const int outlet = 1 + static_cast<int>(dice() % static_cast<std::uint64_t>(count));
    figures.push_back(pressure_at(line->name, outlet));
    figures.push_back(line_pressure_at(line->name, outlet));
    figures.push_back(flow_of(line->name, outlet));
  }
  return figures;
}

std::optional<double> solved(const std::optional<Layout>& layout, const AnyFigure& figure) {
  if (!layout) return std::nullopt;
  try {
    return read(solve(*layout), figure);
  } catch (const NotSolved&) {
    return std::nullopt;
  }
}

/// How well the least loss along a line in a loop is known, which is to 1e-12 of the heads; 1 where
/// one is so small that it is not.
double doubt_of_flows(const Solution& solution) {
  const Layout& layout = solution.layout();
  double doubt = 0;
  for (std::size_t i = 0; i < solution.lines().size(); ++i) {
    const LineSolution& line = solution.lines()[i];
    if (line.inflow == Flow{} || line.regulator) continue;
    const double rise = si(pressure(layout.ground_rise(i), solution.water().density));
    const double loss = std::abs(si(line.inlet_pressure - line.end_pressure) - rise);
    const double heads = std::max(si(solution.supply_pressure()), 1e5);
    doubt = std::max(doubt, Residuals::tolerance * heads / std::max(loss, 1e-12 * heads));
  }
  return doubt;
}

double largest_flow(const Solution& solution) {
  double largest = 1e-9;
  for (const LineSolution& line : solution.lines())
    largest = std::max(largest, std::abs(si(line.inflow)));
  return largest;
}

struct Tally {
  int checked = 0;
  int at_a_bend = 0;  ///< differences of more and less of the input do not agree
  int refused = 0;    ///< the figure has no slope
  std::set<Input> inputs = {};
};

/// A difference of two steps, h and h / 2, whose errors with h^2 cancel (Richardson). What is left
/// is less than what halving the step has changed, times a few where a flow near rest has errors
/// with another power of h; and what the solutions are uncertain by, 1e-12 of their scale, over h.
void check_against_differences(const Layout& layout,
                               const Solution& solution,
                               std::mt19937_64& dice,
                               Tally& tally) {
  constexpr double h = 1e-4;
  constexpr double a_few = 4;
  constexpr double bend = 0.02;
  constexpr int inputs_each = 10;
  const Sensitivities sensitivities(solution);
  const bool is_looped = std::ranges::any_of(
      layout.lines(), [](const Line& line) { return !line.joins.empty(); });
  const double doubt = is_looped ? doubt_of_flows(solution) : 0;
  for (const AnyFigure& figure : some_figures(layout, dice)) {
    const bool is_pressure = std::holds_alternative<PressureFigure>(figure);
    if (!is_pressure && doubt > 1e-7) continue;
    Plain exact;
    try {
      exact = plain(sensitivities, figure);
    } catch (const InvalidInput& error) {
      EXPECT_THAT(error.what(), HasSubstr("stands still"));
      ++tally.refused;
      continue;
    }
    const double value = read(solution, figure);
    if (!is_pressure && std::abs(value) < 1e-9 * largest_flow(solution)) continue;
    EXPECT_DOUBLE_EQ(exact.value, value);
    const double scale =
        is_pressure ? std::max(1e5, si(solution.supply_pressure()))
                    : std::max({1e-9, std::abs(value), std::abs(si(solution.inflow()))});
    for (int i = 0; i < inputs_each && !exact.inputs.empty(); ++i) {
      NamedInput named = exact.inputs[dice() % exact.inputs.size()];
      if (named.input == Input::length) named.number = 0;
      const auto with = [&](double change) {
        return solved(with_changed(layout, named, change), figure);
      };
      const auto more = with(h), less = with(-h), half_more = with(h / 2), half_less = with(-h / 2);
      if (!more || !less || !half_more || !half_less) continue;
      const double one_sided = std::abs(*more + *less - 2 * value) / h;
      const double coarse = (*more - *less) / (2 * h);
      const double fine = (*half_more - *half_less) / h;
      const double noise = 10 * Residuals::tolerance * scale / h + 10 * doubt * scale;
      if (one_sided > bend * std::abs(fine) + noise) {
        ++tally.at_a_bend;
        continue;
      }
      ++tally.checked;
      tally.inputs.insert(named.input);
      EXPECT_NEAR(exact.of(named), fine + (fine - coarse) / 3, a_few * std::abs(fine - coarse) + noise)
          << words_of(named.input) << " of " << named.at << ", " << named.number << "; figure "
          << figure.index() << " is " << value;
    }
  }
}

TEST(Probe, Random) {
  const int kind = std::getenv("KIND") ? std::atoi(std::getenv("KIND")) : 0;
  const int from = std::getenv("FROM") ? std::atoi(std::getenv("FROM")) : 0;
  const int to = std::getenv("TO") ? std::atoi(std::getenv("TO")) : 40;
  Tally tally;
  for (int seed = from; seed < to; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937_64 dice(static_cast<std::uint64_t>(seed));
    const auto s = static_cast<std::uint64_t>(seed);
    const Layout layout = kind == 0   ? random_layout(s)
                          : kind == 1 ? random_layout(s, {.farm = true})
                          : kind == 2 ? random_pumped(s)
                                      : random_looped(s);
    std::optional<Solution> solution;
    try { solution = solve(layout); } catch (const NotSolved&) { continue; }
    check_against_differences(layout, *solution, dice, tally);
  }
  printf("checked %d bend %d refused %d inputs %zu\n", tally.checked, tally.at_a_bend, tally.refused, tally.inputs.size());
}

}  // namespace
}  // namespace hydro
