// sweeps.hpp: Newton's method on trees of lines, as two sweeps. Not installed.
//
// What      The state at every place is the flow arriving AND the head; an outlet carries its own
//           flow and pressure head, always on its curve. One step is two sweeps of corrections:
//             outward-in   each subtree answers a small rise dH of head at its inlet with
//                          dQ = a + b dH;
//             inward-out   the rise is passed on, and flows and heads are corrected.
//           No matrix, no fill: the time is linear in the number of places. Where lines join, a
//           small system in between finds the flows through the joints (loops.hpp).
// Formula   With m, e, o the residuals of mass, energy and outlet law, h' and g the slopes of the
//           loss in the reach and of the outlet's flow with head, and A + B dH the answer of all
//           that hangs on a place:
//             A = g o + sum of a beyond,            B = g + sum of b beyond
//             a = (A - m + B e) / (1 + B h'),       b = B / (1 + B h')
//             dQ = a + b dH(before),   dH = dH(before) + e - h' dQ,   dq = g (dH + o)
//           The supply is one more reach, fed by its head at rest: its loss is what pump, suction
//           and filter lose with the flow. A regulator that holds parts the tree: beyond it dH = e,
//           and before it only the flow is felt, b = 0. It holds when more would come through, and
//           no step takes the head beyond it past its setting.
//           What lets water through one way only, and may be shut by what other lines bring, stays
//           as it is while the steps settle; then gates whose flow or whose heads have the wrong
//           sign are turned over (gates.cpp).
//           An outlet's curve P = (q/c)^(1/x) starts so flat (x < 1) or so steep (x > 1) that
//           tangents near P = 0 mislead. Below a small head, the ramp, it is a straight line
//           through the origin.
// Source    Ours. Newton's method with block elimination on a tree; friction is linearised in the
//           flow, so a reach at rest (h' = 0) is harmless, and corrections rather than values are
//           eliminated, so nothing large is subtracted.
#pragma once

#include "hydro/solver/adjoint.hpp"
#include "hydro/solver/loops.hpp"
#include "hydro/solver/state.hpp"
#include "hydro/solver/tree.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <boost/container/small_vector.hpp>

namespace hydro {

/// What is left of the equations, and the scales they are measured by.
struct Imbalance {
  double mass = 0;        ///< largest over all places [m3/s]
  double energy = 0;      ///< largest over all reaches [m]
  double outlet = 0;      ///< largest over all outlets [m]
  double sum = 0;         ///< of all gaps: not finite if any of them is not
  double flow_scale = 0;  ///< largest flow in any pipe [m3/s]
  double head_scale = 0;  ///< Tree::head_span [m]

  /// Written without division, so that a layout at rest passes. Maxima forget NaN, the sum does not.
  bool within(double tolerance) const {
    return std::isfinite(sum) && mass <= tolerance * flow_scale &&
           energy <= tolerance * head_scale && outlet <= tolerance * head_scale;
  }
};

class Sweeps {  // NOLINT(bugprone-exception-escape): Boost says so of small_vector
 public:
  /// Starts with every outlet at 0.85 of the static head it would have with no flow.
  /// @param ramp head [m] below which the outlets' curves are straight
  Sweeps(const Tree& tree, double ramp);

  const std::vector<State>& states() const { return states_; }
  /// Out of a source [m3/s]; the first one is the supply.
  double source_flow(std::size_t source = 0) const { return sources_[source].flow; }
  /// Pressure head at the start of its lines [m].
  double source_head(std::size_t source = 0) const { return sources_[source].head; }
  /// Whether others hold its check valve shut.
  bool source_is_shut(std::size_t source) const { return sources_[source].shut; }
  /// Whether what stands beyond the inlet of a run holds it shut.
  bool is_shut(std::size_t run) const { return !shut_.empty() && shut_[run]; }
  /// Pressure head before the inlet of a run [m].
  double head_before(std::size_t run) const;
  /// Through a joint [m3/s], from its one end on.
  double joint_flow(std::size_t joint) const { return joint_flows_[joint]; }

  /// How much the pressure head at each place's device rises with the head of the first source [-],
  /// after gather(); at a place where nothing comes out, the head in the line.
  std::vector<double> device_rises() const;
  /// What a figure with these weights rises by with what is left of each equation, after gather().
  Multipliers transposed(Weights weights) const;
  /// Whether a regulator holds the head at this place, after gather().
  bool is_held(std::size_t place) const {
    return is_held(tree_->reaches[index(tree_->places[place].reach)], tree_->places[place]);
  }
  /// The source from which a run begins as its gate stands; none: the run that feeds it.
  std::int32_t source_of(std::size_t run) const;

  /// Outward-in: linearises, measures what is left, and leaves every subtree's answer.
  Imbalance gather();
  /// Inward-out: corrects flows, heads and outlets.
  void correct();
  /// The same by a share of each correction, above 0 to 1.
  void correct_in_part(double share);
  double ramp() const { return ramp_; }
  /// Takes another ramp; outlets keep their flows.
  void set_ramp(double ramp);
  /// Takes other supplies, which must be those of an equal tree; all else stays.
  void set_supply(const Tree& tree) { tree_ = &tree; }
  /// Every joint then loses head in proportion to its flow; 0, as at the start: it loses none.
  /// @param share of the head span that is lost by the smallest flow that counts
  void set_joint_loss(double share);
  /// Of all reaches in loops and all joints together, regardless of sign [m].
  double energy_gaps_of_loops() const;
  /// Starts anew, with another ramp. Gates stay, and what joints lose.
  void restart(double ramp);

  /// A supply with a check valve, or a run that lets water through one way, each in a loop.
  struct Gate {
    bool is_source;
    std::size_t which;
  };
  /// Gates that should be the other way at the states that were reached.
  /// @param doubt share of the scales up to which a sign says nothing
  std::vector<Gate> wrong_gates(const Imbalance& scales, double doubt) const;
  /// Regulators that hold while water runs back through them, and so drive it on like pumps.
  std::vector<Gate> regulators_held_back(const Imbalance& scales, double doubt) const;
  /// Of each part that shut gates cut off from all supplies, the gate that would bring the highest
  /// head there: what stands in such a part has the least head that keeps all of them from opening.
  std::vector<Gate> gates_of_cut_off_parts() const;
  void turn(const Gate& gate);
  void open_gates();

 private:
  /// What a pipe beyond some place draws, and how it answers a rise of head there.
  struct Answer {
    double flow = 0;
    double constant = 0;
    double slope = 0;
  };

  struct SourceState {
    double flow = 0;    ///< [m3/s]
    double head = 0;    ///< at the start of its lines [m]
    bool shut = false;  ///< nothing flows, and its head is sought
    double energy_gap = 0;
    double slope = 0;   ///< of the head it loses with the flow
    double answer = 0;  ///< of the flow
    double rise = 0;    ///< correction of the head
    Answer drawn = {};
  };

  void start();
  std::int32_t root_of(std::size_t run) const;
  bool holds(const Place& place, const State& state, bool shut);
  double rise_at(const Place& place,
                 const State& state,
                 double rise_before,
                 double flow_rise,
                 bool shut) const;
  void answer_of_source(std::size_t source, Imbalance& left);
  void correct_source(std::size_t source, double share);

  double slope_of_reach(const Reach& reach, const State& state) const {
    return reach.length * state.wall_slope + 2 * reach.fitting * std::abs(state.flow);
  }
  bool is_held(const Reach& reach, const Place& place) const {
    return reach.held < no_limit && holds_[static_cast<std::size_t>(place.reach)];
  }
  /// Of the heads at the two ends, the one less the other [m].
  double gap_of(std::size_t joint) const;
  void measure_joints(Imbalance& left) const;
  /// Its far end against its inlet. @param of_itself whether with what it corrects by itself
  Stretch stretch_of(std::size_t two_way, bool of_itself) const;
  std::vector<Root> roots_of_joints(bool of_themselves) const;
  Balance balance_joints(bool of_themselves, double rise_of_first) const;
  // Of the sweeps transposed (adjoint.hpp).
  struct Slopes {
    std::vector<double> loss;              ///< by place: h'; 0 where a regulator holds
    std::vector<double> answer;            ///< by place: B
    std::vector<double> answer_at_source;  ///< by source: B
  };
  /// @param more flow that every loss is taken at [m3/s]
  Slopes slopes(double more) const;
  /// Joints and shut sources left as they are.
  Multipliers transposed_on_trees(const Weights& weights, const Slopes& slopes) const;
  /// Of the gaps at joints, and of what flows out of shut sources.
  Balance transposed_joints(const Multipliers& on_trees, const Slopes& slopes) const;
  /// The last place of a run.
  std::size_t far_end(std::int32_t run) const { return tree_->runs[index(run)].end - 1; }
  /// Adds what is taken at the far end of a stretch to the answers along it.
  template <class Add>
  void take_along(std::size_t two_way, double taken, const Add& add) const;
  void correct_joints(double share);

  const Tree* tree_;
  double ramp_;
  std::vector<State> states_;
  /// What a run and those that begin at its far end tell each other.
  struct FarEnd {
    Answer beyond;    ///< theirs together
    double rise = 0;  ///< correction of the head
  };
  /// By run; in place for the few runs of a small layout, where an allocation would be felt.
  boost::container::small_vector<FarEnd, 8> far_ends_;
  std::vector<bool> holds_;  // by reach: its regulator; empty where there is none
  boost::container::small_vector<SourceState, 1> sources_;

  // Of layouts with joints.
  std::vector<double> joint_flows_;       // [m3/s]
  std::vector<std::size_t> two_way_;      // runs
  std::vector<std::int32_t> as_stretch_;  // by run: its place in two_way_, or none
  std::vector<bool> shut_;                // by run: its gate
  double most_flow_ = 0;         // through a joint or a source: far too much for any pipe [m3/s]
  double least_flow_scale_ = 0;  // where all water stands still, rounding moves it [m3/s]
  double least_slope_ = 0;  // of a source that is shut, were it cut off for a while [(m3/s) / m]
  double least_loss_ = 0;   // of a joint [m / (m3/s)]
  double joint_loss_ = 0;   // that it is given for a while [m / (m3/s)]
};

}  // namespace hydro
