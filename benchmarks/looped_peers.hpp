// looped_peers.hpp: lines that join, told plainly, and the general solvers that loop_benchmark.cpp
// sets beside ours.
//
// What      Places and the pipes between them, on flat ground, under one supply whose head is held.
//           Q is the flow in a pipe, H the head at a place, q and P the flow and the head of an
//           outlet. Pipes that reach a place first come before those that close a loop.
// Formula   energy   H(from) - H(to) - K Q |Q|^0.852 = 0
//           mass     sum of Q arriving - sum of Q leaving - q = 0
//           outlet   q = c sqrt(P), P = H
// Start     Every outlet at 0.85 of the supply's head, flows by adding up from the far ends, none
//           in the pipes that close a loop; ours starts from the same flows.
// Solved    When no mass gap exceeds 1e-12 of the largest flow and no gap of a head 1e-12 of the
//           supply's. Every solver proves it by a last evaluation of the laws, inside the time.
// Fair      Everything that depends on the shape alone is done once, outside the time: memory,
//           order, symbolic analysis. The peers know that there is one kind of outlet, no riser, no
//           fault, nothing that opens or shuts; ours looks all that up at every place.
#pragma once

#include <cmath>
#include <cstddef>
#include <memory>
#include <vector>

#include "peers.hpp"

namespace peers {

inline constexpr int the_supply = -1;

struct LoopedPipe {
  int from;  ///< place, or the supply
  int to;
  double loss_coefficient;  ///< K [m / (m3/s)^1.852]
};

/// Places are numbered outward, each after the one that feeds it.
struct Looped {
  double supply_head = 0;                    ///< [m]
  std::vector<LoopedPipe> pipes = {};        ///< pipe i reaches place i; those beyond close loops
  std::vector<double> by_square_roots = {};  ///< c of the outlet at each place, or 0 [m3/s / m^0.5]

  std::size_t places() const { return by_square_roots.size(); }
  double start_head() const { return start_share * supply_head; }
  double start_outlet_flow(std::size_t place) const {
    return by_square_roots[place] * std::sqrt(start_head());
  }
  /// Flows in all pipes that outlets at their start ask for.
  std::vector<double> start_flows() const {
    std::vector<double> flow(pipes.size());
    for (std::size_t i = places(); i-- > 0;) {
      flow[i] += start_outlet_flow(i);
      if (pipes[i].from != the_supply) flow[static_cast<std::size_t>(pipes[i].from)] += flow[i];
    }
    return flow;
  }
};

/// The slope of a pipe at rest in the Jacobians, by its K [(m3/s)^0.852]: that at about 1e-11 m3/s.
/// With none at all an elimination may meet a 0 where a pipe across is at rest.
inline constexpr double least_slope_share = 1e-9;

inline Law loss(const LoopedPipe& pipe, double flow) {
  const double per_flow = pipe.loss_coefficient * std::pow(std::abs(flow), 0.852);
  return {per_flow * flow, 1.852 * per_flow};
}

/// Unknowns in the order in which they are eliminated.
struct Order {
  std::vector<int> of_flows;  ///< by pipe
  std::vector<int> of_heads;  ///< by place
};

/// From the far ends inward, at each place its head and then the flow that arrives; the flows that
/// close loops last.
Order leaf_first(const Looped& problem);
/// Approximate minimum degree (Eigen).
Order minimum_degree(const Looped& problem);

/// Flows by pipe, heads by place.
std::unique_ptr<WarmPeer> make_ldlt(const Looped& problem, const Order& order);
std::unique_ptr<Peer> make_kinsol(const Looped& problem, const Order& order);

}  // namespace peers
