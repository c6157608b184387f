// drawing_test.cpp: the picture is well-formed XML (read by Boost.PropertyTree) and shows what each
// outlet does, where it does it, and what was before.
#include "hydro/text/drawing.hpp"

#include "hydro/quantities/error.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <map>
#include <set>
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
using testing::SizeIs;

Picture picture_of(const Layout& layout, const DrawingOptions& options = {}) {
  return Picture(to_svg(solve(layout), options));
}
Picture picture_with_faults(const Layout& layout) {
  return Picture(to_svg(solve(layout.without_faults()), solve(layout)));
}

TEST(Drawing, HasItsLabels) {
  const Picture picture =
      picture_with_faults(sample_layout({sample_main(), sample_row("row 1", 10)})
                              .with_fault(riser_sheared("row 1", 7)));
  for (const char* label : {"Plover Flat",
                            "row 1",
                            "pressure, psi",
                            "ft from the inlet",
                            "rated 25 psi",
                            "minimum 18 psi",
                            "before",
                            "after",
                            "broken",
                            "7 broken",
                            "10",
                            "100"})
    EXPECT_TRUE(picture.has(label)) << label;
  EXPECT_EQ(picture.title(), "Plover Flat");
  EXPECT_FALSE(picture.has("main")) << "it has no outlets";
  EXPECT_THAT(picture.texts, Contains(HasSubstr("outlet 7: riser sheared")));
  EXPECT_THAT(picture.texts, Contains(HasSubstr("1 broken")));
}

TEST(Drawing, OfOneSolutionSaysNothingOfBefore) {
  const Picture picture = picture_of(sample_layout({sample_row("row 1", 10)}));
  EXPECT_FALSE(picture.has("before"));
  EXPECT_FALSE(picture.has("after"));
  EXPECT_FALSE(picture.has("broken"));
  EXPECT_EQ(picture.before_marks(), 0);
}

TEST(Drawing, IsInTheUnitsAskedFor) {
  const Picture picture =
      picture_of(sample_layout({sample_row("row 1", 10)}), {.units = UnitSystem::si});
  EXPECT_TRUE(picture.has("pressure, kPa"));
  EXPECT_TRUE(picture.has("m from the inlet"));
  EXPECT_TRUE(picture.has("rated 172 kPa"));
}

// ---- marks

TEST(Drawing, MarksEveryOutletByWhatItDoes) {
  const Layout layout = with_all_states();
  const Picture picture = picture_with_faults(layout);
  const std::map<std::string, int> marks = picture.marks_by_class();
  int count = 0;
  for (const auto& [what, number] : marks) count += number;
  EXPECT_EQ(count, layout.outlet_count());
  for (const char* what :
       {"broken", "capped", "dry", "below_minimum", "below_rated", "above_maximum"})
    EXPECT_TRUE(marks.contains(what)) << what;
  EXPECT_EQ(marks.at("broken"), 2);
  EXPECT_EQ(marks.at("capped"), 1);
  EXPECT_EQ(picture.before_marks(), layout.outlet_count() + 1) << "and one in the legend";
}

TEST(Drawing, GivesEachStateAShapeOfItsOwn) {
  std::map<std::string, std::set<std::string>> shapes;  // of each class
  for (const Picture& picture : {picture_with_faults(with_all_states()),
                                 picture_of(sample_layout({sample_row("r", 3)}, "", 35 * psi))})
    for (const Mark& mark : picture.marks) shapes[mark.what].insert(mark.outline + mark.fill);
  EXPECT_THAT(shapes, SizeIs(8)) << "seven states, and before";
  std::set<std::string> different;
  for (const auto& [what, drawn] : shapes) {
    EXPECT_THAT(drawn, SizeIs(1)) << what;
    different.insert(*drawn.begin());
  }
  EXPECT_THAT(different, SizeIs(8));
}

/// Colours other than greys: red, green and blue are not the same.
TEST(Drawing, HasOneHue) {
  std::set<std::string> hues;
  for (const std::string& colour : picture_with_faults(with_all_states()).colours) {
    ASSERT_THAT(colour, SizeIs(7));
    if (colour.substr(1, 2) != colour.substr(3, 2) || colour.substr(3, 2) != colour.substr(5, 2))
      hues.insert(colour);
  }
  EXPECT_THAT(hues, SizeIs(1));
}

TEST(Drawing, TellsTheFiguresOfTheOutletThatIsPointedAt) {
  const Layout layout =
      sample_layout({sample_row("row 1", 10)}).with_fault(head_off("row 1", 7, 1));
  const Picture picture = picture_with_faults(layout);
  EXPECT_THAT(picture.of_outlet(7).tip,
              AllOf(HasSubstr("outlet 7: broken, 0.0 psi instead of "), HasSubstr(" psi")));
  EXPECT_EQ(picture.of_outlet(7).what, "broken");
}

/// On the scale that its own labelled lines make: two places of known value fix the axis.
TEST(Drawing, PutsMarksWhereTheyBelong) {
  const Solution solution = solve(sample_layout({sample_row("row 1", 10, 20 * ft)}));
  const LineSolution& line = solution.line("row 1");
  const Picture picture(to_svg(solution));
  const auto expect_straight = [&](auto place, auto number) {
    const double slope =
        (place(picture.of_outlet(10)) - place(picture.of_outlet(1))) / (number(9) - number(0));
    constexpr double rounding = 0.05;  // places have one decimal
    for (int outlet = 1; outlet <= 10; ++outlet)
      EXPECT_NEAR(place(picture.of_outlet(outlet)),
                  place(picture.of_outlet(1)) +
                      slope * (number(static_cast<std::size_t>(outlet - 1)) - number(0)),
                  3 * rounding);
  };
  expect_straight([](const Mark& mark) { return mark.x; },
                  [&](std::size_t i) { return si(line.distance[i]); });
  expect_straight([](const Mark& mark) { return mark.y; },
                  [&](std::size_t i) { return si(line.pressure[i]); });
  EXPECT_LT(picture.of_outlet(1).x, picture.of_outlet(10).x);
  EXPECT_LT(picture.of_outlet(1).y, picture.of_outlet(10).y) << "pressure falls, y points down";
}

// ---- many

TEST(Drawing, ThinsOutTheMarksOfALongLine) {
  for (const int count : {51, 1'000, 100'000}) {
    const std::string svg = to_svg(solve(many_outlets(count)));
    EXPECT_LT(svg.size(), 100'000u);
    EXPECT_LE(Picture(svg).marks.size(), 60u) << count;
  }
}

TEST(Drawing, NeverThinsOutWhatFails) {
  Line line = many_outlets(10'000).lines()[0];
  line.riser = {.height = 1 * ft, .inside_diameter = 0.25 * inch, .hazen_williams = 150};
  const Picture picture = picture_of(sample_layout({line}).with_fault(capped("long", 4'321)));
  EXPECT_TRUE(picture.has("capped"));
  EXPECT_TRUE(picture.has("4321 capped"));
  EXPECT_EQ(picture.of_outlet(4'321).what, "capped");
}

TEST(Drawing, Draws24LinesAndCountsTheOthers) {
  std::vector<Line> lines;
  for (int i = 1; i <= 27; ++i) lines.push_back(sample_row("row " + std::to_string(i), 2));
  lines[26].ground_rise = 90 * ft;
  const Picture picture = picture_of(sample_layout(lines));
  EXPECT_TRUE(picture.has("3 more lines with outlets are not drawn."));
  EXPECT_TRUE(picture.has("row 23"));
  EXPECT_FALSE(picture.has("row 24"));
  EXPECT_TRUE(picture.has("row 27")) << "it fails, and is drawn before others";
}

// ---- anything

TEST(Drawing, IsDrawnOfAnything) {
  EXPECT_TRUE(picture_of(sample_layout({sample_main()})).has("There are no outlets."));
  EXPECT_TRUE(picture_of(sample_layout({sample_row("one", 1)}).with_fault(capped("one", 1)))
                  .has("1 capped"));
  const Picture dry = picture_of(sample_layout({sample_row("up", 3, 600 * ft)}, "", 0 * psi));
  EXPECT_TRUE(dry.has("1 to 3 dry"));
  EXPECT_EQ(dry.title(), "Pressure along the lines");
  Line at_inlet = sample_row("at the inlet", 1);
  at_inlet.first_at = 0 * ft;
  at_inlet.length = 3 * ft;
  EXPECT_THAT(picture_of(sample_layout({at_inlet})).marks_by_class(), SizeIs(1));
}

// ---- sets, valves and regulators

TEST(Drawing, NamesWhatIsShutAndDoesNotDrawIt) {
  const Layout layout(Supply{40 * psi},
                      {sample_row("row 1", 10), sample_row("row 2", 10), sample_row("row 3", 10)},
                      Water{},
                      Site{.altitude = 0 * ft, .units = UnitSystem::us},
                      {{.name = "first", .lines = {"row 1"}}});
  const Layout first = layout.watering({"first"});
  const Picture picture = picture_of(first);
  EXPECT_TRUE(picture.has("row 1"));
  EXPECT_FALSE(picture.has("row 2"));
  EXPECT_FALSE(picture.has("capped"));
  EXPECT_TRUE(picture.has("Shut, and not drawn: row 2, row 3."));
  EXPECT_TRUE(picture.has("Watering first."));
  EXPECT_FALSE(picture_of(layout).has("Watering first."));

  const Picture left_open = picture_with_faults(first.with_fault(valve_left_open("row 2")));
  EXPECT_TRUE(left_open.has("row 2"));
  EXPECT_THAT(left_open.texts, Contains(HasSubstr("; before: shut.")));
  EXPECT_EQ(left_open.before_marks(), 10 + 1) << "of row 1, and one in the legend";

  Line shut = sample_row("row 1", 10);
  shut.valve = Valve{.opening = ValveOpening::shut};
  EXPECT_TRUE(picture_of(sample_layout({shut})).has("All outlets are shut."));
}

TEST(Drawing, CountsTheShutLinesBeyondTwelve) {
  std::vector<Line> lines{sample_row("open", 2)};
  for (int i = 1; i <= 15; ++i) {
    lines.push_back(sample_row("r" + std::to_string(i), 2));
    lines.back().valve = Valve{.opening = ValveOpening::shut};
  }
  EXPECT_THAT(picture_of(sample_layout(lines)).texts, Contains(HasSubstr("r12 and 3 more.")));
}

TEST(Drawing, MarksARegulatorWhereItHolds) {
  Line row = sample_row("row 1", 10);
  row.regulator = 30 * psi;
  const Layout holding = sample_layout({row});
  const auto is_regulator = [](const Mark& mark) { return mark.what == "regulator"; };
  const Picture holds = picture_of(holding);
  EXPECT_TRUE(holds.has("The regulator at its inlet holds 30 psi."));
  EXPECT_EQ(std::ranges::count_if(holds.marks, is_regulator), 1);
  EXPECT_LT(std::ranges::find_if(holds.marks, is_regulator)->y, holds.of_outlet(1).y)
      << "before the riser and the first length";

  const Picture weak = picture_of(sample_layout({row}, "", 25 * psi));
  EXPECT_TRUE(weak.has("The regulator at its inlet is open, since less comes than its 30 psi."));
  const Picture stuck = picture_of(holding.with_fault(regulator_stuck_open("row 1")));
  EXPECT_TRUE(stuck.has("The regulator at its inlet is stuck open and does not hold its 30 psi."));
  for (const Picture& other : {weak, stuck})
    EXPECT_EQ(std::ranges::count_if(other.marks, is_regulator), 0);

  Line fed = sample_row("fed", 2);
  fed.fed_by = "main";
  Line main = sample_main();
  main.regulator = 30 * psi;
  EXPECT_TRUE(picture_of(sample_layout({main, fed})).has("The regulator of main holds 30 psi."));
  EXPECT_THAT(picture_of(sample_layout({sample_row("r", 2)})).texts,
              testing::Not(Contains(HasSubstr("regulator"))));
}

TEST(Drawing, TellsTheGauge) {
  const Layout layout = sample_layout({sample_row("row 1", 10)})
                            .with_supply({.pressure = 40 * psi, .gauge = Gauge{}});
  EXPECT_THAT(picture_of(layout).texts, Contains(HasSubstr("The gauge shows 40.0 psi.")));
  EXPECT_THAT(picture_with_faults(layout.with_fault(head_off("row 1", 7))).texts,
              Contains(HasSubstr("The gauge shows 40.0 psi instead of 40.0 psi.")));
}

TEST(Drawing, StaysOnThePage) {
  for (const Picture& picture :
       {picture_with_faults(with_all_states()), Picture(to_svg(solve(many_outlets(1'000))))})
    for (const Mark& mark : picture.marks) {
      EXPECT_TRUE(mark.x > 0 && mark.x < 800) << mark.tip;
      EXPECT_TRUE(mark.y > 0 && mark.y < picture.height()) << mark.tip;
    }
}

TEST(Drawing, KeepsNamesWhateverTheyContain) {
  const std::string name = "</text><script>alert(\"1\")</script> ]]> & 'f\xC3\xBCnf'";
  Line row = sample_row(name, 3);
  row.outlet->name = name;
  const std::string svg = to_svg(solve(sample_layout({row}, name)));
  EXPECT_THAT(svg, HasSubstr(" ]]&gt; &amp; '")) << "some parsers take a bare & as well";
  const Picture picture(svg);
  EXPECT_EQ(std::count(picture.texts.begin(), picture.texts.end(), name), 2) << "site and line";
  EXPECT_EQ(picture.title(), name);
  EXPECT_FALSE(picture.names.contains("script"));
  EXPECT_THAT(picture.texts, Contains(testing::StartsWith(name + ": rated 3.52 gal/min")));
}

TEST(Drawing, ReplacesWhatIsNotUtf8) {
  const std::string bad = "\xEF\xBF\xBD";
  for (const auto& [name, shown] : std::vector<std::pair<std::string, std::string>>{
           {"a\xFFz", "a" + bad + "z"},
           {"not a character \xEF\xBF\xBF", "not a character " + bad},
           {"water \xE6\xB0\xB4 \xF0\x9F\x92\xA7", "water \xE6\xB0\xB4 \xF0\x9F\x92\xA7"}})
    EXPECT_TRUE(picture_of(sample_layout({sample_row(name, 1)})).has(shown)) << shown;
  for (const char* name : {"cut \xE6\xB0", "long \xC0\xAF", "half \xED\xA0\x80"})
    EXPECT_THAT(picture_of(sample_layout({sample_row(name, 1)})).texts, Contains(HasSubstr(bad)));
}

TEST(Drawing, RefusesWhatIsNoNumber) {
  const Solution good = solve(sample_layout({sample_row("row 1", 2)}));
  for (const double wrong :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    const auto names_it = AllOf(HasSubstr("line \"row 1\": outlet 1"), HasSubstr("finite"));
    EXPECT_THAT(refusal([&] { to_svg(spoilt_solution(wrong)); }), names_it);
    EXPECT_THAT(refusal([&] { to_svg(good, spoilt_solution(wrong)); }), names_it);
    EXPECT_THAT(refusal([&] { to_svg(spoilt_solution(wrong), good); }), names_it);
  }
}

TEST(Drawing, RefusesTwoThatDoNotMatch) {
  EXPECT_THROW(to_svg(solve(sample_layout({sample_row("a", 2)})),
                      solve(sample_layout({sample_row("a", 3)}))),
               InvalidInput);
}

TEST(Drawing, DoesNotHangOnTheLocale) {
  const Solution solution = solve(with_all_states());
  const std::string svg = to_svg(solution);
  const UnderCommas commas;
  EXPECT_EQ(to_svg(solution), svg);
}

}  // namespace
}  // namespace hydro
