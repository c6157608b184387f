// python_type.hpp: what each C++ type is in Python: its name in a signature, and how an argument of
// it is read.
//
// What      Type<T>::accepts and gives name T as an argument and as a result. Type<T>::from reads
//           an argument; a bound class is given as a reference into the Python object.
// Errors    from throws TypeError that says where, what was given, and what to write instead;
//           ValueError for a number that is out of a C++ int's range or a name that is none.
#pragma once

#include "hydro/layout/fault.hpp"
#include "hydro/quantities/units.hpp"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "bindings/enumeration.hpp"
#include "bindings/vocabulary.hpp"
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

namespace hydro::bindings {

namespace py = pybind11;

/// Where an argument stands: `spacing`, `lines[2]`.
struct Where {
  const char* name;
  std::ptrdiff_t index = -1;  ///< in a sequence; negative: it stands alone
  std::string text() const;
  /// `spacing: `, or nothing for an operand, which has no name.
  std::string prefix() const;
};

/// `25 * psi`: what Python reads back to the same value, in the unit that reads best.
template <class Q>
std::string to_python(const Q& quantity);

/// `psi, kPa, bar`.
template <class Q>
std::string list_of_units() {
  std::string list;
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units)
    list += (list.empty() ? "" : ", ") + std::string(named.name);
  return list;
}

/// @param wanted what it is not: `Pressure` @param hint what to write; `NUMBER` in it stands for a
/// bare number that was given
[[noreturn]] void refuse(const Where& where,
                         py::handle given,
                         const std::string& wanted,
                         const std::string& hint,
                         const std::string& hint_for_number);

int to_int(py::handle given, const Where& where);
std::uint64_t to_long(py::handle given, const Where& where);
double to_double(py::handle given, const Where& where);
std::string to_string(py::handle given, const Where& where);
std::filesystem::path to_path(py::handle given, const Where& where);
/// Whether it is a plain number: no text, truth value, array or quantity.
bool is_number(py::handle given);

template <class>
struct IsQuantity : std::false_type {};
template <class SiUnit>
struct IsQuantity<Quantity<SiUnit>> : std::true_type {};

/// A class of the module.
template <class T>
struct Type {
  static std::string gives() { return py::str(py::type::of<T>().attr("__name__")); }
  static std::string accepts() { return gives(); }
  static const T& from(py::handle given, const Where& where) {
    if (!py::isinstance<T>(given)) refuse(where, given, gives(), "", "");
    return given.cast<const T&>();
  }
};

template <class SiUnit>
struct Type<Quantity<SiUnit>> {
  using Q = Quantity<SiUnit>;
  static std::string gives() { return Vocabulary<Q>::name; }
  static std::string accepts() { return gives(); }
  static Q from(py::handle given, const Where& where) {
    if (!py::isinstance<Q>(given))
      refuse(where,
             given,
             gives(),
             "write a number times one of " + list_of_units<Q>(),
             std::string("write NUMBER * ") + Vocabulary<Q>::units[0].name);
    return given.cast<const Q&>();
  }
};

template <class Q>
struct Type<Unit<Q>> {
  static std::string gives() { return std::string(Vocabulary<Q>::name) + "Unit"; }
  static std::string accepts() { return gives(); }
  static Unit<Q> from(py::handle given, const Where& where) {
    const std::string hint = "write one of " + list_of_units<Q>();
    if (!py::isinstance<Unit<Q>>(given)) refuse(where, given, gives(), hint, hint);
    return given.cast<const Unit<Q>&>();
  }
};

template <>
struct Type<bool> {
  static std::string gives() { return "bool"; }
  static std::string accepts() { return "bool"; }
  static bool from(py::handle given, const Where& where) {
    if (!PyBool_Check(given.ptr())) refuse(where, given, "bool", "", "write True or False");
    return given.ptr() == Py_True;
  }
};

template <>
struct Type<int> {
  static std::string gives() { return "int"; }
  static std::string accepts() { return "int"; }
  static int from(py::handle given, const Where& where) { return to_int(given, where); }
};

/// Seeds and numbers of draws, which are longer than a C++ int.
struct Long {
  std::uint64_t value;
};
template <>
struct Type<Long> {
  static std::string gives() { return "int"; }
  static std::string accepts() { return "int"; }
  static Long from(py::handle given, const Where& where) { return {to_long(given, where)}; }
};

/// Indices, counted from 0.
template <>
struct Type<std::size_t> {
  static std::string gives() { return "int"; }
  static std::string accepts() { return "int"; }
  static std::size_t from(py::handle given, const Where& where) {
    const int index = to_int(given, where);
    if (index < 0)
      throw py::index_error(where.text() + ": is " + std::to_string(index) + ", must be 0 or more");
    return static_cast<std::size_t>(index);
  }
};

template <>
struct Type<double> {
  static std::string gives() { return "float"; }
  static std::string accepts() { return "float"; }
  static double from(py::handle given, const Where& where) { return to_double(given, where); }
};

template <>
struct Type<std::string> {
  static std::string gives() { return "str"; }
  static std::string accepts() { return "str"; }
  static std::string from(py::handle given, const Where& where) { return to_string(given, where); }
};
template <>
struct Type<std::string_view> : Type<std::string> {};

template <>
struct Type<std::filesystem::path> {
  static std::string accepts() { return "str | os.PathLike[str]"; }
  static std::filesystem::path from(py::handle given, const Where& where) {
    return to_path(given, where);
  }
};

template <class T>
struct Type<std::optional<T>> {
  static std::string gives() { return Type<T>::gives() + " | None"; }
  static std::string accepts() { return Type<T>::accepts() + " | None"; }
  static std::optional<T> from(py::handle given, const Where& where) {
    if (given.is_none()) return std::nullopt;
    return Type<T>::from(given, where);
  }
};

template <class T>
struct Type<std::vector<T>> {
  static std::string gives() { return "list[" + Type<T>::gives() + "]"; }
  static std::string accepts() { return "Iterable[" + Type<T>::accepts() + "]"; }
  static std::vector<T> from(py::handle given, const Where& where) {
    if (PyUnicode_Check(given.ptr()) || !py::isinstance<py::iterable>(given))
      refuse(where, given, "list", "write several of " + Type<T>::gives(), "write a list");
    std::vector<T> all;
    for (const py::handle element : py::reinterpret_borrow<py::iterable>(given))
      all.push_back(Type<T>::from(element, {where.name, static_cast<std::ptrdiff_t>(all.size())}));
    return all;
  }
};

template <>
struct Type<Fault> {
  static std::string gives() { return "Fault"; }
  static std::string accepts() { return "Fault"; }
  static Fault from(py::handle given, const Where& where);
};

template <class E>
requires std::is_enum_v<E>
struct Type<E> {
  static std::string gives() { return Enumeration<E>::name; }
  static std::string accepts() { return gives() + " | str"; }
  static E from(py::handle given, const Where& where) {
    const std::string name = to_string(given, where);
    if (const auto value = value_of<E>(name)) return *value;
    throw py::value_error(where.text() + ": is '" + name + "', must be one of " +
                          list_of_words<E>());
  }
};

}  // namespace hydro::bindings
