// outlet_step.hpp: how an outlet on its riser is linearised and moved along its curve. Not installed.
// For the sweeps alone, in a header so that they need no calls.
#pragma once

#include "hydro/solver/state.hpp"
#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <cmath>

namespace hydro {

inline constexpr double near_the_end =
    1e-6;                                    // of the head span: steps this small are taken by flow
inline constexpr double hardly_any = 1e-13;  // of the head span: more wakes a dry outlet

inline bool is_dry(const State& state) {
  return state.outlet_flow <= 0;
}

inline void run_dry(State& state) {
  state.outlet_flow = 0;
  state.outlet_head = 0;
}

[[gnu::always_inline]] inline void set_by_head(State& state,
                                               const OutletLaw& law,
                                               double ramp,
                                               double head) {
  if (!(head > 0)) return run_dry(state);
  state.outlet_head = head;
  state.outlet_flow = head >= ramp ? law.flow(head) : law.flow(ramp) * (head / ramp);
}

[[gnu::always_inline]] inline void set_by_flow(State& state,
                                               const OutletLaw& law,
                                               double ramp,
                                               double flow) {
  if (!(flow > 0)) return run_dry(state);
  const double head = law.head(flow);
  state.outlet_flow = flow;
  state.outlet_head = head >= ramp ? head : ramp * (flow / law.flow(ramp));
}

/// Opens an outlet at a pressure that leaves its riser something of the available head.
[[gnu::cold]] inline void open_within(const Mouth& mouth,
                                      double ramp,
                                      double available,
                                      State& state) {
  set_by_head(state, mouth.law, ramp, available);
  state.riser_slope = unknown_slope;
  while (mouth.has_riser && state.outlet_flow > 0) {
    double slope = unknown_slope;
    if (state.outlet_head + mouth.riser.loss(state.outlet_flow, slope).head <= available) return;
    set_by_flow(state, mouth.law, ramp, 0.7 * state.outlet_flow);
  }
}

/// The exponent of the curve where the outlet is on it: 1 on the ramp.
inline double exponent_at(const OutletLaw& law, double ramp, const State& state) {
  return state.outlet_head > ramp ? law.exponent_at(state.outlet_head) : 1;
}

/// Leaves the outlet's gap o and slope g. The curve P = (q / c)^(1/x) has the slope P / (x q),
/// without a power.
inline void linearise(const Mouth& mouth, double ramp, State& state) {
  const double available = state.head - mouth.height;
  if (is_dry(state)) {
    state.outlet_gap = std::max(0.0, available);
    state.outlet_slope = 0;
    return;
  }
  const double stretch = exponent_at(mouth.law, ramp, state) * state.outlet_flow;
  Loss riser{0, 0};
  if (mouth.has_riser) riser = mouth.riser.loss(state.outlet_flow, state.riser_slope);
  state.outlet_gap = available - state.outlet_head - riser.head;
  state.outlet_slope = stretch / (state.outlet_head + stretch * riser.slope);
}

/// The same for an outlet whose curve has a bend where it turns nearly flat. The slope on one side
/// says nothing of the other, so no step goes over the bend: it ends there, where the slope is that
/// before it. On the flat stretch the head says all and the flow nothing.
[[gnu::noinline]] inline void advance_bent(const Mouth& mouth,
                                           double ramp,
                                           double head_span,
                                           double head_rise,
                                           double at_rest,
                                           State& state) {
  const OutletLaw& law = mouth.law;
  const double flow_rise = state.outlet_slope * (head_rise + state.outlet_gap);
  double pressure_rise = head_rise + state.outlet_gap;
  if (mouth.has_riser)
    pressure_rise -= flow_rise * (mouth.riser.length * state.riser_slope +
                                  2 * mouth.riser.fitting * state.outlet_flow);
  state.riser_slope = unknown_slope;
  const double bend = std::max(ramp, law.bend());
  const double most = at_rest - mouth.height;
  const double head = state.outlet_head + pressure_rise;
  if (state.outlet_head > bend)
    set_by_head(state, law, ramp, std::min(std::max(head, bend), most));
  else if (state.outlet_head == bend && pressure_rise > 0)
    set_by_head(state, law, ramp, std::min(head, most));
  else if (pressure_rise > near_the_end * head_span ||
           law.flow(bend) < state.outlet_flow + flow_rise)
    set_by_head(state, law, ramp, std::min({head, bend, most}));
  else
    set_by_flow(state, law, ramp, state.outlet_flow + flow_rise);
}

/// Moves the outlet along its curve: by head where its pressure rises, by flow where it falls. The
/// tangent overshoots in the other variable each time; near the end the flow is the one that is
/// known well. No outlet of a tree ever has more than its head at rest.
inline void advance(const Mouth& mouth,
                    double ramp,
                    double head_span,
                    double head_rise,
                    double at_rest,
                    State& state) {
  if (is_dry(state)) {
    const double available = state.head - mouth.height;
    if (available > hardly_any * head_span)
      open_within(mouth, ramp, std::min(available, at_rest - mouth.height), state);
    return;
  }
  if (mouth.law.bent) return advance_bent(mouth, ramp, head_span, head_rise, at_rest, state);
  const double flow_before = state.outlet_flow;
  const double flow_rise = state.outlet_slope * (head_rise + state.outlet_gap);
  double share = flow_rise / flow_before;
  const double inverse_exponent = state.outlet_head >= ramp ? mouth.law.inverse_exponent : 1;
  const double pressure_rise = state.outlet_head * share * inverse_exponent;
  if (pressure_rise > near_the_end * head_span) {
    set_by_head(state,
                mouth.law,
                ramp,
                std::min(state.outlet_head + pressure_rise, at_rest - mouth.height));
    share = state.outlet_flow / flow_before - 1;
  } else {
    set_by_flow(state, mouth.law, ramp, flow_before + flow_rise);
  }
  if (mouth.has_riser) state.riser_slope = mouth.riser.friction.carry(state.riser_slope, share);
}

/// The same by a share of the step, by flow where a flow says which head: where whole steps lead
/// astray.
inline void advance_in_part(
    const Mouth& mouth, double ramp, double share, double head_rise, State& state) {
  const OutletLaw& law = mouth.law;
  state.riser_slope = unknown_slope;
  if (is_dry(state)) {
    const double available = share * (state.head - mouth.height);
    if (available > 0) open_within(mouth, ramp, available, state);
    return;
  }
  const double rise = share * (head_rise + state.outlet_gap);
  const double flow = state.outlet_flow + state.outlet_slope * rise;
  const double bend = law.bent ? std::max(ramp, law.bend()) : no_limit;
  if (state.outlet_head > bend || (state.outlet_head == bend && rise > 0))
    set_by_head(state, law, ramp, std::max(bend, state.outlet_head + rise));
  else if (law.bent && !(flow < law.flow(bend)))
    set_by_head(state, law, ramp, bend);
  else
    set_by_flow(state, law, ramp, flow);
}

/// No outlet draws more than the pipe before it and its own riser can carry.
inline void limit(const Mouth& mouth, double ramp, double capacity, State& state) {
  const double most = std::min(capacity, mouth.riser.capacity);
  if (!(state.outlet_flow > most)) return;
  set_by_flow(state, mouth.law, ramp, most);
  state.riser_slope = unknown_slope;
}

}  // namespace hydro
