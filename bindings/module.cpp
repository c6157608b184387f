// module.cpp: the compiled part of the Python package, floor by floor.

#include "hydro/version.hpp"

#include <algorithm>
#include <cstddef>

#include "bindings/bindings.hpp"
#include "bindings/function.hpp"
#include <pybind11/pybind11.h>

namespace hydro::bindings {
namespace {

/// pybind11 gives unwritten memory of this function where an object of a class is wanted, but
/// __init__ was never called: Pressure.__new__(Pressure).
void* refuse_what_was_never_made(std::size_t /*size*/) {
  throw py::type_error(
      "this object is empty, for __init__ was not called: write Class(...), not "
      "Class.__new__(Class)");
}

/// Pickle's protocols 0 and 1 make an object of pybind11's own base class, which ends the process;
/// what protocol 2 wants is understood by them as well.
py::object reduce(py::handle self, const py::args& args, const py::kwargs& kwargs) {
  py::handle protocol;
  Signature("__reduce_ex__", {"protocol"}).bind(args, kwargs, &protocol);
  const auto base =
      py::reinterpret_borrow<py::object>(reinterpret_cast<PyObject*>(&PyBaseObject_Type));
  return base.attr("__reduce_ex__")(self, std::max(2, to_int(protocol, {"protocol"})));
}

void guard_classes(const py::module_& module) {
  const py::cpp_function for_all(
      [](const py::object& self, const py::args& args, const py::kwargs& kwargs) {
        return reduce(self, args, kwargs);
      },
      py::name("__reduce_ex__"),
      py::is_method(reinterpret_cast<PyObject*>(&PyBaseObject_Type)));
  for (const auto& [name, member] : py::dict(module.attr("__dict__").attr("copy")())) {
    if (!PyType_Check(member.ptr())) continue;
    auto* const type = py::detail::get_type_info(reinterpret_cast<PyTypeObject*>(member.ptr()));
    if (type == nullptr) continue;
    type->operator_new = refuse_what_was_never_made;
    member.attr("__reduce_ex__") = for_all;
  }
}

}  // namespace
}  // namespace hydro::bindings

PYBIND11_MODULE(_hydro, module) {
  using namespace hydro::bindings;
  module.attr("__name__") =
      "hydro";  // so that classes are hydro.Pressure, not hydro._hydro.Pressure
  module.attr("__version__") = hydro::version();
  py::options texts_are_written_here;
  texts_are_written_here.disable_function_signatures();
  bind_errors();
  bind_quantities(module);
  bind_physics(module);
  bind_supply(module);
  bind_faults(module);
  bind_layout(module);
  bind_solution(module);
  bind_answers(module);
  bind_supply_answers(module);
  bind_drain(module);
  bind_sensitivity(module);
  bind_tables(module);
  bind_room(module);
  bind_pipe_choice(module);
  bind_breaks(module);
  bind_chances(module);
  bind_diagnosis(module);
  bind_soil_water(module);
  bind_watering(module);
  bind_day_plan(module);
  bind_text(module);
  bind_watering_text(module);
  bind_diagnosis_text(module);
  guard_classes(module);
}
