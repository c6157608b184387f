// panel.hpp: the pressure along one line, drawn over the distance. Not installed.
#pragma once

#include "hydro/text/course_words.hpp"
#include "hydro/text/doings.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/outlet_kinds.hpp"
#include "hydro/text/svg.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

inline constexpr double page_width = 800;  ///< [px]
inline constexpr double page_margin = 16;

/// A line with outlets, after its faults and before them. Must not outlive what it is made of.
class Panel {
 public:
  /// @param before may be null: there is only what is
  /// @throws InvalidInput when a number is not finite
  Panel(const Solution* before,
        const Solution& after,
        const OutletKinds& kinds,
        const CourseWords& courses,
        const Figures& figures,
        std::size_t line_index);

  bool has(Doing what) const;
  /// Draws it below `top` and says where it ends [px].
  double draw(Svg& svg, double top) const;

 private:
  struct Plot;  // where numbers lie on the page

  std::string summary() const;
  std::string kinds_in_words() const;
  Plot plot_below(double top) const;
  Pressure highest() const;
  /// The outlets that have a mark: all, or the worst of each stretch where there are many.
  std::vector<std::size_t> marked(const Plot& plot) const;

  void draw_axes(Svg& svg, const Plot& plot) const;
  void draw_numbers(Svg& svg, const Plot& plot) const;
  void draw_limits(Svg& svg, const Plot& plot) const;
  void draw_curve(Svg& svg, const Plot& plot, const LineSolution& line, const Stroke& stroke) const;
  void draw_marks(Svg& svg, const Plot& plot) const;
  void draw_regulator(Svg& svg, const Plot& plot) const;
  void draw_course(Svg& svg, const Plot& plot) const;
  std::string tip(std::size_t outlet) const;

  const LineSolution* before_;  ///< null: there is none, or it was shut
  bool was_shut_;
  const LineSolution& after_;
  const Figures& figures_;
  std::vector<Doing> doing_;
  std::vector<Doing> doing_before_;
  std::vector<OutletKind> kinds_;      ///< that stand on this line
  std::string regulator_;              ///< in words; empty: no regulator is on the way
  std::vector<std::string> openings_;  ///< what each is called
  std::optional<WaterCourse> course_;  ///< none: it has only one way to run
  std::string course_in_words_;
};

}  // namespace hydro
