// fault_text.cpp: any text is read as a fault, as a program's --fault is, or refused; what is read
// fits a row of outlets or is refused there, and can be told.
#include "hydro/layout/layout.hpp"
#include "hydro/text/read_layout.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "check_solution.hpp"
#include "refusal.hpp"

namespace hydro {
namespace {

const Layout& row() {
  static const Layout layout(
      {.pressure = 300 * kPa},
      {{.name = "row 2",
        .pipe = {.inside_diameter = 40 * mm, .hazen_williams = 150},
        .outlet = Outlet{.name = "spray", .flow = 300 * lph, .at = 200 * kPa},
        .count = 9,
        .spacing = 5 * units::m,
        .riser = {.height = 1 * units::m, .inside_diameter = 15 * mm, .hazen_williams = 140},
        .regulator = 250 * kPa}});
  return layout;
}

void read_and_solve(std::string_view text) {
  std::optional<Fault> fault;
  unless_refused([&] { fault = read_fault(text, {*row().lines()[0].outlet}); });
  if (!fault) return;
  std::optional<Layout> broken;
  unless_refused([&] { broken = row().with_fault(*fault); });
  if (!broken) return;
  describe(*fault, *broken, UnitSystem::us);
  solved_soundly(*broken);
}

}  // namespace
}  // namespace hydro

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  hydro::read_and_solve({reinterpret_cast<const char*>(data), size});
  return 0;
}
