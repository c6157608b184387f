// dense_model.hpp: the physics of a layout written anew, without the library's solver, as one dense
// system of what leaves at each opening, for a general-purpose solver.
//
// Unknown of each opening: v > 0 stands for a flow v q_max, or, where the flow is held, for a
// pressure head v^2 S; v < 0 for a lack of head -v S.
// Equation: head that arrives, from the supply along the pipes - ground - height - P(q) - riser(q)
// = 0 (or = v S). The supply's head is that of all flows together; a regulator passes the lesser of
// what arrives and what it is set to.
#pragma once

#include "hydro/hydro.hpp"

#include <algorithm>
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
    double held = std::numeric_limits<double>::infinity();  // P at the device is no more
    bool riser = false;
    double riser_length = 0;
    double riser_k = 0;
    bool open_riser = false;
    double largest_flow = 0;

    bool is_held() const { return low > 0 || std::isfinite(held); }
  };

  explicit DenseModel(const Layout& layout);

  const std::vector<Opening>& openings() const { return openings_; }
  double scale() const { return scale_; }
  double weight() const { return weight_; }

  double flow(const Opening& opening, double v) const;
  double head(const Opening& opening, double v) const;
  /// At the device: behind its regulator.
  double device_head(const Opening& opening, double v) const {
    return std::min(head(opening, v), opening.held);
  }
  /// Above the supply, where this flow leaves it.
  double supply_head(double flow) const;
  double total_flow(const double* v) const;

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
  bool is_named(std::size_t line, bool by_one_that_runs) const;
  bool is_opened(std::size_t line) const;
  bool hangs_on_opened(std::size_t line) const;
  template <class Kind>
  const Kind* fault_on(std::size_t line) const;
  std::optional<double> open_end(std::size_t line) const;
  const Pipe& pipe_to(const Line& line, double at) const;
  void find_points(std::size_t line);
  void find_openings(std::size_t line);
  Opening outlet(std::size_t line, int number, const Fault* fault) const;
  void rate(Opening& opening, const Outlet& outlet) const;

  /// H = n^2 (a - b (Q / n)^2), n its speed over that of its curve.
  struct OwnPump {
    double a, b;
    double unloaded;  // n without load
    double efficiency = 1, least = 0, most = 0;
    double lost_per_watt = 0;  // of n
    double on_curve(double flow) const { return a - b * flow * flow; }
  };
  OwnPump own_pump(const Pump& pump, int number) const;
  double pump_head(const OwnPump& pump, double flow) const;
  double pumps_head(double flow) const;

  const Layout& layout_;
  double weight_;
  std::vector<OwnPump> pumps_;
  double head_at_rest_;
  double scale_;
  std::vector<std::vector<Point>> points_;  // by line
  std::vector<Opening> openings_;
};

}  // namespace hydro
