// diagnosis_words.hpp: where a fault may be and where something is read, in words. Not installed.
#pragma once

#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/text/figures.hpp"

#include <optional>
#include <string>

namespace hydro {

/// Never surer than one is: "87 in 100", "more than 99 in 100", "less than 1 in 100".
std::string chance(double probability);
/// For a table: "87 %", ">99 %", "<1 %".
std::string chance_in_percent(double probability);

/// "the riser of row 2, outlet 7".
std::string where(const Reading& reading);
/// "36.2 psi", of whatever was read; empty where nothing was. Small flows in small units.
std::string figure(const std::optional<Pressure>& pressure,
                   const std::optional<Flow>& flow,
                   const std::optional<RotationalSpeed>& speed,
                   const Figures& figures);
/// "row 2, outlets 1 to 4: turning".
std::string in_words(const Sight& sight);

/// "row 2, outlets 6 to 9"; "the supply".
std::string where(const WalkTo& walk);
/// What one would find there, most probable first: "a riser sheared or a head off".
std::string what(const WalkTo& walk, const FoundFaults& found);
/// "a riser sheared at row 2, outlet 7".
std::string in_words(const Candidate& candidate);

/// What is found, in one sentence.
std::string headline(const FoundFaults& found);

}  // namespace hydro
