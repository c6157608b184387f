#include "hydro/physics/outlet.hpp"

#include "hydro/physics/outlet_law.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <numbers>

namespace hydro {
namespace {

constexpr Range<Pressure> some_pressure{0.001, 10000, kPa};
constexpr Range<Flow> some_flow{0.001, 3600000, lph};
constexpr double least_free_exponent =
    0.1;  // below it a curve is too steep at the foot to be solved

void examine_points(const std::vector<RatedPoint>& points, Examination& examination) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::string which = "points, " + std::to_string(i + 1);
    examination.within(which, points[i].pressure, some_pressure);
    examination.within(which, points[i].flow, some_flow);
  }
  const bool alike = std::all_of(points.begin(), points.end(), [&](const RatedPoint& point) {
    return point.pressure == points[0].pressure;
  });
  if (points.size() < 2 || alike)
    examination.add("points", "are too few, must be two or more at different pressures");
}

/// Flow, pressure and exponent of the plain power law, however it was given.
PointsFit power_law(const Outlet& outlet, double density) {
  if (!outlet.points.empty()) return fit_of(outlet.points);
  if (!outlet.nozzle)
    return {outlet.flow,
            outlet.compensating ? outlet.compensating->low : outlet.at,
            outlet.compensating ? 0 : outlet.exponent.value_or(0.5)};
  const double bore_area = std::numbers::pi / 4 * si(*outlet.nozzle) * si(*outlet.nozzle);
  const double speed = std::sqrt(2 * si(outlet.rated_pressure()) / density);
  return {Flow::from_value(outlet.discharge_coefficient.value_or(0) * bore_area * speed),
          outlet.rated_pressure(),
          0.5};
}

}  // namespace

double OutletLaw::unheld_flow(double head) const {
  if (head < low) return unheld_flow(low) * std::sqrt(head / low);
  if (head > high) return unheld_flow(high) * std::sqrt(head / high);
  return coefficient * std::pow(head, exponent);
}

double OutletLaw::unheld_head(double flow) const {
  const double least = low > 0 ? unheld_flow(low) : 0;
  if (flow < least) return low * (flow / least) * (flow / least);
  const double most = std::isfinite(high) ? unheld_flow(high) : flow;
  if (flow > most) return high * (flow / most) * (flow / most);
  return exponent > 0
             ? std::clamp(std::pow(flow * inverse_coefficient, inverse_exponent), low, high)
             : low;
}

OutletLaw outlet_law(const Outlet& outlet, double weight_density) {
  const PointsFit law = power_law(outlet, weight_density / gravity);
  OutletLaw result{si(law.flow) / std::pow(si(law.at) / weight_density, law.exponent),
                   law.exponent};
  if (outlet.compensating) {
    result.low = si(outlet.compensating->low) / weight_density;
    result.high = si(outlet.compensating->high) / weight_density;
  } else if (law.exponent < least_free_exponent) {
    result.low = si(outlet.minimum.value()) / weight_density;
  }
  if (outlet.regulator) result.held = si(*outlet.regulator) / weight_density;
  result.bent = result.low > 0 || outlet.regulator;
  return result;
}

Flow discharge(const Outlet& outlet, const Pressure& pressure, const Density& density) {
  if (auto found = problems(outlet); !found.empty()) throw InvalidInput(std::move(found));
  Examination examination;
  examination.within("pressure", pressure, Range<Pressure>{-1e6, 1e6, kPa});
  examination.within("density", density, Range<Density>{900, 1100, kg_per_m3});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  const double weight_density = si(density) * gravity;
  const OutletLaw law = outlet_law(outlet, weight_density);
  return Flow::from_value(si(pressure) > 0 ? law.flow(si(pressure) / weight_density) : 0);
}

PointsFit fit_of(const std::vector<RatedPoint>& points) {
  Examination examination;
  examine_points(points, examination);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  const auto count = static_cast<double>(points.size());
  double mean_p = 0, mean_q = 0, pp = 0, pq = 0;
  for (const RatedPoint& point : points) {
    mean_p += std::log(si(point.pressure)) / count;
    mean_q += std::log(si(point.flow)) / count;
  }
  for (const RatedPoint& point : points) {
    const double p = std::log(si(point.pressure)) - mean_p;
    pp += p * p;
    pq += p * (std::log(si(point.flow)) - mean_q);
  }
  const double exponent = pq / pp;
  const auto flow = [&](const Pressure& pressure) {
    return std::exp(mean_q + exponent * (std::log(si(pressure)) - mean_p));
  };
  double misfit = 0;
  for (const RatedPoint& point : points)
    misfit = std::max(misfit, std::abs(flow(point.pressure) / si(point.flow) - 1));
  return {Flow::from_value(flow(points[0].pressure)), points[0].pressure, exponent, misfit};
}

std::vector<Problem> problems(const Outlet& outlet) {
  Examination examination;
  examination.name("name", outlet.name);
  const bool by_flow = outlet.flow != Flow{} || outlet.at != Pressure{} || outlet.compensating;
  const int ways = by_flow + outlet.nozzle.has_value() + !outlet.points.empty();
  if (ways > 1)
    examination.add("flow, nozzle, points", "more than one is given, exactly one is needed");
  if (by_flow || ways == 0) {
    examination.within("flow", outlet.flow, some_flow);
    if (!outlet.compensating || outlet.at != Pressure{})
      examination.within("at", outlet.at, some_pressure);
  }
  examination.within("exponent", outlet.exponent, Range<double>{0, 1.5, units::plain});
  examination.within("rated", outlet.rated, some_pressure);
  examination.within("minimum", outlet.minimum, some_pressure);
  examination.within("maximum", outlet.maximum, some_pressure);
  examination.within("regulator", outlet.regulator, some_pressure);
  examination.within("nozzle", outlet.nozzle, Range<Length>{0.1, 100, mm});
  examination.within("body_bore", outlet.body_bore, Range<Length>{0.1, 200, mm});
  if (outlet.nozzle && outlet.body_bore && *outlet.body_bore < *outlet.nozzle)
    examination.add("body_bore",
                    "is " + to_message(*outlet.body_bore, mm) +
                        ", must be at least the nozzle of " + to_message(*outlet.nozzle, mm));
  examination.within(
      "discharge_coefficient", outlet.discharge_coefficient, Range<double>{0.1, 1, units::plain});
  if (outlet.nozzle.has_value() != outlet.discharge_coefficient.has_value())
    examination.add(outlet.nozzle ? "discharge_coefficient" : "nozzle",
                    "is not given; a nozzle needs its bore and its discharge_coefficient");
  if (!outlet.points.empty()) examine_points(outlet.points, examination);
  if ((outlet.nozzle || !outlet.points.empty()) && !outlet.rated)
    examination.add("rated", "is not given; only a rating by a flow has a default");
  if (outlet.exponent && (outlet.nozzle || !outlet.points.empty() || outlet.compensating))
    examination.add("exponent", "is given, but follows from the rating");
  if (outlet.compensating) {
    examination.within("compensating.low", outlet.compensating->low, some_pressure);
    examination.within("compensating.high", outlet.compensating->high, some_pressure);
    if (!(outlet.compensating->low < outlet.compensating->high))
      examination.add("compensating.high",
                      "is " + to_message(outlet.compensating->high, kPa) + ", must be above low, " +
                          to_message(outlet.compensating->low, kPa));
  }
  if (auto found = examination.take(); !found.empty()) return found;

  const double exponent = power_law(outlet, 1000).exponent;
  if (!(exponent >= 0 && exponent <= 1.5))
    examination.add("points",
                    "are met best by the exponent " + to_message(exponent, "") +
                        ", must be met by one from 0 to 1.5");
  else if (exponent < least_free_exponent && !outlet.compensating && !outlet.minimum)
    examination.add("minimum",
                    "is not given; below the exponent 0.1 it is needed, or compensating, to say "
                    "where the flow falls to 0");
  if (outlet.minimum && *outlet.minimum > outlet.rated_pressure())
    examination.add("minimum",
                    "is " + to_message(*outlet.minimum, kPa) + ", must be at most the rated " +
                        to_message(outlet.rated_pressure(), kPa));
  if (outlet.maximum && *outlet.maximum < outlet.rated_pressure())
    examination.add("maximum",
                    "is " + to_message(*outlet.maximum, kPa) + ", must be at least the rated " +
                        to_message(outlet.rated_pressure(), kPa));
  return examination.take();
}

}  // namespace hydro
