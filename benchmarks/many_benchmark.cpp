// What many scenarios cost in vector lanes, beside one at a time, by ours and by general solvers in
// the same run.
//
// Case      Monte Carlo: the laterals of peer_benchmark.cpp, and one whose risers have losses; what
//           each outlet lets out varies by 5 %. Breaks: the tree of loop_benchmark.cpp without pipes
//           across; each of its outlets in turn lets out 25 times as much. Counts: all of
//           break_every_outlet(), of each break only what it does;
//           the same with heads off, on risers that have losses.
// Peers     Eigen's sparse LDLT and KINSOL's banded Newton, analysed once, each scenario from the
//           answer without variation or break, as ours. Those of the tree and our scalar solver are
//           asked for some breaks only, evenly spread: a break is an iteration of theirs.
// Ours      Lanes as wide as the machine has them, and as wide as narrower machines do; warm: the
//           scalar sweeps from the same answer; cold: settle(), from the tree. The random numbers,
//           where they are not asked for, are drawn before the time.
// Proof     Everybody's own last evaluation of the laws, inside the time, to 1e-12; and after it the
//           heads of one scenario, by the supply's head, beside those of settle() for its own tree.
// Table     Medians on one core. A ratio is only as good as the machine is quiet: compare within one
//           run.
//
//   many_benchmark [--benchmark_repetitions=15]

#include "hydro/hydro.hpp"
#include "hydro/solver/lanes.hpp"
#include "hydro/solver/lanes_plan.hpp"
#include "hydro/solver/settle.hpp"
#include "hydro/solver/sweeps.hpp"
#include "hydro/solver/tree.hpp"
#include "hydro/what_ifs/break_every_outlet.hpp"
#include "hydro/what_ifs/normal_variates.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <memory>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "cases.hpp"
#include "comparison_table.hpp"
#include "looped_peers.hpp"
#include "peers.hpp"
#include "told.hpp"
#include <benchmark/benchmark.h>
#include <hwy/targets.h>

namespace {

using namespace hydro;
using peers::Profile;
using peers::WarmPeer;

constexpr int newton_steps = 60;
constexpr std::uint64_t seed = 7;

/// With a mouth for each place, so that each can be changed by itself.
Tree with_own_mouths(Tree tree) {
  std::vector<Mouth> mouths;
  for (Place& place : tree.places) {
    if (place.mouth == none) continue;
    mouths.push_back(tree.mouths[index(place.mouth)]);
    place.mouth = static_cast<std::int32_t>(mouths.size() - 1);
  }
  tree.mouths = std::move(mouths);
  return tree;
}

double coefficient_at(const Tree& tree, std::size_t place) {
  const std::int32_t which = tree.places[place].mouth;
  return which == none ? 0 : tree.mouths[index(which)].law.coefficient;
}

void set_coefficient(Tree& tree, std::size_t place, double value) {
  OutletLaw& law = tree.mouths[index(tree.places[place].mouth)].law;
  law.coefficient = value;
  law.inverse_coefficient = 1 / value;
}

/// One after another, each a lane of a block.
struct Scenarios {
  std::vector<double> coefficients;  ///< of the tree's outlets by square root, by place
  std::vector<Differences> blocks;

  std::size_t count() const { return blocks.size() * lanes; }

  /// Tells all that differs in one of them.
  template <class Set>
  void put(std::size_t scenario, const Set& set) const {
    const Differences& block = blocks[scenario / lanes];
    const std::size_t lane = scenario % lanes;
    for (std::size_t i = 0; i < block.outlet_factor.size(); ++i)
      set(i, coefficients[i] * block.outlet_factor[i][lane]);
    for (const Differences::Replaced& it : block.replaced)
      if (it.lane == lane) set(it.place, it.mouth->law.coefficient);
  }
  /// Mends what is broken in one of them.
  template <class Set>
  void mend(std::size_t scenario, const Set& set) const {
    for (const Differences::Replaced& it : blocks[scenario / lanes].replaced)
      if (it.lane == scenario % lanes) set(it.place, coefficients[it.place]);
  }
};

Scenarios scenarios_of(const Tree& tree) {
  Scenarios result;
  for (std::size_t i = 0; i < tree.places.size(); ++i)
    result.coefficients.push_back(coefficient_at(tree, i));
  return result;
}

/// Of one outlet.
void draw_factors(std::size_t outlet, std::size_t first, std::span<double> factors) {
  normal_variates(seed,
                  {static_cast<std::uint32_t>(outlet), 0},
                  first,
                  {.mean = 1, .deviation = 0.05},
                  factors);
}

Scenarios varied(const Tree& tree) {
  constexpr std::size_t most_numbers = 1'000'000;
  Scenarios result = scenarios_of(tree);
  result.blocks.resize(std::min<std::size_t>(64, most_numbers / lanes / tree.places.size()));
  for (std::size_t b = 0; b < result.blocks.size(); ++b) {
    result.blocks[b].outlet_factor.resize(tree.places.size());
    for (std::size_t i = 0; i < tree.places.size(); ++i)
      draw_factors(i, b * lanes, result.blocks[b].outlet_factor[i].at);
  }
  return result;
}

constexpr double break_factor = 25;

Scenarios broken(const Tree& tree) {
  Scenarios result = scenarios_of(tree);
  std::size_t count = 0;
  for (std::size_t i = 0; i < tree.places.size(); ++i) {
    if (tree.places[i].mouth == none) continue;
    Mouth mouth = tree.mouths[index(tree.places[i].mouth)];
    mouth.law.coefficient *= break_factor;
    mouth.law.inverse_coefficient /= break_factor;
    if (count % lanes == 0) result.blocks.emplace_back();
    result.blocks.back().replaced.push_back({i, count % lanes, mouth});
    ++count;
  }
  if (count % lanes != 0) result.blocks.pop_back();
  return result;
}

/// One way to solve scenarios.
class Way {
 public:
  virtual ~Way() = default;
  /// So many are solved at once, from this one on. Returns the steps taken, or -1.
  virtual int solve(std::size_t scenario) = 0;
  virtual std::size_t at_once() const { return 1; }
  /// Of the first one that was solved [m].
  virtual double head(std::size_t place) const = 0;
  virtual void prepare() {}
};

/// The targets for vectors of so many doubles, of those that this machine has.
void use_width(std::size_t width) {
  constexpr std::int64_t no_wider_than_2 = HWY_SSSE3 | HWY_SSE4;
  hwy::SetSupportedTargetsForTest(0);
  const std::int64_t there = hwy::SupportedTargets();
  hwy::SetSupportedTargetsForTest(width == 2   ? there & no_wider_than_2
                                  : width == 4 ? there & (HWY_AVX2 | no_wider_than_2)
                                               : there);
  hwy::GetChosenTarget().DeInit();
  if (Lanes::width() != width) throw std::logic_error("not that wide");
}

/// Of this machine, whatever is used at the moment.
std::size_t widest() {
  static const std::size_t at_first = Lanes::width();
  return at_first;
}

std::vector<std::size_t> widths() {
  std::vector<std::size_t> result;
  for (std::size_t width = widest(); width >= 2; width /= 2) result.push_back(width);
  return result;
}

class InLanes final : public Way {
 public:
  InLanes(const Tree& tree, const Sweeps& start, const Scenarios& scenarios, std::size_t width)
      : lanes_(tree, start), scenarios_(scenarios), width_(width) {}
  void prepare() override { use_width(width_); }
  std::size_t at_once() const override { return lanes; }
  int solve(std::size_t scenario) override {
    lanes_.solve(scenarios_.blocks[scenario / lanes], lanes, block_);
    return block_.met == all_of_them && block_.alone == 0 ? block_.passes : -1;
  }
  double head(std::size_t place) const override { return block_.head[place][0]; }

 private:
  static constexpr std::uint32_t all_of_them = ~std::uint32_t{0};
  Lanes lanes_;
  const Scenarios& scenarios_;
  std::size_t width_;
  LaneBlock block_;
};

/// What a scenario makes of a tree, which is mended before the next.
class OwnTree {
 public:
  OwnTree(const Tree& tree, const Scenarios& scenarios) : tree_(tree), scenarios_(scenarios) {}
  const Tree& of(std::size_t scenario) {
    const auto set = [&](std::size_t i, double value) { set_coefficient(tree_, i, value); };
    scenarios_.mend(last_, set);
    scenarios_.put(last_ = scenario, set);
    return tree_;
  }
  const Tree& tree() const { return tree_; }

 private:
  Tree tree_;
  const Scenarios& scenarios_;
  std::size_t last_ = 0;
};

class Cold final : public Way {
 public:
  Cold(const Tree& tree, const Scenarios& scenarios) : own_(tree, scenarios) {}
  int solve(std::size_t scenario) override {
    const Tree& tree = own_.of(scenario);
    settled_.reset();  // so that its memory is used again
    settled_.emplace(settle(tree, newton_steps));
    return settled_->met ? settled_->residuals.steps : -1;
  }
  double head(std::size_t place) const override { return settled_->sweeps.states()[place].head; }

 private:
  OwnTree own_;
  std::optional<Settled> settled_;
};

class Warm final : public Way {
 public:
  Warm(const Tree& tree, const Scenarios& scenarios)
      : own_(tree, scenarios), start_(own_.tree(), ramp()), sweeps_(start_) {
    Imbalance left = start_.gather();
    for (int step = 0; !left.within(Residuals::tolerance) && step < newton_steps; ++step) {
      start_.correct();
      left = start_.gather();
    }
    // So that, with the true ramp, all outlets are put on their new curves.
    start_.set_ramp(far_above);
  }
  int solve(std::size_t scenario) override {
    own_.of(scenario);
    sweeps_ = start_;
    sweeps_.set_ramp(ramp());
    Imbalance left = sweeps_.gather();
    int steps = 0;
    for (; !left.within(Residuals::tolerance) && steps < newton_steps; ++steps) {
      sweeps_.correct();
      left = sweeps_.gather();
    }
    return left.within(Residuals::tolerance) ? steps : -1;
  }
  double head(std::size_t place) const override { return sweeps_.states()[place].head; }

 private:
  static constexpr double far_above = 1e6;  // [m]
  double ramp() const { return 1e-13 * own_.tree().head_span; }
  OwnTree own_;
  Sweeps start_;
  Sweeps sweeps_;
};

class ByPeer final : public Way {
 public:
  /// @param place_of by place of the tree: the peer's
  ByPeer(std::unique_ptr<WarmPeer> peer,
         const Scenarios& scenarios,
         std::vector<std::size_t> place_of)
      : peer_(std::move(peer)),
        scenarios_(scenarios),
        place_of_(std::move(place_of)),
        coefficients_(place_of_.size()) {
    for (std::size_t i = 0; i < place_of_.size(); ++i)
      coefficients_[place_of_[i]] = scenarios.coefficients[i];
    peer_->take(coefficients_);
    if (peer_->solve() < 0) throw std::logic_error("no start for the peer");
    peer_->begin_at(peer_->profile());
  }
  int solve(std::size_t scenario) override {
    const auto set = [&](std::size_t i, double value) { coefficients_[place_of_[i]] = value; };
    scenarios_.mend(last_, set);
    scenarios_.put(last_ = scenario, set);
    return peer_->solve();
  }
  double head(std::size_t place) const override { return peer_->profile().head[place_of_[place]]; }

 private:
  std::unique_ptr<WarmPeer> peer_;
  const Scenarios& scenarios_;
  std::vector<std::size_t> place_of_;
  std::vector<double> coefficients_;
  std::size_t last_ = 0;
};

/// Largest difference of heads from those of settle(), by the supply's head.
double unlike(const Way& way, const Tree& own) {
  Settled reached = settle(own, newton_steps);
  if (!reached.met) throw std::logic_error("not settled");
  Sweeps& sweeps = reached.sweeps;
  for (int more = 0; more < 2; ++more) {
    sweeps.correct();
    sweeps.gather();
  }
  double result = 0;
  for (std::size_t i = 0; i < own.places.size(); ++i)
    result = std::max(result, std::abs(way.head(i) - sweeps.states()[i].head));
  return result / own.head_span;
}

void solve_many(benchmark::State& state, Way& way, const Tree& tree, const Scenarios& scenarios) {
  // One after another they would be too much alike.
  const std::size_t stride = way.at_once() * 37;
  way.prepare();
  std::size_t scenario = 0;
  int most_steps = 0;
  bool solved = true;
  double steps = 0, times = 0;
  for (auto _ : state) {
    scenario = (scenario + stride) % scenarios.count();
    const int taken = way.solve(scenario);
    solved = solved && taken >= 0;
    most_steps = std::max(most_steps, taken);
    steps += taken;
    ++times;
  }
  const double difference = unlike(way, OwnTree(tree, scenarios).of(scenario));
  state.counters["steps"] = steps / times;
  state.counters["unlike"] = difference;
  // Of the supply's head: the gaps of 1e-12 add up from place to place.
  const double same_answer = peers::tolerance * static_cast<double>(tree.places.size());
  state.counters["solved"] = solved && difference <= std::min(same_answer, 1e-9);
}

class ManyTable final : public ComparisonTable {
 public:
  struct Row {
    std::string name;
    std::string group;
    double scenarios;  ///< of an iteration
    double outlets;
  };
  std::vector<Row> rows;
  std::vector<std::string> columns;  ///< what in each group the others are compared with

  void Finalize() override {
    std::printf("\n%-34s %12s %10s %6s %9s", "one scenario", "us", "ns/outlet", "steps", "unlike");
    for (const std::string& it : columns) std::printf(" %14s", ("to " + it).c_str());
    std::printf("\n");
    std::string group;
    for (const Row& row : rows) {
      const std::string name = row.group + ", " + row.name;
      if (!was_run(name)) continue;
      if (row.group != group) std::printf("\n");
      group = row.group;
      const double nanoseconds = median(name) / row.scenarios;
      std::printf("%-34s %12.3f %10.2f %6.1f %9.1e",
                  name.c_str(),
                  nanoseconds / 1000,
                  nanoseconds / row.outlets,
                  counter(name, "steps"),
                  counter(name, "unlike"));
      for (const std::string& it : columns)
        std::printf(" %14.2f", nanoseconds / (median(group + ", " + it) / lanes));
      std::printf("%s\n", failed(name) ? "  NOT SOLVED" : "");
    }
  }
};

struct Benchmarks {
  ManyTable table;
  std::vector<std::unique_ptr<Way>> ways;

  void add(const std::string& group,
           const std::string& name,
           std::unique_ptr<Way> way,
           const Tree& tree,
           const Scenarios& scenarios) {
    const auto outlets =
        std::ranges::count_if(scenarios.coefficients, [](double it) { return it > 0; });
    table.rows.push_back(
        {name, group, static_cast<double>(way->at_once()), static_cast<double>(outlets)});
    ways.push_back(std::move(way));
    benchmark::RegisterBenchmark((group + ", " + name).c_str(),
                                 [&way = *ways.back(), &tree, &scenarios](benchmark::State& state) {
                                   solve_many(state, way, tree, scenarios);
                                 })
        ->MinTime(0.05);
  }
  /// @param tree with own mouths
  void add_ours(const std::string& group, const Tree& tree, const Scenarios& scenarios) {
    const Settled settled = settle(tree, newton_steps);
    for (std::size_t i = 0; i < table.columns.size(); ++i)
      add(group,
          table.columns[i],
          std::make_unique<InLanes>(tree, settled.sweeps, scenarios, widths()[i]),
          tree,
          scenarios);
    add(group, "warm", std::make_unique<Warm>(tree, scenarios), tree, scenarios);
    add(group, "cold", std::make_unique<Cold>(tree, scenarios), tree, scenarios);
  }
};

/// As many scenarios as chances() draws at once.
constexpr std::size_t drawn_at_once = 4 * lanes;

/// All the random numbers that they take.
void draw(benchmark::State& state, std::size_t outlets) {
  use_width(widest());
  std::vector<double> factors(drawn_at_once * outlets);
  std::size_t first = 0;
  for (auto _ : state) {
    for (std::size_t i = 0; i < outlets; ++i)
      draw_factors(i, first, std::span(factors).subspan(i * drawn_at_once, drawn_at_once));
    first += drawn_at_once;
    benchmark::ClobberMemory();
  }
  state.counters["solved"] = 1;
}

/// A fault at every outlet in turn, from the layout to the counts, on one thread.
void break_all(benchmark::State& state, const Layout& layout, const Fault& fault) {
  use_width(widest());
  bool solved = true;
  for (auto _ : state) {
    const Breaks breaks =
        break_every_outlet(layout, {.fault = fault, .keep = BreakDetail::counts}, {.threads = 1});
    solved = solved && breaks.breaks.size() == static_cast<std::size_t>(layout.outlet_count());
  }
  state.counters["solved"] = solved;
}

std::vector<std::size_t> as_they_are(std::size_t count) {
  std::vector<std::size_t> result(count);
  for (std::size_t i = 0; i < count; ++i) result[i] = i;
  return result;
}

void print_memory() {
  std::printf(
      "\nMemory of a scenario [bytes]: %zu for each place (heads, outlets' flows and heads),\n"
      "%zu for each of its kinds of differences, %zu for each run, %zu for each supply\n",
      3 * sizeof(Lane) / lanes,
      sizeof(Lane) / lanes,
      sizeof(RunLanes) / lanes,
      (sizeof(SourceLanes) + 2 * sizeof(Lane)) / lanes);
}

}  // namespace

int main(int argc, char** argv) {
  struct MonteCarlo {
    Tree tree;
    Scenarios scenarios;
  };
  Benchmarks benchmarks;
  ManyTable& table = benchmarks.table;
  for (const std::size_t it : widths()) table.columns.push_back("lanes by " + std::to_string(it));
  std::printf("Vectors of %zu doubles\n", Lanes::width());

  std::vector<std::unique_ptr<MonteCarlo>> kept;
  for (const auto& [count, with_riser] : {std::pair(20, false),
                                          std::pair(100, false),
                                          std::pair(1000, false),
                                          std::pair(100, true)}) {
    const Tree like = peers::lateral_tree(count, with_riser);
    kept.push_back(std::make_unique<MonteCarlo>(MonteCarlo{with_own_mouths(like), {}}));
    MonteCarlo& it = *kept.back();
    it.scenarios = varied(it.tree);
    const std::string group =
        std::to_string(count) + (with_riser ? " outlets on risers" : " outlets");
    benchmarks.add_ours(group, it.tree, it.scenarios);
    if (!with_riser) {
      const peers::Lateral lateral = peers::lateral_of(like);
      const std::vector<std::size_t> places = as_they_are(it.tree.places.size());
      const auto add_peer = [&](const std::string& name, std::unique_ptr<WarmPeer> peer) {
        benchmarks.add(group,
                       name,
                       std::make_unique<ByPeer>(std::move(peer), it.scenarios, places),
                       it.tree,
                       it.scenarios);
      };
      add_peer("LDLT", peers::make_ldlt(lateral));
      add_peer("KINSOL", peers::make_kinsol(lateral));
      benchmark::RegisterBenchmark(
          (group + ", random numbers").c_str(), draw, it.tree.places.size())
          ->MinTime(0.05);
      table.rows.push_back({"random numbers", group, drawn_at_once, static_cast<double>(count)});
    }
  }

  const Layout layout = cases::tree_layout(false);
  const Tree tree = with_own_mouths(make_tree(layout, properties(layout.water())));
  const Scenarios breaks = broken(tree);
  const std::string group = "10,000 breaks";
  benchmarks.add_ours(group, tree, breaks);
  const peers::Told where = peers::told(tree);
  benchmarks.add(
      group,
      "LDLT",
      std::make_unique<ByPeer>(peers::make_ldlt(where.problem, peers::leaf_first(where.problem)),
                               breaks,
                               where.place_of),
      tree,
      breaks);
  Outlet wide = layout.lines().back().kind_of(1);
  wide.flow *= break_factor;
  const Layout on_risers = cases::tree_layout(true);
  const auto add_whole = [&](const std::string& row, const Layout& of, const Fault& fault) {
    benchmark::RegisterBenchmark(
        (group + ", " + row).c_str(),
        [&of, fault](benchmark::State& state) { break_all(state, of, fault); })
        ->Iterations(5);
    const double count = of.outlet_count();
    table.rows.push_back({row, group, count, count});
  };
  add_whole("counts", layout, wrong_outlet("", 0, wide));
  add_whole("counts, heads off risers", on_risers, HeadOff{});
  print_memory();
  return run_and_compare(argc, argv, table);
}
