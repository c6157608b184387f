#include "hydro/what_ifs/solve_breaks.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/in_parallel.hpp"

namespace hydro {

SolvedBreak read_break(const Solution& solution) {
  const OperatingPoint& supply = solution.supply();
  SolvedBreak found{.inflow = si(solution.inflow()),
                    .supply_pressure = si(supply.pressure),
                    .gauge_reading = si(supply.gauge_reading.value_or(supply.source_pressure))};
  const auto append = [](auto& all, const auto& more) {
    all.insert(all.end(), more.begin(), more.end());
  };
  for (const LineSolution& line : solution.lines()) {
    append(found.pressure, line.pressure.si());
    append(found.line_pressure, line.line_pressure.si());
    append(found.flow, line.flow.si());
    append(found.state, line.state);
    for (const Opening& opening : line.openings) found.out_of_openings += si(opening.flow);
  }
  return found;
}

void solve_breaks(const Layout& layout,
                  const Fault& fault,
                  const std::vector<OutletNumber>& outlets,
                  const Work& work,
                  const std::function<void(std::size_t, const SolvedBreak&)>& take) {
  in_parallel(outlets.size(), work, [&](std::size_t i) {
    const Layout broken = layout.with_fault(at_outlet(fault, outlets[i].line, outlets[i].outlet));
    try {
      take(i, read_break(solve(broken)));
    } catch (const NotSolved& error) {
      take(i, {.not_solved = error.what()});
    }
  });
}

}  // namespace hydro
