// diagnosis_report.hpp: what is wrong, as far as the readings tell, to the person who walks there.
//
// What      First where to walk and how sure that is, in sentences; what reads the same and what tells
//           them apart, or that no single fault explains the readings; what to read next. Then
//           tables: the places to walk to, and what was predicted against what was read. Then what
//           to do about it, what the gauges can see at all, and what was assumed.
// Accuracy  As in report.hpp. Chances are told as whole per cent, never as 0 or 100.
// Threads   Pure function.
// Example   examples/find_fault.cpp
#pragma once

#include "hydro/diagnosis/detectable.hpp"
#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/make_right.hpp"
#include "hydro/diagnosis/next_reading.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/unit_system.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// What one gauge, meter or bucket can see.
struct SeenBy {
  Reading reading = {};
  std::vector<Detectable> candidates = {};  ///< of detectable()
};

/// What is told beside the faults; what is left out is not told.
struct DiagnosisReportOptions {
  std::optional<UnitSystem> units = {};      ///< default those of the site
  FindFaultOptions find_fault = {};          ///< that were used: what was assumed
  std::optional<NextReadings> next = {};     ///< of next_reading()
  std::optional<MakeRight> make_right = {};  ///< of make_right()
  std::vector<SeenBy> seen_by = {};
};

/// Whether no fault explains the readings better than that nothing is wrong, but for what is worth a
/// bare mention: no Bayes factor against it is above 3 (R. E. Kass and A. E. Raftery, J. Am. Stat.
/// Assoc. 90 (1995) 773-795, from memory).
bool is_as_it_should_be(const FoundFaults& found);

/// @param layout,readings,sights,found what find_fault() was asked and answered
std::string diagnosis_report(const Layout& layout,
                             const std::vector<Reading>& readings,
                             const std::vector<Sight>& sights,
                             const FoundFaults& found,
                             const DiagnosisReportOptions& options = {});

}  // namespace hydro
