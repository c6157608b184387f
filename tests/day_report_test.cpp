// The watering day as a page, a table, a calendar and a picture: each against the plan it is made of.
#include "hydro/text/day_report.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/text/clock.hpp"
#include "hydro/text/day_calendar.hpp"
#include "hydro/text/day_csv.hpp"
#include "hydro/text/day_drawing.hpp"
#include "hydro/text/missed_report.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <limits>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include "picture.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::SizeIs;
using testing::StartsWith;
using units::h;
using units::min;

DayPlan planned(const Layout& layout, const DayOptions& options = {}) {
  return day_plan(layout,
                  {{.set = layout.sets()[0].name,
                    .need = WaterAmount{.depth = 0.5 * inch},
                    .ground = {.row_spacing = 30 * ft}},
                   {.set = layout.sets()[1].name, .time = 90 * min}},
                  options);
}

std::vector<std::string> rows_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> rows;
  for (std::string row; std::getline(stream, row);) rows.push_back(row);
  return rows;
}

// ---- times in words

TEST(Clock, IsToTheNearestMinute) {
  EXPECT_EQ(clock(0 * min), "00:00");
  EXPECT_EQ(clock(6 * h + 4.6 * min), "06:05");
  EXPECT_EQ(clock(23 * h + 59.6 * min), "00:00+1");
  EXPECT_EQ(clock(25.5 * h), "01:30+1");
  EXPECT_EQ(in_words(Time{}), "0 min");
  EXPECT_EQ(in_words(20 * units::s), "less than a minute");
  EXPECT_EQ(in_words(59.6 * min), "1 h");
  EXPECT_EQ(in_words(130 * min), "2 h 10 min");
}

// ---- the page

TEST(DayReport, HasTheNumbersOfThePlan) {
  const Layout farm = pumped_farm();
  const DayPlan plan = planned(farm, {.prices = {.of_pump_time = 7}});
  const std::string text = day_report(farm, plan);
  EXPECT_THAT(text, HasSubstr("All 2 sets get what they need"));
  for (const Turn& turn : plan.turns) {
    std::vector<std::string> rows = rows_of(text);
    const auto row = std::ranges::find_if(rows, [&](const std::string& it) {
      return it.find(clock(turn.start) + "  " + "  " + clock(turn.stop)) != std::string::npos;
    });
    ASSERT_NE(row, rows.end()) << text;
    std::istringstream cells(row->substr(row->find(clock(turn.stop)) + 5));
    double speed = 0, gauge = 0, flow = 0, volume = 0;
    cells >> speed >> gauge >> flow >> volume;
    EXPECT_NEAR(speed, *turn.speed / rpm, 0.5);
    EXPECT_NEAR(gauge, *turn.gauge_reading / psi, 0.05001);
    EXPECT_NEAR(flow, turn.flow / gpm, 0.05001);
    EXPECT_NEAR(volume, turn.pumped() / gallon, 0.5);
    EXPECT_THAT(*row, HasSubstr(turn.sets.front()));
  }
  EXPECT_THAT(text, HasSubstr("the pump runs for "));
  EXPECT_THAT(text, HasSubstr("It costs "));
  EXPECT_THAT(text, HasSubstr("stays with the roots"));
  EXPECT_THAT(text, HasSubstr("Cautions"));
  EXPECT_THAT(text, Not(HasSubstr("Left for another time")));
  for (const std::string& row : rows_of(text)) EXPECT_LE(row.size(), 88U) << row;
}

TEST(DayReport, TellsWhatIsLeft) {
  const Layout farm = pumped_farm();
  const std::string text =
      day_report(farm, planned(farm, {.earliest = 6 * h, .latest = 8 * h, .together = false}));
  EXPECT_THAT(text, HasSubstr("1 of the 2 sets does NOT get what it needs"));
  EXPECT_THAT(text, HasSubstr("Left for another time"));
  EXPECT_THAT(text, HasSubstr("high: the day is too short"));
  Supply weak = sample_pump();
  weak.pump->top_speed = weak.pump->speed = 1200 * rpm;
  const Layout poor = pumped_farm(weak);
  const std::string nothing = day_report(poor, planned(poor));
  EXPECT_THAT(nothing, HasSubstr("2 of the 2 sets do NOT get what they need: nothing runs"));
  EXPECT_THAT(nothing, HasSubstr("alone it passes a limit of the supply (the engine's top speed"));
}

TEST(DayReport, SpeaksTheUnitsThatAreAskedFor) {
  const Layout farm = pumped_farm();
  const std::string text = day_report(farm, planned(farm), {.units = UnitSystem::si});
  EXPECT_THAT(
      text,
      AllOf(HasSubstr("kPa"), HasSubstr("mm/h"), Not(HasSubstr("psi")), Not(HasSubstr(" gal"))));
}

TEST(DayReport, TellsHowSlowlyToClose) {
  const Layout farm = pumped_farm();
  const DayPlan plan = planned(farm);
  LineSurge surge{.line = "main",
                  .wall_known = true,
                  .closing = 0.1 * units::s,
                  .rise_at_once = 90 * psi,
                  .rise = 90 * psi,
                  .steady = 40 * psi,
                  .rating = 100 * psi,
                  .shortest_closing = 3.2 * units::s};
  EXPECT_THAT(day_report(farm, plan, {.surges = {surge}}),
              AllOf(HasSubstr("90.0     100.0       4 s"), Not(HasSubstr("taken for stiff"))));
  surge.rating = 160 * psi;
  EXPECT_THAT(day_report(farm, plan, {.surges = {surge}}),
              AllOf(HasSubstr("stopped within 0.1 s; the"), HasSubstr("130.0 psi in main")));
  surge.rating = {};
  surge.wall_known = false;
  EXPECT_THAT(day_report(farm, plan, {.surges = {surge}}), HasSubstr("taken for stiff"));
}

// ---- the table

TEST(DayCsv, HasEveryTurn) {
  const DayPlan plan = planned(pumped_farm());
  const UnderCommas commas;
  const std::vector<std::string> rows = rows_of(to_csv(plan));
  ASSERT_THAT(rows, SizeIs(plan.turns.size() + 1));
  EXPECT_THAT(rows[0], StartsWith("turn,sets,fill_from_s,start_s,stop_s,"));
  for (std::size_t i = 0; i < plan.turns.size(); ++i) {
    std::vector<double> numbers;
    std::istringstream cells(rows[i + 1]);
    for (std::string cell; std::getline(cells, cell, ',');) {
      double number = -1;
      std::from_chars(cell.data(), cell.data() + cell.size(), number);
      numbers.push_back(number);
    }
    ASSERT_THAT(numbers, SizeIs(14)) << rows[i + 1];
    const Turn& turn = plan.turns[i];
    EXPECT_EQ(numbers[2], si(turn.fill_from));
    EXPECT_EQ(numbers[4], si(turn.stop));
    EXPECT_EQ(numbers[5], si(*turn.speed));
    EXPECT_EQ(numbers[8], si(turn.flow));
    EXPECT_EQ(numbers[10], si(turn.let_out));
    EXPECT_EQ(numbers[12], si(turn.water_energy));
  }
  DayPlan spoilt = plan;
  spoilt.turns[0].flow = std::numeric_limits<double>::quiet_NaN() * gpm;
  EXPECT_THAT(refusal([&] { to_csv(spoilt); }), HasSubstr("turn 1: flow: is nan"));
}

// ---- the calendar, read as RFC 5545 says

struct Event {
  std::map<std::string, std::string> properties;
};

std::string unescaped(const std::string& text) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '\\') {
      plain += text[i];
      continue;
    }
    ++i;
    plain += i < text.size() && (text[i] == 'n' || text[i] == 'N') ? '\n' : text.at(i);
  }
  return plain;
}

std::vector<Event> read_calendar(const std::string& text) {
  EXPECT_THAT(text, EndsWith("\r\n"));
  std::vector<std::string> lines;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find("\r\n", begin);
    const std::string line = text.substr(begin, end - begin);
    EXPECT_LE(line.size(), 75U) << line;
    EXPECT_EQ(line.find_first_of("\r\n"), std::string::npos);
    // No line begins in the middle of a character.
    const std::size_t first = line.starts_with(' ') ? 1 : 0;
    EXPECT_NE(static_cast<unsigned char>(line.at(first)) & 0xC0U, 0x80U) << line;
    if (first == 1)
      lines.back() += line.substr(1);
    else
      lines.push_back(line);
    begin = end + 2;
  }
  EXPECT_EQ(lines.at(0), "BEGIN:VCALENDAR");
  EXPECT_EQ(lines.at(1), "VERSION:2.0");
  EXPECT_THAT(lines.at(2), StartsWith("PRODID:"));
  EXPECT_EQ(lines.back(), "END:VCALENDAR");
  std::vector<Event> events;
  bool inside = false;
  for (const std::string& line : lines) {
    if (line == "BEGIN:VEVENT") events.emplace_back();
    const std::size_t colon = line.find(':');
    if (inside && line != "END:VEVENT") {
      const bool is_new =
          events.back()
              .properties.emplace(line.substr(0, colon), unescaped(line.substr(colon + 1)))
              .second;
      EXPECT_TRUE(is_new) << line;
    }
    inside = line == "BEGIN:VEVENT" || (inside && line != "END:VEVENT");
  }
  return events;
}

TEST(DayCalendar, HasAnEventForEachTurn) {
  const Layout farm = pumped_farm();
  const DayPlan plan = planned(farm);
  const std::vector<Event> events = read_calendar(to_calendar(farm, plan, {2026, 6, 14}));
  ASSERT_THAT(events, SizeIs(plan.turns.size()));
  std::set<std::string> identifiers;
  for (const Event& event : events) {
    identifiers.insert(event.properties.at("UID"));
    EXPECT_EQ(event.properties.at("DTSTAMP"), "20260614T000000Z");
  }
  EXPECT_THAT(identifiers, SizeIs(events.size()));
  EXPECT_EQ(events[0].properties.at("DTSTART"), "20260614T060000");
  EXPECT_THAT(events[0].properties.at("SUMMARY"), StartsWith("Water low"));
  EXPECT_FALSE(events[0].properties.contains("LOCATION"));  // this farm has no name
  const Layout named({.pressure = 40 * psi}, {sample_row("row", 2)}, {}, {.name = "Plover, Flat"});
  DayPlan one;
  one.turns = {plan.turns[0]};
  EXPECT_EQ(read_calendar(to_calendar(named, one, {2026, 6, 14})).at(0).properties.at("LOCATION"),
            "Plover, Flat");
  EXPECT_THAT(events[0].properties.at("DESCRIPTION"),
              AllOf(HasSubstr("\nEngine at "), HasSubstr(" rpm.\n")));
  EXPECT_EQ(to_calendar(farm, plan, {2026, 6, 14}), to_calendar(farm, plan, {2026, 6, 14}));
}

TEST(DayCalendar, GoesOnAfterMidnightAndTheEndOfTheYear) {
  const Layout farm = pumped_farm();
  const DayPlan plan = planned(farm, {.earliest = 23.5 * h, .latest = 40 * h, .together = false});
  const std::vector<Event> events = read_calendar(to_calendar(farm, plan, {2027, 12, 31}));
  EXPECT_EQ(events.at(0).properties.at("DTSTART"), "20271231T233000");
  EXPECT_THAT(events.at(0).properties.at("DTEND"), StartsWith("20280101T0"));
}

TEST(DayCalendar, EscapesAndFoldsNames) {
  Turn turn{.sets = {"a,b;c\\d", "\xC3\xA4\xC3\xB6\xC3\xBC" + std::string(60, 'x')},
            .fill_from = 6 * h,
            .start = 6 * h,
            .stop = 7 * h};
  for (int i = 0; i < 60; ++i) turn.sets.push_back("\xE2\x82\xAC\xC3\xA9");
  DayPlan plan;
  plan.turns = {turn};
  const std::vector<Event> events = read_calendar(to_calendar(pumped_farm(), plan, {2026, 1, 1}));
  EXPECT_THAT(events.at(0).properties.at("SUMMARY"),
              AllOf(StartsWith("Water a,b;c\\d, \xC3\xA4\xC3\xB6\xC3\xBCxxx"),
                    EndsWith("\xE2\x82\xAC\xC3\xA9")));
  const std::string raw = to_calendar(pumped_farm(), plan, {2026, 1, 1});
  EXPECT_THAT(raw, HasSubstr("Water a\\,b\\;c\\\\d\\, "));
}

TEST(DayCalendar, RefusesDaysThatAreNone) {
  EXPECT_EQ(read_date("2028-02-29"), (CalendarDate{2028, 2, 29}));
  for (const char* text : {"2026-02-29",
                           "2026-13-01",
                           "2026-6-14",
                           "14.06.2026",
                           "",
                           "2026-06-1x",
                           "1800-01-01",
                           "2026-00-10",
                           "+026-06-14",
                           "2026-06-00"})
    EXPECT_THAT(refusal([&] { read_date(text); }), StartsWith("date: is ")) << text;
  const Layout farm = pumped_farm();
  EXPECT_THAT(refusal([&] {
                to_calendar(farm, {}, {2026, 2, 30});
              }),
              HasSubstr("2026-02-30, must be a day"));
}

// ---- the picture

TEST(DayDrawing, HasABarForEachTimeASetRuns) {
  const Layout farm = pumped_farm();
  const DayPlan plan = planned(farm, {.together = false});
  const Picture picture(to_svg_of_day(farm, plan));
  EXPECT_THAT(picture.title(), HasSubstr("the watering day"));
  const std::map<std::string, int> bars = picture.marks_by_class();
  EXPECT_EQ(bars.at("waters"), 2);
  EXPECT_EQ(bars.at("fills"), 2);
  EXPECT_EQ(bars.at("gives"), 2);
  EXPECT_TRUE(picture.has("low"));
  EXPECT_TRUE(picture.has("high"));
  EXPECT_TRUE(picture.has("06:00"));
  // Bars of one set after the other do not overlap, and lie where their hours do.
  std::vector<double> at;
  for (const Mark& mark : picture.marks)
    if (mark.what == "waters" && !mark.tip.empty()) at.push_back(mark.x);
  std::ranges::sort(at);
  double fills_at = 0;
  for (const Mark& mark : picture.marks)
    if (mark.what == "fills" && !mark.tip.empty() && (fills_at == 0 || mark.x < fills_at))
      fills_at = mark.x;
  const double px_per_s = (at[0] - fills_at) / si(plan.turns[0].start - plan.turns[0].fill_from);
  EXPECT_NEAR(at[1] - at[0],
              px_per_s * si(plan.turns[1].start - plan.turns[0].start),
              0.02 * (at[1] - at[0]));  // places are written to 0.1 px
}

TEST(DayDrawing, HasOneBarWhereASetRunsOnAndTwoWhereItRests) {
  const Layout farm = ouzel_strips({.pressure = 90 * psi});  // enough for all four rows at once
  const auto bars = [&](const Time& changeover) {
    const DayPlan plan =
        day_plan(farm,
                 {{.set = "rows 1 and 2", .time = 2 * h}, {.set = "rows 3 and 4", .time = 1 * h}},
                 {.changeover = changeover});
    return Picture(to_svg_of_day(farm, plan)).marks_by_class().at("waters");
  };
  EXPECT_EQ(bars(Time{}), 2);
  EXPECT_EQ(bars(10 * min), 3);
}

TEST(DayDrawing, TellsWhatIsLeftAndRefusesNoNumbers) {
  const Layout farm = pumped_farm();
  DayPlan plan = planned(farm, {.earliest = 6 * h, .latest = 8 * h, .together = false});
  const Picture picture(to_svg_of_day(farm, plan));
  EXPECT_TRUE(picture.has("needs " + in_words(*plan.sets[1].still_needs) + " more"));
  plan.turns[0].stop = std::numeric_limits<double>::quiet_NaN() * h;
  EXPECT_THAT(refusal([&] { to_svg_of_day(farm, plan); }), HasSubstr("finite"));
}

// ---- after a break

TEST(MissedReport, TellsHowMuchLonger) {
  const Layout strips = ouzel_strips().watering({"rows 1 and 2"});
  const Solution sound = solve(strips);
  const Solution broken = solve(strips.with_fault(riser_sheared("row 2", 7)));
  const Solution capped_one = solve(strips.with_fault(capped("row 2", 7)));
  const InterruptedRun run{100 * min, 40 * min, 65 * min};
  const MissedWater missed = missed_water(sound, broken, run, capped_one);
  const std::string text = missed_report(strips, missed, run, UnitSystem::us);
  const int minutes = static_cast<int>(std::ceil(missed.for_weakest / min));
  EXPECT_THAT(text, HasSubstr("run for " + in_words(minutes * min) + " more"));
  EXPECT_THAT(text, HasSubstr("row 2: outlet 7. Water its plants otherwise."));
  EXPECT_THAT(text, HasSubstr("were lost."));
  const MissedWater none = missed_water(sound, sound, {100 * min, 40 * min, 100 * min});
  EXPECT_THAT(missed_report(strips, none, {100 * min, 40 * min, 100 * min}),
              AllOf(HasSubstr("No outlet that works has missed any water"),
                    HasSubstr("nothing\n  was lost")));
}

}  // namespace
}  // namespace hydro
