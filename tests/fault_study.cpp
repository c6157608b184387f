#include "fault_study.hpp"

#include "hydro/diagnosis/next_reading.hpp"
#include "hydro/what_ifs/in_parallel.hpp"

#include <algorithm>
#include <cstdlib>

#include "growers_layouts.hpp"
#include "simulated_fault.hpp"

namespace hydro {
namespace {

bool is_its_place(const WalkTo& to, const Candidate& truth) {
  return to.kind == walk_kind_of(truth.kind) && to.line == truth.line;
}

const WorldErrors errors_of_world;

FindFaultOptions growers_options(const Layout& layout) {
  FindFaultOptions options;
  options.candidates.other_outlets = {larger_outlet(layout)};
  return options;
}

/// Of one who knows the layout as it is built, or how its errors are drawn.
FindFaultOptions observers_options(Observer observer,
                                   const Layout& layout,
                                   FindFaultOptions options) {
  const WorldErrors& world = errors_of_world;
  options.gauge_bias = world.gauge_bias;
  options.blunder = 0;
  options.model_error = 0;
  options.uncertainty = Uncertainty{};
  if (observer == Observer::who_knows_the_world) return options;
  Uncertainty drawn = assumed_uncertainty(layout);
  drawn.manufacturing_variation = (world.outlets_from + world.outlets_to) / 2;
  drawn.rating = world.rating;
  drawn.inside_diameter = world.bore;
  drawn.loss_coefficient = world.losses;
  if (drawn.supply_pressure > Pressure{}) drawn.supply_pressure = world.held;
  if (drawn.pump_head > 0) drawn.pump_head = world.pump_head;
  if (drawn.elevation > Length{})
    drawn.elevation = 0.5 * (world.elevation_from + world.elevation_to);
  options.uncertainty = drawn;
  constexpr double of_bores = 0.005;  // that differ from reach to reach
  options.model_error = of_bores;
  return options;
}

std::vector<Reading> with_true_errors(std::vector<Reading> readings) {
  for (Reading& it : readings) it.pressure_error = SimulatedFault::reading_error(errors_of_world);
  return readings;
}

std::vector<Reading> take_readings(const Layout& layout,
                                   const FindFaultOptions& options,
                                   SimulatedFault& simulated) {
  constexpr std::size_t readings = 3;
  const NextReadingOptions next{
      .find_fault = options,
      .can_read = {ReadingPlace::line_inlet, ReadingPlace::pipe, ReadingPlace::flush_end},
      .can_look = false};
  std::vector<Reading> taken{simulated.read({.place = ReadingPlace::supply_gauge})};
  while (taken.size() < readings) {
    const NextReadings advice = next_reading(layout, taken, {}, next, {.threads = 1});
    if (advice.readings.empty()) break;
    taken.push_back(simulated.read(*advice.readings.front().reading));
  }
  return taken;
}

StudiedFault study_one(const Layout& layout,
                       std::size_t which,
                       bool by_odds,
                       std::uint64_t seed,
                       const FaultStudy& study) {
  const FindFaultOptions options = growers_options(layout);
  SimulatedFault simulated(layout,
                           options.candidates,
                           by_odds ? SimulatedFault::Draw::by_odds : SimulatedFault::Draw::by_kind,
                           seed,
                           errors_of_world);
  const Candidate& truth = simulated.candidate();
  StudiedFault result{.kind = truth.kind,
                      .is_at_outlet = truth.outlet.has_value(),
                      .by_odds = by_odds,
                      .layout = which};
  const std::vector<Reading> readings = take_readings(layout, options, simulated);
  const std::vector<Sight> sights =
      study.look ? simulated.look(study.looked_at) : std::vector<Sight>{};
  const Work alone{.threads = 1};
  result.found = judge(find_fault(layout, readings, {}, options, alone), truth);
  if (study.look)
    result.found_with_look = judge(find_fault(layout, readings, sights, options, alone), truth);
  if (study.observer == Observer::none) return result;
  const FindFaultOptions knows = observers_options(study.observer, layout, options);
  const Layout& known_layout =
      study.observer == Observer::who_knows_the_world ? simulated.built() : layout;
  const std::vector<Reading> known = with_true_errors(readings);
  result.observed = judge(find_fault(known_layout, known, {}, knows, alone), truth);
  if (study.look)
    result.observed_with_look = judge(find_fault(known_layout, known, sights, knows, alone), truth);
  return result;
}

}  // namespace

Verdict judge(const FoundFaults& found, const Candidate& truth) {
  Verdict it{.explained = found.explained};
  const Candidate& first = found.faults.front().candidate;
  it.first = first.kind == truth.kind && first.line == truth.line && first.outlet == truth.outlet &&
             first.gauge == truth.gauge;
  const auto place =
      std::ranges::find_if(found.walk, [&](const WalkTo& to) { return is_its_place(to, truth); });
  const auto rank = place - found.walk.begin();
  it.place = rank == 0;
  it.place_in_three = place != found.walk.end() && rank < 3;
  const WalkTo& to = found.walk.front();
  it.stated = to.probability;
  it.right_line = truth.line.empty() ? it.place : to.line == truth.line;
  constexpr int few = 2;
  it.within_two =
      it.right_line &&
      (!truth.outlet || (to.most_likely && std::abs(*to.most_likely - *truth.outlet) <= few));
  it.in_range = place != found.walk.end() && truth.outlet && place->first &&
                *place->first <= *truth.outlet && *truth.outlet <= *place->last;
  for (const WalkTo& each : found.walk)
    it.places.push_back({each.probability, is_its_place(each, truth)});
  return it;
}

std::vector<StudiedFault> study_faults(const std::vector<Layout>& layouts,
                                       const FaultStudy& study,
                                       const Work& work) {
  std::vector<StudiedFault> studied(study.faults);
  in_parallel(study.faults, work, [&](std::size_t i) {
    const std::size_t which = i / 2 % layouts.size();
    // An odd multiplier gives each seed its own row of worlds.
    constexpr std::uint64_t apart = 0x9E3779B97F4A7C15;
    studied[i] = study_one(layouts[which], which, i % 2 == 0, study.seed * apart + i, study);
  });
  return studied;
}

}  // namespace hydro
