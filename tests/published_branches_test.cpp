// More branching lines, pipes side by side and whole laterals against numbers that others printed,
// through solve().
//
// Every check names its source and how it was read; "open notebook" is the public worked-solution
// notebook of the named textbook, whose stored outputs were read. A tolerance is half a unit of the
// last printed digit, and whatever else is named with its reason.
//
// Gravity: under given levels, with given friction factors, all velocities go with sqrt(g) and all
// heads stay; printed flows are converted from the gravity of their source. Factors of friction are
// Darcy's, four times Fanning's, which the British texts print.
#include "hydro/physics/friction.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

#include "accuracy.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

/// Gravity as the sources have it [m/s2].
constexpr double si_texts = 9.81;
constexpr double us_texts = 32.2 * 0.3048;

Supply tank(const Length& level) {
  return {.pressure = pressure(level, properties({}).density)};
}

/// A line with an open end that loses nothing: the pressure that it needs is below 2 Pa up to
/// 1 m3/s.
Line open_ended(Line line) {
  line.outlet = {.flow = 3e6 * lph, .at = 1 * units::Pa};
  line.count = 1;
  line.first_at = line.length;
  return line;
}

/// A hole of this diameter, 11.79 d^2 sqrt(h) (gal/min, in, ft): coefficient of discharge 0.60.
Outlet hole(const Length& diameter) {
  return {.rated = tank(1 * ft).pressure, .nozzle = diameter, .discharge_coefficient = 0.60};
}

struct PrintedInflow {
  std::string line;
  double printed;
  double half_digit;
};

/// Lines between open levels, and what is printed to flow into some of them.
struct Branches {
  std::string source;
  Supply supply;
  std::vector<Line> lines;
  Water water;
  Unit<Flow> unit;
  std::vector<PrintedInflow> inflows;
  double gravity_was;  // [m/s2]
  double explained;    // further difference [-]: the reason stands at the case
};

Branches between_three_levels() {
  const Pipe pipe{.inside_diameter = 1 * ft, .darcy_factor = 0.02};
  // B. R. Munson, D. F. Young and T. H. Okiishi, Fundamentals of Fluid Mechanics, example 8.14,
  // p. 462, open notebook: from 100 ft through 1000 ft, then through 500 ft to 20 ft and through
  // 400 ft to the datum. The source writes the 80 ft down to B as 258 = V1^2 + 0.5 V2^2, for 257.6:
  // that is 80.12 ft, on which the small flow to B hangs (2.23 with 80 ft).
  return {.source = "Munson 8.14",
          .supply = {.pressure = 0 * psi, .elevation = 100 * ft},
          .lines = {{.name = "from A", .pipe = pipe, .length = 1000 * ft},
                    open_ended({.name = "to B",
                                .fed_by = "from A",
                                .pipe = pipe,
                                .length = 500 * ft,
                                .ground_rise = -258 * 20 / (2 * 32.2) * ft}),
                    open_ended({.name = "to C",
                                .fed_by = "from A",
                                .pipe = pipe,
                                .length = 400 * ft,
                                .ground_rise = -100 * ft})},
          .water = {},
          .unit = ft3_per_s,
          .inflows = {{"from A", 12.5, 0.05}, {"to B", 2.26, 0.005}, {"to C", 10.3, 0.05}},
          .gravity_was = us_texts,
          .explained = 0};
}

Branches three_rough_pipes_side_by_side() {
  const auto pipe = [](const char* name, double bore_cm, double lengths, double roughness) {
    const Length bore = bore_cm * cm;
    return open_ended({.name = name,
                       .pipe = {.inside_diameter = bore, .roughness = roughness * bore},
                       .length = lengths * bore});
  };
  // F. M. White, Fluid Mechanics, example 6.18, worked solution read in the text (holooly.com):
  // 20.3 m over three pipes of 1250, 2500 and 2000 bores. The bores follow from its flows and
  // velocities, the roughness from its factors of fully rough walls (0.0262, 0.0234 and 0.0304).
  // Its last factors, 0.0267, 0.0246 and 0.0313, are rounded to 0.2 %: 0.1 % of a flow.
  return {.source = "White 6.18",
          .supply = tank(20.3 * units::m),
          .lines = {pipe("first", 8, 1250, 0.003),
                    pipe("second", 6, 2500, 0.002),
                    pipe("third", 4, 2000, 0.005)},
          .water = {.kinematic_viscosity = 1.02 * mm2_per_s},
          .unit = m3_per_h,
          .inflows = {{"first", 62.5, 0.05}, {"second", 25.9, 0.05}, {"third", 11.4, 0.05}},
          .gravity_was = si_texts,
          .explained = 0.001};
}

Branches two_pipes_side_by_side() {
  const auto pipe = [](const char* name, const Length& bore) {
    return open_ended({.name = name,
                       .pipe = {.inside_diameter = bore, .darcy_factor = 4 * 0.008},
                       .length = 100 * units::m,
                       .loss_coefficient = 1.5});
  };
  // J. F. Douglas and others, Fluid Mechanics (5th ed., 2005), example 14.3, p. 473, open notebook:
  // 10 m between two levels, Fanning 0.008, 1.5 velocity heads at the ends of each pipe.
  return {.source = "Douglas 14.3",
          .supply = tank(10 * units::m),
          .lines = {pipe("narrow", 50 * mm), pipe("wide", 100 * mm)},
          .water = {},
          .unit = m3_per_s,
          .inflows = {{"narrow", 0.0034, 0.00005}, {"wide", 0.0190, 0.00005}},
          .gravity_was = si_texts,
          .explained = 0};
}

TEST(PublishedBranches, FlowsBetweenLevels) {
  for (const Branches& one :
       {between_three_levels(), three_rough_pipes_side_by_side(), two_pipes_side_by_side()}) {
    const Solution solution = solve(Layout(one.supply, one.lines, one.water));
    const double share = std::sqrt(gravity / one.gravity_was);
    for (const PrintedInflow& inflow : one.inflows) {
      EXPECT_NEAR(record(Accuracy::branches,
                         solution.line(inflow.line).inflow / one.unit,
                         inflow.printed * share,
                         inflow.half_digit * share),
                  inflow.printed * share,
                  inflow.half_digit * share + one.explained * inflow.printed)
          << one.source << ", " << inflow.line;
    }
  }
}

// J. Lal, Hydraulics (2nd ed., 1959), example 5.17, p. 160, open notebook: from 100 ft to 70 and
// 50 ft by way of D at 80 ft, Fanning 0.007. The source loses 28 + 1 velocity heads up to D, and
// from there on 56 - 1 and 42 - 1, taking the pressure in the pipe at D for the head: so it is
// here. Its first velocity is found by trial, to 4.7 ft/s: half a digit is 2.1 % of the 10 ft that
// are lost to D, 0.2 ft of the pressure there, and so 0.5 % and 0.26 % of the other velocities.
TEST(PublishedBranches, PressureWhereThreePipesMeet) {
  constexpr double darcy = 4 * 0.007;
  const auto onward =
      [](const char* name, const Length& length, const Length& bore, double heads, double level) {
        return open_ended({.name = name,
                           .fed_by = "AD",
                           .pipe = {.inside_diameter = bore, .darcy_factor = heads * bore / length},
                           .length = length,
                           .ground_rise = (level - 80) * ft});
      };
  const Solution solution =
      solve(Layout({.pressure = 0 * psi, .elevation = 100 * ft},
                   {{.name = "AD",
                     .pipe = {.inside_diameter = 2 * ft, .darcy_factor = darcy},
                     .length = 2000 * ft,
                     .ground_rise = -20 * ft,
                     .loss_coefficient = 1},
                    onward("DB", 3000 * ft, 1.5 * ft, 55, 70),
                    onward("DC", 1500 * ft, 1 * ft, 41, 50)}));
  const auto velocity_ft_per_s = [&](const char* line) {
    return solution.line(line).inlet_velocity / ft_per_s * std::sqrt(us_texts / gravity);
  };
  const auto expect_velocity = [&](const char* line, double printed, double half, double more) {
    EXPECT_NEAR(record(Accuracy::branches, velocity_ft_per_s(line), printed, half),
                printed,
                half + more * printed);
  };
  expect_velocity("AD", 4.7, 0.05, 0);
  expect_velocity("DB", 4.84, 0.005, 0.005);
  expect_velocity("DC", 7.93, 0.005, 0.0026);
  const Length head_at_D = head(solution.line("AD").end_pressure, solution.water().density);
  EXPECT_NEAR(head_at_D / ft, 10.05, 0.2);
}

/// A pipe of which the last stretch is doubled, or is not: what it carries under this head.
Flow carried(
    const Pipe& pipe, const Length& single, const Length& rest, bool doubled, const Length& level) {
  std::vector<Line> lines{
      {.name = "single", .pipe = pipe, .length = single},
      open_ended({.name = "rest", .fed_by = "single", .pipe = pipe, .length = rest})};
  if (doubled) {
    lines.push_back(lines.back());
    lines.back().name = "beside it";
  }
  return solve(Layout(tank(level), std::move(lines))).inflow();
}

// Lal, example 5.16, p. 157, open notebook: a second pipe beside half of 5280 ft of 2 ft under
// 100 ft, Fanning 0.01, carries 26.5 % more.
TEST(PublishedBranches, HalfOfALineDoubled) {
  const Pipe pipe{.inside_diameter = 2 * ft, .darcy_factor = 4 * 0.01};
  const auto flow = [&](bool doubled) {
    return carried(pipe, 2640 * ft, 2640 * ft, doubled, 100 * ft);
  };
  EXPECT_NEAR((flow(true) / flow(false) - 1) * 100, 26.5, 0.05);
}

// J. K. Vennard, Elementary Fluid Mechanics (4th ed., 1961), example 9.16, p. 327, open notebook: a
// 12 in line carries 5 ft3/s and loses 70 ft over 5000 ft; doubled over 2000 ft it carries 1.0
// ft3/s more, 20 %. The loss goes with Q^1.85; C is the one that loses the 70 ft.
TEST(PublishedBranches, LineDoubledInPart) {
  const auto pipe = [](double c) {
    return Pipe{.inside_diameter = 12 * inch, .hazen_williams = c};
  };
  const Length at_100 = friction_loss(pipe(100), 5000 * ft, 5 * ft3_per_s, properties({}));
  const double c = 100 * std::pow(at_100 / (70 * ft), 1 / 1.852);
  const auto flow = [&](bool doubled) {
    return carried(pipe(c), 3000 * ft, 2000 * ft, doubled, 70 * ft) / ft3_per_s;
  };
  EXPECT_NEAR(flow(false), 5, 5e-5);
  EXPECT_NEAR(flow(true) - flow(false), 1.0, 0.05);
  EXPECT_NEAR((flow(true) / flow(false) - 1) * 100, 20, 0.5);
}

// Civil engineering board review, hydraulics, pipes in parallel, read in the text
// (ceboardexamgenerator.com): 0.120 m3/s part to 0.080 and 0.040 in pipes of one bore and factor,
// 100 and 400 m long.
TEST(PublishedBranches, PartingByLength) {
  const auto pipe = [](const char* name, const Length& length) {
    return open_ended({.name = name,
                       .pipe = {.inside_diameter = 200 * mm, .darcy_factor = 0.02},
                       .length = length});
  };
  const Solution solution = solve(
      Layout(tank(10 * units::m), {pipe("short", 100 * units::m), pipe("long", 400 * units::m)}));
  EXPECT_NEAR(solution.line("short").inflow / solution.inflow() * 0.120, 0.080, 0.0005);
  EXPECT_NEAR(solution.line("long").inflow / solution.inflow() * 0.120, 0.040, 0.0005);
}

// K. Subramanya, 1000 Solved Problems in Fluid Mechanics, example 11.4, p. 239, open notebook:
// pipes of 1800 m x 50 cm, 1200 m x 40 cm and 600 m x 30 cm side by side carry as much as 377.37 m
// of 50 cm, all of one factor. Its three roots are rounded: 0.01 %.
TEST(PublishedBranches, OnePipeInPlaceOfThreeSideBySide) {
  const auto pipe = [](const Length& bore) {
    return Pipe{.inside_diameter = bore, .darcy_factor = 0.02};
  };
  const auto branch = [&](const char* name, const Length& length, const Length& bore) {
    return open_ended({.name = name, .pipe = pipe(bore), .length = length});
  };
  const Length level = 10 * units::m;
  const Solution solution = solve(Layout(tank(level),
                                         {branch("a", 1800 * units::m, 50 * cm),
                                          branch("b", 1200 * units::m, 40 * cm),
                                          branch("c", 600 * units::m, 30 * cm)}));
  const Length over_a_metre =
      friction_loss(pipe(50 * cm), 1 * units::m, solution.inflow(), solution.water());
  EXPECT_NEAR(level / over_a_metre, 377.37, 0.005 + 377.37 * 0.0001);
}

// University of Minnesota Onsite Sewage Treatment Program, non-level pressure distribution
// worksheet, read in the text of a filled-in sheet (publicinfo.ci.orono.mn.us): laterals at 5.0 and
// 3.9 ft, 1.0 ft of head at the upper, so 2.1 ft at the lower; their holes of 3/16 in let out 0.42
// and 0.60 gal/min. The flows come from a table whose column of 3/16 in stands 1.3 % above the one
// of 1/4 in times (3/4)^2.
TEST(PublishedLaterals, TwoOnASlope) {
  const auto lateral = [](const char* name, const Length& rise) {
    return Line{.name = name,
                .pipe = {.inside_diameter = 2 * inch, .hazen_williams = 150},
                .outlet = hole(0.1875 * inch),
                .count = 1,
                .first_at = 1 * ft,
                .ground_rise = rise};
  };
  Supply supply = tank(1.0 * ft);
  supply.elevation = 5.0 * ft;
  const Solution solution =
      solve(Layout(supply, {lateral("upper", 0 * ft), lateral("lower", (3.9 - 5.0) * ft)}));
  const Pressure lower = solution.line("lower").pressure.front();
  EXPECT_NEAR(head(lower, solution.water().density) / ft, 2.1, 0.05);
  EXPECT_NEAR(solution.line("upper").flow.front() / gpm, 0.42, 0.005 + 0.42 * 0.013);
  EXPECT_NEAR(solution.line("lower").flow.front() / gpm, 0.60, 0.005 + 0.60 * 0.013);
}

/// The most holes of a lateral with a closed end, the first hole at the inlet, of which the first
/// lets out at most 10 % more than the last where that has this head. The head at the last rises
/// with that at the supply: so 1.1^2 times the head at the supply must leave it.
int most_holes(const Pipe& pipe,
               const Length& diameter,
               const Length& spacing,
               const Length& last_head) {
  constexpr double most = 1.10;
  std::vector<int> counts(100);
  std::iota(counts.begin(), counts.end(), 1);
  const auto is_even = [&](int count) {
    const Line lateral{.name = "lateral",
                       .pipe = pipe,
                       .outlet = hole(diameter),
                       .count = count,
                       .spacing = spacing,
                       .first_at = 0 * ft,
                       .length = static_cast<double>(count) * spacing};
    const Solution solution = solve(Layout(tank(most * most * last_head), {lateral}));
    return solution.line("lateral").pressure.back() >= tank(last_head).pressure;
  };
  return *std::partition_point(counts.begin(), counts.end(), is_even) - 1;
}

/// Schedule 40 plastic pipe, 1, 1-1/4, 1-1/2 and 2 in: outside diameter less two least walls.
const std::vector<Length>& schedule_40_bores() {
  static const std::vector<Length> bores{1.049 * inch, 1.380 * inch, 1.610 * inch, 2.067 * inch};
  return bores;
}

/// A row of a table of laterals: hole and spacing, then one entry for each bore from 1 in on.
struct LateralRow {
  double hole_in;
  double spacing_ft;
  std::vector<double> printed;  // 0: not readable
};

// University of Minnesota Onsite Sewage Treatment Program, pressure distribution system design
// sheet (10/25/04), figures E-4 and E-5, read in the text of a scan and in others beside it
// (publicinfo.ci.orono.mn.us): the most holes of a lateral for less than 10 % difference in
// discharge. It names neither C, bores nor head. Read out of it: C 130, as in the programme's table
// of friction, schedule 40 and 2 ft at the last hole. Counts are whole: one hole either way.
TEST(PublishedLaterals, MostHolesOfTheDesignSheet) {
  const std::vector<LateralRow> table{{1. / 4, 2.5, {8, 14, 18, 28}},
                                      {1. / 4, 3.0, {8, 13, 17, 26}},
                                      {1. / 4, 3.3, {7, 12, 16, 25}},
                                      {1. / 4, 4.0, {7, 11, 15, 23}},
                                      {1. / 4, 5.0, {6, 10, 14, 22}},
                                      {3. / 16, 2.5, {12, 19, 25, 39}},
                                      {3. / 16, 3.0, {11, 18, 24, 37}},
                                      {3. / 16, 3.3, {10, 17, 23, 36}},
                                      {3. / 16, 4.0, {10, 16, 21, 33}},
                                      {3. / 16, 5.0, {9, 15, 20, 31}}};
  for (const LateralRow& row : table) {
    for (std::size_t i = 0; i < row.printed.size(); ++i) {
      const Pipe pipe{.inside_diameter = schedule_40_bores()[i], .hazen_williams = 130};
      EXPECT_NEAR(
          most_holes(pipe, row.hole_in * inch, row.spacing_ft * ft, 2 * ft), row.printed[i], 1)
          << row.hole_in << " in every " << row.spacing_ft << " ft in "
          << pipe.inside_diameter / inch << " in";
    }
  }
}

// City code of Ramsey (Minnesota), section 830, table I, read in the text of a scan
// (weblink.cityoframsey.com): the longest laterals of 1, 1-1/4 and 1-1/2 in [ft]. It names neither
// C nor the head: with C 150, schedule 40 and 2.5 ft at the last hole, as for table B-1 of the
// sewage disposal code, no length is more than one spacing off, and whole feet are printed.
TEST(PublishedLaterals, LengthsOfACityCode) {
  const std::vector<LateralRow> table{{3. / 16, 2.5, {34, 52, 70}},
                                      {3. / 16, 3.0, {36, 0, 75}},
                                      {7. / 32, 2.5, {30, 45, 57}},
                                      {7. / 32, 3.0, {33, 51, 63}},
                                      {1. / 4, 2.5, {25, 38, 50}},
                                      {1. / 4, 3.0, {27, 42, 54}}};
  for (const LateralRow& row : table) {
    for (std::size_t i = 0; i < row.printed.size(); ++i) {
      if (row.printed[i] == 0) continue;
      const Pipe pipe{.inside_diameter = schedule_40_bores()[i], .hazen_williams = 150};
      const int holes = most_holes(pipe, row.hole_in * inch, row.spacing_ft * ft, 2.5 * ft);
      EXPECT_NEAR(holes * row.spacing_ft, row.printed[i], row.spacing_ft + 0.5)
          << row.hole_in << " in every " << row.spacing_ft << " ft in "
          << pipe.inside_diameter / inch << " in";
    }
  }
}

}  // namespace
}  // namespace hydro
