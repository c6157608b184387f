// watering_text.cpp: ground and weather in; the watering day and what was missed out.

#include "hydro/text/day_calendar.hpp"
#include "hydro/text/day_drawing.hpp"
#include "hydro/text/day_report.hpp"
#include "hydro/text/missed_report.hpp"
#include "hydro/text/need_report.hpp"
#include "hydro/text/read_blocks.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {

/// Python has dates of its own.
template <>
struct Type<CalendarDate> {
  static std::string accepts() { return "datetime.date"; }
  static CalendarDate from(py::handle given, const Where& where) {
    if (!py::isinstance(given, py::module_::import("datetime").attr("date")))
      refuse(where, given, "date", "write datetime.date(2026, 6, 14)", "");
    return {.year = given.attr("year").cast<int>(),
            .month = given.attr("month").cast<int>(),
            .day = given.attr("day").cast<int>()};
  }
};

namespace {

const std::string day = example_row +
                        ">>> farm = Layout(Supply(pressure=40 * psi), [row],\n"
                        "...               sets=[WateringSet(name=\"one\", lines=[\"row 1\"])])\n"
                        ">>> plan = day_plan(farm, [SetToWater(set=\"one\", time=2 * units.h)])\n";

void bind_blocks(py::module_& module) {
  Record<Blocks>("Blocks", "What a description file tells of ground and weather.")
      .field("blocks", &Blocks::blocks, "In the order of their names.")
      .field("weather", &Blocks::weather, "None: the file has no [weather].")
      .field("since_rain", &Blocks::since_rain, "Of [weather]: days_since_rain, rain.")
      .result(module);
  def(
      module,
      "read_blocks",
      [](const std::filesystem::path& file, const FileLimits& limits) {
        return read_blocks(file, limits);
      },
      {"file", {"limits", py::cast(FileLimits{}), Passing::by_name}},
      "Reads the tables [block.NAME] and [weather] of a description file; read_layout reads the "
      "rest. limits: how much it may hold. InvalidInput with every mistake, each with file, line "
      "and column.\n\n"
      ">>> read_blocks(\"examples/ouzel_strips.toml\").blocks\n"
      "[]");
  def(
      module,
      "read_blocks_text",
      [](const std::string& text, const std::string& name, const FileLimits& limits) {
        return read_blocks_text(text, name, limits);
      },
      {"text", {"name", py::str("text")}, {"limits", py::cast(FileLimits{}), Passing::by_name}},
      "The same from text; `name` stands for the file in errors.\n\n"
      ">>> text = \"\"\"\n"
      "... weather = { reference_evapotranspiration = \"5 mm/day\" }\n"
      "... block.bed = { lines = [], crop = \"potato\", season_day = 60, region = \"Europe\" }\n"
      "... \"\"\"\n"
      ">>> read_blocks_text(text).blocks[0].crop\n"
      "'potato'");
}

void bind_need(py::module_& module) {
  def(
      module,
      "need_report",
      [](const std::vector<Block>& blocks,
         const std::vector<WaterNeed>& needs,
         const ReferenceEvapotranspiration& weather,
         UnitSystem units) { return need_report(blocks, needs, weather, units); },
      {"blocks", "needs", "weather", "units"},
      "Which blocks need water today, and how much, as a grower reads it. needs: one for each of "
      "the blocks, in their order. units: \"us\" or \"si\".\n\n"
      ">>> rate = 5 * mm_per_day\n"
      ">>> bed = Block(name=\"bed\", crop_coefficient=1.2, root_depth=0.8 * m,\n"
      "...             allowed_depletion=0.4, soil=Soil(available_water=0.2))\n"
      ">>> need = water_need(bed, [], WaterDay(reference_evapotranspiration=rate))\n"
      ">>> weather = reference_evapotranspiration(Weather(reference_evapotranspiration=rate))\n"
      ">>> \"bed\" in need_report([bed], [need], weather, \"si\")\n"
      "True");
}

void bind_day(py::module_& module) {
  def(
      module,
      "day_report",
      [](const Layout& layout,
         const DayPlan& plan,
         std::optional<UnitSystem> units,
         const std::vector<LineSurge>& surges) {
        return day_report(layout, plan, {.units = units, .surges = surges});
      },
      {"layout",
       "plan",
       may_be_left_out("units", Passing::by_name),
       {"surges", py::tuple(), Passing::by_name}},
      ("The watering day as a page that a grower reads. plan: of the layout. units: \"us\" or "
       "\"si\", default those of the site. surges: of a turn, or of several: the worst are "
       "told.\n\n" +
       day +
       ">>> \"one\" in day_report(farm, plan)\n"
       "True")
          .c_str());
  def(
      module,
      "to_calendar",
      [](const Layout& layout,
         const DayPlan& plan,
         const CalendarDate& date,
         std::optional<UnitSystem> units) { return to_calendar(layout, plan, date, units); },
      {"layout", "plan", "date", may_be_left_out("units", Passing::by_name)},
      ("The watering day as a calendar file (iCalendar, RFC 5545): one event for each turn, at the "
       "farm's own time wherever it is read. date: of the years 1900 to 9999. units: of the "
       "descriptions, as in day_report.\n\n" +
       day +
       ">>> import datetime\n"
       ">>> to_calendar(farm, plan, datetime.date(2026, 6, 14)).splitlines()[0]\n"
       "'BEGIN:VCALENDAR'")
          .c_str());
  def(
      module,
      "to_svg_of_day",
      [](const Layout& layout, const DayPlan& plan, std::optional<UnitSystem> units) {
        return to_svg_of_day(layout, plan, {.units = units});
      },
      {"layout", "plan", may_be_left_out("units", Passing::by_name)},
      ("The watering day as bars over its hours, as an SVG picture. units: as in day_report.\n\n" +
       day +
       ">>> to_svg_of_day(farm, plan).count(\"<svg \")\n"
       "1")
          .c_str());
}

void bind_missed(py::module_& module) {
  def(
      module,
      "missed_report",
      [](const Layout& layout,
         const MissedWater& missed,
         const InterruptedRun& run,
         std::optional<UnitSystem> units) { return missed_report(layout, missed, run, units); },
      {"layout", "missed", "run", may_be_left_out("units", Passing::by_name)},
      ("What to make up after a break, as a page that a grower reads. missed: of the layout, in "
       "this run. units: as in day_report.\n\n" +
       example_row +
       ">>> run = InterruptedRun(planned=2 * units.h, broke=1 * units.h, stopped=1.5 * units.h)\n"
       ">>> broken = solve(farm.with_fault(end_open(\"row 1\")))\n"
       ">>> missed = missed_water(solve(farm), broken, run)\n"
       ">>> \"row 1\" in missed_report(farm, missed, run)\n"
       "True")
          .c_str());
}

}  // namespace

void bind_watering_text(py::module_& module) {
  bind_blocks(module);
  bind_need(module);
  bind_day(module);
  bind_missed(module);
}

}  // namespace hydro::bindings
