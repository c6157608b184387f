#include "hydro/what_ifs/solved_block.hpp"

#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <span>

namespace hydro {

SolvedBlock solve_block(const UncertainInputs& inputs,
                        std::uint64_t seed,
                        std::size_t first,
                        std::size_t count) {
  const std::size_t size = inputs.inputs().size();
  std::vector<double> drawn(size * count);
  for (std::size_t j = 0; j < size; ++j)
    UncertainInputs::draw(
        inputs.inputs()[j], seed, first, std::span(drawn).subspan(j * count, count));

  const auto outlets = static_cast<std::size_t>(inputs.layout().outlet_count());
  SolvedBlock block{first, count, {}, {}, {}};
  block.pressure.resize(outlets * count);
  block.flow.resize(outlets * count);
  block.inflow.resize(count);
  std::vector<double> of_this_one(size);
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = 0; j < size; ++j) of_this_one[j] = drawn[j * count + i];
    const Solution solution = solve(inputs.with(of_this_one));
    std::size_t outlet = 0;
    for (const LineSolution& line : solution.lines())
      for (std::size_t j = 0; j < line.pressure.size(); ++j, ++outlet) {
        block.pressure[outlet * count + i] = line.pressure.si()[j];
        block.flow[outlet * count + i] = line.flow.si()[j];
      }
    block.inflow[i] = si(solution.inflow());
  }
  return block;
}

}  // namespace hydro
