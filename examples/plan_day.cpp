// plan_day: reads a description file with sets, and plans the day in which they are watered.
//
//   plan_day FILE [--set "NAME=2 h" | --set "NAME=0.5 in" | --set "NAME=1 gal"]...
//            [--depth DEPTH | --time TIME] [--from 06:00] [--to 20:00]
//            [--row-spacing "30 ft" | --row-spacing "NAME=20 ft"]...
//            [--outlets-per-plant 2 | --outlets-per-plant "NAME=2"]...
//            [--changeover TIME] [--one-by-one] [--effective-portion SHARE] [--intake-rate RATE]
//            [--price-of-water MONEY] [--price-of-energy MONEY] [--price-of-pump-hour MONEY]
//            [--csv FILE] [--svg FILE] [--date 2026-06-14 --calendar FILE] [--units us|si]
//
// The report goes to standard output, once the files that are asked for are written: each whole or
// not at all. Without --set all sets of the file are watered, in its order; without --depth and --time
// too, those whose ground needs it today, by the file's [weather] and [block.NAME].
//
// Exit status: 0 every set gets what it needs; 1 some do not: the day is too short, or the supply
// does not serve them; 2 bad input; 3 not solved.

#include "hydro/hydro.hpp"

#include <charconv>
#include <filesystem>
#include <iostream>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

#include "ending.hpp"
#include "progress.hpp"
#include <CLI/CLI.hpp>

namespace {

enum ExitStatus { all_fits = 0, some_is_left = 1, bad_input = 2 };

struct Arguments {
  std::string file;
  std::vector<std::string> sets;               // "NAME", "NAME=2 h", "NAME=0.5 in", "NAME=1 gal"
  std::vector<std::string> row_spacings;       // "30 ft", "NAME=30 ft"
  std::vector<std::string> outlets_per_plant;  // "2", "NAME=2"
  std::string depth;  // for sets that are not given their own; empty: not given
  std::string time;
  std::string from = "06:00";
  std::string to = "20:00";
  std::string changeover;
  bool one_by_one = false;
  double effective_portion = hydro::RunTimeOptions{}.effective_portion;
  std::string intake_rate;
  std::optional<double> price_of_volume;  // of 1000 gal or 1 m3
  std::optional<double> price_of_energy;  // of a kWh at the shaft
  std::optional<double> price_of_pump_hour;
  std::string date;
  std::string calendar;  // files: empty where they are not asked for
  std::string csv;
  std::string svg;
  std::string units;
};

template <class Q>
Q read(const char* option, const std::string& text) {
  try {
    return hydro::from_text<Q>(text);
  } catch (const hydro::InvalidInput& error) {
    throw hydro::InvalidInput(option, error.what());
  }
}

/// "06:30" since midnight, up to 24:00.
hydro::Time read_clock(const char* option, std::string_view text) {
  const auto number = [](std::string_view digits) {
    int value = 0;
    const char* const end = digits.data() + digits.size();
    const auto [stop, error] = std::from_chars(digits.data(), end, value);
    return error == std::errc{} && stop == end && digits.size() == 2 && value >= 0 ? value : -1;
  };
  const std::size_t colon = text.find(':');
  const int hours = number(text.substr(0, colon));
  const int minutes = colon == std::string_view::npos ? -1 : number(text.substr(colon + 1));
  if (hours < 0 || minutes < 0 || minutes > 59 || hours * 60 + minutes > 24 * 60)
    throw hydro::InvalidInput(option,
                              "is " + hydro::in_quotes(text) + ", must be from 00:00 to 24:00");
  return (hours * 60 + minutes) * hydro::units::min;
}

/// What stands before and after the last "=".
std::pair<std::string, std::string> parted(const std::string& text) {
  const std::size_t equals = text.rfind('=');
  if (equals == std::string::npos) return {text, ""};
  return {text.substr(0, equals), text.substr(equals + 1)};
}

/// A time, a depth or a volume, whichever it is.
void ask_for(hydro::SetToWater& set, const char* option, const std::string& text) {
  const auto reads = [&](auto quantity) -> std::optional<decltype(quantity)> {
    try {
      return hydro::from_text<decltype(quantity)>(text);
    } catch (const hydro::InvalidInput&) {  // then it is something else
      return std::nullopt;
    }
  };
  if (const auto time = reads(hydro::Time{}))
    set.time = time;
  else if (const auto depth = reads(hydro::Length{}))
    set.need = hydro::WaterAmount{.depth = depth};
  else if (const auto volume = reads(hydro::Volume{}))
    set.need = hydro::WaterAmount{.per_plant = volume};
  else
    throw hydro::InvalidInput(option,
                              "is " + hydro::in_quotes(text) +
                                  ", must be a time, \"2 h\", a depth of water, \"0.5 in\", or "
                                  "a volume for each plant, \"1 gal\"");
}

std::vector<hydro::SetToWater> sets_to_water(const hydro::Layout& layout,
                                             const Arguments& arguments) {
  std::vector<hydro::SetToWater> sets;
  if (arguments.sets.empty())
    for (const hydro::WateringSet& set : layout.sets()) sets.push_back({.set = set.name});
  for (const std::string& text : arguments.sets) {
    const auto [name, what] = parted(text);
    sets.push_back({.set = name});
    if (!what.empty()) ask_for(sets.back(), "--set", what);
  }
  const std::string& all = arguments.depth.empty() ? arguments.time : arguments.depth;
  const char* const for_all = arguments.depth.empty() ? "--time" : "--depth";
  for (hydro::SetToWater& set : sets) {
    if (set.time || set.need) continue;
    if (all.empty())
      throw hydro::InvalidInput("--set",
                                hydro::in_quotes(set.set) +
                                    " is asked for without a time or a depth; give it, --set \"" +
                                    set.set + "=2 h\", or --time or --depth for all");
    if (arguments.depth.empty())
      set.time = read<hydro::Time>(for_all, all);
    else
      set.need = hydro::WaterAmount{.depth = read<hydro::Length>(for_all, all)};
  }
  const auto for_each_named = [&](const char* option, const std::string& text, auto give) {
    const auto [name, value] = parted(text);
    bool some = false;
    for (hydro::SetToWater& set : sets)
      if (value.empty() || set.set == name) {
        give(set.ground, value.empty() ? name : value);
        some = true;
      }
    if (!some)
      throw hydro::InvalidInput(option,
                                "names " + hydro::in_quotes(name) + ", no set that is watered");
  };
  for (const std::string& text : arguments.row_spacings)
    for_each_named("--row-spacing", text, [](hydro::Ground& ground, const std::string& spacing) {
      ground.row_spacing = read<hydro::Length>("--row-spacing", spacing);
    });
  for (const std::string& text : arguments.outlets_per_plant)
    for_each_named(
        "--outlets-per-plant", text, [](hydro::Ground& ground, const std::string& number) {
          double count = 0;
          const char* const end = number.data() + number.size();
          const auto [stop, error] = std::from_chars(number.data(), end, count);
          if (error != std::errc{} || stop != end)
            throw hydro::InvalidInput("--outlets-per-plant",
                                      "is " + hydro::in_quotes(number) + ", must be a number");
          ground.outlets_per_plant = count;
        });
  return sets;
}

/// By weather and blocks of the file.
struct Needed {
  std::string report;
  hydro::TodaysSets sets;
};

Needed needed_today(const hydro::Layout& layout, const std::string& file, hydro::UnitSystem units) {
  const hydro::Blocks read = hydro::read_blocks(file);
  if (!read.weather || read.blocks.empty())
    throw hydro::InvalidInput(
        file,
        "has no [weather] and [block.NAME] to tell what the ground needs; give "
        "them, or --set, --depth or --time");
  const hydro::ReferenceEvapotranspiration weather =
      hydro::reference_evapotranspiration(*read.weather);
  std::vector<hydro::WaterNeed> needs;
  for (const hydro::Block& block : read.blocks)
    needs.push_back(hydro::water_need_today(block, read.since_rain, weather.rate));
  return {hydro::need_report(read.blocks, needs, weather, units),
          hydro::todays_sets(layout, read.blocks, needs)};
}

hydro::DayOptions day_options(const Arguments& arguments, hydro::UnitSystem units) {
  hydro::DayOptions options{.earliest = read_clock("--from", arguments.from),
                            .latest = read_clock("--to", arguments.to),
                            .together = !arguments.one_by_one};
  if (!arguments.changeover.empty())
    options.changeover = read<hydro::Time>("--changeover", arguments.changeover);
  options.soil.effective_portion = arguments.effective_portion;
  if (!arguments.intake_rate.empty())
    options.soil.intake_rate = read<hydro::Velocity>("--intake-rate", arguments.intake_rate);
  options.prices = {.of_volume = arguments.price_of_volume,
                    .volume = units == hydro::UnitSystem::us ? 1000 * hydro::gallon : 1 * hydro::m3,
                    .of_energy = arguments.price_of_energy,
                    .of_pump_time = arguments.price_of_pump_hour};
  return options;
}

/// Of every turn, with the supply as it is set for it.
std::vector<hydro::LineSurge> surges_of(const hydro::Layout& layout, const hydro::DayPlan& plan) {
  std::vector<hydro::LineSurge> all;
  for (const hydro::Turn& turn : plan.turns) {
    const hydro::Setting setting =
        hydro::set_for_rated_if_possible(layout.without_faults().watering(turn.sets));
    for (hydro::LineSurge& surge : hydro::surges(setting.solution)) all.push_back(std::move(surge));
  }
  return all;
}

/// Nothing that is written may take the place of the description.
void require_other_file(const std::string& option,
                        const std::string& output,
                        const std::string& description) {
  std::error_code none_there;
  if (std::filesystem::equivalent(output, description, none_there))
    throw hydro::InvalidInput(option, output + " is the description itself, and would be lost");
}

int plan_day(const Arguments& arguments) {
  require_other_file("--csv", arguments.csv, arguments.file);
  require_other_file("--svg", arguments.svg, arguments.file);
  require_other_file("--calendar", arguments.calendar, arguments.file);
  if (arguments.date.empty() != arguments.calendar.empty())
    throw hydro::InvalidInput("--calendar", "needs --date, and --date is for it alone");
  const hydro::Layout layout = hydro::read_layout(arguments.file);
  if (layout.sets().empty())
    throw hydro::InvalidInput(arguments.file, "has no [[set]]; a day is planned of sets");
  const hydro::UnitSystem units = arguments.units.empty()   ? layout.units()
                                  : arguments.units == "us" ? hydro::UnitSystem::us
                                                            : hydro::UnitSystem::si;
  const bool is_told =
      !arguments.sets.empty() || !arguments.depth.empty() || !arguments.time.empty();
  std::string text;
  std::vector<hydro::SetToWater> sets;
  if (is_told) {
    sets = sets_to_water(layout, arguments);
  } else {
    Needed needed = needed_today(layout, arguments.file, units);
    text = needed.report + "\n";
    sets = std::move(needed.sets.to_water);
    if (sets.empty()) {
      std::cout << text << "No set need run today.\n";
      return all_fits;
    }
  }
  const hydro::DayPlan plan =
      hydro::day_plan(layout, sets, day_options(arguments, units), with_progress());
  text += hydro::day_report(layout, plan, {.units = units, .surges = surges_of(layout, plan)});
  if (!arguments.csv.empty()) hydro::write_file(arguments.csv, hydro::to_csv(plan));
  if (!arguments.svg.empty())
    hydro::write_file(arguments.svg, hydro::to_svg_of_day(layout, plan, {.units = units}));
  if (!arguments.calendar.empty())
    hydro::write_file(arguments.calendar,
                      hydro::to_calendar(layout, plan, hydro::read_date(arguments.date), units));
  if (!(std::cout << text).flush()) throw hydro::InvalidInput("report", "cannot be written");
  return plan.all_fits() ? all_fits : some_is_left;
}

int run(int argc, char** argv) {
  CLI::App program{"When to water which sets of FILE, with what, and what it takes."};
  program.footer(
      "Exit status: 0 every set gets what it needs; 1 some do not; 2 bad input; 3 not solved.");
  Arguments arguments;
  program.add_option("FILE", arguments.file, "description of the lines, with sets (TOML)")
      ->required();
  program
      .add_option("--set",
                  arguments.sets,
                  "a set that is watered, and for how long, how deep, or how much to each plant: "
                  "\"tunnel=2 h\", \"rows 1 and 2=0.5 in\", \"hop rows=1 gal\"; may be repeated; "
                  "default all sets of the file")
      ->allow_extra_args(false);
  CLI::Option* const depth =
      program.add_option("--depth", arguments.depth, "for sets without their own, \"0.5 in\"");
  program.add_option("--time", arguments.time, "for sets without their own, \"2 h\"")
      ->excludes(depth);
  program
      .add_option("--row-spacing",
                  arguments.row_spacings,
                  "from line to line, of all sets, \"30 ft\", or of one, \"peony beds=20 ft\"")
      ->allow_extra_args(false);
  program
      .add_option("--outlets-per-plant",
                  arguments.outlets_per_plant,
                  "of all sets, \"2\", or of one, \"hop rows=2\"")
      ->allow_extra_args(false);
  program.add_option("--from", arguments.from, "the pump may run from")->capture_default_str();
  program.add_option("--to", arguments.to, "and to")->capture_default_str();
  program.add_option("--changeover", arguments.changeover, "between two turns, \"5 min\"");
  program.add_flag("--one-by-one", arguments.one_by_one, "never two sets at once");
  program
      .add_option("--effective-portion",
                  arguments.effective_portion,
                  "of the water let out that comes to the soil")
      ->capture_default_str();
  program.add_option("--intake-rate", arguments.intake_rate, "of the soil, \"0.3 in/h\"");
  program.add_option("--price-of-water", arguments.price_of_volume, "for 1000 gal, or 1 m3");
  program.add_option("--price-of-energy", arguments.price_of_energy, "for 1 kWh at the shaft");
  program.add_option("--price-of-pump-hour", arguments.price_of_pump_hour, "for 1 h");
  program.add_option("--date", arguments.date, "of the calendar, 2026-06-14");
  const auto output = [&](const char* option, std::string& file, const char* what) {
    program.add_option(option, file, what)->type_name("FILE")->check([](const std::string& name) {
      return std::string(name.empty() ? "is empty, must name a file" : "");
    });
  };
  output("--calendar", arguments.calendar, "also writes the turns as events (iCalendar)");
  output("--csv", arguments.csv, "also writes a table of the turns (CSV, SI units)");
  output("--svg", arguments.svg, "also draws the day (SVG)");
  program.add_option("--units", arguments.units, "us or si; default those of the file")
      ->check(CLI::IsMember({"us", "si"}));
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? all_fits : bad_input;
  }
  return plan_day(arguments);
}

}  // namespace

int main(int argc, char** argv) {
  return ending_of([&] { return run(argc, argv); });
}
