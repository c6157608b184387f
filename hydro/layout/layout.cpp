#include "hydro/layout/layout.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <unordered_map>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

using IndexByName = std::unordered_map<std::string, std::size_t>;

IndexByName index_lines(const std::vector<Line>& lines) {
  IndexByName index;
  for (std::size_t i = 0; i < lines.size(); ++i) index.emplace(lines[i].name, i);
  return index;
}

/// Names for a hint, as many as it can show.
std::string names_of(const std::vector<Line>& lines) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < std::min(listed_at_most, lines.size()); ++i)
    names.push_back(lines[i].name);
  return list_in_quotes(names, lines.size());
}

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

/// What is wrong between the lines, each of them taken alone being examined elsewhere.
std::vector<Problem> problems_between(const std::vector<Line>& lines) {
  std::vector<Problem> all;
  const std::string hint = names_of(lines);
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
    else
      feeders[i] = feeder->second;
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

std::vector<Problem> problems_of_faults(const std::vector<Fault>& faults,
                                        const std::vector<Line>& lines) {
  std::vector<Problem> all;
  if (faults.empty()) return all;
  const std::string hint = names_of(lines);
  const IndexByName index = index_lines(lines);
  std::map<std::pair<std::string, int>, std::size_t> earlier;
  for (std::size_t i = 0; i < faults.size(); ++i) {
    const std::string place = fmt::format("fault {}", i + 1);
    const std::string& name = line_of(faults[i]);
    const auto line = index.find(name);
    if (line == index.end()) {
      all.push_back({place,
                     "line",
                     "is " + in_quotes(name) + ", but there is no such line; there are " + hint});
      continue;
    }
    add_all(all, place, problems(faults[i], lines[line->second]));
    const auto [first, is_new] = earlier.emplace(std::pair{name, outlet_of(faults[i])}, i + 1);
    if (!is_new)
      all.push_back({place,
                     "outlet",
                     fmt::format("{} of line {} already has fault {}; one outlet takes one fault",
                                 outlet_of(faults[i]),
                                 in_quotes(name),
                                 first->second)});
  }
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

  IndexByName index;
  Feeders feeders;
  std::vector<std::size_t> outward_order;
  std::vector<Length> inlet_elevations;
  int outlet_count = 0;
};

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
  for (const std::size_t i : data->outward_order)
    if (const auto feeder = data->feeders[i])
      data->inlet_elevations[i] =
          data->inlet_elevations[*feeder] + data->lines[*feeder].ground_rise.value_or(Length{});
  data_ = std::move(data);
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
Length Layout::outlet_elevation(std::size_t line_index, int outlet_number) const {
  const Line& line = data_->lines.at(line_index);
  const double share = line.place_of(outlet_number) / line.whole_length();
  return inlet_elevation(line_index) + line.ground_rise.value_or(Length{}) * share;
}

const Outlet& Layout::outlet_at(std::size_t line_index, int outlet_number) const {
  const Line& line = data_->lines.at(line_index);
  if (!(outlet_number >= 1 && outlet_number <= line.outlet_count()))
    throw InvalidInput(
        "outlet", fmt::format("is {}, must be from 1 to {}", outlet_number, line.outlet_count()));
  return *line.outlet;
}

const std::vector<Fault>& Layout::faults_on(std::size_t line_index) const {
  static const std::vector<Fault> no_faults;
  const auto found = data_->faults_by_line.find(line_index);
  return found == data_->faults_by_line.end() ? no_faults : found->second;
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
  for (const Fault& fault : faults)
    data->faults_by_line[data->index.at(line_of(fault))].push_back(fault);
  for (auto& [line, on_line] : data->faults_by_line)
    std::sort(on_line.begin(), on_line.end(), [](const Fault& one, const Fault& other) {
      return outlet_of(one) < outlet_of(other);
    });
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

Layout Layout::without_faults() const {
  auto data = std::make_shared<Data>(*data_);
  data->faults.clear();
  data->faults_by_line.clear();
  return Layout(std::shared_ptr<const Data>(std::move(data)));
}

}  // namespace hydro
