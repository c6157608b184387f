// supply_law.hpp: a supply as the inner loop uses it: plain doubles in SI, heads in m above its
// elevation. Not installed. The formulas and their sources stand in the headers of its parts.
#pragma once

#include "hydro/physics/pump_law.hpp"
#include "hydro/physics/supply.hpp"
#include "hydro/physics/water.hpp"

#include <array>
#include <cstddef>
#include <memory>

namespace hydro {

/// Where the head at one flow comes from.
struct SupplyAtFlow {
  HeadAtFlow lines;                ///< at the start of the lines
  double source;                   ///< before the filter [m]
  double filter_loss;              ///< [m]
  double suction_loss;             ///< [m]
  std::size_t pumps;               ///< how many of ...
  std::array<PumpAtFlow, 2> pump;  ///< ... these there are
};

/// The static head at the start of the lines, falling with the flow that leaves.
class SupplyLaw {
 public:
  /// @param supply without problems
  SupplyLaw(const Supply& supply, const WaterProperties& water);
  /// The same head at every flow.
  explicit SupplyLaw(double held) : head_at_rest_(held) {}

  /// Without flow.
  double head_at_rest() const { return head_at_rest_; }
  /// Whether the head is the same at every flow.
  bool is_held() const { return !parts_; }
  /// @param flow [m3/s]; below 0 it runs in: what loses head then loses as much the other way. That
  ///   of a pump or a hydrant, which has a check valve, rises on as it does at rest: no answer, but
  ///   a way to one
  HeadAtFlow at(double flow) const { return in_full(flow).lines; }
  SupplyAtFlow in_full(double flow) const;
  /// The same with so much more head at every flow [m].
  SupplyLaw raised_by(double head) const;

 private:
  struct Parts;
  double head_at_rest_;
  double raised_by_ = 0;
  std::shared_ptr<const Parts> parts_;  // none: held
};

}  // namespace hydro
