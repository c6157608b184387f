#include "hydro/layout/fault.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// One function from several lambdas, one for each kind of fault.
template <class... Cases>
struct ByKind : Cases... {
  using Cases::operator()...;
};
template <class... Cases>
ByKind(Cases...) -> ByKind<Cases...>;

constexpr Length default_stub = 0.5 * ft;
constexpr double default_loss_coefficient = 1.0;
constexpr double default_discharge_coefficient = 0.85;

/// "pump " or "pump 2 ".
std::string pump_of(const PumpWorn& fault) {
  return fault.pump ? fmt::format("pump {} ", *fault.pump) : "pump ";
}

/// The pump that a fault is of; none: there is no such pump.
std::optional<Pump>& pump_of(Supply& supply, const std::optional<int>& number) {
  return number.value_or(1) == 2 ? supply.second_pump : supply.pump;
}

double loss_coefficient_of(const std::optional<double>& given, const Line& line) {
  return given.value_or(line.riser.loss_coefficient.value_or(default_loss_coefficient));
}

/// There must be one to get stuck.
void examine_regulator(const std::optional<int>& outlet,
                       bool has_outlet,
                       const Line& line,
                       Examination& examination) {
  if (!outlet && !line.regulator)
    examination.add("line", "is " + in_quotes(line.name) + ", which has no regulator");
  if (outlet && has_outlet && !line.kind_of(*outlet).regulator)
    examination.add(
        "outlet",
        fmt::format("{} of line {} has no regulator of its own", *outlet, in_quotes(line.name)));
}

}  // namespace

HeadOff head_off(std::string line, int outlet, std::optional<double> loss_coefficient) {
  return {std::move(line), outlet, loss_coefficient};
}
RiserSheared riser_sheared(std::string line,
                           int outlet,
                           std::optional<Length> stub,
                           std::optional<double> loss_coefficient) {
  return {std::move(line), outlet, std::move(stub), loss_coefficient};
}
NozzleMissing nozzle_missing(std::string line,
                             int outlet,
                             std::optional<Length> bore,
                             std::optional<double> discharge_coefficient) {
  return {std::move(line), outlet, std::move(bore), discharge_coefficient};
}
Clogged clogged(std::string line, int outlet, double share) {
  return {std::move(line), outlet, share};
}
Worn worn(std::string line, int outlet, double share) {
  return {std::move(line), outlet, share};
}
Capped capped(std::string line, int outlet) {
  return {std::move(line), outlet};
}

WrongOutlet wrong_outlet(std::string line, int outlet, Outlet fitted) {
  return {std::move(line), outlet, std::move(fitted)};
}
Leak leak(std::string line,
          const Length& place,
          const Flow& flow,
          const Pressure& at,
          std::optional<double> exponent) {
  return {std::move(line), place, flow, at, exponent};
}
LineCut line_cut(std::string line, const Length& place) {
  return {std::move(line), place};
}
EndOpen end_open(std::string line) {
  return {std::move(line)};
}
ValvePartClosed valve_part_closed(std::string line, double loss_coefficient) {
  return {std::move(line), loss_coefficient};
}

ValveLeftOpen valve_left_open(std::string line) {
  return {std::move(line)};
}
RegulatorStuckOpen regulator_stuck_open(std::string line, std::optional<int> outlet) {
  return {std::move(line), outlet};
}
RegulatorStuckShut regulator_stuck_shut(std::string line, std::optional<int> outlet) {
  return {std::move(line), outlet};
}
PumpWorn pump_worn(double share, std::optional<int> pump, std::string supply) {
  return {share, pump, std::move(supply)};
}
EngineSlow engine_slow(const RotationalSpeed& speed, std::optional<int> pump, std::string supply) {
  return {speed, pump, std::move(supply)};
}
FilterDirty filter_dirty(const Pressure& loss, std::string supply) {
  return {loss, std::move(supply)};
}

const std::string& line_of(const Fault& fault) {
  static const std::string the_supply;
  return std::visit(
      [](const auto& kind) -> const std::string& {
        if constexpr (requires { kind.line; })
          return kind.line;
        else
          return the_supply;
      },
      fault);
}

std::optional<int> outlet_of(const Fault& fault) {
  return std::visit(
      [](const auto& kind) -> std::optional<int> {
        if constexpr (requires { kind.outlet; })
          return kind.outlet;
        else
          return std::nullopt;
      },
      fault);
}

bool is_of_the_supply(const Fault& fault) {
  return std::visit(
      [](const auto& kind) {
        return !requires {
          kind.line;
        };
      },
      fault);
}

bool is_of_first_supply(const Fault& fault) {
  return is_of_the_supply(fault) && supply_of(fault).empty();
}

const std::string& supply_of(const Fault& fault) {
  static const std::string the_first;
  return std::visit(
      [](const auto& kind) -> const std::string& {
        if constexpr (requires { kind.supply; })
          return kind.supply;
        else
          return the_first;
      },
      fault);
}

std::string kind_of(const Fault& fault) {
  return std::visit(ByKind{[](const HeadOff&) { return "head off"; },
                           [](const RiserSheared&) { return "riser sheared"; },
                           [](const NozzleMissing&) { return "nozzle missing"; },
                           [](const Clogged&) { return "clogged"; },
                           [](const Worn&) { return "worn"; },
                           [](const WrongOutlet&) { return "wrong outlet"; },
                           [](const Capped&) { return "capped"; },
                           [](const Leak&) { return "leak"; },
                           [](const LineCut&) { return "line cut"; },
                           [](const EndOpen&) { return "end open"; },
                           [](const ValvePartClosed&) { return "valve part closed"; },
                           [](const ValveLeftOpen&) { return "valve left open"; },
                           [](const RegulatorStuckOpen&) { return "regulator stuck open"; },
                           [](const RegulatorStuckShut&) { return "regulator stuck shut"; },
                           [](const PumpWorn&) { return "pump worn"; },
                           [](const EngineSlow&) { return "engine slow"; },
                           [](const FilterDirty&) { return "filter dirty"; }},
                    fault);
}

std::optional<OpenRiser> open_riser(const Fault& fault, const Line& line) {
  if (const auto* off = std::get_if<HeadOff>(&fault))
    return OpenRiser{line.riser.height, loss_coefficient_of(off->loss_coefficient, line)};
  if (const auto* sheared = std::get_if<RiserSheared>(&fault))
    return OpenRiser{sheared->stub.value_or(std::min(default_stub, line.riser.height)),
                     loss_coefficient_of(sheared->loss_coefficient, line)};
  return std::nullopt;
}

std::optional<OpenBody> open_body(const Fault& fault, const Line& line) {
  const auto* missing = std::get_if<NozzleMissing>(&fault);
  if (!missing) return std::nullopt;
  return OpenBody{missing->bore ? missing->bore : line.kind_of(missing->outlet).body_bore,
                  missing->discharge_coefficient.value_or(default_discharge_coefficient)};
}

std::optional<Length> open_end(const Fault& fault, const Line& line) {
  if (const auto* cut = std::get_if<LineCut>(&fault)) return cut->place;
  if (std::holds_alternative<EndOpen>(fault)) return line.whole_length();
  return std::nullopt;
}

Supply with_faults(Supply supply, const std::vector<Fault>& faults) {
  for (const Fault& fault : faults) {
    if (supply_of(fault) != supply.name) continue;
    if (const auto* it = std::get_if<PumpWorn>(&fault)) {
      for (PumpPoint& point : pump_of(supply, it->pump).value().points) point.head *= 1 - it->share;
    } else if (const auto* slow = std::get_if<EngineSlow>(&fault)) {
      Pump& pump = pump_of(supply, slow->pump).value();
      pump.speed = std::min(slow->speed, pump.speed.value_or(*pump.curve_speed));
    } else if (const auto* dirty = std::get_if<FilterDirty>(&fault)) {
      supply.filter.value().loss = dirty->loss;
    }
  }
  return supply;
}

std::string describe(const Fault& fault, const Line& line, UnitSystem units) {
  const UnitSet shown = unit_set(units);
  const auto long_way = [&](const Length& it) {
    return fmt::format("{:.1f} {}", it / shown.length, shown.length.symbol);
  };
  const auto bore = [&](const std::optional<Length>& it) {
    return it ? fmt::format("bore {:.3g} {}", *it / shown.bore, shown.bore.symbol)
              : std::string("bore not known");
  };
  const auto opening = [&] {
    const OpenRiser open = open_riser(fault, line).value();
    return fmt::format("({} high, {}, loss coefficient {:.2g})",
                       long_way(open.height),
                       bore(line.riser.inside_diameter),
                       open.loss_coefficient);
  };
  const std::string what = std::visit(
      ByKind{
          [&](const HeadOff&) { return "head off, riser open at its top " + opening(); },
          [&](const RiserSheared&) { return "riser sheared, stub open " + opening(); },
          [&](const NozzleMissing&) {
            const OpenBody open = open_body(fault, line).value();
            return fmt::format("nozzle missing, its body open ({}, discharge coefficient {:.2g})",
                               bore(open.bore),
                               open.discharge_coefficient);
          },
          [](const Clogged& it) {
            return fmt::format("clogged, {:.3g} % of its flow lost", 100 * it.share);
          },
          [](const Worn& it) { return fmt::format("worn, {:.3g} % more flow", 100 * it.share); },
          [](const WrongOutlet& it) {
            return "wrong outlet" +
                   (it.fitted.name.empty() ? "" : ", one of kind " + it.fitted.name);
          },
          [](const Capped&) { return std::string("capped"); },
          [&](const Leak& it) {
            return fmt::format("leak at {} ({:.3g} {} at {:.3g} {}, exponent {:.3g})",
                               long_way(it.place),
                               it.flow / shown.flow,
                               shown.flow.symbol,
                               it.at / shown.pressure,
                               shown.pressure.symbol,
                               it.exponent.value_or(Leak::default_exponent));
          },
          [&](const LineCut& it) { return "cut at " + long_way(it.place); },
          [](const EndOpen&) { return std::string("far end open"); },
          [](const ValvePartClosed& it) {
            return fmt::format("valve part closed, loss coefficient {:.3g}", it.loss_coefficient);
          },
          [](const ValveLeftOpen&) { return std::string("valve left open"); },
          [](const RegulatorStuckOpen&) {
            return std::string("regulator stuck open, all pressure comes through");
          },
          [](const RegulatorStuckShut&) {
            return std::string("regulator stuck shut, no water comes through");
          },
          [](const PumpWorn& it) {
            return fmt::format("{}worn, {:.3g} % of its head lost", pump_of(it), 100 * it.share);
          },
          [](const EngineSlow& it) {
            return fmt::format("engine {}slow, it reaches {:.0f} rpm",
                               it.pump ? fmt::format("of pump {} ", *it.pump) : "",
                               it.speed / rpm);
          },
          [&](const FilterDirty& it) {
            return fmt::format("filter dirty, it takes {:.3g} {} at the flow of its rating",
                               it.loss / shown.pressure,
                               shown.pressure.symbol);
          }},
      fault);
  if (is_of_the_supply(fault))
    return supply_of(fault).empty() ? what : fmt::format("{}: {}", supply_of(fault), what);
  const std::optional<int> outlet = outlet_of(fault);
  return outlet ? fmt::format("{}, outlet {}: {}", line_of(fault), *outlet, what)
                : fmt::format("{}: {}", line_of(fault), what);
}

std::vector<Problem> problems(const Fault& fault, const Line& line) {
  constexpr Range<double> some_loss{0, 1000, units::plain};
  Examination examination;
  const auto on_the_line = [&](const Length& place) {
    if (!(place >= Length{} && place <= line.whole_length() + same_place))
      examination.add("place",
                      "is " + to_message(place, units::m) + ", must be from 0 to " +
                          to_message(line.whole_length(), units::m));
  };
  const int outlet = outlet_of(fault).value_or(0);
  const bool has_outlet = outlet >= 1 && outlet <= line.outlet_count();
  if (outlet_of(fault) && line.outlet_count() == 0)
    examination.add("line", "is " + in_quotes(line.name) + ", which has no outlets");
  else if (outlet_of(fault))
    examination.within("outlet", outlet, 1, line.outlet_count());
  if (open_riser(fault, line) && !line.riser.inside_diameter)
    examination.add(
        "riser.inside_diameter",
        "of line " + in_quotes(line.name) +
            " is not known, and the flow of a break hangs on it; give the line's riser its bore");
  std::visit(
      ByKind{[&](const HeadOff& it) {
               examination.within("loss_coefficient", it.loss_coefficient, some_loss);
             },
             [&](const RiserSheared& it) {
               examination.within("loss_coefficient", it.loss_coefficient, some_loss);
               const double height = line.riser.height / units::m;
               examination.within("stub", it.stub, Range<Length>{0, height, units::m});
             },
             [&](const NozzleMissing& it) {
               examination.within("bore", it.bore, Range<Length>{0.1, 200, mm});
               examination.within("discharge_coefficient",
                                  it.discharge_coefficient,
                                  Range<double>{0.1, 1, units::plain});
               if (has_outlet && !open_body(fault, line)->bore)
                 examination.add("bore",
                                 "is not given, nor is the body_bore of the outlet, and the flow "
                                 "hangs on it");
             },
             [&](const Clogged& it) {
               if (!(it.share > 0 && it.share < 1))
                 examination.add("share",
                                 "is " + to_message(it.share, "") +
                                     ", must be above 0 and below 1; \"capped\" lets out none");
             },
             [&](const Worn& it) {
               examination.within("share", it.share, Range<double>{0, 10, units::plain, true});
             },
             [&](const WrongOutlet& it) { examination.include("fitted", problems(it.fitted)); },
             [](const Capped&) {},
             [&](const Leak& it) {
               on_the_line(it.place);
               examination.within("flow", it.flow, Range<Flow>{0.001, 3600000, lph});
               examination.within("at", it.at, Range<Pressure>{0.001, 10000, kPa});
               examination.within("exponent", it.exponent, Range<double>{0.1, 1.5, units::plain});
             },
             [&](const LineCut& it) { on_the_line(it.place); },
             [](const EndOpen&) {},
             [&](const ValvePartClosed& it) {
               examination.within("loss_coefficient",
                                  it.loss_coefficient,
                                  Range<double>{0, 1e9, units::plain, true});
             },
             [](const ValveLeftOpen&) {},
             [&](const RegulatorStuckOpen& it) {
               examine_regulator(it.outlet, has_outlet, line, examination);
             },
             [&](const RegulatorStuckShut& it) {
               examine_regulator(it.outlet, has_outlet, line, examination);
             },
             [](const PumpWorn&) {},
             [](const EngineSlow&) {},
             [](const FilterDirty&) {}},
      fault);
  return examination.take();
}

std::vector<Problem> problems(const Fault& fault, const Supply& supply) {
  Examination examination;
  const auto examine_pump = [&](const std::optional<int>& number) -> const Pump* {
    const std::optional<Pump>& pump = number.value_or(1) == 2 ? supply.second_pump : supply.pump;
    if (number && !(*number >= 1 && *number <= 2))
      examination.within("pump", *number, 1, 2);
    else if (!pump)
      examination.add(number ? "pump" : "kind",
                      number ? fmt::format("is {}, but the supply has no such pump", *number)
                             : "is of a pump, but the supply has none");
    else
      return &*pump;
    return nullptr;
  };
  if (const auto* worn_out = std::get_if<PumpWorn>(&fault)) {
    examine_pump(worn_out->pump);
    if (!(worn_out->share > 0 && worn_out->share < 1))
      examination.add("share",
                      "is " + to_message(worn_out->share, "") + ", must be above 0 and below 1");
  } else if (const auto* slow = std::get_if<EngineSlow>(&fault)) {
    const Pump* pump = examine_pump(slow->pump);
    examination.within("speed", slow->speed, Range<RotationalSpeed>{1, 100000, rpm});
    if (pump && !pump->curve_speed)
      examination.add("speed", "is given, but the pump's curve_speed is not known");
  } else if (const auto* dirty = std::get_if<FilterDirty>(&fault)) {
    if (!supply.filter) examination.add("kind", "is of a filter, but the supply has none");
    examination.within("loss", dirty->loss, Range<Pressure>{0, 10000, kPa});
  }
  return examination.take();
}

}  // namespace hydro
