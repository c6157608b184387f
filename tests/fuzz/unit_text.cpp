// unit_text.cpp: any text is read as each quantity or refused; what is read is a figure.
#include "hydro/quantities/unit_text.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "refusal.hpp"

namespace hydro {
namespace {

template <class Q>
void read(std::string_view text) {
  unless_refused([&] {
    const Q quantity = from_text<Q>(text);
    if (!std::isfinite(si(quantity))) std::abort();
  });
}

}  // namespace
}  // namespace hydro

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  using namespace hydro;
  read<Length>(text);
  read<Area>(text);
  read<Volume>(text);
  read<Time>(text);
  read<Pressure>(text);
  read<Flow>(text);
  read<Velocity>(text);
  read<Density>(text);
  read<KinematicViscosity>(text);
  read<RotationalSpeed>(text);
  read<Power>(text);
  read<Energy>(text);
  read<Temperature>(text);
  read<Angle>(text);
  read<Irradiance>(text);
  return 0;
}
