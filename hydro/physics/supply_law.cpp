#include "hydro/physics/supply_law.hpp"

namespace hydro {

struct SupplyLaw::Parts {};

SupplyLaw::SupplyLaw(const Supply& supply, const WaterProperties& water)
    : head_at_rest_(si(supply.pressure.value()) / (si(water.density) * gravity)) {}

HeadAtFlow SupplyLaw::at(double) const {
  return {head_at_rest_, 0};
}

}  // namespace hydro
