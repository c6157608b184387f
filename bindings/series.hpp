// series.hpp: many values of one quantity.
#pragma once

#include "hydro/quantities/series.hpp"
#include "hydro/quantities/unit_text.hpp"

#include <charconv>
#include <cmath>
#include <optional>
#include <string>
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

class Operations;

void bind_series(py::module_& module, Operations& operations);

}  // namespace hydro::bindings
