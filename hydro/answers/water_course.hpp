// water_course.hpp: how the water runs along a line, and from which other lines it comes. Not installed.
//
// What      Where lines join, or there are several supplies, water may run in a line either way, and
//           come to it from other lines: at its far end, and where another joins it or begins on it.
//           What runs along it is what comes in at its inlet, less what leaves it on the way. Two
//           waters meet where some comes from both sides.
// Range     A flow below 1e-9 of the largest in any line or out of any supply stands still: that is
//           far above what the residuals leave, and far below what anyone can see.
// Threads   Pure functions.
#pragma once

#include "hydro/solver/solution.hpp"

#include <cstddef>
#include <vector>

namespace hydro {

/// By which end of the other line two meet.
enum class Meets { inlet, far_end, along };

/// A line that meets another, elsewhere than at the other's inlet.
struct Neighbour {
  std::size_t other;
  Length place;  ///< on this line
  Meets by;      ///< along: this line's far end meets the other somewhere along it
  Flow flow;     ///< out of the other into this one; below 0 into the other
  Pressure pressure;
};

/// Of one line.
struct WaterCourse {
  struct Stretch {
    Length start;
    Length end;
    Flow flow;  ///< outward
  };
  /// Where waters from both sides meet: at one place, or they stand still between two.
  struct Meeting {
    Length start;
    Length end;
  };
  Flow inflow = {};                        ///< through its inlet
  std::vector<Neighbour> neighbours = {};  ///< from the inlet on
  std::vector<Stretch> stretches = {};     ///< from the inlet on
  std::vector<Meeting> meetings = {};
};

/// Of all lines of a solution, which must outlive it.
class WaterCourses {
 public:
  explicit WaterCourses(const Solution& solution);

  WaterCourse of(std::size_t line_index) const;

  /// Whether any line joins another, or there are several supplies.
  bool has_loops() const { return has_loops_; }
  /// The flow, or 0 where it stands still.
  Flow or_still(const Flow& flow) const;
  /// Those that begin on a line.
  const std::vector<std::size_t>& fed_by(std::size_t line_index) const { return fed_[line_index]; }
  /// Those whose far ends meet a line.
  const std::vector<std::size_t>& joining(std::size_t line_index) const {
    return joining_[line_index];
  }

 private:
  const Solution& solution_;
  std::vector<std::vector<std::size_t>> fed_;
  std::vector<std::vector<std::size_t>> joining_;
  bool has_loops_ = false;
  Flow still_ = {};
};

}  // namespace hydro
