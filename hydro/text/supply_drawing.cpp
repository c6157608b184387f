#include "hydro/text/supply_drawing.hpp"

#include "hydro/physics/operating_point.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/finite.hpp"
#include "hydro/text/marks.hpp"
#include "hydro/text/panel.hpp"
#include "hydro/text/supply_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr double left = 62;  ///< of the plot [px]
constexpr double right = 760;
constexpr double height = 340;
constexpr double gap = 8;
constexpr double pressures = 48;        ///< at which the lines are solved
constexpr double flows = 100;           ///< at which the supply is asked
constexpr double beyond = 1.15;         ///< the flow axis reaches so much further than what is told
constexpr double headroom = 1.04;       ///< so that a held pressure is not on the edge
constexpr std::size_t most_faults = 4;  ///< that are told

constexpr const char* ring = "m-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0z";
constexpr Stroke supply_stroke{hue, 3};
constexpr Stroke supply_stroke_before{grey, 2.6, "8 4"};

/// What there is to draw of one solution.
struct State {
  const Solution* solution;
  std::vector<Point> lines = {};   ///< flow, pressure in shown units
  std::vector<Point> supply = {};  ///< likewise
};

/// The first supply's own faults would not fit the held pressure that takes its place.
Layout without_faults_of_its_supply(const Layout& layout) {
  std::vector<Fault> kept = layout.faults();
  std::erase_if(
      kept, [](const Fault& fault) { return is_of_the_supply(fault) && supply_of(fault).empty(); });
  return layout.without_faults().with_faults(kept);
}

class SupplyDrawing {
 public:
  SupplyDrawing(const Solution* before, const Solution& after, const DrawingOptions& options)
      : figures_(options.units.value_or(after.layout().units())), after_{&after} {
    if (before) before_ = State{before};
    for (const State* state : states()) {
      const OperatingPoint& point = state->solution->supply();
      for (const double number : {si(point.flow), si(point.pressure)})
        require_finite(number, [] { return std::string("supply: operating point"); });
    }
    find_scales();
    after_.supply = supply_curve(*after_.solution);
    after_.lines = lines_curve(*after_.solution);
    if (!before_) return;
    if (!(before->layout().supply_as_it_is() == after.layout().supply_as_it_is()))
      before_->supply = supply_curve(*before_->solution);
    before_->lines = lines_curve(*before_->solution);
  }

  std::string write() {
    heading();
    legend();
    floor_ = y_ + height;
    draw_axes();
    draw_range();
    for (const State* state : states()) {
      const bool is_now = state == &after_;
      svg_.polyline(on_page(state->supply), is_now ? supply_stroke : supply_stroke_before);
      svg_.polyline(on_page(state->lines), is_now ? curve_stroke : curve_stroke_before);
    }
    draw_points();
    y_ = floor_ + 4 * row_height;
    if (before_) tell("Before", *before_->solution);
    if (before_) y_ += gap;
    tell(before_ ? "After" : "Where they meet", *after_.solution);
    return svg_.take(title(), page_width, y_ + row_height);
  }

 private:
  std::vector<const State*> states() const {
    if (before_) return {&*before_, &after_};
    return {&after_};
  }
  double shown(const Flow& flow) const { return flow / figures_.units().flow; }
  double shown(const Pressure& pressure) const { return pressure / figures_.units().pressure; }

  // ---- numbers

  static OperatingPoint at_flow(const Solution& solution, const Flow& flow) {
    const Layout& layout = solution.layout();
    return operating_point(layout.supply_as_it_is(), flow, layout.water(), layout.site());
  }

  /// The axes hold all points, all usable flows, and what each supply gives at rest.
  void find_scales() {
    Flow farthest{};
    for (const State* state : states()) {
      const OperatingPoint& point = state->solution->supply();
      farthest = std::max(farthest, point.flow);
      if (point.pumps.size() == 1)
        farthest = std::max(farthest, point.pumps[0].most_flow.value_or(Flow{}));
      highest_ = std::max({highest_, point.pressure, at_flow(*state->solution, Flow{}).pressure});
    }
    flow_end_ = farthest > Flow{} ? beyond * farthest : 1 * figures_.units().flow;
    if (!(highest_ > Pressure{})) highest_ = 1 * figures_.units().pressure;
  }

  std::vector<Point> supply_curve(const Solution& solution) const {
    std::vector<Point> curve;
    for (int i = 0; i <= flows; ++i) {
      const Flow flow = flow_end_ * (i / flows);
      const Pressure pressure = at_flow(solution, flow).pressure;
      if (!(pressure >= Pressure{})) break;
      curve.push_back({shown(flow), shown(pressure)});
    }
    return curve;
  }

  /// None where that is not solved: one point less of a curve is no reason to draw nothing.
  static std::optional<Flow> flow_asked(const Layout& held) {
    try {
      return solve(held).supply().flow;
    } catch (const NotSolved&) {
      return std::nullopt;
    }
  }

  std::vector<Point> lines_curve(const Solution& solution) const {
    const Layout lines = without_faults_of_its_supply(solution.layout());
    std::vector<Point> curve;
    for (int i = 0; i <= pressures; ++i) {
      const Pressure pressure = highest_ * (i / pressures);
      const Layout held = lines.with_supply(
          {.pressure = pressure, .elevation = solution.layout().supply().elevation});
      const std::optional<Flow> flow = flow_asked(held);
      if (!flow) continue;
      if (!(*flow <= flow_end_)) break;
      if (*flow < Flow{}) continue;  // other supplies bring more than that pressure
      curve.push_back({shown(*flow), shown(pressure)});
    }
    if (solution.supply().flow >= Flow{})
      curve.push_back({shown(solution.supply().flow), shown(solution.supply_pressure())});
    std::sort(curve.begin(), curve.end(), [](const Point& a, const Point& b) {
      return std::pair(a.y, a.x) < std::pair(b.y, b.x);
    });
    std::erase_if(curve, [](const Point& point) { return point.y < 0; });
    return curve;
  }

  // ---- on paper

  Axis flow_axis() const { return {shown(flow_end_), left, right}; }
  Axis pressure_axis() const {
    return Axis::up_to(headroom * shown(highest_), floor_, floor_ - height);
  }

  /// A supply that takes water in is drawn as one that gives none, and told in words.
  Point on_page(const Point& point) const {
    return {flow_axis().at(std::max(0.0, point.x)), pressure_axis().at(std::max(0.0, point.y))};
  }
  Point on_page(const OperatingPoint& point) const {
    return on_page(Point{shown(point.flow), shown(point.pressure)});
  }
  std::vector<Point> on_page(const std::vector<Point>& curve) const {
    std::vector<Point> points;
    points.reserve(curve.size());
    for (const Point& point : curve) points.push_back(on_page(point));
    return points;
  }

  std::string title() const {
    const std::string& site = after_.solution->layout().site().name;
    return site.empty() ? "The supply and the lines" : site;
  }

  /// "the pump gives at 2210 rpm".
  static std::string source_in_words(const Solution& solution) {
    const Supply& supply = solution.layout().supply_as_it_is();
    if (supply.tank) return "the tank gives";
    if (supply.hydrant) return "the hydrant gives";
    if (!supply.pump) return "the supply holds";
    if (supply.second_pump) return "the pumps give";
    const auto speed = supply.pump->speed ? supply.pump->speed : supply.pump->curve_speed;
    return speed ? fmt::format("the pump gives at {:.0f} rpm", *speed / rpm) : "the pump gives";
  }

  void remark(const std::string& sentence) {
    y_ = svg_.paragraph({page_margin, y_}, sentence, {.colour = grey}).y;
  }

  void heading() {
    svg_.text({page_margin, y_}, title(), {.size = 16, .bold = true});
    y_ += 1.3 * row_height;
    const Layout& layout = after_.solution->layout();
    remark(layout.further_supplies().empty()
               ? "Pressure at the start of the lines, over the flow that leaves the supply."
               : "Pressure at the start of the lines, over the flow that leaves the first supply, "
                 "the other supplies being as they are.");
    if (!layout.running_sets().empty())
      remark(fmt::format("Watering {}.", fmt::join(layout.running_sets(), ", ")));
    const std::vector<Fault>& faults = layout.faults();
    for (std::size_t i = 0; i < std::min(most_faults, faults.size()); ++i)
      remark(describe(faults[i], layout, figures_.system()) + ".");
    if (faults.size() > most_faults)
      remark(fmt::format("And {} more faults.", faults.size() - most_faults));
  }

  /// What the strokes and marks mean; only those that occur.
  void legend() {
    y_ += 6;
    double x = page_margin;
    const auto entry =
        [&](const std::vector<Point>& curve, const Stroke& stroke, const std::string& words) {
          if (curve.empty()) return;
          const double width = 40 + width_of(words, 12);
          if (x + width > page_width - page_margin) {
            x = page_margin;
            y_ += row_height;
          }
          svg_.line({x, y_}, {x + 34, y_}, stroke);
          svg_.text({x + 40, y_ + 4}, words);
          x += width + 18;
        };
    entry(after_.supply, supply_stroke, source_in_words(*after_.solution));
    entry(after_.lines, curve_stroke, "the lines ask");
    if (before_) {
      entry(
          before_->supply, supply_stroke_before, "before, " + source_in_words(*before_->solution));
      entry(before_->lines, curve_stroke_before, "before, the lines ask");
    }
    y_ += 1.5 * row_height;
  }

  void draw_axes() {
    const Axis pressure = pressure_axis();
    const Axis flow = flow_axis();
    for (const double tick : pressure.ticks()) {
      svg_.line({left, pressure.at(tick)}, {right, pressure.at(tick)}, {pale, 1});
      svg_.text({left - gap, pressure.at(tick) + 4}, tick_label(tick), {.anchor = "end"});
    }
    for (const double tick : flow.ticks()) {
      svg_.line({flow.at(tick), floor_}, {flow.at(tick), floor_ + 4}, {ink, 1});
      svg_.text({flow.at(tick), floor_ + row_height}, tick_label(tick), {.anchor = "middle"});
    }
    svg_.line({left, floor_}, {right, floor_}, {ink, 1});
    svg_.line({left, floor_}, {left, floor_ - height}, {ink, 1});
    svg_.text({page_margin + gap, floor_ - height / 2},
              fmt::format("pressure, {}", figures_.units().pressure.symbol),
              {.anchor = "middle", .upright = false});
    svg_.text({(left + right) / 2, floor_ + 2 * row_height},
              fmt::format("flow, {}", figures_.units().flow.symbol),
              {.anchor = "middle"});
  }

  /// A bracket that stands on the axis; a side that is open has no end.
  void draw_range() {
    const std::vector<PumpDuty>& pumps = after_.solution->supply().pumps;
    if (pumps.size() != 1 || pumps[0].range == PumpRange::unknown) return;
    const auto side = [&](const std::optional<Flow>& flow, double open) {
      if (!flow) return open;
      const double x = flow_axis().at(shown(*flow));
      svg_.line({x, floor_}, {x, floor_ - height}, {grey, 1, "1 3"});
      svg_.line({x, floor_ - 14}, {x, floor_ - 6}, {ink, 1.6});
      return x;
    };
    const double from = side(pumps[0].least_flow, left);
    const double to = side(pumps[0].most_flow, right);
    svg_.line({from, floor_ - 10}, {to, floor_ - 10}, {ink, 1.6});
    svg_.text({(from + to) / 2, floor_ - 16}, "usable range", {.anchor = "middle"});
  }

  void draw_points() {
    const Point now = on_page(after_.solution->supply());
    if (before_) {
      const Point then = on_page(before_->solution->supply());
      draw_arrow(then, now);
      svg_.shape(then, ring, "#ffffff", {grey, 1.6}, "before", in_words(*before_->solution));
      if (is_far(then, now)) {
        name(then, "before");
        name(now, "after");
      }
    }
    draw_mark(svg_, Doing::serves, now, in_words(*after_.solution));
  }

  /// Below the supply's curve and to the right of the lines'.
  void name(const Point& point, const char* word) { svg_.text({point.x + 4, point.y + 24}, word); }

  static bool is_far(const Point& from, const Point& to) {
    return std::hypot(to.x - from.x, to.y - from.y) > 40;
  }

  /// Beside the curve that leads from one point to the other; none where it would be all head.
  void draw_arrow(const Point& from, const Point& to) {
    if (!is_far(from, to)) return;
    const double dx = to.x - from.x;
    const double dy = to.y - from.y;
    const double length = std::hypot(dx, dy);
    const double above = dx >= 0 ? -12 : 12;  // y points down
    const auto at = [&](double along, double aside) {
      return Point{from.x + (along * dx - aside * dy) / length,
                   from.y + (along * dy + aside * dx) / length};
    };
    const double tip = length - 8;
    svg_.line(at(8, above), at(tip, above), {ink, 1.2});
    svg_.polyline({at(tip - 7, above + 4), at(tip, above), at(tip - 7, above - 4)}, {ink, 1.2});
  }

  // ---- in words

  std::string in_words(const Solution& solution) const {
    const OperatingPoint& point = solution.supply();
    const Giving found = giving(point.flow, figures_);
    std::string words =
        point.held_shut
            ? fmt::format("Nothing: the other supplies hold its check valve shut, at {}",
                          figures_.pressure_with_unit(point.pressure))
            : fmt::format("{}{} at {}",
                          found.takes_in ? "Takes in " : "",
                          found.amount,
                          figures_.pressure_with_unit(point.pressure));
    if (point.gauge_reading)
      words +=
          fmt::format("; the gauge shows {}", figures_.pressure_with_unit(*point.gauge_reading));
    return words;
  }

  void tell(const std::string& when, const Solution& solution) {
    svg_.text({page_margin, y_}, when, {.size = 13, .bold = true});
    y_ += row_height;
    remark(in_words(solution) + ".");
    const OperatingPoint& point = solution.supply();
    for (std::size_t i = 0; i < point.pumps.size(); ++i) {
      const PumpDuty& pump = point.pumps[i];
      remark((point.pumps.size() == 1 ? "Pump: " : fmt::format("Pump {}: ", i + 1)) +
             in_words(pump));
      if (pump.range != PumpRange::unknown) remark(range_in_words(pump));
    }
    if (!point.npsh_available) return;
    std::string suction =
        fmt::format("Suction: NPSH available {}", head_with_unit(*point.npsh_available));
    const std::optional<Length> required = point.pumps.front().npsh_required;
    if (required) {
      const Length left_over =
          figures_.as_printed(*point.npsh_available) - figures_.as_printed(*required);
      suction += fmt::format(", required {}: ", head_with_unit(*required));
      suction += left_over >= Length{}
                     ? fmt::format("{} to spare", head_with_unit(left_over))
                     : fmt::format("{} too little, it cavitates", head_with_unit(-left_over));
    }
    remark(suction + ".");
  }

  std::string head_with_unit(const Length& head) const {
    const Unit<Length>& unit = figures_.units().length;
    return fmt::format("{:.1f} {}", head / unit, unit.symbol);
  }

  std::string in_words(const PumpDuty& pump) const {
    std::string words;
    if (pump.speed) words += fmt::format("{:.0f} rpm, ", *pump.speed / rpm);
    words += fmt::format("its own head {}", head_with_unit(pump.head));
    if (pump.shaft_power)
      words += fmt::format(", {:.1f} {} at the shaft",
                           *pump.shaft_power / figures_.units().power,
                           figures_.units().power.symbol);
    return words + '.';
  }

  /// Empty where its range is not known.
  std::string range_in_words(const PumpDuty& pump) const {
    switch (pump.range) {
      case PumpRange::below_least_flow:
        return fmt::format("It is below its least flow of {}: it heats.",
                           figures_.flow_with_unit(*pump.least_flow));
      case PumpRange::above_most_flow:
        return fmt::format("It is above its usable range, which ends at {}.",
                           figures_.flow_with_unit(*pump.most_flow));
      case PumpRange::inside:
        return "It is inside its usable range.";
      case PumpRange::unknown:
        break;
    }
    return {};
  }

  Figures figures_;
  std::optional<State> before_;
  State after_;
  Flow flow_end_ = {};
  Pressure highest_ = {};
  Svg svg_;
  double y_ = page_margin + 12;  ///< down to which the page is filled
  double floor_ = 0;             ///< of the plot [px]
};

}  // namespace

std::string to_svg_of_supply(const Solution& solution, const DrawingOptions& options) {
  return SupplyDrawing(nullptr, solution, options).write();
}

std::string to_svg_of_supply(const Solution& before,
                             const Solution& after,
                             const DrawingOptions& options) {
  return SupplyDrawing(&before, after, options).write();
}

}  // namespace hydro
