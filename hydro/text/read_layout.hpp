// read_layout.hpp: layouts and faults from TOML 1.0, as people write them.
//
// What      Tables [site], [water], [supply] and in it [supply.pump] and the other parts,
//           [[further_supply]] likewise, [pipe.NAME], [outlet.NAME], [[line]], [[set]] and
//           [[fault]]; the keys are the fields of
//           the structs of the same names, the words of a choice those of choices.hpp. Every
//           quantity is a text with its unit.
//           [block.NAME] and [weather] are left to read_blocks.hpp, [[reading]] and [[sight]] to
//           read_readings.hpp.
// Source    TOML 1.0.0 (toml.io), read by toml++.
// Range     As much as file_limits.hpp says.
// Errors    InvalidInput with every mistake of meaning at once, or the first mistake of syntax; the
//           place of each is file:line:column.
// Threads   Reads the file and nothing else: never writes, runs or fetches anything; no global state.
// Example   examples/ouzel_bench.toml, examples/check_line.cpp
#pragma once

#include "hydro/layout/fault.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/text/file_limits.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// Reads a description file. Its faults are in the layout. Reports are in US units when the
/// supply's pressure is given in psi, or the head of its pump or its tank's level in ft or in.
/// @throws InvalidInput
Layout read_layout(const std::filesystem::path& file, const FileLimits& limits = {});

/// The same from text; `name` stands for the file in errors.
Layout read_layout_text(std::string_view text,
                        const std::string& name = "text",
                        const FileLimits& limits = {});

/// The kinds of outlets that a description file defines, used or not. @throws InvalidInput
std::vector<Outlet> read_outlets(const std::filesystem::path& file, const FileLimits& limits = {});

/// Reads the inside of an inline table: line = "row 2", outlet = 7, kind = "head off".
/// @param outlets that a wrong one may be, by their names @throws InvalidInput
Fault read_fault(std::string_view text,
                 const std::vector<Outlet>& outlets = {},
                 const FileLimits& limits = {});

}  // namespace hydro
