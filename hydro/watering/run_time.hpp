// run_time.hpp: how long to water for a depth of water, or for a volume to each plant.
//
// What      The time after which the weakest quarter of the outlets, or the average one, has put down
//           what is needed; what a run of any length does: what the roots get, what runs deeper, what
//           is lost to the air, what is missing; and bursts with rests, where the soil takes the
//           water in more slowly than it comes.
// Formula   time = need / (e x amount in a time), of the weakest quarter or on average
//           e: the part of the water let out that comes to the soil; the rest evaporates or drifts
//           of an outlet that must give v and gives q for a time t:
//             in the roots' reach min(e q t, v), deeper max(e q t - v, 0), short max(v - e q t, 0)
//           application efficiency = in the roots' reach / let out
//           standing on the surface after a burst t:  (e r - f) t, r the rate at the wettest outlet, f
//           the intake rate; it is gone after a rest of (e r - f) t / f
//           longest burst = surface storage / (e r - f)
// Source    Volume balance. For the weakest quarter the efficiency is about DU x e: J. Keller and R.
//           D. Bliesner, Sprinkle and Trickle Irrigation (1990), chapter 6 (from memory). The longest
//           burst: "allowable surface accumulation" of the Irrigation Association's scheduling
//           practice (from memory). Defaults are common practice, no source: e 0.90 (sprinklers 0.80
//           in wind and heat to 0.95, drip to 1.00), 5 mm of water standing on the surface (level
//           ground; less on a slope).
// Range     The intake rate is held for constant, as it is after the first while: dry soil takes in
//           more at first, so bursts come out on the safe side.
// Errors    InvalidInput for a need that is not exactly one of the two, a depth where no area is
//           known, a volume per plant where none per plant are known, or when no water comes.
// Threads   Pure functions.
// Example   run_time(rows, {.depth = 0.5 * inch}).for_low_quarter
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/watering/application.hpp"

#include <optional>
#include <vector>

namespace hydro {

/// What must come to the roots: exactly one of the two. What is lost on the way comes on top.
struct WaterAmount {
  std::optional<Length> depth = {};
  std::optional<Volume> per_plant = {};
  bool operator==(const WaterAmount&) const = default;
};

/// Whom the run is long enough for.
enum class ServedBy { low_quarter, average };

/// What the soil and the air do with the water.
struct RunTimeOptions {
  double effective_portion = 0.90;  ///< e, above 0 to 1 [-]
  ServedBy served = ServedBy::low_quarter;
  std::optional<Velocity> intake_rate = {};  ///< of the soil; none: not judged
  Length surface_storage = 5 * mm;           ///< that may stand on the surface
  Length wetting_loss = {};                  ///< wets leaves and litter, and is lost, at each burst
};

/// What a run of some length does.
struct Watering {
  Time time = {};
  Volume let_out = {};
  Volume to_the_air = {};
  Volume to_the_roots = {};
  Volume deeper = {};       ///< than the roots: more than was needed
  Volume missing = {};      ///< of what was needed
  double efficiency = 0;    ///< to_the_roots / let_out [-]
  double served_share = 0;  ///< of the outlets, that give what is needed [-]
};

/// A run in bursts, long enough in all for those who are served.
struct Bursts {
  int bursts = 1;
  Time each = {};
  Time rest = {};         ///< between two, until nothing stands on the surface
  Time whole = {};        ///< from the first start to the last stop
  Length standing = {};   ///< on the surface at the end of a burst, at the wettest outlet
  bool runs_off = false;  ///< more stands than may
  Watering does = {};     ///< all bursts together; wetting losses count as lost to the air
};

/// How long, and what comes of it.
struct RunTime {
  std::optional<Time> for_low_quarter = {};  ///< none: the weakest quarter gets nothing
  Time for_average = {};
  ServedBy served = ServedBy::low_quarter;
  Watering does = {};                      ///< a run that is long enough for those who are served
  std::optional<Time> longest_burst = {};  ///< none: the soil takes in all, or is not known
  Bursts bursts = {};                      ///< as few as run off nothing
};

/// @throws InvalidInput
RunTime run_time(const Application& application,
                 const WaterAmount& need,
                 const RunTimeOptions& options = {});

/// What a run of this length does. @param time 0 or more @throws InvalidInput
Watering watering(const Application& application,
                  const WaterAmount& need,
                  const Time& time,
                  const RunTimeOptions& options = {});

/// Long slow watering against short: one burst, two, and so on, side by side. @param most 1 to 100
/// @throws InvalidInput also where no area is known
std::vector<Bursts> long_or_short(const Application& application,
                                  const WaterAmount& need,
                                  const RunTimeOptions& options = {},
                                  int most = 6);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const WaterAmount& need);
std::vector<Problem> problems(const RunTimeOptions& options);

}  // namespace hydro
