// breaks_report_test.cpp: what breaking every outlet does, as a report, a table and a picture.
#include "hydro/text/breaks_report.hpp"

#include "hydro/text/breaks_csv.hpp"
#include "hydro/text/breaks_drawing.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "one_decimal.hpp"
#include "ouzel_strips.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::SizeIs;

Breaks two_rows_sheared(BreakDetail keep = BreakDetail::conditions) {
  return break_every_outlet(ouzel_strips().watering({"rows 1 and 2"}),
                            {riser_sheared("", 0), keep});
}

std::vector<std::string> rows_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> rows;
  for (std::string row; std::getline(stream, row);) rows.push_back(row);
  return rows;
}

/// With rows joined, so that sentences can be sought.
std::string told(const Breaks& breaks) {
  std::string text = breaks_report(breaks, UnitSystem::us);
  std::string joined;
  for (const char c : text)
    if (c != '\n')
      joined += c;
    else if (!joined.empty() && joined.back() != ' ')
      joined += ' ';
  for (std::size_t at; (at = joined.find("  ")) != std::string::npos;) joined.erase(at, 1);
  return joined;
}

std::string psi_of(const Pressure& pressure) {
  return one_decimal(pressure / psi);
}

std::size_t count(const std::string& text, std::string_view part) {
  std::size_t found = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size())
    ++found;
  return found;
}

TEST(BreaksReport, BeginsWithWhatMattersToAGrower) {
  const Breaks all = two_rows_sheared();
  const auto [least, most] = std::ranges::minmax(all.breaks, {}, &Break::gauge_reading);
  const auto [few, many] = std::ranges::minmax(all.breaks, {}, &Break::more_out_of_work);
  const Break& worst = all.breaks.at(all.worst.value());
  EXPECT_THAT(
      told(all),
      AllOf(HasSubstr("At each of 20 outlets in turn: riser sheared, stub open (0.5 ft high"),
            HasSubstr("* Wherever it happens, " + std::to_string(few.more_out_of_work) + " to " +
                      std::to_string(many.more_out_of_work) + " others stop working."),
            HasSubstr("* At its worst, at " + worst.line + ", outlet " +
                      std::to_string(worst.outlet) + ", " + std::to_string(worst.more_out_of_work) +
                      " others stop working (row"),
            HasSubstr("* The gauge reads " + psi_of(*all.before.supply().gauge_reading) +
                      " psi, and " + psi_of(least.gauge_reading) + " to " +
                      psi_of(most.gauge_reading) + " psi after it happened."),
            HasSubstr("row 3; row 4: its line is shut."),
            HasSubstr("the height of the break is an estimate"),
            HasSubstr("Cautions")));
}

TEST(BreaksReport, HasARowForEachBreak) {
  const Breaks all = two_rows_sheared();
  const auto rows = rows_of(breaks_report(all, UnitSystem::us));
  auto row = rows.begin();
  for (const Break& it : all.breaks) {
    SCOPED_TRACE(it.line + ", outlet " + std::to_string(it.outlet));
    row = std::find_if(row, rows.end(), [&](const std::string& text) {
      std::istringstream cells(text);
      int outlet = 0;
      double escaping = 0;
      return (cells >> outlet >> escaping) && outlet == it.outlet;
    });
    ASSERT_NE(row, rows.end());
    std::istringstream cells(*row);
    int outlet = 0, below = 0, idle = 0, share = 0;
    double escaping = 0, inflow = 0, gauge = 0, weakest = 0;
    cells >> outlet >> escaping >> inflow >> gauge >> below >> idle >> weakest >> share;
    ASSERT_TRUE(cells);
    EXPECT_NEAR(escaping, it.escaping / gpm, 0.0501);  // printed to 0.1
    EXPECT_NEAR(inflow, it.inflow / gpm, 0.0501);
    EXPECT_NEAR(gauge, it.gauge_reading / psi, 0.0501);
    EXPECT_EQ(below, it.more_below_rated);
    EXPECT_EQ(idle, it.more_out_of_work);
    EXPECT_NEAR(weakest, it.weakest->pressure / psi, 0.0501);
    const double percent = 100 * (it.weakest->pressure / it.weakest->rated);
    EXPECT_LE(share, percent + 1e-4);  // rounded down
    EXPECT_GT(share, percent - 1);
    EXPECT_THAT(*row, HasSubstr(std::to_string(it.weakest->outlet) + " of " + it.weakest->line));
    ++row;
  }
}

/// The supply is held at so much that no break does harm, and at so little that some do.
TEST(BreaksReport, SaysHowManyOfTheBreaksDoHarm) {
  const auto row_at = [](const Pressure& held) {
    return break_every_outlet(sample_layout({sample_row("row 1", 6)}, "Plover Flat", held),
                              {riser_sheared("", 0)});
  };
  EXPECT_THAT(
      told(row_at(300 * psi)),
      AllOf(HasSubstr("* Wherever it happens, no other stops working. * Wherever it happens, "
                      "no other falls under the rated pressure."),
            HasSubstr("The supply's pressure is held, and does not feel it"),
            Not(HasSubstr("At its worst")),
            Not(HasSubstr("gauge"))));
  const Breaks some = row_at(29 * psi);
  ASSERT_GT(some.rest_works, 0);
  ASSERT_LT(some.rest_works, 6);
  EXPECT_THAT(told(some),
              HasSubstr("* At " + std::to_string(some.rest_works) +
                        " of the 6 outlets no other stops working; at the other " +
                        std::to_string(6 - some.rest_works) + ", "));
}

TEST(BreaksReport, TellsOfHarmWhereOutletsHaveNoMinimum) {
  Line row = sample_row("row 1", 6);
  row.outlet->minimum = std::nullopt;
  const std::string text =
      told(break_every_outlet(sample_layout({row}, "", 29 * psi), {riser_sheared("", 0)}));
  EXPECT_THAT(text, Not(HasSubstr("stops working")));
  EXPECT_THAT(text, HasSubstr("fall under the rated pressure (row 1, outlets"));
}

TEST(BreaksReport, SpeaksOfOneAsOfOne) {
  EXPECT_THAT(told(break_every_outlet(sample_layout({sample_row("row 1", 1)}))),
              HasSubstr("At one outlet: head off"));
  Breaks one = two_rows_sheared(BreakDetail::counts);
  for (Break& it : one.breaks) it.more_out_of_work = 1;
  EXPECT_THAT(told(one),
              AllOf(HasSubstr("Wherever it happens, 1 other stops working."),
                    HasSubstr(", 1 other stops working; ")));
}

TEST(BreaksReport, SaysWhatFallsShortAlready) {
  Breaks all = two_rows_sheared();
  const auto at_first = [&](const std::string& sentence) {
    EXPECT_THAT(told(all), HasSubstr("coefficient 1) * " + sentence + " * Wherever"));
  };
  auto& before = all.conditions_before;
  std::ranges::fill(before, OutletCondition::works);
  EXPECT_THAT(told(all), HasSubstr("coefficient 1) * Wherever"));
  before[3] = OutletCondition::below_rated;
  at_first("As it is, 1 outlet is under the rated pressure, but works.");
  before[4] = OutletCondition::below_rated;
  at_first("As it is, 2 outlets are under the rated pressure, but work.");
  before[5] = OutletCondition::dry;
  at_first("As it is, 3 outlets are under the rated pressure, and 1 of them does not work.");
  before[3] = before[4] = OutletCondition::below_minimum;
  at_first("As it is, 3 outlets are under the rated pressure, and do not work.");
}

TEST(BreaksReport, SaysWhatWasNotTriedAndWhatIsBroken) {
  const std::string text = told(break_every_outlet(with_all_states()));
  EXPECT_THAT(text, HasSubstr("level, outlet 7: has fault \"head off\" already."));
  EXPECT_THAT(text,
              AllOf(HasSubstr("The faults that are there already - "),
                    HasSubstr("level, outlet 3: capped.")));
  EXPECT_THAT(text, HasSubstr("more escapes"));
  EXPECT_THAT(told(two_rows_sheared()), HasSubstr(" more supply gauge more more at escapes gives"));
  EXPECT_THAT(told(break_every_outlet(sample_layout({sample_main()}))),
              HasSubstr("There is no outlet at which it can happen."));
}

TEST(BreaksReport, SaysWhatWasNotSolved) {
  Breaks all = two_rows_sheared();
  all.breaks.erase(all.breaks.begin() + 6);
  all.not_solved.push_back({"row 1", 7, "the layout was not solved"});
  EXPECT_THAT(told(all),
              AllOf(HasSubstr("At each of 20 outlets"),
                    HasSubstr("Not solved - row 1, outlet 7: the layout was not solved.")));
}

TEST(BreaksReport, LeavesOutWhatWasNotKept) {
  const std::string text = told(two_rows_sheared(BreakDetail::counts));
  EXPECT_THAT(text, HasSubstr("19 others stop working; "));
}

TEST(BreaksReport, FitsOnAScreenInEitherUnitsAndAnyLocale) {
  const Breaks all = two_rows_sheared();
  const std::string us = breaks_report(all, UnitSystem::us);
  const std::string si_text = breaks_report(all, UnitSystem::si);
  EXPECT_THAT(si_text, AllOf(HasSubstr("kPa"), HasSubstr("L/min"), Not(HasSubstr("psi"))));
  for (const std::string& text : {us, si_text})
    for (const std::string& row : rows_of(text)) EXPECT_LE(row.size(), 88U) << row;
  const UnderCommas commas;
  EXPECT_EQ(breaks_report(all, UnitSystem::us), us);
}

// ---- CSV

/// Cells of a table without quoted line ends.
std::vector<std::vector<std::string>> cells_of(const std::string& csv) {
  std::vector<std::vector<std::string>> table;
  std::vector<std::string> row(1);
  bool quoted = false;
  for (const char c : csv) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      row.emplace_back();
    } else if (c == '\n') {
      table.push_back(std::exchange(row, std::vector<std::string>(1)));
    } else if (c != '\r') {
      row.back() += c;
    }
  }
  return table;
}

double number(const std::string& text) {
  double value = std::numeric_limits<double>::quiet_NaN();
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

TEST(BreaksCsv, HasEveryOutletWithEveryDigit) {
  const Breaks all = two_rows_sheared(BreakDetail::profiles);
  const auto table = cells_of(to_csv(all));
  ASSERT_THAT(table, SizeIs(41));
  for (const auto& row : table) ASSERT_THAT(row, SizeIs(17 + 40));
  EXPECT_EQ(table[0][2], "outcome");
  EXPECT_EQ(table[0][17 + 39], "pressure_pa of row 4, outlet 10");
  for (std::size_t i = 0; i < 20; ++i) {
    const Break& it = all.breaks[i];
    const std::vector<std::string>& row = table[i + 1];
    EXPECT_EQ(row[0], it.line);
    EXPECT_EQ(row[1], std::to_string(it.outlet));
    EXPECT_EQ(row[2], "solved");
    EXPECT_EQ(row[3], "");
    EXPECT_EQ(number(row[4]), si(it.escaping));
    EXPECT_EQ(number(row[5]), si(it.missing));
    EXPECT_EQ(number(row[6]), si(it.inflow));
    EXPECT_EQ(number(row[7]), si(it.supply_pressure));
    EXPECT_EQ(number(row[8]), si(it.gauge_reading));
    EXPECT_EQ(row[9], std::to_string(it.more_below_rated));
    EXPECT_EQ(row[10], std::to_string(it.more_out_of_work));
    EXPECT_EQ(row[11], std::to_string(it.more_dry));
    EXPECT_EQ(row[12], std::to_string(it.more_above_maximum));
    EXPECT_EQ(row[13], it.weakest->line);
    EXPECT_EQ(row[14], std::to_string(it.weakest->outlet));
    EXPECT_EQ(number(row[15]), si(it.weakest->pressure));
    EXPECT_EQ(number(row[16]), it.weakest->pressure / it.weakest->rated);
    for (std::size_t j = 0; j < 40; ++j)
      EXPECT_EQ(number(row[17 + j]), si(all.pressure[i * 40 + j]));
  }
  for (std::size_t i = 20; i < 40; ++i) {
    EXPECT_EQ(table[i + 1][2], "skipped");
    EXPECT_EQ(table[i + 1][3], "its line is shut");
    EXPECT_EQ(table[i + 1][16], "");
  }
}

TEST(BreaksCsv, KeepsTheOrderWhateverTheOutcome) {
  Breaks all = break_every_outlet(
      sample_layout({sample_row("a, \"b\"", 1), sample_row("c", 3)}).with_fault(capped("c", 2)));
  ASSERT_THAT(all.breaks, SizeIs(3));
  all.breaks.pop_back();
  all.not_solved.push_back({"c", 3, "why"});
  const std::string text = to_csv(all);
  EXPECT_THAT(text, HasSubstr("\r\n\"a, \"\"b\"\"\",1,solved,"));
  const auto table = cells_of(text);
  ASSERT_THAT(table, SizeIs(5));
  EXPECT_EQ(table[2][2], "solved");
  EXPECT_EQ(table[3][2], "skipped");
  EXPECT_EQ(table[4][2], "not_solved");
  EXPECT_EQ(table[4][3], "why");
}

// ---- the picture

TEST(BreaksDrawing, HasAMarkForEveryOutletAndBreak) {
  const Breaks all = two_rows_sheared();
  const std::string svg = to_svg(all);
  std::size_t works = 0;
  std::size_t rated = 0;
  std::size_t minimum = 0;
  const auto add = [&](OutletCondition it) {
    works += it == OutletCondition::works ? 1U : 0U;
    rated += it == OutletCondition::below_rated ? 1U : 0U;
    minimum += it == OutletCondition::below_minimum ? 1U : 0U;
  };
  std::ranges::for_each(all.conditions_before, add);
  std::ranges::for_each(all.conditions, add);
  // Each has one more in the legend.
  EXPECT_EQ(count(svg, "class=\"works\""), works + 1);
  EXPECT_EQ(count(svg, "class=\"below_rated\""), rated + 1);
  EXPECT_EQ(count(svg, "class=\"below_minimum\""), minimum + 1);
  EXPECT_EQ(count(svg, "class=\"broken\""), 20U + 1);
  EXPECT_EQ(count(svg, "class=\"here\""), 20U);
  EXPECT_EQ(count(svg, "class=\"capped\""), 0U);  // those of lines that are shut have no column
  EXPECT_THAT(
      svg, AllOf(HasSubstr("Wherever it happens"), HasSubstr("Not tried at 20 outlets: its line")));
}

TEST(BreaksDrawing, TellsStatesApart) {
  const std::string svg = to_svg(break_every_outlet(with_all_states()));
  for (const char* name : {"dry", "capped", "above_maximum", "broken"})
    EXPECT_THAT(svg, HasSubstr("class=\"" + std::string(name) + "\"")) << name;
  const std::string cut = to_svg(break_every_outlet(
      sample_layout({sample_row("row 1", 6)}).with_fault(line_cut("row 1", 120 * ft))));
  EXPECT_THAT(cut, HasSubstr("class=\"no_water\""));
}

/// Of many outlets, and where it is not known which of them fall short.
TEST(BreaksDrawing, DrawsCurvesOfMany) {
  std::vector<Line> lines;
  for (int i = 1; i <= 30; ++i) lines.push_back(sample_row("row " + std::to_string(i), 3));
  lines.push_back(sample_row("long row", 6));
  const Breaks all = break_every_outlet(sample_layout(lines, "", 30 * psi), {riser_sheared("", 0)});
  const std::string svg = to_svg(all);
  EXPECT_EQ(count(svg, "class=\"works\""), 0U);
  EXPECT_EQ(count(svg, ", when it happens at outlet"), 24U);
  EXPECT_THAT(svg, HasSubstr("7 more lines are not drawn."));
  ASSERT_EQ(all.breaks.at(all.worst.value()).line, "long row");
  EXPECT_THAT(svg, HasSubstr("long row: at most "));
  EXPECT_THAT(to_svg(two_rows_sheared(BreakDetail::counts)),
              AllOf(HasSubstr("row 1: at most 19 others stop working, when it happens at outlet"),
                    HasSubstr("row 2: at most 19 others")));
}

TEST(BreaksDrawing, NamesLinesWithoutHarm) {
  const Layout layout = sample_layout({sample_row("row 1", 50)}, "", 400 * psi);
  EXPECT_THAT(to_svg(break_every_outlet(layout, {capped("", 0)})),
              AllOf(HasSubstr("No other outlet falls short when it happens on row 1."),
                    Not(HasSubstr("<polyline"))));
}

TEST(BreaksDrawing, SpoilsNothingByNames) {
  const std::string name = "</text><b> \"1\" & ]]>";
  for (const int outlets : {4, 60}) {
    const Layout layout = sample_layout({sample_row(name, outlets)}, name, 30 * psi);
    const std::string svg = to_svg(break_every_outlet(layout, {riser_sheared("", 0)}));
    EXPECT_THAT(svg, Not(HasSubstr("<b>")));
    EXPECT_EQ(count(svg, "<text"), count(svg, "</text>"));
    EXPECT_THAT(svg, HasSubstr("&lt;/text&gt;&lt;b&gt; &quot;1&quot; &amp; ]]&gt;"));
  }
}

TEST(BreaksDrawing, DrawsNothingWhereNothingBreaks) {
  const std::string svg = to_svg(break_every_outlet(sample_layout({sample_main()})));
  EXPECT_THAT(svg, AllOf(HasSubstr("There is no outlet"), HasSubstr("</svg>")));
}

TEST(BreaksText, RefusesWhatIsNotFinite) {
  Breaks all = two_rows_sheared();
  all.breaks[2].escaping = std::numeric_limits<double>::quiet_NaN() * gpm;
  EXPECT_THAT(refusal([&] { to_csv(all); }),
              HasSubstr("break of line \"row 1\", outlet 3: escaping: is nan"));
  EXPECT_THAT(refusal([&] { to_svg(all); }), HasSubstr("outlet 3"));
}

}  // namespace
}  // namespace hydro
