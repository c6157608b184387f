// hydrant.hpp: a town main or a shared hydrant, known by two readings.
//
// What      The gauge at rest, and what is left of it when a known flow runs.
// Formula   p = p_rest - (p_rest - p_residual) (Q / flow)^(1 / 0.54)
//           Q = flow ((p_rest - p) / (p_rest - p_residual))^0.54
// Source    NFPA 291, Recommended Practice for Water Flow Testing and Marking of Hydrants: flow at
//           another residual goes with the drop to the power 0.54, as in Hazen-Williams (the
//           formula was read where others quote it, not in the practice itself).
// Range     Near the test's flow and hour of day; a town main falls when the neighbours draw.
//           Beyond the test's flow it is an extrapolation, and below 0 a vacuum in the main.
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <vector>

namespace hydro {

/// As it was measured, at the supply's elevation.
struct Hydrant {
  Pressure pressure_at_rest = {};   ///< nothing flows
  Pressure residual_pressure = {};  ///< ... while ...
  Flow flow = {};                   ///< ... this flow runs
  bool operator==(const Hydrant&) const = default;
};

/// What the gauge shows while this flow runs; below 0 where the main does not give as much.
/// @throws InvalidInput for problems(hydrant), or a flow below 0.
Pressure hydrant_pressure(const Hydrant& hydrant, const Flow& flow);

/// The flow that brings the gauge down to this pressure.
/// @param pressure 0 to the one at rest @throws InvalidInput
Flow hydrant_flow(const Hydrant& hydrant, const Pressure& pressure);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Hydrant& hydrant);

}  // namespace hydro
