#include "hydro/solver/supply_notes.hpp"

#include <fmt/format.h>

namespace hydro {
namespace {

/// Of the last point of its catalogue, at the speed at which it runs.
Flow last_flow(const Pump& pump, const PumpDuty& duty) {
  const double ratio = duty.speed && pump.curve_speed ? si(*duty.speed) / si(*pump.curve_speed) : 1;
  return ratio * pump.points.back().flow;
}

}  // namespace

std::vector<std::string> notes_on(const Supply& supply, const OperatingPoint& point) {
  constexpr double rounding = 1e-9;
  std::vector<std::string> notes;
  for (std::size_t i = 0; i < point.pumps.size(); ++i) {
    const Pump& pump = i == 0 ? *supply.pump : *supply.second_pump;
    const PumpDuty& duty = point.pumps[i];
    const std::string which = i == 0 ? (supply.second_pump ? "first pump" : "pump") : "second pump";
    if (duty.head < Length{})
      notes.push_back(
          fmt::format("supply: the water drives the {}, which takes head from it; its curve does "
                      "not hold there",
                      which));
    else if (duty.flow > last_flow(pump, duty) * (1 + rounding))
      notes.push_back(
          fmt::format("supply: the {} gives more than at the last point of its catalogue; beyond "
                      "it its curve is "
                      "a guess",
                      which));
  }
  if (supply.hydrant && point.flow > supply.hydrant->flow * (1 + rounding))
    notes.emplace_back(
        "supply: more flows than when the hydrant was tested; beyond that its pressure is a guess");
  if (supply.tank && !(supply.tank->level > Length{}) && point.flow > Flow{})
    notes.emplace_back("supply: the tank stands at its outlet, and air goes with the water");
  return notes;
}

}  // namespace hydro
