// check_line: solves a description file and tells what is wrong, with and without faults.
//
//   check_line FILE [--set NAME]... [--gauge PRESSURE | --weakest PRESSURE | --rated[=SHARE]]
//              [--fault 'line="row 2", outlet=7, kind="head off"']... [--try FAULT]...
//              [--units us|si] [--csv FILE] [--json FILE] [--svg FILE] [--supply-svg FILE]
//   check_line FILE --break-every['=kind="riser sheared"'] [--set ...] [--gauge ... and so on]
//              [--fault ...]... [--units us|si] [--csv FILE] [--svg FILE]
//   check_line FILE --sets | --pocket [--units us|si]
//
// The report goes to standard output, once the files that are asked for are written: each whole or
// not at all, in place of what was there. Of a file with sets, when nothing else is asked for, it
// tells which of them can run together. The supply is set while all is sound; then it breaks.
// --break-every puts a fault at each outlet in turn, a head off unless another is named, and tells
// what it does to the others.
//
// Exit status: 0 no outlet is below its rated or lowest or above its highest pressure (of sets:
// each can run alone; of --break-every: no other outlet falls below its rated pressure, wherever it
// happens); 1 some are, or everything is shut, or what the supply should be set for is not reached;
// 2 bad input; 3 not solved.

#include "hydro/hydro.hpp"

#include <filesystem>
#include <iostream>
#include <optional>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

#include "ending.hpp"
#include "progress.hpp"
#include <CLI/CLI.hpp>

namespace {

enum ExitStatus { all_serve = 0, some_do_not = 1, bad_input = 2, not_solved = 3 };

struct Arguments {
  std::string file;
  std::vector<std::string> faults;
  std::vector<std::string> tries;  // faults that are skipped where they do not fit
  std::vector<std::string> sets;   // that run
  bool which_sets = false;         // can run together?
  bool pocket = false;
  std::string gauge;  // empty where it is not asked for
  std::string weakest;
  std::optional<double> rated;
  std::string break_every;  // keys of a fault but for where it is; empty where it is not asked for
  std::string units;
  std::string csv;  // empty where it is not asked for
  std::string json;
  std::string svg;
  std::string supply_svg;

  /// Nothing that needs one layout to be solved.
  bool asks_for_no_more() const {
    return sets.empty() && faults.empty() && tries.empty() && gauge.empty() && weakest.empty() &&
           !rated && break_every.empty() && csv.empty() && json.empty() && svg.empty() &&
           supply_svg.empty();
  }
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

/// With the sets that are asked for, and all faults.
hydro::PossibleFaults read(const Arguments& arguments) {
  hydro::Layout layout = hydro::read_layout(arguments.file);
  if (!arguments.sets.empty()) layout = layout.watering(arguments.sets);
  return layout.with_faults(read_faults(arguments.faults, arguments.file))
      .with_possible_faults(read_faults(arguments.tries, arguments.file));
}

/// As it must be set while all is sound; none: it stays as it is.
std::optional<hydro::Setting> setting_of(const hydro::Layout& layout, const Arguments& arguments) {
  const auto pressure = [](const char* option, const std::string& text) {
    try {
      return hydro::from_text<hydro::Pressure>(text);
    } catch (const hydro::InvalidInput& error) {
      throw hydro::InvalidInput(option, error.what());
    }
  };
  const hydro::Layout sound = layout.without_faults();
  if (!arguments.gauge.empty())
    return hydro::set_for_gauge(sound, pressure("--gauge", arguments.gauge));
  if (!arguments.weakest.empty())
    return hydro::set_for_weakest(sound, pressure("--weakest", arguments.weakest));
  if (arguments.rated) return hydro::set_for_rated(sound, *arguments.rated);
  return std::nullopt;
}

void print(const std::string& text) {
  if (!(std::cout << text).flush()) throw hydro::InvalidInput("report", "cannot be written");
}

/// Then no set can be judged, and the report says why.
bool all_is_shut(const hydro::Layout& layout) {
  return hydro::check(hydro::solve(layout)).all_is_shut;
}

/// What is told of all sets is told of the sound farm.
std::string without_the_faults(const hydro::Layout& layout) {
  return layout.faults().empty() ? "" : "\nThe faults of the file are left out here.\n";
}

/// Which sets can run, alone and together.
int check_sets(const hydro::Layout& layout, std::optional<hydro::UnitSystem> units) {
  const auto together = hydro::sets_together(layout.without_faults());
  std::string text = hydro::sets_report(layout.without_faults(), together, units);
  text += without_the_faults(layout);
  text += "\nTo see one set whole: --set \"" + layout.sets().front().name + "\"\n";
  print(text);
  for (const hydro::SetsTogether& it : together)
    if (it.sets.size() == 1 && !it.can_run()) return some_do_not;
  return all_serve;
}

int check_pocket(const hydro::Layout& layout, std::optional<hydro::UnitSystem> units) {
  std::string text;
  for (const std::string& sheet : hydro::pocket_sheets(layout, units))
    text += (text.empty() ? "" : "\n") + sheet;
  print(text + without_the_faults(layout));
  return all_serve;
}

/// Whether the gauge fell when something broke, and the engine can be throttled up to bring it back.
bool can_throttle_up(const hydro::Solution& before, const hydro::Solution& now) {
  const hydro::Supply& supply = now.layout().supply();
  const auto reading = [](const hydro::Solution& solution) {
    const hydro::OperatingPoint& point = solution.supply();
    return point.gauge_reading.value_or(point.source_pressure);
  };
  return supply.pump && hydro::can_be_set(supply) && hydro::weakest_outlet(before) &&
         hydro::weakest_outlet(now) && before.supply().source_pressure > hydro::Pressure{} &&
         reading(now) < reading(before);
}

/// The fault that is put at every outlet in turn; where it is counts only to read it.
hydro::Fault read_fault_for_all(const Arguments& arguments) {
  try {
    return hydro::read_fault(arguments.break_every + ", line=\"\", outlet=1",
                             hydro::read_outlets(arguments.file));
  } catch (const hydro::InvalidInput& error) {
    throw hydro::InvalidInput("--break-every",
                              "takes the keys of a fault of an outlet, but for line and outlet: " +
                                  std::string(error.what()));
  }
}

int break_every(const Arguments& arguments,
                const hydro::Layout& layout,
                std::optional<hydro::UnitSystem> units,
                const std::string& setting) {
  const hydro::Breaks breaks = hydro::break_every_outlet(
      layout, {read_fault_for_all(arguments), hydro::BreakDetail::conditions}, with_progress());
  if (!arguments.csv.empty()) hydro::write_file(arguments.csv, hydro::to_csv(breaks));
  if (!arguments.svg.empty()) hydro::write_file(arguments.svg, hydro::to_svg(breaks, {units}));
  print(setting + hydro::breaks_report(breaks, units));
  if (!breaks.not_solved.empty()) return not_solved;
  const bool all_are_served =
      !breaks.breaks.empty() && breaks.rest_is_served == static_cast<int>(breaks.breaks.size());
  return all_are_served ? all_serve : some_do_not;
}

int check_line(const Arguments& arguments) {
  require_other_file("--csv", arguments.csv, arguments.file);
  require_other_file("--json", arguments.json, arguments.file);
  require_other_file("--svg", arguments.svg, arguments.file);
  require_other_file("--supply-svg", arguments.supply_svg, arguments.file);
  std::optional<hydro::UnitSystem> units;
  if (!arguments.units.empty())
    units = arguments.units == "us" ? hydro::UnitSystem::us : hydro::UnitSystem::si;
  for (const auto& [alone, option] :
       {std::pair{arguments.which_sets, "--sets"}, std::pair{arguments.pocket, "--pocket"}})
    if (alone && (!arguments.asks_for_no_more() || (arguments.which_sets && arguments.pocket)))
      throw hydro::InvalidInput(
          option, "tells of all sets, when all is sound; beside it only --units is accepted");
  if (!arguments.break_every.empty() && !arguments.tries.empty())
    throw hydro::InvalidInput("--try", "is not accepted beside --break-every; --fault is");
  if (!arguments.break_every.empty() && !(arguments.json.empty() && arguments.supply_svg.empty()))
    throw hydro::InvalidInput("--break-every",
                              "writes a table by --csv and a drawing by --svg only");
  auto [layout, skipped] = read(arguments);
  if (arguments.pocket) return check_pocket(layout, units);
  const bool no_choice = arguments.asks_for_no_more() && !all_is_shut(layout);
  if (arguments.which_sets || (!layout.sets().empty() && no_choice))
    return check_sets(layout, units);

  std::string text;
  bool reached = true;
  if (const auto setting = setting_of(layout, arguments)) {
    layout = layout.with_supply(setting->solution.layout().supply());
    text += hydro::setting_report(*setting, units) + "\n";
    reached = setting->reached;
  }
  if (!arguments.break_every.empty()) {
    const int status = break_every(arguments, layout, units, text);
    return status == all_serve && !reached ? some_do_not : status;
  }
  const hydro::Solution now = hydro::solve(layout);
  std::optional<hydro::Solution> before;
  if (!layout.faults().empty()) before = hydro::solve(layout.without_faults());

  hydro::ReportOptions told{units, skipped};
  if (before && can_throttle_up(*before, now))
    told.throttling = hydro::throttle_up(layout.without_faults(), layout.faults());
  text += before ? hydro::report(*before, now, told) : hydro::report(now, told);
  if (!arguments.csv.empty())
    hydro::write_file(arguments.csv, before ? hydro::to_csv(*before, now) : hydro::to_csv(now));
  if (!arguments.json.empty())
    hydro::write_file(arguments.json, before ? hydro::to_json(*before, now) : hydro::to_json(now));
  if (!arguments.svg.empty())
    hydro::write_file(arguments.svg,
                      before ? hydro::to_svg(*before, now, {units}) : hydro::to_svg(now, {units}));
  if (!arguments.supply_svg.empty())
    hydro::write_file(arguments.supply_svg,
                      before ? hydro::to_svg_of_supply(*before, now, {units})
                             : hydro::to_svg_of_supply(now, {units}));
  print(text);
  const hydro::Check found = hydro::check(now);
  return reached && found.every_outlet_serves() && !found.all_is_shut ? all_serve : some_do_not;
}

int run(int argc, char** argv) {
  CLI::App program{"Pressure at every outlet of the lines in FILE, and what is wrong with it."};
  program.footer(
      "Exit status: 0 no outlet is below its rated or lowest or above its highest pressure (of\n"
      "sets: each can run alone; of --break-every: no other falls below its rated pressure,\n"
      "wherever it happens); 1 some are, or everything is shut, or the supply cannot be set so;\n"
      "2 bad input; 3 not solved.");
  Arguments arguments;
  program.add_option("FILE", arguments.file, "description of the lines (TOML)")->required();
  program
      .add_option("--set", arguments.sets, "a set that runs; may be repeated: they run together")
      ->allow_extra_args(false);
  CLI::Option_group* setting = program.add_option_group("setting the supply");
  const auto wanted = [&](const char* option, std::string& pressure, const char* what) {
    setting->add_option(option, pressure, what)->type_name("PRESSURE");
  };
  wanted("--gauge", arguments.gauge, "sets the supply so that the gauge reads this, \"38 psi\"");
  wanted("--weakest", arguments.weakest, "sets it so that the weakest outlet has this, \"25 psi\"");
  std::string share;
  const CLI::Option* rated = setting->add_flag(
      "--rated{1}",
      share,
      "sets it so that every outlet has its rated pressure, or --rated=0.9 of it");
  setting->require_option(0, 1);
  program
      .add_option("--fault",
                  arguments.faults,
                  "line=\"row 2\", outlet=7, kind=\"head off\"; may be repeated")
      ->allow_extra_args(false);
  program
      .add_option(
          "--try", arguments.tries, "like --fault, but skipped and listed if it does not fit")
      ->allow_extra_args(false);
  program.add_flag("--break-every{kind=\"head off\"}",
                   arguments.break_every,
                   "breaks every outlet in turn: a head off, or --break-every='kind=\"riser "
                   "sheared\"'");
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
  output("--supply-svg",
         arguments.supply_svg,
         "also draws what the supply gives against what the lines ask (SVG)");
  program.add_flag("--sets", arguments.which_sets, "tells only which sets can run together");
  program.add_flag("--pocket", arguments.pocket, "prints only a short sheet for each set");
  try {
    program.parse(argc, argv);
    if (rated->count() > 0) arguments.rated = rated->as<double>();
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? all_serve : bad_input;
  }
  return check_line(arguments);
}

}  // namespace

int main(int argc, char** argv) {
  return ending_of([&] { return run(argc, argv); });
}
