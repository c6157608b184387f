#include "hydro/answers/water_course.hpp"

#include <algorithm>
#include <optional>

namespace hydro {
namespace {

Flow magnitude(const Flow& flow) {
  return flow < Flow{} ? -flow : flow;
}

/// What leaves a line at a place.
struct Loss {
  Length place;
  Flow flow;
};

}  // namespace

WaterCourses::WaterCourses(const Solution& solution)
    : solution_(solution), fed_(solution.lines().size()), joining_(solution.lines().size()) {
  const Layout& layout = solution.layout();
  has_loops_ = !layout.further_supplies().empty();
  Flow largest = magnitude(solution.supply().flow);
  for (const OperatingPoint& further : solution.further_supplies())
    largest = std::max(largest, magnitude(further.flow));
  for (std::size_t i = 0; i < solution.lines().size(); ++i) {
    if (const auto feeder = layout.feeder_of(i)) fed_[*feeder].push_back(i);
    if (const auto joined = layout.joined_by(i)) {
      joining_[*joined].push_back(i);
      has_loops_ = true;
    }
    const LineSolution& line = solution.lines()[i];
    largest = std::max({largest, magnitude(line.inflow), magnitude(line.end_flow)});
  }
  still_ = 1e-9 * largest;
}

Flow WaterCourses::or_still(const Flow& flow) const {
  return magnitude(flow) > still_ ? flow : Flow{};
}

WaterCourse WaterCourses::of(std::size_t line_index) const {
  const Layout& layout = solution_.layout();
  const Line& line = layout.lines()[line_index];
  const LineSolution& here = solution_.lines()[line_index];
  WaterCourse course{.inflow = or_still(here.inflow)};
  for (const std::size_t child : fed_[line_index]) {
    const LineSolution& solved = solution_.lines()[child];
    course.neighbours.push_back({child,
                                 begins_at(layout.lines()[child], line),
                                 Meets::inlet,
                                 -solved.inflow,
                                 solved.inlet_pressure});
  }
  for (const std::size_t other : joining_[line_index]) {
    const LineSolution& solved = solution_.lines()[other];
    course.neighbours.push_back({other,
                                 ends_at(layout.lines()[other], line),
                                 Meets::far_end,
                                 solved.end_flow,
                                 solved.end_pressure});
  }
  if (const auto joined = layout.joined_by(line_index))
    course.neighbours.push_back(
        {*joined, line.whole_length(), Meets::along, -here.end_flow, here.end_pressure});
  std::ranges::stable_sort(course.neighbours, {}, &Neighbour::place);

  std::vector<Loss> losses;
  for (std::size_t i = 0; i < here.flow.size(); ++i)
    losses.push_back({here.distance[i], here.flow[i]});
  for (const Opening& opening : here.openings) losses.push_back({opening.distance, opening.flow});
  for (Neighbour& neighbour : course.neighbours) {
    losses.push_back({neighbour.place, -neighbour.flow});
    neighbour.flow = or_still(neighbour.flow);
  }
  std::ranges::stable_sort(losses, {}, &Loss::place);

  const auto open_end = layout.open_end_of(line_index);
  Flow flow = here.inflow;
  Length start{};
  std::optional<Length> outward_to = flow > still_ ? std::optional(start) : std::nullopt;
  for (std::size_t i = 0; i < losses.size();) {
    const Length place = losses[i].place;
    if (place > start) course.stretches.push_back({start, place, or_still(flow)});
    if (flow > still_) outward_to = place;
    bool is_cut = false;
    for (; i < losses.size() && losses[i].place <= place + same_place; ++i) {
      flow -= losses[i].flow;
      is_cut = is_cut || losses[i].place == open_end;
    }
    if (is_cut) outward_to.reset();  // its two waters do not meet
    if (flow < -still_ && outward_to) {
      course.meetings.push_back({*outward_to, place});
      outward_to.reset();
    }
    start = place;
  }
  if (line.whole_length() > start)
    course.stretches.push_back({start, line.whole_length(), or_still(flow)});
  return course;
}

}  // namespace hydro
