// series.cpp: many values of one quantity, beside numpy.

#include "bindings/series.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

#include "bindings/function.hpp"
#include "bindings/operations.hpp"
#include <pybind11/numpy.h>

namespace hydro::bindings {

template <>
struct Type<py::array_t<double>> {
  static std::string gives() { return "NDArray[numpy.float64]"; }
};

namespace {

/// Read only, of the series' own memory, which lives as long.
template <class Q>
py::array_t<double> view(const Series<Q>& series, py::handle owner) {
  py::array_t<double> array(static_cast<py::ssize_t>(series.size()), series.si().data(), owner);
  array.attr("setflags")(py::arg("write") = false);
  return array;
}

template <class Q>
py::array_t<double> numbers_in(const Series<Q>& series, const Unit<Q>& unit) {
  py::array_t<double> numbers(static_cast<py::ssize_t>(series.size()));
  double* number = numbers.mutable_data();
  for (const double value : series.si()) *number++ = unit.from_si(value);
  return numbers;
}

void expect_same_size(std::size_t one, std::size_t other) {
  if (one != other)
    throw py::value_error("one series has " + std::to_string(one) + " values, the other " +
                          std::to_string(other));
}

/// One entry for each value: function(own value, other's value), all in SI.
template <class T, class Q, class F>
std::vector<T> combined(const Series<Q>& series, const std::vector<double>& others, F function) {
  expect_same_size(series.size(), others.size());
  std::vector<T> results(series.size());
  for (std::size_t i = 0; i < results.size(); ++i) results[i] = function(series.si()[i], others[i]);
  return results;
}
template <class T, class Q, class F>
std::vector<T> combined(const Series<Q>& series, double other, F function) {
  return combined<T>(series, std::vector<double>(series.size(), other), function);
}

template <class Q>
std::vector<double> values_of(const Series<Q>& series) {
  return {series.si().begin(), series.si().end()};
}

py::array array_of(const std::vector<double>& values) {
  return py::array_t<double>(static_cast<py::ssize_t>(values.size()), values.data());
}
py::array array_of(const std::vector<char>& values) {
  py::array_t<bool> array(static_cast<py::ssize_t>(values.size()));
  std::copy(values.begin(), values.end(), array.mutable_data());
  return array;
}

/// What an operator of a series is given beside it, in SI, once for each value or one for all.
template <class Q>
double operand(const Q& quantity) {
  return si(quantity);
}
template <class Q>
std::vector<double> operand(const Series<Q>& series) {
  return values_of(series);
}
inline double operand(double number) {
  return number;
}
inline std::vector<double> operand(const std::vector<double>& numbers) {
  return numbers;
}

/// One operator for one kind of operand, value by value. Wrap makes the result of the T's.
template <class S, class Other, class T, class F, class Wrap>
void add_each(
    Operations& operations, const char* name, const std::string& result, F function, Wrap wrap) {
  operations.add<S, Other>(name, result, [=](const S& self, const auto& other) {
    return wrap(combined<T>(self, operand(other), function));
  });
}

template <class Q>
void add_comparison(Operations& operations, const char* name, bool (*compare)(double, double)) {
  using S = Series<Q>;
  const auto function = [compare](double a, double b) { return static_cast<char>(compare(a, b)); };
  const auto wrap = [](const std::vector<char>& answers) { return array_of(answers); };
  const char* const result = "NDArray[numpy.bool_]";
  add_each<S, S, char>(operations, name, result, function, wrap);
  add_each<S, Q, char>(operations, name, result, function, wrap);
}

template <class Q>
void add_arithmetic(Operations& operations, py::class_<Series<Q>>& series) {
  using S = Series<Q>;
  const std::string own = std::string(Vocabulary<Q>::name) + "Series";
  const char* const array = "NDArray[numpy.float64]";
  const auto as_series = [](std::vector<double> values) { return S(std::move(values)); };
  const auto as_array = [](const std::vector<double>& values) { return array_of(values); };
  const auto plus = [](double a, double b) { return a + b; };
  const auto minus = [](double a, double b) { return a - b; };
  const auto less = [](double a, double b) { return b - a; };
  const auto times = [](double a, double b) { return a * b; };
  const auto over = [](double a, double b) { return a / b; };
  add_each<S, S, double>(operations, "__add__", own, plus, as_series);
  add_each<S, Q, double>(operations, "__add__", own, plus, as_series);
  add_each<S, Q, double>(operations, "__radd__", own, plus, as_series);
  add_each<S, S, double>(operations, "__sub__", own, minus, as_series);
  add_each<S, Q, double>(operations, "__sub__", own, minus, as_series);
  add_each<S, Q, double>(operations, "__rsub__", own, less, as_series);
  for (const char* name : {"__add__", "__radd__", "__sub__", "__rsub__"})
    operations.refuse_others<S, Q>(name);
  for (const char* name : {"__mul__", "__rmul__"}) {
    add_each<S, Number, double>(operations, name, own, times, as_series);
    add_each<S, Numbers, double>(operations, name, own, times, as_series);
  }
  add_each<S, S, double>(operations, "__truediv__", array, over, as_array);
  add_each<S, Q, double>(operations, "__truediv__", array, over, as_array);
  add_each<S, Number, double>(operations, "__truediv__", own, over, as_series);
  add_each<S, Numbers, double>(operations, "__truediv__", own, over, as_series);
  special(series, "__neg__", own, [](const S& self) {
    std::vector<double> values = values_of(self);
    for (double& value : values) value = -value;
    return S(std::move(values));
  });
  const auto sum = [](const S& self) {
    return std::accumulate(self.si().begin(), self.si().end(), 0.0);
  };
  method(
      series, "sum", [=](const S& self) { return Q::from_value(sum(self)); }, {}, "All together.");
  method(
      series,
      "mean",
      [=](const S& self) {
        if (self.empty()) throw py::value_error("a series without values has no mean");
        return Q::from_value(sum(self) / static_cast<double>(self.size()));
      },
      {},
      "The arithmetic mean. ValueError when there are no values.");
}

/// `[10.0, 20.0] * psi`, in the unit that writes every value exactly in the fewest characters.
template <class Q>
std::string text_of(const Series<Q>& series) {
  constexpr std::size_t many = 100;
  const std::string name = Vocabulary<Q>::name;
  const std::string in_short =
      "<hydro." + name + "Series of " + std::to_string(series.size()) + ">";
  // Python has no literal for what is not finite.
  const auto is_finite = [](double value) { return std::isfinite(value); };
  if (series.size() > many || !std::ranges::all_of(series.si(), is_finite)) return in_short;
  if (series.empty()) return name + "Series([])";
  std::string best;
  for (const NamedUnit<Q>& named : Vocabulary<Q>::units) {
    py::list numbers;
    for (const Q& quantity : series)
      if (const auto number = exact_number(quantity, named.unit)) numbers.append(*number);
    if (numbers.size() < series.size()) continue;
    const std::string text = std::string(py::str(numbers)) + " * " + named.name;
    if (best.empty() || text.size() < best.size()) best = text;
  }
  return best.empty() ? in_short : best;
}

py::ssize_t checked_index(py::handle given, std::size_t size) {
  const py::ssize_t index = PyNumber_AsSsize_t(given.ptr(), PyExc_IndexError);
  if (index == -1 && PyErr_Occurred() != nullptr) throw py::error_already_set();
  const auto end = static_cast<py::ssize_t>(size);
  if (index < -end || index >= end)
    throw py::index_error("index " + std::to_string(index) + " of a series of " +
                          std::to_string(size));
  return index < 0 ? index + end : index;
}

template <class Q>
void add_reading(Operations& operations, py::class_<Series<Q>>& series) {
  using S = Series<Q>;
  const std::string own = Vocabulary<Q>::name;
  method(
      series,
      "to",
      [](const S& self, const Unit<Q>& unit) { return numbers_in(self, unit); },
      {"unit"},
      "A new numpy array of numbers of this unit. TypeError for a unit of another quantity.");
  define_property(
      series,
      "si",
      [](py::handle self) { return view(self.cast<const S&>(), self); },
      "NDArray[numpy.float64]",
      "The values in SI units: a view that cannot be written to, without a copy.");
  operations.add<S, Unit<Q>>(
      "__truediv__", "NDArray[numpy.float64]", [](const S& self, const Unit<Q>& unit) {
        return numbers_in(self, unit);
      });
  operations.add<S, py::object>(
      "__getitem__",
      own,
      [](const S& self, py::handle index) -> py::object {
        // An array is one of indices, although numpy makes an index of an array of one.
        if (!PyIndex_Check(index.ptr()) || PySequence_Check(index.ptr()) != 0) return {};
        return py::cast(self[static_cast<std::size_t>(checked_index(index, self.size()))]);
      },
      "int");
  operations.add<S, py::object>(
      "__getitem__",
      own + "Series",
      [](const S& self, py::handle several) -> py::object {
        const py::array all = view(self, py::none());
        return py::cast(S(to_numbers(all[py::reinterpret_borrow<py::object>(several)])));
      },
      "slice | Sequence[int] | Sequence[bool] | NDArray[Any]");
  special(series, "__len__", "int", &S::size);
  series.def(
      "__iter__",
      [](const S& self) { return py::make_iterator(self.begin(), self.end()); },
      py::keep_alive<0, 1>(),
      ("__iter__(self) -> Iterator[" + own + "]").c_str());
  for (const auto& [name, take] :
       {std::pair(
            "min", +[](const S& self) { return *std::ranges::min_element(self.si()); }),
        std::pair(
            "max", +[](const S& self) { return *std::ranges::max_element(self.si()); })})
    method(
        series,
        name,
        [take = take, name = std::string(name)](const S& self) {
          if (self.empty()) throw py::value_error("a series without values has no " + name);
          return Q::from_value(take(self));
        },
        {},
        name == std::string_view("min") ? "The smallest value. ValueError when there are none."
                                        : "The largest value. ValueError when there are none.");
}

template <class Q>
void bind_series_of(py::module_& module, Operations& operations) {
  using S = Series<Q>;
  const std::string own = Vocabulary<Q>::name;
  const std::string name = own + "Series";
  const std::string a_unit = Vocabulary<Q>::units[0].name;
  const std::string text = name + "(quantities, /)\n--\n\nMany values of " + own +
                           ", counted from 0: numbers times a unit, [10, 20] * " + a_unit +
                           " or array * " + a_unit + "; or several of " + own +
                           ". Unlike an array it cannot be changed.";
  py::class_<S> series(module, name.c_str(), text.c_str());
  const Signature signature(name, {"quantities"});
  series.def(py::init([signature](const py::args& args, const py::kwargs& kwargs) {
               py::handle quantities;
               signature.bind(args, kwargs, &quantities);
               std::vector<double> values;
               for (const Q& quantity : Type<std::vector<Q>>::from(quantities, {"quantities"}))
                 values.push_back(si(quantity));
               return S(std::move(values));
             }),
             ("__init__(self, quantities, /)\n--\n\n__init__(self, quantities: Iterable[" + own +
              "], /) -> None")
                 .c_str());
  add_reading(operations, series);
  add_comparison<Q>(operations, "__eq__", [](double a, double b) { return a == b; });
  add_comparison<Q>(operations, "__ne__", [](double a, double b) { return a != b; });
  add_comparison<Q>(operations, "__lt__", [](double a, double b) { return a < b; });
  add_comparison<Q>(operations, "__le__", [](double a, double b) { return a <= b; });
  add_comparison<Q>(operations, "__gt__", [](double a, double b) { return a > b; });
  add_comparison<Q>(operations, "__ge__", [](double a, double b) { return a >= b; });
  for (const char* order : {"__lt__", "__le__", "__gt__", "__ge__"})
    operations.refuse_others<S, Q>(order);
  series.attr("__hash__") = py::none();  // as of arrays, whose == is one answer a value
  if constexpr (!std::is_same_v<Q, Temperature>) add_arithmetic(operations, series);
  special(series, "__repr__", "str", &text_of<Q>);
  const Call refuse_array = [a_unit](py::handle, const py::args&, const py::kwargs&) -> py::object {
    throw py::type_error("a series becomes an array in a unit: write .to(" + a_unit + "), or .si");
  };
  define_method(series, "__array__", refuse_array, "");
  series.attr("__array_ufunc__") = py::none();
  copy_is_itself(series);
  series.def(py::pickle(
      [](const S& self) { return py::make_tuple(view(self, py::none()).attr("tobytes")()); },
      [](const py::tuple& state) {
        return S(to_numbers(py::module_::import("numpy").attr("frombuffer")(state[0])));
      }));
}

}  // namespace

void bind_series(py::module_& module, Operations& operations) {
  for_each_quantity([&]<class Q>(const Q*) { bind_series_of<Q>(module, operations); });
}

}  // namespace hydro::bindings
