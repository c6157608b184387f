// diagnosis_text.cpp: what was read from files, and what a person reads of a diagnosis.

#include "hydro/text/calibration_report.hpp"
#include "hydro/text/diagnosis_drawing.hpp"
#include "hydro/text/diagnosis_report.hpp"
#include "hydro/text/read_readings.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/others_run.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

const std::string low =
    example_row +
    ">>> read = [Reading(place=\"flush end\", line=\"row 1\", pressure=20 * psi)]\n"
    ">>> found = find_fault(farm, read)\n";

void bind_files(py::module_& module) {
  Record<Readings>("Readings", "What was read and seen on a walk; both may be empty.")
      .field("readings", &Readings::readings, "Figures.")
      .field("sights", &Readings::sights, "What was seen.")
      .description(module);
  def(
      module,
      "read_readings",
      [](const std::filesystem::path& file, const Layout& layout, const FileLimits& limits) {
        const OthersRun meanwhile;
        return read_readings(file, layout, limits);
      },
      {"file", "layout", {"limits", py::cast(FileLimits{}), Passing::by_name}},
      "The [[reading]] and [[sight]] of a description file, or of one of their own. layout: with "
      "the sets that ran. limits: how much the file may hold. InvalidInput with every mistake, "
      "each with file, line and column.\n\n"
      ">>> farm = read_layout(\"examples/ouzel_bench.toml\").watering([\"rows 1 and 2\"])\n"
      ">>> len(read_readings(\"examples/ouzel_gauge_low.toml\", farm).readings)\n"
      "2");
  def(
      module,
      "read_readings_text",
      [](const std::string& text,
         const Layout& layout,
         const std::string& name,
         const FileLimits& limits) { return read_readings_text(text, layout, name, limits); },
      {"text",
       "layout",
       {"name", py::str("text")},
       {"limits", py::cast(FileLimits{}), Passing::by_name}},
      ("The same from text; `name` stands for the file in errors.\n\n" + example_row +
       ">>> text = 'reading = [{ place = \"supply gauge\", pressure = \"38 psi\" }]'\n"
       ">>> read_readings_text(text, farm).readings\n"
       "(Reading(pressure=38 * psi),)")
          .c_str());
}

void bind_diagnosis_pages(py::module_& module) {
  Record<SeenBy>("SeenBy", "What one gauge, meter or bucket can see.")
      .field("reading", &SeenBy::reading, "Its place and errors.")
      .field("candidates", &SeenBy::candidates, "Of detectable().")
      .description(module);
  def(module,
      "is_as_it_should_be",
      &is_as_it_should_be,
      {"found"},
      ("Whether no fault explains the readings better than that nothing is wrong, but for what is "
       "worth a bare mention: no Bayes factor against it is above 3.\n\n" +
       low +
       ">>> is_as_it_should_be(found)\n"
       "False")
          .c_str());
  def(
      module,
      "diagnosis_report",
      [](const Layout& layout,
         const std::vector<Reading>& readings,
         const std::vector<Sight>& sights,
         const FoundFaults& found,
         std::optional<UnitSystem> units,
         const FindFaultOptions& finding,
         const std::optional<NextReadings>& next,
         const std::optional<MakeRight>& right,
         const std::vector<SeenBy>& seen_by) {
        return diagnosis_report(layout,
                                readings,
                                sights,
                                found,
                                {.units = units,
                                 .find_fault = finding,
                                 .next = next,
                                 .make_right = right,
                                 .seen_by = seen_by});
      },
      {"layout",
       "readings",
       "sights",
       "found",
       may_be_left_out("units", Passing::by_name),
       {"find_fault", py::cast(FindFaultOptions{}), Passing::by_name},
       may_be_left_out("next", Passing::by_name),
       may_be_left_out("make_right", Passing::by_name),
       {"seen_by", py::tuple(), Passing::by_name}},
      ("What is wrong, as far as the readings tell, to the person who walks there. layout, "
       "readings, sights, found: what find_fault() was asked and answered. units: \"us\" or "
       "\"si\", default those of the site. find_fault: the FindFaultOptions that were used. next: "
       "of next_reading(). make_right: of make_right(). seen_by: what gauges can see at all.\n\n" +
       low +
       ">>> \"row 1\" in diagnosis_report(farm, read, [], found)\n"
       "True")
          .c_str());
  def(
      module,
      "to_svg_of_diagnosis",
      [](const Layout& layout,
         const std::vector<Reading>& readings,
         const std::vector<Sight>& sights,
         const FoundFaults& found,
         std::optional<UnitSystem> units) {
        return to_svg_of_diagnosis(layout, readings, sights, found, {.units = units});
      },
      {"layout", "readings", "sights", "found", may_be_left_out("units", Passing::by_name)},
      ("How likely the fault is at each place along the lines, as an SVG picture. units: as in "
       "diagnosis_report.\n\n" +
       low +
       ">>> to_svg_of_diagnosis(farm, read, [], found).count(\"<svg \")\n"
       "1")
          .c_str());
}

void bind_calibration_pages(py::module_& module) {
  def(
      module,
      "calibration_report",
      [](const std::vector<Reading>& readings,
         const Calibration& calibration,
         std::optional<UnitSystem> units) {
        return calibration_report(readings, calibration, units);
      },
      {"readings", "calibration", may_be_left_out("units", Passing::by_name)},
      ("What a walk taught, as a page. units: as in diagnosis_report.\n\n" + example_row +
       ">>> walk = [Reading(place=\"flush end\", line=\"row 1\", pressure=32 * psi)]\n"
       ">>> \"row 1\" in calibration_report(walk, calibrate(farm, walk))\n"
       "True")
          .c_str());
  def(
      module,
      "drift_report",
      [](const std::vector<DayOfReadings>& log, const Drift& drift, UnitSystem units) {
        return drift_report(log, drift, units);
      },
      {"log", "drift", {"units", py::cast(UnitSystem::si)}},
      ("What changed over the days, as a page.\n\n" + example_row +
       ">>> log = [DayOfReadings(day=day, readings=[Reading(pressure=40 * psi)])\n"
       "...        for day in range(9)]\n"
       ">>> drift_report(log, find_drift(farm, log))\n"
       "'No reading has left what is normal for its place.\\n'")
          .c_str());
  def(module,
      "in_words",
      &in_words,
      {"learnt", "rises"},
      ("What was learnt of one input, as a person says it. rises: that it is more.\n\n" +
       example_row +
       ">>> walk = [Reading(place=\"flush end\", line=\"row 1\", pressure=32 * psi)]\n"
       ">>> of_pipe = calibrate(farm, walk).learnt[0]\n"
       ">>> isinstance(in_words(of_pipe, True), str)\n"
       "True")
          .c_str());
}

}  // namespace

void bind_diagnosis_text(py::module_& module) {
  bind_files(module);
  bind_diagnosis_pages(module);
  bind_calibration_pages(module);
}

}  // namespace hydro::bindings
