#include "hydro/diagnosis/solve_candidates.hpp"

#include "hydro/solver/settled_layout.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/in_parallel.hpp"

#include <utility>

namespace hydro {
namespace {

/// Whether it is an outlet that is replaced: of these lanes solve many at once.
bool is_at_outlet(const Candidate& candidate) {
  return candidate.outlet && candidate.kind != CandidateKind::leak;
}

SolvedBreak solve_alone(const Layout& layout,
                        const FaultSizes& fault_sizes,
                        const Candidate& candidate,
                        double u) {
  try {
    return read_break(solve(layout_with(candidate, layout, fault_sizes, u)));
  } catch (const NotSolved& error) {
    return not_solved(error.what());
  } catch (const InvalidInput& error) {
    return not_solved(error.what());
  }
}

}  // namespace

Work PartsOfWork::next(std::size_t steps) {
  begun_ = done_;
  done_ += steps;
  if (!work_.progress) return {.threads = work_.threads};
  return {.threads = work_.threads, .progress = [this, steps](std::size_t done, std::size_t of) {
            return work_.progress(begun_ + (of == 0 ? 0 : steps * done / of), all_);
          }};
}

void solve_candidates(const Layout& layout,
                      const FaultSizes& fault_sizes,
                      const std::vector<Candidate>& candidates,
                      const std::vector<CandidateSize>& sizes,
                      const Work& work,
                      const std::function<void(std::size_t, const SolvedBreak&)>& take) {
  std::vector<std::size_t> at_outlets, others;
  std::vector<Fault> faults;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    const Candidate& candidate = candidates[sizes[i].candidate];
    if (!is_at_outlet(candidate)) {
      others.push_back(i);
      continue;
    }
    at_outlets.push_back(i);
    faults.push_back(fault_of(candidate, layout, fault_sizes, sizes[i].u).value());
  }
  PartsOfWork parts(work, sizes.size());
  if (!faults.empty())
    solve_breaks(layout,
                 SettledLayout(layout),
                 faults,
                 parts.next(faults.size()),
                 [&](std::size_t i, const SolvedBreak& solved) { take(at_outlets[i], solved); });
  in_parallel(others.size(), parts.next(others.size()), [&](std::size_t i) {
    const CandidateSize& it = sizes[others[i]];
    take(others[i], solve_alone(layout, fault_sizes, candidates[it.candidate], it.u));
  });
}

}  // namespace hydro
