// Remedies: each is what the same thing done by hand is, the least step that cures is the least, the
// ranking keeps its rule, and what is told of a remedy is true of it.
#include "hydro/what_ifs/remedies.hpp"

#include "hydro/answers/pressure_budget.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/text/describe.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "one_decimal.hpp"
#include "random_layout.hpp"
#include "random_looped.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;
using units::m;

PricedPipe pipe_of(const Length& bore, double price) {
  return {{.inside_diameter = bore, .hazen_williams = 150}, Price{price, 20 * ft}};
}

RemedyOptions with_prices() {
  return {.pipes = {pipe_of(1.5 * inch, 11), pipe_of(2.2 * inch, 19), pipe_of(2.7 * inch, 27)},
          .outlet_price = 6,
          .lost_outlet_price = 100,
          .kilowatt_price = 300};
}

/// The rows of the sample farm on a pump that is somewhat slow.
Layout slow_farm() {
  Supply supply = sample_pump();
  supply.pump->speed = 2120 * rpm;
  return pumped_farm(supply).watering({"low"});
}

std::vector<Remedy> of_kind(const Remedies& found, RemedyKind kind) {
  std::vector<Remedy> some;
  for (const Remedy& remedy : found.ranked)
    if (remedy.kind == kind) some.push_back(remedy);
  return some;
}

/// All that is told of one kind and these lines.
std::optional<Remedy> remedy_of(const Remedies& found,
                                RemedyKind kind,
                                const std::vector<std::string>& lines) {
  for (const Remedy& remedy : found.ranked)
    if (remedy.kind == kind && remedy.lines == lines) return remedy;
  return std::nullopt;
}

/// Both have converged to 1e-12 of the head at rest; what is the same outlet has the same pressure.
constexpr double rounding_psi = 1e-6;

TEST(Remedies, WhereNothingFallsShortThereAreNone) {
  const Layout layout = sample_layout({sample_row("row 1", 10)}, "Plover Flat", 60 * psi);
  const Remedies found = remedies(layout, with_prices());
  EXPECT_EQ(found.before.below_rated, 0);
  EXPECT_THAT(found.ranked, IsEmpty());
}

TEST(Remedies, WiderPipeIsTheLineInThatPipe) {
  const Layout farm = slow_farm();
  const RemedyOptions options = with_prices();
  const Remedies found = remedies(farm, options);
  const auto remedy = remedy_of(found, RemedyKind::wider_pipe, {"row 1", "row 2"});
  ASSERT_TRUE(remedy);
  Layout by_hand = farm;
  Length length{};
  for (const char* name : {"row 1", "row 2"}) {
    Line row = farm.line(name);
    row.pipe = remedy->solution.layout().line(name).pipe;
    EXPECT_GT(row.pipe.inside_diameter, farm.line(name).pipe.inside_diameter);
    length += row.whole_length();
    by_hand = by_hand.with_line(row);
  }
  EXPECT_EQ(remedy->solution.layout(), by_hand);
  const double for_20_ft =
      by_hand.line("row 1").pipe == options.pipes[1].pipe ? 19 : 27;  // the two that are wider
  EXPECT_NEAR(*remedy->cost, for_20_ft * (length / ft) / 20, 1e-9);
}

TEST(Remedies, WiderPipeLeavesWhatIsWiderAlready) {
  Line row = sample_row("row 1", 10);
  row.pipe.inside_diameter = 1.2 * inch;
  row.reaches = {{Pipe{.inside_diameter = 3 * inch, .hazen_williams = 150}, 72 * ft}};
  const Layout layout = sample_layout({row}, "Plover Flat", 34 * psi);
  const Remedies found = remedies(layout, {.pipes = {pipe_of(2.2 * inch, 19)}, .least_gain = 0});
  const auto remedy = remedy_of(found, RemedyKind::wider_pipe, {"row 1"});
  ASSERT_TRUE(remedy);
  const Line& laid = remedy->solution.layout().line("row 1");
  EXPECT_EQ(laid.reaches, row.reaches);
  EXPECT_EQ(laid.pipe, pipe_of(2.2 * inch, 19).pipe);
  EXPECT_NEAR(*remedy->cost, 19 * (360. - 72) / 20, 1e-9);
}

// Taken away or capped, an outlet lets out nothing.
TEST(Remedies, FewerOutletsIsTheLeastNumberOfCapsThatCures) {
  const Layout farm = slow_farm();
  const Remedies found = remedies(farm, with_prices());
  const auto remedy = remedy_of(found, RemedyKind::fewer_outlets, {"row 1", "row 2"});
  ASSERT_TRUE(remedy);
  ASSERT_TRUE(remedy->cures);
  const int left = remedy->solution.layout().line("row 1").outlet_count();
  const auto with_caps = [&](int working) {
    std::vector<Fault> caps;
    for (const char* name : {"row 1", "row 2"})
      for (int outlet = working + 1; outlet <= 10; ++outlet) caps.push_back(capped(name, outlet));
    return solve(farm.with_faults(caps));
  };
  const Solution capped_ones = with_caps(left);
  for (const char* name : {"row 1", "row 2"}) {
    const LineSolution& taken_away = remedy->solution.line(name);
    ASSERT_EQ(taken_away.pressure.size(), static_cast<std::size_t>(left));
    for (std::size_t i = 0; i < taken_away.pressure.size(); ++i)
      EXPECT_NEAR(
          taken_away.pressure[i] / psi, capped_ones.line(name).pressure[i] / psi, rounding_psi);
  }
  EXPECT_THAT(check(capped_ones).below_rated, IsEmpty());
  EXPECT_FALSE(check(with_caps(left + 1)).below_rated.empty());
  EXPECT_NEAR(*remedy->cost, 100. * 2 * (10 - left), 1e-9);
}

// A share less at every pressure is what a clogged one gives.
TEST(Remedies, SmallerOutletsIsTheLeastCloggingThatCures) {
  for (const bool by_nozzle : {false, true}) {
    Layout farm = slow_farm();
    if (by_nozzle)
      for (Line line : std::vector<Line>(farm.lines())) {
        if (!line.outlet) continue;
        line.outlet->flow = Flow{};
        line.outlet->at = Pressure{};
        line.outlet->nozzle = 0.155 * inch;
        line.outlet->discharge_coefficient = 0.97;
        line.outlet->rated = 25 * psi;
        farm = farm.with_line(line);
      }
    const Remedies found = remedies(farm, with_prices());
    const std::vector<Remedy> some = of_kind(found, RemedyKind::smaller_outlets);
    ASSERT_EQ(some.size(), 1U);
    const Remedy& remedy = some.front();
    ASSERT_TRUE(remedy.cures);
    EXPECT_THAT(remedy.lines, ElementsAre("row 1", "row 2"));
    EXPECT_NEAR(*remedy.cost, 6. * 20, 1e-9);
    const auto with_clogging = [&](double share) {
      std::vector<Fault> faults;
      for (const char* name : {"row 1", "row 2"})
        for (int outlet = 1; outlet <= 10; ++outlet) faults.push_back(clogged(name, outlet, share));
      return solve(farm.with_faults(faults));
    };
    bool met = false;
    for (int step = 1; step <= 6 && !met; ++step) {
      const Solution clogged_ones = with_clogging(0.05 * step);
      met = check(clogged_ones).below_rated.empty();
      if (!met) continue;
      for (const char* name : {"row 1", "row 2"})
        for (std::size_t i = 0; i < 10; ++i)
          EXPECT_NEAR(remedy.solution.line(name).pressure[i] / psi,
                      clogged_ones.line(name).pressure[i] / psi,
                      rounding_psi);
    }
    EXPECT_TRUE(met);
    EXPECT_EQ(remedy.solution.layout().line("row 3"), farm.line("row 3"));
  }
}

TEST(Remedies, MorePressureIsTheSettingForRated) {
  const Layout farm = slow_farm();
  const Remedies found = remedies(farm, with_prices());
  const std::vector<Remedy> some = of_kind(found, RemedyKind::more_pressure);
  ASSERT_EQ(some.size(), 1U);
  const Setting setting = set_for_rated(farm);
  EXPECT_TRUE(some[0].cures);
  EXPECT_EQ(some[0].solution.layout(), setting.solution.layout());
  EXPECT_THAT(some[0].deed,
              HasSubstr("Run the engine at " +
                        std::to_string(static_cast<int>(*setting.speed / rpm + 0.5)) + " rpm"));
  const double more_kw = (*setting.solution.supply().pumps[0].shaft_power -
                          *solve(farm).supply().pumps[0].shaft_power) /
                         kW;
  EXPECT_NEAR(*some[0].cost, 300 * more_kw, 1e-6);
}

/// The same row as two, beyond and before its middle, described anew.
TEST(Remedies, FeedFromTheMiddleIsTwoRowsOnAFeed) {
  const PricedPipe feed_pipe = pipe_of(2.7 * inch, 27);
  for (const int count : {2, 3, 10, 11}) {
    SCOPED_TRACE(count);
    Line row = sample_row("row 1", count, 6 * ft);
    row.pipe.inside_diameter = 0.3 * std::sqrt(count) * inch;
    row.loss_coefficient = 1.5;
    const Layout layout = sample_layout({row}, "Plover Flat", 33 * psi);
    const Remedies found = remedies(layout, {.pipes = {feed_pipe}, .least_gain = 0});
    const auto remedy = remedy_of(found, RemedyKind::feed_from_middle, {"row 1"});
    ASSERT_TRUE(remedy);
    const int before = count / 2;
    const Length middle = (36. * before + 18) * ft;
    const double slope = 6. / (36 * count);
    const Line feed{.name = "feed",
                    .pipe = feed_pipe.pipe,
                    .length = middle,
                    .ground_rise = slope * middle,
                    .loss_coefficient = 1.5};
    Line outward = sample_row("outward", count - before);
    outward.fed_by = "feed";
    outward.pipe = row.pipe;
    outward.first_at = 18 * ft;
    Line back = outward;
    back.name = "back";
    back.count = before;
    outward.ground_rise = slope * outward.whole_length();
    back.ground_rise = -slope * back.whole_length();
    const Solution by_hand = solve(sample_layout({feed, outward, back}, "Plover Flat", 33 * psi));
    for (const auto& [told, expected] :
         {std::pair("row 1, far part", "outward"), std::pair("row 1, near part", "back")}) {
      const LineSolution& one = remedy->solution.line(told);
      const LineSolution& other = by_hand.line(expected);
      ASSERT_EQ(one.pressure.size(), other.pressure.size());
      for (std::size_t i = 0; i < one.pressure.size(); ++i)
        EXPECT_NEAR(one.pressure[i] / psi, other.pressure[i] / psi, rounding_psi);
    }
    EXPECT_NEAR(*remedy->cost, 27 * (middle / ft) / 20, 1e-9);
    EXPECT_NEAR(by_hand.inflow() / gpm, remedy->after.flow / gpm, rounding_psi);
  }
}

TEST(Remedies, FedFromTheMiddleItStillRunsWithItsSet) {
  const Remedies found = remedies(slow_farm(), with_prices());
  const auto remedy = remedy_of(found, RemedyKind::feed_from_middle, {"row 1", "row 2"});
  ASSERT_TRUE(remedy);
  const Solution& solution = remedy->solution;
  for (const char* name :
       {"row 1, near part", "row 1, far part", "row 2, near part", "row 2, far part"})
    EXPECT_GT(solution.line(name).inflow, 1 * gpm) << name;
  EXPECT_TRUE(solution.line("row 3").shut);
}

TEST(Remedies, SecondFeedIsACrossPipe) {
  Line manifold = sample_main();
  manifold.name = "manifold";
  manifold.length = 60 * ft;
  std::vector<Line> lines{manifold};
  for (int i = 1; i <= 2; ++i) {
    lines.push_back(sample_row("row " + std::to_string(i), 10));
    lines.back().fed_by = "manifold";
    lines.back().tap = 30. * i * ft;
  }
  const Layout layout =
      sample_layout(lines, "Plover Flat", 36 * psi).with_fault(valve_part_closed("row 2", 150));
  const Remedies found = remedies(layout);
  const auto remedy = remedy_of(found, RemedyKind::second_feed, {"row 1", "row 2"});
  ASSERT_TRUE(remedy);
  const Layout by_hand = layout.with_line({.name = "cross pipe",
                                           .fed_by = "row 1",
                                           .joins = "row 2",
                                           .pipe = lines[1].pipe,
                                           .length = 30 * ft});
  EXPECT_EQ(remedy->solution.layout(), by_hand);
  EXPECT_THAT(remedy->deed,
              HasSubstr("Join the far ends of row 1 and row 2 with 30 ft of pipe of 1.75 in"));
  EXPECT_FALSE(remedy->cost);

  Line other = manifold;
  other.name = "cross pipe";
  const auto second =
      remedy_of(remedies(layout.with_line(other)), RemedyKind::second_feed, {"row 1", "row 2"});
  ASSERT_TRUE(second);
  EXPECT_EQ(second->solution.layout().lines().back().name, "cross pipe 2");
}

void expect_ranked(const Remedies& found) {
  const auto key = [](const Remedy& remedy) {
    const double cost = remedy.cost.value_or(std::numeric_limits<double>::infinity());
    return std::tuple(remedy.cures ? 0 : 1,
                      remedy.cures ? cost : 0.,
                      remedy.after.below_rated,
                      -remedy.after.lowest_share.value_or(0),
                      si(remedy.after.flow));
  };
  for (std::size_t i = 1; i < found.ranked.size(); ++i)
    EXPECT_LE(key(found.ranked[i - 1]), key(found.ranked[i]));
}

TEST(Remedies, CuresComeFirstFromTheCheapestOn) {
  const Remedies found = remedies(slow_farm(), with_prices());
  ASSERT_GT(found.ranked.size(), 6U);
  EXPECT_TRUE(found.ranked.front().cures);
  EXPECT_FALSE(found.ranked.back().cures);
  expect_ranked(found);
  RemedyOptions no_price_of_power = with_prices();
  no_price_of_power.kilowatt_price.reset();
  const Remedies other = remedies(slow_farm(), no_price_of_power);
  expect_ranked(other);
  const auto is_power = [](const Remedy& remedy) {
    return remedy.kind == RemedyKind::more_pressure;
  };
  const auto power = std::find_if(other.ranked.begin(), other.ranked.end(), is_power);
  ASSERT_NE(power, other.ranked.end());
  EXPECT_TRUE(power->cures && !power->cost);
  EXPECT_TRUE(std::next(power) == other.ranked.end() || !std::next(power)->cures);
}

TEST(Remedies, ABrokenLimitIsNoCure) {
  Line row = sample_row("row 1", 10, 20 * ft);  // up the hill: the first ones have most
  row.outlet->maximum = 28 * psi;
  const Layout layout = sample_layout({row}, "Plover Flat", 34 * psi);
  const Remedies found = remedies(layout);
  const std::vector<Remedy> some = of_kind(found, RemedyKind::more_pressure);
  ASSERT_EQ(some.size(), 1U);
  EXPECT_FALSE(some[0].cures);
  EXPECT_EQ(some[0].after.below_rated, 0);
  EXPECT_THAT(some[0].passed, ElementsAre(Field(&Margin::limit, Limit::maximum)));
  EXPECT_THAT(describe(some[0], found.before),
              HasSubstr("; but outlet 1 of row 1 rises above its highest pressure, by "));

  Supply weak = sample_pump();
  weak.pump->speed = 2000 * rpm;
  weak.pump->top_speed = 2050 * rpm;
  const Remedies on_a_weak_engine = remedies(pumped_farm(weak).watering({"low"}));
  for (const Remedy& remedy : of_kind(on_a_weak_engine, RemedyKind::more_pressure)) {
    EXPECT_FALSE(remedy.cures);
    EXPECT_GT(remedy.after.below_rated, 0);
  }
}

TEST(Remedies, WhatWasPassedBeforeIsNoHindrance) {
  for (const bool was_over : {false, true}) {
    Line row = sample_row("row 1", 10);
    row.pipe.pressure_rating = (was_over ? 20 : 29) * psi;
    const Layout layout = sample_layout({row}, "Plover Flat", 28 * psi);
    const Remedies found = remedies(layout);
    const std::vector<Remedy> some = of_kind(found, RemedyKind::more_pressure);
    ASSERT_EQ(some.size(), 1U);
    EXPECT_GT(some[0].solution.supply_pressure(), 29 * psi);
    EXPECT_EQ(some[0].cures, was_over);
    if (!was_over) {
      EXPECT_THAT(some[0].passed,
                  ElementsAre(AllOf(Field(&Margin::limit, Limit::pipe_rating),
                                    Field(&Margin::line, "row 1"))));
    }
  }
  Supply small = sample_pump();
  small.pump->speed = 2000 * rpm;
  for (const bool was_over : {false, true}) {
    const Power taken = *solve(pumped_farm(small).watering({"low"})).supply().pumps[0].shaft_power;
    small.pump->power = (was_over ? 0.9 : 1.01) * taken;
    const Remedies found = remedies(pumped_farm(small).watering({"low"}));
    const std::vector<Remedy> some = of_kind(found, RemedyKind::more_pressure);
    ASSERT_EQ(some.size(), 1U);
    EXPECT_EQ(std::ranges::count(some[0].passed, Limit::power, &Margin::limit), was_over ? 0 : 1);
  }
}

TEST(Remedies, SentenceSaysWhatIsDoneAndWhatItBuys) {
  const Layout layout = sample_layout({sample_row("row 1", 10)}, "Plover Flat", 28 * psi);
  const Remedies found = remedies(layout);
  const Solution before = solve(layout);
  const Setting setting = set_for_rated(layout);
  const std::vector<Remedy> some = of_kind(found, RemedyKind::more_pressure);
  ASSERT_EQ(some.size(), 1U);
  const int was = static_cast<int>(100 * (weakest_outlet(before)->pressure / (25 * psi)));
  EXPECT_EQ(describe(some[0], found.before),
            "Hold " + one_decimal(setting.pressure / psi) +
                " psi at the supply: no outlet is below rated, the weakest goes from " +
                std::to_string(was) + " % to 100 % of its rated pressure; " +
                one_decimal(setting.solution.inflow() / gpm) + " instead of " +
                one_decimal(before.inflow() / gpm) + " gal/min.");
}

/// What is told of each is true of the layout that comes with it.
void expect_true(const Layout& layout, const Remedies& found) {
  const Check before = check(solve(layout));
  EXPECT_EQ(found.before.below_rated, static_cast<int>(before.below_rated.size()));
  for (const Remedy& remedy : found.ranked) {
    SCOPED_TRACE(describe(remedy, found.before));
    const Solution again = solve(remedy.solution.layout());
    const Check after = check(again);
    EXPECT_EQ(remedy.after.below_rated, static_cast<int>(after.below_rated.size()));
    EXPECT_EQ(remedy.cures, remedy.passed.empty());
    EXPECT_TRUE(!remedy.cures || after.every_outlet_serves());
    EXPECT_EQ(remedy.solution.layout().faults().size(),
              remedy.kind == RemedyKind::more_pressure ? remedy.solution.layout().faults().size()
                                                       : layout.faults().size());
    EXPECT_TRUE(remedy.cures || remedy.after.below_rated < found.before.below_rated ||
                *remedy.after.lowest_share > *found.before.lowest_share);
  }
  expect_ranked(found);
}

constexpr std::uint64_t random_farms = 400;

TEST(Remedies, AreTrueOnRandomFarms) {
  int told = 0;
  RemedyOptions options = with_prices();
  options.sizes_up = 1;
  options.outlet_step = 0.1;
  for (std::uint64_t seed = 0; seed < random_farms; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Mix small{.most_lines = 8, .most_outlets = 12, .farm = true};
    const Layout farm =
        seed % 4 == 0 ? random_looped(seed, {.parts = small}) : random_layout(seed, small);
    const Remedies found = remedies(farm, options);
    expect_true(farm, found);
    told += static_cast<int>(found.ranked.size());
  }
  EXPECT_GT(told, 100);
}

TEST(Remedies, DoNotDependOnThreads) {
  const auto of = [](int threads) {
    return remedies(slow_farm(), with_prices(), {.threads = threads});
  };
  const Remedies one = of(1);
  const Remedies other = of(5);
  ASSERT_EQ(one.ranked.size(), other.ranked.size());
  for (std::size_t i = 0; i < one.ranked.size(); ++i)
    EXPECT_EQ(describe(one.ranked[i], one.before), describe(other.ranked[i], other.before));
}

TEST(Remedies, RefuseOptionsOutOfRange) {
  const auto refused = [](const RemedyOptions& options) {
    return refusal([&] { remedies(slow_farm(), options); });
  };
  EXPECT_THAT(refused({.sizes_up = 0}), HasSubstr("sizes_up: is 0, must be from 1 to 20"));
  EXPECT_THAT(refused({.most_outlets_fewer = 1.5}), HasSubstr("most_outlets_fewer: is 1.5"));
  EXPECT_THAT(refused({.outlet_step = 0}), HasSubstr("outlet_step: is 0"));
  EXPECT_THAT(refused({.least_outlet = std::numeric_limits<double>::quiet_NaN()}),
              HasSubstr("least_outlet: is nan"));
  EXPECT_THAT(refused({.outlet_price = -1}), HasSubstr("outlet_price: is -1"));
  EXPECT_THAT(refused({.pipes = {{Pipe{}}}}), HasSubstr("pipes, 1.pipe.inside_diameter"));
}

}  // namespace
}  // namespace hydro
