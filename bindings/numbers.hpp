// numbers.hpp: plain numbers, one or many, beside quantities.
#pragma once

#include <vector>

#include <pybind11/pybind11.h>

namespace hydro::bindings {

namespace py = pybind11;

/// One number: no text, truth value or array.
struct Number;
/// A list, a tuple or an array of numbers with one dimension.
struct Numbers;

/// Whether it is a list, a tuple or an array.
bool holds_many(py::handle given);
/// @throws TypeError for what is not numbers or is masked; ValueError for another shape.
std::vector<double> to_numbers(py::handle given);

}  // namespace hydro::bindings
