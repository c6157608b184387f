#include "hydro/what_ifs/count_breaks.hpp"

#include "hydro/solver/discharge.hpp"
#include "hydro/solver/lanes_in_part.hpp"
#include "hydro/solver/lanes_plan.hpp"
#include "hydro/solver/tree.hpp"
#include "hydro/what_ifs/in_parallel.hpp"
#include "hydro/what_ifs/outlet_condition.hpp"
#include "hydro/what_ifs/outlets_by_head.hpp"
#include "hydro/what_ifs/pool.hpp"
#include "hydro/what_ifs/standing_outlets.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <iterator>
#include <limits>
#include <memory>
#include <optional>
#include <utility>

namespace hydro {
namespace {

// Of the head span: ten times the tolerance of heads and of stand-ins.
constexpr double doubt = 10 * stand_in_tolerance;
constexpr double tiny_flow = 1e-12;  // so that a range is one where nothing flows [m3/s]

using Take = std::function<void(std::size_t, const CountedBreak&)>;

/// Breaks that are solved together, all of one run if they are of one.
struct Block {
  std::vector<std::size_t> which;  ///< of `outlets`, rising
  std::size_t run;
};

using FarEnd = LanesInPart::FarEnd;

/// What breaks along a run leave at its far end, one a lane: neighbours leave nearly the same.
struct FarEnds {
  std::vector<std::size_t> which;  ///< rising
  FarEnd of;

  /// Of others, by the cubic through the four nearest. None where too few are known.
  std::optional<FarEnd> between(const std::vector<std::size_t>& others) const;
};

std::optional<FarEnd> FarEnds::between(const std::vector<std::size_t>& others) const {
  constexpr std::size_t near = 4;
  if (which.size() < 2 * near) return {};
  FarEnd found{};
  for (std::size_t lane = 0; lane < others.size(); ++lane) {
    const auto next =
        static_cast<std::size_t>(std::ranges::lower_bound(which, others[lane]) - which.begin());
    const std::size_t first = std::clamp(next, near / 2, which.size() - near / 2) - near / 2;
    const auto away = [&](std::size_t k) {
      return static_cast<double>(others[lane]) - static_cast<double>(which[k]);
    };
    for (std::size_t k = first; k < first + near; ++k) {
      double weight = 1;  // Lagrange's
      for (std::size_t j = first; j < first + near; ++j)
        if (j != k) weight *= away(j) / (away(j) - away(k));
      found.head[lane] += weight * of.head[k];
      found.inlet_head_slope[lane] += weight * of.inlet_head_slope[k];
      found.inlet_flow_slope[lane] += weight * of.inlet_flow_slope[k];
    }
  }
  return found;
}

/// One of the breaks.
struct Breaking {
  std::size_t place;
  std::size_t outlet;          ///< of all
  std::optional<Mouth> mouth;  ///< what water then leaves by; none: nothing
  OutletState state;           ///< broken, closed, or anything else
};

class BreaksCounter {
 public:
  BreaksCounter(const Layout& layout,
                const SettledLayout& as_it_is,
                const Fault& fault,
                const std::vector<OutletNumber>& outlets,
                const SolvedBreak& before,
                const std::vector<OutletCondition>& conditions_before)
      : layout_(layout),
        outlets_(outlets),
        before_(before),
        conditions_before_(conditions_before),
        water_(as_it_is.water),
        weight_density_(si(water_.density) * gravity),
        tree_(as_it_is.tree),
        on_tree_(tree_, as_it_is.settled.sweeps, &room_),
        standing_(standing_outlets(layout, tree_)),
        open_places_(open_places(tree_)),
        outlet_at_(tree_.places.size(), nowhere),
        is_plain_(tree_.places.size(), true),
        by_head_(tree_.runs.size()),
        far_ends_(tree_.runs.size()) {
    for (std::size_t j = 0; j < standing_.size(); ++j) list(j);
    for (const std::size_t place : open_places_) is_plain_[place] = false;
    list_plain();
    for (const OutletNumber& it : outlets) {
      const std::size_t l = layout.index_of(it.line);
      const Line& line = layout.lines()[l];
      const std::size_t place = place_of(tree_, l, it.outlet);
      const Fault here = at_outlet(fault, it.line, it.outlet);
      const OutletReading read =
          with_fault({0, 0, OutletState::works}, here, line, weight_density_);
      breaks_.push_back({place, outlet_at_[place], mouth_with(here, line, water_), read.state});
    }
  }

  bool can_count() const { return !on_tree_.plan().as_it_is.empty(); }

  /// Finds what stands in for what.
  void prepare() {
    parts_.emplace(
        on_tree_, asked(), [&](const LanesInPart::Tried& tried) { return learn(tried); }, room_);
    desks_.give_back(std::make_unique<LanesInPart::Desk>(*parts_, std::move(room_)));
    share_in_blocks();
  }

  /// How many blocks there are that know nothing of others, and how many that begin where their
  /// neighbours among those have ended.
  std::array<std::size_t, 2> stages() const {
    return {first_blocks_, blocks_.size() - first_blocks_};
  }

  /// @param is_told by index into the outlets
  void do_block(std::size_t number, const Take& take, std::vector<char>& is_told) {
    const bool is_first = number < first_blocks_;
    const Block& block = blocks_[number];
    const std::vector<std::size_t>& which = block.which;
    const std::size_t count = which.size();
    const Differences differences = differences_of(which);
    std::unique_ptr<LanesInPart::Desk> desk =
        desks_.take([&] { return std::make_unique<LanesInPart::Desk>(*parts_); });
    const std::optional<FarEnd> near =
        is_first ? std::nullopt : far_ends_[block.run].between(which);
    desk->solve(differences, count, near ? &*near : nullptr);
    if (is_first) note_far_ends(*desk, block);
    Flows flows;
    BefallenInLanes befallen;
    // Nothing is weaker than what idle lanes have.
    std::fill(befallen.weakest.share.at.begin() + offset(count),
              befallen.weakest.share.at.end(),
              -no_limit);
    count_waterless(befallen.weakest);
    count_marched(*desk, which, differences, flows, befallen);
    count_others(*desk, count, flows, befallen);
    for (std::size_t lane = 0; lane < count; ++lane) {
      if (((desk->met() >> lane) & 1) == 0 || befallen.is_doubtful[lane] != 0) continue;
      const auto number_of = [&](const Lane& counted) { return static_cast<int>(counted[lane]); };
      CountedBreak found{
          .escaping = flows.escaping[lane] - escaping_before_ - before_.out_of_openings,
          .missing = judged_before_ - flows.not_judged[lane] -
                     (inflow(desk->block(), lane) - flows.escaping[lane]),
          .supplies = read_supplies(layout_, tree_, desk->block(), lane, water_),
          .more_below_rated = number_of(befallen.below_rated),
          .more_out_of_work = number_of(befallen.out_of_work),
          .more_dry = number_of(befallen.dry),
          .more_above_maximum = number_of(befallen.above_maximum)};
      if (befallen.weakest.outlet[lane] < no_limit) {
        found.weakest = static_cast<std::size_t>(befallen.weakest.outlet[lane]);
        found.weakest_pressure = weight_density_ * befallen.weakest.outlet_head[lane];
      }
      take(which[lane], found);
      is_told[which[lane]] = 1;
    }
    desks_.give_back(std::move(desk));
  }

 private:
  struct Flows {
    Lane escaping = Lane::all(0);    ///< out of broken outlets and openings
    Lane not_judged = Lane::all(0);  ///< before, out of what is broken or closed now and was not
  };

  /// Out of all sources, whichever way.
  static double inflow(const LaneBlock& block, std::size_t lane) {
    double sum = 0;
    for (const Lane& flow : block.source_flow) sum += flow[lane];
    return sum;
  }

  void list(std::size_t j) {
    const StandingOutlet& it = standing_[j];
    const OutletCondition was = conditions_before_[j];
    if (it.place == nowhere) {
      if (is_judged(was) && !waterless_) waterless_ = j;
      return;
    }
    outlet_at_[it.place] = j;
    if (it.fault || it.is_shut) is_plain_[it.place] = false;
    if (was == OutletCondition::broken) escaping_before_ += before_.flow[j];
    if (is_judged(was)) judged_before_ += before_.flow[j];
  }

  void list_plain() {
    for (std::size_t place = 0; place < outlet_at_.size(); ++place) {
      plain_before_.push_back(plain_.size());
      const std::size_t j = outlet_at_[place];
      if (j == nowhere || !is_plain_[place]) continue;
      const StandingOutlet& it = standing_[j];
      plain_.push_back({j, place, {*it.kind, conditions_before_[j], it.held, weight_density_}});
    }
    plain_before_.push_back(plain_.size());
  }

  std::span<const OutletAtPlace> plain_on(const Run& run) const {
    return {plain_.begin() + offset(plain_before_[run.first]),
            plain_.begin() + offset(plain_before_[run.end])};
  }

  /// @param which of `breaks_`, one a lane
  Differences differences_of(const std::vector<std::size_t>& which) const {
    Differences differences;
    differences.replaced.reserve(which.size());
    for (std::size_t lane = 0; lane < which.size(); ++lane)
      differences.replaced.push_back(
          {breaks_[which[lane]].place, lane, breaks_[which[lane]].mouth});
    // Mostly they are, and much would be moved.
    if (!std::ranges::is_sorted(differences.replaced, {}, &Differences::Replaced::place))
      std::ranges::sort(differences.replaced, {}, &Differences::Replaced::place);
    return differences;
  }

  /// The first of each run has breaks from all along it; all others are shared evenly, so that no
  /// block has a few alone. The outlets of a run follow one another.
  void share_in_blocks() {
    std::vector<Block> others;
    std::size_t end = 0;
    for (std::size_t first = 0; first < outlets_.size(); first = end) {
      const std::size_t run = run_with(first);
      for (end = first; end < outlets_.size() && run_with(end) == run;) ++end;
      const std::size_t count = end - first, in_first = std::min(count, lanes);
      std::vector<std::size_t> left;
      blocks_.push_back({{}, run});
      for (std::size_t i = first; i < end; ++i) {
        const std::size_t taken = blocks_.back().which.size();
        const bool is_next = (i - first) * (in_first - 1) >= (count - 1) * taken;
        (is_next ? blocks_.back().which : left).push_back(i);
      }
      const std::size_t parts = (left.size() + lanes - 1) / lanes;
      for (std::size_t part = 0; part < parts; ++part)
        others.push_back({{left.begin() + offset(left.size() * part / parts),
                           left.begin() + offset(left.size() * (part + 1) / parts)},
                          run});
    }
    first_blocks_ = blocks_.size();
    std::ranges::move(others, std::back_inserter(blocks_));
  }

  static std::ptrdiff_t offset(std::size_t i) { return static_cast<std::ptrdiff_t>(i); }

  void note_far_ends(const LanesInPart::Desk& desk, const Block& block) {
    const FarEnd now = desk.far_end(block.run);
    FarEnds& found = far_ends_[block.run];
    for (std::size_t lane = 0; lane < block.which.size(); ++lane) {
      if (((desk.met() >> lane) & 1) == 0) continue;
      const std::size_t k = found.which.size();
      found.which.push_back(block.which[lane]);
      found.of.head[k] = now.head[lane];
      found.of.inlet_head_slope[k] = now.inlet_head_slope[lane];
      found.of.inlet_flow_slope[k] = now.inlet_flow_slope[lane];
    }
  }

  std::size_t run_with(std::size_t i) const { return parts_->run_of(breaks_[i].place); }

  std::vector<LanesInPart::Asked> asked() {
    const std::vector<Interval> heads = ranges(), flows = flow_ranges();
    std::vector<LanesInPart::Asked> all;
    for (std::size_t r = 0; r < heads.size(); ++r) all.push_back({heads[r], flows[r]});
    return all;
  }

  /// Of the flows into each run: what it and all beyond draw as they are, and what a break can make of
  /// that: no more than if the head before it stayed as it is.
  std::vector<Interval> flow_ranges() const {
    const LanesPlan& plan = on_tree_.plan();
    std::vector<Interval> more(tree_.runs.size(), Interval{0, 0});
    std::vector<std::size_t> run_of(tree_.places.size());
    for (std::size_t r = 0; r < tree_.runs.size(); ++r)
      for (std::size_t i = tree_.runs[r].first; i < tree_.runs[r].end; ++i) run_of[i] = r;
    for (const Breaking& it : breaks_) {
      const State& before = plan.start[it.place];
      const double then = it.mouth ? discharge(*it.mouth, 1, before.head).flow : 0;
      const double rise = then - before.outlet_flow;
      Interval& of_run = more[run_of[it.place]];
      of_run = {std::min(of_run.least, rise), std::max(of_run.most, rise)};
    }
    std::vector<Interval> found(tree_.runs.size(), Interval{0, 0});
    for (std::size_t r = tree_.runs.size(); r-- > 0;) {
      const double flow = plan.as_it_is[r].flow, little = 1e-3 * flow + tiny_flow;
      found[r] = {flow + more[r].least - little, flow + more[r].most + little};
      if (tree_.runs[r].fed_by == none) continue;
      Interval& of_feeder = more[index(tree_.runs[r].fed_by)];
      of_feeder = {std::min(of_feeder.least, more[r].least),
                   std::max(of_feeder.most, more[r].most)};
    }
    return found;
  }

  /// Of the heads before each run: those that breaks all over the layout lead to and some more, the
  /// farther out the more, so that they hold what those before them lead to.
  std::vector<Interval> ranges() {
    std::vector<std::size_t> sample;
    for (std::size_t k = 0; k < lanes; ++k) {
      const std::size_t i = (outlets_.size() - 1) * k / (lanes - 1);
      if (sample.empty() || sample.back() != i) sample.push_back(i);
    }
    const std::vector<Lane> fed =
        on_tree_.heads_before_runs(differences_of(sample), sample.size(), room_);
    std::vector<Interval> found;
    std::vector<double> more;
    for (std::size_t r = 0; r < tree_.runs.size(); ++r) {
      const Run& run = tree_.runs[r];
      const bool begins = run.fed_by == none;
      const double before = on_tree_.plan().as_it_is[r].feeding;
      Interval range{before, before};
      for (std::size_t lane = 0; lane < sample.size(); ++lane) {
        if (((room_.met >> lane) & 1) == 0) continue;
        range.least = std::min(range.least, fed[r][lane]);
        range.most = std::max(range.most, fed[r][lane]);
      }
      const double own = 1.0 * (range.most - range.least) + 1e-5 * tree_.head_span;
      more.push_back(begins ? own : std::max(own, 1.01 * more[index(run.fed_by)]));
      found.push_back({range.least - more.back(), range.most + more.back()});
    }
    return found;
  }

  bool learn(const LanesInPart::Tried& tried) {
    const Run& run = tree_.runs[tried.run];
    for (std::size_t i = run.first; i < run.end; ++i)
      if (!is_plain_[i]) return false;
    return by_head_[tried.run].learn(plain_on(run), tried);
  }

  /// What no water comes to stays as it was, but may be the weakest.
  void count_waterless(WeakestInLanes& weakest) const {
    if (!waterless_) return;
    for (std::size_t lane = 0; lane < lanes; ++lane)
      weakest.meet(lane, static_cast<double>(*waterless_), 0, 0, 0);
  }

  void count_marched(const LanesInPart::Desk& desk,
                     const std::vector<std::size_t>& which,
                     const Differences& differences,
                     Flows& flows,
                     BefallenInLanes& befallen) const {
    for (std::size_t lane = 0; lane < which.size(); ++lane) {
      const Breaking& it = breaks_[which[lane]];
      note_broken(desk.block(), it, before_.flow[it.outlet], lane, flows);
    }
    for (std::size_t r = 0; r < tree_.runs.size(); ++r) {
      if (!desk.is_marched(r)) continue;
      const Run& run = tree_.runs[r];
      count_at_places(plain_on(run), differences.replaced, desk.block(), befallen);
      for (std::size_t i = run.first; i < run.end; ++i)
        if (!is_plain_[i]) count_special(desk.block(), i, flows, befallen);
    }
  }

  static void note_broken(const LaneBlock& block,
                          const Breaking& it,
                          double flow_before,
                          std::size_t lane,
                          Flows& flows) {
    const bool is_broken = it.state == OutletState::broken;
    if (is_broken) flows.escaping[lane] += block.outlet_flow[it.place][lane];
    if (is_broken || it.state == OutletState::closed) flows.not_judged[lane] += flow_before;
  }

  /// An opening, or an outlet with a fault of its own.
  void count_special(const LaneBlock& block,
                     std::size_t place,
                     Flows& flows,
                     BefallenInLanes& befallen) const {
    const std::size_t j = outlet_at_[place];
    if (j == nowhere) {
      for (std::size_t lane = 0; lane < lanes; ++lane)
        flows.escaping[lane] += block.outlet_flow[place][lane];
      return;
    }
    const StandingOutlet& it = standing_[j];
    const OutletCondition was = conditions_before_[j];
    for (std::size_t lane = 0; lane < lanes; ++lane) {
      const double outlet_head = block.outlet_head[place][lane];
      const OutletReading read =
          read_outlet(it, block.head[place][lane], outlet_head, weight_density_);
      const OutletCondition is =
          condition_of(*it.kind, read.state, Pressure::from_value(read.pressure));
      if (is == OutletCondition::broken) flows.escaping[lane] += block.outlet_flow[place][lane];
      if (!is_judged(is)) continue;
      const auto add = [&](bool so, bool was_so, Lane& to) { to[lane] += so && !was_so ? 1 : 0; };
      add(is_below_rated(is), is_below_rated(was), befallen.below_rated);
      add(is_out_of_work(is), is_out_of_work(was), befallen.out_of_work);
      add(is_dry(is), is_dry(was), befallen.dry);
      add(is_above_maximum(is), is_above_maximum(was), befallen.above_maximum);
      const double at_device = std::min(outlet_head, it.held);
      befallen.weakest.meet(lane,
                            static_cast<double>(j),
                            at_device * per_rated(j),
                            block.head[place][lane],
                            at_device);
    }
  }

  void count_others(const LanesInPart::Desk& desk,
                    std::size_t count,
                    Flows& flows,
                    BefallenInLanes& befallen) const {
    for (std::size_t r = 0; r < tree_.runs.size(); ++r) {
      if (desk.is_marched(r)) continue;
      if (!parts_->has_stand_in(r))
        count_unchanged(r, flows, befallen.weakest);
      else if (!by_head_[r].is_empty())
        by_head_[r].count(desk.fed(r), count, doubt * tree_.head_span, befallen);
    }
  }

  /// [1/m]
  double per_rated(std::size_t j) const {
    return weight_density_ / si(standing_[j].kind->rated_pressure());
  }

  /// A run that nothing stands in for and that yet is not marched feels none of it.
  void count_unchanged(std::size_t run, Flows& flows, WeakestInLanes& weakest) const {
    for (std::size_t i = tree_.runs[run].first; i < tree_.runs[run].end; ++i) {
      const State& before = on_tree_.plan().start[i];
      const std::size_t j = outlet_at_[i];
      const bool escapes = j == nowhere || conditions_before_[j] == OutletCondition::broken;
      const bool counts = j != nowhere && is_judged(conditions_before_[j]);
      const double at_device = counts ? std::min(before.outlet_head, standing_[j].held) : 0;
      for (std::size_t lane = 0; lane < lanes; ++lane) {
        if (escapes) flows.escaping[lane] += before.outlet_flow;
        if (counts)
          weakest.meet(
              lane, static_cast<double>(j), at_device * per_rated(j), before.head, at_device);
      }
    }
  }

  const Layout& layout_;
  const std::vector<OutletNumber>& outlets_;
  const SolvedBreak& before_;
  const std::vector<OutletCondition>& conditions_before_;
  const WaterProperties& water_;
  double weight_density_;  ///< rho g [N/m3]
  const Tree& tree_;
  LaneBlock room_;
  Lanes on_tree_;
  std::vector<StandingOutlet> standing_;
  std::vector<std::size_t> open_places_;
  std::vector<OutletAtPlace> plain_;       ///< those with water and without a fault, by place
  std::vector<std::size_t> plain_before_;  ///< by place, and the end: how many of them come before
  std::vector<Breaking> breaks_;           ///< of `outlets_`
  std::vector<std::size_t> outlet_at_;     ///< by place; nowhere: none
  std::vector<bool> is_plain_;             ///< by place: nothing there has a fault
  std::optional<std::size_t> waterless_;   ///< the first outlet that no water comes to
  double escaping_before_ = 0;             ///< out of broken outlets; openings in `before_`
  double judged_before_ = 0;               ///< out of all others
  std::vector<OutletsByHead> by_head_;     ///< by run
  std::vector<Block> blocks_;
  std::size_t first_blocks_ = 0;   ///< of them, one of each run
  std::vector<FarEnds> far_ends_;  ///< by run
  std::optional<LanesInPart> parts_;
  Pool<LanesInPart::Desk> desks_;
};

}  // namespace

std::vector<std::size_t> count_breaks(const Layout& layout,
                                      const SettledLayout& as_it_is,
                                      const Fault& fault,
                                      const std::vector<OutletNumber>& outlets,
                                      const SolvedBreak& before,
                                      const std::vector<OutletCondition>& conditions_before,
                                      const Work& work,
                                      const Take& take) {
  std::vector<std::size_t> left;
  BreaksCounter counter(layout, as_it_is, fault, outlets, before, conditions_before);
  if (!counter.can_count() || outlets.empty()) {
    for (std::size_t i = 0; i < outlets.size(); ++i) left.push_back(i);
    return left;
  }
  counter.prepare();
  std::vector<char> is_told(outlets.size());
  in_stages(
      counter.stages(), work, [&](std::size_t number) { counter.do_block(number, take, is_told); });
  for (std::size_t i = 0; i < outlets.size(); ++i)
    if (!is_told[i]) left.push_back(i);
  return left;
}

}  // namespace hydro
