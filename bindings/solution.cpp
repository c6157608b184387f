// solution.cpp: solving, solutions, checks and reports.

#include "hydro/solver/solution.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/text/report.hpp"

#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include <pybind11/stl.h>

namespace hydro::bindings {
namespace {

const char* name_of(OutletState state) {
  switch (state) {
    case OutletState::works:
      return "works";
    case OutletState::below_minimum:
      return "below_minimum";
    case OutletState::above_maximum:
      return "above_maximum";
    case OutletState::dry:
      return "dry";
    case OutletState::closed:
      return "closed";
    case OutletState::broken:
      return "broken";
  }
  return "";
}

std::vector<std::string> names_of(const LineSolution& line) {
  std::vector<std::string> names;
  for (const OutletState state : line.state) names.emplace_back(name_of(state));
  return names;
}

/// An outlet that a check found, with the pressures that tell why.
template <class Finding>
py::class_<Finding> bind_finding(py::module_& module,
                                 const char* name,
                                 const char* what,
                                 const char* first_key,
                                 Pressure Finding::*first) {
  return py::class_<Finding>(module, name, what)
      .def_readonly("line", &Finding::line, "Name of the line.")
      .def_readonly("outlet", &Finding::outlet, "Counts from 1, from the inlet on.")
      .def_readonly(first_key, first, "Found, a Pressure.", py::return_value_policy::copy)
      .def("__repr__", [=](const Finding& self) {
        return std::string("<hydro.") + name + ": " + self.line + ", outlet " +
               std::to_string(self.outlet) + ", " + first_key + " " + to_python(self.*first) + ">";
      });
}

void bind_check(py::module_& module) {
  constexpr auto copy = py::return_value_policy::copy;
  bind_finding(module,
               "BelowRated",
               "An outlet under its rated pressure.",
               "pressure",
               &BelowRated::pressure)
      .def_readonly("rated", &BelowRated::rated, "Wanted, a Pressure.", copy);
  bind_finding(module,
               "BelowMinimum",
               "An outlet under the pressure at which it works.",
               "pressure",
               &BelowMinimum::pressure)
      .def_readonly("minimum", &BelowMinimum::minimum, "Wanted, a Pressure.", copy);
  bind_finding(module,
               "AboveMaximum",
               "An outlet over its highest pressure.",
               "pressure",
               &AboveMaximum::pressure)
      .def_readonly("maximum", &AboveMaximum::maximum, "Accepted, a Pressure.", copy);
  bind_finding(module,
               "DryOutlet",
               "An outlet that no water reaches.",
               "line_pressure",
               &DryOutlet::line_pressure);

  py::class_<Check>(module, "Check", "What is wrong with a solved layout; the lists go by line.")
      .def_readonly("below_rated", &Check::below_rated, "list[BelowRated]; dry ones are in it.")
      .def_readonly(
          "below_minimum", &Check::below_minimum, "list[BelowMinimum]; dry ones are in it.")
      .def_readonly("above_maximum", &Check::above_maximum, "list[AboveMaximum]")
      .def_readonly("dry", &Check::dry, "list[DryOutlet]");
  module.def(
      "check",
      [](const Solution& solution) { return check(solution); },
      py::arg("solution"),
      "Every outlet against its rated, lowest and highest pressure.");
}

}  // namespace

void bind_solution(py::module_& module) {
  py::class_<LineSolution>(
      module,
      "LineSolution",
      "One line. Each series has one entry an outlet, from the inlet on; index 0 is outlet 1.")
      .def_readonly("name", &LineSolution::name, "As in the layout.")
      .def_readonly("distance", &LineSolution::distance, "From the inlet, a LengthSeries.")
      .def_readonly("pressure", &LineSolution::pressure, "At the device, gauge, a PressureSeries.")
      .def_readonly("line_pressure",
                    &LineSolution::line_pressure,
                    "In the pipe below the outlet, gauge, a PressureSeries.")
      .def_readonly("flow", &LineSolution::flow, "Out of the outlet, a FlowSeries.")
      .def_readonly("velocity",
                    &LineSolution::velocity,
                    "In the pipe, arriving at the outlet, a VelocitySeries.")
      .def_property_readonly("state",
                             &names_of,
                             "list[str]: works, below_minimum, above_maximum, dry, closed or "
                             "broken.")
      .def("__repr__", [](const LineSolution& self) {
        return "<hydro.LineSolution: " + self.name + ", outlets " +
               std::to_string(self.state.size()) + ">";
      });

  py::class_<Residuals>(module,
                        "Residuals",
                        "How well the equations are met: the largest figures left, as shares of "
                        "their scales [-].")
      .def_readonly("mass", &Residuals::mass, "At every place.")
      .def_readonly("energy", &Residuals::energy, "In every length of pipe.")
      .def_readonly("outlet", &Residuals::outlet, "In the head at every outlet.")
      .def_readonly("steps", &Residuals::steps, "Newton steps taken.")
      .def_readonly("last_resort", &Residuals::last_resort, "The plain steps did not suffice.");

  py::class_<Solution>(module, "Solution", "Pressure and flow at every outlet.")
      .def("line",
           &Solution::line,
           py::arg("name"),
           py::return_value_policy::reference_internal,
           "The line of this name. InvalidInput when there is none.")
      .def_property_readonly("inflow", &Solution::inflow, "Out of the supply, a Flow.")
      .def_property_readonly("supply_pressure", &Solution::supply_pressure, "Gauge, a Pressure.")
      .def_property_readonly("residuals", &Solution::residuals, "How well the equations are met.")
      .def_property_readonly("notes",
                             &Solution::notes,
                             "list[str]: where an input or a result lies outside the range of a "
                             "law.")
      .def("__repr__", [](const Solution& self) {
        return "<hydro.Solution: lines " + std::to_string(self.lines().size()) + ", inflow " +
               to_python(self.inflow()) + ">";
      });
  module.def(
      "solve",
      [](const Layout& layout) { return solve(layout); },
      py::arg("layout"),
      py::call_guard<py::gil_scoped_release>(),
      "Pressure and flow everywhere. NotSolved when the equations could not be met. Other threads "
      "run meanwhile.");

  bind_check(module);

  module.def(
      "report",
      [](const Solution& solution) { return report(solution); },
      py::arg("solution"),
      "The layout as it is, told to the person who waters from it.");
  module.def(
      "report",
      [](const Solution& before, const Solution& after) { return report(before, after); },
      py::arg("before"),
      py::arg("after"),
      "What the faults of `after` do to the rest. InvalidInput when the two do not have the same "
      "lines and outlets.");
}

}  // namespace hydro::bindings
