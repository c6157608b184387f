// toml_outline.hpp: what a text of TOML would cost to read, found without reading it.
// Not installed. Brackets and dotted keys nest values in one another, and TOML's library takes them
// apart by recursion: hundreds of thousands would exhaust the stack. A value of two bytes takes
// some hundred in memory.
#pragma once

#include "hydro/text/file_limits.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace hydro {

/// @param name of the file, in errors @param left_of the text [columns], to be taken off in errors
/// @throws InvalidInput where a bound is passed
void examine_outline(std::string_view text,
                     const std::string& name,
                     const FileLimits& limits,
                     std::uint32_t left_of = 0);

}  // namespace hydro
