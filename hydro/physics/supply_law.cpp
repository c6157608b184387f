#include "hydro/physics/supply_law.hpp"

#include "hydro/physics/hydrant_law.hpp"
#include "hydro/physics/losses.hpp"
#include "hydro/physics/root_between.hpp"

#include <optional>
#include <utility>
#include <vector>

namespace hydro {

struct SupplyLaw::Parts {
  std::optional<HydrantLaw> hydrant;
  std::vector<PumpLaw> pumps;
  bool alike = false;
  PumpArrangement arrangement = PumpArrangement::parallel;
  double lift = 0;
  Losses suction;
  Losses filter;

  HeadAtFlow in_series(double flow, std::array<PumpAtFlow, 2>& now) const;
  HeadAtFlow in_parallel(double flow, std::array<PumpAtFlow, 2>& now) const;
  HeadAtFlow together(double flow, std::array<PumpAtFlow, 2>& now) const {
    return arrangement == PumpArrangement::series || pumps.size() == 1 ? in_series(flow, now)
                                                                       : in_parallel(flow, now);
  }
};

HeadAtFlow SupplyLaw::Parts::in_series(double flow, std::array<PumpAtFlow, 2>& now) const {
  HeadAtFlow sum{0, 0};
  for (std::size_t i = 0; i < pumps.size(); ++i) {
    now[i] = pumps[i].at(flow);
    sum.head += now[i].head;
    sum.slope += now[i].slope;
  }
  return sum;
}

HeadAtFlow SupplyLaw::Parts::in_parallel(double flow, std::array<PumpAtFlow, 2>& now) const {
  const auto alone = [&](std::size_t works, std::size_t shut) {
    now[works] = pumps[works].at(flow);
    now[shut] = pumps[shut].at(0);
    return now[works].head >= now[shut].head;
  };
  if (!alike && alone(0, 1)) return {now[0].head, now[0].slope};
  if (!alike && alone(1, 0)) return {now[1].head, now[1].slope};
  const auto stronger = [&](double first_flow) {
    return pumps[0].at(first_flow).head - pumps[1].at(flow - first_flow).head;
  };
  const double first_flow = alike ? flow / 2 : root_between(stronger, 0, flow);
  now = {pumps[0].at(first_flow), pumps[1].at(flow - first_flow)};
  const double slopes = now[0].slope + now[1].slope;
  return {now[0].head, slopes < 0 ? now[0].slope * (now[1].slope / slopes) : 0};
}

SupplyLaw::SupplyLaw(const Supply& supply, const WaterProperties& water) : head_at_rest_(0) {
  const double weight_density = si(water.density) * gravity;
  if (supply.pressure) head_at_rest_ = si(*supply.pressure) / weight_density;
  if (supply.tank) head_at_rest_ = si(supply.tank->level);
  const bool filtered = supply.filter && si(supply.filter->loss) > 0;
  if (!supply.pump && !supply.hydrant && !filtered) return;

  Parts parts;
  if (supply.hydrant) {
    const Hydrant& hydrant = *supply.hydrant;
    parts.hydrant = {si(hydrant.pressure_at_rest) / weight_density,
                     si(hydrant.pressure_at_rest - hydrant.residual_pressure) / weight_density,
                     si(hydrant.flow)};
  }
  if (supply.pump) parts.pumps.emplace_back(*supply.pump, weight_density);
  if (supply.second_pump) parts.pumps.emplace_back(*supply.second_pump, weight_density);
  parts.alike = supply.pump == supply.second_pump;
  parts.arrangement = supply.arrangement.value_or(PumpArrangement::parallel);
  if (supply.suction) {
    parts.lift = si(supply.suction->lift);
    parts.suction = losses(*supply.suction, water);
  }
  if (filtered) parts.filter = losses(*supply.filter, water);
  parts_ = std::make_shared<const Parts>(std::move(parts));
  head_at_rest_ = in_full(0).lines.head;
}

SupplyAtFlow SupplyLaw::in_full(double flow) const {
  SupplyAtFlow now{{head_at_rest_, 0}, head_at_rest_, 0, 0, 0, {}};
  if (!parts_) return now;
  now.pumps = parts_->pumps.size();
  HeadAtFlow source = now.lines;
  const double outward = std::max(0.0, flow);
  if (parts_->hydrant) source = parts_->hydrant->at(outward);
  if (now.pumps > 0) {
    source = parts_->together(outward, now.pump);
    const Loss suction = parts_->suction.at(outward);
    now.suction_loss = suction.head;
    source.head -= parts_->lift + suction.head;
    source.slope -= suction.slope;
  }
  if (flow < 0) source.head += source.slope * flow;
  const Loss filter = parts_->filter.at(flow);
  now.filter_loss = filter.head;
  now.source = source.head;
  now.lines = {source.head - filter.head + raised_by_, source.slope - filter.slope};
  return now;
}

SupplyLaw SupplyLaw::raised_by(double head) const {
  SupplyLaw raised = *this;
  raised.head_at_rest_ += head;
  raised.raised_by_ += head;
  return raised;
}

}  // namespace hydro
