#include "hydro/diagnosis/possible_readings.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace hydro {
namespace {

constexpr std::array all_places{ReadingPlace::supply_gauge,
                                ReadingPlace::after_filter,
                                ReadingPlace::line_inlet,
                                ReadingPlace::pipe,
                                ReadingPlace::riser,
                                ReadingPlace::jet,
                                ReadingPlace::flush_end,
                                ReadingPlace::meter,
                                ReadingPlace::bucket,
                                ReadingPlace::engine};

}  // namespace

std::vector<int> tried_outlets(const Line& line, int most) {
  const int count = line.outlet_count();
  std::vector<int> tried;
  if (count <= most) {
    for (int number = 1; number <= count; ++number) tried.push_back(number);
    return tried;
  }
  for (int i = 0; i < most; ++i) {
    const double share = most == 1 ? 0.5 : static_cast<double>(i) / (most - 1);
    tried.push_back(1 + static_cast<int>(std::lround(share * (count - 1))));
  }
  return tried;
}

std::vector<Reading> possible_readings(const Layout& layout,
                                       const std::vector<ReadingPlace>& places,
                                       int most_of_a_line) {
  std::vector<Reading> possible;
  const auto add = [&](const Reading& reading) {
    if (problems_of_place(reading, layout).empty()) possible.push_back(reading);
  };
  for (const ReadingPlace place : all_places) {
    if (!places.empty() && std::ranges::find(places, place) == places.end()) continue;
    if (!is_on_line(place)) {
      add({.place = place});
      continue;
    }
    for (const Line& line : layout.lines()) {
      if (!is_at_outlet(place)) {
        add({.place = place, .line = line.name});
        continue;
      }
      for (const int outlet : tried_outlets(line, most_of_a_line))
        add({.place = place, .line = line.name, .outlet = outlet});
    }
  }
  return possible;
}

Length way_to(const Layout& layout, std::size_t line, const Length& place) {
  Length way = place;
  for (std::optional<std::size_t> feeder = layout.feeder_of(line); feeder;
       feeder = layout.feeder_of(line)) {
    way += begins_at(layout.lines()[line], layout.lines()[*feeder]);
    line = *feeder;
  }
  return way;
}

Length way_to(const Layout& layout, const Reading& reading) {
  if (!is_on_line(reading.place)) return {};
  const std::size_t l = layout.index_of(reading.line);
  const Line& line = layout.lines()[l];
  if (is_at_outlet(reading.place)) return way_to(layout, l, line.place_of(reading.outlet));
  return way_to(
      layout, l, reading.place == ReadingPlace::flush_end ? line.whole_length() : Length{});
}

}  // namespace hydro
