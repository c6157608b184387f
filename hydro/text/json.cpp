#include "hydro/text/json.hpp"

#include "hydro/answers/assumptions.hpp"
#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/answers/pressure_budget.hpp"
#include "hydro/answers/uniformity.hpp"
#include "hydro/text/doings.hpp"
#include "hydro/text/finite.hpp"
#include "hydro/text/outlet_kinds.hpp"
#include "hydro/text/supply_words.hpp"
#include "hydro/text/words.hpp"

#include <optional>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

namespace hydro {
namespace {

using Json = nlohmann::ordered_json;  // members stay in the order of the header

template <class Q>
Json numbers(const Series<Q>& series) {
  return std::vector<double>(series.si().begin(), series.si().end());
}

template <class Q>
Json number_or_null(const std::optional<Q>& given) {
  return given ? Json(si(*given)) : Json(nullptr);
}

/// A list with one entry for each thing; `write` makes it.
template <class Things, class Write>
Json list(const Things& things, Write write) {
  Json entries = Json::array();
  for (const auto& thing : things) entries.push_back(write(thing));
  return entries;
}

// ---- parts

Json json_of(const OutletKind& kind) {
  return {{"name", kind.outlet->name},
          {"rated", si(kind.outlet->rated_pressure())},
          {"minimum", number_or_null(kind.outlet->minimum)},
          {"maximum", number_or_null(kind.outlet->maximum)},
          {"rated_flow", si(kind.rated_flow)}};
}
Json json_of(const BelowRated& it) {
  return {{"line", it.line},
          {"outlet", it.outlet},
          {"pressure", si(it.pressure)},
          {"rated", si(it.rated)}};
}
Json json_of(const BelowMinimum& it) {
  return {{"line", it.line},
          {"outlet", it.outlet},
          {"pressure", si(it.pressure)},
          {"minimum", si(it.minimum)}};
}
Json json_of(const AboveMaximum& it) {
  return {{"line", it.line},
          {"outlet", it.outlet},
          {"pressure", si(it.pressure)},
          {"maximum", si(it.maximum)}};
}
Json json_of(const DryOutlet& it) {
  return {{"line", it.line}, {"outlet", it.outlet}, {"line_pressure", si(it.line_pressure)}};
}
Json json_of(const Variation& it) {
  return {{"line", it.line},
          {"outlet_name", it.outlet_name},
          {"outlets", it.outlets},
          {"pressure", it.pressure},
          {"flow", it.flow},
          {"too_wide", it.too_wide}};
}
Json json_of(const OutletUniformity& it) {
  return {{"line", it.line},
          {"outlet_name", it.outlet_name},
          {"outlets", it.flows.count},
          {"mean", si(it.flows.mean)},
          {"least", si(it.flows.least)},
          {"low_quarter", si(it.flows.low_quarter)},
          {"christiansen", it.flows.christiansen},
          {"distribution", it.flows.distribution},
          {"statistical", it.flows.statistical ? Json(*it.flows.statistical) : Json(nullptr)}};
}
Json json_of(const FastWater& it) {
  return {{"line", it.line}, {"velocity", si(it.velocity)}};
}
Json json_of(const BelowAtmosphere& it) {
  return {
      {"line", it.line}, {"pressure", si(it.pressure)}, {"column_separates", it.column_separates}};
}
Json json_of(const OverRating& it) {
  return {{"line", it.line},
          {"pipe_name", it.pipe_name},
          {"pressure", si(it.pressure)},
          {"rating", si(it.rating)}};
}
Json json_of(const LineChange& it) {
  return {{"line", it.line},
          {"pressure", numbers(it.pressure)},
          {"line_pressure", numbers(it.line_pressure)},
          {"flow", numbers(it.flow)}};
}

Json json_of(const PipeExtremes& pipe) {
  return {{"name", pipe.pipe_name},
          {"start", si(pipe.start)},
          {"end", si(pipe.end)},
          {"highest_velocity", si(pipe.highest_velocity)},
          {"lowest_pressure", si(pipe.lowest_pressure)},
          {"highest_pressure", si(pipe.highest_pressure)}};
}

const char* name_of(PumpRange range) {
  switch (range) {
    case PumpRange::below_least_flow:
      return "below_least_flow";
    case PumpRange::inside:
      return "inside";
    case PumpRange::above_most_flow:
      return "above_most_flow";
    case PumpRange::unknown:
      break;
  }
  return "unknown";
}
Json json_of(const PumpDuty& duty) {
  return {{"flow", si(duty.flow)},
          {"head", si(duty.head)},
          {"speed", number_or_null(duty.speed)},
          {"range", name_of(duty.range)},
          {"least_flow", number_or_null(duty.least_flow)},
          {"most_flow", number_or_null(duty.most_flow)},
          {"water_power", si(duty.water_power)},
          {"efficiency", number_or_null(duty.efficiency)},
          {"shaft_power", number_or_null(duty.shaft_power)},
          {"npsh_required", number_or_null(duty.npsh_required)}};
}

const char* name_of(RegulatorState state) {
  switch (state) {
    case RegulatorState::holding:
      return "holding";
    case RegulatorState::open:
      return "open";
    case RegulatorState::shut:
      return "shut";
    case RegulatorState::stuck_open:
      break;
  }
  return "stuck_open";
}
Json json_of(const RegulatorSolution& regulator) {
  return {{"state", name_of(regulator.state)},
          {"pressure", si(regulator.pressure)},
          {"drop", si(regulator.drop)}};
}

Json json_of(const WateringSet& set) {
  return {{"name", set.name}, {"lines", set.lines}};
}

Json json_of(const PressureBudgetEntry& entry) {
  return {{"part", entry.part},
          {"line", entry.line},
          {"gain", si(entry.gain)},
          {"rise", si(entry.rise)},
          {"loss", si(entry.loss)},
          {"regulator", si(entry.regulator)},
          {"left", si(entry.left)}};
}

constexpr auto each = [](const auto& part) { return json_of(part); };

Json names_of(const std::vector<SupplyLimit>& limits) {
  return list(limits, [](SupplyLimit limit) { return name_of(limit); });
}

Json json_of(const Check& found) {
  return {{"every_outlet_serves", found.every_outlet_serves()},
          {"below_rated", list(found.below_rated, each)},
          {"below_minimum", list(found.below_minimum, each)},
          {"above_maximum", list(found.above_maximum, each)},
          {"dry", list(found.dry, each)},
          {"variations", list(found.variations, each)},
          {"fast_water", list(found.fast_water, each)},
          {"below_atmosphere", list(found.below_atmosphere, each)},
          {"over_rating", list(found.over_rating, each)},
          {"supply_limits", names_of(found.supply_limits)},
          {"further_supply_limits", list(found.further_supply_limits, names_of)},
          {"lifts_no_water", found.lifts_no_water},
          {"all_is_shut", found.all_is_shut}};
}

Json json_of(const Comparison& found) {
  return {{"lines", list(found.lines, each)},
          {"newly_below_rated", list(found.newly_below_rated, each)},
          {"newly_below_minimum", list(found.newly_below_minimum, each)},
          {"newly_dry", list(found.newly_dry, each)},
          {"escaping", si(found.escaping)},
          {"missing", si(found.missing)},
          {"inflow_before", si(found.inflow_before)},
          {"inflow_after", si(found.inflow_after)},
          {"supply_before", si(found.supply_before)},
          {"supply_after", si(found.supply_after)}};
}

// ---- the solution

Json json_of(const Fault& fault, const Layout& layout) {
  const auto outlet = outlet_of(fault);
  return {{"line", line_of(fault)},
          {"supply", supply_of(fault)},
          {"outlet", outlet ? Json(*outlet) : Json(nullptr)},
          {"kind", kind_of(fault)},
          {"description", describe(fault, layout, layout.units())}};
}

Json json_of(const Opening& opening, const Fault& fault) {
  return {{"kind", kind_of(fault)},
          {"distance", si(opening.distance)},
          {"line_pressure", si(opening.line_pressure)},
          {"flow", si(opening.flow)}};
}

const char* name_of(CheckValveState state) {
  return state == CheckValveState::open ? "open" : "shut";
}

Json json_of_line(const Solution& solution, const OutletKinds& kinds, std::size_t index) {
  const LineSolution& solved = solution.lines()[index];
  const Line& line = solution.layout().lines()[index];
  const auto joined = solution.layout().joined_by(index);
  return {{"name", solved.name},
          {"fed_by", line.fed_by},
          {"joins", line.joins},
          {"joins_at",
           joined ? Json(si(ends_at(line, solution.layout().lines()[*joined]))) : Json(nullptr)},
          {"inflow", si(solved.inflow)},
          {"end_flow", si(solved.end_flow)},
          {"inlet_velocity", si(solved.inlet_velocity)},
          {"inlet_pressure", si(solved.inlet_pressure)},
          {"end_pressure", si(solved.end_pressure)},
          {"shut", solved.shut},
          {"inlet_shut", solved.inlet_shut},
          {"check_valve", solved.check_valve ? Json(name_of(*solved.check_valve)) : Json(nullptr)},
          {"regulator", solved.regulator ? json_of(*solved.regulator) : Json(nullptr)},
          {"pipes", list(solved.pipes, each)},
          {"openings",
           list(solved.openings,
                [&](const Opening& opening) {
                  return json_of(opening, solution.layout().faults_on(index)[opening.fault]);
                })},
          {"kind", kinds.on_line(index)},
          {"distance", numbers(solved.distance)},
          {"pressure", numbers(solved.pressure)},
          {"line_pressure", numbers(solved.line_pressure)},
          {"flow", numbers(solved.flow)},
          {"velocity", numbers(solved.velocity)},
          {"state", list(doings(solution, index), [](Doing what) { return name_of(what); })}};
}

const char* source_of(const Supply& supply) {
  return supply.pump ? "pump" : supply.tank ? "tank" : supply.hydrant ? "hydrant" : "pressure";
}

Json json_of(const Supply& supply, const OperatingPoint& point) {
  return {{"name", supply.name},
          {"pressure", si(point.pressure)},
          {"elevation", number_or_null(supply.elevation)},
          {"inflow", si(point.flow)},
          {"held_shut", point.held_shut},
          {"source", source_of(supply)},
          {"source_pressure", si(point.source_pressure)},
          {"gauge_reading", number_or_null(point.gauge_reading)},
          {"filter_loss", si(point.filter_loss)},
          {"suction_loss", si(point.suction_loss)},
          {"npsh_available", number_or_null(point.npsh_available)},
          {"pumps", list(point.pumps, each)}};
}

Json json_of_further_supplies(const Solution& solution) {
  Json entries = Json::array();
  for (std::size_t i = 0; i < solution.further_supplies().size(); ++i)
    entries.push_back(
        json_of(solution.layout().further_supplies()[i], solution.further_supplies()[i]));
  return entries;
}

Json json_of_budget(const Solution& solution) {
  // Where the equations are not met, no way of the water need lead to it.
  if (!solution.residuals().are_met()) return nullptr;
  const auto weakest = weakest_outlet(solution);
  if (!weakest) return nullptr;
  const std::size_t line = solution.layout().index_of(weakest->line);
  const Doing does = doing(solution, line, static_cast<std::size_t>(weakest->outlet - 1));
  if (does == Doing::without_water) return nullptr;
  const PressureBudget budget = pressure_budget(solution, weakest->line, weakest->outlet);
  return {{"line", budget.line},
          {"outlet", budget.outlet},
          {"entries", list(budget.entries, each)},
          {"left", si(budget.left)},
          {"rated", si(budget.rated)}};
}

Json json_of(const Solution& solution) {
  const Layout& layout = solution.layout();
  const OutletKinds kinds(solution);
  Json lines = Json::array();
  for (std::size_t i = 0; i < solution.lines().size(); ++i)
    lines.push_back(json_of_line(solution, kinds, i));
  const Residuals& left = solution.residuals();
  return {
      {"site", layout.site().name},
      {"supply", json_of(layout.supply(), solution.supply())},
      {"further_supplies", json_of_further_supplies(solution)},
      {"sets", list(layout.sets(), each)},
      {"running_sets", layout.running_sets()},
      {"water",
       {{"density", si(solution.water().density)},
        {"kinematic_viscosity", si(solution.water().kinematic_viscosity)},
        {"vapour_pressure", si(solution.water().vapour_pressure)}}},
      {"outlet_kinds", list(kinds.all(), each)},
      {"lines", std::move(lines)},
      {"faults", list(layout.faults(), [&](const Fault& fault) { return json_of(fault, layout); })},
      {"check", json_of(check(solution))},
      {"pressure_budget", json_of_budget(solution)},
      {"uniformity", list(uniformity_of_outlets(solution), each)},
      {"notes", solution.notes()},
      {"assumptions", assumptions(layout, layout.units())},
      {"residuals",
       {{"mass", left.mass},
        {"energy", left.energy},
        {"outlet", left.outlet},
        {"steps", left.steps},
        {"last_resort", left.last_resort}}}};
}

/// JSON has no NaN; the library would write null. @param name "lines, 0, pressure"
void require_finite_numbers(const Json& json, const std::string& name) {
  if (json.is_number_float()) require_finite(json.get<double>(), [&] { return name; });
  if (!json.is_structured()) return;
  for (const auto& [key, value] : json.items()) {
    std::string full = name;
    if (!full.empty()) full += ", ";
    require_finite_numbers(value, full += key);
  }
}

std::string written(const Json& before, const Json& solution, const Json& comparison) {
  Json whole = {{"format", "hydro solution 1"}};
  whole.update(solution);
  whole["before"] = before;
  whole["comparison"] = comparison;
  require_finite_numbers(whole, "");
  return whole.dump(-1, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace

std::string to_json(const Solution& solution) {
  return written(nullptr, json_of(solution), nullptr);
}

std::string to_json(const Solution& before, const Solution& after) {
  const Comparison comparison = compare(before, after);
  return written(json_of(before), json_of(after), json_of(comparison));
}

}  // namespace hydro
