// solve_candidates.hpp: what each candidate would show, at any of its sizes. Not installed.
#pragma once

#include "hydro/diagnosis/candidate.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/solve_breaks.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <functional>
#include <vector>

namespace hydro {

/// A candidate of this size, in deviations from the median.
struct CandidateSize {
  std::size_t candidate;
  double u;
};

/// A work of several parts, told of as one.
class PartsOfWork {
 public:
  PartsOfWork(const Work& work, std::size_t all) : work_(work), all_(all) {}
  /// The next part, of so many steps; the one before is done. Refers to this.
  Work next(std::size_t steps);

 private:
  const Work& work_;
  std::size_t all_;
  std::size_t begun_ = 0;
  std::size_t done_ = 0;
};

/// @param take is called once for each index into `sizes`, from any thread and in any order; where the
///   layout cannot have the fault, not_solved says why
/// @throws Stopped
void solve_candidates(const Layout& layout,
                      const FaultSizes& fault_sizes,
                      const std::vector<Candidate>& candidates,
                      const std::vector<CandidateSize>& sizes,
                      const Work& work,
                      const std::function<void(std::size_t, const SolvedBreak&)>& take);

}  // namespace hydro
