#include "hydro/text/report.hpp"

#include "hydro/answers/assumptions.hpp"
#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/quantities/unit_text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr std::size_t screen_width = 88;

/// What an outlet does, from the worst on.
enum class Doing { broken, capped, dry, below_minimum, below_rated, above_maximum, serves };

class Report {
 public:
  Report(const Solution* before, const Solution& after, const ReportOptions& options)
      : before_(before),
        after_(after),
        system_(options.units.value_or(after.layout().units())),
        shown_(unit_set(system_)),
        check_(check(after)) {}

  std::string write() {
    const std::string& name = after_.layout().site().name;
    if (!name.empty()) {
      paragraph("", name);
      line("");
    }
    findings();
    if (before_) consequences();
    supply();
    for (std::size_t i = 0; i < after_.lines().size(); ++i) outlets_of(i);
    pipes();
    evenness();
    list("Notes", after_.notes());
    list("Assumed, because it was not given", assumptions(after_.layout(), system_));
    proof();
    cautions();
    return std::move(text_);
  }

 private:
  // ---- lines of text

  void line(std::string_view text) { (text_ += text) += '\n'; }

  /// Breaks the text at blanks; lines after the first are set in by as much as the mark.
  void paragraph(std::string_view mark, std::string_view text) {
    std::string row(mark);
    const std::string set_in(mark.size(), ' ');
    bool empty = true;
    while (!text.empty()) {
      const std::size_t end = std::min(text.find(' '), text.size());
      if (!empty && row.size() + 1 + end > screen_width) {
        line(row);
        row = set_in;
        empty = true;
      }
      (row += empty ? "" : " ") += text.substr(0, end);
      empty = false;
      text.remove_prefix(std::min(end + 1, text.size()));
    }
    line(row);
  }

  void list(std::string_view title, const std::vector<std::string>& sentences) {
    if (sentences.empty()) return;
    line("");
    line(title);
    for (const std::string& sentence : sentences) paragraph("  - ", sentence);
  }

  // ---- quantities in the reader's units

  std::string pressure(const Pressure& value) const {
    return fmt::format("{:.{}f}", positive_zero(value / shown_.pressure), pressure_decimals());
  }
  std::string pressure_with_unit(const Pressure& value) const {
    return pressure(value) + " " + shown_.pressure.symbol;
  }
  /// A pressure a person chose, without a needless decimal: "25 psi".
  std::string limit(const Pressure& value) const {
    std::string text = pressure(value);
    if (text.ends_with(".0")) text.resize(text.size() - 2);
    return text + " " + shown_.pressure.symbol;
  }
  int pressure_decimals() const { return system_ == UnitSystem::us ? 1 : 0; }
  static double positive_zero(double value) { return std::abs(value) < 1e-9 ? 0 : value; }

  const Unit<Flow>& flow_unit(const Flow& rated) const {
    return rated / shown_.flow < 1 ? shown_.small_flow : shown_.flow;
  }
  std::string flow(const Flow& value) const {
    return fmt::format("{:.1f} {}", value / shown_.flow, shown_.flow.symbol);
  }
  std::string bucket_time(const Flow& value) const {
    if (!(value > Flow{})) return "never";
    const double seconds = si(shown_.bucket * shown_.volume) / si(value);
    if (seconds < 600) return fmt::format("{:.0f} s", seconds);
    if (seconds < 36000) return fmt::format("{:.0f} min", seconds / 60);
    return seconds < 360000 ? fmt::format("{:.0f} h", seconds / 3600) : "days";
  }

  // ---- what the outlets do

  Doing doing(const Line& line, const LineSolution& solved, std::size_t i) const {
    switch (solved.state[i]) {
      case OutletState::broken:
        return Doing::broken;
      case OutletState::closed:
        return Doing::capped;
      case OutletState::dry:
        return Doing::dry;
      case OutletState::below_minimum:
        return Doing::below_minimum;
      case OutletState::above_maximum:
        return Doing::above_maximum;
      case OutletState::works:
        break;
    }
    constexpr double rounding = 1e-6;
    return solved.pressure[i] < line.outlet->rated_pressure() * (1 - rounding) ? Doing::below_rated
                                                                               : Doing::serves;
  }

  /// "outlets 3 to 10, 12"; of very many stretches the first ones.
  static std::string numbers(const std::vector<int>& outlets) {
    constexpr int most_stretches = 12;
    std::string text = outlets.size() == 1 ? "outlet " : "outlets ";
    int stretches = 0;
    for (std::size_t i = 0; i < outlets.size(); ++stretches) {
      if (stretches == most_stretches)
        return text + fmt::format(" and {} more", outlets.size() - i);
      std::size_t last = i;
      while (last + 1 < outlets.size() && outlets[last + 1] == outlets[last] + 1) ++last;
      if (i > 0) text += ", ";
      text += std::to_string(outlets[i]);
      if (last > i) text += (last > i + 1 ? " to " : ", ") + std::to_string(outlets[last]);
      i = last + 1;
    }
    return text;
  }

  void findings() {
    bool all_serve = true;
    for (std::size_t l = 0; l < after_.lines().size(); ++l) {
      const Line& line = after_.layout().lines()[l];
      const LineSolution& solved = after_.lines()[l];
      std::vector<std::vector<int>> by_doing(static_cast<std::size_t>(Doing::serves) + 1);
      for (std::size_t i = 0; i < solved.state.size(); ++i)
        by_doing[static_cast<std::size_t>(doing(line, solved, i))].push_back(static_cast<int>(i) +
                                                                             1);
      for (std::size_t d = 0; d < static_cast<std::size_t>(Doing::serves); ++d) {
        if (by_doing[d].empty()) continue;
        paragraph("* ", finding(static_cast<Doing>(d), line, solved, by_doing[d]));
        all_serve = false;
      }
    }
    if (after_.layout().outlet_count() == 0)
      paragraph("* ", "There are no outlets.");
    else if (all_serve)
      paragraph("* ",
                fmt::format("Every one of the {} outlets has its rated pressure.",
                            after_.layout().outlet_count()));
    for (const FastWater& fast : check_.fast_water)
      paragraph("* ",
                fmt::format("{}: the water runs at {:.1f} {}, faster than the customary {:.3g}.",
                            fast.line,
                            fast.velocity / shown_.velocity,
                            shown_.velocity.symbol,
                            CheckOptions{}.velocity / shown_.velocity));
    for (const Suction& suction : check_.suctions)
      paragraph("* ",
                fmt::format("{}: its lowest pressure is {}, below the atmosphere's{}.",
                            suction.line,
                            pressure_with_unit(suction.pressure),
                            suction.column_separates
                                ? "; the water column parts there and the figures do not hold"
                                : ""));
  }

  std::string finding(Doing what,
                      const Line& line,
                      const LineSolution& solved,
                      const std::vector<int>& outlets) const {
    std::string who = fmt::format("{}: {}", line.name, numbers(outlets));
    const bool one = outlets.size() == 1;
    const auto extreme = [&](auto better) {
      const int found = *std::min_element(outlets.begin(), outlets.end(), [&](int a, int b) {
        return better(solved.pressure[static_cast<std::size_t>(a - 1)],
                      solved.pressure[static_cast<std::size_t>(b - 1)]);
      });
      const Pressure value = solved.pressure[static_cast<std::size_t>(found - 1)];
      return one ? fmt::format(" ({})", pressure_with_unit(value))
                 : fmt::format(" ({} at outlet {})", pressure_with_unit(value), found);
    };
    const auto lowest = [&] { return extreme([](auto a, auto b) { return a < b; }); };
    const auto highest = [&] { return extreme([](auto a, auto b) { return a > b; }); };
    switch (what) {
      case Doing::broken: {
        Flow escaping{};
        for (const int outlet : outlets)
          escaping += solved.flow[static_cast<std::size_t>(outlet - 1)];
        return fmt::format("{} {} broken, {} escapes.", who, one ? "is" : "are", flow(escaping));
      }
      case Doing::capped:
        return fmt::format("{} {} capped.", who, one ? "is" : "are");
      case Doing::dry:
        return fmt::format(
            "{} {} dry: the pressure does not lift water there.", who, one ? "is" : "are");
      case Doing::below_minimum:
        return fmt::format("{} {} under the {} below which {}{}.",
                           who,
                           one ? "is" : "are",
                           limit(*line.outlet->minimum),
                           one ? "it does not work" : "they do not work",
                           lowest());
      case Doing::below_rated:
        return fmt::format("{} {} under the rated {}{}.",
                           who,
                           one ? "is" : "are",
                           limit(line.outlet->rated_pressure()),
                           lowest());
      case Doing::above_maximum:
        return fmt::format("{} {} over the {} above which {}{}.",
                           who,
                           one ? "is" : "are",
                           limit(*line.outlet->maximum),
                           one ? "it mists" : "they mist",
                           highest());
      case Doing::serves:
        break;
    }
    return who;
  }

  // ---- what a fault does

  void consequences() {
    const Comparison change = compare(*before_, after_);
    line("");
    line("The fault");
    for (const Fault& fault : after_.layout().faults())
      paragraph("  ", describe(fault, after_.layout().line(line_of(fault)), system_) + ".");
    line("and what it does");
    const auto more = [](std::size_t number, const char* what) {
      return fmt::format("{} more {} {}",
                         number == 0 ? "no" : std::to_string(number),
                         number == 1 ? "is" : "are",
                         what);
    };
    paragraph(
        "  - ",
        fmt::format("Of the outlets, {}, {}, {}.",
                    more(change.newly_below_rated.size(), "under the rated pressure"),
                    more(change.newly_below_minimum.size(), "under the lowest at which they work"),
                    more(change.newly_dry.size(), "dry")));
    if (change.escaping > Flow{})
      paragraph("  - ",
                fmt::format("{} escapes; the other outlets get {} less in all.",
                            flow(change.escaping),
                            flow(change.missing)));
    paragraph(
        "  - ",
        fmt::format("The supply gives {} instead of {}. Its pressure was taken as held; a real "
                    "pump would fall and all outlets with it.",
                    flow(change.inflow_after),
                    flow(change.inflow_before)));
  }

  // ---- tables

  void supply() {
    line("");
    paragraph("",
              fmt::format("Supply: held at {}, gives {}.",
                          pressure_with_unit(after_.supply_pressure()),
                          flow(after_.inflow())));
  }

  void outlets_of(std::size_t index) {
    const Line& pipe_line = after_.layout().lines()[index];
    const LineSolution& solved = after_.lines()[index];
    if (!pipe_line.outlet) return;
    const Flow rated_flow = discharge(*pipe_line.outlet, pipe_line.outlet->rated_pressure());
    const Unit<Flow>& unit = flow_unit(rated_flow);
    const std::string bucket = fmt::format("{:g} {} in", shown_.bucket, shown_.volume.symbol);

    line("");
    paragraph("",
              fmt::format("{}: {} outlet{}{}{}, rated {} at {}",
                          solved.name,
                          solved.pressure.size(),
                          solved.pressure.size() == 1 ? "" : "s",
                          pipe_line.outlet->name.empty() ? "" : " of kind ",
                          pipe_line.outlet->name,
                          fmt::format("{:.3g} {}", rated_flow / unit, unit.symbol),
                          limit(pipe_line.outlet->rated_pressure())));
    line(fmt::format("  {:>6}  {:>8}  {:>7}{}  {:>8}  {:>8}  {:>9}   {}",
                     "outlet",
                     fmt::format("at {}", shown_.length.symbol),
                     shown_.pressure.symbol,
                     before_ ? fmt::format("  {:>7}", "before") : "",
                     "of rated",
                     unit.symbol,
                     bucket,
                     "what it does"));
    const std::vector<std::size_t> rows = rows_of(pipe_line, solved);
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const std::size_t i = rows[r];
      if (r > 0 && i > rows[r - 1] + 1) line(fmt::format("  {:>6}", "..."));
      const std::string before =
          before_ ? fmt::format("  {:>7}", pressure(before_->lines()[index].pressure[i])) : "";
      line(fmt::format("  {:>6}  {:>8.1f}  {:>7}{}  {:>8}  {:>8.1f}  {:>9}   {}",
                       i + 1,
                       solved.distance[i] / shown_.length,
                       pressure(solved.pressure[i]),
                       before,
                       solved.state[i] == OutletState::broken
                           ? "-"
                           : fmt::format("{:.0f} %", 100 * (solved.flow[i] / rated_flow)),
                       solved.flow[i] / unit,
                       bucket_time(solved.flow[i]),
                       in_words(pipe_line, solved, index, i)));
    }
  }

  /// All outlets of a short line; of a long one the ends and those where something changes, up to
  /// 120.
  std::vector<std::size_t> rows_of(const Line& line, const LineSolution& solved) const {
    constexpr std::size_t most = 60;
    const std::size_t count = solved.state.size();
    std::vector<std::size_t> rows;
    for (std::size_t i = 0; i < count; ++i) {
      const bool end = i < 3 || i + 3 >= count;
      const bool changes = (i > 0 && doing(line, solved, i) != doing(line, solved, i - 1)) ||
                           (i + 1 < count && doing(line, solved, i) != doing(line, solved, i + 1));
      const bool milestone = i % ((count + most - 1) / most * 5) == 0;
      if (count <= most || end || ((changes || milestone) && rows.size() < 2 * most))
        rows.push_back(i);
    }
    return rows;
  }

  std::string in_words(const Line& line,
                       const LineSolution& solved,
                       std::size_t index,
                       std::size_t i) const {
    std::string words;
    switch (doing(line, solved, i)) {
      case Doing::broken:
        words = "BROKEN, water escapes";
        break;
      case Doing::capped:
        words = "capped";
        break;
      case Doing::dry:
        words = "DRY";
        break;
      case Doing::below_minimum:
        words = "DOES NOT WORK";
        break;
      case Doing::below_rated:
        words = "below rated";
        break;
      case Doing::above_maximum:
        words = "MISTS";
        break;
      case Doing::serves:
        words = "works";
        break;
    }
    for (const Fault& fault : after_.layout().faults_on(index)) {
      if (outlet_of(fault) != static_cast<int>(i) + 1) continue;
      if (std::holds_alternative<Clogged>(fault)) words += ", clogged";
      if (std::holds_alternative<Worn>(fault)) words += ", worn";
    }
    return words;
  }

  void pipes() {
    const std::size_t width = name_width();
    line("");
    line("Along the pipes");
    line(fmt::format("  {:<{}}  {:>10}  {:>10}  {:>12}  {:>10}",
                     "line",
                     width,
                     shown_.flow.symbol,
                     shown_.velocity.symbol,
                     fmt::format("{} at inlet", shown_.pressure.symbol),
                     fmt::format("{} at end", shown_.pressure.symbol)));
    for (const LineSolution& solved : after_.lines())
      line(fmt::format("  {:<{}}  {:>10.1f}  {:>10.1f}  {:>12}  {:>10}",
                       solved.name,
                       width,
                       solved.inflow / shown_.flow,
                       solved.inlet_velocity / shown_.velocity,
                       pressure(solved.inlet_pressure),
                       pressure(solved.end_pressure)));
  }

  /// Wide enough for the names of all lines.
  std::size_t name_width() const {
    std::size_t width = 20;
    for (const LineSolution& solved : after_.lines()) width = std::max(width, solved.name.size());
    return width;
  }

  void evenness() {
    if (check_.variations.empty()) return;
    const CheckOptions limits;
    line("");
    paragraph(
        "",
        fmt::format(
            "How evenly it waters (customary: pressures within {:.0f} % of their average, flows "
            "within {:.0f} % of the largest; dry, broken and capped outlets left out)",
            100 * limits.pressure_variation,
            100 * limits.flow_variation));
    for (const Variation& variation : check_.variations) {
      const std::string where =
          variation.line.empty()
              ? (variation.outlet_name.empty() ? "all lines" : "all " + variation.outlet_name)
              : variation.line;
      line(fmt::format("  {:<{}}  pressures {:>4.1f} %, flows {:>4.1f} %{}",
                       where,
                       name_width(),
                       100 * variation.pressure,
                       100 * variation.flow,
                       variation.too_wide ? "   UNEVEN" : ""));
    }
  }

  void proof() {
    const Residuals& residuals = after_.residuals();
    line("");
    paragraph("",
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
    line("");
    line("Cautions");
    for (const char* caution : {"This is an estimate of steady flow, not a design certificate: "
                                "verify it in the field. Local codes "
                                "and licensed practice decide.",
                                "Shut down and release the pressure before touching an outlet or a "
                                "riser; keep clear of the engine "
                                "and its shafts; open and close valves slowly.",
                                "Near drinking water use backflow protection. Put no chemicals "
                                "into the water without following the "
                                "local rules."})
      paragraph("  - ", caution);
  }

  const Solution* before_;
  const Solution& after_;
  UnitSystem system_;
  UnitSet shown_;
  Check check_;
  std::string text_;
};

}  // namespace

std::string report(const Solution& solution, const ReportOptions& options) {
  return Report(nullptr, solution, options).write();
}

std::string report(const Solution& before, const Solution& after, const ReportOptions& options) {
  return Report(&before, after, options).write();
}

}  // namespace hydro
