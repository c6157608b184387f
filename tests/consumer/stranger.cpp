#include <iostream>

#include <hydro/hydro.hpp>

using namespace hydro;

int main() {
  const Pipe lateral{.inside_diameter = 1.754 * inch, .hazen_williams = 150};
  const Outlet spray{.flow = 1.2 * gpm, .at = 30 * psi, .minimum = 20 * psi};
  const Layout strip{
      Supply{.pressure = 40 * psi},
      {Line{.name = "row 1", .pipe = lateral, .outlet = spray, .count = 24, .spacing = 20 * ft}}};
  std::cout << solve(strip).line("row 1").pressure.back() / psi << '\n';
  std::cout << "compiled with " HYDRO_VERSION_TEXT ", runs with " << version() << '\n';
}
