#include "solve_many.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/in_parallel.hpp"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <exception>

#include "any_layout.hpp"
#include "random_looped.hpp"

namespace hydro {
namespace {

template <class Is>
bool any_outlet(const Solution& solution, Is is) {
  return std::ranges::any_of(solution.layout().lines(), [&](const Line& line) {
    return (line.outlet && is(*line.outlet)) ||
           std::ranges::any_of(line.outlets,
                               [&](const PlacedOutlet& placed) { return is(placed.outlet); });
  });
}
template <class Is>
bool any_line(const Solution& solution, Is is) {
  return std::ranges::any_of(solution.layout().lines(), is);
}
template <class Is>
bool any_supply(const Solution& solution, Is is) {
  return is(solution.layout().supply()) ||
         std::ranges::any_of(solution.layout().further_supplies(), is);
}
bool any_state(const Solution& solution, OutletState state) {
  return std::ranges::any_of(solution.lines(), [&](const LineSolution& line) {
    return std::ranges::find(line.state, state) != line.state.end();
  });
}

bool all_finite(const Solution& solution) {
  const auto is_finite = [](const auto&... quantities) {
    return (std::isfinite(si(quantities)) && ...);
  };
  const auto are_finite = [](const auto& series) {
    return std::ranges::all_of(series.si(), [](double number) { return std::isfinite(number); });
  };
  const auto is_supply_finite = [&](const OperatingPoint& supply) {
    return is_finite(supply.flow, supply.pressure, supply.source_pressure, supply.filter_loss);
  };
  return is_supply_finite(solution.supply()) &&
         std::ranges::all_of(solution.further_supplies(), is_supply_finite) &&
         std::ranges::all_of(solution.lines(), [&](const LineSolution& line) {
           return are_finite(line.pressure) && are_finite(line.line_pressure) &&
                  are_finite(line.flow) && are_finite(line.velocity) &&
                  is_finite(line.inflow,
                            line.end_flow,
                            line.inlet_velocity,
                            line.inlet_pressure,
                            line.end_pressure);
         });
}

void describe(const Solution& solution, Outcome& outcome) {
  outcome.outlets = solution.layout().outlet_count();
  outcome.residuals = solution.residuals();
  for (std::size_t i = 0; i < traits.size(); ++i)
    if (traits[i].has(solution)) outcome.traits |= 1U << i;
}

/// That it worked, not that it waited while others did.
double seconds_of_this_thread() {
  std::timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

Outcome solve_one(std::uint64_t seed) {
  Outcome outcome{.seed = seed};
  try {
    const AnyLayout drawn = [&] {
      try {
        return any_layout(seed);
      } catch (const InvalidInput&) {
        outcome.refused = true;
        throw;
      }
    }();
    outcome.kind = drawn.kind;
    const double begun = seconds_of_this_thread();
    const Solution solution = solve(drawn.layout);
    outcome.seconds = seconds_of_this_thread() - begun;
    describe(solution, outcome);
    if (!all_finite(solution)) outcome.failure = "a figure is no number";
    if (!solution.residuals().are_met()) outcome.failure = "the residuals are not met";
  } catch (const NotSolved& error) {
    describe(error.unfinished(), outcome);
    outcome.failure = error.what();
  } catch (const std::exception& error) {
    outcome.failure = error.what();
  }
  return outcome;
}

}  // namespace

const std::array<Trait, 15> traits{{
    {"dry outlets", [](const Solution& it) { return any_state(it, OutletState::dry); }},
    {"broken outlets", [](const Solution& it) { return any_state(it, OutletState::broken); }},
    {"any fault", [](const Solution& it) { return !it.layout().faults().empty(); }},
    {"an exponent up to 0.25",
     [](const Solution& it) {
       return any_outlet(
           it, [](const Outlet& outlet) { return outlet.exponent <= 0.25 && outlet.exponent; });
     }},
    {"compensating outlets",
     [](const Solution& it) {
       return any_outlet(it, [](const Outlet& outlet) { return outlet.compensating.has_value(); });
     }},
    {"outlets rated by nozzle or points",
     [](const Solution& it) {
       return any_outlet(it, [](const Outlet& outlet) {
         return outlet.nozzle.has_value() || !outlet.points.empty();
       });
     }},
    {"regulators",
     [](const Solution& it) {
       return any_line(it, [](const Line& line) { return line.regulator.has_value(); }) ||
              any_outlet(it, [](const Outlet& outlet) { return outlet.regulator.has_value(); });
     }},
    {"pumps",
     [](const Solution& it) {
       return any_supply(it, [](const Supply& supply) { return supply.pump.has_value(); });
     }},
    {"several supplies",
     [](const Solution& it) { return !it.layout().further_supplies().empty(); }},
    {"loops", [](const Solution& it) { return loops_of(it.layout()) > 0; }},
    {"check valves",
     [](const Solution& it) {
       return any_line(it, [](const Line& line) { return line.check_valve == true; });
     }},
    {"sets that run", [](const Solution& it) { return !it.layout().running_sets().empty(); }},
    {"friction after Darcy and Weisbach",
     [](const Solution& it) {
       return any_line(it, [](const Line& line) { return line.pipe.roughness.has_value(); });
     }},
    {"a far end above the supply",
     [](const Solution& it) {
       const Layout& layout = it.layout();
       const Length supply = layout.supply().elevation.value_or(Length{});
       for (std::size_t i = 0; i < layout.lines().size(); ++i)
         if (layout.inlet_elevation(i) + layout.ground_rise(i) > supply) return true;
       return false;
     }},
    {"a line without water",
     [](const Solution& it) {
       for (std::size_t i = 0; i < it.lines().size(); ++i)
         if (it.layout().is_cut_off(i)) return true;
       return false;
     }},
}};

std::vector<Outcome> solve_many(std::uint64_t first_seed, std::size_t count, int threads) {
  std::vector<Outcome> outcomes(count);
  in_parallel(
      count, {.threads = threads}, [&](std::size_t i) { outcomes[i] = solve_one(first_seed + i); });
  return outcomes;
}

}  // namespace hydro
