#include "hydro/layout/layout.hpp"

#include "hydro/layout/fault_conflicts.hpp"
#include "hydro/layout/heights.hpp"
#include "hydro/layout/plumbing.hpp"
#include "hydro/layout/water_ways.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <string>
#include <unordered_map>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

void add_all(std::vector<Problem>& all, const std::string& place, std::vector<Problem> found) {
  for (Problem& problem : found) {
    problem.place = place;
    all.push_back(std::move(problem));
  }
}

}  // namespace

struct Layout::Data {
  std::shared_ptr<const Plumbing> plumbing;
  Supply supply;
  std::vector<Supply> further_supplies;
  Water water;
  Site site;
  std::vector<std::string> running_sets;
  std::vector<Fault> faults;

  // What follows from these.
  std::vector<Height> heights;  // by line
  Supply supply_as_it_is;
  std::vector<Supply> further_supplies_as_they_are;
  std::unordered_map<std::size_t, std::vector<Fault>> faults_by_line;
  OpenEnds open_ends;
  WaterWays ways;
  std::vector<bool> shut;  // by line; empty: none is

  void follow_supplies();
  void follow_valves_and_faults();
  /// Of faults, where lines join: those that lie where by another no water is.
  std::vector<Problem> problems_of_dry_faults() const;

 private:
  void sort_faults();
  /// By line: whether its inlet is shut on purpose.
  std::vector<bool> closed_on_purpose() const;
  bool has_regulator(std::size_t line) const;
  template <class Kind>
  bool has_fault(std::size_t line) const;
  std::vector<bool> freely() const;
};

std::vector<Length> elevations_of(const Supply& supply,
                                  const std::vector<Supply>& further_supplies) {
  std::vector<Length> elevations{supply.elevation.value_or(Length{})};
  for (const Supply& further : further_supplies)
    elevations.push_back(further.elevation.value_or(Length{}));
  return elevations;
}

/// Takes what the supplies say of themselves and of the ground.
void Layout::Data::follow_supplies() {
  heights = hydro::heights(*plumbing, elevations_of(supply, further_supplies));
  supply_as_it_is = hydro::with_faults(supply, faults);
  further_supplies_as_they_are.clear();
  for (const Supply& further : further_supplies)
    further_supplies_as_they_are.push_back(hydro::with_faults(further, faults));
}

/// Finds what valves, sets and faults cut off from the water.
void Layout::Data::follow_valves_and_faults() {
  supply_as_it_is = hydro::with_faults(supply, faults);
  for (std::size_t i = 0; i < further_supplies.size(); ++i)
    further_supplies_as_they_are[i] = hydro::with_faults(further_supplies[i], faults);
  sort_faults();
  std::vector<bool> closed = closed_on_purpose();
  const std::vector<bool> freely = this->freely();
  ways = water_ways(*plumbing, closed, freely, {});
  shut.clear();
  if (std::ranges::find(ways.near, false) != ways.near.end()) {
    shut = ways.near;
    shut.flip();
  }
  bool more_is_closed = !open_ends.empty();
  for (const auto& [line, on_line] : faults_by_line)
    if (has_fault<RegulatorStuckShut>(line)) closed[line] = more_is_closed = true;
  if (more_is_closed) ways = water_ways(*plumbing, closed, freely, open_ends);
}

std::vector<bool> Layout::Data::closed_on_purpose() const {
  const std::vector<Line>& lines = plumbing->lines;
  std::vector<std::size_t> left_open;
  for (const auto& [line, on_line] : faults_by_line)
    for (const Fault& fault : on_line)
      if (std::holds_alternative<ValveLeftOpen>(fault)) left_open.push_back(line);
  std::vector<bool> closed(lines.size(), false);
  if (!running_sets.empty()) closed = plumbing->shut_while(running_sets, left_open);
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (lines[i].valve && lines[i].valve->opening == ValveOpening::shut) closed[i] = true;
  for (const std::size_t line : left_open) closed[line] = false;
  return closed;
}

/// Of the line itself, not of one of its outlets.
template <class Kind>
bool Layout::Data::has_fault(std::size_t line) const {
  const auto on_line = faults_by_line.find(line);
  return on_line != faults_by_line.end() &&
         std::ranges::any_of(on_line->second, [](const Fault& fault) {
           return std::holds_alternative<Kind>(fault) && !outlet_of(fault);
         });
}

bool Layout::Data::has_regulator(std::size_t line) const {
  return plumbing->lines[line].regulator && !has_fault<RegulatorStuckOpen>(line);
}

std::vector<bool> Layout::Data::freely() const {
  std::vector<bool> found(plumbing->lines.size());
  for (std::size_t i = 0; i < found.size(); ++i)
    found[i] = !plumbing->lines[i].check_valve.value_or(false) && !has_regulator(i);
  return found;
}

std::vector<Problem> Layout::Data::problems_of_dry_faults() const {
  std::vector<Problem> all;
  if (!plumbing->any_joins || open_ends.empty()) return all;
  const WaterWays open_ways = water_ways(*plumbing, {}, freely(), open_ends);
  for (std::size_t i = 0; i < faults.size(); ++i) {
    if (is_of_the_supply(faults[i])) continue;
    const std::size_t line = plumbing->index.at(line_of(faults[i]));
    const auto outlet = outlet_of(faults[i]);
    std::optional<Length> place;
    // What stands at the very end is still fed.
    if (outlet) place = plumbing->lines[line].place_of(*outlet) - same_place;
    if (const auto* leak = std::get_if<Leak>(&faults[i])) place = leak->place - same_place;
    if (place ? open_ways.reach(line, *place, open_ends)
              : open_ways.near[line] || open_ways.beyond[line])
      continue;
    all.push_back({fmt::format("fault {}", i + 1),
                   outlet ? "outlet" : "line",
                   fmt::format("cannot act: line {} has no water there, since on every way to it a "
                               "line is open to the air",
                               in_quotes(plumbing->lines[line].name))});
  }
  return all;
}

void Layout::Data::sort_faults() {
  faults_by_line.clear();
  open_ends.clear();
  for (const Fault& fault : faults) {
    if (is_of_the_supply(fault)) continue;
    const std::size_t line = plumbing->index.at(line_of(fault));
    faults_by_line[line].push_back(fault);
    if (const auto end = open_end(fault, plumbing->lines[line])) open_ends.emplace(line, *end);
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

namespace {

std::string place_of_further(std::size_t index) {
  return fmt::format("further supply {}", index + 1);
}

/// Lines and supplies are told apart by their names.
std::vector<Problem> problems_of_names(const Supply& supply,
                                       const std::vector<Supply>& further_supplies,
                                       const std::vector<Line>& lines) {
  std::vector<Problem> all;
  if (!supply.name.empty())
    all.push_back(
        {"supply",
         "name",
         "is " + in_quotes(supply.name) +
             "; only further supplies have one, lines without fed_by begin at the first"});
  if (further_supplies.size() > most_further_supplies)
    all.push_back(
        {"further supplies",
         "",
         fmt::format(
             "there are {}, must be at most {}", further_supplies.size(), most_further_supplies)});
  const IndexByName index = index_lines(lines);
  std::unordered_map<std::string, std::size_t> known;
  for (std::size_t i = 0; i < further_supplies.size(); ++i) {
    const std::string& name = further_supplies[i].name;
    Examination examination;
    if (name.empty()) examination.add("name", "is empty; every further supply needs a name");
    examination.name("name", name);
    if (!name.empty() && !known.emplace(name, i).second)
      examination.add("name",
                      fmt::format("is {}, which is the name of further supply {} already",
                                  in_quotes(name),
                                  known.at(name) + 1));
    if (!name.empty() && index.contains(name))
      examination.add("name", "is " + in_quotes(name) + ", which is the name of a line already");
    add_all(all, place_of_further(i), examination.take());
  }
  return all;
}

}  // namespace

std::vector<Problem> problems(const Supply& supply,
                              const std::vector<Line>& lines,
                              const Water& water,
                              const Site& site,
                              const std::vector<WateringSet>& sets,
                              const std::vector<Fault>& faults,
                              const std::vector<Supply>& further_supplies) {
  std::vector<Problem> all;
  add_all(all, "supply", problems(supply));
  for (Problem& problem : problems_of_names(supply, further_supplies, lines))
    all.push_back(std::move(problem));
  for (std::size_t i = 0; i < further_supplies.size(); ++i)
    add_all(all, place_of_further(i), problems(further_supplies[i]));
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
  for (Problem& problem : problems_between(lines, further_supplies))
    all.push_back(std::move(problem));
  for (Problem& problem : problems_of_sets(sets, lines)) all.push_back(std::move(problem));
  for (Problem& problem :
       problems_of_faults(faults, supply, further_supplies, lines, !sets.empty()))
    all.push_back(std::move(problem));
  const bool any_joins =
      std::ranges::any_of(lines, [](const Line& it) { return !it.joins.empty(); });
  if (all.empty() && any_joins)
    all = problems_of_heights(Plumbing(lines, sets, further_supplies),
                              elevations_of(supply, further_supplies));
  return all;
}

Layout::Layout(Supply supply,
               std::vector<Line> lines,
               Water water,
               Site site,
               std::vector<WateringSet> sets,
               std::vector<Supply> further_supplies) {
  if (auto found = problems(supply, lines, water, site, sets, {}, further_supplies); !found.empty())
    throw InvalidInput(std::move(found));
  auto data = std::make_shared<Data>();
  data->plumbing =
      std::make_shared<const Plumbing>(std::move(lines), std::move(sets), further_supplies);
  data->supply = std::move(supply);
  data->further_supplies = std::move(further_supplies);
  data->water = std::move(water);
  data->site = std::move(site);
  data->follow_supplies();
  data->follow_valves_and_faults();
  data_ = data;
}

const Supply& Layout::supply() const {
  return data_->supply;
}
const std::vector<Supply>& Layout::further_supplies() const {
  return data_->further_supplies;
}
const std::vector<Line>& Layout::lines() const {
  return data_->plumbing->lines;
}
const Water& Layout::water() const {
  return data_->water;
}
const Site& Layout::site() const {
  return data_->site;
}
const std::vector<WateringSet>& Layout::sets() const {
  return data_->plumbing->sets;
}
const std::vector<Fault>& Layout::faults() const {
  return data_->faults;
}
const Supply& Layout::supply_as_it_is() const {
  return data_->supply_as_it_is;
}
const std::vector<Supply>& Layout::further_supplies_as_they_are() const {
  return data_->further_supplies_as_they_are;
}
const std::vector<std::string>& Layout::running_sets() const {
  return data_->running_sets;
}

const Line& Layout::line(std::string_view name) const {
  return data_->plumbing->lines[index_of(name)];
}

std::size_t Layout::index_of(std::string_view line_name) const {
  const auto found = data_->plumbing->index.find(std::string(line_name));
  if (found == data_->plumbing->index.end())
    throw InvalidInput("line",
                       in_quotes(line_name) + " is not in this layout; there are " +
                           names_of(data_->plumbing->lines));
  return found->second;
}

const std::vector<std::size_t>& Layout::outward_order() const {
  return data_->plumbing->outward_order;
}
std::optional<std::size_t> Layout::feeder_of(std::size_t line_index) const {
  return data_->plumbing->feeders.at(line_index);
}
std::optional<std::size_t> Layout::joined_by(std::size_t line_index) const {
  return data_->plumbing->joined.at(line_index);
}
std::size_t Layout::supply_of(std::size_t line_index) const {
  return data_->plumbing->supplies.at(line_index);
}
Length Layout::inlet_elevation(std::size_t line_index) const {
  return data_->heights.at(line_index).inlet;
}
Length Layout::ground_rise(std::size_t line_index) const {
  return data_->heights.at(line_index).rise;
}
Length Layout::ground_elevation(std::size_t line_index, const Length& place) const {
  return ground_at(data_->plumbing->lines.at(line_index), data_->heights[line_index], place);
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
  const Line& line = data_->plumbing->lines.at(line_index);
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
  return !data_->ways.near.at(line_index) && !data_->ways.beyond[line_index];
}
bool Layout::is_shut(std::size_t line_index) const {
  return !data_->shut.empty() && data_->shut.at(line_index);
}
bool Layout::inlet_is_shut(std::size_t line_index) const {
  return !data_->ways.inlet.at(line_index);
}
bool Layout::outlet_has_water(std::size_t line_index, int outlet_number) const {
  const Line& line = line_with(line_index, outlet_number);
  const auto end = open_end_of(line_index);
  const bool is_beyond = end && line.place_of(outlet_number) > line.merged(*end);
  return is_beyond ? has_water_beyond_open_end(line_index) : inlet_has_water(line_index);
}
bool Layout::inlet_has_water(std::size_t line_index) const {
  return data_->ways.near.at(line_index);
}
bool Layout::has_water_beyond_open_end(std::size_t line_index) const {
  return data_->ways.beyond.at(line_index);
}
bool Layout::has_water(std::size_t line_index, const Length& place) const {
  return data_->ways.reach(line_index, place, data_->open_ends);
}

int Layout::outlet_count() const {
  return data_->plumbing->outlet_count;
}

Layout Layout::with_fault(Fault fault) const {
  return with_faults({std::move(fault)});
}

Layout Layout::with_faults(const std::vector<Fault>& faults) const {
  auto data = std::make_shared<Data>(*data_);
  data->faults.insert(data->faults.end(), faults.begin(), faults.end());
  if (auto found = problems_of_faults(data->faults,
                                      data->supply,
                                      data->further_supplies,
                                      data->plumbing->lines,
                                      !data->plumbing->sets.empty());
      !found.empty())
    throw InvalidInput(std::move(found));
  data->follow_valves_and_faults();
  if (auto found = data->problems_of_dry_faults(); !found.empty())
    throw InvalidInput(std::move(found));
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

PossibleFaults Layout::with_possible_faults(const std::vector<Fault>& faults) const {
  Data data(*data_);
  std::vector<SkippedFault> skipped;
  for (const Fault& fault : faults) {
    data.faults.push_back(fault);
    auto found = problems_of_faults(data.faults,
                                    data.supply,
                                    data.further_supplies,
                                    data.plumbing->lines,
                                    !data.plumbing->sets.empty());
    if (found.empty() && data.plumbing->any_joins) {
      data.follow_valves_and_faults();
      found = data.problems_of_dry_faults();
    }
    if (found.empty()) continue;
    for (Problem& problem : found) problem.place.clear();
    skipped.push_back({fault, std::move(found)});
    data.faults.pop_back();
  }
  return {without_faults().with_faults(data.faults), std::move(skipped)};
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
  std::vector<Problem> found;
  add_all(found, "supply", problems(supply));
  for (Problem& problem : problems_of_names(supply, {}, {})) found.push_back(std::move(problem));
  if (found.empty())
    found = problems_of_faults(faults(), supply, further_supplies(), lines(), !sets().empty());
  const bool moved = supply.elevation != this->supply().elevation;
  if (found.empty() && moved)
    found = problems_of_heights(*data_->plumbing, elevations_of(supply, further_supplies()));
  if (!found.empty()) throw InvalidInput(std::move(found));
  auto data = std::make_shared<Data>(*data_);
  data->supply = std::move(supply);
  data->supply_as_it_is = hydro::with_faults(data->supply, data->faults);
  if (moved) data->follow_supplies();
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

Layout Layout::with_further_supplies(std::vector<Supply> further_supplies) const {
  return as_it_was(Layout(supply(), lines(), water(), site(), sets(), std::move(further_supplies)),
                   faults());
}

Layout Layout::with_line(Line line) const {
  std::vector<Line> lines = data_->plumbing->lines;
  const auto same = data_->plumbing->index.find(line.name);
  if (same == data_->plumbing->index.end())
    lines.push_back(std::move(line));
  else
    lines[same->second] = std::move(line);
  return as_it_was(Layout(supply(), std::move(lines), water(), site(), sets(), further_supplies()),
                   faults());
}

Layout Layout::without(std::string_view line_name) const {
  std::vector<Line> lines = data_->plumbing->lines;
  lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(index_of(line_name)));
  std::vector<Fault> kept = faults();
  std::erase_if(kept, [&](const Fault& fault) { return line_of(fault) == line_name; });
  std::vector<WateringSet> sets = this->sets();
  for (WateringSet& set : sets) std::erase(set.lines, line_name);
  std::erase_if(sets, [](const WateringSet& set) { return set.lines.empty(); });
  return as_it_was(
      Layout(supply(), std::move(lines), water(), site(), std::move(sets), further_supplies()),
      kept);
}

bool Layout::operator==(const Layout& other) const {
  return data_ == other.data_ ||
         (supply() == other.supply() && lines() == other.lines() && water() == other.water() &&
          site() == other.site() && sets() == other.sets() &&
          further_supplies() == other.further_supplies() &&
          running_sets() == other.running_sets() && faults() == other.faults());
}

std::string describe(const Fault& fault, const Layout& layout, UnitSystem units) {
  static const Line no_line;
  return describe(fault, is_of_the_supply(fault) ? no_line : layout.line(line_of(fault)), units);
}

}  // namespace hydro
