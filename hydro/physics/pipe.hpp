// pipe.hpp: a kind of pipe: its bore and how its wall resists the flow.
//
// What      The bore is the inside diameter the water sees. Exactly one of the three fields for the
//           wall is given; they choose the friction law (friction.hpp).
// Errors    problems() names each field that is out of its accepted interval.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// A bore and exactly one wall.
struct Pipe {
  std::string name = {};                      ///< for reports
  Length inside_diameter = {};                ///< 0.1 mm to 10 m
  std::optional<double> hazen_williams = {};  ///< coefficient C, 10 to 200 [-]
  std::optional<Length> roughness = {};     ///< Darcy-Weisbach, equivalent sand grain; 0 is smooth
  std::optional<double> darcy_factor = {};  ///< Darcy-Weisbach with this constant factor f [-]
  std::optional<Pressure> pressure_rating = {};  ///< at 73 degF
  std::string kind = {};  ///< as in nominal_pipe.hpp, for its derating; empty: not derated
  bool operator==(const Pipe&) const = default;
};

/// Area of the bore.
Area area(const Pipe& pipe);

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const Pipe& pipe);

}  // namespace hydro
