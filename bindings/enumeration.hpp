// enumeration.hpp: enumerations, which in Python are texts: members of the StrEnum classes of
// hydro.enumerations.
#pragma once

#include "hydro/answers/hand_method.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

#include <pybind11/pybind11.h>

namespace hydro::bindings {

template <class E>
struct NamedValue {
  const char* name;
  E value;
};

template <class E>
struct Enumeration;

template <>
struct Enumeration<UnitSystem> {
  static constexpr const char* name = "UnitSystem";
  static constexpr NamedValue<UnitSystem> values[] = {{"us", UnitSystem::us},
                                                      {"si", UnitSystem::si}};
};
template <>
struct Enumeration<FirstOutlet> {
  static constexpr const char* name = "FirstOutlet";
  static constexpr NamedValue<FirstOutlet> values[] = {
      {"at_one_spacing", FirstOutlet::at_one_spacing},
      {"at_half_spacing", FirstOutlet::at_half_spacing}};
};
template <>
struct Enumeration<OutletState> {
  static constexpr const char* name = "OutletState";
  static constexpr NamedValue<OutletState> values[] = {
      {"works", OutletState::works},
      {"below_minimum", OutletState::below_minimum},
      {"above_maximum", OutletState::above_maximum},
      {"dry", OutletState::dry},
      {"closed", OutletState::closed},
      {"broken", OutletState::broken}};
};

template <class E>
std::optional<E> value_of(std::string_view name) {
  for (const NamedValue<E>& named : Enumeration<E>::values)
    if (name == named.name) return named.value;
  return std::nullopt;
}

template <class E>
const char* name_of(E value) {
  for (const NamedValue<E>& named : Enumeration<E>::values)
    if (value == named.value) return named.name;
  return "";
}

/// `"us", "si"`.
template <class E>
std::string list_of_names() {
  std::string list;
  for (const NamedValue<E>& named : Enumeration<E>::values)
    list += (list.empty() ? "\"" : ", \"") + std::string(named.name) + "\"";
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
    // Leaked, since a static object would outlive the interpreter.
    static const object* const members = new object(
        module_::import("hydro.enumerations").attr(hydro::bindings::Enumeration<E>::name));
    return object(members->attr(hydro::bindings::name_of(member))).release();
  }
};

}  // namespace pybind11::detail
