#include "hydro/text/report.hpp"

#include "hydro/answers/assumptions.hpp"
#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/answers/uniformity.hpp"
#include "hydro/text/cautions.hpp"
#include "hydro/text/course_words.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/findings.hpp"
#include "hydro/text/outlet_kinds.hpp"
#include "hydro/text/outlet_table.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/setting_report.hpp"
#include "hydro/text/supply_table.hpp"
#include "hydro/text/supply_words.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

class Report {
 public:
  Report(const Solution* before, const Solution& after, const ReportOptions& options)
      : before_(before),
        after_(after),
        figures_(options.units.value_or(after.layout().units())),
        shown_(figures_.units()),
        check_(check(after)),
        kinds_(after),
        courses_(after, figures_) {
    if (options.throttling)
      throttling_ = throttling_sentences(*options.throttling, figures_.system());
    for (const SkippedFault& it : options.skipped) {
      std::string why = kind_of(it.fault);
      if (!is_of_the_supply(it.fault)) why += " on " + line_of(it.fault);
      if (const auto outlet = outlet_of(it.fault)) why += fmt::format(", outlet {}", *outlet);
      why += ":";
      for (const Problem& problem : it.problems) why += " " + problem.text() + ";";
      why.back() = '.';
      skipped_.push_back(std::move(why));
    }
  }

  std::string write() {
    const std::string& name = after_.layout().site().name;
    if (!name.empty()) page_.paragraph("", name);
    running_sets();
    if (!name.empty() || !after_.layout().sets().empty()) page_.line();
    for (const Solution* solution : {before_, &after_})
      if (solution && !solution->residuals().are_met()) {
        page_.paragraph("", "NOT SOLVED: no figure below is an answer.");
        page_.line();
        break;
      }
    write_findings(page_, after_, check_, kinds_, figures_);
    if (before_) consequences();
    write_supply(page_, before_, after_, figures_);
    courses();
    for (std::size_t i = 0; i < after_.lines().size(); ++i)
      if (!after_.lines()[i].shut) write_outlet_table(page_, before_, after_, kinds_, figures_, i);
    shut_lines();
    pipes();
    write_regulators(page_, after_, figures_);
    write_check_valves(page_, after_);
    write_pressure_budget(page_, after_, figures_);
    evenness();
    page_.list("Skipped, because it does not fit", skipped_);
    page_.list("Notes", after_.notes());
    page_.list("Assumed, because it was not given",
               assumptions(after_.layout(), figures_.system()));
    proof();
    write_cautions(page_);
    return page_.take();
  }

 private:
  void consequences() {
    const Comparison change = compare(*before_, after_);
    page_.line();
    const std::vector<Fault>& faults = after_.layout().faults();
    page_.line(faults.size() == 1 ? "The fault" : "The faults");
    constexpr std::size_t most_told = 12;
    for (std::size_t i = 0; i < std::min(most_told, faults.size()); ++i)
      page_.paragraph("  ", describe(faults[i], after_.layout(), figures_.system()) + ".");
    if (faults.size() > most_told)
      page_.line(fmt::format("  and {} more", faults.size() - most_told));
    page_.line(faults.size() == 1 ? "and what it does" : "and what they do");
    const auto more = [](std::size_t number, const char* what) {
      return fmt::format("{} more {} {}",
                         number == 0 ? "no" : std::to_string(number),
                         number == 1 ? "is" : "are",
                         what);
    };
    page_.paragraph(
        "  - ",
        fmt::format("Of the outlets, {}, {}, {}.",
                    more(change.newly_below_rated.size(), "under the rated pressure"),
                    more(change.newly_below_minimum.size(), "under the lowest at which they work"),
                    more(change.newly_dry.size(), "dry")));
    if (change.escaping > Flow{})
      page_.paragraph("  - ",
                      fmt::format("{} escapes; the other outlets get {} less in all.",
                                  figures_.flow_with_unit(change.escaping),
                                  figures_.flow_with_unit(change.missing)));
    opened_by_fault();
    supply_change(change);
    for (const std::string& sentence : throttling_) page_.paragraph("  - ", sentence);
  }

  /// Lines that should be shut and are not.
  void opened_by_fault() {
    for (std::size_t i = 0; i < after_.lines().size(); ++i) {
      const LineSolution& now = after_.lines()[i];
      if (before_->lines()[i].shut && !now.shut && now.inflow > Flow{})
        page_.paragraph("  - ",
                        fmt::format("{}, which should be shut, takes {}.",
                                    now.name,
                                    figures_.flow_with_unit(now.inflow)));
    }
  }

  /// "hill tank gives 5.0 gal/min; before, it took in 3.0 gal/min."
  void supply_changes() {
    const auto does = [&](const OperatingPoint& point, const char* gives, const char* takes_in) {
      const Giving found = giving(point.flow, figures_);
      return (found.takes_in ? takes_in : gives) + found.amount;
    };
    const auto tell =
        [&](const std::string& who, const OperatingPoint& then, const OperatingPoint& now) {
          page_.paragraph("  - ",
                          fmt::format("{} {}; before, it {}.",
                                      who,
                                      does(now, "gives ", "takes in "),
                                      does(then, "gave ", "took in ")));
        };
    tell("The first supply", before_->supply(), after_.supply());
    const std::vector<OperatingPoint>& then = before_->further_supplies();
    const std::vector<OperatingPoint>& now = after_.further_supplies();
    for (std::size_t i = 0; i < std::min(then.size(), now.size()); ++i)
      tell(after_.layout().further_supplies()[i].name, then[i], now[i]);
  }

  void supply_change(const Comparison& change) {
    if (!after_.further_supplies().empty()) return supply_changes();
    const std::string flows = fmt::format("The supply gives {} instead of {}",
                                          figures_.flow_with_unit(change.inflow_after),
                                          figures_.flow_with_unit(change.inflow_before));
    const Supply& supply = after_.layout().supply_as_it_is();
    if (supply.pressure) {
      page_.paragraph("  - ",
                      flows +
                          ". Its pressure was taken as held; a real pump would fall and all "
                          "outlets with it.");
      return;
    }
    std::string text = flows + "; its pressure " + moved(change.supply_before, change.supply_after);
    const auto& then = before_->supply().gauge_reading;
    const auto& now = after_.supply().gauge_reading;
    // Throttling up begins with the gauge.
    if (then && now && throttling_.empty()) text += ", the gauge " + moved(*then, *now);
    page_.paragraph("  - ", text + ".");
  }

  /// "fell from 38.2 psi to 33.1 psi", as far as the figures tell.
  std::string moved(const Pressure& from, const Pressure& to) const {
    const std::string then = figures_.pressure_with_unit(from);
    const std::string now = figures_.pressure_with_unit(to);
    if (then == now) return "stayed at " + now;
    return fmt::format("{} from {} to {}", to < from ? "fell" : "rose", then, now);
  }

  void running_sets() {
    const Layout& layout = after_.layout();
    if (layout.sets().empty()) return;
    const std::vector<std::string>& running = layout.running_sets();
    page_.paragraph("",
                    running.empty()
                        ? "No set was chosen: all lines run whose own valve is not shut."
                    : running.size() == 1 ? "Set that runs: " + running.front()
                                          : "Sets that run together: " + joined(running));
  }

  static std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
    return text;
  }

  /// Where water may come to a line by more than one way.
  void courses() {
    constexpr std::size_t most_told = 40;
    std::size_t told = 0;
    std::size_t left_out = 0;
    for (std::size_t i = 0; i < after_.lines().size(); ++i) {
      if (!courses_.has_more_than_one_way(i)) continue;
      if (told == most_told) {
        ++left_out;
        continue;
      }
      if (told++ == 0) {
        page_.line();
        page_.line("Where the water comes from");
      }
      page_.paragraph("  - ", after_.lines()[i].name + ": " + courses_.of(i));
    }
    if (left_out > 0) page_.line(fmt::format("  and {} more lines", left_out));
  }

  void shut_lines() {
    std::vector<std::string> names;
    for (const LineSolution& line : after_.lines())
      if (line.shut) names.push_back(line.name);
    if (names.empty()) return;
    page_.line();
    page_.paragraph("", "Shut: " + joined(names) + ".");
  }

  void pipes() {
    if (std::ranges::all_of(after_.lines(), &LineSolution::shut)) return;
    const std::size_t width = name_width();
    page_.line();
    page_.line("Along the pipes");
    page_.line(fmt::format("  {:<{}}  {:>10}  {:>10}  {:>12}  {:>10}",
                           "line",
                           width,
                           shown_.flow.symbol,
                           shown_.velocity.symbol,
                           fmt::format("{} at inlet", shown_.pressure.symbol),
                           fmt::format("{} at end", shown_.pressure.symbol)));
    for (std::size_t i = 0; i < after_.lines().size(); ++i) {
      const LineSolution& solved = after_.lines()[i];
      if (solved.shut) continue;
      const auto size = [](double number) { return number < 0 ? -number : number; };
      page_.line(
          fmt::format("  {:<{}}  {:>10.1f}  {:>10.1f}  {:>12}  {:>10}{}",
                      solved.name,
                      width,
                      size(solved.inflow / shown_.flow),
                      size(solved.inlet_velocity / shown_.velocity),
                      figures_.pressure(solved.inlet_pressure),
                      figures_.pressure(solved.end_pressure),
                      giving(solved.inflow, figures_).takes_in ? "   out of its inlet" : ""));
      if (courses_.has_more_than_one_way(i)) faster_than_at_inlet(solved);
    }
  }

  /// Water that others bring to a line is not in the figures at its inlet.
  void faster_than_at_inlet(const LineSolution& solved) {
    const Velocity& inlet = solved.inlet_velocity;
    Velocity fastest = inlet < Velocity{} ? -inlet : inlet;
    const Velocity at_inlet = fastest;
    for (const PipeExtremes& pipe : solved.pipes)
      fastest = std::max(fastest, pipe.highest_velocity);
    if (!figures_.rounds_to_nothing(fastest - at_inlet))
      page_.line(fmt::format(
          "    farther on up to {:.1f} {}", fastest / shown_.velocity, shown_.velocity.symbol));
  }

  /// Wide enough for the names of all lines.
  std::size_t name_width() const {
    std::size_t width = 20;
    for (const LineSolution& solved : after_.lines()) width = std::max(width, solved.name.size());
    return width;
  }

  void evenness() {
    if (check_.variations.empty()) return;
    const std::size_t width = name_width();
    const CheckOptions limits;
    page_.line();
    page_.paragraph(
        "",
        fmt::format(
            "How evenly it waters (customary: pressures within {:.0f} % of their average, flows "
            "within {:.0f} % of the largest; dry, broken and capped outlets left out)",
            100 * limits.pressure_variation,
            100 * limits.flow_variation));
    for (std::size_t i = 0; i < check_.variations.size(); ++i) {
      const Variation& variation = check_.variations[i];
      page_.line(fmt::format("  {:<{}}  pressures {:>4.1f} %, flows {:>4.1f} %{}",
                             group_name(check_.variations, i),
                             width,
                             100 * variation.pressure,
                             100 * variation.flow,
                             variation.too_wide ? "   UNEVEN" : ""));
    }
    const std::vector<OutletUniformity> measures = uniformity_of_outlets(after_);
    if (measures.empty()) return;
    page_.line();
    page_.paragraph("",
                    "Uniformity of the flows, by Christiansen and of the lowest quarter (dry "
                    "outlets count; wind and overlap are not in it)");
    for (std::size_t i = 0; i < measures.size(); ++i)
      page_.line(fmt::format("  {:<{}}  CU {:>4.0f} %, DU {:>4.0f} %",
                             group_name(measures, i),
                             width,
                             measures[i].flows.christiansen,
                             measures[i].flows.distribution));
  }

  /// "row 1", or "row 1, spray" where kinds stand together on a line, or "all spray".
  template <class Group>
  static std::string group_name(const std::vector<Group>& groups, std::size_t i) {
    const Group& group = groups[i];
    if (group.line.empty())
      return group.outlet_name.empty() ? "all lines" : "all " + group.outlet_name;
    const auto is_of_this_line = [&](std::size_t other) {
      return other < groups.size() && groups[other].line == group.line;
    };
    const bool alone = !is_of_this_line(i - 1) && !is_of_this_line(i + 1);
    return alone ? group.line : group.line + ", " + group.outlet_name;
  }

  void proof() {
    const Residuals& residuals = after_.residuals();
    page_.line();
    page_.paragraph(
        "",
        fmt::format("{} in {} steps{}; what is left of the equations, as shares of their scales: "
                    "mass {:.0e}, energy {:.0e}, outlets {:.0e}.",
                    residuals.are_met() ? "Solved" : "NOT SOLVED",
                    residuals.steps,
                    residuals.last_resort ? ", by the last resort" : "",
                    residuals.mass,
                    residuals.energy,
                    residuals.outlet));
  }

  const Solution* before_;
  const Solution& after_;
  Figures figures_;
  const UnitSet& shown_;
  Check check_;
  OutletKinds kinds_;
  CourseWords courses_;
  std::vector<std::string> skipped_;
  std::vector<std::string> throttling_;
  Page page_;
};

}  // namespace

std::string report(const Solution& solution, const ReportOptions& options) {
  return Report(nullptr, solution, options).write();
}

std::string report(const Solution& before, const Solution& after, const ReportOptions& options) {
  return Report(&before, after, options).write();
}

}  // namespace hydro
