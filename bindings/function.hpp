// function.hpp: C++ functions as Python functions, methods and properties.
//
// What      Arguments are read by Type<T>::from, so that a wrong one is told by its name. The text
//           of a function begins with its signature in Python's types; beside it stands the one
//           that inspect.signature reads.
// Errors    TypeError for arguments that are missing, too many or of the wrong type.
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <string>
#include <tuple>
#include <type_traits>
#include <utility>
#include <vector>

#include "bindings/python_type.hpp"
#include <pybind11/pybind11.h>

namespace hydro::bindings {

enum class Passing { by_place_or_name, by_name };

/// A parameter of a function.
struct Parameter {
  Parameter(const char* its_name) : name(its_name) {}
  Parameter(const char* its_name,
            py::object its_fallback,
            Passing its_passing = Passing::by_place_or_name)
      : name(its_name), fallback(std::move(its_fallback)), passing(its_passing) {}

  const char* name;
  py::object fallback = {};  ///< what is taken when it is not given; null: it must be
  Passing passing = Passing::by_place_or_name;
};

/// `name=None`: may be left out.
inline Parameter may_be_left_out(const char* name, Passing passing = Passing::by_place_or_name) {
  return {name, py::none(), passing};
}

/// The parameters of a function, and how arguments find theirs.
class Signature {
 public:
  Signature(std::string function, std::vector<Parameter> parameters)
      : function_(std::move(function)), parameters_(std::move(parameters)) {}

  const std::vector<Parameter>& parameters() const { return parameters_; }
  Where where(std::size_t index) const { return {parameters_[index].name}; }

  /// One argument for each parameter, in their order. They live as long as args, kwargs and this.
  void bind(const py::args& args, const py::kwargs& kwargs, py::handle* bound) const;

  /// `solve(layout: Layout) -> Solution` @param self the first parameter of a method, or empty
  std::string typed(const std::string& self,
                    const std::vector<std::string>& types,
                    const std::string& result) const;
  /// `solve(layout)`, as CPython reads it off the first line of a text.
  std::string plain(const std::string& name, const std::string& self) const;

 private:
  std::string list(const std::string& self, const std::vector<std::string>* types) const;

  std::string function_;
  std::vector<Parameter> parameters_;
};

/// The text of a function, with both signatures.
std::string documentation(const Signature& signature,
                          const std::string& name,
                          bool is_method,
                          const std::vector<std::string>& types,
                          const std::string& result,
                          const char* text);

/// What calls a function with what Python gives; the self of a function is null. Functions are held
/// in this form, because pybind11 takes long to compile for each type of function.
using Call = std::function<py::object(py::handle self, const py::args&, const py::kwargs&)>;
using Getter = std::function<py::object(py::handle self)>;

void define_function(py::module_& module, const char* name, Call call, const std::string& text);
void define_method(py::handle owner, const char* name, Call call, const std::string& text);
/// @param type of the value in Python
void define_property(
    py::handle owner, const char* name, Getter get, const std::string& type, const char* text);

template <class R>
std::string name_of_result() {
  if constexpr (std::is_void_v<R>)
    return "None";
  else
    return Type<std::decay_t<R>>::gives();
}

/// What a function gives, as Python has it. A reference is into self, which is kept as long, if the
/// policy says so.
template <class F>
py::object result_of(F&& function, py::return_value_policy policy, py::handle self) {
  using R = decltype(function());
  if constexpr (std::is_void_v<R>) {
    function();
    return py::none();
  } else if constexpr (std::is_base_of_v<py::object, R>) {
    return function();
  } else {
    return py::cast(function(), policy, self);
  }
}

template <class... A>
std::vector<std::string> names_of_types() {
  return {Type<std::decay_t<A>>::accepts()...};
}

/// The function with its arguments read; `first` are given before them.
template <class R, class... A, class F, class... First>
R call_with(const F& function,
            const Signature& signature,
            const py::args& args,
            const py::kwargs& kwargs,
            const First&... first) {
  std::array<py::handle, sizeof...(A)> bound;
  signature.bind(args, kwargs, bound.data());
  const auto call = [&]<std::size_t... I>(std::index_sequence<I...> /*counted*/)->R {
    // In braces they are read from the first on, so that the first wrong one is told.
    using Read = std::tuple<decltype(Type<std::decay_t<A>>::from(bound[I], signature.where(I)))...>;
    return std::apply([&](const auto&... read) -> R { return function(first..., read...); },
                      Read{Type<std::decay_t<A>>::from(bound[I], signature.where(I))...});
  };
  return call(std::index_sequence_for<A...>());
}

/// A function of the module.
template <class R, class... A>
void def(py::module_& module,
         const char* name,
         std::function<R(A...)> function,
         std::vector<Parameter> parameters,
         const char* text) {
  const Signature signature(name, std::move(parameters));
  const std::string all_text =
      documentation(signature, name, false, names_of_types<A...>(), name_of_result<R>(), text);
  const auto call = [signature, function = std::move(function)](
                        py::handle /*self*/, const py::args& args, const py::kwargs& kwargs) {
    return result_of([&]() -> R { return call_with<R, A...>(function, signature, args, kwargs); },
                     py::return_value_policy::automatic,
                     {});
  };
  define_function(module, name, call, all_text);
}
template <class F>
void def(py::module_& module,
         const char* name,
         F&& function,
         std::vector<Parameter> parameters,
         const char* text) {
  def(module, name, std::function(std::forward<F>(function)), std::move(parameters), text);
}

/// A method. The function takes a const S& first, which is no parameter.
template <class S, class R, class... A>
void method(py::class_<S>& owner,
            const char* name,
            std::function<R(const S&, A...)> function,
            std::vector<Parameter> parameters,
            const char* text,
            py::return_value_policy policy = py::return_value_policy::automatic) {
  const Signature signature(name, std::move(parameters));
  const std::string all_text =
      documentation(signature, name, true, names_of_types<A...>(), name_of_result<R>(), text);
  const auto call = [signature, policy, function = std::move(function)](
                        py::handle self, const py::args& args, const py::kwargs& kwargs) {
    const S& own = Type<S>::from(self, {"self"});
    return result_of(
        [&]() -> R { return call_with<R, A...>(function, signature, args, kwargs, own); },
        policy,
        self);
  };
  define_method(owner, name, call, all_text);
}
template <class S, class F>
void method(py::class_<S>& owner,
            const char* name,
            F&& function,
            std::vector<Parameter> parameters,
            const char* text,
            py::return_value_policy policy = py::return_value_policy::automatic) {
  method(
      owner, name, std::function(std::forward<F>(function)), std::move(parameters), text, policy);
}
template <class S, class R, class... A>
void method(py::class_<S>& owner,
            const char* name,
            R (S::*function)(A...) const,
            std::vector<Parameter> parameters,
            const char* text,
            py::return_value_policy policy = py::return_value_policy::automatic) {
  method(
      owner, name, std::function<R(const S&, A...)>(function), std::move(parameters), text, policy);
}

/// A property that is read only. @param get takes a const S&
template <class S, class G>
void property(py::class_<S>& owner,
              const char* name,
              G get,
              const std::string& type,
              const char* text,
              py::return_value_policy policy = py::return_value_policy::copy) {
  const auto getter = [get, policy](py::handle self) {
    const S& own = Type<S>::from(self, {"self"});
    return result_of([&]() -> decltype(auto) { return std::invoke(get, own); }, policy, self);
  };
  define_property(owner, name, getter, type, text);
}
template <class S, class G>
void property(py::class_<S>& owner, const char* name, G get, const char* text) {
  property(owner, name, get, name_of_result<std::invoke_result_t<G, const S&>>(), text);
}

/// A special method that takes nothing beside self: `__repr__`.
template <class S, class F>
void special(py::class_<S>& owner, const char* name, const std::string& result, F function) {
  const auto call = [function](py::handle self, const py::args&, const py::kwargs&) {
    const S& own = Type<S>::from(self, {"self"});
    return result_of([&]() -> decltype(auto) { return std::invoke(function, own); },
                     py::return_value_policy::automatic,
                     self);
  };
  define_method(owner, name, call, std::string(name) + "(self) -> " + result);
}

/// It cannot be changed, so that a copy is itself.
void copy_is_itself(py::handle owner);

}  // namespace hydro::bindings
