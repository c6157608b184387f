// What a cold solve of one lateral costs, beside general solvers in the same run.
//
// Case      The base case of solve_benchmark.cpp: Hazen-Williams, about 20 % of the supply's head
//           lost, outlets of exponent 0.5, flat ground, no risers.
// Peers     Eigen's sparse LDLT, KINSOL's banded Newton, GSL's dense hybrid method (to n = 100).
//           What is common to all stands in peers.hpp; how each was made strong, in its own file.
// Ours      The sweeps, from the tree to the tolerance; their memory is made inside the time.
// Proof     After the timing, the profile that the last solve left is put into the equations of
//           peers.hpp, in long doubles: mass by the inflow, energy by the supply's head.
// Table     Medians. A ratio is only as good as the machine is quiet: compare within one run.
//
//   peer_benchmark [--benchmark_repetitions=15]

#include "hydro/hydro.hpp"
#include "hydro/solver/sweeps.hpp"
#include "hydro/solver/tree.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "cases.hpp"
#include "comparison_table.hpp"
#include "law_pass.hpp"
#include "peers.hpp"
#include "told.hpp"
#include <benchmark/benchmark.h>

namespace {

using namespace hydro;
using peers::Lateral;
using peers::lateral_of;
using peers::lateral_tree;
using peers::Peer;
using peers::Profile;

class Ours final : public Peer {
 public:
  explicit Ours(Tree tree) : tree_(std::move(tree)), sweeps_(tree_, ramp()) {}

  int solve() override {
    sweeps_ = Sweeps(tree_, ramp());
    Imbalance left = sweeps_.gather();
    int steps = 0;
    for (; !left.within(peers::tolerance) && steps < peers::most_steps; ++steps) {
      sweeps_.correct();
      left = sweeps_.gather();
    }
    return left.within(peers::tolerance) ? steps : -1;
  }

  Profile profile() const override {
    Profile result;
    for (const State& state : sweeps_.states()) {
      result.flow.push_back(state.flow);
      result.head.push_back(state.head);
    }
    return result;
  }

 private:
  double ramp() const { return 1e-13 * tree_.head_span; }

  Tree tree_;
  Sweeps sweeps_;
};

struct Gaps {
  double mass;    ///< largest, by the inflow
  double energy;  ///< largest, by the supply's head
};

Gaps gaps_of(const Lateral& line, const Profile& profile) {
  using Long = long double;
  Long mass = 0;
  Long energy = 0;
  for (std::size_t i = 0; i < line.count; ++i) {
    const Long flow = profile.flow[i];
    const Long head = profile.head[i];
    const Long flow_beyond = i + 1 < line.count ? profile.flow[i + 1] : 0;
    const Long head_before = i > 0 ? profile.head[i - 1] : line.supply_head;
    const Long lost = line.loss_coefficient * std::pow(flow, Long{1.852});
    mass = std::max(mass, std::abs(flow - flow_beyond - line.outlet_coefficient * std::sqrt(head)));
    energy = std::max(energy, std::abs(head_before - head - lost));
  }
  return {static_cast<double>(mass / profile.flow[0]),
          static_cast<double>(energy / line.supply_head)};
}

void cold_solve(benchmark::State& state, Peer& peer, const Lateral& line) {
  int steps = 0;
  for (auto _ : state) {
    steps = peer.solve();
    benchmark::ClobberMemory();
  }
  const Gaps gaps = gaps_of(line, peer.profile());
  const bool solved =
      steps >= 0 && gaps.mass <= peers::tolerance && gaps.energy <= peers::tolerance;
  state.counters["steps"] = steps;
  state.counters["mass"] = gaps.mass;
  state.counters["energy"] = gaps.energy;
  state.counters["solved"] = solved;
}

}  // namespace

int main(int argc, char** argv) {
  ComparisonTable table;
  std::vector<std::unique_ptr<Peer>> solvers;
  benchmark::RegisterBenchmark("law pass", law_pass)->MinTime(0.1);
  for (const int count : {20, 100, 1000, 10000}) {
    const Tree tree = lateral_tree(count);
    const Lateral line = lateral_of(tree);
    const std::string suffix = ", " + std::to_string(count);
    const auto add = [&](const std::string& name, std::unique_ptr<Peer> solver) {
      solvers.push_back(std::move(solver));
      Peer& peer = *solvers.back();
      benchmark::RegisterBenchmark((name + suffix).c_str(), [&peer, line](benchmark::State& state) {
        cold_solve(state, peer, line);
      })->MinTime(0.1);
      table.cases.push_back({name + suffix, "ours" + suffix, static_cast<double>(count)});
    };
    add("ours", std::make_unique<Ours>(tree));
    add("LDLT", peers::make_ldlt(line));
    add("KINSOL", peers::make_kinsol(line));
    if (count <= 100) add("GSL", peers::make_gsl(line));
  }
  return run_and_compare(argc, argv, table);
}
