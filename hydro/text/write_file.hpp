// write_file.hpp: a text into a file, whole or not at all.
//
// What      The text goes into a new file in the same folder, and takes the place of the old one
//           only when all of it is written. Whoever reads the file meanwhile sees the old text or
//           the new one, never a part. A link is followed; the permissions of the old file stay.
// Range     Regular files. What was written survives the program's end, but is not forced onto the
//           disk: a power cut may still lose it. A program that is killed may leave a file
//           .hydro-0.part beside.
// Errors    InvalidInput with the path and the reason: a directory, a device, a pipe or a read-only
//           file, a folder that does not exist or cannot be written in, no room. The old file is
//           then as it was, and nothing is left beside it.
// Threads   Of many calls for one path at once, one is the last.
// Example   examples/check_line.cpp
#pragma once

#include <filesystem>
#include <string_view>

namespace hydro {

/// @throws InvalidInput
void write_file(const std::filesystem::path& path, std::string_view text);

}  // namespace hydro
