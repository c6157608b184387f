#include "hydro/text/room_report.hpp"

#include "hydro/text/cautions.hpp"
#include "hydro/text/describe.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

/// For a table.
std::string name_of(Limit limit) {
  switch (limit) {
    case Limit::rated:
      return "rated pressure";
    case Limit::minimum:
      return "lowest pressure";
    case Limit::maximum:
      return "highest pressure";
    case Limit::variation:
      return "evenness";
    case Limit::velocity:
      return "velocity";
    case Limit::pipe_rating:
      return "pipe's rating";
    case Limit::atmosphere:
      return "atmosphere";
    case Limit::power:
      return "engine's power";
    case Limit::least_flow:
      return "pump's least flow";
    case Limit::most_flow:
      return "pump's largest flow";
    case Limit::suction:
      return "suction";
    case Limit::gauge_range:
      return "gauge's range";
  }
  return "";
}

std::string all_in_words(const std::vector<Margin>& margins) {
  std::string text;
  for (const Margin& margin : margins) text += (text.empty() ? "" : "; ") + describe(margin);
  return text;
}

std::string outlets(int count) {
  return fmt::format("{} outlet{}", count, count == 1 ? "" : "s");
}

std::string counted_more(int count) {
  return fmt::format("{} more outlet{}", count, count == 1 ? "" : "s");
}

class CountTable {
 public:
  CountTable(const std::vector<RoomAtCount>& counts, const char* title, const Figures& figures)
      : counts_(counts), title_(title), figures_(figures) {
    for (const RoomAtCount& at : counts)
      outlet_width_ = std::max(outlet_width_, std::min(most_wide, weakest(at).size()));
  }

  void write(Page& page) const {
    row(page,
        title_,
        "weakest outlet",
        figures_.units().pressure.symbol,
        "of rated",
        figures_.units().flow.symbol,
        "nearest limit");
    constexpr std::size_t last_shown = 12;
    for (std::size_t i = 0; i < counts_.size(); ++i) {
      const bool is_shown = i == 0 || counts_.size() - i <= last_shown;
      if (is_shown)
        row(page, counts_[i]);
      else if (i == 1)
        row(page, "...", "", "", "", "", "");
    }
  }

 private:
  static constexpr std::size_t most_wide = 24;

  static std::string weakest(const RoomAtCount& at) {
    return at.outlet == 0 ? "" : fmt::format("{}, {}", at.line, at.outlet);
  }

  void row(Page& page,
           const std::string& count,
           const std::string& outlet,
           const std::string& pressure,
           const std::string& share,
           const std::string& flow,
           const std::string& nearest) const {
    page.line(fmt::format("{:>7}  {:<{}}  {:>6}  {:>8}  {:>7}  {}",
                          count,
                          cut(outlet, outlet_width_),
                          outlet_width_,
                          pressure,
                          share,
                          flow,
                          nearest));
  }

  void row(Page& page, const RoomAtCount& at) const {
    const bool is_judged = at.outlet > 0;
    row(page,
        std::to_string(at.added),
        weakest(at),
        is_judged ? figures_.pressure(at.pressure) : "",
        is_judged ? percent(at.pressure / at.rated) : "",
        fmt::format("{:.1f}", at.inflow / figures_.units().flow),
        nearest(at));
  }

  static std::string nearest(const RoomAtCount& at) {
    const auto least = std::ranges::min_element(
        at.margins, {}, [](const Margin& it) { return std::pair(!it.passed, it.left); });
    if (least == at.margins.end()) return "";
    return name_of(least->limit) + ", " +
           (least->passed ? percent_past(-least->left) + " PASSED"
                          : percent(std::max(0.0, least->left)) + " left");
  }

  const std::vector<RoomAtCount>& counts_;
  std::string title_;
  const Figures& figures_;
  std::size_t outlet_width_ = 14;
};

/// What was left out, and what every report ends with.
void end(Page& page, const std::vector<Limit>& judged) {
  std::vector<std::string> left_out;
  for (const Limit limit : every_limit())
    if (!std::ranges::count(judged, limit)) left_out.push_back(name_of(limit));
  if (!left_out.empty()) {
    page.line();
    page.paragraph("", fmt::format("Not judged: {}.", fmt::join(left_out, ", ")));
  }
  write_cautions(page);
}

}  // namespace

std::string room_report(const Room& room, UnitSystem units) {
  const Figures figures(units);
  Page page;
  const std::string fits =
      room.outlets == 0
          ? "No more outlets fit on " + room.line
          : counted_more(room.outlets) + (room.outlets == 1 ? " fits on " : " fit on ") + room.line;
  if (room.fails_as_it_is())
    page.paragraph("", fits + ". As it is, " + all_in_words(room.ended_by) + ".");
  else if (room.end == RoomEnd::limit)
    page.paragraph("", fits + ". With one more, " + all_in_words(room.ended_by) + ".");
  else if (room.end == RoomEnd::no_place)
    page.paragraph("", fits + "; there is no place for another.");
  else
    page.paragraph("", fits + "; no more were tried.");
  page.line();
  CountTable(room.counts, "more", figures).write(page);
  end(page, room.judged);
  return page.take();
}

std::string longest_line_report(const LongestLine& longest, UnitSystem units) {
  const Figures figures(units);
  Page page;
  if (longest.outlets == 0) {
    page.paragraph("",
                   fmt::format("{} cannot be laid with up to {}. With the last of these, {}.",
                               longest.line,
                               outlets(longest.counts.back().added),
                               all_in_words(longest.ended_by)));
  } else {
    std::string text = fmt::format("{} can have {} over {}",
                                   longest.line,
                                   outlets(longest.outlets),
                                   figures.height(longest.length));
    if (longest.fewest > 1) text += fmt::format(", and not fewer than {}", longest.fewest);
    text += longest.end == RoomEnd::limit ? ". With one more, " + all_in_words(longest.ended_by)
                                          : "; no more were tried";
    page.paragraph("", text + ".");
  }
  page.line();
  CountTable(longest.counts, "outlets", figures).write(page);
  end(page, longest.judged);
  return page.take();
}

}  // namespace hydro
