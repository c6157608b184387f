#include "simulated_fault.hpp"

#include "hydro/diagnosis/places.hpp"
#include "hydro/physics/friction.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/uncertainty.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>

#include <boost/math/distributions/normal.hpp>
#include <boost/math/tools/toms748_solve.hpp>

namespace hydro {
namespace {

double normal(Dice& dice) {
  constexpr double end = 1e-9;
  return quantile(boost::math::normal(), dice.between(end, 1 - end));
}

/// Where nine of ten lie, in deviations.
constexpr double nine_of_ten = 1.6448536269514722;

/// That loses as much as by its C at this velocity.
Pipe by_darcy_weisbach(Pipe pipe, const Velocity& velocity, const WaterProperties& water) {
  if (!pipe.hazen_williams) return pipe;
  const Flow flow = area(pipe) * velocity;
  const double wanted = si(friction_loss(pipe, 1 * units::m, flow, water));
  pipe.hazen_williams.reset();
  const auto too_much = [&](double roughness) {
    pipe.roughness = Length::from_value(roughness);
    return si(friction_loss(pipe, 1 * units::m, flow, water)) - wanted;
  };
  const double roughest = 0.04 * si(pipe.inside_diameter);
  double roughness = 0;
  if (too_much(0) < 0 && too_much(roughest) > 0) {
    std::uintmax_t steps = 100;
    roughness = boost::math::tools::toms748_solve(
                    too_much, 0.0, roughest, boost::math::tools::eps_tolerance<double>(20), steps)
                    .first;
  }
  pipe.roughness = Length::from_value(roughness);
  return pipe;
}

void give_other_law(Riser& riser, const Velocity& velocity, const WaterProperties& water) {
  const std::optional<Pipe> pipe = riser.pipe();
  if (!pipe) return;
  const Pipe other = by_darcy_weisbach(*pipe, velocity, water);
  riser.hazen_williams = other.hazen_williams;
  riser.roughness = other.roughness;
}

/// Every length between outlets has a bore of its own.
void make_uneven(Line& line, double deviation, Dice& dice) {
  const auto uneven = [&](Pipe pipe) {
    pipe.inside_diameter *= 1 + deviation * normal(dice);
    return pipe;
  };
  std::vector<Length> ends;
  for (const PipeReach& reach : line.reaches) ends.push_back(reach.to);
  for (int number = 1; number <= line.outlet_count(); ++number)
    ends.push_back(line.place_of(number));
  std::ranges::sort(ends);
  std::vector<PipeReach> reaches;
  for (const Length& to : ends)
    if (to > (reaches.empty() ? Length{} : reaches.back().to) + same_place &&
        to < line.whole_length() - same_place)
      reaches.push_back({uneven(line.pipe_at(to)), to});
  line.pipe = uneven(line.pipe);
  line.reaches = std::move(reaches);
}

/// As it is built, from what is said of it.
Layout built(const Layout& described, const WorldErrors& errors, std::uint64_t seed, Dice& dice) {
  Uncertainty off{
      .manufacturing_variation = dice.between(errors.outlets_from, errors.outlets_to),
      .rating = errors.rating,
      .inside_diameter = errors.bore,
      .loss_coefficient = errors.losses,
      .elevation = dice.between(errors.elevation_from / ft, errors.elevation_to / ft) * ft};
  if (described.supply().pump)
    off.pump_head = errors.pump_head;
  else
    off.supply_pressure = errors.held;
  const Layout drawn = realisation(described, off, seed, 0);
  const WaterProperties water = properties(drawn.water());
  const Velocity velocity = dice.between(0.6, 1.5) * m_per_s;
  std::vector<Line> lines = drawn.lines();
  for (Line& line : lines) {
    line.pipe = by_darcy_weisbach(line.pipe, velocity, water);
    for (PipeReach& reach : line.reaches)
      reach.pipe = by_darcy_weisbach(reach.pipe, velocity, water);
    give_other_law(line.riser, velocity, water);
    make_uneven(line, errors.bore_reach, dice);
  }
  const Layout whole(drawn.supply(),
                     std::move(lines),
                     drawn.water(),
                     drawn.site(),
                     drawn.sets(),
                     drawn.further_supplies());
  return with_gauge(drawn.running_sets().empty() ? whole : whole.watering(drawn.running_sets()));
}

Candidate drawn(const std::vector<Candidate>& all, SimulatedFault::Draw draw, Dice& dice) {
  std::map<CandidateKind, double> of_kind;
  for (const Candidate& it : all) of_kind[it.kind] += 1;
  const auto weight = [&](const Candidate& it) {
    return draw == SimulatedFault::Draw::by_odds ? it.odds : 1 / of_kind[it.kind];
  };
  double sum = 0;
  for (const Candidate& it : all) sum += weight(it);
  double left = dice.between(0, sum);
  for (const Candidate& it : all)
    if ((left -= weight(it)) < 0) return it;
  return all.back();
}

/// Of what a grower has: the gauge at the pump, and the one carried round.
std::vector<std::string> gauges() {
  return {gauge_of({.place = ReadingPlace::supply_gauge}), gauge_of({.place = ReadingPlace::pipe})};
}

}  // namespace

SimulatedFault::SimulatedFault(const Layout& described,
                               const CandidateOptions& options,
                               Draw draw,
                               std::uint64_t seed,
                               const WorldErrors& errors)
    : dice_(seed), errors_(errors), built_(hydro::built(described, errors, seed, dice_)) {
  const std::vector<Candidate> all = candidates(described, options, gauges());
  constexpr int tries = 100;
  for (int i = 0; i < tries; ++i) {
    candidate_ = drawn(all, draw, dice_);
    if (!come_true(described, options, dice_.between(-nine_of_ten, nine_of_ten))) continue;
    for (const std::string& gauge : gauges()) {
      bias_[gauge] = si(errors.gauge_bias) * normal(dice_);
      if (candidate_.kind == CandidateKind::gauge_wrong && candidate_.gauge == gauge)
        bias_[gauge] += si(options.sizes.gauge_wrong) * normal(dice_);
    }
    return;
  }
  throw std::runtime_error("no fault of this layout can be solved");
}

bool SimulatedFault::come_true(const Layout& described, const CandidateOptions& options, double u) {
  try {
    const std::optional<Fault> fault = fault_of(candidate_, described, options.sizes, u);
    solved_ = read_break(solve(fault ? built_.with_fault(*fault)
                                     : layout_with(candidate_, built_, options.sizes, u)));
    return true;
  } catch (const NotSolved&) {
    return false;
  } catch (const InvalidInput&) {
    return false;
  }
}

Pressure SimulatedFault::reading_error(const WorldErrors& errors) {
  const Pressure rounding = 1 * psi / std::sqrt(12.0);
  return std::hypot(errors.gauge_noise / psi, rounding / psi) * psi;
}

Reading SimulatedFault::read(const Reading& place) {
  const double shown_there = shown(spot_of(place, built_), solved_) + bias_.at(gauge_of(place)) +
                             si(errors_.gauge_noise) * normal(dice_);
  Reading reading = place;
  const double to_nearest = std::round(Pressure::from_value(shown_there) / psi);
  reading.pressure = std::max(0.0, to_nearest) * psi;
  return reading;
}

std::vector<Sight> SimulatedFault::look(int most) {
  struct Flowing {
    std::size_t line, outlet;
    int number;
  };
  std::vector<Flowing> all;
  std::size_t outlet = 0;
  for (std::size_t l = 0; l < built_.lines().size(); ++l)
    for (int number = 1; number <= built_.lines()[l].outlet_count(); ++number, ++outlet)
      if (!built_.is_shut(l) && built_.outlet_has_water(l, number))
        all.push_back({l, outlet, number});
  std::vector<Sight> sights;
  const std::size_t count = std::min(all.size(), static_cast<std::size_t>(most));
  for (std::size_t i = 0; i < count; ++i) {
    const Flowing& it = all[count == 1 ? 0 : i * (all.size() - 1) / (count - 1)];
    const Outlet& kind = built_.outlet_at(it.line, it.number);
    const double minimum = si(kind.minimum.value_or(Pressure{}));
    const double width = si(Sight::default_width);
    const bool is_open = solved_.state[it.outlet] == OutletState::broken;
    const bool has_enough = solved_.pressure[it.outlet] > 0 &&
                            solved_.pressure[it.outlet] > minimum + width * normal(dice_);
    const bool is_clogged = candidate_.kind == CandidateKind::clogged &&
                            candidate_.line == built_.lines()[it.line].name &&
                            candidate_.outlet == it.number;
    const bool turns = !is_open && has_enough && !(is_clogged && dice_.chance(0.5));
    const bool misjudged = dice_.chance(Sight::default_doubt);
    sights.push_back({.seen = turns != misjudged ? Seen::turning : Seen::not_turning,
                      .line = built_.lines()[it.line].name,
                      .outlet = it.number});
  }
  return sights;
}

}  // namespace hydro
