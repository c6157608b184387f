// supply.cpp: what feeds the lines, and what it does at a flow.

#include "hydro/physics/supply.hpp"

#include "hydro/physics/operating_point.hpp"
#include "hydro/physics/outlet.hpp"
#include "hydro/physics/pump.hpp"
#include "hydro/physics/pump_readings.hpp"
#include "hydro/physics/site.hpp"
#include "hydro/physics/supply_limit.hpp"
#include "hydro/physics/valve.hpp"
#include "hydro/physics/water.hpp"
#include "hydro/quantities/error.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

void bind_pump(py::module_& module) {
  Record<PumpPoint>("PumpPoint",
                    "One point of a pump's catalogue; the head is of the water pumped.")
      .field("flow", &PumpPoint::flow, "A Flow.")
      .field("head", &PumpPoint::head, "A Length.")
      .description(module);
  Record<EfficiencyPoint>("EfficiencyPoint", "One point of a pump's efficiency.")
      .field("flow", &EfficiencyPoint::flow, "A Flow.")
      .field("efficiency",
             &EfficiencyPoint::efficiency,
             "Water power over shaft power, above 0 to 1 [-].")
      .description(module);
  Record<Pump>("Pump", "A pump and the engine that turns it.")
      .field("points", &Pump::points, "Two or more, flow rising and head falling.")
      .field("shape", &Pump::shape, "Between the points, default \"through points\".")
      .field("curve_speed", &Pump::curve_speed, "At which the points were taken.")
      .field("speed", &Pump::speed, "At which it runs, default curve_speed.")
      .field("top_speed", &Pump::top_speed, "Of the engine.")
      .field("least_flow", &Pump::least_flow, "Usable, at curve_speed.")
      .field("most_flow", &Pump::most_flow, "Usable, at curve_speed.")
      .field("npsh_required", &Pump::npsh_required, "At curve_speed: two or more, never falling.")
      .field("efficiency", &Pump::efficiency, "In the whole usable range [-], or ...")
      .field("efficiencies", &Pump::efficiencies, "... by flow at curve_speed: two or more.")
      .field("power", &Pump::power, "The most that the engine gives to the shaft.")
      .field("droop", &Pump::droop, "Share of speed lost at that power [-], default 0.")
      .description(module);
  Record<PumpFit>("PumpFit", "How a pump's curve meets its points.")
      .field("head_at_rest", &PumpFit::head_at_rest, "Without flow, at curve_speed.")
      .field("largest_misfit",
             &PumpFit::largest_misfit,
             "Of the points' heads; 0 where it goes through them.")
      .result(module);
  def(
      module,
      "pump_head",
      [](const Pump& pump, const Flow& flow, std::optional<RotationalSpeed> speed) {
        return pump_head(pump, flow, speed);
      },
      {"pump", "flow", may_be_left_out("speed")},
      "Head at a flow with the pump turning at its speed, or at this one; without droop. "
      "InvalidInput for problems(pump), or a speed without a curve_speed.\n\n"
      ">>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),\n"
      "...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)\n"
      ">>> round(pump_head(pump, 60 * gpm).to(ft), 6)\n"
      "141.0\n"
      ">>> round(pump_head(pump, 30 * gpm, 1300 * rpm).to(ft), 6)\n"
      "35.25");
}

void bind_fit(py::module_& module) {
  const Signature signature("fit_of", {"points"});
  define_function(
      module,
      "fit_of",
      [signature](py::handle, const py::args& args, const py::kwargs& kwargs) -> py::object {
        py::handle points;
        signature.bind(args, kwargs, &points);
        if (py::isinstance<Pump>(points)) return py::cast(fit_of(points.cast<const Pump&>()));
        return py::cast(fit_of(Type<std::vector<RatedPoint>>::from(points, {"points"})));
      },
      "fit_of(points)\n--\n\n"
      "fit_of(points: Iterable[RatedPoint]) -> PointsFit\n"
      "fit_of(points: Pump) -> PumpFit\n\n"
      "How a curve meets the points of a catalogue: least squares of ln q on ln p for an outlet's, "
      "InvalidInput for fewer than two of them, or pressures that are all the same; or that of a "
      "pump, which has its own points, InvalidInput for problems(pump).\n\n"
      ">>> fit = fit_of([RatedPoint(pressure=20 * psi, flow=1 * gpm),\n"
      "...               RatedPoint(pressure=80 * psi, flow=2 * gpm)])\n"
      ">>> round(fit.exponent, 6)\n0.5\n"
      ">>> pump = Pump(points=[PumpPoint(flow=60 * gpm, head=141 * ft),\n"
      "...                     PumpPoint(flow=100 * gpm, head=125 * ft)])\n"
      ">>> round(fit_of(pump).head_at_rest.to(ft), 6)\n"
      "150.0");
}

void bind_parts(py::module_& module) {
  Record<Suction>("Suction", "The way of the water into the pump.")
      .field("lift", &Suction::lift, "Pump above the water, -30 m to 10 m.")
      .field("pipe", &Suction::pipe, "None: no loss.")
      .field("length", &Suction::length, "Of the pipe.")
      .field("loss_coefficient",
             &Suction::loss_coefficient,
             "K on the pipe's velocity head [-], default 0.")
      .description(module);
  Record<Filter>("Filter", "A filter or strainer: it takes this pressure at this flow.")
      .field("loss", &Filter::loss, "A Pressure.")
      .field("at", &Filter::at, "A Flow.")
      .description(module);
  Record<Gauge>("Gauge", "The pressure gauge at the supply.")
      .field("height", &Gauge::height, "Above the supply's elevation, default 0.")
      .field("range", &Gauge::range, "The end of its scale.")
      .field("after_filter", &Gauge::after_filter, "Default before it.")
      .description(module);
  auto tank = Record<Tank>("Tank", "A tank, a drum or a pond that feeds by its own height.")
                  .field("level", &Tank::level, "Of the water above the outlet.")
                  .field("diameter", &Tank::diameter, "Of a round one, or ...")
                  .field("area", &Tank::area, "... of the water's surface.")
                  .description(module);
  method(tank, "surface", &Tank::surface, {}, "Area of the water's surface; None: not known.");
  Record<Hydrant>("Hydrant", "A town main or a shared hydrant, known by two readings.")
      .field("pressure_at_rest", &Hydrant::pressure_at_rest, "Nothing flows.")
      .field("residual_pressure", &Hydrant::residual_pressure, "... while ...")
      .field("flow", &Hydrant::flow, "... this flow runs.")
      .description(module);
  def(module,
      "hydrant_pressure",
      &hydrant_pressure,
      {"hydrant", "flow"},
      "What the gauge shows while this flow, 0 or more, runs; below 0 where the main does not give "
      "as much. InvalidInput for problems(hydrant).\n\n"
      ">>> main = Hydrant(pressure_at_rest=60 * psi, residual_pressure=40 * psi, flow=500 * gpm)\n"
      ">>> round(hydrant_pressure(main, 500 * gpm).to(psi), 6)\n"
      "40.0");
  def(module,
      "hydrant_flow",
      &hydrant_flow,
      {"hydrant", "pressure"},
      "The flow that brings the gauge down to this pressure, 0 to the one at rest: NFPA 291. "
      "InvalidInput for problems(hydrant).\n\n"
      ">>> main = Hydrant(pressure_at_rest=60 * psi, residual_pressure=40 * psi, flow=500 * gpm)\n"
      ">>> round(hydrant_flow(main, 20 * psi).to(gpm))\n"
      "727");
  Record<Supply>("Supply",
                 "What feeds the lines: one of a held pressure, a pump, a tank, a hydrant.")
      .field("pressure", &Supply::pressure, "Held, gauge, before the filter; or ...")
      .field("pump", &Supply::pump, "... this, or ...")
      .field("tank", &Supply::tank, "... this, or ...")
      .field("hydrant", &Supply::hydrant, "... this.")
      .field("second_pump", &Supply::second_pump, "Beside the first.")
      .field("arrangement", &Supply::arrangement, "Of the two, default \"parallel\".")
      .field("suction", &Supply::suction, "Of the pumps, both together.")
      .field("filter", &Supply::filter, "Between the source and the lines.")
      .field("gauge", &Supply::gauge, "The one that people read.")
      .field("elevation", &Supply::elevation, "Of the source, default 0.")
      .field("name", &Supply::name, "Of a further one, for fed_by; the first has none.")
      .description(module);
}

void bind_operating_point(py::module_& module) {
  Record<PumpDuty>("PumpDuty", "What one pump does.")
      .field("flow", &PumpDuty::flow, "Through it.")
      .field("head", &PumpDuty::head, "That it gives.")
      .field("speed", &PumpDuty::speed, "Droop taken off; None: not known.")
      .field("range", &PumpDuty::range, "Where the flow lies in the usable range.")
      .field("least_flow", &PumpDuty::least_flow, "Usable, at this speed.")
      .field("most_flow", &PumpDuty::most_flow, "Usable, at this speed.")
      .field("water_power", &PumpDuty::water_power, "Given to the water.")
      .field("efficiency", &PumpDuty::efficiency, "Inside the usable range only [-].")
      .field("shaft_power", &PumpDuty::shaft_power, "Inside the usable range only.")
      .field("npsh_required", &PumpDuty::npsh_required, "At this flow and speed.")
      .result(module);
  Record<OperatingPoint>("OperatingPoint", "The whole supply at one flow.")
      .field("flow", &OperatingPoint::flow, "Out of the supply; below 0: into it.")
      .field(
          "pressure", &OperatingPoint::pressure, "At the start of the lines that it feeds, gauge.")
      .field("source_pressure",
             &OperatingPoint::source_pressure,
             "Before the filter: at the outlet of the pump or the tank, gauge.")
      .field("gauge_reading", &OperatingPoint::gauge_reading, "None: there is no gauge.")
      .field("filter_loss", &OperatingPoint::filter_loss, "That the filter takes.")
      .field("suction_loss", &OperatingPoint::suction_loss, "Friction and fittings.")
      .field("npsh_available",
             &OperatingPoint::npsh_available,
             "Of a pump, of the first in series; None: there is no pump.")
      .field("pumps", &OperatingPoint::pumps, "None, one or two.")
      .field("held_shut",
             &OperatingPoint::held_shut,
             "Other supplies hold its check valve shut: the pressure is theirs.")
      .result(module);
  def(module,
      "takes_water_in",
      &takes_water_in,
      {"supply"},
      "Whether it takes water in where other supplies push it: a held pressure and a tank do.\n\n"
      ">>> takes_water_in(Supply(tank=Tank(level=20 * ft)))\n"
      "True");
  def(
      module,
      "operating_point",
      [](const Supply& supply,
         const Flow& flow,
         const std::optional<Water>& water,
         const std::optional<Site>& site) {
        return operating_point(supply, flow, water.value_or(Water{}), site.value_or(Site{}));
      },
      {"supply", "flow", may_be_left_out("water"), may_be_left_out("site")},
      "What the supply does while this flow leaves it, 0 or more, unless it takes_water_in. "
      "InvalidInput for problems of the parts.\n\n"
      ">>> main = Hydrant(pressure_at_rest=60 * psi, residual_pressure=40 * psi, flow=500 * gpm)\n"
      ">>> round(operating_point(Supply(hydrant=main), 250 * gpm).pressure.to(psi), 1)\n"
      "54.5");
}

std::size_t pump_count(const Supply& supply) {
  return std::size_t{supply.pump.has_value()} + std::size_t{supply.second_pump.has_value()};
}

/// Each duty is taken to be that of one of the supply's pumps.
const OperatingPoint& with_pumps_of(const Supply& supply, const OperatingPoint& point) {
  if (point.pumps.size() > pump_count(supply))
    throw InvalidInput("point",
                       "has " + std::to_string(point.pumps.size()) + " pumps, but the supply has " +
                           std::to_string(pump_count(supply)));
  return point;
}

void bind_limits(py::module_& module) {
  def(
      module,
      "limits_passed",
      [](const Supply& supply, const OperatingPoint& point) {
        return limits_passed(supply, with_pumps_of(supply, point));
      },
      {"supply", "point"},
      "What the supply should not be asked to do and is, each once; a limit that is not given is "
      "not judged. point: as operating_point gives it.\n\n"
      ">>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),\n"
      "...                     PumpPoint(flow=100 * gpm, head=125 * ft)], least_flow=20 * gpm)\n"
      ">>> limits_passed(Supply(pump=pump), operating_point(Supply(pump=pump), 5 * gpm))\n"
      "[SupplyLimit.least_flow]");
}

/// With what it was made of, so that a pickle makes the same again.
struct Made : PumpFromReadings {
  std::vector<PumpReading> given;
  PumpReadingPlace place;
  Water water;
};

Made make(std::vector<PumpReading> readings, PumpReadingPlace place, Water water) {
  PumpFromReadings curve = pump_from_readings(readings, place, water);
  return {std::move(curve), std::move(readings), std::move(place), std::move(water)};
}

void bind_readings(py::module_& module) {
  Record<PumpReading>("PumpReading", "What the gauge showed while this flow ran.")
      .field("gauge", &PumpReading::gauge, "A Pressure.")
      .field("flow", &PumpReading::flow, "0: the valve was closed.")
      .field("gauge_uncertainty",
             &PumpReading::gauge_uncertainty,
             "Standard; None: 3 % of the gauge's range over the square root of 3.")
      .field("flow_uncertainty", &PumpReading::flow_uncertainty, "Standard; None: 3 % of the flow.")
      .description(module);
  Record<HeadEstimate>("HeadEstimate", "A head and its standard uncertainty.")
      .field("head", &HeadEstimate::head, "A Length.")
      .field("uncertainty", &HeadEstimate::uncertainty, "A Length.")
      .result(module);
  py::class_<Made> curve(module, "PumpFromReadings", "The curve that readings make.");
  property(
      curve,
      "pump",
      [](const Made& self) { return self.pump(); },
      "Its points are the readings, its curve_speed the speed; ready for a Supply.");
  property(
      curve,
      "readings",
      [](const Made& self) { return self.readings(); },
      "In the order of the flow, with the uncertainties that were used.");
  property(
      curve, "head_at_rest", [](const Made& self) { return self.head_at_rest(); }, "Without flow.");
  property(
      curve,
      "largest_misfit",
      [](const Made& self) { return self.largest_misfit(); },
      "Largest distance of a reading's head from the curve; 0 for two.");
  method(
      curve,
      "head",
      [](const Made& self, const Flow& flow) { return self.head(flow); },
      {"flow"},
      "At a flow. InvalidInput for one below 0.");
  special(curve, "__repr__", "str", [](const Made& self) {
    return py::str("<hydro.PumpFromReadings: readings {}, head_at_rest {}>")
        .format(self.readings().size(), self.head_at_rest().head);
  });
  copy_is_itself(curve);
  curve.def(py::pickle(
      [](const Made& self) {
        const PumpReadingPlace& place = self.place;
        return py::make_tuple(
            self.given, place.suction, place.gauge, place.filter, place.speed, self.water);
      },
      [](const py::tuple& state) {
        return make(Type<std::vector<PumpReading>>::from(state[0], {"readings"}),
                    {.suction = Type<std::optional<Suction>>::from(state[1], {"suction"}),
                     .gauge = Type<std::optional<Gauge>>::from(state[2], {"gauge"}),
                     .filter = Type<std::optional<Filter>>::from(state[3], {"filter"}),
                     .speed = Type<std::optional<RotationalSpeed>>::from(state[4], {"speed"})},
                    Type<Water>::from(state[5], {"water"}));
      }));
  def(
      module,
      "pump_from_readings",
      [](const std::vector<PumpReading>& readings,
         const std::optional<Suction>& suction,
         const std::optional<Gauge>& gauge,
         const std::optional<Filter>& filter,
         const std::optional<RotationalSpeed>& speed,
         const std::optional<Water>& water) {
        return make(readings,
                    {.suction = suction, .gauge = gauge, .filter = filter, .speed = speed},
                    water.value_or(Water{}));
      },
      {"readings",
       may_be_left_out("suction", Passing::by_name),
       may_be_left_out("gauge", Passing::by_name),
       may_be_left_out("filter", Passing::by_name),
       may_be_left_out("speed", Passing::by_name),
       may_be_left_out("water", Passing::by_name)},
      "A pump's curve H = a - b Q^2 from what was read at its gauge while the flow was measured, "
      "with its uncertainty (JCGM 100:2008, equation 10). InvalidInput for fewer than two "
      "readings, "
      "heads that do not fall, and a gauge whose uncertainty and range are both unknown.\n"
      "suction: None: water at the pump's height, no loss. gauge: None: at the pump's height. "
      "filter: that the gauge may stand behind. speed: at which the pump ran, all the time.\n\n"
      ">>> closed = PumpReading(gauge=50 * psi, flow=0 * gpm)\n"
      ">>> open_to_buckets = PumpReading(gauge=42 * psi, flow=60 * gpm)\n"
      ">>> curve = pump_from_readings([closed, open_to_buckets], gauge=Gauge(range=100 * psi))\n"
      ">>> round(curve.head_at_rest.head.to(ft), 1), round(curve.head_at_rest.uncertainty.to(ft), "
      "1)\n"
      "(115.5, 4.0)");
}

void bind_valve(py::module_& module) {
  Record<Valve>("Valve", "The valve at the inlet of a line, by its kind and how far it is closed.")
      .field("kind", &Valve::kind, "Needed unless it is shut.")
      .field("opening", &Valve::opening, "Default \"open\".")
      .description(module);
  def(module,
      "loss_coefficient",
      &loss_coefficient,
      {"valve"},
      "K on the line's velocity head [-]: B. R. Munson et al., Fundamentals of Fluid Mechanics, "
      "table 8.2, from memory. InvalidInput for problems(valve), or one that is shut.\n\n"
      ">>> loss_coefficient(Valve(kind=\"gate\", opening=\"half closed\"))\n"
      "2.1");
}

}  // namespace

void bind_supply(py::module_& module) {
  bind_pump(module);
  bind_fit(module);
  bind_parts(module);
  bind_operating_point(module);
  bind_limits(module);
  bind_readings(module);
  bind_valve(module);
}

}  // namespace hydro::bindings
