// python_type.cpp: plain arguments, and what is said of the wrong ones.

#include "bindings/python_type.hpp"

#include <limits>
#include <string>
#include <string_view>
#include <variant>

#include <pybind11/pybind11.h>

namespace hydro::bindings {
namespace {

std::string type_of(py::handle given) {
  return py::str(py::type::handle_of(given).attr("__name__"));
}

/// `a Length`, `an Outlet`.
std::string with_article(const std::string& noun) {
  const bool vowel = std::string_view("AEIOUaeio").find(noun.front()) != std::string_view::npos;
  return (vowel ? "an " : "a ") + noun;
}

/// What was given, if it says itself in a few words.
std::string short_repr(py::handle given) {
  constexpr std::size_t few = 60;
  const std::string text = py::repr(given);
  return text.size() > few || text.front() == '<' ? "this" : text;
}

}  // namespace

std::string Where::text() const {
  return index < 0 ? name : name + ("[" + std::to_string(index) + "]");
}

std::string Where::prefix() const {
  return *name == '\0' ? "" : text() + ": ";
}

bool is_number(py::handle given) {
  PyObject* const object = given.ptr();
  if (PyBool_Check(object) || PySequence_Check(object) != 0) return false;
  // numpy's truth value is no bool, but has a float: numpy.bool_, from numpy 2 on numpy.bool.
  if (std::string_view(Py_TYPE(object)->tp_name).starts_with("numpy.bool")) return false;
  if (PyFloat_Check(object) || PyLong_Check(object) || PyIndex_Check(object)) return true;
  const PyNumberMethods* const methods = Py_TYPE(object)->tp_as_number;
  return methods != nullptr && methods->nb_float != nullptr;
}

void refuse(const Where& where,
            py::handle given,
            const std::string& wanted,
            const std::string& hint,
            const std::string& hint_for_number) {
  std::string text = where.prefix();
  if (is_number(given)) {
    const std::string number = py::str(given);
    text += number + " is a bare number, not " + with_article(wanted);
    std::string what = hint_for_number;
    if (const auto at = what.find("NUMBER"); at != std::string::npos) what.replace(at, 6, number);
    throw py::type_error(text + (what.empty() ? "" : ": " + what));
  }
  text += given.is_none() ? "is None" : short_repr(given) + " is " + with_article(type_of(given));
  throw py::type_error(text + ", not " + with_article(wanted) + (hint.empty() ? "" : ": " + hint));
}

int to_int(py::handle given, const Where& where) {
  if (PyBool_Check(given.ptr()) || !PyIndex_Check(given.ptr()))
    refuse(where, given, "int", "", "write a whole number");
  const auto number = py::reinterpret_steal<py::object>(PyNumber_Index(given.ptr()));
  if (!number) throw py::error_already_set();
  int overflow = 0;
  const long long value = PyLong_AsLongLongAndOverflow(number.ptr(), &overflow);
  if (overflow != 0 || value < std::numeric_limits<int>::min() ||
      value > std::numeric_limits<int>::max())
    throw py::value_error(where.text() + ": is " + std::string(py::str(number)) +
                          ", beyond the range of whole numbers here");
  return static_cast<int>(value);
}

std::uint64_t to_long(py::handle given, const Where& where) {
  if (PyBool_Check(given.ptr()) || !PyIndex_Check(given.ptr()))
    refuse(where, given, "int", "", "write a whole number");
  const auto number = py::reinterpret_steal<py::object>(PyNumber_Index(given.ptr()));
  if (!number) throw py::error_already_set();
  const std::uint64_t value = PyLong_AsUnsignedLongLong(number.ptr());
  if (PyErr_Occurred() != nullptr) {
    PyErr_Clear();
    throw py::value_error(where.text() + ": is " + std::string(py::str(number)) +
                          ", must be from 0 to 2^64 - 1");
  }
  return value;
}

double to_double(py::handle given, const Where& where) {
  if (!is_number(given)) refuse(where, given, "number", "", "");
  const double value = PyFloat_AsDouble(given.ptr());
  if (value == -1 && PyErr_Occurred() != nullptr) throw py::error_already_set();
  return value;
}

std::string to_string(py::handle given, const Where& where) {
  if (!PyUnicode_Check(given.ptr())) refuse(where, given, "str", "", "");
  py::ssize_t size = 0;
  const char* const text = PyUnicode_AsUTF8AndSize(given.ptr(), &size);
  if (text == nullptr) throw py::error_already_set();  // it says which character is none
  return {text, static_cast<std::size_t>(size)};
}

std::filesystem::path to_path(py::handle given, const Where& where) {
  if (!PyUnicode_Check(given.ptr()) && !py::hasattr(given, "__fspath__"))
    refuse(where, given, "path", "write a str or a pathlib.Path", "write a str or a pathlib.Path");
  PyObject* bytes = nullptr;
  if (PyUnicode_FSConverter(given.ptr(), &bytes) == 0) throw py::error_already_set();
  return std::string(py::reinterpret_steal<py::bytes>(bytes));
}

Fault Type<Fault>::from(py::handle given, const Where& where) {
  const auto found = [&]<class... F>(const std::variant<F...>*) {
    std::optional<Fault> fault;
    (void)((py::isinstance<F>(given) && (fault = given.cast<const F&>(), true)) || ...);
    return fault;
  }(static_cast<const Fault*>(nullptr));
  if (!found) refuse(where, given, "Fault", "write one such as head_off(\"row 1\", 7)", "");
  return *found;
}

}  // namespace hydro::bindings
