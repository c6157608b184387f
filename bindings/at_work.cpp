// at_work.cpp: Python is heard while C++ works.

#include "bindings/at_work.hpp"

#include <utility>
#include <vector>

namespace hydro::bindings {

Progress Type<Progress>::from(py::handle given, const Where& where) {
  if (given.is_none() || given.ptr() == Py_False) return {};
  if (given.ptr() == Py_True) return {py::module_::import("hydro.progress").attr("shown")()};
  if (PyCallable_Check(given.ptr()) == 0)
    refuse(where, given, "function", "write True, or a function of done and of", "write True");
  return {py::reinterpret_borrow<py::object>(given)};
}

std::vector<Parameter> with_work(std::vector<Parameter> parameters) {
  parameters.emplace_back("threads", py::int_(Work{}.threads), Passing::by_name);
  parameters.push_back(may_be_left_out("progress", Passing::by_name));
  return parameters;
}

bool goes_on(const Progress& progress,
             std::size_t done,
             std::size_t of,
             std::exception_ptr& raised) noexcept {
  try {
    if (PyErr_CheckSignals() != 0) throw py::error_already_set();
    if (!progress.function || progress.function.is_none()) return true;
    const py::object answer = progress.function(done, of);
    if (answer.is_none()) return true;
    const int is_true = PyObject_IsTrue(answer.ptr());
    if (is_true < 0) throw py::error_already_set();
    return is_true == 1;
  } catch (...) {
    raised = std::current_exception();
    return false;
  }
}

}  // namespace hydro::bindings
