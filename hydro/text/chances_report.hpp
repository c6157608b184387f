// chances_report.hpp: how likely outlets fall short, as tables a grower reads.
//
// What      First what may be off and by how much, then a table: of each line's outlets, or of each
//           count of outlets more on one line. Lines that are shut have no table, and outlets that
//           are not judged no chances.
// Accuracy  Chances in whole percent; "none" and "all" where no and every case was so. Pressures as in
//           report.hpp. What is said of 19 of 20 cases holds, for all that drawing by chance does,
//           39 times of 40; where cases are too few for that it says so.
// Errors    InvalidInput when a line, or what was found, is not the layout's, and
//           when nothing was found, or not all with the same draws and quantiles.
// Threads   Pure functions.
// Example   examples/25_chance_of_trouble.cpp
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/what_ifs/chance_of_trouble.hpp"
#include "hydro/what_ifs/chances.hpp"
#include "hydro/what_ifs/uncertainty.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// @param found what chances() found of the layout, with this uncertainty
/// @param units default those of the site
std::string chances_report(const Layout& layout,
                           const Chances& found,
                           const Uncertainty& uncertainty,
                           std::optional<UnitSystem> units = {});

/// @param found what chance_of_trouble() found of this line, with this uncertainty
/// @param units default those of the site
std::string trouble_report(const Layout& layout,
                           std::string_view line,
                           const std::vector<TroubleAtCount>& found,
                           const Uncertainty& uncertainty,
                           std::optional<UnitSystem> units = {});

}  // namespace hydro
