#include "hydro/layout/layout.hpp"

#include "hydro/layout/fault_conflicts.hpp"
#include "hydro/layout/names.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <set>
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

/// What is wrong with the sets of these lines.
std::vector<Problem> problems_of_sets(const std::vector<WateringSet>& sets,
                                      const std::vector<Line>& lines) {
  std::vector<Problem> all;
  const IndexByName index = index_lines(lines);
  std::unordered_map<std::string, std::size_t> known;
  for (std::size_t i = 0; i < sets.size(); ++i) {
    const WateringSet& set = sets[i];
    const std::string place = fmt::format("set {}", i + 1);
    Examination examination;
    if (set.name.empty()) examination.add("name", "is empty; every set needs a name of its own");
    examination.name("name", set.name);
    if (const auto [first, is_new] = known.emplace(set.name, i); !is_new && !set.name.empty())
      examination.add("name",
                      fmt::format("is {}, which is the name of set {} already",
                                  in_quotes(set.name),
                                  first->second + 1));
    if (set.lines.empty())
      examination.add("lines", "is empty; a set opens one line or more, by name");
    std::set<std::string> named;
    for (std::size_t k = 0; k < set.lines.size(); ++k) {
      const std::string which = fmt::format("lines, {}", k + 1);
      if (!index.contains(set.lines[k]))
        examination.add(which,
                        "is " + in_quotes(set.lines[k]) +
                            ", but there is no such line; there are " + names_of(lines));
      else if (!named.insert(set.lines[k]).second)
        examination.add(which, "is " + in_quotes(set.lines[k]) + ", which is named already");
    }
    add_all(all, place, examination.take());
  }
  return all;
}

/// Which lines the sets that run leave shut (watering_set.hpp).
std::vector<bool> shut_by_sets(const std::vector<WateringSet>& sets,
                               const std::vector<std::string>& running,
                               const IndexByName& index,
                               const Feeders& feeders,
                               const std::vector<std::size_t>& outward_order) {
  std::vector<bool> named_by_any(feeders.size(), false), open(feeders.size(), false);
  for (const WateringSet& set : sets) {
    const bool runs = std::ranges::find(running, set.name) != running.end();
    for (const std::string& line : set.lines) {
      named_by_any[index.at(line)] = true;
      if (runs) open[index.at(line)] = true;
    }
  }
  for (const std::size_t i : outward_order)
    if (feeders[i] && open[*feeders[i]] && !named_by_any[i]) open[i] = true;
  for (auto i = outward_order.rbegin(); i != outward_order.rend(); ++i)
    if (open[*i] && feeders[*i]) open[*feeders[*i]] = true;
  open.flip();
  return open;
}

}  // namespace

struct Layout::Data {
  Supply supply;
  std::vector<Line> lines;
  Water water;
  Site site;
  std::vector<WateringSet> sets;
  std::vector<std::string> running_sets;
  std::vector<Fault> faults;
  Supply supply_as_it_is;
  std::unordered_map<std::size_t, std::vector<Fault>> faults_by_line;
  std::unordered_map<std::size_t, Length> open_ends;  // by line
  std::vector<bool> cut_off;                          // by line; empty: none is
  std::vector<bool> shut;                             // by line; empty: none is

  IndexByName index;
  Feeders feeders;
  std::vector<std::size_t> outward_order;
  std::vector<Length> inlet_elevations;
  int outlet_count = 0;

  Length begins_at(std::size_t line) const {
    return hydro::begins_at(lines[line], lines[feeders[line].value()]);
  }
  void follow_valves_and_faults();

 private:
  void sort_faults();
  void follow_valves();
  bool is_stuck_shut(std::size_t line) const;
};

/// Finds what valves, sets and faults cut off from the water.
void Layout::Data::follow_valves_and_faults() {
  supply_as_it_is = hydro::with_faults(supply, faults);
  sort_faults();
  follow_valves();
  std::vector<bool> found(lines.size(), false);
  for (const std::size_t i : outward_order) {
    found[i] = (!shut.empty() && shut[i]) || is_stuck_shut(i);
    if (!feeders[i]) continue;
    const auto end = open_ends.find(*feeders[i]);
    found[i] = found[i] || found[*feeders[i]] ||
               (end != open_ends.end() && begins_at(i) > end->second - same_place);
  }
  cut_off.clear();
  if (std::ranges::find(found, true) != found.end()) cut_off = std::move(found);
}

void Layout::Data::follow_valves() {
  std::vector<bool> found(lines.size(), false);
  if (!running_sets.empty())
    found = shut_by_sets(sets, running_sets, index, feeders, outward_order);
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (lines[i].valve && lines[i].valve->opening == ValveOpening::shut) found[i] = true;
  for (const auto& [line, on_line] : faults_by_line)
    for (const Fault& fault : on_line)
      if (std::holds_alternative<ValveLeftOpen>(fault)) found[line] = false;
  for (const std::size_t i : outward_order)
    if (feeders[i] && found[*feeders[i]]) found[i] = true;
  shut.clear();
  if (std::ranges::find(found, true) != found.end()) shut = std::move(found);
}

bool Layout::Data::is_stuck_shut(std::size_t line) const {
  const auto on_line = faults_by_line.find(line);
  return on_line != faults_by_line.end() &&
         std::ranges::any_of(on_line->second, [](const Fault& fault) {
           const auto* stuck = std::get_if<RegulatorStuckShut>(&fault);
           return stuck && !stuck->outlet;
         });
}

void Layout::Data::sort_faults() {
  faults_by_line.clear();
  open_ends.clear();
  for (const Fault& fault : faults) {
    if (is_of_the_supply(fault)) continue;
    const std::size_t line = index.at(line_of(fault));
    faults_by_line[line].push_back(fault);
    if (const auto end = open_end(fault, lines[line])) open_ends.emplace(line, *end);
  }
  for (auto& [line, on_line] : faults_by_line)
    std::stable_sort(on_line.begin(), on_line.end(), [](const Fault& one, const Fault& other) {
      return outlet_of(one).value_or(0) < outlet_of(other).value_or(0);
    });
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
                              const std::vector<WateringSet>& sets,
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
  for (Problem& problem : problems_of_sets(sets, lines)) all.push_back(std::move(problem));
  for (Problem& problem : problems_of_faults(faults, supply, lines, !sets.empty()))
    all.push_back(std::move(problem));
  return all;
}

Layout::Layout(
    Supply supply, std::vector<Line> lines, Water water, Site site, std::vector<WateringSet> sets) {
  if (auto found = problems(supply, lines, water, site, sets, {}); !found.empty())
    throw InvalidInput(std::move(found));
  auto data = std::make_shared<Data>();
  data->supply = std::move(supply);
  data->lines = std::move(lines);
  data->water = std::move(water);
  data->site = std::move(site);
  data->sets = std::move(sets);
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
  data->follow_valves_and_faults();
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
const std::vector<WateringSet>& Layout::sets() const {
  return data_->sets;
}
const std::vector<Fault>& Layout::faults() const {
  return data_->faults;
}
const Supply& Layout::supply_as_it_is() const {
  return data_->supply_as_it_is;
}
const std::vector<std::string>& Layout::running_sets() const {
  return data_->running_sets;
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
bool Layout::is_shut(std::size_t line_index) const {
  return !data_->shut.empty() && data_->shut.at(line_index);
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
  if (auto found = problems_of_faults(data->faults, data->supply, data->lines, !data->sets.empty());
      !found.empty())
    throw InvalidInput(std::move(found));
  data->follow_valves_and_faults();
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

PossibleFaults Layout::with_possible_faults(const std::vector<Fault>& faults) const {
  std::vector<Fault> all = data_->faults;
  std::vector<SkippedFault> skipped;
  for (const Fault& fault : faults) {
    all.push_back(fault);
    if (auto found = problems_of_faults(all, data_->supply, data_->lines, !data_->sets.empty());
        !found.empty()) {
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
  data->follow_valves_and_faults();
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

Layout Layout::watering(const std::vector<std::string>& set_names) const {
  Examination examination;
  std::vector<std::string> known;
  for (const WateringSet& set : sets()) known.push_back(set.name);
  if (set_names.empty()) examination.add("set_names", "is empty; name one set or more");
  std::vector<std::string> chosen;
  for (const std::string& name : set_names) {
    if (std::ranges::find(known, name) == known.end())
      examination.add("set_names",
                      "has " + in_quotes(name) + ", but there is no such set; there are " +
                          list_in_quotes(known, known.size()));
    else if (std::ranges::find(chosen, name) != chosen.end())
      examination.add("set_names", "has " + in_quotes(name) + " twice");
    chosen.push_back(name);
  }
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  auto data = std::make_shared<Data>(*data_);
  data->running_sets = std::move(chosen);
  data->follow_valves_and_faults();
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

Layout Layout::without_watering() const {
  auto data = std::make_shared<Data>(*data_);
  data->running_sets.clear();
  data->follow_valves_and_faults();
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

Layout Layout::as_it_was(Layout changed, const std::vector<Fault>& faults) const {
  if (!faults.empty()) changed = changed.with_faults(faults);
  std::vector<std::string> running;
  for (const std::string& name : running_sets())
    if (std::ranges::find(changed.sets(), name, &WateringSet::name) != changed.sets().end())
      running.push_back(name);
  return running.empty() ? changed : changed.watering(running);
}

Layout Layout::with_supply(Supply supply) const {
  return as_it_was(Layout(std::move(supply), lines(), water(), site(), sets()), faults());
}

Layout Layout::with_line(Line line) const {
  std::vector<Line> lines = data_->lines;
  const auto same = data_->index.find(line.name);
  if (same == data_->index.end())
    lines.push_back(std::move(line));
  else
    lines[same->second] = std::move(line);
  return as_it_was(Layout(supply(), std::move(lines), water(), site(), sets()), faults());
}

Layout Layout::without(std::string_view line_name) const {
  std::vector<Line> lines = data_->lines;
  lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(index_of(line_name)));
  std::vector<Fault> kept = faults();
  std::erase_if(kept, [&](const Fault& fault) { return line_of(fault) == line_name; });
  std::vector<WateringSet> sets = this->sets();
  for (WateringSet& set : sets) std::erase(set.lines, line_name);
  std::erase_if(sets, [](const WateringSet& set) { return set.lines.empty(); });
  return as_it_was(Layout(supply(), std::move(lines), water(), site(), std::move(sets)), kept);
}

bool Layout::operator==(const Layout& other) const {
  return data_ == other.data_ ||
         (supply() == other.supply() && lines() == other.lines() && water() == other.water() &&
          site() == other.site() && sets() == other.sets() &&
          running_sets() == other.running_sets() && faults() == other.faults());
}

std::string describe(const Fault& fault, const Layout& layout, UnitSystem units) {
  static const Line no_line;
  return describe(fault, is_of_the_supply(fault) ? no_line : layout.line(line_of(fault)), units);
}

}  // namespace hydro
