// table.cpp: tables of one quantity, beside numpy.

#include "bindings/table.hpp"

#include <string>
#include <utility>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/function.hpp"
#include <pybind11/numpy.h>

namespace hydro::bindings {
namespace {

constexpr const char* array = "NDArray[numpy.float64]";

template <class Q>
std::vector<py::ssize_t> shape_of(const Table<Q>& table) {
  return {static_cast<py::ssize_t>(table.rows()), static_cast<py::ssize_t>(table.columns)};
}

template <class Q>
Series<Q> row_of(const Table<Q>& table, py::handle given) {
  const auto rows = static_cast<py::ssize_t>(table.rows());
  py::ssize_t row = to_int(given, {"row"});
  if (row < 0) row += rows;
  if (row < 0 || row >= rows)
    throw py::index_error("row " + std::string(py::str(given)) + " of " + std::to_string(rows));
  const auto values =
      table.values->si().subspan(static_cast<std::size_t>(row) * table.columns, table.columns);
  return Series<Q>({values.begin(), values.end()});
}

template <class Q>
void bind_table_of(py::module_& module) {
  using T = Table<Q>;
  const std::string own = Vocabulary<Q>::name;
  const std::string name = name_of_table<Q>();
  const std::string text = "Values of " + own + " in rows and columns, both counted from 0.";
  py::class_<T> table(module, name.c_str(), text.c_str());
  define_property(
      table,
      "shape",
      [](py::handle self) {
        const T& own_table = Type<T>::from(self, {"self"});
        return py::make_tuple(own_table.rows(), own_table.columns);
      },
      "tuple[int, int]",
      "Rows and columns.");
  define_property(
      table,
      "si",
      [](py::handle self) {
        const T& own_table = Type<T>::from(self, {"self"});
        py::array_t<double> all(shape_of(own_table), own_table.values->si().data(), self);
        all.attr("setflags")(py::arg("write") = false);
        return all;
      },
      array,
      "The values in SI units, one row an entry: a view that cannot be written to, without a "
      "copy.");
  const Signature to("to", {"unit"});
  define_method(
      table,
      "to",
      [to](py::handle self, const py::args& args, const py::kwargs& kwargs) {
        py::handle given;
        to.bind(args, kwargs, &given);
        const T& own_table = Type<T>::from(self, {"self"});
        const auto unit = Type<Unit<Q>>::from(given, to.where(0));
        py::array_t<double> numbers(shape_of(own_table));
        double* number = numbers.mutable_data();
        for (const double value : own_table.values->si()) *number++ = unit.from_si(value);
        return numbers;
      },
      documentation(to,
                    "to",
                    true,
                    {Type<Unit<Q>>::accepts()},
                    array,
                    "A new numpy array of numbers of this unit, one row an entry. TypeError for a "
                    "unit of another quantity."));
  special(table, "__len__", "int", &T::rows);
  define_method(
      table,
      "__getitem__",
      [](py::handle self, const py::args& args, const py::kwargs&) {
        return py::cast(row_of(Type<T>::from(self, {"self"}), args[0]));
      },
      "__getitem__(self, row: int) -> " + own + "Series");
  define_method(
      table,
      "__iter__",
      [](py::handle self, const py::args&, const py::kwargs&) {
        return py::reinterpret_steal<py::object>(PySeqIter_New(self.ptr()));
      },
      "__iter__(self) -> Iterator[" + own + "Series]");
  define_method(
      table,
      "__array__",
      [own](py::handle, const py::args&, const py::kwargs&) -> py::object {
        throw py::type_error("a table becomes an array in a unit: write .to(" +
                             std::string(Vocabulary<Q>::units[0].name) + "), or .si");
      },
      "");
  special(table, "__repr__", "str", [name](const T& self) {
    return "<hydro." + name + ": " + std::to_string(self.rows()) + " x " +
           std::to_string(self.columns) + ">";
  });
  copy_is_itself(table);
  table.def(py::pickle(
      [](const T& self) { return py::make_tuple(*self.values, self.columns); },
      [](const py::tuple& state) {
        const py::object kept = state[0];
        return T{kept, &Type<Series<Q>>::from(kept, {"values"}), state[1].cast<std::size_t>()};
      }));
}

}  // namespace

void bind_tables(py::module_& module) {
  bind_table_of<Pressure>(module);
  bind_table_of<Flow>(module);
}

}  // namespace hydro::bindings
