// missed_water.hpp: what each outlet missed while something was broken, and how long to make up.
//
// What      A run goes well until it breaks, goes on broken until it is stopped, and is started again
//           when it is mended or capped. What each outlet gave against what the whole run should have
//           given; the minutes that are still due on each line; and the water lost.
// Formula   given = q t(broke) + q' (t(stopped) - t(broke)); missed = q t(planned) - given
//           still due on a line: for its weakest, the largest missed / q" of its outlets; on average,
//           sum of missed / sum of q"        q sound, q' broken, q" started again
//           pumped = given by whole outlets + lost
// Source    Volume balance.
// Range     Steady flow before and after: the moments between, and the filling of lines, are left
//           out. While it is broken, the water of a broken outlet is lost.
// Accuracy  The arithmetic's; missed_water_test.cpp follows it in steps of time.
// Errors    InvalidInput when the solutions do not have the same lines and outlets, or for times that
//           do not follow each other.
// Threads   Pure function.
#pragma once

#include "hydro/quantities/series.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/watering/application.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// When, since the start of the run.
struct InterruptedRun {
  Time planned = {};  ///< how long it should have run
  Time broke = {};    ///< 0 to `stopped`
  Time stopped = {};  ///< may be later than planned, if nobody looked
};

/// One line. A Series has an entry for each outlet; below 0: it has had more than it should.
struct MissedOnLine {
  std::string line = {};
  Series<Volume> missed = {};
  Series<Length> missed_depth = {};  ///< empty where its ground is not known
  Volume missed_in_all = {};         ///< of the outlets that missed some
  Time for_weakest = {};             ///< still due, once it is started again
  int weakest = 0;                   ///< the outlet that is due longest, from 1 on; 0: none is due
  Time on_average = {};
  std::vector<int> out_of_service = {};  ///< that missed some and get none any more: capped, or dry
};

/// All lines that should have had water.
struct MissedWater {
  std::vector<MissedOnLine> lines = {};
  Volume pumped = {};     ///< until it was stopped
  Volume given = {};      ///< by whole outlets
  Volume lost = {};       ///< through breaks, leaks and open ends
  Time for_weakest = {};  ///< the longest of the lines
};

/// @param again as it is started again: mended (default: as before), or with a cap
/// @param grounds of some lines; the depths missed are known there
/// @throws InvalidInput
MissedWater missed_water(const Solution& sound,
                         const Solution& broken,
                         const InterruptedRun& run,
                         const std::optional<Solution>& again = {},
                         const std::vector<Ground>& grounds = {});

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const InterruptedRun& run);

}  // namespace hydro
