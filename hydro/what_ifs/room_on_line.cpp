#include "hydro/what_ifs/room_on_line.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/counted.hpp"
#include "hydro/what_ifs/in_order.hpp"
#include "hydro/what_ifs/laid.hpp"
#include "hydro/what_ifs/terminal_line.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>

namespace hydro {

RoomAtCount at_count(const Layout& layout, int added, const Limits& limits) {
  const Solution solution = solve(layout);
  Limits with_rated = limits;
  with_rated.judged.push_back(Limit::rated);
  RoomAtCount at{.added = added,
                 .supply_pressure = solution.supply_pressure(),
                 .inflow = solution.inflow(),
                 .margins = margins(solution, with_rated)};
  const auto weakest = std::ranges::find(at.margins, Limit::rated, &Margin::limit);
  if (weakest == at.margins.end()) return at;
  at.line = weakest->line;
  at.outlet = weakest->outlet.value();
  at.pressure = solution.line(at.line).pressure[static_cast<std::size_t>(at.outlet - 1)];
  at.rated = layout.outlet_at(layout.index_of(at.line), at.outlet).rated_pressure();
  if (!std::ranges::count(limits.judged, Limit::rated)) at.margins.erase(weakest);
  return at;
}

void require_room(const Layout& layout, std::string_view line, int most, const Limits& limits) {
  Examination examination;
  if (limits.judged.empty())
    examination.add("limits.judged", "is empty; at least one limit must be chosen");
  const std::size_t index = layout.index_of(line);
  examination.within("most", most, 1, 100'000);
  require_water(layout, index, examination);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

Room room_on_line(const Layout& layout,
                  std::string_view line,
                  const RoomOptions& options,
                  const Work& work) {
  require_room(layout, line, options.most, options.limits);
  const int places = places_for_more(layout, line, options.more);
  const int most = std::min(options.most, places);
  const auto solved_with = [&](std::size_t added) {
    const int count = static_cast<int>(added);
    return at_count(with_more_outlets(layout, line, options.more, count), count, options.limits);
  };
  const auto is_too_many = [](const std::vector<RoomAtCount>& so_far) {
    return !so_far.back().fits();
  };
  std::vector<RoomAtCount> counts =
      in_order(static_cast<std::size_t>(most) + 1, work, solved_with, is_too_many);
  std::vector<Margin> ended_by = passed(counts.back().margins);
  if (!ended_by.empty())
    return {std::string(line),
            std::max(0, counts.back().added - 1),
            RoomEnd::limit,
            std::move(counts),
            std::move(ended_by),
            options.limits.judged};
  const RoomEnd end = most < options.most ? RoomEnd::no_place : RoomEnd::most;
  return {std::string(line), most, end, std::move(counts), {}, options.limits.judged};
}

std::vector<RoomWithPipe> room_by_pipe(const Layout& layout,
                                       std::string_view line,
                                       const std::vector<Pipe>& pipes,
                                       const RoomOptions& options,
                                       const Work& work) {
  return by_pipe(pipes, work, [&](const Pipe& pipe, const Work& part) {
    const Layout with = layout.with_line(laid_in(layout.line(line), pipe));
    return RoomWithPipe{pipe, room_on_line(with, line, options, part)};
  });
}

}  // namespace hydro
