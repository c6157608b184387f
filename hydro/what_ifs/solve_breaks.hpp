// solve_breaks.hpp: the pressures and flows that each of many breaks leaves. Not installed.
#pragma once

#include "hydro/solver/lanes.hpp"
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
  double inflow = 0;           ///< out of all
  double supply_pressure = 0;  ///< of the first one
  double gauge_reading = 0;    ///< of the first one; without a gauge, before the filter
};

/// What a solution says of all outlets, line by line, and of the supplies, as numbers in SI.
struct SolvedBreak {
  std::string not_solved = {};  ///< why; then nothing of the rest counts
  std::vector<double> pressure = {};
  std::vector<double> line_pressure = {};
  std::vector<double> flow = {};
  std::vector<OutletState> state = {};
  double out_of_openings = 0;  ///< leaks and open ends
  SuppliesAfter supplies = {};
};

/// Of one lane.
SuppliesAfter read_supplies(const Layout& layout,
                            const Tree& tree,
                            const LaneBlock& block,
                            std::size_t lane,
                            const WaterProperties& water);

SolvedBreak read_break(const Solution& solution);

/// Puts the fault at each of these outlets in turn; each of them can have it.
/// @param take is called once for each index into `outlets`, from any thread and in any order
void solve_breaks(const Layout& layout,
                  const Fault& fault,
                  const std::vector<OutletNumber>& outlets,
                  const Work& work,
                  const std::function<void(std::size_t, const SolvedBreak&)>& take);

}  // namespace hydro
