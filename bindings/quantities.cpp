// quantities.cpp: quantities, the units they are written in, and many values of one quantity.

#include "hydro/quantities/series.hpp"
#include "hydro/quantities/unit_text.hpp"
#include "hydro/quantities/units.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "bindings/bindings.hpp"
#include <pybind11/numpy.h>
#include <pybind11/operators.h>

namespace hydro::bindings {
namespace {

template <class Q>
struct NamedUnit {
  const char* name;
  Unit<Q> unit;
};

/// What a quantity and its units are called. One of the units is the SI unit, which writes every
/// value exactly.
template <class Q>
struct Vocabulary;
template <>
struct Vocabulary<Length> {
  static constexpr const char* name = "Length";
  static constexpr NamedUnit<Length> units[] = {
      {"ft", ft}, {"inch", inch}, {"m", units::m}, {"mm", mm}, {"cm", cm}, {"km", km}};
};
template <>
struct Vocabulary<Pressure> {
  static constexpr const char* name = "Pressure";
  static constexpr NamedUnit<Pressure> units[] = {{"psi", psi},
                                                  {"kPa", kPa},
                                                  {"bar", bar},
                                                  {"MPa", MPa},
                                                  {"Pa", units::Pa},
                                                  {"mH2O", mH2O},
                                                  {"ftH2O", ftH2O},
                                                  {"inHg", inHg}};
};
template <>
struct Vocabulary<Flow> {
  static constexpr const char* name = "Flow";
  static constexpr NamedUnit<Flow> units[] = {{"gpm", gpm},
                                              {"gph", gph},
                                              {"lpm", lpm},
                                              {"lph", lph},
                                              {"lps", lps},
                                              {"m3_per_h", m3_per_h},
                                              {"m3_per_s", m3_per_s},
                                              {"ft3_per_s", ft3_per_s}};
};
template <>
struct Vocabulary<Velocity> {
  static constexpr const char* name = "Velocity";
  static constexpr NamedUnit<Velocity> units[] = {{"ft_per_s", ft_per_s}, {"m_per_s", m_per_s}};
};

template <class Q>
std::string unit_class() {
  return Vocabulary<Q>::name + std::string("Unit");
}

template <class Q>
const char* name_of(const Unit<Q>& unit) {
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units)
    if (std::string_view(named.unit.symbol) == unit.symbol) return named.name;
  return unit.symbol;
}

/// `psi, kPa, bar`.
template <class Q>
std::string list_of_units() {
  std::string list;
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units)
    list += (list.empty() ? "" : ", ") + std::string(named.name);
  return list;
}

/// The number that makes exactly this quantity with this unit, the one with ten digits if there is
/// such; none where the rounding of the product skips the quantity.
template <class Q>
std::optional<double> exact_number(const Q& quantity, const Unit<Q>& unit) {
  const double number = quantity / unit;
  const std::string ten_digits = to_message(number, "");
  double rounded = number;
  std::from_chars(ten_digits.data(), ten_digits.data() + ten_digits.size(), rounded);
  for (const double candidate :
       {rounded, number, std::nextafter(number, -HUGE_VAL), std::nextafter(number, HUGE_VAL)})
    if (candidate * unit == quantity) return candidate;
  return std::nullopt;
}

template <class T>
struct Wording;  // of a refusal
template <class SiUnit>
struct Wording<Quantity<SiUnit>> {
  using Q = Quantity<SiUnit>;
  static std::string name() { return Vocabulary<Q>::name; }
  static std::string hint(const std::string& number) {
    return number + " * " + Vocabulary<Q>::units[0].name;
  }
  static std::string hint() { return "a number times one of " + list_of_units<Q>(); }
};
template <class Q>
struct Wording<Unit<Q>> {
  static std::string name() { return unit_class<Q>(); }
  static std::string hint(const std::string& /*number*/) { return hint(); }
  static std::string hint() { return "one of " + list_of_units<Q>(); }
};

template <class... Q>
bool is_ours(py::handle object) {
  return ((py::isinstance<Q>(object) || py::isinstance<Unit<Q>>(object)) || ...);
}

template <class Q>
void bind_quantity(py::module_& module) {
  const std::string name = Vocabulary<Q>::name;
  const std::string a_unit = Vocabulary<Q>::units[0].name;
  py::class_<Q> quantity(
      module,
      name.c_str(),
      ("A number times a unit: 25 * " + a_unit + ". Units: " + list_of_units<Q>() + ".").c_str());
  py::class_<Unit<Q>> unit(
      module, unit_class<Q>().c_str(), ("A unit of " + name + ": 25 * " + a_unit + ".").c_str());
  py::class_<Series<Q>> series(
      module, (name + "Series").c_str(), ("Many values of " + name + ", counted from 0.").c_str());

  quantity
      .def(py::init([](const Wanted<Q>& same) { return same.value; }),
           py::arg("quantity"),
           py::pos_only(),
           "The same quantity. TypeError for anything else.")
      .def(
          "to",
          [](const Q& self, const Wanted<Unit<Q>>& wanted) { return self / wanted.value; },
          py::arg("unit"),
          "The number of this unit. TypeError for a unit of another quantity.")
      .def(py::self == py::self)
      .def("__lt__", [](const Q& self, const Wanted<Q>& other) { return self < other.value; })
      .def("__le__", [](const Q& self, const Wanted<Q>& other) { return self <= other.value; })
      .def("__gt__", [](const Q& self, const Wanted<Q>& other) { return self > other.value; })
      .def("__ge__", [](const Q& self, const Wanted<Q>& other) { return self >= other.value; })
      .def("__add__", [](const Q& self, const Wanted<Q>& other) -> Q { return self + other.value; })
      .def("__radd__",
           [](const Q& self, const Wanted<Q>& other) -> Q { return other.value + self; })
      .def("__sub__", [](const Q& self, const Wanted<Q>& other) -> Q { return self - other.value; })
      .def("__rsub__",
           [](const Q& self, const Wanted<Q>& other) -> Q { return other.value - self; })
      .def(py::self * double())
      .def(double() * py::self)
      .def("__hash__", [](const Q& self) { return std::hash<double>()(si(self)); })
      .def("__repr__", &to_python<Q>);

  unit.def(double() * py::self)
      .def(
          "__mul__",
          [](const Unit<Q>& self, double number) { return number * self; },
          py::is_operator())
      .def("__repr__", &name_of<Q>);
  // An array would take the product apart into an array of objects.
  quantity.attr("__array_ufunc__") = py::none();
  unit.attr("__array_ufunc__") = py::none();
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units) module.attr(named.name) = named.unit;

  series
      .def(
          "to",
          [](const Series<Q>& self, const Wanted<Unit<Q>>& wanted) {
            py::array_t<double> numbers(static_cast<py::ssize_t>(self.size()));
            double* number = numbers.mutable_data();
            for (const double value : self.si()) *number++ = wanted.value.from_si(value);
            return numbers;
          },
          py::arg("unit"),
          "A new numpy array of numbers of this unit. TypeError for a unit of another quantity.")
      .def("__len__", &Series<Q>::size)
      .def(
          "__getitem__",
          [](const Series<Q>& self, py::ssize_t index) {
            const auto size = static_cast<py::ssize_t>(self.size());
            if (index < -size || index >= size)
              throw py::index_error("index " + std::to_string(index) + " of a series of " +
                                    std::to_string(size));
            return self[static_cast<std::size_t>(index < 0 ? index + size : index)];
          },
          py::arg("index"))
      .def("__repr__", [name](const Series<Q>& self) {
        return "<hydro." + name + "Series of " + std::to_string(self.size()) + ">";
      });
}

}  // namespace

template <class Q>
std::string to_python(const Q& quantity) {
  if (!std::isfinite(si(quantity)))
    return "float('" + to_text(si(quantity)) + "') * " + Vocabulary<Q>::units[0].name;
  constexpr std::size_t long_number = 12;  // longer ones are equally hard to read: the first serves
  std::string text;
  std::size_t shortest = long_number + 2;
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units) {
    const auto number = exact_number(quantity, named.unit);
    if (!number) continue;
    const std::string digits = to_text(*number);
    const std::size_t length = std::min(digits.size(), long_number + 1);
    if (length >= shortest) continue;
    shortest = length;
    text = digits + " * " + named.name;
  }
  return text;
}
template std::string to_python(const Length&);
template std::string to_python(const Pressure&);
template std::string to_python(const Flow&);
template std::string to_python(const Velocity&);

template <class T>
std::string refusal(py::handle given) {
  const std::string type = py::str(py::type::handle_of(given).attr("__name__"));
  const std::string wanted = ", not a " + Wording<T>::name() + ": write ";
  const auto text = [&] { return std::string(py::repr(given)); };
  if (is_ours<Length, Pressure, Flow, Velocity>(given))
    return text() + " is a " + type + wanted + Wording<T>::hint();
  if (PyFloat_Check(given.ptr()) || PyLong_Check(given.ptr()))
    return text() + " is a bare number" + wanted + Wording<T>::hint(text());
  return "this is of type " + type + wanted + Wording<T>::hint();
}

void bind_quantities(py::module_& module) {
  bind_quantity<Length>(module);
  bind_quantity<Pressure>(module);
  bind_quantity<Flow>(module);
  bind_quantity<Velocity>(module);
}

}  // namespace hydro::bindings
