// operations.cpp: operators, each as one method.

#include "bindings/operations.hpp"

#include <algorithm>

namespace hydro::bindings {

void Operations::add(const py::object& owner,
                     const std::string& name,
                     const std::string& operand,
                     const std::string& result,
                     Alternative alternative) {
  auto found = std::find_if(operators_.begin(), operators_.end(), [&](const Operator& other) {
    return other.owner.is(owner) && other.name == name;
  });
  if (found == operators_.end()) found = operators_.insert(operators_.end(), {owner, name, "", {}});
  const std::string typed = name + "(self, " + operand + "/) -> " + result;
  if (!operand.empty()) found->text += (found->text.empty() ? "" : "\n") + typed;
  found->alternatives.push_back(std::move(alternative));
}

void Operations::define() const {
  for (const Operator& defined : operators_)
    defined.owner.attr(defined.name.c_str()) = py::cpp_function(
        [alternatives = defined.alternatives](const py::object& self, const py::object& other) {
          for (const Alternative& alternative : alternatives)
            if (py::object result = alternative(self, other)) return result;
          return py::reinterpret_borrow<py::object>(Py_NotImplemented);
        },
        py::name(defined.name.c_str()),
        py::is_method(defined.owner),
        defined.text.c_str());
}

}  // namespace hydro::bindings
