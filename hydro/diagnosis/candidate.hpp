// candidate.hpp: what may be wrong with a layout, how likely each is before anything is read, and how
// large it may be.
//
// What      One candidate is one fault at one place, its size not known; or that there is none. A
//           candidate's odds are those of its kind, at each place where that can be: twice as many
//           outlets, twice the odds that one of them is off.
// Formula   size = median exp(s u), u standard normal held within -2.5 and 2.5,
//           median = sqrt(from to), s = ln(to / from) / (2 x 1.6449): nine of ten lie between
//           gauge wrong: too much by a normal error with mean 0
// Source    Odds and sizes are assumed, from no source: what growers know of their own place goes
//           before them. What a fault does: fault.hpp.
// Errors    InvalidInput for odds below 0 or all 0, and for sizes out of their accepted interval.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/fault.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/physics/outlet.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

enum class CandidateKind {
  no_fault,
  head_off,
  riser_sheared,
  nozzle_missing,
  worn,
  clogged,
  wrong_outlet,
  leak,  ///< at the joint of an outlet, or half way along a line without outlets
  end_open,
  valve_left_open,
  valve_part_closed,  ///< or dirt in the inlet
  regulator_stuck_open,
  regulator_stuck_shut,
  filter_dirty,
  engine_slow,
  pump_worn,
  supply_low,  ///< the pool, the tank's level, or the held pressure
  gauge_wrong  ///< any one of the gauges read
};

/// "valve left open", as it is spelt in a file.
std::string_view words_of(CandidateKind kind);

/// Relative odds, 0 or more: of each kind at each place where it can be. 0 leaves a kind out.
struct PriorOdds {
  double no_fault = 10;
  double head_off = 1;
  double riser_sheared = 1;
  double nozzle_missing = 0.5;
  double worn = 0.5;
  double clogged = 1;
  double wrong_outlet = 0.2;
  double leak = 0.5;
  double end_open = 1;
  double valve_left_open = 3;
  double valve_part_closed = 2;
  double regulator_stuck_open = 0.5;
  double regulator_stuck_shut = 0.5;
  double filter_dirty = 5;
  double engine_slow = 5;
  double pump_worn = 2;
  double supply_low = 2;
  double gauge_wrong = 3;
  bool operator==(const PriorOdds&) const = default;

  double of(CandidateKind kind) const;
};

/// Nine of ten lie between these, above 0.
template <class Q>
struct Between {
  Q from = {};
  Q to = {};
  bool operator==(const Between&) const = default;
};

/// How large each fault may be.
struct FaultSizes {
  /// Factor on the K of an open riser (fault.hpp).
  Between<double> loss_coefficient = {0.5, 2};
  Between<double> discharge_coefficient = {0.75, 0.95};  ///< Cd of a body without its nozzle
  Between<double> worn = {0.05, 0.5};                    ///< share of the flow gained
  Between<double> clogged = {0.2, 0.9};                  ///< share of the flow lost
  /// Flow of a leak, in flows of the line's outlets at their rated pressure; of a line without any,
  /// of the largest outlet there is.
  Between<double> leak = {0.5, 10};
  Between<double> valve_part_closed = {2, 200};   ///< K
  Between<double> filter_dirty = {2, 20};         ///< times its loss as described
  Between<double> engine_slow = {0.02, 0.25};     ///< share of the speed lost
  Between<double> pump_worn = {0.03, 0.3};        ///< share of the head lost
  Between<Length> supply_low = {1 * ft, 8 * ft};  ///< of the water's surface ...
  /// ... or of a pressure that is held or a hydrant's.
  Between<double> supply_low_share = {0.05, 0.4};
  Pressure gauge_wrong = 5 * psi;  ///< standard deviation
  bool operator==(const FaultSizes&) const = default;
};

/// One thing that may be wrong.
struct Candidate {
  CandidateKind kind = CandidateKind::no_fault;
  std::string line = {};              ///< empty: of the supply, of a gauge, or none
  std::optional<int> outlet = {};     ///< from 1 on
  std::optional<Length> place = {};   ///< of a leak, from the line's inlet
  std::optional<Outlet> fitted = {};  ///< of a wrong outlet
  std::string gauge = {};             ///< of a wrong one
  double odds = 0;                    ///< before anything is read
  bool operator==(const Candidate&) const = default;
};

/// What may be looked for.
struct CandidateOptions {
  PriorOdds odds = {};
  FaultSizes sizes = {};
  /// Kinds that may stand at a place by mistake; default those of the layout's own other outlets.
  std::vector<Outlet> other_outlets = {};
  bool operator==(const CandidateOptions&) const = default;
};

/// All of a layout, the faults that it has already left as they are: no fault first, then outlet by
/// outlet and line by line, then the supply's, then one wrong gauge for each of these names.
/// @throws InvalidInput
std::vector<Candidate> candidates(const Layout& layout,
                                  const CandidateOptions& options = {},
                                  const std::vector<std::string>& gauges = {});

/// "row 2, outlet 7: riser sheared"; its size is said by what was found.
std::string describe(const Candidate& candidate);

/// Whether its size is not known.
bool has_size(CandidateKind kind);

/// The fault of a size u standard normal deviations from its median, -2.5 to 2.5; none for no fault, a
/// supply that is low and a wrong gauge.
std::optional<Fault> fault_of(const Candidate& candidate,
                              const Layout& layout,
                              const FaultSizes& sizes,
                              double u);
/// The layout with it. A wrong gauge changes nothing of the water.
/// @throws InvalidInput when the layout cannot have it
Layout layout_with(const Candidate& candidate,
                   const Layout& layout,
                   const FaultSizes& sizes,
                   double u);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const CandidateOptions& options);

}  // namespace hydro
