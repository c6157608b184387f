#include "hydro/text/day_calendar.hpp"

#include "hydro/quantities/error.hpp"
#include "hydro/text/clock.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/finite.hpp"

#include <charconv>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

/// The content lines of RFC 5545.
class ContentLines {
 public:
  /// A value that is no text: it is not escaped.
  void value(std::string_view name, std::string_view value) {
    fold(fmt::format("{}:{}", name, value));
  }
  void text(std::string_view name, std::string_view text) {
    std::string line = fmt::format("{}:", name);
    for (const char c : text) {
      if (c == '\n') {
        line += "\\n";
        continue;
      }
      if (c == '\\' || c == ';' || c == ',') line += '\\';
      line += c;
    }
    fold(line);
  }
  std::string take() { return std::move(text_); }

 private:
  static constexpr std::size_t most_octets = 75;

  void fold(std::string_view line) {
    std::size_t room = most_octets;
    while (line.size() > room) {
      std::size_t end = room;
      while (end > 1 && is_inside_a_character(line[end])) --end;
      (text_ += line.substr(0, end)) += "\r\n ";
      line.remove_prefix(end);
      room = most_octets - 1;  // a blank begins the next
    }
    (text_ += line) += "\r\n";
  }
  static bool is_inside_a_character(char c) {  // of UTF-8
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
  }

  std::string text_;
};

std::chrono::sys_days days_of(const CalendarDate& date) {
  const std::chrono::year_month_day day{std::chrono::year{date.year},
                                        std::chrono::month{static_cast<unsigned>(date.month)},
                                        std::chrono::day{static_cast<unsigned>(date.day)}};
  constexpr int first_year = 1900;
  constexpr int last_year = 9998;  // a plan may end on the day after the next
  if (!(date.year >= first_year && date.year <= last_year && date.month >= 1 && date.day >= 1 &&
        day.ok()))
    throw InvalidInput("date",
                       fmt::format("is {:04}-{:02}-{:02}, must be a day of the years {} to {}",
                                   date.year,
                                   date.month,
                                   date.day,
                                   first_year,
                                   last_year));
  return std::chrono::sys_days(day);
}

/// "20260614T060500", of the farm's clock.
std::string local_time(const std::chrono::sys_days& date, const Time& since_midnight) {
  require_finite(si(since_midnight), [] { return "a time of the plan"; });
  constexpr long long seconds_of_a_day = 86400;
  const long long all = std::llround(since_midnight / units::s);
  const std::chrono::year_month_day day(date + std::chrono::days(all / seconds_of_a_day));
  const long long left = all % seconds_of_a_day;
  return fmt::format("{:04}{:02}{:02}T{:02}{:02}{:02}",
                     static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()),
                     left / 3600,
                     left / 60 % 60,
                     left % 60);
}

/// FNV-1a, 64 bits: the same for the same text on every machine.
std::uint64_t mark_of(std::string_view text) {
  std::uint64_t mark = 14695981039346656037ULL;
  for (const char c : text) mark = (mark ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  return mark;
}

std::string joined(const std::vector<std::string>& names) {
  std::string list;
  for (const std::string& name : names) list += (list.empty() ? "" : ", ") + name;
  return list;
}

/// What to set, and what comes of it.
std::string description(const Turn& turn, const Figures& figures) {
  std::string text;
  if (turn.fill > Volume{})
    text += fmt::format("Fill the lines from {}, with vents open.\n", clock(turn.fill_from));
  text += fmt::format("Water from {} to {}.\n", clock(turn.start), clock(turn.stop));
  if (turn.speed) text += fmt::format("Engine at {}.\n", figures.speed(*turn.speed));
  text += fmt::format("{} at {}.\n",
                      turn.gauge_reading ? "Gauge" : "Supply",
                      figures.pressure_with_unit(turn.gauge_reading.value_or(turn.pressure)));
  const UnitSet& shown = figures.units();
  text += fmt::format("{}, {:.0f} {} in all.",
                      figures.flow_with_unit(turn.flow),
                      turn.pumped() / shown.volume,
                      shown.volume.symbol);
  return text;
}

}  // namespace

CalendarDate read_date(std::string_view text) {
  const auto number = [&](std::size_t at, std::size_t digits) {
    int value = 0;
    const char* const end = text.data() + at + digits;
    const auto [stop, error] = std::from_chars(text.data() + at, end, value);
    return error == std::errc{} && stop == end && value >= 0 ? value : -1;
  };
  constexpr std::size_t length = 10;
  CalendarDate date{-1, -1, -1};
  if (text.size() == length && text[4] == '-' && text[7] == '-')
    date = {number(0, 4), number(5, 2), number(8, 2)};
  if (date.year < 0 || date.month < 0 || date.day < 0)
    throw InvalidInput("date", "is " + in_quotes(text) + ", must be like 2026-06-14");
  days_of(date);
  return date;
}

std::string to_calendar(const Layout& layout,
                        const DayPlan& plan,
                        const CalendarDate& date,
                        std::optional<UnitSystem> units) {
  const Figures figures(units.value_or(layout.units()));
  const std::chrono::sys_days days = days_of(date);
  const std::string& farm = layout.site().name;
  ContentLines lines;
  lines.value("BEGIN", "VCALENDAR");
  lines.value("VERSION", "2.0");
  lines.value("PRODID", "-//hydro//watering day//EN");
  for (std::size_t i = 0; i < plan.turns.size(); ++i) {
    const Turn& turn = plan.turns[i];
    const std::string sets = joined(turn.sets);
    const std::string start = local_time(days, turn.fill_from);
    lines.value("BEGIN", "VEVENT");
    lines.value("UID",
                fmt::format("{}-{}-{:016x}@hydro.invalid",
                            start,
                            i + 1,
                            mark_of(fmt::format("{}\n{}", farm, sets))));
    lines.value("DTSTAMP", local_time(days, Time{}) + "Z");
    lines.value("DTSTART", start);
    lines.value("DTEND", local_time(days, turn.stop));
    lines.text("SUMMARY", "Water " + sets);
    lines.text("DESCRIPTION", description(turn, figures));
    if (!farm.empty()) lines.text("LOCATION", farm);
    lines.value("END", "VEVENT");
  }
  lines.value("END", "VCALENDAR");
  return lines.take();
}

}  // namespace hydro
