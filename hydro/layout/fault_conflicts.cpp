#include "hydro/layout/fault_conflicts.hpp"

#include "hydro/layout/names.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <unordered_map>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

class Conflicts {
 public:
  Conflicts(const std::vector<Fault>& faults,
            const Supply& supply,
            const std::vector<Supply>& further_supplies,
            const std::vector<Line>& lines,
            bool with_sets)
      : faults_(faults),
        supply_(supply),
        further_supplies_(further_supplies),
        lines_(lines),
        with_sets_(with_sets),
        index_(index_lines(lines)) {}

  std::vector<Problem> find() {
    std::vector<std::size_t> sound;
    for (std::size_t i = 0; i < faults_.size(); ++i) {
      if (is_of_the_supply(faults_[i]))
        fits_the_supply(i);
      else if (fits_its_line(i))
        sound.push_back(i);
    }
    for (const std::size_t i : sound) first_of_its_kind(i);
    const bool none_joins =
        std::ranges::all_of(lines_, [](const Line& line) { return line.joins.empty(); });
    if (!open_ends_.empty() && none_joins)
      for (const std::size_t i : sound) has_water(i);
    return std::move(found_);
  }

 private:
  void add(std::size_t fault, std::string key, std::string message) {
    found_.push_back({fmt::format("fault {}", fault + 1), std::move(key), std::move(message)});
  }

  const Supply* supply_named(const std::string& name) const {
    if (name.empty()) return &supply_;
    const auto found = std::ranges::find(further_supplies_, name, &Supply::name);
    return found == further_supplies_.end() ? nullptr : &*found;
  }

  void fits_the_supply(std::size_t i) {
    const std::string& name = supply_of(faults_[i]);
    const Supply* supply = supply_named(name);
    if (!supply)
      return add(i, "supply", "is " + in_quotes(name) + ", but there is no such further supply");
    for (const Problem& problem : problems(faults_[i], *supply))
      add(i, problem.key, problem.message);
    const int pump = std::visit(
        [](const auto& kind) {
          if constexpr (requires { kind.pump; }) return kind.pump.value_or(1);
          return 0;
        },
        faults_[i]);
    const auto [first, is_new] = on_supply_.emplace(std::tuple{name, faults_[i].index(), pump}, i);
    if (!is_new) add(i, "kind", fmt::format("is that of fault {} already", first->second + 1));
  }

  bool fits_its_line(std::size_t i) {
    const std::string& name = line_of(faults_[i]);
    const auto line = index_.find(name);
    if (line == index_.end()) {
      add(i,
          "line",
          "is " + in_quotes(name) + ", but there is no such line; there are " + names_of(lines_));
      return false;
    }
    std::vector<Problem> found = problems(faults_[i], lines_[line->second]);
    const auto& valve = lines_[line->second].valve;
    if (std::holds_alternative<ValveLeftOpen>(faults_[i]) && !with_sets_ &&
        !(valve && valve->opening == ValveOpening::shut))
      found.push_back({{},
                       "line",
                       "is " + in_quotes(name) +
                           ", whose valve is not shut, and there are no sets that shut it"});
    for (const Problem& problem : found) add(i, problem.key, problem.message);
    return found.empty();
  }

  void first_of_its_kind(std::size_t i) {
    const std::size_t line = index_.at(line_of(faults_[i]));
    if (const auto outlet = outlet_of(faults_[i])) {
      const auto [first, is_new] = on_outlets_.emplace(std::pair{line, *outlet}, i);
      if (!is_new)
        add(i,
            "outlet",
            fmt::format("{} of line {} already has fault {}; one outlet takes one fault",
                        *outlet,
                        in_quotes(lines_[line].name),
                        first->second + 1));
    }
    const auto once = [&](std::unordered_map<std::size_t, std::size_t>& known, const char* why) {
      const auto [first, is_new] = known.emplace(line, i);
      if (!is_new)
        add(i,
            "line",
            fmt::format("{} already has fault {}; {}",
                        in_quotes(lines_[line].name),
                        first->second + 1,
                        why));
    };
    if (std::holds_alternative<EndOpen>(faults_[i]) && !is_an_end(i, line)) return;
    if (open_end(faults_[i], lines_[line])) once(open_ends_, "one line has one open end");
    if (std::holds_alternative<ValvePartClosed>(faults_[i]))
      once(valves_, "one valve takes one loss_coefficient");
    const bool stuck = std::holds_alternative<RegulatorStuckOpen>(faults_[i]) ||
                       std::holds_alternative<RegulatorStuckShut>(faults_[i]);
    if (stuck && !outlet_of(faults_[i])) once(regulators_, "one regulator gets stuck once");
  }

  /// Where other lines begin, or where it joins one, there is no cap to lose.
  bool is_an_end(std::size_t i, std::size_t line) {
    if (!lines_[line].joins.empty()) {
      add(i,
          "line",
          fmt::format("is {}, whose far end joins line {}; \"line cut\" parts them",
                      in_quotes(lines_[line].name),
                      in_quotes(lines_[line].joins)));
      return false;
    }
    for (const Line& other : lines_) {
      const bool begins_there =
          other.fed_by == lines_[line].name && !other.tap && !other.tap_outlet;
      const bool joins_there =
          other.joins == lines_[line].name && !other.joins_at && !other.joins_outlet;
      if (!begins_there && !joins_there) continue;
      add(i,
          "line",
          fmt::format("is {}, but line {} {} its far end; \"line cut\" parts them",
                      in_quotes(lines_[line].name),
                      in_quotes(other.name),
                      begins_there ? "begins at" : "joins"));
      return false;
    }
    return true;
  }

  /// Follows the water from the supply to the fault, backwards.
  void has_water(std::size_t i) {
    std::size_t line = index_.at(line_of(faults_[i]));
    std::optional<Length> place;
    if (const auto outlet = outlet_of(faults_[i])) place = lines_[line].place_of(*outlet);
    if (const auto* leak = std::get_if<Leak>(&faults_[i])) place = leak->place;
    if (place && is_beyond(*place - same_place, line)) return refuse(i, line);
    for (std::size_t seen = 0; seen < lines_.size() && !lines_[line].fed_by.empty(); ++seen) {
      const auto feeder = index_.find(lines_[line].fed_by);
      if (feeder == index_.end()) return;
      const Line& fed = lines_[line];
      line = feeder->second;
      if (fed.tap_outlet &&
          !(*fed.tap_outlet >= 1 && *fed.tap_outlet <= lines_[line].outlet_count()))
        return;
      if (is_beyond(begins_at(fed, lines_[line]) + same_place, line)) return refuse(i, line);
    }
  }

  bool is_beyond(const Length& place, std::size_t line) const {
    const auto end = open_ends_.find(line);
    return end != open_ends_.end() && place > *open_end(faults_[end->second], lines_[line]);
  }

  void refuse(std::size_t i, std::size_t line) {
    add(i,
        outlet_of(faults_[i]) ? "outlet" : "line",
        fmt::format("cannot act: by fault {} line {} is open to the air before it, and no water is "
                    "beyond",
                    open_ends_.at(line) + 1,
                    in_quotes(lines_[line].name)));
  }

  const std::vector<Fault>& faults_;
  const Supply& supply_;
  const std::vector<Supply>& further_supplies_;
  const std::vector<Line>& lines_;
  bool with_sets_;
  IndexByName index_;
  std::map<std::pair<std::size_t, int>, std::size_t> on_outlets_;  // by line and outlet: the fault
  std::unordered_map<std::size_t, std::size_t> open_ends_;         // by line: the fault
  std::unordered_map<std::size_t, std::size_t> valves_;
  std::unordered_map<std::size_t, std::size_t> regulators_;
  /// By supply, kind and pump: the fault.
  std::map<std::tuple<std::string, std::size_t, int>, std::size_t> on_supply_;
  std::vector<Problem> found_;
};

}  // namespace

std::vector<Problem> problems_of_faults(const std::vector<Fault>& faults,
                                        const Supply& supply,
                                        const std::vector<Supply>& further_supplies,
                                        const std::vector<Line>& lines,
                                        bool with_sets) {
  return faults.empty() ? std::vector<Problem>{}
                        : Conflicts(faults, supply, further_supplies, lines, with_sets).find();
}

}  // namespace hydro
