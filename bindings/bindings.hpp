// bindings.hpp: what the files of the Python module share.
//
// What      One function a file that registers its classes and functions; quantities as Python
//           writes them; arguments that say what to write where something else was given.
// Errors    Wanted throws TypeError.
#pragma once

#include "hydro/quantities/units.hpp"

#include <string>

#include <pybind11/pybind11.h>

namespace hydro::bindings {

namespace py = pybind11;

// In the order in which they are called: a class is known before a signature names it.
void bind_quantities(py::module_& module);
void bind_layout(py::module_& module);
void bind_solution(py::module_& module);

/// `25 * psi`: what Python reads back to the same value, in the unit that takes the fewest
/// characters.
template <class Q>
std::string to_python(const Q& quantity);

/// What to say where a T, which is a quantity or a unit, is wanted and something else was given:
/// `25 is a bare number, not a Pressure: write 25 * psi`.
template <class T>
std::string refusal(py::handle given);

/// An argument that must be a T.
template <class T>
struct Wanted {
  T value = {};
};

}  // namespace hydro::bindings

namespace pybind11::detail {

template <class T>
struct type_caster<hydro::bindings::Wanted<T>> {
  PYBIND11_TYPE_CASTER(hydro::bindings::Wanted<T>, make_caster<T>::name);

  bool load(handle given, bool /*convert*/) {
    if (!isinstance<T>(given)) throw type_error(hydro::bindings::refusal<T>(given));
    value.value = given.cast<const T&>();
    return true;
  }
};

}  // namespace pybind11::detail
