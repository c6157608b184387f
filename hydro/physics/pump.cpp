#include "hydro/physics/pump.hpp"

#include "hydro/physics/pump_law.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>

namespace hydro {
namespace {

constexpr Range<Flow> some_flow{0, 100000, m3_per_h};
constexpr Range<Flow> some_flow_above_0{0, 100000, m3_per_h, true};
constexpr Range<Length> some_head{0, 5000, units::m};
constexpr Range<RotationalSpeed> some_speed{1, 100000, rpm};
constexpr Range<double> some_efficiency{0, 1, units::plain, true};

std::string which(const char* key, std::size_t i) {
  return std::string(key) + ", " + std::to_string(i + 1);
}

template <class Point>
void examine_flows(const char* key,
                   const std::vector<Point>& points,
                   const Range<Flow>& range,
                   Examination& examination) {
  if (points.size() < 2)
    examination.add(key, "are " + std::to_string(points.size()) + ", must be two or more");
  for (std::size_t i = 0; i < points.size(); ++i) {
    examination.within(which(key, i), points[i].flow, range);
    if (i > 0 && !(points[i].flow > points[i - 1].flow))
      examination.add(which(key, i),
                      "flow is " + to_message(points[i].flow, lps) +
                          ", must be above that of the point before, " +
                          to_message(points[i - 1].flow, lps));
  }
}

void examine_heads(const char* key,
                   const std::vector<PumpPoint>& points,
                   Examination& examination) {
  examine_flows(key, points, some_flow, examination);
  for (std::size_t i = 0; i < points.size(); ++i)
    examination.within(which(key, i), points[i].head, some_head);
}

void examine_points(const Pump& pump, Examination& examination) {
  examine_heads("points", pump.points, examination);
  for (std::size_t i = 1; i < pump.points.size(); ++i)
    if (!(pump.points[i].head < pump.points[i - 1].head))
      examination.add(which("points", i),
                      "head is " + to_message(pump.points[i].head, units::m) +
                          ", must be below that of the point before, " +
                          to_message(pump.points[i - 1].head, units::m));
}

void examine_suction(const Pump& pump, Examination& examination) {
  if (pump.npsh_required.empty()) return;
  examine_heads("npsh_required", pump.npsh_required, examination);
  for (std::size_t i = 1; i < pump.npsh_required.size(); ++i)
    if (!(pump.npsh_required[i].head >= pump.npsh_required[i - 1].head))
      examination.add(which("npsh_required", i),
                      "head is " + to_message(pump.npsh_required[i].head, units::m) +
                          ", must not be below that of the point before, " +
                          to_message(pump.npsh_required[i - 1].head, units::m));
}

void examine_speeds(const Pump& pump, Examination& examination) {
  examination.within("curve_speed", pump.curve_speed, some_speed);
  examination.within("speed", pump.speed, some_speed);
  examination.within("top_speed", pump.top_speed, some_speed);
  if (!pump.curve_speed && (pump.speed || pump.top_speed))
    examination.add("curve_speed",
                    "is not given; a speed needs the speed at which the points were taken");
  const std::optional<RotationalSpeed> runs = pump.speed ? pump.speed : pump.curve_speed;
  if (runs && pump.top_speed && !(*runs <= *pump.top_speed))
    examination.add("speed",
                    "is " + to_message(*runs, rpm) + (pump.speed ? "" : ", the curve_speed") +
                        ", must be at most top_speed, " + to_message(*pump.top_speed, rpm));
}

void examine_range(const Pump& pump, Examination& examination) {
  examination.within("least_flow", pump.least_flow, some_flow);
  examination.within("most_flow", pump.most_flow, some_flow_above_0);
  if (pump.least_flow && pump.most_flow && !(*pump.least_flow < *pump.most_flow))
    examination.add("most_flow",
                    "is " + to_message(*pump.most_flow, lps) + ", must be above least_flow, " +
                        to_message(*pump.least_flow, lps));
}

void examine_power(const Pump& pump, Examination& examination) {
  examination.within("efficiency", pump.efficiency, some_efficiency);
  if (pump.efficiency && !pump.efficiencies.empty())
    examination.add("efficiency, efficiencies", "are both given, at most one is needed");
  if (!pump.efficiencies.empty())
    examine_flows("efficiencies", pump.efficiencies, some_flow_above_0, examination);
  for (std::size_t i = 0; i < pump.efficiencies.size(); ++i)
    examination.within(which("efficiencies", i), pump.efficiencies[i].efficiency, some_efficiency);
  examination.within("power", pump.power, Range<Power>{0, 100000, kW, true});
  examination.within("droop", pump.droop, Range<double>{0, 0.5, units::plain});
}

/// What can be asked only of a curve that is one.
void examine_curve(const Pump& pump, Examination& examination) {
  const PumpCurve curve(pump.points, pump.shape.value_or(CurveShape::through_points));
  if (!pump.most_flow) return;
  const double head = curve.at(si(*pump.most_flow)).head;
  if (!(head > 0))
    examination.add("most_flow",
                    "is " + to_message(*pump.most_flow, lps) + ", where the curve's head is " +
                        to_message(head, "m") + "; must be a flow with a head above 0");
}

/// The conditions under which the head falls with the flow in spite of the droop (pump_law.hpp).
void examine_droop(const Pump& pump, Examination& examination) {
  const EfficiencyCurve efficiency(pump);
  if (!pump.power || !efficiency.is_known() || !std::isfinite(efficiency.to()) ||
      !(pump.least_flow || !pump.efficiencies.empty())) {
    examination.add("droop",
                    "is given, but the power at the shaft is not known; it needs power, efficiency "
                    "with least_flow and most_flow, or efficiencies");
    return;
  }
  const PumpCurve curve(pump.points, pump.shape.value_or(CurveShape::through_points));
  if (const double head = curve.at(efficiency.to()).head; !(head > 0))
    examination.add("efficiencies",
                    "reach to a flow where the curve's head is " + to_message(head, "m") +
                        "; with a droop they must end where it is above 0");
  for (std::size_t i = 1; i < pump.efficiencies.size(); ++i) {
    const EfficiencyPoint &low = pump.efficiencies[i - 1], &high = pump.efficiencies[i];
    const double rise = high.efficiency - low.efficiency;
    const double flow_share = si(high.flow - low.flow) / si(high.flow);
    if (!(low.efficiency * si(high.flow) >= high.efficiency * si(low.flow)))
      examination.add(which("efficiencies", i),
                      "rises faster than the flow; with a droop it must not");
    if (!(-rise <= 2 * high.efficiency * flow_share))
      examination.add(which("efficiencies", i),
                      "falls so steeply that the power would rise faster than the cube of the "
                      "flow; with a droop it must not");
  }
}

}  // namespace

PumpFit fit_of(const Pump& pump) {
  if (auto found = problems(pump); !found.empty()) throw InvalidInput(std::move(found));
  const CurveShape shape = pump.shape.value_or(CurveShape::through_points);
  const PumpCurve curve(pump.points, shape);
  double misfit = 0;
  if (shape == CurveShape::quadratic && pump.points.size() > 2)
    for (const PumpPoint& point : pump.points)
      misfit = std::max(misfit, std::abs(curve.at(si(point.flow)).head - si(point.head)));
  return {Length::from_value(curve.at(0).head), Length::from_value(misfit)};
}

Length pump_head(const Pump& pump, const Flow& flow, const std::optional<RotationalSpeed>& speed) {
  Pump at_speed = pump;
  if (speed) {
    at_speed.speed = speed;
    at_speed.top_speed = {};
  }
  at_speed.droop = {};
  Examination examination;
  examination.include("pump", problems(pump));
  if (speed) examination.include("pump", problems(at_speed));
  examination.within("flow", flow, some_flow);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return Length::from_value(PumpLaw(at_speed, 1).at(si(flow)).head);
}

std::vector<Problem> problems(const Pump& pump) {
  Examination examination;
  examine_points(pump, examination);
  examine_speeds(pump, examination);
  examine_range(pump, examination);
  examine_suction(pump, examination);
  examine_power(pump, examination);
  if (auto found = examination.take(); !found.empty()) return found;
  examine_curve(pump, examination);
  const EfficiencyCurve efficiency(pump);
  if (efficiency.is_known() && !(efficiency.from() < efficiency.to()))
    examination.add("efficiencies", "do not reach into the usable range; some must");
  if (auto found = examination.take(); !found.empty()) return found;
  if (pump.droop.value_or(0) > 0) examine_droop(pump, examination);
  return examination.take();
}

}  // namespace hydro
