// calibration_report.hpp: what a good walk taught, and what a log of days says, to the person who took
// the readings.
//
// What      First, in sentences, whether the readings fit and what they changed; what cannot be told
//           apart, and what would tell it. Then what was learnt, from what to what and how sure; what
//           was read against what was predicted, before and after. Of a log, what changed and since
//           when.
// Accuracy  As in report.hpp; shares to whole per cent.
// Threads   Pure functions.
#pragma once

#include "hydro/diagnosis/calibrate.hpp"
#include "hydro/diagnosis/drift.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/quantities/unit_system.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// @param readings that calibrate() was given
/// @param units default those of the site
std::string calibration_report(const std::vector<Reading>& readings,
                               const Calibration& calibration,
                               std::optional<UnitSystem> units = {});

/// @param log,drift what find_drift() was asked and answered
std::string drift_report(const std::vector<DayOfReadings>& log,
                         const Drift& drift,
                         UnitSystem units = UnitSystem::si);

/// "a rougher lateral": an input that moved one way. @param rises whether its value did
std::string in_words(const Learnt& learnt, bool rises);

}  // namespace hydro
