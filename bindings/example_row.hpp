// example_row.hpp: a row of sprays for the examples in the texts of what-ifs.
#pragma once

#include <string>

namespace hydro::bindings {

inline const std::string example_row =
    ">>> spray = Outlet(name=\"spray\", flow=1.2 * gpm, at=30 * psi)\n"
    ">>> pipe = nominal_pipe(\"1-1/2 in\", \"PVC Class 160\")\n"
    ">>> row = Line(name=\"row 1\", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)\n"
    ">>> farm = Layout(Supply(pressure=40 * psi), [row])\n";

}  // namespace hydro::bindings
