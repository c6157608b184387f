// dense_model.hpp: the physics of a layout written anew, without the library's solver, as one dense
// system of what leaves at each opening, for a general-purpose solver.
//
// Unknown of each opening: v > 0 stands for a flow v q_max, or, where the flow is held, for a
// pressure head v^2 S; v < 0 for a lack of head -v S.
// Equation: head that arrives, from the supply along the pipes - ground - height - P(q) - riser(q)
// = 0 (or = v S).
#pragma once

#include "hydro/hydro.hpp"

#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

namespace hydro {

class DenseModel {
 public:
  /// One place where water can leave.
  struct Opening {
    std::size_t line = 0;
    std::size_t point = 0;        // of the line
    int number = 0;               // of the outlet; 0: a leak or an open end
    std::size_t nth_on_line = 0;  // of the leaks and open ends
    double coefficient = 0;       // q = coefficient P^exponent, P in m
    double exponent = 0.5;
    double height = 0;
    double low =
        0;  // below it, and above `high`, q rises with the square root of P; both 0: nowhere
    double high = std::numeric_limits<double>::infinity();
    bool riser = false;
    double riser_length = 0;
    double riser_k = 0;
    bool open_riser = false;
    double largest_flow = 0;
  };

  explicit DenseModel(const Layout& layout);

  const std::vector<Opening>& openings() const { return openings_; }
  double scale() const { return scale_; }
  double weight() const { return weight_; }

  double flow(const Opening& opening, double v) const;
  double head(const Opening& opening, double v) const;

  /// Left over at each opening, in units of the scale.
  void residual(const double* v, double* left) const;

 private:
  /// Something along a line, in the order of the water: outlets, leaks, taps, ends of reaches, ends.
  struct Point {
    double at;
    int outlet;                       // its number, else 0
    std::optional<std::size_t> leak;  // of the layout's faults
    bool is_open_end;
    bool operator<(const Point& other) const {
      return at != other.at ? at < other.at : rank() < other.rank();
    }
    int rank() const { return outlet > 0 ? 0 : leak ? 1 : is_open_end ? 3 : 2; }
  };

  double elevation() const;
  std::optional<std::size_t> feeder(std::size_t line) const;
  double merged(const Line& line, double at) const;
  double begins_at(std::size_t line) const;
  double ground(std::size_t line, double at) const;
  bool has_water(std::size_t line) const;
  std::optional<double> open_end(std::size_t line) const;
  const Pipe& pipe_to(const Line& line, double at) const;
  void find_points(std::size_t line);
  void find_openings(std::size_t line);
  Opening outlet(std::size_t line, int number, const Fault* fault) const;
  void rate(Opening& opening, const Outlet& outlet) const;

  const Layout& layout_;
  double weight_;
  double supply_head_;
  double scale_;
  std::vector<std::vector<Point>> points_;  // by line
  std::vector<Opening> openings_;
};

}  // namespace hydro
