#include "hydro/text/pocket_sheet.hpp"

#include "hydro/answers/comparison.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/supply_words.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <set>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr std::size_t columns = 60;
constexpr std::size_t most_lines_of_text = 40;
constexpr int most_broken_on_a_line = 60;

std::vector<std::string> rows_of(const std::string& text) {
  std::vector<std::string> rows;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    rows.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return rows;
}

/// What stalls when any one of some neighbours breaks.
struct Breaks {
  std::string line;
  int first;
  int last;
  bool all_the_same;                           ///< each of them stalls the same
  std::map<std::string, std::set<int>> stall;  ///< by line, the broken ones among them
  Pressure lowest_reading;                     ///< of the gauge
  Pressure highest_reading;
};

class PocketSheet {
 public:
  PocketSheet(const Layout& layout, const std::string& set, const Figures& figures)
      : setting_(set_for_rated_if_possible(layout)),
        sound_(setting_.solution),
        title_(set),
        figures_(figures),
        shown_(figures.units()) {}

  std::string write() {
    Page head(columns);
    heading(head);
    rows(head);
    Page foot(columns);
    foot.line("Estimate: check in the field. Release the pressure before");
    foot.line("touching a riser. Keep clear of engine and shafts.");
    std::vector<std::string> text = rows_of(head.take());
    const std::vector<std::string> last = rows_of(foot.take());
    const std::vector<std::string> broken =
        breaks(most_lines_of_text - std::min(most_lines_of_text, text.size() + last.size()));
    text.insert(text.end(), broken.begin(), broken.end());
    text.insert(text.end(), last.begin(), last.end());
    std::string sheet;
    for (const std::string& row : text) (sheet += row) += '\n';
    return sheet;
  }

 private:
  Pressure reading(const Solution& solution) const {
    const OperatingPoint& supply = solution.supply();
    return supply.gauge_reading.value_or(supply.source_pressure);
  }

  void heading(Page& page) const {
    const std::string& site = sound_.layout().site().name;
    const Giving first = giving(sound_.supply().flow, figures_);
    page.paragraph("", site + (site.empty() || title_.empty() ? "" : ": ") + title_);
    page.paragraph(
        "",
        fmt::format("{} {}{}, {}",
                    sound_.supply().gauge_reading ? "Gauge" : "Supply",
                    figures_.pressure_with_unit(reading(sound_)),
                    setting_.speed ? " at " + figures_.speed(*setting_.speed) : std::string(),
                    first.takes_in ? first.in_words() : first.amount));
    further_supplies(page);
    if (!setting_.reached) page.paragraph("", "NOT ENOUGH for the rated pressure everywhere.");
    if (!setting_.limits.empty())
      page.paragraph("", "OUTSIDE A LIMIT: " + in_words(setting_.limits) + ".");
  }

  void further_supplies(Page& page) const {
    constexpr std::size_t most_told = 6;
    const std::vector<OperatingPoint>& further = sound_.further_supplies();
    for (std::size_t i = 0; i < std::min(most_told, further.size()); ++i)
      page.paragraph("",
                     fmt::format("{} {}",
                                 sound_.layout().further_supplies()[i].name,
                                 giving(further[i].flow, figures_).in_words()));
  }

  void rows(Page& page) const {
    constexpr std::size_t most_rows = 20;
    page.line(fmt::format("{:<14}   {:<17}     {}",
                          "",
                          fmt::format("{} at outlet", shown_.pressure.symbol),
                          fmt::format("{:g} {} in", shown_.bucket, shown_.volume.symbol)));
    page.line(fmt::format("{:<14}  {:>5} {:>6} {:>5}   {:>7} {:>7} {:>7}",
                          "row",
                          "first",
                          "middle",
                          "last",
                          "first",
                          "middle",
                          "last"));
    std::size_t told = 0;
    std::size_t left_out = 0;
    for (const LineSolution& line : sound_.lines()) {
      if (line.shut || line.state.empty()) continue;
      if (told == most_rows) {
        ++left_out;
        continue;
      }
      ++told;
      const std::size_t last = line.state.size() - 1;
      const std::size_t middle = last / 2;
      const auto pressure = [&](std::size_t i) { return figures_.pressure(line.pressure[i]); };
      const auto seconds = [&](std::size_t i) { return figures_.bucket_time(line.flow[i]); };
      page.line(fmt::format("{:<14}  {:>5} {:>6} {:>5}   {:>7} {:>7} {:>7}",
                            cut(line.name, 14),
                            pressure(0),
                            pressure(middle),
                            pressure(last),
                            seconds(0),
                            seconds(middle),
                            seconds(last)));
    }
    if (left_out > 0) page.line(fmt::format("and {} more rows", left_out));
  }

  /// No more than so many rows of text.
  std::vector<std::string> breaks(std::size_t room) const {
    std::vector<Breaks> found = broken();
    if (found.empty()) return {};
    Page title(columns);
    title.paragraph("",
                    fmt::format("If a riser shears: {}, {}; what stalls (the rest works)",
                                sound_.supply().gauge_reading ? "gauge" : "supply",
                                shown_.pressure.symbol));
    std::vector<std::string> text = rows_of(title.take());
    for (;;) {
      std::vector<std::string> told;
      for (const Breaks& it : found) {
        const std::vector<std::string> rows = rows_of(sentence(it));
        told.insert(told.end(), rows.begin(), rows.end());
      }
      if (text.size() + told.size() <= room) {
        text.insert(text.end(), told.begin(), told.end());
        return text;
      }
      if (!take_together(found)) return {};
    }
  }

  std::vector<Breaks> broken() const {
    std::vector<Breaks> found;
    const Layout& layout = sound_.layout();
    for (std::size_t l = 0; l < layout.lines().size(); ++l) {
      const Line& line = layout.lines()[l];
      const bool breaks = !sound_.lines()[l].shut && line.riser.inside_diameter &&
                          line.outlet_count() <= most_broken_on_a_line;
      for (int number = 1; breaks && number <= line.outlet_count(); ++number) {
        Breaks next = broken_at(line.name, number);
        if (!found.empty() && found.back().line == next.line && found.back().stall == next.stall)
          join(found.back(), next);
        else
          found.push_back(std::move(next));
      }
    }
    return found;
  }

  Breaks broken_at(const std::string& line, int outlet) const {
    const Solution after = solve(sound_.layout().with_fault(riser_sheared(line, outlet)));
    Breaks found{line, outlet, outlet, true, {}, reading(after), reading(after)};
    for (const BelowMinimum& it : compare(sound_, after).newly_below_minimum)
      found.stall[it.line].insert(it.outlet);
    if (found.stall.contains(line)) found.stall[line].insert(outlet);  // neighbours look alike then
    return found;
  }

  static void join(Breaks& breaks, const Breaks& next) {
    breaks.last = next.last;
    breaks.all_the_same = breaks.all_the_same && next.all_the_same && breaks.stall == next.stall;
    for (const auto& [line, outlets] : next.stall)
      breaks.stall[line].insert(outlets.begin(), outlets.end());
    breaks.lowest_reading = std::min(breaks.lowest_reading, next.lowest_reading);
    breaks.highest_reading = std::max(breaks.highest_reading, next.highest_reading);
  }

  /// The two neighbours that differ least. False where there are none on one line.
  static bool take_together(std::vector<Breaks>& found) {
    const auto size = [](const Breaks& it) {
      std::size_t count = 0;
      for (const auto& [line, outlets] : it.stall) count += outlets.size();
      return count;
    };
    std::size_t best = found.size();
    std::size_t least = 0;
    for (std::size_t i = 0; i + 1 < found.size(); ++i) {
      if (found[i].line != found[i + 1].line) continue;
      Breaks both = found[i];
      join(both, found[i + 1]);
      const std::size_t more = 2 * size(both) - size(found[i]) - size(found[i + 1]);
      if (best == found.size() || more < least) {
        best = i;
        least = more;
      }
    }
    if (best == found.size()) return false;
    join(found[best], found[best + 1]);
    found.erase(found.begin() + static_cast<std::ptrdiff_t>(best) + 1);
    return true;
  }

  /// "row 2 heads 4 to 7: 33.1, stall 3 to 10; row 1 9, 10".
  std::string sentence(const Breaks& it) const {
    const std::string low = figures_.pressure(it.lowest_reading);
    const std::string high = figures_.pressure(it.highest_reading);
    std::vector<int> outlets;
    for (int number = it.first; number <= it.last; ++number) outlets.push_back(number);
    std::string text = fmt::format("{} head{} {}: {}, ",
                                   it.line,
                                   outlets.size() == 1 ? "" : "s",
                                   stretches(outlets),
                                   low == high ? low : low + " to " + high);
    if (it.stall.empty()) {
      text += "none stalls";
    } else {
      text += it.all_the_same ? "stall " : "stall at most ";
      if (it.stall.contains(it.line)) text += stalled(it, it.line);
      for (const auto& [line, others] : it.stall)
        if (line != it.line)
          text += (text.ends_with(' ') ? "" : "; ") + line + " " + stalled(it, line);
    }
    Page page(columns);
    page.paragraph("  ", text);
    return page.take();
  }

  std::string stalled(const Breaks& it, const std::string& line) const {
    const std::set<int>& outlets = it.stall.at(line);
    if (outlets.size() == sound_.line(line).state.size()) return "all";
    return stretches(std::vector<int>(outlets.begin(), outlets.end()));
  }

  Setting setting_;
  const Solution& sound_;
  std::string title_;
  const Figures& figures_;
  const UnitSet& shown_;
};

}  // namespace

std::vector<std::string> pocket_sheets(const Layout& layout, std::optional<UnitSystem> units) {
  const Figures figures(units.value_or(layout.units()));
  const Layout sound = layout.without_faults();
  std::vector<std::string> sheets;
  for (const WateringSet& set : layout.sets())
    sheets.push_back(PocketSheet(sound.watering({set.name}), set.name, figures).write());
  if (layout.sets().empty()) sheets.push_back(PocketSheet(sound, "", figures).write());
  return sheets;
}

}  // namespace hydro
