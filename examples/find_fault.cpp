// find_fault: from a few readings to the place to walk to.
//
//   find_fault FILE [--readings FILE] [--set NAME]... [--run-time TIME] [--units us|si] [--svg FILE]
//
// FILE describes the lines, and may have [[reading]] and [[sight]] of its own. The report goes to
// standard output, once the drawing that is asked for is written.
//
// Exit status: 0 nothing is wrong, as far as the readings tell; 1 something is, or no single fault
// explains them; 2 bad input; 3 not solved.

#include "hydro/hydro.hpp"

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <optional>
#include <string>
#include <system_error>
#include <vector>

#include "ending.hpp"
#include "progress.hpp"
#include <CLI/CLI.hpp>

namespace {

enum ExitStatus { nothing_wrong = 0, something_is = 1, bad_input = 2 };

struct Arguments {
  std::string file;
  std::string readings;           // empty: they stand in the file itself
  std::vector<std::string> sets;  // that run
  std::string run_time = "60 min";
  std::string units;
  std::string svg;  // empty where it is not asked for
};

/// Nothing that is written may take the place of what is read.
void require_other_file(const std::string& output, const std::string& input) {
  std::error_code none_there;
  if (std::filesystem::equivalent(output, input, none_there))
    throw hydro::InvalidInput("--svg", output + " is read, and would be lost");
}

hydro::Time run_time_of(const Arguments& arguments) {
  try {
    return hydro::from_text<hydro::Time>(arguments.run_time);
  } catch (const hydro::InvalidInput& error) {
    throw hydro::InvalidInput("--run-time", error.what());
  }
}

/// The likeliest one at the place to walk to; null: there is no place that is likelier than not.
const hydro::FoundFault* likely_fault(const hydro::FoundFaults& found) {
  if (!found.explained || found.walk.empty()) return nullptr;
  const hydro::WalkTo& first = found.walk.front();
  if (first.probability < 0.5 || first.kind == hydro::WalkKind::nothing) return nullptr;
  const auto it = std::ranges::find_if(found.faults, [&](const hydro::FoundFault& fault) {
    return hydro::walk_kind_of(fault.candidate.kind) == first.kind &&
           fault.candidate.line == first.line;
  });
  return it == found.faults.end() ? nullptr : &*it;
}

int find_fault(const Arguments& arguments) {
  require_other_file(arguments.svg, arguments.file);
  require_other_file(arguments.svg, arguments.readings);
  const hydro::MakeRightOptions run{run_time_of(arguments)};
  hydro::Layout layout = hydro::read_layout(arguments.file);
  if (!arguments.sets.empty()) layout = layout.watering(arguments.sets);
  const auto [readings, sights] = hydro::read_readings(
      arguments.readings.empty() ? arguments.file : arguments.readings, layout);
  if (readings.empty() && sights.empty())
    throw hydro::InvalidInput("[[reading]]",
                              "there is none, and no [[sight]]; write what was read and seen, or "
                              "name its file by --readings");

  hydro::DiagnosisReportOptions told;
  if (!arguments.units.empty())
    told.units = arguments.units == "us" ? hydro::UnitSystem::us : hydro::UnitSystem::si;
  const hydro::Work work = with_progress();
  const hydro::FoundFaults found = hydro::find_fault(layout, readings, sights, {}, work);
  told.next = hydro::next_reading(layout, readings, sights, {}, work);
  if (const hydro::FoundFault* fault = likely_fault(found))
    told.make_right = hydro::make_right(layout, *fault, run);
  if (!readings.empty())
    told.seen_by = {{readings.front(), hydro::detectable(layout, readings.front(), {}, work)}};
  if (!arguments.svg.empty())
    hydro::write_file(arguments.svg,
                      hydro::to_svg_of_diagnosis(layout, readings, sights, found, {told.units}));
  const std::string text = hydro::diagnosis_report(layout, readings, sights, found, told);
  if (!(std::cout << text).flush()) throw hydro::InvalidInput("report", "cannot be written");
  return hydro::is_as_it_should_be(found) ? nothing_wrong : something_is;
}

int run(int argc, char** argv) {
  CLI::App program{"Where to walk, from what gauges show on the lines in FILE and what is seen."};
  program.footer(
      "Exit status: 0 nothing is wrong, as far as the readings tell; 1 something is, or no single\n"
      "fault explains them; 2 bad input; 3 not solved.");
  Arguments arguments;
  program.add_option("FILE", arguments.file, "description of the lines (TOML)")->required();
  program
      .add_option("--readings",
                  arguments.readings,
                  "what was read and seen, [[reading]] and [[sight]]; default those of FILE")
      ->type_name("FILE");
  program
      .add_option("--set", arguments.sets, "a set that runs; may be repeated: they run together")
      ->allow_extra_args(false);
  program
      .add_option("--run-time", arguments.run_time, "how long it waters with the fault, \"60 min\"")
      ->type_name("TIME");
  program
      .add_option("--units",
                  arguments.units,
                  "units of the report and the drawing, us or si; default those of the file")
      ->check(CLI::IsMember({"us", "si"}));
  program.add_option("--svg", arguments.svg, "also draws where the fault may be (SVG)")
      ->type_name("FILE")
      ->check([](const std::string& name) {
        return std::string(name.empty() ? "is empty, must name a file" : "");
      });
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? nothing_wrong : bad_input;
  }
  return find_fault(arguments);
}

}  // namespace

int main(int argc, char** argv) {
  return ending_of([&] { return run(argc, argv); });
}
