// diagnosis_report_test.cpp: what was found, as a report and as a picture.
#include "hydro/text/diagnosis_report.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/text/diagnosis_drawing.hpp"
#include "hydro/text/diagnosis_words.hpp"

#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include "one_decimal.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

Layout farm() {
  return pumped_farm().watering({"low"});
}

/// What is read and answered of a farm with a fault.
struct Case {
  std::vector<Reading> readings;
  std::vector<Sight> sights = {};
  FoundFaults found = {};
};

/// Read without error at the gauge and in row 2, as the broken farm has it.
Case read_off(const Layout& broken) {
  const Solution solved = solve(broken);
  const LineSolution& row = solved.line("row 2");
  Case it{
      .readings = {{.place = ReadingPlace::supply_gauge, .pressure = solved.supply().gauge_reading},
                   {.place = ReadingPlace::pipe,
                    .line = "row 2",
                    .outlet = 10,
                    .pressure = row.line_pressure[9]},
                   {.place = ReadingPlace::pipe,
                    .line = "row 2",
                    .outlet = 5,
                    .pressure = row.line_pressure[4]}}};
  it.found = find_fault(farm(), it.readings);
  return it;
}

const Case& sheared() {
  static const Case it = read_off(farm().with_fault(riser_sheared("row 2", 7)));
  return it;
}

/// With rows joined, so that sentences can be sought.
std::string told(const Case& it, const DiagnosisReportOptions& options = {}) {
  const std::string text = diagnosis_report(farm(), it.readings, it.sights, it.found, options);
  std::string joined;
  for (const char c : text) {
    const bool is_blank = c == '\n' || c == ' ';
    if (!is_blank || (!joined.empty() && joined.back() != ' ')) joined += is_blank ? ' ' : c;
  }
  return joined;
}

TEST(DiagnosisWords, AChanceIsNeverSurerThanOneIs) {
  EXPECT_EQ(chance(0.87), "87 in 100");
  EXPECT_EQ(chance(0.999998), "more than 99 in 100");
  EXPECT_EQ(chance(1), "more than 99 in 100");
  EXPECT_EQ(chance(0), "less than 1 in 100");
  EXPECT_EQ(chance(std::numeric_limits<double>::quiet_NaN()), "less than 1 in 100");
  EXPECT_EQ(chance_in_percent(0.994), "99 %");
  EXPECT_EQ(chance_in_percent(0.0049), "<1 %");
}

TEST(DiagnosisWords, EachPlaceIsNamedByItself) {
  for (int i = 0; i <= static_cast<int>(ReadingPlace::engine); ++i) {
    const Reading it{.place = static_cast<ReadingPlace>(i), .line = "row 2", .outlet = 7};
    EXPECT_THAT(where(it), StartsWith("the ")) << i;
    EXPECT_EQ(where(it).find("row 2") != std::string::npos, is_on_line(it.place)) << i;
    EXPECT_EQ(where(it).find("outlet 7") != std::string::npos, is_at_outlet(it.place)) << i;
  }
}

TEST(DiagnosisReport, FirstSaysWhereToWalk) {
  const WalkTo& first = sheared().found.walk.front();
  ASSERT_EQ(first.line, "row 2");
  EXPECT_THAT(told(sheared()),
              HasSubstr("* A riser sheared or a head off on row 2, most likely outlets " +
                        std::to_string(*first.first) + " to " + std::to_string(*first.last) + ": " +
                        chance(first.probability) + "."));
}

TEST(DiagnosisReport, HoldsWhatWasReadAgainstWhatWasExpected) {
  const Solution sound = solve(farm());
  const std::string should_be = one_decimal(*sound.supply().gauge_reading / psi) + " psi";
  const std::string was = one_decimal(*sheared().readings[0].pressure / psi) + " psi";
  EXPECT_THAT(told(sheared()),
              HasSubstr("the supply's gauge " + was + " " + should_be + " " + was));
}

TEST(DiagnosisReport, SaysWhatIsAssumed) {
  EXPECT_THAT(told(sheared()),
              AllOf(HasSubstr("before anything was read: 10 no fault; 5 filter dirty, engine slow"),
                    HasSubstr("one reading in 50 is a blunder"),
                    HasSubstr("Cautions")));
}

TEST(DiagnosisReport, SaysThatNothingExplainsTheReadings) {
  Case odd;
  odd.readings = {
      {.place = ReadingPlace::supply_gauge, .pressure = 20 * psi},
      {.place = ReadingPlace::meter, .flow = 5 * gpm},
      {.place = ReadingPlace::pipe, .line = "row 2", .outlet = 10, .pressure = 60 * psi}};
  odd.found = find_fault(farm(), odd.readings);
  ASSERT_FALSE(odd.found.explained);
  const std::string text = told(odd);
  EXPECT_THAT(text,
              AllOf(HasSubstr("* No single fault explains these readings"),
                    HasSubstr("standard errors"),
                    Not(HasSubstr("Where to walk"))));
  EXPECT_THAT(to_svg_of_diagnosis(farm(), odd.readings, {}, odd.found),
              Not(HasSubstr("walk here")));
}

TEST(DiagnosisReport, SaysThatReadingsAreAsTheyShouldBe) {
  const Case it = read_off(farm());
  EXPECT_TRUE(is_as_it_should_be(it.found));
  EXPECT_FALSE(is_as_it_should_be(sheared().found));
  EXPECT_THAT(told(it), HasSubstr("* These readings are as they should be"));
}

TEST(DiagnosisReport, TellsLookAlikesAndWhatTellsThemApart) {
  Case gauge{.readings = {sheared().readings[0]}};
  gauge.found = find_fault(farm(), gauge.readings);
  ASSERT_FALSE(gauge.found.look_alikes.empty());
  EXPECT_THAT(told(gauge),
              AllOf(HasSubstr("do not single out one place yet"),
                    HasSubstr("which reads the same so far: "),
                    HasSubstr("it tells them apart")));
}

TEST(DiagnosisReport, TellsTheNextReadingOrWhyNone) {
  NextReadings next{
      .readings = {{.reading = Reading{.place = ReadingPlace::flush_end, .line = "row 2"},
                    .information = 1,
                    .worth = 1}},
      .uncertainty_left = 4};
  EXPECT_THAT(
      told(sheared(), {.next = next}),
      HasSubstr("Next, read the far end of row 2: it should settle some 25 % of what is open."));
  next.use_the_bucket = true;
  EXPECT_THAT(told(sheared(), {.next = next}),
              HasSubstr("Pressure cannot see this, use the bucket."));
  next.stop = WhyStop::sure_enough;
  EXPECT_THAT(told(sheared(), {.next = next}), HasSubstr("read no more, walk there"));
  next.stop = WhyStop::nothing_to_learn;
  EXPECT_THAT(told(sheared(), {.next = next}), HasSubstr("No further reading is worth its way"));
}

TEST(DiagnosisReport, TellsWhatToDoAndWhatItIsWorth) {
  const FoundFault& first = sheared().found.faults.front();
  const MakeRight right = make_right(farm(), first);
  EXPECT_THAT(told(sheared(), {.make_right = right}),
              AllOf(HasSubstr("What to do about a riser sheared at row 2"),
                    HasSubstr("* Stop, cap the outlet, and water on without it"),
                    HasSubstr("stop until it is mended - - - row 1 60 min, row 2 60 min")));
}

TEST(DiagnosisReport, TellsWhatAGaugeCannotSee) {
  const Reading gauge{.place = ReadingPlace::supply_gauge};
  EXPECT_THAT(told(sheared(), {.seen_by = {{gauge, detectable(farm(), gauge)}}}),
              AllOf(HasSubstr("What the supply's gauge can see"),
                    HasSubstr("sees: "),
                    HasSubstr("use the bucket and your eyes")));
}

TEST(DiagnosisReport, HasNoRowTooWideForAScreen) {
  const std::string text =
      diagnosis_report(farm(),
                       sheared().readings,
                       {},
                       sheared().found,
                       {.make_right = make_right(farm(), sheared().found.faults.front())});
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    EXPECT_LE(end - begin, 88U) << text.substr(begin, end - begin);
    begin = end + 1;
  }
}

TEST(DiagnosisDrawing, FramesWhereToWalk) {
  const std::string svg =
      to_svg_of_diagnosis(farm(),
                          sheared().readings,
                          {{.seen = Seen::not_turning, .line = "row 2", .outlet = 2}},
                          sheared().found);
  EXPECT_THAT(svg,
              AllOf(HasSubstr("class=\"first\""),
                    HasSubstr("walk here"),
                    HasSubstr("class=\"bar\""),
                    HasSubstr("class=\"reading\""),
                    HasSubstr("seen: not turning"),
                    HasSubstr("row 2, outlet 7: riser sheared")));
}

TEST(DiagnosisDrawing, EscapesNames) {
  const Layout odd = sample_layout({sample_row("<row & 1>", 3)});
  const FoundFaults found = find_fault(odd, {{.place = ReadingPlace::meter, .flow = 30 * gpm}});
  EXPECT_THAT(
      to_svg_of_diagnosis(odd, {{.place = ReadingPlace::meter, .flow = 30 * gpm}}, {}, found),
      AllOf(HasSubstr("&lt;row &amp; 1&gt;"), Not(HasSubstr("<row"))));
}

TEST(DiagnosisDrawing, RefusesWhatIsNotFinite) {
  FoundFaults spoilt = sheared().found;
  spoilt.faults.front().probability = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THAT(refusal([&] { to_svg_of_diagnosis(farm(), sheared().readings, {}, spoilt); }),
              HasSubstr("must be a finite number"));
}

}  // namespace
}  // namespace hydro
