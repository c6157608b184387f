#include "hydro/diagnosis/make_right.hpp"

#include "hydro/answers/check.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace hydro {
namespace {

constexpr std::array deed_words{
    "water on as it is", "cap the outlet and water on", "stop until it is mended", "mend it now"};
static_assert(deed_words.size() == static_cast<std::size_t>(Deed::mend) + 1);

bool is_broken_outlet(CandidateKind kind) {
  return kind == CandidateKind::head_off || kind == CandidateKind::riser_sheared ||
         kind == CandidateKind::nozzle_missing;
}

bool is_mended_by_hand(CandidateKind kind) {
  return kind == CandidateKind::valve_left_open || kind == CandidateKind::valve_part_closed ||
         kind == CandidateKind::end_open || kind == CandidateKind::engine_slow ||
         kind == CandidateKind::filter_dirty;
}

/// Compares ways with the layout as it should be.
class Ways {
 public:
  Ways(const Layout& layout, const Candidate& candidate, const Time& run_time)
      : sound_(solve(layout)), candidate_(candidate), run_time_(run_time) {}

  WayOn watering(Deed deed, const Layout& layout) const {
    const Solution now = solve(layout);
    WayOn way{.deed = deed,
              .below_rated = added(check(sound_).below_rated, check(now).below_rated),
              .out_of_work = added(out_of_work(sound_), out_of_work(now)),
              .escaping = escaping(now) - escaping(sound_)};
    for (std::size_t i = 0; i < now.lines().size(); ++i)
      if (runs(i)) way.extra.push_back(extra_time(sound_.lines()[i], now.lines()[i]));
    return way;
  }

  /// Nothing comes out anywhere.
  WayOn stopping() const {
    WayOn way{.deed = Deed::stop};
    for (std::size_t i = 0; i < sound_.lines().size(); ++i)
      if (runs(i)) way.extra.push_back({.line = sound_.lines()[i].name, .time = run_time_});
    return way;
  }

 private:
  bool runs(std::size_t line) const {
    return !sound_.lines()[line].shut && !sound_.lines()[line].state.empty();
  }

  static std::vector<OutletNumber> out_of_work(const Solution& solution) {
    std::vector<OutletNumber> found;
    for (const LineSolution& line : solution.lines())
      for (std::size_t i = 0; i < line.state.size(); ++i)
        if (line.state[i] == OutletState::below_minimum || line.state[i] == OutletState::dry)
          found.push_back({line.name, static_cast<int>(i) + 1});
    return found;
  }

  /// Those that are not there before, but for lines that should not run.
  template <class Outlet>
  std::vector<OutletNumber> added(const std::vector<Outlet>& before,
                                  const std::vector<Outlet>& now) const {
    std::vector<OutletNumber> found;
    for (const Outlet& it : now) {
      const bool was = std::ranges::any_of(before, [&](const Outlet& other) {
        return other.line == it.line && other.outlet == it.outlet;
      });
      if (!was && runs(sound_.layout().index_of(it.line))) found.push_back({it.line, it.outlet});
    }
    return found;
  }

  Flow escaping(const Solution& solution) const {
    Flow all{};
    for (std::size_t l = 0; l < solution.lines().size(); ++l) {
      const LineSolution& line = solution.lines()[l];
      for (std::size_t i = 0; i < line.state.size(); ++i)
        if (line.state[i] == OutletState::broken || sound_.lines()[l].shut) all += line.flow[i];
      for (const Opening& opening : line.openings) all += opening.flow;
    }
    return all;
  }

  ExtraTime extra_time(const LineSolution& before, const LineSolution& now) const {
    ExtraTime extra{.line = now.name};
    double most = 0;
    for (std::size_t i = 0; i < now.state.size(); ++i) {
      const int number = static_cast<int>(i) + 1;
      if (now.name == candidate_.line && candidate_.outlet == number) continue;
      if (!(before.flow[i] > Flow{})) continue;
      const double missing = 1 - si(now.flow[i]) / si(before.flow[i]);
      if (!(missing > most)) continue;
      most = missing;
      extra.outlet = number;
    }
    extra.time = most * run_time_;
    return extra;
  }

  Solution sound_;
  const Candidate& candidate_;
  Time run_time_;
};

std::size_t best_of(const std::vector<WayOn>& ways, CandidateKind kind) {
  const auto index_of = [&](Deed deed) {
    return static_cast<std::size_t>(std::ranges::find(ways, deed, &WayOn::deed) - ways.begin());
  };
  const WayOn& as_it_is = ways.front();
  if (is_mended_by_hand(kind)) return index_of(Deed::mend);
  if (as_it_is.out_of_work.empty() && !(as_it_is.escaping > Flow{})) return 0;
  const std::size_t cap = index_of(Deed::cap);
  if (cap < ways.size() && ways[cap].out_of_work.empty()) return cap;
  return as_it_is.out_of_work.empty() ? 0 : index_of(Deed::stop);
}

}  // namespace

std::string_view words_of(Deed deed) {
  return deed_words.at(static_cast<std::size_t>(deed));
}

MakeRight make_right(const Layout& layout,
                     const FoundFault& found,
                     const MakeRightOptions& options) {
  Examination examination;
  examination.within("run_time", options.run_time, Range<Time>{0, 1000, units::h, true});
  if (std::vector<Problem> wrong = examination.take(); !wrong.empty())
    throw InvalidInput(std::move(wrong));
  MakeRight answer{.found = found, .run_time = options.run_time};
  const Ways ways(layout, found.candidate, options.run_time);
  if (!found.fault && !found.supply) {  // nothing is wrong with the water
    answer.ways = {ways.watering(Deed::go_on, layout)};
    return answer;
  }
  const Layout faulty =
      found.fault ? layout.with_fault(*found.fault) : layout.with_supply(*found.supply);
  answer.ways.push_back(ways.watering(Deed::go_on, faulty));
  const Candidate& candidate = found.candidate;
  if (is_broken_outlet(candidate.kind))
    answer.ways.push_back(ways.watering(
        Deed::cap, layout.with_fault(capped(candidate.line, candidate.outlet.value()))));
  answer.ways.push_back(ways.stopping());
  answer.ways.push_back(ways.watering(Deed::mend, layout));
  answer.best = best_of(answer.ways, candidate.kind);
  return answer;
}

}  // namespace hydro
