// solution.cpp: solving, and what was solved.

#include "hydro/solver/solution.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/text/report.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/others_run.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr auto inside = py::return_value_policy::reference_internal;

void bind_parts(py::module_& module) {
  Record<Opening>("Opening", "A leak, or where a line ends in the air.")
      .field("fault", &Opening::fault, "Index into Layout.faults_on the line, from 0 on.")
      .field("distance", &Opening::distance, "From the inlet.")
      .field("line_pressure", &Opening::line_pressure, "In the pipe there, gauge.")
      .field("flow", &Opening::flow, "That escapes.")
      .result(module);
  Record<PipeExtremes>("PipeExtremes", "What one kind of pipe bears along a line.")
      .field("pipe_name", &PipeExtremes::pipe_name, "Of the line's pipe, or of a first reach.")
      .field("start", &PipeExtremes::start, "From the inlet: where it begins.")
      .field("end", &PipeExtremes::end, "From the inlet: as far as it goes, or as there is water.")
      .field("highest_velocity", &PipeExtremes::highest_velocity, "A Velocity.")
      .field("lowest_pressure", &PipeExtremes::lowest_pressure, "Gauge.")
      .field("highest_pressure", &PipeExtremes::highest_pressure, "Gauge.")
      .result(module);
  Record<RegulatorSolution>("RegulatorSolution", "The regulator at the inlet of a line.")
      .field("state", &RegulatorSolution::state, "What it does.")
      .field("pressure", &RegulatorSolution::pressure, "Beyond it; 0 for one that is stuck open.")
      .field("drop", &RegulatorSolution::drop, "That it takes.")
      .result(module);
  Record<LineSolution>(
      "LineSolution",
      "One line. Each series has one entry an outlet, from the inlet on; index 0 is outlet 1.")
      .field("name", &LineSolution::name, "As in the layout.")
      .field("distance", &LineSolution::distance, "Of the outlets from the inlet.")
      .field("pressure", &LineSolution::pressure, "At the device, gauge.")
      .field("line_pressure", &LineSolution::line_pressure, "In the pipe below the outlet, gauge.")
      .field("flow", &LineSolution::flow, "Out of the outlet.")
      .field("velocity",
             &LineSolution::velocity,
             "In the pipe on the inlet's side of the outlet; below 0: towards the inlet.")
      .field("state", &LineSolution::state, "What each outlet does.")
      .field(
          "inflow", &LineSolution::inflow, "Into the line through its inlet; below 0: out of it.")
      .field("end_flow",
             &LineSolution::end_flow,
             "Out of its far end into the line that this joins; below 0: in.")
      .field("inlet_velocity",
             &LineSolution::inlet_velocity,
             "In its first pipe; below 0: out of the inlet.")
      .field("inlet_pressure",
             &LineSolution::inlet_pressure,
             "In the pipe that feeds it, where it begins, gauge.")
      .field("end_pressure", &LineSolution::end_pressure, "At its far end, gauge.")
      .field("openings", &LineSolution::openings, "From the inlet on.")
      .field("pipes", &LineSolution::pipes, "From the inlet on; empty where no water comes.")
      .field("shut", &LineSolution::shut, "On purpose, by a valve or the sets that run.")
      .field("inlet_shut",
             &LineSolution::inlet_shut,
             "Nothing passes its inlet, whatever the pressures.")
      .field("regulator", &LineSolution::regulator, "None: it has none, or no water comes.")
      .field("check_valve", &LineSolution::check_valve, "None: it has none, or no water comes.")
      .result(module, [](const LineSolution& self) {
        return "<hydro.LineSolution: " + self.name + ", outlets " +
               std::to_string(self.state.size()) + ">";
      });
  auto residuals =
      Record<Residuals>(
          "Residuals",
          "How well the equations are met: the largest figures left, as shares of their "
          "scales (the largest flow in any pipe; the larger of the supply's head and the "
          "rise and fall of the ground). Each is at most 1e-12.")
          .field("mass", &Residuals::mass, "At every place [-].")
          .field("energy", &Residuals::energy, "In every length of pipe [-].")
          .field("outlet", &Residuals::outlet, "In the head at every outlet [-].")
          .field("steps", &Residuals::steps, "Newton steps taken.")
          .field("last_resort", &Residuals::last_resort, "The plain steps did not suffice.")
          .result(module, [](const Residuals& self) {
            return py::str("<hydro.Residuals: mass {:.1e}, energy {:.1e}, outlet {:.1e}, steps {}>")
                .format(self.mass, self.energy, self.outlet, self.steps);
          });
  method(residuals,
         "are_met",
         &Residuals::are_met,
         {},
         "Whether each figure is within 1e-12. If not, nothing of the solution is an answer.");
}

/// Reports and tables take it for granted.
bool fit(const OperatingPoint& point, const Supply& supply) {
  return point.pumps.size() ==
         std::size_t{supply.pump.has_value()} + std::size_t{supply.second_pump.has_value()};
}
bool fit(const std::vector<OperatingPoint>& points, const std::vector<Supply>& supplies) {
  return std::ranges::equal(points, supplies, [](const OperatingPoint& point, const Supply& its) {
    return fit(point, its);
  });
}
bool fit(const std::vector<LineSolution>& lines, const Layout& layout) {
  if (lines.size() != layout.lines().size()) return false;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const LineSolution& line = lines[i];
    const auto outlets = static_cast<std::size_t>(layout.lines()[i].outlet_count());
    for (const std::size_t size : {line.distance.size(),
                                   line.pressure.size(),
                                   line.line_pressure.size(),
                                   line.flow.size(),
                                   line.velocity.size(),
                                   line.state.size()})
      if (size != outlets) return false;
    const std::size_t faults = layout.faults_on(i).size();
    for (const Opening& opening : line.openings)
      if (opening.fault >= faults) return false;
    if (line.regulator && !layout.lines()[i].regulator) return false;
    if (line.check_valve && !layout.lines()[i].check_valve.value_or(false)) return false;
  }
  return true;
}

void bind_class(py::module_& module) {
  py::class_<Solution> solution(
      module,
      "Solution",
      "All lines solved, with the residuals that prove it. str() of it is the report.");
  property(solution, "layout", &Solution::layout, "Layout", "What was solved.", inside);
  property(
      solution, "water", &Solution::water, "WaterProperties", "As it was calculated with.", inside);
  property(solution,
           "lines",
           &Solution::lines,
           "list[LineSolution]",
           "In the order of the layout.",
           inside);
  property(
      solution, "supply", &Solution::supply, "OperatingPoint", "What the first one does.", inside);
  property(solution,
           "further_supplies",
           &Solution::further_supplies,
           "list[OperatingPoint]",
           "What each of the further ones does, in the order of the layout.",
           inside);
  property(solution, "inflow", &Solution::inflow, "Flow", "Out of all supplies together.");
  property(solution,
           "supply_pressure",
           &Solution::supply_pressure,
           "Pressure",
           "At the start of the lines that the first supply feeds, gauge.");
  property(solution,
           "residuals",
           &Solution::residuals,
           "Residuals",
           "How well the equations are met.",
           inside);
  property(solution,
           "notes",
           &Solution::notes,
           "list[str]",
           "Where an input or a result lies outside the range in which a law was validated.");
  method(solution,
         "line",
         &Solution::line,
         {"name"},
         "The line of this name. InvalidInput when there is none.",
         inside);
  solution.def(
      "__repr__",
      [](const Solution& self) {
        return "<hydro.Solution: lines " + std::to_string(self.lines().size()) + ", inflow " +
               to_python(self.inflow()) + ">";
      },
      "__repr__(self) -> str");
  solution.def(
      "__str__", [](const Solution& self) { return report(self); }, "__str__(self) -> str");
  copy_is_itself(solution);
  solution.def(py::pickle(
      [](const Solution& self) {
        return py::make_tuple(self.layout(),
                              self.water(),
                              self.lines(),
                              self.supply(),
                              self.residuals(),
                              self.notes(),
                              self.further_supplies());
      },
      [](const py::tuple& state) {
        const auto& layout = Type<Layout>::from(state[0], {"layout"});
        auto lines = Type<std::vector<LineSolution>>::from(state[2], {"lines"});
        if (!fit(lines, layout))
          throw py::value_error("lines: are not those of the layout; solve it again");
        auto supply = Type<OperatingPoint>::from(state[3], {"supply"});
        if (!fit(supply, layout.supply()))
          throw py::value_error("supply: is not that of the layout; solve it again");
        auto further = Type<std::vector<OperatingPoint>>::from(state[6], {"further_supplies"});
        if (!fit(further, layout.further_supplies()))
          throw py::value_error("further_supplies: are not those of the layout; solve it again");
        return Solution(layout,
                        Type<WaterProperties>::from(state[1], {"water"}),
                        std::move(lines),
                        std::move(supply),
                        Type<Residuals>::from(state[4], {"residuals"}),
                        Type<std::vector<std::string>>::from(state[5], {"notes"}),
                        std::move(further));
      }));
}

}  // namespace

void bind_solution(py::module_& module) {
  bind_parts(module);
  bind_class(module);
  def(
      module,
      "solve",
      [](const Layout& layout, int newton_steps) {
        const OthersRun meanwhile;
        return solve(layout, {.newton_steps = newton_steps});
      },
      {"layout", {"newton_steps", py::int_(SolveOptions{}.newton_steps), Passing::by_name}},
      "Pressure and flow everywhere. Other threads run meanwhile.\n"
      "newton_steps: at most, 0 to 10000; then the last resort, with as many for each of its "
      "ramps.\n"
      "NotSolved when the equations could not be met; it carries what was reached.\n\n"
      ">>> lateral = Pipe(inside_diameter=1.754 * inch, hazen_williams=150)\n"
      ">>> spray = Outlet(flow=1.2 * gpm, at=30 * psi)\n"
      ">>> row = Line(name=\"row 1\", pipe=lateral, outlet=spray, count=24, spacing=20 * ft)\n"
      ">>> solution = solve(Layout(Supply(pressure=40 * psi), [row]))\n"
      ">>> solution.line(\"row 1\").pressure.to(psi).round(1)[[0, 23]]\n"
      "array([39.7, 37. ])\n"
      ">>> max(solution.residuals.mass, solution.residuals.energy) <= 1e-12\n"
      "True");
}

}  // namespace hydro::bindings
