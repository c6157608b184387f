// setting_report.hpp: how a supply is set, and what throttling up cures, in sentences.
//
// What      For the person at the engine: to what speed, what the gauge reads then, and which limit
//           stands in the way.
// Accuracy  As in report.hpp.
// Threads   Pure functions.
// Example   examples/check_line.cpp
#pragma once

#include "hydro/answers/set_gauge.hpp"
#include "hydro/answers/throttle_up.hpp"
#include "hydro/quantities/unit_system.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// Speed or pressure, gauge, flow, the weakest outlet, and the limits that are passed.
/// @param units default those of the site
std::string setting_report(const Setting& setting, std::optional<UnitSystem> units = {});

/// Three sentences: what a fault does to the gauge, to what speed the engine must be throttled up to
/// bring the reading back, and what that cures and does not.
/// @param units default those of the site
std::vector<std::string> throttling_sentences(const Throttling& throttling,
                                              std::optional<UnitSystem> units = {});

}  // namespace hydro
