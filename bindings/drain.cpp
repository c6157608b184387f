// drain.cpp: a tank running empty.

#include "hydro/answers/drain.hpp"

#include <optional>
#include <string>

#include "bindings/bindings.hpp"
#include "bindings/others_run.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

void bind_hole(py::module_& module) {
  Record<Hole>("Hole", "A small hole in the bottom or low in the wall; the level counts from it.")
      .field("diameter", &Hole::diameter, "A Length.")
      .field("discharge_coefficient", &Hole::discharge_coefficient, "Cd [-], default 0.62.")
      .description(module);
  def(module,
      "outflow",
      &outflow,
      {"tank", "hole"},
      "At the tank's level, q = Cd a sqrt(2 g level). Needs no surface.\n\n"
      ">>> drum = Tank(level=0.6 * m, diameter=0.35 * m)\n"
      ">>> round(outflow(drum, Hole(diameter=2 * mm)).to(lph), 1)\n"
      "24.1");
  def(
      module,
      "time_to_fall",
      [](const Tank& tank, const Hole& hole, const std::optional<Length>& level) {
        return time_to_fall(tank, hole, level.value_or(Length{}));
      },
      {"tank", "hole", may_be_left_out("level")},
      "Until the level has fallen to this one, 0 to the tank's, default 0.\n\n"
      ">>> drum = Tank(level=0.6 * m, diameter=0.35 * m)\n"
      ">>> round(time_to_fall(drum, Hole(diameter=2 * mm)).to(units.h), 1)\n"
      "4.8");
  def(module,
      "time_to_run_out",
      &time_to_run_out,
      {"tank", "hole", "volume"},
      "Until so much has run out, 0 to all that is above the hole.\n\n"
      ">>> drum = Tank(level=0.6 * m, diameter=0.35 * m)\n"
      ">>> round(time_to_run_out(drum, Hole(diameter=2 * mm), 10 * litre).to(units.min), 1)\n"
      "26.1");
  def(module,
      "level_after",
      &level_after,
      {"tank", "hole", "time"},
      "After this time, 0 or more; 0 when it is empty.\n\n"
      ">>> drum = Tank(level=0.6 * m, diameter=0.35 * m)\n"
      ">>> round(level_after(drum, Hole(diameter=2 * mm), 1 * units.h).to(cm), 1)\n"
      "37.6");
}

void bind_drained(py::module_& module) {
  Record<DrainStep>("DrainStep", "The tank at one moment.")
      .field("level", &DrainStep::level, "Above the tank's outlet.")
      .field("time", &DrainStep::time, "Since the beginning.")
      .field("outflow", &DrainStep::outflow, "Out of the tank.")
      .field("run_out", &DrainStep::run_out, "Since the beginning.")
      .result(module);
  Record<OutletFall>("OutletFall", "The first outlet of all that comes to this state.")
      .field("fall", &OutletFall::fall, "The state.")
      .field("line", &OutletFall::line, "Name of the line.")
      .field("outlet", &OutletFall::outlet, "Counts from 1, from the inlet on.")
      .field("level", &OutletFall::level, "Of the tank.")
      .field("time", &OutletFall::time, "0: it is so from the beginning.")
      .result(module);
  Record<LowestMouth>("LowestMouth",
                      "The lowest place at which water leaves: when the tank stands no higher, "
                      "nothing flows.")
      .field("line", &LowestMouth::line, "Name of the line.")
      .field("outlet", &LowestMouth::outlet, "None: a leak or an open end.")
      .field("level", &LowestMouth::level, "Above the tank's outlet; may be negative.")
      .result(module);
  auto drained =
      Record<Drain>("Drain", "A tank from its level to the end.")
          .field("steps", &Drain::steps, "First the beginning, last the end.")
          .field("first_falls", &Drain::first_falls, "In the order of time.")
          .field("end", &Drain::end, "Why there.")
          .field("lowest_mouth", &Drain::lowest_mouth, "None: everything is closed.")
          .field("time_error", &Drain::time_error, "Estimate, share of the whole time [-].")
          .field("solves", &Drain::solves, "Of the layout.")
          .result(module);
  method(
      drained,
      "time",
      [](const Drain& self) {
        if (self.steps.empty())
          throw py::value_error("steps: there are none; drain the tank again");
        return self.time();
      },
      {},
      "From the beginning to the end.");
  const DrainOptions defaults;
  def(
      module,
      "drain",
      [](const Layout& layout,
         const std::optional<Length>& to_level,
         double least_outflow,
         int levels,
         double tolerance) {
        const OthersRun meanwhile;
        return drain(layout,
                     {.to_level = to_level,
                      .least_outflow = least_outflow,
                      .levels = levels,
                      .tolerance = tolerance});
      },
      {"layout",
       may_be_left_out("to_level", Passing::by_name),
       {"least_outflow", py::cast(defaults.least_outflow), Passing::by_name},
       {"levels", py::cast(defaults.levels), Passing::by_name},
       {"tolerance", py::cast(defaults.tolerance), Passing::by_name}},
      "A layout's tank, whose surface is known, running empty through the lines. InvalidInput, "
      "NotSolved, and NotDrained when the time is not known as well as asked for.\n"
      "to_level: default until least_outflow. least_outflow: share of the outflow at first, 0 to "
      "0.5: no more comes. levels: that are reported, 2 to 1000. tolerance: accepted error, share "
      "of the time, 1e-12 to 0.01.\n\n"
      ">>> pipe = nominal_pipe(\"1 in\", \"PVC Sch 40\")\n"
      ">>> row = Line(name=\"beds\", pipe=pipe, outlet=Outlet(flow=8 * lph, at=1 * mH2O),\n"
      "...            count=20, spacing=1 * m)\n"
      ">>> tank = Tank(level=1.2 * m, diameter=0.6 * m)\n"
      ">>> emptied = drain(Layout(Supply(tank=tank), [row]), to_level=0.2 * m)\n"
      ">>> emptied.end, round(emptied.time().to(units.h), 1)\n"
      "(DrainEnd.level_reached, 2.3)");
}

}  // namespace

void bind_drain(py::module_& module) {
  bind_hole(module);
  bind_drained(module);
}

}  // namespace hydro::bindings
