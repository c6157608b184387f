#include "hydro/diagnosis/find_fault.hpp"

#include "hydro/diagnosis/analysis.hpp"
#include "hydro/diagnosis/possible_readings.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>

namespace hydro {
namespace {

constexpr std::array walk_words{"nothing",
                                "broken outlet",
                                "odd outlet",
                                "leak",
                                "end open",
                                "valve",
                                "regulator",
                                "supply",
                                "gauge"};
static_assert(walk_words.size() == static_cast<std::size_t>(WalkKind::gauge) + 1);

WalkKind walk_kind(CandidateKind kind) {
  switch (kind) {
    case CandidateKind::no_fault:
      return WalkKind::nothing;
    case CandidateKind::head_off:
    case CandidateKind::riser_sheared:
    case CandidateKind::nozzle_missing:
      return WalkKind::broken_outlet;
    case CandidateKind::worn:
    case CandidateKind::clogged:
    case CandidateKind::wrong_outlet:
      return WalkKind::odd_outlet;
    case CandidateKind::leak:
      return WalkKind::leak;
    case CandidateKind::end_open:
      return WalkKind::end_open;
    case CandidateKind::valve_left_open:
    case CandidateKind::valve_part_closed:
      return WalkKind::valve;
    case CandidateKind::regulator_stuck_open:
    case CandidateKind::regulator_stuck_shut:
      return WalkKind::regulator;
    case CandidateKind::filter_dirty:
    case CandidateKind::engine_slow:
    case CandidateKind::pump_worn:
    case CandidateKind::supply_low:
      return WalkKind::supply;
    case CandidateKind::gauge_wrong:
      return WalkKind::gauge;
  }
  return WalkKind::nothing;
}

/// A square of so many standard errors together, in the standard errors of one.
double in_standard_errors(double square, std::size_t readings) {
  if (readings == 0) return 0;
  const boost::math::chi_squared of_readings(static_cast<double>(readings));
  const double beyond = cdf(complement(of_readings, square));
  // Further out than doubles have probabilities, the one is nearly the other.
  constexpr double least = 1e-300;
  if (!(beyond > least)) return std::sqrt(square);
  return quantile(complement(boost::math::normal(), beyond / 2));
}

/// The fewest outlets next to each other that hold this share of all.
std::pair<int, int> narrowest(const std::map<int, double>& chances, double share) {
  double all = 0;
  for (const auto& [outlet, chance] : chances) all += chance;
  std::pair best{chances.begin()->first, chances.rbegin()->first};
  double held_by_best = all;
  for (auto first = chances.begin(); first != chances.end(); ++first) {
    double held = 0;
    for (auto last = first; last != chances.end(); ++last) {
      held += last->second;
      if (held < share * all) continue;
      const int width = last->first - first->first;
      const int best_width = best.second - best.first;
      if (width < best_width || (width == best_width && held > held_by_best)) {
        best = {first->first, last->first};
        held_by_best = held;
      }
      break;
    }
  }
  return best;
}

class Finder {
 public:
  explicit Finder(const Analysis& analysis) : analysis_(analysis) {}

  FoundFaults run(const std::vector<Sight>& sights) {
    order();
    for (const std::size_t c : order_) result_.faults.push_back(fault(c));
    result_.least_misfit = std::numeric_limits<double>::infinity();
    for (const FoundFault& it : result_.faults)
      result_.least_misfit = std::min(result_.least_misfit, it.misfit);
    constexpr double most = 3;
    result_.explained = result_.least_misfit <= most;
    walk();
    look_alikes();
    for (std::size_t c = 0; c < analysis_.found().size(); ++c)
      if (!analysis_.found()[c].not_solved.empty())
        result_.not_solved.push_back({analysis_.candidates()[c], analysis_.found()[c].not_solved});
    result_.notes = notes_on(analysis_.readings(), sights);
    if (!result_.explained) result_.notes.emplace_back("no single fault explains these readings");
    result_.solves += analysis_.solves();
    return std::move(result_);
  }

 private:
  void order() {
    const auto& found = analysis_.found();
    for (std::size_t c = 0; c < found.size(); ++c)
      if (found[c].not_solved.empty()) order_.push_back(c);
    std::ranges::stable_sort(order_, [&](std::size_t a, std::size_t b) {
      return found[a].probability > found[b].probability;
    });
  }

  FoundFault fault(std::size_t c) const {
    const Candidate& candidate = analysis_.candidates()[c];
    const WeighedCandidate& found = analysis_.found()[c];
    const Layout& layout = analysis_.layout();
    const FaultSizes& sizes = analysis_.options().candidates.sizes;
    const auto at = [&](double u) { return fault_of(candidate, layout, sizes, u); };
    FoundFault it{.candidate = candidate,
                  .probability = found.probability,
                  .log_evidence = found.weighed.log_evidence,
                  .size = analysis_.most_probable_size(c)};
    it.fault = at(it.size);
    if (has_size(candidate.kind)) {
      constexpr double end = 0.1;
      it.smaller = at(analysis_.size_below(c, end));
      it.larger = at(analysis_.size_below(c, 1 - end));
    }
    if (candidate.kind == CandidateKind::supply_low)
      it.supply = layout_with(candidate, layout, sizes, it.size).supply();
    it.misfit = in_standard_errors(found.weighed.least_misfit, analysis_.readings().size());
    const Eigen::VectorXd predicted = analysis_.predicted_at(c, it.size);
    if (candidate.kind == CandidateKind::gauge_wrong)
      it.gauge_shows_too_much = shows_too_much(candidate, predicted);
    for (std::size_t i = 0; i < analysis_.readings().size(); ++i)
      it.fits.push_back(fit(analysis_.readings()[i],
                            predicted[static_cast<Eigen::Index>(i)],
                            analysis_.deviation_of_reading(i, candidate)));
    return it;
  }

  /// What is expected of the bias, the readings known.
  Pressure shows_too_much(const Candidate& candidate, const Eigen::VectorXd& predicted) const {
    const Eigen::VectorXd with_bias = analysis_.bias_with_readings(candidate);
    return Pressure::from_value(analysis_.evidence_for(candidate).moved(with_bias, predicted));
  }

  static ReadingFit fit(const Reading& reading, double predicted, double deviation) {
    ReadingFit it;
    const double read = figure_of(reading);
    if (is_pressure(reading.place)) {
      it.pressure_predicted = Pressure::from_value(predicted);
      it.pressure_read = Pressure::from_value(read);
    } else if (is_flow(reading.place)) {
      it.flow_predicted = Flow::from_value(predicted);
      it.flow_read = Flow::from_value(read);
    } else {
      it.speed_predicted = RotationalSpeed::from_value(predicted);
      it.speed_read = RotationalSpeed::from_value(read);
    }
    it.misfit = (read - predicted) / deviation;
    return it;
  }

  void walk() {
    struct Sum {
      double probability = 0;
      std::map<int, double> outlets = {};
    };
    std::map<std::pair<WalkKind, std::string>, Sum> sums;
    for (const FoundFault& it : result_.faults) {
      Sum& sum = sums[{walk_kind(it.candidate.kind), it.candidate.line}];
      sum.probability += it.probability;
      if (it.candidate.outlet) sum.outlets[*it.candidate.outlet] += it.probability;
    }
    for (const auto& [where, sum] : sums) {
      WalkTo& to = result_.walk.emplace_back(
          WalkTo{.kind = where.first, .line = where.second, .probability = sum.probability});
      if (sum.outlets.empty()) continue;
      std::tie(to.first, to.last) = narrowest(sum.outlets, analysis_.options().walk_share);
      to.most_likely = std::ranges::max_element(sum.outlets, {}, [](const auto& it) {
                         return it.second;
                       })->first;
    }
    std::ranges::stable_sort(result_.walk, std::ranges::greater{}, &WalkTo::probability);
  }

  bool is_one_walk(const Candidate& a, const Candidate& b) const {
    return walk_kind(a.kind) == walk_kind(b.kind) && a.line == b.line;
  }

  /// Of the most probable ones, by pairs that one would walk to in different places.
  void look_alikes() {
    constexpr std::size_t most = 8;
    constexpr double least_probability = 0.01;
    const Analysis& a = analysis_;
    std::vector<std::size_t> leading;  // of faults, one for each place to walk to
    for (std::size_t i = 0; i < result_.faults.size() && leading.size() < most; ++i) {
      const FoundFault& it = result_.faults[i];
      if (it.probability < least_probability) break;
      if (std::ranges::none_of(leading, [&](std::size_t j) {
            return is_one_walk(it.candidate, result_.faults[j].candidate);
          }))
        leading.push_back(i);
    }
    std::vector<CandidateSize> sizes;
    for (const std::size_t i : leading) sizes.push_back({order_[i], result_.faults[i].size});
    std::vector<SolvedBreak> solved(sizes.size());
    solve_some(sizes, solved);
    for (std::size_t i = 0; i < leading.size(); ++i)
      for (std::size_t j = i + 1; j < leading.size(); ++j) {
        const double apart =
            std::sqrt(a.evidence_for({}).distance(a.predicted_at(sizes[i].candidate, sizes[i].u),
                                                  a.predicted_at(sizes[j].candidate, sizes[j].u)));
        if (!(apart < 1) || !solved[i].not_solved.empty() || !solved[j].not_solved.empty())
          continue;
        LookAlike pair{.one = leading[i], .other = leading[j], .apart = apart};
        tell_apart(solved[i], solved[j], pair);
        result_.look_alikes.push_back(std::move(pair));
      }
  }

  void solve_some(const std::vector<CandidateSize>& sizes, std::vector<SolvedBreak>& solved) {
    const Analysis& a = analysis_;
    solve_candidates(a.layout(),
                     a.options().candidates.sizes,
                     a.candidates(),
                     sizes,
                     {.threads = 1},
                     [&](std::size_t i, const SolvedBreak& it) { solved[i] = it; });
    result_.solves += sizes.size();
  }

  /// The reading at which they differ most, in its standard errors with what is known.
  void tell_apart(const SolvedBreak& one, const SolvedBreak& other, LookAlike& pair) const {
    constexpr int of_a_line = 40;
    constexpr std::size_t looked_at_closely = 6;
    const Analysis& a = analysis_;
    struct Possible {
      Reading reading;
      double difference;
      double roughly;
    };
    std::vector<Possible> possible;
    for (Reading& reading : possible_readings(a.layout(), {}, of_a_line)) {
      const Spot spot = spot_of(reading, a.layout());
      const double difference = std::abs(shown(spot, one) - shown(spot, other));
      const double figure = std::max(shown(spot, one), shown(spot, other));
      if (!(difference > 0)) continue;
      const double error = std::hypot(own_error(reading, figure), a.options().model_error * figure);
      possible.push_back({std::move(reading), difference, difference / error});
    }
    std::ranges::stable_sort(possible, std::ranges::greater{}, &Possible::roughly);
    for (std::size_t i = 0; i < std::min(looked_at_closely, possible.size()); ++i) {
      const Analysis::Figure figure = a.figure(possible[i].reading);
      const double variance = figure.variance - a.evidence_for({}).known(figure.with_readings);
      const double then = possible[i].difference / std::sqrt(variance);
      if (!(then > pair.then_apart)) continue;
      pair.then_apart = then;
      pair.tells_apart = possible[i].reading;
    }
    if (pair.then_apart < 1) pair.tells_apart.reset();
  }

  const Analysis& analysis_;
  std::vector<std::size_t> order_;  // of candidates
  FoundFaults result_;
};

}  // namespace

std::string_view words_of(WalkKind kind) {
  return walk_words.at(static_cast<std::size_t>(kind));
}

Uncertainty assumed_uncertainty(const Layout& layout) {
  Uncertainty assumed{.manufacturing_variation = 0.04,
                      .rating = 0.02,
                      .inside_diameter = 0.01,
                      .wall = 0.05,
                      .loss_coefficient = 0.3};
  const auto add = [&](const Supply& supply) {
    if (supply.pump)
      assumed.pump_head = 0.02;
    else
      assumed.supply_pressure = 1 * psi;
  };
  add(layout.supply());
  for (const Supply& further : layout.further_supplies()) add(further);
  if (std::ranges::all_of(layout.lines(), [](const Line& line) { return line.joins.empty(); }))
    assumed.elevation = 0.5 * ft;
  return assumed;
}

std::vector<Problem> problems(const FindFaultOptions& options, const Layout& layout) {
  Examination examination;
  examination.include("candidates", problems(options.candidates));
  if (options.uncertainty)
    examination.include("uncertainty", problems(*options.uncertainty, layout));
  examination.within("gauge_bias", options.gauge_bias, Range<Pressure>{0, 1000, kPa});
  examination.within("blunder", options.blunder, Range<double>{0, 0.5, units::plain});
  examination.within("model_error", options.model_error, Range<double>{0, 0.2, units::plain});
  examination.within("walk_share", options.walk_share, Range<double>{0, 1, units::plain, true});
  return examination.take();
}

FoundFaults find_fault(const Layout& layout,
                       const std::vector<Reading>& readings,
                       const std::vector<Sight>& sights,
                       const FindFaultOptions& options,
                       const Work& work) {
  return Finder(Analysis(layout, readings, sights, options, work)).run(sights);
}

}  // namespace hydro
