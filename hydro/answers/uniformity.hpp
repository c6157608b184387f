// uniformity.hpp: how evenly outlets let out water, in the measures of the trade.
//
// What      The same measures for the outlets of a solved layout and for a list of what was
//           measured: flows by bucket and stopwatch, or volumes or depths in catch cans. All are in
//           percent, and 100 is perfectly even.
// Formula   q the amounts, n how many, mean their mean
//           Christiansen's coefficient   CU = 100 (1 - sum of |q - mean| / (n mean))
//           distribution uniformity      DU = 100 (mean of the lowest quarter) / mean
//           statistical uniformity       Us = 100 (1 - s / mean), s with n - 1
//           field emission uniformity    the same number as DU, of emitters' measured flows
//           design emission uniformity   EU = 100 (1 - 1.27 Cv / sqrt(Np)) (least q) / mean
//           The lowest quarter is n/4 amounts, whole or not: the one at its edge counts in part; of
//           less than four, it is the least one.
// Source    CU: J. E. Christiansen, Irrigation by Sprinkling, Bulletin 670, University of
//           California (1942); CU and DU as in M. H. Ali, Practices of Irrigation and On-farm Water
//           Management, vol. 2 (2011), equations 4.6 and 4.7 (they were read). Design EU: J. Keller and D.
//           Karmeli, Trans. ASAE 17 (1974) 678-684 (from memory); Cv is how much new outlets vary
//           at one pressure (standard deviation / mean), Np how many of them water one plant. Us:
//           V. F. Bralts, I. P. Wu and H. M. Gitlin, Trans. ASAE 24 (1981) 113-119 (from memory).
//           That an amount counts in part is ours; others round n/4.
//           Where amounts are normally distributed, CU = 100 - 0.63 (100 - DU), and both follow
//           from Us: 100 - CU = 0.80 (100 - Us), 100 - DU = 1.27 (100 - Us).
// Range     From flows or catches alone: what wind and the overlap of sprinklers do to the ground
//           between the outlets is not in the measures of a solution. Very uneven amounts take CU
//           and Us below 0. Broken and capped outlets are left out. Dry ones count, with flow 0:
//           they stand in the field, and their plants get nothing (the variations of check.hpp
//           leave them out).
// Accuracy  the arithmetic's; uniformity_test.cpp.
// Errors    InvalidInput for amounts that are negative or not finite, or too few; for an
//           EmissionDesign that lacks something.
// Threads   Pure functions.
// Example   examples/05_how_even.cpp
#pragma once

#include "hydro/quantities/units.hpp"
#include "hydro/solver/solution.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// The measures of some amounts. Q is Flow, Volume or Length.
template <class Q>
struct Uniformity {
  int count = 0;  ///< of amounts
  Q mean = {};
  Q least = {};
  Q low_quarter = {};                      ///< mean of the lowest quarter
  double christiansen = 0;                 ///< CU [%]
  double distribution = 0;                 ///< DU of the low quarter [%]
  std::optional<double> statistical = {};  ///< Us [%]; none of one amount

  /// What DU is called where the amounts are flows measured at emitters [%].
  double field_emission() const { return distribution; }
};

/// Of measured flows, or of volumes or depths caught in cans that are alike in the same time.
/// @throws InvalidInput for no amounts, all 0, or one that is negative or not finite.
template <class Q>
Uniformity<Q> uniformity(const std::vector<Q>& amounts);

/// Outlets of one kind on one line or, with an empty line, on all lines together.
struct OutletUniformity {
  std::string line;
  std::string outlet_name;
  Uniformity<Flow> flows;
};

/// Each kind on each line, in their order; then each kind that stands on several lines, together.
/// Outlets that let out no water at all, on a whole line, have no uniformity and are left out.
std::vector<OutletUniformity> uniformity_of_outlets(const Solution& solution);

/// What design emission uniformity needs beside the flows; both are needed.
struct EmissionDesign {
  std::optional<double> manufacturing_variation = {};  ///< Cv of new outlets, 0 to 0.5 [-]
  std::optional<int> outlets_per_plant = {};           ///< Np, 1 to 1000
};

/// EU [%]. @param computed from a solution: measured flows have the makers' variation in them
/// already. @throws InvalidInput when something is not given or out of its interval.
double design_emission_uniformity(const Uniformity<Flow>& computed, const EmissionDesign& design);

}  // namespace hydro
