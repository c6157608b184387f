// solve_breaks.hpp: the pressures and flows that each of many breaks leaves. Not installed.
#pragma once

#include "hydro/solver/lanes.hpp"
#include "hydro/solver/settled_layout.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/solver/tree.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace hydro {

/// What supplies give, in SI.
struct SuppliesAfter {
  double inflow = 0;  ///< out of all
  // Of the first one.
  double supply_flow = 0;
  double supply_pressure = 0;
  double gauge_reading = 0;  ///< without a gauge, before the filter
  double pump_speed = 0;     ///< 0: not known
};

/// What a solution says of all outlets, line by line, of the lines and of the supplies, as numbers in
/// SI.
struct SolvedBreak : SuppliesAfter {
  std::string not_solved = {};  ///< why; then nothing of the rest counts
  std::vector<double> pressure = {};
  std::vector<double> line_pressure = {};
  std::vector<double> flow = {};
  std::vector<OutletState> state = {};
  std::vector<double> inlet_pressure = {};  ///< by line: in what feeds it
  std::vector<double> end_pressure = {};    ///< by line: at its far end
  double out_of_openings = 0;               ///< leaks and open ends
};

/// Of one lane.
SuppliesAfter read_supplies(const Layout& layout,
                            const Tree& tree,
                            const LaneBlock& block,
                            std::size_t lane,
                            const WaterProperties& water);

SolvedBreak read_break(const Solution& solution);
SolvedBreak not_solved(const std::string& why);

/// Solves the layout with each of these faults in turn; each acts at an outlet that can have it.
/// @param as_it_is of this layout @param take is called once for each index into `faults`, from any thread and in any order
void solve_breaks(const Layout& layout,
                  const SettledLayout& as_it_is,
                  const std::vector<Fault>& faults,
                  const Work& work,
                  const std::function<void(std::size_t, const SolvedBreak&)>& take);

}  // namespace hydro
