#include "hydro/what_ifs/solve_breaks.hpp"

#include "hydro/physics/operating_point.hpp"
#include "hydro/solver/lanes.hpp"
#include "hydro/solver/reading.hpp"
#include "hydro/solver/settle.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/solver/tree.hpp"
#include "hydro/what_ifs/in_parallel.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <span>

namespace hydro {
namespace {

/// Of the first supply.
void read_supply(const OperatingPoint& point, SolvedBreak& found) {
  found.supply_flow = si(point.flow);
  found.supply_pressure = si(point.pressure);
  found.gauge_reading = si(point.gauge_reading.value_or(point.source_pressure));
  if (!point.pumps.empty()) found.pump_speed = si(point.pumps[0].speed.value_or(RotationalSpeed{}));
}

SolvedBreak solve_alone(const Layout& layout, const Fault& fault) {
  try {
    return read_break(solve(layout.with_fault(fault)));
  } catch (const NotSolved& error) {
    return {.not_solved = error.what()};
  }
}

/// Many breaks at once, one in each lane.
class BreaksInLanes {
 public:
  BreaksInLanes(const Layout& layout, const std::vector<Fault>& faults)
      : layout_(layout),
        faults_(faults),
        water_(properties(layout.water())),
        weight_density_(si(water_.density) * gravity),
        tree_(make_tree(layout, water_)),
        settled_(settle(tree_, SolveOptions{}.newton_steps)),
        on_tree_(tree_, settled_.sweeps) {
    for (std::size_t l = 0; l < layout.lines().size(); ++l) list(l);
  }

  /// Whether lanes can: not where lines join.
  bool march() const { return Lanes::march_on(tree_); }
  std::size_t blocks() const { return (faults_.size() + lanes - 1) / lanes; }

  void do_block(std::size_t number,
                const std::function<void(std::size_t, const SolvedBreak&)>& take) const {
    const std::size_t first = number * lanes;
    const std::size_t count = std::min(lanes, faults_.size() - first);
    Differences differences;
    const auto faults = std::span(faults_).subspan(first, count);
    for (std::size_t lane = 0; lane < count; ++lane) {
      const std::size_t l = layout_.index_of(line_of(faults[lane]));
      differences.replaced.push_back({place_of(l, outlet_of(faults[lane]).value()),
                                      lane,
                                      mouth_with(faults[lane], layout_.lines()[l], water_)});
    }
    std::ranges::sort(differences.replaced, {}, &Differences::Replaced::place);
    Block block;
    on_tree_.solve(differences, count, block);
    std::array<SolvedBreak, lanes> found;
    read(block, differences.replaced, faults, found);
    for (std::size_t lane = 0; lane < count; ++lane) {
      const bool is_solved = ((block.met >> lane) & 1) == 1;
      take(first + lane, is_solved ? found[lane] : solve_alone(layout_, faults[lane]));
    }
  }

 private:
  /// An outlet as the tree has it.
  struct Standing {
    const Line* line;
    const Outlet* kind;
    const Fault* fault;  ///< none: null
    std::size_t place;   ///< nowhere: no water comes to it
    double held;         ///< by its own regulator [m]
    bool is_shut;
  };

  std::size_t place_of(std::size_t l, int number) const {
    const LinePlaces& places = tree_.lines[l];
    const auto i = static_cast<std::size_t>(number - 1);
    return i < places.outlets ? tree_.place_of(places, i) : nowhere;
  }

  void list(std::size_t l) {
    const Line& line = layout_.lines()[l];
    for (int number = 1; number <= line.outlet_count(); ++number) {
      const std::size_t place = place_of(l, number);
      double held = no_limit;
      if (place != nowhere && tree_.places[place].mouth != none)
        held = tree_.mouths[index(tree_.places[place].mouth)].law.held;
      const Fault* there = nullptr;
      for (const Fault& fault : layout_.faults_on(l))
        if (outlet_of(fault) == number) there = &fault;
      standing_.push_back(
          {&line, &layout_.outlet_at(l, number), there, place, held, layout_.is_shut(l)});
    }
    for (const OpenPlace& open : tree_.lines[l].open) open_places_.push_back(open.place);
  }

  /// All lanes together, for what they have of a place stands side by side.
  void read(const Block& block,
            const std::vector<Differences::Replaced>& broken,
            std::span<const Fault> faults,
            std::array<SolvedBreak, lanes>& found) const {
    std::array<std::size_t, lanes> broken_place{};
    std::array<double, lanes> broken_held{};
    for (const Differences::Replaced& it : broken) {
      broken_place[it.lane] = it.place;
      broken_held[it.lane] = it.mouth ? it.mouth->law.held : no_limit;
    }
    for (std::size_t lane = 0; lane < faults.size(); ++lane) {
      found[lane].pressure.reserve(standing_.size());
      found[lane].line_pressure.reserve(standing_.size());
      found[lane].flow.reserve(standing_.size());
      found[lane].state.reserve(standing_.size());
    }
    for (const Standing& it : standing_) {
      for (std::size_t lane = 0; lane < faults.size(); ++lane) {
        OutletReading read{0, 0, it.is_shut ? OutletState::closed : OutletState::dry};
        double flow = 0;
        if (it.place != nowhere) {
          const bool is_broken = it.place == broken_place[lane];
          const double held = is_broken ? broken_held[lane] : it.held;
          read.line_pressure = weight_density_ * block.head[it.place][lane];
          read.pressure = weight_density_ * std::min(block.outlet_head[it.place][lane], held);
          flow = block.outlet_flow[it.place][lane];
          const auto* wrong = is_broken ? std::get_if<WrongOutlet>(&faults[lane]) : nullptr;
          read.state =
              state_at(wrong ? wrong->fitted : *it.kind, Pressure::from_value(read.pressure));
          if (const Fault* there = is_broken ? &faults[lane] : it.fault; there && !it.is_shut)
            read = with_fault(read, *there, *it.line, weight_density_);
        }
        found[lane].pressure.push_back(read.pressure);
        found[lane].line_pressure.push_back(read.line_pressure);
        found[lane].flow.push_back(flow);
        found[lane].state.push_back(read.state);
      }
    }
    for (std::size_t lane = 0; lane < faults.size(); ++lane) {
      for (const std::size_t place : open_places_)
        found[lane].out_of_openings += block.outlet_flow[place][lane];
      read_lines(block, lane, found[lane]);
      read_supplies(block, lane, found[lane]);
    }
  }

  void read_lines(const Block& block, std::size_t lane, SolvedBreak& found) const {
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

  void read_supplies(const Block& block, std::size_t lane, SolvedBreak& found) const {
    const auto flow_of = [&](const Supply& supply, std::size_t number) {
      const double flow = block.source_flow[index(tree_.of_supplies[number])][lane];
      return takes_water_in(supply) ? flow : std::max(0.0, flow);
    };
    const Supply& first = layout_.supply_as_it_is();
    const double flow = flow_of(first, 0);
    const OperatingPoint point =
        operating_point(first, Flow::from_value(flow), layout_.water(), layout_.site());
    read_supply(point, found);
    found.inflow = flow;
    const std::vector<Supply>& further = layout_.further_supplies_as_they_are();
    for (std::size_t i = 0; i < further.size(); ++i) found.inflow += flow_of(further[i], i + 1);
  }

  const Layout& layout_;
  const std::vector<Fault>& faults_;
  WaterProperties water_;
  double weight_density_;  ///< rho g [N/m3]
  Tree tree_;
  Settled settled_;
  Lanes on_tree_;
  std::vector<Standing> standing_;
  std::vector<std::size_t> open_places_;
};

}  // namespace

SolvedBreak read_break(const Solution& solution) {
  SolvedBreak found{.inflow = si(solution.inflow())};
  read_supply(solution.supply(), found);
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
                  const std::vector<Fault>& faults,
                  const Work& work,
                  const std::function<void(std::size_t, const SolvedBreak&)>& take) {
  const BreaksInLanes in_lanes(layout, faults);
  if (in_lanes.march())
    return in_parallel(
        in_lanes.blocks(), work, [&](std::size_t number) { in_lanes.do_block(number, take); });
  in_parallel(faults.size(), work, [&](std::size_t i) { take(i, solve_alone(layout, faults[i])); });
}

}  // namespace hydro
