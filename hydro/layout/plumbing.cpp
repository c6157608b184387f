#include "hydro/layout/plumbing.hpp"

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <set>
#include <unordered_map>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

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

}  // namespace

Plumbing::Plumbing(std::vector<Line> all, std::vector<WateringSet> its_sets)
    : lines(std::move(all)), sets(std::move(its_sets)), index(index_lines(lines)) {
  for (const Line& line : lines) {
    feeders.emplace_back();
    if (!line.fed_by.empty()) feeders.back() = index.at(line.fed_by);
    outlet_count += line.outlet_count();
  }
  outward_order = order_outward(lines, feeders);
}

Length Plumbing::begins_at(std::size_t line) const {
  return hydro::begins_at(lines[line], lines[feeders[line].value()]);
}

std::vector<bool> Plumbing::shut_while(const std::vector<std::string>& running,
                                       const std::vector<std::size_t>& left_open) const {
  std::vector<bool> named_by_any(lines.size(), false), open(lines.size(), false);
  for (const WateringSet& set : sets) {
    const bool runs = std::ranges::find(running, set.name) != running.end();
    for (const std::string& line : set.lines) {
      named_by_any[index.at(line)] = true;
      if (runs) open[index.at(line)] = true;
    }
  }
  std::vector<bool> by_fault(lines.size(), false), reached = open;
  for (const std::size_t i : left_open) by_fault[i] = true;
  const auto open_feeders = [&](std::vector<bool>& on) {
    for (auto i = outward_order.rbegin(); i != outward_order.rend(); ++i)
      if (on[*i] && feeders[*i]) on[*feeders[*i]] = true;
  };
  open_feeders(reached);
  for (const std::size_t i : outward_order) {
    // A line that no set names has no valve of its own: water stands as far as the one left open.
    const bool has_water = !feeders[i] || reached[*feeders[i]];
    reached[i] = reached[i] || (has_water && (by_fault[i] || !named_by_any[i]));
    if (by_fault[i] && reached[i]) open[i] = true;
  }
  for (const std::size_t i : outward_order)
    if (feeders[i] && open[*feeders[i]] && !named_by_any[i]) open[i] = true;
  open_feeders(open);
  open.flip();
  return open;
}

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
    for (Problem& problem : examination.take()) {
      problem.place = place;
      all.push_back(std::move(problem));
    }
  }
  return all;
}

}  // namespace hydro
