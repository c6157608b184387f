// The rules of check.hpp, each by a line that just meets it and one that just does not.
#include "hydro/answers/check.hpp"

#include "hydro/physics/friction.hpp"
#include "hydro/physics/site.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <limits>

#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::IsEmpty;
using testing::SizeIs;
using units::m;

/// A pipe so wide that every outlet has the supply's pressure to 1e-9.
Line wide_row(const Outlet& outlet, int count = 4) {
  return {.name = "row",
          .pipe = {.inside_diameter = 1 * m, .hazen_williams = 150},
          .outlet = outlet,
          .count = count,
          .spacing = 1 * m};
}

Check checked(const Line& line, const Pressure& pressure) {
  return check(solve(Layout(Supply{.pressure = pressure}, {line})));
}

const Outlet head_with_range{
    .flow = 100 * lph, .at = 200 * kPa, .minimum = 150 * kPa, .maximum = 300 * kPa};

TEST(Rated, IsMetToAMillionth) {
  EXPECT_THAT(checked(wide_row(head_with_range), 200 * kPa).below_rated, IsEmpty());
  EXPECT_THAT(checked(wide_row(head_with_range), 200 * (1 - 0.5e-6) * kPa).below_rated, IsEmpty());
  const Check short_of_it = checked(wide_row(head_with_range), 200 * (1 - 2e-6) * kPa);
  ASSERT_THAT(short_of_it.below_rated, SizeIs(4));
  EXPECT_EQ(short_of_it.below_rated[0].line, "row");
  EXPECT_EQ(short_of_it.below_rated[0].outlet, 1);
  EXPECT_EQ(short_of_it.below_rated[0].rated, 200 * kPa);
  EXPECT_THAT(short_of_it.below_minimum, IsEmpty());
  EXPECT_FALSE(short_of_it.every_outlet_serves());
}

TEST(Rated, MayDifferFromTheRating) {
  Outlet outlet = head_with_range;
  outlet.rated = 180 * kPa;
  EXPECT_TRUE(checked(wide_row(outlet), 185 * kPa).every_outlet_serves());
}

TEST(Range, IsJudgedAtBothEnds) {
  EXPECT_THAT(checked(wide_row(head_with_range), 151 * kPa).below_minimum, IsEmpty());
  EXPECT_THAT(checked(wide_row(head_with_range), 149 * kPa).below_minimum, SizeIs(4));
  EXPECT_THAT(checked(wide_row(head_with_range), 299 * kPa).above_maximum, IsEmpty());
  const Check misting = checked(wide_row(head_with_range), 301 * kPa);
  EXPECT_THAT(misting.above_maximum, SizeIs(4));
  EXPECT_THAT(misting.below_rated, IsEmpty());
  EXPECT_FALSE(misting.every_outlet_serves());
}

TEST(Dry, OutletsAreBelowEverything) {
  Line line = wide_row(head_with_range, 10);
  line.ground_rise = 100 * m;
  const Check found = checked(line, 250 * kPa);
  EXPECT_THAT(found.dry, SizeIs(8));  // from 30 m on; 250 kPa lift 25.5 m
  EXPECT_EQ(found.dry[0].outlet, 3);
  EXPECT_LT(found.dry[0].line_pressure, Pressure{});
  EXPECT_TRUE(std::ranges::any_of(found.below_rated, [](auto& it) { return it.outlet == 10; }));
  EXPECT_TRUE(std::ranges::any_of(found.below_minimum, [](auto& it) { return it.outlet == 10; }));
}

TEST(BrokenAndCapped, OutletsAreJudgedNowhere) {
  Line line = wide_row(head_with_range);
  line.riser = {.height = 1 * m, .inside_diameter = 20 * mm, .hazen_williams = 150};
  const Layout layout = Layout(Supply{.pressure = 100 * kPa}, {line})
                            .with_fault(head_off("row", 1))
                            .with_fault(capped("row", 2));
  const Check found = check(solve(layout));
  EXPECT_THAT(found.below_rated, SizeIs(2));
  EXPECT_THAT(found.below_minimum, SizeIs(2));
  ASSERT_THAT(found.variations, SizeIs(1));
  EXPECT_EQ(found.variations[0].outlets, 2);
}

// Two outlets at known pressures: 300 kPa at the supply, 10 m lower or higher ground, no friction.
TEST(Variation, IsMeasuredAsDefined) {
  Line line = wide_row(head_with_range, 2);
  line.first_at = 0 * m;
  line.ground_rise = -2 * m;
  const Layout layout(Supply{.pressure = 200 * kPa}, {line}, {.density = 1000 * kg_per_m3});
  const double low = 200, high = 200 + 2 * 9.80665;
  const Check found = check(solve(layout));
  ASSERT_THAT(found.variations, SizeIs(1));
  EXPECT_NEAR(found.variations[0].pressure, (high - low) / ((high + low) / 2), 1e-8);
  EXPECT_NEAR(found.variations[0].flow, 1 - std::sqrt(low / high), 1e-8);
  EXPECT_FALSE(found.variations[0].too_wide);
  EXPECT_TRUE(check(solve(layout), {.pressure_variation = 0.09}).variations[0].too_wide);
  EXPECT_TRUE(check(solve(layout), {.flow_variation = 0.04}).variations[0].too_wide);
}

TEST(Variation, AppliesTheFlowRuleAloneToOtherExponents) {
  Line line = wide_row({.flow = 100 * lph, .at = 200 * kPa, .exponent = 0.2}, 2);
  line.first_at = 0 * m;
  line.ground_rise = -5 * m;  // 22 % in pressure, 4 % in flow
  const Check found = checked(line, 200 * kPa);
  EXPECT_GT(found.variations[0].pressure, 0.20);
  EXPECT_FALSE(found.variations[0].too_wide);
}

TEST(Variation, IsTakenOverAllLinesOfOneKindToo) {
  Line one = wide_row(head_with_range);
  Line other = one;
  other.name = "other row";
  other.ground_rise = 5 * m;
  const Check found = check(solve(Layout(Supply{.pressure = 250 * kPa}, {one, other})));
  ASSERT_THAT(found.variations, SizeIs(3));
  EXPECT_EQ(found.variations[2].line, "");
  EXPECT_EQ(found.variations[2].outlets, 8);
  EXPECT_GT(found.variations[2].pressure, found.variations[1].pressure);
}

TEST(Velocity, IsJudgedInLines) {
  const auto row_at = [](double feet_per_second) {
    Line line = wide_row({.flow = 1 * lph, .at = 200 * kPa}, 1);
    line.pipe.inside_diameter = 20 * mm;
    line.outlet->flow = feet_per_second * ft_per_s * area(line.pipe);
    return checked(line, 1000 * kPa).fast_water;  // more than rated: sqrt(5) times the flow
  };
  EXPECT_THAT(row_at(5 / std::sqrt(5.1)), IsEmpty());
  ASSERT_THAT(row_at(2.5), SizeIs(1));
  EXPECT_GT(row_at(2.5)[0].velocity, 5 * ft_per_s);
}

// 15 m over the summit from 20 kPa: 127 kPa below the atmosphere's 101: no water column stands
// that.
TEST(BelowAtmosphere, TellsWhereTheColumnParts) {
  const auto over_a_summit = [](double rise_m) {
    std::vector<Line> lines{{.name = "up",
                             .pipe = {.inside_diameter = 100 * mm, .hazen_williams = 150},
                             .length = 50 * m,
                             .ground_rise = rise_m * m},
                            wide_row(head_with_range)};
    lines[1].fed_by = "up";
    lines[1].ground_rise = -60 * m;
    return check(solve(Layout(Supply{.pressure = 20 * kPa}, lines))).below_atmosphere;
  };
  EXPECT_THAT(over_a_summit(1), IsEmpty());
  ASSERT_THAT(over_a_summit(5), testing::Not(IsEmpty()));
  EXPECT_FALSE(over_a_summit(5)[0].column_separates);
  EXPECT_TRUE(over_a_summit(15)[0].column_separates);
}

TEST(Options, AreExamined) {
  const Solution solution =
      solve(Layout(Supply{.pressure = 200 * kPa}, {wide_row(head_with_range)}));
  EXPECT_THROW(check(solution, {.pressure_variation = 0}), InvalidInput);
  EXPECT_THROW(check(solution, {.flow_variation = std::numeric_limits<double>::quiet_NaN()}),
               InvalidInput);
  EXPECT_THROW(check(solution, {.velocity = -1 * m_per_s}), InvalidInput);
}

}  // namespace
}  // namespace hydro
