// layout_file.cpp: any text is read as a description file or refused; what is read is solved and
// told of, if it is small.
#include "hydro/text/read_blocks.hpp"
#include "hydro/text/read_layout.hpp"
#include "hydro/text/read_readings.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "check_solution.hpp"
#include "refusal.hpp"

namespace hydro {
namespace {

void read_and_solve(std::string_view text) {
  std::optional<Layout> layout;
  unless_refused([&] { read_blocks_text(text); });
  unless_refused([&] { layout = read_layout_text(text); });
  if (!layout || layout->outlet_count() > 1000) return;
  unless_refused([&] { read_readings_text(text, *layout); });
  if (const auto solution = solved_soundly(*layout)) write_everything(*solution);
}

}  // namespace
}  // namespace hydro

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  hydro::read_and_solve({reinterpret_cast<const char*>(data), size});
  return 0;
}
