#include "hydro/text/chances_report.hpp"

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/unit_text.hpp"
#include "hydro/text/cautions.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <iterator>

#include <fmt/format.h>

namespace hydro {
namespace {

/// 1 of 20, what a grower may be asked to bear: common practice of statistics, no source.
constexpr double seldom = 0.05;

std::string percent(double share) {
  return fmt::format("{} %", to_text(std::round(share * 1e4) / 100));
}

/// "none", "<1 %", "12 %", "all".
std::string chance(double share) {
  if (!(share > 0)) return "none";
  if (share >= 1) return "all";
  if (share < 0.01) return "<1 %";
  if (share > 0.99) return ">99 %";
  return fmt::format("{:.0f} %", 100 * share);
}

/// Of a share of N cases from the true chance, whichever that is, 19 times of 20: two deviations of
/// the binomial distribution where it is widest, at 1/2, and half a case for its steps. Summed up
/// for N 2 to 2500, and 0.001 to 0.999 in steps of 0.001, it is never less than 0.95.
double farthest_off(int cases) {
  return 1 / std::sqrt(cases) + 0.5 / cases;
}

/// "no case", "fewer than 1 of 100 cases", "12 of 100 cases", "all cases".
std::string of_100_cases(double share) {
  if (!(share > 0)) return "no case";
  if (share >= 1) return "all cases";
  if (share < 0.01) return "fewer than 1 of 100 cases";
  if (share > 0.99) return "more than 99 of 100 cases";
  return fmt::format("{:.0f} of 100 cases", 100 * share);
}

/// Which limits outlets have on the lines that are open.
struct LimitsThere {
  bool minimum = false;
  bool maximum = false;
};

LimitsThere limits_in(const Layout& layout) {
  LimitsThere found;
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    if (layout.is_shut(i)) continue;
    for (int number = 1; number <= layout.lines()[i].outlet_count(); ++number) {
      const Outlet& kind = layout.outlet_at(i, number);
      found.minimum = found.minimum || kind.minimum;
      found.maximum = found.maximum || kind.maximum;
    }
  }
  return found;
}

constexpr const char* not_judged = "-";
constexpr const char* none_is_judged =
    "No outlet is judged: each is capped or broken, or its line is shut.";

/// The cases, and the shares of the quantiles.
struct Drawn {
  int realisations;
  std::uint64_t seed;
  std::vector<double> quantiles;
  bool operator==(const Drawn&) const = default;
};

/// Rows of one table have its columns, and are of the same cases.
Drawn drawn_for_all(const std::vector<TroubleAtCount>& found) {
  const auto drawn_for = [](const TroubleAtCount& it) {
    return Drawn{it.below_rated.of, it.seed, it.quantiles};
  };
  if (found.empty()) throw InvalidInput("found", "is empty, must have a count");
  for (const TroubleAtCount& it : found)
    if (drawn_for(it) != drawn_for(found.front()) ||
        (it.lowest_pressure && it.lowest_pressure->quantiles.size() != it.quantiles.size()))
      throw InvalidInput(
          fmt::format("found, {} more", it.more),
          "has other realisations, seed or quantiles, must have those of the first count");
  return drawn_for(found.front());
}

/// One row of a table, in words.
struct Row {
  std::string first;
  std::vector<std::string> quantiles = {};
  std::string below_rated = not_judged;
  std::string below_minimum = not_judged;
  std::string above_maximum = not_judged;
};

/// The names and numbers of outlets stand in both: another layout's would be told of as this one's.
void expect_of(const Layout& layout, const Chances& found) {
  const std::vector<Line>& lines = layout.lines();
  const bool fits =
      std::ranges::equal(lines, found.lines, [](const Line& line, const LineChances& its) {
        return line.name == its.name &&
               static_cast<std::size_t>(line.outlet_count()) == its.below_rated.size();
      });
  if (!fits) throw InvalidInput("found", "is of other lines or outlets, must be of this layout");
}

class ChancesPage {
 public:
  ChancesPage(const Layout& layout, const Drawn& drawn, const Figures& figures)
      : drawn_(drawn), figures_(figures), limits_(limits_in(layout)) {
    if (!layout.site().name.empty()) page_.paragraph("", layout.site().name);
  }

  void sentence(const std::string& text) { page_.paragraph("* ", text); }
  void line(const std::string& text = "") { page_.line(text); }
  void begin(const std::string& title) {
    page_.paragraph("", title);
    page_.line();
  }

  void write_inputs(const Uncertainty& uncertainty) {
    std::vector<std::string> sentences;
    const auto add = [&](const std::string& what, double share) {
      if (share > 0) sentences.push_back(fmt::format("{}: {}", what, percent(share)));
    };
    add("the flow of each outlet by itself", uncertainty.manufacturing_variation);
    add("the flow of a kind of outlet, all alike", uncertainty.rating);
    for (const OutletUncertainty& it : uncertainty.outlets) {
      const std::string kind = in_quotes(it.outlet);
      if (it.manufacturing_variation)
        sentences.push_back(fmt::format("the flow of each {} by itself, instead: {}",
                                        kind,
                                        percent(*it.manufacturing_variation)));
      if (it.rating)
        sentences.push_back(
            fmt::format("the flow of all {}, instead: {}", kind, percent(*it.rating)));
    }
    add("the bore of a kind of pipe", uncertainty.inside_diameter);
    add("the C or roughness of a kind of pipe", uncertainty.wall);
    add("the local losses of a line", uncertainty.loss_coefficient);
    add("the head of a pump", uncertainty.pump_head);
    if (uncertainty.supply_pressure > Pressure{})
      sentences.push_back("the pressure of the supply: " +
                          figures_.pressure_with_unit(uncertainty.supply_pressure));
    if (uncertainty.elevation > Length{})
      sentences.push_back("an elevation that was measured: " +
                          figures_.height(uncertainty.elevation));
    if (sentences.empty()) sentences.push_back("nothing: every case is the same");
    page_.list("What may be off, in two cases of three by no more than", sentences);
  }

  /// Head of the columns that both tables have. @param which of the outlets a row is of
  void heading(const std::string& first,
               std::size_t width,
               const std::string& which,
               const std::string& chance_that) {
    const std::size_t of_pressures = 8 * drawn_.quantiles.size();
    page_.line(fmt::format("{:<{}}{:^{}}   {}",
                           "",
                           width,
                           fmt::format("{}, {}", which, figures_.units().pressure.symbol),
                           of_pressures,
                           chance_that));
    std::string row = fmt::format("{:<{}}", first, width);
    for (const double share : drawn_.quantiles) row += fmt::format("{:>8}", percent(share));
    row += fmt::format("{:>14}", "below rated");
    if (limits_.minimum) row += fmt::format("{:>15}", "below minimum");
    if (limits_.maximum) row += fmt::format("{:>15}", "above maximum");
    page_.line(row);
  }

  void row(const Row& row, std::size_t width) {
    std::string text = fmt::format("{:<{}}", row.first, width);
    for (const std::string& quantile : row.quantiles) text += fmt::format("{:>8}", quantile);
    text += fmt::format("{:>14}", row.below_rated);
    if (limits_.minimum) text += fmt::format("{:>15}", row.below_minimum);
    if (limits_.maximum) text += fmt::format("{:>15}", row.above_maximum);
    page_.line(text);
  }

  const LimitsThere& limits() const { return limits_; }

  std::string end(const Uncertainty& uncertainty) {
    page_.line();
    if (!drawn_.quantiles.empty())
      page_.paragraph("",
                      "So many percent of the cases have less pressure than these columns say.");
    page_.paragraph(
        "",
        fmt::format(
            "{} cases, drawn at random (seed {}). A chance is off by no more than {:.0f} of "
            "100, 19 times of 20.",
            drawn_.realisations,
            drawn_.seed,
            std::ceil(100 * farthest_off(drawn_.realisations))));
    write_inputs(uncertainty);
    write_cautions(page_);
    return page_.take();
  }

 private:
  const Drawn& drawn_;
  const Figures& figures_;
  LimitsThere limits_;
  Page page_;
};

bool is_judged(const TroubleAtCount& it) {
  return it.lowest_pressure.has_value();
}

/// What the cases tell, of whichever chance it is: 39 of 40 times it is below high(), or above low().
bool is_seldom(const Chance& it) {
  return it.high() <= seldom;
}
bool is_frequent(const Chance& it) {
  return it.low() > seldom;
}

/// @param which of the chances @param well what every outlet does when there is no trouble
std::string room(const std::string& line,
                 const std::vector<TroubleAtCount>& found,
                 Chance TroubleAtCount::*which,
                 const std::string& well) {
  const auto first_not_told = std::ranges::find_if_not(found, is_seldom, which);
  const bool are_too_few = first_not_told != found.end() && !is_frequent((*first_not_told).*which);
  if (first_not_told == found.begin()) {
    const char* sentence =
        are_too_few ? "With {} as it is, too few cases to tell whether in at least 19 of 20 {}."
                    : "With {} as it is, in more than 1 of 20 cases not {}.";
    return fmt::format(fmt::runtime(sentence), line, well);
  }
  const int most = std::prev(first_not_told)->more;
  const std::string more = most == 0   ? std::string("no outlet")
                           : most == 1 ? std::string("1 outlet")
                                       : fmt::format("up to {} outlets", most);
  return fmt::format(
      "With {} more on {}{}, in at least 19 of 20 cases {}{}.",
      more,
      line,
      first_not_told == found.end() ? ", the most that were looked at" : "",
      well,
      are_too_few ? fmt::format("; with {}, too few cases to tell", first_not_told->more) : "");
}

}  // namespace

std::string chances_report(const Layout& layout,
                           const Chances& found,
                           const Uncertainty& uncertainty,
                           std::optional<UnitSystem> units) {
  const Figures figures(units.value_or(layout.units()));
  expect_of(layout, found);
  const Drawn drawn{found.realisations, found.seed, found.quantiles};
  ChancesPage page(layout, drawn, figures);
  page.begin("How likely outlets fall short when not all is known exactly");
  if (!found.lowest_pressure) {
    page.sentence(none_is_judged);
  } else {
    page.sentence(fmt::format("At least one outlet is below its rated pressure in {}.",
                              of_100_cases(found.any_below_rated.share())));
    if (page.limits().minimum)
      page.sentence(fmt::format("At least one is below the pressure at which it works in {}.",
                                of_100_cases(found.any_below_minimum.share())));
  }
  constexpr std::size_t width = 10;
  for (std::size_t i = 0; i < found.lines.size(); ++i) {
    const LineChances& line = found.lines[i];
    if (line.below_rated.empty() || layout.is_shut(i)) continue;
    page.line();
    page.line(line.name);
    page.heading("  outlet", width, "at the outlet", "chance that it is");
    for (std::size_t j = 0; j < line.below_rated.size(); ++j) {
      Row row{.first = fmt::format("{:>8}", j + 1)};
      for (const Series<Pressure>& quantile : line.pressure.quantiles)
        row.quantiles.push_back(figures.pressure(quantile[j]));
      const Outlet& kind = layout.outlet_at(i, static_cast<int>(j) + 1);
      if (line.is_judged[j]) row.below_rated = chance(line.below_rated[j]);
      if (line.is_judged[j] && kind.minimum) row.below_minimum = chance(line.below_minimum[j]);
      if (line.is_judged[j] && kind.maximum) row.above_maximum = chance(line.above_maximum[j]);
      page.row(row, width);
    }
  }
  page.line();
  for (const UniformityChances& it : found.uniformity)
    page.line(fmt::format("{}: DU of flows {:.0f} %, give or take {:.0f}",
                          it.line.empty() ? "all " + in_quotes(it.outlet_name) : it.line,
                          it.distribution.mean,
                          std::ceil(2 * it.distribution.deviation)));
  return page.end(uncertainty);
}

std::string trouble_report(const Layout& layout,
                           std::string_view line,
                           const std::vector<TroubleAtCount>& found,
                           const Uncertainty& uncertainty,
                           std::optional<UnitSystem> units) {
  const Figures figures(units.value_or(layout.units()));
  const std::string& name = layout.line(line).name;
  const Drawn drawn = drawn_for_all(found);
  ChancesPage page(layout, drawn, figures);
  page.begin(fmt::format("More outlets on {}, when not all is known exactly", name));
  if (std::ranges::none_of(found, is_judged)) {
    page.sentence(none_is_judged);
  } else {
    page.sentence(
        room(name, found, &TroubleAtCount::below_rated, "every outlet has its rated pressure"));
    if (page.limits().minimum)
      page.sentence(room(name, found, &TroubleAtCount::below_minimum, "every outlet works"));
  }
  page.line();
  constexpr std::size_t width = 8;
  page.heading("more", width, "weakest outlet", "chance that at least one is");
  for (const TroubleAtCount& it : found) {
    Row row{.first = fmt::format("{:>4}", it.more)};
    if (is_judged(it)) {
      for (const Pressure& quantile : it.lowest_pressure->quantiles)
        row.quantiles.push_back(figures.pressure(quantile));
      row.below_rated = chance(it.below_rated.share());
      row.below_minimum = chance(it.below_minimum.share());
      row.above_maximum = chance(it.above_maximum.share());
    } else {
      row.quantiles.assign(drawn.quantiles.size(), not_judged);
    }
    page.row(row, width);
  }
  return page.end(uncertainty);
}

}  // namespace hydro
