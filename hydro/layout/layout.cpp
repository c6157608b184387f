#include "hydro/layout/layout.hpp"

#include "hydro/layout/fault_conflicts.hpp"
#include "hydro/layout/plumbing.hpp"
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
  Water water;
  Site site;
  std::vector<std::string> running_sets;
  std::vector<Fault> faults;

  // What follows from these.
  std::vector<Length> inlet_elevations;
  Supply supply_as_it_is;
  std::unordered_map<std::size_t, std::vector<Fault>> faults_by_line;
  std::unordered_map<std::size_t, Length> open_ends;  // by line
  std::vector<bool> cut_off;                          // by line; empty: none is
  std::vector<bool> shut;                             // by line; empty: none is

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
  std::vector<bool> found(plumbing->lines.size(), false);
  const Feeders& feeders = plumbing->feeders;
  for (const std::size_t i : plumbing->outward_order) {
    found[i] = (!shut.empty() && shut[i]) || is_stuck_shut(i);
    if (!feeders[i]) continue;
    const auto end = open_ends.find(*feeders[i]);
    found[i] = found[i] || found[*feeders[i]] ||
               (end != open_ends.end() && plumbing->begins_at(i) > end->second - same_place);
  }
  cut_off.clear();
  if (std::ranges::find(found, true) != found.end()) cut_off = std::move(found);
}

void Layout::Data::follow_valves() {
  const std::vector<Line>& lines = plumbing->lines;
  std::vector<std::size_t> left_open;
  for (const auto& [line, on_line] : faults_by_line)
    for (const Fault& fault : on_line)
      if (std::holds_alternative<ValveLeftOpen>(fault)) left_open.push_back(line);
  std::vector<bool> found(lines.size(), false);
  if (!running_sets.empty()) found = plumbing->shut_while(running_sets, left_open);
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (lines[i].valve && lines[i].valve->opening == ValveOpening::shut) found[i] = true;
  for (const std::size_t line : left_open) found[line] = false;
  for (const std::size_t i : plumbing->outward_order)
    if (const auto feeder = plumbing->feeders[i]; feeder && found[*feeder]) found[i] = true;
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
  data->plumbing = std::make_shared<const Plumbing>(std::move(lines), std::move(sets));
  data->supply = std::move(supply);
  data->water = std::move(water);
  data->site = std::move(site);
  data->follow_valves_and_faults();
  data_ = data;
  find_elevations(*data);
}

/// Needs all else of this layout in place.
void Layout::find_elevations(Data& data) const {
  data.inlet_elevations.assign(lines().size(), supply().elevation.value_or(Length{}));
  for (const std::size_t i : outward_order())
    if (const auto feeder = feeder_of(i))
      data.inlet_elevations[i] = ground_elevation(*feeder, data.plumbing->begins_at(i));
}

const Supply& Layout::supply() const {
  return data_->supply;
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
Length Layout::inlet_elevation(std::size_t line_index) const {
  return data_->inlet_elevations.at(line_index);
}
Length Layout::ground_elevation(std::size_t line_index, const Length& place) const {
  const Line& line = data_->plumbing->lines.at(line_index);
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
  return !data_->cut_off.empty() && data_->cut_off.at(line_index);
}
bool Layout::is_shut(std::size_t line_index) const {
  return !data_->shut.empty() && data_->shut.at(line_index);
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
  if (auto found = problems_of_faults(
          data->faults, data->supply, data->plumbing->lines, !data->plumbing->sets.empty());
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
    if (auto found = problems_of_faults(
            all, data_->supply, data_->plumbing->lines, !data_->plumbing->sets.empty());
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
  std::vector<Problem> found;
  add_all(found, "supply", problems(supply));
  if (found.empty()) found = problems_of_faults(faults(), supply, lines(), !sets().empty());
  if (!found.empty()) throw InvalidInput(std::move(found));
  auto data = std::make_shared<Data>(*data_);
  data->supply = std::move(supply);
  data->supply_as_it_is = hydro::with_faults(data->supply, data->faults);
  Layout changed(std::shared_ptr<const Data>{data});
  if (data->supply.elevation != this->supply().elevation) changed.find_elevations(*data);
  return changed;
}

Layout Layout::with_line(Line line) const {
  std::vector<Line> lines = data_->plumbing->lines;
  const auto same = data_->plumbing->index.find(line.name);
  if (same == data_->plumbing->index.end())
    lines.push_back(std::move(line));
  else
    lines[same->second] = std::move(line);
  return as_it_was(Layout(supply(), std::move(lines), water(), site(), sets()), faults());
}

Layout Layout::without(std::string_view line_name) const {
  std::vector<Line> lines = data_->plumbing->lines;
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
