// friction.hpp: what a length of full pipe takes from the water, at its wall and in its fittings.
//
// What      Head lost by friction, by the law that the pipe's wall field chooses, and by a fitting.
// Formula   Hazen-Williams   h = 10.67 L Q^1.852 / (C^1.852 D^4.8704)                  [m, m3/s]
//           Darcy-Weisbach   h = f (L/D) V^2 / (2 g)
//             laminar        f = 64 / Re                                               Re <= 2000
//             turbulent      1/sqrt(f) = -2 log10(k/(3.7 D) + 2.51/(Re sqrt(f)))       Re >= 4000
//             between        the cubic in Q that joins h and dh/dQ at both ends
//           fitting          h = K V^2 / (2 g)
// Source    Hazen-Williams: SI form as in G. S. Williams and A. Hazen, Hydraulic Tables (3rd ed.,
//           1920), with the customary metric constant 10.67; the velocity form V = 1.318 C R^0.63
//           S^0.54 (ft, s) differs by at most 0.25 % over farm sizes, because the exponents are
//           rounded. Turbulent: C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133-156, equation 13;
//           solved with the quartic step of D. Clamond, Ind. Eng. Chem. Res. 48 (2009) 3665-3671
//           (step recalled from memory, proved here against 50-digit arithmetic). The cubic is
//           ours: a jump would leave flows that no pressure can produce.
// Range     Hazen-Williams is an empirical law for turbulent water near 15 to 20 degC: solutions
//           carry a note where much of the loss arises below Re 4000. Colebrook-White: k/D up to
//           0.05.
// Accuracy  friction factor against 50-digit Colebrook-White, Re 4e3 to 1e8, k/D 0 to 0.05
//           (friction_test.cpp): relative error <= 4e-15.
// Errors    InvalidInput for a pipe with problems, a negative Reynolds number or roughness.
// Threads   Pure functions.
#pragma once

#include "hydro/physics/pipe.hpp"
#include "hydro/physics/water.hpp"
#include "hydro/quantities/units.hpp"

namespace hydro {

Velocity velocity(const Pipe& pipe, const Flow& flow);

/// Re = V D / nu [-].
double reynolds_number(const Pipe& pipe, const Flow& flow, const WaterProperties& water);

/// Colebrook-White [-]. @param reynolds 100 to 1e12 @param relative_roughness k/D, 0 to 0.05.
double colebrook_white(double reynolds, double relative_roughness);

/// Head lost to the wall over `length`; odd in the flow, strictly rising.
Length friction_loss(const Pipe& pipe,
                     const Length& length,
                     const Flow& flow,
                     const WaterProperties& water);

/// Head lost in a fitting of loss coefficient K [-] on this pipe's velocity head; odd in the flow.
Length fitting_loss(const Pipe& pipe, double loss_coefficient, const Flow& flow);

}  // namespace hydro
