// series.hpp: many values of one quantity.
#pragma once

#include "hydro/quantities/series.hpp"

#include <utility>
#include <vector>

#include <pybind11/pybind11.h>

namespace hydro::bindings {

namespace py = pybind11;

template <class Q>
Series<Q> series_of(std::vector<double> numbers, const Unit<Q>& unit) {
  for (double& number : numbers) number = unit.to_si(number);
  return Series<Q>(std::move(numbers));
}

class Operations;

void bind_series(py::module_& module, Operations& operations);

}  // namespace hydro::bindings
