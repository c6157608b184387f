// faults.cpp: what can go wrong with an outlet, with a line or its valve, or with the supply.

#include "hydro/layout/fault.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr const char* counts = "Counts from 1, from the inlet on.";
constexpr const char* k_of_break = "K of the break [-]; None: the riser's own where given, else 1.";
constexpr const char* from_inlet = "From the line's inlet.";
constexpr const char* whose_regulator = "The outlet whose own it is, from 1 on; None: the line's.";
constexpr const char* which_pump = "1 or 2; None: the first.";
constexpr const char* which_supply = "Name of a further one; empty: the first.";

void bind_kinds(py::module_& module) {
  Record<HeadOff>("HeadOff", "The outlet is knocked off: its riser stands open at the top.")
      .needed("line", &HeadOff::line, "Name of the line.")
      .needed("outlet", &HeadOff::outlet, counts)
      .field("loss_coefficient", &HeadOff::loss_coefficient, k_of_break)
      .description(module, "head_off");
  Record<RiserSheared>("RiserSheared", "The riser is sheared off: a stub stands open.")
      .needed("line", &RiserSheared::line, "Name of the line.")
      .needed("outlet", &RiserSheared::outlet, counts)
      .field("stub", &RiserSheared::stub, "None: 0.5 ft, or the riser if that is shorter.")
      .field("loss_coefficient", &RiserSheared::loss_coefficient, k_of_break)
      .description(module, "riser_sheared");
  Record<NozzleMissing>("NozzleMissing", "The nozzle is lost: the body's bore stands open.")
      .needed("line", &NozzleMissing::line, "Name of the line.")
      .needed("outlet", &NozzleMissing::outlet, counts)
      .field("bore", &NozzleMissing::bore, "None: the outlet's body_bore.")
      .field("discharge_coefficient", &NozzleMissing::discharge_coefficient, "Cd [-]; None: 0.85.")
      .description(module, "nozzle_missing");
  Record<Clogged>("Clogged", "Something in the nozzle: less flow at the same pressure.")
      .needed("line", &Clogged::line, "Name of the line.")
      .needed("outlet", &Clogged::outlet, counts)
      .needed("share", &Clogged::share, "Of the flow that is lost, above 0 and below 1 [-].")
      .description(module, "clogged");
  Record<Worn>("Worn", "A worn nozzle: more flow at the same pressure.")
      .needed("line", &Worn::line, "Name of the line.")
      .needed("outlet", &Worn::outlet, counts)
      .needed("share", &Worn::share, "Of the flow that is gained, above 0 to 10 [-].")
      .description(module, "worn");
  Record<WrongOutlet>("WrongOutlet",
                      "An outlet of another kind stands there, judged by its own rating.")
      .needed("line", &WrongOutlet::line, "Name of the line.")
      .needed("outlet", &WrongOutlet::outlet, counts)
      .needed("fitted", &WrongOutlet::fitted, "The kind that stands there.")
      .description(module, "wrong_outlet");
  Record<Capped>("Capped", "Closed on purpose.")
      .needed("line", &Capped::line, "Name of the line.")
      .needed("outlet", &Capped::outlet, counts)
      .description(module, "capped");
  Record<Leak>("Leak", "A hole in the line.")
      .needed("line", &Leak::line, "Name of the line.")
      .needed("place", &Leak::place, from_inlet)
      .needed("flow", &Leak::flow, "This flow ...")
      .needed("at", &Leak::at, "... at this pressure in the line, with ...")
      .field("exponent", &Leak::exponent, "... this exponent [-], 0.1 to 1.5; None: 0.5.")
      .description(module, "leak");
  Record<LineCut>("LineCut", "The line is cut through: both ends stand open, and no water passes.")
      .needed("line", &LineCut::line, "Name of the line.")
      .needed("place", &LineCut::place, from_inlet)
      .description(module, "line_cut");
  Record<EndOpen>("EndOpen", "The cap or flush valve at the far end is open.")
      .needed("line", &EndOpen::line, "Name of the line.")
      .description(module, "end_open");
  Record<ValvePartClosed>("ValvePartClosed", "The valve at the line's inlet is not fully open.")
      .needed("line", &ValvePartClosed::line, "Name of the line.")
      .needed("loss_coefficient",
              &ValvePartClosed::loss_coefficient,
              "K on the line's velocity head, beside the line's own [-].")
      .description(module, "valve_part_closed");
  Record<ValveLeftOpen>("ValveLeftOpen", "The valve of a line that should be shut is open.")
      .needed("line", &ValveLeftOpen::line, "Name of the line.")
      .description(module, "valve_left_open");
  Record<RegulatorStuckOpen>("RegulatorStuckOpen",
                             "A regulator no longer regulates: all pressure comes through.")
      .needed("line", &RegulatorStuckOpen::line, "Name of the line.")
      .field("outlet", &RegulatorStuckOpen::outlet, whose_regulator)
      .description(module, "regulator_stuck_open");
  Record<RegulatorStuckShut>("RegulatorStuckShut", "A regulator lets nothing through.")
      .needed("line", &RegulatorStuckShut::line, "Name of the line.")
      .field("outlet", &RegulatorStuckShut::outlet, whose_regulator)
      .description(module, "regulator_stuck_shut");
  Record<PumpWorn>("PumpWorn", "Worn impeller or rings: less head at every flow.")
      .needed("share", &PumpWorn::share, "Of the head that is lost, above 0 and below 1 [-].")
      .field("pump", &PumpWorn::pump, which_pump)
      .field("supply", &PumpWorn::supply, which_supply)
      .description(module, "pump_worn");
  Record<EngineSlow>("EngineSlow", "The engine does not reach its speed.")
      .needed("speed", &EngineSlow::speed, "That it reaches.")
      .field("pump", &EngineSlow::pump, which_pump)
      .field("supply", &EngineSlow::supply, which_supply)
      .description(module, "engine_slow");
  Record<FilterDirty>("FilterDirty", "Dirt in the filter.")
      .needed("loss", &FilterDirty::loss, "That it takes now, at the flow at which it is rated.")
      .field("supply", &FilterDirty::supply, which_supply)
      .description(module, "filter_dirty");
}

void bind_makers(py::module_& module) {
  def(module,
      "head_off",
      &head_off,
      {"line", "outlet", may_be_left_out("loss_coefficient")},
      "The outlet is knocked off and its riser stands open at the top. Outlets count from 1.\n"
      "loss_coefficient: K of the break [-], default the riser's own where given, else 1.\n\n"
      ">>> head_off(\"row 1\", 7)\nhead_off('row 1', 7)");
  def(module,
      "riser_sheared",
      &riser_sheared,
      {"line", "outlet", may_be_left_out("stub"), may_be_left_out("loss_coefficient")},
      "The riser is sheared off and a stub stands open. Outlets count from 1.\n"
      "stub: its height, default 0.5 ft or the riser if that is shorter.\n"
      "loss_coefficient: K of the break [-], default the riser's own where given, else 1.\n\n"
      ">>> riser_sheared(\"row 1\", 7, stub=3 * inch)\nriser_sheared('row 1', 7, stub=3 * inch)");
  def(module,
      "nozzle_missing",
      &nozzle_missing,
      {"line", "outlet", may_be_left_out("bore"), may_be_left_out("discharge_coefficient")},
      "The nozzle is lost and the body's bore stands open, q = Cd A sqrt(2 p / rho).\n"
      "bore: default the outlet's body_bore. discharge_coefficient: Cd [-], default 0.85.\n\n"
      ">>> nozzle_missing(\"row 1\", 7, bore=0.3 * inch)\n"
      "nozzle_missing('row 1', 7, bore=0.3 * inch)");
  def(module,
      "clogged",
      &clogged,
      {"line", "outlet", "share"},
      "Something sits in the nozzle. share: of the flow that is lost, above 0 and below 1 [-].\n\n"
      ">>> clogged(\"row 1\", 7, 0.6).share\n"
      "0.6");
  def(module,
      "worn",
      &worn,
      {"line", "outlet", "share"},
      "The nozzle is worn. share: of the flow that is gained, above 0 to 10 [-].\n\n"
      ">>> worn(\"row 1\", 7, 0.25).outlet\n"
      "7");
  def(module,
      "wrong_outlet",
      &wrong_outlet,
      {"line", "outlet", "fitted"},
      "An outlet of another kind stands there, and is judged by its own rating.\n\n"
      ">>> wrong_outlet(\"row 1\", 7, Outlet(flow=4 * gpm, at=25 * psi)).fitted.flow\n"
      "4 * gpm");
  def(module,
      "capped",
      &capped,
      {"line", "outlet"},
      "The outlet is closed on purpose. Outlets count from 1.\n\n"
      ">>> capped(\"row 1\", 7)\n"
      "capped('row 1', 7)");
  def(module,
      "leak",
      &leak,
      {"line", "place", "flow", "at", may_be_left_out("exponent")},
      "A hole in the line at a distance from its inlet, q = flow (p / at)^exponent, p in the "
      "line.\n"
      "exponent: 0.1 to 1.5 [-], default 0.5.\n\n"
      ">>> leak(\"row 1\", 120 * ft, 2 * gpm, 30 * psi)\n"
      "leak('row 1', 120 * ft, 2 * gpm, 30 * psi)");
  def(module,
      "line_cut",
      &line_cut,
      {"line", "place"},
      "The line is cut through at a distance from its inlet: both ends stand open, and no water "
      "passes.\n\n"
      ">>> line_cut(\"row 1\", 120 * ft)\n"
      "line_cut('row 1', 120 * ft)");
  def(module,
      "end_open",
      &end_open,
      {"line"},
      "The cap or flush valve at the far end is open.\n\n"
      ">>> end_open(\"row 1\")\n"
      "end_open('row 1')");
  def(module,
      "valve_part_closed",
      &valve_part_closed,
      {"line", "loss_coefficient"},
      "The valve at the line's inlet is not fully open: K [-] on the line's velocity head.\n\n"
      ">>> valve_part_closed(\"row 1\", 40)\n"
      "valve_part_closed('row 1', 40.0)");
  def(module,
      "valve_left_open",
      &valve_left_open,
      {"line"},
      "The valve of a line that should be shut, by itself or by the sets that run, is open.\n\n"
      ">>> valve_left_open(\"row 3\")\n"
      "valve_left_open('row 3')");
  def(module,
      "regulator_stuck_open",
      &regulator_stuck_open,
      {"line", may_be_left_out("outlet")},
      "A regulator no longer regulates: all pressure comes through.\n"
      "outlet: the one whose own it is, from 1 on; None: the line's.\n\n"
      ">>> regulator_stuck_open(\"hops\", 7)\n"
      "regulator_stuck_open('hops', outlet=7)");
  def(module,
      "regulator_stuck_shut",
      &regulator_stuck_shut,
      {"line", may_be_left_out("outlet")},
      "A regulator lets nothing through.\n"
      "outlet: the one whose own it is, from 1 on; None: the line's.\n\n"
      ">>> regulator_stuck_shut(\"hops\")\n"
      "regulator_stuck_shut('hops')");
  def(module,
      "pump_worn",
      &pump_worn,
      {"share", may_be_left_out("pump"), {"supply", py::str()}},
      "Worn impeller or rings. share: of the head that is lost at every flow, above 0 and below 1 "
      "[-].\n"
      "pump: 1 or 2, default the first. supply: name of a further one; empty: the first.\n\n"
      ">>> pump_worn(0.15)\n"
      "pump_worn(0.15)");
  def(module,
      "engine_slow",
      &engine_slow,
      {"speed", may_be_left_out("pump"), {"supply", py::str()}},
      "The engine does not reach its speed. speed: that it reaches.\n"
      "pump: 1 or 2, default the first. supply: name of a further one; empty: the first.\n\n"
      ">>> engine_slow(2000 * rpm)\n"
      "engine_slow(2000 * rpm)");
  def(module,
      "filter_dirty",
      &filter_dirty,
      {"loss", {"supply", py::str()}},
      "Dirt in the filter. loss: that it takes now, at the flow at which it is rated.\n"
      "supply: name of a further one; empty: the first.\n\n"
      ">>> filter_dirty(6 * psi, supply=\"creek\")\n"
      "filter_dirty(6 * psi, supply='creek')");
}

}  // namespace

void bind_faults(py::module_& module) {
  bind_kinds(module);
  bind_makers(module);
  const auto union_of = []<class First, class... F>(const std::variant<First, F...>*) {
    py::object all = py::type::of<First>();
    ((all = all | py::type::of<F>()), ...);
    return all;
  };
  module.attr("Fault") = union_of(static_cast<const Fault*>(nullptr));
  def(
      module,
      "line_of",
      [](const Fault& fault) { return line_of(fault); },
      {"fault"},
      "Name of the line; empty: the fault is a supply's.\n\n>>> line_of(end_open(\"row "
      "1\"))\n'row 1'");
  def(module,
      "outlet_of",
      &outlet_of,
      {"fault"},
      "From 1 on; None: the fault is the line's or a supply's.\n\n>>> outlet_of(head_off(\"row "
      "1\", 7))\n7");
  def(module,
      "is_of_the_supply",
      &is_of_the_supply,
      {"fault"},
      "Whether it is of the pump, the engine or the filter.\n\n"
      ">>> is_of_the_supply(pump_worn(0.15))\nTrue");
  def(module,
      "is_of_first_supply",
      &is_of_first_supply,
      {"fault"},
      "Whether it is of the pump, the engine or the filter of the first supply.\n\n"
      ">>> is_of_first_supply(pump_worn(0.15, supply=\"creek\"))\nFalse");
  def(
      module,
      "supply_of",
      [](const Fault& fault) { return supply_of(fault); },
      {"fault"},
      "Of a fault that is_of_the_supply, the name of the further one; empty: the first one's.\n\n"
      ">>> supply_of(filter_dirty(6 * psi, supply=\"creek\"))\n'creek'");
  def(module,
      "with_faults",
      &with_faults,
      {"supply", "faults"},
      "The supply with what its faults change; those of lines and of other supplies change "
      "nothing.\n\n"
      ">>> sound = Supply(pressure=40 * psi, filter=Filter(loss=1.5 * psi, at=80 * gpm))\n"
      ">>> with_faults(sound, [filter_dirty(6 * psi)]).filter\n"
      "Filter(loss=6 * psi, at=80 * gpm)");
  def(module,
      "kind_of",
      &kind_of,
      {"fault"},
      "As it is spelt in a file.\n\n>>> kind_of(head_off(\"row 1\", 7))\n'head off'");
}

}  // namespace hydro::bindings
