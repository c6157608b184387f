// pump_law.hpp: a pump as the inner loop uses it: plain doubles in SI. Not installed. The formulas
// and their sources stand in pump.hpp.
//
// Range     With a droop the head still falls with the flow. Let g = -d ln H / d ln Q at a fixed
//           speed, e = d ln(efficiency) / d ln Q, and s = (speed - n) / n. Then by the droop's
//           formula the head falls if s (2 e - 2 - g) < g, and there is one speed n if e > -2 - g.
//           Both hold for -2 <= e <= 1, which problems(pump) sees to.
#pragma once

#include "hydro/physics/pump.hpp"

#include <limits>
#include <memory>
#include <optional>
#include <vector>

namespace hydro {

/// A head and how it answers the flow.
struct HeadAtFlow {
  double head;   ///< [m]
  double slope;  ///< dH/dQ, 0 or less [s/m2]
};

/// Monotone through points, or as near to them as a parabola comes; goes on outside of them.
class PumpCurve {
 public:
  /// @param points two or more, flows rising
  PumpCurve(const std::vector<PumpPoint>& points, CurveShape shape);

  HeadAtFlow at(double flow) const;

 private:
  struct Cubic;
  double at_rest_ = 0;  // of a + b Q^2
  double per_square_ = 0;
  std::shared_ptr<const Cubic> cubic_;  // none: a + b Q^2
};

/// Efficiency by flow at the curve's speed, where it is known [-].
class EfficiencyCurve {
 public:
  explicit EfficiencyCurve(const Pump& pump);

  bool is_known() const { return !points_.empty(); }
  double from() const { return from_; }
  double to() const { return to_; }
  struct Value {
    double efficiency;
    double slope;  ///< with the flow
  };
  /// @param flow from from() to to()
  Value at(double flow) const;

 private:
  struct Point {
    double flow;
    double efficiency;
  };
  std::vector<Point> points_;  // one: the same everywhere
  double from_ = 0;
  double to_ = std::numeric_limits<double>::infinity();
};

/// What one pump does at a flow.
struct PumpAtFlow {
  double flow;         ///< [m3/s]
  double head;         ///< [m]
  double slope;        ///< of the head with the flow, the droop's share in it [s/m2]
  double speed_ratio;  ///< speed over curve_speed, droop taken off [-]
};

/// What one whole share more does to the head of a pump at the same flow [m].
struct PumpShares {
  double head;   ///< of the head on its curve
  double speed;  ///< of the speed without load
};

/// The head of a pump at the speed at which it runs under load.
class PumpLaw {
 public:
  /// @param pump without problems @param weight_density rho g [N/m3]
  PumpLaw(const Pump& pump, double weight_density);

  /// @param flow 0 or more [m3/s]
  PumpAtFlow at(double flow) const;
  PumpShares shares(const PumpAtFlow& now) const;
  /// None where it is not known, and where no power reaches the water.
  std::optional<double> efficiency(const PumpAtFlow& now) const;
  std::optional<double> npsh_required(const PumpAtFlow& now) const;

 private:
  struct ShaftPower {
    double watts;
    double slope;  // with the flow
  };
  ShaftPower shaft_power_on_curve(double flow) const;
  double ratio_under_load(double flow) const;

  PumpCurve curve_;
  EfficiencyCurve efficiency_;
  std::optional<PumpCurve> npsh_required_;
  double npsh_from_ = 0;   // flow of its first point
  double ratio_ = 1;       // without load
  double ratio_lost_ = 0;  // per watt at the shaft
  double weight_density_;
};

}  // namespace hydro
