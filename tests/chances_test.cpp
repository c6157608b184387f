// Chances and spreads of uncertain layouts: against solving one realisation after another, against
// theory where there is one, and that neither threads nor blocks change a bit.
//
// What comes by chance is compared within 5 standard errors: one of 1,700,000 such comparisons would
// fail by chance, but the draws are always the same.
#include "hydro/what_ifs/chances.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/answers/uniformity.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/chance_of_trouble.hpp"
#include "hydro/what_ifs/uncertain_inputs.hpp"
#include "hydro/what_ifs/value_counts.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include "random_layout.hpp"
#include <boost/math/distributions/normal.hpp>
#include <boost/math/statistics/univariate_statistics.hpp>
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::DoubleNear;
using testing::Each;
using testing::ElementsAreArray;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Pointwise;
using testing::SizeIs;
using units::m;

constexpr double of_errors = 5;

const Outlet emitter{.name = "emitter", .flow = 4 * lph, .at = 100 * kPa, .exponent = 0.5};
/// So wide and smooth that nothing is lost in it: 1e-10 of the pressure.
const Pipe wide{.name = "wide", .inside_diameter = 500 * mm, .hazen_williams = 150};

/// Emitters in one row, at the pressure that is held.
Layout even_row(int count, const Outlet& outlet = emitter) {
  return {
      Supply{.pressure = 100 * kPa},
      {Line{.name = "row", .pipe = wide, .outlet = outlet, .count = count, .spacing = 0.1 * m}}};
}

/// Two sets of Ouzel Bench with faults, and its pump.
Layout broken_strips() {
  return ouzel_strips()
      .watering({"rows 1 and 2"})
      .with_faults({riser_sheared("row 2", 7), capped("row 1", 2), clogged("row 1", 9, 0.3)});
}

Uncertainty of_strips() {
  return {.manufacturing_variation = 0.04,
          .rating = 0.02,
          .inside_diameter = 0.01,
          .wall = 0.05,
          .loss_coefficient = 0.3,
          .pump_head = 0.03,
          .elevation = 0.5 * ft};
}

/// A row with losses on a slope, fed from a held pressure.
Layout sloping_row() {
  return {Supply{.pressure = 210 * kPa},
          {Line{.name = "main",
                .pipe = {.name = "main", .inside_diameter = 30 * mm, .hazen_williams = 140},
                .length = 40 * m,
                .ground_rise = 1 * m,
                .loss_coefficient = 4},
           Line{.name = "row",
                .fed_by = "main",
                .pipe = {.name = "row", .inside_diameter = 19 * mm, .roughness = 0.02 * mm},
                .outlet = Outlet{.name = "spray",
                                 .flow = 2 * lpm,
                                 .at = 150 * kPa,
                                 .minimum = 140 * kPa,
                                 .maximum = 190 * kPa},
                .count = 12,
                .spacing = 3 * m,
                .ground_rise = -0.5 * m,
                .riser = {.height = 0.3 * m, .inside_diameter = 8 * mm, .hazen_williams = 140},
                .outlet_loss_coefficient = 0.5}}};
}

Uncertainty of_sloping_row() {
  return {.manufacturing_variation = 0.03,
          .rating = 0.02,
          .inside_diameter = 0.005,
          .wall = 0.05,
          .loss_coefficient = 0.1,
          .supply_pressure = 3 * kPa,
          .elevation = 0.1 * m};
}

std::vector<double> copy_of(std::span<const double> values) {
  return {values.begin(), values.end()};
}

template <class Q>
void append(std::vector<double>& all, const Spread<Q>& spread) {
  all.insert(all.end(), {si(spread.mean), si(spread.deviation)});
  for (const Q& quantile : spread.quantiles) all.push_back(si(quantile));
}
template <class Q>
void append(std::vector<double>& all, const SeriesSpread<Q>& spread) {
  std::vector<Series<Q>> parts = spread.quantiles;
  parts.insert(parts.end(), {spread.mean, spread.deviation});
  for (const Series<Q>& part : parts) all.insert(all.end(), part.si().begin(), part.si().end());
}

/// All figures in one row.
std::vector<double> numbers_of(const Chances& found) {
  std::vector<double> all;
  for (const LineChances& line : found.lines) {
    append(all, line.pressure);
    append(all, line.flow);
    for (const auto* shares : {&line.below_rated, &line.below_minimum, &line.above_maximum})
      all.insert(all.end(), shares->begin(), shares->end());
  }
  append(all, found.inflow);
  if (found.lowest_pressure) append(all, *found.lowest_pressure);
  for (const Chance& it : {found.any_below_rated, found.any_below_minimum, found.any_above_maximum})
    all.push_back(it.share());
  all.insert(all.end(), found.times_below_rated.begin(), found.times_below_rated.end());
  for (const UniformityChances& it : found.uniformity) {
    append(all, it.christiansen);
    append(all, it.distribution);
    if (it.statistical) append(all, *it.statistical);
  }
  return all;
}

std::string message_of(const ChanceOptions& options) {
  try {
    chances(even_row(2), {}, options);
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return {};
}

TEST(Chances, AreCountedFromRealisationsSolvedOneByOne) {
  const Layout layout = broken_strips();
  constexpr int count = 150;  // whole blocks and a part of one
  const Chances found = chances(layout, of_strips(), {.realisations = count, .keep = true});
  const Kept& kept = found.kept.value();
  ASSERT_EQ(kept.outlets, layout.outlet_count());

  std::vector<int> times_below_rated(found.times_below_rated.size());
  int any_below_minimum = 0;
  std::vector<double> below_rated_in_row_1(10);
  for (std::size_t i = 0; i < count; ++i) {
    const Solution solution = solve(realisation(layout, of_strips(), 1, i));
    std::vector<double> pressures;
    std::vector<double> flows;
    for (const LineSolution& line : solution.lines()) {
      pressures.insert(pressures.end(), line.pressure.si().begin(), line.pressure.si().end());
      flows.insert(flows.end(), line.flow.si().begin(), line.flow.si().end());
    }
    const auto part = [&](std::span<const double> all) {
      return copy_of(all.subspan(i * pressures.size(), pressures.size()));
    };
    EXPECT_EQ(part(kept.pressure.si()), pressures);
    EXPECT_EQ(part(kept.flow.si()), flows);
    EXPECT_EQ(kept.inflow.si()[i], si(solution.inflow()));

    const Check check = hydro::check(solution);
    ++times_below_rated.at(check.below_rated.size());
    any_below_minimum += !check.below_minimum.empty();
    Pressure lowest = 100 * bar;
    for (std::size_t l = 0; l < solution.lines().size(); ++l)
      for (std::size_t j = 0; j < solution.lines()[l].state.size(); ++j)
        if (solution.lines()[l].state[j] != OutletState::broken &&
            solution.lines()[l].state[j] != OutletState::closed)
          lowest = std::min(lowest, solution.lines()[l].pressure[j]);
    EXPECT_EQ(kept.lowest_pressure[i], lowest);
    for (const BelowRated& it : check.below_rated)
      if (it.line == "row 1") below_rated_in_row_1[static_cast<std::size_t>(it.outlet) - 1] += 1;
  }
  std::vector<double> inflow = copy_of(kept.inflow.si());
  const auto deviation = [](const std::vector<double>& values) {
    return std::sqrt(boost::math::statistics::sample_variance(values));
  };
  EXPECT_NEAR(si(found.inflow.deviation), deviation(inflow), 1e-12 * inflow[0]);
  std::vector<double> at_first;  // of row 1
  std::size_t first = 0;
  for (std::size_t l = 0; l < layout.index_of("row 1"); ++l)
    first += static_cast<std::size_t>(layout.lines()[l].outlet_count());
  for (std::size_t i = 0; i < count; ++i)
    at_first.push_back(kept.pressure.si()[i * static_cast<std::size_t>(kept.outlets) + first]);
  EXPECT_NEAR(found.lines[layout.index_of("row 1")].pressure.deviation.si()[0],
              deviation(at_first),
              1e-12 * at_first[0]);
  std::ranges::sort(inflow);  // its middle is between two
  EXPECT_DOUBLE_EQ(si(found.inflow.quantiles[1]), (inflow[count / 2 - 1] + inflow[count / 2]) / 2);
  EXPECT_EQ(found.times_below_rated, times_below_rated);
  EXPECT_EQ(found.any_below_rated, (Chance{count - times_below_rated[0], count}));
  EXPECT_EQ(found.any_below_minimum, (Chance{any_below_minimum, count}));
  for (double& times : below_rated_in_row_1) times /= count;
  EXPECT_THAT(found.lines[layout.index_of("row 1")].below_rated,
              ElementsAreArray(below_rated_in_row_1));
  EXPECT_EQ(found.lines[layout.index_of("row 2")].below_rated[6], 0);  // broken: judged nowhere
}

// Farms of any shape, with pumps, regulators, valves, sets and faults.
TEST(Chances, OfRandomFarmsAreThoseOfTheirRealisations) {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    SCOPED_TRACE(seed);
    const Layout layout = random_layout(seed, {.farm = true});
    const bool pumped = layout.supply().pump.has_value();
    const Uncertainty uncertainty{.manufacturing_variation = 0.05,
                                  .rating = 0.05,
                                  .inside_diameter = 0.02,
                                  .wall = 0.3,
                                  .loss_coefficient = 0.5,
                                  .supply_pressure = (pumped ? 0 : 5) * kPa,
                                  .pump_head = pumped ? 0.05 : 0,
                                  .elevation = 0.2 * m};
    const Chances found =
        chances(layout, uncertainty, {.realisations = 3, .seed = seed, .keep = true});
    for (std::size_t i = 0; i < 3; ++i) {
      const Solution solution = solve(realisation(layout, uncertainty, seed, i));
      EXPECT_EQ(found.kept->inflow[i], solution.inflow());
      std::size_t place = i * static_cast<std::size_t>(layout.outlet_count());
      for (const LineSolution& line : solution.lines())
        for (const Pressure pressure : line.pressure)
          EXPECT_EQ(found.kept->pressure[place++], pressure);
    }
  }
}

// By the rules that outlets of one kind go together, which the layout says and a realisation does
// not: its flows, as if they were measured.
TEST(Chances, HaveTheUniformityOfTheKindsThatTheLayoutHas) {
  const Layout layout = broken_strips();
  const Chances found = chances(layout, of_strips(), {.realisations = 5, .keep = true});
  const auto nominal = uniformity_of_outlets(solve(layout));
  ASSERT_THAT(found.uniformity, SizeIs(nominal.size()));
  std::vector<double> mean(nominal.size());
  for (std::size_t i = 0; i < 5; ++i) {
    const Solution solution = solve(realisation(layout, of_strips(), 1, i));
    std::vector<Flow> together;
    for (std::size_t g = 0; g < nominal.size(); ++g) {
      std::vector<Flow> flows;
      if (nominal[g].line.empty()) {
        flows = together;
      } else {
        const LineSolution& line = solution.line(nominal[g].line);
        for (std::size_t j = 0; j < line.state.size(); ++j)
          if (line.state[j] != OutletState::broken && line.state[j] != OutletState::closed)
            flows.push_back(line.flow[j]);
        together.insert(together.end(), flows.begin(), flows.end());
      }
      mean[g] += uniformity(flows).distribution / 5;
    }
  }
  for (std::size_t g = 0; g < nominal.size(); ++g) {
    EXPECT_EQ(found.uniformity[g].line, nominal[g].line);
    EXPECT_EQ(found.uniformity[g].outlets, nominal[g].flows.count);
    EXPECT_NEAR(found.uniformity[g].distribution.mean, mean[g], 1e-12);
  }
}

// One by one, as where elevations are drawn, and in lanes; the last block is a part of one.
TEST(Chances, AreTheSameWhateverTheThreads) {
  const ChanceOptions options{.realisations = 1001, .seed = 42};
  Uncertainty in_lanes = of_strips();
  in_lanes.elevation = {};
  for (const Uncertainty& uncertainty : {of_strips(), in_lanes}) {
    const auto figures = [&](int threads) {
      return numbers_of(chances(broken_strips(), uncertainty, options, {.threads = threads}));
    };
    const auto one = figures(1);
    for (const int threads : {2, 3, 7}) EXPECT_EQ(figures(threads), one);
    EXPECT_NE(numbers_of(chances(broken_strips(), uncertainty, {.realisations = 1001})), one);
  }
}

TEST(Chances, OfNothingUncertainAreCertain) {
  const Solution solution = solve(sloping_row());
  const Chances found = chances(sloping_row(), {}, {.realisations = 10});
  // Either is off by residuals of 1e-12, which in this row are felt a few times.
  EXPECT_THAT(copy_of(found.lines[1].pressure.mean.si()),
              Pointwise(DoubleNear(1e-11 * si(solution.line("row").pressure[0])),
                        copy_of(solution.line("row").pressure.si())));
  EXPECT_THAT(copy_of(found.lines[1].pressure.deviation.si()), Each(0));
  EXPECT_THAT(found.lines[0].below_rated, IsEmpty());
  EXPECT_EQ(found.lowest_pressure->deviation, Pressure{});
}

// Mean = f + sum of f'' s^2 / 2, variance = sum of (f' s)^2 over the inputs, both derivatives times s
// by differences of the solved layout at s to either side. What that leaves out is about 3 s^2 of the
// variance for a law with the power -1.85 of a lognormal input (its third derivative and its skewness;
// the C of the main): 0.7 %, for s = 0.05 the widest that matters, and half of it in the deviation.
TEST(Chances, HaveTheMomentsOfFirstOrderTheory) {
  constexpr int count = 8000;
  const Layout layout = sloping_row();
  const UncertainInputs inputs(layout, of_sloping_row());
  const Chances found = chances(layout, of_sloping_row(), {.realisations = count});
  const Solution at_mean = solve(layout);
  const std::size_t size = inputs.inputs().size();
  std::vector<double> none;
  for (const UncertainInput& input : inputs.inputs())
    none.push_back(
        input.kind == InputKind::supply_pressure || input.kind == InputKind::elevation ? 0 : 1);

  std::vector<Solution> above;
  std::vector<Solution> below;
  for (std::size_t i = 0; i < size; ++i)
    for (const double side : {1, -1}) {
      std::vector<double> drawn = none;
      drawn[i] += side * inputs.inputs()[i].deviation;
      (side > 0 ? above : below).push_back(solve(inputs.with(drawn)));
    }
  const auto expect = [&](double mean, double deviation, const auto& figure) {
    double bias = 0;
    double variance = 0;
    for (std::size_t i = 0; i < size; ++i) {
      bias += (figure(above[i]) + figure(below[i])) / 2 - figure(at_mean);
      const double slope = (figure(above[i]) - figure(below[i])) / 2;
      variance += slope * slope;
    }
    const double expected = std::sqrt(variance);
    EXPECT_NEAR(mean, figure(at_mean) + bias, of_errors * expected / std::sqrt(count));
    EXPECT_NEAR(deviation, expected, (of_errors / std::sqrt(2 * count) + 0.005) * expected);
  };
  for (const std::size_t outlet : {0U, 5U, 11U}) {
    expect(found.lines[1].pressure.mean.si()[outlet],
           found.lines[1].pressure.deviation.si()[outlet],
           [&](const Solution& it) { return it.line("row").pressure.si()[outlet]; });
    expect(found.lines[1].flow.mean.si()[outlet],
           found.lines[1].flow.deviation.si()[outlet],
           [&](const Solution& it) { return it.line("row").flow.si()[outlet]; });
  }
  expect(si(found.inflow.mean), si(found.inflow.deviation), [](const Solution& it) {
    return si(it.inflow());
  });
}

// At a pressure that is held, without losses, an outlet's flow is normal: mean q, deviation Cv q.
// Quantiles have a standard error of sqrt(p (1 - p) / N) over the density; single outlets' are off by
// 1/512 more (value_counts.hpp).
TEST(Chances, OfOneOutletAreThoseOfTheNormalDistribution) {
  constexpr int count = 20000;
  const boost::math::normal z;
  const double n = count;
  const Chances found =
      chances(even_row(1), {.manufacturing_variation = 0.1}, {.realisations = count});
  const double q = 4;
  EXPECT_NEAR(found.inflow.mean / lph, q, of_errors * 0.4 / std::sqrt(n));
  EXPECT_NEAR(found.inflow.deviation / lph, 0.4, of_errors * 0.4 / std::sqrt(2 * n));
  const std::vector<double> shares{0.05, 0.5, 0.95};
  for (std::size_t i = 0; i < 3; ++i) {
    const double at = quantile(z, shares[i]);
    const double error =
        of_errors * std::sqrt(shares[i] * (1 - shares[i]) / n) / pdf(z, at) * 0.1 * q;
    EXPECT_NEAR(found.inflow.quantiles[i] / lph, q * (1 + 0.1 * at), error);
    EXPECT_NEAR(found.lines[0].flow.quantiles[i][0] / lph,
                found.inflow.quantiles[i] / lph,
                q * (1 + 0.1 * at) / 512);
  }
}

// Pressure held at 100 kPa +- 4: below 104 in P(z < 1) = 0.8413 of all, below 92 in P(z < -2) =
// 0.0228, above 112 in P(z > 3) = 0.0013 (printed tables of the normal distribution).
TEST(Chances, AreThoseOfTheTablesOfTheNormalDistribution) {
  constexpr int count = 20000;
  Outlet judged = emitter;
  judged.rated = 104 * kPa;
  judged.minimum = 92 * kPa;
  judged.maximum = 112 * kPa;
  const Chances found =
      chances(even_row(3, judged), {.supply_pressure = 4 * kPa}, {.realisations = count});
  const auto expect = [&](double share, double expected) {
    EXPECT_NEAR(share, expected, of_errors * std::sqrt(expected * (1 - expected) / count) + 5e-5);
  };
  expect(found.lines[0].below_rated[2], 0.8413);
  expect(found.any_below_rated.share(), 0.8413);
  expect(found.any_below_minimum.share(), 0.0228);
  expect(found.any_above_maximum.share(), 0.0013);
  EXPECT_THAT(found.times_below_rated, SizeIs(4));
  EXPECT_EQ(found.times_below_rated[0] + found.times_below_rated[3], count);
}

// Where all have one pressure, outlets vary by Cv alone. The trade's relations of normally
// distributed flows (uniformity.hpp): Us = 100 (1 - Cv), DU = 100 (1 - 1.27 Cv), CU = 100 (1 - 0.80
// Cv). The factors are printed to two places: half a unit of the last is 0.05 % here. Of 1,000
// outlets Cv has a standard error of Cv / sqrt(2000), and the mean of 200 rows a 14th of that; that
// s / mean of n is not quite Cv takes Cv / (4 n) more.
TEST(Chances, HaveTheUniformityThatTheMakersVariationLeaves) {
  const Chances found =
      chances(even_row(1000), {.manufacturing_variation = 0.1}, {.realisations = 200});
  ASSERT_THAT(found.uniformity, SizeIs(1));
  const double error = of_errors * 10 / std::sqrt(2000 * 200) + 10 / 4000.0;
  EXPECT_NEAR(found.uniformity[0].statistical->mean, 100 - 10, error);
  EXPECT_NEAR(found.uniformity[0].distribution.mean, 100 - 12.7, 1.27 * error + 0.05);
  EXPECT_NEAR(found.uniformity[0].christiansen.mean, 100 - 8.0, error + 0.05);
  EXPECT_NEAR(found.uniformity[0].statistical->deviation, 10 / std::sqrt(2000), 5 * 0.05 * 0.224);
}

// V. F. Bralts, I. P. Wu and H. M. Gitlin, Trans. ASAE 24 (1981) 113-119 (from memory): the
// variation of flows is made up of the makers' and that of the pressures, V^2 = Cv^2 + (x V_p)^2,
// here V_h for the flows of the row without Cv. J. Keller and D. Karmeli's design EU, 100 (1 - 1.27
// Cv) least / mean, takes the worst of both at once: DU is above it, and below that of Cv alone.
TEST(Chances, JoinTheMakersVariationAndThatOfThePressures) {
  constexpr double Cv = 0.05;
  constexpr int count = 400;
  const Line long_row{.name = "row",
                      .pipe = {.inside_diameter = 13.2 * mm, .hazen_williams = 150},
                      .outlet = emitter,
                      .count = 100,
                      .spacing = 1 * m};
  const Layout layout{Supply{.pressure = 100 * kPa}, {long_row}};
  const Uniformity<Flow> still = uniformity_of_outlets(solve(layout)).front().flows;
  const double least_of_mean = still.least / lph / (still.mean / lph);
  ASSERT_NEAR(least_of_mean, 0.95, 0.04);
  const Chances found = chances(layout, {.manufacturing_variation = Cv}, {.realisations = count});
  const UniformityChances& row = found.uniformity.front();
  const double V_h = 1 - *still.statistical / 100;
  const double V = std::hypot(Cv, V_h);
  EXPECT_GT(V_h, 0.01);
  // Standard errors as above, and terms of second order: Cv^2 of V.
  EXPECT_NEAR(row.statistical->mean / 100,
              1 - V,
              of_errors * V / std::sqrt(200.0 * count) + V / 400 + Cv * Cv * V);
  EXPECT_GT(
      row.distribution.mean,
      design_emission_uniformity(still, {.manufacturing_variation = Cv, .outlets_per_plant = 1}));
  EXPECT_LT(row.distribution.mean, 100 * (1 - 1.27 * Cv));
}

TEST(ValueCounts, HaveQuantilesWithinTheirIntervals) {
  std::vector<double> values{0, 0, 0.3};
  std::uint64_t state = 1;
  for (int i = 0; i < 5000; ++i) {
    state = state * 6364136223846793005 + 1442695040888963407;  // D. E. Knuth's generator
    values.push_back(std::exp(std::ldexp(static_cast<double>(state >> 11), -53) * 14));
  }
  ValueCounts all(1);
  ValueCounts odd(1);
  ValueCounts even(1);
  for (std::size_t i = 0; i < values.size(); ++i) {
    all.add(values[i]);
    (i % 2 == 0 ? even : odd).add(values[i]);
  }
  odd.add(even);
  std::ranges::sort(values);
  for (const double share : {1e-4, 0.01, 0.25, 0.5, 0.77, 0.999}) {
    const double place = share * static_cast<double>(values.size() - 1);
    const auto before = static_cast<std::size_t>(place);
    const double exact =
        values[before] + (place - std::floor(place)) * (values[before + 1] - values[before]);
    EXPECT_NEAR(all.quantile(share), exact, std::max(1.0, exact) / 512 + (exact < 1 ? 1 : 0));
    EXPECT_EQ(odd.quantile(share), all.quantile(share));
  }
  ValueCounts of_one(1);
  of_one.add(3);
  EXPECT_NEAR(of_one.quantile(0.95), 3, 3.0 / 512);
}

// Clopper and Pearson's 95 % bounds, as tables print them (from memory): 5 of 10, none of 10 and of
// 100.
TEST(Chance, HasTheBoundsOfTheTables) {
  EXPECT_NEAR((Chance{5, 10}.low()), 0.1871, 5e-5);
  EXPECT_NEAR((Chance{5, 10}.high()), 0.8129, 5e-5);
  EXPECT_NEAR((Chance{0, 10}.high()), 0.3085, 5e-5);
  EXPECT_NEAR((Chance{0, 100}.high()), 0.0362, 5e-5);
  EXPECT_EQ((Chance{0, 10}.low()), 0);
  EXPECT_EQ((Chance{10, 10}.high()), 1);
}

TEST(ChanceOfTrouble, IsThatOfTheLayoutWithSoManyMore) {
  const ChanceOptions options{.realisations = 200};
  const auto found =
      chance_of_trouble(sloping_row(), "row", 3, of_sloping_row(), {}, options, {.threads = 2});
  ASSERT_THAT(found, SizeIs(4));
  for (int more = 0; more <= 3; ++more) {
    const TroubleAtCount& row = found[static_cast<std::size_t>(more)];
    const Chances alone =
        chances(with_more_outlets(sloping_row(), "row", {}, more), of_sloping_row(), options);
    EXPECT_EQ(row.more, more);
    EXPECT_EQ(row.below_rated, alone.any_below_rated);
    EXPECT_EQ(row.below_minimum, alone.any_below_minimum);
    EXPECT_EQ(row.above_maximum, alone.any_above_maximum);
    EXPECT_EQ(row.inflow.mean, alone.inflow.mean);
    EXPECT_EQ(row.lowest_pressure->mean, alone.lowest_pressure->mean);
  }
  EXPECT_GT(found[3].below_rated.times, found[0].below_rated.times);
}

TEST(ChanceOfTrouble, TellsHowFarItIs) {
  std::size_t last = 0;
  std::size_t of_all = 0;
  const Work work{.threads = 1, .progress = [&](std::size_t done, std::size_t of) {
                    EXPECT_GE(done, last);
                    last = done;
                    of_all = of;
                    return true;
                  }};
  chance_of_trouble(sloping_row(), "row", 2, {}, {}, {.realisations = 200}, work);
  EXPECT_EQ(last, of_all);
  EXPECT_EQ(of_all, 3 * 2);  // blocks
}

TEST(ChanceErrors, SayWhatIsAccepted) {
  EXPECT_THAT(message_of({.realisations = 1}), HasSubstr("realisations: is 1, must be from 2 to"));
  EXPECT_THAT(message_of({.quantiles = {0.5, 1}}),
              HasSubstr("quantiles, 2: is 1, must be above 0 and below 1"));
  EXPECT_THAT(message_of({.quantiles = {std::numeric_limits<double>::quiet_NaN()}}),
              HasSubstr("quantiles, 1: is nan"));
  EXPECT_THROW(chances(even_row(2), {.pump_head = 0.1}), InvalidInput);
  EXPECT_THROW(chances(even_row(1000), {}, {.realisations = 1'000'000, .keep = true}),
               InvalidInput);
  EXPECT_THROW(chance_of_trouble(even_row(2), "row", 1001, {}), InvalidInput);
  EXPECT_THROW(chances(even_row(2), {}, {}, {.threads = -1}), InvalidInput);
}

TEST(ChanceErrors, StopWhenAsked) {
  const Work stops{.threads = 2, .progress = [](std::size_t, std::size_t) { return false; }};
  EXPECT_THROW(chances(even_row(2), {}, {.realisations = 300}, stops), Stopped);
  const Work stops_later{
      .threads = 1, .progress = [](std::size_t done, std::size_t of) { return done < of / 2; }};
  try {
    chance_of_trouble(even_row(2), "row", 3, {}, {}, {.realisations = 64}, stops_later);
    ADD_FAILURE() << "it went on";
  } catch (const Stopped& stopped) {
    EXPECT_EQ(stopped.done(), 2);
    EXPECT_EQ(stopped.of(), 4);
  }
}

}  // namespace
}  // namespace hydro
