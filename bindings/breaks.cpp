// breaks.cpp: what each outlet would do to the rest if it broke.

#include "hydro/text/breaks_csv.hpp"
#include "hydro/text/breaks_report.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bindings/at_work.hpp"
#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/record.hpp"
#include "bindings/table.hpp"

namespace hydro::bindings {
namespace {

constexpr const char* name_of_line = "Name of the line.";
constexpr const char* counts = "Counts from 1, from the inlet on.";

/// An array of the members of OutletCondition.
py::object array_of(const std::vector<OutletCondition>& conditions, std::size_t columns) {
  if (conditions.empty()) return py::none();
  py::list members(conditions.size());
  for (std::size_t i = 0; i < conditions.size(); ++i) members[i] = py::cast(conditions[i]);
  const py::object array = py::module_::import("numpy").attr("array")(members, "object");
  return array.attr("reshape")(conditions.size() / columns, columns);
}

void bind_parts(py::module_& module) {
  Record<OutletNumber>("OutletNumber", "An outlet, by its line and number.")
      .field("line", &OutletNumber::line, name_of_line)
      .field("outlet", &OutletNumber::outlet, counts)
      .result(module);
  Record<Break>(
      "Break",
      "One outlet broken, and what it does to the others. Counts are of outlets that were "
      "not so before.")
      .field("line", &Break::line, "Of the outlet that is broken.")
      .field("outlet", &Break::outlet, counts)
      .field("escaping",
             &Break::escaping,
             "More than before, out of broken outlets, leaks and open ends.")
      .field("missing",
             &Break::missing,
             "Less than before, out of all outlets that are neither broken nor capped.")
      .field("inflow", &Break::inflow, "Out of all supplies.")
      .field("supply_pressure", &Break::supply_pressure, "Of the first supply, gauge.")
      .field("gauge_reading",
             &Break::gauge_reading,
             "Of the first supply; without a gauge, before the filter.")
      .field("more_below_rated", &Break::more_below_rated, "Those out of work are among them.")
      .field("more_out_of_work", &Break::more_out_of_work, "Below their minimum, or dry.")
      .field("more_dry", &Break::more_dry, "No water reaches them.")
      .field("more_above_maximum", &Break::more_above_maximum, "They mist.")
      .field("weakest", &Break::weakest, "None: there is no other outlet to judge.")
      .result(module, [](const Break& self) {
        return py::str("<hydro.Break: " + self.line + ", outlet " + std::to_string(self.outlet) +
                       ", escaping " + to_python(self.escaping) + ", more below rated " +
                       std::to_string(self.more_below_rated) + ", more out of work " +
                       std::to_string(self.more_out_of_work) + ">");
      });
  Record<LeftOut>("LeftOut", "An outlet of which there is no Break, and why.")
      .field("line", &LeftOut::line, name_of_line)
      .field("outlet", &LeftOut::outlet, counts)
      .field("why", &LeftOut::why, "In words.")
      .result(module);
}

/// Reports and pictures take it for granted.
void expect_whole(const Breaks& all) {
  std::size_t outlets = 0;
  for (const LineSolution& line : all.before.lines()) outlets += line.state.size();
  const auto expect = [](bool fits, const char* name) {
    if (!fits)
      throw py::value_error(std::string(name) +
                            ": does not fit the layout; break its outlets again");
  };
  const auto fits = [&](std::size_t size) {
    return size == 0 || size == all.breaks.size() * outlets;
  };
  expect(all.outlets.size() == outlets, "outlets");
  expect(all.conditions_before.size() == outlets, "conditions_before");
  expect(fits(all.conditions.size()), "conditions");
  expect(fits(all.pressure.size()), "pressure");
  expect(fits(all.flow.size()), "flow");
  expect(!all.worst || *all.worst < all.breaks.size(), "worst");
}

void bind_breaks_class(py::module_& module) {
  auto all =
      Record<Breaks>("Breaks",
                     "Every outlet of a layout, broken in turn. str() of it is the report.")
          .field("fault", &Breaks::fault, "Its line and outlet do not count.")
          .field("before", &Breaks::before, "Before any of them.")
          .field("outlets", &Breaks::outlets, "All of the layout, line by line.")
          .field("breaks", &Breaks::breaks, "That are solved, in the order of the outlets.")
          .field("not_solved", &Breaks::not_solved, "Likewise.")
          .field("skipped", &Breaks::skipped, "Likewise.")
          .field("worst",
                 &Breaks::worst,
                 "Index into breaks of the one that puts most others out of work; of equal ones "
                 "that with most others below rated, then that with the smallest share at its "
                 "weakest outlet, then the first.")
          .field("rest_works", &Breaks::rest_works, "Breaks that put no other out of work.")
          .field("rest_is_served",
                 &Breaks::rest_is_served,
                 "Breaks after which none is below its rated pressure that was not.")
          .field("conditions_before", &Breaks::conditions_before, "One for each of outlets.")
          .field("conditions",
                 &Breaks::conditions,
                 "Of OutletCondition, a row for each of breaks, a column for each of outlets; None "
                 "where only counts are kept.")
          .shown_as("NDArray[numpy.object_] | None",
                    [](const Breaks& self, py::handle) {
                      return array_of(self.conditions, self.outlets.size());
                    })
          .field("pressure",
                 &Breaks::pressure,
                 "At the device, likewise; None unless profiles are kept.")
          .shown_as(name_of_table<Pressure>() + " | None",
                    [](const Breaks& self, py::handle owner) {
                      return table_of(self.pressure, self.outlets.size(), owner);
                    })
          .field("flow", &Breaks::flow, "Out of the outlet, likewise.")
          .shown_as(name_of_table<Flow>() + " | None",
                    [](const Breaks& self, py::handle owner) {
                      return table_of(self.flow, self.outlets.size(), owner);
                    })
          .examined_by(&expect_whole)
          .made_from([](const py::dict& state) {
            return Breaks{.fault = HeadOff{},
                          .before = Type<Solution>::from(state["before"], {"before"})};
          })
          .result(module, [](const Breaks& self) {
            return py::str("<hydro.Breaks: " + kind_of(self.fault) + " at each of " +
                           std::to_string(self.outlets.size()) + " outlets, solved " +
                           std::to_string(self.breaks.size()) + ", skipped " +
                           std::to_string(self.skipped.size()) + ">");
          });
  all.def(
      "__str__", [](const Breaks& self) { return breaks_report(self); }, "__str__(self) -> str");
  for (const auto& [name, which, what] :
       {std::tuple("newly_below_rated", &Breaks::newly_below_rated, "below their rated pressure"),
        std::tuple("newly_out_of_work", &Breaks::newly_out_of_work, "out of work"),
        std::tuple("newly_dry", &Breaks::newly_dry, "dry"),
        std::tuple(
            "newly_above_maximum", &Breaks::newly_above_maximum, "above their highest pressure")})
    method(
        all,
        name,
        which,
        {"break_index"},
        ("Which others are " + std::string(what) +
         " after this one of breaks, from 0 on, that were not before. InvalidInput when there is "
         "no such break, or only counts are kept.")
            .c_str());
}

}  // namespace

void bind_breaks(py::module_& module) {
  bind_parts(module);
  bind_breaks_class(module);
  def(module,
      "at_outlet",
      &at_outlet,
      {"fault", "line", "outlet"},
      "The same fault at this outlet. InvalidInput for one that acts at no outlet.\n\n"
      ">>> at_outlet(clogged(\"row 1\", 7, 0.6), \"row 2\", 3)\n"
      "clogged('row 2', 3, 0.6)");
  const BreakOptions defaults;
  def(
      module,
      "break_every_outlet",
      [](const Layout& layout,
         const Fault& fault,
         BreakDetail keep,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return break_every_outlet(layout, {.fault = fault, .keep = keep}, work);
        });
      },
      with_work({"layout",
                 {"fault", py::cast(defaults.fault), Passing::by_name},
                 {"keep", py::cast(defaults.keep), Passing::by_name}}),
      ("What each outlet would do to the rest if it broke, one after another, beside the faults "
       "that "
       "the layout has already. InvalidInput for a fault that acts at no outlet, or that no outlet "
       "could have; NotSolved when the layout is not solved as it is.\n"
       "fault: its line and outlet do not count. keep: how much of each break. " +
       std::string(words_on_work) + example_row +
       ">>> found = break_every_outlet(farm, fault=nozzle_missing(\"\", 0, bore=0.3 * inch))\n"
       ">>> len(found.breaks), found.conditions.shape\n"
       "(24, (24, 24))")
          .c_str());
}

}  // namespace hydro::bindings
