// water_course.hpp: how the water runs in a line, and where it comes from, in words. Not installed.
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
#include "hydro/text/figures.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace hydro {

/// Of one line.
struct WaterCourse {
  /// What comes from another line; below 0 what goes into it. Of lines that begin on this one only
  /// what comes.
  struct Gain {
    std::size_t other;
    Length place;
    Flow flow;
  };
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
  Flow inflow = {};  ///< through its inlet
  std::vector<Gain> gains = {};
  std::vector<Stretch> stretches = {};  ///< from the inlet on
  std::vector<Meeting> meetings = {};
};

/// Of all lines of a solution, which must outlive it.
class WaterCourses {
 public:
  explicit WaterCourses(const Solution& solution);

  WaterCourse of(std::size_t line_index) const;

  /// Whether there is something to tell: the line joins another or is joined, nothing passes its
  /// inlet or water runs out of it, or no water comes to the line in a layout that has loops.
  bool has_more_than_one_way(std::size_t line_index) const;

  /// "fed from both ends: 18.2 gal/min at its inlet, 4.1 gal/min from cross pipe; the waters meet at
  /// outlet 7."
  std::string in_words(std::size_t line_index, const Figures& figures) const;

 private:
  const Layout& layout() const { return solution_.layout(); }
  const LineSolution& solved(std::size_t line_index) const { return solution_.lines()[line_index]; }
  Flow or_still(const Flow& flow) const;
  std::string place_in_words(std::size_t line_index,
                             const Length& place,
                             const Figures& figures) const;
  std::string name_of_other(std::size_t line_index, std::size_t other) const;
  std::string fed_by(std::size_t line_index) const;
  std::string why_nothing_passes(std::size_t line_index) const;
  std::string why_no_water(std::size_t line_index) const;
  std::string meetings_in_words(std::size_t line_index,
                                const WaterCourse& course,
                                const Figures& figures) const;

  const Solution& solution_;
  std::vector<std::vector<std::size_t>> fed_;      ///< by line: those that begin on it
  std::vector<std::vector<std::size_t>> joining_;  ///< by line: those whose far ends meet it
  bool has_loops_ = false;
  Flow still_ = {};
};

}  // namespace hydro
