// answers.cpp: answers to questions about a solved layout.

#include "hydro/answers/assumptions.hpp"
#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/answers/hand_method.hpp"
#include "hydro/answers/uniformity.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr const char* name_of_line = "Name of the line.";
constexpr const char* counts = "Counts from 1, from the inlet on.";

/// An outlet that a check found: `<hydro.BelowRated: row 1, outlet 7, pressure 20 * psi>`.
template <class Finding>
void bind_finding(py::module_& module,
                  const char* name,
                  const char* text,
                  const char* first_key,
                  Pressure Finding::*first,
                  const char* limit_key = nullptr,
                  Pressure Finding::*limit = nullptr) {
  Record<Finding> record(name, text);
  record.field("line", &Finding::line, name_of_line)
      .field("outlet", &Finding::outlet, counts)
      .field(first_key, first, "As it is found, gauge.");
  if (limit_key) record.field(limit_key, limit, "What it is judged by.");
  record.result(module, [=](const Finding& self) {
    return std::string("<hydro.") + name + ": " + self.line + ", outlet " +
           std::to_string(self.outlet) + ", " + first_key + " " + to_python(self.*first) + ">";
  });
}

void bind_check(py::module_& module) {
  bind_finding(module,
               "BelowRated",
               "An outlet under its rated pressure.",
               "pressure",
               &BelowRated::pressure,
               "rated",
               &BelowRated::rated);
  bind_finding(module,
               "BelowMinimum",
               "An outlet under the pressure at which it works.",
               "pressure",
               &BelowMinimum::pressure,
               "minimum",
               &BelowMinimum::minimum);
  bind_finding(module,
               "AboveMaximum",
               "An outlet over its highest pressure.",
               "pressure",
               &AboveMaximum::pressure,
               "maximum",
               &AboveMaximum::maximum);
  bind_finding(module,
               "DryOutlet",
               "An outlet to which the pressure in the line does not lift water.",
               "line_pressure",
               &DryOutlet::line_pressure);
  Record<Variation>("Variation",
                    "How evenly outlets of one kind water, on one line or (line empty) on all.")
      .field("line", &Variation::line, name_of_line)
      .field("outlet_name", &Variation::outlet_name, "Of the kind.")
      .field("outlets", &Variation::outlets, "How many let out water.")
      .field("pressure", &Variation::pressure, "(largest - smallest) / average [-].")
      .field("flow", &Variation::flow, "(largest - smallest) / largest [-].")
      .field("too_wide", &Variation::too_wide, "Beyond what is accepted.")
      .result(module);
  Record<FastWater>("FastWater", "The fastest water in a line, where it is too fast.")
      .field("line", &FastWater::line, name_of_line)
      .field("velocity", &FastWater::velocity, "A Velocity.")
      .result(module);
  Record<BelowAtmosphere>("BelowAtmosphere",
                          "The lowest pressure in a line, where it is below the atmosphere's.")
      .field("line", &BelowAtmosphere::line, name_of_line)
      .field("pressure", &BelowAtmosphere::pressure, "Gauge.")
      .field("column_separates",
             &BelowAtmosphere::column_separates,
             "The water would boil: the answer does not hold there.")
      .result(module);
  Record<OverRating>("OverRating", "The highest pressure in a pipe, where it is above its rating.")
      .field("line", &OverRating::line, name_of_line)
      .field("pipe_name", &OverRating::pipe_name, "Name of the pipe.")
      .field("pressure", &OverRating::pressure, "Gauge.")
      .field("rating", &OverRating::rating, "What is left of it at the water's temperature.")
      .result(module);
  auto found = Record<Check>("Check", "What is wrong with a solved layout; the lists go by line.")
                   .field("below_rated", &Check::below_rated, "Dry ones are among them.")
                   .field("below_minimum", &Check::below_minimum, "Dry ones are among them.")
                   .field("above_maximum", &Check::above_maximum, "Of outlets that have a maximum.")
                   .field("dry", &Check::dry, "No water reaches them.")
                   .field("variations", &Check::variations, "All, also the good ones.")
                   .field("fast_water", &Check::fast_water, "One a line.")
                   .field("below_atmosphere", &Check::below_atmosphere, "One a line.")
                   .field("over_rating", &Check::over_rating, "One a pipe of a line.")
                   .field("supply_limits", &Check::supply_limits, "That are passed.")
                   .field("further_supply_limits",
                          &Check::further_supply_limits,
                          "Of each further supply, in the order of the layout.")
                   .field("lifts_no_water",
                          &Check::lifts_no_water,
                          "Outlets are open, and the supply brings water to none of them.")
                   .field("all_is_shut",
                          &Check::all_is_shut,
                          "No outlet is open: a pump runs against shut valves.")
                   .result(module);
  method(found,
         "every_outlet_serves",
         &Check::every_outlet_serves,
         {},
         "No outlet is below its rated or lowest pressure, or above its highest.");
  const CheckOptions defaults;
  def(
      module,
      "check",
      [](const Solution& solution,
         double pressure_variation,
         double flow_variation,
         const Velocity& velocity) {
        return check(solution,
                     {.pressure_variation = pressure_variation,
                      .flow_variation = flow_variation,
                      .velocity = velocity});
      },
      {"solution",
       {"pressure_variation", py::cast(defaults.pressure_variation), Passing::by_name},
       {"flow_variation", py::cast(defaults.flow_variation), Passing::by_name},
       {"velocity", py::cast(defaults.velocity), Passing::by_name}},
      "Every outlet against its rated, lowest and highest pressure; how evenly a line waters; "
      "water "
      "too fast; pressure below the atmosphere's, or above a pipe's rating; a supply that brings "
      "no "
      "water, or is asked more than it should do.\n"
      "The keywords are the largest that is accepted: variations [-], the velocity in lines "
      "(default 5 ft/s); InvalidInput when they are not above 0. All three are common practice, no "
      "source.\n\n"
      ">>> spray = Outlet(flow=1.2 * gpm, at=30 * psi)\n"
      ">>> row = Line(name=\"row 1\", pipe=nominal_pipe(\"1 in\", \"PVC Sch 40\"), outlet=spray,\n"
      "...            count=24, spacing=20 * ft)\n"
      ">>> short = check(solve(Layout(Supply(pressure=40 * psi), [row]))).below_rated\n"
      ">>> short[0].outlet, round(short[-1].pressure.to(psi), 1)\n"
      "(5, 17.4)");
}

void bind_comparison(py::module_& module) {
  Record<LineChange>("LineChange",
                     "What changed at the outlets of one line, after less before; index 0 is "
                     "outlet 1.")
      .field("line", &LineChange::line, name_of_line)
      .field("pressure", &LineChange::pressure, "At the device.")
      .field("line_pressure", &LineChange::line_pressure, "In the pipe.")
      .field("flow", &LineChange::flow, "Out of the outlet.")
      .result(module);
  Record<Comparison>("Comparison", "What changed, line by line and in sum.")
      .field("lines", &Comparison::lines, "In the order of the layout.")
      .field("newly_below_rated",
             &Comparison::newly_below_rated,
             "Pressures as they are after; likewise in the next two.")
      .field("newly_below_minimum", &Comparison::newly_below_minimum, "Under their minimum.")
      .field("newly_dry", &Comparison::newly_dry, "No water reaches them.")
      .field("escaping",
             &Comparison::escaping,
             "More than before, out of broken outlets, leaks and open ends.")
      .field("missing",
             &Comparison::missing,
             "Less than before, out of outlets that are neither broken nor capped after.")
      .field("inflow_before", &Comparison::inflow_before, "Out of all supplies.")
      .field("inflow_after", &Comparison::inflow_after, "Out of all supplies.")
      .field("supply_before", &Comparison::supply_before, "Gauge.")
      .field("supply_after", &Comparison::supply_after, "Gauge.")
      .result(module);
  def(module,
      "compare",
      &compare,
      {"before", "after"},
      "What a fault does to the rest: the same layout solved before and after. InvalidInput when "
      "the two do not have the same lines and outlets.\n\n"
      ">>> lateral = nominal_pipe(\"1-1/2 in\", \"PVC Class 160\")\n"
      ">>> row = Line(name=\"row 1\", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),\n"
      "...            count=24, spacing=20 * ft)\n"
      ">>> before = solve(Layout(Supply(pressure=40 * psi), [row]))\n"
      ">>> after = solve(before.layout.with_fault(capped(\"row 1\", 7)))\n"
      ">>> round(compare(before, after).lines[0].pressure[0].to(psi), 2)\n"
      "0.03");
}

template <class Q>
void bind_uniformity_of(py::module_& module, const char* name) {
  using U = Uniformity<Q>;
  auto measures = Record<U>(name, "How even some amounts are; 100 % is perfectly even.")
                      .field("count", &U::count, "Of amounts.")
                      .field("mean", &U::mean, "Arithmetic.")
                      .field("least", &U::least, "The smallest amount.")
                      .field("low_quarter", &U::low_quarter, "Mean of the lowest quarter.")
                      .field("christiansen", &U::christiansen, "CU [%].")
                      .field("distribution", &U::distribution, "DU of the low quarter [%].")
                      .field("statistical", &U::statistical, "Us [%]; None of one amount.")
                      .result(module);
  method(measures,
         "field_emission",
         &U::field_emission,
         {},
         "What DU is called where the amounts are flows measured at emitters [%].");
}

void bind_uniformity(py::module_& module) {
  bind_uniformity_of<Flow>(module, "FlowUniformity");
  bind_uniformity_of<Volume>(module, "VolumeUniformity");
  bind_uniformity_of<Length>(module, "LengthUniformity");
  const Signature signature("uniformity", {"amounts"});
  define_function(
      module,
      "uniformity",
      [signature](py::handle, const py::args& args, const py::kwargs& kwargs) -> py::object {
        py::handle amounts;
        signature.bind(args, kwargs, &amounts);
        if (!py::isinstance<py::iterable>(amounts))
          refuse({"amounts"}, amounts, "list", "write several of Flow", "write a list");
        const py::list all(py::reinterpret_borrow<py::object>(amounts));
        const auto are = [&]<class Q>(const Q*) {
          return !all.empty() && py::isinstance<Q>(all[0]);
        };
        const auto measured = [&]<class Q>(const Q*) {
          return py::cast(uniformity(Type<std::vector<Q>>::from(all, {"amounts"})));
        };
        if (are(static_cast<const Volume*>(nullptr)))
          return measured(static_cast<const Volume*>(nullptr));
        if (are(static_cast<const Length*>(nullptr)))
          return measured(static_cast<const Length*>(nullptr));
        return measured(static_cast<const Flow*>(nullptr));
      },
      "uniformity(amounts)\n--\n\n"
      "uniformity(amounts: FlowSeries | Iterable[Flow]) -> FlowUniformity\n"
      "uniformity(amounts: VolumeSeries | Iterable[Volume]) -> VolumeUniformity\n"
      "uniformity(amounts: LengthSeries | Iterable[Length]) -> LengthUniformity\n\n"
      "Of measured flows, or of volumes or depths caught in cans that are alike in the same time: "
      "CU after J. E. Christiansen (1942), DU of the low quarter, statistical. InvalidInput for no "
      "amounts, all 0, or one that is negative or not finite.\n\n"
      ">>> round(uniformity([1.0, 1.1, 0.9, 1.0] * gpm).christiansen, 1)\n95.0");
  Record<OutletUniformity>("OutletUniformity",
                           "Outlets of one kind on one line or, with an empty line, on all.")
      .field("line", &OutletUniformity::line, name_of_line)
      .field("outlet_name", &OutletUniformity::outlet_name, "Of the kind.")
      .field("flows", &OutletUniformity::flows, "Their measures.")
      .result(module);
  def(module,
      "uniformity_of_outlets",
      &uniformity_of_outlets,
      {"solution"},
      "Each kind on each line, in their order; then each kind that stands on several lines, "
      "together. Broken and capped outlets are left out; dry ones count.\n\n"
      ">>> lateral = nominal_pipe(\"1-1/2 in\", \"PVC Class 160\")\n"
      ">>> row = Line(name=\"row 1\", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),\n"
      "...            count=24, spacing=20 * ft)\n"
      ">>> before = solve(Layout(Supply(pressure=40 * psi), [row]))\n"
      ">>> round(uniformity_of_outlets(before)[0].flows.christiansen)\n"
      "99");
  def(
      module,
      "design_emission_uniformity",
      [](const Uniformity<Flow>& computed,
         std::optional<double> manufacturing_variation,
         std::optional<int> outlets_per_plant) {
        return design_emission_uniformity(computed,
                                          {.manufacturing_variation = manufacturing_variation,
                                           .outlets_per_plant = outlets_per_plant});
      },
      {"computed",
       {"manufacturing_variation", py::none(), Passing::by_name},
       {"outlets_per_plant", py::none(), Passing::by_name}},
      "EU = 100 (1 - 1.27 Cv / sqrt(Np)) (least q) / mean [%], J. Keller and D. Karmeli (1974), "
      "from memory. computed: from a solution; measured flows have the makers' variation in them.\n"
      "manufacturing_variation: Cv of new outlets, 0 to 0.5 [-]. outlets_per_plant: Np. Both are "
      "needed: InvalidInput.\n\n"
      ">>> flows = uniformity([0.5, 0.52, 0.48, 0.5] * gph)\n"
      ">>> round(design_emission_uniformity(flows, manufacturing_variation=0.05, "
      "outlets_per_plant=4), 1)\n"
      "93.0");
}

}  // namespace

void bind_answers(py::module_& module) {
  bind_check(module);
  bind_comparison(module);
  bind_uniformity(module);
  def(module,
      "assumptions",
      &assumptions,
      {"layout", "units"},
      "What was not given and therefore assumed, one sentence each.\n\n"
      ">>> row = Line(name=\"main\", pipe=nominal_pipe(\"3 in\", \"PVC Sch 40\"), length=100 * m)\n"
      ">>> assumptions(Layout(Supply(pressure=3 * bar), [row]), \"si\")[0]\n"
      "\"the supply's elevation is 0; all others count from it\"");
  def(
      module,
      "multiple_outlet_factor",
      [](int outlets, double flow_exponent, FirstOutlet first) {
        return multiple_outlet_factor(outlets, flow_exponent, first);
      },
      {"outlets", "flow_exponent", {"first", py::str("at_one_spacing")}},
      "Christiansen's F [-], with which the loss along a line is worked out by hand: J. E. "
      "Christiansen, Bulletin 670, University of California (1942). flow_exponent: of the friction "
      "law, 1 to 2; 1.852 for Hazen-Williams. The answers of the library do not use it.\n\n"
      ">>> round(multiple_outlet_factor(10, 1.852), 3)\n0.402");
}

}  // namespace hydro::bindings
