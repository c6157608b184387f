// day_calendar.hpp: the watering day as a calendar file (iCalendar), for a telephone or an office.
//
// What      One event for each turn, from the filling of the lines to the stop, with what to set in its
//           description. Times are those of the farm's clock, wherever the calendar is read.
// Source    RFC 5545: VCALENDAR and VEVENT; lines end in CR LF and are folded after 75 octets, never
//           inside a character (3.1); texts are escaped (3.3.11); "floating" date with local time
//           (3.3.5, form 1).
// Range     Names must be UTF-8. To the second. The same plan, farm and date give the same file, and
//           the same identifiers of events, so that a calendar that reads it again replaces them;
//           DTSTAMP is midnight of the date.
// Errors    InvalidInput for a date that is none, or a number that is not finite.
// Threads   Pure function.
// Example   examples/plan_day.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/watering/day_plan.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace hydro {

/// A day of the Gregorian calendar.
struct CalendarDate {
  int year = 0;  ///< 1900 to 9999
  int month = 0;
  int day = 0;
  bool operator==(const CalendarDate&) const = default;
};

/// "2026-06-14", as in ISO 8601. @throws InvalidInput
CalendarDate read_date(std::string_view text);

/// @param units of the descriptions, default those of the site @throws InvalidInput
std::string to_calendar(const Layout& layout,
                        const DayPlan& plan,
                        const CalendarDate& date,
                        std::optional<UnitSystem> units = {});

}  // namespace hydro
