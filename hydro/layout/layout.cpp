#include "hydro/layout/layout.hpp"

#include "hydro/layout/fault_conflicts.hpp"
#include "hydro/layout/names.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <string>
#include <unordered_map>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// The feeder of each line; none: the supply.
using Feeders = std::vector<std::optional<std::size_t>>;

/// Lines in an order in which each comes after its feeder; those in a circle are left out. Lines
/// with one feeder are taken by name, so that the order in which they were written changes not even
/// the rounding.
std::vector<std::size_t> order_outward(const std::vector<Line>& lines, const Feeders& feeders) {
  std::vector<std::vector<std::size_t>> fed(lines.size());
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < lines.size(); ++i)
    (feeders[i] ? fed[*feeders[i]] : order).push_back(i);
  const auto by_name = [&](std::size_t a, std::size_t b) { return lines[a].name < lines[b].name; };
  std::sort(order.begin(), order.end(), by_name);
  for (std::size_t next = 0; next < order.size(); ++next) {
    std::vector<std::size_t>& beyond = fed[order[next]];
    std::sort(beyond.begin(), beyond.end(), by_name);
    order.insert(order.end(), beyond.begin(), beyond.end());
  }
  return order;
}

void add_all(std::vector<Problem>& all, const std::string& place, std::vector<Problem> found) {
  for (Problem& problem : found) {
    problem.place = place;
    all.push_back(std::move(problem));
  }
}

void examine_tap(const Line& line,
                 const Line& feeder,
                 const std::string& place,
                 std::vector<Problem>& all) {
  if (line.tap && *line.tap > feeder.whole_length() + same_place)
    all.push_back({place,
                   "tap",
                   "is " + to_message(*line.tap, units::m) + ", beyond the far end of line " +
                       in_quotes(feeder.name) + " at " +
                       to_message(feeder.whole_length(), units::m)});
  if (line.tap_outlet && !(*line.tap_outlet >= 1 && *line.tap_outlet <= feeder.outlet_count()))
    all.push_back({place,
                   "tap_outlet",
                   fmt::format("is {}, but line {} has {} outlets",
                               *line.tap_outlet,
                               in_quotes(feeder.name),
                               feeder.outlet_count())});
}

/// What is wrong between the lines, each of them taken alone being examined elsewhere.
std::vector<Problem> problems_between(const std::vector<Line>& lines) {
  std::vector<Problem> all;
  const std::vector<std::string> places = places_of(lines);
  const IndexByName index = index_lines(lines);
  Feeders feeders(lines.size());
  long long outlets = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = lines[i];
    const std::string& place = places[i];
    if (!line.name.empty() && index.at(line.name) != i)
      all.push_back(
          {place, "name", "is used by an earlier line; every line needs a name of its own"});
    outlets += std::max(0, line.outlet_count());
    if (line.fed_by.empty()) continue;
    const auto feeder = index.find(line.fed_by);
    if (feeder == index.end())
      all.push_back({place,
                     "fed_by",
                     "is " + in_quotes(line.fed_by) + ", but there is no such line; there are " +
                         names_of(lines)});
    else {
      feeders[i] = feeder->second;
      examine_tap(line, lines[feeder->second], place, all);
    }
  }
  const std::vector<std::size_t> order = order_outward(lines, feeders);
  if (order.size() != lines.size()) {
    std::vector<bool> reached(lines.size(), false);
    for (const std::size_t i : order) reached[i] = true;
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (!reached[i])
        all.push_back({places[i],
                       "fed_by",
                       "is " + in_quotes(lines[i].fed_by) +
                           ", but that leads round in a circle and never to the supply"});
  }
  if (outlets > most_outlets)
    all.push_back(
        {"lines",
         "count",
         fmt::format("adds up to {} outlets, must be at most {}", outlets, most_outlets)});
  return all;
}

}  // namespace

struct Layout::Data {
  Supply supply;
  std::vector<Line> lines;
  Water water;
  Site site;
  std::vector<Fault> faults;
  std::unordered_map<std::size_t, std::vector<Fault>> faults_by_line;
  std::unordered_map<std::size_t, Length> open_ends;  // by line
  std::vector<bool> cut_off;                          // by line; empty: none is

  IndexByName index;
  Feeders feeders;
  std::vector<std::size_t> outward_order;
  std::vector<Length> inlet_elevations;
  int outlet_count = 0;

  Length begins_at(std::size_t line) const {
    return hydro::begins_at(lines[line], lines[feeders[line].value()]);
  }
  void follow_faults();
};

/// Sorts the faults by line, and finds what they cut off from the water.
void Layout::Data::follow_faults() {
  faults_by_line.clear();
  open_ends.clear();
  cut_off.clear();
  for (const Fault& fault : faults) {
    const std::size_t line = index.at(line_of(fault));
    faults_by_line[line].push_back(fault);
    if (const auto end = open_end(fault, lines[line])) open_ends.emplace(line, *end);
  }
  for (auto& [line, on_line] : faults_by_line)
    std::stable_sort(on_line.begin(), on_line.end(), [](const Fault& one, const Fault& other) {
      return outlet_of(one).value_or(0) < outlet_of(other).value_or(0);
    });
  if (open_ends.empty()) return;
  cut_off.resize(lines.size(), false);
  for (const std::size_t i : outward_order) {
    if (!feeders[i]) continue;
    const auto end = open_ends.find(*feeders[i]);
    cut_off[i] =
        cut_off[*feeders[i]] || (end != open_ends.end() && begins_at(i) > end->second - same_place);
  }
}

std::vector<std::string> places_of(const std::vector<Line>& lines) {
  const IndexByName index = index_lines(lines);
  std::vector<std::string> places;
  for (std::size_t i = 0; i < lines.size(); ++i)
    places.push_back(lines[i].name.empty() || lines[i].name.size() > longest_name ||
                             index.at(lines[i].name) != i
                         ? fmt::format("line {}", i + 1)
                         : "line " + in_quotes(lines[i].name));
  return places;
}

std::vector<Problem> problems(const Supply& supply,
                              const std::vector<Line>& lines,
                              const Water& water,
                              const Site& site,
                              const std::vector<Fault>& faults) {
  std::vector<Problem> all;
  add_all(all, "supply", problems(supply));
  add_all(all, "water", problems(water));
  add_all(all, "site", problems(site));
  if (lines.empty())
    all.push_back({"lines", "", "there is none; a layout needs at least one line"});
  if (lines.size() > most_lines) {
    all.push_back(
        {"lines", "", fmt::format("there are {}, must be at most {}", lines.size(), most_lines)});
    return all;
  }
  const std::vector<std::string> places = places_of(lines);
  for (std::size_t i = 0; i < lines.size(); ++i) add_all(all, places[i], problems(lines[i]));
  for (Problem& problem : problems_between(lines)) all.push_back(std::move(problem));
  for (Problem& problem : problems_of_faults(faults, lines)) all.push_back(std::move(problem));
  return all;
}

Layout::Layout(Supply supply, std::vector<Line> lines, Water water, Site site) {
  if (auto found = problems(supply, lines, water, site, {}); !found.empty())
    throw InvalidInput(std::move(found));
  auto data = std::make_shared<Data>();
  data->supply = std::move(supply);
  data->lines = std::move(lines);
  data->water = std::move(water);
  data->site = std::move(site);
  data->index = index_lines(data->lines);
  for (const Line& line : data->lines) {
    data->feeders.emplace_back();
    if (!line.fed_by.empty()) data->feeders.back() = data->index.at(line.fed_by);
    data->outlet_count += line.outlet_count();
  }
  data->outward_order = order_outward(data->lines, data->feeders);
  data->inlet_elevations.resize(data->lines.size(), data->supply.elevation.value_or(Length{}));
  data_ = data;
  for (const std::size_t i : data->outward_order)
    if (const auto feeder = data->feeders[i])
      data->inlet_elevations[i] = ground_elevation(*feeder, data->begins_at(i));
}

const Supply& Layout::supply() const {
  return data_->supply;
}
const std::vector<Line>& Layout::lines() const {
  return data_->lines;
}
const Water& Layout::water() const {
  return data_->water;
}
const Site& Layout::site() const {
  return data_->site;
}
const std::vector<Fault>& Layout::faults() const {
  return data_->faults;
}

const Line& Layout::line(std::string_view name) const {
  return data_->lines[index_of(name)];
}

std::size_t Layout::index_of(std::string_view line_name) const {
  const auto found = data_->index.find(std::string(line_name));
  if (found == data_->index.end())
    throw InvalidInput(
        "line",
        in_quotes(line_name) + " is not in this layout; there are " + names_of(data_->lines));
  return found->second;
}

const std::vector<std::size_t>& Layout::outward_order() const {
  return data_->outward_order;
}
std::optional<std::size_t> Layout::feeder_of(std::size_t line_index) const {
  return data_->feeders.at(line_index);
}
Length Layout::inlet_elevation(std::size_t line_index) const {
  return data_->inlet_elevations.at(line_index);
}
Length Layout::ground_elevation(std::size_t line_index, const Length& place) const {
  const Line& line = data_->lines.at(line_index);
  const Length start = inlet_elevation(line_index);
  if (line.elevations.empty())
    return start + line.ground_rise.value_or(Length{}) * (place / line.whole_length());
  int beyond = 1;  // the first outlet farther than the place, or one past the last
  for (int most = line.outlet_count() + 1; beyond < most;) {
    const int middle = beyond + (most - beyond) / 2;
    if (line.place_of(middle) > place)
      most = middle;
    else
      beyond = middle + 1;
  }
  const auto elevation = [&](int outlet) {
    return line.elevations[static_cast<std::size_t>(outlet - 1)];
  };
  if (beyond > line.outlet_count()) return line.elevations.back();
  const Length from = beyond == 1 ? Length{} : line.place_of(beyond - 1);
  const Length low = beyond == 1 ? start : elevation(beyond - 1);
  return low + (elevation(beyond) - low) * ((place - from) / (line.place_of(beyond) - from));
}
Length Layout::outlet_elevation(std::size_t line_index, int outlet_number) const {
  const Line& line = line_with(line_index, outlet_number);
  return line.elevations.empty() ? ground_elevation(line_index, line.place_of(outlet_number))
                                 : line.elevations[static_cast<std::size_t>(outlet_number - 1)];
}

const Outlet& Layout::outlet_at(std::size_t line_index, int outlet_number) const {
  const Line& line = line_with(line_index, outlet_number);
  const std::vector<Fault>& faults = faults_on(line_index);
  const auto fault = std::ranges::lower_bound(
      faults, outlet_number, {}, [](const Fault& it) { return outlet_of(it).value_or(0); });
  if (fault != faults.end() && outlet_of(*fault) == outlet_number)
    if (const auto* wrong = std::get_if<WrongOutlet>(&*fault)) return wrong->fitted;
  return line.kind_of(outlet_number);
}

const Line& Layout::line_with(std::size_t line_index, int outlet_number) const {
  const Line& line = data_->lines.at(line_index);
  if (!(outlet_number >= 1 && outlet_number <= line.outlet_count()))
    throw InvalidInput(
        "outlet", fmt::format("is {}, must be from 1 to {}", outlet_number, line.outlet_count()));
  return line;
}

const std::vector<Fault>& Layout::faults_on(std::size_t line_index) const {
  static const std::vector<Fault> no_faults;
  const auto found = data_->faults_by_line.find(line_index);
  return found == data_->faults_by_line.end() ? no_faults : found->second;
}

std::optional<Length> Layout::open_end_of(std::size_t line_index) const {
  const auto found = data_->open_ends.find(line_index);
  return found == data_->open_ends.end() ? std::nullopt : std::optional(found->second);
}
bool Layout::is_cut_off(std::size_t line_index) const {
  return !data_->cut_off.empty() && data_->cut_off.at(line_index);
}

int Layout::outlet_count() const {
  return data_->outlet_count;
}

Layout Layout::with_fault(Fault fault) const {
  return with_faults({std::move(fault)});
}

Layout Layout::with_faults(const std::vector<Fault>& faults) const {
  auto data = std::make_shared<Data>(*data_);
  data->faults.insert(data->faults.end(), faults.begin(), faults.end());
  if (auto found = problems_of_faults(data->faults, data->lines); !found.empty())
    throw InvalidInput(std::move(found));
  data->follow_faults();
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

PossibleFaults Layout::with_possible_faults(const std::vector<Fault>& faults) const {
  std::vector<Fault> all = data_->faults;
  std::vector<SkippedFault> skipped;
  for (const Fault& fault : faults) {
    all.push_back(fault);
    if (auto found = problems_of_faults(all, data_->lines); !found.empty()) {
      for (Problem& problem : found) problem.place.clear();
      skipped.push_back({fault, std::move(found)});
      all.pop_back();
    }
  }
  return {without_faults().with_faults(all), std::move(skipped)};
}

Layout Layout::without_faults() const {
  auto data = std::make_shared<Data>(*data_);
  data->faults.clear();
  data->follow_faults();
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

Layout Layout::with_line(Line line) const {
  std::vector<Line> lines = data_->lines;
  const auto same = data_->index.find(line.name);
  if (same == data_->index.end())
    lines.push_back(std::move(line));
  else
    lines[same->second] = std::move(line);
  return Layout(supply(), std::move(lines), water(), site()).with_faults(faults());
}

Layout Layout::without(std::string_view line_name) const {
  std::vector<Line> lines = data_->lines;
  lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(index_of(line_name)));
  std::vector<Fault> kept = faults();
  std::erase_if(kept, [&](const Fault& fault) { return line_of(fault) == line_name; });
  return Layout(supply(), std::move(lines), water(), site()).with_faults(kept);
}

bool Layout::operator==(const Layout& other) const {
  return data_ == other.data_ ||
         (supply() == other.supply() && lines() == other.lines() && water() == other.water() &&
          site() == other.site() && faults() == other.faults());
}

}  // namespace hydro
