// The measures of uniformity against numbers that others printed and against known distributions,
// and which outlets of a solution they are taken of.
//
// A tolerance is half a unit of the last printed digit, or comes from the arithmetic.
#include "hydro/answers/uniformity.hpp"

#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include <boost/math/distributions/normal.hpp>
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using units::m;

template <class Q>
std::vector<Q> amounts_in(const Unit<Q>& unit, const std::vector<double>& numbers) {
  std::vector<Q> amounts;
  for (const double number : numbers) amounts.push_back(number * unit);
  return amounts;
}

/// n amounts that are distributed normally as well as n amounts can be.
std::vector<Flow> normal_flows(double variation, int n) {
  const boost::math::normal distribution(1, variation);
  std::vector<Flow> flows;
  for (int i = 0; i < n; ++i) flows.push_back(quantile(distribution, (i + 0.5) / n) * lps);
  return flows;
}

// S. K. Garg, Irrigation Engineering and Hydraulic Structures, example 2.6, p. 31 (read): the
// "uniformity coefficient or water distribution efficiency" of depths to which water went in.
// Printed: mean 1.76 m, mean deviation 0.168 m, coefficient 0.905.
TEST(Christiansen, IsWhatATextbookPrints) {
  const auto depths = uniformity(amounts_in(m, {2.0, 1.9, 1.8, 1.6, 1.5}));
  EXPECT_NEAR(depths.mean / m, 1.76, 1e-14);
  EXPECT_NEAR(depths.christiansen, 90.5, 0.05);
  EXPECT_NEAR(depths.christiansen, 100 * (1 - 0.168 / 1.76), 1e-12);
}

// NIST, Statistical Reference Datasets, univariate: Mavro (50 measured transmittances) and NumAcc4
// (one 10000000.2, then 500 pairs of 10000000.1 and 10000000.3: spread far below the mean). Data and
// certified mean and standard deviation (with n - 1) read from published copies. A unit of the last
// place of the data is 1e-12 of Mavro's spread and 2e-8 of NumAcc4's.
TEST(Statistical, IsWhatNistCertifies) {
  const auto mavro = uniformity(amounts_in(
      litre,
      {2.00180, 2.00170, 2.00180, 2.00190, 2.00180, 2.00170, 2.00150, 2.00140, 2.00150, 2.00150,
       2.00170, 2.00180, 2.00180, 2.00190, 2.00190, 2.00210, 2.00200, 2.00160, 2.00140, 2.00130,
       2.00130, 2.00150, 2.00150, 2.00160, 2.00150, 2.00140, 2.00130, 2.00140, 2.00150, 2.00140,
       2.00150, 2.00160, 2.00150, 2.00160, 2.00190, 2.00200, 2.00200, 2.00210, 2.00220, 2.00230,
       2.00240, 2.00250, 2.00270, 2.00260, 2.00260, 2.00260, 2.00270, 2.00260, 2.00250, 2.00240}));
  ASSERT_EQ(mavro.count, 50);
  EXPECT_NEAR(mavro.mean / litre, 2.00185600000000, 1e-14);
  EXPECT_NEAR(1 - mavro.statistical.value() / 100, 0.000429123454003053 / 2.001856, 1e-15);

  std::vector<double> numbers{10000000.2};
  for (int i = 0; i < 500; ++i) numbers.insert(numbers.end(), {10000000.1, 10000000.3});
  const auto numacc4 = uniformity(amounts_in(lph, numbers));
  EXPECT_NEAR(numacc4.mean / lph, 10000000.2, 1e-8);
  EXPECT_NEAR(1 - numacc4.statistical.value() / 100, 0.1 / 10000000.2, 1e-7 * 1e-8);
}

// Wikipedia, Distribution uniformity (read): 100 % where all samples are equal, 0 % where more than
// a quarter receives nothing.
TEST(Distribution, HasItsTwoEnds) {
  const auto even = uniformity(amounts_in(lps, std::vector<double>(7, 0.3)));
  EXPECT_NEAR(even.distribution, 100, 1e-13);
  EXPECT_NEAR(even.christiansen, 100, 1e-13);
  EXPECT_NEAR(even.statistical.value(), 100, 1e-13);
  EXPECT_EQ(uniformity(amounts_in(lps, {3, 0, 3, 3, 0})).distribution, 0);
}

// By hand. Of ten the lowest quarter is two and a half: (1 + 2 + 3/2) / 2.5 = 1.8.
TEST(LowestQuarter, CountsTheAmountAtItsEdgeInPart) {
  EXPECT_NEAR(uniformity(amounts_in(mm, {8, 1, 7, 2, 6, 3, 5, 4})).low_quarter / mm, 1.5, 1e-15);
  EXPECT_NEAR(
      uniformity(amounts_in(mm, {10, 9, 8, 7, 6, 5, 4, 3, 2, 1})).low_quarter / mm, 1.8, 1e-15);
  EXPECT_NEAR(uniformity(amounts_in(mm, {1, 2, 3, 4, 5})).low_quarter / mm, 1.2, 1e-15);
  for (const int n : {1, 2, 3, 4})
    EXPECT_EQ(uniformity(normal_flows(0.1, n)).low_quarter, normal_flows(0.1, n)[0]) << n;
}

TEST(LowestQuarter, DoesNotDependOnTheOrder) {
  auto flows = normal_flows(0.2, 101);
  const auto forth = uniformity(flows);
  std::reverse(flows.begin(), flows.end());
  const auto back = uniformity(flows);
  EXPECT_EQ(forth.christiansen, back.christiansen);
  EXPECT_EQ(forth.distribution, back.distribution);
  EXPECT_EQ(forth.statistical, back.statistical);
}

// Of a normal distribution of variation v: mean deviation sqrt(2/pi) v; mean of the lowest quarter
// 1 - 4 phi(x) v, x the quartile, phi the density. The trade prints 0.798 and 1.27, and between CU
// and DU 0.63 and 1.59 (J. Keller and R. D. Bliesner, Sprinkle and Trickle Irrigation, 1990, from
// memory). A sum over n quantiles misses the tails: about v / n, of the squares ten times that.
TEST(Measures, OfANormalDistributionAreKnown) {
  const boost::math::normal standard;
  const double of_quarter = 4 * pdf(standard, quantile(standard, 0.25));
  const int n = 40000;
  for (const double v : {0.02, 0.1, 0.2}) {
    const auto flows = uniformity(normal_flows(v, n));
    const double error = 100 * v / n;
    EXPECT_NEAR(flows.christiansen, 100 * (1 - std::sqrt(2 / std::numbers::pi) * v), error);
    EXPECT_NEAR(flows.distribution, 100 * (1 - of_quarter * v), error);
    EXPECT_NEAR(flows.statistical.value(), 100 * (1 - v), 10 * error);
    EXPECT_NEAR(flows.christiansen, 100 * (1 - 0.798 * v), 100 * v * 0.0005);
    EXPECT_NEAR(flows.distribution, 100 * (1 - 1.27 * v), 100 * v * 0.005);
    EXPECT_NEAR(flows.distribution,
                100 - 1.59 * (100 - flows.christiansen),
                0.005 * (100 - flows.christiansen));
    EXPECT_NEAR(flows.christiansen,
                100 - 0.63 * (100 - flows.distribution),
                0.005 * (100 - flows.distribution));
  }
}

// With one outlet to a plant and one pressure everywhere, the design's EU is the DU that outlets of
// this variation will have; its 1.27 is printed with three digits.
TEST(DesignEmission, ForeseesTheFieldsOnOneOutletToAPlant) {
  const Uniformity<Flow> one_pressure = uniformity(std::vector<Flow>(12, 4 * lph));
  for (const double v : {0.03, 0.05, 0.1})
    EXPECT_NEAR(design_emission_uniformity(one_pressure,
                                           {.manufacturing_variation = v, .outlets_per_plant = 1}),
                uniformity(normal_flows(v, 40000)).field_emission(),
                100 * v * 0.005);
}

// By hand from the formula: Cv, Np, least / mean.
TEST(DesignEmission, IsWhatTheFormulaGives) {
  const auto of = [](double variation, int per_plant, double ratio) {
    const Uniformity<Flow> flows{.count = 2, .mean = 1 * lps, .least = ratio * lps};
    return design_emission_uniformity(
        flows, {.manufacturing_variation = variation, .outlets_per_plant = per_plant});
  };
  EXPECT_NEAR(of(0.05, 1, 0.95), 88.97, 0.005);
  EXPECT_NEAR(of(0.05, 4, 0.95), 91.98, 0.005);
  EXPECT_NEAR(of(0.10, 2, 0.90), 81.92, 0.005);
  EXPECT_NEAR(of(0.03, 2, 0.93), 90.49, 0.005);
}

template <class Call>
std::string complaint_of(Call call) {
  try {
    call();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "";
}

TEST(DesignEmission, SaysWhatItLacks) {
  const Uniformity<Flow> flows = uniformity(std::vector<Flow>{1 * lps, 2 * lps});
  const auto said = [](const Uniformity<Flow>& computed, const EmissionDesign& design) {
    return complaint_of([&] { design_emission_uniformity(computed, design); });
  };
  EXPECT_THAT(said(flows, {}), HasSubstr("manufacturing_variation: is not given"));
  EXPECT_THAT(said(flows, {}), HasSubstr("outlets_per_plant: is not given"));
  EXPECT_THAT(said(flows, {.manufacturing_variation = 5, .outlets_per_plant = 0}),
              testing::AllOf(HasSubstr("is 5, must be from 0 to 0.5"),
                             HasSubstr("is 0, must be from 1 to 1000")));
  EXPECT_THAT(said({}, {.manufacturing_variation = 0.05, .outlets_per_plant = 1}),
              HasSubstr("computed: has no flows"));
}

TEST(Amounts, AreRefusedWhereTheyCannotBeMeasured) {
  const auto said = [](const std::vector<Flow>& flows) {
    return complaint_of([&] { uniformity(flows); });
  };
  EXPECT_THAT(said({}), HasSubstr("amounts: are none"));
  EXPECT_THAT(said({0 * lps, 0 * lps}), HasSubstr("amounts: are all 0"));
  EXPECT_THAT(said({1 * lps, -1 * lpm, 2 * lps}),
              HasSubstr("amounts, 2: is -1 L/min, must be from 0 to 1000000 L/min"));
  for (const double number :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()})
    EXPECT_THAT(said({1 * lps, number * lps}), HasSubstr("amounts, 2: is "));
}

TEST(Amounts, MayBeOne) {
  const auto one = uniformity(std::vector<Volume>{5 * gallon});
  EXPECT_NEAR(one.christiansen, 100, 1e-13);
  EXPECT_NEAR(one.distribution, 100, 1e-13);
  EXPECT_FALSE(one.statistical);
}

Line row(const std::string& name, const Outlet& outlet, int count) {
  return {.name = name,
          .pipe = {.inside_diameter = 30 * mm, .hazen_williams = 150},
          .outlet = outlet,
          .count = count,
          .spacing = 10 * m,
          .riser = {.height = 1 * m, .inside_diameter = 20 * mm, .hazen_williams = 150}};
}

const Outlet spray{.name = "spray", .flow = 500 * lph, .at = 200 * kPa};
const Outlet drip{.name = "drip", .flow = 4 * lph, .at = 100 * kPa};

std::vector<Flow> flows_of(const LineSolution& line) {
  return {line.flow.begin(), line.flow.end()};
}

TEST(OfOutlets, AreThoseOfTheirFlows) {
  const Solution solution = solve(Layout(Supply{.pressure = 250 * kPa}, {row("a", spray, 9)}));
  const auto found = uniformity_of_outlets(solution);
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].line, "a");
  EXPECT_EQ(found[0].outlet_name, "spray");
  const auto expected = uniformity(flows_of(solution.lines()[0]));
  EXPECT_EQ(found[0].flows.count, 9);
  EXPECT_EQ(found[0].flows.christiansen, expected.christiansen);
  EXPECT_EQ(found[0].flows.distribution, expected.distribution);
  EXPECT_EQ(found[0].flows.statistical, expected.statistical);
  EXPECT_EQ(found[0].flows.least, solution.lines()[0].flow.back());
  EXPECT_LT(found[0].flows.distribution, found[0].flows.christiansen);
}

TEST(OfOutlets, GoByKindAndThenTogether) {
  Outlet other_spray = spray;
  other_spray.exponent = 0.4;
  const Solution solution =
      solve(Layout(Supply{.pressure = 250 * kPa},
                   {row("a", spray, 8),
                    row("b", drip, 5),
                    row("c", other_spray, 8),
                    {.name = "main",
                     .pipe = {.inside_diameter = 50 * mm, .hazen_williams = 150},
                     .length = 100 * m},
                    row("d", spray, 12)}));
  const auto found = uniformity_of_outlets(solution);
  ASSERT_THAT(found, SizeIs(5));
  const std::vector<std::string> lines{"a", "b", "c", "d", ""};
  const std::vector<int> counts{8, 5, 8, 12, 20};
  for (std::size_t i = 0; i < found.size(); ++i) {
    EXPECT_EQ(found[i].line, lines[i]);
    EXPECT_EQ(found[i].flows.count, counts[i]);
  }
  EXPECT_EQ(found[4].outlet_name, "spray");
  std::vector<Flow> all = flows_of(solution.line("a"));
  for (const Flow& flow : flows_of(solution.line("d"))) all.push_back(flow);
  EXPECT_EQ(found[4].flows.distribution, uniformity(all).distribution);
}

TEST(OfOutlets, LeaveBrokenAndCappedOnesOut) {
  const Layout layout = Layout(Supply{.pressure = 250 * kPa}, {row("a", spray, 9)})
                            .with_fault(head_off("a", 3))
                            .with_fault(capped("a", 7));
  const Solution solution = solve(layout);
  std::vector<Flow> flows = flows_of(solution.lines()[0]);
  flows.erase(flows.begin() + 6);
  flows.erase(flows.begin() + 2);
  const auto found = uniformity_of_outlets(solution);
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].flows.count, 7);
  EXPECT_EQ(found[0].flows.christiansen, uniformity(flows).christiansen);
}

// The ground rises 10 m from outlet to outlet: 250 kPa lift water to two of eight.
TEST(OfOutlets, CountDryOnesWithNoFlow) {
  Line up = row("up", spray, 8);
  up.ground_rise = 80 * m;
  const auto found =
      uniformity_of_outlets(solve(Layout(Supply{.pressure = 250 * kPa}, {up, row("a", spray, 8)})));
  ASSERT_THAT(found, SizeIs(3));
  EXPECT_EQ(found[0].flows.count, 8);
  EXPECT_EQ(found[0].flows.least, Flow{});
  EXPECT_EQ(found[0].flows.distribution, 0);
  EXPECT_EQ(found[2].flows.count, 16);
  EXPECT_EQ(found[2].flows.least, Flow{});
}

TEST(OfOutlets, SayNothingOfALineWithoutWater) {
  Line up = row("up", spray, 3);
  up.first_at = 100 * m;
  up.ground_rise = 120 * m;
  const Solution solution = solve(Layout(Supply{.pressure = 250 * kPa}, {up}));
  ASSERT_EQ(solution.lines()[0].state[0], OutletState::dry);
  EXPECT_THAT(uniformity_of_outlets(solution), IsEmpty());
}

}  // namespace
}  // namespace hydro
