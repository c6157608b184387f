#include "hydro/layout/water_ways.hpp"

namespace hydro {
namespace {

bool is_beyond(std::size_t line, const Length& place, const OpenEnds& open_ends) {
  const auto end = open_ends.find(line);
  return end != open_ends.end() && place > end->second - same_place;
}

/// Goes wherever the water goes.
class Flood {
 public:
  Flood(const Plumbing& plumbing,
        const std::vector<bool>& closed,
        const std::vector<bool>& freely,
        const OpenEnds& open_ends)
      : plumbing_(plumbing), closed_(closed), freely_(freely), open_ends_(open_ends) {
    const std::size_t count = plumbing.lines.size();
    ways_ = {std::vector<bool>(count), std::vector<bool>(count), std::vector<bool>(count)};
  }

  WaterWays run() {
    for (const std::size_t i : plumbing_.outward_order)
      if (!plumbing_.feeders[i] && is_open(i)) {
        ways_.inlet[i] = true;
        reach(i, false);
      }
    for (std::size_t next = 0; next < parts_.size(); ++next)
      spread(parts_[next].line, parts_[next].beyond);
    return std::move(ways_);
  }

 private:
  struct Part {
    std::size_t line;
    bool beyond;
  };

  bool is_open(std::size_t line) const { return closed_.empty() || !closed_[line]; }
  bool has_beyond(std::size_t line) const { return open_ends_.contains(line); }

  void reach(std::size_t line, bool beyond) {
    std::vector<bool>& reached = beyond ? ways_.beyond : ways_.near;
    if (reached[line]) return;
    reached[line] = true;
    parts_.push_back({line, beyond});
  }

  void spread(std::size_t line, bool beyond) {
    for (const std::size_t fed : plumbing_.fed[line])
      if (is_open(fed) && is_beyond(line, plumbing_.begins_at(fed), open_ends_) == beyond) {
        ways_.inlet[fed] = true;
        reach(fed, false);
      }
    for (const std::size_t other : plumbing_.joining[line])
      if (is_beyond(line, plumbing_.ends_at(other), open_ends_) == beyond)
        reach(other, has_beyond(other));
    if (const auto joined = plumbing_.joined[line]; joined && beyond == has_beyond(line))
      reach(*joined, is_beyond(*joined, plumbing_.ends_at(line), open_ends_));
    if (const auto feeder = plumbing_.feeders[line];
        feeder && !beyond && is_open(line) && freely_[line]) {
      ways_.inlet[line] = true;
      reach(*feeder, is_beyond(*feeder, plumbing_.begins_at(line), open_ends_));
    }
  }

  const Plumbing& plumbing_;
  const std::vector<bool>& closed_;
  const std::vector<bool>& freely_;
  const OpenEnds& open_ends_;
  WaterWays ways_;
  std::vector<Part> parts_;
};

}  // namespace

bool WaterWays::reach(std::size_t line, const Length& place, const OpenEnds& open_ends) const {
  return is_beyond(line, place, open_ends) ? beyond[line] : near[line];
}

WaterWays water_ways(const Plumbing& plumbing,
                     const std::vector<bool>& closed,
                     const std::vector<bool>& freely,
                     const OpenEnds& open_ends) {
  return Flood(plumbing, closed, freely, open_ends).run();
}

}  // namespace hydro
