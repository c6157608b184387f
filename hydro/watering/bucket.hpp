// bucket.hpp: a drum or bucket with a hole, for the plant that no line reaches.
//
// What      Litres over time, hours until it is empty, and how many fills a need takes.
// Formula   as in answers/drain.hpp; fills = need / what it holds, the last of them in part
// Range     As in answers/drain.hpp. The time to fill it again is not in it.
// Errors    InvalidInput for a tank without its surface, a hole out of range, a need that is not
//           above 0.
// Threads   Pure function.
// Example   examples/18_drum_at_the_gate.cpp
#pragma once

#include "hydro/answers/drain.hpp"
#include "hydro/physics/tank.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// How it stands at one moment.
struct BucketStep {
  Time time = {};
  Volume run_out = {};
  Flow outflow = {};
  Length level = {};
};

/// What it takes to give so much.
struct BucketFills {
  int whole = 0;     ///< fills that run out wholly
  Volume last = {};  ///< out of one more; 0: none is needed
  Time time = {};    ///< of running, all fills together

  /// All of them, the last one too where it is in part.
  int fills() const { return whole + (last > Volume{} ? 1 : 0); }
};

/// One fill, and what a need takes.
struct BucketRun {
  Volume holds = {};  ///< above the hole
  Time empty = {};    ///< after this time
  Flow at_first = {};
  std::vector<BucketStep> steps = {};  ///< evenly spaced in time, first full, last empty
  std::optional<BucketFills> for_need = {};
};

/// @param need 0 to 1e6 L, above 0 @param steps 2 to 1000 @throws InvalidInput
BucketRun bucket(const Tank& tank,
                 const Hole& hole,
                 const std::optional<Volume>& need = {},
                 int steps = 11);

}  // namespace hydro
