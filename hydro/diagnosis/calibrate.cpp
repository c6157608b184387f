#include "hydro/diagnosis/calibrate.hpp"

#include "hydro/diagnosis/input_errors.hpp"
#include "hydro/diagnosis/learnt_inputs.hpp"
#include "hydro/diagnosis/least_squares.hpp"
#include "hydro/diagnosis/places.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/solve_breaks.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <iterator>
#include <map>
#include <optional>
#include <utility>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <boost/math/distributions/chi_squared.hpp>
#include <fmt/format.h>

namespace hydro {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

/// Of chi squared: 2 (1 - Phi(3)).
constexpr double beyond_three_standard_errors = 0.0027;

ReadingFit fit_of(const Reading& reading, double predicted, double misfit) {
  ReadingFit fit{.misfit = misfit};
  const double read = figure_of(reading);
  if (is_pressure(reading.place)) {
    fit.pressure_predicted = Pressure::from_value(predicted);
    fit.pressure_read = Pressure::from_value(read);
  } else if (is_flow(reading.place)) {
    fit.flow_predicted = Flow::from_value(predicted);
    fit.flow_read = Flow::from_value(read);
  } else {
    fit.speed_predicted = RotationalSpeed::from_value(predicted);
    fit.speed_read = RotationalSpeed::from_value(read);
  }
  return fit;
}

/// What the gauges show of a layout, and how the inputs move that.
struct Shown {
  VectorXd figures;
  MatrixXd slopes;
};

class Calibrator {
 public:
  Calibrator(const Layout& layout,
             const std::vector<Reading>& readings,
             const CalibrateOptions& options,
             const Work& work)
      : described_(layout),
        layout_(with_gauge(layout)),
        readings_(readings),
        options_(options),
        work_(work),
        uncertainty_(options.uncertainty.value_or(assumed_before_calibration(layout))),
        inputs_(layout_, uncertainty_),
        read_(static_cast<Index>(readings.size())) {
    for (std::size_t i = 0; i < readings_.size(); ++i) {
      read_[static_cast<Index>(i)] = figure_of(readings_[i]);
      spots_.push_back(spot_of(readings_[i], layout_));
      const std::string gauge = gauge_of(readings_[i]);
      if (!gauge.empty() && options_.gauge_bias > Pressure{} &&
          std::ranges::find(gauges_, gauge) == gauges_.end())
        gauges_.push_back(gauge);
    }
    find_errors();
  }

  Calibration run() {
    const VectorXd start = VectorXd::Zero(all());
    VectorXd x = start;
    int steps = 0;
    Shown after = before_;
    if (all() > 0) {
      LeastSquares found = least_squares(
          [&](const VectorXd& tried) { return model(tried); }, start, options_.most_steps, settled);
      x = std::move(found.inputs);
      steps = found.steps;
      if (!found.is_settled) {
        const Shown reached = shown(x).value_or(before_);
        const VectorXd misfits =
            (read_ - reached.figures).cwiseQuotient(covariance_.diagonal().cwiseSqrt());
        throw NotCalibrated(steps, found.last_step, {misfits.begin(), misfits.end()});
      }
      after = *shown(x);
    }
    Calibration result{.layout = calibrated_layout(x), .steps = steps};
    const MatrixXd left = after_walk(after);
    tell_inputs(x, left, result);
    tell_entangled(after, left, result);
    tell_fits(x, after, result);
    tell_uncertainty(x, left, result);
    tell_notes(result);
    return result;
  }

 private:
  /// In standard errors: far below what anyone could read.
  static constexpr double settled = 1e-7;

  Index learnt() const { return static_cast<Index>(inputs_.count()); }
  Index all() const { return learnt() + static_cast<Index>(gauges_.size()); }

  void find_errors() {
    const Solution solution = solve(layout_);
    before_ = read_off(VectorXd::Zero(all()), solution);
    const InputErrors errors(solution, unlearnt_part(uncertainty_));
    // By columns, as in analysis.cpp.
    MatrixXd moved(static_cast<Index>(errors.count()), read_.size());
    for (Index i = 0; i < read_.size(); ++i)
      moved.col(i) = errors.of(readings_[static_cast<std::size_t>(i)]);
    covariance_ = moved.transpose() * moved;
    for (Index i = 0; i < read_.size(); ++i) {
      const double own = own_error(readings_[static_cast<std::size_t>(i)]);
      const double of_model =
          options_.model_error * std::max(std::abs(before_.figures[i]), std::abs(read_[i]));
      covariance_(i, i) += own * own + of_model * of_model;
    }
    root_ = covariance_.llt();
  }

  VectorXd whitened(const VectorXd& figures) const { return root_.matrixL().solve(figures); }

  Shown read_off(const VectorXd& x, const Solution& solution) const {
    Shown shown{VectorXd(read_.size()), MatrixXd::Zero(read_.size(), all())};
    const SolvedBreak solved = read_break(solution);
    const InputErrors errors(solution, learnt_part(uncertainty_));
    for (Index i = 0; i < read_.size(); ++i) {
      const Reading& reading = readings_[static_cast<std::size_t>(i)];
      const double figure = hydro::shown(spots_[static_cast<std::size_t>(i)], solved);
      shown.figures[i] = figure;
      // A gauge without water shows nothing, whatever moves a little.
      if (!is_pressure(reading.place) || figure > 0) {
        const VectorXd moved = errors.of(reading);
        for (Index j = 0; j < learnt(); ++j)
          shown.slopes(i, j) = moved[j] * inputs_.slope_factor(static_cast<std::size_t>(j), x[j]);
      }
      const auto gauge = std::ranges::find(gauges_, gauge_of(reading));
      if (gauge == gauges_.end()) continue;
      const Index column = learnt() + (gauge - gauges_.begin());
      shown.slopes(i, column) = si(options_.gauge_bias);
      shown.figures[i] += si(options_.gauge_bias) * x[column];
    }
    return shown;
  }

  /// None where the layout cannot be so, or is not solved.
  std::optional<Shown> shown(const VectorXd& x) const {
    try {
      const auto layout = inputs_.layout_with(x);
      if (!layout) return std::nullopt;
      return read_off(x, solve(*layout));
    } catch (const NotSolved&) {
      return std::nullopt;
    } catch (const InvalidInput&) {
      return std::nullopt;
    }
  }

  std::optional<Linearised> model(const VectorXd& x) {
    if (work_.progress && !work_.progress(done_, most_parts())) throw Stopped(done_, most_parts());
    done_ = std::min(done_ + 1, most_parts());
    const auto there = shown(x);
    if (!there) return std::nullopt;
    const Index rows = read_.size();
    Linearised at{VectorXd(rows + all()), MatrixXd(rows + all(), all())};
    at.residuals << whitened(there->figures - read_), x;
    at.jacobian << root_.matrixL().solve(there->slopes), MatrixXd::Identity(all(), all());
    return at;
  }
  std::size_t most_parts() const { return static_cast<std::size_t>(options_.most_steps) + 1; }

  /// What is left of the covariance of x.
  MatrixXd after_walk(const Shown& shown) const {
    MatrixXd jacobian(read_.size() + all(), all());
    jacobian << root_.matrixL().solve(shown.slopes), MatrixXd::Identity(all(), all());
    return all() == 0 ? MatrixXd() : covariance_of(jacobian);
  }

  Layout calibrated_layout(const VectorXd& x) const {
    Layout layout = inputs_.layout_with(x).value();
    Supply supply = layout.supply();
    supply.gauge = described_.supply().gauge;
    return layout.with_supply(std::move(supply));
  }

  void tell_inputs(const VectorXd& x, const MatrixXd& left, Calibration& result) const {
    for (Index j = 0; j < all(); ++j) {
      if (j < learnt()) {
        result.learnt.push_back(inputs_.tell(static_cast<std::size_t>(j), x[j], left(j, j)));
        continue;
      }
      const Pressure before = options_.gauge_bias;
      result.learnt.push_back({.kind = LearntKind::gauge,
                               .of = gauges_[static_cast<std::size_t>(j - learnt())],
                               .more = before * x[j],
                               .more_deviation_before = before,
                               .more_deviation = before * std::sqrt(left(j, j)),
                               .moved = x[j],
                               .learnt = 1 - left(j, j)});
    }
    const VectorXd deviations = left.diagonal().cwiseSqrt();
    for (Index i = 0; i < all(); ++i) {
      auto& row = result.correlation.emplace_back();
      for (Index j = 0; j < all(); ++j)
        row.push_back(i == j ? 1 : left(i, j) / (deviations[i] * deviations[j]));
    }
  }

  /// Directions of which little was learnt, among inputs that the readings do bear on.
  void tell_entangled(const Shown& shown, const MatrixXd& left, Calibration& result) const {
    constexpr double least_left = 0.5, least_weight = 0.3;
    constexpr std::size_t most_named = 4;
    const VectorXd information = root_.matrixL().solve(shown.slopes).colwise().squaredNorm();
    std::vector<Index> seen;
    for (Index j = 0; j < all(); ++j)
      if (information[j] >= 1) seen.push_back(j);
    if (seen.empty()) return;
    const MatrixXd block = left(seen, seen);
    const Eigen::SelfAdjointEigenSolver<MatrixXd> eigen(block);
    for (Index k = block.cols() - 1; k >= 0; --k) {
      const double eigenvalue = eigen.eigenvalues()[k];
      if (!(eigenvalue > least_left)) break;
      const VectorXd direction = eigen.eigenvectors().col(k);
      const double largest = direction.cwiseAbs().maxCoeff();
      NotToldApart entangled{.left = std::min(1.0, eigenvalue)};
      for (Index j = 0; j < block.cols(); ++j)
        if (std::abs(direction[j]) >= least_weight * largest)
          entangled.inputs.push_back(
              {static_cast<std::size_t>(seen[static_cast<std::size_t>(j)]), direction[j]});
      if (entangled.inputs.size() < 2) continue;
      std::ranges::stable_sort(entangled.inputs, std::ranges::greater{}, [](const Entangled& it) {
        return std::abs(it.weight);
      });
      entangled.inputs.resize(std::min(most_named, entangled.inputs.size()));
      result.not_told_apart.push_back(std::move(entangled));
    }
  }

  void tell_fits(const VectorXd& x, const Shown& after, Calibration& result) const {
    const MatrixXd assumed = covariance_ + before_.slopes * before_.slopes.transpose();
    const MatrixXd all_errors = covariance_ + after.slopes * after.slopes.transpose();
    const VectorXd weights = covariance_.llt().solve(read_ - after.figures);
    const MatrixXd precision =
        all_errors.llt().solve(MatrixXd::Identity(read_.size(), read_.size()));
    double largest = 0;
    for (Index i = 0; i < read_.size(); ++i) {
      const auto which = static_cast<std::size_t>(i);
      const Reading& reading = readings_[which];
      result.before.push_back(fit_of(
          reading, before_.figures[i], (read_[i] - before_.figures[i]) / std::sqrt(assumed(i, i))));
      const double misfit = weights[i] / std::sqrt(precision(i, i));
      result.fits.push_back(fit_of(reading, after.figures[i], misfit));
      if (!(std::abs(misfit) > largest)) continue;
      largest = std::abs(misfit);
      result.worst = which;
    }
    result.chi_squared = whitened(read_ - after.figures).squaredNorm() + x.squaredNorm();
    if (read_.size() > 0)
      result.chance = cdf(complement(boost::math::chi_squared(static_cast<double>(read_.size())),
                                     result.chi_squared));
    result.fits_well = result.chance >= beyond_three_standard_errors;
  }

  /// The inputs are taken as independent again. Their variances D are those before the walk, made
  /// smaller one group after another, the best known first, as long as D - P has no direction below
  /// 0: then no figure whatever has less variance than P gives it.
  void tell_uncertainty(const VectorXd& x, const MatrixXd& left, Calibration& result) const {
    const VectorXd shares = cover(left);
    result.uncertainty = inputs_.shrunk(x, shares);
    result.gauge_bias = options_.gauge_bias;
    if (!gauges_.empty())
      result.gauge_bias *= std::sqrt(shares.tail(static_cast<Index>(gauges_.size())).maxCoeff());
  }

  VectorXd cover(const MatrixXd& left) const {
    constexpr double rounding = 1e-9;
    constexpr int halvings = 20;
    VectorXd shares = VectorXd::Ones(all());
    std::map<std::size_t, std::vector<Index>> groups;
    for (Index j = 0; j < all(); ++j)
      groups[j < learnt() ? inputs_.group_of(static_cast<std::size_t>(j)) : 0].push_back(j);
    std::vector<std::pair<double, std::vector<Index>>> by_left;
    by_left.reserve(groups.size());
    for (const auto& [name, group] : groups)
      by_left.emplace_back(left.diagonal()(group).maxCoeff(), group);
    std::ranges::stable_sort(by_left, {}, &std::pair<double, std::vector<Index>>::first);
    const auto covers = [&](const VectorXd& tried) {
      MatrixXd rest = -left;
      rest.diagonal() += tried;
      rest.diagonal().array() += rounding;
      return rest.llt().info() == Eigen::Success;
    };
    for (const auto& [least, group] : by_left) {
      double low = least, high = 1;
      const auto with = [&, &members = group](double share) {
        VectorXd tried = shares;
        tried(members).setConstant(share);
        return tried;
      };
      for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (low + high);
        (covers(with(middle)) ? high : low) = middle;
      }
      shares = with(high);
    }
    return shares;
  }

  void tell_notes(Calibration& result) const {
    const auto count = readings_.size();
    if (count == 0) {
      result.notes.emplace_back("nothing was read: all stays as it was assumed");
      return;
    }
    if (static_cast<Index>(count) < all())
      result.notes.push_back(
          fmt::format("{} reading{} for {} inputs: what they do not tell stays as it was assumed",
                      count,
                      count == 1 ? "" : "s",
                      all()));
    const Reading& first = readings_.front();
    const auto is_at_first = [&](const Reading& it) {
      return it.place == first.place && it.line == first.line && it.outlet == first.outlet;
    };
    if (count > 1 && std::ranges::all_of(readings_, is_at_first))
      result.notes.emplace_back("all readings are of one place: they count as one");
    for (std::size_t i = 0; i < count; ++i) {
      constexpr double most = 2;  // standard errors
      if (readings_[i].place != ReadingPlace::engine) continue;
      const auto at = static_cast<Index>(i);
      if (!(std::abs(read_[at] - before_.figures[at]) <= most * own_error(readings_[i])))
        result.notes.emplace_back(
            "the engine did not run at the speed that is described: describe the speed that was "
            "read, and calibrate again");
    }
  }

  const Layout& described_;
  Layout layout_;  // with a gauge at the supply
  const std::vector<Reading>& readings_;
  const CalibrateOptions& options_;
  const Work& work_;
  Uncertainty uncertainty_;
  LearntInputs inputs_;
  VectorXd read_;
  std::vector<Spot> spots_;
  std::vector<std::string> gauges_;  // in the order of x, after the inputs
  Shown before_;
  MatrixXd covariance_;  // C
  Eigen::LLT<MatrixXd> root_;
  std::size_t done_ = 0;
};

constexpr std::array kind_words{"pipe wall C",
                                "pipe roughness",
                                "pipe friction factor",
                                "pipe bore",
                                "outlet flow",
                                "fittings",
                                "pump head",
                                "supply pressure",
                                "gauge"};
static_assert(kind_words.size() == static_cast<std::size_t>(LearntKind::gauge) + 1);

}  // namespace

NotCalibrated::NotCalibrated(int steps, double last_step, std::vector<double> misfits)
    : std::runtime_error(fmt::format(
          "calibrate: not settled after {} steps, the last one {:.2g} standard errors long; the "
          "readings may be of a day with a fault, or nearly without error",
          steps,
          last_step)),
      steps_(steps),
      last_step_(last_step),
      misfits_(std::move(misfits)) {}

std::string_view words_of(LearntKind kind) {
  return kind_words.at(static_cast<std::size_t>(kind));
}

Uncertainty assumed_before_calibration(const Layout& layout) {
  Uncertainty assumed = assumed_uncertainty(layout);
  assumed.wall = 0.15;
  assumed.rating = 0.05;
  if (assumed.pump_head > 0) assumed.pump_head = 0.05;
  return assumed;
}

std::vector<Problem> problems(const CalibrateOptions& options, const Layout& layout) {
  Examination examination;
  if (options.uncertainty)
    examination.include("uncertainty", problems(*options.uncertainty, layout));
  examination.within("gauge_bias", options.gauge_bias, Range<Pressure>{0, 1000, kPa});
  examination.within("model_error", options.model_error, Range<double>{0, 0.2, units::plain});
  examination.within("most_steps", options.most_steps, 1, 1000);
  return examination.take();
}

Calibration calibrate(const Layout& layout,
                      const std::vector<Reading>& readings,
                      const CalibrateOptions& options,
                      const Work& work) {
  std::vector<Problem> found = problems(readings, {}, layout);
  std::ranges::copy(problems(options, layout), std::back_inserter(found));
  if (!found.empty()) throw InvalidInput(std::move(found));
  return Calibrator(layout, readings, options, work).run();
}

std::vector<Reading> corrected(std::vector<Reading> readings, const Calibration& calibration) {
  for (Reading& reading : readings)
    for (const Learnt& learnt : calibration.learnt)
      if (learnt.kind == LearntKind::gauge && reading.pressure && gauge_of(reading) == learnt.of)
        *reading.pressure -= *learnt.more;
  return readings;
}

FindFaultOptions calibrated_options(const Calibration& calibration, FindFaultOptions options) {
  options.uncertainty = calibration.uncertainty;
  options.gauge_bias = calibration.gauge_bias;
  return options;
}

}  // namespace hydro
