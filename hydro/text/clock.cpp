#include "hydro/text/clock.hpp"

#include <cmath>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr long minutes_of_an_hour = 60;
constexpr long minutes_of_a_day = 24 * minutes_of_an_hour;

long minutes(const Time& time) {
  return std::lround(time / units::min);
}

}  // namespace

std::string clock(const Time& since_midnight) {
  const long all = minutes(since_midnight);
  const long days = all / minutes_of_a_day;
  const long of_the_day = all % minutes_of_a_day;
  return fmt::format("{:02}:{:02}{}",
                     of_the_day / minutes_of_an_hour,
                     of_the_day % minutes_of_an_hour,
                     days > 0 ? fmt::format("+{}", days) : "");
}

std::string in_words(const Time& duration) {
  const long all = minutes(duration);
  if (all == 0) return duration > Time{} ? "less than a minute" : "0 min";
  const long hours = all / minutes_of_an_hour;
  const long rest = all % minutes_of_an_hour;
  if (hours == 0) return fmt::format("{} min", rest);
  return rest == 0 ? fmt::format("{} h", hours) : fmt::format("{} h {} min", hours, rest);
}

}  // namespace hydro
