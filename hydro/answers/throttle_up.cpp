#include "hydro/answers/throttle_up.hpp"

#include "hydro/solver/solve.hpp"

#include <utility>

namespace hydro {

Throttling throttle_up(const Layout& sound, const std::vector<Fault>& faults) {
  const Layout faulty = sound.with_faults(faults);
  Solution before = solve(sound);
  Solution broken = solve(faulty);
  const OperatingPoint& supply = before.supply();
  const Pressure reading = supply.gauge_reading.value_or(supply.source_pressure);
  Setting throttled_up = set_for_gauge(faulty, reading);
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
