// Margins of limits: what is left by hand, and passed where a check finds fault.
#include "hydro/what_ifs/limits.hpp"

#include "hydro/physics/site.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "random_layout.hpp"
#include "random_pumped.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;

std::set<Limit> limits_of(const std::vector<Margin>& margins) {
  std::set<Limit> all;
  for (const Margin& margin : margins) all.insert(margin.limit);
  return all;
}

const Margin& of(const std::vector<Margin>& margins, Limit limit) {
  return *std::ranges::find(margins, limit, &Margin::limit);
}

/// As a check says it.
std::set<Limit> found_by(const Check& check) {
  std::set<Limit> all;
  const auto add = [&](Limit limit, bool found) {
    if (found) all.insert(limit);
  };
  add(Limit::rated, !check.below_rated.empty());
  add(Limit::minimum, !check.below_minimum.empty());
  add(Limit::maximum, !check.above_maximum.empty());
  add(Limit::variation, std::ranges::any_of(check.variations, &Variation::too_wide));
  add(Limit::velocity, !check.fast_water.empty());
  add(Limit::pipe_rating, !check.over_rating.empty());
  add(Limit::atmosphere, !check.below_atmosphere.empty());
  std::vector<SupplyLimit> of_supplies = check.supply_limits;
  for (const auto& further : check.further_supply_limits)
    of_supplies.insert(of_supplies.end(), further.begin(), further.end());
  for (const SupplyLimit limit : of_supplies)
    all.insert(static_cast<Limit>(static_cast<int>(Limit::power) + static_cast<int>(limit) -
                                  static_cast<int>(SupplyLimit::power)));
  return all;
}

TEST(Limits, ArePassedWhereACheckFindsFault) {
  std::set<Limit> seen;
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    Layout layout = seed % 3 == 0 ? random_pumped(seed) : random_layout(seed, {.farm = true});
    if (seed % 2 == 0) {  // so that all of them can be passed
      Line line = layout.lines().front();
      line.pipe.pressure_rating = 200 * kPa;
      if (line.outlet) line.outlet->maximum = 1.1 * line.outlet->rated_pressure();
      layout = layout.with_line(line);
      Supply supply = layout.supply();
      if (supply.pump && supply.pump->power) supply.pump->power = 0.2 * *supply.pump->power;
      if (supply.gauge) supply.gauge->range = 300 * kPa;
      layout = layout.with_supply(supply);
    }
    const Solution solution = solve(layout);
    const std::set<Limit> found = limits_of(passed(margins(solution)));
    ASSERT_EQ(found, found_by(check(solution))) << seed;
    seen.insert(found.begin(), found.end());
  }
  for (const Limit limit : every_limit())
    EXPECT_TRUE(seen.contains(limit)) << static_cast<int>(limit);
}

TEST(Limits, SayWhatIsLeft) {
  const Solution solution = solve(sample_layout({sample_row("row", 10)}, "", 40 * psi));
  const std::vector<Margin> all = margins(solution);
  const LineSolution& row = solution.line("row");
  const Margin& rated = of(all, Limit::rated);
  EXPECT_EQ(rated.line, "row");
  EXPECT_EQ(rated.outlet, 10);
  EXPECT_DOUBLE_EQ(rated.left, row.pressure.back() / psi / 25 - 1);
  EXPECT_DOUBLE_EQ(of(all, Limit::minimum).left, row.pressure.back() / psi / 18 - 1);
  EXPECT_EQ(of(all, Limit::maximum).outlet, 1);
  EXPECT_DOUBLE_EQ(of(all, Limit::maximum).left, 1 - row.pressure.front() / psi / 50);
  EXPECT_NEAR(of(all, Limit::velocity).left, 1 - row.inlet_velocity / ft_per_s / 5, 1e-12);
  const double variation = 1 - row.flow.back() / gpm / (row.flow.front() / gpm);
  EXPECT_NEAR(of(all, Limit::variation).left, 1 - variation / 0.10, 1e-9);
  EXPECT_NEAR(of(all, Limit::atmosphere).left,
              si(row.end_pressure) / si(atmospheric_pressure(solution.layout().site())),
              1e-12);
  EXPECT_EQ(limits_of(all),
            (std::set{Limit::rated,
                      Limit::minimum,
                      Limit::maximum,
                      Limit::variation,
                      Limit::velocity,
                      Limit::atmosphere}));
}

TEST(Limits, OfThePumpAreShares) {
  const Solution solution = solve(pumped_farm().watering({"low"}));
  const std::vector<Margin> all = margins(solution);
  const OperatingPoint& supply = solution.supply();
  const PumpDuty& duty = supply.pumps.front();
  EXPECT_DOUBLE_EQ(of(all, Limit::power).left, 1 - *duty.shaft_power / hp / 10);
  // 20 and 130 gal/min at 2,600 rpm go with the speed.
  EXPECT_NEAR(of(all, Limit::least_flow).left, duty.flow / gpm / (20 * 2300. / 2600) - 1, 1e-9);
  EXPECT_NEAR(of(all, Limit::most_flow).left, 1 - duty.flow / gpm / (130 * 2300. / 2600), 1e-9);
  EXPECT_DOUBLE_EQ(of(all, Limit::suction).left,
                   *supply.npsh_available / ft / (*duty.npsh_required / ft) - 1);
  EXPECT_DOUBLE_EQ(of(all, Limit::gauge_range).left, 1 - *supply.gauge_reading / psi / 100);
}

TEST(Limits, CanBeChosenByNameAndByLine) {
  const Solution solution =
      solve(sample_layout({sample_row("low", 10), sample_row("high", 10, 30 * ft)}));
  EXPECT_EQ(of(margins(solution), Limit::rated).line, "high");
  EXPECT_EQ(of(margins(solution, {.lines = {"low"}}), Limit::rated).line, "low");
  EXPECT_EQ(limits_of(margins(solution, {.judged = {Limit::velocity, Limit::rated}})),
            (std::set{Limit::rated, Limit::velocity}));
  EXPECT_THAT(refusal([&] { margins(solution, {.lines = {"middle"}}); }),
              HasSubstr("\"middle\" is not in this layout"));
}

}  // namespace
}  // namespace hydro
