// drain.hpp: a tank running empty, through the lines it feeds or through a hole.
//
// What      How long it takes, and the level and the outflow meanwhile; which outlets fall short
//           first, and when; where it ends and why. The walls are upright, nothing is refilled.
// Formula   t = integral of A / Q(level) d level, from the end's level to the tank's; A the surface,
//           Q the steady outflow at a level
//           through a hole   Q = Cd a sqrt(2 g level), a its area:
//                            t = sqrt(2 / g) A / (Cd a) (sqrt(level at first) - sqrt(level))
// Source    Conservation of mass and Torricelli's law, as in textbooks of hydraulics. A hole with a
//           sharp edge has Cd about 0.61 to 0.62 (common practice, no source).
// Range     Quasi-steady: at each level the water runs as if the level stood still, which holds
//           where the tank holds far more than the lines. Level and outflow at a hole leave out the
//           water's own speed in the tank, (Cd a / A)^2 / 2 of the time. The last drops of a hole or
//           of laminar pipes do not follow: `least_outflow` ends it before.
// Accuracy  Through lines: adaptive Gauss-Kronrod quadrature over sqrt(level - where it rests), in
//           which a nozzle's time is a straight line; its error estimate is in the result
//           (drain_test.cpp: 1e-9 against the closed form).
// Errors    InvalidInput for a layout without a tank or a tank without its surface; NotDrained
//           when the integral is not known as well as asked for; NotSolved.
// Threads   Pure functions.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/tank.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace hydro {

/// A small hole in the bottom or low in the wall; the tank's level counts from it.
struct Hole {
  Length diameter = {};
  std::optional<double> discharge_coefficient = {};  ///< Cd [-], default 0.62
  static constexpr double default_discharge_coefficient = 0.62;
  bool operator==(const Hole&) const = default;
};

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Hole& hole);

/// At the tank's level. Needs no surface. @throws InvalidInput
Flow outflow(const Tank& tank, const Hole& hole);
/// Until the level has fallen to this one. @param level 0 to the tank's @throws InvalidInput
Time time_to_fall(const Tank& tank, const Hole& hole, const Length& level = {});
/// Until so much has run out. @param volume 0 to all that is above the hole @throws InvalidInput
Time time_to_run_out(const Tank& tank, const Hole& hole, const Volume& volume);
/// After this time; 0 when it is empty. @param time 0 or more @throws InvalidInput
Length level_after(const Tank& tank, const Hole& hole, const Time& time);

/// How far to follow a tank, and how well.
struct DrainOptions {
  std::optional<Length> to_level = {};  ///< default: until `least_outflow`
  double least_outflow = 1e-3;          ///< share of the outflow at first, 0 to 0.5: no more comes
  int levels = 11;                      ///< that are reported, evenly spaced, 2 to 1000
  double tolerance = 1e-6;              ///< accepted error, share of the time, 1e-12 to 0.01
};

/// The tank at one moment.
struct DrainStep {
  Length level;
  Time time;       ///< since the beginning
  Flow outflow;    ///< out of the tank
  Volume run_out;  ///< since the beginning
};

enum class FirstFall { below_rated, below_minimum, dry };

/// The first outlet of all that comes to this state.
struct OutletFall {
  FirstFall fall;
  std::string line;
  int outlet;  ///< from 1 on
  Length level;
  Time time;  ///< 0: it is so from the beginning
};

enum class DrainEnd {
  level_reached,   ///< the one that was asked for
  tank_empty,      ///< the level is at the tank's outlet, and air follows the water
  outflow_ceases,  ///< no more than `least_outflow`
};

/// The lowest place at which water leaves: when the tank stands no higher, nothing flows.
struct LowestMouth {
  std::string line;
  std::optional<int> outlet;  ///< none: a leak or an open end
  Length level;               ///< above the tank's outlet; may be negative
};

/// From the tank's level to the end.
struct Drain {
  std::vector<DrainStep> steps;         ///< first the beginning, last the end
  std::vector<OutletFall> first_falls;  ///< in the order of time
  DrainEnd end;
  std::optional<LowestMouth> lowest_mouth;  ///< none: everything is closed
  double time_error;                        ///< estimate, share of the whole time
  int solves;                               ///< of the layout

  const Time& time() const { return steps.back().time; }
};

/// Of a layout fed by a tank whose surface is known, with its faults and the sets that run. Until a
/// volume has run out: `to_level` is the level less volume / surface.
/// @throws InvalidInput, NotDrained, NotSolved
Drain drain(const Layout& layout, const DrainOptions& options = {});

/// Thrown when the time could not be integrated as well as asked for.
class NotDrained : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace hydro
