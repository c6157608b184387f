// bindings.hpp: what registers the classes and functions of the Python module, floor by floor.
#pragma once

#include <pybind11/pybind11.h>

namespace hydro::bindings {

namespace py = pybind11;

// In the order in which they are called: a class is known before a signature names it.
void bind_quantities(py::module_& module);
void bind_physics(py::module_& module);
void bind_supply(py::module_& module);
void bind_faults(py::module_& module);
void bind_layout(py::module_& module);
void bind_solution(py::module_& module);
void bind_answers(py::module_& module);
void bind_supply_answers(py::module_& module);
void bind_drain(py::module_& module);
void bind_sensitivity(py::module_& module);
void bind_tables(py::module_& module);
void bind_room(py::module_& module);
void bind_pipe_choice(py::module_& module);
void bind_breaks(py::module_& module);
void bind_chances(py::module_& module);
void bind_diagnosis(py::module_& module);
void bind_soil_water(py::module_& module);
void bind_watering(py::module_& module);
void bind_day_plan(py::module_& module);
void bind_text(py::module_& module);
void bind_watering_text(py::module_& module);
void bind_diagnosis_text(py::module_& module);

/// Raises hydro.errors.InvalidInput, NotSolved, NotDrained, NotCalibrated and Stopped for the exceptions of those names.
void bind_errors();

}  // namespace hydro::bindings
