#include "hydro/text/sets_report.hpp"

#include "hydro/text/cautions.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/supply_words.hpp"

#include <algorithm>
#include <cstddef>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

class SetsReport {
 public:
  SetsReport(const Layout& layout,
             const std::vector<SetsTogether>& together,
             const Figures& figures)
      : layout_(layout), together_(together), figures_(figures), shown_(figures.units()) {
    for (const WateringSet& set : layout.sets())
      set_width_ = std::max(set_width_, std::min(widest_set, set.name.size() + 2));
    for (const SetsTogether& it : together) {
      weakest_width_ = std::max(weakest_width_, std::min(widest_line, weakest(it).size()));
      fastest_width_ = std::max(fastest_width_, std::min(widest_line, it.fastest_line.size()));
      has_speed_ = has_speed_ || it.speed;
    }
  }

  std::string write() {
    if (!layout_.site().name.empty()) page_.paragraph("", layout_.site().name);
    page_.paragraph("", "Which sets run together, every outlet at its rated pressure or more");
    page_.line();
    summary();
    page_.line();
    heading("each alone");
    for (const SetsTogether& it : together_)
      if (it.sets.size() == 1) row(it.sets.front(), it);
    for (const WateringSet& set : layout_.sets()) pairs_of(set.name);
    const SetsTogether& last = together_.back();
    if (layout_.sets().size() > 2 && last.sets.size() == layout_.sets().size()) {
      page_.line();
      row("all at once", last);
    }
    fast_water();
    write_cautions(page_);
    return page_.take();
  }

 private:
  static constexpr std::size_t widest_set = 20;
  static constexpr std::size_t widest_line = 14;

  std::string weakest(const SetsTogether& it) const {
    return fmt::format("{} {}", it.weakest.outlet, it.weakest.line);
  }

  void summary() {
    const auto counted = [&](std::size_t size) {
      int all = 0;
      int run = 0;
      for (const SetsTogether& it : together_)
        if (it.sets.size() == size) {
          ++all;
          run += it.can_run() ? 1 : 0;
        }
      return std::pair{run, all};
    };
    const auto [alone, sets] = counted(1);
    page_.paragraph("* ",
                    sets == 1 ? fmt::format("The set {} alone.", alone ? "runs" : "does not run")
                    : alone == sets ? std::string("Every set runs alone.")
                                    : fmt::format("Of the {} sets, {} alone.", sets, run(alone)));
    if (sets < 2) return;
    const auto [together, pairs] = counted(2);
    page_.paragraph("* ",
                    pairs == 1
                        ? fmt::format("The two {} together.", together ? "run" : "do not run")
                        : fmt::format("Of the {} pairs, {} together.", pairs, run(together)));
    if (sets < 3) return;
    page_.paragraph("* ",
                    together_.back().can_run()
                        ? std::string("All of them run at once.")
                        : "All of them do not run at once: " + why_not(together_.back()) + ".");
  }

  /// "1 runs", "none runs", "3 run".
  static std::string run(int number) {
    return number == 0 ? "none runs" : fmt::format("{} run{}", number, number == 1 ? "s" : "");
  }

  void pairs_of(const std::string& first) {
    bool begun = false;
    for (const SetsTogether& it : together_) {
      if (it.sets.size() != 2 || it.sets.front() != first) continue;
      if (!begun) {
        page_.line();
        page_.line(first);
      }
      begun = true;
      row("+ " + it.sets.back(), it);
    }
  }

  void heading(const char* title) {
    const auto line = [&](const char* first,
                          const char* speed,
                          const char* gauge,
                          const char* flow,
                          const char* weakest,
                          const char* pressure,
                          const char* fastest,
                          const char* velocity) {
      page_.line(fmt::format("{:<{}}  {}{:>7}  {:>7}  {:<{}}  {:>5}  {:<{}}  {:>5}",
                             first,
                             set_width_ + 2,
                             has_speed_ ? fmt::format("{:>6}  ", speed) : "",
                             gauge,
                             flow,
                             weakest,
                             weakest_width_,
                             pressure,
                             fastest,
                             fastest_width_,
                             velocity));
    };
    const bool has_gauge = layout_.supply().gauge.has_value();
    line("", "engine", has_gauge ? "gauge" : "supply", "flow", "weakest", "", "fastest", "");
    line(title,
         "rpm",
         shown_.pressure.symbol,
         shown_.flow.symbol,
         "outlet",
         shown_.pressure.symbol,
         "water in",
         shown_.velocity.symbol);
  }

  void row(const std::string& name, const SetsTogether& it) {
    const std::string speed = it.speed ? fmt::format("{:>6.0f}  ", *it.speed / rpm)
                                       : std::string(has_speed_ ? 8 : 0, ' ');
    const Giving found = giving(it.flow, figures_);
    const std::string flow = fmt::format("{}{:.1f}",
                                         found.takes_in ? "in " : "",
                                         (it.flow < Flow{} ? -it.flow : it.flow) / shown_.flow);
    page_.line(fmt::format("  {:<{}}  {}{:>7}  {:>7}  {:<{}}  {:>5}  {:<{}}  {:>5.1f}  {}",
                           cut(name, set_width_),
                           set_width_,
                           speed,
                           figures_.pressure(it.gauge_reading.value_or(it.pressure)),
                           flow,
                           cut(weakest(it), weakest_width_),
                           weakest_width_,
                           figures_.pressure(it.weakest.pressure),
                           cut(it.fastest_line, fastest_width_),
                           fastest_width_,
                           it.fastest / shown_.velocity,
                           it.can_run() ? "runs" : "NO"));
    if (found.takes_in)
      page_.paragraph(
          "      ", fmt::format("the first supply {}: the others push it back", found.in_words()));
    if (!it.can_run()) page_.paragraph("      does not run: ", why_not(it));
    if (it.too_fast) fast_.insert(it.fastest_line);
  }

  static std::string why_not(const SetsTogether& it) {
    const std::string why = in_words(it.limits);
    return why.empty() ? "the pressure is not enough" : why;
  }

  /// Where the water is faster than is customary, which is no limit.
  void fast_water() {
    if (fast_.empty()) return;
    std::string lines;
    for (const std::string& line : fast_) lines += (lines.empty() ? "" : ", ") + line;
    page_.line();
    page_.paragraph("",
                    fmt::format("The water is faster than the customary {:.3g} {} in {}.",
                                SetsTogetherOptions{}.velocity / shown_.velocity,
                                shown_.velocity.symbol,
                                lines));
  }

  const Layout& layout_;
  const std::vector<SetsTogether>& together_;
  const Figures& figures_;
  const UnitSet& shown_;
  std::size_t set_width_ = 11;
  std::size_t weakest_width_ = 14;
  std::size_t fastest_width_ = 10;
  bool has_speed_ = false;
  std::set<std::string> fast_;
  Page page_;
};

}  // namespace

std::string sets_report(const Layout& layout,
                        const std::vector<SetsTogether>& together,
                        std::optional<UnitSystem> units) {
  const Figures figures(units.value_or(layout.units()));
  return SetsReport(layout, together, figures).write();
}

}  // namespace hydro
