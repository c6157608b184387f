// What a person reads of a calibration and of a log.

#include "hydro/text/calibration_report.hpp"

#include <regex>
#include <string>
#include <vector>

#include "ouzel_strips.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

/// As one line, wherever the page breaks.
std::string unbroken(const std::string& page) {
  return std::regex_replace(page, std::regex("\n *"), " ");
}

const std::vector<Reading> one_reading{
    {.place = ReadingPlace::riser, .line = "row 1", .outlet = 10, .pressure = 30 * psi}};

/// Of a rougher lateral, larger nozzles and a gauge of which nothing is known.
Calibration example() {
  Calibration it{.layout = ouzel_strips()};
  it.learnt = {{.kind = LearntKind::hazen_williams,
                .of = "lateral",
                .before = 150,
                .after = 127.5,
                .factor = 0.85,
                .deviation_before = 0.15,
                .deviation = 0.04,
                .moved = -1.1,
                .learnt = 0.93},
               {.kind = LearntKind::outlet_flow,
                .of = "turning head",
                .factor = 1.062,
                .deviation_before = 0.05,
                .deviation = 0.016,
                .moved = 1.24,
                .learnt = 0.9},
               {.kind = LearntKind::gauge,
                .of = "carried gauge",
                .more = -0.04 * psi,
                .more_deviation_before = 1 * psi,
                .more_deviation = 0.99 * psi,
                .moved = -0.04,
                .learnt = 0.02}};
  it.not_told_apart = {{{{1, 0.8}, {0, 0.6}}, 0.7}};
  it.before = {{.pressure_predicted = 33 * psi, .pressure_read = 30 * psi, .misfit = -2}};
  it.fits = {{.pressure_predicted = 30.04 * psi, .pressure_read = 30 * psi, .misfit = -0.1}};
  it.worst = 0;
  return it;
}

TEST(CalibrationReport, SaysWhatWasLearntAndHowSure) {
  const std::string text = unbroken(calibration_report(one_reading, example(), UnitSystem::us));
  EXPECT_THAT(text, StartsWith("The reading fits, once the layout is calibrated."));
  EXPECT_THAT(text, HasSubstr("a rougher lateral (150 to 128, give or take 4 %)"));
  EXPECT_THAT(text, HasSubstr("more flow out of each turning head (+6 %, give or take 2 %)"));
  EXPECT_THAT(text, Not(HasSubstr("carried gauge")));
  EXPECT_THAT(text, HasSubstr("and 1 of which these readings tell next to nothing"));
  EXPECT_THAT(text, HasSubstr("the riser of row 1, outlet 10"));
  EXPECT_THAT(text, HasSubstr("33.0 psi"));
  EXPECT_THAT(text, Not(HasSubstr("30.04")));
}

TEST(CalibrationReport, SaysWhatCannotBeToldApart) {
  const std::string text = unbroken(calibration_report(one_reading, example(), UnitSystem::us));
  EXPECT_THAT(text, HasSubstr("cannot tell apart"));
  EXPECT_THAT(text,
              HasSubstr("more flow out of each turning head together with a smoother lateral"));
}

TEST(CalibrationReport, WarnsFirstWhenTheReadingsDoNotFit) {
  Calibration bad = example();
  bad.fits_well = false;
  bad.fits[0].misfit = -6.24;
  const std::string text = calibration_report(one_reading, bad, UnitSystem::us);
  EXPECT_THAT(text, StartsWith("THE READINGS DO NOT FIT"));
  EXPECT_THAT(text, HasSubstr("6.2"));
  EXPECT_THAT(text, HasSubstr("DOES NOT FIT\n"));
}

TEST(DriftReport, SaysWhichAndSinceWhen) {
  const std::vector<DayOfReadings> log{{.name = "1 June"}, {.name = "8 June"}, {.name = "15 June"}};
  Drift drift;
  drift.places = {{.place = one_reading[0]}};
  EXPECT_THAT(drift_report(log, drift, UnitSystem::us), StartsWith("No reading has left"));
  PlaceDrift& place = drift.places[0];
  place.normal_pressure = 31 * psi;
  place.pressure_scatter = 1 * psi;
  place.last_pressure = 28 * psi;
  place.since = 1;
  place.alarm = 2;
  const std::string text = unbroken(drift_report(log, drift, UnitSystem::us));
  EXPECT_THAT(text, StartsWith("1 of 1 places no longer reads what it used to."));
  EXPECT_THAT(text, HasSubstr("the riser of row 1, outlet 10 has read less since 8 June"));
  EXPECT_THAT(text, HasSubstr("28.0 psi"));
}

}  // namespace
}  // namespace hydro
