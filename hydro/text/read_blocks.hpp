// read_blocks.hpp: the ground along the lines and the weather, from the description file.
//
// What      Tables [block.NAME] and [weather]; the keys are the fields of Block and Weather.
//           Beside them a block may tell when it was `planted`, and the weather its `date`, as
//           dates of TOML: 2026-05-02. The altitude of the weather is that of [site] where it has
//           none. Of the layout only the names of its lines are read: read_layout reads the rest.
// Source    TOML 1.0.0 (toml.io), read by toml++.
// Range     As much as file_limits.hpp says.
// Errors    InvalidInput with every mistake of meaning at once, or the first mistake of syntax; the
//           place of each is file:line:column. A block of a line that is not there, or a line in
//           two blocks, is one.
// Threads   Reads the file and nothing else: never writes, runs or fetches anything; no global state.
#pragma once

#include "hydro/quantities/units.hpp"
#include "hydro/text/file_limits.hpp"
#include "hydro/watering/block.hpp"
#include "hydro/watering/reference_evapotranspiration.hpp"
#include "hydro/watering/soil_water.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// What a description file tells of ground and weather.
struct Blocks {
  std::vector<Block> blocks = {};            ///< in the order of their names
  std::optional<Weather> weather = {};       ///< none: the file has no [weather]
  std::optional<SinceRain> since_rain = {};  ///< of [weather]: days_since_rain, rain
};

/// Reads [block.NAME] and [weather] of a description file. @throws InvalidInput
Blocks read_blocks(const std::filesystem::path& file, const FileLimits& limits = {});

/// The same from text; `name` stands for the file in errors.
Blocks read_blocks_text(std::string_view text,
                        const std::string& name = "text",
                        const FileLimits& limits = {});

}  // namespace hydro
