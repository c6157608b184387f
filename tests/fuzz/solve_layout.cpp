// solve_layout.cpp: any layout is solved or says that it is not, and can be told of.
#include "hydro/quantities/error.hpp"

#include <cstddef>
#include <cstdint>

#include "check_solution.hpp"
#include "layout_of_bytes.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  hydro::Bytes bytes({data, size});
  const bool is_told = bytes.chance(0.2);
  try {
    const auto solution = hydro::solved_soundly(hydro::layout_of_bytes(bytes));
    if (solution && is_told) hydro::write_everything(*solution);
  } catch (const hydro::InvalidInput&) {  // parts that do not fit one another
  }
  return 0;
}
