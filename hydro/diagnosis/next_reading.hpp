// next_reading.hpp: what to read next, and when to stop.
//
// What      Of every reading that could be taken and every outlet that could be looked at: how much is
//           expected to be learnt of which candidate it is, given what was read already. Walking may
//           be given a price. Where no pressure tells much but a bucket does, it says so.
// Formula   information = H(Y) - sum over c of P(c) H(Y | c)     [bits]
//           Y the reading to come: by each candidate a mixture, over its sizes, of normal
//           distributions with what the readings so far say of the uncertain inputs and of the
//           gauge's bias taken in; H by the trapezoid rule. A look has four outcomes (Seen).
//           worth = information - price x time, time = reading + there and back at walking speed
//           Stop when the first WalkTo has `sure_enough`, or when no worth is above `least`.
// Source    Expected information of an experiment: D. V. Lindley, Ann. Math. Stat. 27 (1956) 986-1005
//           (from memory).
// Range     Candidates that together have 0.1 %, and those after the first 1,000, are left out. Of
//           many outlets on a line at most `places` are tried, evenly spread; of more than 200
//           readings the 200 that would tell most if nothing but they were uncertain.
// Accuracy  Against integration by brute force: next_reading_test.cpp.
// Errors    As find_fault.hpp.
// Threads   Pure functions.
#pragma once

#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/what_ifs/work.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// What can be read, and what it costs.
struct NextReadingOptions {
  FindFaultOptions find_fault = {};
  std::vector<ReadingPlace> can_read = {};  ///< default all but what the layout has not
  bool can_look = true;                     ///< whether outlets may be looked at
  double bits_per_minute = 0;               ///< price of a minute, 0 or more
  Velocity walking_speed = 4 * ft_per_s;    ///< common practice, no source
  Time time_to_read = 2 * units::min;       ///< for one reading, assumed
  double sure_enough = 0.9;                 ///< probability of the first place to walk to
  double least = 0.05;                      ///< bits that are worth a reading
  int places = 20;                          ///< outlets tried of one line, at most
};

/// One thing that could be read or looked at.
struct PossibleReading {
  std::optional<Reading> reading = {};  ///< without a figure; or ...
  std::optional<Sight> look = {};       ///< ... a look at one outlet; what is seen does not count
  double information = 0;               ///< [bits]
  Time time = {};                       ///< reading, there and back from the supply
  double worth = 0;                     ///< [bits]
};

/// Why no more should be read.
enum class WhyStop {
  go_on,
  sure_enough,      ///< walk to the first place
  nothing_to_learn  ///< no reading is worth its way
};

/// All that could be read, best first.
struct NextReadings {
  WhyStop stop = WhyStop::go_on;
  std::vector<PossibleReading> readings = {};
  /// No pressure is worth a reading and a bucket is.
  bool use_the_bucket = false;
  double uncertainty_left = 0;  ///< entropy of the candidates, [bits]
};

/// @param readings,sights so far; none is allowed
/// @throws InvalidInput, NotSolved, Stopped
NextReadings next_reading(const Layout& layout,
                          const std::vector<Reading>& readings,
                          const std::vector<Sight>& sights = {},
                          const NextReadingOptions& options = {},
                          const Work& work = {});

}  // namespace hydro
