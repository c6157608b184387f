// check_line: solves a description file and tells what is wrong, with and without faults.
//
//   check_line FILE [--fault 'line="row 2", outlet=7, kind="head off"']... [--try FAULT]...
//              [--units us|si] [--csv FILE] [--json FILE] [--svg FILE]
//
// The report goes to standard output, once the files that are asked for are written: each whole or
// not at all, in place of what was there.
//
// Exit status: 0 no outlet is below its rated or lowest or above its highest pressure; 1 some are;
// 2 bad input; 3 not solved.

#include "hydro/hydro.hpp"

#include <exception>
#include <filesystem>
#include <iostream>
#include <optional>
#include <string>
#include <system_error>
#include <vector>

#include <CLI/CLI.hpp>

namespace {

enum ExitStatus { all_serve = 0, some_do_not = 1, bad_input = 2, not_solved = 3 };

struct Arguments {
  std::string file;
  std::vector<std::string> faults;
  std::vector<std::string> tries;  // faults that are skipped where they do not fit
  std::string units;
  std::string csv;  // empty where it is not asked for
  std::string json;
  std::string svg;
};

/// Nothing that is written may take the place of the description.
void require_other_file(const std::string& option,
                        const std::string& output,
                        const std::string& description) {
  std::error_code none_there;
  if (std::filesystem::equivalent(output, description, none_there))
    throw hydro::InvalidInput(option, output + " is the description itself, and would be lost");
}

std::vector<hydro::Fault> read_faults(const std::vector<std::string>& texts,
                                      const std::string& description) {
  std::vector<hydro::Fault> faults;
  if (texts.empty()) return faults;
  const std::vector<hydro::Outlet> outlets = hydro::read_outlets(description);
  for (const std::string& text : texts) faults.push_back(hydro::read_fault(text, outlets));
  return faults;
}

int check_line(const Arguments& arguments) {
  require_other_file("--csv", arguments.csv, arguments.file);
  require_other_file("--json", arguments.json, arguments.file);
  require_other_file("--svg", arguments.svg, arguments.file);
  std::optional<hydro::UnitSystem> units;
  if (!arguments.units.empty())
    units = arguments.units == "us" ? hydro::UnitSystem::us : hydro::UnitSystem::si;
  const auto [layout, skipped] =
      hydro::read_layout(arguments.file)
          .with_faults(read_faults(arguments.faults, arguments.file))
          .with_possible_faults(read_faults(arguments.tries, arguments.file));
  const hydro::ReportOptions told{units, skipped};

  const hydro::Solution now = hydro::solve(layout);
  std::optional<hydro::Solution> before;
  if (!layout.faults().empty()) before = hydro::solve(layout.without_faults());

  const std::string report = before ? hydro::report(*before, now, told) : hydro::report(now, told);
  if (!arguments.csv.empty())
    hydro::write_file(arguments.csv, before ? hydro::to_csv(*before, now) : hydro::to_csv(now));
  if (!arguments.json.empty())
    hydro::write_file(arguments.json, before ? hydro::to_json(*before, now) : hydro::to_json(now));
  if (!arguments.svg.empty())
    hydro::write_file(arguments.svg,
                      before ? hydro::to_svg(*before, now, {units}) : hydro::to_svg(now, {units}));
  if (!(std::cout << report).flush()) throw hydro::InvalidInput("report", "cannot be written");
  return hydro::check(now).every_outlet_serves() ? all_serve : some_do_not;
}

int run(int argc, char** argv) {
  CLI::App program{"Pressure at every outlet of the lines in FILE, and what is wrong with it."};
  Arguments arguments;
  program.add_option("FILE", arguments.file, "description of the lines (TOML)")->required();
  program
      .add_option("--fault",
                  arguments.faults,
                  "line=\"row 2\", outlet=7, kind=\"head off\"; may be repeated")
      ->allow_extra_args(false);
  program
      .add_option(
          "--try", arguments.tries, "like --fault, but skipped and listed if it does not fit")
      ->allow_extra_args(false);
  program
      .add_option("--units",
                  arguments.units,
                  "units of the report and the drawing, us or si; default those of the file")
      ->check(CLI::IsMember({"us", "si"}));
  const auto output = [&](const char* option, std::string& file, const char* what) {
    program.add_option(option, file, what)->type_name("FILE")->check([](const std::string& name) {
      return std::string(name.empty() ? "is empty, must name a file" : "");
    });
  };
  output("--csv", arguments.csv, "also writes a table of the outlets (CSV, SI units)");
  output("--json", arguments.json, "also writes all that is known (JSON, SI units)");
  output("--svg", arguments.svg, "also draws the pressure along the lines (SVG)");
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? all_serve : bad_input;
  }
  return check_line(arguments);
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const hydro::InvalidInput& error) {
    std::cerr << error.what() << '\n';
    return bad_input;
  } catch (const hydro::NotSolved& error) {
    std::cerr << error.what() << '\n';
    return not_solved;
  } catch (const std::exception& error) {  // no memory left, say
    std::cerr << error.what() << '\n';
    return not_solved;
  }
}
