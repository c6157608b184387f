// course_words.hpp: where the water of a line comes from, in words. Not installed.
#pragma once

#include "hydro/answers/water_course.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/text/figures.hpp"

#include <cstddef>
#include <string>

namespace hydro {

/// What is said of the lines of a solution, which must outlive it.
class CourseWords {
 public:
  CourseWords(const Solution& solution, const Figures& figures)
      : solution_(solution), figures_(figures), courses_(solution) {}

  const WaterCourses& courses() const { return courses_; }

  /// Whether there is something to tell: the line joins another or is joined, nothing passes its
  /// inlet or water runs out of it, or no water comes to the line in a layout that has loops.
  bool has_more_than_one_way(std::size_t line_index) const;

  /// "fed from both ends: 18.2 gal/min at its inlet, 4.1 gal/min from cross pipe; the waters meet at
  /// outlet 7."
  std::string of(std::size_t line_index) const;

 private:
  const Layout& layout() const { return solution_.layout(); }
  const LineSolution& solved(std::size_t line_index) const { return solution_.lines()[line_index]; }
  std::string place_in_words(std::size_t line_index, const Length& place) const;
  std::string name_of_other(std::size_t line_index, std::size_t other) const;
  std::string fed_by(std::size_t line_index) const;
  std::string why_nothing_passes(std::size_t line_index) const;
  std::string why_no_water(std::size_t line_index) const;
  std::string meetings(std::size_t line_index, const WaterCourse& course) const;

  const Solution& solution_;
  const Figures& figures_;
  WaterCourses courses_;
};

}  // namespace hydro
