// supply_drawing_test.cpp: the picture of what the supply gives against what the lines ask shows both curves, where they
// meet and where they met before, on one scale, and tells the pump's figures in words.
#include "hydro/text/supply_drawing.hpp"

#include "hydro/quantities/error.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <set>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "picture.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

constexpr double rounding = 0.05;  // places have one decimal [px]

Pump pump() {
  return {.points = {{0 * gpm, 150 * ft}, {130 * gpm, 107.75 * ft}},
          .curve_speed = 2600 * rpm,
          .speed = 1950 * rpm,
          .least_flow = 20 * gpm,
          .most_flow = 130 * gpm,
          .npsh_required = {{0 * gpm, 6 * ft}, {130 * gpm, 21.21 * ft}},
          .efficiency = 0.6};
}

Layout pumped(const std::string& site = "Plover Flat") {
  return sample_layout({sample_row("row 1", 10)}, site)
      .with_supply({.pump = pump(), .suction = Suction{.lift = 6 * ft}, .gauge = Gauge{}});
}

Picture picture_of(const Layout& layout, const DrawingOptions& options = {}) {
  return Picture(to_svg_of_supply(solve(layout), options));
}
Picture picture_with_faults(const Layout& layout) {
  return Picture(to_svg_of_supply(solve(layout.without_faults()), solve(layout)));
}

std::vector<std::pair<double, double>> points_of(const std::string& polyline) {
  std::vector<std::pair<double, double>> points;
  std::istringstream stream(polyline);
  char comma = ' ';
  for (double x = 0, y = 0; stream >> x >> comma >> y;) points.emplace_back(x, y);
  return points;
}

/// Curves of more than two points that run through a mark, each segment being straight.
int curves_through(const Picture& picture, const Mark& mark) {
  int count = 0;
  for (const std::string& polyline : picture.polylines) {
    const auto points = points_of(polyline);
    if (points.size() < 10) continue;  // axes, brackets, arrows
    for (std::size_t i = 1; i < points.size(); ++i) {
      const auto [x0, y0] = points[i - 1];
      const auto [x1, y1] = points[i];
      const double length = std::hypot(x1 - x0, y1 - y0);
      const double along = ((mark.x - x0) * (x1 - x0) + (mark.y - y0) * (y1 - y0)) / length;
      const double aside = ((mark.x - x0) * (y1 - y0) - (mark.y - y0) * (x1 - x0)) / length;
      if (std::abs(aside) <= 3 * rounding && along >= -rounding && along <= length + rounding) {
        ++count;
        break;
      }
    }
  }
  return count;
}

const Mark& mark_of(const Picture& picture, const std::string& what) {
  const auto found =
      std::ranges::find_if(picture.marks, [&](const Mark& mark) { return mark.what == what; });
  EXPECT_NE(found, picture.marks.end()) << what;
  return *found;
}

TEST(SupplyDrawing, HasItsLabels) {
  const Picture picture = picture_with_faults(pumped().with_fault(riser_sheared("row 1", 7)));
  for (const char* label : {"Plover Flat",
                            "pressure, psi",
                            "flow, gal/min",
                            "the pump gives at 1950 rpm",
                            "the lines ask",
                            "before, the lines ask",
                            "usable range",
                            "before",
                            "after",
                            "Before",
                            "After"})
    EXPECT_TRUE(picture.has(label)) << label;
  EXPECT_THAT(picture.texts, Contains(HasSubstr("row 1, outlet 7: riser sheared")));
  EXPECT_EQ(picture.title(), "Plover Flat");
}

TEST(SupplyDrawing, OfOneSolutionSaysNothingOfBefore) {
  const Picture picture = picture_of(pumped());
  EXPECT_THAT(picture.texts, Not(Contains(HasSubstr("efore"))));
  EXPECT_THAT(picture.marks, SizeIs(1));
}

TEST(SupplyDrawing, IsInTheUnitsAskedFor) {
  const Picture picture = picture_of(pumped(), {.units = UnitSystem::si});
  EXPECT_TRUE(picture.has("pressure, kPa"));
  EXPECT_TRUE(picture.has("flow, L/min"));
  EXPECT_THAT(picture.texts, Contains(AllOf(HasSubstr("its own head"), HasSubstr(" kW at the"))));
}

TEST(SupplyDrawing, LetsTheCurvesMeetAtThePoints) {
  const Layout sound = pumped();
  const Picture one = picture_of(sound);
  EXPECT_EQ(curves_through(one, mark_of(one, "works")), 2);
  const Picture fault = picture_with_faults(sound.with_fault(riser_sheared("row 1", 7)));
  EXPECT_EQ(curves_through(fault, mark_of(fault, "works")), 2);
  EXPECT_EQ(curves_through(fault, mark_of(fault, "before")), 2) << "the pump's curve is the same";
  EXPECT_GT(mark_of(fault, "works").x, mark_of(fault, "before").x) << "more flows";
  EXPECT_GT(mark_of(fault, "works").y, mark_of(fault, "before").y) << "at less pressure";
}

/// The lines' curve begins where both axes are 0, the pump's where the flow is 0.
TEST(SupplyDrawing, IsOnOneScale) {
  const Solution solution = solve(pumped());
  const Picture picture(to_svg_of_supply(solution));
  const Mark& mark = mark_of(picture, "works");
  std::vector<std::vector<std::pair<double, double>>> curves;
  for (const std::string& polyline : picture.polylines)
    if (auto points = points_of(polyline); points.size() >= 10) curves.push_back(points);
  ASSERT_THAT(curves, SizeIs(2));
  const auto [left, at_rest] = curves[0].front();
  const auto [zero, floor] = curves[1].front();
  EXPECT_EQ(left, zero);
  const Pressure rest =
      operating_point(solution.layout().supply(), Flow{}, solution.layout().water()).pressure;
  EXPECT_NEAR((floor - mark.y) / (floor - at_rest),
              si(solution.supply_pressure()) / si(rest),
              4 * rounding / (floor - at_rest));
  const double px_per_flow = (mark.x - left) / si(solution.inflow());
  const PumpDuty& duty = solution.supply().pumps[0];
  EXPECT_NEAR(si(*duty.least_flow), si(0.75 * (20 * gpm)), 1e-12);
  for (const Flow& flow : {*duty.least_flow, *duty.most_flow})
    EXPECT_TRUE(std::ranges::any_of(picture.polylines, [&](const std::string& polyline) {
      const auto points = points_of(polyline);
      const double x = left + px_per_flow * si(flow);
      // the mark's place is rounded too, and its error grows with the distance from the axis
      const double tolerance = rounding * (2 + (x - left) / (mark.x - left));
      return points.size() == 2 && points[0].first == points[1].first &&
             std::abs(points[0].first - x) <= tolerance;
    })) << flow / gpm;
}

TEST(SupplyDrawing, DrawsTheSupplyAsItWasWhereItChanged) {
  const Layout sound = pumped();
  const char* before = "before, the pump gives at 1950 rpm";
  EXPECT_FALSE(picture_with_faults(sound.with_fault(head_off("row 1", 7))).has(before));
  const Picture worn = picture_with_faults(sound.with_fault(pump_worn(0.2)));
  EXPECT_TRUE(worn.has(before));
  EXPECT_EQ(curves_through(worn, mark_of(worn, "before")), 3) << "the lines are what they were";
  const Picture slow = picture_with_faults(sound.with_fault(engine_slow(1800 * rpm)));
  EXPECT_TRUE(slow.has(before));
  EXPECT_TRUE(slow.has("the pump gives at 1800 rpm"));
}

TEST(SupplyDrawing, TellsWhatThePumpDoes) {
  const Layout layout = pumped();
  const PumpDuty duty = solve(layout).supply().pumps[0];
  const auto tells = [](const Layout& it, const char* what) {
    EXPECT_THAT(picture_of(it).texts, Contains(HasSubstr(what)));
  };
  EXPECT_EQ(duty.range, PumpRange::inside);
  tells(layout, "Pump: 1950 rpm, its own head ");
  tells(layout, "It is inside its usable range.");
  tells(layout, " ft to spare.");
  tells(layout, "; the gauge shows ");
  tells(sample_layout({sample_row("few", 2)}).with_supply(layout.supply()),
        "It is below its least flow of 15.0 gal/min: it heats.");
  Supply weak = layout.supply();
  weak.pump->most_flow = 30 * gpm;
  weak.pump->npsh_required = {{0 * gpm, 30 * ft}, {130 * gpm, 60 * ft}};
  weak.suction->lift = 20 * ft;
  tells(layout.with_supply(weak), "It is above its usable range, which ends at 22.5 gal/min.");
  tells(layout.with_supply(weak), " ft too little, it cavitates.");
  Supply two = layout.supply();
  two.second_pump = pump();
  tells(layout.with_supply(two), "Pump 2: 1950 rpm");
  EXPECT_FALSE(picture_of(layout.with_supply(two)).has("usable range"));
}

TEST(SupplyDrawing, IsDrawnOfEverySupply) {
  const Layout layout = pumped();
  const Hydrant hydrant{
      .pressure_at_rest = 60 * psi, .residual_pressure = 40 * psi, .flow = 80 * gpm};
  const std::vector<std::pair<Supply, std::string>> supplies{
      {{.pressure = 40 * psi}, "the supply holds"},
      {{.tank = Tank{.level = 70 * ft}}, "the tank gives"},
      {{.hydrant = hydrant}, "the hydrant gives"},
      {{.pump = Pump{.points = pump().points}}, "the pump gives"}};
  for (const auto& [supply, words] : supplies) {
    const Picture picture = picture_of(layout.with_supply(supply));
    EXPECT_TRUE(picture.has(words)) << words;
    EXPECT_EQ(curves_through(picture, mark_of(picture, "works")), 2) << words;
    EXPECT_FALSE(picture.has("usable range")) << words;
  }
}

TEST(SupplyDrawing, IsDrawnWhereNothingFlows) {
  Line shut = sample_row("row 1", 10);
  shut.valve = Valve{.opening = ValveOpening::shut};
  EXPECT_THAT(picture_of(pumped().with_line(shut)).texts,
              Contains(HasSubstr("below its least flow")));
  const Layout pond = pumped().with_supply({.pressure = 0 * psi});
  EXPECT_THAT(picture_of(pond).marks, SizeIs(1));
}

TEST(SupplyDrawing, HasOneHueAndStaysOnThePage) {
  for (const Fault& fault : std::vector<Fault>{riser_sheared("row 1", 7), pump_worn(0.2)}) {
    const Picture picture = picture_with_faults(pumped().with_fault(fault));
    std::set<std::string> hues;
    for (const std::string& colour : picture.colours)
      if (colour.substr(1, 2) != colour.substr(3, 2) || colour.substr(3, 2) != colour.substr(5, 2))
        hues.insert(colour);
    EXPECT_THAT(hues, SizeIs(1));
    EXPECT_LE(picture.rightmost, 800);
    for (const std::string& polyline : picture.polylines)
      for (const auto& [x, y] : points_of(polyline))
        EXPECT_TRUE(x > 0 && x < 800 && y > 0 && y < picture.height()) << polyline;
  }
}

TEST(SupplyDrawing, KeepsNamesWhateverTheyContain) {
  const std::string name = "</text><script>alert(\"1\")</script> ]]> & 'f\xC3\xBCnf'";
  const Picture picture = picture_of(pumped(name));
  EXPECT_EQ(std::ranges::count(picture.texts, name), 1);
  EXPECT_EQ(picture.title(), name);
  EXPECT_FALSE(picture.names.contains("script"));
}

TEST(SupplyDrawing, RefusesWhatIsNoNumber) {
  const Solution good = solve(pumped());
  for (const double wrong :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    OperatingPoint point = good.supply();
    point.flow = Flow::from_value(wrong);
    const Solution bad(good.layout(), good.water(), good.lines(), point, good.residuals(), {});
    EXPECT_THAT(refusal([&] { to_svg_of_supply(bad); }),
                AllOf(HasSubstr("supply: operating point"), HasSubstr("finite")));
    EXPECT_THAT(refusal([&] { to_svg_of_supply(bad, good); }), Not(IsEmpty()));
    EXPECT_THAT(refusal([&] { to_svg_of_supply(good, bad); }), Not(IsEmpty()));
  }
}

TEST(SupplyDrawing, DoesNotHangOnTheLocale) {
  const Solution solution = solve(pumped());
  const std::string svg = to_svg_of_supply(solution);
  const UnderCommas commas;
  EXPECT_EQ(to_svg_of_supply(solution), svg);
}

}  // namespace
}  // namespace hydro
