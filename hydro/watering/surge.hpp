// surge.hpp: the pressure that stopping water suddenly brings, and how slowly to close.
//
// What      How fast a wave of pressure runs in a pipe; what it adds when the water is stopped at
//           once; how long a valve must take to close so that the pipe's rating is kept.
// Formula   a = sqrt(K / rho) / sqrt(1 + (K / E) (D / t))
//           at once (closed within 2 L / a)    rise = rho a V
//           slowly, in T                       rise = 2 rho L V / T = rho a V (2 L / a) / T
//           shortest safe closing T = 2 rho L V / (rating - pressure), if rho a V is more than that
//           K of the water, E of the wall, D bore, t wall, L from the supply
//           along pipes of several kinds    rise = 2 rho (sum of L V) / T, over what a wave from the
//           valve reaches in T / 2; of one pipe that is both of the above
// Source    N. Joukowsky (1898) and D. J. Korteweg (1878), slow closing L. Michaud (1878), as in
//           textbooks of hydraulics and in A. P. Moser, Buried Pipe Design, chapter 4. E: PVC
//           400,000 psi (Moser); PE 3408 115,000 psi (a table beside PVC's, seen in a copy; others
//           print 110,000); aluminium 10,000,000 psi (textbooks of materials, from memory). K: 2.19
//           GPa, from the speed of sound in water at 20 degC, 1482 m/s. Of PVC pipe one lecture asks
//           that the surge be no more than 28 % of the rating and the working pressure no more than
//           72 %. That the rating's derating with heat holds for surge too: ours, on the safe side.
// Range     Anchored thin pipe, no air in it (air makes it better or much worse). PE is softer the
//           longer it is loaded: E is that of a short load. Branches weaken a wave, a dead end
//           doubles it; neither is followed. All water on the way is taken to stop, other lines' too.
//           The sum along pipes leaves out what bounces between them (surge_test.cpp: a short
//           narrow valve in a main, within 10 %). A uniform closing in T is meant; most valves take
//           the flow away in the last part of their way: allow several times as long.
// Accuracy  surge_test.cpp: five published cases, to the last printed digit.
// Errors    InvalidInput for what is not above 0.
// Threads   Pure functions.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// What the wall of a pipe is.
struct PipeWall {
  Length inside_diameter = {};
  Length thickness = {};
  Pressure modulus = {};  ///< E, of elasticity
};

/// K of water at 20 degC.
inline constexpr Pressure bulk_modulus_of_water = 2190 * MPa;

/// E of a kind of nominal_pipe.hpp. @throws InvalidInput for an unknown kind
Pressure modulus_of(std::string_view kind);

/// a. No wall: stiff pipe, the fastest there can be. @throws InvalidInput
Velocity wave_speed(const std::optional<PipeWall>& wall,
                    const Density& density,
                    const Pressure& bulk_modulus = bulk_modulus_of_water);

/// Water in one pipe that is stopped.
struct StoppedWater {
  Length length = {};      ///< from where the pressure is held: the supply, a tank
  Velocity velocity = {};  ///< that is taken away
  Velocity wave_speed = {};
  Density density = {};
};

/// 2 L / a: closed within it is as if at once. @throws InvalidInput
Time reflection_time(const StoppedWater& water);
/// @param closing how long it takes; default at once @throws InvalidInput
Pressure surge_rise(const StoppedWater& water, const Time& closing = {});
/// Such that no more than this is added; 0: at once. @param rise above 0 @throws InvalidInput
Time shortest_closing(const StoppedWater& water, const Pressure& rise);
/// How much of the pipe, from the valve back, has the whole rise when it is closed in this time; 0
/// where none has. @throws InvalidInput
Length length_at_peak(const StoppedWater& water, const Time& closing);

/// The wall of pipes of this name, where the tables do not know it or somebody knows better.
struct KnownWall {
  std::string pipe = {};                 ///< empty: all the others
  std::optional<Length> thickness = {};  ///< default by the table of the kind
  std::optional<Pressure> modulus = {};  ///< default by the kind
};

/// What is known, and how fast the valves close.
struct SurgeOptions {
  std::vector<KnownWall> walls = {};
  Time closing = 0.1 * units::s;  ///< as fast as a hand or a flap closes, an estimate; 0: at once
};

/// The water of one line, stopped where it leaves it.
struct LineSurge {
  std::string line = {};
  std::string pipe_name = {};  ///< that has the least to spare
  Velocity velocity = {};      ///< highest in that pipe
  Velocity wave_speed = {};    ///< in that pipe
  bool wall_known = false;     ///< false: taken for stiff, the worst
  Length way = {};             ///< of the water from the supply to the line's far end
  Time reflection = {};        ///< 2 L / a over that way
  Time closing = {};           ///< of the options
  Pressure rise_at_once = {};
  Pressure rise = {};                         ///< with that closing
  Pressure steady = {};                       ///< highest in that pipe
  std::optional<Pressure> rating = {};        ///< with its derating; none: not known
  std::optional<Time> shortest_closing = {};  ///< 0: at once; none: no rating, or none to spare

  /// Whether rating is kept; false where it is not known.
  bool is_safe() const { return rating && steady + rise <= *rating; }
};

/// Of every line in which water runs, in the order of the layout. @throws InvalidInput
std::vector<LineSurge> surges(const Solution& solution, const SurgeOptions& options = {});

}  // namespace hydro
