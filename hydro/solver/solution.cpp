#include "hydro/solver/solution.hpp"

#include <utility>

#include <fmt/format.h>

namespace hydro {

Solution::Solution(Layout layout,
                   WaterProperties water,
                   std::vector<LineSolution> lines,
                   OperatingPoint supply,
                   Residuals residuals,
                   std::vector<std::string> notes,
                   std::vector<OperatingPoint> further_supplies)
    : layout_(std::move(layout)),
      water_(std::move(water)),
      lines_(std::move(lines)),
      supply_(std::move(supply)),
      residuals_(residuals),
      notes_(std::move(notes)),
      further_supplies_(std::move(further_supplies)) {}

Flow Solution::inflow() const {
  Flow sum = supply_.flow;
  for (const OperatingPoint& further : further_supplies_) sum += further.flow;
  return sum;
}

NotSolved::NotSolved(Solution unfinished)
    : std::runtime_error(fmt::format(
          "the layout was not solved: after {} steps the largest residuals are {:.1e} in mass, "
          "{:.1e} in energy and {:.1e} at outlets",
          unfinished.residuals().steps,
          unfinished.residuals().mass,
          unfinished.residuals().energy,
          unfinished.residuals().outlet)),
      unfinished_(std::move(unfinished)) {}

}  // namespace hydro
