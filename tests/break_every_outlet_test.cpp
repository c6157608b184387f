// break_every_outlet_test.cpp: every outlet broken in turn is the same as one broken after another by
// hand, and keeps the laws of water.
#include "hydro/what_ifs/break_every_outlet.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/solver/settled_layout.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/count_breaks.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "ouzel_strips.hpp"
#include "random_layout.hpp"
#include "random_looped.hpp"
#include "random_pumped.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <hwy/targets.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr Mix small{.most_lines = 4, .most_outlets = 8};

/// Rows 1 and 2, every head of which turns.
Layout two_rows() {
  return ouzel_strips().watering({"rows 1 and 2"});
}

/// Trees, farms with pumps, and lines that join, all small.
std::vector<Layout> many_layouts() {
  Mix farm = small;
  farm.farm = true;
  LoopedMix looped;
  looped.parts.most_lines = 5;
  looped.parts.most_outlets = 6;
  std::vector<Layout> layouts{two_rows(), with_all_states()};
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    layouts.push_back(random_layout(seed, small));
    layouts.push_back(random_layout(100 + seed, farm));
    layouts.push_back(random_looped(200 + seed, looped));
    if (seed <= 2) layouts.push_back(random_pumped(300 + seed));
  }
  return layouts;
}

const std::vector<Fault>& faults_of_outlets() {
  static const std::vector<Fault> faults{
      head_off("", 0),
      riser_sheared("", 0, 0 * ft, 2.0),
      nozzle_missing("", 0, 6 * mm),
      clogged("", 0, 0.6),
      worn("", 0, 0.25),
      capped("", 0),
      wrong_outlet("", 0, Outlet{.flow = 500 * lph, .at = 2 * bar, .minimum = 1 * bar}),
      regulator_stuck_open(""),
      regulator_stuck_shut("")};
  return faults;
}

using Places = std::set<std::pair<std::string, int>>;

template <class Finding>
Places places_of(const std::vector<Finding>& findings) {
  Places places;
  for (const Finding& finding : findings) places.emplace(finding.line, finding.outlet);
  return places;
}

Places without(Places places, const Places& others) {
  for (const auto& place : others) places.erase(place);
  return places;
}

Places out_of_work(const Solution& solution) {
  const Check found = check(solution);
  Places places = places_of(found.below_minimum);
  places.merge(places_of(found.dry));
  return places;
}

std::size_t size_of(int count) {
  return static_cast<std::size_t>(count);
}

/// As a person would find it, with the functions for one layout.
void expect_as_by_hand(const Breaks& all, std::size_t index) {
  const Break& it = all.breaks[index];
  const Fault fault = at_outlet(all.fault, it.line, it.outlet);
  SCOPED_TRACE(describe(fault, all.before.layout(), UnitSystem::us));
  const Solution after = solve(all.before.layout().with_fault(fault));
  const Comparison change = compare(all.before, after);
  // 1e-9 is what is asked of any method that finds all breaks at once.
  double most = std::abs(si(after.inflow())) + std::abs(si(change.escaping));
  double highest = 1;
  for (const LineSolution& line : after.lines())
    for (std::size_t i = 0; i < line.flow.size(); ++i) {
      most = std::max(most, si(line.flow[i]));
      highest = std::max(highest, std::abs(si(line.line_pressure[i])));
    }
  highest = std::max(highest, std::abs(si(after.supply_pressure())));
  EXPECT_NEAR(si(it.escaping), si(change.escaping), 1e-9 * most);
  EXPECT_NEAR(si(it.missing), si(change.missing), 1e-9 * most);
  EXPECT_NEAR(si(it.inflow), si(after.inflow()), 1e-9 * most);
  EXPECT_NEAR(si(it.supply_pressure), si(after.supply_pressure()), 1e-9 * highest);
  EXPECT_NEAR(si(it.gauge_reading),
              si(after.supply().gauge_reading.value_or(after.supply().source_pressure)),
              1e-9 * highest);

  const Places own{{it.line, it.outlet}};
  const Check found = check(after);
  const Check was = check(all.before);
  const Places below = without(places_of(change.newly_below_rated), own);
  const Places idle = without(without(out_of_work(after), out_of_work(all.before)), own);
  const Places dry = without(places_of(change.newly_dry), own);
  const Places above =
      without(without(places_of(found.above_maximum), places_of(was.above_maximum)), own);
  EXPECT_EQ(places_of(all.newly_below_rated(index)), below);
  EXPECT_EQ(places_of(all.newly_out_of_work(index)), idle);
  EXPECT_EQ(places_of(all.newly_dry(index)), dry);
  EXPECT_EQ(places_of(all.newly_above_maximum(index)), above);
  EXPECT_EQ(size_of(it.more_below_rated), below.size());
  EXPECT_EQ(size_of(it.more_out_of_work), idle.size());
  EXPECT_EQ(size_of(it.more_dry), dry.size());
  EXPECT_EQ(size_of(it.more_above_maximum), above.size());

  const auto weakest = weakest_outlet(after);
  const bool own_is_weakest = weakest && weakest->line == it.line && weakest->outlet == it.outlet;
  if (!own_is_weakest) {
    ASSERT_EQ(it.weakest.has_value(), weakest.has_value());
    if (weakest) {
      EXPECT_NEAR(si(it.weakest->pressure), si(weakest->pressure), 1e-9 * highest);
      EXPECT_NEAR(it.weakest->pressure / it.weakest->rated,
                  weakest->pressure / weakest->rated,
                  1e-9 * highest / si(weakest->rated));
    }
  }

  std::size_t cell = index * all.outlets.size();
  for (const LineSolution& line : after.lines())
    for (std::size_t i = 0; i < line.flow.size(); ++i, ++cell) {
      EXPECT_NEAR(si(all.pressure[cell]), si(line.pressure[i]), 1e-9 * highest);
      EXPECT_NEAR(si(all.flow[cell]), si(line.flow[i]), 1e-9 * most);
      const OutletCondition condition = all.conditions[cell];
      EXPECT_EQ(condition == OutletCondition::broken, line.state[i] == OutletState::broken);
      EXPECT_EQ(condition == OutletCondition::closed, line.state[i] == OutletState::closed);
      EXPECT_EQ(condition == OutletCondition::dry, line.state[i] == OutletState::dry);
    }
}

TEST(BreakEveryOutlet, IsTheSameAsOneByOne) {
  int solved = 0;
  for (const Layout& layout : many_layouts())
    for (const Fault& fault : faults_of_outlets()) {
      const Breaks all = break_every_outlet(layout, {fault, BreakDetail::profiles});
      EXPECT_EQ(all.breaks.size() + all.not_solved.size() + all.skipped.size(),
                size_of(layout.outlet_count()));
      EXPECT_THAT(all.not_solved, IsEmpty());
      EXPECT_EQ(all.pressure.size(), all.breaks.size() * all.outlets.size());
      for (std::size_t i = 0; i < all.breaks.size(); ++i, ++solved) expect_as_by_hand(all, i);
    }
  EXPECT_GT(solved, 1000) << "too few to say anything";
}

/// Skipped are those and only those that with_fault refuses, or that are shut.
TEST(BreakEveryOutlet, SkipsWhatCannotBreak) {
  for (const Layout& layout : many_layouts())
    for (const Fault& fault : faults_of_outlets()) {
      const Breaks all = break_every_outlet(layout, {fault, BreakDetail::counts});
      const Places skipped = places_of(all.skipped);
      for (const OutletNumber& it : all.outlets) {
        const bool is_refused =
            !refusal([&] { layout.with_fault(at_outlet(fault, it.line, it.outlet)); }).empty();
        const bool is_shut = layout.is_shut(layout.index_of(it.line));
        EXPECT_EQ(skipped.contains({it.line, it.outlet}), is_refused || is_shut)
            << it.line << ", outlet " << it.outlet;
      }
      for (const LeftOut& it : all.skipped) EXPECT_NE(it.why, "");
    }
}

/// What counts, row for row, whatever the threads.
TEST(BreakEveryOutlet, HasTheSameBitsWithAnyNumberOfThreads) {
  for (const Layout& layout : {two_rows(), with_all_states(), random_pumped(7)}) {
    const BreakOptions options{riser_sheared("", 0), BreakDetail::profiles};
    const Breaks one = break_every_outlet(layout, options, {.threads = 1});
    for (const int threads : {2, 3, 16}) {
      const Breaks more = break_every_outlet(layout, options, {.threads = threads});
      EXPECT_EQ(bits(more.pressure), bits(one.pressure));
      EXPECT_EQ(bits(more.flow), bits(one.flow));
      EXPECT_EQ(more.conditions, one.conditions);
      EXPECT_EQ(more.worst, one.worst);
      ASSERT_EQ(more.breaks.size(), one.breaks.size());
      for (std::size_t i = 0; i < one.breaks.size(); ++i) {
        EXPECT_EQ(more.breaks[i].line, one.breaks[i].line);
        EXPECT_EQ(more.breaks[i].outlet, one.breaks[i].outlet);
        EXPECT_EQ(bits(si(more.breaks[i].missing)), bits(si(one.breaks[i].missing)));
      }
    }
  }
}

/// On a tree with a held pressure more flow anywhere means no more pressure anywhere else; and less
/// flow no less.
TEST(BreakEveryOutlet, MovesAllPressuresOfATreeTheSameWay) {
  int rose = 0;
  int fell = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const Layout layout = random_layout(seed, small);
    for (const Fault& fault : {Fault(head_off("", 0)), Fault(capped("", 0))}) {
      const Breaks all = break_every_outlet(layout, {fault, BreakDetail::profiles});
      std::vector<double> pressure;
      std::vector<double> flow;
      double highest = si(*layout.supply().pressure);
      for (const LineSolution& line : all.before.lines()) {
        pressure.insert(pressure.end(), line.pressure.si().begin(), line.pressure.si().end());
        flow.insert(flow.end(), line.flow.si().begin(), line.flow.si().end());
        for (const double it : line.line_pressure.si()) highest = std::max(highest, std::abs(it));
      }
      for (std::size_t i = 0; i < all.breaks.size(); ++i) {
        const std::size_t row = i * all.outlets.size();
        const auto own = static_cast<std::size_t>(
            std::ranges::find(all.outlets, OutletNumber{all.breaks[i].line, all.breaks[i].outlet}) -
            all.outlets.begin());
        // A tall narrow riser may let out less when it stands open than its outlet asked of it.
        const double more = all.flow.si()[row + own] - flow[own];
        for (std::size_t j = 0; j < all.outlets.size(); ++j) {
          if (j == own) continue;
          const double gain = all.pressure.si()[row + j] - pressure[j];
          // The equations hold to 1e-12 of the heads at every place.
          const double least = 1e-9 * highest;
          if (more >= 0) {
            EXPECT_LE(gain, least) << "seed " << seed;
          }
          if (more <= 0) {
            EXPECT_GE(gain, -least) << "seed " << seed;
          }
          rose += gain > least ? 1 : 0;
          fell += gain < -least ? 1 : 0;
        }
      }
    }
  }
  EXPECT_GT(rose, 100);
  EXPECT_GT(fell, 100);
}

/// What the supplies give more is what escapes, less what the others miss and what came out of the
/// broken outlet while it was whole.
TEST(BreakEveryOutlet, BalancesTheFlows) {
  for (const Layout& layout : many_layouts()) {
    const Breaks all = break_every_outlet(layout, {head_off("", 0), BreakDetail::profiles});
    std::vector<double> before;
    double in_all = 0;
    for (const LineSolution& line : all.before.lines()) {
      before.insert(before.end(), line.flow.si().begin(), line.flow.si().end());
      for (const double flow : line.flow.si()) in_all += flow;
      for (const Opening& opening : line.openings) in_all += si(opening.flow);
    }
    for (std::size_t i = 0; i < all.breaks.size(); ++i) {
      const Break& it = all.breaks[i];
      const auto own = static_cast<std::size_t>(
          std::ranges::find(all.outlets, OutletNumber{it.line, it.outlet}) - all.outlets.begin());
      // Each of the many places of a layout may miss 1e-12 of the largest flow.
      EXPECT_NEAR(si(it.inflow - all.before.inflow()),
                  si(it.escaping - it.missing) - before[own],
                  1e-9 * (in_all + si(it.escaping)));
    }
  }
}

TEST(BreakEveryOutlet, SaysWhyItSkips) {
  Line low = sample_row("low", 4);
  low.riser = {.height = 4 * ft};
  Line cut = sample_row("cut", 3);
  Line shut = sample_row("shut", 2);
  shut.valve = Valve{.opening = ValveOpening::shut};
  const Layout layout = sample_layout({sample_main(), low, cut, shut})
                            .with_faults({line_cut("cut", 40 * ft), capped("cut", 1)});
  const Breaks all = break_every_outlet(layout);
  EXPECT_THAT(all.breaks, IsEmpty());
  EXPECT_EQ(all.worst, std::nullopt);
  EXPECT_EQ(all.rest_works, 0);
  ASSERT_THAT(all.skipped, SizeIs(9));
  EXPECT_THAT(all.skipped[0].why, HasSubstr("inside_diameter) is not known"));
  EXPECT_EQ(all.skipped[4].why, "has fault \"capped\" already");
  EXPECT_EQ(all.skipped[5].why, "no water comes to it");
  EXPECT_EQ(all.skipped[7].why, "its line is shut");
  EXPECT_EQ(break_every_outlet(layout, {regulator_stuck_shut("")}).skipped[0].why,
            "has no regulator of its own");
  EXPECT_THAT(break_every_outlet(layout, {nozzle_missing("", 0)}).skipped[0].why,
              HasSubstr("bore is not given, nor is the body_bore"));
}

TEST(BreakEveryOutlet, RefusesAFaultThatNoOutletCouldHave) {
  const auto says = [](const Fault& fault) {
    return refusal([&] { break_every_outlet(two_rows(), {fault}); });
  };
  EXPECT_EQ(says(end_open("row 1")), "fault: is \"end open\", which acts at no outlet");
  EXPECT_EQ(says(pump_worn(0.2)), "fault: is \"pump worn\", which acts at no outlet");
  EXPECT_THAT(says(clogged("", 0, 1.5)), HasSubstr("fault.share"));
  EXPECT_THAT(says(worn("", 0, std::nan(""))), HasSubstr("fault.share"));
  EXPECT_THAT(says(riser_sheared("", 0, -1 * ft)), HasSubstr("fault.stub"));
  EXPECT_THAT(says(wrong_outlet("", 0, Outlet{})), HasSubstr("fault.fitted"));
  EXPECT_EQ(says(riser_sheared("", 0, 3 * ft)), "");
}

TEST(BreakEveryOutlet, RefusesThreadsEvenWhenNothingBreaks) {
  const Layout one = sample_layout({sample_main()});
  EXPECT_THAT(refusal([&] { break_every_outlet(one, {}, {.threads = -1}); }),
              HasSubstr("threads: is -1"));
}

TEST(BreakEveryOutlet, KeepsNoMoreThanIsAsked) {
  const Breaks counts = break_every_outlet(two_rows(), {HeadOff{}, BreakDetail::counts});
  const Breaks conditions = break_every_outlet(two_rows());
  const Breaks profiles = break_every_outlet(two_rows(), {HeadOff{}, BreakDetail::profiles});
  const std::size_t outlets = conditions.outlets.size();
  ASSERT_EQ(outlets, 40U);
  EXPECT_THAT(conditions.breaks, SizeIs(20));
  EXPECT_THAT(counts.conditions, IsEmpty());
  EXPECT_THAT(conditions.conditions, SizeIs(20 * outlets));
  EXPECT_EQ(conditions.conditions, profiles.conditions);
  EXPECT_EQ(conditions.pressure.size(), 0U);
  EXPECT_EQ(profiles.pressure.size(), 20 * outlets);
  EXPECT_EQ(profiles.flow.size(), 20 * outlets);
  for (std::size_t i = 0; i < 20; ++i)
    EXPECT_EQ(counts.breaks[i].more_out_of_work, profiles.breaks[i].more_out_of_work);
  EXPECT_THAT(refusal([&] { static_cast<void>(counts.newly_dry(0)); }), HasSubstr("keep"));
  EXPECT_THAT(refusal([&] { static_cast<void>(profiles.newly_dry(20)); }),
              HasSubstr("break_index: is 20, must be below 20"));
}

// A cell is an outlet after a break: 10,001 x 10,001 of them are too many, counts are not.
TEST(BreakEveryOutlet, KeepsNoMoreThanMemoryHolds) {
  Line row = sample_row("row", 10'001);
  row.spacing = 1 * ft;
  const Layout many = sample_layout({row});
  for (const BreakDetail keep : {BreakDetail::conditions, BreakDetail::profiles})
    EXPECT_THAT(refusal([&] {
                  break_every_outlet(many, {clogged("", 0, 0.5), keep});
                }),
                HasSubstr("keep: asks for 100020001 cells (outlets after each break), must be at "
                          "most 100,000,000"));
  const Work stopped{.threads = 1, .progress = [](std::size_t, std::size_t) { return false; }};
  EXPECT_THROW(break_every_outlet(many, {clogged("", 0, 0.5), BreakDetail::counts}, stopped),
               Stopped);
}

TEST(BreakEveryOutlet, FindsTheWorst) {
  const Breaks all = break_every_outlet(two_rows(), {riser_sheared("", 0)});
  ASSERT_TRUE(all.worst);
  const Break& worst = all.breaks[*all.worst];
  int rest_works = 0;
  int rest_is_served = 0;
  for (const Break& it : all.breaks) {
    EXPECT_LE(it.more_out_of_work, worst.more_out_of_work);
    if (it.more_out_of_work == worst.more_out_of_work) {
      EXPECT_LE(it.more_below_rated, worst.more_below_rated);
      if (it.more_below_rated == worst.more_below_rated) {
        EXPECT_GE(it.weakest->pressure / it.weakest->rated,
                  worst.weakest->pressure / worst.weakest->rated);
      }
    }
    rest_works += it.more_out_of_work == 0 ? 1 : 0;
    rest_is_served += it.more_below_rated == 0 ? 1 : 0;
  }
  EXPECT_EQ(all.rest_works, rest_works);
  EXPECT_EQ(all.rest_is_served, rest_is_served);
}

TEST(BreakEveryOutlet, BreaksTheOnlyOutlet) {
  const Breaks all = break_every_outlet(sample_layout({sample_row("row 1", 1)}));
  ASSERT_THAT(all.breaks, SizeIs(1));
  EXPECT_EQ(all.breaks[0].weakest, std::nullopt);
  EXPECT_EQ(all.breaks[0].more_out_of_work, 0);
  EXPECT_EQ(all.rest_works, 1);
  EXPECT_GT(all.breaks[0].escaping, 10 * gpm);
}

TEST(BreakEveryOutlet, StopsWhenItIsTold) {
  const Work work{.progress = [](std::size_t, std::size_t) { return false; }};
  EXPECT_THROW(break_every_outlet(two_rows(), {}, work), Stopped);
}

/// Rows, each on a pipe of a main that is fed by a pump: stand-ins and offers are found for all.
Layout rows_on_a_main(int rows, int outlets, bool by_pump) {
  const Outlet head{.flow = 1.2 * gpm, .at = 30 * psi, .minimum = 27 * psi, .maximum = 45 * psi};
  std::vector<Line> lines;
  for (int i = 0; i < rows; ++i) {
    const std::string number = std::to_string(i);
    lines.push_back({.name = "main " + number,
                     .fed_by = i == 0 ? "" : "main " + std::to_string(i - 1),
                     .pipe = {.inside_diameter = 3.2 * inch, .hazen_williams = 140},
                     .length = 30 * ft,
                     .ground_rise = (i % 3 - 1) * ft});
    lines.push_back(
        {.name = "row " + number,
         .fed_by = "main " + number,
         .pipe = {.inside_diameter = 1.0 * inch, .hazen_williams = 150},
         .outlet = head,
         .count = outlets,
         .spacing = 6 * ft,
         .ground_rise = (i % 4) * ft,
         .riser = {.height = 1 * ft, .inside_diameter = 0.6 * inch, .hazen_williams = 150}});
  }
  Supply supply{.pressure = 40 * psi};
  if (by_pump) supply = {.pump = Pump{.points = {{50 * gpm, 105 * ft}, {400 * gpm, 80 * ft}}}};
  return Layout{supply, std::move(lines)};
}

void expect_equal(const Break& counted, const Break& whole, double inflow) {
  const auto near = [&](const auto& one, const auto& other, double scale) {
    EXPECT_NEAR(si(one), si(other), 1e-9 * scale) << whole.line << " " << whole.outlet;
  };
  EXPECT_EQ(counted.line, whole.line);
  EXPECT_EQ(counted.outlet, whole.outlet);
  near(counted.escaping, whole.escaping, inflow);
  near(counted.missing, whole.missing, inflow);
  near(counted.inflow, whole.inflow, inflow);
  near(counted.supply_pressure, whole.supply_pressure, si(10 * bar));
  near(counted.gauge_reading, whole.gauge_reading, si(10 * bar));
  EXPECT_EQ(counted.more_below_rated, whole.more_below_rated) << whole.line << " " << whole.outlet;
  EXPECT_EQ(counted.more_out_of_work, whole.more_out_of_work) << whole.line << " " << whole.outlet;
  EXPECT_EQ(counted.more_dry, whole.more_dry) << whole.line << " " << whole.outlet;
  EXPECT_EQ(counted.more_above_maximum, whole.more_above_maximum)
      << whole.line << " " << whole.outlet;
  ASSERT_EQ(counted.weakest.has_value(), whole.weakest.has_value());
  if (!whole.weakest) return;
  // Of two that are equally weak either may be named.
  near(counted.weakest->pressure / counted.weakest->rated * bar,
       whole.weakest->pressure / whole.weakest->rated * bar,
       si(1 * bar));
}

void expect_counts_as_of_whole(const Layout& layout, const Fault& fault) {
  const Breaks counted =
      break_every_outlet(layout, {.fault = fault, .keep = BreakDetail::counts}, {.threads = 2});
  const Breaks whole = break_every_outlet(layout, {.fault = fault}, {.threads = 1});
  ASSERT_EQ(counted.breaks.size(), whole.breaks.size());
  EXPECT_EQ(counted.not_solved.size(), whole.not_solved.size());
  const double inflow = std::max(si(whole.before.inflow()), 1e-9);
  for (std::size_t i = 0; i < whole.breaks.size(); ++i)
    expect_equal(counted.breaks[i], whole.breaks[i], inflow);
}

TEST(BreakEveryOutlet, CountsAloneAreThoseOfWholeSolutions) {
  for (const Layout& layout : many_layouts())
    for (const Fault& fault : faults_of_outlets()) expect_counts_as_of_whole(layout, fault);
  for (const bool by_pump : {false, true})
    for (const Fault& fault :
         {Fault{head_off("", 0)},
          Fault{capped("", 0)},
          Fault{clogged("", 0, 0.5)},
          Fault{wrong_outlet("", 0, Outlet{.flow = 60 * gpm, .at = 30 * psi})}})
      expect_counts_as_of_whole(rows_on_a_main(7, 40, by_pump), fault);
}

/// Idle lanes are others for each width.
TEST(BreakEveryOutlet, IsCountedAlikeWhateverTheWidthOfVectors) {
  for (std::int64_t targets = hwy::SupportedTargets(); targets != 0; targets &= targets - 1) {
    hwy::SetSupportedTargetsForTest(targets);
    hwy::GetChosenTarget().DeInit();
    expect_counts_as_of_whole(rows_on_a_main(4, 9, true), HeadOff{});
  }
  hwy::SetSupportedTargetsForTest(0);
  hwy::GetChosenTarget().DeInit();
}

/// Else the test above compares whole solutions with themselves.
TEST(BreakEveryOutlet, IsCountedWithoutWholeSolutionsWhereLawsAreSmooth) {
  for (const bool by_pump : {false, true}) {
    const Layout layout = rows_on_a_main(7, 40, by_pump);
    const Breaks breaks = break_every_outlet(layout);
    std::vector<OutletNumber> outlets;
    for (const Break& it : breaks.breaks) outlets.push_back({it.line, it.outlet});
    ASSERT_THAT(outlets, SizeIs(280));
    const std::vector<std::size_t> left = count_breaks(layout,
                                                       SettledLayout(layout),
                                                       HeadOff{},
                                                       outlets,
                                                       read_break(breaks.before),
                                                       breaks.conditions_before,
                                                       {},
                                                       [](std::size_t, const CountedBreak&) {});
    EXPECT_THAT(left, IsEmpty());
  }
}

}  // namespace
}  // namespace hydro
