// numbers.cpp: arrays of numbers as Python has them.

#include "bindings/numbers.hpp"

#include <string>

#include <pybind11/numpy.h>

namespace hydro::bindings {

bool holds_many(py::handle given) {
  return PyList_Check(given.ptr()) || PyTuple_Check(given.ptr()) ||
         py::hasattr(given, "__array_interface__");
}

std::vector<double> to_numbers(py::handle given) {
  if (py::hasattr(given, "mask"))
    throw py::type_error("a masked array hides some of its numbers: write array.compressed()");
  const py::array any = py::array::ensure(given);
  const char kind = any ? any.dtype().kind() : 'O';
  if (kind != 'f' && kind != 'i' && kind != 'u')
    throw py::type_error("a series is made of numbers, not of " +
                         (any ? std::string(py::str(any.dtype())) : "this"));
  if (any.ndim() != 1)
    throw py::value_error("a series has one dimension, not the shape " +
                          std::string(py::str(any.attr("shape"))) + ": write array.ravel()");
  const auto numbers = py::array_t<double, py::array::forcecast>(any);
  const auto values = numbers.unchecked<1>();
  std::vector<double> all(static_cast<std::size_t>(values.size()));
  for (py::ssize_t i = 0; i < values.size(); ++i) all[static_cast<std::size_t>(i)] = values(i);
  return all;
}

}  // namespace hydro::bindings
