#include "hydro/solver/loops.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/LU>
#include <Eigen/SparseCore>
#include <Eigen/SparseLU>

namespace hydro {
namespace {

Eigen::Index row(std::size_t at) {
  return static_cast<Eigen::Index>(at);
}

/// Takes the flows through joints from the far ends, and passes them on to the sources.
void take(const std::vector<Stretch>& stretches, Balance& balance) {
  for (std::size_t i = stretches.size(); i-- > 0;) {
    const Stretch& it = stretches[i];
    const double asked = it.up * balance.taken[i];
    (it.feeder == none ? balance.asked[index(it.source)] : balance.taken[index(it.feeder)]) +=
        asked;
  }
}

void take_through(const std::vector<Closure>& closures, Balance& balance) {
  for (std::size_t i = 0; i < closures.size(); ++i) {
    balance.taken[index(closures[i].from)] += balance.joint_rises[i];
    balance.taken[index(closures[i].to)] -= balance.joint_rises[i];
  }
}

/// Rises at the far ends of all stretches.
std::vector<double> rises(const std::vector<Stretch>& stretches,
                          const std::vector<double>& of_sources,
                          const std::vector<double>& taken,
                          double of_themselves) {
  std::vector<double> found(stretches.size());
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    const Stretch& it = stretches[i];
    const double before =
        it.feeder == none ? of_sources[index(it.source)] : found[index(it.feeder)];
    found[i] = it.down * before - it.loss * taken[i] + of_themselves * it.rise;
  }
  return found;
}

bool is_finite(const Balance& balance) {
  const auto all = [](const std::vector<double>& values) {
    return std::ranges::all_of(values, [](double it) { return std::isfinite(it); });
  };
  return all(balance.joint_rises) && all(balance.source_rises) && all(balance.taken);
}

Balance nothing(std::size_t closures, std::size_t stretches, std::size_t roots) {
  return {std::vector<double>(closures, 0),
          std::vector<double>(stretches, 0),
          std::vector<double>(roots, 0),
          std::vector<double>(roots, 0)};
}

}  // namespace

Balance balance_densely(const std::vector<Stretch>& stretches,
                        const std::vector<Root>& roots,
                        const std::vector<Closure>& closures,
                        double least_loss) {
  std::vector<std::size_t> shut;
  for (std::size_t i = 0; i < roots.size(); ++i)
    if (roots[i].is_shut) shut.push_back(i);
  const std::size_t joints = closures.size();
  const Eigen::Index size = row(joints + shut.size());
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(size, size);
  Eigen::VectorXd right(size);
  const auto enter = [&](std::size_t column, const std::vector<double>& rise) {
    for (std::size_t i = 0; i < joints; ++i)
      matrix(row(i), row(column)) = rise[index(closures[i].from)] - rise[index(closures[i].to)];
  };

  for (std::size_t j = 0; j < joints; ++j) {
    Balance unit = nothing(joints, stretches.size(), roots.size());
    unit.joint_rises[j] = 1;
    take_through(closures, unit);
    take(stretches, unit);
    for (std::size_t i = 0; i < roots.size(); ++i)
      if (!roots[i].is_shut) unit.source_rises[i] = -roots[i].resistance * unit.asked[i];
    enter(j, rises(stretches, unit.source_rises, unit.taken, 0));
    matrix(row(j), row(j)) -= least_loss;
    for (std::size_t i = 0; i < shut.size(); ++i)
      matrix(row(joints + i), row(j)) = unit.asked[shut[i]];
  }
  for (std::size_t j = 0; j < shut.size(); ++j) {
    Balance unit = nothing(joints, stretches.size(), roots.size());
    unit.source_rises[shut[j]] = 1;
    enter(joints + j, rises(stretches, unit.source_rises, unit.taken, 0));
    matrix(row(joints + j), row(joints + j)) = roots[shut[j]].slope;
    right(row(joints + j)) = -roots[shut[j]].drawn;
  }
  Balance found = nothing(joints, stretches.size(), roots.size());
  std::vector<double> alone(roots.size());
  for (std::size_t i = 0; i < roots.size(); ++i) alone[i] = roots[i].is_shut ? 0 : roots[i].rise;
  const std::vector<double> rise = rises(stretches, alone, found.taken, 1);
  for (std::size_t i = 0; i < joints; ++i)
    right(row(i)) =
        -(closures[i].gap + rise[index(closures[i].from)] - rise[index(closures[i].to)]);

  const Eigen::VectorXd solution = matrix.partialPivLu().solve(right);
  for (std::size_t i = 0; i < joints; ++i) found.joint_rises[i] = solution(row(i));
  for (std::size_t i = 0; i < shut.size(); ++i)
    found.source_rises[shut[i]] = solution(row(joints + i));
  take_through(closures, found);
  take(stretches, found);
  return found;
}

Balance balance_sparsely(const std::vector<Stretch>& stretches,
                         const std::vector<Root>& roots,
                         const std::vector<Closure>& closures,
                         double least_loss) {
  // The unknowns: rises at far ends, flows taken there, flows through joints, rises of sources.
  const std::size_t taken = stretches.size();
  const std::size_t through = 2 * stretches.size();
  const std::size_t source = through + closures.size();
  const std::size_t size = source + roots.size();
  std::vector<Eigen::Triplet<double>> entries;
  Eigen::VectorXd right = Eigen::VectorXd::Zero(row(size));
  const auto add = [&](std::size_t equation, std::size_t unknown, double factor) {
    entries.emplace_back(static_cast<int>(equation), static_cast<int>(unknown), factor);
  };
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    const Stretch& it = stretches[i];
    add(i, i, 1);
    add(i, it.feeder == none ? source + index(it.source) : index(it.feeder), -it.down);
    add(i, taken + i, it.loss);
    right(row(i)) = it.rise;
    add(taken + i, taken + i, 1);
    if (it.feeder != none)
      add(taken + index(it.feeder), taken + i, -it.up);
    else
      add(source + index(it.source),
          taken + i,
          roots[index(it.source)].is_shut ? it.up : roots[index(it.source)].resistance * it.up);
  }
  for (std::size_t i = 0; i < closures.size(); ++i) {
    add(taken + index(closures[i].from), through + i, -1);
    add(taken + index(closures[i].to), through + i, 1);
    add(through + i, index(closures[i].from), 1);
    add(through + i, index(closures[i].to), -1);
    add(through + i, through + i, -least_loss);
    right(row(through + i)) = -closures[i].gap;
  }
  for (std::size_t i = 0; i < roots.size(); ++i) {
    add(source + i, source + i, roots[i].is_shut ? roots[i].slope : 1);
    right(row(source + i)) = roots[i].is_shut ? -roots[i].drawn : roots[i].rise;
  }
  Eigen::SparseMatrix<double> matrix(row(size), row(size));
  matrix.setFromTriplets(entries.begin(), entries.end());
  Eigen::SparseLU<Eigen::SparseMatrix<double>> factors(matrix);
  Eigen::VectorXd solution = Eigen::VectorXd::Constant(row(size), NAN);  // singular to rounding
  if (factors.info() == Eigen::Success) solution = factors.solve(right);

  Balance found = nothing(closures.size(), stretches.size(), roots.size());
  for (std::size_t i = 0; i < closures.size(); ++i)
    found.joint_rises[i] = solution(row(through + i));
  for (std::size_t i = 0; i < roots.size(); ++i)
    if (roots[i].is_shut) found.source_rises[i] = solution(row(source + i));
  take_through(closures, found);
  take(stretches, found);
  return found;
}

Balance balance(const std::vector<Stretch>& stretches,
                const std::vector<Root>& roots,
                const std::vector<Closure>& closures,
                double least_loss) {
  constexpr std::size_t few = 64;  // up to here the dense system is the faster one
  constexpr double more = 1e4;
  constexpr int tries = 3;
  const auto solve = closures.size() <= few ? balance_densely : balance_sparsely;
  Balance found = solve(stretches, roots, closures, least_loss);
  for (int i = 0; i < tries && !is_finite(found); ++i)
    found = solve(stretches, roots, closures, least_loss *= more);
  return found;
}

}  // namespace hydro
