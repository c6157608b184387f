// What a cold solve of lines that join costs, beside general solvers in the same run.
//
// Case      The main with 100 laterals of 100 outlets of solve_benchmark.cpp, and 0, 1, 4, 16 or 64
//           pipes across, each from the far end of a lateral to that of the next.
// Peers     Eigen's sparse LDLT and KINSOL with KLU, both on flows and heads. What is common to all
//           stands in looped_peers.hpp; how each was made strong, in its own file.
// Ours      Kernel: from the tree to the tolerance; its memory is made inside the time. Whole:
//           solve(), from the layout to the solution, for what a user waits.
// Proof     After the timing, what the last solve left is put into the equations of
//           looped_peers.hpp, in long doubles: mass by the largest flow, energy by the supply's
//           head; and all flows and heads are compared with ours.
// Table     Medians. A ratio is only as good as the machine is quiet: compare within one run.
//
//   loop_benchmark [--benchmark_repetitions=15]

#include "hydro/hydro.hpp"
#include "hydro/solver/settle.hpp"
#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "cases.hpp"
#include "comparison_table.hpp"
#include "law_pass.hpp"
#include "looped_peers.hpp"
#include "told.hpp"
#include <benchmark/benchmark.h>

namespace {

using namespace hydro;
using peers::Looped;
using peers::Peer;
using peers::Profile;
using peers::Told;
using peers::told;

constexpr double same_answer = 1e-10;  // of the largest flow and of the supply's head: the gaps of
                                       // 1e-12 grow on their way along 100 lengths of pipe

class Ours final : public Peer {
 public:
  Ours(Tree tree, Told where) : tree_(std::move(tree)), where_(std::move(where)) {}

  int solve() override {
    settled_.reset();  // so that its memory is used again, as by one who keeps no solution
    settled_.emplace(settle(tree_, peers::most_steps));
    return settled_->met ? settled_->residuals.steps : -1;
  }

  Profile profile() const override {
    Profile result{.flow = std::vector<double>(where_.problem.pipes.size()),
                   .head = std::vector<double>(where_.problem.places())};
    for (std::size_t i = 0; i < where_.place_of.size(); ++i) {
      const State& state = settled_->sweeps.states()[i];
      result.flow[where_.pipe_of[i]] = state.flow;
      result.head[where_.place_of[i]] = state.head;
    }
    return result;
  }

 private:
  Tree tree_;
  Told where_;
  std::optional<Settled> settled_;
};

double largest(const std::vector<double>& values) {
  double result = 0;
  for (const double it : values) result = std::max(result, std::abs(it));
  return result;
}

double farthest(const std::vector<double>& values, const std::vector<double>& others) {
  double result = 0;
  for (std::size_t i = 0; i < values.size(); ++i)
    result = std::max(result, std::abs(values[i] - others[i]));
  return result;
}

struct Gaps {
  double mass;    ///< largest, by the largest flow
  double energy;  ///< largest, by the supply's head
};

Gaps gaps_of(const Looped& problem, const Profile& profile) {
  using Long = long double;
  std::vector<Long> mass(problem.places());
  Long energy = 0;
  for (std::size_t p = 0; p < problem.pipes.size(); ++p) {
    const peers::LoopedPipe& pipe = problem.pipes[p];
    const Long flow = profile.flow[p];
    mass[static_cast<std::size_t>(pipe.to)] += flow;
    Long head_before = problem.supply_head;
    if (pipe.from != peers::the_supply) {
      mass[static_cast<std::size_t>(pipe.from)] -= flow;
      head_before = profile.head[static_cast<std::size_t>(pipe.from)];
    }
    const Long lost = pipe.loss_coefficient * flow * std::pow(std::abs(flow), Long{0.852});
    const Long gap = head_before - profile.head[static_cast<std::size_t>(pipe.to)] - lost;
    energy = std::max(energy, std::abs(gap));
  }
  Long worst = 0;
  for (std::size_t i = 0; i < problem.places(); ++i) {
    const Long drawn = problem.by_square_roots[i] * std::sqrt(Long{profile.head[i]});
    worst = std::max(worst, std::abs(mass[i] - drawn));
  }
  return {static_cast<double>(worst / largest(profile.flow)),
          static_cast<double>(energy / problem.supply_head)};
}

/// @param answer to be compared with
void cold_solve(benchmark::State& state, Peer& peer, const Looped& problem, const Profile& answer) {
  int steps = 0;
  for (auto _ : state) {
    steps = peer.solve();
    benchmark::ClobberMemory();
  }
  const Profile found = peer.profile();
  const Gaps gaps = gaps_of(problem, found);
  const bool same = farthest(found.flow, answer.flow) <= same_answer * largest(answer.flow) &&
                    farthest(found.head, answer.head) <= same_answer * problem.supply_head;
  state.counters["steps"] = steps;
  state.counters["mass"] = gaps.mass;
  state.counters["energy"] = gaps.energy;
  state.counters["solved"] =
      steps >= 0 && gaps.mass <= peers::tolerance && gaps.energy <= peers::tolerance && same;
}

void whole(benchmark::State& state, const Layout& layout) {
  Residuals residuals;
  for (auto _ : state) {
    const Solution solution = solve(layout);
    residuals = solution.residuals();
  }
  state.counters["steps"] = residuals.steps;
  state.counters["mass"] = residuals.mass;
  state.counters["energy"] = residuals.energy;
  state.counters["solved"] = residuals.are_met();
}

}  // namespace

int main(int argc, char** argv) {
  ComparisonTable table;
  std::vector<std::unique_ptr<Peer>> solvers;
  benchmark::RegisterBenchmark("law pass", law_pass)->MinTime(0.1);
  for (const int across : {0, 1, 4, 16, 64}) {
    const Layout layout = cases::tree_layout(false, across);
    const Tree tree = make_tree(layout, properties(layout.water()));
    const Told where = told(tree);
    const Looped& problem = where.problem;
    const std::string suffix = ", " + std::to_string(across);
    const auto outlets = static_cast<double>(layout.outlet_count());
    auto ours = std::make_unique<Ours>(tree, where);
    if (ours->solve() < 0) throw std::logic_error("not solved by ours");
    const Profile answer = ours->profile();
    const auto add = [&](const std::string& name, std::unique_ptr<Peer> solver) {
      solvers.push_back(std::move(solver));
      Peer& peer = *solvers.back();
      benchmark::RegisterBenchmark((name + suffix).c_str(),
                                   [&peer, problem, answer](benchmark::State& state) {
                                     cold_solve(state, peer, problem, answer);
                                   })
          ->MinTime(0.1);
      table.cases.push_back({name + suffix, "kernel" + suffix, outlets});
    };
    add("kernel", std::move(ours));
    benchmark::RegisterBenchmark(("whole" + suffix).c_str(), whole, layout)->MinTime(0.1);
    table.cases.push_back({"whole" + suffix, "kernel" + suffix, outlets});
    for (const auto& [order_name, order] :
         {std::pair("leaf first", peers::leaf_first(problem)),
          std::pair("least degree", peers::minimum_degree(problem))}) {
      add(std::string("LDLT ") + order_name, peers::make_ldlt(problem, order));
      add(std::string("KINSOL ") + order_name, peers::make_kinsol(problem, order));
    }
  }
  return run_and_compare(argc, argv, table);
}
