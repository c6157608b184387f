#include "hydro/what_ifs/more_outlets.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/what_ifs/laid.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr Range<Length> some_spacing{1e-6, 100, km};

void examine(const Line& line, const MoreOutlets& more, int count) {
  Examination examination;
  examination.within("count", count, 0, most_outlets);
  examination.within("spacing", more.spacing, some_spacing);
  if (more.outlet) examination.include("outlet", problems(*more.outlet));
  if (line.outlet_count() == 0)
    examination.add("line", "is " + in_quotes(line.name) + ", which has no outlets");
  if (more.where == AddedWhere::beyond && !line.joins.empty())
    examination.add("line",
                    "is " + in_quotes(line.name) + ", whose far end joins line " +
                        in_quotes(line.joins) + "; outlets can only be added between");
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

std::vector<PlacedOutlet> placed(const Line& line) {
  std::vector<PlacedOutlet> all;
  for (int number = 1; number <= line.outlet_count(); ++number)
    all.push_back({line.place_of(number), line.kind_of(number)});
  return all;
}

void place(Line& line, std::vector<PlacedOutlet> outlets) {
  line.outlet.reset();
  line.count.reset();
  line.spacing.reset();
  line.first_at.reset();
  line.outlets = std::move(outlets);
}

Line grown(const Line& line, const MoreOutlets& more, int count) {
  const int before = line.outlet_count();
  const Length spacing = spacing_of(line, more.spacing);
  const Outlet& kind = more.outlet ? *more.outlet : line.kind_of(before);
  Line longer = line;
  if (line.outlets.empty() && line.spacing == spacing && line.outlet == kind) {
    longer.count = before + count;
  } else {
    std::vector<PlacedOutlet> outlets = placed(line);
    const Length last = line.place_of(before);
    for (int i = 1; i <= count; ++i)
      outlets.push_back({last + static_cast<double>(i) * spacing, kind});
    place(longer, std::move(outlets));
  }
  if (line.length) longer.length = std::max(*line.length, longer.place_of(before + count));
  if (line.ground_rise)
    longer.ground_rise = *line.ground_rise * (longer.whole_length() / line.whole_length());
  if (!line.elevations.empty())
    longer.elevations.resize(static_cast<std::size_t>(before) + static_cast<std::size_t>(count),
                             line.elevations.back());
  return longer;
}

/// By gap between two outlets, from the inlet on: how many have a place there.
std::vector<std::int64_t> places_in_gaps(const Line& line, const MoreOutlets& more) {
  const Length nearest = std::max(more.spacing.value_or(same_place), same_place);
  std::vector<std::int64_t> places;
  for (int number = 2; number <= line.outlet_count(); ++number) {
    const Length gap = line.place_of(number) - line.place_of(number - 1);
    const double parts = std::floor((gap + 1e-6 * nearest) / nearest);
    places.push_back(std::max(std::int64_t{0}, static_cast<std::int64_t>(parts) - 1));
  }
  return places;
}

/// Likewise: how many are put there.
std::vector<int> put_in_gaps(const Line& line, const MoreOutlets& more, int count) {
  const std::vector<std::int64_t> places = places_in_gaps(line, more);
  std::vector<int> put(places.size(), 0);
  for (int left = count; left > 0;) {
    const int before = left;
    for (std::size_t gap = places.size(); gap-- > 0 && left > 0;)
      if (put[gap] < places[gap]) {
        ++put[gap];
        --left;
      }
    if (left == before)
      throw InvalidInput(
          "count",
          fmt::format("is {}, but only {} more have a place between the outlets of line {}",
                      count,
                      count - left,
                      in_quotes(line.name)));
  }
  return put;
}

struct Filled {
  Line line;
  std::vector<int> numbers;  // new ones, by old number - 1
};

Filled filled(const Layout& layout, std::size_t index, const MoreOutlets& more, int count) {
  const Line& line = layout.lines()[index];
  const std::vector<int> put = put_in_gaps(line, more, count);
  Filled result{line, {}};
  std::vector<PlacedOutlet> outlets;
  std::vector<Length> elevations;
  for (int number = 1; number <= line.outlet_count(); ++number) {
    const Length here = line.place_of(number);
    outlets.push_back({here, line.kind_of(number)});
    elevations.push_back(layout.outlet_elevation(index, number));
    result.numbers.push_back(static_cast<int>(outlets.size()));
    if (number == line.outlet_count()) break;
    const int added = put[static_cast<std::size_t>(number - 1)];
    const Length apart = (line.place_of(number + 1) - here) / static_cast<double>(added + 1);
    for (int i = 1; i <= added; ++i) {
      const Length there = here + static_cast<double>(i) * apart;
      outlets.push_back({there, more.outlet ? *more.outlet : line.kind_of(number)});
      elevations.push_back(layout.ground_elevation(index, there));
    }
  }
  place(result.line, std::move(outlets));
  if (!line.elevations.empty()) result.line.elevations = std::move(elevations);
  return result;
}

/// What hung on the far end stays in its place.
void keep_place_of_end(std::vector<Line>& lines, const Line& shorter) {
  for (Line& other : lines) {
    if (other.fed_by == shorter.name && !other.tap && !other.tap_outlet)
      other.tap = shorter.whole_length();
    if (other.joins == shorter.name && !other.joins_at && !other.joins_outlet)
      other.joins_at = shorter.whole_length();
  }
}

/// What hung at an outlet stays there.
void renumber(std::vector<Line>& lines, const std::string& name, const std::vector<int>& numbers) {
  const auto now = [&](std::optional<int>& outlet) {
    if (outlet) outlet = numbers.at(static_cast<std::size_t>(*outlet - 1));
  };
  for (Line& other : lines) {
    if (other.fed_by == name) now(other.tap_outlet);
    if (other.joins == name) now(other.joins_outlet);
  }
}

Fault renumbered(Fault fault, const std::string& name, const std::vector<int>& numbers) {
  const auto now = [&](int outlet) { return numbers.at(static_cast<std::size_t>(outlet - 1)); };
  std::visit(
      [&](auto& it) {
        if constexpr (requires { it.outlet; }) {
          if (it.line != name) return;
          if constexpr (std::is_same_v<decltype(it.outlet), int>)
            it.outlet = now(it.outlet);
          else if (it.outlet)
            it.outlet = now(*it.outlet);
        }
      },
      fault);
  return fault;
}

}  // namespace

Layout with_more_outlets(const Layout& layout,
                         std::string_view line,
                         const MoreOutlets& more,
                         int count) {
  const std::size_t index = layout.index_of(line);
  const Line& before = layout.lines()[index];
  examine(before, more, count);
  if (count == 0) return layout;
  std::vector<Line> lines = layout.lines();
  std::vector<Fault> faults = layout.faults();
  if (more.where == AddedWhere::beyond) {
    keep_place_of_end(lines, before);
    lines[index] = grown(before, more, count);
  } else {
    Filled now = filled(layout, index, more, count);
    lines[index] = std::move(now.line);
    renumber(lines, before.name, now.numbers);
    for (Fault& fault : faults) fault = renumbered(std::move(fault), before.name, now.numbers);
  }
  return with_lines(layout, std::move(lines), faults);
}

int places_for_more(const Layout& layout, std::string_view line, const MoreOutlets& more) {
  const Line& there = layout.line(line);
  examine(there, more, 0);
  std::int64_t places = most_outlets;
  if (more.where == AddedWhere::between) {
    places = 0;
    for (const std::int64_t in_gap : places_in_gaps(there, more)) places += in_gap;
  }
  return static_cast<int>(std::min<std::int64_t>(places, most_outlets));
}

}  // namespace hydro
