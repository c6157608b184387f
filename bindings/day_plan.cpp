// day_plan.cpp: the watering day: which sets run when, and what it takes.

#include "hydro/watering/day_plan.hpp"

#include "hydro/watering/todays_sets.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/at_work.hpp"
#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

void bind_what_is_asked(py::module_& module) {
  Record<SetToWater>("SetToWater",
                     "One set that is to be watered: for a time, or for what is needed on its "
                     "ground.")
      .field("set", &SetToWater::set, "Its name.")
      .field("time", &SetToWater::time, "Or need.")
      .field("need", &SetToWater::need, "A WaterAmount, on the ground.")
      .field("ground", &SetToWater::ground, "No lines named: all that the set opens.")
      .description(module);
  Record<WaterPrices>("WaterPrices", "Prices; money is a plain number, in any one currency.")
      .field("of_volume", &WaterPrices::of_volume, "None: water costs nothing.")
      .field("volume", &WaterPrices::volume, "For which that is paid.")
      .field("of_energy", &WaterPrices::of_energy, "At the shaft.")
      .field("energy", &WaterPrices::energy, "For which that is paid.")
      .field("of_pump_time", &WaterPrices::of_pump_time, "Of the hours it runs.")
      .field("pump_time", &WaterPrices::pump_time, "For which that is paid.")
      .description(module);
}

void bind_turn(py::module_& module) {
  auto turn =
      Record<Turn>("Turn", "Sets that run at once for a while.")
          .field("sets", &Turn::sets, "Their names.")
          .field("fill_from", &Turn::fill_from, "Since midnight, like the next two.")
          .field("start", &Turn::start, "All lines are full.")
          .field("stop", &Turn::stop, "All is shut, or the next turn begins.")
          .field("speed", &Turn::speed, "None: a held pressure, or it cannot be set.")
          .field("pressure", &Turn::pressure, "Before the filter.")
          .field("gauge_reading", &Turn::gauge_reading, "None: there is no gauge.")
          .field("reached", &Turn::reached, "Every outlet has its share of rated.")
          .field("limits", &Turn::limits, "That are passed.")
          .field("flow", &Turn::flow, "Out of all supplies.")
          .field("fill", &Turn::fill, "Into lines that were empty.")
          .field("let_out", &Turn::let_out, "By whole outlets.")
          .field("lost", &Turn::lost, "Through breaks, leaks and open ends.")
          .field("run_out",
                 &Turn::run_out,
                 "The most that leaves its lines if all is shut off after it; not pumped.")
          .field("water_energy", &Turn::water_energy, "Into the water.")
          .field("shaft_energy", &Turn::shaft_energy, "None: the efficiency is not known there.")
          .result(module);
  method(turn, "pumped", &Turn::pumped, {}, "fill, let_out and lost together.");
  Record<SetDay>("SetDay", "How a set fares.")
      .field("set", &SetDay::set, "Its name.")
      .field("runs", &SetDay::runs, "In all.")
      .field("share", &SetDay::share, "Of what it needs [-].")
      .field("let_out", &SetDay::let_out, "By whole outlets.")
      .field("still_needs",
             &SetDay::still_needs,
             "As it ran last, or alone; None: nothing, or not known.")
      .field("why_left", &SetDay::why_left, "None: it has all.")
      .field("limits", &SetDay::limits, "That stand in its way, run alone.")
      .field("application", &SetDay::application, "As it ran last; None: it did not run.")
      .field("run", &SetDay::run, "For its need, as it ran last; None: it runs for a time.")
      .result(module);
}

void bind_day(py::module_& module) {
  auto plan = Record<DayPlan>("DayPlan", "The watering day.")
                  .field("turns", &DayPlan::turns, "In their order.")
                  .field("sets", &DayPlan::sets, "In the order in which they were asked for.")
                  .field("earliest", &DayPlan::earliest, "As it was asked for.")
                  .field("latest", &DayPlan::latest, "As it was asked for.")
                  .field("pumped", &DayPlan::pumped, "fill, let_out and lost together.")
                  .field("let_out", &DayPlan::let_out, "By whole outlets.")
                  .field("lost", &DayPlan::lost, "Through breaks, leaks and open ends.")
                  .field("fill", &DayPlan::fill, "Into lines that were empty.")
                  .field("pump_time", &DayPlan::pump_time, "Filling counts.")
                  .field("water_energy", &DayPlan::water_energy, "Into the water.")
                  .field("shaft_energy", &DayPlan::shaft_energy, "None: not known of some turn.")
                  .field("cost", &DayPlan::cost, "Money; None: no prices, or not known.")
                  .result(module);
  method(plan, "all_fits", &DayPlan::all_fits, {}, "Whether every set has what it needs.");
  const DayOptions defaults;
  def(
      module,
      "day_plan",
      [](const Layout& layout,
         const std::vector<SetToWater>& sets,
         const Time& earliest,
         const Time& latest,
         bool together,
         const Time& changeover,
         const Velocity& fill_velocity,
         double share,
         const RunTimeOptions& soil,
         const WaterPrices& prices,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return day_plan(layout,
                          sets,
                          {.earliest = earliest,
                           .latest = latest,
                           .together = together,
                           .changeover = changeover,
                           .fill_velocity = fill_velocity,
                           .share = share,
                           .soil = soil,
                           .prices = prices},
                          work);
        });
      },
      with_work({"layout",
                 "sets",
                 {"earliest", py::cast(defaults.earliest), Passing::by_name},
                 {"latest", py::cast(defaults.latest), Passing::by_name},
                 {"together", py::cast(defaults.together), Passing::by_name},
                 {"changeover", py::cast(defaults.changeover), Passing::by_name},
                 {"fill_velocity", py::cast(defaults.fill_velocity), Passing::by_name},
                 {"share", py::cast(defaults.share), Passing::by_name},
                 {"soil", py::cast(defaults.soil), Passing::by_name},
                 {"prices", py::cast(defaults.prices), Passing::by_name}}),
      ("One day's watering, set after set, with the faults of the layout. A day too short is no "
       "error: what is left is told. InvalidInput for sets that the layout does not have or that "
       "open no outlet, a need that fits no line, hours that end before they begin; NotSolved.\n"
       "earliest, latest: since midnight, daylight or when the pump may run. together: sets that "
       "can. changeover: between two turns. fill_velocity: common practice, no source. share: of "
       "its rated pressure at every outlet. soil: what it and the air do with the water. prices: "
       "for the cost. " +
       std::string(words_on_work) + example_row +
       ">>> farm = Layout(Supply(pressure=40 * psi), [row],\n"
       "...               sets=[WateringSet(name=\"one\", lines=[\"row 1\"])])\n"
       ">>> plan = day_plan(farm, [SetToWater(set=\"one\", time=2 * units.h)])\n"
       ">>> plan.all_fits(), plan.turns[0].sets\n"
       "(True, ['one'])")
          .c_str());
}

void bind_todays_sets(py::module_& module) {
  Record<TodaysSets>("TodaysSets", "The sets of a layout, by what its blocks need.")
      .field("to_water", &TodaysSets::to_water, "In the order of the layout.")
      .field("enough", &TodaysSets::enough, "Of blocks that need no water today.")
      .field("no_block", &TodaysSets::no_block, "Whose outlets stand in no block.")
      .result(module);
  def(module,
      "todays_sets",
      &todays_sets,
      {"layout", "blocks", "needs"},
      ("Which sets water the blocks that need it today, and how much each must give, without what "
       "is lost on the way. needs: one for each of the blocks. InvalidInput for a set whose "
       "outlets "
       "stand in two blocks, a block of which neither area nor spacing is known, a block without "
       "its need.\n\n" +
       example_row +
       ">>> farm = Layout(Supply(pressure=40 * psi), [row],\n"
       "...               sets=[WateringSet(name=\"one\", lines=[\"row 1\"])])\n"
       ">>> bed = Block(name=\"bed\", lines=[\"row 1\"], crop_coefficient=1.2, root_depth=0.8 * "
       "m,\n"
       "...             allowed_depletion=0.4, soil=Soil(available_water=0.2), row_spacing=30 * "
       "ft)\n"
       ">>> need = water_need(bed, [], WaterDay(reference_evapotranspiration=5 * mm_per_day))\n"
       ">>> todays_sets(farm, [bed], [need]).to_water[0].set\n"
       "'one'")
          .c_str());
}

}  // namespace

void bind_day_plan(py::module_& module) {
  bind_what_is_asked(module);
  bind_turn(module);
  bind_day(module);
  bind_todays_sets(module);
}

}  // namespace hydro::bindings
