// What is drawn for the inputs of a layout, and the layouts that come of it.
#include "hydro/what_ifs/uncertainty.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/more_outlets.hpp"
#include "hydro/what_ifs/uncertain_inputs.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include <boost/math/statistics/univariate_statistics.hpp>
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using units::m;

const Pipe tube{.name = "tube", .inside_diameter = 20 * mm, .hazen_williams = 140};
const Pipe rough{.name = "rough", .inside_diameter = 40 * mm, .roughness = 0.1 * mm};
const Outlet spray{.name = "spray", .flow = 2 * lpm, .at = 200 * kPa};
const Outlet nozzle{
    .name = "nozzle", .rated = 200 * kPa, .nozzle = 3 * mm, .discharge_coefficient = 0.95};

/// A main with losses, a row of sprays and one of nozzles.
Layout rows() {
  return {Supply{.pressure = 300 * kPa},
          {Line{.name = "main",
                .pipe = rough,
                .length = 50 * m,
                .ground_rise = 1 * m,
                .loss_coefficient = 2},
           Line{.name = "row 1",
                .fed_by = "main",
                .pipe = tube,
                .outlet = spray,
                .count = 6,
                .spacing = 5 * m,
                .riser = {.height = 0.5 * m, .inside_diameter = 15 * mm, .hazen_williams = 140}},
           Line{.name = "row 2",
                .fed_by = "main",
                .pipe = tube,
                .outlet = nozzle,
                .count = 4,
                .spacing = 5 * m,
                .elevations = {1 * m, 1 * m, 2 * m, 2 * m},
                .outlet_loss_coefficient = 0.3}}};
}

Uncertainty of_everything() {
  return {.manufacturing_variation = 0.05,
          .rating = 0.03,
          .inside_diameter = 0.01,
          .wall = 0.1,
          .loss_coefficient = 0.3,
          .supply_pressure = 10 * kPa,
          .elevation = 0.2 * m};
}

double deviation_of(const std::vector<double>& numbers) {
  return std::sqrt(boost::math::statistics::sample_variance(numbers));
}

std::string message_of(const Uncertainty& uncertainty, const Layout& layout) {
  std::string all;
  for (const Problem& problem : problems(uncertainty, layout)) all += problem.text() + "\n";
  return all;
}

TEST(Realisation, OfNothingUncertainIsTheLayout) {
  EXPECT_EQ(realisation(rows(), {}, 1, 5), rows());
  const Layout farm = ouzel_strips().watering({"rows 1 and 2"}).with_fault(head_off("row 2", 7));
  EXPECT_EQ(realisation(farm, {}, 1, 5), farm);
}

TEST(Realisation, FollowsFromSeedAndNumber) {
  EXPECT_EQ(realisation(rows(), of_everything(), 3, 9), realisation(rows(), of_everything(), 3, 9));
  EXPECT_NE(realisation(rows(), of_everything(), 3, 9),
            realisation(rows(), of_everything(), 3, 10));
  EXPECT_NE(realisation(rows(), of_everything(), 3, 9), realisation(rows(), of_everything(), 4, 9));
}

// Standard deviation and mean of each input as they were asked for. A sample's deviation has a
// standard error of 1 / sqrt(2 N) of itself, with kurtosis 3: that of a lognormal input with s 0.3 is
// 4.6 (3 + 16 s^2 and more), which makes it 1.4 times as much.
TEST(Realisation, HasInputsThatLieAsFarAsTheyAreSaidTo) {
  constexpr int count = 4000;
  std::vector<Layout> layouts;
  for (std::uint64_t i = 0; i < count; ++i)
    layouts.push_back(realisation(rows(), of_everything(), 1, i));
  const auto expect = [&](double mean, double deviation, const auto& figure) {
    std::vector<double> found;
    for (const Layout& layout : layouts) found.push_back(figure(layout));
    EXPECT_NEAR(boost::math::statistics::mean(found), mean, 5 * deviation / std::sqrt(count));
    EXPECT_NEAR(deviation_of(found), deviation, 5 * 1.4 * deviation / std::sqrt(2 * count));
  };
  expect(300, 10, [](const Layout& it) { return *it.supply().pressure / kPa; });
  expect(1, 0.2, [](const Layout& it) { return *it.line("main").ground_rise / m; });
  expect(0, 0.2, [](const Layout& it) { return *it.line("row 1").ground_rise / m; });
  expect(2, 0.2, [](const Layout& it) { return it.line("row 2").elevations[3] / m; });
  expect(2, 0.6, [](const Layout& it) { return *it.line("main").loss_coefficient; });
  expect(0.3, 0.09, [](const Layout& it) { return *it.line("row 2").outlet_loss_coefficient; });
  expect(20, 0.2, [](const Layout& it) { return it.line("row 1").pipe.inside_diameter / mm; });
  expect(140, 14, [](const Layout& it) { return *it.line("row 1").pipe.hazen_williams; });
  expect(0.1, 0.01, [](const Layout& it) { return *it.line("main").pipe.roughness / mm; });
  expect(15, 0.15, [](const Layout& it) { return *it.line("row 1").riser.inside_diameter / mm; });
  const double of_an_outlet = std::hypot(0.05, 0.03);  // 0.05 x 0.03 is left out: 0.03 % of it
  for (const int number : {1, 6})
    expect(2, 2 * of_an_outlet, [&](const Layout& it) {
      return it.line("row 1").kind_of(number).flow / lpm;
    });
  expect(1, of_an_outlet, [](const Layout& it) {
    return discharge(it.line("row 2").kind_of(2), 1 * bar) / discharge(nozzle, 1 * bar);
  });
}

TEST(Realisation, VariesAKindTogetherAndOutletsApart) {
  const Layout some = realisation(rows(), {.rating = 0.1, .inside_diameter = 0.02}, 1, 0);
  const Line& row = some.line("row 1");
  EXPECT_NE(row.kind_of(1).flow / lpm, 2);
  EXPECT_EQ(row.kind_of(1).flow, row.kind_of(6).flow);
  EXPECT_EQ(row.pipe, some.line("row 2").pipe);
  EXPECT_NE(some.line("main").pipe.inside_diameter / mm / 40, row.pipe.inside_diameter / mm / 20);
  const Layout others = realisation(rows(), {.manufacturing_variation = 0.1}, 1, 0);
  EXPECT_NE(others.line("row 1").kind_of(1).flow, others.line("row 1").kind_of(6).flow);
  EXPECT_EQ(others.line("row 1").pipe, tube);
}

TEST(Realisation, TakesOtherFiguresForAKindOfItsOwn) {
  const Layout some = realisation(rows(),
                                  {.manufacturing_variation = 0.1,
                                   .outlets = {{.outlet = "nozzle", .manufacturing_variation = 0}}},
                                  1,
                                  0);
  EXPECT_NE(some.line("row 1").kind_of(1), spray);
  EXPECT_EQ(some.line("row 2").kind_of(1), nozzle);
}

TEST(Realisation, KeepsADrawWhenOthersBecomeUncertain) {
  const auto flow = [](const Layout& layout) { return layout.line("row 1").kind_of(4).flow; };
  const Uncertainty few{.manufacturing_variation = 0.05};
  Uncertainty more = of_everything();
  more.rating = 0;
  EXPECT_EQ(flow(realisation(rows(), few, 1, 8)), flow(realisation(rows(), more, 1, 8)));
  EXPECT_EQ(flow(realisation(rows(), few, 1, 8)),
            flow(realisation(with_more_outlets(rows(), "row 1", {}, 3), few, 1, 8)));
  // The kind of the second row keeps its number where the first is exact.
  const auto bore_of = [](const Layout& layout) { return *layout.line("row 2").kind_of(1).nozzle; };
  EXPECT_EQ(
      bore_of(realisation(rows(), {.rating = 0.05}, 1, 8)),
      bore_of(realisation(rows(), {.outlets = {{.outlet = "nozzle", .rating = 0.05}}}, 1, 8)));
}

TEST(Realisation, KeepsFaultsAndSets) {
  const Layout farm = ouzel_strips()
                          .watering({"rows 1 and 2"})
                          .with_faults({riser_sheared("row 2", 7),
                                        clogged("row 1", 3, 0.5),
                                        wrong_outlet("row 1", 5, spray),
                                        pump_worn(0.1)});
  const Uncertainty uncertainty{.manufacturing_variation = 0.05, .pump_head = 0.02};
  const Layout some = realisation(farm, uncertainty, 1, 2);
  EXPECT_EQ(some.running_sets(), farm.running_sets());
  ASSERT_EQ(some.faults().size(), farm.faults().size());
  const Outlet& fitted = some.outlet_at(some.index_of("row 1"), 5);
  EXPECT_EQ(fitted.name, "spray");
  EXPECT_NE(fitted.flow, spray.flow);
  const double factor = some.supply().pump->points[0].head / farm.supply().pump->points[0].head;
  EXPECT_NE(factor, 1);
  EXPECT_NEAR(some.supply().pump->points.back().head / farm.supply().pump->points.back().head,
              factor,
              1e-15);
  EXPECT_EQ(solve(some).line("row 2").state[6], OutletState::broken);
}

// What is drawn is held within 4 deviations, and each field within what it accepts: no realisation of
// a wide uncertainty is refused.
TEST(Realisation, IsAlwaysALayout) {
  Layout layout = rows().with_line(Line{.name = "smooth",
                                        .fed_by = "main",
                                        .pipe = {.inside_diameter = 0.11 * mm, .darcy_factor = 0.9},
                                        .length = 1 * m});
  layout = layout.with_line(Line{.name = "rough",
                                 .fed_by = "main",
                                 .pipe = {.inside_diameter = 20 * mm, .roughness = 1 * mm},
                                 .length = 1 * m});
  layout = layout.with_supply(Supply{.tank = Tank{.level = 1 * m}});
  const Uncertainty wide{.manufacturing_variation = 0.2,
                         .rating = 0.2,
                         .inside_diameter = 0.1,
                         .wall = 1,
                         .loss_coefficient = 2,
                         .supply_pressure = 20 * kPa,
                         .elevation = 1 * m};
  double lowest_level = 1;
  double largest_C = 0;
  for (std::uint64_t i = 0; i < 1000; ++i) {
    const Layout some = realisation(layout, wide, 7, i);
    lowest_level = std::min(lowest_level, some.supply().tank->level / m);
    largest_C = std::max(largest_C, *some.line("row 1").pipe.hazen_williams);
  }
  EXPECT_EQ(lowest_level, 0);
  EXPECT_EQ(largest_C, 200);
  const Layout town =
      rows().with_supply(Supply{.hydrant = Hydrant{300 * kPa, 10 * kPa, 100 * lpm}});
  for (std::uint64_t i = 0; i < 100; ++i) {
    const Hydrant some = *realisation(town, wide, 7, i).supply().hydrant;
    EXPECT_NEAR((some.pressure_at_rest - some.residual_pressure) / kPa, 290, 1e-9);
  }
}

// 6 of 100,000 normal numbers lie beyond 4.
TEST(Inputs, AreHeldWithinFourDeviations) {
  std::vector<double> factors(200'000);
  UncertainInputs::draw({InputKind::outlet, 0, 1, 0.1}, 1, 0, factors);
  const auto [least, most] = std::ranges::minmax(factors);
  EXPECT_EQ(least, 1 - 0.1 * 4);
  EXPECT_EQ(most, 1 + 0.1 * 4);
}

// Mean and deviation of a lognormal input, s = 0.5: its kurtosis is q^4 + 2 q^3 + 3 q^2 - 3 with
// q = 1 + s^2 (its moments), 8.0; the standard error of a deviation is sqrt((kurtosis - 1) / (4 N)).
TEST(Inputs, HaveTheMeanThatIsGivenWhereTheyAreLognormal) {
  std::vector<double> factors(1'000'000);
  UncertainInputs::draw({InputKind::loss_coefficient, 0, 0, 0.5}, 1, 0, factors);
  const double n = static_cast<double>(factors.size());
  EXPECT_NEAR(boost::math::statistics::mean(factors), 1, 5 * 0.5 / std::sqrt(n));
  EXPECT_NEAR(deviation_of(factors), 0.5, 5 * 0.5 * std::sqrt(7 / (4 * n)));
}

TEST(UncertaintyProblems, NameTheFieldAndWhatIsAccepted) {
  EXPECT_EQ(message_of(of_everything(), rows()), "");
  EXPECT_THAT(message_of({.manufacturing_variation = 0.3}, rows()),
              HasSubstr("manufacturing_variation: is 0.3, must be from 0 to 0.2"));
  EXPECT_THAT(message_of({.rating = std::numeric_limits<double>::quiet_NaN()}, rows()),
              HasSubstr("rating: is nan"));
  EXPECT_THAT(
      message_of(
          {.outlets = {{.outlet = "sprya", .rating = 1}, {.outlet = "spray"}, {.outlet = "spray"}}},
          rows()),
      AllOf(HasSubstr("outlets, 1.rating: is 1, must be from 0 to 0.2"),
            HasSubstr("outlets, 1.outlet: is \"sprya\", must be the name of a kind"),
            HasSubstr("outlets, 3.outlet: is \"spray\" again")));
  EXPECT_THAT(message_of({.supply_pressure = -1 * kPa}, rows()),
              HasSubstr("supply_pressure: is -1 kPa, must be from 0 to 1000 kPa"));
  EXPECT_THAT(message_of({.pump_head = 0.05}, rows()), HasSubstr("no supply is a pump"));
  EXPECT_THAT(message_of({.supply_pressure = 1 * kPa}, ouzel_strips()),
              HasSubstr("a pump varies by its pump_head"));
  const Layout ring = rows().with_line(
      Line{.name = "link", .fed_by = "row 1", .joins = "row 2", .pipe = tube, .length = 20 * m});
  EXPECT_THAT(message_of({.elevation = 1 * cm}, ring),
              HasSubstr("the far end of line \"link\" lies as high as the place"));
  EXPECT_THROW(realisation(ring, {.elevation = 1 * cm}, 1, 1), InvalidInput);
}

}  // namespace
}  // namespace hydro
