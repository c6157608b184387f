#include "hydro/text/missed_report.hpp"

#include "hydro/text/cautions.hpp"
#include "hydro/text/clock.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

/// Up, so that the weakest outlet has all.
Time whole_minutes(const Time& time) {
  constexpr double rounding = 1e-9;
  return std::ceil(time / units::min - rounding) * units::min;
}

class MissedReport {
 public:
  MissedReport(const Layout& layout,
               const MissedWater& missed,
               const InterruptedRun& run,
               const Figures& figures)
      : layout_(layout), missed_(missed), run_(run), figures_(figures) {}

  std::string write() {
    if (!layout_.site().name.empty()) page_.paragraph("", layout_.site().name);
    page_.paragraph("",
                    fmt::format("After the break: it broke {} after the start, and was stopped "
                                "after {}; it should have run for {}",
                                in_words(run_.broke),
                                in_words(run_.stopped),
                                in_words(run_.planned)));
    page_.line();
    summary();
    table();
    page_.list("Outlets that missed water and get none any more", out_of_service());
    write_cautions(page_);
    return page_.take();
  }

 private:
  std::string volume(const Volume& value) const {
    const UnitSet& shown = figures_.units();
    return fmt::format("{:.0f} {}", value / shown.volume, shown.volume.symbol);
  }

  void summary() {
    page_.paragraph("* ",
                    missed_.for_weakest > Time{}
                        ? fmt::format("Start again and run for {} more: then every outlet that "
                                      "works has all it should.",
                                      in_words(whole_minutes(missed_.for_weakest)))
                        : std::string("No outlet that works has missed any water."));
    std::string water = fmt::format(
        "{} were pumped until it was stopped: {} came out of whole "
        "outlets",
        volume(missed_.pumped),
        volume(missed_.given));
    water += missed_.lost > Volume{} ? fmt::format(", {} were lost.", volume(missed_.lost))
                                     : std::string(", nothing was lost.");
    page_.paragraph("* ", water);
  }

  void table() {
    if (!(missed_.for_weakest > Time{})) return;
    constexpr std::size_t widest_line = 24;
    const auto row = [&](const std::string& line,
                         const std::string& missed,
                         const std::string& average,
                         const std::string& weakest,
                         const std::string& outlet) {
      page_.line(fmt::format("  {:<{}}  {:>8}  {:>13}  {:>13}  {:>7}",
                             cut(line, widest_line),
                             widest_line,
                             missed,
                             average,
                             weakest,
                             outlet));
    };
    page_.line();
    row("", "missed", "more, on", "more, for its", "that is");
    row("", figures_.units().volume.symbol, "average", "weakest", "outlet");
    for (const MissedOnLine& line : missed_.lines)
      if (line.missed_in_all > Volume{})
        row(line.line,
            fmt::format("{:.0f}", line.missed_in_all / figures_.units().volume),
            line.weakest > 0 ? in_words(line.on_average) : "",
            line.weakest > 0 ? in_words(whole_minutes(line.for_weakest)) : "",
            line.weakest > 0 ? fmt::format("{}", line.weakest) : "");
  }

  std::vector<std::string> out_of_service() const {
    std::vector<std::string> sentences;
    for (const MissedOnLine& line : missed_.lines)
      if (!line.out_of_service.empty())
        sentences.push_back(fmt::format("{}: outlet{} {}. Water {} plants otherwise.",
                                        line.line,
                                        line.out_of_service.size() == 1 ? "" : "s",
                                        stretches(line.out_of_service),
                                        line.out_of_service.size() == 1 ? "its" : "their"));
    return sentences;
  }

  const Layout& layout_;
  const MissedWater& missed_;
  const InterruptedRun& run_;
  const Figures& figures_;
  Page page_;
};

}  // namespace

std::string missed_report(const Layout& layout,
                          const MissedWater& missed,
                          const InterruptedRun& run,
                          std::optional<UnitSystem> units) {
  const Figures figures(units.value_or(layout.units()));
  return MissedReport(layout, missed, run, figures).write();
}

}  // namespace hydro
