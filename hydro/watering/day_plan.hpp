// day_plan.hpp: one day's watering: which sets run when, at which engine speed, and what it takes.
//
// What      Sets are taken in the order in which they are asked for. With each of them run as many of
//           the next ones as the supply serves; when one has had its water it is shut, and the next
//           takes its place. Before each turn the lines that stand empty are filled. A turn's supply
//           is set so that every outlet has its rated pressure (set_gauge.hpp).
// Formula   turn = the least, over its sets, of what is left of their need / what they give in a time
//           pumped = let out by whole outlets + through breaks + filled into lines
//           water energy = rho g H Q t of the pumps; with a held pressure, p Q t
//           shaft energy = water energy / efficiency, where the efficiency is known
// Source    Volume balance; energy as in operating_point.hpp.
// Range     Steady flow in each turn. While lines fill nothing counts as watered. Lines are filled at the flow that moves at `fill_velocity` in
//           the pipes that begin at the supplies, at most at the turn's own flow; the energy of a
//           volume filled counts like that of one let out. A line stays full while it is open
//           from one turn to the next; else it counts as empty. Rests between bursts are told, not
//           planned. Tanks and town mains take no energy. Faults are there all day; the supply is
//           set as if all were sound. The order is not searched: another may serve more, where a set
//           runs only beside others (its flow alone is less than a pump bears).
// Errors    InvalidInput for sets that the layout does not have or that open no outlet, a need that
//           fits no line, hours that end before they begin; NotSolved. A day too short is no error:
//           what is left is told.
// Threads   Pure function.
// Example   examples/plan_day.cpp
#pragma once

#include "hydro/physics/supply_limit.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/watering/application.hpp"
#include "hydro/watering/run_time.hpp"
#include "hydro/what_ifs/work.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// One set that is to be watered: for a time, or for what is needed on its ground.
struct SetToWater {
  std::string set = {};
  std::optional<Time> time = {};         ///< or ...
  std::optional<WaterAmount> need = {};  ///< ... this, and ...
  Ground ground = {};                    ///< ... where; no lines named: all that the set opens
};

/// Prices; money is a plain number, as in priced_pipe.hpp.
struct WaterPrices {
  std::optional<double> of_volume = {};
  Volume volume = 1 * m3;                ///< for which that is paid
  std::optional<double> of_energy = {};  ///< at the shaft
  Energy energy = 1 * kWh;
  std::optional<double> of_pump_time = {};
  Time pump_time = 1 * units::h;
};

/// When, and how.
struct DayOptions {
  Time earliest = 6 * units::h;  ///< since midnight: daylight, or when the pump may run
  Time latest = 20 * units::h;
  bool together = true;                   ///< sets that can
  Time changeover = {};                   ///< between two turns: valves are turned
  Velocity fill_velocity = 1 * ft_per_s;  ///< common practice, no source
  double share = 1;                       ///< of its rated pressure at every outlet [-]
  RunTimeOptions soil = {};
  WaterPrices prices = {};
};

/// Sets that run at once for a while.
struct Turn {
  std::vector<std::string> sets = {};
  Time fill_from = {};  ///< since midnight, like the next two
  Time start = {};      ///< all lines are full
  Time stop = {};
  std::optional<RotationalSpeed> speed = {};  ///< none: a held pressure, or it cannot be set
  Pressure pressure = {};                     ///< before the filter
  std::optional<Pressure> gauge_reading = {};
  bool reached = true;                   ///< every outlet has its share of rated
  std::vector<SupplyLimit> limits = {};  ///< that are passed
  Flow flow = {};                        ///< out of all supplies
  Volume fill = {};
  Volume let_out = {};  ///< by whole outlets
  Volume lost = {};     ///< through breaks, leaks and open ends
  Volume run_out = {};  ///< the most that leaves its lines if all is shut off after it; not pumped
  Energy water_energy = {};
  std::optional<Energy> shaft_energy = {};  ///< none: the efficiency is not known there

  /// Out of all supplies.
  Volume pumped() const { return fill + let_out + lost; }
};

/// Why a set has not all that it needs.
enum class WhyLeft {
  day_too_short,
  not_served  ///< the supply serves it neither alone nor beside any set that is still to run
};

/// How a set fares.
struct SetDay {
  std::string set = {};
  Time runs = {};
  double share = 0;  ///< of what it needs [-]
  Volume let_out = {};
  std::optional<Time> still_needs = {};  ///< as it ran last, or alone; none: nothing, or not known
  std::optional<WhyLeft> why_left = {};  ///< none: it has all
  std::vector<SupplyLimit> limits = {};  ///< that stand in its way, run alone
  std::optional<Application> application = {};  ///< as it ran last; none: it did not run
  std::optional<RunTime> run = {};  ///< for its need, as it ran last; none: it runs for a time
};

/// The day.
struct DayPlan {
  std::vector<Turn> turns = {};
  std::vector<SetDay> sets = {};  ///< in the order in which they were asked for
  Time earliest = {};             ///< as it was asked for
  Time latest = {};
  Volume pumped = {};
  Volume let_out = {};
  Volume lost = {};
  Volume fill = {};
  Time pump_time = {};
  Energy water_energy = {};
  std::optional<Energy> shaft_energy = {};  ///< none: not known of some turn
  std::optional<double> cost = {};          ///< money; none: no prices, or not known

  /// Whether every set has what it needs.
  bool all_fits() const;
};

/// Without faults, or with those of the layout. @throws InvalidInput, NotSolved, Stopped
DayPlan day_plan(const Layout& layout,
                 const std::vector<SetToWater>& sets,
                 const DayOptions& options = {},
                 const Work& work = {});

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const SetToWater& set);
std::vector<Problem> problems(const DayOptions& options);

}  // namespace hydro
