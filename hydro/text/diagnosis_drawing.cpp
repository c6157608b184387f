#include "hydro/text/diagnosis_drawing.hpp"

#include "hydro/text/axis.hpp"
#include "hydro/text/diagnosis_report.hpp"
#include "hydro/text/diagnosis_words.hpp"
#include "hydro/text/doings.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/finite.hpp"
#include "hydro/text/marks.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/panel.hpp"
#include "hydro/text/svg.hpp"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr std::size_t most_strips = 24;
constexpr double pipe_from = 176;  ///< where a line's inlet is drawn [px]
constexpr double pipe_to = 628;    ///< of the longest line, its far end
constexpr double totals_at = 652;
constexpr double bar_height = 48;  ///< of the likeliest place
constexpr double step_in = 10;     ///< of a name beneath the name of the line that feeds it
constexpr double small = 10;       ///< letters [px]
constexpr double worth_a_bar = 0.005;
constexpr double worth_a_figure = 0.045;

/// A probability at a place on the page.
struct Bar {
  double x;
  double probability;
  std::string tip;
};

/// What was seen, as the mark of what the outlet does; none: it is told in words.
std::optional<Doing> doing_of(Seen seen) {
  switch (seen) {
    case Seen::turning:
      return Doing::serves;
    case Seen::not_turning:
      return Doing::below_minimum;
    case Seen::dry:
      return Doing::dry;
    case Seen::plume:
      return Doing::broken;
    case Seen::wet_spot:
      break;
  }
  return std::nullopt;
}

void draw_dial(Svg& svg, const Point& at) {
  svg.shape(
      at, "m-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0zm5 0l3 -3", "#ffffff", {ink, 1.4}, "reading", "");
}

class DiagnosisDrawing {
 public:
  DiagnosisDrawing(const Layout& layout,
                   const std::vector<Reading>& readings,
                   const std::vector<Sight>& sights,
                   const FoundFaults& found,
                   const DrawingOptions& options)
      : layout_(layout),
        readings_(readings),
        sights_(sights),
        found_(found),
        figures_(options.units.value_or(layout.units())) {
    for (const FoundFault& it : found_.faults) {
      require_finite(it.probability, [&] { return describe(it.candidate); });
      if (it.candidate.kind == CandidateKind::no_fault) continue;
      of_line_[it.candidate.line] += it.probability;
      if (it.candidate.outlet)
        of_outlet_[{it.candidate.line, *it.candidate.outlet}] += it.probability;
    }
    for (const auto& [place, probability] : of_outlet_) highest_ = std::max(highest_, probability);
    choose_lines();
    for (const std::size_t line : drawn_) {
      longest_ = std::max(longest_, length(line));
      for (const Bar& bar : bars(line)) highest_ = std::max(highest_, bar.probability);
    }
  }

  std::string write() {
    heading();
    supply();
    for (const std::size_t line : drawn_) strip(line);
    y_ += 1.5 * row_height;
    if (!left_out_.empty())
      remark(fmt::format(
          "Not drawn, less than 1 in 100 each: {}{}.",
          fmt::join(left_out_.begin(),
                    left_out_.begin() +
                        static_cast<std::ptrdiff_t>(std::min<std::size_t>(12, left_out_.size())),
                    ", "),
          left_out_.size() > 12 ? fmt::format(" and {} more", left_out_.size() - 12) : ""));
    return svg_.take(title(), page_width, y_);
  }

 private:
  /// All that run, and of those that are shut the ones that may have been left open; of many, those
  /// with outlets that are most likely.
  void choose_lines() {
    std::vector<std::size_t> with_outlets;
    std::set<std::size_t> chosen;
    for (const std::size_t line : layout_.outward_order()) {
      const bool may_be = total(line) >= worth_a_bar;
      if (layout_.is_shut(line) && !may_be) {
        if (layout_.lines()[line].outlet_count() == 0 || layout_.running_sets().empty())
          left_out_.push_back(name(line));
        continue;
      }
      if (layout_.lines()[line].outlet_count() > 0)
        with_outlets.push_back(line);
      else
        chosen.insert(line);
    }
    std::ranges::stable_sort(
        with_outlets, std::ranges::greater{}, [&](std::size_t line) { return total(line); });
    for (std::size_t i = 0; i < with_outlets.size(); ++i)
      if (i < most_strips)
        chosen.insert(with_outlets[i]);
      else
        left_out_.push_back(name(with_outlets[i]));
    list_beneath({}, chosen);
  }

  /// Each after the line that feeds it, and before the next one that this one feeds.
  void list_beneath(std::optional<std::size_t> feeder, const std::set<std::size_t>& chosen) {
    for (std::size_t line = 0; line < layout_.lines().size(); ++line) {
      if (layout_.feeder_of(line) != feeder) continue;
      if (chosen.contains(line)) drawn_.push_back(line);
      list_beneath(line, chosen);
    }
  }

  const std::string& name(std::size_t line) const { return layout_.lines()[line].name; }
  double length(std::size_t line) const { return si(layout_.lines()[line].whole_length()); }
  double total(std::size_t line) const {
    const auto it = of_line_.find(name(line));
    return it == of_line_.end() ? 0 : it->second;
  }
  double x(double place) const { return pipe_from + (pipe_to - pipe_from) * place / longest_; }
  double x_of_outlet(std::size_t line, int outlet) const {
    return x(si(layout_.lines()[line].place_of(outlet)));
  }
  /// From outlet to outlet [px].
  double cell(std::size_t line) const {
    const int count = layout_.lines()[line].outlet_count();
    return count < 2
               ? 30
               : (x_of_outlet(line, count) - x_of_outlet(line, 1)) / static_cast<double>(count - 1);
  }
  int depth(std::size_t line) const {
    int depth = 0;
    for (auto feeder = layout_.feeder_of(line); feeder; feeder = layout_.feeder_of(*feeder))
      ++depth;
    return depth;
  }

  std::vector<Bar> bars(std::size_t line) const {
    std::vector<Bar> found;
    const auto add = [&](double where, const FoundFault& it) {
      const auto known = std::ranges::find(found, where, &Bar::x);
      Bar& bar = known == found.end() ? found.emplace_back(Bar{where, 0, ""}) : *known;
      bar.probability += it.probability;
      if (it.probability >= worth_a_bar)
        bar.tip += fmt::format("{}{}: {}",
                               bar.tip.empty() ? "" : "; ",
                               describe(it.candidate),
                               chance(it.probability));
    };
    for (const FoundFault& it : found_.faults) {
      const Candidate& candidate = it.candidate;
      if (candidate.line != name(line)) continue;
      if (candidate.outlet)
        add(x_of_outlet(line, *candidate.outlet), it);
      else if (candidate.place)
        add(x(si(*candidate.place)), it);
      else
        add(candidate.kind == CandidateKind::end_open ? x(length(line)) : pipe_from, it);
    }
    return found;
  }

  std::string title() const {
    return layout_.site().name.empty() ? "Where the fault may be" : layout_.site().name;
  }

  void remark(const std::string& sentence) {
    y_ = svg_.paragraph({page_margin, y_}, sentence, {.colour = grey}).y;
  }

  void heading() {
    svg_.text({page_margin, y_}, title(), {.size = 16, .bold = true});
    y_ += 1.4 * row_height;
    y_ = svg_.paragraph({page_margin, y_}, headline(found_), {.bold = true}).y;
    if (!layout_.running_sets().empty())
      remark(fmt::format("Watering {}.", fmt::join(layout_.running_sets(), ", ")));
    remark("The higher a bar, the likelier the fault is there; over it, in per cent.");
    legend();
  }

  void legend() {
    y_ += 4;
    double at = page_margin + mark_radius;
    const auto entry = [&](const std::string& words) {
      svg_.text({at + 11, y_ + 4}, words);
      at += 11 + width_of(words, 12) + 18;
    };
    if (!readings_.empty()) {
      draw_dial(svg_, {at, y_});
      entry("read here");
    }
    std::set<Seen> occurring;
    for (const Sight& sight : sights_) occurring.insert(sight.seen);
    for (const Seen seen : occurring)
      if (const auto doing = doing_of(seen)) {
        draw_mark(svg_, *doing, {at, y_}, "");
        entry("seen: " + std::string(words_of(seen)));
      }
    if (at > page_margin + mark_radius) y_ += row_height;
  }

  bool is_first(const std::string& line) const {
    return !found_.walk.empty() && found_.explained && !is_as_it_should_be(found_) &&
           found_.walk.front().line == line && found_.walk.front().kind != WalkKind::nothing;
  }

  void frame(const Point& from, const Point& to) {
    svg_.shape(from,
               fmt::format("h{:.1f}v{:.1f}h{:.1f}z", to.x - from.x, to.y - from.y, from.x - to.x),
               "none",
               {ink, 1.8},
               "first",
               "");
    const bool is_clear = found_.walk.front().probability >= 0.5;
    svg_.text(
        {from.x, from.y - 5}, is_clear ? "walk here" : "likeliest", {.size = small, .bold = true});
  }

  void tell_total(double probability, bool first) {
    if (probability < worth_a_bar) return;
    svg_.text({totals_at, y_ + 4},
              chance(probability),
              {.colour = first ? ink : grey, .size = first ? 14.0 : 12.0, .bold = first});
  }

  void draw_bar(const Bar& bar, double width) {
    if (bar.probability < worth_a_bar) return;
    const double height = std::max(1.5, bar_height * bar.probability / highest_);
    svg_.shape({bar.x - width / 2, y_ - 5},
               fmt::format("v{:.1f}h{:.1f}v{:.1f}z", -height, width, height),
               hue,
               {hue, 0.4},
               "bar",
               bar.tip);
    if (bar.probability >= worth_a_figure && width >= 8)
      svg_.text({bar.x, y_ - 8 - height},
                fmt::format("{:.0f}", 100 * std::min(bar.probability, 0.99)),
                {.anchor = "middle", .size = small});
  }

  /// Room above a row for its bars and what stands over them.
  void make_room(double likeliest, bool first) {
    y_ += 10 + (likeliest >= worth_a_bar ? bar_height * likeliest / highest_ + 14 : 0) +
          (first ? 14 : 0);
  }

  void supply() {
    const double likely = of_line_.contains("") ? of_line_.at("") : 0;
    const bool first = is_first("");
    y_ += 8 + (first ? 16 : 0);
    svg_.text({page_margin, y_ + 4}, "supply", {.bold = first});
    svg_.shape({pipe_from, y_}, "m-6 -6h12v12h-12z", "#ffffff", {ink, 1.6}, "supply", "");
    std::string text;
    for (const WalkTo& walk : found_.walk)
      if (walk.line.empty() && walk.kind != WalkKind::nothing && walk.probability >= worth_a_bar)
        text += fmt::format("{}{} ({})",
                            text.empty() ? "" : "; ",
                            what(walk, found_),
                            chance_in_percent(walk.probability));
    if (!text.empty()) svg_.text({pipe_from + 16, y_ + 4}, cut(text, 70), {.size = small});
    if (first) frame({pipe_from - 12, y_ - 12}, {totals_at - 12, y_ + 12});
    tell_total(first ? found_.walk.front().probability : likely, first);
    y_ += 12;
    for (std::size_t i = 0; i < readings_.size(); ++i)
      if (!is_on_line(readings_[i].place)) tell_reading(i, pipe_from, y_ - 6);
  }

  /// In a row of its own, with a thread to its place.
  void tell_reading(std::size_t index, double at, double from) {
    y_ += 15;
    const Reading& it = readings_[index];
    svg_.line({at, from}, {at, y_ - 9}, {grey, 0.8, "2 2"});
    draw_dial(svg_, {at, y_ - 4});
    const auto flow = is_flow(it.place) ? std::optional(flow_read(it)) : std::nullopt;
    std::string words = figure(it.pressure, flow, it.speed, figures_) + " read";
    const auto sound = std::ranges::find(
        found_.faults, CandidateKind::no_fault, [](const auto& f) { return f.candidate.kind; });
    if (sound != found_.faults.end() && index < sound->fits.size()) {
      const ReadingFit& fit = sound->fits[index];
      words += ", " +
               figure(fit.pressure_predicted, fit.flow_predicted, fit.speed_predicted, figures_) +
               " if nothing were wrong";
    }
    const bool to_the_left = at > (pipe_from + pipe_to) / 2;
    svg_.text({at + (to_the_left ? -10 : 10), y_},
              words,
              {.anchor = to_the_left ? "end" : "start", .size = small});
  }

  void strip(std::size_t line) {
    const std::vector<Bar> all = bars(line);
    double likeliest = 0;
    for (const Bar& bar : all) likeliest = std::max(likeliest, bar.probability);
    const bool first = is_first(name(line));
    make_room(likeliest, first);
    const double top = y_ - 9 - bar_height * likeliest / highest_ - 12;
    const bool shut = layout_.is_shut(line);
    const double in = step_in * std::min(6, depth(line));
    const std::size_t letters = static_cast<std::size_t>((pipe_from - page_margin - in - 14) / 6.6);
    svg_.text({page_margin + in, y_ + 4},
              cut(name(line), letters),
              {.colour = shut ? grey : ink, .bold = first});
    svg_.line({pipe_from, y_},
              {x(length(line)), y_},
              {shut ? grey : ink, shut ? 1.2 : 2.6, shut ? "4 3" : ""});
    const double width = std::clamp(0.7 * cell(line), 1.5, 14.0);
    for (const Bar& bar : all)
      draw_bar(bar, layout_.lines()[line].outlet_count() == 0 ? 14.0 : width);
    tell_total(first ? found_.walk.front().probability : total(line), first);
    if (shut)
      svg_.text({pipe_from + 16, y_ - 5}, "should be shut", {.colour = grey, .size = small});
    const bool is_seen = std::ranges::count(sights_, name(line), &Sight::line) > 0;
    if (shut && !is_seen)
      y_ += 8;
    else
      outlets(line);
    if (first) frame_walk(line, top);
    for (std::size_t i = 0; i < readings_.size(); ++i) {
      const Reading& it = readings_[i];
      if (it.line != name(line)) continue;
      const double at = is_at_outlet(it.place)                ? x_of_outlet(line, it.outlet)
                        : it.place == ReadingPlace::flush_end ? x(length(line))
                                                              : pipe_from;
      tell_reading(i, at, y_ - 2);
    }
  }

  /// On the pipe, with their numbers and what was seen below.
  void outlets(std::size_t line) {
    const int count = layout_.lines()[line].outlet_count();
    if (count == 0) {
      y_ += 6;
      return;
    }
    const double room = cell(line);
    const int step = room >= 16 ? 1 : room >= 3 ? 5 : std::max(10, count / 10);
    for (int outlet = 1; outlet <= count; ++outlet) {
      const double at = x_of_outlet(line, outlet);
      if (room >= 4) svg_.line({at, y_ - 3}, {at, y_ + 3}, {ink, 1.4});
      if (outlet == 1 || outlet == count || outlet % step == 0)
        svg_.text({at, y_ + 14},
                  fmt::format("{}", outlet),
                  {.anchor = "middle", .colour = grey, .size = small});
    }
    y_ += 16;
    bool some_seen = false;
    for (const Sight& sight : sights_) {
      if (sight.line != name(line)) continue;
      some_seen = true;
      for (int outlet = sight.outlet; outlet <= sight.to_outlet.value_or(sight.outlet); ++outlet) {
        const Point at{x_of_outlet(line, outlet), y_ + 6};
        if (const auto doing = doing_of(sight.seen))
          draw_mark(svg_, *doing, at, in_words(sight));
        else
          svg_.text({at.x, at.y + 4}, "wet", {.anchor = "middle", .size = small});
      }
    }
    if (some_seen) y_ += 14;
  }

  void frame_walk(std::size_t line, double top) {
    const WalkTo& walk = found_.walk.front();
    double from = pipe_from - 10;
    double to = pipe_from + 10;
    if (walk.first) {
      const double half = std::clamp(cell(line) / 2, 4.0, 18.0);
      from = x_of_outlet(line, *walk.first) - half;
      to = x_of_outlet(line, walk.last.value_or(*walk.first)) + half;
    } else if (walk.kind == WalkKind::end_open) {
      from = x(length(line)) - 10;
      to = x(length(line)) + 10;
    }
    frame({from, top}, {to, y_ + 2});
  }

  const Layout& layout_;
  const std::vector<Reading>& readings_;
  const std::vector<Sight>& sights_;
  const FoundFaults& found_;
  Figures figures_;
  std::map<std::string, double> of_line_;
  std::map<std::pair<std::string, int>, double> of_outlet_;
  double highest_ = worth_a_bar;  ///< probability that has the highest bar
  double longest_ = 0;            ///< of the lines drawn [m]
  std::vector<std::size_t> drawn_;
  std::vector<std::string> left_out_;
  Svg svg_;
  double y_ = page_margin + 12;  ///< down to which the page is filled
};

}  // namespace

std::string to_svg_of_diagnosis(const Layout& layout,
                                const std::vector<Reading>& readings,
                                const std::vector<Sight>& sights,
                                const FoundFaults& found,
                                const DrawingOptions& options) {
  return DiagnosisDrawing(layout, readings, sights, found, options).write();
}

}  // namespace hydro
