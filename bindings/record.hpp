// record.hpp: plain structs of C++ as immutable classes of Python.
//
// What      A description (Pipe, Line, a fault) is made of its fields by keyword, equals another
//           with the same fields, is hashed by them, and prints as what Python reads back. A result
//           (Check, LineSolution) is only made by the library. Both can be pickled. Several of
//           something are a tuple in a description, so that nothing is changed by mistake, and a
//           list in a result.
// Errors    TypeError that names the field.
#pragma once

#include <concepts>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "bindings/function.hpp"
#include <pybind11/pybind11.h>

namespace hydro::bindings {

template <class>
struct IsVector : std::false_type {};
template <class T>
struct IsVector<std::vector<T>> : std::true_type {};

/// A field, with its type forgotten.
template <class S>
struct Field {
  const char* name;
  const char* text;
  bool needed;
  std::string accepts;
  std::string as_value;                                          ///< its type in a description
  std::string as_result;                                         ///< its type in a result
  std::function<py::object(const S&)> value;                     ///< several are a tuple
  std::function<py::object(const S&, py::handle owner)> result;  ///< several are a list
  std::function<void(S&, py::handle, const Where&)> set;
};

template <class S>
using Fields = std::vector<Field<S>>;

template <class S>
py::dict state_of(const S& self, const Fields<S>& fields) {
  py::dict state;
  for (const Field<S>& field : fields) state[field.name] = field.value(self);
  return state;
}

/// Makes one before its fields are set; of what cannot be made of nothing, because it holds a
/// solution, from what was kept of it.
template <class S>
using Maker = std::function<S(const py::dict& state)>;

template <class S>
S from_state(const py::dict& state, const Fields<S>& fields, const Maker<S>& make) {
  S made = make(state);
  for (const Field<S>& field : fields) field.set(made, state[field.name], {field.name});
  return made;
}

/// Collects the fields of a struct and makes the class.
template <class S>
class Record {
 public:
  explicit Record(const char* name, const char* text) : name_(name), text_(text) {}

  /// May be left out. @param text what the value means: unit, default, range
  template <class T>
  Record& field(const char* name, T S::*member, const char* text) {
    return add(name, member, text, false);
  }
  /// Must be given, and may be given by its place.
  template <class T>
  Record& needed(const char* name, T S::*member, const char* text) {
    return add(name, member, text, true);
  }

  /// A value that is not held as it is told. @param get takes a const S& @param keep takes an S&
  /// and the value
  template <class Get, class Keep>
  Record& field(const char* name, Get get, Keep keep, const char* text) {
    using T = std::decay_t<std::invoke_result_t<Get, const S&>>;
    const auto value = [get](const S& self) { return py::cast(get(self)); };
    fields_->push_back({name,
                        text,
                        false,
                        Type<T>::accepts(),
                        Type<T>::gives(),
                        Type<T>::gives(),
                        value,
                        [value](const S& self, py::handle) { return value(self); },
                        [keep](S& self, py::handle given, const Where& where) {
                          keep(self, Type<T>::from(given, where));
                        }});
    return *this;
  }
  /// What the last field is in a result, instead of what it is in C++. @param type in Python
  Record& shown_as(const std::string& type,
                   std::function<py::object(const S&, py::handle owner)> show) {
    fields_->back().as_result = type;
    fields_->back().result = std::move(show);
    return *this;
  }
  /// For what cannot be made of nothing.
  Record& made_from(Maker<S> make) {
    make_ = std::move(make);
    return *this;
  }

  /// What is unpickled is examined. @throws whatever the check throws
  Record& examined_by(std::function<void(const S&)> check) {
    check_ = std::move(check);
    return *this;
  }

  /// @param maker what prints in its place: `head_off`
  py::class_<S> description(py::module_& module, const char* maker = nullptr) {
    std::vector<Parameter> parameters;
    std::vector<std::string> types;
    for (const Field<S>& field : *fields_) {
      types.push_back(field.accepts);
      if (field.needed)
        parameters.emplace_back(field.name);
      else
        parameters.emplace_back(field.name, field.value(S{}), Passing::by_name);
    }
    const Signature signature(name_, std::move(parameters));
    py::class_<S> made = make_class(module, signature.plain(name_, "") + "\n--\n\n");
    for (const Field<S>& field : *fields_)
      define_property(
          made,
          field.name,
          [value = field.value](py::handle self) { return value(Type<S>::from(self, {"self"})); },
          field.as_value,
          field.text);
    const Signature init("__init__", signature.parameters());
    made.def(
        py::init([signature, fields = fields_](const py::args& args, const py::kwargs& kwargs) {
          std::vector<py::handle> bound(fields->size());
          signature.bind(args, kwargs, bound.data());
          S self{};
          for (std::size_t i = 0; i < bound.size(); ++i)
            (*fields)[i].set(self, bound[i], signature.where(i));
          return self;
        }),
        documentation(init, "__init__", true, types, "None", "").c_str());
    if constexpr (!std::equality_comparable<S>)
      made.def(
          "__eq__",
          [fields = fields_](const S& self, const S& other) {
            return state_of(self, *fields).equal(state_of(other, *fields));
          },
          py::is_operator(),
          "__eq__(self, other: object) -> bool");
    define_replace(made);
    special(made, "__hash__", "int", [fields = fields_](const S& self) {
      py::list values;
      for (const Field<S>& field : *fields) values.append(field.value(self));
      return py::hash(py::tuple(values));
    });
    special(made,
            "__repr__",
            "str",
            [fields = fields_, name = std::string(maker ? maker : name_)](const S& self) {
              return name + "(" + list_of_values(self, *fields) + ")";
            });
    return made;
  }

  /// @param told what prints; default the fields that say themselves in a few words
  py::class_<S> result(py::module_& module, std::function<py::str(const S&)> told = {}) {
    py::class_<S> made = make_class(module, "");
    for (const Field<S>& field : *fields_)
      define_property(
          made,
          field.name,
          [result = field.result](py::handle self) {
            return result(Type<S>::from(self, {"self"}), self);
          },
          field.as_result,
          field.text);
    if (!told)
      told = [fields = fields_, name = std::string(name_)](const S& self) {
        return py::str("<hydro." + name + ": " + outline(self, *fields) + ">");
      };
    special(made, "__repr__", "str", told);
    return made;
  }

 private:
  template <class T>
  Record& add(const char* name, T S::*member, const char* text, bool needed) {
    constexpr bool is_vector = IsVector<T>::value;
    // A class of the module is read where it is; the owner is kept as long.
    constexpr auto policy = std::is_class_v<T> && !IsQuantity<T>::value
                                ? py::return_value_policy::reference_internal
                                : py::return_value_policy::copy;
    Field<S> field{
        name, text, needed, Type<T>::accepts(), Type<T>::gives(), Type<T>::gives(), {}, {}, {}};
    if constexpr (is_vector)
      field.as_value = "tuple[" + Type<typename T::value_type>::gives() + ", ...]";
    field.value = [member](const S& self) -> py::object {
      if constexpr (is_vector) return py::tuple(py::cast(self.*member));
      return py::cast(self.*member, py::return_value_policy::copy);
    };
    field.result = [member](const S& self, py::handle owner) {
      return py::cast(self.*member, policy, owner);
    };
    field.set = [member](S& self, py::handle given, const Where& where) {
      self.*member = Type<T>::from(given, where);
    };
    fields_->push_back(std::move(field));
    return *this;
  }

  py::class_<S> make_class(py::module_& module, const std::string& signature) {
    py::class_<S> made(module, name_, (signature + text_).c_str());
    made.def(py::pickle([fields = fields_](const S& self) { return state_of(self, *fields); },
                        [fields = fields_, make = make_, check = check_](const py::dict& state) {
                          S again = from_state(state, *fields, make);
                          if (check) check(again);
                          return again;
                        }));
    copy_is_itself(made);
    if constexpr (std::equality_comparable<S>) {
      made.def(
          "__eq__",
          [](const S& self, const S& other) { return self == other; },
          py::is_operator(),
          "__eq__(self, other: object) -> bool");
    }
    return made;
  }

  /// Those that must be given, and those that differ from the default.
  static std::string list_of_values(const S& self, const Fields<S>& fields) {
    const S blank{};
    std::string list;
    for (const Field<S>& field : fields) {
      const py::object value = field.value(self);
      if (!field.needed && value.equal(field.value(blank))) continue;
      list += list.empty() ? "" : ", ";
      if (!field.needed) list += field.name + std::string("=");
      list += std::string(py::repr(value));
    }
    return list;
  }

  /// What a result holds, as far as it says itself in a few words.
  static std::string outline(const S& self, const Fields<S>& fields) {
    constexpr std::size_t few = 40;
    std::string list;
    for (const Field<S>& field : fields) {
      const py::object value = field.value(self);
      std::string text = py::repr(value);
      if (text.size() > few)
        text = py::hasattr(value, "__len__") ? std::to_string(py::len(value)) + " of them" : "...";
      list += (list.empty() ? "" : ", ") + std::string(field.name) + " " + text;
    }
    return list;
  }

  void define_replace(py::class_<S>& made) {
    const auto call = [fields = fields_, name = std::string(name_)](
                          py::handle self, const py::args& args, const py::kwargs& changes) {
      if (!args.empty()) throw py::type_error("replace takes keywords only");
      S changed = Type<S>::from(self, {"self"});
      for (const auto& [key, value] : changes) set(changed, py::str(key), value, *fields, name);
      return py::cast(std::move(changed));
    };
    define_method(made,
                  "replace",
                  call,
                  "replace(self, **changes)\n--\n\nreplace(self, **changes: Any) -> " +
                      std::string(name_) +
                      "\n\nThe same with other values of the fields that are named.");
  }
  static void set(S& self,
                  const std::string& key,
                  py::handle value,
                  const Fields<S>& fields,
                  const std::string& name) {
    std::string names;
    for (const Field<S>& field : fields) {
      if (key == field.name) return field.set(self, value, {field.name});
      names += (names.empty() ? "" : ", ") + std::string(field.name);
    }
    throw py::type_error(name + " has no " + key + "; it has " + names);
  }

  const char* name_;
  const char* text_;
  std::shared_ptr<Fields<S>> fields_ = std::make_shared<Fields<S>>();
  std::function<void(const S&)> check_ = {};
  Maker<S> make_ = [](const py::dict& /*state*/) -> S {
    if constexpr (std::default_initializable<S>)
      return S{};
    else
      throw std::logic_error("made_from was not called");
  };
};

}  // namespace hydro::bindings
