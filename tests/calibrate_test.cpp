// What a walk teaches: against cases by hand, against differences, and on simulated walks whose truth is
// known.

#include "hydro/diagnosis/calibrate.hpp"

#include "hydro/diagnosis/input_errors.hpp"
#include "hydro/diagnosis/learnt_inputs.hpp"
#include "hydro/diagnosis/places.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/solve_breaks.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include <Eigen/Cholesky>
#include <boost/math/distributions/chi_squared.hpp>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

Layout strips() {
  return ouzel_strips().watering({"rows 1 and 2"});
}

std::vector<Reading> places() {
  return {{.place = ReadingPlace::supply_gauge},
          {.place = ReadingPlace::after_filter},
          {.place = ReadingPlace::meter},
          {.place = ReadingPlace::pipe, .line = "row 1", .outlet = 1},
          {.place = ReadingPlace::riser, .line = "row 1", .outlet = 10},
          {.place = ReadingPlace::line_inlet, .line = "row 2"},
          {.place = ReadingPlace::flush_end, .line = "row 2"},
          {.place = ReadingPlace::bucket, .line = "row 1", .outlet = 3},
          {.place = ReadingPlace::bucket, .line = "row 2", .outlet = 8}};
}

double shown_by(const Reading& place, const Layout& layout) {
  return shown(spot_of(place, layout), read_break(solve(layout)));
}
Reading with_figure(Reading reading, double figure) {
  if (is_pressure(reading.place))
    reading.pressure = Pressure::from_value(figure);
  else
    reading.flow = Flow::from_value(figure);
  return reading;
}
/// What is read of a layout, without any error.
std::vector<Reading> read_exactly(const Layout& layout) {
  std::vector<Reading> readings;
  const SolvedBreak solved = read_break(solve(layout));
  for (const Reading& place : places())
    readings.push_back(with_figure(place, shown(spot_of(place, layout), solved)));
  return readings;
}

/// A held pressure behind one gauge.
Layout held() {
  return Layout({.pressure = 40 * psi},
                {{.name = "row",
                  .pipe = {.inside_diameter = 1.754 * inch, .hazen_williams = 150},
                  .outlet = Outlet{.name = "head", .flow = 3.5 * gpm, .at = 25 * psi},
                  .count = 4,
                  .spacing = 30 * ft}});
}

TEST(Calibrate, SplitsWhatTwoInputsCannotBeToldApartBy) {
  // By hand: y = 40 + p + b, both 1 psi, read to 0.1 psi, 42. With g = (1, 1):
  //   x = g (y - 40) / (2 + 0.01),  P = 1 - g g^T / 2.01,  chi squared = 4 / 2.01.
  const std::vector<Reading> readings{
      {.place = ReadingPlace::supply_gauge, .pressure = 42 * psi, .pressure_error = 0.1 * psi}};
  const Calibration it = calibrate(held(),
                                   readings,
                                   {.uncertainty = Uncertainty{.supply_pressure = 1 * psi},
                                    .gauge_bias = 1 * psi,
                                    .model_error = 0});
  constexpr double rounding = 1e-9;
  ASSERT_EQ(it.learnt.size(), 2u);
  for (const Learnt& learnt : it.learnt) {
    EXPECT_NEAR(*learnt.more / psi, 2 / 2.01, rounding);
    EXPECT_NEAR(learnt.learnt, 1 / 2.01, rounding);
    EXPECT_NEAR(*learnt.more_deviation / psi, std::sqrt(1.01 / 2.01), rounding);
  }
  EXPECT_NEAR(it.correlation[0][1], -1 / 1.01, rounding);
  EXPECT_NEAR(it.chi_squared, 4 / 2.01, rounding);
  // Of one degree of freedom: erfc(sqrt(chi^2 / 2)).
  EXPECT_NEAR(it.chance, std::erfc(std::sqrt(2 / 2.01)), rounding);
  EXPECT_NEAR(*it.layout.supply().pressure / psi, 40 + 2 / 2.01, rounding);
  EXPECT_NEAR(it.before[0].misfit, 2 / std::sqrt(2.01), rounding);
  ASSERT_EQ(it.not_told_apart.size(), 1u);
  EXPECT_NEAR(it.not_told_apart[0].left, 1, rounding);
  ASSERT_EQ(it.not_told_apart[0].inputs.size(), 2u);
  EXPECT_NEAR(it.not_told_apart[0].inputs[0].weight, -it.not_told_apart[0].inputs[1].weight, 1e-9);
  // Apart, they would make what was not read surer than it is: p - b keeps its variance.
  EXPECT_NEAR(it.uncertainty.supply_pressure / psi, 1, 1e-4);
  EXPECT_NEAR(it.gauge_bias / psi, 1, 1e-4);
  EXPECT_NEAR(*corrected(readings, it)[0].pressure / psi, 42 - 2 / 2.01, rounding);
}

TEST(Calibrate, LearnsWhatOneReadingTells) {
  // By hand: without a bias of the gauge all of it is the supply's.
  const Calibration it = calibrate(
      held(),
      {{.place = ReadingPlace::supply_gauge, .pressure = 42 * psi, .pressure_error = 0.5 * psi}},
      {.uncertainty = Uncertainty{.supply_pressure = 1 * psi},
       .gauge_bias = 0 * psi,
       .model_error = 0});
  EXPECT_NEAR(*it.learnt[0].more / psi, 2 / 1.25, 1e-9);
  EXPECT_NEAR(it.uncertainty.supply_pressure / psi, std::sqrt(0.2), 1e-4);
  EXPECT_TRUE(it.not_told_apart.empty());
}

TEST(LearntInputs, MoveReadingsAsTheirSlopesSay) {
  const Layout layout = with_gauge(strips());
  const Uncertainty uncertainty = assumed_before_calibration(layout);
  const LearntInputs inputs(layout, uncertainty);
  std::mt19937_64 random(20261127);
  std::normal_distribution<double> normal;
  VectorXd x(static_cast<Index>(inputs.count()));
  for (double& value : x) value = normal(random);
  const Layout there = inputs.layout_with(x).value();
  const InputErrors errors(solve(there), learnt_part(uncertainty));
  ASSERT_EQ(errors.count(), inputs.count());
  constexpr double h = 1e-3;
  for (const Reading& place : places()) {
    const VectorXd moved = errors.of(place);
    for (Index j = 0; j < x.size(); ++j) {
      VectorXd up = x, down = x;
      up[j] += h;
      down[j] -= h;
      const double difference = (shown_by(place, inputs.layout_with(up).value()) -
                                 shown_by(place, inputs.layout_with(down).value())) /
                                (2 * h);
      const auto which = static_cast<std::size_t>(j);
      // Third derivatives of powers: h^2 of the slopes; rounding 1e-12 of the figure by h.
      EXPECT_NEAR(moved[j] * inputs.slope_factor(which, x[j]),
                  difference,
                  1e-5 * moved.cwiseAbs().maxCoeff())
          << words_of(place.place) << ", " << inputs.tell(which, 0, 1).of;
    }
  }
}

TEST(Calibrate, FindsTheTruthAsOftenAsItSays) {
  // 200 farms drawn from what is assumed, each outlet and each height too; what is read has every
  // error that is stated. (x - truth)^T P^-1 (x - truth) is chi squared.
  const Layout layout = with_gauge(strips());
  const Uncertainty uncertainty = assumed_before_calibration(layout);
  const LearntInputs inputs(layout, uncertainty);
  const CalibrateOptions options;
  std::mt19937_64 random(20261127);
  std::normal_distribution<double> normal;
  constexpr std::uint64_t cases = 200;
  int within_half = 0, within_nine_of_ten = 0, chance_below_tenth = 0, bad = 0;
  for (std::uint64_t i = 0; i < cases; ++i) {
    VectorXd truth(static_cast<Index>(inputs.count()));
    for (double& value : truth) value = std::clamp(normal(random), -3.0, 3.0);
    const Layout farm =
        realisation(inputs.layout_with(truth).value(), unlearnt_part(uncertainty), 7, i);
    const SolvedBreak solved = read_break(solve(farm));
    std::map<std::string, double> bias;
    std::vector<Reading> readings;
    for (const Reading& place : places()) {
      double figure = shown(spot_of(place, farm), solved);
      const double own = own_error(place, figure);
      figure *= 1 + options.model_error * normal(random);
      figure += own * normal(random);
      if (const std::string gauge = gauge_of(place); !gauge.empty()) {
        if (!bias.contains(gauge)) bias[gauge] = normal(random);
        figure += si(options.gauge_bias) * bias[gauge];
      }
      readings.push_back(with_figure(place, figure));
    }
    const Calibration it = calibrate(strips(), readings, options);
    const auto all = static_cast<Index>(it.learnt.size());
    VectorXd off(all);
    Eigen::MatrixXd left(all, all);
    for (Index j = 0; j < all; ++j) {
      const Learnt& learnt = it.learnt[static_cast<std::size_t>(j)];
      off[j] = learnt.moved - (j < truth.size() ? truth[j] : bias.at(learnt.of));
      for (Index k = 0; k < all; ++k)
        left(j, k) =
            it.correlation[static_cast<std::size_t>(j)][static_cast<std::size_t>(k)] *
            std::sqrt((1 - learnt.learnt) * (1 - it.learnt[static_cast<std::size_t>(k)].learnt));
    }
    const double distance = off.dot(left.llt().solve(off));
    const boost::math::chi_squared known(static_cast<double>(all));
    within_half += distance < quantile(known, 0.5) ? 1 : 0;
    within_nine_of_ten += distance < quantile(known, 0.9) ? 1 : 0;
    chance_below_tenth += it.chance < 0.1 ? 1 : 0;
    bad += it.fits_well ? 0 : 1;
  }
  // Binomial: 100 +- 7.07, 180 +- 4.24, 20 +- 4.24; three deviations of each.
  EXPECT_NEAR(within_half, 100, 22);
  EXPECT_NEAR(within_nine_of_ten, 180, 13);
  EXPECT_NEAR(chance_below_tenth, 20, 13);
  // 0.54 are expected: more than 4 come in 1 of 5,000.
  EXPECT_LE(bad, 4);
}

TEST(Calibrate, GivesALayoutThatShowsWhatWasRead) {
  const LearntInputs inputs(with_gauge(strips()), assumed_before_calibration(strips()));
  VectorXd truth = VectorXd::Zero(static_cast<Index>(inputs.count()));
  for (std::size_t j = 0; j < inputs.count(); ++j) {
    const LearntKind kind = inputs.tell(j, 0, 1).kind;
    if (kind == LearntKind::outlet_flow) truth[static_cast<Index>(j)] = 1.5;
    if (kind == LearntKind::pump_head) truth[static_cast<Index>(j)] = -1;
  }
  std::vector<Reading> readings = read_exactly(inputs.layout_with(truth).value());
  for (Reading& reading : readings) {
    if (is_pressure(reading.place)) reading.pressure_error = 0.01 * psi;
    if (is_flow(reading.place)) reading.flow_error = 0.001;
  }
  Uncertainty sure = assumed_before_calibration(strips());
  sure.manufacturing_variation = 0;
  sure.elevation = {};
  const Calibration it =
      calibrate(strips(), readings, {.uncertainty = sure, .gauge_bias = 0 * psi, .model_error = 0});
  for (const Reading& reading : readings) {
    // To 3 of their errors, since the readings are exact and what was assumed pulls.
    EXPECT_NEAR(
        shown_by(reading, with_gauge(it.layout)), figure_of(reading), 3 * own_error(reading));
  }
  for (const Learnt& learnt : it.learnt) {
    if (learnt.kind == LearntKind::outlet_flow) {
      EXPECT_NEAR(*learnt.factor, 1 + 0.05 * 1.5, 3 * *learnt.deviation);
    }
  }
  // Described as before: no list of outlets, no gauge that was not there, its sets and names.
  const Line& row = it.layout.line("row 1");
  EXPECT_EQ(row.count, 10);
  EXPECT_TRUE(row.outlets.empty());
  EXPECT_GT(row.outlet->flow, 0.704 * gpm);
  EXPECT_EQ(it.layout.running_sets(), strips().running_sets());
  EXPECT_EQ(it.layout.supply().gauge, strips().supply().gauge);
}

TEST(Calibrate, NamesTheReadingThatDoesNotFit) {
  std::vector<Reading> readings = read_exactly(strips());
  *readings[4].pressure += 12 * psi;
  const Calibration it = calibrate(strips(), readings);
  EXPECT_FALSE(it.fits_well);
  EXPECT_EQ(it.worst, 4u);
  EXPECT_GT(it.fits[4].misfit, 3);
  // Exact readings of the layout as it is described move nothing.
  readings = read_exactly(strips());
  const Calibration good = calibrate(strips(), readings);
  for (const Learnt& learnt : good.learnt) EXPECT_NEAR(learnt.moved, 0, 1e-6);
  EXPECT_NEAR(good.chi_squared, 0, 1e-9);
}

TEST(Calibrate, LeavesWhatWasAssumedWhereNothingIsRead) {
  const Calibration it = calibrate(strips(), {});
  EXPECT_EQ(it.layout, strips());
  EXPECT_THAT(it.notes, testing::ElementsAre(testing::HasSubstr("nothing was read")));
  EXPECT_NEAR(it.uncertainty.wall, 0.15, 1e-6);
  EXPECT_NEAR(it.uncertainty.pump_head, 0.05, 1e-6);
  const Calibration one = calibrate(strips(), {read_exactly(strips())[0]});
  EXPECT_THAT(one.notes, testing::ElementsAre(testing::HasSubstr("1 reading for")));
}

TEST(Calibrate, NamesEveryMistakeAndWhatDidNotSettle) {
  CalibrateOptions options{.gauge_bias = -1 * psi,
                           .model_error = std::numeric_limits<double>::quiet_NaN(),
                           .most_steps = 0};
  options.uncertainty = Uncertainty{.wall = 2};
  std::vector<std::string> texts;
  for (const Problem& problem : problems(options, strips())) texts.push_back(problem.text());
  EXPECT_THAT(
      texts,
      testing::UnorderedElementsAre(testing::HasSubstr("uncertainty.wall: is 2"),
                                    testing::HasSubstr("gauge_bias: is -"),
                                    testing::HasSubstr("model_error: is nan"),
                                    testing::HasSubstr("most_steps: is 0, must be from 1")));
  EXPECT_THROW(calibrate(strips(), {{.place = ReadingPlace::bucket, .line = "row 9"}}),
               InvalidInput);
  std::vector<Reading> readings = read_exactly(strips());
  *readings[0].pressure += 5 * psi;
  try {
    calibrate(strips(), readings, {.most_steps = 1});
    FAIL() << "settled in one step";
  } catch (const NotCalibrated& not_settled) {
    EXPECT_EQ(not_settled.steps(), 1);
    EXPECT_EQ(not_settled.misfits().size(), readings.size());
    EXPECT_GT(not_settled.last_step(), 0);
  }
}

}  // namespace
}  // namespace hydro
