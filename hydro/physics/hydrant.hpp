// hydrant.hpp: a town main or a shared hydrant, known by two readings.
//
// What      The gauge at rest, and what is left of it when a known flow runs.
// Formula   p = p_rest - (p_rest - p_residual) (Q / flow)^(1 / 0.54)
// Source    NFPA 291, Recommended Practice for Water Flow Testing and Marking of Hydrants: flow at
//           another residual goes with the drop to the power 0.54, as in Hazen-Williams.
// Range     Near the test's flow and hour of day; a town main falls when the neighbours draw.
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values.
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

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Hydrant& hydrant);

}  // namespace hydro
