// Application rates and run times against published numbers, and the volumes they must add up to.
//
// A tolerance is half a unit of the last printed digit, or comes from the arithmetic.
#include "hydro/watering/application.hpp"

#include "hydro/solver/solve.hpp"
#include "hydro/watering/run_time.hpp"

#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include "accuracy.hpp"
#include "ouzel_strips.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using units::m;

constexpr double arithmetic = 1e-12;

/// One line whose outlets give just these flows: wide pipe, and emitters that do not feel pressure.
Solution giving(const std::vector<Flow>& flows) {
  Line line{.name = "row", .pipe = {.inside_diameter = 500 * mm, .hazen_williams = 150}};
  for (std::size_t i = 0; i < flows.size(); ++i)
    line.outlets.push_back(
        {double(i + 1) * m,
         Outlet{.flow = flows[i], .compensating = Compensating{5 * psi, 60 * psi}}});
  return solve(Layout({.pressure = 30 * psi}, {line}));
}

std::vector<Flow> alike(std::size_t count, const Flow& flow) {
  return std::vector<Flow>(count, flow);
}

struct PublishedRate {
  const char* source;
  std::vector<Flow> flows;
  Area area;
  double rate;     // [in/h]
  double printed;  // half of the last digit
  double cut = 0;  // which is cut off, not rounded
};

TEST(Application, GivesPublishedRates) {
  std::vector<Flow> worksheet = alike(6, 1.0 * gpm);
  worksheet.insert(worksheet.end(), 4, 0.5 * gpm);
  // The second source has 96.3 for 96.25, and the third cut its 0.1925 off.
  const std::vector<PublishedRate> published{
      {"head layout worksheet: 60 x 15 ft, 8.0 gal/min", worksheet, 900 * ft2, 0.86, 0.005},
      {"the same: triangles of 25 and 30 ft, three heads with 6 gal/min in all",
       alike(3, 2 * gpm),
       0.866 * 25 * 30 * ft2,
       0.89,
       0.005},
      {"NMSU Soil 456, chapter 5: 40 x 50 ft, 4 gal/min",
       alike(1, 4 * gpm),
       2000 * ft2,
       0.192,
       0.0005,
       0.0005},
      {"utility page: 10 gal/min on 1000 ft2", alike(4, 2.5 * gpm), 1000 * ft2, 0.9625, 0.00005}};
  for (const PublishedRate& it : published) {
    const Application found = application(giving(it.flows), {.lines = {"row"}, .area = it.area});
    ASSERT_TRUE(found.rates) << it.source;
    EXPECT_NEAR(
        record(Accuracy::application, found.rates->average / inch_per_h, it.rate, it.printed),
        it.rate,
        it.printed + it.cut)
        << it.source;
  }
}

TEST(Application, SharesByAreaAndBySpacingAlike) {
  const Solution solution = solve(ouzel_strips().watering({"rows 1 and 2"}));
  const Ground by_spacing{.lines = {"row 1", "row 2"}, .row_spacing = 30 * ft};
  const Ground by_area{.lines = {"row 1", "row 2"}, .area = 20 * 36 * 30 * ft2};
  const ApplicationRates one = *application(solution, by_spacing).rates;
  const ApplicationRates other = *application(solution, by_area).rates;
  EXPECT_NEAR(one.average / other.average, 1, arithmetic);
  EXPECT_NEAR(one.low_quarter / other.low_quarter, 1, arithmetic);
  EXPECT_LT(one.driest, one.low_quarter);
  EXPECT_LT(one.low_quarter, one.average);
  EXPECT_LT(one.average, one.wettest);
  const Flow both = solution.line("row 1").inflow + solution.line("row 2").inflow;
  EXPECT_NEAR(application(solution, by_area).total / both, 1, arithmetic);
  const auto lines = application_by_line(solution, by_area);
  ASSERT_THAT(lines, SizeIs(2));
  EXPECT_NEAR(lines[0].total / solution.line("row 1").inflow, 1, arithmetic);
  EXPECT_LT(lines[1].rates->average, lines[0].rates->average);  // row 2 climbs
}

TEST(Application, TakesTheLowestQuarterWholeOrInPart) {
  // Of six, the lowest quarter is one outlet and half of the next: (1 + 2/2) / 1.5.
  const Application found =
      application(giving({6 * lpm, 5 * lpm, 4 * lpm, 3 * lpm, 2 * lpm, 1 * lpm}),
                  {.lines = {"row"}, .area = 6 * m2});
  EXPECT_NEAR(found.flows.low_quarter / lpm, 2 / 1.5, arithmetic);
  EXPECT_NEAR(found.rates->low_quarter / mm_per_h, 60 * 2 / 1.5, 60 * arithmetic);
  EXPECT_NEAR(found.distribution, 100 * (2 / 1.5) / 3.5, 100 * arithmetic);
  EXPECT_NEAR(found.rates->driest / mm_per_h, 60, 60 * arithmetic);
  EXPECT_NEAR(found.rates->wettest / mm_per_h, 360, 360 * arithmetic);
}

TEST(Application, KnowsNoDepthWithoutGround) {
  const Application found =
      application(giving(alike(4, 2 * lph)), {.lines = {"row"}, .outlets_per_plant = 2});
  EXPECT_FALSE(found.rates);
  EXPECT_THAT(found.area, IsEmpty());
  EXPECT_NEAR(found.to_plant(found.flows.mean) / lph, 4, 4 * arithmetic);
  EXPECT_THAT(refusal([&] { run_time(found, {.depth = 5 * mm}); }),
              HasSubstr("neither the spacing nor the area"));
}

TEST(Application, LeavesOutBrokenAndCappedButNotDryOnes) {
  const Solution solution = solve(with_all_states());
  int counted = 0;
  std::vector<std::string> names;
  for (const LineSolution& line : solution.lines()) {
    if (line.state.empty()) continue;
    names.push_back(line.name);
    for (const OutletState state : line.state)
      counted += state == OutletState::closed || state == OutletState::broken ? 0 : 1;
  }
  const Application found = application(solution, {.lines = names});
  EXPECT_EQ(found.flows.count, counted);
  EXPECT_EQ(found.flows.least, Flow{});
}

TEST(Application, RefusesWhatCannotBe) {
  const Solution solution = solve(ouzel_strips().watering({"rows 1 and 2"}));
  const auto refused = [&](const Ground& ground) {
    return refusal([&] { application(solution, ground); });
  };
  EXPECT_THAT(refused({}), HasSubstr("are none, must be one or more"));
  EXPECT_THAT(refused({.lines = {"row 9"}}), HasSubstr("\"row 9\", which is no line"));
  EXPECT_THAT(refused({.lines = {"row 1", "row 1"}}), HasSubstr("more than once"));
  EXPECT_THAT(refused({.lines = {"row 1"}, .row_spacing = 30 * ft, .area = 3 * m2}),
              HasSubstr("both given"));
  EXPECT_THAT(refused({.lines = {"row 1"}, .row_spacing = std::nan("") * m}), HasSubstr("nan"));
  EXPECT_THAT(refused({.lines = {"row 3"}}), HasSubstr("no outlet that is whole and open"));
  EXPECT_THAT(refusal([] {
                application(giving(alike(2, 1 * lpm)), {.lines = {"row"}, .row_spacing = 2 * m});
              }),
              HasSubstr("stand unevenly"));
}

// ---- run times

TEST(RunTime, IsNeedOverRateOfTheWeakestQuarter) {
  const Application rows = application(solve(ouzel_strips().watering({"rows 1 and 2"})),
                                       {.lines = {"row 1", "row 2"}, .row_spacing = 30 * ft});
  const RunTime found = run_time(rows, {.depth = 0.5 * inch}, {.effective_portion = 0.8});
  EXPECT_NEAR(si(*found.for_low_quarter) * 0.8 * si(rows.rates->low_quarter) / (0.5 * 0.0254),
              1,
              arithmetic);
  EXPECT_NEAR(
      si(found.for_average) * 0.8 * si(rows.rates->average) / (0.5 * 0.0254), 1, arithmetic);
  EXPECT_NEAR(found.for_average / *found.for_low_quarter, rows.distribution / 100, arithmetic);
  EXPECT_EQ(found.does.time, *found.for_low_quarter);
}

// University of California, evaluation of a drip system in a vineyard: two emitters a vine, 0.48 gal/h
// each on average, are 0.96 gal/h a vine; gallons a day = 0.623 x square feet x inches a day.
TEST(RunTime, OfVinesIsAsPublished) {
  const Application vines =
      application(giving(alike(36, 0.48 * gph)),
                  {.lines = {"row"}, .area = 18 * 7 * 11 * ft2, .outlets_per_plant = 2});
  const double to_vine = vines.to_plant(vines.flows.mean) / gph;
  EXPECT_NEAR(record(Accuracy::application, to_vine, 0.96, 0.005), 0.96, 0.005);
  const RunTimeOptions no_loss{.effective_portion = 1};
  const Time by_depth = run_time(vines, {.depth = 0.2 * inch}, no_loss).for_average;
  const Time by_volume =
      run_time(vines, {.per_plant = 0.623 * 77 * 0.2 * gallon}, no_loss).for_average;
  EXPECT_NEAR(by_depth / units::h, 0.623 * 77 * 0.2 / 0.96, 10 * 0.0005 / 0.623);
  EXPECT_NEAR(by_volume / by_depth, 1, 0.0005 / 0.623);
}

TEST(RunTime, ForPlantsGoesByTheirOutlets) {
  // 10 L to each plant from two outlets of 2 L/h, of which all comes to the soil: 2.5 h.
  const Application drip =
      application(giving(alike(8, 2 * lph)), {.lines = {"row"}, .outlets_per_plant = 2});
  const RunTime found = run_time(drip, {.per_plant = 10 * litre}, {.effective_portion = 1});
  EXPECT_NEAR(found.for_average / units::h, 2.5, 2.5 * arithmetic);
  EXPECT_NEAR(found.does.let_out / litre, 40, 40 * arithmetic);  // four plants
  EXPECT_NEAR(found.does.efficiency, 1, arithmetic);
  EXPECT_EQ(found.does.served_share, 1);
}

TEST(RunTime, AccountsForEveryLitre) {
  const Application rows = application(solve(ouzel_strips().watering({"rows 1 and 2"})),
                                       {.lines = {"row 1", "row 2"}, .row_spacing = 30 * ft});
  const WaterAmount need{.depth = 12 * mm};
  const Volume needed = Volume::from_value(0.012 * 20 * 36 * 30 * 0.09290304);
  for (const double hours : {0.0, 0.5, 1.5, 2.5, 20.0})
    for (const double portion : {0.7, 1.0}) {
      const Watering does = watering(rows, need, hours * units::h, {.effective_portion = portion});
      EXPECT_NEAR(si(does.to_the_air + does.to_the_roots + does.deeper - does.let_out),
                  0,
                  arithmetic * si(needed));
      EXPECT_NEAR((does.to_the_roots + does.missing) / needed, 1, arithmetic);
      EXPECT_NEAR(si(does.let_out), si(rows.total) * hours * 3600, arithmetic * si(needed) * 100);
    }
  // Long enough for the weakest quarter: some of that quarter still lack a little, the rest runs deep.
  const RunTime found = run_time(rows, need);
  EXPECT_GT(found.does.deeper, Volume{});
  EXPECT_GT(found.does.missing, Volume{});
  EXPECT_GT(found.does.served_share, 0.75);
  EXPECT_LT(found.does.served_share, 1);
}

TEST(RunTime, RestsUntilTheSurfaceIsDry) {
  // 30 mm/h on soil that takes 10 mm/h, with 5 mm standing at most: 15 min at once, then 30 min.
  const Application spray =
      application(giving(alike(4, 0.5 * lpm)), {.lines = {"row"}, .area = 4 * m2});
  const RunTimeOptions soil{.effective_portion = 1, .intake_rate = 10 * mm_per_h};
  const RunTime found = run_time(spray, {.depth = 30 * mm}, soil);
  EXPECT_NEAR(*found.longest_burst / units::min, 15, 15 * arithmetic);
  EXPECT_EQ(found.bursts.bursts, 4);
  EXPECT_NEAR(found.bursts.each / units::min, 15, 15 * arithmetic);
  EXPECT_NEAR(found.bursts.rest / units::min, 30, 30 * arithmetic);
  EXPECT_NEAR(found.bursts.whole / units::min, 4 * 15 + 3 * 30, 150 * arithmetic);
  EXPECT_FALSE(found.bursts.runs_off);

  // The same in steps of a second: what stands never passes 5 mm, and is gone after each rest.
  double standing = 0, most = 0, came = 0;
  for (int second = 0; second < 150 * 60; ++second) {
    const bool runs = second % (45 * 60) < 15 * 60;
    came += runs ? 30.0 / 3600 : 0;
    standing = std::max(0.0, standing + (runs ? 30.0 / 3600 : 0) - 10.0 / 3600);
    most = std::max(most, standing);
    if (second % (45 * 60) == 45 * 60 - 1) {
      EXPECT_NEAR(standing, 0, 1e-9);
    }
  }
  EXPECT_NEAR(most, 5, 1e-9);
  EXPECT_NEAR(came, 30, 1e-9);
}

// As irrigation managers reckon (the Irrigation Association's practice, from memory): clay loam takes 0.2
// in/h and holds 0.26 in on level ground; at 1.5 in/h it runs off after 60 x 0.26 / 1.3 = 12 min, and
// what stands is gone after 60 x 0.26 / 0.2 = 78 min.
TEST(RunTime, BurstsAreAsIrrigationManagersReckon) {
  const Application spray =
      application(giving(alike(4, 1.5 / 96.25 * 100 * gpm)), {.lines = {"row"}, .area = 400 * ft2});
  const RunTime found = run_time(
      spray,
      {.depth = 0.3 * inch},
      {.effective_portion = 1, .intake_rate = 0.2 * inch_per_h, .surface_storage = 0.26 * inch});
  EXPECT_NEAR(*found.longest_burst / units::min, 12, 12e-9);
  EXPECT_EQ(found.bursts.bursts, 1);
  const RunTime twice = run_time(
      spray,
      {.depth = 0.6 * inch},
      {.effective_portion = 1, .intake_rate = 0.2 * inch_per_h, .surface_storage = 0.26 * inch});
  EXPECT_NEAR(twice.bursts.each / units::min, 12, 12e-9);
  EXPECT_NEAR(twice.bursts.rest / units::min, 78, 78e-9);
}

TEST(RunTime, ComparesLongWithShort) {
  const Application spray =
      application(giving(alike(4, 0.5 * lpm)), {.lines = {"row"}, .area = 4 * m2});
  const RunTimeOptions soil{
      .effective_portion = 1, .intake_rate = 10 * mm_per_h, .wetting_loss = 1 * mm};
  const std::vector<Bursts> all = long_or_short(spray, {.depth = 30 * mm}, soil, 6);
  ASSERT_THAT(all, SizeIs(6));
  for (std::size_t i = 0; i < all.size(); ++i) {
    const double n = static_cast<double>(i + 1);
    // Each burst must bring 1 mm more, at 30 mm/h.
    EXPECT_NEAR(all[i].does.time / units::min, 60 + 2 * n, 1e-9);
    EXPECT_NEAR(all[i].does.to_the_roots / litre, 4 * 30, 1e-9);
    EXPECT_NEAR(all[i].does.to_the_air / litre, 4 * n, 1e-9);
    EXPECT_EQ(all[i].runs_off, i < 4) << i;  // (60 + 2 n) / n min at a surplus of 20 mm/h
  }
  EXPECT_GT(all[0].does.efficiency, all[5].does.efficiency);
}

TEST(RunTime, RefusesWhatCannotBe) {
  const Application spray =
      application(giving(alike(4, 0.5 * lpm)), {.lines = {"row"}, .area = 4 * m2});
  const auto refused = [&](const WaterAmount& need, const RunTimeOptions& options = {}) {
    return refusal([&] { run_time(spray, need, options); });
  };
  EXPECT_THAT(refused({}), HasSubstr("one of the two is needed"));
  EXPECT_THAT(refused({.depth = 1 * mm, .per_plant = 1 * litre}), HasSubstr("both given"));
  EXPECT_THAT(refused({.per_plant = 1 * litre}), HasSubstr("outlets_per_plant is not known"));
  EXPECT_THAT(refused({.depth = -1 * mm}), HasSubstr("depth: is -1 mm"));
  EXPECT_THAT(refused({.depth = 1 * mm}, {.effective_portion = 1.1}),
              HasSubstr("options.effective_portion: is 1.1"));
  EXPECT_THAT(refused({.depth = 1 * mm}, {.intake_rate = std::nan("") * mm_per_h}),
              HasSubstr("options.intake_rate: is nan"));
  const Solution dry = solve(Layout({.pressure = 5 * psi}, {sample_row("row", 8, 30 * ft)}));
  const Application some = application(dry, {.lines = {"row"}, .outlets_per_plant = 1});
  EXPECT_EQ(some.flows.low_quarter, Flow{});
  EXPECT_THAT(refusal([&] { run_time(some, {.per_plant = 1 * litre}); }),
              HasSubstr("weakest quarter of the outlets gets no water"));
  EXPECT_FALSE(
      run_time(some, {.per_plant = 1 * litre}, {.served = ServedBy::average}).for_low_quarter);
}

}  // namespace
}  // namespace hydro
