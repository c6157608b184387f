#include "hydro/text/drawing.hpp"

#include "hydro/answers/comparison.hpp"
#include "hydro/text/finite.hpp"
#include "hydro/text/marks.hpp"
#include "hydro/text/panel.hpp"
#include "hydro/text/supply_words.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr std::size_t most_panels = 24;
constexpr std::size_t most_faults_told = 4;
constexpr std::size_t most_shut_told = 12;
constexpr std::size_t most_others_told = 12;

class Drawing {
 public:
  Drawing(const Solution* before, const Solution& after, const DrawingOptions& options)
      : before_(before),
        after_(after),
        figures_(options.units.value_or(after.layout().units())),
        kinds_(after),
        courses_(after, figures_) {
    for (const Solution* solution : {before_, &after_})
      if (solution)
        require_finite(si(solution->inflow()), [] { return std::string("supply: inflow"); });
    find_shut();
    for (const std::size_t line : chosen_lines())
      panels_.emplace_back(before_, after_, kinds_, courses_, figures_, line);
  }

  std::string write() {
    heading();
    if (panels_.empty())
      remark(shut_.empty() ? "There are no outlets." : "All outlets are shut.");
    else
      legend();
    for (const Panel& panel : panels_) y_ = panel.draw(svg_, y_) + row_height / 2;
    y_ += row_height;
    if (left_out_ == 1) remark("1 more line with outlets is not drawn.");
    if (left_out_ > 1) remark(fmt::format("{} more lines with outlets are not drawn.", left_out_));
    if (!shut_.empty()) remark(shut_in_words());
    tell_lines_without_outlets();
    return svg_.take(title(), page_width, y_);
  }

 private:
  /// Nothing can be seen of them.
  void find_shut() {
    for (const LineSolution& line : after_.lines())
      if (line.shut && !line.state.empty()) shut_.push_back(line.name);
  }

  std::string shut_in_words() const {
    const std::size_t told = std::min(most_shut_told, shut_.size());
    const std::vector<std::string> names(
        shut_.begin(), std::next(shut_.begin(), static_cast<std::ptrdiff_t>(told)));
    return fmt::format("Shut, and not drawn: {}{}.",
                       fmt::join(names, ", "),
                       shut_.size() > told ? fmt::format(" and {} more", shut_.size() - told) : "");
  }

  /// They are not drawn.
  void tell_lines_without_outlets() {
    std::size_t told = 0;
    for (std::size_t i = 0; i < after_.lines().size() && told < most_others_told; ++i) {
      if (!after_.lines()[i].state.empty() || !courses_.has_more_than_one_way(i)) continue;
      remark(fmt::format("{}: {}", after_.lines()[i].name, courses_.of(i)));
      ++told;
    }
  }

  /// Those with outlets that are open, the failing ones before the others if there are too many; in
  /// order.
  std::vector<std::size_t> chosen_lines() {
    std::vector<std::size_t> failing;
    std::vector<std::size_t> serving;
    for (std::size_t i = 0; i < after_.lines().size(); ++i) {
      if (after_.lines()[i].state.empty() || after_.lines()[i].shut) continue;
      const std::vector<Doing> all = doings(after_, i);
      const bool serves =
          std::all_of(all.begin(), all.end(), [](Doing what) { return what == Doing::serves; });
      (serves ? serving : failing).push_back(i);
    }
    std::vector<std::size_t> lines = failing;
    lines.insert(lines.end(), serving.begin(), serving.end());
    left_out_ = lines.size() - std::min(most_panels, lines.size());
    lines.resize(lines.size() - left_out_);
    std::sort(lines.begin(), lines.end());
    return lines;
  }

  std::string title() const {
    const std::string& site = after_.layout().site().name;
    return site.empty() ? "Pressure along the lines" : site;
  }

  void heading() {
    svg_.text({page_margin, y_}, title(), {.size = 16, .bold = true});
    y_ += 1.3 * row_height;
    remark("Pressure at every outlet. Supply: " +
           does(after_.supply(), before_ ? &before_->supply() : nullptr));
    const std::vector<OperatingPoint>& further = after_.further_supplies();
    for (std::size_t i = 0; i < std::min(most_others_told, further.size()); ++i)
      remark(fmt::format(
          "Supply {}: {}",
          after_.layout().further_supplies()[i].name,
          does(further[i],
               before_ && i < before_->further_supplies().size() ? &before_->further_supplies()[i]
                                                                 : nullptr)));
    if (const auto reading = after_.supply().gauge_reading) {
      const auto then = before_ ? before_->supply().gauge_reading : std::nullopt;
      remark(fmt::format("The gauge shows {}{}.",
                         figures_.pressure_with_unit(*reading),
                         then ? " instead of " + figures_.pressure_with_unit(*then) : ""));
    }
    if (!after_.layout().running_sets().empty())
      remark(fmt::format("Watering {}.", fmt::join(after_.layout().running_sets(), ", ")));
    const std::vector<Fault>& faults = after_.layout().faults();
    for (std::size_t i = 0; i < std::min(most_faults_told, faults.size()); ++i)
      remark(describe(faults[i], after_.layout(), figures_.system()) + ".");
    if (faults.size() > most_faults_told)
      remark(fmt::format("And {} more faults.", faults.size() - most_faults_told));
  }

  /// "26.0 psi, gives 5.0 gal/min instead of 3.0 gal/min."
  std::string does(const OperatingPoint& now, const OperatingPoint* before) const {
    const Giving is = giving(now.flow, figures_);
    const std::string text = now.held_shut
                                 ? held_shut_in_words(now, figures_)
                                 : figures_.pressure_with_unit(now.pressure) + ", " + is.in_words();
    if (!before) return text + '.';
    const Giving was = giving(before->flow, figures_);
    if (now.held_shut)
      return fmt::format(
          "{}; before, it {} {}.", text, was.takes_in ? "took in" : "gave", was.amount);
    const char* turned = was.takes_in == is.takes_in ? "" : was.takes_in ? "taking in " : "giving ";
    return fmt::format("{} instead of {}{}.", text, turned, was.amount);
  }

  void remark(const std::string& sentence) {
    y_ = svg_.paragraph({page_margin, y_}, sentence, {.colour = grey}).y;
  }

  /// What the marks and the curves mean; only those that occur.
  void legend() {
    y_ += 6;
    double x = page_margin + mark_radius;
    const auto entry = [&](double sample, const std::string& words) {
      svg_.text({x + sample, y_ + 4}, words);
      x += sample + width_of(words, 12) + 18;
    };
    for (const Doing what : all_doings) {
      if (std::none_of(
              panels_.begin(), panels_.end(), [&](const Panel& it) { return it.has(what); }))
        continue;
      draw_mark(svg_, what, {x, y_}, "");
      entry(11, label_of(what));
    }
    if (before_) {
      svg_.line({x, y_}, {x + 34, y_}, curve_stroke);
      entry(40, "after");
      svg_.line({x, y_}, {x + 34, y_}, curve_stroke_before);
      draw_mark_before(svg_, {x + 17, y_});
      entry(40, "before");
    }
    y_ += row_height;
  }

  const Solution* before_;
  const Solution& after_;
  Figures figures_;
  OutletKinds kinds_;
  CourseWords courses_;
  std::vector<Panel> panels_;
  std::size_t left_out_ = 0;
  std::vector<std::string> shut_;  ///< names of lines with outlets
  Svg svg_;
  double y_ = page_margin + 12;  ///< down to which the page is filled
};

}  // namespace

std::string to_svg(const Solution& solution, const DrawingOptions& options) {
  return Drawing(nullptr, solution, options).write();
}

std::string to_svg(const Solution& before, const Solution& after, const DrawingOptions& options) {
  compare(before, after);  // refuses two that do not match
  return Drawing(&before, after, options).write();
}

}  // namespace hydro
