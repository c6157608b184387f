// enumeration.hpp: enumerations, which in Python are texts: members of the StrEnum classes of
// hydro.enumerations.
#pragma once

#include "hydro/answers/drain.hpp"
#include "hydro/answers/hand_method.hpp"
#include "hydro/answers/sensitivity.hpp"
#include "hydro/diagnosis/calibrate.hpp"
#include "hydro/diagnosis/candidate.hpp"
#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/make_right.hpp"
#include "hydro/diagnosis/next_reading.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/physics/choices.hpp"
#include "hydro/physics/operating_point.hpp"
#include "hydro/physics/pump.hpp"
#include "hydro/physics/supply_limit.hpp"
#include "hydro/physics/valve.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/watering/day_plan.hpp"
#include "hydro/watering/reference_evapotranspiration.hpp"
#include "hydro/watering/run_time.hpp"
#include "hydro/watering/soil.hpp"
#include "hydro/watering/soil_water.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"
#include "hydro/what_ifs/inlet_position.hpp"
#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/more_outlets.hpp"
#include "hydro/what_ifs/remedies.hpp"
#include "hydro/what_ifs/room_on_line.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include <pybind11/pybind11.h>

namespace hydro::bindings {

template <class E>
struct Enumeration;

template <>
struct Enumeration<UnitSystem> {
  static constexpr const char* name = "UnitSystem";
  static constexpr Choice<UnitSystem> values[] = {{UnitSystem::us, "us"}, {UnitSystem::si, "si"}};
};
template <>
struct Enumeration<FirstOutlet> {
  static constexpr const char* name = "FirstOutlet";
  static constexpr Choice<FirstOutlet> values[] = {
      {FirstOutlet::at_one_spacing, "at_one_spacing"},
      {FirstOutlet::at_half_spacing, "at_half_spacing"}};
};
template <>
struct Enumeration<OutletState> {
  static constexpr const char* name = "OutletState";
  static constexpr Choice<OutletState> values[] = {{OutletState::works, "works"},
                                                   {OutletState::below_minimum, "below_minimum"},
                                                   {OutletState::above_maximum, "above_maximum"},
                                                   {OutletState::dry, "dry"},
                                                   {OutletState::closed, "closed"},
                                                   {OutletState::broken, "broken"}};
};

template <>
struct Enumeration<RegulatorState> {
  static constexpr const char* name = "RegulatorState";
  static constexpr Choice<RegulatorState> values[] = {{RegulatorState::holding, "holding"},
                                                      {RegulatorState::open, "open"},
                                                      {RegulatorState::shut, "shut"},
                                                      {RegulatorState::stuck_open, "stuck_open"}};
};
template <>
struct Enumeration<CheckValveState> {
  static constexpr const char* name = "CheckValveState";
  static constexpr Choice<CheckValveState> values[] = {{CheckValveState::open, "open"},
                                                       {CheckValveState::shut, "shut"}};
};
template <>
struct Enumeration<CurveShape> {
  static constexpr const char* name = "CurveShape";
  static constexpr auto values = choices<CurveShape>;
};
template <>
struct Enumeration<PumpArrangement> {
  static constexpr const char* name = "PumpArrangement";
  static constexpr auto values = choices<PumpArrangement>;
};
template <>
struct Enumeration<PumpRange> {
  static constexpr const char* name = "PumpRange";
  static constexpr Choice<PumpRange> values[] = {{PumpRange::unknown, "unknown"},
                                                 {PumpRange::below_least_flow, "below_least_flow"},
                                                 {PumpRange::inside, "inside"},
                                                 {PumpRange::above_most_flow, "above_most_flow"}};
};
template <>
struct Enumeration<SupplyLimit> {
  static constexpr const char* name = "SupplyLimit";
  static constexpr Choice<SupplyLimit> values[] = {{SupplyLimit::top_speed, "top_speed"},
                                                   {SupplyLimit::power, "power"},
                                                   {SupplyLimit::least_flow, "least_flow"},
                                                   {SupplyLimit::most_flow, "most_flow"},
                                                   {SupplyLimit::suction, "suction"},
                                                   {SupplyLimit::gauge_range, "gauge_range"}};
};
template <>
struct Enumeration<FirstFall> {
  static constexpr const char* name = "FirstFall";
  static constexpr Choice<FirstFall> values[] = {{FirstFall::below_rated, "below_rated"},
                                                 {FirstFall::below_minimum, "below_minimum"},
                                                 {FirstFall::dry, "dry"}};
};
template <>
struct Enumeration<DrainEnd> {
  static constexpr const char* name = "DrainEnd";
  static constexpr Choice<DrainEnd> values[] = {{DrainEnd::level_reached, "level_reached"},
                                                {DrainEnd::tank_empty, "tank_empty"},
                                                {DrainEnd::outflow_ceases, "outflow_ceases"}};
};
template <>
struct Enumeration<ValveKind> {
  static constexpr const char* name = "ValveKind";
  static constexpr auto values = choices<ValveKind>;
};
template <>
struct Enumeration<ValveOpening> {
  static constexpr const char* name = "ValveOpening";
  static constexpr auto values = choices<ValveOpening>;
};
template <>
struct Enumeration<Limit> {
  static constexpr const char* name = "Limit";
  static constexpr Choice<Limit> values[] = {{Limit::rated, "rated"},
                                             {Limit::minimum, "minimum"},
                                             {Limit::maximum, "maximum"},
                                             {Limit::variation, "variation"},
                                             {Limit::velocity, "velocity"},
                                             {Limit::pipe_rating, "pipe_rating"},
                                             {Limit::atmosphere, "atmosphere"},
                                             {Limit::power, "power"},
                                             {Limit::least_flow, "least_flow"},
                                             {Limit::most_flow, "most_flow"},
                                             {Limit::suction, "suction"},
                                             {Limit::gauge_range, "gauge_range"}};
};
template <>
struct Enumeration<AddedWhere> {
  static constexpr const char* name = "AddedWhere";
  static constexpr Choice<AddedWhere> values[] = {{AddedWhere::beyond, "beyond"},
                                                  {AddedWhere::between, "between"}};
};
template <>
struct Enumeration<RoomEnd> {
  static constexpr const char* name = "RoomEnd";
  static constexpr Choice<RoomEnd> values[] = {
      {RoomEnd::limit, "limit"}, {RoomEnd::no_place, "no_place"}, {RoomEnd::most, "most"}};
};
template <>
struct Enumeration<InletGoal> {
  static constexpr const char* name = "InletGoal";
  static constexpr Choice<InletGoal> values[] = {
      {InletGoal::highest_lowest_pressure, "highest_lowest_pressure"},
      {InletGoal::least_variation, "least_variation"}};
};
template <>
struct Enumeration<RemedyKind> {
  static constexpr const char* name = "RemedyKind";
  static constexpr Choice<RemedyKind> values[] = {
      {RemedyKind::wider_pipe, "wider_pipe"},
      {RemedyKind::fewer_outlets, "fewer_outlets"},
      {RemedyKind::smaller_outlets, "smaller_outlets"},
      {RemedyKind::more_pressure, "more_pressure"},
      {RemedyKind::feed_from_middle, "feed_from_middle"},
      {RemedyKind::second_feed, "second_feed"}};
};
template <>
struct Enumeration<BreakDetail> {
  static constexpr const char* name = "BreakDetail";
  static constexpr Choice<BreakDetail> values[] = {{BreakDetail::counts, "counts"},
                                                   {BreakDetail::conditions, "conditions"},
                                                   {BreakDetail::profiles, "profiles"}};
};
template <>
struct Enumeration<OutletCondition> {
  static constexpr const char* name = "OutletCondition";
  static constexpr Choice<OutletCondition> values[] = {
      {OutletCondition::works, "works"},
      {OutletCondition::below_rated, "below_rated"},
      {OutletCondition::below_minimum, "below_minimum"},
      {OutletCondition::above_maximum, "above_maximum"},
      {OutletCondition::dry, "dry"},
      {OutletCondition::closed, "closed"},
      {OutletCondition::broken, "broken"}};
};
template <>
struct Enumeration<Input> {
  static constexpr const char* name = "Input";
  static constexpr Choice<Input> values[] = {
      {Input::inside_diameter, "inside_diameter"},
      {Input::hazen_williams, "hazen_williams"},
      {Input::roughness, "roughness"},
      {Input::darcy_factor, "darcy_factor"},
      {Input::length, "length"},
      {Input::loss_coefficient, "loss_coefficient"},
      {Input::outlet_loss_coefficient, "outlet_loss_coefficient"},
      {Input::ground_rise, "ground_rise"},
      {Input::regulator, "regulator"},
      {Input::leak, "leak"},
      {Input::riser_height, "riser_height"},
      {Input::riser_inside_diameter, "riser_inside_diameter"},
      {Input::riser_hazen_williams, "riser_hazen_williams"},
      {Input::riser_roughness, "riser_roughness"},
      {Input::riser_darcy_factor, "riser_darcy_factor"},
      {Input::riser_loss_coefficient, "riser_loss_coefficient"},
      {Input::flow, "flow"},
      {Input::exponent, "exponent"},
      {Input::outlet_regulator, "outlet_regulator"},
      {Input::ground, "ground"},
      {Input::supply_pressure, "supply_pressure"},
      {Input::tank_level, "tank_level"},
      {Input::hydrant_at_rest, "hydrant_at_rest"},
      {Input::hydrant_residual, "hydrant_residual"},
      {Input::hydrant_flow, "hydrant_flow"},
      {Input::pump_head, "pump_head"},
      {Input::pump_speed, "pump_speed"},
      {Input::suction_lift, "suction_lift"},
      {Input::suction_loss, "suction_loss"},
      {Input::filter_loss, "filter_loss"}};
};
template <>
struct Enumeration<PressureFigure::Kind> {
  static constexpr const char* name = "PressureFigureKind";
  static constexpr Choice<PressureFigure::Kind> values[] = {
      {PressureFigure::Kind::device, "device"},
      {PressureFigure::Kind::line, "line"},
      {PressureFigure::Kind::supply, "supply"},
      {PressureFigure::Kind::gauge, "gauge"},
      {PressureFigure::Kind::inlet, "inlet"},
      {PressureFigure::Kind::end, "end"}};
};
template <>
struct Enumeration<FlowFigure::Kind> {
  static constexpr const char* name = "FlowFigureKind";
  static constexpr Choice<FlowFigure::Kind> values[] = {{FlowFigure::Kind::outlet, "outlet"},
                                                        {FlowFigure::Kind::inflow, "inflow"},
                                                        {FlowFigure::Kind::supply, "supply"},
                                                        {FlowFigure::Kind::all, "all"}};
};

template <>
struct Enumeration<EvapotranspirationMethod> {
  static constexpr const char* name = "EvapotranspirationMethod";
  static constexpr Choice<EvapotranspirationMethod> values[] = {
      {EvapotranspirationMethod::typed, "typed"},
      {EvapotranspirationMethod::penman_monteith, "penman_monteith"},
      {EvapotranspirationMethod::hargreaves, "hargreaves"}};
};
template <>
struct Enumeration<WeatherEstimate> {
  static constexpr const char* name = "WeatherEstimate";
  static constexpr Choice<WeatherEstimate> values[] = {
      {WeatherEstimate::sea_level, "sea_level"},
      {WeatherEstimate::dew_point_of_minimum, "dew_point_of_minimum"},
      {WeatherEstimate::radiation_of_temperatures, "radiation_of_temperatures"},
      {WeatherEstimate::usual_wind, "usual_wind"}};
};
template <>
struct Enumeration<SoilKind> {
  static constexpr const char* name = "SoilKind";
  static constexpr auto values = choices<SoilKind>;
};
template <>
struct Enumeration<WaterReason> {
  static constexpr const char* name = "WaterReason";
  static constexpr Choice<WaterReason> values[] = {{WaterReason::enough, "enough"},
                                                   {WaterReason::today, "today"},
                                                   {WaterReason::used_up, "used_up"}};
};
template <>
struct Enumeration<ServedBy> {
  static constexpr const char* name = "ServedBy";
  static constexpr Choice<ServedBy> values[] = {{ServedBy::low_quarter, "low_quarter"},
                                                {ServedBy::average, "average"}};
};
template <>
struct Enumeration<WhyLeft> {
  static constexpr const char* name = "WhyLeft";
  static constexpr Choice<WhyLeft> values[] = {{WhyLeft::day_too_short, "day_too_short"},
                                               {WhyLeft::not_served, "not_served"}};
};

template <>
struct Enumeration<ReadingPlace> {
  static constexpr const char* name = "ReadingPlace";
  static constexpr Choice<ReadingPlace> values[] = {{ReadingPlace::supply_gauge, "supply gauge"},
                                                    {ReadingPlace::after_filter, "after filter"},
                                                    {ReadingPlace::line_inlet, "line inlet"},
                                                    {ReadingPlace::pipe, "pipe"},
                                                    {ReadingPlace::riser, "riser"},
                                                    {ReadingPlace::jet, "jet"},
                                                    {ReadingPlace::flush_end, "flush end"},
                                                    {ReadingPlace::meter, "meter"},
                                                    {ReadingPlace::bucket, "bucket"},
                                                    {ReadingPlace::engine, "engine"}};
};
template <>
struct Enumeration<Seen> {
  static constexpr const char* name = "Seen";
  static constexpr Choice<Seen> values[] = {{Seen::turning, "turning"},
                                            {Seen::not_turning, "not turning"},
                                            {Seen::dry, "dry"},
                                            {Seen::plume, "plume"},
                                            {Seen::wet_spot, "wet spot"}};
};
template <>
struct Enumeration<CandidateKind> {
  static constexpr const char* name = "CandidateKind";
  static constexpr Choice<CandidateKind> values[] = {
      {CandidateKind::no_fault, "no fault"},
      {CandidateKind::head_off, "head off"},
      {CandidateKind::riser_sheared, "riser sheared"},
      {CandidateKind::nozzle_missing, "nozzle missing"},
      {CandidateKind::worn, "worn"},
      {CandidateKind::clogged, "clogged"},
      {CandidateKind::wrong_outlet, "wrong outlet"},
      {CandidateKind::leak, "leak"},
      {CandidateKind::end_open, "end open"},
      {CandidateKind::valve_left_open, "valve left open"},
      {CandidateKind::valve_part_closed, "valve part closed"},
      {CandidateKind::regulator_stuck_open, "regulator stuck open"},
      {CandidateKind::regulator_stuck_shut, "regulator stuck shut"},
      {CandidateKind::filter_dirty, "filter dirty"},
      {CandidateKind::engine_slow, "engine slow"},
      {CandidateKind::pump_worn, "pump worn"},
      {CandidateKind::supply_low, "supply low"},
      {CandidateKind::gauge_wrong, "gauge wrong"}};
};
template <>
struct Enumeration<WalkKind> {
  static constexpr const char* name = "WalkKind";
  static constexpr Choice<WalkKind> values[] = {{WalkKind::nothing, "nothing"},
                                                {WalkKind::broken_outlet, "broken outlet"},
                                                {WalkKind::odd_outlet, "odd outlet"},
                                                {WalkKind::leak, "leak"},
                                                {WalkKind::end_open, "end open"},
                                                {WalkKind::valve, "valve"},
                                                {WalkKind::regulator, "regulator"},
                                                {WalkKind::supply, "supply"},
                                                {WalkKind::gauge, "gauge"}};
};
template <>
struct Enumeration<WhyStop> {
  static constexpr const char* name = "WhyStop";
  static constexpr Choice<WhyStop> values[] = {{WhyStop::go_on, "go_on"},
                                               {WhyStop::sure_enough, "sure_enough"},
                                               {WhyStop::nothing_to_learn, "nothing_to_learn"}};
};
template <>
struct Enumeration<Deed> {
  static constexpr const char* name = "Deed";
  static constexpr Choice<Deed> values[] = {{Deed::go_on, "water on as it is"},
                                            {Deed::cap, "cap the outlet and water on"},
                                            {Deed::stop, "stop until it is mended"},
                                            {Deed::mend, "mend it now"}};
};
template <>
struct Enumeration<LearntKind> {
  static constexpr const char* name = "LearntKind";
  static constexpr Choice<LearntKind> values[] = {
      {LearntKind::hazen_williams, "pipe wall C"},
      {LearntKind::roughness, "pipe roughness"},
      {LearntKind::darcy_factor, "pipe friction factor"},
      {LearntKind::inside_diameter, "pipe bore"},
      {LearntKind::outlet_flow, "outlet flow"},
      {LearntKind::loss_coefficient, "fittings"},
      {LearntKind::pump_head, "pump head"},
      {LearntKind::supply_pressure, "supply pressure"},
      {LearntKind::gauge, "gauge"}};
};

template <class E>
std::optional<E> value_of(std::string_view word) {
  for (const Choice<E>& choice : Enumeration<E>::values)
    if (word == choice.word) return choice.value;
  return std::nullopt;
}

/// `"us", "si"`.
template <class E>
std::string list_of_words() {
  std::string list;
  for (const Choice<E>& choice : Enumeration<E>::values)
    list += (list.empty() ? "\"" : ", \"") + std::string(choice.word) + "\"";
  return list;
}

}  // namespace hydro::bindings

namespace pybind11::detail {

/// To Python: the member of that name.
template <class E>
struct type_caster<E, std::enable_if_t<std::is_enum_v<E>>> {
  PYBIND11_TYPE_CASTER(E, const_name("str"));

  bool load(handle given, bool /*convert*/) {
    if (!PyUnicode_Check(given.ptr())) return false;
    const auto found = hydro::bindings::value_of<E>(given.cast<std::string>());
    if (found) value = *found;
    return found.has_value();
  }
  static handle cast(E member, return_value_policy /*policy*/, handle /*parent*/) {
    // Leaked, since static objects would outlive the interpreter.
    static const auto* const members = new std::vector<object>(all_members());
    std::size_t place = 0;
    for (const auto& choice : hydro::bindings::Enumeration<E>::values) {
      if (member == choice.value) break;
      ++place;
    }
    return object(members->at(place)).release();
  }

 private:
  static std::vector<object> all_members() {
    using Own = hydro::bindings::Enumeration<E>;
    const object kind = module_::import("hydro.enumerations").attr(Own::name);
    std::vector<object> all;
    for (const auto& choice : Own::values) all.push_back(kind(choice.word));
    return all;
  }
};

}  // namespace pybind11::detail
