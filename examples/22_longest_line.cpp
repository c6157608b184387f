// How long can a row of sprays be, on which pipe?
#include "hydro/hydro.hpp"

#include <cstdio>
#include <vector>

using namespace hydro;

int main() {
  const Line row{.name = "peony bed",
                 .pipe = nominal_pipe("1 in", "PVC Class 160"),
                 .outlet = Outlet{.flow = 1.39 * gpm, .at = 30 * psi, .minimum = 20 * psi},
                 .count = 6,
                 .spacing = 20 * ft,
                 .ground_rise = 1 * ft,
                 .riser = {.height = 2 * ft}};
  const Layout layout{Supply{.pressure = 36 * psi}, {row}};

  std::vector<Pipe> pipes;
  for (const char* size : {"1 in", "1-1/4 in", "1-1/2 in", "2 in", "2-1/2 in", "3 in"})
    pipes.push_back(nominal_pipe(size, "PVC Class 160"));
  std::printf("On 36 psi, a spray every 20 ft, a slope of 1 in 120 up:\n");
  for (const auto& [pipe, longest] : longest_by_pipe(layout, "peony bed", pipes))
    std::printf("%-22s  %2d sprays, %3.0f ft; with one more, %s\n",
                pipe.name.c_str(),
                longest.outlets,
                longest.length / ft,
                describe(longest.ended_by.front()).c_str());
}
