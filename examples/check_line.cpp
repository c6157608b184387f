// check_line: solves a description file and tells what is wrong, with and without faults.
//
//   check_line FILE [--fault 'line="row 2", outlet=7, kind="head off"']... [--try FAULT]...
//              [--units us|si]
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

struct Wishes {
  std::string file;
  std::vector<std::string> faults;
  std::vector<std::string> tries;  // faults that are skipped where they do not fit
  std::string units;
};

std::vector<hydro::Fault> read_faults(const std::vector<std::string>& texts,
                                      const std::string& file) {
  std::vector<hydro::Fault> faults;
  if (texts.empty()) return faults;
  const std::vector<hydro::Outlet> outlets = hydro::read_outlets(file);
  for (const std::string& text : texts) faults.push_back(hydro::read_fault(text, outlets));
  return faults;
}

int check_line(const Wishes& wishes) {
  hydro::ReportOptions options;
  if (!wishes.units.empty())
    options.units = wishes.units == "us" ? hydro::UnitSystem::us : hydro::UnitSystem::si;
  auto [layout, skipped] = hydro::read_layout(wishes.file)
                               .with_faults(read_faults(wishes.faults, wishes.file))
                               .with_possible_faults(read_faults(wishes.tries, wishes.file));
  options.skipped = skipped;

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
  Wishes wishes;
  program.add_option("FILE", wishes.file, "description of the lines (TOML)")->required();
  program
      .add_option(
          "--fault", wishes.faults, "line=\"row 2\", outlet=7, kind=\"head off\"; may be repeated")
      ->allow_extra_args(false);
  program
      .add_option("--try", wishes.tries, "like --fault, but skipped and listed if it does not fit")
      ->allow_extra_args(false);
  program
      .add_option(
          "--units", wishes.units, "units of the report, us or si; default those of the file")
      ->check(CLI::IsMember({"us", "si"}));
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? all_serve : bad_input;
  }
  return check_line(wishes);
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
