#include "hydro/text/report.hpp"

#include "hydro/answers/assumptions.hpp"
#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <map>
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
        check_(check(after)) {
    for (const SkippedFault& it : options.skipped) {
      std::string why = kind_of(it.fault) + " on " + line_of(it.fault);
      if (const auto outlet = outlet_of(it.fault)) why += fmt::format(", outlet {}", *outlet);
      why += ":";
      for (const Problem& problem : it.problems) why += " " + problem.text() + ";";
      why.back() = '.';
      skipped_.push_back(std::move(why));
    }
  }

  std::string write() {
    const std::string& name = after_.layout().site().name;
    if (!name.empty()) {
      page_.paragraph("", name);
      page_.line();
    }
    findings();
    if (before_) consequences();
    supply();
    for (std::size_t i = 0; i < after_.lines().size(); ++i) outlets_of(i);
    pipes();
    evenness();
    page_.list("Skipped, because it does not fit", skipped_);
    page_.list("Notes", after_.notes());
    page_.list("Assumed, because it was not given",
               assumptions(after_.layout(), figures_.system()));
    proof();
    cautions();
    return page_.take();
  }

 private:
  void findings() {
    bool all_serve = true;
    for (std::size_t l = 0; l < after_.lines().size(); ++l) {
      for (const Kind& kind : kinds_on(l)) {
        std::map<Doing, std::vector<int>> outlets;
        for (const int number : kind.outlets)
          outlets[doing(after_, l, static_cast<std::size_t>(number - 1))].push_back(number);
        for (const Doing failing : failings) {
          if (outlets[failing].empty()) continue;
          page_.paragraph(
              "* ",
              in_a_sentence(failing, *kind.outlet, after_.lines()[l], outlets[failing], figures_));
          all_serve = false;
        }
      }
      openings_of(l);
    }
    if (after_.layout().outlet_count() == 0)
      page_.paragraph("* ", "There are no outlets.");
    else if (all_serve)
      page_.paragraph("* ",
                      fmt::format("Every one of the {} outlets has its rated pressure.",
                                  after_.layout().outlet_count()));
    for (const FastWater& fast : check_.fast_water)
      page_.paragraph(
          "* ",
          fmt::format("{}: the water runs at {:.1f} {}, faster than the customary {:.3g}.",
                      fast.line,
                      fast.velocity / shown_.velocity,
                      shown_.velocity.symbol,
                      CheckOptions{}.velocity / shown_.velocity));
    for (const OverRating& over : check_.over_rating)
      page_.paragraph("* ",
                      fmt::format("{}: {} in its pipe{}, over the {} that it is rated for.",
                                  over.line,
                                  figures_.pressure_with_unit(over.pressure),
                                  over.pipe_name.empty() ? "" : " " + over.pipe_name,
                                  figures_.limit(over.rating)));
    for (const Suction& suction : check_.suctions)
      page_.paragraph("* ",
                      fmt::format("{}: its lowest pressure is {}, below the atmosphere's{}.",
                                  suction.line,
                                  figures_.pressure_with_unit(suction.pressure),
                                  suction.column_separates
                                      ? "; the water column parts there and the figures do not hold"
                                      : ""));
  }

  void openings_of(std::size_t index) {
    const LineSolution& solved = after_.lines()[index];
    for (const Opening& opening : solved.openings) {
      const Fault& fault = after_.layout().faults_on(index)[opening.fault];
      page_.paragraph(
          "* ",
          fmt::format("{}: {} at {:.1f} {}, {} escapes{}.",
                      solved.name,
                      kind_of(fault),
                      opening.distance / shown_.length,
                      shown_.length.symbol,
                      figures_.flow_with_unit(opening.flow),
                      std::holds_alternative<LineCut>(fault) ? "; no water is beyond" : ""));
    }
  }

  /// Outlets of one kind on a line, by number.
  struct Kind {
    const Outlet* outlet;
    std::vector<int> outlets;
  };
  std::vector<Kind> kinds_on(std::size_t index) const {
    std::vector<Kind> kinds;
    const int count = after_.layout().lines()[index].outlet_count();
    for (int number = 1; number <= count; ++number) {
      const Outlet& outlet = after_.layout().outlet_at(index, number);
      const auto known = std::ranges::find_if(kinds, [&](const Kind& kind) {
        return kind.outlet == &outlet || *kind.outlet == outlet;
      });
      (known == kinds.end() ? kinds.emplace_back(Kind{&outlet, {}}) : *known)
          .outlets.push_back(number);
    }
    return kinds;
  }

  Flow rated_flow(const Outlet& outlet) const {
    return discharge(outlet, outlet.rated_pressure(), after_.water().density);
  }

  void consequences() {
    const Comparison change = compare(*before_, after_);
    page_.line();
    page_.line("The fault");
    const std::vector<Fault>& faults = after_.layout().faults();
    constexpr std::size_t most_told = 12;
    for (std::size_t i = 0; i < std::min(most_told, faults.size()); ++i)
      page_.paragraph(
          "  ",
          describe(faults[i], after_.layout().line(line_of(faults[i])), figures_.system()) + ".");
    if (faults.size() > most_told)
      page_.line(fmt::format("  and {} more", faults.size() - most_told));
    page_.line("and what it does");
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
    page_.paragraph(
        "  - ",
        fmt::format("The supply gives {} instead of {}. Its pressure was taken as held; a real "
                    "pump would fall and all outlets with it.",
                    figures_.flow_with_unit(change.inflow_after),
                    figures_.flow_with_unit(change.inflow_before)));
  }

  void supply() {
    page_.line();
    page_.paragraph("",
                    fmt::format("Supply: held at {}, gives {}.",
                                figures_.pressure_with_unit(after_.supply_pressure()),
                                figures_.flow_with_unit(after_.inflow())));
  }

  void outlets_of(std::size_t index) {
    const LineSolution& solved = after_.lines()[index];
    const std::vector<Kind> kinds = kinds_on(index);
    if (kinds.empty()) return;
    Flow largest{};
    std::size_t kind_width = 4;
    for (const Kind& kind : kinds) {
      largest = std::max(largest, rated_flow(*kind.outlet));
      kind_width = std::max(kind_width, kind.outlet->name.size());
    }
    const Unit<Flow>& unit = figures_.flow_unit(largest);
    const auto column_of_kind = [&](const std::string& name) {
      return kinds.size() > 1 ? fmt::format("   {:<{}}", name, kind_width) : std::string();
    };
    page_.line();
    title_of(solved, kinds, unit);
    page_.line(fmt::format("  {:>6}  {:>8}  {:>7}{}  {:>8}  {:>8}  {:>9}{}   {}",
                           "outlet",
                           fmt::format("at {}", shown_.length.symbol),
                           shown_.pressure.symbol,
                           before_ ? fmt::format("  {:>7}", "before") : "",
                           "of rated",
                           unit.symbol,
                           fmt::format("{:g} {} in", shown_.bucket, shown_.volume.symbol),
                           column_of_kind("kind"),
                           "what it does"));
    const std::vector<std::size_t> rows = rows_of(index);
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const std::size_t i = rows[r];
      if (r > 0 && i > rows[r - 1] + 1) page_.line(fmt::format("  {:>6}", "..."));
      const Outlet& kind = after_.layout().outlet_at(index, static_cast<int>(i) + 1);
      const std::string before =
          before_ ? fmt::format("  {:>7}", figures_.pressure(before_->lines()[index].pressure[i]))
                  : "";
      page_.line(
          fmt::format("  {:>6}  {:>8.1f}  {:>7}{}  {:>8}  {:>8.1f}  {:>9}{}   {}",
                      i + 1,
                      solved.distance[i] / shown_.length,
                      figures_.pressure(solved.pressure[i]),
                      before,
                      solved.state[i] == OutletState::broken
                          ? "-"
                          : fmt::format("{:.0f} %", 100 * (solved.flow[i] / rated_flow(kind))),
                      solved.flow[i] / unit,
                      figures_.bucket_time(solved.flow[i]),
                      column_of_kind(kind.name),
                      told(index, i)));
    }
  }

  void title_of(const LineSolution& solved,
                const std::vector<Kind>& kinds,
                const Unit<Flow>& unit) {
    const auto rating = [&](const Outlet& outlet) {
      return fmt::format("rated {:.3g} {} at {}",
                         rated_flow(outlet) / unit,
                         unit.symbol,
                         figures_.limit(outlet.rated_pressure()));
    };
    const std::string all = fmt::format("{}: {} outlet{}",
                                        solved.name,
                                        solved.pressure.size(),
                                        solved.pressure.size() == 1 ? "" : "s");
    if (kinds.size() == 1) {
      const Outlet& outlet = *kinds.front().outlet;
      page_.paragraph("",
                      fmt::format("{}{}{}, {}",
                                  all,
                                  outlet.name.empty() ? "" : " of kind ",
                                  outlet.name,
                                  rating(outlet)));
      return;
    }
    page_.paragraph("", fmt::format("{} of {} kinds:", all, kinds.size()));
    for (const Kind& kind : kinds)
      page_.paragraph(
          "  ",
          fmt::format(
              "{} of kind {}, {}", kind.outlets.size(), kind.outlet->name, rating(*kind.outlet)));
  }

  /// All outlets of a short line; of a long one the ends and those where something changes, up to
  /// 120.
  std::vector<std::size_t> rows_of(std::size_t index) const {
    constexpr std::size_t most = 60;
    const std::size_t count = after_.lines()[index].state.size();
    const auto differ = [&](std::size_t one, std::size_t other) {
      return doing(after_, index, one) != doing(after_, index, other);
    };
    std::vector<std::size_t> rows;
    for (std::size_t i = 0; i < count; ++i) {
      const bool end = i < 3 || i + 3 >= count;
      const bool changes = (i > 0 && differ(i, i - 1)) || (i + 1 < count && differ(i, i + 1));
      const bool milestone = i % ((count + most - 1) / most * 5) == 0;
      if (count <= most || end || ((changes || milestone) && rows.size() < 2 * most))
        rows.push_back(i);
    }
    return rows;
  }

  /// What the outlet does, and what is known to be wrong with it.
  std::string told(std::size_t line_index, std::size_t outlet_index) const {
    std::string words = in_words(doing(after_, line_index, outlet_index));
    for (const Fault& fault : after_.layout().faults_on(line_index)) {
      if (outlet_of(fault) != static_cast<int>(outlet_index) + 1) continue;
      const std::string word = in_a_word(fault);
      if (!word.empty()) words += ", " + word;
    }
    return words;
  }

  void pipes() {
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
    for (const LineSolution& solved : after_.lines())
      page_.line(fmt::format("  {:<{}}  {:>10.1f}  {:>10.1f}  {:>12}  {:>10}",
                             solved.name,
                             width,
                             solved.inflow / shown_.flow,
                             solved.inlet_velocity / shown_.velocity,
                             figures_.pressure(solved.inlet_pressure),
                             figures_.pressure(solved.end_pressure)));
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
      const auto is_of_this_line = [&](std::size_t other) {
        return other < check_.variations.size() && check_.variations[other].line == variation.line;
      };
      std::string where = variation.line;
      if (where.empty())
        where = variation.outlet_name.empty() ? "all lines" : "all " + variation.outlet_name;
      else if (is_of_this_line(i - 1) || is_of_this_line(i + 1))  // kinds of a line stand together
        where += ", " + variation.outlet_name;
      page_.line(fmt::format("  {:<{}}  pressures {:>4.1f} %, flows {:>4.1f} %{}",
                             where,
                             width,
                             100 * variation.pressure,
                             100 * variation.flow,
                             variation.too_wide ? "   UNEVEN" : ""));
    }
  }

  void proof() {
    const Residuals& residuals = after_.residuals();
    page_.line();
    page_.paragraph(
        "",
        fmt::format(
            "Solved in {} steps{}; what is left of the equations, as shares of their scales: "
            "mass {:.0e}, energy {:.0e}, outlets {:.0e}.",
            residuals.steps,
            residuals.last_resort ? ", by the last resort" : "",
            residuals.mass,
            residuals.energy,
            residuals.outlet));
  }

  void cautions() {
    page_.line();
    page_.line("Cautions");
    for (const char* caution : {"This is an estimate of steady flow, not a design certificate: "
                                "verify it in the field. Local codes "
                                "and licensed practice decide.",
                                "Shut down and release the pressure before touching an outlet or a "
                                "riser; keep clear of the engine "
                                "and its shafts; open and close valves slowly.",
                                "Near drinking water use backflow protection. Put no chemicals "
                                "into the water without following the "
                                "local rules."})
      page_.paragraph("  - ", caution);
  }

  const Solution* before_;
  const Solution& after_;
  Figures figures_;
  const UnitSet& shown_;
  Check check_;
  std::vector<std::string> skipped_;
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
