// Which lines the sets open, what a layout keeps of them when it is changed, and valves.
#include "hydro/layout/watering_set.hpp"

#include "hydro/layout/layout.hpp"
#include "hydro/solver/solve.hpp"

#include <functional>
#include <string>
#include <vector>

#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using units::m;
using Names = std::vector<std::string>;

Line line(const std::string& name, const std::string& fed_by, bool with_outlets = true) {
  Line it{.name = name,
          .fed_by = fed_by,
          .pipe = {.inside_diameter = 50 * mm, .hazen_williams = 150},
          .length = 20 * m};
  if (with_outlets) {
    it.outlet = Outlet{.flow = 100 * lph, .at = 100 * kPa};
    it.count = 2;
    it.spacing = 10 * m;
  }
  return it;
}

/// main - near - near row
///      \ far (a pipe) - far row - far end
///      \ standpipe
const std::vector<WateringSet> near_and_far{{"near", {"near"}}, {"far", {"far row"}}};
Layout farm(const std::vector<WateringSet>& sets = near_and_far,
            const Supply& supply = {.pressure = 300 * kPa}) {
  return Layout(supply,
                {line("main", "", false),
                 line("near", "main"),
                 line("near row", "near"),
                 line("far", "main", false),
                 line("far row", "far"),
                 line("far end", "far row"),
                 line("standpipe", "main")},
                {},
                {},
                sets);
}

Names open_lines(const Layout& layout) {
  Names names;
  for (std::size_t i = 0; i < layout.lines().size(); ++i)
    if (!layout.is_shut(i)) names.push_back(layout.lines()[i].name);
  return names;
}

std::string message_of(const std::function<void()>& call) {
  try {
    call();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "nothing was thrown";
}

TEST(Sets, OpenFeedersAndWhatHangs) {
  EXPECT_THAT(open_lines(farm()),
              ElementsAre("main", "near", "near row", "far", "far row", "far end", "standpipe"));
  EXPECT_THAT(open_lines(farm().watering({"near"})), ElementsAre("main", "near", "near row"));
  EXPECT_THAT(open_lines(farm().watering({"far"})),
              ElementsAre("main", "far", "far row", "far end"));
  EXPECT_THAT(open_lines(farm().watering({"far", "near"})),
              ElementsAre("main", "near", "near row", "far", "far row", "far end"));
  EXPECT_THAT(open_lines(farm({{"main", {"main"}}}).watering({"main"})),
              ElementsAre("main", "near", "near row", "far", "far row", "far end", "standpipe"));
  // What hangs on an open line is shut where another set names it, or a line between.
  EXPECT_THAT(open_lines(farm({{"main", {"main"}}, {"far", {"far row"}}}).watering({"main"})),
              ElementsAre("main", "near", "near row", "far", "standpipe"));
}

TEST(Sets, ShutLinesTakeNoWater) {
  const Solution near = solve(farm().watering({"near"}));
  EXPECT_EQ(near.line("far row").inflow, Flow{});
  EXPECT_TRUE(near.line("far row").shut);
  EXPECT_THAT(near.line("far row").state, ElementsAre(OutletState::closed, OutletState::closed));
  EXPECT_EQ(near.inflow() / lph > 0, true);
}

TEST(Sets, RunUntilNoneIsChosen) {
  EXPECT_EQ(farm().watering({"near"}).without_watering(), farm());
  EXPECT_EQ(farm().watering({"near"}).watering({"far"}), farm().watering({"far"}));
  EXPECT_NE(farm().watering({"near"}), farm());
  EXPECT_NE(farm(), farm({}));
}

TEST(Sets, MustMakeSense) {
  EXPECT_THAT(
      message_of([] {
        farm({{"a", {"nowhere"}}});
      }),
      testing::AllOf(HasSubstr("set 1"), HasSubstr("\"nowhere\""), HasSubstr("\"far row\"")));
  EXPECT_THAT(message_of([] {
                farm({{"a", {"near"}}, {"a", {"far"}}});
              }),
              testing::AllOf(HasSubstr("set 2"), HasSubstr("the name of set 1 already")));
  EXPECT_THAT(message_of([] { farm({{"a", {}}}); }), HasSubstr("lines: is empty"));
  EXPECT_THAT(message_of([] { farm({{"", {"near"}}}); }), HasSubstr("name: is empty"));
  EXPECT_THAT(message_of([] { farm({{"a", {"near", "near"}}}); }), HasSubstr("named already"));
  EXPECT_THAT(message_of([] { farm().watering({}); }), HasSubstr("is empty"));
  EXPECT_THAT(message_of([] { farm().watering({"noon"}); }),
              testing::AllOf(HasSubstr("\"noon\""), HasSubstr("\"near\", \"far\"")));
  EXPECT_THAT(message_of([] { farm().watering({"near", "near"}); }), HasSubstr("twice"));
}

TEST(Sets, KeepRunningWhileTheLayoutChanges) {
  const Layout near = farm().watering({"near"});
  Line wide = near.line("near row");
  wide.pipe.inside_diameter = 60 * mm;
  for (const Layout& changed : {near.with_line(wide),
                                near.without("standpipe"),
                                near.with_supply({.pressure = 200 * kPa}),
                                near.with_fault(capped("near", 1)),
                                near.with_fault(capped("near", 1)).without_faults()}) {
    EXPECT_THAT(changed.running_sets(), ElementsAre("near"));
    EXPECT_TRUE(changed.is_shut(changed.index_of("far row")));
  }
  // Without its last line a set is gone, and nothing runs.
  const Layout gone = near.without("near row").without("near");
  EXPECT_THAT(gone.running_sets(), IsEmpty());
  EXPECT_THAT(gone.sets(), ElementsAre(near_and_far[1]));
}

TEST(Sets, AnotherElevationOfTheSupply) {
  const Layout low = farm().watering({"near"});
  const Layout high = low.with_supply({.pressure = 300 * kPa, .elevation = 10 * m});
  EXPECT_EQ(high.inlet_elevation(high.index_of("near row")), 10 * m);
  EXPECT_EQ(high, farm(near_and_far, high.supply()).watering({"near"}));
  EXPECT_EQ(solve(high).inflow(), solve(low).inflow());  // the lines lie as they lay from it
}

TEST(ValveLeftOpen, OpensAsFarAsWaterStands) {
  const Layout near = farm().watering({"near"});
  // The pipe to it has no valve of its own; what hangs on it runs too.
  EXPECT_THAT(open_lines(near.with_fault(valve_left_open("far row"))),
              ElementsAre("main", "near", "near row", "far", "far row", "far end"));
  // A feeder that another set names is shut: no water stands there.
  const std::vector<WateringSet> with_pipe{
      {"near", {"near"}}, {"far pipe", {"far"}}, {"far", {"far row"}}};
  EXPECT_THAT(open_lines(farm(with_pipe).watering({"near"}).with_fault(valve_left_open("far row"))),
              ElementsAre("main", "near", "near row"));
  EXPECT_THAT(open_lines(farm(with_pipe).watering({"near"}).with_faults(
                  {valve_left_open("far row"), valve_left_open("far")})),
              ElementsAre("main", "near", "near row", "far", "far row", "far end"));
  EXPECT_GT(solve(near.with_fault(valve_left_open("far row"))).inflow(), solve(near).inflow());
}

TEST(ValveLeftOpen, NeedsAValve) {
  EXPECT_THAT(message_of([] { farm({}).with_fault(valve_left_open("far row")); }),
              HasSubstr("whose valve is not shut"));
  Line shut = farm().line("far row");
  shut.valve = Valve{.opening = ValveOpening::shut};
  const Layout one_shut = farm({}).with_line(shut);
  EXPECT_THAT(open_lines(one_shut), ElementsAre("main", "near", "near row", "far", "standpipe"));
  EXPECT_EQ(open_lines(one_shut.with_fault(valve_left_open("far row"))), open_lines(farm()));
}

TEST(Valve, ShutStaysShutInARunningSet) {
  Line shut = farm().line("far row");
  shut.valve = Valve{.opening = ValveOpening::shut};
  const Layout far = farm().with_line(shut).watering({"far"});
  EXPECT_THAT(open_lines(far), ElementsAre("main", "far"));
  const Solution all_shut = solve(far);
  EXPECT_EQ(all_shut.inflow(), Flow{});
  EXPECT_TRUE(all_shut.residuals().are_met());
}

TEST(Faults, OfAShutLineDoNothing) {
  const Layout near = farm().watering({"near"});
  for (const Fault& fault : std::vector<Fault>{capped("far row", 1),
                                               worn("far row", 1, 0.5),
                                               leak("far row", 5 * m, 100 * lph, 100 * kPa),
                                               line_cut("far row", 5 * m),
                                               end_open("far end")}) {
    const Solution faulty = solve(near.with_fault(fault));
    EXPECT_EQ(faulty.inflow(), solve(near).inflow());
    EXPECT_THAT(faulty.line("far row").openings, IsEmpty());
  }
}

TEST(Faults, OfASupplyWithoutThatPart) {
  for (const Fault& fault :
       std::vector<Fault>{pump_worn(0.1), engine_slow(1000 * rpm), filter_dirty(50 * kPa)})
    EXPECT_THAT(message_of([&] { farm().with_fault(fault); }), HasSubstr("fault 1"))
        << kind_of(fault);
  const Supply pump{
      .pump = Pump{.points = {{0 * gpm, 50 * m}, {100 * gpm, 30 * m}}, .curve_speed = 2000 * rpm},
      .filter = Filter{10 * kPa, 10 * gpm}};
  const Layout pumped = farm(near_and_far, pump);
  EXPECT_NO_THROW(
      pumped.with_faults({pump_worn(0.1), engine_slow(1000 * rpm), filter_dirty(50 * kPa)}));
  EXPECT_THAT(message_of([&] { pumped.with_fault(pump_worn(0.1, 2)); }), HasSubstr("fault 1"));
  EXPECT_THAT(message_of([&] {
                pumped.with_faults({pump_worn(0.1), pump_worn(0.2)});
              }),
              HasSubstr("that of fault 1 already"));
  EXPECT_THROW(pumped.with_fault(pump_worn(0.1)).with_supply({.pressure = 1 * bar}), InvalidInput);
}

}  // namespace
}  // namespace hydro
