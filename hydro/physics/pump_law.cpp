#include "hydro/physics/pump_law.hpp"

#include "hydro/physics/root_between.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include <boost/math/interpolators/pchip.hpp>
#include <boost/math/special_functions/fpclassify.hpp>  // pchip.hpp of Boost 1.74 lacks it

namespace hydro {

struct PumpCurve::Cubic {
  boost::math::interpolators::pchip<std::vector<double>> between;
  double first_flow, first_head, first_slope;
  double last_flow, last_head, last_slope;
};

PumpCurve::PumpCurve(const std::vector<PumpPoint>& points, CurveShape shape) {
  const std::size_t n = points.size();
  if (n == 2 || shape == CurveShape::quadratic) {
    double mean_square = 0, mean_head = 0, squares = 0, products = 0;
    for (const PumpPoint& point : points) {
      mean_square += si(point.flow) * si(point.flow) / static_cast<double>(n);
      mean_head += si(point.head) / static_cast<double>(n);
    }
    for (const PumpPoint& point : points) {
      const double apart = si(point.flow) * si(point.flow) - mean_square;
      squares += apart * apart;
      products += apart * (si(point.head) - mean_head);
    }
    per_square_ = products / squares;
    at_rest_ = mean_head - per_square_ * mean_square;
    return;
  }
  std::vector<double> flows, heads;
  for (const PumpPoint& point : points) {
    flows.push_back(si(point.flow));
    heads.push_back(si(point.head));
  }
  const auto secant = [&](std::size_t to) {
    return (heads[to] - heads[to - 1]) / (flows[to] - flows[to - 1]);
  };
  const double first_slope = secant(1), last_slope = secant(n - 1);
  const double last_flow = flows.back(), last_head = heads.back();
  // One more point on the last secant: the interpolation takes four or more, and three are common.
  const double step = flows[n - 1] - flows[n - 2];
  flows.push_back(last_flow + step);
  heads.push_back(last_head + last_slope * step);
  const double first_flow = flows[0], first_head = heads[0];
  cubic_ = std::make_shared<const Cubic>(
      Cubic{{std::move(flows), std::move(heads), first_slope, last_slope},
            first_flow,
            first_head,
            first_slope,
            last_flow,
            last_head,
            last_slope});
}

HeadAtFlow PumpCurve::at(double flow) const {
  if (!cubic_) return {at_rest_ + per_square_ * flow * flow, 2 * per_square_ * flow};
  const Cubic& c = *cubic_;
  if (flow <= c.first_flow)
    return {c.first_head + c.first_slope * (flow - c.first_flow), c.first_slope};
  if (flow >= c.last_flow) return {c.last_head + c.last_slope * (flow - c.last_flow), c.last_slope};
  return {c.between(flow), c.between.prime(flow)};
}

EfficiencyCurve::EfficiencyCurve(const Pump& pump) {
  if (pump.least_flow) from_ = si(*pump.least_flow);
  if (pump.most_flow) to_ = si(*pump.most_flow);
  if (pump.efficiency && (pump.least_flow || pump.most_flow)) points_ = {{0, *pump.efficiency}};
  for (const EfficiencyPoint& point : pump.efficiencies)
    points_.push_back({si(point.flow), point.efficiency});
  if (!pump.efficiencies.empty()) {
    from_ = std::max(from_, points_.front().flow);
    to_ = std::min(to_, points_.back().flow);
  }
}

EfficiencyCurve::Value EfficiencyCurve::at(double flow) const {
  if (points_.size() == 1) return {points_[0].efficiency, 0};
  const auto after = std::find_if(points_.begin() + 1, points_.end() - 1, [&](const Point& point) {
    return point.flow > flow;
  });
  const Point &low = *(after - 1), &high = *after;
  const double slope = (high.efficiency - low.efficiency) / (high.flow - low.flow);
  return {low.efficiency + slope * (flow - low.flow), slope};
}

PumpLaw::PumpLaw(const Pump& pump, double weight_density)
    : curve_(pump.points, pump.shape.value_or(CurveShape::through_points)),
      efficiency_(pump),
      weight_density_(weight_density) {
  if (!pump.npsh_required.empty()) {
    npsh_required_ = PumpCurve(pump.npsh_required, CurveShape::through_points);
    npsh_from_ = si(pump.npsh_required.front().flow);
  }
  if (pump.speed) ratio_ = si(*pump.speed) / si(pump.curve_speed.value());
  if (pump.droop) ratio_lost_ = ratio_ * *pump.droop / si(pump.power.value());
}

PumpLaw::ShaftPower PumpLaw::shaft_power_on_curve(double flow) const {
  const double nearest = std::clamp(flow, efficiency_.from(), efficiency_.to());
  const HeadAtFlow on_curve = curve_.at(nearest);
  const auto [efficiency, slope] = efficiency_.at(nearest);
  const double watts = weight_density_ * nearest * on_curve.head / efficiency;
  if (nearest != flow) return {watts, 0};
  return {watts,
          weight_density_ * (on_curve.head + nearest * on_curve.slope) / efficiency -
              watts * slope / efficiency};
}

double PumpLaw::ratio_under_load(double flow) const {
  if (!(ratio_lost_ > 0)) return ratio_;
  const auto excess = [&](double ratio) {
    const double watts =
        ratio > 0 ? ratio * ratio * ratio * shaft_power_on_curve(flow / ratio).watts : 0;
    return ratio - (ratio_ - ratio_lost_ * watts);
  };
  return root_between(excess, 0, ratio_);
}

PumpAtFlow PumpLaw::at(double flow) const {
  const double r = ratio_under_load(flow);
  const HeadAtFlow on_curve = curve_.at(flow / r);
  PumpAtFlow now{flow, r * r * on_curve.head, r * on_curve.slope, r};
  if (ratio_lost_ > 0) {
    const ShaftPower power = shaft_power_on_curve(flow / r);
    const double with_flow = r * r * power.slope;
    const double with_ratio = 3 * r * r * power.watts - r * flow * power.slope;
    const double ratio_slope = -ratio_lost_ * with_flow / (1 + ratio_lost_ * with_ratio);
    now.slope += (2 * r * on_curve.head - flow * on_curve.slope) * ratio_slope;
  }
  return now;
}

PumpShares PumpLaw::shares(const PumpAtFlow& now) const {
  const double r = now.speed_ratio;
  const HeadAtFlow on_curve = curve_.at(now.flow / r);
  const double with_ratio = 2 * r * on_curve.head - now.flow * on_curve.slope;
  double lost = 0;  // of the ratio, by all power
  double held = 1;  // what is left of a rise of the ratio when the power has answered it
  if (ratio_lost_ > 0) {
    const ShaftPower power = shaft_power_on_curve(now.flow / r);
    lost = ratio_lost_ * r * r * r * power.watts;
    held = 1 / (1 + ratio_lost_ * (3 * r * r * power.watts - r * now.flow * power.slope));
  }
  return {now.head - with_ratio * held * lost, with_ratio * held * r};
}

std::optional<double> PumpLaw::efficiency(const PumpAtFlow& now) const {
  const double from = now.speed_ratio * efficiency_.from(), to = now.speed_ratio * efficiency_.to();
  const bool inside = now.flow > 0 && now.head > 0 && now.flow >= from && now.flow <= to;
  if (!efficiency_.is_known() || !inside) return {};
  return efficiency_
      .at(std::clamp(now.flow / now.speed_ratio, efficiency_.from(), efficiency_.to()))
      .efficiency;
}

std::optional<double> PumpLaw::npsh_required(const PumpAtFlow& now) const {
  if (!npsh_required_) return {};
  const double r = now.speed_ratio;
  return r * r * npsh_required_->at(std::max(now.flow / r, npsh_from_)).head;
}

}  // namespace hydro
