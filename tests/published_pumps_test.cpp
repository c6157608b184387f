// Pumps and their suction against numbers that others printed.
//
// Every check names its source and how it was read. A tolerance is half a unit of the last printed
// digit, and whatever else is named with its reason. "Open solutions" are the public worked
// solutions of the named textbook, whose inputs were read.
#include "hydro/physics/friction.hpp"
#include "hydro/physics/operating_point.hpp"
#include "hydro/physics/supply_law.hpp"

#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "accuracy.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

/// The flow at which the supply's head meets static + loss * Q^2.
Flow met_flow(const Supply& supply, const Length& rise, const Length& loss, const Flow& at) {
  const SupplyLaw law(supply, properties({}));
  double low = 0, high = 100 * si(at);
  for (int step = 0; step < 100; ++step) {
    const double middle = (low + high) / 2;
    const double share = middle / si(at);
    (law.at(middle).head > si(rise) + si(loss) * share * share ? low : high) = middle;
  }
  return Flow::from_value(low);
}

// R. W. Fox and A. T. McDonald, Introduction to Fluid Mechanics, example 10.7: 1170 rpm, 25 ft at
// rest and 21.9 ft at 300 gal/min, to 1750 rpm. Printed (from memory) 449 gal/min, 55.9 ft at rest
// and 49.0 ft.
TEST(PublishedAffinity, FoxAndMcDonald) {
  const Pump pump{.points = {{0 * gpm, 25 * ft}, {300 * gpm, 21.9 * ft}},
                  .curve_speed = 1170 * rpm};
  const Flow flow = 300 * 1750.0 / 1170.0 * gpm;
  EXPECT_NEAR(flow / gpm, 449, 0.5);
  EXPECT_NEAR(pump_head(pump, 0 * gpm, 1750 * rpm) / ft, 55.9, 0.05);
  EXPECT_NEAR(pump_head(pump, flow, 1750 * rpm) / ft, 49.0, 0.05);
}

// Flow of Fluids, Technical Paper 410, example 7-33, open solutions: 126 ft and 400 gal/min at 3500
// rpm with 17.5 hp; at 1700 rpm 194 gal/min, 29.7 ft, 2.0 hp (the last two recomputed from the
// printed inputs, (1700/3500)^2 and ^3).
TEST(PublishedAffinity, TechnicalPaper410) {
  const double efficiency =
      400 * gpm / m3_per_s * 998.2 * gravity * (126 * ft / units::m) / (17.5 * hp / units::W);
  const Supply supply{.pump = Pump{.points = {{0 * gpm, 150 * ft}, {400 * gpm, 126 * ft}},
                                   .curve_speed = 3500 * rpm,
                                   .speed = 1700 * rpm,
                                   .least_flow = 100 * gpm,
                                   .most_flow = 600 * gpm,
                                   .efficiency = efficiency}};
  const OperatingPoint point =
      operating_point(supply, 194.28571 * gpm, {.density = 998.2 * kg_per_m3});
  EXPECT_NEAR(record(Accuracy::pumps, point.pumps[0].head / ft, 29.7, 0.05), 29.7, 0.05);
  EXPECT_NEAR(
      record(Accuracy::pumps, point.pumps[0].shaft_power.value() / hp, 2.0, 0.05), 2.0, 0.05);
}

struct PrintedPower {
  std::string source;
  Flow flow;
  Length head;
  double efficiency;
  Density density;
  Power printed;
  Power half_digit;
};

// Y. A. Cengel and J. M. Cimbala, Fluid Mechanics, example 14-2, open solutions (water of 998
// kg/m3, gravity 9.81); Purdue University practice problem "pump_06" (62.4 lb/ft3).
TEST(PublishedPower, AtTheShaft) {
  const double rounded_gravity = 9.81 / gravity;  // the texts' over ours
  const std::vector<PrintedPower> printed{
      {"Cengel and Cimbala, first",
       0.0233 * m3_per_s,
       7.3 * rounded_gravity * units::m,
       0.70,
       998 * kg_per_m3,
       2.37892 * kW,
       0.000005 * kW},
      {"Cengel and Cimbala, second",
       0.0233 * m3_per_s,
       21.9 * rounded_gravity * units::m,
       0.765,
       998 * kg_per_m3,
       6.53038 * kW,
       0.000005 * kW},
      {"Purdue, 2875 rpm", 252 * gpm, 138 * ft, 0.76, 62.4 * lb_per_ft3, 11.6 * hp, 0.05 * hp}};
  for (const PrintedPower& one : printed) {
    const Supply supply{.pump = Pump{.points = {{0 * gpm, 1.3 * one.head}, {one.flow, one.head}},
                                     .least_flow = 0 * gpm,
                                     .efficiency = one.efficiency}};
    const OperatingPoint point = operating_point(supply, one.flow, {.density = one.density});
    EXPECT_NEAR(record(Accuracy::pumps,
                       point.pumps[0].shaft_power.value() / hp,
                       one.printed / hp,
                       one.half_digit / hp),
                one.printed / hp,
                one.half_digit / hp)
        << one.source;
  }
}

// Cengel and Cimbala, problem on the matching of a pump and its pipe: H = 7.46 - 0.0453 Q^2 meets
// 3.52 + 0.0261 Q^2 (m, L/min). Printed (from memory) 7.43 L/min and 4.96 m.
TEST(PublishedOperatingPoint, CengelAndCimbala) {
  const Supply supply{
      .pump = Pump{.points = {{0 * lpm, 7.46 * units::m}, {10 * lpm, (7.46 - 4.53) * units::m}}}};
  const Flow flow = met_flow(supply, 3.52 * units::m, 0.0261 * units::m, 1 * lpm);
  EXPECT_NEAR(flow / lpm, 7.43, 0.005);
  EXPECT_NEAR(operating_point(supply, flow).pumps[0].head / units::m, 4.96, 0.005);
}

// Review problem 4.9.4 of a public course of fluid flow (reviewpe.com), read in the text: the table
// of two equal pumps in series and in parallel, from the single pump's points.
TEST(PublishedPairs, SeriesAndParallel) {
  const Pump pump{.points = {{0 * gpm, 100 * ft},
                             {110 * gpm, 90 * ft},
                             {180 * gpm, 80 * ft},
                             {250 * gpm, 60 * ft},
                             {300 * gpm, 40 * ft},
                             {340 * gpm, 20 * ft}}};
  struct Row {
    double flow, series, parallel;  // gal/min, ft; 0: not printed
  };
  const std::vector<Row> rows{{0, 200, 100},
                              {110, 180, 0},
                              {180, 160, 0},
                              {220, 0, 90},
                              {250, 120, 0},
                              {300, 80, 0},
                              {340, 40, 0},
                              {360, 0, 80},
                              {500, 0, 60},
                              {600, 0, 40}};
  Supply pair{.pump = pump, .second_pump = pump};
  constexpr double arithmetic = 1e-12;
  for (const Row& row : rows) {
    const auto head_ft = [&](PumpArrangement arrangement) {
      pair.arrangement = arrangement;
      return SupplyLaw(pair, properties({})).at(si(row.flow * gpm)).head * units::m / ft;
    };
    if (row.series > 0) {
      EXPECT_NEAR(record(Accuracy::pumps, head_ft(PumpArrangement::series), row.series, 0),
                  row.series,
                  200 * arithmetic)
          << row.flow;
    }
    if (row.parallel > 0) {
      EXPECT_NEAR(record(Accuracy::pumps, head_ft(PumpArrangement::parallel), row.parallel, 0),
                  row.parallel,
                  200 * arithmetic)
          << row.flow;
    }
  }
}

struct PrintedSuction {
  std::string source;
  Length altitude;
  Water water;
  Length lift;
  Length loss;
  double printed_ft;
  double half_digit_ft;
  double air_ft = 0;  // half a digit of the air that it is worked out from
};

/// A suction pipe that loses this head at 300 gal/min.
Suction suction_that_loses(const Length& loss, const Length& lift) {
  const Pipe pipe{.inside_diameter = 4 * inch, .darcy_factor = 0.02};
  const double one_metre = si(friction_loss(pipe, 1 * units::m, 300 * gpm, properties({})));
  return {.lift = lift, .pipe = pipe, .length = si(loss) / one_metre * units::m};
}

// L. Bachus and A. Custodio, Know and Understand Centrifugal Pumps, chapter 2, read in the text: a
// tank 6 ft over the pump at sea level with a vapour head of 0.839 ft, which is that of 70 degF,
// 33.9 + 6.0 - 0.839 - 2.0 - 2.0 = 35.061 with water of 62.4 lb/ft3, as 33.9 ft of air are; a tank
// 8 ft below it at 7,000 ft and 50 degF, 26.2 - 8.0 - 0.411 - 1 - 2 = 14.789 (recomputed). Both
// airs are printed to 0.1 ft.
// J. Elsey, column on NPSH, Pumps and Systems, August 2018, read in the text: 10 ft flooded,
// 68 degF, sea level, 3.2 ft lost: 40 ft.
// Best practice no. 25, example 5 (a trade paper), read in the text: 85 degF, 1,000 ft, 5 ft lost,
// 16 ft required, air 32.8 ft, vapour 1.38 ft: a lift of 10.42 ft (recomputed) leaves 16 ft. The air
// is printed to 0.1 ft.
TEST(PublishedSuction, NpshAvailable) {
  const std::vector<PrintedSuction> printed{
      {"flooded", 0 * ft, {70 * degF, 62.4 * lb_per_ft3}, -6 * ft, 4 * ft, 35.061, 0.0005, 0.05},
      {"lift on a mountain", 7000 * ft, {50 * degF}, 8 * ft, 3 * ft, 14.789, 0.0005, 0.05},
      {"ten feet flooded", 0 * ft, {68 * degF}, -10 * ft, 3.2 * ft, 40, 0.5},
      {"warm water", 1000 * ft, {85 * degF}, 10.42 * ft, 5 * ft, 16, 0.05}};
  for (const PrintedSuction& one : printed) {
    const Supply supply{.pump = Pump{.points = {{0 * gpm, 100 * ft}, {300 * gpm, 80 * ft}}},
                        .suction = suction_that_loses(one.loss, one.lift)};
    const OperatingPoint point =
        operating_point(supply, 300 * gpm, one.water, {.altitude = one.altitude});
    EXPECT_NEAR(point.suction_loss / ft, one.loss / ft, 1e-12) << one.source;
    EXPECT_NEAR(record(Accuracy::suction,
                       point.npsh_available.value() / ft,
                       one.printed_ft,
                       one.half_digit_ft),
                one.printed_ft,
                one.half_digit_ft + one.air_ft)
        << one.source;
  }
}

// Cengel and Cimbala, example 14-3, open solutions: a reservoir 4 ft over the pump, 10.5 ft of 4 in
// pipe with a roughness of 0.02 in, K 0.5 + 3 * 0.3 + 6. NPSH required as those who solved it read
// it from the maker's figure, 3.8, 4, 4.5, 6, 7.5 ft at 300, 400, ... 700 gal/min. Printed: the
// pump cavitates above some 600 gal/min at 25 degC, and at less in warmer water.
// The text takes off 0.05 of the velocity head for its profile, 0.2 ft here; 0.2 ft more is how
// finely that figure can be read. The two heads close by 4.6 ft for 100 gal/min: 9 gal/min.
TEST(PublishedSuction, WhereThePumpCavitates) {
  Pump pump{.points = {{0 * gpm, 100 * ft}, {700 * gpm, 60 * ft}}};
  const std::vector<double> required_ft{3.8, 4, 4.5, 6, 7.5};
  for (std::size_t i = 0; i < required_ft.size(); ++i)
    pump.npsh_required.push_back({(300 + 100 * static_cast<double>(i)) * gpm, required_ft[i] * ft});
  const Supply supply{
      .pump = pump,
      .suction = Suction{.lift = -4 * ft,
                         .pipe = Pipe{.inside_diameter = 4 * inch, .roughness = 0.02 * inch},
                         .length = 10.5 * ft,
                         .loss_coefficient = 0.5 + 3 * 0.3 + 6}};
  const auto cavitates_above = [&](const Temperature& temperature) {
    for (double flow = 300; flow < 700; flow += 0.5) {
      const OperatingPoint point =
          operating_point(supply, flow * gpm, {.temperature = temperature});
      if (*point.npsh_available < *point.pumps[0].npsh_required) return flow;
    }
    return 700.0;
  };
  EXPECT_NEAR(cavitates_above(25 * degC), 600, 9);
  EXPECT_LT(cavitates_above(60 * degC), cavitates_above(25 * degC) - 20);
}

// U.S. Standard Atmosphere, 1976, as printed in Water and Wastewater Engineering, Design Principles
// and Practice, table 3-7, read in the text: kPa at geometric altitudes z in m. The formula is one of
// the geopotential altitude, R z / (R + z), R = 6,356,766 m.
TEST(PublishedSuction, AirOverTheWater) {
  const std::vector<std::pair<double, double>> rows{
      {500, 95.46}, {1000, 89.88}, {1500, 84.56}, {2000, 79.50}, {2500, 74.69}, {3000, 70.12}};
  for (const auto& [altitude, printed] : rows) {
    const double geopotential = 6356766 * altitude / (6356766 + altitude);
    const double air = atmospheric_pressure({.altitude = geopotential * units::m}) / kPa;
    EXPECT_NEAR(record(Accuracy::suction, air, printed, 0.005), printed, 0.005) << altitude;
  }
}

}  // namespace
}  // namespace hydro
