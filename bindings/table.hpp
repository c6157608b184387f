// table.hpp: many series of one length, one after another in a series: the rows of a table.
#pragma once

#include "hydro/quantities/series.hpp"
#include "hydro/quantities/units.hpp"

#include <cstddef>
#include <string>

#include "bindings/vocabulary.hpp"
#include <pybind11/pybind11.h>

namespace hydro::bindings {

namespace py = pybind11;

/// A result's own memory, which lives as long as the table.
template <class Q>
struct Table {
  py::object owner;
  const Series<Q>* values;
  std::size_t columns;

  std::size_t rows() const { return columns > 0 ? values->size() / columns : 0; }
};

/// What a result has in the place of a long series; None where it is not kept.
template <class Q>
py::object table_of(const Series<Q>& values, std::size_t columns, py::handle owner) {
  if (values.empty()) return py::none();
  return py::cast(Table<Q>{py::reinterpret_borrow<py::object>(owner), &values, columns});
}

template <class Q>
std::string name_of_table() {
  return std::string(Vocabulary<Q>::name) + "Table";
}

}  // namespace hydro::bindings
