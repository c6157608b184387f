// layout.cpp: faults, layouts, and layouts from files.

#include "hydro/layout/layout.hpp"

#include "hydro/layout/fault.hpp"
#include "hydro/quantities/unit_text.hpp"
#include "hydro/text/read_layout.hpp"

#include <optional>
#include <string>
#include <variant>

#include "bindings/bindings.hpp"
#include <pybind11/stl.h>
#include <pybind11/stl/filesystem.h>

namespace hydro::bindings {
namespace {

std::string in_python_quotes(const std::string& text) {
  return py::repr(py::str(text));
}

/// `, loss_coefficient=1` where it is given.
std::string option(const char* key, const std::optional<double>& given) {
  return given ? ", " + std::string(key) + "=" + to_text(*given) : "";
}
std::string option(const char* key, const std::optional<Length>& given) {
  return given ? ", " + std::string(key) + "=" + to_python(*given) : "";
}

std::string details(const HeadOff& fault) {
  return option("loss_coefficient", fault.loss_coefficient);
}
std::string details(const RiserSheared& fault) {
  return option("stub", fault.stub) + option("loss_coefficient", fault.loss_coefficient);
}
std::string details(const Clogged& fault) {
  return ", " + to_text(fault.share);
}
std::string details(const Worn& fault) {
  return ", " + to_text(fault.share);
}
std::string details(const Capped& /*fault*/) {
  return {};
}

/// The kinds that Python has so far.
using BoundFault = std::variant<HeadOff, RiserSheared, Clogged, Worn, Capped>;

/// A kind of fault, which the function `maker` makes.
template <class F>
py::class_<F> bind_fault(py::module_& module,
                         const char* name,
                         const std::string& maker,
                         const char* what) {
  return py::class_<F>(module, name, what)
      .def_readonly("line", &F::line, "Name of the line.")
      .def_readonly("outlet", &F::outlet, "Counts from 1, from the inlet on.")
      .def(
          "__eq__", [](const F& self, const F& other) { return self == other; }, py::is_operator())
      .def("__repr__", [maker](const F& self) {
        return maker + "(" + in_python_quotes(self.line) + ", " + std::to_string(self.outlet) +
               details(self) + ")";
      });
}

void bind_faults(py::module_& module) {
  bind_fault<HeadOff>(module, "HeadOff", "head_off", "The riser stands open at its top.")
      .def_readonly("loss_coefficient", &HeadOff::loss_coefficient, "K [-]; None: the default.");
  bind_fault<RiserSheared>(module, "RiserSheared", "riser_sheared", "A stub stands open.")
      .def_readonly("stub", &RiserSheared::stub, "A Length; None: the default.")
      .def_readonly(
          "loss_coefficient", &RiserSheared::loss_coefficient, "K [-]; None: the default.");
  bind_fault<Clogged>(module, "Clogged", "clogged", "Less flow at the same pressure.")
      .def_readonly("share", &Clogged::share, "Of the flow that is lost [-].");
  bind_fault<Worn>(module, "Worn", "worn", "More flow at the same pressure.")
      .def_readonly("share", &Worn::share, "Of the flow that is gained [-].");
  bind_fault<Capped>(module, "Capped", "capped", "Closed on purpose.");

  module.def("head_off",
             &head_off,
             py::arg("line"),
             py::arg("outlet"),
             py::kw_only(),
             py::arg("loss_coefficient") = py::none(),
             "The outlet is knocked off and its riser stands open at the top. Outlets count from "
             "1.\nloss_coefficient: K of the break [-], default the riser's own where given, else "
             "1.");
  module.def(
      "riser_sheared",
      [](const std::string& line,
         int outlet,
         const std::optional<Wanted<Length>>& stub,
         std::optional<double> loss_coefficient) {
        return RiserSheared{
            line, outlet, stub ? std::optional(stub->value) : std::nullopt, loss_coefficient};
      },
      py::arg("line"),
      py::arg("outlet"),
      py::kw_only(),
      py::arg("stub") = py::none(),
      py::arg("loss_coefficient") = py::none(),
      "The riser is sheared off and a stub stands open. Outlets count from 1.\nstub: its height, a "
      "Length, default 0.5 * ft or the riser if that is shorter. TypeError for a bare number.\n"
      "loss_coefficient: K of the break [-], default the riser's own where given, else 1.");
  module.def("clogged",
             &clogged,
             py::arg("line"),
             py::arg("outlet"),
             py::arg("share"),
             "Something sits in the nozzle. share: of the flow that is lost [-], above 0 and below "
             "1.");
  module.def("worn",
             &worn,
             py::arg("line"),
             py::arg("outlet"),
             py::arg("share"),
             "The nozzle is worn. share: of the flow that is gained [-], above 0 to 10.");
  module.def("capped",
             &capped,
             py::arg("line"),
             py::arg("outlet"),
             "The outlet is closed on purpose. Outlets count from 1.");
}

}  // namespace

void bind_layout(py::module_& module) {
  bind_faults(module);
  py::class_<Layout>(module,
                     "Layout",
                     "A supply, the lines that hang on it, the water, the place, what is broken. "
                     "It cannot be changed; a change makes a new one.")
      .def(
          "with_fault",
          [](const Layout& self, const BoundFault& fault) {
            return std::visit([&](const auto& kind) { return self.with_fault(kind); }, fault);
          },
          py::arg("fault"),
          "The layout with this fault too. InvalidInput when it does not fit the layout or the "
          "outlet already has one.")
      .def("without_faults", &Layout::without_faults, "The layout with nothing broken.")
      .def("__repr__", [](const Layout& self) {
        return "<hydro.Layout: lines " + std::to_string(self.lines().size()) + ", outlets " +
               std::to_string(self.outlet_count()) + ", faults " +
               std::to_string(self.faults().size()) + ">";
      });
  module.def("read_layout",
             &read_layout,
             py::arg("file"),
             "Reads a description file (TOML); a str or a path. Its faults are in the layout. "
             "InvalidInput with "
             "every mistake, each with file, line and column.");
}

}  // namespace hydro::bindings
