// dense_model.hpp: the physics of a layout written anew, without the library's solver, as one dense
// system for a general-purpose solver. Lines may join others, and there may be several supplies.
//
// A line is one piece of pipe, or two where it is cut: the one beyond hangs on its far end. Water
// comes to a piece from a supply or from its feeder; where nothing passes its inlet, from its far
// end only.
//
// Unknown of each opening: v > 0 stands for a flow v q_max, or, where the flow is held, for a
// pressure head v^2 S; v < 0 for a lack of head -v S.
// Equation: head that arrives - ground - height - P(q) - riser(q) = 0 (or = v S).
//
// Unknown of each far end that joins another line: the flow out of it, in units of its own.
// Equation: the heads of both are the same there.
//
// Unknown of each check valve, of a line's regulator, of a pump and of a hydrant to which water
// could run back: by how much the head beyond it is above the one that comes (or that the regulator
// leaves), Y S. Equation: min(Q / Q_max, Y) = 0, both being 0 or more.
//
// Unknown of each start that nothing passes: the head there, Y S. Equation: Q = 0.
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
    std::size_t piece = 0;
    std::size_t point = 0;        // of the piece
    int number = 0;               // of the outlet; 0: a leak or an open end
    std::size_t nth_on_line = 0;  // of the leaks and open ends
    double coefficient = 0;       // q = coefficient P^exponent, P in m
    double exponent = 0.5;
    double ground = 0;  // above the first supply
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

  /// What follows from the unknowns. Heads are above the first supply [m], flows in m3/s.
  struct State {
    // By supply, the first one's first; pressure heads at the start of its lines.
    std::vector<double> supply_flows, supply_pressures;
    std::vector<double> inflows, end_flows;  // by line
    std::vector<double> inlet_gaps;          // by line: Y S of what lets nothing back there
    std::vector<double> joined_heads;        // by line: where it joins another
  };

  explicit DenseModel(const Layout& layout);

  const std::vector<Opening>& openings() const { return openings_; }
  std::size_t unknowns() const { return openings_.size() + joints_.size() + gaps_.size(); }
  std::size_t one_way_elements() const { return one_way_; }
  /// Where to begin. @param share of what may flow out of openings @param round of what may go
  /// round
  std::vector<double> start(double share, double round) const;
  double scale() const { return scale_; }
  double flow_scale() const { return flow_scale_; }
  double weight() const { return weight_; }
  bool has_water(std::size_t line) const;

  double flow(const Opening& opening, double v) const;
  double head(const Opening& opening, double v) const;
  /// At the device: behind its regulator.
  double device_head(const Opening& opening, double v) const {
    return std::min(head(opening, v), opening.held);
  }
  State state(const double* v) const { return evaluate(v, nullptr); }
  /// The most that can go round while no more than this head is lost on it: of the far ends that
  /// join, the one whose pipe, from the last branch on, loses least.
  double unfelt_flow(double head) const;

  /// Left over of each equation, in units of the scale or of the largest flow.
  void residual(const double* v, double* left) const { evaluate(v, left); }

 private:
  /// Something along a piece, in this order: outlets, leaks, taps, joints, ends of reaches, ends.
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
  struct Piece {
    std::size_t line;
    double from, to;
    bool is_beyond;  // of the place where its line is cut
    bool has_water = false;
    std::vector<Point> points{};
    double inlet_ground = 0;
    bool starts_closed = false;
    std::optional<std::size_t> feeder{}, feeder_point{};  // none: the supply
    std::optional<std::size_t> gap{};
  };
  struct Joint {
    std::size_t piece, joined, joined_point;
    double largest_flow;
  };
  enum class Gap { one_way, closed };

  double elevation_of(std::size_t supply) const;
  const Supply& supply(std::size_t index) const;
  std::optional<std::size_t> line_named(const std::string& name) const;
  std::size_t supply_at_start_of(std::size_t line) const;
  double merged(const Line& line, double at) const;
  double begins_at(std::size_t line) const;
  double ends_at(std::size_t line) const;
  double ground(std::size_t line, double at) const;
  bool is_named(std::size_t line, bool by_one_that_runs) const;
  void open_by_sets();
  bool is_closed(std::size_t line) const;
  bool is_regulated(std::size_t line) const;
  bool is_one_way(std::size_t line) const;
  template <class Kind>
  const Kind* fault_on(std::size_t line) const;
  std::optional<double> open_end(std::size_t line) const;
  const Pipe& pipe_to(const Line& line, double at) const;
  double inlet_loss_coefficient(std::size_t line) const;

  /// Head lost by a flow along a whole line, without its fittings at outlets.
  double line_loss(std::size_t line, double flow) const;
  void make_pieces();
  std::size_t piece_at(std::size_t line, double at) const;
  std::size_t last_piece(std::size_t line) const;
  std::vector<bool> flood(std::optional<std::size_t> inlet,
                          std::optional<std::size_t> dry_supply) const;
  void find_points(Piece& piece);
  std::size_t point_at(const Piece& piece, double at) const;
  void connect();
  void find_openings(std::size_t piece);
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
  OwnPump own_pump(const Supply& supply, const Pump& pump, int number) const;
  double pump_head(const OwnPump& pump, double flow) const;
  double pumps_head(std::size_t supply, double flow) const;
  /// Above the supply, where this flow leaves it.
  double supply_head(std::size_t supply, double flow) const;

  State evaluate(const double* v, double* left) const;

  const Layout& layout_;
  double weight_;
  double viscosity_;
  std::vector<std::vector<OwnPump>> pumps_;  // by supply
  std::vector<double> heads_at_rest_;        // above the first supply, by supply
  double scale_ = 0;
  double flow_scale_ = 0;
  std::vector<bool> opened_;   // by line
  std::vector<Piece> pieces_;  // each after its feeder
  std::vector<Opening> openings_;
  std::vector<Joint> joints_;
  std::vector<Gap> gaps_;
  std::vector<std::optional<std::size_t>> supply_gaps_;  // by supply
  std::size_t one_way_ = 0;
};

}  // namespace hydro
