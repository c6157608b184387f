// module.cpp: the Python module: errors, then floor by floor.

#include "hydro/quantities/error.hpp"
#include "hydro/solver/solution.hpp"

#include "bindings/bindings.hpp"
#include <pybind11/pybind11.h>

PYBIND11_MODULE(_hydro, module) {
  namespace py = pybind11;
  module.attr("__name__") =
      "hydro";  // so that classes are hydro.Pressure, not hydro._hydro.Pressure
  module.attr("__version__") = HYDRO_VERSION;
  py::register_exception<hydro::InvalidInput>(module, "InvalidInput", PyExc_ValueError).doc() =
      "An input cannot be accepted. The text has every mistake, one a line.";
  py::register_exception<hydro::NotSolved>(module, "NotSolved", PyExc_RuntimeError).doc() =
      "The equations could not be met. The text has the residuals that were left.";
  hydro::bindings::bind_quantities(module);
  hydro::bindings::bind_layout(module);
  hydro::bindings::bind_solution(module);
}
