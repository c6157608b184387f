// Outlets rated by a flow, a nozzle or a catalogue, and those that compensate.
#include "hydro/physics/outlet.hpp"

#include "hydro/physics/outlet_law.hpp"
#include "hydro/solver/solve.hpp"

#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;

std::string first_problem(const Outlet& outlet) {
  const std::vector<Problem> found = problems(outlet);
  return found.empty() ? "" : found[0].text();
}

const Outlet dripper{.flow = 0.5 * gph, .compensating = Compensating{8 * psi, 45 * psi}};

// The formula of outlet.hpp on each stretch, and no jump between them.
TEST(Compensating, HoldsItsFlowBetweenTwoPressures) {
  const auto flow_at = [](double pressure_psi) {
    return discharge(dripper, pressure_psi * psi) / gph;
  };
  EXPECT_NEAR(flow_at(8), 0.5, 1e-15);
  EXPECT_NEAR(flow_at(20), 0.5, 1e-15);
  EXPECT_NEAR(flow_at(45), 0.5, 1e-15);
  EXPECT_NEAR(flow_at(2), 0.25, 1e-15);   // a quarter of low
  EXPECT_NEAR(flow_at(180), 1.0, 1e-15);  // four times high
  EXPECT_EQ(flow_at(0), 0);
  EXPECT_EQ(flow_at(-5), 0);
  EXPECT_NEAR(flow_at(8 * (1 - 1e-9)), 0.5, 1e-9);
  EXPECT_NEAR(flow_at(45 * (1 + 1e-9)), 0.5, 1e-9);
  EXPECT_EQ(dripper.rated_pressure(), 8 * psi);
}

TEST(Compensating, KeepsItsFlowAlongALineThatLosesPressure) {
  const Line line{.name = "hops",
                  .pipe = {.inside_diameter = 0.62 * inch, .roughness = 0 * mm},
                  .outlet = dripper,
                  .count = 90,
                  .spacing = 2 * ft};
  const Solution solution = solve(Layout(Supply{.pressure = 25 * psi}, {line}));
  for (std::size_t i = 0; i < 90; ++i) {
    EXPECT_LT(solution.lines()[0].pressure[i], 25 * psi);
    EXPECT_NEAR(solution.lines()[0].flow[i] / gph, 0.5, 1e-12);
  }
  EXPECT_NEAR(solution.inflow() / gph, 45, 1e-9);
}

// From the range's top over the bend to below its bottom, along one line that climbs.
TEST(Compensating, MayCrossBothBendsOnOneLine) {
  Line line{.name = "hops",
            .pipe = {.inside_diameter = 0.62 * inch, .roughness = 0 * mm},
            .outlet = dripper,
            .count = 90,
            .spacing = 2 * ft,
            .ground_rise = 150 * ft};
  const Solution solution = solve(Layout(Supply{.pressure = 60 * psi}, {line}));
  const LineSolution& row = solution.lines()[0];
  EXPECT_GT(row.pressure.front(), 45 * psi);
  EXPECT_GT(row.flow.front() / gph, 0.5);
  EXPECT_EQ(row.state.back(), OutletState::dry);
  EXPECT_LE(solution.residuals().outlet, 1e-12);
}

// Catalogues print exponents of 0 to 0.1 for such devices; below the minimum q falls with the square root.
TEST(SmallExponents, HoldAboveTheMinimum) {
  for (const double exponent : {0.0, 0.02, 0.0999}) {
    const Outlet outlet{
        .flow = 4 * lph, .at = 100 * kPa, .exponent = exponent, .minimum = 50 * kPa};
    EXPECT_NEAR(discharge(outlet, 200 * kPa) / lph, 4 * std::pow(2, exponent), 1e-12);
    const double least = 4 * std::pow(0.5, exponent);
    EXPECT_NEAR(discharge(outlet, 50 * kPa) / lph, least, 1e-12);
    EXPECT_NEAR(discharge(outlet, 12.5 * kPa) / lph, least / 2, 1e-12);
  }
  EXPECT_THAT(first_problem({.flow = 4 * lph, .at = 100 * kPa, .exponent = 0.05}),
              HasSubstr("minimum: is not given; below the exponent 0.1 it is needed"));
}

// Torricelli's law, written out.
TEST(Nozzle, IsAnOrifice) {
  const Outlet outlet{.rated = 50 * psi, .nozzle = 5.0 / 32 * inch, .discharge_coefficient = 0.97};
  const Density density = 998.2 * kg_per_m3;
  const double bore = 5.0 / 32 * 0.0254;
  const double speed = std::sqrt(2 * si(50 * psi) / 998.2);
  EXPECT_NEAR(si(discharge(outlet, 50 * psi, density)),
              0.97 * std::numbers::pi / 4 * bore * bore * speed,
              1e-16);
}

TEST(Points, AreMetExactlyByTheirOwnLaw) {
  std::vector<RatedPoint> points;
  for (const double kilopascals : {100.0, 150.0, 200.0, 300.0})
    points.push_back({kilopascals * kPa, 12 * std::pow(kilopascals, 0.42) * lph});
  const PointsFit fit = fit_of(points);
  EXPECT_NEAR(fit.exponent, 0.42, 1e-13);
  EXPECT_LT(fit.largest_misfit, 1e-13);
  const Outlet outlet{.rated = 150 * kPa, .points = points};
  EXPECT_NEAR(discharge(outlet, 250 * kPa) / lph, 12 * std::pow(250, 0.42), 1e-10);
}

// Least squares on the logarithms of two points in three, by hand: x = (ln 4 - ln 1) / (ln 16 - ln 1) = 1/2 for the
// outer two; the middle one, off by a factor of 1.1, moves the level by its third root and not the slope.
TEST(Points, AreFittedByLeastSquaresOfTheLogarithms) {
  const PointsFit fit = fit_of({{1 * bar, 1 * lpm}, {4 * bar, 2.2 * lpm}, {16 * bar, 4 * lpm}});
  EXPECT_NEAR(fit.exponent, 0.5, 1e-14);
  EXPECT_NEAR(fit.flow / lpm, std::cbrt(1.1), 1e-14);
  EXPECT_NEAR(fit.largest_misfit, 1 - std::cbrt(1.1) / 1.1, 1e-14);
}

TEST(Ratings, AreExamined) {
  EXPECT_THAT(first_problem({}), HasSubstr("flow: is 0 L/h"));
  EXPECT_THAT(first_problem({.flow = 4 * lph, .at = 1 * bar, .nozzle = 2 * mm}),
              HasSubstr("flow, nozzle, points: more than one is given"));
  EXPECT_THAT(first_problem({.rated = 1 * bar, .nozzle = 2 * mm}),
              HasSubstr("discharge_coefficient"));
  EXPECT_THAT(first_problem({.nozzle = 2 * mm, .discharge_coefficient = 0.9}),
              HasSubstr("rated: is not given"));
  EXPECT_THAT(first_problem({.rated = 1 * bar, .nozzle = 2 * mm, .discharge_coefficient = 1.1}),
              HasSubstr("discharge_coefficient: is 1.1"));
  EXPECT_THAT(first_problem({.rated = 1 * bar, .points = {{1 * bar, 4 * lph}}}),
              HasSubstr("points: are too few"));
  EXPECT_THAT(first_problem({.rated = 1 * bar, .points = {{1 * bar, 4 * lph}, {1 * bar, 5 * lph}}}),
              HasSubstr("points: are too few"));
  EXPECT_THAT(first_problem({.rated = 1 * bar, .points = {{1 * bar, 4 * lph}, {2 * bar, 1 * lph}}}),
              HasSubstr("points: are met best by the exponent -2"));
  EXPECT_THAT(first_problem({.rated = 1 * bar, .points = {{1 * bar, 4 * lph}, {2 * bar, 0 * lph}}}),
              HasSubstr("points, 2: is 0 L/h"));
  EXPECT_THAT(first_problem({.flow = 4 * lph, .compensating = Compensating{2 * bar, 1 * bar}}),
              HasSubstr("compensating.high: is 100 kPa, must be above low, 200 kPa"));
  EXPECT_THAT(
      first_problem(
          {.flow = 4 * lph, .exponent = 0.1, .compensating = Compensating{1 * bar, 2 * bar}}),
      HasSubstr("exponent: is given, but follows from the rating"));
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THAT(first_problem({.flow = 4 * lph, .compensating = Compensating{nan * bar, 2 * bar}}),
              HasSubstr("compensating.low: is nan"));
}

}  // namespace
}  // namespace hydro
