// sensitivity.cpp: what a little more of each input does to one figure.

#include "hydro/answers/sensitivity.hpp"

#include <string>

#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/others_run.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr const char* name_of_figure =
    "Name of the line, or of a further supply; empty: the first.";

void bind_figures(py::module_& module) {
  Record<PressureFigure>("PressureFigure", "A pressure of a solution.")
      .field("kind", &PressureFigure::kind, "Which.")
      .field("at", &PressureFigure::at, name_of_figure)
      .field("outlet", &PressureFigure::outlet, "From 1 on.")
      .description(module);
  Record<FlowFigure>("FlowFigure", "A flow of a solution.")
      .field("kind", &FlowFigure::kind, "Which.")
      .field("at", &FlowFigure::at, name_of_figure)
      .field("outlet", &FlowFigure::outlet, "From 1 on.")
      .description(module);
  def(module,
      "pressure_at",
      &pressure_at,
      {"line", "outlet"},
      "The pressure at an outlet's device.\n\n"
      ">>> pressure_at(\"row 1\", 7)\n"
      "PressureFigure(at='row 1', outlet=7)");
  def(module,
      "line_pressure_at",
      &line_pressure_at,
      {"line", "outlet"},
      "The pressure in the line at an outlet.\n\n"
      ">>> line_pressure_at(\"row 1\", 7).kind\n"
      "PressureFigureKind.line");
  def(module,
      "supply_pressure",
      &supply_pressure,
      {{"supply", py::str()}},
      "The pressure at the start of the lines that a supply feeds; its name, empty: the first.\n\n"
      ">>> supply_pressure().kind\n"
      "PressureFigureKind.supply");
  def(module,
      "gauge_reading",
      &gauge_reading,
      {{"supply", py::str()}},
      "What the gauge of a supply reads; its name, empty: the first.\n\n"
      ">>> gauge_reading(\"creek\").at\n"
      "'creek'");
  def(module,
      "flow_of",
      &flow_of,
      {"line", "outlet"},
      "The flow out of an outlet.\n\n"
      ">>> flow_of(\"row 1\", 7).outlet\n"
      "7");
  def(module,
      "inflow_of",
      &inflow_of,
      {"line"},
      "The flow into a line through its inlet.\n\n"
      ">>> inflow_of(\"row 1\").kind\n"
      "FlowFigureKind.inflow");
  def(module,
      "supply_flow",
      &supply_flow,
      {{"supply", py::str()}},
      "The flow out of one supply; its name, empty: the first.\n\n"
      ">>> supply_flow().kind\n"
      "FlowFigureKind.supply");
  def(module,
      "whole_inflow",
      &whole_inflow,
      {},
      "The flow out of all supplies together.\n\n"
      ">>> whole_inflow()\n"
      "FlowFigure()");
  def(module,
      "is_height",
      &is_height,
      {"input"},
      "Whether it is a height, given by the metre; else a size, given by the share.\n\n"
      ">>> is_height(Input.ground), is_height(\"inside_diameter\")\n"
      "(True, False)");
  def(
      module,
      "words_of",
      [](Input input) { return std::string(words_of(input)); },
      {"input"},
      "As a person says it.\n\n"
      ">>> words_of(Input.inside_diameter)\n"
      "'pipe bore'");
}

template <class Figure>
void bind_sensitivity_of(py::module_& module, const char* influence, const char* sensitivity) {
  using I = Influence<Figure>;
  using S = Sensitivity<Figure>;
  const Length metre = 1 * units::m;
  auto its = Record<I>(influence, "What one input does to a figure.")
                 .field("input", &I::input, "Which.")
                 .field("at", &I::at, name_of_figure)
                 .field("kind", &I::kind, "Name of the kind of pipe or outlet.")
                 .field("number",
                        &I::number,
                        "Of the outlet, the pump, or the pipe where there are several; from 1 on.")
                 .field("by_share", &I::by_share, "Of a size: by one whole share of it.")
                 .field(
                     "by_height",
                     [metre](const I& self) -> Figure { return self.by_height * metre; },
                     [metre](I& self, const Figure& value) { self.by_height = value / metre; },
                     "Of a height: by one metre of it.")
                 .result(module, [influence](const I& self) {
                   return "<hydro." + std::string(influence) + ": " +
                          std::string(words_of(self.input)) +
                          (self.at.empty() ? "" : " of " + self.at) +
                          (self.number > 0 ? ", " + std::to_string(self.number) : "") + ", " +
                          to_python(self.by_one_step()) + ">";
                 });
  method(its,
         "by_one_step",
         &I::by_one_step,
         {},
         "What 1 % more of a size, or a height 0.1 ft (3 cm) larger, does.");
  auto of_all = Record<S>(sensitivity, "One figure and what all inputs do to it.")
                    .field("value", &S::value, "Of the figure.")
                    .field("influences", &S::influences, "Largest by_one_step() first.")
                    .result(module);
  method(
      of_all, "by_line", &S::by_line, {}, "Of all outlets of a line together, and of all reaches.");
  method(of_all,
         "by_kind",
         &S::by_kind,
         {},
         "Of all that is of one kind of pipe or outlet; what has no name of a kind, by line.");
  method(
      of_all,
      "of",
      [](const S& self, Input input, const std::string& at, int number) {
        return self.of(input, at, number);
      },
      {"input", "at", {"number", py::int_(0)}},
      "Zero where it does nothing. number: 0: of all of that line or supply together.");
}

/// @param ask takes a figure of either kind
template <class F>
py::object of_figure(py::handle figure, const F& ask) {
  if (py::isinstance<FlowFigure>(figure)) return py::cast(ask(figure.cast<const FlowFigure&>()));
  if (!py::isinstance<PressureFigure>(figure))
    refuse({"figure"},
           figure,
           "PressureFigure or FlowFigure",
           "write pressure_at(line, outlet)",
           "write pressure_at(line, outlet)");
  return py::cast(ask(figure.cast<const PressureFigure&>()));
}

void bind_asking(py::module_& module) {
  py::class_<Sensitivities> all(
      module,
      "Sensitivities",
      "Sensitivities(solution)\n--\n\n"
      "A solution that is ready to be asked about any number of figures, without solving anew.");
  const Signature init("__init__", {"solution"});
  all.def(py::init([init](const py::args& args, const py::kwargs& kwargs) {
            py::handle solution;
            init.bind(args, kwargs, &solution);
            const Solution& solved = Type<Solution>::from(solution, init.where(0));
            const OthersRun meanwhile;
            return Sensitivities(solved);
          }),
          documentation(init, "__init__", true, {"Solution"}, "None", "").c_str());
  property(all,
           "solution",
           &Sensitivities::solution,
           "Solution",
           "What is asked about.",
           py::return_value_policy::reference_internal);
  const Signature of("of", {"figure"});
  define_method(
      all,
      "of",
      [of](py::handle self, const py::args& args, const py::kwargs& kwargs) {
        py::handle figure;
        of.bind(args, kwargs, &figure);
        const auto& own = Type<Sensitivities>::from(self, {"self"});
        return of_figure(figure, [&](const auto& its) {
          const OthersRun meanwhile;
          return own.of(its);
        });
      },
      "of(self, figure)\n--\n\n"
      "of(self, figure: PressureFigure) -> PressureSensitivity\n"
      "of(self, figure: FlowFigure) -> FlowSensitivity\n\n"
      "What all inputs do to it.");
  special(all, "__repr__", "str", [](const Sensitivities& self) {
    return py::str("<hydro.Sensitivities: of {}>").format(py::cast(self.solution()));
  });
  copy_is_itself(all);
  all.def(py::pickle([](const Sensitivities& self) { return py::make_tuple(self.solution()); },
                     [](const py::tuple& state) {
                       return Sensitivities(Type<Solution>::from(state[0], {"solution"}));
                     }));
  const Signature signature("sensitivity", {"solution", "figure"});
  define_function(
      module,
      "sensitivity",
      [signature](py::handle, const py::args& args, const py::kwargs& kwargs) {
        py::handle given[2];
        signature.bind(args, kwargs, given);
        const Solution& solution = Type<Solution>::from(given[0], signature.where(0));
        return of_figure(given[1], [&](const auto& figure) {
          const OthersRun meanwhile;
          return sensitivity(solution, figure);
        });
      },
      "sensitivity(solution, figure)\n--\n\n"
      "sensitivity(solution: Solution, figure: PressureFigure) -> PressureSensitivity\n"
      "sensitivity(solution: Solution, figure: FlowFigure) -> FlowSensitivity\n\n"
      "What a little more of each input does to one figure: the exact derivative by every bore, "
      "wall, length, loss, outlet, height, regulator and supply. InvalidInput for a line, an "
      "outlet, "
      "a supply or a gauge that is not there, and for a figure that hangs on water that stands "
      "still round a loop.\n\n" +
          example_row +
          ">>> found = sensitivity(solve(farm), pressure_at(\"row 1\", 24))\n"
          ">>> round(found.of(\"supply_pressure\", \"\").by_one_step().to(psi), 2)\n"
          "0.37");
}

}  // namespace

void bind_sensitivity(py::module_& module) {
  bind_figures(module);
  bind_sensitivity_of<Pressure>(module, "PressureInfluence", "PressureSensitivity");
  bind_sensitivity_of<Flow>(module, "FlowInfluence", "FlowSensitivity");
  bind_asking(module);
}

}  // namespace hydro::bindings
