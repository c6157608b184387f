// quantities.cpp: quantities and the units they are written in.

#include "hydro/quantities/series.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/quantities/unit_text.hpp"
#include "hydro/quantities/units.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/function.hpp"
#include "bindings/operations.hpp"
#include "bindings/record.hpp"
#include "bindings/series.hpp"

namespace hydro::bindings {
namespace {

template <class Q>
const char* name_of(const Unit<Q>& unit) {
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units)
    if (std::string_view(named.unit.symbol) == unit.symbol) return named.name;
  return unit.symbol;
}

/// The number and the unit that read best: few characters, and one of the first units, which are
/// the usual ones. The SI unit is always exact.
template <class Q>
std::pair<std::string, NamedUnit<Q>> most_readable(const Q& quantity) {
  constexpr std::size_t long_number = 12;  // longer ones are equally hard to read
  std::pair<std::string, NamedUnit<Q>> best{"", Vocabulary<Q>::units[0]};
  std::size_t least_cost = std::string::npos;
  std::size_t place = 0;
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units) {
    ++place;
    const auto number = exact_number(quantity, named.unit);
    if (!number) continue;
    const std::string digits = to_text(*number);
    const bool small = *number != 0 && std::abs(*number) < 1;
    const std::size_t cost =
        std::min(digits.size(), long_number) + place + (small ? 1 : 0) + named.strangeness;
    if (cost >= least_cost) continue;
    least_cost = cost;
    best = {digits, named};
  }
  return best;
}

template <class Q>
std::string symbol_text(const Q& quantity) {
  if (!std::isfinite(si(quantity)))
    return to_text(si(quantity)) + " " + Vocabulary<Q>::units[0].unit.symbol;
  const auto [number, named] = most_readable(quantity);
  return number + " " + named.unit.symbol;
}

void refuse_zero(double divisor) {
  if (divisor != 0) return;
  PyErr_SetString(PyExc_ZeroDivisionError, "a quantity divided by zero");
  throw py::error_already_set();
}

template <class Q>
void add_arithmetic(Operations& operations, py::class_<Q>& quantity) {
  const std::string own = Vocabulary<Q>::name;
  for (const char* name : {"__mul__", "__rmul__"}) {
    operations.add<Q, Number>(
        name, own, [](const Q& self, double number) -> Q { return self * number; });
    operations.add<Q, Numbers>(
        name, own + "Series", [](const Q& self, std::vector<double> numbers) {
          for (double& number : numbers) number *= si(self);
          return Series<Q>(std::move(numbers));
        });
  }
  operations.add<Q, Number>("__truediv__", own, [](const Q& self, double number) -> Q {
    refuse_zero(number);
    return self / number;
  });
  operations.add<Q, Q>("__truediv__", "float", [](const Q& self, const Q& other) {
    refuse_zero(si(other));
    return si(self) / si(other);
  });
  operations.add<Q, Q>(
      "__add__", own, [](const Q& self, const Q& other) -> Q { return self + other; });
  operations.add<Q, Q>(
      "__sub__", own, [](const Q& self, const Q& other) -> Q { return self - other; });
  for (const char* name : {"__add__", "__radd__", "__sub__", "__rsub__"})
    operations.refuse_others<Q, Q>(name);
  special(quantity, "__neg__", own, [](const Q& self) -> Q { return -self; });
  special(quantity, "__pos__", own, [](const Q& self) { return self; });
  special(
      quantity, "__abs__", own, [](const Q& self) { return Q::from_value(std::abs(si(self))); });
  special(quantity, "__bool__", "bool", [](const Q& self) { return si(self) != 0; });
}

template <class Q>
void bind_unit(py::module_& module, Operations& operations, py::class_<Unit<Q>>& unit) {
  using U = Unit<Q>;
  const std::string own = Vocabulary<Q>::name;
  for (const char* name : {"__mul__", "__rmul__"}) {
    operations.add<U, Number>(
        name, own, [](const U& self, double number) { return number * self; });
    operations.add<U, Numbers>(
        name, own + "Series", [](const U& self, std::vector<double> numbers) {
          return series_of(std::move(numbers), self);
        });
  }
  operations.add<U, U>(
      "__eq__",
      "bool",
      [](const U& self, const U& other) { return std::string_view(self.symbol) == other.symbol; },
      "object");
  special(unit, "__hash__", "int", [](const U& self) {
    return std::hash<std::string_view>()(self.symbol);
  });
  special(unit, "__repr__", "str", &name_of<Q>);
  special(unit, "__str__", "str", [](const U& self) { return self.symbol; });
  property(
      unit,
      "symbol",
      [](const U& self) { return std::string(self.symbol); },
      "What texts and reports print: gal/min.");
  unit.def(py::pickle([](const U& self) { return py::make_tuple(self.symbol); },
                      [](const py::tuple& state) {
                        const auto symbol = state[0].cast<std::string>();
                        for (const NamedUnit<Q>& named : Vocabulary<Q>::units)
                          if (symbol == named.unit.symbol) return named.unit;
                        throw py::value_error(symbol + " is not one of hydro's units");
                      }));
  copy_is_itself(unit);
  unit.attr("__array_ufunc__") = py::none();  // an array leaves the product to the unit
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units) {
    const std::string_view name = named.name;
    const std::size_t dot = name.find('.');
    module.attr(name.substr(dot == name.npos ? 0 : dot + 1).data()) = named.unit;
  }
}

template <class Q>
void bind_quantity(py::module_& module, Operations& operations) {
  const std::string name = Vocabulary<Q>::name;
  const std::string a_unit = Vocabulary<Q>::units[0].name;
  const std::string a_symbol = Vocabulary<Q>::units[0].unit.symbol;
  const std::string text = name + "(quantity, /)\n--\n\nA number times a unit, 25 * " + a_unit +
                           ", or a text with a unit, " + name + "(\"25 " + a_symbol +
                           "\"). Units: " + list_of_units<Q>() + ".";
  const std::string text_of_unit = "A unit of " + name + ": 25 * " + a_unit + ".";
  py::class_<Q> quantity(module, name.c_str(), text.c_str());
  py::class_<Unit<Q>> unit(module, (name + "Unit").c_str(), text_of_unit.c_str());

  const Signature signature(name, {"quantity"});
  quantity.def(
      py::init([signature](const py::args& args, const py::kwargs& kwargs) {
        py::handle given;
        signature.bind(args, kwargs, &given);
        if (PyUnicode_Check(given.ptr())) return from_text<Q>(to_string(given, {"quantity"}));
        return Type<Q>::from(given, {""});
      }),
      ("__init__(self, quantity, /)\n--\n\n__init__(self, quantity: " + name + " | str, /) -> None")
          .c_str());
  method(
      quantity,
      "to",
      [](const Q& self, const Unit<Q>& wanted) { return self / wanted; },
      {"unit"},
      "The number of this unit. TypeError for a unit of another quantity.");
  operations.add<Q, Unit<Q>>(
      "__truediv__", "float", [](const Q& self, const Unit<Q>& wanted) { return self / wanted; });
  operations.add<Q, Q>(
      "__eq__", "bool", [](const Q& self, const Q& other) { return self == other; }, "object");
  operations.add<Q, Q>(
      "__lt__", "bool", [](const Q& self, const Q& other) { return self < other; });
  operations.add<Q, Q>(
      "__le__", "bool", [](const Q& self, const Q& other) { return self <= other; });
  operations.add<Q, Q>(
      "__gt__", "bool", [](const Q& self, const Q& other) { return self > other; });
  operations.add<Q, Q>(
      "__ge__", "bool", [](const Q& self, const Q& other) { return self >= other; });
  for (const char* order : {"__lt__", "__le__", "__gt__", "__ge__"})
    operations.refuse_others<Q, Q>(order);
  special(quantity, "__hash__", "int", [](const Q& self) { return std::hash<double>()(si(self)); });
  special(quantity, "__repr__", "str", &to_python<Q>);
  special(quantity, "__str__", "str", &symbol_text<Q>);
  quantity.def(
      py::pickle([](const Q& self) { return py::make_tuple(si(self)); },
                 [](const py::tuple& state) { return Q::from_value(state[0].cast<double>()); }));
  copy_is_itself(quantity);
  quantity.attr("__array_ufunc__") = py::none();
  if constexpr (!std::is_same_v<Q, Temperature>) add_arithmetic(operations, quantity);
  bind_unit<Q>(module, operations, unit);
}

/// one x other = product, and what follows from it.
template <class A, class B, class Product>
void add_product(Operations& operations) {
  operations.add<A, B>("__mul__", Vocabulary<Product>::name, [](const A& a, const B& b) {
    return Product::from_value(si(a) * si(b));
  });
  operations.add<Product, A>("__truediv__", Vocabulary<B>::name, [](const Product& x, const A& a) {
    refuse_zero(si(a));
    return B::from_value(si(x) / si(a));
  });
  if constexpr (!std::is_same_v<A, B>) {
    operations.add<B, A>("__mul__", Vocabulary<Product>::name, [](const B& b, const A& a) {
      return Product::from_value(si(b) * si(a));
    });
    operations.add<Product, B>(
        "__truediv__", Vocabulary<A>::name, [](const Product& x, const B& b) {
          refuse_zero(si(b));
          return A::from_value(si(x) / si(b));
        });
  }
}

void bind_unit_set(py::module_& module) {
  Record<UnitSet>("UnitSet", "The units that reports of a system print.")
      .field("length", &UnitSet::length, "Of lines.")
      .field("bore", &UnitSet::bore, "Of pipes.")
      .field("pressure", &UnitSet::pressure, "Gauge.")
      .field("flow", &UnitSet::flow, "Of lines and sprinklers.")
      .field("small_flow", &UnitSet::small_flow, "For outlets under one `flow`.")
      .field("velocity", &UnitSet::velocity, "Of water in a pipe.")
      .field("temperature", &UnitSet::temperature, "Of water and pipe.")
      .field("volume", &UnitSet::volume, "Of a bucket.")
      .field("power", &UnitSet::power, "Of a pump's shaft.")
      .field("bucket", &UnitSet::bucket, "That is used with a stopwatch, in units of volume.")
      .result(module);
  def(module,
      "unit_set",
      &unit_set,
      {"system"},
      "The units of a system, \"us\" or \"si\".\n\n>>> unit_set(\"us\").flow\ngpm");
}

void bind_to_text(py::module_& module) {
  const Signature signature("to_text", {"quantity", "unit"});
  std::string text = signature.plain("to_text", "") + "\n--\n\n";
  for_each_quantity([&]<class Q>(const Q*) {
    text += signature.typed("", {Type<Q>::accepts(), Type<Unit<Q>>::accepts()}, "str") + "\n";
  });
  text +=
      "\nThe shortest text that stands for the quantity in this unit. TypeError for a unit of "
      "another quantity.\n\n>>> to_text(25 * psi, kPa)\n'172.36893232920903 kPa'";
  const Call call = [signature](py::handle, const py::args& args, const py::kwargs& kwargs) {
    py::handle given[2];
    signature.bind(args, kwargs, given);
    std::string written;
    for_each_quantity([&]<class Q>(const Q*) {
      if (py::isinstance<Q>(given[0]))
        written = to_text(given[0].cast<const Q&>(), Type<Unit<Q>>::from(given[1], {"unit"}));
    });
    if (written.empty()) refuse({"quantity"}, given[0], "quantity", "", "write NUMBER * psi");
    return py::str(written);
  };
  define_function(module, "to_text", call, text);
}

}  // namespace

template <class Q>
std::string to_python(const Q& quantity) {
  if (!std::isfinite(si(quantity)))
    return "float('" + to_text(si(quantity)) + "') * " + Vocabulary<Q>::units[0].name;
  const auto [number, named] = most_readable(quantity);
  return number + " * " + named.name;
}

void bind_quantities(py::module_& module) {
  Operations operations;
  for_each_quantity([&]<class Q>(const Q*) { bind_quantity<Q>(module, operations); });
  add_product<Length, Length, Area>(operations);
  add_product<Area, Length, Volume>(operations);
  add_product<Velocity, Time, Length>(operations);
  add_product<Velocity, Area, Flow>(operations);
  add_product<Flow, Time, Volume>(operations);
  add_product<Pressure, Flow, Power>(operations);
  add_product<Pressure, Volume, Energy>(operations);
  add_product<Power, Time, Energy>(operations);
  add_product<Irradiance, Area, Power>(operations);
  add_product<Density, KinematicViscosity, DynamicViscosity>(operations);
  bind_series(module, operations);
  operations.define();

  module.attr("gravity") = gravity;
  bind_to_text(module);
  bind_unit_set(module);
}

}  // namespace hydro::bindings
