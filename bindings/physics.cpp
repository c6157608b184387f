// physics.cpp: water, pipes, outlets, risers and the site, and the laws of their losses.

#include "hydro/physics/friction.hpp"
#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/physics/outlet.hpp"
#include "hydro/physics/pipe.hpp"
#include "hydro/physics/riser.hpp"
#include "hydro/physics/site.hpp"
#include "hydro/physics/water.hpp"

#include "bindings/bindings.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

void bind_water(py::module_& module) {
  Record<Water>("Water", "The water as it is described; what is not given follows from 20 degC.")
      .field("temperature", &Water::temperature, "0 to 100 degC; default 20 degC.")
      .field("density", &Water::density, "Instead of that of the temperature.")
      .field(
          "kinematic_viscosity", &Water::kinematic_viscosity, "Instead of that of the temperature.")
      .description(module);
  Record<WaterProperties>("WaterProperties", "The water as it is calculated with.")
      .field("density", &WaterProperties::density, "A Density.")
      .field("kinematic_viscosity", &WaterProperties::kinematic_viscosity, "A KinematicViscosity.")
      .field("vapour_pressure", &WaterProperties::vapour_pressure, "Absolute.")
      .result(module);
  def(module,
      "density_of_water",
      &density_of_water,
      {"temperature"},
      "Density at atmospheric pressure, against IAPWS-95. InvalidInput outside 0 to 100 degC.\n\n"
      ">>> round(density_of_water(20 * degC).to(kg_per_m3), 1)\n998.2");
  def(module,
      "viscosity_of_water",
      &viscosity_of_water,
      {"temperature"},
      "Dynamic viscosity at atmospheric pressure. InvalidInput outside 0 to 100 degC.\n\n"
      ">>> round(viscosity_of_water(20 * degC).to(mPa_s), 3)\n1.002");
  def(module,
      "vapour_pressure_of_water",
      &vapour_pressure_of_water,
      {"temperature"},
      "Absolute. InvalidInput outside 0 to 100 degC.\n\n"
      ">>> round(vapour_pressure_of_water(20 * degC).to(kPa), 2)\n2.34");
  def(module,
      "properties",
      &properties,
      {"water"},
      "The water as it is calculated with. InvalidInput when problems(water) is not empty.\n\n"
      ">>> properties(Water(density=1000 * kg_per_m3)).density\n1000 * kg_per_m3");
}

void bind_pipe(py::module_& module) {
  Record<Pipe>("Pipe", "A bore and exactly one wall.")
      .field("name", &Pipe::name, "For reports.")
      .field("inside_diameter", &Pipe::inside_diameter, "0.1 mm to 10 m.")
      .field("hazen_williams", &Pipe::hazen_williams, "Coefficient C, 10 to 200 [-].")
      .field("roughness", &Pipe::roughness, "Darcy-Weisbach, equivalent sand grain; 0 is smooth.")
      .field("darcy_factor", &Pipe::darcy_factor, "Darcy-Weisbach with this constant factor f [-].")
      .field("pressure_rating", &Pipe::pressure_rating, "At 73 degF.")
      .field("kind",
             &Pipe::kind,
             "One of pipe_kinds(), for its derating when warm; empty: not derated.")
      .description(module);
  Record<NominalSize>("NominalSize", "What a standard says of one size of one kind of pipe.")
      .field("size", &NominalSize::size, "1-1/4 in")
      .field("kind", &NominalSize::kind, "PVC SDR 26, also when asked as Class 160.")
      .field("outside_diameter",
             &NominalSize::outside_diameter,
             "Average; None where the inside is controlled.")
      .field("minimum_wall", &NominalSize::minimum_wall, "A Length.")
      .field("inside_diameter", &NominalSize::inside_diameter, "Average.")
      .field("hazen_williams", &NominalSize::hazen_williams, "Of new pipe [-].")
      .field("pressure_rating",
             &NominalSize::pressure_rating,
             "Water at 73 degF; None where not known.")
      .result(module);
  def(module,
      "area",
      &area,
      {"pipe"},
      "Area of the bore.\n\n"
      ">>> round(area(Pipe(inside_diameter=2 * inch)).to(cm2), 2)\n"
      "20.27");
  def(module,
      "nominal_size",
      &nominal_size,
      {"size", "kind"},
      "What the standard says of one size, a text with a unit, of one of pipe_kinds(). "
      "InvalidInput "
      "naming the kinds or sizes that would be accepted.\n\n"
      ">>> nominal_size(\"1-1/2 in\", \"PVC Class 160\").inside_diameter\n1.734 * inch");
  def(module,
      "nominal_pipe",
      &nominal_pipe,
      {"size", "kind"},
      "The same, ready for a layout: average bore, usual coefficient, rating.\n\n"
      ">>> nominal_pipe(\"3 in\", \"PVC Class 160\").hazen_williams\n150.0");
  def(module,
      "temperature_factor",
      &temperature_factor,
      {"kind", "temperature"},
      "What is left of the pressure rating when pipe and water are warm, 0 to 1 [-]; None where "
      "nothing is known. InvalidInput outside -40 to 100 degC.\n\n"
      ">>> round(temperature_factor(\"PVC Sch 40\", 110 * degF), 2)\n0.5");
  def(module,
      "pipe_kinds",
      &pipe_kinds,
      {},
      "The kinds of pipe that nominal_pipe knows, as they are spelt in a file.\n\n"
      ">>> pipe_kinds()[0]\n'PVC Sch 40'");
  def(module,
      "pipe_sizes",
      &pipe_sizes,
      {"kind"},
      "The sizes of a kind, from small to large.\n\n"
      ">>> pipe_sizes(\"PVC Sch 40\")[:3]\n['1/2 in', '3/4 in', '1 in']");
}

void bind_friction(py::module_& module) {
  def(module,
      "velocity",
      &velocity,
      {"pipe", "flow"},
      "Mean over the bore.\n\n"
      ">>> speed = velocity(nominal_pipe(\"2 in\", \"PVC Sch 40\"), 30 * gpm)\n"
      ">>> round(speed.to(ft_per_s), 2)\n"
      "2.92");
  def(module,
      "reynolds_number",
      &reynolds_number,
      {"pipe", "flow", "water"},
      "Re = V D / nu [-].\n\n"
      ">>> pipe = Pipe(inside_diameter=50 * mm, roughness=0 * mm)\n"
      ">>> round(reynolds_number(pipe, 1 * lps, properties(Water())), -2)\n"
      "25400.0");
  def(module,
      "colebrook_white",
      &colebrook_white,
      {"reynolds", "relative_roughness"},
      "Friction factor of turbulent flow [-]: C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939), "
      "equation 13. Re 100 to 1e12, k/D 0 to 0.05; InvalidInput outside.\n\n"
      ">>> round(colebrook_white(1e5, 0), 4)\n0.018");
  def(module,
      "friction_loss",
      &friction_loss,
      {"pipe", "length", "flow", "water"},
      "Head lost to the wall over a length, by the law that the pipe's wall chooses: "
      "Hazen-Williams h = 10.67 L Q^1.852 / (C^1.852 D^4.8704) [m, m3/s], or Darcy-Weisbach.\n\n"
      ">>> lateral = Pipe(inside_diameter=1.754 * inch, hazen_williams=150)\n"
      ">>> loss = friction_loss(lateral, 100 * ft, 20 * gpm, properties(Water()))\n"
      ">>> round(loss.to(ft), 2)\n1.62");
  def(module,
      "fitting_loss",
      &fitting_loss,
      {"pipe", "loss_coefficient", "flow"},
      "Head lost in a fitting, h = K V^2 / (2 g).\n\n"
      ">>> round(fitting_loss(nominal_pipe(\"2 in\", \"PVC Sch 40\"), 0.5, 30 * gpm).to(ft), 3)\n"
      "0.066");
}

void bind_outlet(py::module_& module) {
  Record<Compensating>("Compensating", "The pressures between which an outlet holds its flow.")
      .field("low", &Compensating::low, "A Pressure.")
      .field("high", &Compensating::high, "A Pressure.")
      .description(module);
  Record<RatedPoint>("RatedPoint", "One line of a catalogue.")
      .field("pressure", &RatedPoint::pressure, "At the device.")
      .field("flow", &RatedPoint::flow, "A Flow.")
      .description(module);
  auto outlet =
      Record<Outlet>(
          "Outlet",
          "A kind of outlet, rated in one way: a flow at a pressure, a nozzle, or points.")
          .field("name", &Outlet::name, "For reports.")
          .field("flow", &Outlet::flow, "This flow ...")
          .field("at", &Outlet::at, "... at this pressure, with ...")
          .field(
              "exponent", &Outlet::exponent, "... this flow exponent [-], 0 to 1.5, default 0.5.")
          .field("rated", &Outlet::rated, "It is judged against this pressure, default `at`.")
          .field("minimum", &Outlet::minimum, "It does not turn or form its pattern below.")
          .field("maximum", &Outlet::maximum, "It mists above.")
          .field("compensating", &Outlet::compensating, "Beside `flow`; then `rated` is its low.")
          .field("nozzle", &Outlet::nozzle, "Instead of `flow`: its bore; needs `rated`.")
          .field("discharge_coefficient",
                 &Outlet::discharge_coefficient,
                 "Cd of the nozzle [-], usually 0.95 to 0.98.")
          .field("points", &Outlet::points, "Instead of `flow`: two or more; needs `rated`.")
          .field("body_bore", &Outlet::body_bore, "What is left when the nozzle is lost.")
          .field("regulator",
                 &Outlet::regulator,
                 "Below it: holds the device at this pressure at most.")
          .description(module);
  method(
      outlet, "rated_pressure", &Outlet::rated_pressure, {}, "The pressure it is judged against.");
  def(
      module,
      "discharge",
      [](const Outlet& kind, const Pressure& pressure, const Density& density) {
        return discharge(kind, pressure, density);
      },
      {"outlet", "pressure", {"density", py::cast(998.2 * kg_per_m3)}},
      "Flow at this pressure at the device; 0 for a pressure of 0 or less. The density is for a "
      "nozzle. InvalidInput for problems(outlet).\n\n"
      ">>> discharge(Outlet(flow=1 * gpm, at=20 * psi), 80 * psi)\n2 * gpm");
  Record<PointsFit>("PointsFit", "The power law that meets a catalogue's points best.")
      .field("flow", &PointsFit::flow, "At ...")
      .field("at", &PointsFit::at, "... the first point's pressure.")
      .field("exponent", &PointsFit::exponent, "[-]")
      .field("largest_misfit",
             &PointsFit::largest_misfit,
             "Of the catalogue's flow, over all points [-].")
      .result(module);
  def(module,
      "is_below",
      &is_below,
      {"pressure", "limit"},
      "Whether it is below by more than a millionth.\n\n"
      ">>> is_below(24.9 * psi, 25 * psi)\n"
      "True");
  def(module,
      "is_above",
      &is_above,
      {"pressure", "limit"},
      "Whether it is above by more than a millionth.\n\n"
      ">>> is_above(25.0000001 * psi, 25 * psi)\n"
      "False");
}

void bind_places(py::module_& module) {
  auto riser =
      Record<Riser>("Riser", "How high an outlet stands and, with bore and wall, what that costs.")
          .field("height", &Riser::height, "Of the outlet above the line.")
          .field("inside_diameter",
                 &Riser::inside_diameter,
                 "With exactly one of the three walls of Pipe.")
          .field("hazen_williams", &Riser::hazen_williams, "Coefficient C [-].")
          .field("roughness", &Riser::roughness, "Darcy-Weisbach; 0 is smooth.")
          .field("darcy_factor", &Riser::darcy_factor, "Constant Darcy-Weisbach factor f [-].")
          .field("loss_coefficient",
                 &Riser::loss_coefficient,
                 "K on the riser's velocity head [-], default 0.")
          .description(module);
  method(riser, "pipe", &Riser::pipe, {}, "The riser as a pipe; None where no bore is known.");
  Record<Site>("Site", "The place, and the units its people read.")
      .field("name", &Site::name, "For reports.")
      .field("altitude", &Site::altitude, "-500 to 6000 m, default sea level.")
      .field("units", &Site::units, "In which reports are written, default \"si\".")
      .description(module);
  def(module,
      "atmospheric_pressure",
      &atmospheric_pressure,
      {"site"},
      "Absolute pressure of the air: ICAO Standard Atmosphere, Doc 7488.\n\n"
      ">>> atmospheric_pressure(Site()).to(kPa)\n101.325");
}

}  // namespace

void bind_physics(py::module_& module) {
  bind_water(module);
  bind_pipe(module);
  bind_friction(module);
  bind_outlet(module);
  bind_places(module);
  def(module,
      "head",
      static_cast<Length (*)(const Pressure&, const Density&)>(&head),
      {"pressure", "density"},
      "Head of a column of water, H = p / (rho g).\n\n"
      ">>> round(head(1 * psi, 1000 * kg_per_m3).to(ft), 3)\n"
      "2.307");
  def(module,
      "pressure",
      static_cast<Pressure (*)(const Length&, const Density&)>(&pressure),
      {"head", "density"},
      "Pressure at the foot of a column of water, p = rho g H.\n\n"
      ">>> pressure(10 * m, 1000 * kg_per_m3).to(kPa)\n"
      "98.0665");
}

}  // namespace hydro::bindings
