#include "hydro/what_ifs/remedy_steps.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/fed_inside.hpp"
#include "hydro/what_ifs/laid.hpp"
#include "hydro/what_ifs/terminal_line.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

using Lines = std::vector<std::size_t>;

/// "row 1, row 2 and 3 more"
std::string listed(const std::vector<std::string>& names) {
  constexpr std::size_t most = 4;
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (names.size() > most && i == most - 1)
      return text + fmt::format(" and {} more", names.size() - i);
    if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return text;
}

Line widened(Line line, const Pipe& pipe) {
  for (PipeReach& reach : line.reaches)
    if (reach.pipe.inside_diameter < pipe.inside_diameter) reach.pipe = pipe;
  if (line.pipe.inside_diameter < pipe.inside_diameter) line.pipe = pipe;
  return line;
}

/// Of the pipe that widened() replaces.
Length narrower_than(const Pipe& pipe, const Line& line) {
  Length sum{};
  for (const PipeLength& it : pipes_along(line))
    if (it.pipe.inside_diameter < pipe.inside_diameter) sum += it.to - it.from;
  return sum;
}

Length narrowest_bore(const Line& line) {
  Length bore = line.pipe_at(Length{}).inside_diameter;
  for (const PipeLength& it : pipes_along(line)) bore = std::min(bore, it.pipe.inside_diameter);
  return bore;
}

/// The kind, letting out this share of its flow at every pressure.
Outlet smaller(Outlet kind, double share) {
  kind.flow = share * kind.flow;
  if (kind.nozzle) kind.nozzle = std::sqrt(share) * *kind.nozzle;
  for (RatedPoint& point : kind.points) point.flow = share * point.flow;
  return kind;
}

Line without_last(Line line, int fewer) {
  line.length = line.whole_length();
  const int left = line.outlet_count() - fewer;
  if (line.outlets.empty())
    line.count = left;
  else
    line.outlets.resize(static_cast<std::size_t>(left));
  if (!line.elevations.empty()) line.elevations.resize(static_cast<std::size_t>(left));
  return line;
}

class Ladders {
 public:
  Ladders(const Solution& before, const RemedyOptions& options)
      : before_(before),
        layout_(before.layout()),
        options_(options),
        pipes_(options.pipes),
        units_(unit_set(layout_.units())) {
    std::stable_sort(
        pipes_.begin(), pipes_.end(), [](const PricedPipe& one, const PricedPipe& other) {
          return one.pipe.inside_diameter < other.pipe.inside_diameter;
        });
    for (const BelowRated& outlet : check(before).below_rated)
      if (const std::size_t line = layout_.index_of(outlet.line); !layout_.is_cut_off(line))
        short_.insert(line);
  }

  std::vector<RemedyLadder> take() {
    const std::vector<Lines> rows = rows_to_change();
    for (const Lines& lines : feeders()) wider_pipe(lines);
    for (const Lines& lines : rows) wider_pipe(lines);
    for (const Lines& lines : rows) fewer_outlets(lines);
    for (const Outlet& kind : kinds_that_fall_short()) smaller_outlets(kind);
    more_pressure();
    for (const Lines& lines : rows) feed_from_middle(lines);
    for (const Lines& lines : rows) second_feeds(lines);
    return std::move(ladders_);
  }

 private:
  bool are_alike(std::size_t one, std::size_t other) const {
    const Line& a = layout_.lines()[one];
    const Line& b = layout_.lines()[other];
    return layout_.feeder_of(one) == layout_.feeder_of(other) &&
           layout_.supply_of(one) == layout_.supply_of(other) && a.pipe == b.pipe &&
           a.reaches == b.reaches && a.outlet == b.outlet && a.count == b.count &&
           a.spacing == b.spacing && a.first_at == b.first_at && a.outlets == b.outlets;
  }

  /// Rows that are alike and of which one falls short; and where they are several, each that does.
  std::vector<Lines> rows_to_change() const {
    std::vector<Lines> rows;
    std::set<std::size_t> taken;
    for (const std::size_t line : short_) {
      if (taken.contains(line)) continue;
      Lines alike;
      for (std::size_t other = 0; other < layout_.lines().size(); ++other)
        if (layout_.lines()[other].outlet_count() > 0 && !layout_.is_cut_off(other) &&
            are_alike(line, other))
          alike.push_back(other);
      taken.insert(alike.begin(), alike.end());
      rows.push_back(alike);
      if (alike.size() > 1)
        for (const std::size_t one : alike)
          if (short_.contains(one)) rows.push_back({one});
    }
    return rows;
  }

  /// Lines on the way to those that fall short, but not these themselves, each by itself.
  std::vector<Lines> feeders() const {
    std::set<std::size_t> on_the_way;
    for (const std::size_t line : short_)
      for (auto feeder = layout_.feeder_of(line); feeder; feeder = layout_.feeder_of(*feeder))
        if (!short_.contains(*feeder)) on_the_way.insert(*feeder);
    std::vector<Lines> each;
    for (const std::size_t line : layout_.outward_order())
      if (on_the_way.contains(line)) each.push_back({line});
    return each;
  }

  /// As the lines say; that a wrong one is fitted somewhere is a fault, and mended otherwise.
  std::vector<Outlet> kinds_that_fall_short() const {
    std::vector<Outlet> kinds;
    for (const BelowRated& outlet : check(before_).below_rated) {
      const Outlet& kind = layout_.line(outlet.line).kind_of(outlet.outlet);
      if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end()) kinds.push_back(kind);
    }
    return kinds;
  }

  std::vector<std::string> names_of(const Lines& lines) const {
    std::vector<std::string> names;
    for (const std::size_t line : lines) names.push_back(layout_.lines()[line].name);
    return names;
  }

  std::string in_words(const Pipe& pipe) const {
    if (!pipe.name.empty()) return pipe.name;
    return fmt::format("pipe of {:.2f} {}", pipe.inside_diameter / units_.bore, units_.bore.symbol);
  }
  std::string in_words(const Length& length) const {
    return fmt::format("{:.0f} {}", length / units_.length, units_.length.symbol);
  }

  void add(RemedyKind kind,
           std::vector<std::string> lines,
           std::size_t steps,
           std::function<RemedyStep(std::size_t)> step) {
    if (steps > 0) ladders_.push_back({kind, std::move(lines), steps, std::move(step)});
  }

  static std::optional<double> cost_of(const PricedPipe& pipe, const Length& length) {
    return pipe.price ? std::optional(cost(*pipe.price, length)) : std::nullopt;
  }

  void wider_pipe(const Lines& lines) {
    Length narrowest = narrowest_bore(layout_.lines()[lines.front()]);
    for (const std::size_t line : lines)
      narrowest = std::min(narrowest, narrowest_bore(layout_.lines()[line]));
    int sizes = 0;
    for (const PricedPipe& priced : pipes_) {
      if (!(priced.pipe.inside_diameter > narrowest) || sizes++ >= options_.sizes_up) continue;
      const auto lay = [this, lines, priced](std::size_t) -> RemedyStep {
        std::vector<Line> changed = layout_.lines();
        Length new_pipe{};
        for (const std::size_t line : lines) {
          new_pipe += narrower_than(priced.pipe, changed[line]);
          changed[line] = widened(std::move(changed[line]), priced.pipe);
        }
        return {fmt::format("Lay {} in {}", listed(names_of(lines)), in_words(priced.pipe)),
                solve(with_lines(layout_, std::move(changed))),
                cost_of(priced, new_pipe)};
      };
      add(RemedyKind::wider_pipe, names_of(lines), 1, lay);
    }
  }

  /// Whether no fault is at one of the last outlets, and no line begins or ends there, or hangs on
  /// the ground that is known at them.
  bool can_do_without_last(std::size_t line, int fewer) const {
    if (!layout_.lines()[line].elevations.empty() && meets_others(line)) return false;
    const int left = layout_.lines()[line].outlet_count() - fewer;
    const auto is_gone = [&](const std::optional<int>& outlet) { return outlet && *outlet > left; };
    for (const Fault& fault : layout_.faults_on(line))
      if (is_gone(outlet_of(fault))) return false;
    for (std::size_t other = 0; other < layout_.lines().size(); ++other)
      if ((layout_.feeder_of(other) == line && is_gone(layout_.lines()[other].tap_outlet)) ||
          (layout_.joined_by(other) == line && is_gone(layout_.lines()[other].joins_outlet)))
        return false;
    return true;
  }

  void fewer_outlets(const Lines& lines) {
    const int count = layout_.lines()[lines.front()].outlet_count();
    int most =
        std::min(count - 1, static_cast<int>(std::floor(options_.most_outlets_fewer * count)));
    for (const std::size_t line : lines)
      while (most > 0 && !can_do_without_last(line, most)) --most;
    const auto take_away = [this, lines](std::size_t step) -> RemedyStep {
      const int fewer = static_cast<int>(step) + 1;
      std::vector<Line> changed = layout_.lines();
      for (const std::size_t line : lines)
        changed[line] = without_last(std::move(changed[line]), fewer);
      return {fmt::format("Take the last {} off {}{}",
                          fewer == 1 ? "outlet" : fmt::format("{} outlets", fewer),
                          lines.size() > 1 ? "each of " : "",
                          listed(names_of(lines))),
              solve(with_lines(layout_, std::move(changed))),
              options_.lost_outlet_price ? std::optional(*options_.lost_outlet_price * fewer *
                                                         static_cast<double>(lines.size()))
                                         : std::nullopt};
    };
    add(RemedyKind::fewer_outlets, names_of(lines), static_cast<std::size_t>(most), take_away);
  }

  void smaller_outlets(const Outlet& kind) {
    std::vector<std::string> where;
    int pieces = 0;
    for (std::size_t line = 0; line < layout_.lines().size(); ++line) {
      const int here = layout_.is_cut_off(line) ? 0 : count_of(kind, layout_.lines()[line]);
      if (here > 0) where.push_back(layout_.lines()[line].name);
      pieces += here;
    }
    if (pieces == 0) return;
    constexpr double rounding = 1e-9;
    const auto steps = static_cast<std::size_t>(
        std::floor((1 - options_.least_outlet) / options_.outlet_step + rounding));
    const auto fit = [this, kind, pieces](std::size_t step) -> RemedyStep {
      const double less = options_.outlet_step * (static_cast<double>(step) + 1);
      std::vector<Line> changed = layout_.lines();
      for (std::size_t line = 0; line < changed.size(); ++line)
        if (!layout_.is_cut_off(line)) fit_smaller(kind, 1 - less, changed[line]);
      return {
          fmt::format("Fit {} outlets that give {:.3g} % less{} at the same pressure",
                      pieces,
                      100 * less,
                      kind.name.empty() ? "" : " than " + kind.name),
          solve(with_lines(layout_, std::move(changed))),
          options_.outlet_price ? std::optional(*options_.outlet_price * pieces) : std::nullopt};
    };
    add(RemedyKind::smaller_outlets, where, steps, fit);
  }

  static int count_of(const Outlet& kind, const Line& line) {
    int count = 0;
    for (int outlet = 1; outlet <= line.outlet_count(); ++outlet)
      count += line.kind_of(outlet) == kind ? 1 : 0;
    return count;
  }
  static void fit_smaller(const Outlet& kind, double share, Line& line) {
    if (line.outlet == kind) line.outlet = smaller(kind, share);
    for (PlacedOutlet& placed : line.outlets)
      if (placed.outlet == kind) placed.outlet = smaller(kind, share);
  }

  void more_pressure() {
    if (!can_be_set(layout_.supply_as_it_is())) return;
    const auto set = [this](std::size_t) -> RemedyStep {
      Setting setting = set_for_rated(layout_);
      std::string deed = setting.speed
                             ? fmt::format("Run the engine at {:.0f} rpm", *setting.speed / rpm)
                             : fmt::format("Hold {:.{}f} {} at the supply",
                                           setting.pressure / units_.pressure,
                                           layout_.units() == UnitSystem::us ? 1 : 0,
                                           units_.pressure.symbol);
      return {std::move(deed), std::move(setting.solution), std::nullopt};
    };
    add(RemedyKind::more_pressure, {}, 1, set);
  }

  /// Whether lines begin or end on it, or it ends on one.
  bool meets_others(std::size_t line) const {
    for (std::size_t other = 0; other < layout_.lines().size(); ++other)
      if (layout_.feeder_of(other) == line || layout_.joined_by(other) == line) return true;
    return layout_.joined_by(line).has_value();
  }

  bool can_be_fed_from_middle(std::size_t line) const {
    Examination examination;
    require_terminal(layout_, line, examination);
    const Line& row = layout_.lines()[line];
    if (!examination.take().empty() || row.outlet_count() < 2) return false;
    const int half = row.outlet_count() / 2;
    const auto is_usable = [&](const std::string& name) {
      return name.size() <= longest_name && is_new(name);
    };
    return row.place_of(half + 1) > row.place_of(half) + 2.0 * same_place &&
           is_usable(near_part(row.name)) && is_usable(far_part(row.name));
  }
  bool is_new(const std::string& name) const {
    return std::none_of(layout_.lines().begin(), layout_.lines().end(), [&](const Line& line) {
      return line.name == name;
    });
  }

  /// Between the two outlets in the middle.
  static Length middle_of(const Line& row) {
    const int half = row.outlet_count() / 2;
    return 0.5 * (row.place_of(half) + row.place_of(half + 1));
  }

  void feed_from_middle(const Lines& lines) {
    for (const std::size_t line : lines)
      if (!can_be_fed_from_middle(line)) return;
    std::vector<PricedPipe> wide_enough;
    for (const PricedPipe& priced : pipes_)
      if (!(priced.pipe.inside_diameter < layout_.lines()[lines.front()].pipe.inside_diameter))
        wide_enough.push_back(priced);
    const auto feed = [this, lines, wide_enough](std::size_t step) -> RemedyStep {
      const PricedPipe& priced = wide_enough[step];
      std::vector<Line> changed = layout_.lines();
      Length new_pipe{};
      for (const std::size_t line : lines) {
        const Length middle = middle_of(layout_.lines()[line]);
        feed_inside(layout_, line, middle, priced.pipe, changed);
        new_pipe += middle;
      }
      return {fmt::format("Feed {} in the middle, through {} of {}{}",
                          listed(names_of(lines)),
                          in_words(middle_of(layout_.lines()[lines.front()])),
                          in_words(priced.pipe),
                          lines.size() > 1 ? " each" : ""),
              solve(with_lines(layout_, std::move(changed))),
              cost_of(priced, new_pipe)};
    };
    add(RemedyKind::feed_from_middle, names_of(lines), wide_enough.size(), feed);
  }

  std::string new_cross_pipe() const {
    std::string name = "cross pipe";
    for (int number = 2; !is_new(name); ++number) name = fmt::format("cross pipe {}", number);
    return name;
  }

  /// Between neighbours on one feeder, where one of them falls short.
  void second_feeds(Lines lines) {
    if (lines.size() < 2 || !layout_.feeder_of(lines.front())) return;
    const Line& feeder = layout_.lines()[*layout_.feeder_of(lines.front())];
    const auto begins = [&](std::size_t line) { return begins_at(layout_.lines()[line], feeder); };
    std::stable_sort(lines.begin(), lines.end(), [&](std::size_t one, std::size_t other) {
      return begins(one) < begins(other);
    });
    for (std::size_t i = 1; i < lines.size(); ++i) {
      const Line& one = layout_.lines()[lines[i - 1]];
      const Line& other = layout_.lines()[lines[i]];
      const Length apart = begins(lines[i]) - begins(lines[i - 1]);
      if (!(short_.contains(lines[i - 1]) || short_.contains(lines[i])) || !(apart > same_place) ||
          !one.joins.empty() || !other.joins.empty() || layout_.open_end_of(lines[i - 1]) ||
          layout_.open_end_of(lines[i]))
        continue;
      const Line cross{.name = new_cross_pipe(),
                       .fed_by = one.name,
                       .joins = other.name,
                       .pipe = one.pipe,
                       .length = apart};
      const auto join = [this, cross](std::size_t) -> RemedyStep {
        std::vector<Line> changed = layout_.lines();
        changed.push_back(cross);
        const auto same = std::find_if(pipes_.begin(), pipes_.end(), [&](const PricedPipe& priced) {
          return priced.pipe == cross.pipe;
        });
        return {fmt::format("Join the far ends of {} and {} with {} of {}",
                            cross.fed_by,
                            cross.joins,
                            in_words(*cross.length),
                            in_words(cross.pipe)),
                solve(with_lines(layout_, std::move(changed))),
                same == pipes_.end() ? std::nullopt : cost_of(*same, *cross.length)};
      };
      add(RemedyKind::second_feed, {one.name, other.name}, 1, join);
    }
  }

  const Solution& before_;
  const Layout& layout_;
  const RemedyOptions& options_;
  std::vector<PricedPipe> pipes_;  ///< from the narrowest on
  UnitSet units_;
  std::set<std::size_t> short_;  ///< lines with outlets below rated
  std::vector<RemedyLadder> ladders_;
};

}  // namespace

std::vector<RemedyLadder> ladders_of_remedies(const Solution& before,
                                              const RemedyOptions& options) {
  const auto all = std::make_shared<Ladders>(before, options);
  std::vector<RemedyLadder> ladders = all->take();
  for (RemedyLadder& ladder : ladders)  // a step needs what it was made from
    ladder.step = [all, step = std::move(ladder.step)](std::size_t i) { return step(i); };
  return ladders;
}

}  // namespace hydro
