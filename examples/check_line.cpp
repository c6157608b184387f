// check_line: solves a description file and tells what is wrong, with and without faults.
//
//   check_line FILE [--fault 'line="row 2", outlet=7, kind="head off"']... [--units us|si]
//
// Exit status: 0 no outlet is below its rated or lowest or above its highest pressure; 1 some are;
// 2 bad input; 3 not solved.

#include "hydro/hydro.hpp"

#include <exception>
#include <iostream>
#include <string>
#include <vector>

#include <CLI/CLI.hpp>

namespace {

enum ExitStatus { all_serve = 0, some_do_not = 1, bad_input = 2, not_solved = 3 };

int check_line(const std::string& file,
               const std::vector<std::string>& faults,
               const std::string& units) {
  hydro::ReportOptions options;
  if (!units.empty()) options.units = units == "us" ? hydro::UnitSystem::us : hydro::UnitSystem::si;
  hydro::Layout layout = hydro::read_layout(file);
  for (const std::string& fault : faults) layout = layout.with_fault(hydro::read_fault(fault));

  const hydro::Solution now = hydro::solve(layout);
  if (layout.faults().empty())
    std::cout << hydro::report(now, options);
  else
    std::cout << hydro::report(hydro::solve(layout.without_faults()), now, options);
  if (!std::cout.flush()) throw hydro::InvalidInput("report", "cannot be written");
  return hydro::check(now).every_outlet_serves() ? all_serve : some_do_not;
}

int run(int argc, char** argv) {
  CLI::App program{"Pressure at every outlet of the lines in FILE, and what is wrong with it."};
  std::string file;
  std::vector<std::string> faults;
  std::string units;
  program.add_option("FILE", file, "description of the lines (TOML)")->required();
  program
      .add_option("--fault", faults, "line=\"row 2\", outlet=7, kind=\"head off\"; may be repeated")
      ->allow_extra_args(false);
  program.add_option("--units", units, "units of the report, us or si; default those of the file")
      ->check(CLI::IsMember({"us", "si"}));
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? all_serve : bad_input;
  }
  return check_line(file, faults, units);
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
