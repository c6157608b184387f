// supply_answers.cpp: answers about the supply: how it is set, what it can run, where its pressure
// goes.

#include "hydro/answers/pressure_budget.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/answers/sets_together.hpp"
#include "hydro/answers/throttle_up.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/others_run.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr auto inside = py::return_value_policy::reference_internal;
constexpr const char* name_of_line = "Name of the line.";
constexpr const char* counts = "Counts from 1, from the inlet on.";

/// A small farm for the examples in the texts.
const std::string farm =
    ">>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),\n"
    "...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)\n"
    ">>> pipe = nominal_pipe(\"1-1/2 in\", \"PVC Class 160\")\n"
    ">>> row = Line(name=\"row 1\", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),\n"
    "...            count=10, spacing=36 * ft)\n"
    ">>> farm = Layout(Supply(pump=pump), [row, row.replace(name=\"row 2\")],\n"
    "...               sets=[WateringSet(name=\"one\", lines=[\"row 1\"]),\n"
    "...                     WateringSet(name=\"two\", lines=[\"row 2\"])])\n";

void bind_budget(py::module_& module) {
  Record<WeakestOutlet>("WeakestOutlet", "An outlet and how it stands to its rating.")
      .field("line", &WeakestOutlet::line, name_of_line)
      .field("outlet", &WeakestOutlet::outlet, counts)
      .field("pressure", &WeakestOutlet::pressure, "At the device, gauge.")
      .field("rated", &WeakestOutlet::rated, "What it is judged by.")
      .result(module);
  def(module,
      "weakest_outlet",
      &weakest_outlet,
      {"solution"},
      ("The outlet with the smallest share of its rated pressure, of dry ones that with the least "
       "pressure in its line; None: there is no outlet to judge (broken, capped and shut ones are "
       "not).\n\n" +
       farm + ">>> weakest_outlet(solve(farm)).outlet\n10")
          .c_str());
  Record<PressureBudgetEntry>("PressureBudgetEntry",
                              "One stretch of the way from the source to an outlet.")
      .field("part",
             &PressureBudgetEntry::part,
             "\"source\", \"pump\", \"suction\", \"filter\", \"line\" or \"riser\".")
      .field("line", &PressureBudgetEntry::line, "Its name, where the part is one.")
      .field("gain", &PressureBudgetEntry::gain, "By a pump, or given at the start.")
      .field("rise",
             &PressureBudgetEntry::rise,
             "That the ground, the lift or the riser takes; negative downhill.")
      .field("loss", &PressureBudgetEntry::loss, "By friction and fittings.")
      .field("regulator", &PressureBudgetEntry::regulator, "That a regulator takes.")
      .field("left", &PressureBudgetEntry::left, "At its end, gauge.")
      .result(module);
  Record<PressureBudget>("PressureBudget",
                         "Where the pressure goes on its way from the source to one outlet.")
      .field("line", &PressureBudget::line, name_of_line)
      .field("outlet", &PressureBudget::outlet, counts)
      .field("entries", &PressureBudget::entries, "From the source to the outlet.")
      .field("left", &PressureBudget::left, "At the device, gauge.")
      .field("rated", &PressureBudget::rated, "Of the device.")
      .result(module);
  def(
      module,
      "pressure_budget",
      [](const Solution& solution,
         const std::optional<std::string>& line,
         const std::optional<int>& outlet) {
        if (line.has_value() != outlet.has_value())
          throw py::type_error(line ? "pressure_budget needs outlet beside line"
                                    : "pressure_budget needs line beside outlet");
        return line ? pressure_budget(solution, *line, *outlet) : pressure_budget(solution);
      },
      {"solution", may_be_left_out("line"), may_be_left_out("outlet")},
      ("What raises and what takes the pressure on the way from the source to this outlet; without "
       "line and outlet, to the weakest one. InvalidInput for one that is not there, or that no "
       "water comes to.\n\n" +
       farm +
       ">>> [entry.part for entry in pressure_budget(solve(farm), \"row 1\", 10).entries]\n"
       "['pump', 'line']")
          .c_str());
}

/// What only the library makes, and holds solutions, which are read where they are.
void bind_settings(py::module_& module) {
  py::class_<Setting> setting(
      module, "Setting", "How the supply is set for a wanted pressure, and what comes of it.");
  property(
      setting,
      "reached",
      [](const Setting& self) { return self.reached; },
      "Whether what was wanted is there.");
  property(
      setting,
      "speed",
      [](const Setting& self) { return self.speed; },
      "To which the engine is set; None: a held pressure.");
  property(
      setting,
      "pressure",
      [](const Setting& self) { return self.pressure; },
      "Before the filter: that must be held, gauge.");
  property(
      setting,
      "limits",
      [](const Setting& self) { return self.limits; },
      "Of the supply, that are passed.");
  property(
      setting,
      "solution",
      [](const Setting& self) -> const Solution& { return self.solution; },
      "Solution",
      "At that setting.",
      inside);
  special(setting, "__repr__", "str", [](const Setting& self) {
    return py::str("<hydro.Setting: reached {}, speed {}, pressure {}, limits {}>")
        .format(self.reached, self.speed, self.pressure, self.limits);
  });
  copy_is_itself(setting);
  setting.def(py::pickle(
      [](const Setting& self) {
        return py::make_tuple(self.reached, self.speed, self.pressure, self.limits, self.solution);
      },
      [](const py::tuple& state) {
        return Setting{Type<bool>::from(state[0], {"reached"}),
                       Type<std::optional<RotationalSpeed>>::from(state[1], {"speed"}),
                       Type<Pressure>::from(state[2], {"pressure"}),
                       Type<std::vector<SupplyLimit>>::from(state[3], {"limits"}),
                       Type<Solution>::from(state[4], {"solution"})};
      }));
  def(module,
      "can_be_set",
      &can_be_set,
      {"supply"},
      "Whether a supply can be set: a held pressure, or pumps whose curve_speed is known.\n\n"
      ">>> can_be_set(Supply(tank=Tank(level=2 * m)))\n"
      "False");
  def(
      module,
      "set_for_gauge",
      [](const Layout& layout, const Pressure& reading) {
        const OthersRun meanwhile;
        return set_for_gauge(layout, reading);
      },
      {"layout", "reading"},
      ("The engine speed, or the held pressure, for this reading at the supply's gauge; without a "
       "gauge, for this pressure before the filter. InvalidInput when the supply is a tank, a "
       "hydrant or a pump whose curve_speed is not known.\n\n" +
       farm +
       ">>> setting = set_for_gauge(farm.watering(\"one\"), 45 * psi)\n"
       ">>> round(setting.solution.supply_pressure.to(psi), 6)\n"
       "45.0")
          .c_str());
  def(
      module,
      "set_for_weakest",
      [](const Layout& layout, const Pressure& pressure) {
        const OthersRun meanwhile;
        return set_for_weakest(layout, pressure);
      },
      {"layout", "pressure"},
      ("The engine speed, or the held pressure, for this pressure at the weakest outlet: that with "
       "the lowest pressure.\n\n" +
       farm +
       ">>> setting = set_for_weakest(farm.watering(\"one\"), 25 * psi)\n"
       ">>> round(setting.solution.line(\"row 1\").pressure.min().to(psi), 6)\n"
       "25.0")
          .c_str());
  def(
      module,
      "set_for_rated",
      [](const Layout& layout, double share) {
        const OthersRun meanwhile;
        return set_for_rated(layout, share);
      },
      {"layout", {"share", py::float_(1.0)}},
      ("The engine speed, or the held pressure, for at least this share [-] of its rated pressure "
       "at every outlet.\n\n" +
       farm +
       ">>> check(set_for_rated(farm.watering(\"one\")).solution).below_rated\n"
       "[]")
          .c_str());
  def(
      module,
      "set_for_rated_if_possible",
      [](const Layout& layout, double share) {
        const OthersRun meanwhile;
        return set_for_rated_if_possible(layout, share);
      },
      {"layout", {"share", py::float_(1.0)}},
      ("Likewise; but a supply that cannot be set is taken as it is, `reached` saying whether it "
       "is enough.\n\n" +
       farm +
       ">>> row_on_tank = farm.with_supply(Supply(tank=Tank(level=2 * m)))\n"
       ">>> set_for_rated_if_possible(row_on_tank).reached\n"
       "False")
          .c_str());
}

void bind_throttling(py::module_& module) {
  py::class_<Throttling> throttling(
      module,
      "Throttling",
      "What a fault does at unchanged engine speed, and what more speed makes good.");
  property(
      throttling,
      "reading",
      [](const Throttling& self) { return self.reading; },
      "Of the gauge, or before the filter, when all was sound.");
  const auto part = [&throttling](
                        const char* name, auto member, const char* type, const char* text) {
    property(
        throttling,
        name,
        [member](const Throttling& self) -> const auto& { return self.*member; },
        type,
        text,
        inside);
  };
  part("sound", &Throttling::sound, "Solution", "As it was.");
  part("broken", &Throttling::broken, "Solution", "At unchanged speed.");
  part("throttled_up",
       &Throttling::throttled_up,
       "Setting",
       "Until the gauge reads as when all was sound.");
  part(
      "at_unchanged_speed", &Throttling::at_unchanged_speed, "Comparison", "Of broken with sound.");
  part("after_throttling_up",
       &Throttling::after_throttling_up,
       "Comparison",
       "Of throttled_up with sound: what is newly below here, throttling up does not cure.");
  special(throttling, "__repr__", "str", [](const Throttling& self) {
    return py::str("<hydro.Throttling: reading {}, throttled_up {}>")
        .format(self.reading, self.throttled_up);
  });
  copy_is_itself(throttling);
  throttling.def(py::pickle(
      [](const Throttling& self) {
        return py::make_tuple(self.reading,
                              self.sound,
                              self.broken,
                              self.throttled_up,
                              self.at_unchanged_speed,
                              self.after_throttling_up);
      },
      [](const py::tuple& state) {
        return Throttling{Type<Pressure>::from(state[0], {"reading"}),
                          Type<Solution>::from(state[1], {"sound"}),
                          Type<Solution>::from(state[2], {"broken"}),
                          Type<Setting>::from(state[3], {"throttled_up"}),
                          Type<Comparison>::from(state[4], {"at_unchanged_speed"}),
                          Type<Comparison>::from(state[5], {"after_throttling_up"})};
      }));
  def(
      module,
      "throttle_up",
      [](const Layout& sound, const std::vector<Fault>& faults) {
        const OthersRun meanwhile;
        return throttle_up(sound, faults);
      },
      {"sound", "faults"},
      ("The faults at unchanged speed, and after the engine is throttled up until the gauge reads "
       "as before. sound: with the speed at which it runs. InvalidInput for a fault that does not "
       "fit.\n\n" +
       farm +
       ">>> answer = throttle_up(farm.watering(\"one\"), [end_open(\"row 1\")])\n"
       ">>> answer.broken.supply_pressure < answer.reading\n"
       "True")
          .c_str());
}

void bind_sets(py::module_& module) {
  auto together =
      Record<SetsTogether>("SetsTogether", "Watering sets that would run at once.")
          .field("sets", &SetsTogether::sets, "By name.")
          .field("reached", &SetsTogether::reached, "Every outlet has its share.")
          .field("speed", &SetsTogether::speed, "That is needed; None: a held pressure.")
          .field("pressure", &SetsTogether::pressure, "Before the filter, gauge.")
          .field("gauge_reading", &SetsTogether::gauge_reading, "None: there is no gauge.")
          .field("flow", &SetsTogether::flow, "Out of the supply.")
          .field("weakest", &SetsTogether::weakest, "With the smallest share of its rating.")
          .field("fastest_line", &SetsTogether::fastest_line, name_of_line)
          .field("fastest", &SetsTogether::fastest, "Velocity in it.")
          .field("too_fast", &SetsTogether::too_fast, "Beyond what is accepted.")
          .field("limits", &SetsTogether::limits, "Of the supply, that are passed.")
          .result(module);
  method(together,
         "can_run",
         &SetsTogether::can_run,
         {},
         "Every outlet is served and no limit of the supply is passed; fast water is a caution.");
  const SetsTogetherOptions defaults;
  def(
      module,
      "sets_together",
      [](const Layout& layout, double share, const Velocity& velocity) {
        const OthersRun meanwhile;
        return sets_together(layout, {.share = share, .velocity = velocity});
      },
      {"layout",
       {"share", py::cast(defaults.share), Passing::by_name},
       {"velocity", py::cast(defaults.velocity), Passing::by_name}},
      ("Every set alone, then every two, last all of them: the speed or pressure that gives every "
       "outlet its share, and whether any limit is passed. InvalidInput when the layout has no "
       "sets.\n"
       "share: of its rated pressure at every outlet [-], default 1. velocity: largest accepted in "
       "lines, default 5 ft/s (common practice).\n\n" +
       farm +
       ">>> [(together.sets, together.can_run()) for together in sets_together(farm)]\n"
       "[(['one'], True), (['two'], True), (['one', 'two'], True)]")
          .c_str());
}

}  // namespace

void bind_supply_answers(py::module_& module) {
  bind_budget(module);
  bind_settings(module);
  bind_throttling(module);
  bind_sets(module);
}

}  // namespace hydro::bindings
