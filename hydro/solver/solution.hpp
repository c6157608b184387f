// solution.hpp: pressure and flow at every outlet, and the residuals that prove them.
//
// What      One LineSolution for each line of the layout, in the same order. Pressures are gauge
//           pressures. `pressure` is at the device (what the outlet is rated by), `line_pressure`
//           in the pipe below it. Where lines join, or there are several supplies, water may run in a
//           line either way: velocities and flows that count outward from the inlet are below 0 where
//           it runs towards the inlet. A dry outlet has pressure 0 (it is open to the air) and flow 0;
//           line_pressure may be negative. An open riser has pressure 0 at its mouth, and the flow
//           that escapes. A capped outlet has the static pressure, and flow 0. On a line that is
//           shut all is 0 and the outlets are closed. An outlet with a regulator of its own has
//           what the regulator lets through. Outlets keep their
//           numbers whatever happens to them. Beyond a cut, pressures and flows are 0 and outlets
//           dry.
// Threads   Plain values.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/operating_point.hpp"
#include "hydro/quantities/series.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

enum class OutletState {
  works,          ///< within its range
  below_minimum,  ///< lets out water, but below the pressure at which it turns or forms its pattern
  above_maximum,  ///< mists
  dry,            ///< the pressure does not lift water to it
  closed,         ///< capped, or its line is shut
  broken          ///< an open riser, or a body without its nozzle
};

/// Where a line is open by a fault that is not at an outlet: a leak, or where it ends in the air.
struct Opening {
  std::size_t fault;  ///< of Layout::faults_on the line
  Length distance;    ///< from the inlet
  Pressure line_pressure;
  Flow flow;  ///< that escapes
};

/// What one kind of pipe bears along a line: the line's pipe, or one of its first reaches.
struct PipeExtremes {
  std::string pipe_name;
  Length start;  ///< from the inlet: where it begins
  Length end;    ///< from the inlet: as far as it goes, or as there is water
  Velocity highest_velocity;
  Pressure lowest_pressure;
  Pressure highest_pressure;
};

enum class RegulatorState {
  holding,    ///< keeps what it is set to
  open,       ///< less comes than it is set to: it lets all through
  shut,       ///< more stands beyond it than it is set to, or than comes
  stuck_open  ///< by a fault
};

enum class CheckValveState {
  open,
  shut  ///< more stands beyond it than comes
};

/// The regulator at the inlet of a line.
struct RegulatorSolution {
  RegulatorState state;
  Pressure pressure;  ///< beyond it; 0 for one that is stuck open
  Pressure drop;      ///< that it takes
};

/// One line. Every Series has one entry for each outlet, from the inlet on; index 0 is outlet 1.
struct LineSolution {
  std::string name;
  Series<Length> distance;         ///< from the inlet
  Series<Pressure> pressure;       ///< at the device
  Series<Pressure> line_pressure;  ///< in the pipe
  Series<Flow> flow;               ///< out of the outlet
  Series<Velocity> velocity;       ///< in the pipe on the inlet's side of the outlet, outward
  std::vector<OutletState> state;

  Flow inflow = {};    ///< into the line through its inlet
  Flow end_flow = {};  ///< out of its far end into the line that this joins
  Velocity inlet_velocity = {};
  Pressure inlet_pressure = {};  ///< in the pipe that feeds it, where it begins
  Pressure end_pressure = {};    ///< at its far end

  std::vector<Opening> openings = {};    ///< from the inlet on
  std::vector<PipeExtremes> pipes = {};  ///< from the inlet on; empty where no water comes
  bool shut = false;                     ///< on purpose, by valves or the sets that run
  bool inlet_shut = false;  ///< nothing passes its inlet, whatever the pressures (layout.hpp)
  std::optional<RegulatorSolution> regulator = {};  ///< none: it has none, or no water comes
  std::optional<CheckValveState> check_valve = {};  ///< none: it has none, or no water comes
};

/// How well the equations are met. Each figure is the largest one left, divided by its scale: the
/// largest flow in any pipe, where lines join at least 1e-7 of the most that one of them could carry;
/// the largest of the supplies' heads at rest and the rise and fall of the ground.
struct Residuals {
  double mass = 0;           ///< at every place
  double energy = 0;         ///< in every length of pipe
  double outlet = 0;         ///< in the head at every outlet
  int steps = 0;             ///< Newton steps taken
  bool last_resort = false;  ///< the ramp was shrunk (solver/sweeps.hpp)

  static constexpr double tolerance = 1e-12;  ///< of each scale
  /// Whether each figure is within the tolerance. If not, nothing of the solution is an answer.
  bool are_met() const { return mass <= tolerance && energy <= tolerance && outlet <= tolerance; }
};

/// All lines solved, with the residuals that prove it.
class Solution {
 public:
  Solution(Layout layout,
           WaterProperties water,
           std::vector<LineSolution> lines,
           OperatingPoint supply,
           Residuals residuals,
           std::vector<std::string> notes,
           std::vector<OperatingPoint> further_supplies = {});

  const Layout& layout() const { return layout_; }
  const WaterProperties& water() const { return water_; }
  const std::vector<LineSolution>& lines() const { return lines_; }
  /// @throws InvalidInput when there is no line of this name.
  const LineSolution& line(std::string_view name) const { return lines_[layout_.index_of(name)]; }

  /// What the first supply does.
  const OperatingPoint& supply() const { return supply_; }
  /// What each of the further ones does, in the order of the layout.
  const std::vector<OperatingPoint>& further_supplies() const { return further_supplies_; }
  /// Out of all supplies together.
  Flow inflow() const;
  /// At the start of the lines that the first supply feeds.
  Pressure supply_pressure() const { return supply_.pressure; }
  const Residuals& residuals() const { return residuals_; }
  /// Where an input or result lies outside the range in which a law was validated.
  const std::vector<std::string>& notes() const { return notes_; }

 private:
  Layout layout_;
  WaterProperties water_;
  std::vector<LineSolution> lines_;
  OperatingPoint supply_;
  Residuals residuals_;
  std::vector<std::string> notes_;
  std::vector<OperatingPoint> further_supplies_;
};

/// Thrown when the equations could not be met. Carries what was reached, which is not an answer.
class NotSolved : public std::runtime_error {
 public:
  explicit NotSolved(Solution unfinished);
  const Solution& unfinished() const { return unfinished_; }

 private:
  Solution unfinished_;
};

}  // namespace hydro
