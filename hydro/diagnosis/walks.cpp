#include "hydro/diagnosis/walks.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <map>
#include <string>
#include <tuple>
#include <utility>

namespace hydro {
namespace {

constexpr std::array walk_words{"nothing",
                                "broken outlet",
                                "odd outlet",
                                "leak",
                                "end open",
                                "valve",
                                "regulator",
                                "supply",
                                "gauge"};
static_assert(walk_words.size() == static_cast<std::size_t>(WalkKind::gauge) + 1);

/// The fewest outlets next to each other that hold this share of all.
std::pair<int, int> narrowest(const std::map<int, double>& chances, double share) {
  double all = 0;
  for (const auto& [outlet, chance] : chances) all += chance;
  std::pair best{chances.begin()->first, chances.rbegin()->first};
  double held_by_best = all;
  for (auto first = chances.begin(); first != chances.end(); ++first) {
    double held = 0;
    for (auto last = first; last != chances.end(); ++last) {
      held += last->second;
      if (held < share * all) continue;
      const int width = last->first - first->first;
      const int best_width = best.second - best.first;
      if (width < best_width || (width == best_width && held > held_by_best)) {
        best = {first->first, last->first};
        held_by_best = held;
      }
      break;
    }
  }
  return best;
}

}  // namespace

std::string_view words_of(WalkKind kind) {
  return walk_words.at(static_cast<std::size_t>(kind));
}

WalkKind walk_kind_of(CandidateKind kind) {
  switch (kind) {
    case CandidateKind::no_fault:
      return WalkKind::nothing;
    case CandidateKind::head_off:
    case CandidateKind::riser_sheared:
    case CandidateKind::nozzle_missing:
      return WalkKind::broken_outlet;
    case CandidateKind::worn:
    case CandidateKind::clogged:
    case CandidateKind::wrong_outlet:
      return WalkKind::odd_outlet;
    case CandidateKind::leak:
      return WalkKind::leak;
    case CandidateKind::end_open:
      return WalkKind::end_open;
    case CandidateKind::valve_left_open:
    case CandidateKind::valve_part_closed:
      return WalkKind::valve;
    case CandidateKind::regulator_stuck_open:
    case CandidateKind::regulator_stuck_shut:
      return WalkKind::regulator;
    case CandidateKind::filter_dirty:
    case CandidateKind::engine_slow:
    case CandidateKind::pump_worn:
    case CandidateKind::supply_low:
      return WalkKind::supply;
    case CandidateKind::gauge_wrong:
      return WalkKind::gauge;
  }
  return WalkKind::nothing;
}

std::vector<WalkTo> walks(const Analysis& analysis) {
  struct Sum {
    double probability = 0;
    std::map<int, double> outlets = {};
  };
  std::map<std::pair<WalkKind, std::string>, Sum> sums;
  for (std::size_t c = 0; c < analysis.candidates().size(); ++c) {
    const Candidate& candidate = analysis.candidates()[c];
    const double probability = analysis.found()[c].probability;
    Sum& sum = sums[{walk_kind_of(candidate.kind), candidate.line}];
    sum.probability += probability;
    if (candidate.outlet) sum.outlets[*candidate.outlet] += probability;
  }
  std::vector<WalkTo> found;
  for (const auto& [where, sum] : sums) {
    WalkTo& to = found.emplace_back(
        WalkTo{.kind = where.first, .line = where.second, .probability = sum.probability});
    if (sum.outlets.empty()) continue;
    std::tie(to.first, to.last) = narrowest(sum.outlets, analysis.options().walk_share);
    to.most_likely =
        std::ranges::max_element(sum.outlets, {}, [](const auto& it) { return it.second; })->first;
  }
  std::ranges::stable_sort(found, std::ranges::greater{}, &WalkTo::probability);
  return found;
}

}  // namespace hydro
