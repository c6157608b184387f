// All heads turn, and the gauges do not read quite as they should: what is it that the farm is made of?
// And on a later day: is it still the same?
#include "hydro/hydro.hpp"

#include <iostream>
#include <vector>

using namespace hydro;

int main(int argc, char** argv) {
  const Layout strips =
      read_layout(argc > 1 ? argv[1] : "examples/ouzel_bench.toml").watering({"rows 1 and 2"});

  const std::vector<Reading> walk{
      {.place = ReadingPlace::supply_gauge, .pressure = 37.5 * psi},
      {.place = ReadingPlace::engine, .speed = 2200 * rpm},
      {.place = ReadingPlace::pipe, .line = "row 1", .outlet = 1, .pressure = 28.5 * psi},
      {.place = ReadingPlace::pipe, .line = "row 1", .outlet = 10, .pressure = 25 * psi},
      {.place = ReadingPlace::pipe, .line = "row 2", .outlet = 1, .pressure = 28.5 * psi},
      {.place = ReadingPlace::flush_end, .line = "row 2", .pressure = 24 * psi},
      {.place = ReadingPlace::bucket,
       .line = "row 1",
       .outlet = 5,
       .volume = 5 * gallon,
       .time = 87 * units::s}};
  std::cout << calibration_report(walk, calibrate(strips, walk), UnitSystem::us) << '\n';

  // The gauge at the pump, morning by morning.
  std::vector<DayOfReadings> log;
  for (const double shown : {38.0, 38.5, 37.5, 38.0, 38.5, 38.0, 37.5, 36.0, 36.5, 35.5, 36.0})
    log.push_back({.day = static_cast<double>(log.size() + 1),
                   .readings = {{.place = ReadingPlace::supply_gauge,
                                 .pressure = shown * psi,
                                 .pressure_error = 0.5 * psi}}});
  std::cout << drift_report(log, find_drift(strips, log), UnitSystem::us);
}
