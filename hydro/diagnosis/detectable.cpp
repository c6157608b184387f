#include "hydro/diagnosis/detectable.hpp"

#include "hydro/diagnosis/input_errors.hpp"
#include "hydro/diagnosis/places.hpp"
#include "hydro/diagnosis/solve_candidates.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <utility>

namespace hydro {

std::vector<Detectable> detectable(const Layout& layout,
                                   const Reading& reading,
                                   const FindFaultOptions& options,
                                   const Work& work) {
  std::vector<Problem> found = problems_of_place(reading, layout);
  std::ranges::copy(problems(options, layout), std::back_inserter(found));
  if (!found.empty()) throw InvalidInput(std::move(found));

  const Layout gauged = with_gauge(layout);
  const Solution solution = solve(gauged);
  const Spot spot = spot_of(reading, gauged);
  const double without = shown(spot, read_break(solution));
  const InputErrors errors(solution, options.uncertainty.value_or(assumed_uncertainty(gauged)));
  double variance = errors.of(reading).squaredNorm();
  if (is_pressure(reading.place)) variance += si(options.gauge_bias) * si(options.gauge_bias);

  const std::vector<Candidate> all = candidates(gauged, options.candidates);
  std::vector<CandidateSize> sizes;
  for (std::size_t c = 0; c < all.size(); ++c) sizes.push_back({c, 0});
  std::vector<double> with(all.size());
  std::vector<char> is_solved(all.size());
  solve_candidates(gauged,
                   options.candidates.sizes,
                   all,
                   sizes,
                   work,
                   [&](std::size_t i, const SolvedBreak& solved) {
                     is_solved[i] = solved.not_solved.empty() ? 1 : 0;
                     if (is_solved[i] != 0) with[i] = shown(spot, solved);
                   });

  constexpr double seen_from = 2;
  std::vector<Detectable> table;
  for (std::size_t c = 0; c < all.size(); ++c) {
    if (is_solved[c] == 0) continue;
    Detectable& it = table.emplace_back(Detectable{.candidate = all[c]});
    const double change = with[c] - without;
    if (is_pressure(reading.place))
      it.pressure_change = Pressure::from_value(change);
    else if (is_flow(reading.place))
      it.flow_change = Flow::from_value(change);
    else
      it.speed_change = RotationalSpeed::from_value(change);
    const double figure = std::max(with[c], without);
    const double of_model = options.model_error * figure;
    const double error = own_error(reading, figure);
    // Nothing changes where nothing is shown at all.
    if (change != 0)
      it.standard_errors =
          std::abs(change) / std::sqrt(variance + error * error + of_model * of_model);
    it.seen = it.standard_errors >= seen_from;
  }
  return table;
}

}  // namespace hydro
