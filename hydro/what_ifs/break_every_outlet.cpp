#include "hydro/what_ifs/break_every_outlet.hpp"

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/settled_layout.hpp"
#include "hydro/what_ifs/count_breaks.hpp"
#include "hydro/what_ifs/in_parallel.hpp"
#include "hydro/what_ifs/outlet_condition.hpp"
#include "hydro/what_ifs/solve_breaks.hpp"

#include <algorithm>
#include <iterator>
#include <limits>
#include <tuple>
#include <utility>
#include <variant>

namespace hydro {
namespace {

/// A line at whose one outlet every fault of an outlet can be, if its own figures are in range.
Line line_that_takes_any_fault() {
  return {
      .name = "",
      .outlet = Outlet{.flow = 1 * gpm, .at = 1 * psi, .body_bore = 1 * inch, .regulator = 1 * psi},
      .count = 1,
      .riser = {.height = 1000 * ft, .inside_diameter = 1 * inch}};
}

void require_fault_of_outlet(const Fault& fault) {
  const Line any = line_that_takes_any_fault();
  std::vector<Problem> found = problems(at_outlet(fault, any.name, 1), any);
  for (Problem& problem : found) problem.key = "fault." + problem.key;
  if (!found.empty()) throw InvalidInput(std::move(found));
}

bool is_of_a_regulator(const Fault& fault) {
  return std::holds_alternative<RegulatorStuckOpen>(fault) ||
         std::holds_alternative<RegulatorStuckShut>(fault);
}

/// Why this fault cannot come to an outlet of the layout; empty when it can.
std::string why_not(const Layout& layout, std::size_t line_index, int outlet, const Fault& fault) {
  if (layout.is_shut(line_index)) return "its line is shut";
  if (!layout.outlet_has_water(line_index, outlet)) return "no water comes to it";
  for (const Fault& other : layout.faults_on(line_index))
    if (outlet_of(other) == outlet) return "has fault " + in_quotes(kind_of(other)) + " already";
  const Line& line = layout.lines()[line_index];
  if (is_of_a_regulator(fault) && !line.kind_of(outlet).regulator)
    return "has no regulator of its own";
  if (open_riser(at_outlet(fault, line.name, outlet), line) && !line.riser.inside_diameter)
    return "the bore of its riser (inside_diameter) is not known, and the flow hangs on it";
  std::string why;
  for (const Problem& problem : problems(at_outlet(fault, line.name, outlet), line))
    why += (why.empty() ? "" : "; ") + problem.key + " " + problem.message;
  return why;
}

class Breaking {
 public:
  Breaking(const Layout& layout, const BreakOptions& options, const Work& work)
      : layout_(layout),
        options_(options),
        work_(work),
        as_it_is_(layout),
        found_{.fault = options.fault, .before = solution_of(layout, as_it_is_)},
        before_(read_break(found_.before)) {}

  Breaks run() {
    choose();
    for (std::size_t i = 0; i < kinds_.size(); ++i)
      found_.conditions_before.push_back(
          condition_of(*kinds_[i], before_.state[i], Pressure::from_value(before_.pressure[i])));
    solve_all();
    gather();
    summarise();
    return std::move(found_);
  }

 private:
  /// Which outlets can break, and which cannot.
  void choose() {
    for (std::size_t l = 0; l < layout_.lines().size(); ++l) {
      const Line& line = layout_.lines()[l];
      // Where no outlet of a line is special, what is true of one is true of all.
      const bool all_alike = line.outlets.empty() && layout_.faults_on(l).empty();
      std::optional<std::string> of_all;
      for (int outlet = 1; outlet <= line.outlet_count(); ++outlet) {
        std::string why = of_all ? *of_all : why_not(layout_, l, outlet, options_.fault);
        if (all_alike) of_all = why;
        if (why.empty()) {
          places_.push_back({line.name, outlet});
          columns_.push_back(found_.outlets.size());
        } else {
          found_.skipped.push_back({line.name, outlet, std::move(why)});
        }
        found_.outlets.push_back({line.name, outlet});
        kinds_.push_back(&layout_.outlet_at(l, outlet));
      }
    }
  }

  void require_cells(std::size_t cells) const {
    constexpr std::size_t most_cells = 100'000'000;
    if (options_.keep == BreakDetail::counts || cells <= most_cells) return;
    throw InvalidInput("keep",
                       "asks for " + std::to_string(cells) +
                           " cells (outlets after each break), must be at most 100,000,000; counts "
                           "takes none");
  }

  void solve_all() {
    const std::size_t cells = places_.size() * found_.outlets.size();
    require_cells(cells);
    const BreakDetail keep = options_.keep;
    breaks_.resize(places_.size());
    why_not_solved_.resize(places_.size());
    if (keep != BreakDetail::counts) found_.conditions.resize(cells);
    if (keep == BreakDetail::profiles) {
      pressure_.resize(cells);
      flow_.resize(cells);
    }
    std::vector<std::size_t> left;
    if (keep == BreakDetail::counts) {
      const auto take_counted = [&](std::size_t i, const CountedBreak& it) {
        breaks_[i] = as_told(i, it);
      };
      left = count_breaks(layout_,
                          as_it_is_,
                          options_.fault,
                          places_,
                          before_,
                          found_.conditions_before,
                          work_,
                          take_counted);
    } else {
      for (std::size_t i = 0; i < places_.size(); ++i) left.push_back(i);
    }
    if (left.empty()) return;
    std::vector<Fault> faults;
    faults.reserve(left.size());
    for (const std::size_t i : left)
      faults.push_back(at_outlet(options_.fault, places_[i].line, places_[i].outlet));
    solve_breaks(layout_, as_it_is_, faults, work_, [&](std::size_t i, const SolvedBreak& after) {
      take(left[i], after);
    });
  }

  Break as_told(std::size_t i, const CountedBreak& it) const {
    Break found{.line = places_[i].line,
                .outlet = places_[i].outlet,
                .escaping = Flow::from_value(it.escaping),
                .missing = Flow::from_value(it.missing),
                .inflow = Flow::from_value(it.supplies.inflow),
                .supply_pressure = Pressure::from_value(it.supplies.supply_pressure),
                .gauge_reading = Pressure::from_value(it.supplies.gauge_reading),
                .more_below_rated = it.more_below_rated,
                .more_out_of_work = it.more_out_of_work,
                .more_dry = it.more_dry,
                .more_above_maximum = it.more_above_maximum,
                .weakest = {}};
    if (it.weakest != nowhere)
      found.weakest = WeakestOutlet{found_.outlets[it.weakest].line,
                                    found_.outlets[it.weakest].outlet,
                                    Pressure::from_value(it.weakest_pressure),
                                    kinds_[it.weakest]->rated_pressure()};
    return found;
  }

  void take(std::size_t i, const SolvedBreak& after) {
    why_not_solved_[i] = after.not_solved;
    if (!after.not_solved.empty()) return;
    std::vector<OutletCondition> conditions(found_.outlets.size());
    for (std::size_t j = 0; j < conditions.size(); ++j)
      conditions[j] =
          condition_of(kind_after(i, j), after.state[j], Pressure::from_value(after.pressure[j]));
    breaks_[i] = judged(i, after, conditions);
    const auto keep = [&](const auto& row, auto& rows) {
      if (!rows.empty()) std::ranges::copy(row, rows.begin() + offset(i));
    };
    keep(conditions, found_.conditions);
    keep(after.pressure, pressure_);
    keep(after.flow, flow_);
  }

  /// Of what stands at outlet j while outlet columns_[i] is broken.
  const Outlet& kind_after(std::size_t i, std::size_t j) const {
    const auto* wrong = std::get_if<WrongOutlet>(&options_.fault);
    return wrong && j == columns_[i] ? wrong->fitted : *kinds_[j];
  }

  Break judged(std::size_t i,
               const SolvedBreak& after,
               const std::vector<OutletCondition>& conditions) const {
    double escaping = after.out_of_openings - before_.out_of_openings;
    double missing = 0;
    Break found{.line = places_[i].line,
                .outlet = places_[i].outlet,
                .escaping = {},
                .missing = {},
                .inflow = Flow::from_value(after.inflow),
                .supply_pressure = Pressure::from_value(after.supply_pressure),
                .gauge_reading = Pressure::from_value(after.gauge_reading),
                .more_below_rated = 0,
                .more_out_of_work = 0,
                .more_dry = 0,
                .more_above_maximum = 0,
                .weakest = {}};
    std::pair<double, double> least;  // share of the rated pressure, pressure in the line
    for (std::size_t j = 0; j < conditions.size(); ++j) {
      const OutletCondition was = found_.conditions_before[j];
      const OutletCondition is = conditions[j];
      if (was == OutletCondition::broken) escaping -= before_.flow[j];
      if (is == OutletCondition::broken)
        escaping += after.flow[j];
      else if (is != OutletCondition::closed)
        missing += before_.flow[j] - after.flow[j];
      if (j == columns_[i] || is == OutletCondition::broken || is == OutletCondition::closed)
        continue;
      found.more_below_rated += is_below_rated(is) && !is_below_rated(was) ? 1 : 0;
      found.more_out_of_work += is_out_of_work(is) && !is_out_of_work(was) ? 1 : 0;
      found.more_dry += is_dry(is) && !is_dry(was) ? 1 : 0;
      found.more_above_maximum += is_above_maximum(is) && !is_above_maximum(was) ? 1 : 0;
      const Pressure rated = kinds_[j]->rated_pressure();
      const std::pair here{after.pressure[j] / si(rated), after.line_pressure[j]};
      if (found.weakest && !(here < least)) continue;
      least = here;
      found.weakest = WeakestOutlet{found_.outlets[j].line,
                                    found_.outlets[j].outlet,
                                    Pressure::from_value(after.pressure[j]),
                                    rated};
    }
    found.escaping = Flow::from_value(escaping);
    found.missing = Flow::from_value(missing);
    return found;
  }

  std::ptrdiff_t offset(std::size_t row) const {
    return static_cast<std::ptrdiff_t>(row * found_.outlets.size());
  }

  /// Moves the breaks that are solved together, with their rows.
  void gather() {
    std::size_t solved = 0;
    const auto move_row = [&](std::size_t from, auto& rows) {
      if (from != solved && !rows.empty())
        std::copy(rows.begin() + offset(from),
                  rows.begin() + offset(from + 1),
                  rows.begin() + offset(solved));
    };
    for (std::size_t i = 0; i < places_.size(); ++i) {
      if (!why_not_solved_[i].empty()) {
        found_.not_solved.push_back(
            {places_[i].line, places_[i].outlet, std::move(why_not_solved_[i])});
        continue;
      }
      move_row(i, found_.conditions);
      move_row(i, pressure_);
      move_row(i, flow_);
      if (i != solved) breaks_[solved] = std::move(breaks_[i]);
      ++solved;
    }
    breaks_.resize(solved);
    found_.breaks = std::move(breaks_);
    const auto shorten = [&](auto& rows) {
      if (!rows.empty()) rows.resize(solved * found_.outlets.size());
    };
    shorten(found_.conditions);
    shorten(pressure_);
    shorten(flow_);
    found_.pressure = Series<Pressure>(std::move(pressure_));
    found_.flow = Series<Flow>(std::move(flow_));
  }

  void summarise() {
    const auto goodness = [](const Break& it) {
      double share = std::numeric_limits<double>::max();
      if (it.weakest) share = it.weakest->pressure / it.weakest->rated;
      return std::tuple{-it.more_out_of_work, -it.more_below_rated, share};
    };
    const auto worst = std::ranges::min_element(found_.breaks, {}, goodness);
    if (worst != found_.breaks.end())
      found_.worst = static_cast<std::size_t>(worst - found_.breaks.begin());
    for (const Break& it : found_.breaks) {
      found_.rest_works += it.more_out_of_work == 0 ? 1 : 0;
      found_.rest_is_served += it.more_below_rated == 0 ? 1 : 0;
    }
  }

  const Layout& layout_;
  const BreakOptions& options_;
  const Work& work_;
  SettledLayout as_it_is_;
  Breaks found_;
  SolvedBreak before_;
  std::vector<const Outlet*> kinds_;  ///< of all outlets
  std::vector<OutletNumber> places_;  ///< that are broken
  std::vector<std::size_t> columns_;  ///< of each of these: which of all outlets it is
  std::vector<Break> breaks_;         ///< of each of these
  std::vector<std::string> why_not_solved_;
  std::vector<double> pressure_;
  std::vector<double> flow_;
};

/// The other outlets that are so after a break and were not before.
template <class IsSo>
std::vector<OutletNumber> newly(const Breaks& all, std::size_t index, IsSo is_so) {
  if (index >= all.breaks.size())
    throw InvalidInput(
        "break_index",
        "is " + std::to_string(index) + ", must be below " + std::to_string(all.breaks.size()));
  if (all.conditions.empty())
    throw InvalidInput("keep", "was counts; to know which outlets, keep conditions or profiles");
  const OutletNumber own{all.breaks[index].line, all.breaks[index].outlet};
  const std::size_t row = index * all.outlets.size();
  std::vector<OutletNumber> found;
  for (std::size_t j = 0; j < all.outlets.size(); ++j)
    if (is_so(all.conditions[row + j]) && !is_so(all.conditions_before[j]) && all.outlets[j] != own)
      found.push_back(all.outlets[j]);
  return found;
}

}  // namespace

std::vector<OutletNumber> Breaks::newly_below_rated(std::size_t break_index) const {
  return newly(*this, break_index, is_below_rated);
}
std::vector<OutletNumber> Breaks::newly_out_of_work(std::size_t break_index) const {
  return newly(*this, break_index, is_out_of_work);
}
std::vector<OutletNumber> Breaks::newly_dry(std::size_t break_index) const {
  return newly(*this, break_index, is_dry);
}
std::vector<OutletNumber> Breaks::newly_above_maximum(std::size_t break_index) const {
  return newly(*this, break_index, is_above_maximum);
}

Fault at_outlet(Fault fault, const std::string& line, int outlet) {
  const std::string kind = kind_of(fault);
  std::visit(
      [&](auto& it) {
        if constexpr (requires { it.outlet; }) {
          it.line = line;
          it.outlet = outlet;
        } else {
          throw InvalidInput("fault", "is " + in_quotes(kind) + ", which acts at no outlet");
        }
      },
      fault);
  return fault;
}

Breaks break_every_outlet(const Layout& layout, const BreakOptions& options, const Work& work) {
  require_fault_of_outlet(options.fault);
  threads_for(0, work);  // even where there is nothing to share
  return Breaking(layout, options, work).run();
}

}  // namespace hydro
