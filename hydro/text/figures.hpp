// figures.hpp: quantities as a report prints them, in the units its reader knows. Not installed.
//
// Accuracy  Nothing finer than a gauge shows: 0.1 psi, 1 kPa, 0.1 of a unit of flow, 1 rpm.
#pragma once

#include "hydro/quantities/unit_system.hpp"

#include <string>

namespace hydro {

/// Rounded down, so that 100 % is never said of less, and of what is left never more: "99 %".
/// @param share 0 or more [-]
std::string percent(double share);
/// How far past a limit: "6 %"; what would be 0 is "<1 %". @param share of the limit, 0 or more [-]
std::string percent_past(double share);

class Figures {
 public:
  explicit Figures(UnitSystem system) : system_(system), units_(unit_set(system)) {}

  UnitSystem system() const { return system_; }
  const UnitSet& units() const { return units_; }

  std::string pressure(const Pressure& value) const;
  std::string pressure_with_unit(const Pressure& value) const;
  /// A pressure a person chose, without a needless decimal: "25 psi".
  std::string limit(const Pressure& value) const;

  std::string flow_with_unit(const Flow& value) const;
  /// The unit in which outlets of this rated flow are told.
  const Unit<Flow>& flow_unit(const Flow& rated) const;

  /// Whether it is printed as 0.0.
  bool rounds_to_nothing(const Flow& value) const;
  bool rounds_to_nothing(const Velocity& value) const;

  std::string height(const Length& value) const;
  /// What height() prints of it, so that differences of what is printed are right.
  Length as_printed(const Length& value) const;
  std::string speed(const RotationalSpeed& value) const;
  std::string power(const Power& value) const;

  /// How long an outlet takes to fill the bucket.
  std::string bucket_time(const Flow& value) const;

 private:
  UnitSystem system_;
  UnitSet units_;
};

}  // namespace hydro
