#include "hydro/physics/pump_readings.hpp"

#include "hydro/physics/losses.hpp"
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

std::vector<Problem> problems(const std::vector<PumpReading>& readings,
                              const PumpReadingPlace& place) {
  Examination examination;
  if (place.suction) examination.include("suction", problems(*place.suction));
  if (place.gauge) examination.include("gauge", problems(*place.gauge));
  if (place.filter) examination.include("filter", problems(*place.filter));
  const bool after_filter = place.gauge && place.gauge->after_filter.value_or(false);
  if (after_filter && !place.filter)
    examination.add("gauge.after_filter", "is true, but there is no filter");
  examination.within("speed", place.speed, Range<RotationalSpeed>{1, 100000, rpm});
  const bool range_known = place.gauge && place.gauge->range;
  if (readings.size() < 2)
    examination.add("readings", "are " + std::to_string(readings.size()) + ", must be two or more");
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const PumpReading& reading = readings[i];
    const std::string which = "readings, " + std::to_string(i + 1);
    examination.within(which + ": gauge", reading.gauge, Range<Pressure>{-100, 50000, kPa});
    if (range_known && reading.gauge > *place.gauge->range)
      examination.add(which + ": gauge",
                      "is " + to_message(reading.gauge, kPa) + ", beyond the gauge's range of " +
                          to_message(*place.gauge->range, kPa));
    examination.within(which + ": flow", reading.flow, some_flow);
    examination.within(
        which + ": gauge_uncertainty", reading.gauge_uncertainty, Range<Pressure>{0, 50000, kPa});
    examination.within(which + ": flow_uncertainty", reading.flow_uncertainty, some_flow);
    if (!reading.gauge_uncertainty && !range_known)
      examination.add(which + ": gauge_uncertainty",
                      "is not given, nor is the range of the gauge, from which it would follow");
  }
  return examination.take();
}

/// The uncertainties that are not given, as the header says.
PumpReading completed(PumpReading reading, const PumpReadingPlace& place) {
  if (!reading.gauge_uncertainty)
    reading.gauge_uncertainty = (0.03 / std::sqrt(3)) * place.gauge.value().range.value();
  if (!reading.flow_uncertainty) reading.flow_uncertainty = 0.03 * reading.flow;
  return reading;
}

double square(double number) {
  return number * number;
}

}  // namespace

PumpFromReadings pump_from_readings(const std::vector<PumpReading>& readings,
                                    const PumpReadingPlace& place,
                                    const Water& water) {
  if (auto found = problems(readings, place); !found.empty()) throw InvalidInput(std::move(found));
  const WaterProperties is = properties(water);
  PumpFromReadings result;
  result.weight_density_ = si(is.density) * gravity;
  std::vector<const PumpReading*> by_flow;
  by_flow.reserve(readings.size());
  for (const PumpReading& reading : readings) by_flow.push_back(&reading);
  std::ranges::stable_sort(by_flow, {}, [](const PumpReading* one) { return one->flow; });
  for (const PumpReading* reading : by_flow) result.readings_.push_back(completed(*reading, place));

  const bool after_filter = place.gauge && place.gauge->after_filter.value_or(false);
  const Losses suction = place.suction ? losses(*place.suction, is) : Losses{};
  const Losses filter = after_filter ? losses(place.filter.value(), is) : Losses{};
  double raised = place.gauge ? si(place.gauge->height.value_or(Length{})) : 0;
  if (place.suction) raised += si(place.suction->lift);
  for (const PumpReading& reading : result.readings_) {
    const Loss in_suction = suction.at(si(reading.flow)), in_filter = filter.at(si(reading.flow));
    const double head =
        si(reading.gauge) / result.weight_density_ + raised + in_suction.head + in_filter.head;
    result.pump_.points.push_back({reading.flow, Length::from_value(head)});
    result.loss_slopes_.push_back(in_suction.slope + in_filter.slope);
  }
  if (readings.size() > 2) result.pump_.shape = CurveShape::quadratic;
  result.pump_.curve_speed = place.speed;
  Examination examination;
  examination.include("readings, by flow", hydro::problems(result.pump_));
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return result;
}

HeadEstimate PumpFromReadings::head(const Flow& flow) const {
  Examination examination;
  examination.within("flow", flow, some_flow);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));

  const double n = static_cast<double>(pump_.points.size());
  double mean_square = 0, mean_head = 0, squares = 0;
  for (const PumpPoint& point : pump_.points) {
    mean_square += square(si(point.flow)) / n;
    mean_head += si(point.head) / n;
  }
  for (const PumpPoint& point : pump_.points)
    squares += square(square(si(point.flow)) - mean_square);
  const PumpCurve curve(pump_.points, CurveShape::quadratic);
  const double slope = curve.at(1).head - curve.at(0).head;  // dH/d(Q^2)

  // H = mean head + slope (Q^2 - mean of q^2): its derivatives by the head and by the square of the
  // flow of each reading.
  const double away = square(si(flow)) - mean_square;
  double variance = 0;
  for (std::size_t i = 0; i < readings_.size(); ++i) {
    const double q = si(pump_.points[i].flow);
    const double apart = square(q) - mean_square;
    const double by_head = 1 / n + away * apart / squares;
    const double by_square =
        away * (si(pump_.points[i].head) - mean_head - 2 * slope * apart) / squares - slope / n;
    const double by_flow = by_head * loss_slopes_[i] + by_square * 2 * q;
    variance += square(by_head * si(*readings_[i].gauge_uncertainty) / weight_density_) +
                square(by_flow * si(*readings_[i].flow_uncertainty));
  }
  return {Length::from_value(curve.at(si(flow)).head), Length::from_value(std::sqrt(variance))};
}

}  // namespace hydro
