// peers.hpp: one lateral, and the general solvers that peer_benchmark.cpp sets beside ours.
//
// What      n equal outlets, equally spaced along one pipe on flat ground, no risers. Place 1 is
//           nearest the supply. Q is the flow arriving at a place, H the pressure head there.
// Formula   energy   H(before) - H - K Q^1.852 = 0
//           mass     Q - Q(beyond) - c sqrt(H) = 0
// Start     Every outlet at 0.85 of the supply's head, flows by adding up from the far end; ours
//           starts from the same flows.
// Solved    When no mass gap exceeds 1e-12 of the inflow and no energy gap 1e-12 of the supply's
//           head. Every solver proves it by a last evaluation of the laws, inside the time.
// Fair      Everything that depends on the size alone is done once, outside the time: memory and
//           symbolic analysis. The peers know that there is one kind of reach, one kind of outlet,
//           no fault and no dry outlet; ours looks all that up at every place.
#pragma once

#include <cmath>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace peers {

inline constexpr double tolerance = 1e-12;
inline constexpr double start_share = 0.85;
inline constexpr int most_steps = 60;

struct Lateral {
  std::size_t count = 0;
  double supply_head = 0;         ///< [m]
  double loss_coefficient = 0;    ///< K [m / (m3/s)^1.852]
  double outlet_coefficient = 0;  ///< c [m3/s / m^0.5]

  double start_head() const { return start_share * supply_head; }
  double start_outlet_flow() const { return outlet_coefficient * std::sqrt(start_head()); }
  std::vector<double> equal_outlets() const {
    return std::vector<double>(count, outlet_coefficient);
  }
};

/// A law's value and slope, from one power or one square root.
struct Law {
  double value;
  double slope;
};

inline Law loss(const Lateral& line, double flow) {
  const double per_flow = line.loss_coefficient * std::pow(std::abs(flow), 0.852);
  return {per_flow * flow, 1.852 * per_flow};
}

inline Law outlet(double coefficient, double head) {
  const double flow = coefficient * std::sqrt(head);
  return {flow, flow / (2 * head)};
}

/// By place, from the inlet on.
struct Profile {
  std::vector<double> flow;
  std::vector<double> head;
};

/// A solver that has its memory ready.
class Peer {
 public:
  Peer() = default;
  Peer(const Peer&) = delete;
  Peer& operator=(const Peer&) = delete;
  virtual ~Peer() = default;

  /// From the start to the tolerance. Returns the Newton steps taken, or -1 if it was not reached.
  virtual int solve() = 0;
  /// What the last solve() left.
  virtual Profile profile() const = 0;
};

/// One that solves many scenarios, each from the same answer nearby.
class WarmPeer : public Peer {
 public:
  /// By place, instead of equal ones; they must outlive it.
  virtual void take(std::span<const double> outlet_coefficients) = 0;
  /// From now on solve() begins there.
  virtual void begin_at(const Profile& start) = 0;
};

std::unique_ptr<WarmPeer> make_ldlt(const Lateral& line);
std::unique_ptr<WarmPeer> make_kinsol(const Lateral& line);
std::unique_ptr<Peer> make_gsl(const Lateral& line);

}  // namespace peers
