#include "hydro/text/panel.hpp"

#include "hydro/text/finite.hpp"
#include "hydro/text/marks.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr double left = 62;             ///< of the plot [px]
constexpr double right = 664;           ///< what the limits are called stands beyond
constexpr double height = 170;          ///< of the plot
constexpr double gap = 8;               ///< between the plot and the texts around it
constexpr double small = 10;            ///< font
constexpr std::size_t most_kinds = 3;   ///< whose limits are drawn
constexpr std::size_t most_marks = 50;  ///< on one line
constexpr double row_of_course = 18;    ///< over the plot: which way the water runs
constexpr double between_heads = 56;    ///< of its arrows
constexpr double stretch = 12;          ///< of outlets that has one mark, where there are more

void require_finite_series(const LineSolution& line) {
  for (std::size_t i = 0; i < line.state.size(); ++i)
    for (const double number : {si(line.distance[i]), si(line.pressure[i])})
      require_finite(
          number, [&] { return fmt::format("line {}: outlet {}", in_quotes(line.name), i + 1); });
}

/// Short texts in one row, each where it belongs; one that would touch another is left out.
class RowOfTexts {
 public:
  RowOfTexts(Svg& svg, double y) : svg_(svg), y_(y) {}

  void add(double x, const std::string& words) {
    const double half = width_of(words, small) / 2 + 3;
    const double middle = std::clamp(x, left + half, std::max(left + half, right - half));
    const auto touches = [&](const std::pair<double, double>& other) {
      return std::abs(other.first - middle) < other.second + half;
    };
    if (std::any_of(taken_.begin(), taken_.end(), touches)) return;
    taken_.emplace_back(middle, half);
    svg_.text({middle, y_}, words, {.anchor = "middle", .colour = grey, .size = small});
  }

 private:
  Svg& svg_;
  double y_;
  std::vector<std::pair<double, double>> taken_;  ///< middles and halves of widths
};

/// "8 work, 2 dry".
std::string counts_in_words(const std::vector<Doing>& outlets) {
  std::string words;
  for (const Doing what : all_doings)
    if (const auto number = std::count(outlets.begin(), outlets.end(), what); number > 0)
      words += fmt::format("{}{} {}",
                           words.empty() ? "" : ", ",
                           number,
                           what == Doing::serves && number > 1 ? "work" : label_of(what));
  return words;
}

/// "7 broken", "20 to 24 dry"; numbers from 1 on.
std::string run_in_words(std::size_t first, std::size_t last, Doing what) {
  return first == last ? fmt::format("{} {}", first, label_of(what))
                       : fmt::format("{} to {} {}", first, last, label_of(what));
}

const LineSolution* open_line(const Solution* solution, std::size_t line) {
  return solution && !solution->lines()[line].shut ? &solution->lines()[line] : nullptr;
}

/// The last one on the way to the line: "Regulator at its inlet: holds 25 psi."
std::string regulator_in_words(const Solution& solution, std::size_t line, const Figures& figures) {
  const Layout& layout = solution.layout();
  std::optional<std::size_t> at = line;
  while (at && !solution.lines()[*at].regulator) at = layout.feeder_of(*at);
  if (!at) return {};
  const std::string set_to = figures.limit(layout.lines()[*at].regulator.value_or(Pressure{}));
  const auto does = [&] {
    switch (solution.lines()[*at].regulator->state) {
      case RegulatorState::holding:
        return "holds " + set_to;
      case RegulatorState::open:
        return fmt::format("is open, since less comes than its {}", set_to);
      case RegulatorState::shut:
        return std::string("is shut by the pressure beyond it");
      case RegulatorState::stuck_open:
        break;
    }
    return fmt::format("is stuck open and does not hold its {}", set_to);
  };
  return *at == line ? fmt::format("The regulator at its inlet {}.", does())
                     : fmt::format("The regulator of {} {}.", layout.lines()[*at].name, does());
}

}  // namespace

struct Panel::Plot {
  Axis distance;
  Axis pressure;
  UnitSet shown;

  double x(const Length& it) const { return distance.at(it / shown.length); }
  double y(const Pressure& it) const { return pressure.at(it / shown.pressure); }
  double floor() const { return pressure.at(0); }
};

Panel::Panel(const Solution* before,
             const Solution& after,
             const OutletKinds& kinds,
             const CourseWords& courses,
             const Figures& figures,
             std::size_t line_index)
    : before_(open_line(before, line_index)),
      was_shut_(before && !before_),
      after_(after.lines()[line_index]),
      figures_(figures),
      doing_(doings(after, line_index)),
      doing_before_(before_ ? doings(*before, line_index) : std::vector<Doing>()),
      regulator_(regulator_in_words(after, line_index, figures)) {
  require_finite_series(after_);
  if (before_) require_finite_series(*before_);
  for (const Opening& opening : after_.openings)
    openings_.push_back(kind_of(after.layout().faults_on(line_index)[opening.fault]));
  if (courses.has_more_than_one_way(line_index)) {
    course_ = courses.courses().of(line_index);
    course_in_words_ = courses.of(line_index);
    course_in_words_[0] =
        static_cast<char>(std::toupper(static_cast<unsigned char>(course_in_words_[0])));
  }
  std::set<std::size_t> known;
  for (const std::size_t kind : kinds.on_line(line_index))
    if (known.insert(kind).second) kinds_.push_back(kinds.all()[kind]);
}

bool Panel::has(Doing what) const {
  return std::find(doing_.begin(), doing_.end(), what) != doing_.end();
}

double Panel::draw(Svg& svg, double top) const {
  const Font remark{.colour = grey};
  svg.text({page_margin, top + row_height}, after_.name, {.size = 13, .bold = true});
  Point next{page_margin, top + 2 * row_height};
  next = svg.paragraph(next, summary(), remark);
  next = svg.paragraph(next, kinds_in_words(), remark);
  if (!regulator_.empty()) next = svg.paragraph(next, regulator_, remark);
  if (course_) next = svg.paragraph(next, course_in_words_, remark);
  const Plot plot = plot_below(next.y + gap);
  draw_axes(svg, plot);
  draw_numbers(svg, plot);
  if (course_) draw_course(svg, plot);
  draw_limits(svg, plot);
  if (before_) draw_curve(svg, plot, *before_, curve_stroke_before);
  draw_curve(svg, plot, after_, curve_stroke);
  draw_marks(svg, plot);
  draw_regulator(svg, plot);
  return plot.floor() + 2 * row_height;
}

// ---- in words

std::string Panel::summary() const {
  const std::string now = counts_in_words(doing_);
  std::string words =
      fmt::format("{} outlet{}: {}", doing_.size(), doing_.size() == 1 ? "" : "s", now);
  if (before_) {
    const std::string then = counts_in_words(doing_before_);
    words += then == now ? ", as before" : "; before: " + then;
  }
  if (was_shut_) words += "; before: shut";
  return words + (doing_.size() > most_marks ? ". The worst of each stretch is marked." : ".");
}

std::string Panel::kinds_in_words() const {
  std::string words;
  for (std::size_t i = 0; i < std::min(most_kinds, kinds_.size()); ++i) {
    const OutletKind& kind = kinds_[i];
    const Unit<Flow>& unit = figures_.flow_unit(kind.rated_flow);
    words += fmt::format("{}{}{}rated {:.3g} {} at {}",
                         words.empty() ? "" : "; ",
                         kind.outlet->name,
                         kind.outlet->name.empty() ? "" : ": ",
                         kind.rated_flow / unit,
                         unit.symbol,
                         figures_.limit(kind.outlet->rated_pressure()));
  }
  if (kinds_.size() > most_kinds)
    words +=
        fmt::format("; and {} more kinds, whose limits are not drawn", kinds_.size() - most_kinds);
  return words + '.';
}

std::string Panel::tip(std::size_t outlet) const {
  return fmt::format(
      "outlet {}: {}, {}{}",
      outlet + 1,
      label_of(doing_[outlet]),
      figures_.pressure_with_unit(after_.pressure[outlet]),
      before_ ? " instead of " + figures_.pressure_with_unit(before_->pressure[outlet]) : "");
}

// ---- scales

Panel::Plot Panel::plot_below(double top) const {
  const UnitSet& shown = figures_.units();
  Length farthest = after_.distance.back();
  for (const Opening& opening : after_.openings) farthest = std::max(farthest, opening.distance);
  if (course_ && !course_->stretches.empty())
    farthest = std::max(farthest, course_->stretches.back().end);
  const double end = farthest / shown.length;
  const double floor = top + row_height + height + (course_ ? row_of_course : 0);
  return {Axis(end > 0 ? 1.03 * end : 1, left, right),
          Axis::up_to(highest() / shown.pressure, floor, floor - height),
          shown};
}

/// Of the pressures and of the limits; of the maximum if it is near.
Pressure Panel::highest() const {
  Pressure top{};
  for (const LineSolution* line : {before_, &after_})
    if (line)
      for (const Pressure pressure : line->pressure) top = std::max(top, pressure);
  for (const OutletKind& kind : kinds_)
    top = std::max({top, kind.outlet->rated_pressure(), kind.outlet->minimum.value_or(Pressure{})});
  if (after_.regulator) top = std::max(top, after_.regulator->pressure);
  const Pressure near = 1.25 * top;
  for (const OutletKind& kind : kinds_)
    if (kind.outlet->maximum && *kind.outlet->maximum <= near)
      top = std::max(top, *kind.outlet->maximum);
  return top;
}

std::vector<std::size_t> Panel::marked(const Plot& plot) const {
  std::vector<std::size_t> chosen;
  double last_stretch = -1;
  for (std::size_t i = 0; i < doing_.size(); ++i) {
    const double here = std::floor(plot.x(after_.distance[i]) / stretch);
    if (doing_.size() <= most_marks || here != last_stretch)
      chosen.push_back(i);
    else if (doing_[i] < doing_[chosen.back()])
      chosen.back() = i;
    last_stretch = here;
  }
  return chosen;
}

// ---- on paper

void Panel::draw_axes(Svg& svg, const Plot& plot) const {
  const Font number{.anchor = "middle"};
  for (const double tick : plot.pressure.ticks()) {
    const double y = plot.pressure.at(tick);
    svg.line({left, y}, {right, y}, {pale, 1});
    svg.text({left - gap, y + 4}, tick_label(tick), {.anchor = "end"});
  }
  for (const double tick : plot.distance.ticks()) {
    const double x = plot.distance.at(tick);
    svg.line({x, plot.floor()}, {x, plot.floor() + 4}, {ink, 1});
    svg.text({x, plot.floor() + row_height}, tick_label(tick), number);
  }
  svg.line({left, plot.floor()}, {right, plot.floor()}, {ink, 1});
  svg.line({left, plot.floor()}, {left, plot.floor() - height}, {ink, 1});
  svg.text({page_margin + gap, plot.floor() - height / 2},
           fmt::format("pressure, {}", plot.shown.pressure.symbol),
           {.anchor = "middle", .upright = false});
  svg.text({right + 3 * gap, plot.floor() + row_height},
           fmt::format("{} from the inlet", plot.shown.length.symbol));
}

/// Over the plot: the outlets that let out nothing or everything are named, others counted.
void Panel::draw_numbers(Svg& svg, const Plot& plot) const {
  const double y = plot.floor() - height - 1.5 * gap - (course_ ? row_of_course : 0);
  svg.text({left - gap, y}, "outlet", {.anchor = "end", .colour = grey, .size = small});
  RowOfTexts row(svg, y);
  for (std::size_t i = 0; i < after_.openings.size(); ++i) {
    const double x = plot.x(after_.openings[i].distance);
    svg.line({x, plot.floor()}, {x, plot.floor() - height}, {hue, 1.6, "2 4"});
    row.add(x, openings_[i]);
  }
  for (std::size_t first = 0; first < doing_.size();) {
    const Doing what = doing_[first];
    std::size_t last = first;
    while (last + 1 < doing_.size() && doing_[last + 1] == what) ++last;
    if (what == Doing::broken || what == Doing::dry || what == Doing::capped ||
        what == Doing::without_water)
      row.add((plot.x(after_.distance[first]) + plot.x(after_.distance[last])) / 2,
              run_in_words(first + 1, last + 1, what));
    first = last + 1;
  }
  const auto step =
      static_cast<std::size_t>(std::max(1.0, round_step(static_cast<double>(doing_.size()) / 20)));
  row.add(plot.x(after_.distance.front()), "1");
  for (std::size_t number = step; number <= doing_.size(); number += step)
    row.add(plot.x(after_.distance[number - 1]), fmt::format("{}", number));
}

/// Over the plot: arrows that run as the water does, and two that point at each other where waters
/// meet.
void Panel::draw_course(Svg& svg, const Plot& plot) const {
  const double y = plot.floor() - height - 1.5 * gap;
  svg.text({left - gap, y + 3}, "water", {.anchor = "end", .colour = grey, .size = small});
  for (const WaterCourse::Stretch& part : course_->stretches)
    if (part.flow != Flow{}) svg.line({plot.x(part.start), y}, {plot.x(part.end), y}, {hue, 1});
  std::vector<std::pair<double, double>> taken;  // by words, from and to
  for (const WaterCourse::Meeting& where : course_->meetings) {
    const double x = (plot.x(where.start) + plot.x(where.end)) / 2;
    const double width = width_of("waters meet", small) + 8;
    const double from = x + 14 + width < right ? x + 14 : x - 14 - width;
    svg.line({x, y - 6}, {x, plot.floor()}, {grey, 1, "2 3"});
    svg.shape({x - 3, y}, "m0 0l-9 -4.5v9z", hue, {hue, 1}, "meet", "");
    svg.shape({x + 3, y}, "m0 0l9 -4.5v9z", hue, {hue, 1}, "meet", "");
    svg.shape({from, y},
              fmt::format("m0 -6h{:.0f}v12h-{:.0f}z", width, width),
              "#ffffff",
              {"#ffffff", 1},
              "",
              "");
    svg.text({from + width / 2, y + 3}, "waters meet", {.anchor = "middle", .size = small});
    taken.emplace_back(std::min(x - 14, from) - mark_radius,
                       std::max(x + 14, from + width) + mark_radius);
  }
  for (const WaterCourse::Stretch& part : course_->stretches)
    for (int i = 0; left + (i + 0.5) * between_heads < plot.x(part.end); ++i) {
      const double x = left + (i + 0.5) * between_heads;
      const bool is_free = std::ranges::none_of(
          taken, [&](const auto& it) { return x > it.first && x < it.second; });
      if (x < plot.x(part.start) || !is_free || part.flow == Flow{}) continue;
      const bool outward = part.flow > Flow{};
      svg.shape({x, y},
                outward ? "m5 0l-9 -4.5v9z" : "m-5 0l9 -4.5v9z",
                "#ffffff",
                {hue, 1.2},
                outward ? "outward" : "inward",
                "");
    }
}

/// The pressures that the outlets ask for, each called by its name at the right.
void Panel::draw_limits(Svg& svg, const Plot& plot) const {
  std::set<std::pair<double, std::string>> names;  // from the top of the page down
  const auto limit = [&](const Pressure& pressure, const char* word, const char* dashes) {
    const double y = plot.y(pressure);
    if (!names.emplace(y, fmt::format("{} {}", word, figures_.limit(pressure))).second) return;
    svg.line({left, y}, {right, y}, {grey, 1, dashes});
  };
  for (std::size_t i = 0; i < std::min(most_kinds, kinds_.size()); ++i) {
    const Outlet& kind = *kinds_[i].outlet;
    limit(kind.rated_pressure(), "rated", "");
    if (kind.minimum) limit(*kind.minimum, "minimum", "9 3 2 3");
    if (kind.maximum && plot.y(*kind.maximum) >= plot.floor() - height)
      limit(*kind.maximum, "maximum", "1 3");
  }
  double lowest = plot.floor() - 4;  // what the distances mean stands below
  for (auto name = names.rbegin(); name != names.rend(); ++name) {
    lowest = std::min(name->first, lowest);
    svg.text({right + gap, lowest + 4}, name->second);
    lowest -= 14;
  }
}

/// Through the outlets that say what the pressure along the line is.
void Panel::draw_curve(Svg& svg,
                       const Plot& plot,
                       const LineSolution& line,
                       const Stroke& stroke) const {
  std::vector<Point> points;
  for (std::size_t i = 0; i < line.state.size(); ++i)
    if (line.state[i] != OutletState::broken && line.state[i] != OutletState::closed)
      points.push_back({plot.x(line.distance[i]), plot.y(line.pressure[i])});
  svg.polyline(thinned(points), stroke);
}

void Panel::draw_marks(Svg& svg, const Plot& plot) const {
  const std::vector<std::size_t> outlets = marked(plot);
  if (before_)
    for (const std::size_t i : outlets)
      draw_mark_before(svg, {plot.x(before_->distance[i]), plot.y(before_->pressure[i])});
  for (const std::size_t i : outlets)
    draw_mark(svg, doing_[i], {plot.x(after_.distance[i]), plot.y(after_.pressure[i])}, tip(i));
}

/// Where it holds: at the inlet, at the pressure beyond it.
void Panel::draw_regulator(Svg& svg, const Plot& plot) const {
  if (!after_.regulator || after_.regulator->state != RegulatorState::holding) return;
  draw_regulator_mark(svg, {left, plot.y(after_.regulator->pressure)}, regulator_);
}

}  // namespace hydro
