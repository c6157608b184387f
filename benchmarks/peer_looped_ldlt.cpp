// Peer: Newton's method with a sparse LDLT factorisation (Eigen), for lines that join.
//
// A step solves the symmetric system of flows and heads
//
//   [ -h'  A^T ] [ dQ ]   [ -energy gaps            ]
//   [  A    g  ] [ dH ] = [  mass gaps - g outlet gaps ]
//
// with A the incidence matrix, -1 where a pipe arrives and +1 where it begins, and g = q / 2 P the
// slope of an outlet. It is quasi-definite (-h' < 0, g >= 0), so that LDLT needs no pivoting.
//
// How it was made strong
//   - Flow is an unknown, not recovered from differences of heads.
//   - Outlets carry their own flow and head, always on their curve, and are moved as ours are: by
//     head where it rises, by flow where it falls and near the end. From heads alone it takes more
//     steps.
//   - The order is found once and the unknowns are numbered by it, so that Eigen permutes nothing.
//   - The upper triangle is stored: with the natural order Eigen factorises it in place, uncopied.
//   - Analysed once. A step only writes the diagonal, for the rest is +1 and -1.
//   - Gaps and slopes in one pass of the laws, straight into the matrix and the right-hand side;
//     unknowns and corrections share its numbering.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include "looped_peers.hpp"
#include <Eigen/Core>
#include <Eigen/OrderingMethods>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

namespace peers {
namespace {

using Matrix = Eigen::SparseMatrix<double>;
using Triplet = Eigen::Triplet<double>;
using Index = Eigen::Index;

constexpr double near_the_end = 1e-6;  // of the supply's head: steps this small are taken by flow

/// Entries of the upper triangle, with stand-ins on the diagonal.
std::vector<Triplet> upper_triangle(const Looped& problem, const Order& order) {
  std::vector<Triplet> entries;
  const auto add = [&](int row, int column, double value) {
    entries.emplace_back(std::min(row, column), std::max(row, column), value);
  };
  for (std::size_t p = 0; p < problem.pipes.size(); ++p) {
    const LoopedPipe& pipe = problem.pipes[p];
    add(order.of_flows[p], order.of_flows[p], -1);
    add(order.of_flows[p], order.of_heads[static_cast<std::size_t>(pipe.to)], -1);
    if (pipe.from != the_supply)
      add(order.of_flows[p], order.of_heads[static_cast<std::size_t>(pipe.from)], 1);
  }
  for (const int head : order.of_heads) add(head, head, 1);
  return entries;
}

class Ldlt final : public WarmPeer {
 public:
  Ldlt(const Looped& problem, Order order)
      : problem_(problem),
        order_(std::move(order)),
        size_(static_cast<Index>(problem.pipes.size() + problem.places())),
        start_{.flow = problem.start_flows(),
               .head = std::vector<double>(problem.places(), problem.start_head())},
        coefficients_(problem_.by_square_roots),
        matrix_(size_, size_),
        unknowns_(size_),
        gaps_(size_),
        rises_(size_),
        outlets_(problem.places()) {
    const std::vector<Triplet> entries = upper_triangle(problem_, order_);
    matrix_.setFromTriplets(entries.begin(), entries.end());
    matrix_.makeCompressed();
    factors_.analyzePattern(matrix_);
  }

  int solve() override {
    start();
    for (int steps = 0; steps <= most_steps; ++steps) {
      if (linearise()) return steps;
      factors_.factorize(matrix_);
      if (factors_.info() != Eigen::Success) return -1;
      rises_ = factors_.solve(gaps_);
      correct();
    }
    return -1;
  }

  void take(std::span<const double> outlet_coefficients) override {
    coefficients_ = outlet_coefficients;
  }

  void begin_at(const Profile& start) override { start_ = start; }

  Profile profile() const override {
    Profile result;
    for (const int i : order_.of_flows) result.flow.push_back(unknowns_[i]);
    for (const int i : order_.of_heads) result.head.push_back(unknowns_[i]);
    return result;
  }

 private:
  struct Outlet {
    double flow = 0;
    double head = 0;
    double gap = 0;
    double slope = 0;
  };

  void start() {
    for (std::size_t p = 0; p < problem_.pipes.size(); ++p)
      unknowns_[order_.of_flows[p]] = start_.flow[p];
    for (std::size_t i = 0; i < outlets_.size(); ++i) {
      unknowns_[order_.of_heads[i]] = start_.head[i];
      outlets_[i].flow = coefficients_[i] * std::sqrt(start_.head[i]);
      outlets_[i].head = start_.head[i];
    }
  }

  double* diagonal(int unknown) {  // the last entry of a column of the upper triangle
    return matrix_.valuePtr() + matrix_.outerIndexPtr()[unknown + 1] - 1;
  }

  /// Leaves gaps and slopes. Returns whether it is solved.
  bool linearise() {
    const double* const x = unknowns_.data();
    double* const gaps = gaps_.data();
    double worst_mass = 0;
    double worst_head = 0;
    double flow_scale = 0;
    for (const int head : order_.of_heads) gaps[head] = 0;
    for (std::size_t p = 0; p < problem_.pipes.size(); ++p) {
      const LoopedPipe& pipe = problem_.pipes[p];
      const int unknown = order_.of_flows[p];
      const int to = order_.of_heads[static_cast<std::size_t>(pipe.to)];
      const double flow = x[unknown];
      const Law lost = loss(pipe, flow);
      double head_before = problem_.supply_head;
      gaps[to] += flow;
      if (pipe.from != the_supply) {
        const int from = order_.of_heads[static_cast<std::size_t>(pipe.from)];
        gaps[from] -= flow;
        head_before = x[from];
      }
      const double energy = head_before - x[to] - lost.value;
      *diagonal(unknown) = -std::max(lost.slope, least_slope_share * pipe.loss_coefficient);
      gaps[unknown] = -energy;
      worst_head = std::max(worst_head, std::abs(energy));
      flow_scale = std::max(flow_scale, std::abs(flow));
    }
    for (std::size_t i = 0; i < outlets_.size(); ++i) {
      Outlet& outlet = outlets_[i];
      const int unknown = order_.of_heads[i];
      gaps[unknown] -= outlet.flow;
      worst_mass = std::max(worst_mass, std::abs(gaps[unknown]));
      if (outlet.flow > 0) {
        outlet.gap = x[unknown] - outlet.head;
        outlet.slope = outlet.flow / (2 * outlet.head);
        worst_head = std::max(worst_head, std::abs(outlet.gap));
        gaps[unknown] -= outlet.slope * outlet.gap;
      }
      *diagonal(unknown) = outlet.slope;
    }
    return worst_mass <= tolerance * flow_scale && worst_head <= tolerance * problem_.supply_head;
  }

  void correct() {
    unknowns_ += rises_;
    for (std::size_t i = 0; i < outlets_.size(); ++i) {
      Outlet& outlet = outlets_[i];
      if (outlet.flow <= 0) continue;
      const double coefficient = coefficients_[i];
      const double pressure_rise = rises_[order_.of_heads[i]] + outlet.gap;
      if (pressure_rise > near_the_end * problem_.supply_head) {
        outlet.head = std::min(outlet.head + pressure_rise, problem_.supply_head);
        outlet.flow = coefficient * std::sqrt(outlet.head);
      } else {
        outlet.flow += outlet.slope * pressure_rise;
        const double root = outlet.flow / coefficient;
        outlet.head = root * root;
      }
    }
  }

  Looped problem_;
  Order order_;
  Index size_;
  Profile start_;
  std::span<const double> coefficients_;
  Matrix matrix_;
  Eigen::VectorXd unknowns_;
  Eigen::VectorXd gaps_;
  Eigen::VectorXd rises_;
  std::vector<Outlet> outlets_;
  Eigen::SimplicialLDLT<Matrix, Eigen::Upper, Eigen::NaturalOrdering<int>> factors_;
};

/// The same order, but nothing comes first whose pivot would be nothing: the flow of a pipe across,
/// which may be at rest, follows the first of the heads at its ends; and the head at a place
/// without an outlet the first of the flows there.
Order with_pivots(const Looped& problem, const Order& order) {
  const auto head = [&](int place) { return order.of_heads[static_cast<std::size_t>(place)]; };
  std::vector<int> first_flow(problem.places(), std::numeric_limits<int>::max());
  for (std::size_t p = 0; p < problem.places(); ++p) {
    for (const int place : {problem.pipes[p].from, problem.pipes[p].to}) {
      if (place == the_supply) continue;
      int& first = first_flow[static_cast<std::size_t>(place)];
      first = std::min(first, order.of_flows[p]);
    }
  }
  Order result = order;
  std::vector<std::pair<int, int*>> wanted;  // twice the rank, so that there is room in between
  for (std::size_t i = 0; i < problem.places(); ++i) {
    int& it = result.of_heads[i];
    const bool is_bare = !(problem.by_square_roots[i] > 0);
    wanted.emplace_back(is_bare ? std::max(2 * it, 2 * first_flow[i] + 1) : 2 * it, &it);
  }
  for (std::size_t p = 0; p < problem.pipes.size(); ++p) {
    int& it = result.of_flows[p];
    const LoopedPipe& pipe = problem.pipes[p];
    const bool is_across = p >= problem.places();
    const int after = is_across ? 2 * std::min(head(pipe.from), head(pipe.to)) + 1 : 0;
    wanted.emplace_back(std::max(2 * it, after), &it);
  }
  std::stable_sort(wanted.begin(), wanted.end(), [](const auto& one, const auto& other) {
    return one.first < other.first;
  });
  int next = 0;
  for (const auto& [rank, unknown] : wanted) *unknown = next++;
  return result;
}

}  // namespace

Order leaf_first(const Looped& problem) {
  Order order{std::vector<int>(problem.pipes.size()), std::vector<int>(problem.places())};
  int next = 0;
  for (std::size_t i = problem.places(); i-- > 0;) {
    order.of_heads[i] = next++;
    order.of_flows[i] = next++;
  }
  for (std::size_t p = problem.places(); p < problem.pipes.size(); ++p) order.of_flows[p] = next++;
  return order;
}

Order minimum_degree(const Looped& problem) {
  Order order = leaf_first(problem);
  const std::vector<Triplet> entries = upper_triangle(problem, order);
  const auto size = static_cast<Index>(problem.pipes.size() + problem.places());
  Matrix matrix(size, size);
  matrix.setFromTriplets(entries.begin(), entries.end());
  Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> permutation;
  Eigen::AMDOrdering<int>()(matrix.selfadjointView<Eigen::Upper>(), permutation);
  std::vector<int> rank(static_cast<std::size_t>(size));  // Eigen gives what comes at each rank
  for (int i = 0; i < size; ++i) rank[static_cast<std::size_t>(permutation.indices()[i])] = i;
  for (int& it : order.of_heads) it = rank[static_cast<std::size_t>(it)];
  for (int& it : order.of_flows) it = rank[static_cast<std::size_t>(it)];
  return with_pivots(problem, order);
}

std::unique_ptr<WarmPeer> make_ldlt(const Looped& problem, const Order& order) {
  return std::make_unique<Ldlt>(problem, order);
}

}  // namespace peers
