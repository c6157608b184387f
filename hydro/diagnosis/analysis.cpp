#include "hydro/diagnosis/analysis.hpp"

#include "hydro/physics/water.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/in_parallel.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>
#include <utility>

#include <boost/math/special_functions/fpclassify.hpp>
// pchip.hpp of Boost 1.74 lacks the one before.
#include <boost/math/interpolators/pchip.hpp>

namespace hydro {
namespace {

/// Sizes at which a candidate is solved, evenly spread: those that bend little need fewer.
std::size_t sizes_of(CandidateKind kind) {
  if (!has_size(kind)) return 1;
  constexpr std::size_t of_small_range = 5, of_wide_range = 7;
  return kind == CandidateKind::valve_part_closed || kind == CandidateKind::leak ? of_wide_range
                                                                                 : of_small_range;
}
double size_of_step(std::size_t step, std::size_t steps) {
  return -farthest_size +
         2 * farthest_size * static_cast<double>(step) / static_cast<double>(steps);
}

/// From a few sizes to all steps.
Eigen::MatrixXd along_sizes(const Eigen::MatrixXd& few) {
  if (few.cols() == 1) return few;
  const auto count = static_cast<std::size_t>(few.cols());
  Eigen::MatrixXd all(few.rows(), static_cast<Eigen::Index>(size_steps) + 1);
  for (Eigen::Index row = 0; row < few.rows(); ++row) {
    std::vector<double> u, value;
    for (std::size_t j = 0; j < count; ++j) {
      u.push_back(size_of_step(j, count - 1));
      value.push_back(few(row, static_cast<Eigen::Index>(j)));
    }
    const double last = u.back();
    const boost::math::interpolators::pchip<std::vector<double>> curve(std::move(u),
                                                                       std::move(value));
    for (std::size_t i = 0; i <= size_steps; ++i)
      all(row, static_cast<Eigen::Index>(i)) = curve(std::min(last, size_of_step(i, size_steps)));
  }
  return all;
}

bool leaves_open(CandidateKind kind) {
  return kind == CandidateKind::head_off || kind == CandidateKind::riser_sheared ||
         kind == CandidateKind::nozzle_missing;
}

std::vector<Problem> all_problems(const Layout& layout,
                                  const std::vector<Reading>& readings,
                                  const std::vector<Sight>& sights,
                                  const FindFaultOptions& options) {
  std::vector<Problem> found = problems(readings, sights, layout);
  std::ranges::copy(problems(options, layout), std::back_inserter(found));
  return found;
}

}  // namespace

Analysis::Analysis(const Layout& layout,
                   const std::vector<Reading>& readings,
                   const std::vector<Sight>& sights,
                   const FindFaultOptions& options,
                   const Work& work)
    : layout_(with_gauge(layout)),
      options_(options),
      readings_(readings),
      threads_(work.threads),
      weight_density_(si(properties(layout.water()).density) * gravity),
      solution_([&] {
        if (auto found = all_problems(layout, readings, sights, options); !found.empty())
          throw InvalidInput(std::move(found));
        return hydro::solve(layout_);
      }()),
      base_(read_break(solution_)) {
  for (const Reading& reading : readings_) {
    spots_.push_back(spot_of(reading, layout_));
    gauges_.push_back(gauge_of(reading));
  }
  for (const Sight& sight : sights)
    for (int outlet = sight.outlet; outlet <= sight.to_outlet.value_or(sight.outlet); ++outlet) {
      Look look = look_at(layout_.index_of(sight.line), outlet, sight.seen);
      look.sight.width = sight.width;
      look.sight.doubt = sight.doubt;
      looks_.push_back(std::move(look));
    }
  std::set<std::string> gauges(gauges_.begin(), gauges_.end());
  gauges.erase("");
  candidates_ = hydro::candidates(
      layout_, options_.candidates, std::vector<std::string>(gauges.begin(), gauges.end()));
  find_errors();
  solve(work);
  weigh();
}

double Analysis::bias_between(const std::string& one,
                              const std::string& other,
                              const Candidate* wrong) const {
  if (one.empty() || one != other) return 0;
  const double bias = si(options_.gauge_bias);
  const double more = wrong && wrong->kind == CandidateKind::gauge_wrong && wrong->gauge == one
                          ? si(options_.candidates.sizes.gauge_wrong)
                          : 0;
  return bias * bias + more * more;
}

void Analysis::find_errors() {
  errors_ = std::make_unique<const InputErrors>(
      solution_, options_.uncertainty.value_or(assumed_uncertainty(layout_)));
  const auto readings = static_cast<Eigen::Index>(readings_.size());
  const auto all = readings + static_cast<Eigen::Index>(looks_.size());
  // By columns: where nothing is uncertain there are none, and no row to point into.
  Eigen::MatrixXd moved(static_cast<Eigen::Index>(errors_->count()), all);
  for (Eigen::Index i = 0; i < readings; ++i)
    moved.col(i) = errors_->of(readings_[static_cast<std::size_t>(i)]);
  for (Eigen::Index i = readings; i < all; ++i) {
    const Sight& sight = looks_[static_cast<std::size_t>(i - readings)].sight;
    moved.col(i) = errors_->of_device(sight.line, sight.outlet);
  }
  moved_ = moved.transpose();
  ErrorModel model{.read = Eigen::VectorXd(readings),
                   .covariance = moved_ * moved_.transpose(),
                   .own_variance = Eigen::VectorXd(readings),
                   .blunder = options_.blunder};
  const Eigen::VectorXd shown_now = read_off(base_);
  for (Eigen::Index i = 0; i < all; ++i) {
    double size = std::abs(shown_now[i]);
    if (i < readings) {
      const Reading& reading = readings_[static_cast<std::size_t>(i)];
      model.read[i] = figure_of(reading);
      size = std::max(size, std::abs(model.read[i]));
      const double error = own_error(reading);
      model.own_variance[i] = error * error;
      model.covariance(i, i) += error * error;
    }
    const double of_model = options_.model_error * size;
    model.covariance(i, i) += of_model * of_model;
  }
  const auto with_bias = [&](const Candidate* wrong) {
    ErrorModel with = model;
    for (std::size_t i = 0; i < gauges_.size(); ++i)
      for (std::size_t j = 0; j < gauges_.size(); ++j)
        with.covariance(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) +=
            bias_between(gauges_[i], gauges_[j], wrong);
    return Evidence(std::move(with));
  };
  evidence_.emplace(with_bias(nullptr));
  for (const Candidate& candidate : candidates_)
    if (candidate.kind == CandidateKind::gauge_wrong)
      evidence_of_wrong_.emplace(candidate.gauge, with_bias(&candidate));
}

Eigen::VectorXd Analysis::read_off(const SolvedBreak& solved) const {
  Eigen::VectorXd figures(static_cast<Eigen::Index>(spots_.size() + looks_.size()));
  Eigen::Index i = 0;
  for (const Spot& spot : spots_) figures[i++] = shown(spot, solved);
  for (const Look& look : looks_) figures[i++] = device_pressure(look, solved);
  return figures;
}

void Analysis::solve(const Work& work) {
  found_.resize(candidates_.size());
  std::vector<CandidateSize> sizes;
  std::vector<std::size_t> columns;  // by size
  std::vector<Eigen::MatrixXd> few(candidates_.size());
  for (std::size_t c = 0; c < candidates_.size(); ++c) {
    const CandidateKind kind = candidates_[c].kind;
    const std::size_t count = sizes_of(kind);
    few[c].resize(static_cast<Eigen::Index>(spots_.size() + looks_.size()),
                  static_cast<Eigen::Index>(count));
    if (kind == CandidateKind::no_fault || kind == CandidateKind::gauge_wrong) {
      few[c].col(0) = read_off(base_);
      continue;
    }
    for (std::size_t j = 0; j < count; ++j) {
      sizes.push_back({c, count == 1 ? 0 : size_of_step(j, count - 1)});
      columns.push_back(j);
    }
  }
  // Each of them is another thread's: a reason is kept apart from what is said of the candidate.
  std::vector<std::string> why_not(sizes.size());
  solve_candidates(layout_,
                   options_.candidates.sizes,
                   candidates_,
                   sizes,
                   work,
                   [&](std::size_t i, const SolvedBreak& solved) {
                     why_not[i] = solved.not_solved;
                     if (!solved.not_solved.empty()) return;
                     few[sizes[i].candidate].col(static_cast<Eigen::Index>(columns[i])) =
                         read_off(solved);
                   });
  solves_ = sizes.size() + 1;
  for (std::size_t i = 0; i < sizes.size(); ++i)
    if (!why_not[i].empty()) found_[sizes[i].candidate].not_solved = std::move(why_not[i]);
  for (std::size_t c = 0; c < candidates_.size(); ++c)
    if (found_[c].not_solved.empty()) found_[c].predicted = along_sizes(few[c]);
}

void Analysis::weigh() {
  const Work quiet{.threads = threads_};
  in_parallel(candidates_.size(), quiet, [&](std::size_t c) {
    if (!found_[c].not_solved.empty()) return;
    std::vector<SightChance> chances;
    for (const Look& look : looks_) chances.push_back(chance(look, candidates_[c]));
    found_[c].weighed = evidence_for(candidates_[c]).weigh(found_[c].predicted, chances);
  });
  std::vector<double> logs;
  for (std::size_t c = 0; c < candidates_.size(); ++c)
    if (found_[c].not_solved.empty())
      logs.push_back(std::log(candidates_[c].odds) + found_[c].weighed.log_evidence);
  const double all = log_sum(logs);
  for (std::size_t c = 0; c < candidates_.size(); ++c)
    if (found_[c].not_solved.empty())
      found_[c].probability =
          std::exp(std::log(candidates_[c].odds) + found_[c].weighed.log_evidence - all);
}

const Evidence& Analysis::evidence_for(const Candidate& candidate) const {
  return candidate.kind == CandidateKind::gauge_wrong ? evidence_of_wrong_.at(candidate.gauge)
                                                      : *evidence_;
}

double Analysis::deviation_of_reading(std::size_t reading, const Candidate& candidate) const {
  return std::sqrt(evidence_for(candidate).variance(static_cast<Eigen::Index>(reading)));
}

Eigen::VectorXd Analysis::bias_with_readings(const Candidate& candidate) const {
  Eigen::VectorXd with(static_cast<Eigen::Index>(readings_.size()));
  for (std::size_t i = 0; i < gauges_.size(); ++i)
    with[static_cast<Eigen::Index>(i)] = bias_between(candidate.gauge, gauges_[i], &candidate);
  return with;
}

double Analysis::most_probable_size(std::size_t candidate) const {
  const Weighed& weighed = found_[candidate].weighed;
  if (weighed.log_shares.size() < size_steps) return 0;
  const auto step = static_cast<std::size_t>(std::ranges::max_element(weighed.log_shares) -
                                             weighed.log_shares.begin());
  return size_of_step(step, size_steps) +
         weighed.best[step] * (size_of_step(1, size_steps) - size_of_step(0, size_steps));
}

double Analysis::size_below(std::size_t candidate, double share) const {
  const Weighed& weighed = found_[candidate].weighed;
  if (weighed.log_shares.size() < size_steps) return 0;
  double sum = 0;
  for (std::size_t step = 0; step < size_steps; ++step) {
    const double here = std::exp(weighed.log_shares[step]);
    if (sum + here >= share) {
      const double part = here > 0 ? (share - sum) / here : 0;
      return size_of_step(step, size_steps) +
             part * (size_of_step(1, size_steps) - size_of_step(0, size_steps));
    }
    sum += here;
  }
  return farthest_size;
}

Eigen::VectorXd Analysis::predicted_at(std::size_t candidate, double u) const {
  const Eigen::MatrixXd& predicted = found_[candidate].predicted;
  if (predicted.cols() == 1) return predicted.col(0);
  const double steps = (u + farthest_size) / (2 * farthest_size) * static_cast<double>(size_steps);
  const auto step =
      static_cast<Eigen::Index>(std::clamp(steps, 0.0, static_cast<double>(size_steps - 1)));
  const double part = steps - static_cast<double>(step);
  return (1 - part) * predicted.col(step) + part * predicted.col(step + 1);
}

double Analysis::own_variance(const Reading& reading, double size) const {
  const double error = own_error(reading, size);
  const double of_model = options_.model_error * size;
  return error * error + of_model * of_model;
}

double Analysis::variance_left(const Figure& figure, const Evidence& evidence) {
  const double known = figure.with_readings.dot(evidence.gain(figure.with_readings));
  return std::max(figure.variance - known, figure.own_variance);
}

Analysis::Figure Analysis::figure(const Reading& reading, double size) const {
  Figure found{.spot = spot_of(reading, layout_), .gauge = gauge_of(reading)};
  const Eigen::VectorXd moved = errors_->of(reading);
  found.own_variance = own_variance(reading, size);
  found.variance =
      found.own_variance + moved.squaredNorm() + bias_between(found.gauge, found.gauge, nullptr);
  found.with_readings = moved_.topRows(static_cast<Eigen::Index>(readings_.size())) * moved;
  for (std::size_t i = 0; i < gauges_.size(); ++i)
    found.with_readings[static_cast<Eigen::Index>(i)] +=
        bias_between(found.gauge, gauges_[i], nullptr);
  return found;
}

Analysis::Figure Analysis::figure_if(const Figure& figure, const Candidate& candidate) const {
  if (candidate.kind != CandidateKind::gauge_wrong || candidate.gauge != figure.gauge)
    return figure;
  Figure with = figure;
  const double more = bias_between(figure.gauge, figure.gauge, &candidate) -
                      bias_between(figure.gauge, figure.gauge, nullptr);
  with.variance += more;
  for (std::size_t i = 0; i < gauges_.size(); ++i)
    if (gauges_[i] == figure.gauge) with.with_readings[static_cast<Eigen::Index>(i)] += more;
  return with;
}

Analysis::Figure Analysis::figure(const Look& look) const {
  Figure found{.spot = {ReadingPlace::riser, look.line, look.outlet}, .gauge = {}};
  const Eigen::VectorXd moved = errors_->of_device(look.sight.line, look.sight.outlet);
  const double of_model = options_.model_error * std::abs(device_pressure(look, base_));
  found.own_variance = of_model * of_model;
  found.variance = found.own_variance + moved.squaredNorm();
  found.with_readings = moved_.topRows(static_cast<Eigen::Index>(readings_.size())) * moved;
  return found;
}

Look Analysis::look_at(std::size_t line, int outlet, Seen seen) const {
  Sight sight{.seen = seen, .line = layout_.lines()[line].name, .outlet = outlet};
  return {
      std::move(sight), line, outlets_before(layout_)[line] + static_cast<std::size_t>(outlet - 1)};
}

double Analysis::device_pressure(const Look& look, const SolvedBreak& solved) const {
  const double pressure = solved.pressure[look.outlet];
  if (pressure > 0) return pressure;
  return solved.line_pressure[look.outlet] -
         weight_density_ * si(layout_.lines()[look.line].riser.height);
}

SightChance Analysis::chance(const Look& look, const Candidate& candidate) const {
  const Sight& sight = look.sight;
  const double doubt = sight.doubt.value_or(Sight::default_doubt);
  const double width = si(sight.width.value_or(Sight::default_width));
  const bool is_its_own = candidate.line == sight.line && candidate.outlet == sight.outlet;
  const bool is_open = (is_its_own && leaves_open(candidate.kind)) ||
                       base_.state[look.outlet] == OutletState::broken;
  const bool is_wet = is_open || (is_its_own && candidate.kind == CandidateKind::leak);
  const auto always = [&](bool is_seen) { return SightChance{is_seen ? 1 - doubt : doubt}; };
  const double sure = 1 - 2 * doubt;
  const Outlet& kind = layout_.outlet_at(look.line, sight.outlet);
  const double minimum = si(kind.minimum.value_or(Pressure{}));
  // Of clogged outlets about half do not turn (assumed, no source).
  const double turns = is_its_own && candidate.kind == CandidateKind::clogged ? 0.5 : 1;
  switch (sight.seen) {
    case Seen::turning:
      return is_open ? always(false) : SightChance{doubt, turns * sure, minimum, width};
    case Seen::not_turning:
      return is_open ? always(true) : SightChance{1 - doubt, -turns * sure, minimum, width};
    case Seen::dry:
      return is_open ? always(false) : SightChance{1 - doubt, -sure, 0, width};
    case Seen::plume:
      return always(is_open);
    case Seen::wet_spot:
      return always(is_wet);
  }
  return always(false);
}

}  // namespace hydro
