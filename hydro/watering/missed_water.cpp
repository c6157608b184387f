#include "hydro/watering/missed_water.hpp"

#include "hydro/quantities/range.hpp"
#include "hydro/watering/useful_flow.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace hydro {
namespace {

constexpr double rounding = 1e-9;  ///< of what should have been given: below it nothing is missed

void throw_if_any(std::vector<Problem> found) {
  if (!found.empty()) throw InvalidInput(std::move(found));
}

bool have_the_same_outlets(const Solution& one, const Solution& other) {
  return std::ranges::equal(
      one.lines(), other.lines(), [](const LineSolution& a, const LineSolution& b) {
        return a.name == b.name && a.flow.size() == b.flow.size();
      });
}

/// What each outlet of a line waters; 0: not known.
Area area_watered(const Layout& layout,
                  const std::string& line,
                  const std::vector<Ground>& grounds) {
  for (const Ground& ground : grounds)
    if (std::ranges::count(ground.lines, line))
      return area_per_outlet(layout, ground, line).value_or(Area{});
  return {};
}

MissedOnLine missed_on(const LineSolution& sound,
                       const LineSolution& broken,
                       const LineSolution& again,
                       const InterruptedRun& run,
                       double area) {
  MissedOnLine result{.line = sound.name};
  std::vector<double> missed, depths;
  double flow_again = 0;
  for (std::size_t i = 0; i < sound.flow.size(); ++i) {
    const double should = useful_flow(sound, i) * si(run.planned);
    const double has = useful_flow(sound, i) * si(run.broke) +
                       useful_flow(broken, i) * si(run.stopped - run.broke);
    missed.push_back(should - has);
    if (area > 0) depths.push_back(missed.back() / area);
    if (!(missed.back() > rounding * should)) continue;
    const int number = static_cast<int>(i) + 1;
    result.missed_in_all += Volume::from_value(missed.back());
    const double flow = useful_flow(again, i);
    if (!(flow > 0)) {
      result.out_of_service.push_back(number);
      continue;
    }
    flow_again += flow;
    result.on_average += Time::from_value(missed.back());  // of volume as yet
    if (const Time due = Time::from_value(missed.back() / flow); due > result.for_weakest) {
      result.for_weakest = due;
      result.weakest = number;
    }
  }
  if (flow_again > 0) result.on_average /= flow_again;
  result.missed = Series<Volume>(std::move(missed));
  result.missed_depth = Series<Length>(std::move(depths));
  return result;
}

}  // namespace

MissedWater missed_water(const Solution& sound,
                         const Solution& broken,
                         const InterruptedRun& run,
                         const std::optional<Solution>& again,
                         const std::vector<Ground>& grounds) {
  Examination examination;
  for (const Problem& problem : problems(run)) examination.add(problem.key, problem.message);
  if (!have_the_same_outlets(sound, broken))
    examination.add("broken",
                    "has other lines or outlets than sound; compare one layout with itself");
  if (again && !have_the_same_outlets(sound, *again))
    examination.add("again",
                    "has other lines or outlets than sound; compare one layout with itself");
  for (const Ground& ground : grounds) examination.include("grounds", problems(ground));
  throw_if_any(examination.take());

  const Solution& mended = again ? *again : sound;
  const Time until_broke = run.broke;
  const Time broken_for = run.stopped - run.broke;
  MissedWater result{
      .pumped = Volume(sound.inflow() * until_broke + broken.inflow() * broken_for),
      .given = Volume(useful_flow(sound) * until_broke + useful_flow(broken) * broken_for),
      .lost = Volume(lost_flow(sound) * until_broke + lost_flow(broken) * broken_for)};
  for (std::size_t l = 0; l < sound.lines().size(); ++l) {
    if (sound.lines()[l].shut || sound.lines()[l].flow.empty()) continue;
    result.lines.push_back(
        missed_on(sound.lines()[l],
                  broken.lines()[l],
                  mended.lines()[l],
                  run,
                  si(area_watered(sound.layout(), sound.lines()[l].name, grounds))));
    result.for_weakest = std::max(result.for_weakest, result.lines.back().for_weakest);
  }
  return result;
}

std::vector<Problem> problems(const InterruptedRun& run) {
  constexpr Range<Time> some_time{0, 8760, units::h};
  Examination examination;
  examination.within("planned", run.planned, Range<Time>{0, 8760, units::h, true});
  examination.within("broke", run.broke, some_time);
  examination.within("stopped", run.stopped, some_time);
  if (run.broke > run.stopped)
    examination.add("broke",
                    "is " + to_message(run.broke, units::min) + ", later than stopped, " +
                        to_message(run.stopped, units::min));
  return examination.take();
}

}  // namespace hydro
