#include "hydro/what_ifs/solve_breaks.hpp"

#include "hydro/physics/operating_point.hpp"
#include "hydro/solver/reading.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/solver/tree.hpp"
#include "hydro/what_ifs/in_parallel.hpp"
#include "hydro/what_ifs/pool.hpp"
#include "hydro/what_ifs/standing_outlets.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <utility>

namespace hydro {
namespace {

SolvedBreak solve_alone(const Layout& layout, const Fault& fault) {
  try {
    return read_break(solve(layout.with_fault(fault)));
  } catch (const NotSolved& error) {
    return not_solved(error.what());
  }
}

/// Many breaks at once, one in each lane.
class BreaksInLanes {
 public:
  BreaksInLanes(const Layout& layout,
                const SettledLayout& as_it_is,
                const std::vector<Fault>& faults)
      : layout_(layout),
        faults_(faults),
        water_(as_it_is.water),
        weight_density_(si(water_.density) * gravity),
        tree_(as_it_is.tree),
        on_tree_(tree_, as_it_is.settled.sweeps),
        standing_(standing_outlets(layout, tree_)),
        open_places_(open_places(tree_)) {}

  /// Whether lanes can: not where lines join.
  bool march() const { return Lanes::march_on(tree_); }
  std::size_t blocks_to_do() const { return (faults_.size() + lanes - 1) / lanes; }

  void do_block(std::size_t number,
                const std::function<void(std::size_t, const SolvedBreak&)>& take) {
    const std::size_t first = number * lanes;
    const std::size_t count = std::min(lanes, faults_.size() - first);
    Differences differences;
    const auto faults = std::span(faults_).subspan(first, count);
    for (std::size_t lane = 0; lane < count; ++lane) {
      const std::size_t l = layout_.index_of(line_of(faults[lane]));
      differences.replaced.push_back({place_of(tree_, l, outlet_of(faults[lane]).value()),
                                      lane,
                                      mouth_with(faults[lane], layout_.lines()[l], water_)});
    }
    std::ranges::sort(differences.replaced, {}, &Differences::Replaced::place);
    std::unique_ptr<LaneBlock> block = blocks_.take([] { return std::make_unique<LaneBlock>(); });
    on_tree_.solve(differences, count, *block);
    std::array<SolvedBreak, lanes> found;
    read(*block, differences.replaced, faults, found);
    for (std::size_t lane = 0; lane < count; ++lane) {
      const bool is_solved = ((block->met >> lane) & 1) == 1;
      take(first + lane, is_solved ? found[lane] : solve_alone(layout_, faults[lane]));
    }
    blocks_.give_back(std::move(block));
  }

 private:
  /// All lanes together, for what they have of a place stands side by side.
  void read(const LaneBlock& block,
            const std::vector<Differences::Replaced>& broken,
            std::span<const Fault> faults,
            std::array<SolvedBreak, lanes>& found) const {
    std::array<const Differences::Replaced*, lanes> of_lane{};
    for (const Differences::Replaced& it : broken) of_lane[it.lane] = &it;
    for (std::size_t lane = 0; lane < faults.size(); ++lane) {
      found[lane].pressure.reserve(standing_.size());
      found[lane].line_pressure.reserve(standing_.size());
      found[lane].flow.reserve(standing_.size());
      found[lane].state.reserve(standing_.size());
    }
    for (const StandingOutlet& it : standing_)
      for (std::size_t lane = 0; lane < faults.size(); ++lane) {
        const bool has_water = it.place != nowhere;
        const double head = has_water ? block.head[it.place][lane] : 0;
        const double outlet_head = has_water ? block.outlet_head[it.place][lane] : 0;
        const bool is_broken = has_water && it.place == of_lane[lane]->place;
        const OutletReading read =
            read_outlet(is_broken ? with_fault_at(it, faults[lane], of_lane[lane]->mouth) : it,
                        head,
                        outlet_head,
                        weight_density_);
        found[lane].pressure.push_back(read.pressure);
        found[lane].line_pressure.push_back(read.line_pressure);
        found[lane].flow.push_back(has_water ? block.outlet_flow[it.place][lane] : 0);
        found[lane].state.push_back(read.state);
      }
    for (std::size_t lane = 0; lane < faults.size(); ++lane) {
      for (const std::size_t place : open_places_)
        found[lane].out_of_openings += block.outlet_flow[place][lane];
      static_cast<SuppliesAfter&>(found[lane]) = read_supplies(layout_, tree_, block, lane, water_);
      read_lines(block, lane, found[lane]);
    }
  }

  void read_lines(const LaneBlock& block, std::size_t lane, SolvedBreak& found) const {
    for (std::size_t l = 0; l < tree_.lines.size(); ++l) {
      const LinePlaces& places = tree_.lines[l];
      double inlet = 0, end = 0;
      if (places.first_run != none) {
        const Run& run = tree_.first_run(places);
        inlet = run.fed_by == none ? block.source_head[index(run.source)][lane]
                                   : block.head[tree_.runs[index(run.fed_by)].end - 1][lane];
      }
      if (places.last_run != none && (!layout_.open_end_of(l) || places.beyond_run != none))
        end = block.head[tree_.last_run(places).end - 1][lane];
      found.inlet_pressure.push_back(weight_density_ * inlet);
      found.end_pressure.push_back(weight_density_ * end);
    }
  }

  const Layout& layout_;
  const std::vector<Fault>& faults_;
  const WaterProperties& water_;
  double weight_density_;  ///< rho g [N/m3]
  const Tree& tree_;
  Lanes on_tree_;
  std::vector<StandingOutlet> standing_;
  std::vector<std::size_t> open_places_;
  Pool<LaneBlock> blocks_;
};

}  // namespace

SuppliesAfter read_supplies(const Layout& layout,
                            const Tree& tree,
                            const LaneBlock& block,
                            std::size_t lane,
                            const WaterProperties& water) {
  const auto flow_of = [&](const Supply& supply, std::size_t number) {
    const double flow = block.source_flow[index(tree.of_supplies[number])][lane];
    return takes_water_in(supply) ? flow : std::max(0.0, flow);
  };
  // As operating_point() has it, without the pumps' duties.
  const Supply& first = layout.supply_as_it_is();
  const double flow = flow_of(first, 0);
  const SupplyAtFlow now = tree.supply().in_full(flow);
  const double weight_density = si(water.density) * gravity;
  SuppliesAfter after{.inflow = flow,
                      .supply_flow = flow,
                      .supply_pressure = weight_density * now.lines.head,
                      .gauge_reading = weight_density * now.source};
  if (first.pump && first.pump->curve_speed)
    after.pump_speed = si(now.pump[0].speed_ratio * *first.pump->curve_speed);
  if (first.gauge) {
    if (first.gauge->after_filter.value_or(false)) after.gauge_reading = after.supply_pressure;
    after.gauge_reading -= si(pressure(first.gauge->height.value_or(Length{}), water.density));
  }
  const std::vector<Supply>& further = layout.further_supplies_as_they_are();
  for (std::size_t i = 0; i < further.size(); ++i) after.inflow += flow_of(further[i], i + 1);
  return after;
}

SolvedBreak not_solved(const std::string& why) {
  SolvedBreak found;
  found.not_solved = why;
  return found;
}

SolvedBreak read_break(const Solution& solution) {
  const OperatingPoint& supply = solution.supply();
  SolvedBreak found;
  found.inflow = si(solution.inflow());
  found.supply_flow = si(supply.flow);
  found.supply_pressure = si(supply.pressure);
  found.gauge_reading = si(supply.gauge_reading.value_or(supply.source_pressure));
  if (!supply.pumps.empty())
    found.pump_speed = si(supply.pumps[0].speed.value_or(RotationalSpeed{}));
  const auto append = [](auto& all, const auto& more) {
    all.insert(all.end(), more.begin(), more.end());
  };
  for (const LineSolution& line : solution.lines()) {
    append(found.pressure, line.pressure.si());
    append(found.line_pressure, line.line_pressure.si());
    append(found.flow, line.flow.si());
    append(found.state, line.state);
    found.inlet_pressure.push_back(si(line.inlet_pressure));
    found.end_pressure.push_back(si(line.end_pressure));
    for (const Opening& opening : line.openings) found.out_of_openings += si(opening.flow);
  }
  return found;
}

void solve_breaks(const Layout& layout,
                  const SettledLayout& as_it_is,
                  const std::vector<Fault>& faults,
                  const Work& work,
                  const std::function<void(std::size_t, const SolvedBreak&)>& take) {
  BreaksInLanes in_lanes(layout, as_it_is, faults);
  if (in_lanes.march())
    return in_parallel(in_lanes.blocks_to_do(), work, [&](std::size_t number) {
      in_lanes.do_block(number, take);
    });
  in_parallel(faults.size(), work, [&](std::size_t i) { take(i, solve_alone(layout, faults[i])); });
}

}  // namespace hydro
