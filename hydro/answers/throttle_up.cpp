#include "hydro/answers/throttle_up.hpp"

#include "hydro/solver/solve.hpp"

#include <optional>
#include <utility>

namespace hydro {
namespace {

/// A held pressure does not feel the fault: there is nothing to throttle.
Setting throttled(const Layout& faulty, const Solution& broken, const Pressure& reading) {
  const Supply& supply = faulty.supply_as_it_is();
  if (!supply.pressure) return set_for_gauge(faulty, reading);
  return {true, std::nullopt, *supply.pressure, limits_passed(supply, broken.supply()), broken};
}

}  // namespace

Throttling throttle_up(const Layout& sound, const std::vector<Fault>& faults) {
  const Layout faulty = sound.with_faults(faults);
  Solution before = solve(sound);
  Solution broken = solve(faulty);
  const OperatingPoint& supply = before.supply();
  const Pressure reading = supply.gauge_reading.value_or(supply.source_pressure);
  Setting throttled_up = throttled(faulty, broken, reading);
  Comparison at_unchanged_speed = compare(before, broken);
  Comparison after_throttling_up = compare(before, throttled_up.solution);
  return {reading,
          std::move(before),
          std::move(broken),
          std::move(throttled_up),
          std::move(at_unchanged_speed),
          std::move(after_throttling_up)};
}

}  // namespace hydro
