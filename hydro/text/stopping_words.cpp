#include "hydro/text/stopping_words.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <string>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr std::size_t most_told = 6;

/// For each line the worst of its surges; the highest pressure first.
std::vector<LineSurge> worst_of(const std::vector<LineSurge>& surges) {
  std::map<std::string, LineSurge> by_line;
  for (const LineSurge& surge : surges) {
    const auto [place, is_new] = by_line.emplace(surge.line, surge);
    if (!is_new && surge.steady + surge.rise > place->second.steady + place->second.rise)
      place->second = surge;
  }
  std::vector<LineSurge> worst;
  worst.reserve(by_line.size());
  for (const auto& [line, surge] : by_line) worst.push_back(surge);
  std::ranges::stable_sort(worst, [](const LineSurge& a, const LineSurge& b) {
    return a.steady + a.rise > b.steady + b.rise;
  });
  return worst;
}

std::string closing(const LineSurge& it) {
  if (!it.rating) return "";
  if (!it.shortest_closing) return "never";
  return fmt::format("{:.0f} s", std::max(1.0, std::ceil(*it.shortest_closing / units::s)));
}

void table(Page& page, const std::vector<LineSurge>& surges, const Figures& figures) {
  constexpr std::size_t widest_line = 24;
  const auto row = [&](const std::string& line,
                       const std::string& steady,
                       const std::string& rise,
                       const std::string& rating,
                       const std::string& slowly) {
    page.line(fmt::format(
        "    {:<{}}  {:>8}  {:>9}  {:>8}  {:>8}", line, widest_line, steady, rise, rating, slowly));
  };
  row("", "running", "more when", "pipe's", "close");
  row("", "", "stopped", "rating", "in, or");
  row("", figures.units().pressure.symbol, "", "", "longer");
  for (std::size_t i = 0; i < std::min(most_told, surges.size()); ++i) {
    const LineSurge& it = surges[i];
    row(cut(it.line, widest_line),
        figures.pressure(it.steady),
        figures.pressure(it.rise),
        it.rating ? figures.pressure(*it.rating) : "?",
        closing(it));
  }
  if (surges.size() > most_told)
    page.line(fmt::format("    and {} more lines, with less", surges.size() - most_told));
}

}  // namespace

void write_filling_and_stopping(Page& page,
                                const std::vector<LineSurge>& surges,
                                const Figures& figures) {
  page.line();
  page.line("Filling and stopping");
  page.paragraph("  - ",
                 fmt::format("Fill slowly, at {} or less in the main, with vents open where air "
                             "gathers (common practice); open the last valve only when the lines "
                             "are full.",
                             figures.system() == UnitSystem::us ? "1 ft/s" : "0.3 m/s"));
  const std::vector<LineSurge> worst = worst_of(surges);
  std::vector<LineSurge> told;
  std::ranges::copy_if(
      worst, std::back_inserter(told), [](const LineSurge& it) { return !it.is_safe(); });
  if (surges.empty()) return;
  const std::string quickly = worst.front().closing > Time{}
                                  ? fmt::format("within {:.3g} s", worst.front().closing / units::s)
                                  : std::string("at once");
  if (told.empty()) {
    page.paragraph(
        "  - ",
        fmt::format("No pipe comes to its rating if its water is stopped {}; the highest "
                    "is {} in {}.",
                    quickly,
                    figures.pressure_with_unit(worst.front().steady + worst.front().rise),
                    worst.front().line));
    return;
  }
  page.paragraph("  - ",
                 fmt::format("Close valves slowly: water that is stopped {} strikes the pipe. Past "
                             "their rating, or of no rating that is known:",
                             quickly));
  table(page, told, figures);
  if (std::ranges::any_of(told, [](const LineSurge& it) { return !it.wall_known; }))
    page.paragraph("    ",
                   "Where the wall of a pipe is not known it is taken for stiff, the worst there "
                   "can be; in plastic pipe it is less than half of that.");
}

}  // namespace hydro
