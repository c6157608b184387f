#include "hydro/what_ifs/remedies.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/answers/pressure_budget.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/in_parallel.hpp"
#include "hydro/what_ifs/remedy_steps.hpp"

#include <algorithm>
#include <iterator>
#include <limits>
#include <tuple>
#include <utility>

namespace hydro {
namespace {

void examine(const RemedyOptions& options) {
  Examination examination;
  for (std::size_t i = 0; i < options.pipes.size(); ++i)
    examination.include("pipes, " + std::to_string(i + 1), problems(options.pipes[i]));
  const auto share = [&](const char* key, double value, double from, double to) {
    examination.within(key, value, Range<double>{from, to, units::plain});
  };
  const auto money = [&](const char* key, const std::optional<double>& value) {
    examination.within(key, value, Range<double>{0, 1e9, units::plain});
  };
  examination.within("sizes_up", options.sizes_up, 1, 20);
  share("most_outlets_fewer", options.most_outlets_fewer, 0, 1);
  share("outlet_step", options.outlet_step, 0.001, 0.5);
  share("least_outlet", options.least_outlet, 0.05, 1);
  share("least_gain", options.least_gain, 0, 1);
  money("outlet_price", options.outlet_price);
  money("lost_outlet_price", options.lost_outlet_price);
  money("kilowatt_price", options.kilowatt_price);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

std::optional<Power> shaft_power(const Solution& solution) {
  Power sum{};
  bool any = false;
  const auto add = [&](const OperatingPoint& supply) {
    for (const PumpDuty& pump : supply.pumps) {
      if (!pump.shaft_power) return false;
      sum += *pump.shaft_power;
      any = true;
    }
    return true;
  };
  bool all_known = add(solution.supply());
  for (const OperatingPoint& supply : solution.further_supplies())
    all_known = add(supply) && all_known;
  return any && all_known ? std::optional(sum) : std::nullopt;
}

Standing standing_of(const Solution& solution, const Check& found) {
  const auto weakest = weakest_outlet(solution);
  return {static_cast<int>(found.below_rated.size()),
          weakest ? std::optional<double>(weakest->pressure / weakest->rated) : std::nullopt,
          solution.inflow(),
          shaft_power(solution)};
}

bool is_over_rating(const Check& found, const std::string& line) {
  return std::any_of(found.over_rating.begin(),
                     found.over_rating.end(),
                     [&](const OverRating& one) { return one.line == line; });
}

/// On any supply.
bool is_new(SupplyLimit limit, const Check& before, const Check& after) {
  const auto appears = [&](const std::vector<SupplyLimit>& was,
                           const std::vector<SupplyLimit>& now) {
    return std::ranges::count(now, limit) > std::ranges::count(was, limit);
  };
  bool any = appears(before.supply_limits, after.supply_limits);
  for (std::size_t i = 0; i < after.further_supply_limits.size(); ++i)
    any = any || appears(before.further_supply_limits[i], after.further_supply_limits[i]);
  return any;
}

/// What keeps it from being a cure.
std::vector<Margin> left_over(const Check& before, const Check& after, const Solution& solution) {
  std::vector<Margin> left =
      passed(margins(solution, {.judged = {Limit::rated, Limit::minimum, Limit::maximum}}));
  const auto add = [&](const Limits& limits) {
    std::ranges::move(passed(margins(solution, limits)), std::back_inserter(left));
  };
  Limits pipes{.judged = {Limit::pipe_rating}};
  for (const OverRating& pipe : after.over_rating)
    if (!is_over_rating(before, pipe.line)) pipes.lines.push_back(pipe.line);
  if (!pipes.lines.empty()) add(pipes);
  Limits supplies{.judged = {}};
  for (const Limit limit : every_limit())
    if (const auto of_supply = supply_limit(limit); of_supply && is_new(*of_supply, before, after))
      supplies.judged.push_back(limit);
  if (!supplies.judged.empty()) add(supplies);
  return left;
}

/// What it buys, the best first.
auto worth(const Standing& after) {
  return std::tuple(after.below_rated, -after.lowest_share.value_or(0), si(after.flow));
}

bool comes_before(const Remedy& one, const Remedy& other) {
  constexpr double dearest = std::numeric_limits<double>::infinity();
  const auto rank = [&](const Remedy& remedy) {
    return std::pair(!remedy.cures, remedy.cures ? remedy.cost.value_or(dearest) : 0);
  };
  if (rank(one) != rank(other)) return rank(one) < rank(other);
  return worth(one.after) < worth(other.after);
}

class Judging {
 public:
  Judging(const Solution& before, const RemedyOptions& options)
      : options_(options), check_(check(before)), standing_(standing_of(before, check_)) {}

  const Standing& before() const { return standing_; }

  /// The first step that cures, or that which buys most.
  Remedy best_of(const RemedyLadder& ladder) const {
    std::optional<Remedy> best;
    for (std::size_t i = 0; i < ladder.steps; ++i) {
      Remedy remedy = judged(ladder, ladder.step(i));
      if (!best || remedy.cures || worth(remedy.after) < worth(best->after))
        best = std::move(remedy);
      if (best->cures) break;
    }
    return std::move(*best);
  }

  bool buys_something(const Remedy& remedy) const {
    return remedy.cures || remedy.after.below_rated < before().below_rated ||
           remedy.after.lowest_share.value_or(0) >=
               before().lowest_share.value_or(0) + options_.least_gain;
  }

 private:
  Remedy judged(const RemedyLadder& ladder, RemedyStep step) const {
    const Check found = check(step.solution);
    const Standing after = standing_of(step.solution, found);
    std::vector<Margin> passed = left_over(check_, found, step.solution);
    const bool cures = passed.empty();
    return {ladder.kind,
            ladder.lines,
            std::move(step.deed),
            cures,
            std::move(passed),
            ladder.kind == RemedyKind::more_pressure ? cost_of_power(after) : step.cost,
            after,
            std::move(step.solution)};
  }

  std::optional<double> cost_of_power(const Standing& after) const {
    if (!options_.kilowatt_price || !after.shaft_power || !before().shaft_power)
      return std::nullopt;
    return *options_.kilowatt_price * ((*after.shaft_power - *before().shaft_power) / kW);
  }

  const RemedyOptions& options_;
  Check check_;
  Standing standing_;
};

}  // namespace

Remedies remedies(const Layout& layout, const RemedyOptions& options, const Work& work) {
  examine(options);
  const Solution before = solve(layout);
  const Judging judging(before, options);
  Remedies answer{judging.before(), {}};
  if (answer.before.below_rated == 0) return answer;

  const std::vector<RemedyLadder> ladders = ladders_of_remedies(before, options);
  std::vector<std::optional<Remedy>> best(ladders.size());
  in_parallel(ladders.size(), work, [&](std::size_t i) { best[i] = judging.best_of(ladders[i]); });
  for (std::optional<Remedy>& remedy : best)
    if (judging.buys_something(*remedy)) answer.ranked.push_back(std::move(*remedy));
  std::stable_sort(answer.ranked.begin(), answer.ranked.end(), comes_before);
  return answer;
}

}  // namespace hydro
