#include "hydro/diagnosis/find_fault.hpp"

#include "hydro/diagnosis/analysis.hpp"
#include "hydro/diagnosis/possible_readings.hpp"
#include "hydro/diagnosis/walks.hpp"
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>

namespace hydro {
namespace {

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
    result_.walk = walks(analysis_);
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
    const Evidence& evidence = analysis_.evidence_for(candidate);
    const Eigen::VectorXd with_bias = analysis_.bias_with_readings(candidate);
    return Pressure::from_value(evidence.gain(with_bias).dot(evidence.left(predicted)));
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

  /// The most probable one of each of the first places to walk to.
  std::vector<std::size_t> leading() const {
    constexpr std::size_t most = 8;
    constexpr double least_probability = 0.01;
    std::vector<std::size_t> found;
    for (const WalkTo& to : result_.walk) {
      if (found.size() == most || to.probability < least_probability) break;
      const auto is_there = [&](const FoundFault& it) {
        return walk_kind_of(it.candidate.kind) == to.kind && it.candidate.line == to.line;
      };
      found.push_back(static_cast<std::size_t>(std::ranges::find_if(result_.faults, is_there) -
                                               result_.faults.begin()));
    }
    return found;
  }

  /// Of the first place to walk to and each other.
  void look_alikes() {
    const Analysis& a = analysis_;
    const std::vector<std::size_t> places = leading();
    std::vector<CandidateSize> sizes;
    sizes.reserve(places.size());
    for (const std::size_t i : places) sizes.push_back({order_[i], result_.faults[i].size});
    std::vector<SolvedBreak> solved(sizes.size());
    solve_some(sizes, solved);
    const auto predicted = [&](std::size_t i) {
      return a.predicted_at(sizes[i].candidate, sizes[i].u);
    };
    for (std::size_t i = 1; i < places.size(); ++i) {
      const double apart = std::sqrt(a.evidence_for({}).distance(predicted(0), predicted(i)));
      if (!(apart < 1) || !solved[0].not_solved.empty() || !solved[i].not_solved.empty()) continue;
      LookAlike pair{.one = places[0], .other = places[i], .apart = apart};
      tell_apart(solved[0], solved[i], pair);
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

  bool is_as_far(const Reading& reading, const LookAlike& pair) const {
    if (reading.place == ReadingPlace::bucket) return true;
    if (reading.place != ReadingPlace::riser && reading.place != ReadingPlace::jet) return false;
    return std::ranges::any_of(std::array{pair.one, pair.other}, [&](std::size_t i) {
      const Candidate& it = result_.faults[i].candidate;
      return it.line == reading.line && it.outlet == reading.outlet;
    });
  }

  /// The reading at which they differ most, in its standard errors with what is known. A bucket, or
  /// a gauge at the very outlet, for which one walks as far as to the fault, only where nothing else
  /// tells them apart.
  void tell_apart(const SolvedBreak& one, const SolvedBreak& other, LookAlike& pair) const {
    constexpr double plainly = 2;
    tell_apart(one, other, false, pair);
    if (!(pair.then_apart >= plainly)) tell_apart(one, other, true, pair);
  }

  void tell_apart(const SolvedBreak& one,
                  const SolvedBreak& other,
                  bool as_far_as_the_fault,
                  LookAlike& pair) const {
    constexpr int of_a_line = 40;
    constexpr std::size_t looked_at_closely = 6;
    const Analysis& a = analysis_;
    struct Possible {
      Reading reading;
      double figure;
      double difference;
      double roughly;
    };
    std::vector<Possible> possible;
    for (Reading& reading : possible_readings(a.layout(), {}, of_a_line)) {
      if (is_as_far(reading, pair) != as_far_as_the_fault) continue;
      const Spot spot = spot_of(reading, a.layout());
      const double difference = std::abs(shown(spot, one) - shown(spot, other));
      const double figure = std::max(shown(spot, one), shown(spot, other));
      if (!(difference > 0)) continue;
      const double error = std::hypot(own_error(reading, figure), a.options().model_error * figure);
      possible.push_back({std::move(reading), figure, difference, difference / error});
    }
    std::ranges::stable_sort(possible, std::ranges::greater{}, &Possible::roughly);
    for (std::size_t i = 0; i < std::min(looked_at_closely, possible.size()); ++i) {
      const Possible& it = possible[i];
      const Analysis::Figure figure = a.figure(it.reading, it.figure);
      const double variance = a.variance_left(figure, a.evidence_for({}));
      const double then = it.difference / std::sqrt(variance);
      if (!(then > 1 && then > pair.then_apart)) continue;
      pair.then_apart = then;
      pair.tells_apart = it.reading;
    }
  }

  const Analysis& analysis_;
  std::vector<std::size_t> order_;  // of candidates
  FoundFaults result_;
};

}  // namespace

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
