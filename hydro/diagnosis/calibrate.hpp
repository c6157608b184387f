// calibrate.hpp: what a good walk teaches of a layout: how rough its pipes are, what its outlets let
// out, what its pump gives, and what the gauges show too much.
//
// What      A layout as it is described is a guess about every kind of pipe and outlet, every line's
//           fittings, every supply and gauge. Readings of a day when nothing was wrong move the
//           guesses, each as far as the readings bear on it. What they say nothing of stays as it
//           was, and what they cannot tell apart is named. A layout with all that was learnt comes
//           out, and how sure it is.
// Formula   x the inputs in deviations of what was assumed, f(x) what the gauges would show:
//             least (y - f)^T C^-1 (y - f) + x^T x,     P = (J^T C^-1 J + 1)^-1,  J = df/dx
//             C = D + U U^T + M
//           D the readings' own errors; U what each outlet by itself and each height moves them by,
//           which is not learnt; M the model's error, a share of each figure by itself. U and M are
//           those of the layout as it is described. A size that may be off by a large part of itself
//           is the value times exp(S x), S^2 = ln(1 + s^2), others the value times 1 + s x, a
//           pressure the value + s x.
//           misfit of a reading = w_i / sqrt(Q_ii), Q = (C + J J^T)^-1, w = C^-1 (y - f): what it is
//           off by from what all others say of it, in standard errors of that.
//           Chi squared is the least sum, with one degree of freedom a reading: the readings do not
//           fit when a larger one has a chance below 0.0027 (3 standard errors).
//           Not told apart: eigenvectors of P, with eigenvalue above 0.5, among those inputs of which
//           the readings would take half of the variance if all else were known.
// Source    Linearised Gaussian inverse theory, A. Tarantola, Inverse Problem Theory (SIAM 2005),
//           section 3.2; deletion residuals, R. D. Cook and S. Weisberg, Residuals and Influence in
//           Regression (1982), section 2.2 (both from memory). Damped steps: least_squares.hpp.
// Range     A day without a fault, but those that the layout has. The engine runs at the speed that
//           is described: a reading of it judges, and moves nothing. A held supply's pressure and its
//           gauge are told apart by what was assumed of them only.
// Accuracy  Of 200 simulated walks the truth lies within what is stated as often as it should:
//           calibrate_test.cpp.
// Errors    InvalidInput with all problems of the readings and options. Few readings are none: what
//           was assumed stays, and a note says so. NotSolved for the layout as it is described;
//           NotCalibrated; Stopped.
// Threads   Pure function.
#pragma once

#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/what_ifs/uncertainty.hpp"
#include "hydro/what_ifs/work.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// What is believed before the walk. All defaults are assumed.
struct CalibrateOptions {
  std::optional<Uncertainty> uncertainty = {};  ///< default assumed_before_calibration()
  Pressure gauge_bias = 1 * psi;  ///< standard deviation of what each gauge shows too much
  double model_error = 0.01;      ///< standard deviation, share of each figure predicted, 0 to 0.2
  int most_steps = 50;            ///< 1 to 1,000
  bool operator==(const CalibrateOptions&) const = default;
};

/// What a layout may be off by that nobody has measured yet: as assumed_uncertainty(), but walls by 15
/// %, kinds of outlets by 5 % and a pump's head by 5 %, since pipes and nozzles and pumps wear. Common
/// practice, no source.
Uncertainty assumed_before_calibration(const Layout& layout);

/// What can be learnt.
enum class LearntKind {
  hazen_williams,    ///< C of a kind of pipe
  roughness,         ///< of a kind of pipe
  darcy_factor,      ///< of a kind of pipe
  inside_diameter,   ///< of a kind of pipe
  outlet_flow,       ///< of a kind of outlet, at every pressure
  loss_coefficient,  ///< all K of a line but its valve's
  pump_head,         ///< at every flow
  supply_pressure,   ///< of what is no pump
  gauge              ///< what it shows too much
};
/// "pipe wall C", as a person says it.
std::string_view words_of(LearntKind kind);

/// One input, before the walk and after. Of the two groups one is given: of a size it is told by the
/// share, of a pressure what was added.
struct Learnt {
  LearntKind kind = LearntKind::hazen_williams;
  std::string of = {};  ///< kind of pipe or outlet, line, supply or gauge
  int pump = 0;         ///< 1 or 2, of pump_head
  /// C or the factor f of a pipe's wall, as it is described ...
  std::optional<double> before = {};
  std::optional<double> after = {};  ///< ... and as it was learnt

  std::optional<double> factor = {};            ///< what was learnt over what is described
  std::optional<double> deviation_before = {};  ///< standard deviation, share of the value
  std::optional<double> deviation = {};         ///< after the walk

  std::optional<Pressure> more = {};  ///< than is described; of a gauge, what it shows too much
  std::optional<Pressure> more_deviation_before = {};
  std::optional<Pressure> more_deviation = {};

  double moved = 0;   ///< in standard deviations of what was assumed
  double learnt = 0;  ///< share of its variance that the readings took, 0 to 1
};

/// One of those that cannot be told apart.
struct Entangled {
  std::size_t which = 0;  ///< of Calibration::learnt
  double weight = 0;      ///< in deviations of what was assumed, of a direction of length 1
};

/// Inputs that can go together by these weights, and the readings stay nearly the same.
struct NotToldApart {
  std::vector<Entangled> inputs = {};  ///< largest weight first
  double left = 0;                     ///< share of the variance that is left, 0.5 to 1
};

/// What the walk taught.
struct Calibration {
  Layout layout;                 ///< as it was learnt
  Uncertainty uncertainty = {};  ///< of that layout: see calibrated_options()
  Pressure gauge_bias = {};  ///< standard deviation left, of a gauge of this walk once corrected
  std::vector<Learnt> learnt = {};  ///< kinds of pipe, of outlet, lines, supplies, gauges
  std::vector<std::vector<double>> correlation = {};  ///< of what is left, in the order of learnt
  std::vector<NotToldApart> not_told_apart = {};      ///< the least known first
  std::vector<ReadingFit> before = {};  ///< the layout as it was described; misfits as in Formula
  std::vector<ReadingFit> fits = {};    ///< the calibrated layout, its gauges' biases in; likewise
  double chi_squared = 0;               ///< one degree of freedom a reading
  double chance = 1;                    ///< of a larger one
  bool fits_well = true;                ///< chance is 0.0027 or more
  std::optional<std::size_t> worst = {};  ///< reading whose misfit is largest
  int steps = 0;
  std::vector<std::string> notes = {};  ///< what follows from readings that are few, and the like
};

/// Thrown when the least squares did not settle.
class NotCalibrated : public std::runtime_error {
 public:
  NotCalibrated(int steps, double last_step, std::vector<double> misfits);
  int steps() const { return steps_; }
  /// In standard errors.
  double last_step() const { return last_step_; }
  /// Of readings, each in its own standard errors, as reached.
  const std::vector<double>& misfits() const { return misfits_; }

 private:
  int steps_;
  double last_step_;
  std::vector<double> misfits_;
};

/// @throws InvalidInput, NotSolved, NotCalibrated, Stopped
Calibration calibrate(const Layout& layout,
                      const std::vector<Reading>& readings,
                      const CalibrateOptions& options = {},
                      const Work& work = {});

/// Readings of another day less what their gauges show too much, as far as that was learnt.
std::vector<Reading> corrected(std::vector<Reading> readings, const Calibration& calibration);

/// These options with what is left uncertain after the walk, for readings that are corrected. What
/// hangs together is taken apart on the safe side: no figure is taken to be surer than it is.
FindFaultOptions calibrated_options(const Calibration& calibration, FindFaultOptions options = {});

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const CalibrateOptions& options, const Layout& layout);

}  // namespace hydro
