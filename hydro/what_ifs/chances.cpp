#include "hydro/what_ifs/chances.hpp"

#include "hydro/physics/outlet.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"
#include "hydro/what_ifs/in_parallel.hpp"
#include "hydro/what_ifs/moments.hpp"
#include "hydro/what_ifs/solved_block.hpp"
#include "hydro/what_ifs/uncertain_inputs.hpp"
#include "hydro/what_ifs/uniformity_of_many.hpp"
#include "hydro/what_ifs/value_counts.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <map>
#include <memory>
#include <mutex>
#include <numeric>
#include <span>
#include <type_traits>
#include <utility>

#include <boost/math/distributions/binomial.hpp>
#include <fmt/format.h>

namespace hydro {
namespace {

constexpr double least_pressure = 1;  // [Pa] that is told apart from 0
constexpr double least_flow = 1e-12;  // [m3/s]
constexpr double outside = 0.05 / 2;  // of the bounds of a chance, on each side
constexpr double most_kept = 100'000'000;

/// An outlet of the layout as it stands, numbered through all lines.
struct Standing {
  const Outlet* kind;
  bool is_judged;  ///< neither closed nor broken
};

/// Outlets of one kind, on one line or on all.
struct Group {
  std::string line;
  const Outlet* kind;
  std::vector<std::size_t> members = {};
  int lines = 1;  ///< they stand on
};

std::vector<Standing> standing_in(const Solution& solution) {
  std::vector<Standing> outlets;
  const Layout& layout = solution.layout();
  for (std::size_t i = 0; i < solution.lines().size(); ++i)
    for (std::size_t j = 0; j < solution.lines()[i].state.size(); ++j) {
      const OutletState state = solution.lines()[i].state[j];
      outlets.push_back({&layout.outlet_at(i, static_cast<int>(j) + 1),
                         state != OutletState::closed && state != OutletState::broken});
    }
  return outlets;
}

/// As uniformity_of_outlets() groups them.
std::vector<Group> groups_of(const Layout& layout, const std::vector<Standing>& outlets) {
  std::vector<Group> groups;
  std::vector<Group> together;
  const auto group_in = [](std::vector<Group>& some, std::size_t from, const Outlet& kind) {
    return std::find_if(some.begin() + static_cast<std::ptrdiff_t>(from),
                        some.end(),
                        [&](const Group& it) { return it.kind == &kind || *it.kind == kind; });
  };
  std::size_t outlet = 0;
  for (const Line& line : layout.lines()) {
    const std::size_t first_of_line = groups.size();
    for (int i = 0; i < line.outlet_count(); ++i, ++outlet) {
      if (!outlets[outlet].is_judged) continue;
      const Outlet& kind = *outlets[outlet].kind;
      auto group = group_in(groups, first_of_line, kind);
      if (group == groups.end()) group = groups.insert(group, {line.name, &kind});
      group->members.push_back(outlet);
    }
    for (std::size_t i = first_of_line; i < groups.size(); ++i) {
      const auto all = group_in(together, 0, *groups[i].kind);
      if (all == together.end()) {
        together.push_back(groups[i]);
        together.back().line.clear();
        continue;
      }
      all->members.insert(all->members.end(), groups[i].members.begin(), groups[i].members.end());
      ++all->lines;
    }
  }
  std::erase_if(together, [](const Group& group) { return group.lines < 2; });
  groups.insert(groups.end(), together.begin(), together.end());
  return groups;
}

/// Whole numbers: they may be counted in any order.
struct Counts {
  explicit Counts(std::size_t outlets)
      : pressure(outlets, ValueCounts(least_pressure)),
        flow(outlets, ValueCounts(least_flow)),
        below_rated(outlets),
        below_minimum(outlets),
        above_maximum(outlets),
        times_below_rated(outlets + 1) {}

  std::vector<ValueCounts> pressure;
  std::vector<ValueCounts> flow;
  std::vector<int> below_rated;
  std::vector<int> below_minimum;
  std::vector<int> above_maximum;
  std::vector<int> times_below_rated;
  int any_below_minimum = 0;
  int any_above_maximum = 0;

  void add(const Counts& other) {
    const auto add_each = [](auto& these, const auto& those) {
      for (std::size_t i = 0; i < these.size(); ++i) these[i] += those[i];
    };
    for (std::size_t i = 0; i < pressure.size(); ++i) pressure[i].add(other.pressure[i]);
    for (std::size_t i = 0; i < flow.size(); ++i) flow[i].add(other.flow[i]);
    add_each(below_rated, other.below_rated);
    add_each(below_minimum, other.below_minimum);
    add_each(above_maximum, other.above_maximum);
    add_each(times_below_rated, other.times_below_rated);
    any_below_minimum += other.any_below_minimum;
    any_above_maximum += other.any_above_maximum;
  }
};

/// What a thread works on, and has counted.
struct Desk {
  explicit Desk(std::size_t outlets) : counts(outlets) {}

  BlockSolver::Desk of_solver;
  SolvedBlock block;
  UniformityOfMany measures;
  Counts counts;
};

/// By outlet.
struct BlockMoments {
  std::vector<Moments> pressure;
  std::vector<Moments> flow;
};

/// Of some figure of all values: several sums side by side, as one would wait for each addition.
template <class Figure>
double sum_of(std::span<const double> values, const Figure& figure) {
  constexpr std::size_t side_by_side = 8;
  std::array<double, side_by_side> sums{};
  const std::size_t whole = values.size() / side_by_side * side_by_side;
  for (std::size_t i = 0; i < whole; i += side_by_side)
    for (std::size_t k = 0; k < side_by_side; ++k) sums[k] += figure(values[i + k]);
  for (std::size_t i = whole; i < values.size(); ++i) sums[i - whole] += figure(values[i]);
  return std::accumulate(sums.begin(), sums.end(), 0.0);
}

/// Sums of distances from the first value, so that what hardly varies loses nothing.
Moments moments_of(std::span<const double> values) {
  const auto count = static_cast<double>(values.size());
  const double first = values.front();
  const double mean = first + sum_of(values, [&](double value) { return value - first; }) / count;
  return {
      count, mean, sum_of(values, [&](double value) { return (value - mean) * (value - mean); })};
}

/// One value for each realisation, of some group; not a number where no water came.
struct GroupFigures {
  std::vector<double> christiansen;
  std::vector<double> distribution;
  std::vector<double> statistical;
};

template <class Q>
Spread<Q> spread_of(std::vector<double> values, const std::vector<double>& shares) {
  const auto of = [](double value) {
    if constexpr (std::is_same_v<Q, double>)
      return value;
    else
      return Q::from_value(value);
  };
  const Moments moments = moments_of(values);
  Spread<Q> spread{of(moments.mean), of(moments.deviation()), {}};
  for (const double share : shares) {
    const double rank = share * static_cast<double>(values.size() - 1);
    const auto low = values.begin() + static_cast<std::ptrdiff_t>(rank);
    std::nth_element(values.begin(), low, values.end());
    const double high = low + 1 < values.end() ? *std::min_element(low + 1, values.end()) : *low;
    spread.quantiles.push_back(of(*low + (rank - std::floor(rank)) * (high - *low)));
  }
  return spread;
}

template <class Q>
SeriesSpread<Q> series_of(std::span<const Moments> moments,
                          std::span<const ValueCounts> counts,
                          const std::vector<double>& shares) {
  SeriesSpread<Q> spread;
  const auto each = [&](const auto& things, const auto& figure) {
    std::vector<double> values;
    for (const auto& thing : things) values.push_back(figure(thing));
    return Series<Q>(std::move(values));
  };
  spread.mean = each(moments, [](const Moments& it) { return it.mean; });
  spread.deviation = each(moments, [](const Moments& it) { return it.deviation(); });
  for (const double share : shares)
    spread.quantiles.push_back(
        each(counts, [&](const ValueCounts& it) { return it.quantile(share); }));
  return spread;
}

void examine(const ChanceOptions& options, int outlets) {
  Examination examination;
  examination.within("realisations", options.realisations, 2, 1'000'000);
  for (std::size_t i = 0; i < options.quantiles.size(); ++i)
    if (!(options.quantiles[i] > 0 && options.quantiles[i] < 1))
      examination.add(fmt::format("quantiles, {}", i + 1),
                      "is " + to_text(options.quantiles[i]) + ", must be above 0 and below 1");
  const double kept = static_cast<double>(options.realisations) * outlets;
  if (options.keep && kept > most_kept)
    examination.add("keep",
                    fmt::format("asks for {:.0f} pressures, {} realisations of {} outlets; must be "
                                "at most {:.0f}",
                                kept,
                                options.realisations,
                                outlets,
                                most_kept));
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

/// One study: blocks of realisations come in any order, from many threads.
class Study {
 public:
  Study(const Layout& layout, const Uncertainty& uncertainty, const ChanceOptions& options)
      : inputs_(layout, uncertainty),
        solver_(inputs_),
        options_(options),
        count_(static_cast<std::size_t>(options.realisations)),
        outlets_(standing_in(solve(layout))),
        groups_(groups_of(layout, outlets_)),
        inflow_(count_),
        lowest_(count_),
        figures_(groups_.size(), {none_yet(), none_yet(), none_yet()}),
        total_{std::vector<Moments>(outlets_.size()), std::vector<Moments>(outlets_.size())} {
    if (options_.keep) {
      kept_pressure_.resize(count_ * outlets_.size());
      kept_flow_.resize(count_ * outlets_.size());
    }
  }

  std::size_t blocks() const { return (count_ + block_size() - 1) / block_size(); }

  void do_block(std::size_t number) {
    const std::size_t first = number * block_size();
    std::unique_ptr<Desk> desk = take_desk();
    const SolvedBlock& block = desk->block;
    solver_.solve(
        options_.seed, first, std::min(block_size(), count_ - first), desk->of_solver, desk->block);
    note_whole(block);
    note_uniformity(block, desk->measures);
    count(block, desk->counts);
    hand_in(number, moments_in(block));
    give_back(std::move(desk));
  }

  /// Once, when all blocks are done: what is kept moves out.
  Chances take_result();

 private:
  std::vector<double> none_yet() const {
    return std::vector<double>(count_, std::numeric_limits<double>::quiet_NaN());
  }

  /// Whole blocks of lanes, for large layouts one.
  std::size_t block_size() const {
    constexpr std::size_t most_values = 1'000'000;
    const std::size_t most = solver_.is_in_lanes() ? 4 : 1;
    return lanes * std::clamp(most_values / (outlets_.size() + 1) / lanes, std::size_t{1}, most);
  }

  /// What stands at a place of its own for each realisation.
  void note_whole(const SolvedBlock& block) {
    const std::size_t outlets = outlets_.size();
    std::ranges::copy(block.inflow, inflow_.begin() + offset(block.first));
    const std::span<double> lowest = std::span(lowest_).subspan(block.first, block.count);
    std::ranges::fill(lowest, std::numeric_limits<double>::infinity());
    for (std::size_t j = 0; j < outlets; ++j) {
      const std::span<const double> pressure = block.pressures(j);
      for (std::size_t i = 0; i < block.count && outlets_[j].is_judged; ++i)
        lowest[i] = std::min(lowest[i], pressure[i]);
      for (std::size_t i = 0; i < block.count && options_.keep; ++i) {
        kept_pressure_[(block.first + i) * outlets + j] = pressure[i];
        kept_flow_[(block.first + i) * outlets + j] = block.flows(j)[i];
      }
    }
  }

  void note_uniformity(const SolvedBlock& block, UniformityOfMany& measures) {
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      measures.find(block, groups_[g].members);
      const auto note = [&](const std::vector<double>& from, std::vector<double>& to) {
        std::ranges::copy(from, to.begin() + offset(block.first));
      };
      note(measures.christiansen, figures_[g].christiansen);
      note(measures.distribution, figures_[g].distribution);
      note(measures.statistical, figures_[g].statistical);
    }
  }

  static std::ptrdiff_t offset(std::size_t realisation) {
    return static_cast<std::ptrdiff_t>(realisation);
  }

  void count(const SolvedBlock& block, Counts& counts) const {
    std::vector<int> below_rated(block.count);
    std::vector<int> below_minimum(block.count);
    std::vector<int> above_maximum(block.count);
    for (std::size_t j = 0; j < outlets_.size(); ++j) {
      const std::span<const double> pressures = block.pressures(j);
      counts.flow[j].add(block.flows(j));
      counts.pressure[j].add(pressures);
      if (!outlets_[j].is_judged) continue;
      const auto count_where = [&](const auto& it_is, std::vector<int>& by_realisation) {
        int found = 0;
        for (std::size_t i = 0; i < block.count; ++i) {
          const int one = it_is(Pressure::from_value(pressures[i])) ? 1 : 0;
          by_realisation[i] += one;
          found += one;
        }
        return found;
      };
      const Outlet& kind = *outlets_[j].kind;
      const Pressure rated = kind.rated_pressure();
      counts.below_rated[j] +=
          count_where([&](const Pressure& it) { return is_below(it, rated); }, below_rated);
      if (kind.minimum)
        counts.below_minimum[j] += count_where(
            [&](const Pressure& it) { return is_below(it, *kind.minimum); }, below_minimum);
      if (kind.maximum)
        counts.above_maximum[j] += count_where(
            [&](const Pressure& it) { return is_above(it, *kind.maximum); }, above_maximum);
    }
    for (const int outlets : below_rated)
      ++counts.times_below_rated[static_cast<std::size_t>(outlets)];
    const auto some = [](const std::vector<int>& outlets) {
      return static_cast<int>(std::ranges::count_if(outlets, [](int it) { return it > 0; }));
    };
    counts.any_below_minimum += some(below_minimum);
    counts.any_above_maximum += some(above_maximum);
  }

  BlockMoments moments_in(const SolvedBlock& block) const {
    BlockMoments found;
    found.pressure.reserve(outlets_.size());
    found.flow.reserve(outlets_.size());
    for (std::size_t j = 0; j < outlets_.size(); ++j) {
      found.pressure.push_back(moments_of(block.pressures(j)));
      found.flow.push_back(moments_of(block.flows(j)));
    }
    return found;
  }

  std::unique_ptr<Desk> take_desk() {
    const std::scoped_lock lock(mutex_);
    if (idle_desks_.empty()) return std::make_unique<Desk>(outlets_.size());
    std::unique_ptr<Desk> desk = std::move(idle_desks_.back());
    idle_desks_.pop_back();
    return desk;
  }
  void give_back(std::unique_ptr<Desk> desk) {
    const std::scoped_lock lock(mutex_);
    idle_desks_.push_back(std::move(desk));
  }

  /// Sums are rounded, and so are taken in the order of the blocks: one that comes early waits.
  void hand_in(std::size_t number, BlockMoments found) {
    const std::scoped_lock lock(mutex_);
    early_.emplace(number, std::move(found));
    for (auto next = early_.begin(); next != early_.end() && next->first == next_block_;
         next = early_.erase(next), ++next_block_)
      for (std::size_t j = 0; j < outlets_.size(); ++j) {
        total_.pressure[j].add(next->second.pressure[j]);
        total_.flow[j].add(next->second.flow[j]);
      }
  }

  Chance chance(int times) const { return {times, options_.realisations}; }
  std::vector<double> shares(std::span<const int> times) const {
    std::vector<double> found;
    for (const int it : times) found.push_back(chance(it).share());
    return found;
  }
  std::vector<UniformityChances> uniformity_chances() const;

  UncertainInputs inputs_;
  BlockSolver solver_;
  ChanceOptions options_;
  std::size_t count_;
  std::vector<Standing> outlets_;
  std::vector<Group> groups_;

  // One for each realisation.
  std::vector<double> inflow_;
  std::vector<double> lowest_;
  std::vector<GroupFigures> figures_;  // by group
  std::vector<double> kept_pressure_;
  std::vector<double> kept_flow_;

  std::mutex mutex_;  // of all below
  std::vector<std::unique_ptr<Desk>> idle_desks_;
  std::map<std::size_t, BlockMoments> early_;
  std::size_t next_block_ = 0;
  BlockMoments total_;
};

std::vector<UniformityChances> Study::uniformity_chances() const {
  std::vector<UniformityChances> all;
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    const auto spread = [&](std::vector<double> values) {
      std::erase_if(values, [](double value) { return std::isnan(value); });
      return values.empty() ? std::optional<Spread<double>>()
                            : spread_of<double>(std::move(values), options_.quantiles);
    };
    auto christiansen = spread(figures_[g].christiansen);
    auto distribution = spread(figures_[g].distribution);
    if (!christiansen || !distribution) continue;
    all.push_back({groups_[g].line,
                   groups_[g].kind->name,
                   static_cast<int>(groups_[g].members.size()),
                   std::move(*christiansen),
                   std::move(*distribution),
                   spread(figures_[g].statistical)});
  }
  return all;
}

Chances Study::take_result() {
  Counts counts(outlets_.size());
  for (const auto& desk : idle_desks_) counts.add(desk->counts);

  Chances found;
  found.realisations = options_.realisations;
  found.seed = options_.seed;
  found.quantiles = options_.quantiles;
  std::size_t first = 0;
  for (const Line& line : inputs_.layout().lines()) {
    const auto outlets = static_cast<std::size_t>(line.outlet_count());
    const auto part = [&](const auto& all) { return std::span(all).subspan(first, outlets); };
    std::vector<bool> is_judged;
    for (const Standing& outlet : part(outlets_)) is_judged.push_back(outlet.is_judged);
    found.lines.push_back(
        {line.name,
         series_of<Pressure>(part(total_.pressure), part(counts.pressure), options_.quantiles),
         series_of<Flow>(part(total_.flow), part(counts.flow), options_.quantiles),
         std::move(is_judged),
         shares(part(counts.below_rated)),
         shares(part(counts.below_minimum)),
         shares(part(counts.above_maximum))});
    first += outlets;
  }
  // Quantiles are found in a copy, as they put it in another order.
  found.inflow = spread_of<Flow>(inflow_, options_.quantiles);
  if (std::ranges::any_of(outlets_, &Standing::is_judged))
    found.lowest_pressure = spread_of<Pressure>(lowest_, options_.quantiles);
  found.any_below_rated = chance(options_.realisations - counts.times_below_rated.front());
  found.any_below_minimum = chance(counts.any_below_minimum);
  found.any_above_maximum = chance(counts.any_above_maximum);
  found.times_below_rated = std::move(counts.times_below_rated);
  while (found.times_below_rated.size() > 1 && found.times_below_rated.back() == 0)
    found.times_below_rated.pop_back();
  found.uniformity = uniformity_chances();
  if (options_.keep)
    found.kept =
        Kept{static_cast<int>(outlets_.size()),
             Series<Pressure>(std::move(kept_pressure_)),
             Series<Flow>(std::move(kept_flow_)),
             Series<Flow>(std::move(inflow_)),
             found.lowest_pressure ? Series<Pressure>(std::move(lowest_)) : Series<Pressure>()};
  return found;
}

}  // namespace

double Chance::low() const {
  using boost::math::binomial;
  return of > 0 ? binomial::find_lower_bound_on_p(of, times, outside) : 0;
}

double Chance::high() const {
  using boost::math::binomial;
  return of > 0 ? binomial::find_upper_bound_on_p(of, times, outside) : 1;
}

Chances chances(const Layout& layout,
                const Uncertainty& uncertainty,
                const ChanceOptions& options,
                const Work& work) {
  examine(options, layout.outlet_count());
  Study study(layout, uncertainty, options);
  in_parallel(study.blocks(), work, [&](std::size_t block) { study.do_block(block); });
  return study.take_result();
}

}  // namespace hydro
