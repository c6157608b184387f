// read_readings.hpp: what was read and seen in the field, from the description file.
//
// What      Tables [[reading]] and [[sight]]; the keys are the fields of Reading and Sight, the words
//           of `place` and `seen` those of reading.hpp. Every quantity is a text with its unit. They
//           may stand in the file of the layout, which read_layout reads, or in one of their own.
// Source    TOML 1.0.0 (toml.io), read by toml++.
// Range     As much as file_limits.hpp says. A table of readings (CSV) is left to Python.
// Errors    InvalidInput with every mistake of meaning at once, or the first mistake of syntax; the
//           place of each is file:line:column.
// Threads   Reads the file and nothing else: never writes, runs or fetches anything; no global state.
// Example   examples/ouzel_gauge_low.toml, examples/find_fault.cpp
#pragma once

#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/text/file_limits.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// What a file tells of a walk; both may be empty.
struct Readings {
  std::vector<Reading> readings = {};
  std::vector<Sight> sights = {};
  bool operator==(const Readings&) const = default;
};

/// Reads [[reading]] and [[sight]] of a file.
/// @param layout with the sets that ran @throws InvalidInput
Readings read_readings(const std::filesystem::path& file,
                       const Layout& layout,
                       const FileLimits& limits = {});

/// The same from text; `name` stands for the file in errors.
Readings read_readings_text(std::string_view text,
                            const Layout& layout,
                            const std::string& name = "text",
                            const FileLimits& limits = {});

}  // namespace hydro
