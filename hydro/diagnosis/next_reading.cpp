#include "hydro/diagnosis/next_reading.hpp"

#include "hydro/diagnosis/analysis.hpp"
#include "hydro/diagnosis/information.hpp"
#include "hydro/diagnosis/possible_readings.hpp"
#include "hydro/diagnosis/walks.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/what_ifs/in_parallel.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <numbers>
#include <numeric>
#include <utility>

namespace hydro {
namespace {

std::vector<Problem> problems_of(const NextReadingOptions& options) {
  Examination examination;
  examination.within(
      "bits_per_minute", options.bits_per_minute, Range<double>{0, 1e6, units::plain});
  examination.within(
      "walking_speed", options.walking_speed, Range<Velocity>{0, 100, m_per_s, true});
  examination.within("time_to_read", options.time_to_read, Range<Time>{0, 86'400, units::s});
  examination.within("sure_enough", options.sure_enough, Range<double>{0, 1, units::plain, true});
  examination.within("least", options.least, Range<double>{0, 100, units::plain});
  examination.within("places", options.places, 1, 1000);
  return examination.take();
}

/// One size of one candidate that is left, and what it would show.
struct Case {
  std::size_t candidate;      ///< of the ones left
  double weight;              ///< within its candidate
  Eigen::VectorXd left = {};  ///< of the readings so far, less what it predicts
  SolvedBreak solved = {};
};

/// How a figure follows from what is left of the readings.
struct Following {
  Eigen::VectorXd gain;
  double deviation;
};

class Chooser {
 public:
  Chooser(const Analysis& analysis, const NextReadingOptions& options, const Work& work)
      : analysis_(analysis), options_(options), work_(work) {
    choose_candidates();
    solve_cases();
  }

  std::vector<PossibleReading> run() const {
    std::vector<PossibleReading> possible = readings_worth_trying();
    if (options_.can_look) add_looks(possible);
    in_parallel(possible.size(), {.threads = work_.threads}, [&](std::size_t i) {
      PossibleReading& it = possible[i];
      it.information = it.reading ? information_of(*it.reading) : information_of(*it.look);
      it.time = time_for(it);
      it.worth = it.information - options_.bits_per_minute * (it.time / units::min);
    });
    std::erase_if(possible, [](const PossibleReading& it) { return !(it.information > 0); });
    std::ranges::stable_sort(possible, std::ranges::greater{}, &PossibleReading::worth);
    return possible;
  }

 private:
  /// Of very many those that could tell most.
  std::vector<PossibleReading> readings_worth_trying() const {
    constexpr std::size_t most = 200;
    std::vector<PossibleReading> possible;
    for (Reading& reading :
         possible_readings(analysis_.layout(), options_.can_read, options_.places))
      possible.push_back({.reading = std::move(reading)});
    if (possible.size() <= most) return possible;
    in_parallel(possible.size(), {.threads = work_.threads}, [&](std::size_t i) {
      possible[i].information = most_information_of(*possible[i].reading);
    });
    std::ranges::stable_sort(possible, std::ranges::greater{}, &PossibleReading::information);
    possible.resize(most);
    return possible;
  }

  void choose_candidates() {
    constexpr double left_out = 0.001;
    constexpr std::size_t most = 1000;
    const auto& found = analysis_.found();
    std::vector<std::size_t> order(found.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) {
      return found[a].probability > found[b].probability;
    });
    double sum = 0;
    for (const std::size_t c : order) {
      if (sum >= 1 - left_out || left_.size() == most || !(found[c].probability > 0)) break;
      left_.push_back(c);
      probabilities_.push_back(found[c].probability);
      sum += found[c].probability;
    }
    for (double& probability : probabilities_) probability /= sum;
  }

  /// Sizes in the middle of each third of their probability.
  void solve_cases() {
    constexpr std::array thirds{1.0 / 6, 3.0 / 6, 5.0 / 6};
    std::vector<CandidateSize> sizes;
    for (std::size_t i = 0; i < left_.size(); ++i) {
      const std::size_t c = left_[i];
      if (!has_size(analysis_.candidates()[c].kind)) {
        sizes.push_back({c, 0});
        cases_.push_back({.candidate = i, .weight = 1});
        continue;
      }
      for (const double share : thirds) {
        sizes.push_back({c, analysis_.size_below(c, share)});
        cases_.push_back({.candidate = i, .weight = 1.0 / thirds.size()});
      }
    }
    solve_candidates(analysis_.layout(),
                     analysis_.options().candidates.sizes,
                     analysis_.candidates(),
                     sizes,
                     {.threads = work_.threads},
                     [&](std::size_t i, const SolvedBreak& solved) { cases_[i].solved = solved; });
    for (std::size_t i = 0; i < cases_.size(); ++i)
      cases_[i].left =
          analysis_.evidence_for({}).left(analysis_.predicted_at(sizes[i].candidate, sizes[i].u));
    std::erase_if(cases_, [](const Case& it) { return !it.solved.not_solved.empty(); });
  }

  const Candidate& candidate_of(const Case& it) const {
    return analysis_.candidates()[left_[it.candidate]];
  }

  static Following following(const Analysis::Figure& figure, const Evidence& evidence) {
    return {evidence.gain(figure.with_readings),
            std::sqrt(Analysis::variance_left(figure, evidence))};
  }

  /// What a figure is expected to be by each case, the readings known: `shown` there.
  template <class Shown>
  std::vector<Expected> expected(const Analysis::Figure& figure, const Shown& shown_by) const {
    const Following usual = following(figure, analysis_.evidence_for({}));
    std::vector<Expected> all;
    for (const double probability : probabilities_) all.push_back({probability, {}});
    const auto add = [&](const Case& it, const Following& how) {
      all[it.candidate].parts.push_back(
          {it.weight, shown_by(it.solved) + how.gain.dot(it.left), how.deviation});
    };
    for (const Case& it : cases_) {
      const Candidate& candidate = candidate_of(it);
      if (candidate.kind == CandidateKind::gauge_wrong)
        add(it,
            following(analysis_.figure_if(figure, candidate), analysis_.evidence_for(candidate)));
      else
        add(it, usual);
    }
    return all;
  }

  double information_of(const Reading& reading) const {
    const Spot spot = spot_of(reading, analysis_.layout());
    const double size = mean_size(spot);
    if (!(size > 0)) return 0;
    return information(expected(analysis_.figure(reading, size),
                                [&](const SolvedBreak& solved) { return shown(spot, solved); }));
  }

  /// If all were certain but the reading itself: more than there is.
  double most_information_of(const Reading& reading) const {
    const Spot spot = spot_of(reading, analysis_.layout());
    const double size = mean_size(spot);
    if (!(size > 0)) return 0;
    const double deviation = std::sqrt(analysis_.own_variance(reading, size));
    std::vector<Expected> all;
    for (const double probability : probabilities_) all.push_back({probability, {}});
    for (const Case& it : cases_)
      all[it.candidate].parts.push_back({it.weight, shown(spot, it.solved), deviation});
    return information(all);
  }

  double mean_size(const Spot& spot) const {
    double size = 0;
    for (const Case& it : cases_)
      size += probabilities_[it.candidate] * it.weight * shown(spot, it.solved);
    return size;
  }

  double information_of(const Sight& sight) const {
    const Look look =
        analysis_.look_at(analysis_.layout().index_of(sight.line), sight.outlet, Seen::turning);
    const std::vector<Expected> pressures = expected(
        analysis_.figure(look),
        [&](const SolvedBreak& solved) { return analysis_.device_pressure(look, solved); });
    std::vector<std::vector<double>> chances;
    for (std::size_t i = 0; i < pressures.size(); ++i) {
      std::vector<double>& of_candidate = chances.emplace_back(std::vector<double>(4));
      for (const Part& part : pressures[i].parts) {
        const auto here = outcomes(look, analysis_.candidates()[left_[i]], part);
        for (std::size_t k = 0; k < here.size(); ++k) of_candidate[k] += part.weight * here[k];
      }
    }
    return information(probabilities_, chances);
  }

  /// Turning, not turning, dry, plume.
  std::array<double, 4> outcomes(const Look& look,
                                 const Candidate& candidate,
                                 const Part& pressure) const {
    const auto chance_of = [&](Seen seen) {
      Look as_seen = look;
      as_seen.sight.seen = seen;
      const SightChance it = analysis_.chance(as_seen, candidate);
      const double s = std::hypot(it.width, pressure.deviation);
      return it.a +
             it.b * 0.5 * std::erfc(-(pressure.mean - it.threshold) / s / std::numbers::sqrt2);
    };
    const double turning = chance_of(Seen::turning);
    const double dry = chance_of(Seen::dry);
    const double plume = chance_of(Seen::plume);
    // What is left of those that do not turn; each had its own doubt, so that the sum is made 1.
    const double not_turning = std::max(0.0, chance_of(Seen::not_turning) - std::max(dry, plume));
    const double sum = turning + dry + plume + not_turning;
    return {turning / sum, not_turning / sum, dry / sum, plume / sum};
  }

  void add_looks(std::vector<PossibleReading>& possible) const {
    for (const Line& line : analysis_.layout().lines())
      for (const int outlet : tried_outlets(line, options_.places))
        possible.push_back({.look = Sight{.line = line.name, .outlet = outlet}});
  }

  Time time_for(const PossibleReading& it) const {
    const Layout& layout = analysis_.layout();
    Length way{};
    if (it.reading) {
      way = way_to(layout, *it.reading);
    } else {
      const std::size_t l = layout.index_of(it.look->line);
      way = way_to(layout, l, layout.lines()[l].place_of(it.look->outlet));
    }
    const Time walking = 2.0 * way / options_.walking_speed;
    return it.reading ? walking + options_.time_to_read : walking;
  }

  const Analysis& analysis_;
  const NextReadingOptions& options_;
  const Work& work_;
  std::vector<std::size_t> left_;  // candidates
  std::vector<double> probabilities_;
  std::vector<Case> cases_;
};

}  // namespace

NextReadings next_reading(const Layout& layout,
                          const std::vector<Reading>& readings,
                          const std::vector<Sight>& sights,
                          const NextReadingOptions& options,
                          const Work& work) {
  if (auto found = problems_of(options); !found.empty()) throw InvalidInput(std::move(found));
  const Analysis analysis(layout, readings, sights, options.find_fault, work);
  NextReadings next{.readings = Chooser(analysis, options, work).run()};
  std::vector<double> probabilities;
  for (const WeighedCandidate& it : analysis.found()) probabilities.push_back(it.probability);
  next.uncertainty_left = entropy(probabilities);
  double best_pressure = 0, best_bucket = 0, best = 0;
  for (const PossibleReading& it : next.readings) {
    best = std::max(best, it.worth);
    if (!it.reading) continue;
    double& best_of_kind = it.reading->place == ReadingPlace::bucket ? best_bucket : best_pressure;
    if (is_pressure(it.reading->place) || it.reading->place == ReadingPlace::bucket)
      best_of_kind = std::max(best_of_kind, it.worth);
  }
  next.use_the_bucket = best_pressure < options.least && best_bucket >= options.least;
  if (const std::vector<WalkTo> to = walks(analysis);
      !to.empty() && to.front().probability >= options.sure_enough)
    next.stop = WhyStop::sure_enough;
  else if (best < options.least)
    next.stop = WhyStop::nothing_to_learn;
  return next;
}

}  // namespace hydro
