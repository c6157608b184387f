// uniformity_of_many.hpp: the measures of uniformity of many realisations at once. Not installed.
//
// Formula   As uniformity.hpp has them.
// Accuracy  Sums are taken in other orders than there: the last places may differ.
// Threads   Each needs one of its own.
#pragma once

#include "hydro/what_ifs/solved_block.hpp"

#include <cstddef>
#include <vector>

namespace hydro {

class UniformityOfMany {
 public:
  // One value for each realisation [%]; not a number where no water came.
  std::vector<double> christiansen;
  std::vector<double> distribution;
  std::vector<double> statistical;  ///< nor of one outlet

  /// Of the flows of some outlets.
  void find(const SolvedBlock& block, const std::vector<std::size_t>& members);

 private:
  void find_lowest_quarters(const SolvedBlock& block, const std::vector<std::size_t>& members);

  std::vector<double> mean_;
  std::vector<double> lowest_quarter_;  ///< its mean
  std::vector<double> rows_;            ///< flows of some realisations side by side
};

}  // namespace hydro
