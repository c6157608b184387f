// solved_block.hpp: some realisations, one after another, solved. Not installed.
#pragma once

#include "hydro/what_ifs/uncertain_inputs.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace hydro {

/// Realisations from `first` on. SI; all outlets of all lines in their order, for each outlet one
/// realisation after another.
struct SolvedBlock {
  std::size_t first;
  std::size_t count;
  std::vector<double>
      pressure;                ///< at the device: of outlet j in the i-th one, entry j * count + i
  std::vector<double> flow;    ///< likewise
  std::vector<double> inflow;  ///< out of all supplies together, one for each realisation
};

/// The same numbers as solve(realisation(...)) gives. @throws NotSolved
SolvedBlock solve_block(const UncertainInputs& inputs,
                        std::uint64_t seed,
                        std::size_t first,
                        std::size_t count);

}  // namespace hydro
