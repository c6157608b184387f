#include "hydro/layout/line.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr Range<Length> some_place{0, 100, km};
constexpr Range<Length> some_length{1e-6, 100, km};
constexpr double rounding = 1e-9;

void examine_even_outlets(const Line& line, Examination& examination) {
  if (!line.count) examination.add("count", "is not given; how many outlets are there?");
  if (!line.spacing && !(line.count == 1 && line.first_at))
    examination.add("spacing", "is not given; how far is it from outlet to outlet?");
  if (line.count == 1 && line.first_at == Length{} && !line.length)
    examination.add("length",
                    "is 0: the only outlet stands at the inlet; give the line some length");
}

void examine_placed_outlets(const Line& line, Examination& examination) {
  const auto refuse = [&](const char* key, bool given) {
    if (given) examination.add(key, "is given, but so is outlets; take one of the two ways");
  };
  refuse("outlet", line.outlet.has_value());
  refuse("count", line.count.has_value());
  refuse("spacing", line.spacing.has_value());
  refuse("first_at", line.first_at.has_value());
  if (line.outlets.size() > static_cast<std::size_t>(most_outlets))
    examination.add("outlets",
                    fmt::format("are {}, must be at most {}", line.outlets.size(), most_outlets));
  for (std::size_t i = 0; i < line.outlets.size(); ++i) {
    const PlacedOutlet& placed = line.outlets[i];
    const std::string which = fmt::format("outlets, {}", i + 1);
    examination.within(which + ".place", placed.place, some_place);
    if (i > 0 && placed.place < line.outlets[i - 1].place)
      examination.add(which + ".place",
                      "is " + to_message(placed.place, units::m) + ", nearer than the " +
                          to_message(line.outlets[i - 1].place, units::m) +
                          " of the one before; they count from the inlet on");
    examination.include(which + ".outlet", problems(placed.outlet));
  }
  if (line.whole_length() == Length{})
    examination.add("length", "is 0: all outlets stand at the inlet; give the line some length");
}

void examine_no_outlets(const Line& line, Examination& examination) {
  const auto needs_outlet = [&](const char* key, bool given) {
    if (given) examination.add(key, "is given, but no outlet is");
  };
  needs_outlet("count", line.count.has_value());
  needs_outlet("spacing", line.spacing.has_value());
  needs_outlet("first_at", line.first_at.has_value());
  needs_outlet("elevations", !line.elevations.empty());
  needs_outlet("riser", line.riser != Riser{});
  needs_outlet("outlet_loss_coefficient", line.outlet_loss_coefficient.has_value());
  needs_outlet("connection_length", line.connection_length.has_value());
  if (!line.length) examination.add("length", "is not given; a line without outlets needs it");
}

void examine_reaches(const Line& line, Examination& examination) {
  Length from{};
  for (std::size_t i = 0; i < line.reaches.size(); ++i) {
    const PipeReach& reach = line.reaches[i];
    const std::string which = fmt::format("reaches, {}", i + 1);
    examination.include(which + ".pipe", problems(reach.pipe));
    examination.within(which + ".to", reach.to, some_length);
    if (!(reach.to > from))
      examination.add(which + ".to",
                      "is " + to_message(reach.to, units::m) + ", must be beyond the " +
                          to_message(from, units::m) + " where it begins");
    else if (reach.to > line.whole_length() + same_place)
      examination.add(which + ".to",
                      "is " + to_message(reach.to, units::m) + ", beyond the line's far end at " +
                          to_message(line.whole_length(), units::m));
    from = reach.to;
  }
}

void examine_ground(const Line& line, Examination& examination) {
  constexpr Range<Length> some_elevation{-10000, 10000, units::m};
  examination.within("ground_rise", line.ground_rise, some_elevation);
  if (line.elevations.empty()) return;
  if (line.ground_rise)
    examination.add("elevations, ground_rise", "are both given; take one of the two ways");
  const auto count = static_cast<std::size_t>(std::max(0, line.outlet_count()));
  if (count > 0 && line.elevations.size() != count)
    examination.add(
        "elevations",
        fmt::format(
            "are {}, must be one for each of the {} outlets", line.elevations.size(), count));
  for (std::size_t i = 0; i < line.elevations.size(); ++i)
    examination.within(fmt::format("elevations, {}", i + 1), line.elevations[i], some_elevation);
}

}  // namespace

Length Line::place_of(int outlet_number) const {
  if (!outlets.empty()) return outlets[static_cast<std::size_t>(outlet_number - 1)].place;
  const Length first = first_at ? *first_at : spacing.value_or(Length{});
  return first + static_cast<double>(outlet_number - 1) * spacing.value_or(Length{});
}

const Outlet& Line::kind_of(int outlet_number) const {
  return outlets.empty() ? outlet.value()
                         : outlets[static_cast<std::size_t>(outlet_number - 1)].outlet;
}

std::optional<int> Line::outlet_near(const Length& place) const {
  if (outlet_count() == 0) return std::nullopt;
  int number = 1;
  if (!outlets.empty()) {
    const auto beyond =
        std::upper_bound(outlets.begin(),
                         outlets.end(),
                         place + same_place,
                         [](const Length& p, const auto& placed) { return p < placed.place; });
    number = std::max(1, static_cast<int>(beyond - outlets.begin()));
  } else if (spacing.value_or(Length{}) > Length{}) {
    const double gaps = (place + same_place - place_of(1)) / *spacing;
    number = static_cast<int>(std::clamp(std::floor(gaps) + 1, 1.0, double(outlet_count())));
  }
  const Length apart = place_of(number) - place;
  if (apart > same_place || apart < -same_place) return std::nullopt;
  return number;
}

Length Line::merged(const Length& place) const {
  if (const auto near = outlet_near(place)) return place_of(*near);
  return place > whole_length() - same_place ? whole_length() : place;
}

Length Line::whole_length() const {
  const Length to_last_outlet = outlet_count() > 0 ? place_of(outlet_count()) : Length{};
  return std::max(length.value_or(to_last_outlet), to_last_outlet);
}

const Pipe& Line::pipe_at(const Length& place) const {
  for (const PipeReach& reach : reaches)
    if (place <= reach.to + same_place) return reach.pipe;
  return pipe;
}

Length begins_at(const Line& line, const Line& feeder) {
  if (line.tap) return feeder.merged(*line.tap);
  return line.tap_outlet ? feeder.place_of(*line.tap_outlet) : feeder.whole_length();
}

Length ends_at(const Line& line, const Line& joined) {
  if (line.joins_at) return joined.merged(*line.joins_at);
  return line.joins_outlet ? joined.place_of(*line.joins_outlet) : joined.whole_length();
}

std::vector<Problem> problems(const Line& line) {
  constexpr Range<double> some_loss{0, 1e9, units::plain};
  Examination examination;

  if (line.name.empty()) examination.add("name", "is empty; every line needs a name of its own");
  examination.name("name", line.name);
  if (line.tap && line.tap_outlet)
    examination.add("tap, tap_outlet", "are both given; take one of the two ways");
  if (line.fed_by.empty() && (line.tap || line.tap_outlet))
    examination.add(line.tap ? "tap" : "tap_outlet", "is given, but fed_by is not");
  examination.within("tap", line.tap, some_place);
  if (line.joins_at && line.joins_outlet)
    examination.add("joins_at, joins_outlet", "are both given; take one of the two ways");
  if (line.joins.empty() && (line.joins_at || line.joins_outlet))
    examination.add(line.joins_at ? "joins_at" : "joins_outlet", "is given, but joins is not");
  examination.within("joins_at", line.joins_at, some_place);

  examination.include("pipe", problems(line.pipe));
  examination.include("riser", problems(line.riser));
  if (line.outlet) examination.include("outlet", problems(*line.outlet));
  examination.within("count", line.count.value_or(1), 1, most_outlets);
  examination.within("spacing", line.spacing, some_length);
  examination.within("first_at", line.first_at, some_place);
  examination.within("length", line.length, some_length);
  examination.within("loss_coefficient", line.loss_coefficient, some_loss);
  if (line.valve) examination.include("valve", problems(*line.valve));
  examination.within("regulator", line.regulator, Range<Pressure>{1, 10000, kPa});
  examination.within("outlet_loss_coefficient", line.outlet_loss_coefficient, some_loss);
  examination.within("connection_length", line.connection_length, Range<Length>{0, 100, units::m});

  if (!line.outlets.empty())
    examine_placed_outlets(line, examination);
  else if (line.outlet)
    examine_even_outlets(line, examination);
  else
    examine_no_outlets(line, examination);
  if (line.length && line.outlet_count() > 0 &&
      *line.length < line.place_of(line.outlet_count()) * (1 - rounding))
    examination.add("length",
                    "is " + to_message(*line.length, units::m) + ", shorter than the " +
                        to_message(line.place_of(line.outlet_count()), units::m) +
                        " from the inlet to the last outlet");
  examine_reaches(line, examination);
  examine_ground(line, examination);
  return examination.take();
}

}  // namespace hydro
