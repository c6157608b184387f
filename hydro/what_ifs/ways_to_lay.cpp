#include "hydro/what_ifs/ways_to_lay.hpp"

#include "hydro/what_ifs/laid.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace hydro {
namespace {

bool is_same_place(const Length& one, const Length& other) {
  return !(one > other + same_place) && !(other > one + same_place);
}

/// All ways to choose `taken` of `of` in rising order, told one after another.
template <class Tell>
void for_each_choice(std::size_t taken, std::size_t of, Tell tell) {
  if (taken > of) return;
  std::vector<std::size_t> choice(taken);
  std::iota(choice.begin(), choice.end(), std::size_t{0});
  while (true) {
    tell(choice);
    std::size_t i = taken;
    while (i > 0 && choice[i - 1] == of - taken + (i - 1)) --i;
    if (i == 0) return;
    ++choice[i - 1];
    for (; i < taken; ++i) choice[i] = choice[i - 1] + 1;
  }
}

double binomial(std::size_t of, std::size_t taken) {
  double count = taken <= of ? 1 : 0;
  for (std::size_t i = 0; i < taken && i < of; ++i)
    count *= static_cast<double>(of - i) / static_cast<double>(i + 1);
  return std::round(count);
}

double cost_of_length(const Pipe& pipe, const Length& length, const std::vector<PricedPipe>& all) {
  const auto it =
      std::find_if(all.begin(), all.end(), [&](const PricedPipe& one) { return one.pipe == pipe; });
  return it != all.end() && it->price ? cost(*it->price, length) : si(area(pipe) * length);
}

}  // namespace

std::vector<Length> places_of_change(const Layout& layout,
                                     std::size_t line,
                                     const std::optional<Length>& every) {
  const Line& laid = layout.lines()[line];
  std::vector<Length> places;
  if (every) {
    for (double i = 1; i * *every < laid.whole_length() - same_place; ++i)
      places.push_back(i * *every);
    return places;
  }
  for (int outlet = 1; outlet <= laid.outlet_count(); ++outlet)
    places.push_back(laid.place_of(outlet));
  for (std::size_t other = 0; other < layout.lines().size(); ++other) {
    if (layout.feeder_of(other) == line)
      places.push_back(laid.merged(begins_at(layout.lines()[other], laid)));
    if (layout.joined_by(other) == line)
      places.push_back(laid.merged(ends_at(layout.lines()[other], laid)));
  }
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end(), is_same_place), places.end());
  std::erase_if(places, [&](const Length& place) {
    return !(place > same_place && place < laid.whole_length() - same_place);
  });
  return places;
}

Line laid_in(Line line, const Pipe& first, const Length& to, const Pipe& rest) {
  line.reaches.clear();
  line.pipe = rest;
  if (!(to < line.whole_length() - same_place))
    line.pipe = first;
  else if (to > same_place)
    line.reaches.push_back({first, to});
  return line;
}

double cost_of_line(const Line& laid, const std::vector<PricedPipe>& pipes) {
  double sum = 0;
  for (const PipeLength& it : pipes_along(laid))
    sum += cost_of_length(it.pipe, it.to - it.from, pipes);
  return sum;
}

GroupToLay::GroupToLay(const Layout& layout,
                       std::vector<std::size_t> lines,
                       int sizes,
                       const std::vector<PricedPipe>& pipes,
                       const std::optional<Length>& every)
    : layout_(layout),
      pipes_(pipes),
      lines_(std::move(lines)),
      sizes_(static_cast<std::size_t>(sizes)) {
  if (sizes_ == 1) return;
  places_ = places_of_change(layout, lines_.front(), every);
  for (const std::size_t line : lines_) {
    const std::vector<Length> places = places_of_change(layout, line, every);
    all_change_alike_ =
        all_change_alike_ &&
        std::equal(places.begin(), places.end(), places_.begin(), places_.end(), is_same_place);
  }
}

std::size_t GroupToLay::most_sizes() const {
  return std::min({sizes_, pipes_.size(), places_.size() + 1});
}

double GroupToLay::count_of_ways() const {
  double count = 0;
  for (std::size_t sizes = 1; sizes <= most_sizes(); ++sizes)
    count += binomial(pipes_.size(), sizes) * binomial(places_.size(), sizes - 1);
  return count;
}

std::vector<WayToLay> GroupToLay::ways() const {
  std::vector<WayToLay> all;
  for (std::size_t sizes = 1; sizes <= most_sizes(); ++sizes)
    for_each_choice(sizes, pipes_.size(), [&](const std::vector<std::size_t>& pipes) {
      for_each_choice(sizes - 1, places_.size(), [&](const std::vector<std::size_t>& changes) {
        WayToLay way{pipes, changes, 0};
        way.cost = cost_of(way);
        all.push_back(std::move(way));
      });
    });
  std::stable_sort(all.begin(), all.end(), [](const WayToLay& one, const WayToLay& other) {
    return one.cost < other.cost;
  });
  return all;
}

double GroupToLay::cost_of(const WayToLay& way) const {
  double sum = 0;
  for (const std::size_t line : lines_) sum += cost_of_line(laid(line, way), pipes_);
  return sum;
}

Line GroupToLay::laid(std::size_t line, const WayToLay& way) const {
  Line laid = layout_.lines()[line];
  laid.reaches.clear();
  for (std::size_t i = 0; i < way.changes.size(); ++i)
    laid.reaches.push_back({pipes_[way.pipes[i]].pipe, places_[way.changes[i]]});
  laid.pipe = pipes_[way.pipes.back()].pipe;
  return laid;
}

}  // namespace hydro
