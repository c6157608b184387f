#include "hydro/what_ifs/solved_block.hpp"

#include "hydro/physics/water.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <span>

namespace hydro {

BlockSolver::BlockSolver(const UncertainInputs& inputs)
    : inputs_(inputs),
      weight_density_(si(properties(inputs.layout().water()).density) * gravity),
      lanes_(RealisationsInLanes::of(inputs)) {}

void BlockSolver::solve(std::uint64_t seed,
                        std::size_t first,
                        std::size_t count,
                        Desk& desk,
                        SolvedBlock& block) const {
  const std::vector<UncertainInput>& inputs = inputs_.inputs();
  desk.drawn.count = count;
  desk.drawn.values.resize(inputs.size() * count);
  for (std::size_t j = 0; j < inputs.size(); ++j)
    UncertainInputs::draw(
        inputs[j], seed, first, std::span(desk.drawn.values).subspan(j * count, count));

  const auto outlets = static_cast<std::size_t>(inputs_.layout().outlet_count());
  block.first = first;
  block.count = count;
  block.pressure.resize(outlets * count);
  block.flow.resize(outlets * count);
  block.inflow.resize(count);
  if (lanes_)
    for (std::size_t from = 0; from < count; from += lanes)
      solve_in_lanes(from, std::min(lanes, count - from), desk, block);
  else
    for (std::size_t i = 0; i < count; ++i) solve_alone(i, desk.drawn, block);
}

void BlockSolver::solve_in_lanes(std::size_t from,
                                 std::size_t count,
                                 Desk& desk,
                                 SolvedBlock& block) const {
  lanes_->solve(desk.drawn, from, count, desk.lanes);
  const LaneBlock& solved = desk.lanes.block;
  for (std::size_t i = 0; i < count; ++i) {
    double inflow = 0;
    for (const std::int32_t source : lanes_->supplies())
      inflow += std::max(0.0, solved.source_flow[index(source)][i]);
    block.inflow[from + i] = inflow;
  }
  const auto& outlets = lanes_->outlets();
  for (std::size_t j = 0; j < outlets.size(); ++j) {
    const RealisationsInLanes::Reading& outlet = outlets[j];
    double* const pressure = block.pressure.data() + j * block.count + from;
    double* const flow = block.flow.data() + j * block.count + from;
    if (outlet.place == nowhere) {
      std::fill_n(pressure, count, 0.0);
      std::fill_n(flow, count, 0.0);
      continue;
    }
    std::copy_n(solved.outlet_flow[outlet.place].at.data(), count, flow);
    const double* const head =
        (outlet.is_capped ? solved.head : solved.outlet_head)[outlet.place].at.data();
    const double below = outlet.is_capped ? outlet.height : 0;
    const double most = outlet.is_open ? 0 : outlet.held;
    for (std::size_t i = 0; i < count; ++i)
      pressure[i] = weight_density_ * std::clamp(head[i] - below, 0.0, most);
  }
  for (std::size_t i = 0; i < count; ++i)
    if (((solved.met >> i) & 1) == 0) solve_alone(from + i, desk.drawn, block);
}

void BlockSolver::solve_alone(std::size_t which, const Drawn& drawn, SolvedBlock& block) const {
  std::vector<double> of_this_one(inputs_.inputs().size());
  for (std::size_t j = 0; j < of_this_one.size(); ++j) of_this_one[j] = drawn.of(j)[which];
  const Solution solution = hydro::solve(inputs_.with(of_this_one));
  std::size_t outlet = 0;
  for (const LineSolution& line : solution.lines())
    for (std::size_t j = 0; j < line.pressure.size(); ++j, ++outlet) {
      block.pressure[outlet * block.count + which] = line.pressure.si()[j];
      block.flow[outlet * block.count + which] = line.flow.si()[j];
    }
  block.inflow[which] = si(solution.inflow());
}

}  // namespace hydro
