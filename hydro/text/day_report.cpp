#include "hydro/text/day_report.hpp"

#include "hydro/text/cautions.hpp"
#include "hydro/text/clock.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/stopping_words.hpp"
#include "hydro/text/supply_words.hpp"

#include <algorithm>
#include <cstddef>

#include <fmt/format.h>

namespace hydro {
namespace {

std::string joined(const std::vector<std::string>& names) {
  std::string list;
  for (const std::string& name : names) list += (list.empty() ? "" : "; ") + name;
  return list;
}

class DayReport {
 public:
  DayReport(const Layout& layout,
            const DayPlan& plan,
            const std::vector<LineSurge>& surges,
            const Figures& figures)
      : layout_(layout),
        plan_(plan),
        surges_(surges),
        figures_(figures),
        shown_(figures.units()),
        is_us_(figures.system() == UnitSystem::us) {}

  std::string write() {
    if (!layout_.site().name.empty()) page_.paragraph("", layout_.site().name);
    page_.paragraph("",
                    fmt::format("The watering day, from {} to {}, every outlet at its rated "
                                "pressure or more",
                                clock(plan_.earliest),
                                clock(plan_.latest)));
    page_.line();
    summary();
    turns();
    sets();
    where_it_goes();
    bursts();
    page_.list("Left for another time", left_over());
    write_filling_and_stopping(page_, surges_, figures_);
    run_out();
    assumptions();
    write_cautions(page_);
    return page_.take();
  }

 private:
  static constexpr std::size_t widest_set = 22;

  std::string volume(const Volume& value) const {
    return fmt::format("{:.0f} {}", value / shown_.volume, shown_.volume.symbol);
  }
  std::string rate(const Velocity& value) const {
    const double slow_in_per_h = 0.1;
    if (!is_us_) return fmt::format("{:.1f}", value / mm_per_h);
    return fmt::format("{:.{}f}", value / inch_per_h, value / inch_per_h < slow_in_per_h ? 3 : 2);
  }
  const char* rate_unit() const { return is_us_ ? inch_per_h.symbol : mm_per_h.symbol; }

  void summary() {
    const std::size_t count = plan_.sets.size();
    const auto left = std::ranges::count_if(
        plan_.sets, [](const SetDay& set) { return set.why_left.has_value(); });
    std::string what;
    if (left == 0)
      what = count == 1 ? "The set gets what it needs"
                        : fmt::format("All {} sets get what they need", count);
    else
      what = fmt::format("{} of the {} sets do{} NOT get what {}",
                         left,
                         count,
                         left == 1 ? "es" : "",
                         left == 1 ? "it needs" : "they need");
    if (plan_.turns.empty()) {
      page_.paragraph("* ", what + ": nothing runs.");
      return;
    }
    page_.paragraph("* ",
                    fmt::format("{}. Water runs from {} to {}; the {} runs for {}.",
                                what,
                                clock(plan_.turns.front().fill_from),
                                clock(plan_.turns.back().stop),
                                layout_.supply().pump ? "pump" : "supply",
                                in_words(plan_.pump_time)));
    std::string water = fmt::format("{} are needed: {} out of the outlets, {} to fill the lines",
                                    volume(plan_.pumped),
                                    volume(plan_.let_out),
                                    volume(plan_.fill));
    if (plan_.lost > Volume{}) water += fmt::format(", {} lost through breaks", volume(plan_.lost));
    page_.paragraph("* ", water + ".");
    if (plan_.water_energy > Energy{}) {
      std::string energy = fmt::format("{:.1f} kWh go into the water", plan_.water_energy / kWh);
      if (plan_.shaft_energy)
        energy +=
            fmt::format(", for which the pump's shaft takes {:.1f} kWh", *plan_.shaft_energy / kWh);
      page_.paragraph("* ", energy + ".");
    }
    if (plan_.cost) page_.paragraph("* ", fmt::format("It costs {:.2f}.", *plan_.cost));
  }

  void turns() {
    if (plan_.turns.empty()) return;
    const bool has_speed =
        std::ranges::any_of(plan_.turns, [](const Turn& turn) { return turn.speed.has_value(); });
    const auto columns = [&](const std::string& fill,
                             const std::string& start,
                             const std::string& stop,
                             const std::string& speed,
                             const std::string& gauge,
                             const std::string& flow,
                             const std::string& volume) {
      return fmt::format("  {:>7}  {:>7}  {:>7}  {}{:>6}  {:>7}  {:>6}  ",
                         fill,
                         start,
                         stop,
                         has_speed ? fmt::format("{:>6}  ", speed) : "",
                         gauge,
                         flow,
                         volume);
    };
    page_.line();
    const bool has_gauge = layout_.supply().gauge.has_value();
    page_.line(
        columns("fill", "water", "", "engine", has_gauge ? "gauge" : "supply", "flow", "in all"));
    page_.line(columns("from",
                       "from",
                       "to",
                       rpm.symbol,
                       shown_.pressure.symbol,
                       shown_.flow.symbol,
                       shown_.volume.symbol) +
               "sets");
    for (const Turn& turn : plan_.turns)
      page_.paragraph(columns(turn.fill > Volume{} ? clock(turn.fill_from) : "",
                              clock(turn.start),
                              clock(turn.stop),
                              turn.speed ? fmt::format("{:.0f}", *turn.speed / rpm) : "",
                              figures_.pressure(turn.gauge_reading.value_or(turn.pressure)),
                              fmt::format("{:.1f}", turn.flow / shown_.flow),
                              fmt::format("{:.0f}", turn.pumped() / shown_.volume)),
                      joined(turn.sets));
  }

  /// How fast water comes down, by the ground where it is known, else by plant or outlet.
  void sets() {
    if (plan_.turns.empty()) return;
    const auto line = [&](const std::string& name,
                          const std::string& runs,
                          const std::string& average,
                          const std::string& weakest,
                          const std::string& driest,
                          const std::string& unit) {
      page_.line(fmt::format("  {:<{}}  {:>12}  {:>8}  {:>8}  {:>8}  {}",
                             name,
                             widest_set,
                             runs,
                             average,
                             weakest,
                             driest,
                             unit));
    };
    page_.line();
    line("", "runs", "on", "weakest", "weakest", "");
    line("", "for", "average", "quarter", "outlet", "");
    for (const SetDay& set : plan_.sets) {
      if (!set.application) continue;
      const Application& it = *set.application;
      if (it.rates) {
        line(cut(set.set, widest_set),
             in_words(set.runs),
             rate(it.rates->average),
             rate(it.rates->low_quarter),
             rate(it.rates->driest),
             rate_unit());
        continue;
      }
      const Unit<Flow>& unit = figures_.flow_unit(it.to_plant(it.flows.mean));
      const auto flow = [&](const Flow& outlet) {
        return fmt::format("{:.1f}", it.to_plant(outlet) / unit);
      };
      line(cut(set.set, widest_set),
           in_words(set.runs),
           flow(it.flows.mean),
           flow(it.flows.low_quarter),
           flow(it.flows.least),
           fmt::format("{} {}", unit.symbol, it.outlets_per_plant ? "a plant" : "an outlet"));
    }
  }

  void where_it_goes() {
    std::vector<std::string> sentences;
    for (const SetDay& set : plan_.sets) {
      if (!set.run) continue;
      const Watering& does = set.run->does;
      const auto share = [&](const Volume& part) { return percent(part / does.let_out); };
      std::string text = fmt::format(
          "{}: distribution uniformity (low quarter) {}, application efficiency {}: so much of the "
          "water let out stays with the roots; {} runs deeper, {} is lost to the air",
          set.set,
          percent(set.application->distribution / 100),
          percent(does.efficiency),
          share(does.deeper),
          share(does.to_the_air));
      if (set.run->served == ServedBy::low_quarter &&
          in_words(set.run->for_average) != in_words(does.time))
        text += fmt::format("; on average {} would do, but not for the weakest quarter",
                            in_words(set.run->for_average));
      sentences.push_back(text + ".");
    }
    page_.list("Where the water goes", sentences);
  }

  void bursts() {
    std::vector<std::string> sentences;
    for (const SetDay& set : plan_.sets) {
      if (!set.run || set.run->bursts.bursts < 2) continue;
      const Bursts& it = set.run->bursts;
      sentences.push_back(
          fmt::format("{}: the soil takes the water in more slowly than it comes. Water in {} "
                      "bursts of {} with "
                      "rests of {} between them, {} in all; the times above are without the rests.",
                      set.set,
                      it.bursts,
                      in_words(it.each),
                      in_words(it.rest),
                      in_words(it.whole)));
    }
    page_.list("In bursts", sentences);
  }

  std::vector<std::string> left_over() const {
    std::vector<std::string> sentences;
    for (const SetDay& set : plan_.sets) {
      if (!set.why_left) continue;
      std::string text = set.set + ": ";
      if (*set.why_left == WhyLeft::day_too_short)
        text += set.share > 0 ? fmt::format("the day is too short: it has {} of its water",
                                            percent(set.share))
                              : std::string("the day is too short: it has no water");
      else
        text += set.limits.empty()
                    ? std::string("the supply does not bring every outlet its pressure")
                    : fmt::format(
                          "alone it passes a limit of the supply ({}), and no other set is "
                          "left to run beside it",
                          in_words(set.limits));
      if (set.still_needs) text += fmt::format("; it needs {} more", in_words(*set.still_needs));
      sentences.push_back(text + ".");
    }
    return sentences;
  }

  void run_out() {
    if (plan_.turns.empty() || !(plan_.turns.back().run_out > Volume{})) return;
    page_.paragraph(
        "  - ",
        fmt::format("When all is shut off after the last turn, up to {} more run out of "
                    "the lowest outlets.",
                    volume(plan_.turns.back().run_out)));
  }

  void assumptions() {
    std::vector<std::string> sentences{
        "Flows are steady, and those of the solved lines. What wind and the overlap of sprinklers "
        "do "
        "to the ground between the outlets is not in them."};
    if (std::ranges::any_of(plan_.sets, [](const SetDay& set) { return set.run.has_value(); }))
      sentences.push_back(
          "How much of the water let out comes to the soil is an estimate, unless it was given: "
          "common practice, no source.");
    page_.list("What is assumed", sentences);
  }

  const Layout& layout_;
  const DayPlan& plan_;
  const std::vector<LineSurge>& surges_;
  const Figures& figures_;
  const UnitSet& shown_;
  bool is_us_;
  Page page_;
};

}  // namespace

std::string day_report(const Layout& layout, const DayPlan& plan, const DayReportOptions& options) {
  const Figures figures(options.units.value_or(layout.units()));
  return DayReport(layout, plan, options.surges, figures).write();
}

}  // namespace hydro
