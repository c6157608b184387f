#include "hydro/text/breaks_drawing.hpp"

#include "hydro/text/axis.hpp"
#include "hydro/text/breaks_words.hpp"
#include "hydro/text/doings.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/finite.hpp"
#include "hydro/text/marks.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/panel.hpp"
#include "hydro/text/svg.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr std::size_t most_columns = 40;
constexpr std::size_t most_panels = 24;
constexpr std::size_t most_told = 12;
constexpr double small = 10;  ///< letters [px]

/// A run of outlets of one line.
struct Group {
  std::string line;
  std::size_t first;  ///< index of what it is a run of
  std::size_t end;
};

template <class Places>
std::vector<Group> groups_of(const Places& places) {
  std::vector<Group> groups;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (groups.empty() || groups.back().line != places[i].line)
      groups.push_back({places[i].line, i, i});
    groups.back().end = i + 1;
  }
  return groups;
}

/// One that works has a small disc, so that the others stand out among many.
void draw_cell(Svg& svg, Doing what, const Point& at, const std::string& tip) {
  constexpr const char* small_disc = "m-1.8 0a1.8 1.8 0 1 0 3.6 0a1.8 1.8 0 1 0 -3.6 0z";
  if (what == Doing::serves)
    svg.shape(at, small_disc, hue, {hue, 0.4}, name_of(what), "");
  else
    draw_mark(svg, what, at, tip);
}

/// A row for each break, a column for each outlet that has water.
class Square {
 public:
  Square(const Breaks& breaks, const Figures& figures) : all_(breaks), figures_(figures) {
    const Layout& layout = all_.before.layout();
    std::size_t index = 0;
    for (std::size_t l = 0; l < layout.lines().size(); ++l)
      for (int outlet = 1; outlet <= layout.lines()[l].outlet_count(); ++outlet, ++index) {
        if (layout.is_shut(l)) continue;
        columns_.push_back(index);
        places_.push_back(all_.outlets[index]);
        has_water_.push_back(layout.outlet_has_water(l, outlet));
      }
    across_ = groups_of(places_);
    down_ = groups_of(all_.breaks);
    if (!is_drawn()) return;
    for (const Group& group : down_)
      names_ = std::max(names_, width_of(cut(group.line, widest_name), small));
    const double room = page_width - 2 * page_margin - names_ - numbers - figures_width -
                        group_gap * static_cast<double>(across_.size());
    cell_ = std::min(18.0, room / static_cast<double>(columns_.size()));
    for (std::size_t row = 0; row <= all_.breaks.size(); ++row)
      for (std::size_t column = 0; column < columns_.size(); ++column)
        occurring_.insert(doing(row, column));
  }

  /// Whether it fits on the page.
  bool is_drawn() const {
    return !columns_.empty() && columns_.size() <= most_columns && !all_.breaks.empty() &&
           !all_.conditions.empty();
  }
  const std::set<Doing>& occurring() const { return occurring_; }

  /// Draws it below `top` and says where it ends [px].
  double draw(Svg& svg, double top) const {
    double y = top + 2.6 * row_height;
    column_heads(svg, y);
    row_of_marks(svg, y, 0);
    svg.text({left() - 6, y + 4}, "before", {.anchor = "end", .colour = grey, .size = small});
    for (const Group& group : down_) {
      y += group_gap;
      svg.text({page_margin, y + cell_ + 4}, cut(group.line, widest_name), {.size = small});
      for (std::size_t i = group.first; i < group.end; ++i) {
        y += cell_;
        svg.text({left() - 6, y + 4},
                 fmt::format("{}", all_.breaks[i].outlet),
                 {.anchor = "end", .size = small});
        row_of_marks(svg, y, i + 1);
        row_of_figures(svg, y, all_.breaks[i]);
      }
    }
    return y + cell_;
  }

 private:
  static constexpr double numbers = 42;  ///< of outlets, and the word "before" [px]
  static constexpr double figures_width = 150;
  static constexpr double group_gap = 8;
  static constexpr std::size_t widest_name = 16;

  double left() const { return page_margin + names_ + numbers; }
  double x(std::size_t column) const {
    const auto group = static_cast<std::size_t>(
        std::ranges::find_if(across_, [&](const Group& it) { return column < it.end; }) -
        across_.begin());
    return left() + cell_ * (static_cast<double>(column) + 0.5) +
           group_gap * static_cast<double>(group);
  }
  double end() const { return x(columns_.size() - 1) + cell_ / 2; }

  /// @param row 0 before any break, 1 the first of them
  Doing doing(std::size_t row, std::size_t column) const {
    const std::size_t outlet = columns_[column];
    switch (row == 0 ? all_.conditions_before[outlet]
                     : all_.conditions[(row - 1) * all_.outlets.size() + outlet]) {
      case OutletCondition::below_rated:
        return Doing::below_rated;
      case OutletCondition::below_minimum:
        return Doing::below_minimum;
      case OutletCondition::above_maximum:
        return Doing::above_maximum;
      case OutletCondition::dry:
        return has_water_[column] ? Doing::dry : Doing::without_water;
      case OutletCondition::closed:
        return Doing::capped;
      case OutletCondition::broken:
        return Doing::broken;
      case OutletCondition::works:
        break;
    }
    return Doing::serves;
  }

  void column_heads(Svg& svg, double y) const {
    const double above = y - cell_ / 2;
    for (const Group& group : across_) {
      const double from = x(group.first) - cell_ / 2 + 1;
      const double to = x(group.end - 1) + cell_ / 2 - 1;
      const auto letters =
          std::max<std::size_t>(4, static_cast<std::size_t>((to - from) / (0.6 * small)));
      svg.line({from, above - 16}, {to, above - 16}, {grey, 1});
      svg.text({(from + to) / 2, above - 20},
               cut(group.line, letters),
               {.anchor = "middle", .size = small});
      for (std::size_t i = group.first; i < group.end; ++i)
        if (cell_ > 14 || places_[i].outlet % 2 == 1)
          svg.text({x(i), above - 4},
                   fmt::format("{}", places_[i].outlet),
                   {.anchor = "middle", .size = small});
    }
    svg.text({page_margin, above - 20}, "it happens", {.colour = grey, .size = small});
    svg.text({page_margin, above - 4}, "at outlet", {.colour = grey, .size = small});
    const Font head{.anchor = "end", .colour = grey, .size = small};
    svg.text({end() + 70, above - 20}, "others that", head);
    svg.text({end() + 70, above - 4}, "stop working", head);
    if (escapes()) {
      svg.text({end() + 140, above - 20}, "more escapes,", head);
      svg.text({end() + 140, above - 4}, figures_.units().flow.symbol, head);
    }
  }

  void row_of_marks(Svg& svg, double y, std::size_t row) const {
    for (std::size_t column = 0; column < columns_.size(); ++column) {
      const bool is_own = row > 0 && places_[column].line == all_.breaks[row - 1].line &&
                          places_[column].outlet == all_.breaks[row - 1].outlet;
      const Doing what = doing(row, column);
      const Point at{x(column), y};
      if (is_own) svg.shape(at, "m-6 -6h12v12h-12z", pale, {pale, 1}, "here", "");
      if (what == Doing::serves)
        svg.shape(
            at, "m-1.8 0a1.8 1.8 0 1 0 3.6 0a1.8 1.8 0 1 0 -3.6 0z", hue, {hue, 0.4}, "works", "");
      else
        draw_mark(svg, what, at, tip(row, column, what));
    }
  }

  std::string tip(std::size_t row, std::size_t column, Doing what) const {
    const OutletNumber& it = places_[column];
    std::string text = fmt::format("{}, outlet {}: {}", it.line, it.outlet, label_of(what));
    if (row > 0)
      text += fmt::format(
          " (it happens at {}, outlet {})", all_.breaks[row - 1].line, all_.breaks[row - 1].outlet);
    return text;
  }

  void row_of_figures(Svg& svg, double y, const Break& it) const {
    const Font figure{.anchor = "end", .size = small};
    svg.text({end() + 70, y + 4}, fmt::format("{}", it.more_out_of_work), figure);
    if (escapes())
      svg.text({end() + 140, y + 4},
               fmt::format("{:.1f}", std::max(0.0, it.escaping / figures_.units().flow)),
               figure);
  }

  bool escapes() const {
    return std::ranges::any_of(
        all_.breaks, [&](const Break& it) { return !figures_.rounds_to_nothing(it.escaping); });
  }

  const Breaks& all_;
  const Figures& figures_;
  std::vector<std::size_t> columns_;  ///< index of each into all outlets
  std::vector<OutletNumber> places_;  ///< of each column
  std::vector<bool> has_water_;       ///< likewise
  std::vector<Group> across_;         ///< of columns
  std::vector<Group> down_;           ///< of breaks
  double names_ = 0;                  ///< width of the names at its left [px]
  double cell_ = 0;
  std::set<Doing> occurring_;
};

/// How many others fall short over the outlet at which it happens, for each line.
class Curves {
 public:
  explicit Curves(const Breaks& breaks) : all_(breaks), lines_(groups_of(breaks.breaks)) {
    int highest = 5;  // so that the numbers at the axis are whole
    for (const Break& it : all_.breaks) highest = std::max(highest, it.more_below_rated);
    highest_ = highest;
    choose();
  }

  /// Lines that are drawn; those that could be too; and those whose breaks no other outlet feels.
  std::size_t drawn() const { return lines_.size(); }
  std::size_t left_out() const { return left_out_; }
  const std::vector<std::string>& harmless() const { return harmless_; }

  double draw(Svg& svg, double top) const {
    double y = top;
    for (const Group& line : lines_) y = panel(svg, y, line);
    return y;
  }

  void legend(Svg& svg, double y) const {
    if (lines_.empty()) return;
    const double x = page_margin;
    svg.line({x, y}, {x + 34, y}, curve_stroke);
    svg.text({x + 40, y + 4}, "others that do not work any more");
    svg.line({x + 270, y}, {x + 304, y}, curve_stroke_before);
    svg.text({x + 310, y + 4}, "others that fall under the rated pressure");
  }

 private:
  static constexpr double left = page_margin + 52;
  static constexpr double right = page_width - page_margin - 90;
  static constexpr double height = 90;

  int worst(const Group& line) const {
    int most = 0;
    for (std::size_t i = line.first; i < line.end; ++i)
      most = std::max(most, all_.breaks[i].more_out_of_work);
    return most;
  }

  bool is_harmless(const Group& line) const {
    for (std::size_t i = line.first; i < line.end; ++i)
      if (all_.breaks[i].more_out_of_work > 0 || all_.breaks[i].more_below_rated > 0) return false;
    return true;
  }

  /// Those that do most harm, in order.
  void choose() {
    std::vector<Group> harmful;
    for (Group& line : lines_) {
      if (is_harmless(line))
        harmless_.push_back(line.line);
      else
        harmful.push_back(std::move(line));
    }
    lines_ = std::move(harmful);
    if (lines_.size() <= most_panels) return;
    left_out_ = lines_.size() - most_panels;
    std::ranges::stable_sort(lines_, std::greater{}, [&](const Group& it) { return worst(it); });
    lines_.resize(most_panels);
    std::ranges::sort(lines_, {}, &Group::first);
  }

  double panel(Svg& svg, double top, const Group& line) const {
    const double ceiling = top + 1.8 * row_height;
    const double floor = ceiling + height;
    const Axis number = Axis::up_to(highest_, floor, ceiling);
    const int last = all_.breaks[line.end - 1].outlet;
    const Axis outlet(std::max(5, last), left, right);
    svg.text({page_margin, top + row_height}, heading(line), {.bold = true});
    const std::vector<double> numbers = number.ticks();
    for (std::size_t i = 0; i<numbers.size(); i += numbers.size()> 6 ? 2 : 1) {
      const double tick = numbers[i];
      if (tick != std::round(tick)) continue;
      svg.line({left, number.at(tick)}, {right, number.at(tick)}, {pale, 1});
      svg.text({left - 6, number.at(tick) + 4}, tick_label(tick), {.anchor = "end", .size = small});
    }
    for (const double tick : outlet.ticks()) {
      if (tick != std::round(tick)) continue;
      svg.line({outlet.at(tick), floor}, {outlet.at(tick), floor + 4}, {ink, 1});
      svg.text({outlet.at(tick), floor + row_height},
               tick_label(tick),
               {.anchor = "middle", .size = small});
    }
    svg.line({left, floor}, {right, floor}, {ink, 1});
    svg.text({right + 8, floor + row_height}, "outlet", {.size = small});
    curve(svg, line, outlet, number, &Break::more_below_rated, curve_stroke_before);
    curve(svg, line, outlet, number, &Break::more_out_of_work, curve_stroke);
    return floor + 1.6 * row_height;
  }

  std::string heading(const Group& line) const {
    const auto begin = all_.breaks.begin() + static_cast<std::ptrdiff_t>(line.first);
    const auto end = all_.breaks.begin() + static_cast<std::ptrdiff_t>(line.end);
    const bool some_stop = worst(line) > 0;
    const auto more = some_stop ? &Break::more_out_of_work : &Break::more_below_rated;
    const Break& most = *std::ranges::max_element(begin, end, {}, more);
    const bool one = most.*more == 1;
    return fmt::format("{}: at most {} other{} {}{} {}, when it happens at outlet {}",
                       line.line,
                       most.*more,
                       one ? "" : "s",
                       some_stop ? "stop" : "fall",
                       one ? "s" : "",
                       some_stop ? "working" : "under the rated pressure",
                       most.outlet);
  }

  void curve(Svg& svg,
             const Group& line,
             const Axis& outlet,
             const Axis& number,
             int Break::*more,
             const Stroke& stroke) const {
    std::vector<Point> points;
    for (std::size_t i = line.first; i < line.end; ++i)
      points.push_back({outlet.at(all_.breaks[i].outlet), number.at(all_.breaks[i].*more)});
    if (points.size() == 1) points.push_back({points[0].x + 3, points[0].y});
    svg.polyline(thinned(points), stroke);
  }

  const Breaks& all_;
  std::vector<Group> lines_;
  std::vector<std::string> harmless_;
  double highest_ = 0;
  std::size_t left_out_ = 0;
};

class BreaksDrawing {
 public:
  BreaksDrawing(const Breaks& breaks, const Figures& figures)
      : all_(breaks), figures_(figures), square_(breaks, figures), curves_(breaks) {
    for (const Break& it : all_.breaks)
      for (const double number : {si(it.escaping), si(it.gauge_reading)})
        require_finite(number, [&] {
          return fmt::format("break of line {}, outlet {}", in_quotes(it.line), it.outlet);
        });
  }

  std::string write() {
    heading();
    if (square_.is_drawn()) {
      remark(
          "Each row of marks is one outlet at which it happens, and says what all of them then "
          "do.");
      legend();
      y_ = square_.draw(svg_, y_);
    } else {
      draw_curves();
    }
    y_ += row_height;
    if (!all_.not_solved.empty())
      remark(fmt::format("Not solved, and not drawn: {} of them.", all_.not_solved.size()));
    tell_skipped();
    return svg_.take(title(), page_width, y_);
  }

 private:
  std::string title() const {
    const std::string& site = all_.before.layout().site().name;
    return site.empty() ? "Every outlet in turn" : site;
  }

  void heading() {
    svg_.text({page_margin, y_}, title(), {.size = 16, .bold = true});
    y_ += 1.3 * row_height;
    const auto& sets = all_.before.layout().running_sets();
    if (!sets.empty()) remark(fmt::format("Watering {}.", fmt::join(sets, ", ")));
    for (const std::string& what : breaks_in_words(all_, figures_))
      remark("At every outlet in turn: " + what + ".");
    for (const std::string& sentence : outcome_in_words(all_, figures_)) remark(sentence);
  }

  void remark(const std::string& sentence) {
    y_ = svg_.paragraph({page_margin, y_}, sentence, {.colour = grey}).y;
  }

  void draw_curves() {
    if (curves_.drawn() > 0) {
      curves_.legend(svg_, y_ + 6);
      y_ = curves_.draw(svg_, y_ + row_height);
    }
    y_ += row_height / 2;
    if (curves_.left_out() > 0)
      remark(fmt::format("{} more line{} not drawn.",
                         curves_.left_out(),
                         curves_.left_out() == 1 ? " is" : "s are"));
    if (!curves_.harmless().empty())
      remark("No other outlet falls short when it happens on " + some_of(curves_.harmless()) + ".");
  }

  static std::string some_of(const std::vector<std::string>& names) {
    const std::size_t told = std::min(most_told, names.size());
    return fmt::format(
        "{}{}",
        fmt::join(names.begin(), names.begin() + static_cast<std::ptrdiff_t>(told), ", "),
        names.size() > told ? fmt::format(" and {} more", names.size() - told) : "");
  }

  void tell_skipped() {
    std::map<std::string, int> reasons;
    for (const LeftOut& it : all_.skipped) ++reasons[it.why];
    std::size_t told = 0;
    for (const auto& [why, outlets] : reasons) {
      if (told++ == most_told) return;
      remark(fmt::format("Not tried at {} outlet{}: {}.", outlets, outlets == 1 ? "" : "s", why));
    }
  }

  /// What the marks mean; only those that occur.
  void legend() {
    y_ += 6;
    double x = page_margin + mark_radius;
    for (const Doing what : all_doings) {
      if (!square_.occurring().contains(what)) continue;
      draw_cell(svg_, what, {x, y_}, "");
      svg_.text({x + 11, y_ + 4}, label_of(what));
      x += 11 + width_of(label_of(what), 12) + 18;
    }
    y_ += row_height / 2;
  }

  const Breaks& all_;
  const Figures& figures_;
  Square square_;
  Curves curves_;
  Svg svg_;
  double y_ = page_margin + 12;  ///< down to which the page is filled
};

}  // namespace

std::string to_svg(const Breaks& breaks, const DrawingOptions& options) {
  const Figures figures(options.units.value_or(breaks.before.layout().units()));
  return BreaksDrawing(breaks, figures).write();
}

}  // namespace hydro
