// Where to feed a row from: against what handbooks and papers say of uniform slopes, rows described
// from their other end, and reading every place by hand.
#include "hydro/what_ifs/inlet_position.hpp"

#include "hydro/physics/friction.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using units::m;

Layout on_held_pressure(const Line& line, const Pressure& held = 300 * kPa) {
  return Layout(Supply{.pressure = held}, {line});
}

/// Outlets that let out the same whatever the pressure here.
Line even_flow_row(const Pipe& pipe, int count, const Length& spacing, double slope) {
  return {.name = "row",
          .pipe = pipe,
          .outlet = Outlet{.flow = 50 * lph,
                           .compensating = Compensating{.low = 10 * kPa, .high = 2000 * kPa}},
          .count = count,
          .spacing = spacing,
          .ground_rise = slope * static_cast<double>(count) * spacing};
}

/// Lowest pressure of a part [kPa]; none: there is no such part.
std::optional<double> lowest_kpa(const Solution& solution, const std::string& part) {
  for (const LineSolution& line : solution.lines())
    if (line.name == part) return std::ranges::min(line.pressure.si()) / 1000;
  return std::nullopt;
}

// G. Baiamonte, Agricultural Water Management 191 (2017) 173-183, abstract: on an even slope a pair
// of drip laterals of optimal length has its manifold at 24 % of the whole length, from the upper
// end. Optimal (his earlier papers, from memory; it gives 0.240 with Blasius's exponent): the lower
// lateral ends with the pressure it begins with. His outlets all let out the same. Half a digit, and
// half the distance of two places.
TEST(InletPosition, OnAnEvenSlopeIsThatOfAPairOfOptimalLength) {
  constexpr int count = 200;
  const Pipe pipe{.inside_diameter = 40 * mm, .roughness = 0 * mm};
  const Line lower = even_flow_row(pipe, 152, 1 * m, 0);
  const Solution level = solve(on_held_pressure(lower));
  const Length friction =
      head(level.line("row").pressure.front() - level.line("row").pressure.back(),
           level.water().density);
  const double slope = friction / (151 * m);
  const Line row = even_flow_row(pipe, count, 1 * m, -slope);
  const InletPosition best = inlet_position(on_held_pressure(row), "row").best;
  EXPECT_NEAR((best.place / m - 1) / (count - 1), 0.24, 0.005 + 0.25 / count);
}

// G. P. Merkley and R. G. Allen, Sprinkle and Trickle Irrigation Lectures, Utah State University,
// lecture 22, eqs. 394 to 396: the manifold is best where the least pressures of the upper and the
// lower lateral are the same. So the upper one has more of it at the place before the best, and
// less at the one after it.
TEST(InletPosition, OnAnEvenSlopeBothPartsHaveTheSameLowestPressure) {
  for (const double slope : {-0.03, -0.01, -0.004, 0.004, 0.01, 0.03})
    for (const bool is_even : {true, false}) {
      const Pipe pipe{.inside_diameter = 35 * mm, .hazen_williams = 150};
      Line row = even_flow_row(pipe, 80, 1 * m, slope);
      if (!is_even) row.outlet = Outlet{.flow = 100 * lph, .at = 200 * kPa};
      const Layout layout = on_held_pressure(row);
      const InletPositions found = inlet_position(layout, "row");
      const auto near_less_far = [&](const Length& place) {
        const Solution solution = solve(with_inlet_at(layout, "row", place));
        return lowest_kpa(solution, "row, near part").value() -
               lowest_kpa(solution, "row, far part").value();
      };
      if (found.best.place <= 2 * m || found.best.place >= 78 * m) continue;
      EXPECT_GT(near_less_far(found.best.place - 0.5 * m), 0) << slope;
      EXPECT_LT(near_less_far(found.best.place + 0.5 * m), 0) << slope;
    }
}

TEST(InletPosition, OnLevelGroundIsTheMiddle) {
  for (const InletGoal goal : {InletGoal::highest_lowest_pressure, InletGoal::least_variation}) {
    const auto best_ft = [&](int count) {
      const Layout layout = on_held_pressure(sample_row("row", count));
      return inlet_position(layout, "row", {.goal = goal}).best.place / ft;
    };
    EXPECT_NEAR(best_ft(10), 5.5 * 36, 1e-9);
    EXPECT_NEAR(best_ft(9), 5 * 36, 1e-9);
    EXPECT_NEAR(best_ft(1), goal == InletGoal::least_variation ? 0 : 36, 1e-9);
  }
}

/// Every kind of thing that a row can have.
Line rich_row() {
  Line row = sample_row("row", 6);
  const Pipe wide{.name = "wide", .inside_diameter = 2 * inch, .hazen_williams = 140};
  const Pipe middle{.name = "middle", .inside_diameter = 1.9 * inch, .hazen_williams = 145};
  row.reaches = {{wide, 100 * ft}, {middle, 160 * ft}};
  row.ground_rise.reset();
  row.elevations = {1 * ft, 4 * ft, 2 * ft, -3 * ft, 0 * ft, 5 * ft};
  row.connection_length = 0.5 * ft;
  return row;
}

// Fed at its last outlet, a row is the row described from there. What stands at the inlet stands
// in the feed: 1 mm of pipe, that takes less than 1e-3 kPa here.
TEST(InletPosition, AtTheFarEndIsTheRowTheOtherWayRound) {
  Line row = rich_row();
  row.connection_length.reset();  // of the outlet at the place, which the others do not pass
  const Layout fed = with_inlet_at(on_held_pressure(row), "row", row.whole_length());
  Line reversed = row;
  reversed.first_at = 0 * ft;
  reversed.reaches = {{row.pipe, 56 * ft}, {row.reaches[1].pipe, 116 * ft}};
  reversed.pipe = row.reaches[0].pipe;
  std::ranges::reverse(reversed.elevations);
  const Solution expected =
      solve(Layout(Supply{.pressure = 300 * kPa, .elevation = 0 * ft}, {reversed}));
  const Solution found = solve(fed);
  // The last outlet stands at the place and is the far part.
  const LineSolution& part = found.line("row, near part");
  ASSERT_EQ(part.pressure.size(), 5U);
  EXPECT_NEAR(
      found.line("row, far part").pressure[0] / kPa, expected.line("row").pressure[0] / kPa, 1e-3);
  for (std::size_t i = 0; i < 5; ++i)
    EXPECT_NEAR(part.pressure[i] / kPa, expected.line("row").pressure[i + 1] / kPa, 1e-3) << i;
}

TEST(InletPosition, AtTheInletIsTheRowAsItIs) {
  Line row = rich_row();
  row.loss_coefficient = 2;
  row.regulator = 250 * kPa;
  const Layout layout = on_held_pressure(row);
  const Solution expected = solve(layout);
  const Solution found = solve(with_inlet_at(layout, "row", 0 * ft));
  for (std::size_t i = 0; i < 6; ++i)
    EXPECT_NEAR(found.line("row, far part").pressure[i] / kPa,
                expected.line("row").pressure[i] / kPa,
                1e-3);
  const InletPositions all = inlet_position(layout, "row");
  EXPECT_EQ(all.present.place, Length{});
  EXPECT_EQ(all.present.lowest / kPa, lowest_kpa(found, "row, far part"));
}

TEST(InletPosition, LiesAsHighAsItsPlace) {
  const Line row = rich_row();
  const Layout layout = on_held_pressure(row);
  for (const double place_ft : {10., 100., 160., 216.}) {
    const Layout fed = with_inlet_at(layout, "row", place_ft * ft);
    EXPECT_NEAR(fed.inlet_elevation(fed.lines().size() - 1) / ft,
                layout.ground_elevation(0, place_ft * ft) / ft,
                1e-9)
        << place_ft;
  }
}

// Hilly ground, and outlets of two ratings: each place read by hand.
TEST(InletPosition, IsTheBestOfAllPlaces) {
  Line row = rich_row();
  std::vector<PlacedOutlet> outlets;
  for (int i = 1; i <= 6; ++i) {
    Outlet kind = row.kind_of(i);
    if (i > 4) kind.rated = 30 * psi;
    outlets.push_back({row.place_of(i), kind});
  }
  row.outlet.reset();
  row.count.reset();
  row.spacing.reset();
  row.outlets = outlets;
  const Layout layout = on_held_pressure(row, 45 * psi);
  for (const InletGoal goal : {InletGoal::highest_lowest_pressure, InletGoal::least_variation}) {
    const InletPositions found = inlet_position(layout, "row", {.goal = goal});
    ASSERT_EQ(found.all.size(), 12U);
    for (const InletPosition& it : found.all) {
      const Solution solution = solve(with_inlet_at(layout, "row", it.place));
      double lowest_share = 1e9, lowest = 1e9, highest = 0, sum = 0;
      for (const LineSolution& line : solution.lines())
        for (std::size_t i = 0; i < line.pressure.size(); ++i) {
          const double p = line.pressure[i] / psi;
          const Outlet& kind = solution.layout().line(line.name).kind_of(static_cast<int>(i) + 1);
          lowest_share = std::min(lowest_share, p / (kind.rated_pressure() / psi));
          lowest = std::min(lowest, p);
          highest = std::max(highest, p);
          sum += p;
        }
      EXPECT_NEAR(it.lowest / psi, lowest, 1e-9);
      EXPECT_NEAR(it.highest / psi, highest, 1e-9);
      EXPECT_NEAR(it.lowest_share, lowest_share, 1e-9);
      EXPECT_NEAR(it.variation, (highest - lowest) / (sum / 6), 1e-9);
      if (goal == InletGoal::least_variation)
        EXPECT_GE(it.variation, found.best.variation - 1e-9);
      else
        EXPECT_LE(it.lowest_share, found.best.lowest_share + 1e-9);
    }
  }
}

TEST(InletPosition, ThroughAFeedPipeIsNoFartherThanWithoutLoss) {
  const Layout layout = on_held_pressure(sample_row("row", 15), 40 * psi);
  const auto best = [&](std::optional<Pipe> feed_pipe) {
    return inlet_position(layout, "row", {.feed_pipe = feed_pipe}).best;
  };
  const auto of_bore = [](double bore_in) {
    return Pipe{.inside_diameter = bore_in * inch, .hazen_williams = 150};
  };
  const InletPosition without_loss = best({});
  EXPECT_EQ(best(of_bore(30)).place, without_loss.place);
  double before_ft = without_loss.place / ft;
  for (const double bore_in : {3., 2.2, 1.754, 1.}) {
    const InletPosition through = best(of_bore(bore_in));
    EXPECT_LE(through.place / ft, before_ft + 1e-9) << bore_in;
    EXPECT_LE(through.lowest_share, without_loss.lowest_share + 1e-9);
    before_ft = through.place / ft;
  }
  EXPECT_EQ(before_ft, 0);  // through 1 in it stays where it is
}

// No water comes up to any of its outlets: which is not even.
TEST(InletPosition, AWhollyDryRowIsNotEven) {
  Line row = sample_row("row", 6);
  row.ground_rise.reset();
  row.elevations.assign(6, 10 * m);
  const Layout layout(Supply{.pressure = 50 * kPa, .elevation = 0 * m}, {row});
  const InletPositions found = inlet_position(layout, "row", {.goal = InletGoal::least_variation});
  for (const InletPosition& it : found.all) {
    EXPECT_EQ(it.highest / kPa, 0);
    EXPECT_EQ(it.variation, std::numeric_limits<double>::infinity());
  }
  EXPECT_EQ(found.best.place, Length{});
}

TEST(InletPosition, LeavesTheRestOfTheFarmAsItIs) {
  const Layout farm =
      ouzel_strips().watering({"rows 1 and 2"}).with_fault(clogged("row 1", 3, 0.5));
  const Layout fed = with_inlet_at(farm, "row 2", 180 * ft);
  EXPECT_EQ(fed.running_sets(), farm.running_sets());
  EXPECT_EQ(fed.faults(), farm.faults());
  EXPECT_EQ(fed.outlet_count(), farm.outlet_count());
  EXPECT_EQ(fed.line("row 2").loss_coefficient, 0.5);
  EXPECT_FALSE(fed.is_shut(fed.index_of("row 2, near part")));
  EXPECT_TRUE(fed.is_shut(fed.index_of("row 3")));
  const InletPositions found = inlet_position(farm, "row 2");
  EXPECT_GT(found.best.lowest, found.present.lowest);
}

TEST(InletPosition, IsTheSameForAnyNumberOfThreads) {
  const Layout layout = on_held_pressure(rich_row());
  const InletPositions alone = inlet_position(layout, "row", {}, {.threads = 1});
  const InletPositions together = inlet_position(layout, "row", {}, {.threads = 4});
  ASSERT_EQ(alone.all.size(), together.all.size());
  for (std::size_t i = 0; i < alone.all.size(); ++i)
    EXPECT_EQ(bits(alone.all[i].variation), bits(together.all[i].variation));
  EXPECT_EQ(alone.best.place, together.best.place);
}

TEST(InletPosition, RefusesWhatItCannotSplit) {
  Line branch = sample_row("branch", 2);
  branch.fed_by = "row";
  const Layout layout = sample_layout({sample_row("row", 4), branch});
  const auto refused =
      [&](const Layout& asked, const char* line, const InletPositionOptions& options) {
        return refusal([&] { inlet_position(asked, line, options); });
      };
  EXPECT_THAT(refused(layout, "row", {}), HasSubstr("feeds line \"branch\""));
  EXPECT_THAT(refused(layout.with_fault(capped("branch", 1)), "branch", {}),
              HasSubstr("has a fault; take it off first"));
  EXPECT_THAT(refused(layout, "branch", {.places = {80 * ft}}),
              HasSubstr("places: is 24.384 m, must be from 0 to 21.9456 m"));
  EXPECT_THAT(refused(pumped_farm().watering({"low"}), "row 3", {}),
              HasSubstr("to which no water comes"));
}

}  // namespace
}  // namespace hydro
