#include "hydro/physics/hydrant.hpp"

#include "hydro/physics/hydrant_law.hpp"
#include "hydro/quantities/range.hpp"

#include <cmath>
#include <utility>

namespace hydro {
namespace {

double fall(const Hydrant& hydrant) {
  return si(hydrant.pressure_at_rest) - si(hydrant.residual_pressure);
}

}  // namespace

Pressure hydrant_pressure(const Hydrant& hydrant, const Flow& flow) {
  auto found = problems(hydrant);
  Examination examination;
  examination.within("flow", flow, Range<Flow>{0, 1e9, lph});
  for (Problem& problem : examination.take()) found.push_back(std::move(problem));
  if (!found.empty()) throw InvalidInput(std::move(found));
  const double share = si(flow) / si(hydrant.flow);
  return Pressure::from_value(si(hydrant.pressure_at_rest) -
                              fall(hydrant) * std::pow(share, 1 / hydrant_exponent));
}

Flow hydrant_flow(const Hydrant& hydrant, const Pressure& pressure) {
  if (auto found = problems(hydrant); !found.empty()) throw InvalidInput(std::move(found));
  Examination examination;
  examination.within("pressure", pressure, Range<Pressure>{0, hydrant.pressure_at_rest / kPa, kPa});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  const double share = (si(hydrant.pressure_at_rest) - si(pressure)) / fall(hydrant);
  return std::pow(share, hydrant_exponent) * hydrant.flow;
}

std::vector<Problem> problems(const Hydrant& hydrant) {
  Examination examination;
  examination.within(
      "pressure_at_rest", hydrant.pressure_at_rest, Range<Pressure>{0, 10000, kPa, true});
  examination.within(
      "residual_pressure", hydrant.residual_pressure, Range<Pressure>{0, 10000, kPa});
  examination.within("flow", hydrant.flow, Range<Flow>{0.001, 36000000, lph});
  if (!(hydrant.residual_pressure < hydrant.pressure_at_rest))
    examination.add("residual_pressure",
                    "is " + to_message(hydrant.residual_pressure, kPa) +
                        ", must be below the pressure_at_rest, " +
                        to_message(hydrant.pressure_at_rest, kPa) +
                        "; it is read while the flow runs");
  return examination.take();
}

}  // namespace hydro
