// module.cpp: the compiled part of the Python package, floor by floor.

#include "bindings/bindings.hpp"
#include <pybind11/pybind11.h>

PYBIND11_MODULE(_hydro, module) {
  using namespace hydro::bindings;
  module.attr("__name__") =
      "hydro";  // so that classes are hydro.Pressure, not hydro._hydro.Pressure
  module.attr("__version__") = HYDRO_VERSION;
  py::options texts_are_written_here;
  texts_are_written_here.disable_function_signatures();
  bind_errors();
  bind_quantities(module);
  bind_physics(module);
  bind_faults(module);
  bind_layout(module);
  bind_solution(module);
  bind_answers(module);
  bind_text(module);
}
