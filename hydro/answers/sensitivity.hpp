// sensitivity.hpp: what a little more of each input does to one figure of a solution.
//
// What      The exact derivative of one pressure or flow with respect to every input: bores, walls
//           and lengths of pipe, losses, every outlet and how high it stands, regulators, supplies.
//           Of an input that is a size it is given by the share: what the figure would rise by if
//           the input became twice what it is and the line went straight on; 1 % of it is what 1 %
//           more does. Of a height it is given by the metre.
// Formula   With R(y, x) = 0 the equations of a solution y at the inputs x, and F its figure:
//             (dR/dy)^T m = (dF/dy)^T,     dF/dx = partial dF/dx - m^T dR/dx
//           All x have the same m, one number for each equation. It takes the two sweeps of one
//           Newton step, transposed (solver/adjoint.hpp), and each dR/dx is a slope of one law.
//           Laws that are powers have their exponent for slope by the share: Hazen-Williams
//           h ~ C^-1.852 D^-4.8704, fittings h ~ K D^-4, outlets q ~ k.
// Source    The adjoint method for implicit equations: any textbook of sensitivity analysis, e.g.
//           A. Griewank and A. Walther, Evaluating Derivatives, 2nd ed. (SIAM 2008), chapter 15
//           (from memory).
// Range     Straight lines through the solution: good for small changes. Where the curves bend the
//           derivative is that of one side: an outlet about to run dry, a compensating one at the
//           end of its range, a regulator about to hold, a gate about to shut. Left out are the
//           water and its temperature, the range of a compensating outlet, the curve of a pump but
//           for its head and speed as a whole, and all that does nothing to the figure.
// Accuracy  That of the solution. Against central differences of solve() and a model of its own in
//           complex numbers: tests/sensitivity_test.cpp.
// Errors    InvalidInput for a line, an outlet, a supply or a gauge that is not there, and for a
//           figure that hangs on water that stands still round a loop: it has no slope.
// Threads   Immutable: share it between threads as you like.
// Example   examples/26_what_matters.cpp
#pragma once

#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// A pressure of a solution.
struct PressureFigure {
  enum class Kind {
    device,  ///< at an outlet's device
    line,    ///< in the line at an outlet
    supply,  ///< at the start of the lines that a supply feeds
    gauge,   ///< that its gauge reads
    inlet,   ///< where a line begins, before its fittings
    end      ///< at the far end of a line
  };
  Kind kind = Kind::device;
  std::string at = {};  ///< name of the line, or of a further supply; empty: the first supply
  int outlet = 0;       ///< from 1 on
  bool operator==(const PressureFigure&) const = default;
};

/// A flow of a solution.
struct FlowFigure {
  enum class Kind {
    outlet,  ///< out of an outlet
    inflow,  ///< into a line through its inlet
    supply,  ///< out of one supply
    all      ///< out of all supplies together
  };
  Kind kind = Kind::all;
  std::string at = {};  ///< name of the line, or of a further supply; empty: the first supply
  int outlet = 0;       ///< from 1 on
  bool operator==(const FlowFigure&) const = default;
};

PressureFigure pressure_at(std::string line, int outlet);
PressureFigure line_pressure_at(std::string line, int outlet);
PressureFigure supply_pressure(std::string supply = {});
PressureFigure gauge_reading(std::string supply = {});
FlowFigure flow_of(std::string line, int outlet);
FlowFigure inflow_of(std::string line);
FlowFigure supply_flow(std::string supply = {});
FlowFigure whole_inflow();

/// What can be a little more. Those marked h are heights, given by the metre; all others are sizes,
/// given by the share.
enum class Input {
  // Of one kind of pipe along a line: `pipe`, or one of the first reaches.
  inside_diameter,  ///< the fittings' in it too
  hazen_williams,
  roughness,
  darcy_factor,
  length,  ///< with what lies along it and the ground as they are, connections in proportion
  // Of a line.
  loss_coefficient,         ///< all K at the inlet: its own, the valve's, a fault's
  outlet_loss_coefficient,  ///< K in the line at all its outlets
  ground_rise,  ///< h: evenly along it, all that hangs on it going up too; not if some of that joins
  regulator,    ///< the pressure that it holds
  leak,         ///< what flows out of a hole at its pressure
  // Of the risers of a line, those that stand open too; of these, how high they still stand.
  riser_height,  ///< h
  riser_inside_diameter,
  riser_hazen_williams,
  riser_roughness,
  riser_darcy_factor,
  riser_loss_coefficient,  ///< of those that stand open, the fault's
  // Of an outlet.
  flow,              ///< at every pressure: the coefficient k; of a nozzle, its area
  exponent,          ///< with the flow at the pressure `at` as it is
  outlet_regulator,  ///< the pressure that it holds
  ground,            ///< h: elevation, with all that meets there; the rest stays where it is
  // Of a supply.
  supply_pressure,   ///< that is held
  tank_level,        ///< h
  hydrant_at_rest,   ///< pressure at rest, the other reading as it is
  hydrant_residual,  ///< pressure while the flow of the reading runs
  hydrant_flow,      ///< of the reading
  pump_head,         ///< at every flow
  pump_speed,        ///< without load
  suction_lift,      ///< h
  suction_loss,      ///< friction and fittings together
  filter_loss
};

bool is_height(Input input);
/// "pipe bore", as a person says it.
std::string_view words_of(Input input);

/// What one input does to a figure that is a Pressure or a Flow.
template <class Figure>
struct Influence {
  using ByLength = typename boost::units::divide_typeof_helper<Figure, Length>::type;

  Input input;
  std::string at = {};    ///< name of the line, or of a further supply; empty: the first supply
  std::string kind = {};  ///< name of the kind of pipe or outlet
  int number = 0;  ///< of the outlet, the pump, or the pipe where there are several; from 1 on
  Figure by_share = {};     ///< of a size: by one whole share of it
  ByLength by_height = {};  ///< of a height

  /// What 1 % more of a size, or a height 0.1 ft (3 cm) larger, does.
  Figure by_one_step() const;
};

/// One figure and what all inputs do to it.
template <class Figure>
struct Sensitivity {
  Figure value;
  std::vector<Influence<Figure>> influences;  ///< largest by_one_step() first

  /// Of all outlets of a line together, and of all reaches.
  Sensitivity by_line() const;
  /// Of all that is of one kind of pipe or outlet; what has no name of a kind, by line.
  Sensitivity by_kind() const;
  /// Zero where it does nothing. @param number 0: of all of that line or supply together
  Influence<Figure> of(Input input, std::string_view at, int number = 0) const;
};

/// A solution that is ready to be asked about any number of figures, without solving anew.
class Sensitivities {
 public:
  explicit Sensitivities(Solution solution);

  const Solution& solution() const;
  Sensitivity<Pressure> of(const PressureFigure& figure) const;
  Sensitivity<Flow> of(const FlowFigure& figure) const;

 private:
  struct Data;
  std::shared_ptr<const Data> data_;
};

/// Of one figure alone.
Sensitivity<Pressure> sensitivity(const Solution& solution, const PressureFigure& figure);
Sensitivity<Flow> sensitivity(const Solution& solution, const FlowFigure& figure);

}  // namespace hydro
