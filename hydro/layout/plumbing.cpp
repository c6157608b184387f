#include "hydro/layout/plumbing.hpp"

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <set>
#include <string_view>
#include <unordered_map>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// By line: those that refer to it, by name, so that the order in which they were written changes
/// not even the rounding.
std::vector<std::vector<std::size_t>> turned_round(const std::vector<Line>& lines,
                                                   const Others& others) {
  std::vector<std::vector<std::size_t>> found(lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (others[i]) found[*others[i]].push_back(i);
  for (std::vector<std::size_t>& same : found)
    std::ranges::sort(same, {}, [&](std::size_t i) { return std::string_view(lines[i].name); });
  return found;
}

/// Lines in an order in which each comes after its feeder, those with one feeder by name; those in a
/// circle are left out.
std::vector<std::size_t> order_outward(const std::vector<Line>& lines,
                                       const Others& feeders,
                                       const std::vector<std::vector<std::size_t>>& fed) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (!feeders[i]) order.push_back(i);
  std::ranges::sort(order, {}, [&](std::size_t i) { return std::string_view(lines[i].name); });
  for (std::size_t next = 0; next < order.size(); ++next) {
    const std::vector<std::size_t>& beyond = fed[order[next]];
    order.insert(order.end(), beyond.begin(), beyond.end());
  }
  return order;
}

/// Whether how high its far end lies is taken from the line that it joins.
bool rises_to_join(const Line& line) {
  return !line.joins.empty() && !line.ground_rise;
}

/// An order in which each line comes after its feeder and, where it rises to join another, after
/// that one; those that hang on themselves are left out.
std::vector<std::size_t> order_by_height(const std::vector<Line>& lines,
                                         const Others& joined,
                                         const std::vector<std::size_t>& outward_order,
                                         const std::vector<std::vector<std::size_t>>& fed,
                                         const std::vector<std::vector<std::size_t>>& joining) {
  std::vector<int> waits_for(lines.size(), 0);
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (const std::size_t beyond : fed[i]) ++waits_for[beyond];
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (joined[i] && rises_to_join(lines[i])) ++waits_for[i];
  std::vector<std::size_t> order;
  for (const std::size_t i : outward_order)
    if (waits_for[i] == 0) order.push_back(i);
  const auto tell = [&](std::size_t waiting) {
    if (--waits_for[waiting] == 0) order.push_back(waiting);
  };
  for (std::size_t next = 0; next < order.size(); ++next) {
    for (const std::size_t beyond : fed[order[next]]) tell(beyond);
    for (const std::size_t other : joining[order[next]])
      if (rises_to_join(lines[other])) tell(other);
  }
  return order;
}

/// A place on another line: where a line begins, or where its far end meets it.
struct PlaceOn {
  const char* at_key;
  const std::optional<Length>& at;
  const char* outlet_key;
  const std::optional<int>& outlet;
};

void examine_place(const PlaceOn& it,
                   const Line& other,
                   const std::string& place,
                   std::vector<Problem>& all) {
  if (it.at && *it.at > other.whole_length() + same_place)
    all.push_back({place,
                   it.at_key,
                   "is " + to_message(*it.at, units::m) + ", beyond the far end of line " +
                       in_quotes(other.name) + " at " +
                       to_message(other.whole_length(), units::m)});
  if (it.outlet && !(*it.outlet >= 1 && *it.outlet <= other.outlet_count()))
    all.push_back({place,
                   it.outlet_key,
                   fmt::format("is {}, but line {} has {} outlets",
                               *it.outlet,
                               in_quotes(other.name),
                               other.outlet_count())});
}

bool ends_on_itself(const Line& line) {
  return line.joins == line.name && ends_at(line, line) > line.whole_length() - same_place;
}

}  // namespace

Plumbing::Plumbing(std::vector<Line> all,
                   std::vector<WateringSet> its_sets,
                   const std::vector<Supply>& further_supplies)
    : lines(std::move(all)),
      sets(std::move(its_sets)),
      index(index_lines(lines)),
      supplies(lines.size(), 0) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = lines[i];
    feeders.emplace_back();
    joined.emplace_back();
    outlet_count += line.outlet_count();
    if (!line.joins.empty()) joined.back() = index.at(line.joins);
    any_joins = any_joins || !line.joins.empty();
    if (line.fed_by.empty()) continue;
    const auto supply = std::ranges::find(further_supplies, line.fed_by, &Supply::name);
    if (supply == further_supplies.end())
      feeders.back() = index.at(line.fed_by);
    else
      supplies[i] = static_cast<std::size_t>(supply - further_supplies.begin()) + 1;
  }
  fed = turned_round(lines, feeders);
  joining = turned_round(lines, joined);
  outward_order = order_outward(lines, feeders, fed);
  order_of_heights = order_by_height(lines, joined, outward_order, fed, joining);
  for (const std::size_t i : outward_order)
    if (feeders[i]) supplies[i] = supplies[*feeders[i]];
}

Length Plumbing::begins_at(std::size_t line) const {
  return hydro::begins_at(lines[line], lines[feeders[line].value()]);
}

Length Plumbing::ends_at(std::size_t line) const {
  return hydro::ends_at(lines[line], lines[joined[line].value()]);
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
  if (any_joins) open_what_joins(named_by_any, open);
  // A line without a valve of its own is not what shuts it where its feeder is shut.
  std::vector<bool> shut = open;
  for (std::size_t i = 0; i < lines.size(); ++i)
    shut[i] = !open[i] && (named_by_any[i] || !feeders[i] || open[*feeders[i]]);
  return shut;
}

void Plumbing::open_what_joins(const std::vector<bool>& named, std::vector<bool>& open) const {
  std::vector<std::size_t> reached;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (open[i]) reached.push_back(i);
  for (std::size_t next = 0; next < reached.size(); ++next)
    for (std::optional<std::size_t> at : joining[reached[next]])
      for (; at && !named[*at] && !open[*at]; at = feeders[*at]) {
        open[*at] = true;
        reached.push_back(*at);
      }
}

std::vector<Problem> problems_between(const std::vector<Line>& lines,
                                      const std::vector<Supply>& further_supplies) {
  std::vector<Problem> all;
  const std::vector<std::string> places = places_of(lines);
  const IndexByName index = index_lines(lines);
  Others feeders(lines.size());
  Others joined(lines.size());
  long long outlets = 0;
  const auto refer = [&](std::size_t i, const char* key, const std::string& name, PlaceOn where) {
    const auto other = index.find(name);
    if (other == index.end()) {
      all.push_back(
          {places[i],
           key,
           "is " + in_quotes(name) + ", but there is no such line; there are " + names_of(lines)});
      return std::optional<std::size_t>();
    }
    examine_place(where, lines[other->second], places[i], all);
    return std::optional(other->second);
  };
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = lines[i];
    const std::string& place = places[i];
    if (!line.name.empty() && index.at(line.name) != i)
      all.push_back(
          {place, "name", "is used by an earlier line; every line needs a name of its own"});
    outlets += std::max(0, line.outlet_count());
    if (std::ranges::find(further_supplies, line.fed_by, &Supply::name) != further_supplies.end()) {
      if (line.tap || line.tap_outlet)
        all.push_back({place,
                       line.tap ? "tap" : "tap_outlet",
                       "is given, but " + in_quotes(line.fed_by) + " is a supply, not a line"});
    } else if (!line.fed_by.empty()) {
      feeders[i] =
          refer(i, "fed_by", line.fed_by, {"tap", line.tap, "tap_outlet", line.tap_outlet});
    }
    if (line.joins.empty()) continue;
    joined[i] = refer(
        i, "joins", line.joins, {"joins_at", line.joins_at, "joins_outlet", line.joins_outlet});
    if (joined[i] == i && ends_on_itself(line))
      all.push_back({place, "joins", "is its own far end; say where along it, with joins_at"});
  }
  const auto fed = turned_round(lines, feeders);
  const std::vector<std::size_t> order = order_outward(lines, feeders, fed);
  if (order.size() != lines.size()) {
    std::vector<bool> reached(lines.size(), false);
    for (const std::size_t i : order) reached[i] = true;
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (!reached[i])
        all.push_back({places[i],
                       "fed_by",
                       "is " + in_quotes(lines[i].fed_by) +
                           ", but that leads round in a circle and never to a supply"});
  } else if (const auto by_height =
                 order_by_height(lines, joined, order, fed, turned_round(lines, joined));
             by_height.size() != lines.size()) {
    std::vector<bool> is_known(lines.size(), false);
    for (const std::size_t i : by_height) is_known[i] = true;
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (!is_known[i] && joined[i] && rises_to_join(lines[i]))
        all.push_back({places[i],
                       "ground_rise",
                       "is not given, and how high line " + in_quotes(lines[i].joins) +
                           " lies where this one joins it hangs on it in turn; give one of them"});
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
