// enumeration.hpp: enumerations, which in Python are texts: members of the StrEnum classes of
// hydro.enumerations.
#pragma once

#include "hydro/answers/drain.hpp"
#include "hydro/answers/hand_method.hpp"
#include "hydro/physics/choices.hpp"
#include "hydro/physics/operating_point.hpp"
#include "hydro/physics/pump.hpp"
#include "hydro/physics/supply_limit.hpp"
#include "hydro/physics/valve.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/solver/solution.hpp"

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
