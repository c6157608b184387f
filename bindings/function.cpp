// function.cpp: how arguments find their parameters, and how a signature is written.

#include "bindings/function.hpp"

#include <algorithm>
#include <string>

namespace hydro::bindings {
namespace {

/// `layout, options and units`.
std::string names_of(const std::vector<Parameter>& parameters) {
  std::string names;
  for (const Parameter& parameter : parameters)
    names += (names.empty() ? "" : ", ") + std::string(parameter.name);
  return names.empty() ? "nothing" : names;
}

/// A default as Python writes it, where that is one literal.
std::string literal(const py::object& fallback) {
  PyObject* const object = fallback.ptr();
  const bool is_literal = fallback.is_none() || PyBool_Check(object) || PyLong_CheckExact(object) ||
                          PyFloat_CheckExact(object) || PyUnicode_CheckExact(object) ||
                          (PyTuple_CheckExact(object) && PyTuple_Size(object) == 0);
  return is_literal ? std::string(py::repr(fallback)) : "...";
}

}  // namespace

void Signature::bind(const py::args& args, const py::kwargs& kwargs, py::handle* bound) const {
  const auto by_place = static_cast<std::size_t>(
      std::count_if(parameters_.begin(), parameters_.end(), [](const Parameter& parameter) {
        return parameter.passing == Passing::by_place_or_name;
      }));
  if (args.size() > by_place)
    throw py::type_error(function_ + " takes " +
                         (by_place == 0 && !parameters_.empty()
                              ? "keywords only"
                              : "at most " + std::to_string(by_place) +
                                    (by_place == 1 ? " argument" : " arguments") + " by place") +
                         ", but got " + std::to_string(args.size()) + "; it takes " +
                         names_of(parameters_));
  const auto refuse_unknown = [&] {
    for (const auto& [key, value] : kwargs) {
      const std::string name = py::str(key);
      if (std::none_of(parameters_.begin(), parameters_.end(), [&](const Parameter& parameter) {
            return name == parameter.name;
          }))
        throw py::type_error(function_ + " has no " + name + "; it takes " + names_of(parameters_));
    }
  };
  std::size_t keywords_used = 0;
  for (std::size_t i = 0; i < parameters_.size(); ++i) {
    const Parameter& parameter = parameters_[i];
    PyObject* named = kwargs.empty() ? nullptr : PyDict_GetItemString(kwargs.ptr(), parameter.name);
    if (named != nullptr) ++keywords_used;
    if (i < args.size()) {
      if (named != nullptr) throw py::type_error(function_ + " got " + parameter.name + " twice");
      named = PyTuple_GET_ITEM(args.ptr(), static_cast<py::ssize_t>(i));
    }
    if (named == nullptr && !parameter.fallback) {
      refuse_unknown();  // perhaps it is misspelt
      throw py::type_error(function_ + " needs " + parameter.name);
    }
    bound[i] = named != nullptr ? named : parameter.fallback.ptr();
  }
  if (keywords_used < kwargs.size()) refuse_unknown();
}

std::string Signature::list(const std::string& self, const std::vector<std::string>* types) const {
  std::string list = self;
  const auto add = [&list](const std::string& text) { list += (list.empty() ? "" : ", ") + text; };
  bool by_name = false;
  for (std::size_t i = 0; i < parameters_.size(); ++i) {
    const Parameter& parameter = parameters_[i];
    if (parameter.passing == Passing::by_name && !by_name) add("*");
    by_name = parameter.passing == Passing::by_name;
    std::string text = parameter.name;
    if (types) text += ": " + (*types)[i];
    if (parameter.fallback) text += (types ? " = " : "=") + literal(parameter.fallback);
    add(text);
  }
  return "(" + list + ")";
}

std::string Signature::typed(const std::string& self,
                             const std::vector<std::string>& types,
                             const std::string& result) const {
  return function_ + list(self, &types) + " -> " + result;
}

std::string Signature::plain(const std::string& name, const std::string& self) const {
  return name + list(self, nullptr);
}

std::string documentation(const Signature& signature,
                          const std::string& name,
                          bool is_method,
                          const std::vector<std::string>& types,
                          const std::string& result,
                          const char* text) {
  return signature.plain(name, is_method ? "self" : "") + "\n--\n\n" +
         signature.typed(is_method ? "self" : "", types, result) + (*text ? "\n\n" : "") + text;
}

void define_function(py::module_& module, const char* name, Call call, const std::string& text) {
  module.attr(name) = py::cpp_function(
      [call = std::move(call)](const py::args& args, const py::kwargs& kwargs) {
        return call({}, args, kwargs);
      },
      py::name(name),
      py::scope(module),
      text.c_str());
}

void define_method(py::handle owner, const char* name, Call call, const std::string& text) {
  owner.attr(name) = py::cpp_function(
      [call = std::move(call)](const py::object& self,
                               const py::args& args,
                               const py::kwargs& kwargs) { return call(self, args, kwargs); },
      py::name(name),
      py::is_method(owner),
      text.c_str());
}

void define_property(
    py::handle owner, const char* name, Getter get, const std::string& type, const char* text) {
  const std::string typed = std::string(name) + "(self) -> " + type;
  const py::cpp_function getter(
      [get = std::move(get)](const py::object& self) { return get(self); },
      py::is_method(owner),
      typed.c_str());
  const auto make =
      py::reinterpret_borrow<py::object>(reinterpret_cast<PyObject*>(&PyProperty_Type));
  owner.attr(name) = make(getter, py::none(), py::none(), text);
}

void copy_is_itself(py::handle owner) {
  // One function for all classes, since import takes as long as there are functions to make; leaked,
  // since a static object would outlive the interpreter.
  static const py::handle same =
      py::cpp_function([](const py::object& self, const py::args&) { return self; },
                       py::name("__copy__"),
                       py::is_method(reinterpret_cast<PyObject*>(&PyBaseObject_Type)))
          .release();
  owner.attr("__copy__") = same;
  owner.attr("__deepcopy__") = same;
}

}  // namespace hydro::bindings
