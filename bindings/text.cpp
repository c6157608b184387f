// text.cpp: description files in; reports, tables and drawings out.

#include "hydro/text/breaks_csv.hpp"
#include "hydro/text/breaks_drawing.hpp"
#include "hydro/text/breaks_report.hpp"
#include "hydro/text/chances_report.hpp"
#include "hydro/text/csv.hpp"
#include "hydro/text/day_csv.hpp"
#include "hydro/text/drawing.hpp"
#include "hydro/text/file_limits.hpp"
#include "hydro/text/json.hpp"
#include "hydro/text/pocket_sheet.hpp"
#include "hydro/text/read_layout.hpp"
#include "hydro/text/report.hpp"
#include "hydro/text/room_report.hpp"
#include "hydro/text/sets_report.hpp"
#include "hydro/text/setting_report.hpp"
#include "hydro/text/supply_drawing.hpp"
#include "hydro/text/write_file.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/others_run.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

/// A solution that may be left out is read where it is.
struct MaybeSolution {
  const Solution* solution = nullptr;
};

/// What can be drawn.
struct SolutionOrBreaks {
  const Solution* solution = nullptr;
  const Breaks* breaks = nullptr;
};

/// What can be written as a table.
struct Tabled : SolutionOrBreaks {
  const DayPlan* plan = nullptr;
};

/// Breaks tell themselves what was before.
void refuse_after(const SolutionOrBreaks& told, const MaybeSolution& after) {
  if (!told.solution && after.solution)
    throw py::type_error("after: goes with a Solution; Breaks have what was before in them");
}

/// For the examples in the texts.
const std::string farm =
    ">>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),\n"
    "...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)\n"
    ">>> pipe = nominal_pipe(\"1-1/2 in\", \"PVC Class 160\")\n"
    ">>> row = Line(name=\"row 1\", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),\n"
    "...            count=10, spacing=36 * ft)\n"
    ">>> farm = Layout(Supply(pump=pump), [row],\n"
    "...               sets=[WateringSet(name=\"one\", lines=[\"row 1\"])])\n";

}  // namespace

template <>
struct Type<MaybeSolution> {
  static std::string accepts() { return "Solution | None"; }
  static MaybeSolution from(py::handle given, const Where& where) {
    return {given.is_none() ? nullptr : &Type<Solution>::from(given, where)};
  }
};

template <>
struct Type<SolutionOrBreaks> {
  static std::string accepts() { return "Solution | Breaks"; }
  static SolutionOrBreaks from(py::handle given, const Where& where) {
    if (py::isinstance<Breaks>(given)) return {.breaks = &given.cast<const Breaks&>()};
    return {.solution = &Type<Solution>::from(given, where)};
  }
};

template <>
struct Type<Tabled> {
  static std::string accepts() { return "Solution | Breaks | DayPlan"; }
  static Tabled from(py::handle given, const Where& where) {
    if (py::isinstance<DayPlan>(given)) return {{}, &given.cast<const DayPlan&>()};
    return {Type<SolutionOrBreaks>::from(given, where), nullptr};
  }
};

namespace {

void bind_file_limits(py::module_& module) {
  Record<FileLimits>("FileLimits", "The most that a description file may hold of each.")
      .field("bytes", &FileLimits::bytes, "Of the file, 1 to 2^30.")
      .field("values", &FileLimits::values, "Keys, tables and elements of lists, from 1 on.")
      .field("nesting", &FileLimits::nesting, "Of lists and tables in one another, 1 to 200.")
      .field("text", &FileLimits::text, "Bytes of a name, quantity, number or other word.")
      .field("mistakes", &FileLimits::mistakes, "Collected before the file is given up, from 1 on.")
      .field("definitions", &FileLimits::definitions, "Kinds of pipe, of outlet, and blocks, each.")
      .field("supplies", &FileLimits::supplies, "Further ones.")
      .field("lines", &FileLimits::lines, "At most 100000 in any layout.")
      .field("outlets", &FileLimits::outlets, "Of all lines; at most 1000000 in any layout.")
      .field("reaches", &FileLimits::reaches, "Of one line.")
      .field("points", &FileLimits::points, "Of one curve.")
      .field("sets", &FileLimits::sets, "Of [[set]].")
      .field("faults", &FileLimits::faults, "Of [[fault]].")
      .field("readings", &FileLimits::readings, "And as many sights.")
      .description(module);
}

void bind_readers(py::module_& module) {
  def(module,
      "read_layout",
      &read_layout,
      {"file", {"limits", py::cast(FileLimits{}), Passing::by_name}},
      "Reads a description file (TOML 1.0). Its faults are in the layout; reports are in US units "
      "when the supply's pressure is given in psi. limits: how much the file may hold. "
      "InvalidInput with every mistake, each with file, line and column.\n\n"
      ">>> read_layout(\"examples/ouzel_strips.toml\")\n"
      "<hydro.Layout: lines 6, outlets 20, faults 1>");
  def(
      module,
      "read_layout_text",
      [](const std::string& text, const std::string& name, const FileLimits& limits) {
        return read_layout_text(text, name, limits);
      },
      {"text", {"name", py::str("text")}, {"limits", py::cast(FileLimits{}), Passing::by_name}},
      "The same from text; `name` stands for the file in errors.\n\n"
      ">>> text = \"\"\"\n"
      "... supply = { pressure = \"40 psi\" }\n"
      "... pipe.lateral = { inside_diameter = \"1.754 in\", hazen_williams = 150 }\n"
      "... outlet.spray = { flow = \"1.2 gpm\", at = \"30 psi\" }\n"
      "... line = [{ name = \"row 1\", pipe = \"lateral\", outlet = \"spray\", count = 24, spacing "
      "= \"20 ft\" }]\n"
      "... \"\"\"\n"
      ">>> read_layout_text(text)\n"
      "<hydro.Layout: lines 1, outlets 24, faults 0>");
  def(module,
      "read_outlets",
      &read_outlets,
      {"file", {"limits", py::cast(FileLimits{}), Passing::by_name}},
      "The kinds of outlets that a description file defines, used or not.\n\n"
      ">>> [kind.name for kind in read_outlets(\"examples/ouzel_strips.toml\")]\n"
      "['turning_head']");
  def(
      module,
      "read_fault",
      [](const std::string& text, const std::vector<Outlet>& outlets, const FileLimits& limits) {
        return read_fault(text, outlets, limits);
      },
      {"text", {"outlets", py::tuple()}, {"limits", py::cast(FileLimits{}), Passing::by_name}},
      "Reads the inside of an inline table. outlets: those that a wrong one may be, by their "
      "names.\n\n"
      ">>> read_fault('line = \"row 2\", outlet = 7, kind = \"head off\"')\n"
      "head_off('row 2', 7)");
}

void bind_writers(py::module_& module) {
  def(
      module,
      "report",
      [](const Solution& solution,
         const MaybeSolution& after,
         std::optional<UnitSystem> units,
         const std::vector<SkippedFault>& skipped,
         const std::optional<Throttling>& throttling) {
        const ReportOptions options{.units = units, .skipped = skipped, .throttling = throttling};
        return after.solution ? report(solution, *after.solution, options)
                              : report(solution, options);
      },
      {"solution",
       may_be_left_out("after"),
       may_be_left_out("units", Passing::by_name),
       {"skipped", py::tuple(), Passing::by_name},
       may_be_left_out("throttling", Passing::by_name)},
      "A solved layout told to the person who waters from it; with `after`, what the faults of "
      "that "
      "one do to the rest. units: \"us\" or \"si\", default those of the site. skipped: faults to "
      "be listed. throttling: what throttle_up says of them, to be told. InvalidInput when the two "
      "do not have the same lines and outlets.\n\n"
      ">>> lateral = nominal_pipe(\"1-1/2 in\", \"PVC Class 160\")\n"
      ">>> row = Line(name=\"row 1\", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),\n"
      "...            count=24, spacing=20 * ft)\n"
      ">>> before = solve(Layout(Supply(pressure=40 * psi), [row]))\n"
      ">>> report(before).splitlines()[0]\n"
      "'* Every one of the 24 outlets has its rated pressure.'");
  def(
      module,
      "setting_report",
      [](const Setting& setting, std::optional<UnitSystem> units) {
        return setting_report(setting, units);
      },
      {"setting", may_be_left_out("units", Passing::by_name)},
      ("How the supply is set, for the person at the engine: speed or pressure, gauge, flow, the "
       "weakest outlet, and the limits that are passed. units: \"us\" or \"si\", default those of "
       "the site.\n\n" +
       farm +
       ">>> \"rpm\" in setting_report(set_for_rated(farm))\n"
       "True")
          .c_str());
  def(
      module,
      "throttling_sentences",
      [](const Throttling& throttling, std::optional<UnitSystem> units) {
        return throttling_sentences(throttling, units);
      },
      {"throttling", may_be_left_out("units", Passing::by_name)},
      ("Three sentences: what a fault does to the gauge, to what speed the engine must be "
       "throttled "
       "up to bring the reading back, and what that cures and does not. units: as in report.\n\n" +
       farm +
       ">>> len(throttling_sentences(throttle_up(farm, [end_open(\"row 1\")])))\n"
       "3")
          .c_str());
  def(
      module,
      "sets_report",
      [](const Layout& layout,
         const std::vector<SetsTogether>& together,
         std::optional<UnitSystem> units) { return sets_report(layout, together, units); },
      {"layout", "together", may_be_left_out("units", Passing::by_name)},
      ("Which watering sets can run together, as a table a grower reads. together: what "
       "sets_together found of the layout. units: as in report.\n\n" +
       farm +
       ">>> \"one\" in sets_report(farm, sets_together(farm))\n"
       "True")
          .c_str());
  def(
      module,
      "pocket_sheets",
      [](const Layout& layout, std::optional<UnitSystem> units) {
        const OthersRun meanwhile;
        return pocket_sheets(layout, units);
      },
      {"layout", may_be_left_out("units", Passing::by_name)},
      ("One short sheet for each watering set, to carry along the rows: speed and gauge, bucket "
       "times, and what a break does to the gauge and to the other heads. Its faults are left "
       "out. units: as in report. InvalidInput for a set in which no outlet is open; "
       "NotSolved.\n\n" +
       farm +
       ">>> len(pocket_sheets(farm))\n"
       "1")
          .c_str());
  def(
      module,
      "to_csv",
      [](const Tabled& told, const MaybeSolution& after) {
        refuse_after(told, after);
        if (told.plan) return to_csv(*told.plan);
        if (told.breaks) return to_csv(*told.breaks);
        return after.solution ? to_csv(*told.solution, *after.solution) : to_csv(*told.solution);
      },
      {"solution", may_be_left_out("after")},
      "One row for each outlet (RFC 4180); numbers in SI, the unit in the column's name. The last "
      "five columns are followed by those of the first solution when two are given. Of Breaks, "
      "what "
      "each outlet does to the others when it breaks; of a DayPlan, one row for each turn.\n\n"
      ">>> lateral = nominal_pipe(\"1-1/2 in\", \"PVC Class 160\")\n"
      ">>> row = Line(name=\"row 1\", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),\n"
      "...            count=24, spacing=20 * ft)\n"
      ">>> before = solve(Layout(Supply(pressure=40 * psi), [row]))\n"
      ">>> to_csv(before).splitlines()[0].split(\",\")[:3]\n"
      "['line', 'outlet', 'kind']");
  def(
      module,
      "to_json",
      [](const Solution& solution, const MaybeSolution& after) {
        return after.solution ? to_json(solution, *after.solution) : to_json(solution);
      },
      {"solution", may_be_left_out("after")},
      "All that is known, as one object (RFC 8259); quantities are numbers in SI.\n\n"
      ">>> lateral = nominal_pipe(\"1-1/2 in\", \"PVC Class 160\")\n"
      ">>> row = Line(name=\"row 1\", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),\n"
      "...            count=24, spacing=20 * ft)\n"
      ">>> before = solve(Layout(Supply(pressure=40 * psi), [row]))\n"
      ">>> to_json(before).startswith(\"{\")\n"
      "True");
  def(
      module,
      "to_svg",
      [](const SolutionOrBreaks& told,
         const MaybeSolution& after,
         std::optional<UnitSystem> units) {
        refuse_after(told, after);
        const DrawingOptions options{.units = units};
        if (told.breaks) return to_svg(*told.breaks, options);
        return after.solution ? to_svg(*told.solution, *after.solution, options)
                              : to_svg(*told.solution, options);
      },
      {"solution", may_be_left_out("after"), may_be_left_out("units", Passing::by_name)},
      "The pressure at every outlet along each line, as an SVG picture; of Breaks, what each "
      "outlet "
      "does when another breaks. units: \"us\" or \"si\", "
      "default those of the site.\n\n"
      ">>> row = Line(name=\"row 1\", pipe=nominal_pipe(\"1 in\", \"PVC Sch 40\"), length=9 * m)\n"
      ">>> to_svg(solve(Layout(Supply(pressure=2 * bar), [row]))).count(\"<svg \")\n1");
  def(
      module,
      "to_svg_of_supply",
      [](const Solution& solution, const MaybeSolution& after, std::optional<UnitSystem> units) {
        const DrawingOptions options{.units = units};
        const OthersRun meanwhile;
        return after.solution ? to_svg_of_supply(solution, *after.solution, options)
                              : to_svg_of_supply(solution, options);
      },
      {"solution", may_be_left_out("after"), may_be_left_out("units", Passing::by_name)},
      "What the supply gives at the start of the lines against what these ask for, as an SVG "
      "picture; after: with faults, at another speed, or with other sets running. NotSolved when "
      "the lines are not solved at one of the pressures drawn. units: \"us\" or \"si\", default "
      "those of the site.\n\n"
      ">>> row = Line(name=\"row 1\", pipe=nominal_pipe(\"1 in\", \"PVC Sch 40\"), length=9 * m)\n"
      ">>> to_svg_of_supply(solve(Layout(Supply(pressure=2 * bar), [row]))).count(\"<svg \")\n1");
  def(
      module,
      "write_file",
      [](const std::filesystem::path& path, const std::string& text) { write_file(path, text); },
      {"path", "text"},
      "A text into a file, whole or not at all. InvalidInput with the path and the reason.\n\n"
      ">>> import os, tempfile\n"
      ">>> folder = tempfile.TemporaryDirectory()\n"
      ">>> path = os.path.join(folder.name, \"pressure.txt\")\n"
      ">>> write_file(path, str(25 * psi))\n"
      ">>> with open(path) as file:\n"
      "...     file.read()\n"
      "'25 psi'\n"
      ">>> folder.cleanup()");
}

/// They head the columns of what was found.
void bind_what_ifs(py::module_& module) {
  def(
      module,
      "room_report",
      [](const Room& room, UnitSystem units) { return room_report(room, units); },
      {"room", "units"},
      ("Room on a line, as a sentence and a table. units: \"us\" or \"si\".\n\n" + example_row +
       ">>> room = room_on_line(farm, \"row 1\", limits=Limits(judged=[\"rated\"]))\n"
       ">>> room_report(room, \"us\").split(\".\")[0]\n"
       "'14 more outlets fit on row 1'")
          .c_str());
  def(
      module,
      "longest_line_report",
      [](const LongestLine& longest, UnitSystem units) {
        return longest_line_report(longest, units);
      },
      {"longest", "units"},
      ("How long a line can be, as a sentence and a table. units: \"us\" or \"si\".\n\n" +
       example_row +
       ">>> longest = longest_line(farm, \"row 1\", limits=Limits(judged=[\"rated\"]))\n"
       ">>> \"38 outlets\" in longest_line_report(longest, \"us\")\n"
       "True")
          .c_str());
  def(
      module,
      "breaks_report",
      [](const Breaks& breaks, std::optional<UnitSystem> units) {
        return breaks_report(breaks, units);
      },
      {"breaks", may_be_left_out("units", Passing::by_name)},
      ("Every outlet broken in turn, as sentences and a table that a grower reads. units: as in "
       "report.\n\n" +
       example_row +
       ">>> found = break_every_outlet(farm, fault=nozzle_missing(\"\", 0, bore=0.3 * inch))\n"
       ">>> \"row 1\" in breaks_report(found)\n"
       "True")
          .c_str());
  def(
      module,
      "chances_report",
      [](const Layout& layout,
         const Chances& found,
         const Uncertainty& uncertainty,
         std::optional<UnitSystem> units) {
        return chances_report(layout, found, uncertainty, units);
      },
      {"layout", "found", "uncertainty", may_be_left_out("units", Passing::by_name)},
      ("How likely outlets fall short, as a table a grower reads: what chances found of the "
       "layout, "
       "with the same uncertainty. units: as in report.\n\n" +
       example_row +
       ">>> guess = Uncertainty(supply_pressure=1 * psi)\n"
       ">>> found = chances(farm, guess, realisations=100)\n"
       ">>> \"row 1\" in chances_report(farm, found, guess)\n"
       "True")
          .c_str());
  def(
      module,
      "trouble_report",
      [](const Layout& layout,
         const std::string& line,
         const std::vector<TroubleAtCount>& found,
         const Uncertainty& uncertainty,
         std::optional<UnitSystem> units) {
        return trouble_report(layout, line, found, uncertainty, units);
      },
      {"layout", "line", "found", "uncertainty", may_be_left_out("units", Passing::by_name)},
      ("The same for each count of outlets more on a line: what chance_of_trouble found.\n\n" +
       example_row +
       ">>> guess = Uncertainty(supply_pressure=1 * psi)\n"
       ">>> found = chance_of_trouble(farm, \"row 1\", 3, guess, realisations=100)\n"
       ">>> \"row 1\" in trouble_report(farm, \"row 1\", found, guess)\n"
       "True")
          .c_str());
}

}  // namespace

void bind_text(py::module_& module) {
  bind_file_limits(module);
  bind_readers(module);
  bind_writers(module);
  bind_what_ifs(module);
}

}  // namespace hydro::bindings
