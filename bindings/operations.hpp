// operations.hpp: +, *, <, [] and the like, for one kind of operand after another.
//
// What      Collects what an operator does for each type of its other operand, and defines it as
//           one Python method that takes the first that fits. Where none does, Python hears
//           NotImplemented and asks the other operand.
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "bindings/function.hpp"
#include "bindings/numbers.hpp"
#include <pybind11/pybind11.h>

namespace hydro::bindings {

/// Whether something is a T, and the T that it is.
template <class T>
struct Operand {
  static std::string name() { return Type<T>::accepts(); }
  static bool fits(py::handle given) { return py::isinstance<T>(given); }
  static const T& from(py::handle given) { return given.cast<const T&>(); }
};
template <>
struct Operand<Number> {
  static std::string name() { return "float"; }
  static bool fits(py::handle given) { return is_number(given); }
  static double from(py::handle given) { return to_double(given, {"number"}); }
};
template <>
struct Operand<Numbers> {
  static std::string name() { return "Sequence[float] | NDArray[Any]"; }
  static bool fits(py::handle given) { return holds_many(given); }
  static std::vector<double> from(py::handle given) { return to_numbers(given); }
};
/// Whatever is left.
template <>
struct Operand<py::object> {
  static std::string name() { return "object"; }
  static bool fits(py::handle) { return true; }
  static py::handle from(py::handle given) { return given; }
};

class Operations {
 public:
  /// The function takes const S& and what the operand is. @param result its type in Python, as it
  /// stands in the signature @param operand its type, where another is to stand there
  template <class S, class Other, class F>
  void add(const char* name,
           const std::string& result,
           F function,
           const std::string& operand = Operand<Other>::name()) {
    add(py::type::of<S>(),
        name,
        "other: " + operand + ", ",
        result,
        [function](py::handle self, py::handle other) -> py::object {
          if (!Operand<Other>::fits(other)) return {};
          return result_of(
              [&] { return function(self.cast<const S&>(), Operand<Other>::from(other)); },
              py::return_value_policy::move,
              {});
        });
  }

  /// A number without a unit, a unit alone and other quantities are refused by words that say what to
  /// write; whatever else is left to Python. After the others.
  template <class S, class Q>
  void refuse_others(const char* name) {
    add(py::type::of<S>(), name, "", "", [](py::handle /*self*/, py::handle other) -> py::object {
      if (py::hasattr(other, "__array_interface__"))
        throw py::type_error(std::string("an array has no unit: write array * ") +
                             Vocabulary<Q>::units[0].name);
      bool is_ours = is_number(other);
      for_each_quantity([&]<class Other>(const Other*) {
        is_ours = is_ours || py::isinstance<Other>(other) || py::isinstance<Unit<Other>>(other);
      });
      if (is_ours) (void)Type<Q>::from(other, {""});
      return {};
    });
  }

  /// Defines the methods of all classes. Once.
  void define() const;

 private:
  using Alternative = std::function<py::object(py::handle self, py::handle other)>;
  struct Operator {
    py::object owner;
    std::string name;
    std::string text;
    std::vector<Alternative> alternatives;
  };
  void add(const py::object& owner,
           const std::string& name,
           const std::string& operand,
           const std::string& result,
           Alternative alternative);

  std::vector<Operator> operators_;
};

}  // namespace hydro::bindings
