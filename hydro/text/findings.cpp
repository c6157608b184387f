#include "hydro/text/findings.hpp"

#include "hydro/text/supply_words.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

/// Whether every outlet of the line serves; the sentences say which do not.
bool write_outlets(Page& page,
                   const Solution& solution,
                   const OutletKinds& kinds,
                   const Figures& figures,
                   std::size_t line_index) {
  const std::vector<std::size_t>& kind_of_outlet = kinds.on_line(line_index);
  std::map<std::pair<std::size_t, Doing>, std::vector<int>> outlets;  // by kind
  bool all_serve = true;
  for (std::size_t i = 0; i < kind_of_outlet.size(); ++i) {
    const Doing what = doing(solution, line_index, i);
    if (what == Doing::serves || what == Doing::shut) continue;
    outlets[{kind_of_outlet[i], what}].push_back(static_cast<int>(i) + 1);
    all_serve = false;
  }
  for (const auto& [group, numbers] : outlets)
    page.paragraph("* ",
                   in_a_sentence(group.second,
                                 *kinds.all()[group.first].outlet,
                                 solution.lines()[line_index],
                                 numbers,
                                 figures));
  return all_serve;
}

void write_openings(Page& page,
                    const Solution& solution,
                    const Figures& figures,
                    std::size_t line_index) {
  const Unit<Length>& length = figures.units().length;
  const Layout& layout = solution.layout();
  const LineSolution& solved = solution.lines()[line_index];
  for (std::size_t i = 0; i < solved.openings.size(); ++i) {
    const Opening& opening = solved.openings[i];
    const Fault& fault = layout.faults_on(line_index)[opening.fault];
    std::string escapes = figures.flow_with_unit(opening.flow) + " escapes";
    if (std::holds_alternative<LineCut>(fault)) {
      const bool both =
          i + 1 < solved.openings.size() && solved.openings[i + 1].fault == opening.fault;
      const std::string from_beyond = "from the part beyond, to which other lines bring it";
      if (both) {
        const Flow beyond = solved.openings[++i].flow;
        escapes += " from the part before it";
        if (!figures.rounds_to_nothing(beyond))
          escapes += fmt::format(" and {} {}", figures.flow_with_unit(beyond), from_beyond);
      } else if (layout.has_water_beyond_open_end(line_index)) {
        escapes += fmt::format(" {}; no water is before it", from_beyond);
      } else {
        escapes += "; no water is beyond";
      }
    }
    page.paragraph("* ",
                   fmt::format("{}: {} at {:.1f} {}, {}.",
                               solved.name,
                               kind_of(fault),
                               opening.distance / length,
                               length.symbol,
                               escapes));
  }
}

void write_pipes(Page& page, const Check& check, const Figures& figures) {
  const Unit<Velocity>& velocity = figures.units().velocity;
  for (const FastWater& fast : check.fast_water)
    page.paragraph("* ",
                   fmt::format("{}: the water runs at {:.1f} {}, faster than the customary {:.3g}.",
                               fast.line,
                               fast.velocity / velocity,
                               velocity.symbol,
                               CheckOptions{}.velocity / velocity));
  for (const OverRating& over : check.over_rating)
    page.paragraph("* ",
                   fmt::format("{}: {} in its pipe{}, over the {} that it is rated for.",
                               over.line,
                               figures.pressure_with_unit(over.pressure),
                               over.pipe_name.empty() ? "" : " " + over.pipe_name,
                               figures.limit(over.rating)));
}

bool has_running_water(const LineSolution& line, const Figures& figures) {
  return std::ranges::any_of(line.pipes, [&](const PipeExtremes& pipe) {
    return !figures.rounds_to_nothing(pipe.highest_velocity);
  });
}

/// Where all is dry, the pressures in lines where water stands say nothing more.
void write_low_pressures(Page& page,
                         const Solution& solution,
                         const Check& check,
                         const Figures& figures,
                         bool all_is_dry) {
  for (const BelowAtmosphere& suction : check.below_atmosphere) {
    if (all_is_dry && !has_running_water(solution.line(suction.line), figures)) continue;
    page.paragraph("* ",
                   fmt::format("{}: its lowest pressure is {}, below the atmosphere's{}.",
                               suction.line,
                               figures.pressure_with_unit(suction.pressure),
                               suction.column_separates
                                   ? "; the water column parts there and the figures do not hold"
                                   : ""));
  }
}

}  // namespace

void write_findings(Page& page,
                    const Solution& solution,
                    const Check& check,
                    const OutletKinds& kinds,
                    const Figures& figures) {
  // One sentence says it of all: no line is told by itself.
  const bool all_is_dry = write_that_all_is_dry(page, solution, check, figures);
  bool all_serve = true;
  int open = 0;
  for (std::size_t l = 0; l < solution.lines().size(); ++l) {
    if (!all_is_dry) all_serve = write_outlets(page, solution, kinds, figures, l) && all_serve;
    write_openings(page, solution, figures, l);
    if (!solution.lines()[l].shut) open += static_cast<int>(solution.lines()[l].state.size());
  }
  const int all = solution.layout().outlet_count();
  if (all == 0)
    page.paragraph("* ", "There are no outlets.");
  else if (all_serve && !all_is_dry)
    page.paragraph("* ",
                   fmt::format("Every one of the {} {}outlets has its rated pressure.",
                               open,
                               open < all ? "open " : ""));
  write_supply_limits(page, solution, check, figures);
  write_pipes(page, check, figures);
  write_low_pressures(page, solution, check, figures, all_is_dry);
}

}  // namespace hydro
