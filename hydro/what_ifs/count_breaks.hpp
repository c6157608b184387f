// count_breaks.hpp: what each of many breaks does to the rest, in a few numbers. Not installed.
//
// What      Only the runs on the way from the broken outlet to the sources are solved for; the others
//           are known by their stand-ins (lanes_in_part.hpp), and their outlets by the head before
//           their inlet (outlets_by_head.hpp).
// Range     Layouts that lanes march on. A break that cannot be told so (a head beyond those that
//           were tried, or within 1e-11 of the head span of one at which an outlet changes) is left.
// Accuracy  As in lanes_in_part.hpp.
#pragma once

#include "hydro/solver/settled_layout.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"
#include "hydro/what_ifs/solve_breaks.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <functional>
#include <vector>

namespace hydro {

/// As in Break, in SI.
struct CountedBreak {
  double escaping = 0;
  double missing = 0;
  SuppliesAfter supplies = {};
  int more_below_rated = 0;
  int more_out_of_work = 0;
  int more_dry = 0;
  int more_above_maximum = 0;
  std::size_t weakest = nowhere;  ///< of all outlets, line by line; nowhere: there is none to judge
  double weakest_pressure = 0;
};

/// Puts the fault at each of these outlets in turn; each of them can have it.
/// @param as_it_is of this layout @param before all as it is before, and the condition of each outlet
/// @param take is called once for each index into `outlets` that is told, from any thread
/// @return the others, rising
std::vector<std::size_t> count_breaks(
    const Layout& layout,
    const SettledLayout& as_it_is,
    const Fault& fault,
    const std::vector<OutletNumber>& outlets,
    const SolvedBreak& before,
    const std::vector<OutletCondition>& conditions_before,
    const Work& work,
    const std::function<void(std::size_t, const CountedBreak&)>& take);

}  // namespace hydro
