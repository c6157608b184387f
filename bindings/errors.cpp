// errors.cpp: exceptions of C++ as those of hydro.errors.

#include "hydro/answers/drain.hpp"
#include "hydro/diagnosis/calibrate.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/what_ifs/work.hpp"

#include <exception>

#include "bindings/bindings.hpp"
#include <pybind11/stl.h>

namespace hydro::bindings {
namespace {

/// Raises the class of this name with the text of the error and what it carries.
template <class... Carried>
void raise(const char* name, const std::exception& error, const Carried&... carried) {
  const py::object type = py::module_::import("hydro.errors").attr(name);
  PyErr_SetObject(type.ptr(), type(error.what(), carried...).ptr());
}

}  // namespace

void bind_errors() {
  py::register_exception_translator([](std::exception_ptr thrown) {
    try {
      if (thrown) std::rethrow_exception(thrown);
    } catch (const InvalidInput& error) {
      raise("InvalidInput", error, py::tuple(py::cast(error.problems())));
    } catch (const NotSolved& error) {
      raise("NotSolved", error, py::cast(error.unfinished()));
    } catch (const NotDrained& error) {
      raise("NotDrained", error);
    } catch (const NotCalibrated& error) {
      raise("NotCalibrated",
            error,
            py::int_(error.steps()),
            py::float_(error.last_step()),
            py::tuple(py::cast(error.misfits())));
    } catch (const Stopped& error) {
      raise("Stopped", error, py::int_(error.done()), py::int_(error.of()));
    }
  });
}

}  // namespace hydro::bindings
