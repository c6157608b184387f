#include "hydro/text/breaks_report.hpp"

#include "hydro/answers/assumptions.hpp"
#include "hydro/text/breaks_words.hpp"
#include "hydro/text/cautions.hpp"
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

class BreaksReport {
 public:
  BreaksReport(const Breaks& breaks, const Figures& figures)
      : all_(breaks),
        layout_(breaks.before.layout()),
        figures_(figures),
        shown_(figures.units()),
        shows_gauge_(is_felt_at_the_gauge(breaks)) {
    for (const Break& it : all_.breaks) {
      shows_escaping_ = shows_escaping_ || !figures_.rounds_to_nothing(it.escaping);
      shows_above_ = shows_above_ || it.more_above_maximum > 0;
    }
  }

  std::string write() {
    if (!layout_.site().name.empty()) page_.paragraph("", layout_.site().name);
    if (!layout_.running_sets().empty())
      page_.paragraph("",
                      fmt::format("{} that run{}: {}",
                                  layout_.running_sets().size() > 1 ? "Sets" : "Set",
                                  layout_.running_sets().size() > 1 ? "" : "s",
                                  fmt::join(layout_.running_sets(), ", ")));
    page_.paragraph("", title());
    for (const std::string& what : breaks_in_words(all_, figures_)) page_.paragraph("  ", what);
    page_.line();
    for (const std::string& sentence : outcome_in_words(all_, figures_))
      page_.paragraph("* ", sentence);
    tables();
    left_out("Not solved", all_.not_solved);
    left_out("Where it was not tried", all_.skipped);
    page_.list("The faults that are there already", faults());
    page_.list("Assumed, because it was not given", estimates());
    write_cautions(page_);
    return page_.take();
  }

 private:
  static constexpr std::size_t narrowest_name = 8;

  std::string title() const {
    const std::size_t tried = all_.breaks.size() + all_.not_solved.size();
    return tried == 1 ? std::string("At one outlet:")
                      : fmt::format("At each of {} outlets in turn:", tried);
  }

  void tables() {
    for (std::size_t i = 0; i < all_.breaks.size();) {
      const std::string& line = all_.breaks[i].line;
      page_.line();
      page_.line(line);
      heading();
      for (; i < all_.breaks.size() && all_.breaks[i].line == line; ++i) row(all_.breaks[i]);
    }
  }

  /// The cells before the weakest outlet; some of them are not shown.
  std::string cells(const std::string& outlet,
                    const std::string& escaping,
                    const std::string& inflow,
                    const std::string& gauge,
                    const std::string& below,
                    const std::string& idle,
                    const std::string& above) const {
    std::string text = fmt::format("{:>6}", outlet);
    if (shows_escaping_) text += fmt::format("  {:>8}", escaping);
    text += fmt::format("  {:>8}", inflow);
    if (shows_gauge_) text += fmt::format("  {:>6}", gauge);
    text += fmt::format("  {:>6}  {:>8}", below, idle);
    if (shows_above_) text += fmt::format("  {:>8}", above);
    return text + "  ";
  }

  void heading() {
    const bool has_gauge = layout_.supply().gauge.has_value();
    page_.line(cells("", "more", "supply", has_gauge ? "gauge" : "supply", "more", "more", "more"));
    page_.line(
        cells("at", "escapes", "gives", has_gauge ? "reads" : "has", "under", "that do", "above") +
        "the weakest other outlet");
    page_.line(cells("outlet",
                     shown_.flow.symbol,
                     shown_.flow.symbol,
                     shown_.pressure.symbol,
                     "rated",
                     "not work",
                     "highest") +
               fmt::format("{:>5}  of rated", shown_.pressure.symbol));
  }

  void row(const Break& it) {
    const auto flow = [&](const Flow& value) {
      return figures_.rounds_to_nothing(value) ? std::string("0.0")
                                               : fmt::format("{:.1f}", value / shown_.flow);
    };
    std::string text = cells(std::to_string(it.outlet),
                             flow(it.escaping),
                             flow(it.inflow),
                             figures_.pressure(it.gauge_reading),
                             std::to_string(it.more_below_rated),
                             std::to_string(it.more_out_of_work),
                             std::to_string(it.more_above_maximum));
    if (it.weakest) {
      text += fmt::format("{:>5}  {:>6}  {} of ",
                          figures_.pressure(it.weakest->pressure),
                          percent(it.weakest->pressure / it.weakest->rated),
                          it.weakest->outlet);
      text += cut(
          it.weakest->line,
          std::max(narrowest_name, Page::screen_width - std::min(Page::screen_width, text.size())));
    } else {
      text += "    -";
    }
    page_.line(text);
  }

  /// Those with the same reason in one sentence.
  void left_out(const char* heading, const std::vector<LeftOut>& outlets) {
    std::vector<std::pair<std::string, std::string>> reasons;  // and the places
    for (std::size_t i = 0; i < outlets.size();) {
      const std::string& line = outlets[i].line;
      std::map<std::string, std::vector<int>> on_line;
      for (; i < outlets.size() && outlets[i].line == line; ++i)
        on_line[outlets[i].why].push_back(outlets[i].outlet);
      for (const auto& [why, numbers] : on_line) {
        const bool whole = static_cast<int>(numbers.size()) == layout_.line(line).outlet_count();
        const std::string place =
            whole ? line
                  : fmt::format(
                        "{}, outlet{} {}", line, numbers.size() > 1 ? "s" : "", stretches(numbers));
        const auto known =
            std::ranges::find(reasons, why, [](const auto& reason) { return reason.first; });
        if (known == reasons.end())
          reasons.emplace_back(why, place);
        else
          known->second += "; " + place;
      }
    }
    std::vector<std::string> sentences;
    sentences.reserve(reasons.size());
    for (const auto& [why, places] : reasons)
      sentences.push_back(fmt::format("{}: {}.", places, why));
    page_.list(heading, sentences);
  }

  std::vector<std::string> faults() const {
    std::vector<std::string> sentences;
    for (const Fault& fault : layout_.faults())
      sentences.push_back(describe(fault, layout_, figures_.system()) + ".");
    return sentences;
  }

  /// What a break assumes beyond what the layout assumes.
  std::vector<std::string> estimates() const {
    std::vector<std::string> sentences;
    const std::vector<std::string> known = assumptions(layout_, figures_.system());
    const std::string* last = nullptr;
    for (const Break& it : all_.breaks) {
      if (last && *last == it.line) continue;
      last = &it.line;
      const Layout broken = layout_.with_fault(at_outlet(all_.fault, it.line, it.outlet));
      const std::string where = fmt::format("{}, outlet {}: ", it.line, it.outlet);
      for (const std::string& sentence : assumptions(broken, figures_.system())) {
        if (!sentence.starts_with(where) || std::ranges::find(known, sentence) != known.end())
          continue;
        std::string told = sentence.substr(where.size());
        if (std::ranges::find(sentences, told) == sentences.end())
          sentences.push_back(std::move(told));
      }
    }
    return sentences;
  }

  const Breaks& all_;
  const Layout& layout_;
  const Figures& figures_;
  const UnitSet& shown_;
  bool shows_gauge_;
  bool shows_escaping_ = false;
  bool shows_above_ = false;
  Page page_;
};

}  // namespace

std::string breaks_report(const Breaks& breaks, std::optional<UnitSystem> units) {
  const Figures figures(units.value_or(breaks.before.layout().units()));
  return BreaksReport(breaks, figures).write();
}

}  // namespace hydro
