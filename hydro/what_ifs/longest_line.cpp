#include "hydro/what_ifs/longest_line.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/what_ifs/counted.hpp"
#include "hydro/what_ifs/in_order.hpp"
#include "hydro/what_ifs/laid.hpp"
#include "hydro/what_ifs/terminal_line.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>

namespace hydro {
namespace {

void end_reaches(Line& line) {
  const Length end = line.whole_length();
  std::vector<PipeReach> kept;
  for (PipeReach& reach : line.reaches) {
    if (!kept.empty() && !(kept.back().to < end)) break;
    reach.to = std::min(reach.to, end);
    kept.push_back(std::move(reach));
  }
  line.reaches = std::move(kept);
}

}  // namespace

Layout with_outlets(const Layout& layout,
                    std::string_view line,
                    const LongestLineOptions& options,
                    int count) {
  const std::size_t index = layout.index_of(line);
  Examination examination;
  require_terminal(layout, index, examination);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  const Line& now = layout.lines()[index];
  Line laid = now;
  laid.outlets.clear();
  laid.outlet = options.outlet ? *options.outlet : now.kind_of(1);
  laid.count = count;
  laid.spacing = spacing_of(now, options.spacing);
  laid.first_at = options.first_at.value_or(now.place_of(1));
  laid.length.reset();
  if (laid.whole_length() == Length{}) laid.length = laid.spacing;
  end_reaches(laid);
  if (now.ground_rise)
    laid.ground_rise = *now.ground_rise * (laid.whole_length() / now.whole_length());
  laid.elevations.clear();
  if (!now.elevations.empty())
    for (int number = 1; number <= count; ++number)
      laid.elevations.push_back(
          layout.ground_elevation(index, std::min(laid.place_of(number), now.whole_length())));
  return layout.with_line(std::move(laid));
}

LongestLine longest_line(const Layout& layout,
                         std::string_view line,
                         const LongestLineOptions& options,
                         const Work& work) {
  require_room(layout, line, options.most, options.limits);
  const auto solved_with = [&](std::size_t step) {
    const int count = static_cast<int>(step) + 1;
    return at_count(with_outlets(layout, line, options, count), count, options.limits);
  };
  const auto is_too_many = [](const std::vector<RoomAtCount>& so_far) {
    return so_far.size() > 1 && so_far[so_far.size() - 2].fits() && !so_far.back().fits();
  };
  LongestLine longest{.line = std::string(line), .judged = options.limits.judged};
  longest.counts = in_order(static_cast<std::size_t>(options.most), work, solved_with, is_too_many);
  for (const RoomAtCount& at : longest.counts) {
    if (!at.fits()) continue;
    if (longest.fewest == 0) longest.fewest = at.added;
    longest.outlets = at.added;
  }
  longest.ended_by = passed(longest.counts.back().margins);
  if (!longest.ended_by.empty()) longest.end = RoomEnd::limit;
  if (longest.outlets > 0)
    longest.length =
        with_outlets(layout, line, options, longest.outlets).line(line).place_of(longest.outlets);
  return longest;
}

std::vector<LongestWithPipe> longest_by_pipe(const Layout& layout,
                                             std::string_view line,
                                             const std::vector<Pipe>& pipes,
                                             const LongestLineOptions& options,
                                             const Work& work) {
  return by_pipe(pipes, work, [&](const Pipe& pipe, const Work& part) {
    const Layout with = layout.with_line(laid_in(layout.line(line), pipe));
    return LongestWithPipe{pipe, longest_line(with, line, options, part)};
  });
}

}  // namespace hydro
