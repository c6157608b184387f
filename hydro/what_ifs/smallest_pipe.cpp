#include "hydro/what_ifs/smallest_pipe.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/answers/pressure_budget.hpp"
#include "hydro/physics/outlet.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/in_order.hpp"
#include "hydro/what_ifs/in_parallel.hpp"
#include "hydro/what_ifs/laid.hpp"
#include "hydro/what_ifs/ways_to_lay.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <queue>
#include <set>
#include <utility>

namespace hydro {
namespace {

/// Whether one pipe loses no more than the other at every flow; of some pipes neither does.
bool never_loses_more(const Pipe& one, const Pipe& other) {
  const double bore = si(one.inside_diameter) / si(other.inside_diameter);
  if (!(bore >= 1)) return false;
  if (one.hazen_williams && other.hazen_williams)  // h ~ C^-1.852 D^-4.8704
    return std::pow(*one.hazen_williams / *other.hazen_williams, 1.852) * std::pow(bore, 4.8704) >=
           1;
  if (one.roughness && other.roughness) return *one.roughness <= *other.roughness;
  return one.darcy_factor && other.darcy_factor &&
         *one.darcy_factor <= *other.darcy_factor * std::pow(bore, 5);
}

void examine_pipes(const std::vector<PricedPipe>& pipes, Examination& examination) {
  examination.within(
      "pipes", static_cast<int>(std::min<std::size_t>(pipes.size(), 10'000)), 1, 1000);
  std::size_t priced = 0;
  for (std::size_t i = 0; i < pipes.size(); ++i) {
    examination.include("pipes, " + std::to_string(i + 1), problems(pipes[i]));
    priced += pipes[i].price.has_value() ? 1 : 0;
    for (std::size_t earlier = 0; earlier < i; ++earlier)
      if (pipes[earlier].pipe == pipes[i].pipe)
        examination.add("pipes, " + std::to_string(i + 1),
                        "is the same pipe as pipes, " + std::to_string(earlier + 1));
  }
  if (priced != 0 && priced != pipes.size())
    examination.add("pipes",
                    std::to_string(priced) + " of " + std::to_string(pipes.size()) +
                        " have a price, must be all or none");
}

void examine_options(const SmallestPipeOptions& options, Examination& examination) {
  constexpr std::size_t most_ways = 10'000'000;
  constexpr std::size_t most_tries = 100'000'000;
  if (options.limits.judged.empty())
    examination.add("limits.judged", "is empty; at least one limit must be chosen");
  examination.within("change_every", options.change_every, Range<Length>{0.1, 10000, units::m});
  const auto count = [&](const char* key, std::size_t value, std::size_t to) {
    if (!(value >= 1 && value <= to))
      examination.add(key,
                      "is " + std::to_string(value) + ", must be from 1 to " + std::to_string(to));
  };
  count("most_ways_of_a_group", options.most_ways_of_a_group, most_ways);
  count("most_tried", options.most_tried, most_tries);
}

/// Indices of lines that are there, have water and are named once.
std::vector<std::size_t> lines_of(const Layout& layout,
                                  const std::vector<std::string>& names,
                                  const std::string& key,
                                  std::set<std::size_t>& named,
                                  Examination& examination) {
  std::vector<std::size_t> lines;
  if (names.empty()) examination.add(key, "names no line");
  for (const std::string& name : names) {
    const std::size_t line = layout.index_of(name);
    if (!named.insert(line).second)
      examination.add(key, "names line " + in_quotes(name) + " twice");
    if (layout.is_cut_off(line))
      examination.add(key, "names line " + in_quotes(name) + ", to which no water comes");
    lines.push_back(line);
  }
  return lines;
}

void throw_if_any(Examination& examination) {
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

std::vector<PricedPipe> from_the_widest_on(std::vector<PricedPipe> pipes) {
  std::stable_sort(pipes.begin(), pipes.end(), [](const PricedPipe& one, const PricedPipe& other) {
    return one.pipe.inside_diameter > other.pipe.inside_diameter;
  });
  return pipes;
}

Volume volume_inside(const Line& line) {
  return Volume::from_value(cost_of_line(line, {}));
}

/// For each group, which of its ways is taken.
using Choice = std::vector<std::size_t>;

/// Choices from the cheapest on. Each is come to by one way only: from the one before in its last
/// group that is not at its cheapest.
class FromTheCheapestOn {
 public:
  explicit FromTheCheapestOn(const std::vector<std::vector<WayToLay>>& ways) : ways_(ways) {
    if (std::none_of(
            ways.begin(), ways.end(), [](const auto& of_group) { return of_group.empty(); }))
      push(Choice(ways.size(), 0));
  }

  std::vector<Choice> next(std::size_t count) {
    std::vector<Choice> taken;
    while (taken.size() < count && !waiting_.empty()) {
      Choice choice = waiting_.top().second;
      waiting_.pop();
      std::size_t group = choice.size();
      do {
        --group;
        if (choice[group] + 1 >= ways_[group].size()) continue;
        Choice dearer = choice;
        ++dearer[group];
        push(std::move(dearer));
      } while (group > 0 && choice[group] == 0);
      taken.push_back(std::move(choice));
    }
    return taken;
  }

 private:
  void push(Choice choice) {
    double cost = 0;
    for (std::size_t group = 0; group < choice.size(); ++group)
      cost += ways_[group][choice[group]].cost;
    waiting_.emplace(cost, std::move(choice));
  }

  const std::vector<std::vector<WayToLay>>& ways_;
  std::priority_queue<std::pair<double, Choice>,
                      std::vector<std::pair<double, Choice>>,
                      std::greater<>>
      waiting_;
};

class Sizing {
 public:
  Sizing(const Layout& layout,
         const std::vector<LinesToSize>& lines,
         const std::vector<PricedPipe>& pipes,
         const SmallestPipeOptions& options,
         const Work& work)
      : layout_(layout),
        pipes_(from_the_widest_on(pipes)),
        options_(options),
        work_(work),
        has_prices_(!pipes.empty() && pipes.front().price) {
    Examination examination;
    examine_pipes(pipes, examination);
    examine_options(options, examination);
    if (lines.empty()) examination.add("lines", "is empty; at least one line must be named");
    throw_if_any(examination);
    std::set<std::size_t> named;
    for (std::size_t i = 0; i < lines.size(); ++i)
      add_group(lines[i], "lines, " + std::to_string(i + 1), named, examination);
    throw_if_any(examination);
  }

  SmallestPipe run() {
    for (const GroupToLay& group : groups_) ways_.push_back(group.ways());
    const std::size_t ways = ways_there_are();
    if (groups_.size() > 1 && can_be_struck()) strike();
    const std::size_t left = ways_there_are();
    most_tried_ = std::min(options_.most_tried, left);

    FromTheCheapestOn choices(ways_);
    constexpr std::size_t first_batch = 8;
    constexpr std::size_t largest_batch = 1024;
    std::size_t tried = 0;
    for (std::size_t size = first_batch; tried < most_tried_;
         size = std::min(2 * size, largest_batch)) {
      const std::vector<Choice> batch = choices.next(std::min(size, most_tried_ - tried));
      if (const auto first = first_that_holds(batch, tried))
        return told(laid(batch[*first]), true, ways, tried + *first + 1);
      tried += batch.size();
    }
    if (tried < left)
      throw InvalidInput("most_tried",
                         "is " + std::to_string(options_.most_tried) +
                             ": so many of the cheapest ways to lay the lines hold not every "
                             "limit. Name fewer pipes or groups, or allow more");
    return told(widest(), false, ways, tried);
  }

 private:
  void add_group(const LinesToSize& group,
                 const std::string& key,
                 std::set<std::size_t>& named,
                 Examination& examination) {
    constexpr int most_sizes = 10;
    examination.within(key + ".sizes", group.sizes, 1, most_sizes);
    std::vector<std::size_t> lines =
        lines_of(layout_, group.lines, key + ".lines", named, examination);
    if (lines.empty() || !(group.sizes >= 1 && group.sizes <= most_sizes)) return;
    groups_.emplace_back(layout_, std::move(lines), group.sizes, pipes_, options_.change_every);
    const double ways = groups_.back().count_of_ways();
    if (!groups_.back().all_change_alike())
      examination.add(
          key + ".lines",
          "have not the same places at which pipe may change: ask for one size, or name "
          "them apart");
    else if (!(ways <= static_cast<double>(options_.most_ways_of_a_group)))
      examination.add(key,
                      "can be laid in " + to_message(ways, "") + " ways, must be at most " +
                          std::to_string(options_.most_ways_of_a_group) +
                          " (most_ways_of_a_group). Name fewer pipes or sizes, or a longer "
                          "change_every");
  }

  /// As many as can be counted.
  std::size_t ways_there_are() const {
    constexpr auto most = std::numeric_limits<std::size_t>::max();
    std::size_t product = 1;
    for (const auto& of_group : ways_) {
      if (of_group.empty()) return 0;
      product = product > most / of_group.size() ? most : product * of_group.size();
    }
    return product;
  }

  std::vector<Margin> limits_passed(const Solution& solution) const {
    return passed(margins(solution, options_.limits));
  }

  std::optional<std::size_t> first_that_holds(const std::vector<Choice>& batch, std::size_t tried) {
    Work part = work_;
    if (work_.progress)
      part.progress = [&](std::size_t done, std::size_t) {
        return work_.progress(tried + done, most_tried_);
      };
    return first_of(batch.size(), part, [&](std::size_t i) {
      return limits_passed(solve(with_lines(layout_, laid(batch[i])))).empty();
    });
  }

  std::vector<Line> laid(const Choice& choice) const {
    std::vector<Line> lines = layout_.lines();
    for (std::size_t group = 0; group < groups_.size(); ++group)
      for (const std::size_t line : groups_[group].lines())
        lines[line] = groups_[group].laid(line, ways_[group][choice[group]]);
    return lines;
  }

  std::vector<Line> widest() const {
    std::vector<Line> lines = layout_.lines();
    const Pipe& pipe = pipes_.front().pipe;
    for (const GroupToLay& group : groups_)
      for (const std::size_t line : group.lines())
        lines[line] = laid_in(std::move(lines[line]), pipe);
    return lines;
  }

  /// Where an open end pours out more the wider its own pipe is, and where water may come from two
  /// sides, a wider pipe on the way may lower a pressure.
  bool can_be_struck() const {
    if (!std::ranges::count(options_.limits.judged, Limit::rated)) return false;
    if (!layout_.further_supplies().empty()) return false;
    for (std::size_t line = 0; line < layout_.lines().size(); ++line)
      if (layout_.joined_by(line) || layout_.open_end_of(line)) return false;
    for (std::size_t i = 1; i < pipes_.size(); ++i)
      if (!never_loses_more(pipes_[i - 1].pipe, pipes_[i].pipe)) return false;
    return true;
  }

  void strike() {
    for (std::size_t group = 0; group < groups_.size(); ++group) {
      std::vector<WayToLay>& ways = ways_[group];
      std::vector<char> fails(ways.size());
      in_parallel(ways.size(), work_, [&](std::size_t i) {
        try {
          fails[i] = fails_in_the_best_company(group, ways[i]);
        } catch (const NotSolved&) {  // it may be dearer than the answer
          fails[i] = false;
        }
      });
      std::vector<WayToLay> kept;
      for (std::size_t i = 0; i < ways.size(); ++i)
        if (!fails[i]) kept.push_back(std::move(ways[i]));
      ways = std::move(kept);
    }
  }

  bool fails_in_the_best_company(std::size_t group, const WayToLay& way) const {
    std::vector<Line> lines = widest();
    for (const std::size_t line : groups_[group].lines())
      lines[line] = groups_[group].laid(line, way);
    Limits rated = options_.limits;
    rated.judged = {Limit::rated};
    const std::vector<Margin> weakest = passed(margins(solve(with_lines(layout_, lines)), rated));
    if (weakest.empty()) return false;

    const std::size_t line_of_weakest = layout_.index_of(weakest.front().line);
    const int outlet = weakest.front().outlet.value();
    const std::vector<Length> on_the_way = way_to(line_of_weakest, outlet);
    for (std::size_t other = 0; other < groups_.size(); ++other)
      if (other != group)
        for (const std::size_t line : groups_[other].lines())
          lines[line] = laid_in(
              layout_.lines()[line], pipes_.front().pipe, on_the_way[line], pipes_.back().pipe);
    constexpr double rounding_of_two_solutions = 1e-6;
    const Solution best = solve(with_lines(layout_, std::move(lines)));
    return is_below(best.lines()[line_of_weakest].pressure[static_cast<std::size_t>(outlet) - 1],
                    layout_.outlet_at(line_of_weakest, outlet).rated_pressure() *
                        (1 - rounding_of_two_solutions));
  }

  /// By line: how far the water to an outlet runs along it.
  std::vector<Length> way_to(std::size_t line, int outlet) const {
    std::vector<Length> along(layout_.lines().size());
    along[line] = layout_.lines()[line].place_of(outlet);
    for (auto feeder = layout_.feeder_of(line); feeder; feeder = layout_.feeder_of(line)) {
      const Line& feeding = layout_.lines()[*feeder];
      along[*feeder] = feeding.merged(begins_at(layout_.lines()[line], feeding));
      line = *feeder;
    }
    return along;
  }

  SmallestPipe told(std::vector<Line> lines,
                    bool found,
                    std::size_t ways,
                    std::size_t tried) const {
    std::vector<LaidPipe> pipes;
    double cost = 0;
    Volume volume{};
    for (const GroupToLay& group : groups_)
      for (const std::size_t index : group.lines()) {
        const Line& line = lines[index];
        for (const PipeLength& it : pipes_along(line))
          pipes.push_back({line.name, it.pipe, it.from, it.to});
        cost += cost_of_line(line, pipes_);
        volume += volume_inside(line);
      }
    Solution solution = solve(with_lines(layout_, std::move(lines)));
    std::vector<Margin> still_passed = limits_passed(solution);
    return {found,
            std::move(pipes),
            has_prices_ ? std::optional(cost) : std::nullopt,
            volume,
            std::move(still_passed),
            std::move(solution),
            ways,
            tried};
  }

  const Layout& layout_;
  const std::vector<PricedPipe> pipes_;
  const SmallestPipeOptions& options_;
  const Work& work_;
  bool has_prices_;
  std::size_t most_tried_ = 0;  ///< as far as it can come
  std::vector<GroupToLay> groups_;
  std::vector<std::vector<WayToLay>> ways_;  ///< by group
};

PipeTried tried(const Layout& layout,
                const std::vector<std::size_t>& which,
                const std::vector<PricedPipe>& pipes,
                std::size_t pipe,
                const SmallestPipeOptions& options) {
  std::vector<Line> lines = layout.lines();
  double cost = 0;
  Volume volume{};
  for (const std::size_t line : which) {
    lines[line] = laid_in(std::move(lines[line]), pipes[pipe].pipe);
    cost += cost_of_line(lines[line], {pipes[pipe]});
    volume += volume_inside(lines[line]);
  }
  Solution solution = solve(with_lines(layout, std::move(lines)));
  const Check found = check(solution, options.limits.accepted);
  Velocity fastest{};
  double variation = 0;
  for (const std::size_t line : which) {
    for (const PipeExtremes& of_pipe : solution.lines()[line].pipes)
      fastest = std::max(fastest, of_pipe.highest_velocity);
    for (const Variation& on_line : found.variations)
      if (on_line.line == solution.lines()[line].name)
        variation = std::max(variation, on_line.flow);
  }
  const auto weakest = weakest_outlet(solution);
  std::vector<Margin> limits_passed = passed(margins(solution, options.limits));
  return {pipes[pipe].pipe,
          pipes[pipe].price ? std::optional(cost) : std::nullopt,
          volume,
          weakest ? std::optional<double>(weakest->pressure / weakest->rated) : std::nullopt,
          weakest ? std::optional(weakest->pressure) : std::nullopt,
          fastest,
          variation,
          std::move(limits_passed),
          std::move(solution)};
}

}  // namespace

SmallestPipe smallest_pipe(const Layout& layout,
                           const std::vector<LinesToSize>& lines,
                           const std::vector<PricedPipe>& pipes,
                           const SmallestPipeOptions& options,
                           const Work& work) {
  return Sizing(layout, lines, pipes, options, work).run();
}

std::vector<PipeTried> try_pipes(const Layout& layout,
                                 const std::vector<std::string>& lines,
                                 const std::vector<PricedPipe>& pipes,
                                 const SmallestPipeOptions& options,
                                 const Work& work) {
  Examination examination;
  examine_pipes(pipes, examination);
  examine_options(options, examination);
  std::set<std::size_t> named;
  const auto which = lines_of(layout, lines, "lines", named, examination);
  throw_if_any(examination);
  std::vector<std::optional<PipeTried>> rows(pipes.size());
  in_parallel(pipes.size(), work, [&](std::size_t i) {
    rows[i] = tried(layout, which, pipes, i, options);
  });
  std::vector<PipeTried> table;
  table.reserve(rows.size());
  for (std::optional<PipeTried>& row : rows) table.push_back(std::move(*row));
  return table;
}

}  // namespace hydro
