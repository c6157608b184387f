#include "hydro/text/day_drawing.hpp"

#include "hydro/text/axis.hpp"
#include "hydro/text/clock.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/finite.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/panel.hpp"
#include "hydro/text/svg.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string_view>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr std::size_t most_rows = 40;
constexpr double small = 10;  ///< letters [px]
constexpr double row_step = 26;
constexpr double bar_height = 14;

class Bars {
 public:
  Bars(const Layout& layout, const DayPlan& plan, const Figures& figures)
      : layout_(layout), plan_(plan), figures_(figures) {
    for (const SetDay& set : plan.sets)
      left_ = std::max(left_, page_margin + 8 + width_of(cut(set.set, widest_name), 12));
    from_ = std::floor(plan.earliest / units::h);
    to_ = std::max(from_ + 1, std::ceil(plan.latest / units::h));
  }

  std::string draw() {
    Svg svg;
    const std::string title =
        (layout_.site().name.empty() ? "" : layout_.site().name + ": ") + "the watering day";
    svg.text({page_margin, 28}, title, {.size = 16, .bold = true});
    Point next = svg.paragraph({page_margin, 50}, summary());
    const double top = next.y + 14;
    const std::size_t rows = std::min(most_rows, plan_.sets.size());
    const double bottom = top + row_step * static_cast<double>(rows + 1);
    draw_hours(svg, top, bottom);
    for (std::size_t i = 0; i < rows; ++i)
      draw_set(svg, top + row_step * (static_cast<double>(i) + 0.5), plan_.sets[i]);
    draw_supply(svg, top + row_step * (static_cast<double>(rows) + 0.5));
    double y = bottom + 40;
    draw_legend(svg, y);
    y += row_height + 4;
    if (rows < plan_.sets.size()) {
      svg.text({page_margin, y},
               fmt::format("{} more sets are not drawn.", plan_.sets.size() - rows));
      y += row_height;
    }
    return svg.take(title, page_width, y + 8);
  }

 private:
  static constexpr std::size_t widest_name = 24;
  static constexpr double right = page_width - page_margin - 120;

  std::string summary() const {
    const auto left = std::ranges::count_if(
        plan_.sets, [](const SetDay& set) { return set.why_left.has_value(); });
    const UnitSet& shown = figures_.units();
    const std::size_t count = plan_.sets.size();
    const std::string text =
        left == 0 ? "Every set gets what it needs"
                  : fmt::format("Sets that do not get what they need: {} of {}", left, count);
    require_finite(si(plan_.pumped), [] { return "pumped"; });
    return text + fmt::format("; {:.0f} {} are pumped in {}.",
                              plan_.pumped / shown.volume,
                              shown.volume.symbol,
                              in_words(plan_.pump_time));
  }

  double x(const Time& since_midnight) const {
    require_finite(si(since_midnight), [] { return "a time of the plan"; });
    return left_ + (right - left_) * (since_midnight / units::h - from_) / (to_ - from_);
  }

  void draw_hours(Svg& svg, double top, double bottom) const {
    double step = 1;
    for (const double nice : {1., 2., 3., 4., 6., 12.})
      if (step = nice; (to_ - from_) / nice <= 14) break;
    const double first = std::ceil(from_ / step);
    for (int i = 0; (first + i) * step <= to_; ++i) {
      const double hour = (first + i) * step;
      const double at = x(hour * units::h);
      svg.line({at, top - 4}, {at, bottom}, {pale, 1});
      svg.text({at, bottom + 15},
               clock(hour * units::h),
               {.anchor = "middle", .colour = grey, .size = small});
    }
    for (const Time& end : {plan_.earliest, plan_.latest})
      svg.line({x(end), top - 4}, {x(end), bottom}, {grey, 1, "4 3"});
  }

  void bar(Svg& svg,
           double y,
           const Time& from,
           const Time& to,
           bool filled,
           const char* name,
           const std::string& tip) const {
    const double width = x(to) - x(from);
    if (!(width > 0)) return;
    svg.shape({x(from), y - bar_height / 2},
              fmt::format("m0 0h{:.1f}v{:.1f}h-{:.1f}z", width, bar_height, width),
              filled ? hue : "#ffffff",
              {hue, 1},
              name,
              tip);
  }

  /// Inside the bar where it fits, else not at all: the report says it too.
  static void label(
      Svg& svg, double from, double to, double y, const std::string& words, const char* colour) {
    if (width_of(words, small) + 6 < to - from)
      svg.text(
          {(from + to) / 2, y + 3.5}, words, {.anchor = "middle", .colour = colour, .size = small});
  }

  void draw_set(Svg& svg, double y, const SetDay& set) const {
    svg.text({page_margin, y + 4}, cut(set.set, widest_name));
    const auto runs_in = [&](std::size_t i) {
      return i < plan_.turns.size() && std::ranges::count(plan_.turns[i].sets, set.set) > 0;
    };
    for (std::size_t i = 0; i < plan_.turns.size(); ++i) {
      if (!runs_in(i)) continue;
      const Turn& turn = plan_.turns[i];
      bar(svg, y, turn.fill_from, turn.start, false, "fills", set.set + ": lines fill");
      while (runs_in(i + 1) && plan_.turns[i + 1].start == plan_.turns[i].stop) ++i;
      const Time stop = plan_.turns[i].stop;
      const std::string length = in_words(stop - turn.start);
      bar(svg,
          y,
          turn.start,
          stop,
          true,
          "waters",
          fmt::format("{}: {} to {}, {}", set.set, clock(turn.start), clock(stop), length));
      label(svg, x(turn.start), x(stop), y, length, "#ffffff");
    }
    svg.text({right + 8, y + 4}, in_short(set), {.size = small, .bold = set.why_left.has_value()});
  }

  static std::string in_short(const SetDay& set) {
    if (!set.why_left) return "has all";
    if (set.still_needs) return "needs " + in_words(*set.still_needs) + " more";
    return "is not served";
  }

  void draw_supply(Svg& svg, double y) const {
    svg.text(
        {page_margin, y + 4}, layout_.supply().pump ? "the pump" : "the supply", {.colour = grey});
    for (const Turn& turn : plan_.turns) {
      const std::string flow = figures_.flow_with_unit(turn.flow);
      bar(svg, y, turn.fill_from, turn.stop, false, "gives", flow);
      label(svg, x(turn.fill_from), x(turn.stop), y, flow, ink);
    }
  }

  static void draw_legend(Svg& svg, double y) {
    const auto sample = [&](double at, const char* fill, const char* words) {
      svg.shape({at, y - bar_height / 2}, "m0 0h28v14h-28z", fill, {hue, 1}, "legend", "");
      svg.text({at + 36, y + 4}, words);
    };
    sample(page_margin, "#ffffff", "lines fill");
    sample(page_margin + 130, hue, "waters");
    svg.line({page_margin + 250, y}, {page_margin + 278, y}, {grey, 1, "4 3"});
    svg.text({page_margin + 286, y + 4}, "the hours that there are");
  }

  const Layout& layout_;
  const DayPlan& plan_;
  const Figures& figures_;
  double left_ = 110;
  double from_ = 0;  ///< hours at the ends of the axis
  double to_ = 24;
};

}  // namespace

std::string to_svg_of_day(const Layout& layout,
                          const DayPlan& plan,
                          const DrawingOptions& options) {
  const Figures figures(options.units.value_or(layout.units()));
  return Bars(layout, plan, figures).draw();
}

}  // namespace hydro
