// supply_words.hpp: what a supply is asked and should not be, in words. Not installed.
#pragma once

#include "hydro/answers/check.hpp"
#include "hydro/physics/supply_limit.hpp"
#include "hydro/solver/solution.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"

#include <string>
#include <vector>

namespace hydro {

/// For programs: "top_speed".
std::string name_of(SupplyLimit limit);
/// For people: "the engine's top speed, the gauge's range"; empty when there are none.
std::string in_words(const std::vector<SupplyLimit>& limits);

/// "a pump", "two pumps in parallel", "a tank", "a hydrant", "a held pressure".
std::string in_words(const Supply& supply);

/// What a supply gives, or takes in where others push it, as it is printed.
struct Giving {
  bool takes_in;
  bool is_nothing;     ///< less than is printed
  std::string amount;  ///< "5.0 gal/min"

  /// "gives 5.0 gal/min".
  std::string in_words() const { return (takes_in ? "takes in " : "gives ") + amount; }
};
Giving giving(const Flow& flow, const Figures& figures);
/// Of one that is held shut: "gives nothing: ..., 43.0 psi at rest".
std::string held_shut_in_words(const OperatingPoint& point, const Figures& figures);

/// That no water comes, and why; nothing when it does. Whether it wrote anything.
bool write_that_all_is_dry(Page& page,
                           const Solution& solution,
                           const Check& check,
                           const Figures& figures);

/// A sentence for each limit that is passed.
void write_supply_limits(Page& page,
                         const Solution& solution,
                         const Check& check,
                         const Figures& figures);

}  // namespace hydro
