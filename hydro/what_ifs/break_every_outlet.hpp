// break_every_outlet.hpp: what each outlet would do to the rest if it broke, one after another.
//
// What      The same fault is put at every outlet in turn (a head off; or any other that acts at an
//           outlet), beside the faults that the layout has already, and the layout solved. Each
//           Break says what escapes, what the supply and its gauge then show, and how many of the
//           other outlets fall short that did not before. Outlets that cannot break are skipped, with
//           the reason: no water comes to them, they have a fault already, or a bore on which the
//           flow hangs is not known.
// Formula   escaping, missing   as in comparison.hpp
//           gauge_reading       as in operating_point.hpp; without a gauge, before the filter
//           out of work         below the outlet's minimum, or dry
//           share               of its rated pressure at the weakest outlet, as in
//                               pressure_budget.hpp, the broken one left out
// Accuracy  Each break is solved to the residuals of solution.hpp; counts alone within 1e-9 of that.
// Range     With a held pressure the supply does not feel a break; a real pump would fall. One break
//           takes about 200 bytes, and for each outlet of the layout 1 more (conditions) or 17 more
//           (profiles): of these at most 100 million outlets after breaks are kept.
// Errors    InvalidInput for a fault that acts at no outlet, or that no outlet could have, and where
//           more would be kept; NotSolved when the layout is not solved as it is; Stopped. A break that is not solved is listed in
//           `not_solved`, and the others stand.
// Threads   Pure function; shares the breaks among work.threads. Their number changes nothing.
// Example   examples/27_break_every_head.cpp
#pragma once

#include "hydro/answers/pressure_budget.hpp"
#include "hydro/layout/fault.hpp"
#include "hydro/quantities/series.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// How much of each break is kept; each has what the ones before it have.
enum class BreakDetail {
  counts,      ///< what a Break says
  conditions,  ///< which outlets fall short
  profiles     ///< pressure and flow of every outlet
};

/// What breaks, and what is kept of it.
struct BreakOptions {
  Fault fault = HeadOff{};  ///< its line and outlet do not count: it is put at each in turn
  BreakDetail keep = BreakDetail::conditions;
};

/// The worst that is true of an outlet.
enum class OutletCondition : std::uint8_t {
  works,
  below_rated,
  below_minimum,
  above_maximum,
  dry,     ///< the pressure does not lift water to it, or none comes
  closed,  ///< capped, or its line is shut
  broken   ///< an open riser, or a body without its nozzle
};

/// An outlet, by its line and from 1 on.
struct OutletNumber {
  std::string line;
  int outlet;
  bool operator==(const OutletNumber&) const = default;
};

/// One outlet broken, and what it does to the others. Counts are of outlets that were not so before.
struct Break {
  std::string line;  ///< of the outlet that is broken
  int outlet;        ///< from 1 on
  Flow escaping;     ///< more than before, out of broken outlets, leaks and open ends
  Flow missing;      ///< less than before, out of all outlets that are neither broken nor capped
  Flow inflow;       ///< out of all supplies
  Pressure supply_pressure;  ///< of the first supply, at the start of the lines
  Pressure gauge_reading;    ///< of the first supply; without a gauge, before the filter
  int more_below_rated;      ///< those out of work are among them
  int more_out_of_work;
  int more_dry;
  int more_above_maximum;
  std::optional<WeakestOutlet> weakest;  ///< none: there is no other outlet to judge
};

/// An outlet of which there is no Break, and why.
struct LeftOut {
  std::string line;
  int outlet;       ///< from 1 on
  std::string why;  ///< "has fault \"capped\" already"
};

/// Every outlet of a layout, broken in turn.
struct Breaks {
  Fault fault;                             ///< its line and outlet do not count
  Solution before;                         ///< before any of them
  std::vector<OutletNumber> outlets = {};  ///< all of the layout, line by line

  std::vector<Break> breaks = {};        ///< that are solved, in the order of the outlets
  std::vector<LeftOut> not_solved = {};  ///< likewise
  std::vector<LeftOut> skipped = {};     ///< likewise

  /// Index into `breaks` of the one that puts most others out of work; of equal ones that with most
  /// others below rated, then that with the smallest share at its weakest outlet, then the first.
  std::optional<std::size_t> worst = {};
  int rest_works = 0;      ///< breaks that put no other outlet out of work
  int rest_is_served = 0;  ///< breaks after which none is below its rated pressure that was not

  /// One for each of `outlets`.
  std::vector<OutletCondition> conditions_before = {};
  /// Of break i and outlet j at [i * outlets.size() + j]; empty where only counts are kept.
  std::vector<OutletCondition> conditions = {};
  Series<Pressure> pressure = {};  ///< likewise, at the device; empty unless profiles are kept
  Series<Flow> flow = {};          ///< likewise, out of the outlet

  /// Which others those are. @param break_index into `breaks`, from 0 on
  /// @throws InvalidInput when there is no such break, or only counts are kept
  std::vector<OutletNumber> newly_below_rated(std::size_t break_index) const;
  std::vector<OutletNumber> newly_out_of_work(std::size_t break_index) const;
  std::vector<OutletNumber> newly_dry(std::size_t break_index) const;
  std::vector<OutletNumber> newly_above_maximum(std::size_t break_index) const;
};

/// The same fault at this outlet. @throws InvalidInput for one that acts at no outlet
Fault at_outlet(Fault fault, const std::string& line, int outlet);

/// @throws InvalidInput, NotSolved, Stopped
Breaks break_every_outlet(const Layout& layout,
                          const BreakOptions& options = {},
                          const Work& work = {});

}  // namespace hydro
